//! Hydrogen of charging, and the air and openings that keep it thin.

use spile_quantity::{Area, Charge, Current, Flow, Temperature, Volume};
use spile_tables::battery::gas_constants;

use crate::error::{HeatError, not_negative, within};

/// Hydrogen \[m³\] made in an hour by `current` through `cells` in series, at a temperature.
///
/// **Formula** V = n·I·q·(273.15 + t)/273.15, q = 0.42 litres for each ampere-hour and cell
///
/// **Arguments** `cells` n; `current` I \[A\] that makes gas, 0 or more; `at` t \[°C\], −50 to 80.
///
/// **Validity** all of the current makes gas, at the pressure of the sea.
///
/// **Errors** an argument out of range.
///
/// **Source** IEC 62485-2 (q at 0 °C); Faraday's law.
///
/// **Example** IEEE 484 as a knowledge base quotes it: 25 A through 24 cells make 0.161 cubic feet
/// a minute at 25 °C.
///
/// ```
/// use spile_quantity::{Current, Temperature};
/// let an_hour = spile_heat::gas::hydrogen(24, Current::a(25.0), Temperature::celsius(25.0))?;
/// let cubic_feet_a_minute = an_hour.in_m3() / 0.028_317 / 60.0;
/// assert!((cubic_feet_a_minute - 0.161).abs() < 0.161 * 0.01);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn hydrogen(cells: u32, current: Current, at: Temperature) -> Result<Volume, HeatError> {
    let current_a = not_negative("gas current", current.in_a(), "A")?;
    let at_c = within("temperature of the gas", at.in_celsius(), "°C", -50.0, 80.0)?;
    let q = gas_constants().value.hydrogen;
    Ok(Volume::m3(f64::from(cells) * current_a * q * (273.15 + at_c) / 273.15))
}

/// The air Q \[m³/h\] that keeps the gas of a charging battery thin.
///
/// **Formula** Q = 0.05·n·Igas·Crt, 0.05 = 24·0.00042·5
///
/// **Arguments** `cells` n in series; `rate` Igas \[A for each A·h\], 0 to 1; `capacity` Crt of all
/// strings together \[A·h\], 0 or more.
///
/// **Validity** lead and nickel-cadmium up to about 40 °C; gas at 0 °C.
///
/// **Errors** an argument out of range.
///
/// **Source** IEC 62485-2 (formerly EN 50272-2), clause on ventilation; the same form for traction
/// batteries in IEC 62485-3.
///
/// **Example** six cells, 100 Ah, valve-regulated in boost, 8 mA for each Ah: 0.05·6·0.008·100 =
/// 0.24 m³/h.
///
/// ```
/// use spile_quantity::Charge;
/// let air = spile_heat::gas::air_needed(6, 0.008, Charge::ah(100.0))?;
/// assert!((air.in_m3_per_h() - 0.24).abs() < 1e-12);
/// let opening = spile_heat::gas::opening_needed(air)?;
/// assert!((opening.in_cm2() - 6.7).abs() < 0.05);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn air_needed(cells: u32, rate: f64, capacity: Charge) -> Result<Flow, HeatError> {
    let rate = within("gas current", rate, "A/Ah", 0.0, 1.0)?;
    let capacity_a_s = not_negative("capacity", capacity.in_a_s(), "A·s")?;
    let product = gas_constants().value.product;
    // Both the ampere-hours and the air of an hour come down to seconds.
    Ok(Flow::m3_per_s(product * f64::from(cells) * rate * capacity_a_s / (3600.0 * 3600.0)))
}

/// The opening A \[m²\] that lets that air in, and as much again to let it out.
///
/// **Formula** A = 28·Q, in cm² and m³/h
///
/// **Arguments** `air` Q \[m³/s\], 0 or more.
///
/// **Validity** air that moves by itself at 0.1 m/s; openings on opposite walls, or 2 m apart on one.
///
/// **Errors** an argument out of range.
///
/// **Source** IEC 62485-2, clause on natural ventilation.
///
/// **Example** see [`air_needed`].
pub fn opening_needed(air: Flow) -> Result<Area, HeatError> {
    let flow = not_negative("air flow", air.in_m3_per_s(), "m³/s")?;
    let (for_flow, area) = gas_constants().value.opening;
    Ok(area * (flow / for_flow.in_m3_per_s()))
}
