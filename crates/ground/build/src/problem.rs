//! What is wrong in a build's files, told so that it can be mended.

use std::fmt;

use crate::source::{At, Files};

/// One thing that is wrong: where, what, and how to mend it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// Where it stands; `None` of a thing that stands in no file, such as a missing folder.
    pub at: Option<At>,
    /// What is wrong, in a sentence without a full stop: `a length needs a unit`.
    pub says: String,
    /// A few words for the underlined stretch.
    pub label: String,
    /// What was expected and how to mend it.
    pub hint: String,
}

impl Problem {
    /// A problem at a place.
    pub fn new(
        at: At,
        says: impl Into<String>,
        label: impl Into<String>,
        hint: impl Into<String>,
    ) -> Self {
        Self { at: Some(at), says: says.into(), label: label.into(), hint: hint.into() }
    }

    /// Whether it tells of the same thing at the same place, though its hint may differ.
    pub(crate) fn is_of(&self, other: &Self) -> bool {
        self.at == other.at && self.says == other.says
    }

    /// A problem that stands in no file.
    pub fn nowhere(says: impl Into<String>, hint: impl Into<String>) -> Self {
        Self { at: None, says: says.into(), label: String::new(), hint: hint.into() }
    }
}

/// Every problem of a build's files, with the files, so that each can be shown in place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problems {
    /// The files as far as they could be read.
    pub files: Files,
    /// The problems, by file and place; never empty.
    pub list: Vec<Problem>,
}

impl Problems {
    /// Sorts by file and place, and drops what is told twice.
    pub(crate) fn new(files: Files, mut list: Vec<Problem>) -> Self {
        let place =
            |problem: &Problem| problem.at.as_ref().map(|at| (at.file, at.span.start, at.span.end));
        list.sort_by(|a, b| (place(a), &a.says).cmp(&(place(b), &b.says)));
        list.dedup_by(|a, b| a.is_of(b));
        Self { files, list }
    }
}

impl fmt::Display for Problems {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for problem in &self.list {
            if let Some(at) = &problem.at {
                let place = self.files.line_column(at);
                let name = &self.files.file(at.file).name;
                write!(f, "{name}:{}:{}: ", place.line, place.column)?;
            }
            writeln!(f, "{}; {}", problem.says, problem.hint)?;
        }
        Ok(())
    }
}

impl std::error::Error for Problems {}
