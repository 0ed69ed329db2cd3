//! The question meter against the world outside.

mod check;
mod references;
mod trade;
mod worked;
