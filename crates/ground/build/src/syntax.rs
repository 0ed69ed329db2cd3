//! Errors of syntax, told in plain words and each once.
//!
//! The parser goes on after an error, and what it then finds in the same line, or within brackets
//! that were never closed, mostly follows from the first. So each error has a stretch of the file
//! with it in which nothing else is told.

use std::ops::Range;

use toml::de::Error;

use crate::node::{Node, Table, Value};
use crate::problem::Problem;
use crate::source::{At, FileId};

/// What is wrong with the syntax of one file.
#[derive(Debug, Default)]
pub(crate) struct Broken {
    pub(crate) problems: Vec<Problem>,
    /// Stretches of the file in which nothing else is to be told.
    stretches: Vec<Range<usize>>,
}

impl Broken {
    /// Whether nothing is wrong.
    pub(crate) const fn is_empty(&self) -> bool {
        self.problems.is_empty()
    }

    /// Whether a place lies where something is broken.
    pub(crate) fn covers(&self, at: &At) -> bool {
        self.stretches.iter().any(|stretch| stretch.contains(&at.span.start))
    }
}

/// Whether the parser makes nothing of what follows an error.
pub(crate) fn stops(error: &Error) -> bool {
    error.message().starts_with("key with no value")
}

/// Tells of the errors that the parser found in a text, given what it made of it.
pub(crate) fn told(file: FileId, text: &str, errors: &[Error], table: &Table) -> Broken {
    let mut broken = Broken::default();
    let mut errors: Vec<(Range<usize>, &str)> =
        errors.iter().map(|error| (error.span().unwrap_or(0..0), error.message().trim())).collect();
    errors.sort_by_key(|(span, _)| span.start);
    let mut unclosed = Vec::new();
    for (span, message) in &errors {
        let of_several_lines = ["unclosed array", "unclosed inline table"];
        if of_several_lines.iter().any(|start| message.starts_with(start))
            && !message.starts_with("unclosed array table")
            && let Some(opened) = ending_at(table, span.start)
        {
            unclosed.push(opened);
        }
    }
    for opened in unclosed {
        if broken.stretches.iter().any(|stretch| stretch.contains(&opened.start)) {
            continue;
        }
        let (what, with) =
            if text[opened.clone()].starts_with('[') { ("list", ']') } else { ("table", '}') };
        let at = At { file, span: opened.start..opened.start + 1 };
        broken.problems.push(Problem::new(
            at,
            format!("this {what} does not end"),
            "opened here",
            format!("close it with `{with}`"),
        ));
        broken.stretches.push(opened.start..opened.end + 1);
    }
    for (span, message) in errors {
        let at = At { file, span: shown(text, span, message) };
        if !broken.covers(&at) {
            let within = text.get(at.span.clone()).unwrap_or_default();
            let [says, label, hint] = in_words(message, within);
            let line = line_about(text, at.span.start);
            let whole = is_open_text(message, within) || is_too_deep(message);
            let from = if whole { line.start } else { at.span.start };
            broken.stretches.push(from..line.end);
            broken.problems.push(Problem::new(at, says, label, hint));
        }
    }
    broken
}

/// The stretch to be underlined for an error: an escape with its backslash, a key as a whole.
fn shown(text: &str, span: Range<usize>, message: &str) -> Range<usize> {
    let (before, behind) = (&text[..span.start], &text[span.start..]);
    if before.ends_with('\\') {
        span.start - 1..span.end
    } else if message.starts_with("invalid unquoted key") {
        let is_border = |c: char| c.is_whitespace() || "{}[],.=".contains(c);
        let start = before.trim_end_matches(|c| !is_border(c)).len();
        start..span.start + behind.find(is_border).unwrap_or(behind.len())
    } else {
        span
    }
}

/// Whether an error is of a text without an end, which takes in all that follows in its line.
fn is_open_text(message: &str, within: &str) -> bool {
    let of_texts = ["invalid basic string", "invalid literal string"];
    of_texts.iter().any(|start| message.starts_with(start)) && within.trim().is_empty()
}

/// Whether an error is of brackets within brackets that go too deep.
fn is_too_deep(message: &str) -> bool {
    message.contains("recursion") || message.contains("recurse")
}

