//! What is printed: text made of answers, sources and problems. Nothing is computed here.

pub mod bar;
pub mod page;
mod problems;
mod report;
mod sources;
mod verdict;
mod why;

pub use problems::problems;
pub use report::{Shown, report};
pub use sources::sources;
pub use why::why;
