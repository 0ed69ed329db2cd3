//! Heat in the food and drink that are put in warm.
//!
//! Food is taken to freeze all at once at one temperature, where really its water freezes over ten
//! degrees and more; between two temperatures well above or well below that it makes no difference.

use spile_quantity::{Energy, Mass, Temperature};

use crate::error::{HeatError, finite, not_negative, within};

/// What decides how much heat a food holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Food {
    /// Specific heat above freezing \[J/(kg·K)\].
    pub cp_j_per_kg_k: f64,
    /// Specific heat below freezing \[J/(kg·K)\].
    pub cp_frozen_j_per_kg_k: f64,
    /// Latent heat of freezing \[J/kg\].
    pub latent_j_per_kg: f64,
    /// Where it freezes, about −1 °C for most foods, 0 °C for water.
    pub freezes: Temperature,
}

/// A food's specific heats c \[J/(kg·K)\] and latent heat L \[J/kg\], estimated from its water.
///
/// **Formula** c = 4190·w + 840·(1 − w); frozen c = 2100·w + 840·(1 − w); L = 335 000·w
///
/// **Arguments** `water` w, the share of water by mass, 0 to 1; `freezes` \[°C\], −10 to 0.
///
/// **Validity** within some 5 % of tabled heats above freezing for foods of more than 60 % water;
/// within 12 % below freezing. Fat is not told from other dry matter.
///
/// **Errors** an argument outside those ranges.
///
/// **Source** Earle, Unit Operations in Food Processing (web edition), appendix 7.
///
/// **Example** the same appendix, apples of 84 % water: 3.65 kJ/(kg·K) against 3.60 in its table,
/// latent 281 against 280 kJ/kg.
///
/// ```
/// use spile_heat::food::by_water;
/// use spile_quantity::Temperature;
/// let apples = by_water(0.84, Temperature::celsius(-1.0))?;
/// assert!((apples.cp_j_per_kg_k - 3654.0).abs() < 0.5);
/// assert!((apples.latent_j_per_kg - 281_400.0).abs() < 50.0);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn by_water(water: f64, freezes: Temperature) -> Result<Food, HeatError> {
    let w = within("share of water", water, "of 1", 0.0, 1.0)?;
    within("freezing point", freezes.in_celsius(), "°C", -10.0, 0.0)?;
    Ok(Food {
        cp_j_per_kg_k: 4190.0 * w + 840.0 * (1.0 - w),
        cp_frozen_j_per_kg_k: 2100.0 * w + 840.0 * (1.0 - w),
        latent_j_per_kg: 335_000.0 * w,
        freezes,
    })
}

/// The heat Q \[J\] to be taken out of food to bring it from one temperature to another; negative
/// where it gets warmer.
///
/// **Formula** Q = m·(h(from) − h(to)), h = c·(T − Tf) above the freezing point Tf, and
/// h = cf·(T − Tf) − L below it
///
/// **Arguments** `mass` m \[kg\], 0 or more; `from`, `to` \[°C\], −40 to 100; `food` as of
/// [`by_water`] or a table.
///
/// **Validity** no respiration: fresh greens give off a few watts a tonne more, which is left out.
///
/// **Errors** an argument outside those ranges, a property of `food` that is negative.
///
/// **Source** Earle, Unit Operations in Food Processing, chapter on freezing; the terms are the
/// definitions of specific and latent heat.
///
/// **Example** common practice for 20 kg of mixed shopping cooled from 35 to 5 °C: 0.65 kWh. With
/// 93 % water, worked by hand: 20·(4190·0.93 + 840·0.07)·30 J = 2373 kJ = 0.66 kWh.
///
/// ```
/// use spile_heat::food::{by_water, heat_to_cool};
/// use spile_quantity::{Mass, Temperature};
/// let shopping = by_water(0.93, Temperature::celsius(-1.0))?;
/// let (warm, cold) = (Temperature::celsius(35.0), Temperature::celsius(5.0));
/// let heat = heat_to_cool(&shopping, Mass::kg(20.0), warm, cold)?;
/// assert!((heat.in_wh() - 659.3).abs() < 0.1);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn heat_to_cool(
    food: &Food,
    mass: Mass,
    from: Temperature,
    to: Temperature,
) -> Result<Energy, HeatError> {
    let mass_kg = not_negative("mass of food", mass.in_kg(), "kg")?;
    not_negative("specific heat", food.cp_j_per_kg_k, "J/(kg·K)")?;
    not_negative("frozen specific heat", food.cp_frozen_j_per_kg_k, "J/(kg·K)")?;
    not_negative("latent heat", food.latent_j_per_kg, "J/kg")?;
    let freezes_c = finite("freezing point", food.freezes.in_celsius(), "°C")?;
    let held = |t: Temperature| {
        let above_k = within("food temperature", t.in_celsius(), "°C", -40.0, 100.0)? - freezes_c;
        Ok::<f64, HeatError>(if above_k >= 0.0 {
            food.cp_j_per_kg_k * above_k
        } else {
            food.cp_frozen_j_per_kg_k * above_k - food.latent_j_per_kg
        })
    };
    Ok(Energy::j(mass_kg * (held(from)? - held(to)?)))
}
