//! What would clear a load that is too great: how much off, or how far to be moved.

use spile_answer::{Finding, Swing, TIGHT_SHARE, Verdict};
use spile_quantity::Length;

use crate::Case;
use crate::scene::{At, FRONT, REAR, Scene, TAG, TOTAL};

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
    let likely = scene.ledger.likely();
    let between = scene.between(&likely);
    // What a kilogram over the rear axles puts on the one that is too heavy.
    let unit =
        At { mass: spile_quantity::Mass::kg(1.0), forward: Length::m(0.0), left: Length::m(0.0) };
    let tag_share = case.build.vehicle.axles.tag.as_ref().and_then(|tag| tag.share.as_ref());
    let tag_share = tag_share.map_or(0.0, |share| share.likely().in_of_one());
    let part = match figure {
        REAR => scene.on(&unit, &likely)?.rear.in_kg() * (1.0 - tag_share),
        TAG => tag_share,
        _ => 1.0,
    };
    let (less, place, way) = match (figure, case.is_trailer()) {
        (FRONT, true) => (over_kg, "at the coupling", "back"),
        (FRONT, false) => (over_kg, "over the front axle", "back"),
        _ => ((over_kg / part).ceil(), "over the rear axle", "forward"),
    };
    let moved = [20.0, 50.0, 100.0, 200.0].into_iter().find_map(|kg| {
        let far = between * (over_kg / part.min(1.0) / kg);
        let far = Length::m((far.in_m() * 10.0).ceil() / 10.0);
        (far <= between * 0.7).then_some((kg, far))
    });
    let moved = moved.map_or_else(String::new, |(kg, far)| {
        format!(", or {kg:.0} kg moved {way} by {:.1} m,", far.in_m())
    });
    Some(format!("{less:.0} kg less {place}{moved} clears it."))
}

/// Water that may be left behind instead, where there is enough of it.
fn litres(scene: &Scene, over_kg: f64) -> String {
    let likely = scene.ledger.likely();
    let water = scene.came.iter().find(|put| put.name.starts_with("water, "));
    let aboard = water.map_or(0.0, |put| scene.place(put, &likely).mass.in_kg());
    if aboard >= over_kg { format!(" That is {over_kg:.0} L of the water.") } else { String::new() }
}
