//! How the vehicle is used, and what is wanted of it.

use spile_quantity::{Angle, Mass, Share, Temperature, Time, Volume};

use super::{LoadPlacesFile, Q, Text};
use crate::date::Day;
use crate::read::{Keyed, Said, record};

record! {
    /// What the answers are judged against.
    pub struct WantsFile ("the wants") {
        /// How many people eat from it.
        people: Option<Said<u32>>,
        /// How long they stay away from shops: `6 days`.
        away: Q<Time>,
        /// Cold food each of them needs in a day.
        litres: Q<Volume>,
        /// Acceptable time without power in a year: `24 h`.
        without_power: Q<Time>,
        /// Temperature wanted in the fridge.
        inside: Q<Temperature>,
    }
}

record! {
    /// Load states and corner states.
    pub struct StatesFile ("the states") {
        /// Load states by name: `empty`, `touring`, `full`.
        load: Keyed<LoadFile>,
        /// Where that which is aboard sits, in every load state.
        at: Option<Said<LoadPlacesFile>>,
        /// Corner states by name: `hot-day`, `cold-night`, `low-battery`.
        corner: Keyed<CornerFile>,
    }
}

record! {
    /// What is aboard.
    pub struct LoadFile ("a load state") {
        /// Water in the tanks.
        water: Q<Volume>,
        /// Everybody aboard, together.
        people: Q<Mass>,
        /// Fuel in the tank.
        fuel: Q<Volume>,
        /// Food and drink.
        food: Q<Mass>,
    }
}

record! {
    /// A state in which things are at their hardest.
    pub struct CornerFile ("a corner state") {
        /// Temperature outside.
        outside: Q<Temperature>,
        /// Temperature in the cabin.
        cabin: Q<Temperature>,
        /// State of charge of the bank: `20 %`.
        charge: Q<Share>,
    }
}

record! {
    /// How the vehicle is used over days.
    pub struct TripFile ("a trip") {
        /// What it is, in a line.
        about: Text,
        /// Latitude, north positive: `37°`.
        latitude: Q<Angle>,
        /// Longitude, east positive.
        longitude: Q<Angle>,
        /// The months, by their English names.
        months: Vec<Said<String>>,
        /// How long one stays in a place.
        stays: Q<Time>,
        /// How long one drives between two places.
        drives: Q<Time>,
        /// Share of the days on hook-up.
        hook_up: Q<Share>,
        /// How many people.
        people: Option<Said<u32>>,
    }
}

record! {
    /// Readings of a weighbridge.
    pub struct WeighingFile ("a weighing") {
        /// When, as 2026-03-14.
        date: Option<Said<Day>>,
        /// The load state it was in.
        state: Text,
        /// Front axle (of a trailer: the nose).
        front: Q<Mass>,
        /// Rear axle (of a trailer: the axle).
        rear: Q<Mass>,
        /// Left wheels together.
        left: Q<Mass>,
        /// Right wheels together.
        right: Q<Mass>,
        /// The front left wheel, where each was weighed.
        front_left: Q<Mass>,
        /// The front right wheel.
        front_right: Q<Mass>,
        /// The rear left wheel or twins.
        rear_left: Q<Mass>,
        /// The rear right wheel or twins.
        rear_right: Q<Mass>,
    }
}
