//! Axles and the whole against the plate.

use spile_answer::{Class, Finding, Given, Limit, Sense, Swing, Unit, Verdict};
use spile_quantity::Mass;

use crate::scene::{FRONT, REAR, Scene, TAG, TOTAL};
use crate::{Case, is_firm, mend, open, working};

/// The front axle.
pub(crate) fn front(case: &Case<'_>) -> Vec<Finding> {
    let limit = case.build.vehicle.axles.limits.front.as_ref();
    vec![on_plate(case, "front", "on the front axle", FRONT, limit)]
}

/// The rear axle or axles.
pub(crate) fn rear(case: &Case<'_>) -> Vec<Finding> {
    let axles = &case.build.vehicle.axles;
    let label = match (case.is_trailer(), &axles.tag) {
        (true, _) => "on the trailer's axle",
        (false, None) => "on the rear axle",
        (false, Some(_)) => "on the driven rear axle",
    };
    let mut findings = vec![on_plate(case, "rear", label, REAR, axles.limits.rear.as_ref())];
    if axles.tag.is_some() {
        let limit = axles.limits.tag.as_ref();
        findings.push(on_plate(case, "tag", "on the tag axle", TAG, limit));
    }
    findings
}

/// The whole vehicle.
pub(crate) fn total(case: &Case<'_>) -> Vec<Finding> {
    let limit = case.build.vehicle.axles.limits.total.as_ref();
    vec![on_plate(case, "total", "the whole vehicle", TOTAL, limit)]
}

/// A figure in its worst state against the plate.
pub(crate) fn on_plate(
    case: &Case<'_>,
    id: &str,
    label: &str,
    figure: usize,
    limit: Option<&Given<Mass>>,
) -> Finding {
    let (scene, swung) = case.worst(figure);
    let label_in_state = format!("{label}, {}", scene.state);
    let Some(plate) = limit else {
        let says = format!("It is {:.0} kg {label}, {}", swung.likely, scene.state);
        return open::no_limit(id, label, &says, id);
    };
    let limit = Limit {
        value: plate.likely().in_kg(),
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "plate",
        source: plate.source.clone(),
        firm: is_firm(plate.basis),
    };
    let finding =
        Finding::measured(id, label_in_state, Unit::Kilogram, swung, limit, &scene.ledger)
            .settling(swung, &scene.ledger, |point| scene.figures(point)[figure]);
    let says = says(label, scene, swung, plate.likely().in_kg(), &finding);
    let mend = mend::plate(case, figure, scene, swung, &finding);
    settled(finding, swung).saying(says).mended(mend).worked(working::steps(case, scene, figure))
}

fn says(label: &str, scene: &Scene, swung: &Swing, plate_kg: f64, finding: &Finding) -> String {
    let (likely, worst) = (swung.likely, swung.unfavourable);
    if !likely.is_finite() {
        return "The lengths that were given are not those of a vehicle.".to_owned();
    }
    let left = plate_kg - likely;
    let against = if left >= 0.0 {
        format!("{left:.0} kg are left")
    } else {
        format!("{:.0} kg too much", -left)
    };
    let end = match finding.verdict {
        Verdict::Stop => String::new(),
        _ => format!(" At the unfavourable end it is {worst:.0} kg."),
    };
    format!(
        "{} in the state {}: {likely:.0} kg of {plate_kg:.0} kg by the plate, {against}.{end}",
        capital(label),
        scene.state
    )
}

/// The finding with what each of its asks would settle.
pub(crate) fn settled(mut finding: Finding, swung: &Swing) -> Finding {
    let unit = finding.figure.map_or("", |figure| figure.unit.symbol());
    for ask in &mut finding.asks {
        ask.settles = format!(
            "{}: {:.0} {unit} likely, {:.0} {unit} at the unfavourable end",
            finding.label, swung.likely, swung.unfavourable
        );
    }
    finding
}

pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
