//! Where a number comes from.

use std::borrow::Cow;

use spile_quantity::{Quantity, Ranged};

/// What stands behind a number, best first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Basis {
    /// Taken by the owner, with tape, meter or scale.
    Measured,
    /// From the part's own documents.
    Papers,
    /// A published figure that the program carries.
    Table,
    /// A stand-in from common practice, with a range.
    Typical,
}

impl Basis {
    /// The word for it on screen, on paper and in files.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Measured => "measured",
            Self::Papers => "papers",
            Self::Table => "table",
            Self::Typical => "typical",
        }
    }
}

/// A quantity with its bounds, its basis, and where it can be looked up.
#[derive(Debug, Clone, PartialEq)]
pub struct Given<Q> {
    /// The quantity and its bounds.
    pub value: Ranged<Q>,
    /// What stands behind it.
    pub basis: Basis,
    /// Where it stands: a place in a file, a published table, `common practice`.
    pub source: Cow<'static, str>,
    /// How to get it, or to get it better, with a tape, a meter, a scale or the papers.
    pub how: Cow<'static, str>,
}

impl<Q: Quantity> Given<Q> {
    /// The most likely value.
    pub fn likely(&self) -> Q {
        self.value.likely
    }

    /// The same with each of the three numbers put through `f`, which must be increasing.
    pub fn map<R: Quantity>(&self, f: impl Fn(Q) -> R) -> Given<R> {
        Given {
            value: self.value.map(f),
            basis: self.basis,
            source: self.source.clone(),
            how: self.how.clone(),
        }
    }
}
