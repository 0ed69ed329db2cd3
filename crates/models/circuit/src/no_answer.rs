//! Why a formula or a table has no answer.

use thiserror::Error;

/// Why a figure cannot be told: it lies outside what the formula or the table is valid for.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum NoAnswer {
    /// A figure outside the range that a formula or a table holds for.
    #[error(
        "{quantity} is {} {unit}; this holds from {} to {} {unit}",
        short(*.value), short(*.low), short(*.high)
    )]
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

/// Linear in the logarithms of both between two points.
///
/// `at` lies between the two; all figures are above zero.
pub(crate) fn log_log((x1, y1): (f64, f64), (x2, y2): (f64, f64), at: f64) -> f64 {
    y1 * (y2 / y1).powf((at / x1).ln() / (x2 / x1).ln())
}

/// A figure to four digits, as a message shows it.
fn short(value: f64) -> f64 {
    format!("{value:.3e}").parse().unwrap_or(value)
}