/// The list or inline table, within a table, that goes on to a place and no further.
fn ending_at(table: &Table, end: usize) -> Option<Range<usize>> {
    let mut nodes: Vec<&Node> = table.entries.iter().map(|entry| &entry.node).collect();
    let mut found: Option<Range<usize>> = None;
    while let Some(Node { at, value }) = nodes.pop() {
        match value {
            Value::List(items) => nodes.extend(items),
            Value::Table(table) => nodes.extend(table.entries.iter().map(|entry| &entry.node)),
            _ => continue,
        }
        if at.span.end == end && found.as_ref().is_none_or(|found| at.span.start < found.start) {
            found = Some(at.span.clone());
        }
    }
    found
}

/// The line that a place lies in, its end included.
pub(crate) fn line_about(text: &str, place: usize) -> Range<usize> {
    let start = text[..place].rfind('\n').map_or(0, |newline| newline + 1);
    let end = text[place..].find('\n').map_or(text.len(), |newline| place + newline);
    start..end + 1
}

/// The parser's message in plain words: what is wrong, a label, and how to mend it.
fn in_words(message: &str, within: &str) -> [String; 3] {
    let (wrong, expected) = message.split_once(", expected ").unwrap_or((message, ""));
    let short = !within.is_empty() && within.len() <= 40 && !within.contains(['"', '\n']);
    let words =
        |says: &str, label: &str, hint: &str| [says.to_owned(), label.to_owned(), hint.to_owned()];
    match wrong {
        "string values must be quoted" if within.is_empty() => words(
            "a key has no value",
            "a value is missing here",
            "write one behind the equals sign; a quantity is a text in quotes, like \"440 mm\"",
        ),
        "string values must be quoted" if short => [
            format!("`{within}` stands without quotes"),
            "not in quotes".to_owned(),
            format!("write it in quotes: \"{within}\""),
        ],
        "string values must be quoted" => {
            words("a text stands without quotes", "not in quotes", "put it in quotes")
        }
        "duplicate key" => [
            format!("`{within}` stands here for the second time"),
            "a second time".to_owned(),
            "keep one of the two, or give this one a name of its own".to_owned(),
        ],
        "invalid unquoted key" => [
            format!("the key `{within}` needs quotation marks"),
            "in quotation marks".to_owned(),
            format!(
                "write it as \"{within}\"; without them a key has letters from a to z, figures, \
                 - and _ alone"
            ),
        ],
        "key with no value" | "missing value for key" | "missing value" => words(
            "a key has no value",
            "expected `=` and a value",
            "write an equals sign and a value behind the key, or begin the line with # if it is a remark",
        ),
        "unclosed table" => words("a heading does not end", "expected `]`", "close it with `]`"),
        "unclosed array table" => {
            words("a heading does not end", "expected `]]`", "close it with `]]`")
        }
        "unclosed array" | "unclosed inline table" => {
            words("a bracket is not closed", "not closed", "close every bracket that was opened")
        }
        _ if is_open_text(message, within) => words(
            "a text does not end",
            "a quotation mark is missing here",
            "close it with the mark that it began with, on the same line",
        ),
        "invalid basic string" | "invalid literal string" => words(
            "a text has a character in it that cannot be seen",
            "such a character",
            "take it out, or write it as an escape, such as \\u0007",
        ),
        "missing escaped value" | "too few unicode value digits" => words(
            "a backslash begins an escape, and this is none",
            "not an escape",
            "write \\\\ for a backslash, or put the text in single quotation marks",
        ),
        "missing comma between array elements" | "missing comma between key-value pairs" => words(
            "a comma is missing",
            "expected a comma",
            "put a comma between two values of a list, and between two keys of a table in braces",
        ),
        _ if is_too_deep(message) => words(
            "this is nested too deeply",
            "too deep",
            "a build needs no more than a few tables within one another",
        ),
        "carriage return must be followed by newline" => words(
            "a line ends in a lone carriage return",
            "a carriage return",
            "save the file with the usual ends of lines",
        ),
        _ if wrong.starts_with("cannot extend value of type") => [
            format!("`{within}` has a value already and cannot have keys besides"),
            "a value already".to_owned(),
            "give the keys together with that value, or take it away".to_owned(),
        ],
        _ => [
            format!("this is not TOML: {}", wrong.replace('\n', "; ")),
            if expected.is_empty() { "here".to_owned() } else { format!("expected {expected}") },
            "check quotation marks, brackets and the equals sign".to_owned(),
        ],
    }
}
