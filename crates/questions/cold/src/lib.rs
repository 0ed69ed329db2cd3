//! The question cold.
