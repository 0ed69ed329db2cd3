//! The load on a trailer's coupling, and what it does to the car that tows.

use spile_answer::{Class, Finding, Given, Limit, Sense, Step, Unit, Verdict};
use spile_quantity::Mass;
use spile_tables::axle::balance;

use crate::Case;
use crate::axle::{on_plate, settled};
use crate::open::open;
use crate::scene::{CAR, FRONT};

/// The nose: not more than coupling and car allow, and not less than keeps the trailer steady.
pub(crate) fn nose(case: &Case<'_>) -> Vec<Finding> {
    let own = case.build.vehicle.axles.limits.nose.as_ref();
    let car = case.build.vehicle.axles.towing.as_ref().and_then(|car| car.limits.nose.as_ref());
    let least = |a: &Given<Mass>, b: &Given<Mass>| a.likely() <= b.likely();
    let limit = match (own, car) {
        (Some(own), Some(car)) => Some(if least(own, car) { own } else { car }),
        (own, car) => own.or(car),
    };
    vec![on_plate(case, "nose", "on the coupling", FRONT, limit), light(case)]
}

/// A nose that is too light for its trailer.
fn light(case: &Case<'_>) -> Finding {
    let all = case.scenes.iter().map(|scene| (scene, scene.nose_swing()));
    let (scene, swung) = all
        .min_by(|(_, a), (_, b)| a.unfavourable.total_cmp(&b.unfavourable))
        .expect("there is at least one load state");
    let rule = balance("nose").expect("the table has a rule for the nose");
    let limit = Limit {
        value: rule.value.share.in_percent(),
        sense: Sense::AtLeast,
        class: Class::Practice,
        kind: "practice",
        source: rule.source.title.clone().into(),
        firm: rule.may_stop(),
    };
    let label = format!("nose of the whole trailer, {}", scene.state);
    let finding =
        Finding::measured("nose-share", label, Unit::Percent, &swung, limit, &scene.ledger)
            .settling(&swung, &scene.ledger, |point| scene.nose_percent(point));
    let says = format!(
        "In the state {} the coupling carries {:.1} % of the trailer, at the unfavourable end {:.1} %. Below 4 % a trailer begins to snake; makers of the USA want 10 to 15.",
        scene.state, swung.likely, swung.unfavourable
    );
    let likely = scene.ledger.likely();
    let loads = scene.loads(&likely);
    let mend = loads.as_ref().filter(|_| finding.verdict != Verdict::Good).map(|loads| {
        let total = (loads.front + loads.rear).in_kg();
        let short_kg = (rule.value.share.in_percent() - swung.unfavourable) / 100.0 * total;
        let far_m = (short_kg / 50.0 * scene.between(&likely).in_m() * 10.0).ceil() / 10.0;
        format!("50 kg moved forward by {far_m:.1} m clears it.")
    });
    let numbers = loads.map_or_else(String::new, |loads| {
        let (nose, total) = (loads.front.in_kg(), (loads.front + loads.rear).in_kg());
        format!("{nose:.0} / {total:.0} = {:.2} %", swung.likely)
    });
    let step = Step {
        what: "nose of the whole".into(),
        formula: "R_f / (R_f + R_r)".into(),
        numbers,
        source: "common practice, no source".into(),
    };
    settled(finding, &swung).saying(says).mended(mend).worked(vec![step])
}

/// The axles of the towing car under the heaviest nose.
pub(crate) fn car(case: &Case<'_>) -> Vec<Finding> {
    let towing = case.build.vehicle.axles.towing.as_ref();
    let complete = towing.filter(|car| {
        car.wheelbase.is_some()
            && car.overhang.is_some()
            && car.front.is_some()
            && car.rear.is_some()
    });
    let Some(car) = complete else {
        return vec![open(
            "car",
            "axles of the towing car",
            "What the nose does to the axles of the car that tows cannot be told without its own loads and lengths.".to_owned(),
            "axle loads of the towing car",
            "Weigh the car axle by axle on a weighbridge, loaded as it tows but without the trailer; read its wheelbase in its papers; lay a tape from its rear wheel's middle back to the coupling: [vehicle.towing] front, rear, wheelbase, overhang, limits.",
        )];
    };
    let limits = &car.limits;
    let [front, rear, total] = CAR;
    vec![
        on_plate(case, "car.front", "on the front axle of the car", front, limits.front.as_ref()),
        on_plate(case, "car.rear", "on the rear axle of the car", rear, limits.rear.as_ref()),
        on_plate(case, "car.total", "the car with the nose on it", total, limits.total.as_ref()),
    ]
}
