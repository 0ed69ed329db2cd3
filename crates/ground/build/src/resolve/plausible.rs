//! What a number in a build can plausibly be; outside, it is a slip of the pen.
//!
//! The bounds are wide on purpose: they catch a metre written for a millimetre and a fridge nine
//! metres wide, and leave every real vehicle alone. Common practice, no source.

use spile_quantity::{Quantity, Ranged};

/// The least and the most that a kind of number can be.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Bounds {
    /// What it is, to be followed by what it cannot be.
    pub(crate) what: &'static str,
    low: f64,
    high: f64,
    /// The unit of both, and its size in the SI unit.
    unit: (&'static str, f64),
}

impl Bounds {
    /// Whether both ends of a range lie within. The bounds themselves do, whichever way they were
    /// rounded.
    pub(crate) fn hold<Q: Quantity>(&self, range: &Ranged<Q>) -> bool {
        let (_, size) = self.unit;
        let slack = (self.high - self.low) * 1e-9;
        let within = |end: f64| end >= self.low - slack && end <= self.high + slack;
        within(range.low.si() / size) && within(range.high.si() / size)
    }

    /// What was expected, in words.
    pub(crate) fn expected(&self) -> String {
        let unit = match self.unit {
            ("°", _) => "°".to_owned(),
            (unit, _) => format!(" {unit}"),
        };
        format!("between {}{unit} and {}{unit}", self.low, self.high)
    }
}

/// Bounds in a unit, given with its size in the SI unit.
pub(crate) const fn bounds(
    what: &'static str,
    low: f64,
    high: f64,
    unit: &'static str,
    size: f64,
) -> Bounds {
    Bounds { what, low, high, unit: (unit, size) }
}

const MM: f64 = 0.001;
const DAY_S: f64 = 86_400.0;
const HOUR_S: f64 = 3_600.0;
const DEGREE: f64 = std::f64::consts::PI / 180.0;

pub(crate) const SYSTEM_V: Bounds = bounds("the voltage of a house circuit", 5.0, 60.0, "V", 1.0);
pub(crate) const OUTSIDE_M: Bounds = bounds("an outside measure of a vehicle", 0.5, 25.0, "m", 1.0);
pub(crate) const INSIDE_M: Bounds = bounds("an inside measure of a vehicle", 0.2, 20.0, "m", 1.0);
pub(crate) const DOOR_M: Bounds = bounds("the clear opening of a door", 0.1, 10.0, "m", 1.0);
pub(crate) const FLOOR_M: Bounds =
    bounds("the height of a floor above the ground", 0.05, 2.5, "m", 1.0);
pub(crate) const BAY_M: Bounds = bounds("a measure of a bay", 0.02, 15.0, "m", 1.0);
pub(crate) const DISTANCE_M: Bounds = bounds("a distance inside a vehicle", -3.0, 20.0, "m", 1.0);
pub(crate) const ROOM_M: Bounds = bounds("free space in front of a bay", 0.0, 20.0, "m", 1.0);
pub(crate) const PART_M: Bounds = bounds("a measure of a part", 1.0, 4_000.0, "mm", MM);
pub(crate) const SPAN_M: Bounds =
    bounds("a measure of a thing in the vehicle", 0.001, 15.0, "m", 1.0);
