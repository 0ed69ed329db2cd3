//! "What is in the vehicle, and what do I want to change?" — the build's folder: read, checked,
//! and changed by a job.
//!
//! A build is a folder of TOML: `build.toml` (the vehicle as it stands), `parts/*.toml` (figures
//! from the papers of parts) and `jobs/*.toml` (planned changes). The way through this crate is
//! one way: each text becomes a tree in which every value keeps its file and its place; a job is
//! applied to that tree; the tree is read into records that mirror the files ([`mod@file`]); the
//! records are resolved into the typed [`Build`], with references checked, stand-ins put in, and
//! every number with its basis. Nothing is computed here, and nothing is judged.
//!
//! # Problems
//! Everything that is wrong is told in one go ([`Problems`]), each with file, line and column, what
//! was expected and how to mend it: errors of syntax, unknown keys, what is no quantity, what names
//! nothing there is, what cannot be. Each is told once: what could not be read is not told of as
//! missing too, nor where it is named. Of a file with an error of syntax the rest is read, but
//! names are followed, and jobs tried, only where build and parts are whole. An empty `build.toml`
//! is in order: nothing is said yet.
//!
//! # Assumptions
//! What was not said is stood in for by [`typical`] values, each marked as such. A length taken with
//! a tape and given without a tolerance has the tape's typical one. Bounds of what is plausible are
//! common practice, wide on purpose.
//!
//! # Standards
//! TOML 1.1; JSON Schema 2020-12 ([`schema`]); days as ISO 8601 writes them.
//!
//! # Limits
//! Tables and lists lie at most 80 deep in one another. A name with a dot in it cannot be named by
//! a job.
//!
//! ```
//! use spile_build::Folder;
//!
//! let folder = Folder::from_texts([("build.toml", r#"
//! [parts.fridge]
//! kind = "upright fridge"
//! [items.fridge]
//! part = "frigde"
//! "#)]);
//! let problems = folder.unwrap_err();
//! let at = problems.list[0].at.as_ref().unwrap();
//! assert_eq!(problems.files.line_column(at).line, 5);
//! assert!(problems.list[0].hint.starts_with("did you mean `fridge`?"));
//! ```

mod apply;
mod axle;
mod date;
mod disk;
pub mod edit;
pub mod file;
pub mod first;
mod folder;
mod held;
mod job;
mod kind;
mod leaf;
mod model;
mod node;
mod problem;
mod read;
mod reading;
mod resolve;
mod schema;
mod source;
mod syntax;

pub use axle::{AxleLimits, Axles, LoadPlaces, Middle, Tag, Towing, Tyres, Unladen};
pub use folder::{Folder, Planned, Unplanned};
pub use held::{Held, HeldPattern, Latch, columns};
pub use job::JobInfo;
pub use kind::{FieldOf, Kind, fields};
pub use model::*;
pub use problem::{Problem, Problems};
pub use read::{Keyed, Rows, Said};
pub use reading::{Meter, Reading};
pub use resolve::{typical, typical_number};
pub use schema::{SchemaOf, schema};
pub use source::{At, FileId, Files, LineColumn, SourceFile};
