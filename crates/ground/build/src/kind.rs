//! What may stand at a key of the files, for those who make forms of it.
//!
//! It is told by the same records that are read, so that a form asks for whatever a file may say.

use crate::file::{BuildFile, JobFile, PartFile};

/// What may stand at a key.
#[derive(Debug, Clone)]
pub enum Kind {
    /// A quantity with its unit.
    Quantity {
        /// What it is: `length`.
        name: &'static str,
        /// How it may be written: `440 mm`.
        example: &'static str,
    },
    /// Any text.
    Text,
    /// One of some words.
    Words(&'static [&'static str]),
    /// True or false.
    Flag,
    /// A whole number.
    Count,
    /// A day, as 2026-03-14.
    Day,
    /// Rows of two plain numbers.
    Rows,
    /// A table with keys of its own.
    Record {
        /// What it is: `a part`.
        what: &'static str,
        /// Its fields.
        fields: fn() -> Vec<FieldOf>,
    },
    /// A list of such.
    List(Box<Self>),
    /// Things under names of their owner's choice.
    Keyed(Box<Self>),
    /// Whatever stands elsewhere in the build: what a job found, and what it puts there.
    Any,
}

/// One field of a record.
#[derive(Debug, Clone)]
pub struct FieldOf {
    /// Its key in the files.
    pub key: &'static str,
    /// What it is, in a sentence.
    pub doc: &'static str,
    /// What may stand there.
    pub kind: Kind,
    /// Whether the rest of the record says nothing without it.
    pub required: bool,
    /// What holds where it is not said, in words; `None` where nothing is known then, or where a
    /// typical value is assumed that the answers list.
    pub default: Option<&'static str>,
    /// The collection that a text names a thing of: `parts`.
    pub names: Option<&'static str>,
}

/// The fields of a record, by the keys that lead to it in `build.toml`, with any name, or `*`, in
/// the place of a thing's own: `fields("items")` and `fields("items.*")` are those of an item,
/// `fields("items.*.place")` those of its place, `fields("")` those of a build, and
/// `fields("job")` those of a job. Empty where there is no such record.
///
/// ```
/// let place = spile_build::fields("items.fridge.place");
/// let above = place.iter().find(|field| field.key == "above").unwrap();
/// assert_eq!(above.doc, "From the floor up to its underside.");
/// ```
pub fn fields(path: &str) -> Vec<FieldOf> {
    let (root, path) = match path.strip_prefix("job") {
        Some("") => (Root::Job, ""),
        Some(rest) if rest.starts_with('.') => (Root::Job, &rest[1..]),
        _ => (Root::Build, path),
    };
    let keys: Vec<&str> = path.split('.').filter(|key| !key.is_empty()).collect();
    let mut kind = root.at(&keys);
    while let Some(Kind::Keyed(inner) | Kind::List(inner)) = kind {
        kind = Some(*inner);
    }
    match kind {
        Some(Kind::Record { fields, .. }) => fields(),
        _ => Vec::new(),
    }
}

/// The files there are, each with a record of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Root {
    Build,
    Part,
    Job,
}

impl Root {
    /// What kind of file a name is of.
    pub(crate) fn of(file: &str) -> Self {
        match file.split_once('/') {
            Some(("parts", _)) => Self::Part,
            Some(_) => Self::Job,
            None => Self::Build,
        }
    }

    /// What may stand at a path; `None` where nothing may.
    pub(crate) fn at<K: AsRef<str>>(self, path: &[K]) -> Option<Kind> {
        let mut kind = match self {
            Self::Build => Kind::Record { what: "a build", fields: BuildFile::fields },
            Self::Part => Kind::Record { what: "a part", fields: PartFile::fields },
            Self::Job => Kind::Record { what: "a job", fields: JobFile::fields },
        };
        for key in path {
            kind = match kind {
                Kind::Record { fields, .. } => {
                    fields().into_iter().find(|field| field.key == key.as_ref())?.kind
                }
                Kind::Keyed(inner) | Kind::List(inner) => *inner,
                Kind::Any => Kind::Any,
                _ => return None,
            };
        }
        Some(kind)
    }
}

/// Keys without which a record says nothing, by what the record is.
const REQUIRED: [(&str, &[&str]); 16] = [
    ("a door", &["width", "height"]),
    ("a part", &["kind"]),
    ("a size", &["width", "height", "depth"]),
    ("a size in the vehicle", &["length", "width", "height"]),
    ("a flange", &["width", "height"]),
    ("a cut-out", &["width", "height"]),
    ("a fixing", &["screw"]),
    ("a consumption", &["ambient", "inside", "per_day"]),
    ("a profile", &["columns", "unit", "rows", "carried"]),
    ("measures at several heights", &["unit", "rows"]),
    ("a bay", &["size"]),
    ("a panel", &["closes", "size"]),
    ("a source", &["kind"]),
    ("a removal", &["what"]),
    ("a move", &["what", "to"]),
    ("a change", &["what", "to"]),
];

/// Texts that name a thing of the build, by what the record is and its key.
const NAMES: [(&str, &str, &str); 10] = [
    ("a place", "in", "bays"),
    ("a place", "on", "items"),
    ("a panel", "closes", "bays"),
    ("an item", "part", "parts"),
    ("an item", "panel", "panels"),
    ("an item", "condenser_in", "bays"),
    ("a run", "to", "items"),
    ("a way", "run", "runs"),
    ("the bank", "part", "parts"),
    ("a weighing", "state", "states.load"),
];

impl FieldOf {
    /// A field of a record, from what the record's definition says.
    pub(crate) fn of(what: &str, key: &'static str, doc: &'static str, kind: Kind) -> Self {
        let doc = doc.trim();
        let required = REQUIRED.iter().any(|(record, keys)| *record == what && keys.contains(&key));
        let names = NAMES.iter().find(|(record, name, _)| *record == what && *name == key);
        let default = doc.split_once("without it, ").map(|(_, words)| words.trim_end_matches('.'));
        Self { key, doc, kind, required, default, names: names.map(|(_, _, things)| *things) }
    }
}
