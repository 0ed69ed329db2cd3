//! The circuit model against the world outside.

mod laws;
mod references;
