//! What is told when a text cannot be read.

use std::fmt;
use std::ops::Range;

/// Why a text could not be read as a quantity, where, and how to mend it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Misread {
    /// What is wrong.
    pub kind: MisreadKind,
    /// Where in the text, in bytes; empty where nothing is written.
    pub span: Range<usize>,
    /// The offending part of the text.
    pub found: String,
    /// What was expected there.
    pub expected: String,
    /// How to mend it.
    pub hint: String,
}

/// What is wrong with a text that could not be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MisreadKind {
    /// Nothing is written.
    Empty,
    /// There is no number where one is needed.
    NoNumber,
    /// Something that looks like a number is none.
    BadNumber,
    /// The number can be read in more than one way.
    AmbiguousNumber,
    /// The number is too large, too small or too long to be kept.
    OutOfRange,
    /// The number has no unit.
    NoUnit,
    /// The unit is not known.
    UnknownUnit,
    /// The unit can mean more than one thing.
    AmbiguousUnit,
    /// The unit measures something else.
    WrongQuantity {
        /// What it measures.
        found: &'static str,
    },
    /// The tolerance or range is not complete or not in order.
    BadTolerance,
    /// The quantity cannot have this value.
    Impossible,
    /// Something stands behind the quantity that does not belong to it.
    Trailing,
    /// A cable size that leaves open which measure is meant.
    AmbiguousCable,
    /// A wire gauge that does not exist or is outside what can be read.
    NoSuchGauge,
}

impl fmt::Display for Misread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.found.is_empty() {
            write!(f, "`{}`: ", self.found)?;
        }
        write!(f, "expected {}; {}", self.expected, self.hint)
    }
}

impl std::error::Error for Misread {}
