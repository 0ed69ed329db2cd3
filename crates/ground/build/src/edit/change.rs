//! Changes to texts, by file and key.

use std::collections::BTreeMap;

use super::splice::{self, Slip};
use super::value::Value;
use crate::disk::BUILD;
use crate::folder::Folder;
use crate::kind::Root;
use crate::node::parse;
use crate::problem::{Problem, Problems};
use crate::source::{At, FileId, Files, SourceFile};

/// The texts of a build, by their names within its folder: `build.toml`, `parts/bank.toml`.
pub type Texts = BTreeMap<String, String>;

/// A change to one file. A path is the keys that lead to a value, from the top of the file; an
/// element of a list is named by its number, from 0.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// Puts a value where one stands, or where none does; the file and tables on the way are made.
    Set {
        /// The file.
        file: String,
        /// The keys that lead to the value.
        path: Vec<String>,
        /// The value.
        value: Value,
    },
    /// Takes out a key, a table with all that is in it, or an element of a list.
    Remove {
        /// The file.
        file: String,
        /// The keys that lead to it.
        path: Vec<String>,
    },
    /// Gives a key another name, in every heading and line that leads to it.
    Rename {
        /// The file.
        file: String,
        /// The keys that lead to it.
        path: Vec<String>,
        /// The new name.
        to: String,
    },
    /// Puts an element into a list, before the one of that number or at its end.
    Insert {
        /// The file.
        file: String,
        /// The keys that lead to the list.
        path: Vec<String>,
        /// Before which element; where there is none of that number, at the end.
        number: usize,
        /// The element.
        value: Value,
    },
    /// Puts a whole file in the place of what it was; without a text it goes.
    File {
        /// The file.
        file: String,
        /// Its new text.
        text: Option<String>,
    },
}

impl Change {
    /// Puts a value at a path.
    pub fn set(file: &str, path: &[&str], value: impl Into<Value>) -> Self {
        Self::Set { file: file.to_owned(), path: owned(path), value: value.into() }
    }

    /// Takes out what stands at a path.
    pub fn remove(file: &str, path: &[&str]) -> Self {
        Self::Remove { file: file.to_owned(), path: owned(path) }
    }

    /// Gives what stands at a path another name.
    pub fn rename(file: &str, path: &[&str], to: &str) -> Self {
        Self::Rename { file: file.to_owned(), path: owned(path), to: to.to_owned() }
    }

    /// Puts an element at the end of a list.
    pub fn push(file: &str, path: &[&str], value: impl Into<Value>) -> Self {
        let value = value.into();
        Self::Insert { file: file.to_owned(), path: owned(path), number: usize::MAX, value }
    }

    /// The file that is changed.
    pub fn file(&self) -> &str {
        match self {
            Self::Set { file, .. }
            | Self::Remove { file, .. }
            | Self::Rename { file, .. }
            | Self::Insert { file, .. }
            | Self::File { file, .. } => file,
        }
    }
}

/// The texts with some changes made in them, one after the other.
///
/// Only what a change names is put anew: every other byte stays, comments, order, line ends and the
/// spelling of numbers with it. The comment right above a heading goes with the heading.
///
/// # Errors
/// Where a change names what is not there, or a file that is no file of a build, or one whose
/// syntax is broken; the texts given are then as they were. Whether the new texts are a build that
/// can be read is not asked here: see [`read`].
pub fn apply(texts: &Texts, changes: &[Change]) -> Result<Texts, Problems> {
    let mut texts = texts.clone();
    for change in changes {
        one(&mut texts, change)?;
    }
    Ok(texts)
}

/// The build that the texts are.
///
/// # Errors
/// As [`Folder::from_texts`].
pub fn read(texts: &Texts) -> Result<Folder, Problems> {
    Folder::from_texts(texts.iter().map(|(name, text)| (name.as_str(), text.as_str())))
}

/// Whether a name is one of a build's files: `build.toml`, `parts/….toml` or `jobs/….toml`.
pub(crate) fn is_file(name: &str) -> bool {
    let stem = match name.split_once('/') {
        None => return name == BUILD,
        Some(("parts" | "jobs", file)) => file.strip_suffix(".toml"),
        Some(_) => None,
    };
    stem.is_some_and(is_stem)
}

/// Whether a name can be that of a file, without `.toml`, on any disk.
pub(crate) fn is_stem(stem: &str) -> bool {
    let forbidden = |c: char| c.is_control() || "/\\:*?\"<>|".contains(c);
    !stem.is_empty() && stem.len() <= 120 && !stem.starts_with('.') && !stem.contains(forbidden)
}

/// A refusal that stands in no file.
pub(super) fn refused(says: impl Into<String>, hint: impl Into<String>) -> Problems {
    Problems::new(Files::default(), vec![Problem::nowhere(says, hint)])
}

fn owned(path: &[&str]) -> Vec<String> {
    path.iter().map(|key| (*key).to_owned()).collect()
}

fn one(texts: &mut Texts, change: &Change) -> Result<(), Problems> {
    let file = change.file();
    if !is_file(file) {
        return Err(refused(
            format!("`{file}` is no file of a build"),
            "a build has build.toml, parts/name.toml and jobs/name.toml",
        ));
    }
    if let Change::File { text, .. } = change {
        match text {
            Some(text) => texts.insert(file.to_owned(), text.clone()),
            None => texts.remove(file),
        };
        return Ok(());
    }
    let text = texts.get(file).map_or("", String::as_str);
    let root = Root::of(file);
    let new = in_order(file, text).and_then(|()| {
        match change {
            Change::Set { path, value, .. } => splice::set(text, root, path, value),
            Change::Remove { path, .. } => splice::remove(text, path),
            Change::Rename { path, to, .. } => splice::rename(text, path, to),
            Change::Insert { path, number, value, .. } => {
                splice::insert_element(text, root, path, *number, value)
            }
            Change::File { .. } => Ok(text.to_owned()),
        }
        .map_err(|slip| slip.told(file, text))
    })?;
    texts.insert(file.to_owned(), new);
    Ok(())
}

/// Whether nothing is wrong in the syntax of a text: a broken one cannot be changed key by key.
fn in_order(file: &str, text: &str) -> Result<(), Problems> {
    let (files, id) = alone(file, text);
    let (_, broken) = parse(id, text);
    if broken.is_empty() { Ok(()) } else { Err(Problems::new(files, broken.problems)) }
}

fn alone(file: &str, text: &str) -> (Files, FileId) {
    let mut files = Files::default();
    let id = files.add(SourceFile { name: file.to_owned(), path: None, text: text.to_owned() });
    (files, id)
}

impl Slip {
    fn told(self, file: &str, text: &str) -> Problems {
        let (files, id) = alone(file, text);
        let at = At { file: id, span: self.span };
        Problems::new(files, vec![Problem::new(at, self.says, "here", self.hint)])
    }
}
