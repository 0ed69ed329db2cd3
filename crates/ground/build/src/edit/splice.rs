//! One file's text with a value set, removed or renamed in it.
//!
//! Each of these puts a few stretches of the text anew and leaves the rest as it is.

use std::ops::Range;

use super::doc::{Doc, Found, Val, ValKind};
use super::lines::{attached, blank_before, eol, insert, line_end, line_start, put, without};
use super::style::{Shape, block_place, blocks, line_place, shape};
use super::value::{Value, key_written};
use crate::kind::Root;

/// Why a change cannot be made in a file.
#[derive(Debug)]
pub(super) struct Slip {
    pub(super) span: Range<usize>,
    pub(super) says: String,
    pub(super) hint: &'static str,
}

pub(super) type Spliced = Result<String, Slip>;

/// Sets what stands at a path. Of a table, keys that are not in the new one go, and values that
/// are the same already stay as they are spelled.
pub(super) fn set(text: &str, root: Root, path: &[String], value: &Value) -> Spliced {
    let doc = Doc::of(text);
    let value = value.opened();
    match doc.find(path) {
        Found::Nothing => insert_at(text, &doc, root, path, &value),
        Found::Value(val) => match (&val.kind, value.as_ref()) {
            (ValKind::Table(_), Value::Table(entries)) => merge(text, &doc, root, path, entries),
            (ValKind::List(items), Value::List(new)) if items.len() == new.len() => {
                each(text, root, path, new)
            }
            (_, value) if value.is(&text[val.span.clone()]) => Ok(text.to_owned()),
            (_, value) => Ok(put(text, vec![(val.span.clone(), value.written())])),
        },
        Found::Headed => match value.as_ref() {
            Value::Table(entries) if !doc.is_list(path) => merge(text, &doc, root, path, entries),
            Value::List(new)
                if doc.is_list(path)
                    && !new.is_empty()
                    && new.iter().all(|item| matches!(item, Value::Table(_))) =>
            {
                let mut text = text.to_owned();
                for number in (new.len()..doc.elements(path)).rev() {
                    text = remove(&text, &join(path, &number.to_string()))?;
                }
                each(&text, root, path, new)
            }
            _ if path.split_last().is_some_and(|(_, above)| doc.is_list(above)) => Err(Slip {
                span: span_of(&doc, path),
                says: format!("`{}` is in a list of tables", path.join(".")),
                hint: "put a table there, or take it out",
            }),
            value => set(&remove(text, path)?, root, path, value),
        },
    }
}

/// Removes what stands at a path: a key with its line, a table with all that is headed by it and
/// the comment right above, an element of a list.
pub(super) fn remove(text: &str, path: &[String]) -> Spliced {
    let doc = Doc::of(text);
    if let Found::Nothing = doc.find(path) {
        return Err(missing(path));
    }
    if let Some(stretches) = within_value(text, &doc, path) {
        return Ok(put(text, stretches.into_iter().map(|span| (span, String::new())).collect()));
    }
    let mut stretches: Vec<Range<usize>> = Vec::new();
    let mut next = 0;
    for (number, statement) in doc.within(path) {
        if number < next {
            continue;
        }
        if statement.value.is_some() {
            let span = &statement.span;
            stretches.push(line_start(text, span.start)..line_end(text, span.end));
        } else {
            next = doc.end_of_pairs(number);
            let start = attached(text, statement.span.start);
            let mut end = line_end(text, doc.statements[next - 1].span.end);
            if blank_before(text, start) {
                while end < text.len() && text[end..line_end(text, end)].trim().is_empty() {
                    end = line_end(text, end);
                }
            }
            stretches.push(start..end);
        }
    }
    Ok(without(text, stretches))
}

