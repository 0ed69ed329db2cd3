//! A bond of the body that bypasses the shunt of the battery monitor.

use spile_answer::{
    Ask, Class, Finding, Ledger, Limit, Reason, Sense, Step, Unit, Verdict, Worse, swing,
};
use spile_build::file::TiedTo;
use spile_build::{Bank, Build, Return};

use crate::words::list;
use spile_circuit::scene::load;

const LABEL: &str = "current that the battery monitor does not count";

/// What returns through the body past the shunt, where there is one; nought is practice.
///
/// What is charged by the engine through the body passes it too.
pub(crate) fn finding(build: &Build, bank: &Bank) -> Option<Finding> {
    let by_body: Vec<&str> = build
        .runs
        .iter()
        .filter(|(_, run)| matches!(run.back, Return::Body { .. }))
        .map(|(name, _)| name.as_str())
        .collect();
    if !bank.shunt {
        return None;
    }
    match build.body.tied_to {
        Some(TiedTo::Bus) => {
            let says = "The body is tied to the negative bus, on the load's side of the shunt: the battery monitor counts what returns through it.";
            Some(Finding::plain("body.shunt", LABEL, Verdict::Good, says))
        }
        Some(TiedTo::Post) => Some(past(build, &by_body)),
        None if by_body.is_empty() => None,
        None => Some(unsaid()),
    }
}

/// The body is tied to the post itself.
fn past(build: &Build, by_body: &[&str]) -> Finding {
    let mut ledger = Ledger::new();
    let taken: Vec<_> = by_body
        .iter()
        .filter_map(|name| {
            let item = build.items.get(&build.runs.get(*name)?.to)?;
            let running = load(build, item)?.running;
            Some(ledger.take(format!("power of the run {name}"), &running))
        })
        .collect();
    let system = build.system.likely();
    let [swung] = swing(&ledger, [Worse::Higher], |point| {
        [taken.iter().map(|power| (point.at(*power) / system).in_a()).sum()]
    });
    let names: Vec<String> = by_body.iter().map(|name| (*name).to_owned()).collect();
    let limit = Limit {
        value: 0.0,
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: "everything but the shunt's own side on the bus: common practice, no source".into(),
        firm: true,
    };
    let finding = Finding::measured("body.shunt", LABEL, Unit::Ampere, &swung, limit, &ledger);
    let what = if names.is_empty() {
        "What is charged or returns through the body".to_owned()
    } else {
        format!("{:.1} A of {}", swung.likely, list(&names))
    };
    let says = format!(
        "The body is tied to the battery's own post, past the shunt. {what} does not pass the battery monitor: it shows more charge than there is.",
    );
    let mend = "Move the bond of the body from the post to the negative bus, on the load's side of the shunt; nothing but the shunt stays on the post.";
    let step = Step {
        what: "current past the shunt".into(),
        formula: "I = Σ P / U".into(),
        numbers: format!("{:.1} A at {:.0} V", swung.likely, system.in_v()),
        source: "Kirchhoff's current law".into(),
    };
    // Charging passes it as well, so that it is never good.
    let verdict = Verdict::Care(Reason::Practice);
    Finding { verdict, asks: Vec::new(), ..finding }
        .saying(says)
        .mended(Some(mend.to_owned()))
        .worked(vec![step])
}

/// Something returns through the body, and where that is tied is not said.
fn unsaid() -> Finding {
    let says = "There is a shunt, something returns through the body, and where the body is tied is not said: past the shunt it is not counted.";
    let mut finding = Finding::plain("body.shunt", LABEL, Verdict::Care(Reason::Unsure), says);
    finding.asks.push(Ask {
        input: "where the body is tied to the bank's negative".into(),
        how: "Follow the cable from the body's stud: to the negative bus, or to the battery's post. Or clamp the meter round it with one such load on, and see whether the monitor shows the same: [body] tied_to = \"bus\".".into(),
        settles: "whether the battery monitor counts all of it".to_owned(),
        turns: String::new(),
        weight: 0.5,
    });
    finding
}
