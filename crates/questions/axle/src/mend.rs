//! What would clear a load that is too great: how much off, or how far to be moved.

use spile_answer::{Finding, Swing, TIGHT_SHARE, Verdict};
use spile_quantity::{Length, Mass};

use crate::Case;
use crate::scene::{At, CAR, FRONT, REAR, Scene, TAG, TOTAL};

/// What brings a load of an axle, of the nose or of the whole under its limit, with a little left.
pub(crate) fn plate(
    case: &Case<'_>,
    figure: usize,
    scene: &Scene,
    swung: &Swing,
    finding: &Finding,
) -> Option<String> {
    let limit = finding.limit.as_ref().filter(|_| finding.verdict != Verdict::Good)?;
    let over_kg = (swung.unfavourable - (1.0 - TIGHT_SHARE) * limit.value).ceil();
    if !over_kg.is_finite() || over_kg <= 0.0 {
        return None;
    }
    if figure == TOTAL {
        return Some(format!("{over_kg:.0} kg less aboard clears it.{}", litres(scene, over_kg)));
    }
    if CAR.contains(&figure) {
        return car(case, figure, over_kg);
    }
    axle(case, figure, scene, over_kg)
}

/// What brings an axle or the nose under its limit.
fn axle(case: &Case<'_>, figure: usize, scene: &Scene, over_kg: f64) -> Option<String> {
    let likely = scene.ledger.likely();
    // What a kilogram over the driven axle puts on the axle that is too heavy, and what a kilogram
    // that leaves the other axle does.
    let here = At { mass: Mass::kg(1.0), forward: Length::m(0.0), left: Length::m(0.0) };
    let rear = scene.on(&here, &likely)?.rear.in_kg();
    let tag = case.build.vehicle.axles.tag.as_ref().and_then(|tag| tag.share.as_ref());
    let tag = tag.map_or(0.0, |share| share.likely().in_of_one());
    let share = match figure {
        REAR => 1.0 - tag,
        TAG => tag,
        _ => 1.0,
    };
    let (less_kg, place, way) = match (figure, case.is_trailer()) {
        (FRONT, true) => (over_kg, "at the coupling", "back"),
        (FRONT, false) => (over_kg, "over the front axle", "back"),
        _ => ((over_kg / (share * rear)).ceil(), "over the rear axle", "forward"),
    };
    let shift_kg = over_kg / share;
    let moved = if other_has_room(case, figure, shift_kg) {
        moved(scene.between(&likely), shift_kg, way)
    } else {
        String::new()
    };
    let spare_percent = TIGHT_SHARE * 100.0;
    Some(format!(
        "{less_kg:.0} kg less {place}{moved} clears it, with {spare_percent:.0} % to spare."
    ))
}

/// How far something of a round mass has to be moved for that much to leave an axle.
fn moved(between: Length, shift_kg: f64, way: &str) -> String {
    let far = |kg: f64| Length::m((between.in_m() * shift_kg / kg * 10.0).ceil() / 10.0);
    let within = |kg: &f64| far(*kg) <= between * 0.7;
    [20.0, 50.0, 100.0, 200.0].into_iter().find(within).map_or_else(String::new, |kg| {
        format!(", or {kg:.0} kg moved {way} by {:.1} m,", far(kg).in_m())
    })
}

/// Whether the axle at the other end can take what leaves this one.
fn other_has_room(case: &Case<'_>, figure: usize, shift_kg: f64) -> bool {
    let limits = &case.build.vehicle.axles.limits;
    let (other, limit) = match (figure, case.is_trailer()) {
        (FRONT, _) => (REAR, &limits.rear),
        (_, true) => (FRONT, &limits.nose),
        (_, false) => (FRONT, &limits.front),
    };
    let (_, swung) = case.worst(other);
    limit.as_ref().is_none_or(|limit| swung.unfavourable + shift_kg <= limit.likely().in_kg())
}

/// What brings the towing car under its plate.
fn car(case: &Case<'_>, figure: usize, over_kg: f64) -> Option<String> {
    let [front, rear, _] = CAR;
    if figure == front {
        return Some(format!("{over_kg:.0} kg less over the front axle of the car clears it."));
    }
    if figure != rear {
        return Some(format!("{over_kg:.0} kg less in the car or on the coupling clears it."));
    }
    let towing = case.build.vehicle.axles.towing.as_ref()?;
    let lever = towing.overhang.as_ref()?.likely() / towing.wheelbase.as_ref()?.likely();
    let nose_kg = (over_kg / (1.0 + lever)).ceil();
    Some(format!(
        "{nose_kg:.0} kg less on the coupling, or {over_kg:.0} kg less over the rear axle of the car, clears it."
    ))
}

/// Water that may be left behind instead, where there is enough of it.
fn litres(scene: &Scene, over_kg: f64) -> String {
    let likely = scene.ledger.likely();
    let water = scene.came.iter().find(|put| put.name.starts_with("water, "));
    let aboard = water.map_or(0.0, |put| scene.place(put, &likely).mass.in_kg());
    if aboard >= over_kg { format!(" That is {over_kg:.0} L of the water.") } else { String::new() }
}
