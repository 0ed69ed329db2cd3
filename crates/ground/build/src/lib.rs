//! "What is in the vehicle, and what do I want to change?" — the build's folder: read, checked,
//! and changed by a job.
//!
//! A build is a folder of TOML: `build.toml` (the vehicle as it stands), `parts/*.toml` (figures
//! from the papers of parts) and `jobs/*.toml` (planned changes). The way through this crate is
//! one way: each text becomes a tree in which every value keeps its file and its place; a job is
//! applied to that tree; the tree is read into records that mirror the files; the records are
//! resolved into the typed [`Build`], with references checked, stand-ins put in, and every number
//! with its basis. All problems are told together, each with file, line and column.
//!
//! Nothing is computed here, and nothing is judged.
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
pub mod file;
mod folder;
mod held;
mod job;
mod leaf;
mod model;
mod node;
mod problem;
mod read;
mod resolve;
mod schema;
mod source;
mod syntax;

pub use axle::{AxleLimits, Axles, LoadPlaces, Middle, Tag, Towing, Tyres, Unladen};
pub use folder::{Folder, Planned, Unplanned};
pub use held::{Held, HeldPattern, Latch};
pub use job::JobInfo;
pub use model::*;
pub use problem::{Problem, Problems};
pub use read::{Keyed, Rows, Said};
pub use resolve::{typical, typical_number};
pub use schema::{SchemaOf, schema};
pub use source::{At, FileId, Files, LineColumn, SourceFile};
