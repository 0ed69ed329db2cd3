//! Where figures come from, and how far to trust them.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::Deserialize;

/// How far a figure was followed to its source.
///
/// Ordered: a later one is worth less.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Status {
    /// Seen in the place that the source names.
    Verified,
    /// Recalled, and borne out by a separate calculation.
    Recomputed,
    /// Recalled, not seen: a band of plausibility, never ground for a *stop*.
    FromMemory,
}

impl Status {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Verified => "verified",
            Self::Recomputed => "recomputed",
            Self::FromMemory => "from memory",
        }
    }
}

/// What a figure may be used for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Class {
    /// Not to be passed: physics, law, a standard's rating.
    Limit,
    /// A rule of good practice: against it is at most *care*.
    Practice,
    /// What a thing is like; it judges nothing.
    Property,
}

impl Class {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Limit => "limit",
            Self::Practice => "practice",
            Self::Property => "property",
        }
    }
}

/// A published place that figures were taken from.
#[derive(Debug, PartialEq, Eq)]
pub struct Source {
    /// The name that tables use for it.
    pub key: String,
    /// What it is.
    pub title: String,
    /// Which edition, table or clause.
    pub edition: String,
    /// Where its figures were seen: most standards are sold, not free.
    pub seen: String,
    /// How far the source as a whole was seen.
    pub status: Status,
}

/// A figure or row of a table, with its source.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry<T> {
    /// What the table says.
    pub value: T,
    /// Who says so.
    pub source: &'static Source,
    /// How far this very row was followed to its source.
    pub status: Status,
    /// What it may be used for.
    pub class: Class,
}

impl<T> Entry<T> {
    /// Whether being outside this figure may make a *stop*: a limit, and not only from memory.
    pub fn may_stop(&self) -> bool {
        self.class == Class::Limit && self.status != Status::FromMemory
    }

    /// The same row with `f` of its value.
    pub fn map<U>(&self, f: impl FnOnce(&T) -> U) -> Entry<U> {
        Entry { value: f(&self.value), source: self.source, status: self.status, class: self.class }
    }
}

/// All sources, by key.
///
/// ```
/// let all = spile_tables::sources();
/// assert!(all.iter().any(|s| s.key == "iec-60228"));
/// ```
pub fn sources() -> &'static [Source] {
    static ALL: LazyLock<Vec<Source>> = LazyLock::new(|| {
        #[derive(Deserialize)]
        #[serde(deny_unknown_fields)]
        struct Row {
            title: String,
            edition: String,
            seen: String,
            status: Status,
        }
        let rows: BTreeMap<String, Row> = toml::from_str(include_str!("../data/sources.toml"))
            .expect("data/sources.toml is well formed");
        rows.into_iter()
            .map(|(key, Row { title, edition, seen, status })| Source {
                key,
                title,
                edition,
                seen,
                status,
            })
            .collect()
    });
    &ALL
}

/// The source of that key.
pub fn source(key: &str) -> Option<&'static Source> {
    let all = sources();
    all.binary_search_by(|s| s.key.as_str().cmp(key)).ok().map(|at| &all[at])
}
