//! Values to be put into files.

use std::borrow::Cow;

use super::doc::{Doc, Key, Val, ValKind};
use crate::kind::Kind;
use crate::node::{self, Node};
use crate::source::Files;

/// A value to be put into a file.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A text, and so any quantity: `440 mm ± 2 mm`.
    Text(String),
    /// A whole number.
    Whole(i64),
    /// A number.
    Number(f64),
    /// True or false.
    Flag(bool),
    /// A value as its owner writes it in a file: `"440 mm"`, `[[0, 566], [700, 552]]`. What is no
    /// value is put in as a text.
    Written(String),
    /// A list.
    List(Vec<Self>),
    /// A table: keys and what stands at them, in this order.
    Table(Vec<(String, Self)>),
}

impl Value {
    /// A table of keys and values.
    pub fn table<K: Into<String>, V: Into<Self>>(
        entries: impl IntoIterator<Item = (K, V)>,
    ) -> Self {
        Self::Table(entries.into_iter().map(|(key, value)| (key.into(), value.into())).collect())
    }

    /// What somebody typed into a form, for a field of some kind: a count becomes a number, `true`
    /// a flag, rows a list; names with commas between become a list of texts. What does not fit
    /// becomes a text, and is told of when the build is read.
    pub fn typed(text: &str, kind: &Kind) -> Self {
        let text = text.trim();
        let as_text = || Self::Text(text.to_owned());
        match kind {
            Kind::Count => text.parse().map_or_else(|_| as_text(), Self::Whole),
            Kind::Flag => text.parse().map_or_else(|_| as_text(), Self::Flag),
            Kind::Rows | Kind::Any | Kind::Record { .. } | Kind::Keyed(_) => {
                Self::Written(text.to_owned())
            }
            Kind::List(_) if text.starts_with('[') => Self::Written(text.to_owned()),
            Kind::List(inner) => {
                let items = text.split(',').map(str::trim).filter(|item| !item.is_empty());
                Self::List(items.map(|item| Self::typed(item, inner)).collect())
            }
            Kind::Quantity { .. } | Kind::Text | Kind::Words(_) | Kind::Day => as_text(),
        }
    }

    /// Puts a value at some keys within this one.
    pub(super) fn put(&mut self, keys: &[String], value: Self) {
        let Some((first, rest)) = keys.split_first() else {
            *self = value;
            return;
        };
        if !matches!(self, Self::Table(_)) {
            *self = Self::Table(Vec::new());
        }
        let Self::Table(entries) = self else { return };
        if let Some((_, entry)) = entries.iter_mut().find(|(key, _)| key == first) {
            entry.put(rest, value);
        } else {
            let mut new = Self::Table(Vec::new());
            new.put(rest, value);
            entries.push((first.clone(), new));
        }
    }

    /// A value of a tree, each part as its owner wrote it.
    pub(super) fn of(node: &Node, files: &Files) -> Self {
        match &node.value {
            node::Value::Table(table) => Self::Table(
                table
                    .entries
                    .iter()
                    .map(|entry| (entry.key.clone(), Self::of(&entry.node, files)))
                    .collect(),
            ),
            node::Value::List(items) => {
                Self::List(items.iter().map(|item| Self::of(item, files)).collect())
            }
            _ => {
                let text = &files.file(node.at.file).text;
                Self::Written(text.get(node.at.span.clone()).unwrap_or_default().to_owned())
            }
        }
    }

    /// With a table or list that is written down taken apart, so that it can be merged with what
    /// stands in a file.
    pub(super) fn opened(&self) -> Cow<'_, Self> {
        if let Self::Written(text) = self
            && text.trim_start().starts_with(['{', '['])
            && alone(text).is_some()
        {
            let text = format!("value = {}", text.trim());
            if let Some(val) = Doc::of(&text).statements.pop().and_then(|only| only.value) {
                return Cow::Owned(Self::taken_apart(&text, &val));
            }
        }
        Cow::Borrowed(self)
    }

    fn taken_apart(text: &str, val: &Val) -> Self {
        match &val.kind {
            ValKind::Scalar => Self::Written(text[val.span.clone()].to_owned()),
            ValKind::List(items) => {
                Self::List(items.iter().map(|item| Self::taken_apart(text, item)).collect())
            }
            ValKind::Table(entries) => {
                let mut table = Vec::new();
                for (keys, val) in entries {
                    put(&mut table, keys, Self::taken_apart(text, val));
                }
                Self::Table(table)
            }
        }
    }

    /// How it is written in a line of a file.
    pub(super) fn written(&self) -> String {
        match self {
            Self::Text(text) => toml::Value::String(text.replace("\r\n", "\n")).to_string(),
            Self::Whole(number) => number.to_string(),
            Self::Number(number) => toml::Value::Float(*number).to_string(),
            Self::Flag(flag) => flag.to_string(),
            Self::Written(text) => match alone(text) {
                Some(_) => text.trim().to_owned(),
                None => Self::Text(text.clone()).written(),
            },
            Self::List(items) => {
                let items: Vec<String> = items.iter().map(Self::written).collect();
                format!("[{}]", items.join(", "))
            }
            Self::Table(entries) if entries.is_empty() => "{}".to_owned(),
            Self::Table(entries) => {
                let entries: Vec<String> = entries
                    .iter()
                    .map(|(key, value)| format!("{} = {}", key_written(key), value.written()))
                    .collect();
                format!("{{ {} }}", entries.join(", "))
            }
        }
    }

    /// Whether it is what stands written in a file, however that is spelled.
    pub(super) fn is(&self, written: &str) -> bool {
        let value = self.written();
        value == written || alone(&value).is_some_and(|value| Some(value) == alone(written))
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<String> for Value {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<i64> for Value {
    fn from(number: i64) -> Self {
        Self::Whole(number)
    }
}

impl From<bool> for Value {
    fn from(flag: bool) -> Self {
        Self::Flag(flag)
    }
}

/// How a key is written in a file.
pub(super) fn key_written(key: &str) -> String {
    let is_bare = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_');
    if !key.is_empty() && key.chars().all(is_bare) {
        return key.to_owned();
    }
    let mut written = String::from("\"");
    for c in key.chars() {
        match c {
            '"' | '\\' => written.extend(['\\', c]),
            c if c.is_control() => written.push_str(&format!("\\u{:04X}", u32::from(c))),
            c => written.push(c),
        }
    }
    written.push('"');
    written
}

/// The value that a text is, if it is one and nothing besides.
fn alone(text: &str) -> Option<toml::Value> {
    let text = format!("value = {}", text.trim());
    let table: toml::Table = text.parse().ok()?;
    let ends_with_it = Doc::of(&text).statements.last()?.span.end == text.len();
    let only = if table.len() == 1 && ends_with_it { table.into_iter().next() } else { None };
    only.map(|(_, value)| value)
}

/// Puts a value into a table, by keys with dots between.
fn put(table: &mut Vec<(String, Value)>, keys: &[Key], value: Value) {
    let Some((first, rest)) = keys.split_first() else { return };
    if rest.is_empty() {
        table.push((first.name.clone(), value));
        return;
    }
    if !table.iter().any(|(key, _)| *key == first.name) {
        table.push((first.name.clone(), Value::Table(Vec::new())));
    }
    if let Some((_, Value::Table(inner))) = table.iter_mut().find(|(key, _)| *key == first.name) {
        put(inner, rest, value);
    }
}
