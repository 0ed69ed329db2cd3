//! The circuit model against the world outside.

mod laws;
mod published;
mod references;
mod warmth;
