//! The bank as a source: its voltage at rest, full and low, and its own resistance.

use spile_answer::Given;
use spile_build::file::Chemistry;
use spile_build::{Bank, Build, typical};
use spile_quantity::{Resistance, Share, Voltage};
use spile_tables::battery;

/// The chemistry's word in the keys of the stand-ins.
const fn key(kind: Chemistry) -> &'static str {
    match kind {
        Chemistry::Flooded => "flooded",
        Chemistry::Agm => "agm",
        Chemistry::Gel => "gel",
        Chemistry::Lfp => "lfp",
    }
}

/// How many batteries of nominally 12 V would stand in series.
fn in_series(build: &Build) -> f64 {
    build.system.likely().in_v() / 12.0
}

/// The bank's internal resistance, warm and full: as measured, else typical for its chemistry in
/// proportion to 100 Ah over its capacity; batteries in parallel share, those in series add up.
///
/// **Source** common practice: resistance falls with plate area, and so with capacity.
pub fn bank_resistance(build: &Build, bank: &Bank) -> Given<Resistance> {
    let each = bank.resistance.clone().unwrap_or_else(|| {
        let ah = bank.capacity.as_ref().map_or(100.0, |capacity| capacity.likely().in_ah());
        let key = format!("battery-resistance-{}", key(bank.kind));
        typical::<Resistance>(&key).map(|ohm| ohm * (in_series(build) * 100.0 / ah))
    });
    each.map(|ohm| ohm * (1.0 / f64::from(bank.count)))
}

/// The bank's voltage at rest, full.
pub fn full_voltage(build: &Build, bank: &Bank) -> Given<Voltage> {
    let key = format!("battery-full-{}", key(bank.kind));
    typical::<Voltage>(&key).map(|volts| volts * in_series(build))
}

/// The bank's voltage at rest at the build's low charge: what is typical at 20 %, moved along its
/// chemistry's curve to that charge.
pub fn low_voltage(build: &Build, bank: &Bank) -> Given<Voltage> {
    let at_20 = typical::<Voltage>(&format!("battery-low-{}", key(bank.kind)));
    let low = build.corners.low_charge.value.likely;
    let moved = match (curve(bank.kind, low), curve(bank.kind, Share::percent(20.0))) {
        (Some(there), Some(at_20)) => there - at_20,
        _ => Voltage::v(0.0),
    };
    at_20.map(|volts| (volts + moved) * in_series(build))
}

/// The voltage at rest of a battery of nominally 12 V by its charge, along straight lines between
/// the points of the table; `None` beyond its ends.
fn curve(kind: Chemistry, charge: Share) -> Option<Voltage> {
    let chemistry = match kind {
        Chemistry::Flooded => battery::Chemistry::Flooded,
        Chemistry::Agm => battery::Chemistry::Agm,
        Chemistry::Gel => battery::Chemistry::Gel,
        Chemistry::Lfp => battery::Chemistry::Lfp,
    };
    let points = &battery::resting_voltage(chemistry)?.value.points;
    let above = points.iter().position(|(share, _)| *share >= charge)?;
    let (low, high) = (points[above.saturating_sub(1)], points[above]);
    let width = (high.0 - low.0).in_of_one();
    let part = if width > 0.0 { (charge - low.0).in_of_one() / width } else { 0.0 };
    (charge >= low.0).then(|| low.1 + (high.1 - low.1) * part)
}
