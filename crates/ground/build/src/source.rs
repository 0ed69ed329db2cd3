//! The files of a build, and places in them.

use std::ops::Range;
use std::path::PathBuf;

/// One file as it was read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SourceFile {
    /// Its path within the build's folder, with `/` between the parts: `jobs/galley-fridge.toml`.
    pub name: String,
    /// Where it is on disk; `None` of a text that never was.
    pub path: Option<PathBuf>,
    /// Its text.
    pub text: String,
}

/// Names one file of a build.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(pub(crate) usize);

/// A stretch of one file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct At {
    /// The file.
    pub file: FileId,
    /// The stretch, in bytes of its text.
    pub span: Range<usize>,
}

/// The files that a build was read from.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Files {
    files: Vec<SourceFile>,
}

/// A line and a column, both counted from 1, the column in characters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct LineColumn {
    /// The line, from 1.
    pub line: usize,
    /// The column in characters, from 1.
    pub column: usize,
}

impl Files {
    /// Takes a file in.
    pub(crate) fn add(&mut self, file: SourceFile) -> FileId {
        self.files.push(file);
        FileId(self.files.len() - 1)
    }

    /// A file.
    pub fn file(&self, id: FileId) -> &SourceFile {
        &self.files[id.0]
    }

    /// All files, in the order they were read.
    pub fn all(&self) -> &[SourceFile] {
        &self.files
    }

    /// The line and column where a stretch begins.
    pub fn line_column(&self, at: &At) -> LineColumn {
        let text = &self.file(at.file).text;
        let mut start = at.span.start.min(text.len());
        while !text.is_char_boundary(start) {
            start -= 1;
        }
        let before = &text[..start];
        let line_start = before.rfind('\n').map_or(0, |newline| newline + 1);
        LineColumn {
            line: before.matches('\n').count() + 1,
            column: before[line_start..].chars().count() + 1,
        }
    }

    /// `build.toml:14`: where a value stands, for its source.
    pub fn place(&self, at: &At) -> String {
        format!("{}:{}", self.file(at.file).name, self.line_column(at).line)
    }
}
