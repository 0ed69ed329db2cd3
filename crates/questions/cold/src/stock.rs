//! The stand-ins that this question uses, read from their table once.

use std::sync::LazyLock;

use spile_answer::Given;
use spile_build::file::PartKind;
use spile_build::{typical, typical_number};
use spile_quantity::{
    Conductance, Conductivity, Flow, Length, Mass, Power, Share, TemperatureDifference, Volume,
};

/// Every stand-in of this question.
pub(crate) struct Stock {
    power_small: Given<Power>,
    power_medium: Given<Power>,
    power_large: Given<Power>,
    pub(crate) standby: Given<Power>,
    pub(crate) light_and_fan: Given<Power>,
    pub(crate) carnot: Given<Share>,
    pub(crate) evaporator: Given<TemperatureDifference>,
    pub(crate) condenser: Given<TemperatureDifference>,
    pub(crate) least_lift: Given<TemperatureDifference>,
    pub(crate) foam: Given<Conductivity>,
    walls: [Given<Length>; 3],
    pub(crate) bridges: Given<Share>,
    pub(crate) gasket: Given<Conductivity>,
    pub(crate) film_inside: Given<Share>,
    pub(crate) film_outside: Given<Share>,
    air_changes: [Given<Share>; 3],
    pub(crate) openings: Given<Share>,
    pub(crate) warm_food: Given<Mass>,
    pub(crate) cabin_humidity: Given<Share>,
    pub(crate) fridge_humidity: Given<Share>,
    pub(crate) hot_day_mean: Given<TemperatureDifference>,
    pub(crate) bay_to_cabin: Given<Conductance>,
    pub(crate) bay_to_outside: Given<Conductance>,
    pub(crate) vent_flow: Given<Flow>,
    pub(crate) packed_share: Given<Share>,
}

/// All of them.
pub(crate) static STOCK: LazyLock<Stock> = LazyLock::new(|| {
    let kinds = ["upright", "lidded", "drawer"];
    Stock {
        power_small: typical("fridge-power-small"),
        power_medium: typical("fridge-power-medium"),
        power_large: typical("fridge-power-large"),
        standby: typical("fridge-standby"),
        light_and_fan: typical("fridge-light-fan"),
        carnot: typical("fridge-carnot"),
        evaporator: typical("fridge-evaporator"),
        condenser: typical("fridge-condenser"),
        least_lift: typical("fridge-least-lift"),
        foam: typical("fridge-foam"),
        walls: kinds.map(|kind| typical(&format!("fridge-wall-{kind}"))),
        bridges: typical_number("fridge-bridges"),
        gasket: typical("fridge-gasket"),
        film_inside: typical_number("film-inside"),
        film_outside: typical_number("film-outside"),
        air_changes: kinds.map(|kind| typical(&format!("air-change-{kind}"))),
        openings: typical_number("openings"),
        warm_food: typical("warm-food"),
        cabin_humidity: typical("cabin-humidity"),
        fridge_humidity: typical("fridge-humidity"),
        hot_day_mean: typical("hot-day-mean"),
        bay_to_cabin: typical("bay-to-cabin"),
        bay_to_outside: typical("bay-to-outside"),
        vent_flow: typical("vent-flow"),
        packed_share: typical("packed-share"),
    }
});

impl Stock {
    /// Power while running of a compressor fridge of that nominal volume.
    pub(crate) fn power(&self, volume: Volume) -> &Given<Power> {
        if volume <= Volume::litres(50.0) {
            &self.power_small
        } else if volume <= Volume::litres(100.0) {
            &self.power_medium
        } else {
            &self.power_large
        }
    }

    /// Thickness of the wall of a cold box of that kind.
    pub(crate) fn wall(&self, kind: PartKind) -> &Given<Length> {
        &self.walls[row(kind)]
    }

    /// The share of its air that a cold box of that kind loses at one opening.
    pub(crate) fn air_change(&self, kind: PartKind) -> &Given<Share> {
        &self.air_changes[row(kind)]
    }
}

/// The row of a kind in the three-fold tables; what is neither box nor drawer opens like a door.
fn row(kind: PartKind) -> usize {
    match kind {
        PartKind::LiddedBox => 1,
        PartKind::DrawerFridge => 2,
        _ => 0,
    }
}
