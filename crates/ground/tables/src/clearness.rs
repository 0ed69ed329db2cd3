//! Clearness: how clear tomorrow is after a day as clear as today.

use std::sync::LazyLock;

use serde::Deserialize;

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("clearness", include_str!("../data/clearness.toml")));

/// One matrix of the library.
#[derive(Debug, Clone, PartialEq)]
pub struct Range {
    /// The lower end of the monthly means that it is for.
    pub mean_from: f64,
    /// Their upper end.
    pub mean_to: f64,
    /// The least clearness of a day: the lower end of the first of ten equal classes.
    pub least: f64,
    /// The greatest: the upper end of the last.
    pub greatest: f64,
}

/// The ranges, by rising mean.
pub fn ranges() -> &'static [Entry<Range>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        matrix: usize,
        mean_from: f64,
        mean_to: f64,
        least: f64,
        greatest: f64,
    }
    static ALL: LazyLock<Vec<Entry<Range>>> = LazyLock::new(|| {
        FILE.rows("clearness_range", |r: Row| {
            assert!(r.matrix > 0, "matrices are counted from one");
            let Row { mean_from, mean_to, least, greatest, .. } = r;
            Range { mean_from, mean_to, least, greatest }
        })
    });
    &ALL
}

/// For each class of today, the chances of tomorrow's classes, as printed: ten rows a matrix, in
/// the order of [`ranges`].
///
/// ```
/// let rows = spile_tables::clearness::transitions();
/// assert_eq!(rows[0].value[1], 0.333);
/// ```
pub fn transitions() -> &'static [Entry<[f64; 10]>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        matrix: usize,
        today: usize,
        chances: [f64; 10],
    }
    static ALL: LazyLock<Vec<Entry<[f64; 10]>>> = LazyLock::new(|| {
        FILE.rows("clearness_transition", |r: Row| {
            assert!(r.matrix > 0 && r.today > 0, "matrices and classes are counted from one");
            r.chances
        })
    });
    &ALL
}
