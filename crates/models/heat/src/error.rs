//! What can be wrong with the numbers given to a formula.

use crate::compressor::CoolerKind;

/// Why a figure of heat could not be computed.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum HeatError {
    /// A value lies where the formula is not known to hold.
    #[error("{what} is {value} {unit}, and the formula holds from {low} to {high} {unit}")]
    OutOfRange {
        /// What the value is, in words: `outside temperature`.
        what: &'static str,
        /// The value given.
        value: f64,
        /// The unit of `value`, `low` and `high`.
        unit: &'static str,
        /// The least that is allowed.
        low: f64,
        /// The most that is allowed.
        high: f64,
    },
    /// The cooler works by another principle than the one computed here.
    #[error("{0} coolers are not modelled: they are not compressors and cannot be computed as one")]
    NotModelled(CoolerKind),
    /// Free nodes of a heat network with no way for heat to leave them.
    #[error("no heat path leads from {} to a known temperature", .nodes.join(", "))]
    Untied {
        /// The names of the nodes.
        nodes: Vec<String>,
    },
    /// A node that belongs to another network.
    #[error("a node of another heat network was used")]
    Stranger,
    /// A fit was asked for without a figure to fit to.
    #[error("there is no consumption to fit to")]
    NothingToFit,
    /// No answer was found between the ends where it must lie.
    #[error("no {what} balances the heat between {low} and {high} {unit}")]
    NoBalance {
        /// What was looked for, in words.
        what: &'static str,
        /// The lower end of the search.
        low: f64,
        /// The upper end of the search.
        high: f64,
        /// The unit of both ends.
        unit: &'static str,
    },
}

/// `value` if it lies in `low..=high`; not a number never does.
pub(crate) fn within(
    what: &'static str,
    value: f64,
    unit: &'static str,
    low: f64,
    high: f64,
) -> Result<f64, HeatError> {
    if value >= low && value <= high {
        Ok(value)
    } else {
        Err(HeatError::OutOfRange { what, value, unit, low, high })
    }
}

/// `value` if it is neither negative nor infinite.
pub(crate) fn not_negative(
    what: &'static str,
    value: f64,
    unit: &'static str,
) -> Result<f64, HeatError> {
    within(what, value, unit, 0.0, f64::MAX)
}

/// `value` if it is a finite number.
pub(crate) fn finite(what: &'static str, value: f64, unit: &'static str) -> Result<f64, HeatError> {
    within(what, value, unit, f64::MIN, f64::MAX)
}

/// `value` if it is above zero and finite.
pub(crate) fn positive(
    what: &'static str,
    value: f64,
    unit: &'static str,
) -> Result<f64, HeatError> {
    within(what, value, unit, f64::MIN_POSITIVE, f64::MAX)
}
