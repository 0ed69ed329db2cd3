//! What can be wrong with the numbers given to a formula.

/// Why a figure of energy could not be computed.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum EnergyError {
    /// A value lies where the formula is not known to hold.
    #[error("{what} is {value} {unit}, and the formula holds from {low} to {high} {unit}")]
    OutOfRange {
        /// What the value is, in words: `latitude`.
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
}

/// `value` if it lies in `low..=high`; not a number never does.
pub(crate) fn within(
    what: &'static str,
    value: f64,
    unit: &'static str,
    low: f64,
    high: f64,
) -> Result<f64, EnergyError> {
    if value >= low && value <= high {
        Ok(value)
    } else {
        Err(EnergyError::OutOfRange { what, value, unit, low, high })
    }
}

/// `value` if it is neither negative nor infinite.
pub(crate) fn not_negative(
    what: &'static str,
    value: f64,
    unit: &'static str,
) -> Result<f64, EnergyError> {
    within(what, value, unit, 0.0, f64::MAX)
}

/// `value` if it is above zero and finite.
pub(crate) fn positive(
    what: &'static str,
    value: f64,
    unit: &'static str,
) -> Result<f64, EnergyError> {
    within(what, value, unit, f64::MIN_POSITIVE, f64::MAX)
}
