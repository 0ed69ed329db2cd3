//! Numbers and asks in words.

use spile_answer::{Ask, Basis, Class, Finding, Limit, Sense, Verdict};
use spile_quantity::{Area, Flow};

/// A number without digits that say nothing: `43`, `37.5`.
pub(crate) fn number(value: f64) -> String {
    let tenths = (value * 10.0).round() / 10.0;
    format!("{tenths}")
}

/// The text with a capital.
pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// Whole square centimetres, upwards.
pub(crate) fn up(cm2: f64) -> String {
    format!("{:.0}", (cm2 - 1e-6).ceil().max(0.0))
}

/// Square centimetres, upwards.
pub(crate) fn cm2_up(area: Area) -> String {
    format!("{} cm²", up(area.in_m2() * 1e4))
}

/// Cubic metres an hour, upwards.
pub(crate) fn flow_up(flow: Flow) -> String {
    format!("{:.0} m³/h", (flow.in_m3_per_s() * 3600.0 - 1e-6).ceil().max(1.0))
}

/// A rule of practice without a source.
pub(crate) fn practice(value: f64, sense: Sense) -> Limit {
    Limit {
        value,
        sense,
        class: Class::Practice,
        kind: "practice",
        source: "common practice, no source".into(),
        firm: true,
    }
}

/// Whether a number was told and is no stand-in.
pub(crate) fn told(basis: Basis) -> bool {
    basis != Basis::Typical
}

/// Something to get, without which nothing can be said.
pub(crate) fn ask(input: impl Into<String>, how: &'static str, settles: &str) -> Ask {
    Ask::missing(input.into(), how, settles)
}

/// A finding that waits for a number.
pub(crate) fn open(id: String, label: String, says: String, asks: Vec<Ask>) -> Finding {
    let mut finding = Finding::plain(id, label, Verdict::Open, says);
    finding.asks = asks;
    finding
}

/// Says of each ask what it would settle, and leaves out those that are not worth measuring.
pub(crate) fn settle(finding: &mut Finding, what: &str) {
    finding.asks.retain(|ask| !ask.how.starts_with("Not worth measuring"));
    for ask in &mut finding.asks {
        what.clone_into(&mut ask.settles);
    }
}
