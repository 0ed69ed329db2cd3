//! "Change that, and leave the rest of my files as I wrote them." — a build's files, edited.
//!
//! A [`Change`] names a file and keys in it; [`apply`] makes changes in the build's [`Texts`] and
//! leaves every byte that they do not name as it is.

mod change;
mod doc;
mod finish;
mod layers;
mod lines;
mod meaning;
mod renaming;
mod splice;
mod store;
mod style;
mod value;
mod within_job;
mod write;

pub use change::{Change, Texts, apply, read};
pub use layers::{Scope, Spot, names, where_is};
pub use meaning::{Edit, edited};
pub use store::{Refused, Saved, Store, Underneath};
pub use value::Value;
