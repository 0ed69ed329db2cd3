//! What all compressor boxes of a build use in a day.

use spile_answer::{Figure, Finding, Unit, Verdict, Worse, swing};
use spile_build::Build;
use spile_heat::chain::Day;
use spile_heat::scene::{BayIs, Cold, Scene, Weather, compressors};

use crate::working;

/// The amp-hours of a hot day of all boxes that can be computed; `None` where there is none.
///
/// The figure has no limit here: whether the battery carries it is another question.
pub(crate) fn of_all(build: &Build) -> Option<Finding> {
    let mut left_out = Vec::new();
    let mut boxes: Vec<Cold<'_>> = Vec::new();
    for (name, item) in crate::cold_items(build) {
        let computed = compressors(build).find(|cold| cold.name == name && cold.is_computable());
        match computed {
            Some(cold) => boxes.push(cold),
            None => left_out.push((name, item)),
        }
    }
    if boxes.is_empty() {
        return None;
    }
    let scene = Scene::new(build, boxes, true)?;
    let point = scene.ledger.likely();
    let hot = scene.days(&point, Weather::HotDay, BayIs::Balanced).ok()?;
    let cabin = build.corners.mild_cabin.likely();
    let mild = scene.days(&point, Weather::Cabin(cabin), BayIs::Balanced).ok()?;
    let [swung] = swing(&scene.ledger, [Worse::Higher], |point| {
        let days = scene.days(point, Weather::HotDay, BayIs::Balanced);
        [days.map_or(f64::INFINITY, |days| charge(&days))]
    });
    let energy: f64 = hot.iter().map(|day| day.power.in_w() * 24.0).sum();
    let others = match left_out.len() {
        0 => String::new(),
        _ => {
            let names: Vec<&str> = left_out.iter().map(|(name, _)| *name).collect();
            format!(" The {} comes on top.", names.join(" and the "))
        }
    };
    let says = format!(
        "A hot day and its night take {:.0} Ah at {} V ({energy:.0} Wh), at the unfavourable end \
         {:.0} Ah; an ordinary day with {:.0} °C in the cabin takes {:.0} Ah.{others}",
        swung.likely,
        build.system.likely().in_v(),
        swung.unfavourable,
        cabin.in_celsius(),
        charge(&mild),
    );
    let figure =
        Figure { likely: swung.likely, unfavourable: swung.unfavourable, unit: Unit::AmpereHour };
    let finding = Finding::plain("use", "amp-hours of a hot day", Verdict::Good, says);
    Some(Finding {
        figure: Some(figure),
        inputs: scene.ledger.inputs().to_vec(),
        ..finding.worked(working::total(&scene, &hot, &mild, cabin))
    })
}

/// Ampere-hours of all.
fn charge(days: &[Day]) -> f64 {
    days.iter().map(|day| day.charge_per_day.in_ah()).sum()
}
