//! The circuit model against the world outside.

mod everything;
mod laws;
mod published;
mod references;
mod warmth;
