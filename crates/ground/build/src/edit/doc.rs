//! The statements of one file, each with its stretch of the text.
//!
//! An edit is a few stretches of the text put anew. So what is known here of a file is where its
//! headings, keys and values stand, and nothing is ever printed from it: whatever is not touched
//! stays as it is, to the last byte.

use std::ops::Range;

use toml_parser::Source;
use toml_parser::parser::{Event, EventKind, parse_document};

/// A key of a heading or of a pair.
#[derive(Debug, Clone)]
pub(super) struct Key {
    pub(super) name: String,
    pub(super) span: Range<usize>,
    /// How much of the statement's path leads to what it names.
    pub(super) end: usize,
}

/// A heading, or a key with its value.
#[derive(Debug)]
pub(super) struct Statement {
    /// Without what stands before and after it in its lines.
    pub(super) span: Range<usize>,
    /// The keys that lead to it from the top of the file; of an element of a list, its number.
    pub(super) path: Vec<String>,
    pub(super) keys: Vec<Key>,
    /// `None` of a heading.
    pub(super) value: Option<Val>,
}

/// A value within its stretch of the text.
#[derive(Debug)]
pub(super) struct Val {
    pub(super) span: Range<usize>,
    pub(super) kind: ValKind,
}

#[derive(Debug)]
pub(super) enum ValKind {
    Scalar,
    List(Vec<Val>),
    Table(Vec<(Vec<Key>, Val)>),
}

/// What stands at a path.
#[derive(Debug)]
pub(super) enum Found<'d> {
    /// Nothing.
    Nothing,
    /// A value.
    Value(&'d Val),
    /// A table, or a list of tables, made by headings or dotted keys.
    Headed,
}

/// The statements of a file, in its order.
#[derive(Debug, Default)]
pub(super) struct Doc {
    pub(super) statements: Vec<Statement>,
}

impl Doc {
    /// Takes a text apart; its syntax is known to be in order.
    pub(super) fn of(text: &str) -> Self {
        let source = Source::new(text);
        let tokens = source.lex().into_vec();
        let mut events = Vec::new();
        let mut take = |event: Event| {
            if !matches!(
                event.kind(),
                EventKind::Whitespace | EventKind::Comment | EventKind::Newline
            ) {
                events.push(event);
            }
        };
        parse_document(&tokens, &mut take, &mut ());
        Taking { source, events: &events, next: 0 }.document()
    }

    /// What stands at a path; at the empty one, the file.
    pub(super) fn find(&self, path: &[String]) -> Found<'_> {
        if path.is_empty() {
            return Found::Headed;
        }
        for statement in &self.statements {
            if let Some(value) = &statement.value
                && let Some(rest) = path.strip_prefix(statement.path.as_slice())
                && let found @ (Found::Value(_) | Found::Headed) = value.find(rest)
            {
                return found;
            }
        }
        if self.statements.iter().any(|statement| statement.path.starts_with(path)) {
            Found::Headed
        } else {
            Found::Nothing
        }
    }

    /// The statements at a path and within it, each with its number.
    pub(super) fn within<'d>(
        &'d self,
        path: &'d [String],
    ) -> impl DoubleEndedIterator<Item = (usize, &'d Statement)> {
        let all = self.statements.iter().enumerate();
        all.filter(move |(_, statement)| statement.path.starts_with(path))
    }

    /// How many elements the list of tables at a path has.
    pub(super) fn elements(&self, path: &[String]) -> usize {
        let numbers = self
            .within(path)
            .filter_map(|(_, statement)| statement.path.get(path.len())?.parse().ok());
        numbers.max().map_or(0, |last: usize| last + 1)
    }

    /// The number of the statement before which the pairs below a heading end.
    pub(super) fn end_of_pairs(&self, statement: usize) -> usize {
        let after = self.statements[statement + 1..].iter();
        statement + 1 + after.take_while(|statement| statement.value.is_some()).count()
    }
}

