//! Where something new goes in a file, and how it is written there.
//!
//! A named thing gets a heading of its own, set apart by a blank line, after the last of its kind;
//! what belongs to it stands in lines, and tables in it in braces. Where the owner writes such
//! things otherwise, they are written as the owner does.

use super::doc::{Doc, Statement};
use super::lines::{attached, line_end, line_start, top};
use super::splice::join;
use super::value::{Value, key_written};
use crate::kind::{Kind, Root};

/// How a value is written that was not there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Shape {
    /// In a line of the table that it belongs to.
    Line,
    /// Under a heading.
    Heading,
    /// A table that has no heading, for what is in it has headings.
    Through,
    /// Each element under a heading in double brackets.
    Elements,
}

/// How a value is written at a path where nothing stands.
pub(super) fn shape(root: Root, doc: &Doc, path: &[String], value: &Value) -> Shape {
    let kind = root.at(path);
    let Some((_, above)) = path.split_last() else { return Shape::Through };
    match value {
        Value::List(items)
            if !items.is_empty()
                && items.iter().all(|item| matches!(item, Value::Table(_)))
                && matches!(&kind, Some(Kind::List(inner)) if matches!(**inner, Kind::Record { .. })) =>
        {
            Shape::Elements
        }
        Value::Table(_) => match (kind, root.at(above)) {
            (Some(Kind::Keyed(_) | Kind::Record { what: "an addition", .. }), _) => Shape::Through,
            (_, Some(Kind::Keyed(_))) if !has_line_siblings(doc, above) => Shape::Heading,
            _ if root == Root::Build && path.len() == 1 => Shape::Heading,
            _ => Shape::Line,
        },
        _ => Shape::Line,
    }
}

/// The blocks of lines, each with its heading, that a value is written in.
pub(super) fn blocks(root: Root, doc: &Doc, path: &[String], value: &Value) -> Vec<String> {
    let heading = heading(doc, path);
    match value {
        Value::List(items) => items
            .iter()
            .map(|item| match item {
                Value::Table(entries) => format!("[[{heading}]]\n{}", lines(entries.iter())),
                other => format!("{heading} = {}\n", other.written()),
            })
            .collect(),
        Value::Table(entries) => {
            let is_line = |entry: &&(String, Value)| {
                shape(root, doc, &join(path, &entry.0), &entry.1) == Shape::Line
            };
            let (own, deeper): (Vec<_>, Vec<_>) = entries.iter().partition(is_line);
            let mut all = Vec::new();
            let alone = deeper.is_empty() && shape(root, doc, path, value) == Shape::Heading;
            if !own.is_empty() || alone {
                all.push(format!("[{heading}]\n{}", lines(own.into_iter())));
            }
            for (key, value) in deeper {
                all.extend(blocks(root, doc, &join(path, key), value));
            }
            all
        }
        _ => Vec::new(),
    }
}

/// Where a line goes, what stands before its key, and whether it is a block of its own.
pub(super) struct LinePlace {
    pub(super) at: usize,
    pub(super) before: String,
    pub(super) apart: bool,
}

/// Where a key of a table goes that is made by headings or dotted keys, or at the top of a file.
pub(super) fn line_place(
    text: &str,
    root: Root,
    doc: &Doc,
    above: &[String],
    name: &str,
) -> LinePlace {
    let own = doc.within(above).find(|(_, at)| at.value.is_none() && at.path == above);
    if own.is_some() || above.is_empty() {
        let first = own.map_or(0, |(number, _)| number + 1);
        let pairs: Vec<&Statement> =
            doc.statements[first..].iter().take_while(|pair| pair.value.is_some()).collect();
        let rank = rank(root, above, name);
        let earlier = pairs.iter().rev().find(|pair| {
            pair.path.get(above.len()).is_some_and(|key| self::rank(root, above, key) <= rank)
        });
        if let Some(pair) = earlier.or(pairs.last()) {
            let start = line_start(text, pair.span.start);
            let before = text[start..pair.span.start].to_owned();
            return LinePlace { at: line_end(text, pair.span.end), before, apart: false };
        }
        return match own {
            Some((_, heading)) => {
                let at = line_end(text, heading.span.end);
                LinePlace { at, before: String::new(), apart: false }
            }
            None => LinePlace { at: below_comment(text), before: String::new(), apart: true },
        };
    }
    let mut dotted = doc.within(above).filter_map(|(_, pair)| {
        let last = pair.keys.iter().find(|key| pair.value.is_some() && key.end == above.len())?;
        Some((pair, last))
    });
    if let Some((pair, last)) = dotted.next_back() {
        let start = line_start(text, pair.span.start);
        let before = format!("{}.", &text[start..last.span.end]);
        return LinePlace { at: line_end(text, pair.span.end), before, apart: false };
    }
    let first = doc.within(above).next();
    let at = first.map_or(text.len(), |(_, first)| attached(text, first.span.start));
    LinePlace { at, before: format!("[{}]\n", heading(doc, above)), apart: true }
}

/// Where a heading goes: after the last thing of its kind or of those that come before it.
pub(super) fn block_place(
    text: &str,
    root: Root,
    doc: &Doc,
    above: &[String],
    name: &str,
) -> usize {
    let rank = rank(root, above, name);
    let mut earlier = doc.within(above).filter(|(_, at)| {
        at.path.get(above.len()).is_none_or(|key| self::rank(root, above, key) <= rank)
    });
    if let Some((number, _)) = earlier.next_back() {
        let last = doc.end_of_pairs(number) - 1;
        return line_end(text, doc.statements[last].span.end);
    }
    let pairs = doc.statements.iter().take_while(|pair| pair.value.is_some());
    match (pairs.last(), doc.within(above).next()) {
        (Some(pair), _) if above.is_empty() => line_end(text, pair.span.end),
        (_, Some((_, first))) => attached(text, first.span.start),
        (_, None) => text.len(),
    }
}

/// Whether the things of a collection are written in lines, in braces.
fn has_line_siblings(doc: &Doc, above: &[String]) -> bool {
    let last = doc.within(above).rfind(|(_, at)| at.path.len() > above.len());
    last.is_some_and(|(_, at)| at.value.is_some() && at.path.len() == above.len() + 1)
}

/// The keys of a heading: a path without the numbers of elements.
fn heading(doc: &Doc, path: &[String]) -> String {
    let named = (0..path.len()).filter(|length| !doc.is_list(&path[..*length]));
    let keys: Vec<String> = named.map(|number| key_written(&path[number])).collect();
    keys.join(".")
}

fn lines<'v>(entries: impl Iterator<Item = &'v (String, Value)>) -> String {
    entries.map(|(key, value)| format!("{} = {}\n", key_written(key), value.written())).collect()
}

/// Where a key stands among those of its table.
fn rank(root: Root, above: &[String], key: &str) -> usize {
    match root.at(above) {
        Some(Kind::Record { fields, .. }) => {
            let fields = fields();
            fields.iter().position(|field| field.key == key).unwrap_or(fields.len())
        }
        _ => 0,
    }
}

/// Below the comment at the top of a file, if a blank line sets it apart from what follows.
fn below_comment(text: &str) -> usize {
    let mut place = top(text);
    while text[place..].starts_with('#') {
        place = line_end(text, place);
    }
    let rest = &text[place..];
    let apart = rest.is_empty() || rest.starts_with(['\n', '\r']);
    if apart { place } else { top(text) }
}
