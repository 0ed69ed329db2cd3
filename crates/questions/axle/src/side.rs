//! Left against right.

use spile_answer::{Class, Finding, Given, Limit, Reason, Sense, Step, Unit, Verdict};
use spile_quantity::{Mass, Share};
use spile_tables::axle::balance;

use crate::Case;
use crate::axle::settled;
use crate::scene::{SIDE, Scene, Sides};

/// How level it sits: the difference of left and right, of both together.
pub(crate) fn finding(case: &Case<'_>) -> Finding {
    let (scene, swung) = case.worst(SIDE);
    let rule = balance("side").expect("the table has a rule for sides");
    let limit = Limit {
        value: rule.value.share.in_percent(),
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: rule.source.title.clone().into(),
        firm: rule.may_stop(),
    };
    let label = format!("left against right, {}", scene.state);
    let finding = Finding::measured("side", label, Unit::Percent, swung, limit, &scene.ledger)
        .settling(swung, &scene.ledger, |point| scene.figures(point)[SIDE]);
    let likely = scene.ledger.likely();
    let Some((left_kg, total_kg)) = weights(scene) else { return finding };
    let (heavy, light) = if left_kg >= 0.0 { ("left", "right") } else { ("right", "left") };
    let known = match case.base.sides {
        Sides::Unsaid => " The sides were never weighed.",
        _ => "",
    };
    let says = format!(
        "In the state {} the {heavy} wheels carry {:.0} kg more than the {light} ones, {:.1} % of the whole; at the unfavourable end {:.1} %. Above 5 to 6 % it leans and pulls.{known}",
        scene.state,
        left_kg.abs(),
        swung.likely,
        swung.unfavourable
    );
    let over = Share::percent(swung.unfavourable - rule.value.share.in_percent());
    let mend = (swung.likely > rule.value.share.in_percent()).then(|| {
        let moment_kg_m = over.in_of_one() * total_kg * scene.track(&likely).in_m() / 2.0;
        let kg = (moment_kg_m / 1.2).ceil();
        format!("{kg:.0} kg moved 1.2 m from {heavy} to {light} clears it.")
    });
    let step = Step {
        what: "left against right".into(),
        formula: "|R_left − R_right| / R, with Δ(R_left − R_right) = 2·m·y/t".into(),
        numbers: format!("{:.0} / {total_kg:.0} = {:.2} %", left_kg.abs(), swung.likely),
        source: "moments about the right wheels".into(),
    };
    settled(finding, swung).saying(says).mended(mend).worked(vec![step])
}

/// Readings of the sides that do not add up to those of the axles; `None` where they do.
pub(crate) fn readings(case: &Case<'_>) -> Option<Finding> {
    let Sides::Whole(sides) = &case.base.sides else { return None };
    // The wheels of a trailer carry its axle; the nose stands on the coupling.
    let [front, rear] = &case.base.axles;
    let front = if case.is_trailer() { &[][..] } else { front.as_slice() };
    let (axles, sides) = (front.iter().chain(rear), sides.iter());
    let likely = |mass: f64, given: &Given<Mass>| mass + given.likely().in_kg();
    let off = |mass: f64, given: &Given<Mass>| mass + (given.value.high - given.likely()).in_kg();
    let (by_axle, by_side) = (axles.clone().fold(0.0, likely), sides.clone().fold(0.0, likely));
    let allowed = axles.fold(0.0, off) + sides.fold(0.0, off);
    let apart = (by_axle - by_side).abs();
    (apart > allowed).then(|| {
        let says = format!(
            "By the axles it weighs {by_axle:.0} kg and by the sides {by_side:.0} kg: {apart:.0} kg apart, more than the weighbridge's own {allowed:.0} kg. One reading is wrong, or something came aboard between them."
        );
        let verdict = Verdict::Care(Reason::Unsure);
        Finding::plain("readings", "readings that do not add up", verdict, says)
    })
}

/// Left less right, and the whole.
fn weights(scene: &Scene) -> Option<(f64, f64)> {
    let loads = scene.loads(&scene.ledger.likely())?;
    Some((loads.left_over_right().in_kg(), (loads.front + loads.rear).in_kg()))
}
