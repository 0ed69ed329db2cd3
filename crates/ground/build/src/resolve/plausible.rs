//! What a number in a build can plausibly be; outside, it is a slip of the pen.
//!
//! The bounds are wide on purpose: they catch a metre written for a millimetre and a fridge nine
//! metres wide, and leave every real vehicle alone. Common practice, no source.

/// The least and the most that a kind of number can be, in its SI unit.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Bounds {
    pub(crate) what: &'static str,
    pub(crate) low: f64,
    pub(crate) high: f64,
}

const fn bounds(what: &'static str, low: f64, high: f64) -> Bounds {
    Bounds { what, low, high }
}

pub(crate) const SYSTEM_V: Bounds = bounds("the voltage of a house circuit", 5.0, 60.0);
pub(crate) const OUTSIDE_M: Bounds = bounds("an outside measure of a vehicle", 0.5, 25.0);
pub(crate) const INSIDE_M: Bounds = bounds("an inside measure of a vehicle", 0.2, 20.0);
pub(crate) const FLOOR_M: Bounds = bounds("the height of a floor above the ground", 0.05, 2.5);
pub(crate) const BAY_M: Bounds = bounds("a measure of a bay", 0.02, 15.0);
pub(crate) const DISTANCE_M: Bounds = bounds("a distance inside a vehicle", -0.5, 20.0);
pub(crate) const PART_M: Bounds = bounds("a measure of a part", 0.001, 4.0);
pub(crate) const SPAN_M: Bounds = bounds("a measure of a thing in the vehicle", 0.001, 15.0);
pub(crate) const SHEET_M: Bounds = bounds("the thickness of a sheet", 0.0002, 0.1);
pub(crate) const PANEL_M: Bounds = bounds("a measure of a panel", 0.02, 6.0);
pub(crate) const SMALL_M: Bounds = bounds("a space around a part", 0.0, 1.5);
pub(crate) const WASHER_M: Bounds = bounds("the diameter of a washer", 0.002, 0.2);
pub(crate) const HOLDS_N: Bounds = bounds("what a latch, strap or screw holds", 0.1, 1e6);
pub(crate) const SCREW_M: Bounds = bounds("the diameter of a screw", 0.001, 0.03);
pub(crate) const RADIUS_M: Bounds = bounds("the radius of a corner", 0.0, 0.3);
pub(crate) const TOLERANCE_M: Bounds = bounds("a tolerance", 0.0, 0.1);
pub(crate) const ANGLE_RAD: Bounds = bounds("the angle of a door", 0.1, 4.8);
pub(crate) const CABLE_M: Bounds = bounds("the length of a cable", 0.01, 60.0);
pub(crate) const MASS_KG: Bounds = bounds("a mass in a vehicle", 0.0, 12_000.0);
pub(crate) const PLATE_KG: Bounds = bounds("what a plate allows", 10.0, 12_000.0);
pub(crate) const TYRE_KG: Bounds = bounds("what one tyre carries", 100.0, 6_000.0);
pub(crate) const PART_KG: Bounds = bounds("the mass of a part", 0.001, 1_500.0);
pub(crate) const VOLT_V: Bounds = bounds("a voltage in a house circuit", 1.0, 120.0);
pub(crate) const CURRENT_A: Bounds = bounds("a current in a house circuit", 0.001, 2_000.0);
pub(crate) const BREAKING_A: Bounds = bounds("what a fuse can break", 10.0, 300_000.0);
pub(crate) const POWER_W: Bounds = bounds("the power of a part", 0.01, 10_000.0);
pub(crate) const RESISTANCE_OHM: Bounds = bounds("the resistance of a joint", 0.0, 10.0);
pub(crate) const CHARGE_AS: Bounds = bounds("the capacity of a battery", 3_600.0, 18_000_000.0);
pub(crate) const ENERGY_J: Bounds =
    bounds("the use of a cold box in a day", 36_000.0, 36_000_000.0);
pub(crate) const INSULATION_C: Bounds = bounds("what an insulation stands", 55.0, 260.0);
pub(crate) const SURROUNDINGS_C: Bounds = bounds("the temperature of surroundings", -50.0, 95.0);
pub(crate) const COLD_C: Bounds = bounds("the temperature in a cold box", -30.0, 15.0);
pub(crate) const VOLUME_M3: Bounds = bounds("a volume in a vehicle", 0.0, 2.0);
pub(crate) const FOOD_M3: Bounds = bounds("the cold food of one person and day", 0.0001, 0.05);
pub(crate) const AREA_M2: Bounds = bounds("the area of an opening for air", 0.0001, 1.0);
pub(crate) const CONDUCTIVITY: Bounds = bounds("the conductivity of an insulation", 0.001, 0.2);
pub(crate) const CONDUCTANCE: Bounds = bounds("what a bay's walls let through", 0.1, 1_000.0);
pub(crate) const TIME_S: Bounds = bounds("a length of time", 0.0, 366.0 * 86_400.0);
pub(crate) const LATITUDE_RAD: Bounds =
    bounds("a latitude", -std::f64::consts::FRAC_PI_2, std::f64::consts::FRAC_PI_2);
pub(crate) const LONGITUDE_RAD: Bounds =
    bounds("a longitude", -std::f64::consts::PI, std::f64::consts::PI);
pub(crate) const SHARE: Bounds = bounds("a share", 0.0, 1.0);
