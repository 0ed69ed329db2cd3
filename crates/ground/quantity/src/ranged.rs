//! A quantity with its bounds.

use crate::Quantity;

/// A quantity that lies for certain between `low` and `high` and most likely at `likely`.
///
/// A tolerance is a bound, not a standard deviation: `440 mm ± 2 mm` is never 443 mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ranged<Q> {
    /// The least it can be.
    pub low: Q,
    /// What it most likely is; `low <= likely <= high`.
    pub likely: Q,
    /// The most it can be.
    pub high: Q,
}

impl<Q: Quantity> Ranged<Q> {
    /// A quantity known exactly.
    pub fn exactly(value: Q) -> Self {
        Self { low: value, likely: value, high: value }
    }

    /// A quantity between two bounds; `None` unless `low <= likely <= high` and all are finite.
    pub fn new(low: Q, likely: Q, high: Q) -> Option<Self> {
        let finite = low.si().is_finite() && likely.si().is_finite() && high.si().is_finite();
        (finite && low <= likely && likely <= high).then_some(Self { low, likely, high })
    }

    /// Whether anything about it is uncertain.
    pub fn is_exact(&self) -> bool {
        self.low == self.high
    }

    /// The same with each of the three numbers put through `f`, which must be increasing.
    pub fn map<R: Quantity>(self, f: impl Fn(Q) -> R) -> Ranged<R> {
        Ranged { low: f(self.low), likely: f(self.likely), high: f(self.high) }
    }
}
