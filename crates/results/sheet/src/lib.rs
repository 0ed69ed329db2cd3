//! Drawings and tables made from the answers.