impl Val {
    fn find(&self, path: &[String]) -> Found<'_> {
        let Some(first) = path.first() else { return Found::Value(self) };
        match &self.kind {
            ValKind::Scalar => Found::Nothing,
            ValKind::List(items) => {
                let item = first.parse().ok().and_then(|number: usize| items.get(number));
                item.map_or(Found::Nothing, |item| item.find(&path[1..]))
            }
            ValKind::Table(entries) => {
                let mut found = Found::Nothing;
                for (keys, value) in entries {
                    let names = || keys.iter().map(|key| &key.name);
                    if path.len() >= keys.len() && names().eq(&path[..keys.len()]) {
                        let within = value.find(&path[keys.len()..]);
                        if !matches!(within, Found::Nothing) {
                            return within;
                        }
                    } else if path.len() < keys.len() && names().take(path.len()).eq(path) {
                        found = Found::Headed;
                    }
                }
                found
            }
        }
    }
}

struct Taking<'t, 'e> {
    source: Source<'t>,
    events: &'e [Event],
    next: usize,
}

impl Taking<'_, '_> {
    fn document(mut self) -> Doc {
        let mut doc = Doc::default();
        // The lists of tables so far, by their paths, with the number of the last element.
        let mut lists: Vec<(Vec<String>, usize)> = Vec::new();
        let mut heading: Vec<String> = Vec::new();
        while let Some(event) = self.peek() {
            let start = event.span().start();
            match event.kind() {
                EventKind::StdTableOpen | EventKind::ArrayTableOpen => {
                    self.next += 1;
                    let is_element = event.kind() == EventKind::ArrayTableOpen;
                    let mut keys = self.keys();
                    let mut path = Vec::new();
                    let last = keys.len().saturating_sub(1);
                    for (number, key) in keys.iter_mut().enumerate() {
                        path.push(key.name.clone());
                        key.end = path.len();
                        let list = lists.iter_mut().find(|(list, _)| *list == path);
                        match list {
                            Some((_, element)) => {
                                *element += usize::from(is_element && number == last);
                                path.push(element.to_string());
                            }
                            None if is_element && number == last => {
                                lists.push((path.clone(), 0));
                                path.push("0".to_owned());
                            }
                            None => {}
                        }
                    }
                    let end = self.peek().map_or(start, |close| close.span().end());
                    self.next += 1;
                    heading.clone_from(&path);
                    doc.statements.push(Statement { span: start..end, path, keys, value: None });
                }
                EventKind::SimpleKey => {
                    let mut keys = self.keys();
                    self.next += 1;
                    let mut path = heading.clone();
                    for key in &mut keys {
                        path.push(key.name.clone());
                        key.end = path.len();
                    }
                    let value = self.value();
                    let span = start..value.span.end;
                    doc.statements.push(Statement { span, path, keys, value: Some(value) });
                }
                _ => self.next += 1,
            }
        }
        doc
    }

    fn peek(&self) -> Option<Event> {
        self.events.get(self.next).copied()
    }

    /// Keys with dots between.
    fn keys(&mut self) -> Vec<Key> {
        let mut keys = Vec::new();
        while let Some(event) = self.peek() {
            match event.kind() {
                EventKind::SimpleKey => {
                    let mut name = String::new();
                    if let Some(raw) = self.source.get(event) {
                        raw.decode_key(&mut name, &mut ());
                    }
                    let span = event.span().start()..event.span().end();
                    keys.push(Key { name, span, end: keys.len() + 1 });
                }
                EventKind::KeySep => {}
                _ => break,
            }
            self.next += 1;
        }
        keys
    }

    fn value(&mut self) -> Val {
        let Some(event) = self.peek() else {
            return Val { span: 0..0, kind: ValKind::Scalar };
        };
        self.next += 1;
        let start = event.span().start();
        let mut items = Vec::new();
        let mut entries = Vec::new();
        let (is_list, close) = match event.kind() {
            EventKind::ArrayOpen => (true, EventKind::ArrayClose),
            EventKind::InlineTableOpen => (false, EventKind::InlineTableClose),
            _ => return Val { span: start..event.span().end(), kind: ValKind::Scalar },
        };
        let mut end = event.span().end();
        while let Some(event) = self.peek() {
            if event.kind() == close {
                end = event.span().end();
                self.next += 1;
                break;
            }
            if event.kind() == EventKind::ValueSep {
                self.next += 1;
            } else if is_list {
                items.push(self.value());
            } else {
                let keys = self.keys();
                self.next += 1;
                entries.push((keys, self.value()));
            }
        }
        let kind = if is_list { ValKind::List(items) } else { ValKind::Table(entries) };
        Val { span: start..end, kind }
    }
}
