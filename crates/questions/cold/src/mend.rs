//! What would clear a stop or a care: how cool the bay must be, and the air that keeps it so.

use spile_answer::{Reason, Swing, Verdict};
use spile_quantity::{Temperature, TemperatureDifference};

use crate::day::{BayIs, Weather};
use crate::scene::{AIR_J_PER_M3_K, Scene, Values, Worst};

/// How near [K] the bay's temperature is found.
const NEAR_K: f64 = 0.02;

/// What brings the duty of the first box to 100 %.
pub(crate) fn duty(scene: &Scene<'_>, swung: &Swing, verdict: Verdict) -> Option<String> {
    match verdict {
        _ if swung.likely > 100.0 => duty_at(scene, &scene.ledger.likely(), ""),
        Verdict::Care(Reason::Unsure) => {
            let worst = Worst::of(swung, &scene.ledger);
            duty_at(scene, &worst, "To hold at the unfavourable end too: ")
        }
        _ => None,
    }
}

fn duty_at(scene: &Scene<'_>, values: &impl Values, start: &str) -> Option<String> {
    let cabin = scene.cabin(values, Weather::HotAfternoon);
    let duty_with = |bay: Temperature| {
        let days = scene.days(values, Weather::HotAfternoon, BayIs::KeptAt(bay));
        days.ok().map(|days| days[0].duty)
    };
    let now = scene.days(values, Weather::HotAfternoon, BayIs::Balanced).ok()?;
    let (now_bay, now) = (now[0].air.cabinet, &now[0]);
    let coolest = duty_with(cabin)?;
    if coolest > 1.0 {
        let place =
            if scene.boxes[0].bay.is_some() { "even in the cabin's own air" } else { "there" };
        let short_w = now.load.total().in_w() * (1.0 - 1.0 / now.duty);
        let text = format!(
            "{place} it would need {coolest:.1} times the cooling; it now lacks {short_w:.0} W. It \
             takes a stronger one, thicker walls or a cooler cabin."
        );
        return Some(begin(start, &text));
    }
    if now.duty <= 1.0 {
        return None;
    }
    let mut coolest_c = cabin.in_celsius();
    let mut warmest_c = now_bay.in_celsius();
    while warmest_c - coolest_c > NEAR_K {
        let middle_c = f64::midpoint(coolest_c, warmest_c);
        if duty_with(Temperature::celsius(middle_c))? > 1.0 {
            warmest_c = middle_c;
        } else {
            coolest_c = middle_c;
        }
    }
    let air = air_for(scene, values, Temperature::celsius(coolest_c))?;
    Some(begin(start, &format!("the bay at {coolest_c:.0} °C at most, {air}.")))
}

/// What brings the air round the first box down to what its papers allow.
pub(crate) fn warmest(
    scene: &Scene<'_>,
    swung: &Swing,
    verdict: Verdict,
    most: Temperature,
) -> Option<String> {
    let (start, text) = if swung.likely > most.in_celsius() {
        ("", warmest_at(scene, &scene.ledger.likely(), most)?)
    } else if verdict == Verdict::Care(Reason::Unsure) {
        let worst = Worst::of(swung, &scene.ledger);
        ("To hold at the unfavourable end too: ", warmest_at(scene, &worst, most)?)
    } else {
        return None;
    };
    Some(begin(start, &text))
}

fn warmest_at(scene: &Scene<'_>, values: &impl Values, most: Temperature) -> Option<String> {
    let cabin = scene.cabin(values, Weather::HotAfternoon);
    if cabin >= most {
        return Some(format!(
            "the cabin alone is at {:.0} °C: shade and a roof fan first.",
            cabin.in_celsius()
        ));
    }
    Some(format!("{}.", air_for(scene, values, most)?))
}

/// The further air through the bay that keeps it at a temperature above the cabin's: `which takes
/// 12 m³/h more air through it`.
///
/// The heat that all boxes in the bay give off when it is that warm is carried away by what leads
/// heat out of it now and by the further air, at ρ·c of air of some 35 °C.
fn air_for(scene: &Scene<'_>, values: &impl Values, bay: Temperature) -> Option<String> {
    let cabin = scene.cabin(values, Weather::HotAfternoon);
    let days = scene.days(values, Weather::HotAfternoon, BayIs::KeptAt(bay)).ok()?;
    let heat_w: f64 = days.iter().map(|day| (day.given.cabinet + day.given.condenser).in_w()).sum();
    let over: TemperatureDifference = bay.above(cabin);
    let now = scene.each[0].bay?.conductance(values);
    let more_w_per_k = heat_w / over.in_k() - now.in_w_per_k();
    if over.in_k() < 0.5 {
        return Some("which takes the free air of the cabin round it".to_owned());
    }
    let flow = more_w_per_k / AIR_J_PER_M3_K * 3600.0;
    Some(format!("which takes {:.0} m³/h more air through it", flow.max(1.0).ceil()))
}

/// A sentence that begins with `start`, or with its own first letter made large.
fn begin(start: &str, text: &str) -> String {
    if !start.is_empty() {
        return format!("{start}{text}");
    }
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
