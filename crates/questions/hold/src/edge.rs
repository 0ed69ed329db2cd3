//! Rules of practice of the holes: near an edge, turns of thread in a wall, washers on wood.

use std::borrow::Cow;

use spile_answer::{Class, Finding, Ledger, Limit, Sense, Step, Unit, Verdict, Worse, swing};
use spile_build::file::{HeldBy, HeldInto};
use spile_quantity::Length;
use spile_strength::thread;
use spile_tables::workshop::edge_distance;

use crate::called;
use crate::scene::Scene;

/// Pitches of tapping screws: diameter and pitch \[mm\].
///
/// **Source** ISO 1478, from memory.
const PITCHES: [(f64, f64); 6] =
    [(2.9, 1.1), (3.5, 1.3), (4.2, 1.4), (4.8, 1.6), (5.5, 1.8), (6.3, 1.8)];

/// Turns of a tapping screw's thread in the wall against two.
pub(crate) fn turns(scene: &Scene<'_>) -> Option<Finding> {
    if scene.held.by != HeldBy::TappingScrew || scene.metal.is_none() {
        return None;
    }
    let size = scene.held.size?.in_mm();
    let pitch = PITCHES.iter().find(|(diameter, _)| (diameter - size).abs() < 0.16)?.1;
    let mut ledger = Ledger::new();
    let input = scene.ledger.inputs().get(scene.wall.index())?;
    let wall = ledger.take(input.name.clone(), scene.wall_given());
    let engaged = |wall: Length| thread::turns(wall, Length::mm(pitch));
    let [swung] = swing(&ledger, [Worse::Lower], |point| [engaged(point.at(wall))]);
    let found = Finding::measured(
        format!("{}.turns", scene.name),
        "turns of thread in the wall",
        Unit::Count,
        &swung,
        practice(2.0, "at least two turns: common practice".into()),
        &ledger,
    )
    .settling(&swung, &ledger, |point| engaged(point.at(wall)));
    let good = found.verdict == Verdict::Good;
    let says = format!(
        "{:.1} turns of thread of its tapping screws are in the {}; two are practice.",
        swung.likely,
        scene.into.word()
    );
    let step = Step {
        what: "turns in the wall".into(),
        formula: "n = t/P".into(),
        numbers: format!("{:.1} mm / {pitch} mm = {:.2}", swung.likely * pitch, swung.likely),
        source: "pitch by ISO 1478, from memory".into(),
    };
    let mend = "A rivet nut, or better a bolt right through with a nut, holds in so thin a wall.";
    Some(found.saying(says).worked(vec![step]).mended((!good).then(|| mend.to_owned())))
}

/// Washers of bolts on wood against 25 mm.
pub(crate) fn washer(scene: &Scene<'_>) -> Option<Finding> {
    if scene.held.by != HeldBy::Bolt || scene.gravity.is_none() {
        return None;
    }
    let mut ledger = Ledger::new();
    let handle = ledger.take(format!("washers of {}", scene.name), &scene.washer_given);
    let [swung] = swing(&ledger, [Worse::Lower], |point| [point.at(handle).in_mm()]);
    let found = Finding::measured(
        format!("{}.washer", scene.name),
        "washers on the wood",
        Unit::Millimetre,
        &swung,
        practice(25.0, "large washers, 25 mm: common practice".into()),
        &ledger,
    )
    .settling(&swung, &ledger, |point| point.at(handle).in_mm());
    let good = found.verdict == Verdict::Good;
    let says = format!(
        "Washers of {:.0} mm press on the {}; 25 mm and a modest torque keep it from being crushed.",
        swung.likely,
        scene.into.word()
    );
    let mend = "Washers of 25 mm or a strip of metal under head and nut.";
    Some(found.saying(says).mended((!good).then(|| mend.to_owned())))
}

/// A least of good practice.
fn practice(value: f64, source: Cow<'static, str>) -> Limit {
    Limit {
        value,
        sense: Sense::AtLeast,
        class: Class::Practice,
        kind: "practice",
        source,
        firm: false,
    }
}

/// The nearest edge against so many diameters, where the edge was measured.
pub(crate) fn finding(scene: &Scene<'_>) -> Option<Finding> {
    let edge = scene.held.edge.as_ref()?;
    let screw = scene.held.size?;
    if matches!(scene.held.by, HeldBy::Adhesive | HeldBy::Strap) {
        return None;
    }
    let wooden = matches!(scene.into, HeldInto::Plywood | HeldInto::SolidWood);
    let rule = edge_distance(if wooden { "plywood" } else { "metal" })?;
    let mut ledger = Ledger::new();
    let handle = ledger.take(format!("nearest edge to a hole of {}", scene.name), edge);
    let [distance] = swing(&ledger, [Worse::Lower], |point| [point.at(handle).in_mm()]);
    let least = screw * rule.value.diameters;
    let limit = practice(least.in_mm(), rule.source.title.as_str().into());
    let found = Finding::measured(
        format!("{}.edge", scene.name),
        "its holes to the nearest edge",
        Unit::Millimetre,
        &distance,
        limit,
        &ledger,
    )
    .settling(&distance, &ledger, |point| point.at(handle).in_mm());
    let good = found.verdict == Verdict::Good;
    let (times, into) = (rule.value.diameters, scene.into.word());
    let says = format!(
        "The outermost hole of the {} is {:.0} mm from the edge of the {into}; {times} diameters, {:.0} mm, are practice.",
        called(scene.item),
        distance.likely,
        least.in_mm(),
    );
    let step = Step {
        what: "least distance".into(),
        formula: "e = n·d".into(),
        numbers: format!("{times} × {} mm = {:.0} mm", screw.in_mm(), least.in_mm()),
        source: rule.source.title.as_str().into(),
    };
    let mend = format!(
        "Move the hole in by {:.0} mm, or put a backer behind it that carries the screw {:.0} mm from any edge.",
        (least.in_mm() - distance.unfavourable).max(1.0).ceil(),
        least.in_mm(),
    );
    Some(found.saying(says).worked(vec![step]).mended((!good).then_some(mend)))
}
