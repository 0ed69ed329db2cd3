//! Wants, states, trips and weighings: made typed.

use spile_answer::Basis;
use spile_quantity::Time;

use super::plausible as p;
use super::{Resolver, named, text};
use crate::file::{BuildFile, CornerFile, LoadFile, TripFile, WeighingFile};
use crate::model::{Corners, LoadState, Named, Trip, Wants, Weighing};
use crate::read::{Keyed, Said, suggestion};

/// What the answers are judged against; each want that was not said is told with its default.
pub(super) fn wants(file: &BuildFile, r: &mut Resolver<'_>) -> Wants {
    let file = file.wants.as_ref().map(|said| said.value.clone()).unwrap_or_default();
    if let Some(said) = &file.people
        && !(1..=60).contains(&said.value)
    {
        r.reader.tell(
            &said.at,
            "between 1 and 60 people eat from a vehicle",
            "not plausible",
            "give the number of people aboard",
        );
    }
    let people = file.people.as_ref().map_or(2, |people| people.value);
    let away = r.or_typical::<Time>(&file.away, p::TIME_S, "want-away");
    let litres = r.or_typical(&file.litres, p::FOOD_M3, "litres-per-person-day");
    let without_power = r.or_typical::<Time>(&file.without_power, p::TIME_S, "want-without-power");
    let inside = r.or_typical(&file.inside, p::COLD_C, "fridge-setpoint");
    let mut assumed = Vec::new();
    let mut say = |missing: bool, what: String| {
        if missing {
            assumed.push(what);
        }
    };
    say(file.people.is_none(), format!("{people} people"));
    say(file.away.is_none(), format!("{} days away from shops", away.likely().in_days()));
    say(
        file.litres.is_none(),
        format!("{} L of cold food a person and day", litres.likely().in_litres()),
    );
    say(
        file.without_power.is_none(),
        format!("{} h a year without power", without_power.likely().in_hours()),
    );
    say(file.inside.is_none(), format!("{} °C in the fridge", inside.likely().in_celsius()));
    Wants { people, away, litres, without_power, inside, assumed }
}

/// Load states and corner states.
pub(super) fn states(file: &BuildFile, r: &mut Resolver<'_>) -> (Named<LoadState>, Corners) {
    const CORNERS: [&str; 3] = ["hot-day", "mild-day", "low-battery"];
    let states = file.states.as_ref().map(|said| said.value.clone()).unwrap_or_default();
    let loads = named(&states.load, |_, load: &LoadFile| {
        Some(LoadState {
            water: r.given(&load.water, Basis::Measured, p::VOLUME_M3),
            people: r.given(&load.people, Basis::Measured, p::MASS_KG),
            fuel: r.given(&load.fuel, Basis::Measured, p::VOLUME_M3),
            food: r.given(&load.food, Basis::Measured, p::MASS_KG),
        })
    });
    for (name, _) in states.corner.iter() {
        if !CORNERS.contains(&name.value.as_str()) {
            r.reader.tell(
                &name.at,
                format!("there is no corner state `{}`", name.value),
                "not a corner state",
                suggestion(&name.value, &CORNERS),
            );
        }
    }
    let corner =
        |name: &str| -> CornerFile { states.corner.get(name).cloned().unwrap_or_default() };
    let corners = Corners {
        hot_cabin: r.or_typical(&corner("hot-day").cabin, p::SURROUNDINGS_C, "cabin-hot-day"),
        mild_cabin: r.or_typical(&corner("mild-day").cabin, p::SURROUNDINGS_C, "cabin-mild-day"),
        low_charge: r.or_typical(&corner("low-battery").charge, p::SHARE, "battery-low-charge"),
    };
    (loads, corners)
}

/// How the vehicle is used over days.
pub(super) fn trips(file: &BuildFile, r: &mut Resolver<'_>) -> Named<Trip> {
    named(&file.trips, |_, trip: &TripFile| {
        Some(Trip {
            about: text(&trip.about),
            latitude: r.given(&trip.latitude, Basis::Measured, p::LATITUDE_RAD),
            longitude: r.given(&trip.longitude, Basis::Measured, p::LONGITUDE_RAD),
            months: trip.months.iter().filter_map(|said| month(said, r)).collect(),
            stays: r.given(&trip.stays, Basis::Measured, p::TIME_S),
            drives: r.given(&trip.drives, Basis::Measured, p::TIME_S),
            hook_up: r.given(&trip.hook_up, Basis::Measured, p::SHARE),
            people: trip.people.as_ref().map(|said| said.value),
        })
    })
}

fn month(said: &Said<String>, r: &mut Resolver<'_>) -> Option<u32> {
    const MONTHS: [&str; 12] = [
        "january",
        "february",
        "march",
        "april",
        "may",
        "june",
        "july",
        "august",
        "september",
        "october",
        "november",
        "december",
    ];
    let word = said.value.trim().to_lowercase();
    let found = MONTHS.iter().position(|month| *month == word);
    if found.is_none() {
        r.reader.tell(
            &said.at,
            format!("`{}` is not a month", said.value),
            "not a month",
            suggestion(&word, &MONTHS),
        );
    }
    found.and_then(|index| u32::try_from(index + 1).ok())
}

/// Readings of a weighbridge.
pub(super) fn weighings(file: &BuildFile, r: &mut Resolver<'_>) -> Named<Weighing> {
    let no_states = Keyed::default();
    let loads = file.states.as_ref().map_or(&no_states, |said| &said.value.load);
    named(&file.weighings, |_, weighing: &WeighingFile| {
        r.known(weighing.state.as_ref(), "load state", loads);
        let WeighingFile { front, rear, left, right, .. } = weighing;
        let WeighingFile { front_left, front_right, rear_left, rear_right, .. } = weighing;
        Some(Weighing {
            date: weighing.date.as_ref().map(|said| said.value.0.clone()),
            state: weighing.state.as_ref().map(|said| said.value.clone()),
            readings: [front, rear, left, right].map(|q| r.given(q, Basis::Measured, p::MASS_KG)),
            corners: [front_left, front_right, rear_left, rear_right]
                .map(|q| r.given(q, Basis::Measured, p::MASS_KG)),
        })
    })
}
