//! Why a formula or a table has no answer.

use thiserror::Error;

/// Why a strength or a stress cannot be told: it lies outside what its formula is valid for.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum NoAnswer {
    /// A figure outside the range that a formula or a table holds for.
    #[error("{quantity} is {value} {unit}; this holds from {low} to {high} {unit}")]
    OutOfRange {
        /// What the figure is.
        quantity: &'static str,
        /// The figure.
        value: f64,
        /// Its unit.
        unit: &'static str,
        /// The least that is allowed.
        low: f64,
        /// The greatest that is allowed.
        high: f64,
    },
    /// A thing that no table knows.
    #[error("no table has {what}")]
    NotInTables {
        /// The thing.
        what: String,
    },
}

/// The figure itself if it lies between two limits, both included.
pub(crate) fn within(
    quantity: &'static str,
    value: f64,
    unit: &'static str,
    low: f64,
    high: f64,
) -> Result<f64, NoAnswer> {
    if (low..=high).contains(&value) {
        Ok(value)
    } else {
        Err(NoAnswer::OutOfRange { quantity, value, unit, low, high })
    }
}
