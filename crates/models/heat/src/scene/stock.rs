//! The stand-ins for boxes and bays, read from their table once.

use std::sync::LazyLock;

use spile_answer::Given;
use spile_build::file::{Chemistry, Cover, PartKind};
use spile_build::{typical, typical_number};
use spile_quantity::{
    Area, Conductance, Conductivity, Flow, Length, Mass, Power, Pressure, Resistance, Share,
    TemperatureDifference, Time, Volume,
};

/// Every stand-in for boxes and bays.
pub struct Stock {
    power_small: Given<Power>,
    power_medium: Given<Power>,
    power_large: Given<Power>,
    /// Power of a fridge at rest.
    pub standby: Given<Power>,
    /// Light and fan inside a box.
    pub light_and_fan: Given<Power>,
    /// Share of the ideal that a circuit reaches.
    pub carnot: Given<Share>,
    /// Cold plate under the inside.
    pub evaporator: Given<TemperatureDifference>,
    /// Condenser over its air.
    pub condenser: Given<TemperatureDifference>,
    /// Least lift of a circuit.
    pub least_lift: Given<TemperatureDifference>,
    /// Conductivity of the insulation.
    pub foam: Given<Conductivity>,
    walls: [Given<Length>; 3],
    /// Heat through a body over that of plain walls.
    pub bridges: Given<Share>,
    /// Heat through a metre of gasket.
    pub gasket: Given<Conductivity>,
    /// Heat transfer at the inner wall.
    pub film_inside: Given<Share>,
    /// Heat transfer at the outer wall.
    pub film_outside: Given<Share>,
    air_changes: [Given<Share>; 3],
    /// Openings a day.
    pub openings: Given<Share>,
    /// Food put in warm, a person and day.
    pub warm_food: Given<Mass>,
    /// Humidity of the cabin.
    pub cabin_humidity: Given<Share>,
    /// Humidity in the fridge.
    pub fridge_humidity: Given<Share>,
    /// A hot afternoon over the mean of its day.
    pub hot_day_mean: Given<TemperatureDifference>,
    /// Heat from a bay to the cabin, a kelvin.
    pub bay_to_cabin: Given<Conductance>,
    /// Heat from a bay through the skin, a kelvin.
    pub bay_to_outside: Given<Conductance>,
    /// Air through a bay with vents while the fan runs.
    pub vent_flow: Given<Flow>,
    /// Share of the nominal volume that packs.
    pub packed_share: Given<Share>,
    /// Free area of a vent.
    pub vent_area: Given<Area>,
    /// Upper opening over the lower one.
    pub vent_rise: Given<Length>,
    /// Least way round between two vents.
    pub vents_apart: Given<Length>,
    /// Gaps of a closed void.
    pub void_leak: Given<Area>,
    /// Free flow of a small fan.
    pub fan_flow: Given<Flow>,
    /// Greatest pressure of a small fan.
    pub fan_pressure: Given<Pressure>,
    /// Share drawn in again, openings beside each other.
    pub drawn_in_beside: Given<Share>,
    /// Share drawn in again, openings well apart.
    pub drawn_in_apart: Given<Share>,
    /// Share that goes round where a fan blows against the warmth.
    pub drawn_in_against: Given<Share>,
    /// Efficiency of an inverter.
    pub inverter_efficiency: Given<Share>,
    /// Efficiency of a charger.
    pub charger_efficiency: Given<Share>,
    /// Idle power of an inverter.
    pub inverter_idle: Given<Power>,
    /// Idle power of a charger.
    pub charger_idle: Given<Power>,
    /// Share of a hot afternoon that an inverter or charger is at full load.
    pub on_in_the_heat: Given<Share>,
    /// How long a day an inverter is at full load, and switched on.
    pub inverter_daily: [Given<Time>; 2],
    discharges: [Given<Share>; 3],
    battery_resistances: [Given<Resistance>; 4],
}

/// All of them.
pub static STOCK: LazyLock<Stock> = LazyLock::new(|| {
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
        vent_area: typical("vent-area"),
        vent_rise: typical("vent-rise"),
        vents_apart: typical("vents-apart"),
        void_leak: typical("void-leak"),
        fan_flow: typical("fan-free-flow"),
        fan_pressure: typical("fan-greatest-pressure"),
        drawn_in_beside: typical("drawn-in-beside"),
        drawn_in_apart: typical("drawn-in-apart"),
        drawn_in_against: typical("drawn-in-against"),
        inverter_efficiency: typical("inverter-efficiency"),
        charger_efficiency: typical("charger-efficiency"),
        inverter_idle: typical("inverter-idle"),
        charger_idle: typical("charger-idle"),
        on_in_the_heat: typical("on-in-the-heat"),
        inverter_daily: ["use-inverter", "use-inverter-on"].map(typical),
        discharges: ["open", "mesh", "louvre"]
            .map(|cover| typical_number(&format!("discharge-{cover}"))),
        battery_resistances: ["flooded", "agm", "gel", "lfp"]
            .map(|kind| typical(&format!("battery-resistance-{kind}"))),
    }
});

impl Stock {
    /// Power while running of a compressor fridge of that nominal volume.
    pub fn power(&self, volume: Volume) -> &Given<Power> {
        if volume <= Volume::litres(50.0) {
            &self.power_small
        } else if volume <= Volume::litres(100.0) {
            &self.power_medium
        } else {
            &self.power_large
        }
    }

    /// Thickness of the wall of a cold box of that kind.
    pub fn wall(&self, kind: PartKind) -> &Given<Length> {
        &self.walls[row(kind)]
    }

    /// The share of its air that a cold box of that kind loses at one opening.
    pub fn air_change(&self, kind: PartKind) -> &Given<Share> {
        &self.air_changes[row(kind)]
    }
}

impl Stock {
    /// The share of its area that an opening under that cover uses; an open hole where none is said.
    pub fn discharge(&self, cover: Option<Cover>) -> &Given<Share> {
        match cover {
            None | Some(Cover::Open) => &self.discharges[0],
            Some(Cover::Mesh) => &self.discharges[1],
            Some(Cover::Louvre) => &self.discharges[2],
        }
    }

    /// Internal resistance of a battery of that kind.
    pub fn battery_resistance(&self, kind: Chemistry) -> &Given<Resistance> {
        match kind {
            Chemistry::Flooded => &self.battery_resistances[0],
            Chemistry::Agm => &self.battery_resistances[1],
            Chemistry::Gel => &self.battery_resistances[2],
            Chemistry::Lfp => &self.battery_resistances[3],
        }
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
