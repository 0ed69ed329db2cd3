//! The marks of a tape measure, and rounding to them in a given direction.

use std::fmt;

use crate::exact::Exact;
use crate::{Length, Quantity, Ranged};

/// How a tape is divided.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tape {
    /// Sixteenths of an inch.
    Sixteenth,
    /// Thirty-seconds of an inch.
    ThirtySecond,
    /// Sixty-fourths of an inch.
    SixtyFourth,
    /// Millimetres.
    Millimetre,
    /// Half millimetres.
    HalfMillimetre,
}

/// A mark of a tape.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Mark {
    tape: Tape,
    steps: i64,
}

/// A length put on a mark.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Marked {
    /// The mark.
    pub mark: Mark,
    /// How much further out the mark is than the length; negative where it falls short.
    pub error: Length,
}

/// How near to a mark a length counts as being on it. Sums of lengths are off by far less, what a
/// hand can mark by far more.
const ON_THE_MARK: Length = Length::m(1e-9);

/// The longest length that is put on a tape, either way.
const LONGEST: Length = Length::m(1e6);

impl Tape {
    /// The distance of two marks.
    pub fn step(self) -> Length {
        Mark { tape: self, steps: 1 }.length()
    }

    /// Whether it is divided in inches.
    pub fn is_inch(self) -> bool {
        matches!(self, Self::Sixteenth | Self::ThirtySecond | Self::SixtyFourth)
    }

    /// The last mark that is not beyond `length`; `None` unless it is finite and below 1000 km.
    ///
    /// ```
    /// use spile_quantity::{Length, Tape};
    /// let length = Length::mm(522.0);
    /// let below = Tape::ThirtySecond.down(length).unwrap();
    /// assert_eq!(below.mark.to_string(), "20 17/32 in");
    /// assert_eq!(Tape::ThirtySecond.up(length).unwrap().mark.to_string(), "20 9/16 in");
    /// ```
    pub fn down(self, length: Length) -> Option<Marked> {
        self.mark(length + ON_THE_MARK, f64::floor).map(|mark| put(length, mark))
    }

    /// The first mark that is not short of `length`; `None` unless it is finite and below 1000 km.
    pub fn up(self, length: Length) -> Option<Marked> {
        self.mark(length - ON_THE_MARK, f64::ceil).map(|mark| put(length, mark))
    }

    /// The mark nearest to `length`; `None` unless it is finite and below 1000 km.
    pub fn nearest(self, length: Length) -> Option<Marked> {
        self.mark(length, f64::round).map(|mark| put(length, mark))
    }

    /// The marks from `low` to `high`, in order; none where the tape has none there.
    pub fn between(self, low: Length, high: Length) -> impl Iterator<Item = Mark> {
        let first = self.up(low).map(|at| at.mark.steps);
        let last = self.down(high).map(|at| at.mark.steps);
        let steps = first.zip(last).into_iter().flat_map(|(first, last)| first..=last);
        steps.map(move |steps| Mark { tape: self, steps })
    }

    /// The mark nearest to the likely length among those within the bounds; `None` where the tape
    /// has none there.
    pub fn within(self, wanted: &Ranged<Length>) -> Option<Marked> {
        let first = self.up(wanted.low)?.mark.steps;
        let last = self.down(wanted.high)?.mark.steps;
        let steps = self.nearest(wanted.likely)?.mark.steps;
        (first <= last)
            .then(|| put(wanted.likely, Mark { tape: self, steps: steps.clamp(first, last) }))
    }

    fn mark(self, length: Length, round: fn(f64) -> f64) -> Option<Mark> {
        let fits = length.si().is_finite() && length.abs() <= LONGEST;
        fits.then(|| Mark { tape: self, steps: round(length / self.step()) as i64 })
    }

    /// How many marks there are in an inch or a millimetre.
    fn parts(self) -> i64 {
        match self {
            Self::Sixteenth => 16,
            Self::ThirtySecond => 32,
            Self::SixtyFourth => 64,
            Self::Millimetre => 1,
            Self::HalfMillimetre => 2,
        }
    }
}

impl Mark {
    /// How far the mark is from the tape's end.
    pub fn length(self) -> Length {
        let exp = if self.tape.is_inch() { -4 } else { -3 };
        let unit = if self.tape.is_inch() { 254 } else { 1 };
        let size = Exact::new(unit, self.tape.parts().unsigned_abs(), exp);
        let exact = size.and_then(|size| size.times(Exact::signed(self.steps, 0)));
        Length::m(exact.and_then(Exact::to_f64).unwrap_or(f64::NAN))
    }

    /// The mark as the tape shows it, without the unit: `20 17/32`, `440`, `440.5`.
    pub fn figure(self) -> String {
        let parts = self.tape.parts();
        let sign = if self.steps < 0 { "-" } else { "" };
        let steps = self.steps.abs();
        let (whole, rest) = (steps / parts, steps % parts);
        if rest == 0 {
            return format!("{sign}{whole}");
        }
        if !self.tape.is_inch() {
            return format!("{sign}{whole}.5");
        }
        let common = 1_i64 << rest.trailing_zeros();
        let fraction = format!("{}/{}", rest / common, parts / common);
        if whole == 0 { format!("{sign}{fraction}") } else { format!("{sign}{whole} {fraction}") }
    }
}

impl fmt::Display for Mark {
    /// The figure with its unit, which [`read`](crate::read) turns back into the mark's length.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.figure(), if self.tape.is_inch() { "in" } else { "mm" })
    }
}

fn put(length: Length, mark: Mark) -> Marked {
    Marked { mark, error: mark.length() - length }
}