/// Gives what stands at a path another name, in every heading and key that leads to it.
pub(super) fn rename(text: &str, path: &[String], to: &str) -> Spliced {
    let doc = Doc::of(text);
    let Some((_, above)) = path.split_last() else { return Err(missing(path)) };
    if let Found::Nothing = doc.find(path) {
        return Err(missing(path));
    }
    if !matches!(doc.find(&join(above, to)), Found::Nothing) {
        return Err(Slip {
            span: 0..0,
            says: format!("there is a `{}` already", join(above, to).join(".")),
            hint: "choose a name that is not taken",
        });
    }
    let mut spans: Vec<Range<usize>> = Vec::new();
    for statement in &doc.statements {
        if statement.path.starts_with(path) {
            let key = statement.keys.iter().find(|key| key.end == path.len());
            spans.extend(key.map(|key| key.span.clone()));
        } else if let (Some(value), Some(rest)) =
            (&statement.value, path.strip_prefix(statement.path.as_slice()))
        {
            keys_within(value, rest, &mut spans);
        }
    }
    Ok(put(text, spans.into_iter().map(|span| (span, key_written(to))).collect()))
}

/// Inserts an element into a list before the one of that number, or at its end.
pub(super) fn insert_element(
    text: &str,
    root: Root,
    path: &[String],
    number: usize,
    value: &Value,
) -> Spliced {
    let doc = Doc::of(text);
    let value = value.opened();
    match doc.find(path) {
        Found::Nothing => set(text, root, path, &Value::List(vec![value.into_owned()])),
        Found::Value(Val { kind: ValKind::List(items), span }) => {
            let written = value.written();
            Ok(put(
                text,
                vec![match (items.get(number), items.last()) {
                    (Some(item), _) => (item.span.start..item.span.start, format!("{written}, ")),
                    (None, Some(last)) => (last.span.end..last.span.end, format!(", {written}")),
                    (None, None) => (span.clone(), format!("[{written}]")),
                }],
            ))
        }
        Found::Headed if doc.is_list(path) && matches!(*value, Value::Table(_)) => {
            let here = join(path, &number.to_string());
            let place = match doc.within(&here).next() {
                Some((_, element)) => attached(text, element.span.start),
                None => doc
                    .within(path)
                    .next_back()
                    .map_or(text.len(), |(_, last)| line_end(text, last.span.end)),
            };
            let list = Value::List(vec![value.into_owned()]);
            let block = blocks(root, &doc, path, &list).concat();
            Ok(insert(text, place, &block, true))
        }
        _ => Err(Slip {
            span: span_of(&doc, path),
            says: format!("`{}` is no list", path.join(".")),
            hint: "an element can be put into a list only",
        }),
    }
}

pub(super) fn join(path: &[String], key: &str) -> Vec<String> {
    path.iter().cloned().chain([key.to_owned()]).collect()
}

fn missing(path: &[String]) -> Slip {
    Slip {
        span: 0..0,
        says: format!("there is no `{}` in this file", path.join(".")),
        hint: "name what stands in it by the keys that lead there",
    }
}

fn span_of(doc: &Doc, path: &[String]) -> Range<usize> {
    doc.within(path).next().map_or(0..0, |(_, statement)| statement.span.clone())
}

/// A table that becomes another, key by key.
fn merge(text: &str, doc: &Doc, root: Root, path: &[String], new: &[(String, Value)]) -> Spliced {
    let mut text = text.to_owned();
    for key in doc.keys(path) {
        if !new.iter().any(|(name, _)| *name == key) {
            text = remove(&text, &join(path, &key))?;
        }
    }
    for (key, value) in new {
        text = set(&text, root, &join(path, key), value)?;
    }
    Ok(text)
}

/// A list that becomes another, element by element.
fn each(text: &str, root: Root, path: &[String], new: &[Value]) -> Spliced {
    let mut text = text.to_owned();
    for (number, value) in new.iter().enumerate() {
        text = set(&text, root, &join(path, &number.to_string()), value)?;
    }
    Ok(text)
}

