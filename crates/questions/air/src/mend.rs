//! What would clear it: the opening or the air that keeps a bay cool.

use spile_answer::{Finding, Reason, Swing, Verdict};
use spile_build::typical;
use spile_heat::openings::carries;
use spile_heat::scene::{Heats, OpeningInputs, Values, Vents, Worst};
use spile_quantity::{Area, Conductance, Length, Share, Temperature, TemperatureDifference};

use crate::place::{But, Place};
use crate::words::{capital, cm2_up, flow_up, number};

/// No opening of a bay \[m²\] is larger.
const LARGEST_M2: f64 = 0.04;
/// How near \[m²\] an opening is found.
const NEAR_M2: f64 = 2e-5;
/// A bay that may be no more than this \[K\] over the cabin is no bay.
const LEAST_OVER_K: f64 = 0.5;

/// What brings a bay down to a temperature.
pub(crate) fn cooler(
    place: &Place<'_>,
    swung: &Swing,
    finding: &Finding,
    most: Temperature,
) -> Option<String> {
    let (values, start) = point(place, swung, finding)?;
    Some(start.with(&keeps(place, &values, most)?))
}

/// What brings the air at a condenser down to so little over the cabin.
pub(crate) fn fresher(
    place: &Place<'_>,
    swung: &Swing,
    finding: &Finding,
    most: TemperatureDifference,
) -> Option<String> {
    let (values, start) = point(place, swung, finding)?;
    if let Heats::Assumed { vents: Some(Vents::Openings(openings)), .. } = place.inputs.heats {
        return Some(start.with(&apart(place, &values, openings)));
    }
    let most = place.cabin(&values).warmer(most);
    Some(start.with(&keeps(place, &values, most)?))
}

/// Where a mend was computed.
#[derive(Clone, Copy)]
enum At {
    Likely,
    Unfavourable,
}

impl At {
    fn with(self, text: &str) -> String {
        match self {
            Self::Likely => capital(text),
            Self::Unfavourable => format!("At the unfavourable end: {text}"),
        }
    }
}

/// The point at which something is to be cleared: the likely one where the figure is outside its
/// limit there, else the worst one where it is unsure.
fn point(place: &Place<'_>, swung: &Swing, finding: &Finding) -> Option<(Worst, At)> {
    let limit = finding.limit.as_ref()?;
    if swung.likely > limit.value {
        let still = Swing { movers: Vec::new(), ..swung.clone() };
        return Some((Worst::of(&still, place.ledger()), At::Likely));
    }
    (finding.verdict == Verdict::Care(Reason::Unsure))
        .then(|| (Worst::of(swung, place.ledger()), At::Unfavourable))
}

/// What keeps the bay at a temperature: larger openings where there are some and they can, else
/// so much air.
fn keeps(place: &Place<'_>, values: &Worst, most: Temperature) -> Option<String> {
    let name = place.name;
    let cabin = place.cabin(values);
    let over_k = most.above(cabin).in_k();
    if over_k < LEAST_OVER_K {
        return Some(format!(
            "the cabin alone is at {:.0} °C: shade and a roof fan come first.",
            cabin.in_celsius()
        ));
    }
    if let Heats::Assumed { vents: Some(Vents::Openings(openings)), .. } = place.inputs.heats
        && let Some(area) = area(place, values, openings, most)
    {
        return Some(format!(
            "openings of {} each, in and out, keep {name} at {} °C.",
            cm2_up(area),
            number(most.in_celsius())
        ));
    }
    let heat = place.heat_at(values, most).ok()?;
    let (walls, more) = match place.inputs.heats {
        Heats::Measured(all) => (values.at(all), "more"),
        Heats::Assumed { to_cabin, to_outside, .. } => {
            (values.at(to_cabin) + values.at(to_outside), "of")
        }
    };
    let air = Conductance::w_per_k(heat.in_w() / over_k) - walls;
    let flow = carries(air.max(Conductance::default()), cabin).ok()?;
    Some(format!(
        "{} {more} fresh air through {name} keeps it at {} °C.",
        flow_up(flow),
        number(most.in_celsius())
    ))
}

/// The least area of inlet and outlet that keeps the bay at a temperature, by halving.
fn area(
    place: &Place<'_>,
    values: &Worst,
    openings: OpeningInputs,
    most: Temperature,
) -> Option<Area> {
    let holds = |area_m2: f64| {
        let larger =
            openings.areas.map(|handle| (handle.index(), values.at(handle).in_m2().max(area_m2)));
        let with = But { base: values, with: larger.to_vec() };
        place.temperature(&with).is_ok_and(|bay| bay <= most)
    };
    if !holds(LARGEST_M2) {
        return None;
    }
    let (mut fails_m2, mut holds_m2) = (0.0, LARGEST_M2);
    while holds_m2 - fails_m2 > NEAR_M2 {
        let middle_m2 = f64::midpoint(fails_m2, holds_m2);
        if holds(middle_m2) {
            holds_m2 = middle_m2;
        } else {
            fails_m2 = middle_m2;
        }
    }
    Some(Area::m2(holds_m2))
}

/// What parting the openings would do.
fn apart(place: &Place<'_>, values: &Worst, openings: OpeningInputs) -> String {
    let share = typical::<Share>("drawn-in-apart").likely().in_of_one();
    let parted = But { base: values, with: vec![(openings.drawn_in.index(), share)] };
    let over = place.temperature(&parted).map(|bay| bay.above(place.cabin(&parted)).in_k() * share);
    let then = over.map_or_else(|_| String::new(), |over_k| format!(": then it is {over_k:.1} K"));
    format!(
        "keep the way round from outlet to inlet over {} mm, with nothing that leads one to the \
         other{then}.",
        number(typical::<Length>("vents-apart").likely().in_m() * 1000.0)
    )
}

#[cfg(test)]
mod tests {
    use spile_answer::{Worse, swing};
    use spile_build::Folder;
    use spile_heat::scene::Worst;
    use spile_quantity::{Area, Temperature};

    use super::*;

    #[test]
    fn the_area_found_is_the_least_that_holds() {
        let text = r#"
            [bays.locker]
            size = { width = "640 mm", height = "900 mm", depth = "560 mm" }
            air.inlet = { area = "20 cm2", above = "0.1 m" }
            air.outlet = { area = "20 cm2", above = "0.8 m" }
            [parts.inverter]
            kind = "inverter"
            power = { running = "2000 W" }
            [items.inverter]
            place = { in = "locker" }
        "#;
        let folder = Folder::from_texts([("build.toml", text)]).unwrap();
        let build = folder.build();
        let place = Place::new(build, "locker", &build.bays["locker"]).unwrap();
        let [swung] = swing(place.ledger(), [Worse::Higher], |point| {
            [place.temperature(point).unwrap().in_celsius()]
        });
        let still = Worst::of(&Swing { movers: Vec::new(), ..swung.clone() }, place.ledger());
        let Heats::Assumed { vents: Some(Vents::Openings(openings)), .. } = place.inputs.heats
        else {
            panic!("openings")
        };
        let most = Temperature::celsius(swung.likely - 2.0);
        let least = area(&place, &still, openings, most).unwrap();
        let with = |area: Area| {
            let set = openings.areas.map(|handle| (handle.index(), area.in_m2()));
            let with = But { base: &still, with: set.to_vec() };
            place.temperature(&with).unwrap()
        };
        assert!(with(least) <= most && with(least - Area::m2(2.0 * NEAR_M2)) > most);
    }
}
