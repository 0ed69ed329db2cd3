//! Verdict, finding, figure with its range, basis and working.
