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
    /// Where each line of each file begins, in bytes.
    lines: Vec<Vec<usize>>,
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
        let after_newlines = file.text.match_indices('\n').map(|(newline, _)| newline + 1);
        self.lines.push(std::iter::once(0).chain(after_newlines).collect());
        self.files.push(file);
        FileId(self.files.len() - 1)
    }

    /// A file.
    pub fn file(&self, id: FileId) -> &SourceFile {
        &self.files[id.0]
    }

    /// Every file with its name for places.
    pub(crate) fn iter(&self) -> impl Iterator<Item = (FileId, &SourceFile)> {
        self.files.iter().enumerate().map(|(index, file)| (FileId(index), file))
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
        let lines = &self.lines[at.file.0];
        let line = lines.partition_point(|line_start| *line_start <= start);
        let before = &text[lines[line - 1]..start];
        // A byte order mark at the beginning of a file is no character of its first line.
        let before = before.strip_prefix('\u{feff}').unwrap_or(before);
        LineColumn { line, column: before.chars().count() + 1 }
    }

    /// `build.toml:14`: where a value stands, for its source.
    pub fn place(&self, at: &At) -> String {
        format!("{}:{}", self.file(at.file).name, self.line_column(at).line)
    }
}
