//! What a question found: a figure against its limit, with its working.

use std::borrow::Cow;

use crate::ledger::{Input, Ledger};
use crate::settle::asks;
use crate::swing::Swing;
use crate::verdict::{Verdict, judge};

/// The unit that a figure is shown in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Millimetres.
    Millimetre,
    /// Volts.
    Volt,
    /// Thousandths of a volt.
    Millivolt,
    /// Amperes.
    Ampere,
    /// Hundredths.
    Percent,
    /// Days.
    Day,
    /// Degrees Celsius.
    Celsius,
    /// Kelvin, for differences of temperature.
    Kelvin,
    /// Ampere-hours.
    AmpereHour,
    /// Litres.
    Litre,
    /// Seconds.
    Second,
    /// Square millimetres.
    SquareMillimetre,
    /// Square centimetres.
    SquareCentimetre,
    /// Kilograms.
    Kilogram,
    /// A plain count.
    Count,
}

impl Unit {
    /// The symbol, empty for a count.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Volt => "V",
            Self::Millivolt => "mV",
            Self::Ampere => "A",
            Self::Percent => "%",
            Self::Day => "days",
            Self::Celsius => "°C",
            Self::Kelvin => "K",
            Self::AmpereHour => "Ah",
            Self::Litre => "L",
            Self::Second => "s",
            Self::SquareMillimetre => "mm²",
            Self::SquareCentimetre => "cm²",
            Self::Kilogram => "kg",
            Self::Count => "",
        }
    }
}

/// A number that the answer turns on, with its unfavourable end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// With every input at its likely value; infinite where the thing breaks down.
    pub likely: f64,
    /// The worst that the inputs' ranges allow.
    pub unfavourable: f64,
    /// The unit of both.
    pub unit: Unit,
}

/// Which side of a limit is allowed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sense {
    /// The figure may not be greater.
    AtMost,
    /// The figure may not be smaller.
    AtLeast,
}

impl Sense {
    /// `at most` or `at least`.
    pub const fn words(self) -> &'static str {
        match self {
            Self::AtMost => "at most",
            Self::AtLeast => "at least",
        }
    }
}

/// What kind of rule a limit is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Class {
    /// Physics, the papers of a part, a plated mass, a rule of law.
    Limit,
    /// A rule of good practice.
    Practice,
    /// One of the build's wants.
    Wish,
}

impl Class {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Limit => "limit",
            Self::Practice => "practice",
            Self::Wish => "wish",
        }
    }
}

/// What a figure is held against.
#[derive(Debug, Clone, PartialEq)]
pub struct Limit {
    /// The number, in the figure's unit.
    pub value: f64,
    /// Which side of it is allowed.
    pub sense: Sense,
    /// Limit, practice or wish.
    pub class: Class,
    /// What it is in a word: `papers`, `cut-out`, `space`, `heat`, `practice`, `wish`.
    pub kind: &'static str,
    /// Where it comes from.
    pub source: Cow<'static, str>,
    /// Whether it may make a *stop*: not where it is from memory or a stand-in.
    pub firm: bool,
}

impl Limit {
    /// Whether a value lies on the side that is not allowed.
    pub(crate) fn is_passed_by(&self, value: f64) -> bool {
        match self.sense {
            Sense::AtMost => value > self.value,
            Sense::AtLeast => value < self.value,
        }
    }

    /// How far a value lies on the side that is not allowed; nought where it does not.
    pub(crate) fn missed_by(&self, value: f64) -> f64 {
        if self.is_passed_by(value) { (value - self.value).abs() } else { 0.0 }
    }
}

/// One line of a figure's working.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// What is worked out, in words: `resistance of the feed`.
    pub what: Cow<'static, str>,
    /// The formula, with its symbols: `R = ρ·(1 + α·(T − 20 °C))·L / A`.
    pub formula: Cow<'static, str>,
    /// The formula with its numbers and its result: `0.017241 × … = 87.6 mΩ`.
    pub numbers: String,
    /// Where the formula is published.
    pub source: Cow<'static, str>,
}

/// An input whose range decides a verdict, with how to get it.
#[derive(Debug, Clone, PartialEq)]
pub struct Ask {
    /// The input's name, as in the finding's inputs.
    pub input: Cow<'static, str>,
    /// How to get it with a tape, a meter, a scale or the papers.
    pub how: Cow<'static, str>,
    /// What it would settle, in words that go on from "It settles"; empty where that is not known.
    pub settles: String,
    /// At which of its values the verdict turns: `good at 525 mm or more`; empty where it does not
    /// turn the verdict alone, or where that was not worked out.
    pub turns: String,
    /// How much of the way to the limit it decides: 1 where it alone can turn the verdict.
    pub weight: f64,
}

