//! The question fit.
