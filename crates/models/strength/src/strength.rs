//! Strengths by what they may be compared with.

use spile_quantity::Quantity;

/// A strength at which a thing breaks.
///
/// It cannot be held against a load; a named factor makes it an allowable first:
///
/// ```compile_fail
/// use spile_quantity::Force;
/// use spile_strength::Ultimate;
/// let broken = Ultimate(Force::n(1000.0));
/// broken.used(Force::n(300.0)); // there is no such thing
/// ```
///
/// ```
/// use spile_quantity::Force;
/// use spile_strength::{Factor, Ultimate};
/// let allowed = Ultimate(Force::n(1000.0)).over(Factor { value: 4.0, why: "thin wall" });
/// assert!((allowed.used(Force::n(300.0)) - 1.2).abs() < 1e-12);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ultimate<Q>(pub Q);

/// A strength up to which a thing springs back: proof or yield.
///
/// Like [`Ultimate`] it is held against nothing before a factor is named:
///
/// ```compile_fail
/// use spile_quantity::Force;
/// use spile_strength::{Allowable, Proof};
/// let set: Allowable<Force> = Proof(Force::n(1000.0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Proof<Q>(pub Q);

/// A strength that a load may use up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Allowable<Q>(Q);

/// What an ultimate or proof strength is divided by, and why.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Factor {
    /// The divisor, 1 or more \[1\].
    pub value: f64,
    /// What it covers, in words.
    pub why: &'static str,
}

impl<Q: Quantity> Ultimate<Q> {
    /// What may be used of it.
    pub fn over(self, factor: Factor) -> Allowable<Q> {
        Allowable(Q::from_si(self.0.si() / factor.value))
    }
}

impl<Q: Quantity> Proof<Q> {
    /// What may be used of it.
    pub fn over(self, factor: Factor) -> Allowable<Q> {
        Allowable(Q::from_si(self.0.si() / factor.value))
    }
}

impl<Q: Quantity> Allowable<Q> {
    /// What a design rule or practice allows as it stands, its margin included.
    pub const fn by_rule(value: Q) -> Self {
        Self(value)
    }

    /// The strength itself, for showing.
    pub const fn value(self) -> Q {
        self.0
    }

    /// The share of it that a load uses \[1\]; infinite where nothing is allowed and something
    /// pulls.
    pub fn used(self, load: Q) -> f64 {
        let load = load.si().abs();
        if load == 0.0 { 0.0 } else { load / self.0.si() }
    }

    /// So many of them together, or a part of one.
    #[must_use]
    pub fn times(self, count: f64) -> Self {
        Self(Q::from_si(self.0.si() * count))
    }

    /// The smaller of two.
    #[must_use]
    pub fn min(self, other: Self) -> Self {
        if other.0.si() < self.0.si() { other } else { self }
    }
}
