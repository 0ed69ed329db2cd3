//! Coefficients of rectangular plates, ν = 0.3.

use std::sync::LazyLock;

use serde::Deserialize;

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("plates", include_str!("../data/plates.toml")));

/// A plate clamped all round, its load spread evenly.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Clamped {
    /// Long side over short side \[1\].
    pub ratio: f64,
    /// α of the deflection w = α·q·a⁴/D \[1\].
    pub deflection: f64,
    /// β of the moment β·q·a² at the middle of the long edge \[1\].
    pub edge_moment: f64,
    /// γ of the moment γ·q·a² at the centre \[1\].
    pub centre_moment: f64,
}

/// A plate simply supported all round, its load on a small circle at the centre.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Central {
    /// Long side over short side \[1\].
    pub ratio: f64,
    /// β of the stress \[1\].
    pub beta: f64,
    /// α of the deflection \[1\].
    pub alpha: f64,
}

/// Plates clamped all round, by ratio.
pub fn clamped() -> &'static [Entry<Clamped>] {
    static ROWS: LazyLock<Vec<Entry<Clamped>>> =
        LazyLock::new(|| FILE.rows("clamped_uniform", |row: Clamped| row));
    &ROWS
}

/// Plates simply supported, loaded at the centre, by ratio.
///
/// ```
/// assert_eq!(spile_tables::plate::central()[0].value.alpha, 0.1267);
/// ```
pub fn central() -> &'static [Entry<Central>] {
    static ROWS: LazyLock<Vec<Entry<Central>>> =
        LazyLock::new(|| FILE.rows("supported_central", |row: Central| row));
    &ROWS
}
