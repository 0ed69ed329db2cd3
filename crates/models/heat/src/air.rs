//! Moist air: how much water it holds, how much heat it brings when it comes into a cold box.
//!
//! Air and vapour are taken as ideal gases, the pressure as that of the place. Below 0 °C the
//! saturation is that over ice, since what settles there is frost.

use spile_quantity::{Energy, Length, Mass, Pressure, Temperature, Volume};

use crate::error::{HeatError, not_negative, within};

/// Gas constant of dry air \[J/(kg·K)\] (ISO 2533).
const R_DRY_AIR_J_PER_KG_K: f64 = 287.053;
/// Molar mass of water over that of dry air.
const WATER_TO_AIR: f64 = 0.621_945;
const CP_DRY_AIR_J_PER_KG_K: f64 = 1006.0;
const CP_VAPOUR_J_PER_KG_K: f64 = 1860.0;
const CP_WATER_J_PER_KG_K: f64 = 4190.0;
const CP_ICE_J_PER_KG_K: f64 = 2050.0;
/// Latent heat of vaporisation at 0 °C \[J/kg\].
const VAPORISATION_J_PER_KG: f64 = 2_501_000.0;
/// Latent heat of fusion of water \[J/kg\].
pub(crate) const FUSION_J_PER_KG: f64 = 333_600.0;

/// Air with the water in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MoistAir {
    /// Its temperature, −40 to 60 °C.
    pub temperature: Temperature,
    /// Relative humidity φ, 0 to 1.
    pub relative_humidity: f64,
    /// The air pressure of the place.
    pub pressure: Pressure,
}

/// What comes of replacing the air in a space by other air and bringing it to the old state.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exchange {
    /// All the heat to be taken out, sensible and latent.
    pub heat: Energy,
    /// The part of it that comes of water condensing or freezing.
    pub latent: Energy,
    /// The water left behind; negative where the new air was drier and takes water along.
    pub water: Mass,
}

/// The air pressure p \[Pa\] at a height above the sea.
///
/// **Formula** p = 101.3·((293 − 0.0065·z)/293)^5.26 \[kPa\]
///
/// **Arguments** `altitude` z \[m\], −500 to 6000.
///
/// **Validity** standard atmosphere at 20 °C at sea level.
///
/// **Errors** an altitude outside that range.
///
/// **Source** FAO Irrigation and Drainage Paper 56 (1998), equation 7.
///
/// **Example** FAO 56, example 2: 81.8 kPa at 1800 m.
///
/// ```
/// use spile_heat::air::pressure_at;
/// use spile_quantity::Length;
/// let p = pressure_at(Length::m(1800.0))?;
/// assert!((p.in_pa() / 1000.0 - 81.8).abs() < 0.05);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn pressure_at(altitude: Length) -> Result<Pressure, HeatError> {
    let z_m = within("altitude", altitude.in_m(), "m", -500.0, 6000.0)?;
    Ok(Pressure::pa(101_300.0 * ((293.0 - 0.0065 * z_m) / 293.0).powf(5.26)))
}

/// The saturation pressure e° \[Pa\] of water vapour, over water from 0 °C up, over ice below.
///
/// **Formula** over water e° = 610.8·exp(17.27·t/(t + 237.3)); over ice
/// e° = 610.8·exp(22.587·t/(t + 273.86))
///
/// **Arguments** `temperature` t \[°C\], −40 to 60.
///
/// **Validity** within 0.3 % of the IAPWS values from −40 to 60 °C. The ice form is scaled from
/// 611.21 to 610.8 Pa, so that both meet at 0 °C.
///
/// **Errors** a temperature outside that range.
///
/// **Source** over water: FAO 56 (1998), equation 11 (Magnus form). Over ice: Alduchov and
/// Eskridge, J. Appl. Meteor. 35 (1996), form AERKi, from memory.
///
/// **Example** FAO 56, example 3: the mean of e° at 15 and 24.5 °C is 2.39 kPa.
///
/// ```
/// use spile_heat::air::saturation_pressure;
/// use spile_quantity::Temperature;
/// let low = saturation_pressure(Temperature::celsius(15.0))?;
/// let high = saturation_pressure(Temperature::celsius(24.5))?;
/// assert!(((low + high).in_pa() / 2000.0 - 2.39).abs() < 0.005);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn saturation_pressure(temperature: Temperature) -> Result<Pressure, HeatError> {
    let t_c = within("air temperature", temperature.in_celsius(), "°C", -40.0, 60.0)?;
    let exponent =
        if t_c >= 0.0 { 17.27 * t_c / (t_c + 237.3) } else { 22.587 * t_c / (t_c + 273.86) };
    Ok(Pressure::pa(610.8 * exponent.exp()))
}

