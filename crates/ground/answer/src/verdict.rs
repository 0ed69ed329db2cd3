//! The four verdicts, and the rule that gives them.

use crate::finding::{Class, Figure, Limit, Sense};

/// Why a verdict is *care*.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reason {
    /// Against a rule of good practice that is not a limit.
    Practice,
    /// Within the limit, but little is left.
    Tight,
    /// Within at the likely value, outside at the unfavourable end.
    Unsure,
    /// One of the build's wants is not met at the likely value.
    Wish,
}

impl Reason {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Practice => "practice",
            Self::Tight => "tight",
            Self::Unsure => "unsure",
            Self::Wish => "wish",
        }
    }
}

/// What is said of a finding or a question, the better the lesser.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// Within every limit and rule of practice, at the unfavourable end of what is known.
    Good,
    /// Something is to be minded.
    Care(Reason),
    /// It cannot be said until a number is given.
    Open,
    /// Outside a limit at the likely value: do not cut, do not switch on.
    Stop,
}

impl Verdict {
    /// The word for it: `good`, `care`, `open`, `stop`.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Good => "good",
            Self::Care(_) => "care",
            Self::Open => "open",
            Self::Stop => "stop",
        }
    }

    /// The reason of a *care*.
    pub const fn reason(self) -> Option<Reason> {
        match self {
            Self::Care(reason) => Some(reason),
            _ => None,
        }
    }
}

/// The share of a limit that must be left for a figure not to be called tight: 2 %.
///
/// A limit of nought has no share: what is within it at its unfavourable end is never tight. Where
/// a little room matters beyond that, as round a body in its bay, a rule of practice asks for it.
///
/// **Source**: the project's own rule; common practice has no figure for it.
pub const TIGHT_SHARE: f64 = 0.02;

/// Holds a figure against its limit.
///
/// A limit passed at the likely value is a *stop*, unless the limit itself is not firm (known from
/// memory or a stand-in only): then it is *care, unsure*. A rule of practice or a wish never gives
/// more than *care*. Within at the likely value and outside at the unfavourable end is *unsure*.
pub fn judge(figure: &Figure, limit: &Limit) -> Verdict {
    let outside = |value: f64| limit.is_passed_by(value);
    let margin = match limit.sense {
        Sense::AtMost => limit.value - figure.unfavourable,
        Sense::AtLeast => figure.unfavourable - limit.value,
    };
    if [figure.likely, figure.unfavourable, limit.value].iter().any(|value| value.is_nan()) {
        Verdict::Open
    } else if outside(figure.likely) {
        match limit.class {
            Class::Limit if limit.firm => Verdict::Stop,
            Class::Limit => Verdict::Care(Reason::Unsure),
            Class::Practice => Verdict::Care(Reason::Practice),
            Class::Wish => Verdict::Care(Reason::Wish),
        }
    } else if outside(figure.unfavourable) {
        Verdict::Care(Reason::Unsure)
    } else if limit.class == Class::Limit && margin < TIGHT_SHARE * limit.value.abs() {
        Verdict::Care(Reason::Tight)
    } else {
        Verdict::Good
    }
}
