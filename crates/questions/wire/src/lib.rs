//! The question wire.
