//! What a distance is held against, and how it is said.

use spile_answer::{
    Class, Finding, Given, Limit, Point, Sense, Swing, Unit, Verdict, Worse, swing,
};
use spile_quantity::Length;

use crate::sum::{Taken, clean_m};

/// Why a member of the frame that carries a belt stays whole.
const BELT: &str = "rule of law: the anchorage of a seat or a belt is approved as it was built";

/// The least that a distance may be.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Need {
    pub(crate) least_m: f64,
    pub(crate) class: Class,
    pub(crate) kind: &'static str,
    pub(crate) source: String,
    pub(crate) firm: bool,
    /// What it is, in a word, that lets the distance not be less than nought.
    pub(crate) ground: &'static str,
}

impl Need {
    /// Two things are never in one place.
    pub(crate) fn space() -> Self {
        Self::physics("space", "two things cannot be in one place")
    }

    /// Something that cannot be otherwise, with nought as its limit.
    pub(crate) fn physics(kind: &'static str, source: &str) -> Self {
        let source = source.to_owned();
        Self { least_m: 0.0, class: Class::Limit, kind, source, firm: true, ground: kind }
    }

    /// Asked for by the papers of a part.
    pub(crate) fn papers(given: &Given<Length>) -> Self {
        Self {
            least_m: given.likely().in_m(),
            class: Class::Limit,
            kind: "papers",
            source: given.source.to_string(),
            firm: true,
            ground: "space",
        }
    }

    /// A rule of good practice.
    pub(crate) fn practice(given: &Given<Length>) -> Self {
        Self::rule(given.likely().in_m(), given.source.to_string())
    }

    /// A rule of good practice, by its figure.
    pub(crate) fn rule(least_m: f64, source: String) -> Self {
        let class = Class::Practice;
        Self { least_m, class, kind: "practice", source, firm: false, ground: "space" }
    }

    /// The same with what it is that lets the distance not be less than nought.
    pub(crate) fn on(self, ground: &'static str) -> Self {
        Self { ground, ..self }
    }

    /// The same where the distance is positive, and space where it is not: what does not go in is
    /// stopped by that alone.
    fn governing(&self, likely_m: f64) -> Self {
        if likely_m >= 0.0 || self.class == Class::Limit {
            return self.clone();
        }
        match self.ground {
            "practice" => self.clone(),
            "space" => Self::space(),
            "belt" => Self::physics("law", BELT),
            ground => Self::physics(ground, "it cannot be otherwise"),
        }
    }

    /// Who asks for it, with what they ask.
    pub(crate) fn words(&self) -> String {
        let least = mm(self.least_m);
        match self.kind {
            "papers" => format!("its papers ask for {least} mm"),
            "practice" => format!("practice asks for {least} mm"),
            _ => "nothing may be less than nought".to_owned(),
        }
    }
}

/// Holds a distance against what it needs. `figure` is in metres.
pub(crate) fn held(
    id: String,
    label: impl Into<String>,
    need: &Need,
    taken: &Taken,
    figure: impl Fn(&Point) -> f64,
) -> Finding {
    let figure = |point: &Point| clean_m(figure(point)) * 1000.0;
    let [swung] = swing(&taken.ledger, [Worse::Lower], |point| [figure(point)]);
    found(id, label, need, taken, &swung, figure)
}

/// The same of a distance that was swung already; both are in millimetres.
pub(crate) fn found(
    id: String,
    label: impl Into<String>,
    need: &Need,
    taken: &Taken,
    swung: &Swing,
    figure: impl Fn(&Point) -> f64,
) -> Finding {
    let governing = need.governing(swung.likely);
    let limit = Limit {
        value: clean_m(governing.least_m) * 1000.0,
        sense: Sense::AtLeast,
        class: governing.class,
        kind: governing.kind,
        source: governing.source.into(),
        firm: governing.firm,
    };
    let mut finding = Finding::measured(id, label, Unit::Millimetre, swung, limit, &taken.ledger)
        .settling(swung, &taken.ledger, figure);
    let about = finding.label.clone();
    if finding.verdict == Verdict::Good {
        finding.asks.clear();
    }
    for ask in &mut finding.asks {
        ask.settles = format!("whether enough is left: {about}");
    }
    finding
}

/// How much of what is needed is missing at the unfavourable end \[m\]; nought where nothing is.
pub(crate) fn missing_m(finding: &Finding) -> f64 {
    match (&finding.figure, &finding.limit) {
        (Some(figure), Some(limit)) => {
            clean_m((limit.value - figure.unfavourable).max(0.0) / 1000.0)
        }
        _ => 0.0,
    }
}

/// A length in millimetres; from ten on to the half.
pub(crate) fn mm(length_m: f64) -> String {
    let length = length_m * 1000.0;
    let length = if length.abs() < 10.0 { length } else { (length * 2.0).round() / 2.0 };
    let text = format!("{length:.1}");
    let text = text.strip_suffix(".0").unwrap_or(&text);
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// The next whole millimetre, for what is asked for in a mend.
pub(crate) fn up_mm(length_m: f64) -> String {
    format!("{:.0}", (length_m * 1000.0 - 1e-6).ceil())
}

/// A sentence's first letter as a capital.
pub(crate) fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