pub(crate) const SHEET_M: Bounds = bounds("the thickness of a sheet", 0.2, 100.0, "mm", MM);
pub(crate) const PANEL_M: Bounds = bounds("a measure of a panel", 0.02, 6.0, "m", 1.0);
pub(crate) const SMALL_M: Bounds = bounds("a space around a part", 0.0, 1_500.0, "mm", MM);
pub(crate) const WALL_M: Bounds = bounds("the thickness of an insulation", 1.0, 500.0, "mm", MM);
pub(crate) const WASHER_M: Bounds = bounds("the diameter of a washer", 2.0, 200.0, "mm", MM);
pub(crate) const HOLDS_N: Bounds = bounds("what a latch, strap or screw holds", 0.1, 1e6, "N", 1.0);
pub(crate) const SCREW_M: Bounds = bounds("the diameter of a screw", 1.0, 30.0, "mm", MM);
pub(crate) const RADIUS_M: Bounds = bounds("the radius of a corner", 0.0, 300.0, "mm", MM);
pub(crate) const TOLERANCE_M: Bounds = bounds("a tolerance", 0.0, 100.0, "mm", MM);
pub(crate) const ANGLE_RAD: Bounds = bounds("the angle of a door", 5.0, 275.0, "°", DEGREE);
pub(crate) const CABLE_M: Bounds = bounds("the length of a cable", 0.01, 60.0, "m", 1.0);
pub(crate) const LEAD_M: Bounds = bounds("the cable between post and fuse", 0.0, 10.0, "m", 1.0);
pub(crate) const MASS_KG: Bounds = bounds("a mass in a vehicle", 0.0, 12_000.0, "kg", 1.0);
pub(crate) const PLATE_KG: Bounds = bounds("what a plate allows", 10.0, 12_000.0, "kg", 1.0);
pub(crate) const TYRE_KG: Bounds = bounds("what one tyre carries", 100.0, 6_000.0, "kg", 1.0);
pub(crate) const PART_KG: Bounds = bounds("the mass of a part", 0.001, 1_500.0, "kg", 1.0);
pub(crate) const CONTENTS_KG: Bounds = bounds("what a thing holds", 0.0, 1_500.0, "kg", 1.0);
pub(crate) const VOLT_V: Bounds = bounds("a voltage in a house circuit", 1.0, 120.0, "V", 1.0);
pub(crate) const READ_V: Bounds = bounds("what a meter shows", -120.0, 120.0, "V", 1.0);
pub(crate) const READ_A: Bounds = bounds("what a meter shows", -2_000.0, 2_000.0, "A", 1.0);
pub(crate) const READ_C: Bounds = bounds("what a thermometer shows", -50.0, 300.0, "°C", 1.0);
pub(crate) const CURRENT_A: Bounds =
    bounds("a current in a house circuit", 0.001, 2_000.0, "A", 1.0);
pub(crate) const BREAKING_A: Bounds = bounds("what a fuse can break", 10.0, 300_000.0, "A", 1.0);
pub(crate) const POWER_W: Bounds = bounds("the power of a part", 0.01, 10_000.0, "W", 1.0);
pub(crate) const RESISTANCE_OHM: Bounds = bounds("the resistance of a joint", 0.0, 10.0, "Ω", 1.0);
pub(crate) const CHARGE_AS: Bounds =
    bounds("the capacity of a battery", 1.0, 5_000.0, "Ah", HOUR_S);
pub(crate) const ENERGY_J: Bounds =
    bounds("the use of a cold box in a day", 10.0, 10_000.0, "Wh", HOUR_S);
pub(crate) const INSULATION_C: Bounds = bounds("what an insulation stands", 55.0, 260.0, "°C", 1.0);
pub(crate) const SURROUNDINGS_C: Bounds =
    bounds("the temperature of surroundings", -50.0, 95.0, "°C", 1.0);
pub(crate) const COLD_C: Bounds = bounds("the temperature in a cold box", -30.0, 15.0, "°C", 1.0);
pub(crate) const VOLUME_M3: Bounds = bounds("a volume in a vehicle", 0.0, 2_000.0, "L", 0.001);
pub(crate) const FOOD_M3: Bounds =
    bounds("the cold food of one person and day", 0.1, 50.0, "L", 0.001);
pub(crate) const AREA_M2: Bounds =
    bounds("the area of an opening for air", 1.0, 10_000.0, "cm²", 1e-4);
pub(crate) const CONDUCTIVITY: Bounds =
    bounds("the conductivity of an insulation", 0.001, 0.2, "W/(m·K)", 1.0);
pub(crate) const CONDUCTANCE: Bounds =
    bounds("what a bay's walls let through", 0.1, 1_000.0, "W/K", 1.0);
pub(crate) const DAILY_S: Bounds = bounds("how long a thing runs in a day", 0.0, 24.0, "h", HOUR_S);
pub(crate) const TIME_S: Bounds = bounds("a length of time", 0.0, 366.0, "days", DAY_S);
pub(crate) const LATITUDE_RAD: Bounds = bounds("a latitude", -90.0, 90.0, "°", DEGREE);
pub(crate) const LONGITUDE_RAD: Bounds = bounds("a longitude", -180.0, 180.0, "°", DEGREE);
pub(crate) const SHARE: Bounds = bounds("a share", 0.0, 100.0, "%", 0.01);
