//! Holes near an edge.

use spile_answer::{Class, Finding, Ledger, Limit, Sense, Step, Unit, Verdict, Worse, swing};
use spile_build::file::{HeldBy, HeldInto};
use spile_tables::workshop::edge_distance;

use crate::called;
use crate::scene::Scene;

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
    let handle = ledger.take("nearest edge", edge);
    let [distance] = swing(&ledger, [Worse::Lower], |point| [point.at(handle).in_mm()]);
    let least = screw * rule.value.diameters;
    let limit = Limit {
        value: least.in_mm(),
        sense: Sense::AtLeast,
        class: Class::Practice,
        kind: "practice",
        source: rule.source.title.as_str().into(),
        firm: false,
    };
    let found = Finding::measured(
        format!("{}.edge", scene.name),
        "its holes to the nearest edge",
        Unit::Millimetre,
        &distance,
        limit,
        &ledger,
    );
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