impl Ask {
    /// Something without which nothing can be said.
    pub fn missing(
        input: impl Into<Cow<'static, str>>,
        how: impl Into<Cow<'static, str>>,
        settles: impl Into<String>,
    ) -> Self {
        Self {
            input: input.into(),
            how: how.into(),
            settles: settles.into(),
            turns: String::new(),
            weight: 1.0,
        }
    }

    /// Whether it alone can turn the verdict.
    pub const fn decides(&self) -> bool {
        self.weight >= 1.0
    }
}

/// What a meter should show in one place.
#[derive(Debug, Clone, PartialEq)]
pub struct Expect {
    /// The place, in a few words: `at the plug`.
    pub place: Cow<'static, str>,
    /// How to take it.
    pub how: Cow<'static, str>,
    /// The least that is as it should be, the meter's own error counted in.
    pub low: f64,
    /// The likely reading.
    pub likely: f64,
    /// The most that is as it should be.
    pub high: f64,
    /// What it showed, where it was read.
    pub read: Option<f64>,
    /// The unit of all of them.
    pub unit: Unit,
}

/// One thing a question found.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// A stable name: `fridge.start`. With the question's word before it, it is unique.
    pub id: String,
    /// What is said of it.
    pub verdict: Verdict,
    /// What the figure is, in a few words: `volts at the fridge, at start`.
    pub label: String,
    /// One or two sentences: what is, against what limit.
    pub says: String,
    /// The figure, where there is one.
    pub figure: Option<Figure>,
    /// What it is held against, where there is a limit.
    pub limit: Option<Limit>,
    /// What would clear it, computed; where it is not *good* and there is something.
    pub mend: Option<String>,
    /// Every input that the figure hangs on.
    pub inputs: Vec<Input>,
    /// How the figure is worked out.
    pub working: Vec<Step>,
    /// What to measure to settle it, the most decisive first.
    pub asks: Vec<Ask>,
    /// What a meter should show, in the order in which to take it.
    pub expects: Vec<Expect>,
}

impl Finding {
    /// A finding from a figure that was swung over its inputs and held against a limit.
    ///
    /// The inputs kept are those that the figure's ledger has. Asks are made of the movers whose
    /// range decides the verdict, as far as the owner can get them: measured or typical ones. At
    /// which of its values each turns the verdict is worked out by [`Finding::settling`].
    pub fn measured(
        id: impl Into<String>,
        label: impl Into<String>,
        unit: Unit,
        swing: &Swing,
        limit: Limit,
        ledger: &Ledger,
    ) -> Self {
        let figure = Figure { likely: swing.likely, unfavourable: swing.unfavourable, unit };
        let verdict = judge(&figure, &limit);
        let asks = asks(verdict, swing, &limit, ledger);
        Self {
            id: id.into(),
            verdict,
            label: label.into(),
            says: String::new(),
            figure: Some(figure),
            limit: Some(limit),
            mend: None,
            inputs: ledger.inputs().to_vec(),
            working: Vec::new(),
            asks,
            expects: Vec::new(),
        }
    }

    /// A finding that is a matter of yes or no, without a figure.
    pub fn plain(
        id: impl Into<String>,
        label: impl Into<String>,
        verdict: Verdict,
        says: impl Into<String>,
    ) -> Self {
        Self {
            id: id.into(),
            verdict,
            label: label.into(),
            says: says.into(),
            figure: None,
            limit: None,
            mend: None,
            inputs: Vec::new(),
            working: Vec::new(),
            asks: Vec::new(),
            expects: Vec::new(),
        }
    }

    /// The same with what it says.
    #[must_use]
    pub fn saying(mut self, says: impl Into<String>) -> Self {
        self.says = says.into();
        self
    }

    /// The same with its working.
    #[must_use]
    pub fn worked(mut self, working: Vec<Step>) -> Self {
        self.working = working;
        self
    }

    /// The same with what a meter should show.
    #[must_use]
    pub fn expecting(mut self, expects: Vec<Expect>) -> Self {
        self.expects = expects;
        self
    }

    /// The same with what would clear it.
    #[must_use]
    pub fn mended(mut self, mend: Option<String>) -> Self {
        self.mend = mend;
        self
    }
}
