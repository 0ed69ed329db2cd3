//! Published figures, each with its source and whether it is a limit or practice.