/// The humidity ratio w \[kg of water a kg of dry air\].
///
/// **Formula** w = 0.621945·e/(p − e), e = φ·e°(t)
///
/// **Arguments** `air`: temperature \[°C\] −40 to 60, relative humidity 0 to 1, pressure \[Pa\]
/// 40 000 to 110 000.
///
/// **Validity** ideal gases; the few tenths of a percent by which real moist air differs are left
/// out.
///
/// **Errors** an argument outside those ranges.
///
/// **Source** ASHRAE Handbook Fundamentals, chapter Psychrometrics, from memory; checked against
/// `CoolProp`.
///
/// **Example** air of 25 °C and 50 % at 101.325 kPa holds 9.9 g of water a kilogram (psychrometric
/// chart).
///
/// ```
/// use spile_heat::air::{MoistAir, humidity_ratio};
/// use spile_quantity::{Pressure, Temperature};
/// let air = MoistAir {
///     temperature: Temperature::celsius(25.0),
///     relative_humidity: 0.5,
///     pressure: Pressure::pa(101_325.0),
/// };
/// assert!((humidity_ratio(air)? - 0.0099).abs() < 0.00005);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn humidity_ratio(air: MoistAir) -> Result<f64, HeatError> {
    let e_pa = vapour_pressure_pa(air)?;
    Ok(WATER_TO_AIR * e_pa / (air.pressure.in_pa() - e_pa))
}

/// The enthalpy h \[J a kg of dry air\] of moist air, zero for dry air and liquid water at 0 °C.
///
/// **Formula** h = 1006·t + w·(2 501 000 + 1860·t)
///
/// **Arguments** as for [`humidity_ratio`].
///
/// **Validity** as for [`humidity_ratio`].
///
/// **Errors** an argument outside those ranges.
///
/// **Source** ASHRAE Handbook Fundamentals, chapter Psychrometrics, from memory; checked against
/// `CoolProp`.
///
/// **Example** see [`exchange`].
pub fn enthalpy_j_per_kg(air: MoistAir) -> Result<f64, HeatError> {
    let t_c = air.temperature.in_celsius();
    let w = humidity_ratio(air)?;
    Ok(CP_DRY_AIR_J_PER_KG_K * t_c + w * (VAPORISATION_J_PER_KG + CP_VAPOUR_J_PER_KG_K * t_c))
}

/// The heat Q \[J\] to be taken out after the air in `volume` gave way to air of state `from` and
/// is brought back to state `to`.
///
/// **Formula** Q = m·((h1 − h2) − (w1 − w2)·hw), m = V·(p − e2)/(287.053·T2), with hw the enthalpy
/// of water, or below 0 °C of ice, at the end temperature. The latent part is
/// m·(w1 − w2)·(2 501 000 + 1860·t1 − hw).
///
/// **Arguments** `volume` V \[m³\] of air exchanged, 0 or more; `from`, `to` as for
/// [`humidity_ratio`].
///
/// **Validity** the space ends full of air in the state `to`: air that shrinks as it cools draws
/// more in after it, so the mass is that of the cold air.
///
/// **Errors** an argument outside those ranges.
///
/// **Source** ASHRAE Handbook Fundamentals, chapter Psychrometrics (moist air cooling with
/// condensate leaving), from memory.
///
/// **Example** worked by hand: 100 litres of air of 30 °C and 60 % into a box at 4 °C and 80 %. The
/// humidity ratios are 16.0 and 4.0 g/kg and the dry air weighs 0.1266 kg, so
/// Q = 0.1266·(71.1 − 14.1 − 0.0120·16.8) = 7.2 kJ, and 1.5 g of water are left.
///
/// ```
/// use spile_heat::air::{MoistAir, exchange};
/// use spile_quantity::{Pressure, Temperature, Volume};
/// let air = |t, relative_humidity| MoistAir {
///     temperature: Temperature::celsius(t),
///     relative_humidity,
///     pressure: Pressure::pa(101_325.0),
/// };
/// let got = exchange(Volume::litres(100.0), air(30.0, 0.6), air(4.0, 0.8))?;
/// assert!((got.heat.in_j() - 7200.0).abs() < 50.0);
/// assert!((got.water.in_kg() - 0.0015).abs() < 0.00005);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn exchange(volume: Volume, from: MoistAir, to: MoistAir) -> Result<Exchange, HeatError> {
    let volume_m3 = not_negative("volume of air", volume.in_m3(), "m³")?;
    let dry_pa = to.pressure.in_pa() - vapour_pressure_pa(to)?;
    let dry_kg = volume_m3 * dry_pa / (R_DRY_AIR_J_PER_KG_K * to.temperature.in_kelvin());
    let water_kg = dry_kg * (humidity_ratio(from)? - humidity_ratio(to)?);
    let end_c = to.temperature.in_celsius();
    let water_j_per_kg = if end_c >= 0.0 {
        CP_WATER_J_PER_KG_K * end_c
    } else {
        CP_ICE_J_PER_KG_K * end_c - FUSION_J_PER_KG
    };
    let heat_j =
        dry_kg * (enthalpy_j_per_kg(from)? - enthalpy_j_per_kg(to)?) - water_kg * water_j_per_kg;
    let vapour_j_per_kg =
        VAPORISATION_J_PER_KG + CP_VAPOUR_J_PER_KG_K * from.temperature.in_celsius();
    Ok(Exchange {
        heat: Energy::j(heat_j),
        latent: Energy::j(water_kg * (vapour_j_per_kg - water_j_per_kg)),
        water: Mass::kg(water_kg),
    })
}

fn vapour_pressure_pa(air: MoistAir) -> Result<f64, HeatError> {
    within("air pressure", air.pressure.in_pa(), "Pa", 40_000.0, 110_000.0)?;
    let humidity = within("relative humidity", air.relative_humidity, "of 1", 0.0, 1.0)?;
    Ok(humidity * saturation_pressure(air.temperature)?.in_pa())
}
