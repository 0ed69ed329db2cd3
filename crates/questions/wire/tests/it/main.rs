//! The question wire against the world outside.

mod bank;
mod check;
mod experts;
mod first;
mod mends;
mod published;
mod references;
mod verdicts;