/// Puts in what was not there, into the innermost table that is.
fn insert_at(text: &str, doc: &Doc, root: Root, path: &[String], value: &Value) -> Spliced {
    let known = (0..path.len())
        .rev()
        .find(|length| !matches!(doc.find(&path[..*length]), Found::Nothing))
        .unwrap_or(0);
    let (above, rest) = path.split_at(known);
    let Some((name, deeper)) = rest.split_first() else { return Err(missing(path)) };
    let wrap = |value, key: &String| Value::Table(vec![(key.clone(), value)]);
    let value = deeper.iter().rev().fold(value.clone(), wrap);
    // The innermost value around it, if it lies within one: a table or list in one line.
    let around = (0..=known).rev().find_map(|length| match doc.find(&path[..length]) {
        Found::Value(val) => Some((val, &path[length..known])),
        _ => None,
    });
    if let Some((val, dotted)) = around {
        return insert_entry(text, val, dotted, name, &value).ok_or_else(|| no_keys(val, above));
    }
    if doc.is_list(above) {
        let end = doc.elements(above);
        return match name.parse() {
            Ok(number) if number == end => insert_element(text, root, above, number, &value),
            _ => Err(missing(path)),
        };
    }
    let here = join(above, name);
    if shape(root, doc, &here, &value) == Shape::Line {
        let place = line_place(text, root, doc, above, name);
        let line = format!("{}{} = {}\n", place.before, key_written(name), value.written());
        return Ok(insert(text, place.at, &line, place.apart));
    }
    let blocks = blocks(root, doc, &here, &value);
    if blocks.is_empty() {
        return Ok(text.to_owned());
    }
    Ok(insert(text, block_place(text, root, doc, above, name), &blocks.join("\n"), true))
}

fn no_keys(val: &Val, path: &[String]) -> Slip {
    Slip {
        span: val.span.clone(),
        says: format!("`{}` is a value and has no keys", path.join(".")),
        hint: "name the value by the keys that lead to it, with dots between",
    }
}

/// Puts an entry into a table or list that is written in one value.
fn insert_entry(
    text: &str,
    val: &Val,
    dotted: &[String],
    name: &str,
    value: &Value,
) -> Option<String> {
    let (entry, end, brackets) = match &val.kind {
        ValKind::Scalar => return None,
        ValKind::List(items) => {
            if name.parse() != Ok(items.len()) {
                return None;
            }
            (value.written(), items.last().map(|item| item.span.end), ["[", "]"])
        }
        ValKind::Table(entries) => {
            let keys: Vec<String> =
                dotted.iter().map(String::as_str).chain([name]).map(key_written).collect();
            let entry = format!("{} = {}", keys.join("."), value.written());
            (entry, entries.last().map(|(_, val)| val.span.end), ["{ ", " }"])
        }
    };
    Some(match end {
        Some(end) => put(text, vec![(end..end, format!(", {entry}"))]),
        None => {
            put(text, vec![(val.span.clone(), format!("{}{entry}{}", brackets[0], brackets[1]))])
        }
    })
}

/// The stretches to be taken out for an entry of a table or list that is written in one value.
fn within_value(text: &str, doc: &Doc, path: &[String]) -> Option<Vec<Range<usize>>> {
    let around = (0..path.len()).rev().find_map(|length| match doc.find(&path[..length]) {
        Found::Value(val) => Some((val, &path[length..])),
        _ => None,
    });
    let (val, rest) = around?;
    let (spans, gone): (Vec<Range<usize>>, Vec<bool>) = match &val.kind {
        ValKind::Scalar => return None,
        ValKind::List(items) => items
            .iter()
            .enumerate()
            .map(|(number, item)| (item.span.clone(), rest[0] == number.to_string()))
            .unzip(),
        ValKind::Table(entries) => entries
            .iter()
            .map(|(keys, val)| {
                let names: Vec<&String> = keys.iter().map(|key| &key.name).collect();
                let is_within = names.iter().zip(rest).filter(|(a, b)| **a == *b).count();
                (keys[0].span.start..val.span.end, is_within == rest.len())
            })
            .unzip(),
    };
    if gone.iter().all(|gone| *gone) && !text[val.span.clone()].contains('#') {
        let inner = val.span.start + 1..val.span.end - 1;
        return Some(Vec::from([inner]));
    }
    let mut stretches: Vec<Range<usize>> = Vec::new();
    for number in (0..spans.len()).filter(|number| gone[*number]) {
        let span = &spans[number];
        let rest_goes = gone[number..].iter().all(|gone| *gone);
        let before = number.checked_sub(1).map(|before| spans[before].end);
        let stretch = match (spans.get(number + 1), before) {
            (Some(next), _) if !rest_goes && !text[span.end..next.start].contains('#') => {
                span.start..next.start
            }
            (_, Some(before)) if rest_goes && !text[before..span.start].contains('#') => {
                before..span.end
            }
            _ => span.start..comma_after(text, span.end, val.span.end),
        };
        match stretches.last_mut() {
            Some(last) if stretch.start <= last.end => last.end = last.end.max(stretch.end),
            _ => stretches.push(stretch),
        }
    }
    Some(stretches)
}

