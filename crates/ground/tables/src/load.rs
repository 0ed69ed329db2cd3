//! Load cases: how many times its weight a thing pushes, and where.

use std::sync::LazyLock;

use serde::Deserialize;

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("loads", include_str!("../data/loads.toml")));

/// Accelerations in times of that of gravity \[1\].
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LoadCase {
    /// The name to ask for it by: `road`, `battery`, `crash` and the standards'.
    pub key: String,
    /// Forward, as in braking.
    pub forward: f64,
    /// Rearward.
    pub rearward: f64,
    /// To either side.
    pub sideways: f64,
    /// Upward, net of gravity; `None` where the source asks for nothing.
    pub up: Option<f64>,
    /// Downward, gravity included; `None` where the source asks for nothing.
    pub down: Option<f64>,
}

/// Every load case.
pub fn load_cases() -> &'static [Entry<LoadCase>] {
    static ROWS: LazyLock<Vec<Entry<LoadCase>>> =
        LazyLock::new(|| FILE.rows("load_case", |case: LoadCase| case));
    &ROWS
}

/// The load case of that key.
///
/// ```
/// let road = spile_tables::load::load_case("road").unwrap();
/// assert_eq!((road.value.down, road.value.forward), (Some(3.0), 1.0));
/// assert!(!road.may_stop());
/// ```
pub fn load_case(key: &str) -> Option<&'static Entry<LoadCase>> {
    load_cases().iter().find(|entry| entry.value.key == key)
}
