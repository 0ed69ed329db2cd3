//! What would clear a stop or a care: how cool the bay must be, and the air that keeps it so.

use spile_answer::{Reason, Swing, Verdict};
use spile_heat::openings::carries;
use spile_heat::scene::{BayIs, Heats, Scene, Values, Weather, Worst};
use spile_quantity::{Conductance, Temperature};

use crate::keep::capital;

/// How near \[K\] a temperature is found.
const NEAR_K: f64 = 0.02;
/// The air that carries the heat, as warm as in the working.
const WARM: Temperature = Temperature::celsius(35.0);
/// A bay that may be no more than this \[K\] over the cabin is no bay.
const LEAST_OVER_K: f64 = 0.5;

/// What brings the duty of the first box to 100 %.
pub(crate) fn duty(scene: &Scene<'_>, swung: &Swing, verdict: Verdict) -> Option<String> {
    at_its_point(scene, swung, verdict, swung.likely > 100.0, Bring::Duty)
}

/// What brings the air round the first box down to what its papers allow.
pub(crate) fn warmest(
    scene: &Scene<'_>,
    swung: &Swing,
    verdict: Verdict,
    most: Temperature,
) -> Option<String> {
    at_its_point(scene, swung, verdict, swung.likely > most.in_celsius(), Bring::Warmest(most))
}

/// What is to be brought within its limit.
#[derive(Clone, Copy)]
enum Bring {
    Duty,
    Warmest(Temperature),
}

/// A mend for the likely point where the figure is outside there, else for the worst one.
fn at_its_point(
    scene: &Scene<'_>,
    swung: &Swing,
    verdict: Verdict,
    outside: bool,
    bring: Bring,
) -> Option<String> {
    if outside {
        return mend(scene, &scene.ledger.likely(), bring).map(|text| capital(&text));
    }
    if verdict != Verdict::Care(Reason::Unsure) {
        return None;
    }
    let text = mend(scene, &Worst::of(swung, &scene.ledger), bring)?;
    Some(format!("At the unfavourable end {text}"))
}

fn mend(scene: &Scene<'_>, values: &impl Values, bring: Bring) -> Option<String> {
    match bring {
        Bring::Duty => duty_at(scene, values),
        Bring::Warmest(most) => warmest_at(scene, values, most),
    }
}

fn duty_at(scene: &Scene<'_>, values: &impl Values) -> Option<String> {
    let cabin = scene.cabin(values, Weather::HotAfternoon);
    let duty_in = |cabin: Temperature, bay: Temperature| {
        let days = scene.days(values, Weather::Cabin(cabin), BayIs::KeptAt(bay));
        days.ok().map(|days| days[0].duty)
    };
    let now = scene.days(values, Weather::HotAfternoon, BayIs::Balanced).ok()?;
    if now[0].duty <= 1.0 {
        return None;
    }
    let free = duty_in(cabin, cabin)?;
    if free > 1.0 {
        let inside = values.at(scene.shared.inside);
        let holds = warmest_within(inside, cabin, |t| duty_in(t, t))?;
        return Some(format!(
            "even in the cabin's own air it takes {free:.1} times the cooling there is. So it holds \
             up to {:.0} °C in the cabin.",
            holds.in_celsius().floor()
        ));
    }
    let bay = warmest_within(cabin, now[0].air.cabinet, |bay| duty_in(cabin, bay))?;
    let air = air_for(scene, values, bay)?;
    Some(format!("it holds with {air}, which keeps it at {:.0} °C.", bay.in_celsius()))
}

fn warmest_at(scene: &Scene<'_>, values: &impl Values, most: Temperature) -> Option<String> {
    let cabin = scene.cabin(values, Weather::HotAfternoon);
    if cabin >= most {
        return Some(format!(
            "the cabin alone is at {:.0} °C: shade and a roof fan come first.",
            cabin.in_celsius()
        ));
    }
    let air = air_for(scene, values, most)?;
    Some(format!("it stays within with {air}."))
}

/// The warmest temperature between two at which a duty is still 100 % at most.
fn warmest_within(
    holds: Temperature,
    fails: Temperature,
    duty: impl Fn(Temperature) -> Option<f64>,
) -> Option<Temperature> {
    let mut holds_c = holds.in_celsius();
    let mut fails_c = fails.in_celsius();
    while fails_c - holds_c > NEAR_K {
        let middle_c = f64::midpoint(holds_c, fails_c);
        if duty(Temperature::celsius(middle_c))? > 1.0 {
            fails_c = middle_c;
        } else {
            holds_c = middle_c;
        }
    }
    Some(Temperature::celsius(holds_c))
}

/// The air through the bay that keeps it at a temperature: `12 m³/h of air through it`.
///
/// The heat that all boxes in the bay give off when it is that warm leaves with the air, but for
/// what its walls let through. Of a bay that was measured as a whole, the further air is told.
fn air_for(scene: &Scene<'_>, values: &impl Values, bay: Temperature) -> Option<String> {
    let inputs = scene.each[0].bay.as_ref()?;
    let (name, _) = scene.boxes[0].bay?;
    let over_k = bay.above(scene.cabin(values, Weather::HotAfternoon)).in_k();
    if over_k < LEAST_OVER_K {
        return Some(format!("{name} open to the cabin"));
    }
    let days = scene.settled_days(values, Weather::HotAfternoon, BayIs::KeptAt(bay)).ok()?;
    let heat = scene.heat_into(name, &days) + inputs.place(values).ok()?.machines;
    let (walls, more) = match inputs.heats {
        Heats::Measured(all) => (values.at(all), "more"),
        Heats::Assumed { to_cabin, to_outside, .. } => {
            (values.at(to_cabin) + values.at(to_outside), "of")
        }
    };
    let air = Conductance::w_per_k(heat.in_w() / over_k) - walls;
    let flow = carries(air.max(Conductance::default()), WARM).ok()?.in_m3_per_h().max(1.0).ceil();
    Some(format!("{flow:.0} m³/h {more} air through {name}"))
}