/// Where the comma ends that follows an entry; where none does, the entry's own end.
fn comma_after(text: &str, entry_end: usize, end: usize) -> usize {
    let mut in_comment = false;
    for (place, c) in text[entry_end..end].char_indices() {
        match c {
            '#' => in_comment = true,
            '\n' => in_comment = false,
            ',' if !in_comment => return entry_end + place + 1,
            c if !in_comment && !c.is_whitespace() => break,
            _ => {}
        }
    }
    entry_end
}

/// The spans of the keys, within a value, that lead to what is renamed.
fn keys_within(val: &Val, path: &[String], spans: &mut Vec<Range<usize>>) {
    match &val.kind {
        ValKind::Scalar => {}
        ValKind::List(items) => {
            if let Some(item) = path[0].parse().ok().and_then(|number: usize| items.get(number))
                && path.len() > 1
            {
                keys_within(item, &path[1..], spans);
            }
        }
        ValKind::Table(entries) => {
            for (keys, val) in entries {
                let same = keys.iter().zip(path).take_while(|(key, name)| key.name == **name);
                let same = same.count();
                if same == path.len() {
                    spans.push(keys[same - 1].span.clone());
                } else if same == keys.len() {
                    keys_within(val, &path[same..], spans);
                }
            }
        }
    }
}

impl Doc {
    /// Whether a list of tables with headings in double brackets stands at a path.
    pub(super) fn is_list(&self, path: &[String]) -> bool {
        self.within(path).any(|(_, statement)| {
            statement.value.is_none()
                && statement.path.len() == path.len() + 1
                && statement.keys.last().is_some_and(|key| key.end == path.len())
        })
    }

    /// The keys of the table at a path.
    pub(super) fn keys(&self, path: &[String]) -> Vec<String> {
        let mut keys: Vec<String> = Vec::new();
        let mut add = |key: &String| {
            if !keys.contains(key) {
                keys.push(key.clone());
            }
        };
        for statement in &self.statements {
            if let Some(key) = statement.path.get(path.len())
                && statement.path.starts_with(path)
            {
                add(key);
            } else if let (Some(value), Some(rest)) =
                (&statement.value, path.strip_prefix(statement.path.as_slice()))
            {
                value.keys(rest, &mut add);
            }
        }
        keys
    }
}

impl Val {
    /// The keys of the table at a path within a value.
    fn keys(&self, path: &[String], add: &mut impl FnMut(&String)) {
        match &self.kind {
            ValKind::Scalar => {}
            ValKind::List(items) => {
                let number = path.first().and_then(|first| first.parse::<usize>().ok());
                if let Some(item) = number.and_then(|number| items.get(number)) {
                    item.keys(&path[1..], add);
                }
            }
            ValKind::Table(entries) => {
                for (keys, val) in entries {
                    let same = keys.iter().zip(path).take_while(|(key, name)| key.name == **name);
                    let same = same.count();
                    if same == path.len() && same < keys.len() {
                        add(&keys[same].name);
                    } else if same == keys.len() {
                        val.keys(&path[same..], add);
                    }
                }
            }
        }
    }
}

/// A block's text with the line ends of the text that it goes into.
pub(super) fn with_ends_of(text: &str, block: &str) -> String {
    block.replace('\n', eol(text))
}
