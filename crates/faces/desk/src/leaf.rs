//! What can be said of a thing: the fields of its record, and of the records within it.

use spile_build::{FieldOf, Kind, fields};

/// How deep records are asked for within one another.
const DEEP: usize = 4;

/// A field that one value is typed into.
#[derive(Debug, Clone)]
pub(crate) struct Leaf {
    /// The keys that lead to it from the thing: `place.from_rear`.
    pub(crate) path: String,
    /// What its record says of it.
    pub(crate) field: FieldOf,
}

/// A record within a thing, with the fields that it is asked by; the thing itself comes first.
#[derive(Debug, Clone)]
pub(crate) struct Group {
    /// The keys that lead to it from the thing; empty of the thing itself.
    pub(crate) path: String,
    /// What it is, in a sentence.
    pub(crate) doc: &'static str,
    /// Its fields.
    pub(crate) leaves: Vec<Leaf>,
}

/// What can be said of a thing, by the keys that lead to it in the build; empty where there can be
/// no such thing. Things that it holds under names of their own are not among it.
pub(crate) fn groups(what: &str) -> Vec<Group> {
    let mut groups = Vec::new();
    // Of a whole build, the records are things of their own.
    let depth = if what.is_empty() { DEEP } else { 0 };
    gather(&fields(what), "", "", depth, &mut groups);
    groups.retain(|group| !group.leaves.is_empty());
    groups
}

/// The collections of a build, by the keys that lead to them, each with what it holds.
pub(crate) fn collections() -> Vec<(String, &'static str)> {
    let mut all = Vec::new();
    for field in fields("") {
        match field.kind {
            Kind::Keyed(_) => all.push((field.key.to_owned(), field.doc)),
            Kind::Record { fields: inner, .. } => {
                let inner = inner().into_iter();
                let keyed = inner.filter(|inner| matches!(inner.kind, Kind::Keyed(_)));
                all.extend(keyed.map(|inner| (format!("{}.{}", field.key, inner.key), inner.doc)));
            }
            _ => {}
        }
    }
    all
}

/// The things of which a build has one: its keys, each with what it is.
pub(crate) fn singles() -> Vec<(&'static str, &'static str)> {
    let records = fields("").into_iter();
    let records = records.filter(|field| matches!(field.kind, Kind::Record { .. }));
    records.map(|field| (field.key, field.doc)).collect()
}

/// Keys one after the other, with a dot between where there are both.
pub(crate) fn joined(above: &str, key: &str) -> String {
    match (above, key) {
        ("", key) => key.to_owned(),
        (above, "") => above.to_owned(),
        (above, key) => format!("{above}.{key}"),
    }
}

fn gather(
    fields: &[FieldOf],
    path: &str,
    doc: &'static str,
    depth: usize,
    groups: &mut Vec<Group>,
) {
    let here = groups.len();
    groups.push(Group { path: path.to_owned(), doc, leaves: Vec::new() });
    for field in fields {
        let at = joined(path, field.key);
        match &field.kind {
            Kind::Record { fields, .. } if depth < DEEP => {
                gather(&fields(), &at, field.doc, depth + 1, groups);
            }
            Kind::Record { .. } | Kind::Keyed(_) => {}
            _ => groups[here].leaves.push(Leaf { path: at, field: field.clone() }),
        }
    }
}
