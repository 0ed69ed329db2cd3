//! The tree of a build's texts: every value keeps the file and the stretch it stands in.
//!
//! A job is applied on this tree, before anything is made of it, so that a value which a job
//! brought is told of where the job's file has it.

use std::borrow::Cow;
use std::ops::Range;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::source::{At, FileId};
use crate::syntax::{self, Broken};

/// A value and where it stands.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Node {
    pub(crate) at: At,
    pub(crate) value: Value,
}

/// What a value is.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Value {
    Text(String),
    Whole(i64),
    Number(f64),
    Flag(bool),
    Date(String),
    List(Vec<Node>),
    Table(Table),
}

/// A table: its keys in the order of the file.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Table {
    pub(crate) entries: Vec<Entry>,
}

/// One key of a table and its value.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Entry {
    pub(crate) key: String,
    pub(crate) key_at: At,
    pub(crate) node: Node,
}

impl Value {
    /// What it is, for a message: `a text`, `a whole number`.
    pub(crate) const fn kind(&self) -> &'static str {
        match self {
            Self::Text(_) => "a text",
            Self::Whole(_) => "a whole number",
            Self::Number(_) => "a number",
            Self::Flag(_) => "true or false",
            Self::Date(_) => "a date",
            Self::List(_) => "a list",
            Self::Table(_) => "a table",
        }
    }
}

impl Node {
    /// The table that this is, if it is one.
    pub(crate) const fn table(&self) -> Option<&Table> {
        match &self.value {
            Value::Table(table) => Some(table),
            _ => None,
        }
    }
}

impl Table {
    pub(crate) fn entry(&self, key: &str) -> Option<&Entry> {
        self.entries.iter().find(|entry| entry.key == key)
    }

    pub(crate) fn get(&self, key: &str) -> Option<&Node> {
        self.entry(key).map(|entry| &entry.node)
    }

    pub(crate) fn get_mut(&mut self, key: &str) -> Option<&mut Node> {
        self.entries.iter_mut().find(|entry| entry.key == key).map(|entry| &mut entry.node)
    }
}

/// Parses one file to its tree, with what is wrong in its syntax.
///
/// The parser goes on after most errors, but makes nothing of what follows a key without a value.
/// So it is given the text once more with the lines of such keys left blank.
pub(crate) fn parse(file: FileId, text: &str) -> (Table, Broken) {
    let mut text_left = Cow::Borrowed(text);
    let mut errors = Vec::new();
    loop {
        let (table, found) = DeTable::parse_recoverable(&text_left);
        let (stops, others): (Vec<_>, Vec<_>) = found.into_iter().partition(syntax::stops);
        errors.extend(others);
        let lines =
            stops.iter().filter_map(|stop| Some(syntax::line_about(text, stop.span()?.start)));
        let blanked = blank(&text_left, lines);
        errors.extend(stops);
        if blanked == text_left {
            let table = Table { entries: entries(file, table.get_ref()) };
            let broken = syntax::told(file, text, &errors, &table);
            return (table, broken);
        }
        errors.retain(syntax::stops);
        text_left = Cow::Owned(blanked);
    }
}

/// A text with stretches of it left blank, so that every place in it stays where it is.
fn blank(text: &str, stretches: impl Iterator<Item = Range<usize>>) -> String {
    let mut bytes = text.as_bytes().to_vec();
    for stretch in stretches {
        let end = stretch.end.min(bytes.len());
        for byte in &mut bytes[stretch.start..end] {
            if !matches!(byte, b'\n' | b'\r') {
                *byte = b' ';
            }
        }
    }
    String::from_utf8(bytes).unwrap_or_default()
}

fn entries(file: FileId, table: &DeTable<'_>) -> Vec<Entry> {
    table
        .iter()
        .map(|(key, value)| Entry {
            key: key.get_ref().to_string(),
            key_at: At { file, span: key.span() },
            node: node(file, value),
        })
        .collect()
}

fn node(file: FileId, value: &Spanned<DeValue<'_>>) -> Node {
    let at = At { file, span: value.span() };
    let value = match value.get_ref() {
        DeValue::String(text) => Value::Text(text.to_string()),
        DeValue::Integer(number) => i64::from_str_radix(number.as_str(), number.radix())
            .map_or_else(|_| Value::Number(f64::INFINITY), Value::Whole),
        DeValue::Float(number) => Value::Number(number.as_str().parse().unwrap_or(f64::NAN)),
        DeValue::Boolean(flag) => Value::Flag(*flag),
        DeValue::Datetime(date) => Value::Date(date.to_string()),
        DeValue::Array(list) => Value::List(list.iter().map(|item| node(file, item)).collect()),
        DeValue::Table(table) => Value::Table(Table { entries: entries(file, table) }),
    };
    Node { at, value }
}
