//! What the house promises of its own code, held by tests.
//!
//! Each check is a plain function from text to problems: a line for each thing that is wrong, with
//! where it stands; none when all is well. `tests/house.rs` puts the whole repository through all
//! of them, and the tests beside each check show it a small bad sample, so that it can fail.
//!
//! | module | holds |
//! |---|---|
//! | [`floors`] | a crate uses only what lies below it, and no library in vain; all take the lints |
//! | [`source`] | what the code of models and questions never reaches for; no test passed over |
//! | [`names`] | the units at the end of names are those of NOMENCLATURE.md |
//! | [`words`] | marks of unfinished work, paths of one machine, lengths of files, dead links |
//! | [`origins`] | every file of reference values has its generator and its versions beside it |
//!
//! What it does not do: it reads words, not meanings. A formula in the wrong place, a wrong unit
//! under a right name, a test that proves nothing: these need a reader.
//!
//! ```
//! let text = "a line\nsee /home/ann/build.toml\n";
//! let problems = spile_tidy::words::machine_paths("notes.md", text);
//! assert_eq!(problems, ["notes.md:2: a path of one machine: `/home/`"]);
//! ```

pub mod floors;
pub mod names;
pub mod origins;
pub mod repository;
pub mod source;
pub mod tokens;
pub mod words;
