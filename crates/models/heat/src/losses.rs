//! What electrical things turn into heat.

use spile_quantity::{Current, Power, Resistance};

use crate::error::{HeatError, finite, not_negative, within};

/// The heat Q \[W\] of an inverter or charger.
///
/// **Formula** Q = P·(1 − η) + P0
///
/// **Arguments** `input` P \[W\] and `idle` P0 \[W\], 0 or more; `efficiency` η, above 0 to 1.
///
/// **Validity** η at that load; what comes out is used elsewhere.
///
/// **Errors** an argument out of range.
///
/// **Source** heat balance.
///
/// **Example** common practice: 2 kW out at 88 % are 2273 W in and 270 W of heat.
///
/// ```
/// use spile_quantity::Power;
/// let heat = spile_heat::losses::converter(Power::w(2000.0 / 0.88), 0.88, Power::w(0.0))?;
/// assert!((heat.in_w() - 270.0).abs() < 5.0);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn converter(input: Power, efficiency: f64, idle: Power) -> Result<Power, HeatError> {
    let input_w = not_negative("input", input.in_w(), "W")?;
    let efficiency = within("efficiency", efficiency, "", f64::MIN_POSITIVE, 1.0)?;
    Ok(Power::w(input_w * (1.0 - efficiency) + not_negative("idle", idle.in_w(), "W")?))
}

/// The heat Q \[W\] of a battery that a current passes.
///
/// **Formula** Q = I²·R
///
/// **Arguments** `current` I \[A\], any sign; `resistance` R \[Ω\], 0 or more.
///
/// **Validity** what a charge does not store otherwise is left out.
///
/// **Errors** an argument out of range.
///
/// **Source** Joule's law.
///
/// **Example** 30 A through 5 mΩ: 4.5 W.
///
/// ```
/// use spile_quantity::{Current, Resistance};
/// let heat = spile_heat::losses::battery(Current::a(30.0), Resistance::mohm(5.0))?;
/// assert!((heat.in_w() - 4.5).abs() < 1e-12);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn battery(current: Current, resistance: Resistance) -> Result<Power, HeatError> {
    let current_a = finite("current", current.in_a(), "A")?;
    let resistance_ohm = not_negative("resistance", resistance.in_ohm(), "Ω")?;
    Ok(Power::w(current_a * current_a * resistance_ohm))
}
