//! The volts at the item as it starts and while everything runs, against its cut-out.

use spile_answer::{Basis, Class, Finding, Limit, Point, Sense, Step, Swing, Unit, Verdict};
use spile_circuit::conductor::copper_warming;
use spile_circuit::scene::{Conductor, Copper, OneRun, State, Way};
use spile_quantity::Resistance;
use spile_tables::conductor::Service;

use crate::asked::Seen;
use crate::unsaid;
use crate::words::amps;

/// Volts at the item as it starts alone on a low, cold battery.
///
/// The spread of the cut-out itself is counted in the figure, so that the limit can be shown at
/// its likely value.
pub(crate) fn start(asked: &OneRun<'_>, way: &Way, seen: &Seen) -> Option<Finding> {
    if !way.starts() {
        return None;
    }
    let label = format!("volts at the {}, at start", asked.item);
    let point = way.ledger.likely();
    let current = way.start_current(&point);
    let found = way.solve(&point, State::Start);
    let Some(finding) = against_cut_out(asked, way, "start", label, &seen.start) else {
        return (asked.load.service == Service::Critical)
            .then(|| unsaid::no_cut_out(asked, current, found.map(|found| found.item)));
    };
    let Some(found) = found else {
        return Some(finding.saying(format!(
            "A low battery cannot give {} through this way: no voltage is left at the plug.",
            amps(current)
        )));
    };
    let (posts_v, item_v) = (found.posts.in_v(), found.item.in_v());
    let says = format!(
        "At start, {} pull the low battery down to {posts_v:.2} V, and {item_v:.2} V arrive; {}",
        amps(current),
        end(asked, way, &point, &finding, Copper::Cool)
    );
    let mut steps = resistance_steps(way, &point, Copper::Cool);
    steps.push(Step {
        what: "volts at the item as it starts".into(),
        formula: "the whole circuit, by modified nodal analysis; here U = U_posts − I·ΣR".into(),
        numbers: format!(
            "{posts_v:.3} V − {:.2} A × {:.1} mΩ = {item_v:.3} V",
            current.in_a(),
            1000.0 * (posts_v - item_v) / current.in_a()
        ),
        source: NODAL.into(),
    });
    Some(finding.saying(says).worked(steps))
}

/// Volts at the item while everything runs on a low battery.
pub(crate) fn running(asked: &OneRun<'_>, way: &Way, seen: &Seen) -> Option<Finding> {
    let label = format!("volts at the {}, everything on", asked.item);
    let finding = against_cut_out(asked, way, "running", label, &seen.running)?;
    let point = way.ledger.likely();
    let Some(found) = way.solve(&point, State::Running) else {
        return Some(finding.saying(
            "With everything on, more is wanted than can arrive: the voltage falls until it cuts out.",
        ));
    };
    let (posts_v, item_v) = (found.posts.in_v(), found.item.in_v());
    let says = format!(
        "With everything on, a low battery holds {posts_v:.2} V, and {item_v:.2} V arrive; {}",
        end(asked, way, &point, &finding, Copper::Warm)
    );
    let mut steps = resistance_steps(way, &point, Copper::Warm);
    steps.push(Step {
        what: "volts at the item while everything runs".into(),
        formula: "the whole circuit, by modified nodal analysis".into(),
        numbers: format!("{posts_v:.3} V at the posts, {item_v:.3} V at the item"),
        source: NODAL.into(),
    });
    Some(finding.saying(says).worked(steps))
}

pub(crate) const NODAL: &str =
    "Kirchhoff's laws; Ho, Ruehli and Brennan, IEEE Trans. Circuits and Systems 22 (1975) 504";

fn against_cut_out(
    asked: &OneRun<'_>,
    way: &Way,
    what: &str,
    label: String,
    swung: &Swing,
) -> Option<Finding> {
    let cut_out = asked.load.cut_out.as_ref()?;
    let limit = Limit {
        value: cut_out.likely().in_v(),
        sense: Sense::AtLeast,
        class: Class::Limit,
        kind: "cut-out",
        source: cut_out.source.clone(),
        firm: cut_out.basis != Basis::Typical,
    };
    Some(Finding::measured(asked.id(what), label, Unit::Volt, swung, limit, &way.ledger))
}

/// The cut-out, and where it is not well clear of it, how low the volts may fall and why.
fn end(asked: &OneRun<'_>, way: &Way, point: &Point, finding: &Finding, copper: Copper) -> String {
    let cut_out = asked.load.cut_out.as_ref().map_or(0.0, |volts| volts.likely().in_v());
    let worst = finding.figure.map_or(0.0, |figure| figure.unfavourable);
    let at_worst = match finding.verdict {
        Verdict::Good => return format!("the cut-out is {cut_out:.2} V."),
        Verdict::Stop => String::new(),
        _ if worst.is_finite() => format!(" At worst it is {worst:.2} V."),
        _ => " At worst nothing arrives.".to_owned(),
    };
    format!("the cut-out is {cut_out:.2} V.{at_worst} {}", most_of_it(way, point, copper))
}

/// Which part of the way takes most, in a sentence.
pub(crate) fn most_of_it(way: &Way, point: &Point, copper: Copper) -> String {
    let parts = [
        ("way from the bank to the block and back", way.shared_resistance(point, copper)),
        ("feed with its fuse and plug", way.feed_resistance(point, copper)),
        ("return", way.back_resistance(point, copper)),
    ];
    let whole: Resistance = parts.iter().map(|(_, ohm)| *ohm).sum();
    let (name, most) =
        parts.iter().fold(parts[0], |most, part| if part.1 > most.1 { *part } else { most });
    format!("The {name} has {:.0} % of the resistance.", 100.0 * (most / whole))
}

/// The resistances of the way, one after the other.
pub(crate) fn resistance_steps(way: &Way, point: &Point, copper: Copper) -> Vec<Step> {
    let cable = |name: &'static str, conductor: &Conductor| {
        let metre = point.at(conductor.per_metre).in_mohm();
        let metres = point.at(conductor.length).in_m();
        let at = conductor.temperature(point, copper);
        let ohm = metre * metres * copper_warming(at).unwrap_or(1.0);
        Step {
            what: name.into(),
            formula: "R = R₂₀ · L · (1 + 0.00393 · (T − 20 °C))".into(),
            numbers: format!(
                "{metre:.2} mΩ/m × {metres:.2} m, at {:.0} °C = {ohm:.1} mΩ",
                at.in_celsius()
            ),
            source: "IEC 60228; IEC 60028".into(),
        }
    };
    let sum = |name: &'static str, ohm: Resistance| Step {
        what: name.into(),
        formula: "ΣR".into(),
        numbers: format!("{:.1} mΩ", ohm.in_mohm()),
        source: "Ohm's law".into(),
    };
    vec![
        cable("resistance of the feed", &way.feed),
        cable("resistance of the return", &way.back),
        sum("feed with fuse, contacts and plug", way.feed_resistance(point, copper)),
        sum("return, with the body where it goes through it", way.back_resistance(point, copper)),
        sum("bank to the fuse block, and bus to the bank", way.shared_resistance(point, copper)),
    ]
}
