//! Air through openings: what drives it, how much passes, and the heat that it carries.

use spile_quantity::{Area, Conductance, Flow, Length, Power, Pressure, Temperature};

use crate::error::{HeatError, finite, not_negative, within};
use crate::fan::Fan;
use crate::root::root;

/// Acceleration of free fall \[m/s²\].
const GRAVITY: f64 = 9.80665;
/// Specific heat of air \[J/(kg·K)\] near 20 °C.
const AIR_J_PER_KG_K: f64 = 1006.0;
/// 0 °C as a thermodynamic temperature.
const FREEZING_K: f64 = 273.15;
/// Temperatures \[°C\] between which air is computed here.
const COLDEST_C: f64 = -50.0;
const HOTTEST_C: f64 = 500.0;
/// A heat \[W\] that counts as nothing.
const SMALL_W: f64 = 1e-9;

/// An opening for air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Opening {
    /// Its free area.
    pub area: Area,
    /// The share of it that a jet of air uses: 0.6 to 0.65 of an open hole, less behind mesh or
    /// slats.
    pub discharge: f64,
}

/// How air goes through a bay, from its inlet to its outlet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Through {
    /// All openings on the way as one, see [`effective_area`].
    pub effective: Area,
    /// Height of the outlet over the inlet; negative where it is below.
    pub rise: Length,
    /// A fan, and whether it drives air from inlet to outlet.
    pub fan: Option<(Fan, bool)>,
    /// The share of the air that comes in which has been in the bay before, 0 to 1.
    pub drawn_in: f64,
}

/// The density ρ \[kg/m³\] of air.
///
/// **Formula** ρ = 353/(273 + t)
///
/// **Arguments** `air` t \[°C\], −50 to 500.
///
/// **Validity** dry air at the pressure of the sea; some 12 % less for each kilometre of height.
///
/// **Errors** a temperature outside that range.
///
/// **Source** ideal gas at 101.3 kPa, engineering reference page (352.99 is its finer form).
///
/// **Example** air of 0 °C weighs 1.293 kg/m³.
///
/// ```
/// use spile_quantity::Temperature;
/// let density = spile_heat::openings::density_kg_per_m3(Temperature::celsius(0.0))?;
/// assert!((density - 1.293).abs() < 0.0005);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn density_kg_per_m3(air: Temperature) -> Result<f64, HeatError> {
    let t_c = within("air temperature", air.in_celsius(), "°C", COLDEST_C, HOTTEST_C)?;
    Ok(353.0 / (273.0 + t_c))
}

/// The heat G \[W/K\] that a flow of air carries away for each kelvin that it leaves warmer than it
/// came.
///
/// **Formula** G = ρ·c·V̇
///
/// **Arguments** `flow` V̇ \[m³/s\], 0 or more; `air` \[°C\], −50 to 500, where V̇ is measured.
///
/// **Validity** as for [`density_kg_per_m3`]; moisture left out.
///
/// **Errors** an argument out of range.
///
/// **Source** heat balance; c = 1006 J/(kg·K), ASHRAE Fundamentals, from memory.
///
/// **Example** common practice: 120 W in 40 m³/h are 9 K of rise, in 10 m³/h 37 K.
///
/// ```
/// use spile_quantity::{Flow, Temperature};
/// let rise_k = |flow| {
///     let air = spile_heat::openings::carried(Flow::m3_per_h(flow), Temperature::celsius(35.0));
///     120.0 / air.unwrap().in_w_per_k()
/// };
/// assert!((rise_k(40.0) - 9.0).abs() < 0.5 && (rise_k(10.0) - 37.0).abs() < 0.5);
/// ```
pub fn carried(flow: Flow, air: Temperature) -> Result<Conductance, HeatError> {
    let flow_m3_per_s = not_negative("air flow", flow.in_m3_per_s(), "m³/s")?;
    Ok(Conductance::w_per_k(density_kg_per_m3(air)? * AIR_J_PER_KG_K * flow_m3_per_s))
}

/// The flow V̇ \[m³/s\] that carries so much: [`carried`] the other way round.
///
/// **Formula** V̇ = G/(ρ·c)
///
/// **Arguments** `conductance` G \[W/K\], 0 or more; `air` as for [`carried`].
///
/// **Validity**, **Errors**, **Source** as for [`carried`].
///
/// **Example** 12.8 W/K at 35 °C take 40 m³/h, by hand from 353/308·1006/3600 = 0.3203 W/K for
/// each m³/h.
///
/// ```
/// use spile_quantity::{Conductance, Temperature};
/// let flow = spile_heat::openings::carries(
///     Conductance::w_per_k(12.8), Temperature::celsius(35.0))?;
/// assert!((flow.in_m3_per_h() - 40.0).abs() < 0.05);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn carries(conductance: Conductance, air: Temperature) -> Result<Flow, HeatError> {
    let g_w_per_k = not_negative("conductance", conductance.in_w_per_k(), "W/K")?;
    Ok(Flow::m3_per_s(g_w_per_k / (density_kg_per_m3(air)? * AIR_J_PER_KG_K)))
}

/// Openings that air passes one after the other, as one opening Ae \[m²\] of discharge 1.
///
/// **Formula** 1/Ae² = Σ 1/(Cd·A)²
///
/// **Arguments** `openings`: areas \[m²\] 0 or more, discharge 0 to 1.
///
/// **Validity** each jet is spent before the next opening; nothing passes if one is closed.
///
/// **Errors** an argument out of range.
///
/// **Source** ASHRAE Handbook Fundamentals, chapter Ventilation and Infiltration, from memory: each
/// orifice loses ρ/2·(V̇/(Cd·A))².
///
/// **Example** worked by hand: two of 160 cm² and 0.62 are 0.62·160/√2 = 70.1 cm².
///
/// ```
/// use spile_heat::openings::{Opening, effective_area};
/// use spile_quantity::Area;
/// let hole = Opening { area: Area::cm2(160.0), discharge: 0.62 };
/// assert!((effective_area(&[hole, hole])?.in_cm2() - 70.1).abs() < 0.1);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn effective_area(openings: &[Opening]) -> Result<Area, HeatError> {
    let mut sum = 0.0;
    for opening in openings {
        let area_m2 = not_negative("free area", opening.area.in_m2(), "m²")?;
        let used_m2 = within("discharge", opening.discharge, "", 0.0, 1.0)? * area_m2;
        sum += 1.0 / (used_m2 * used_m2);
    }
    Ok(Area::m2(1.0 / sum.sqrt()))
}

/// The pressure Δp \[Pa\] with which warm air rises between two openings; negative where it sinks.
///
/// **Formula** Δp = ρo·g·Δh·(Ti − To)/Ti
///
/// **Arguments** `rise` Δh \[m\] of the upper opening over the lower one, any sign; `inside` Ti and
/// `outside` To \[°C\], −50 to 500.
///
/// **Validity** the space between them of one temperature, air outside at rest.
///
/// **Errors** an argument out of range.
///
/// **Source** ASHRAE Handbook Fundamentals (1997), chapter 25; the same as g·Δh·(ρo − ρi) for an
/// ideal gas.
///
/// **Example** worked by hand: 0.5 m between 45 and 35 °C: 1.146·9.807·0.5·10/318.15 = 0.177 Pa.
///
/// ```
/// use spile_heat::openings::stack_pressure;
/// use spile_quantity::{Length, Temperature};
/// let t = Temperature::celsius;
/// let pressure = stack_pressure(Length::m(0.5), t(45.0), t(35.0))?;
/// assert!((pressure.in_pa() - 0.177).abs() < 0.0005);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn stack_pressure(
    rise: Length,
    inside: Temperature,
    outside: Temperature,
) -> Result<Pressure, HeatError> {
    let rise_m = finite("height between the openings", rise.in_m(), "m")?;
    let density = density_kg_per_m3(outside)?;
    density_kg_per_m3(inside)?;
    let (inside_k, outside_k) =
        (inside.in_celsius() + FREEZING_K, outside.in_celsius() + FREEZING_K);
    Ok(Pressure::pa(density * GRAVITY * rise_m * (inside_k - outside_k) / inside_k))
}

/// The flow V̇ \[m³/s\] that warmth alone drives, without its direction.
///
/// **Formula** V̇ = Ae·√(2·g·Δh·|Ti − To|/Ti)
///
/// **Arguments** `effective` Ae \[m²\], 0 or more, see [`effective_area`]; the rest as for
/// [`stack_pressure`].
///
/// **Validity** as for [`stack_pressure`].
///
/// **Errors** an argument out of range.
///
/// **Source** ASHRAE Handbook Fundamentals (1997), chapter 25, equation 37; for two equal openings
/// Δh is twice the height of one over the neutral level, and Ae is Cd·A/√2, so that both forms are
/// one.
///
/// **Example** engineering reference page: 9.4·A·√(h·Δt) cubic feet a minute through openings of A
/// square feet, h feet apart: 1 ft², 4 ft and 16 °F give 75. It agrees within 2 %.
///
/// ```
/// use spile_heat::openings::{Opening, effective_area, stack_flow};
/// use spile_quantity::{Area, Length, Temperature};
/// let hole = Opening { area: Area::m2(0.092_903), discharge: 0.65 };
/// let t = Temperature::celsius;
/// let warm = 21.1 + 16.0 / 1.8;
/// let flow = stack_flow(
///     effective_area(&[hole, hole])?, Length::m(4.0 * 0.3048), t(warm), t(21.1))?;
/// let cubic_feet_a_minute = flow.in_m3_per_s() * 60.0 / 0.028_317;
/// assert!((cubic_feet_a_minute / 75.2 - 1.0).abs() < 0.02);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn stack_flow(
    effective: Area,
    rise: Length,
    inside: Temperature,
    outside: Temperature,
) -> Result<Flow, HeatError> {
    let area_m2 = not_negative("free area", effective.in_m2(), "m²")?;
    let pressure_pa = stack_pressure(rise, inside, outside)?.in_pa();
    Ok(Flow::m3_per_s(area_m2 * (2.0 * pressure_pa.abs() / density_kg_per_m3(outside)?).sqrt()))
}

impl Through {
    /// The flow V̇ \[m³/s\] through the bay, without its direction.
    ///
    /// **Formula** without a fan that of [`stack_flow`]; with one the flow at which fan and warmth
    /// together push as much as the openings hold back, see [`Fan::flow`].
    ///
    /// **Arguments** `inside`, `outside` \[°C\], −50 to 500.
    ///
    /// **Validity**, **Errors**, **Source** as for these.
    ///
    /// **Example** see [`settles`].
    pub fn flow(&self, inside: Temperature, outside: Temperature) -> Result<Flow, HeatError> {
        let Some((fan, forward)) = &self.fan else {
            return stack_flow(self.effective, self.rise, inside, outside);
        };
        let stack = stack_pressure(self.rise, inside, outside)?;
        let helps = if *forward { stack } else { -stack };
        fan.flow(self.effective, helps, density_kg_per_m3(outside)?)
    }

    /// Whether the air goes from the inlet to the outlet, and not the other way.
    ///
    /// **Formula** the sign of p0 ± ρo·g·Δh·(Ti − To)/Ti, with p0 the fan's pressure at no flow, 0
    /// without a fan
    ///
    /// **Arguments** as for [`Through::flow`].
    ///
    /// **Validity**, **Errors**, **Source** as for [`stack_pressure`] and [`Fan::flow`]; air at rest
    /// counts as going from the inlet to the outlet.
    ///
    /// **Example** warm air rises to an outlet over its inlet, and sinks from one below:
    ///
    /// ```
    /// use spile_heat::openings::Through;
    /// use spile_quantity::{Area, Length, Temperature};
    /// let through = |rise| Through {
    ///     effective: Area::cm2(70.0), rise: Length::m(rise), fan: None, drawn_in: 0.0,
    /// };
    /// let t = Temperature::celsius;
    /// assert!(through(0.5).is_forward(t(45.0), t(35.0))?);
    /// assert!(!through(-0.5).is_forward(t(45.0), t(35.0))?);
    /// # Ok::<(), spile_heat::HeatError>(())
    /// ```
    pub fn is_forward(&self, inside: Temperature, outside: Temperature) -> Result<bool, HeatError> {
        let stack_pa = stack_pressure(self.rise, inside, outside)?.in_pa();
        let fan_pa = self.fan.map_or(0.0, |(fan, forward)| {
            let pressure_pa = fan.greatest_pressure.in_pa();
            if forward { pressure_pa } else { -pressure_pa }
        });
        Ok(fan_pa + stack_pa >= 0.0)
    }

    /// What the air carries out for each kelvin that the bay is warmer than outside it.
    ///
    /// **Formula** G = (1 − r)·ρ·c·V̇, with r the share drawn in again
    ///
    /// **Arguments** as for [`Through::flow`]; the share drawn in 0 to 1.
    ///
    /// **Validity** the bay is one temperature; the air that comes back is as warm as the bay.
    ///
    /// **Errors** an argument out of range.
    ///
    /// **Source** heat balance: what comes in is r·(T − To) warmer than outside.
    ///
    /// **Example** see [`settles`].
    pub fn conductance(
        &self,
        inside: Temperature,
        outside: Temperature,
    ) -> Result<Conductance, HeatError> {
        let fresh = 1.0 - within("share drawn in again", self.drawn_in, "", 0.0, 1.0)?;
        Ok(carried(self.flow(inside, outside)?, outside)? * fresh)
    }
}

/// The temperature T \[°C\] of a bay in which heat is given off.
///
/// **Formula** Q = UA·(T − To) + (1 − r)·ρ·c·V̇(T)·(T − To)
///
/// **Arguments** `heat` Q \[W\], any sign; `walls` UA \[W/K\], above 0; `through`: what air goes
/// through, if any; `outside` To \[°C\].
///
/// **Validity** steady; walls and air lead to places as warm as each other; T from −50 to 500 °C.
///
/// **Errors** walls that let nothing through, an argument out of range, a bay beyond that range.
///
/// **Source** heat balance, solved by regula falsi.
///
/// **Example** worked by hand: walls of 2 W/K and two openings of 160 cm² (0.62), 0.5 m apart. At
/// 45 °C in a cabin of 35 °C Ae = 70.1 cm² gives 70.1e-4·√(2·9.807·0.5·10/318.15) = 3.89 L/s, which
/// carry 4.48 W/K: 10·(2 + 4.48) = 64.8 W keep it there.
///
/// ```
/// use spile_heat::openings::{Opening, Through, effective_area, settles};
/// use spile_quantity::{Area, Conductance, Length, Power, Temperature};
/// let hole = Opening { area: Area::cm2(160.0), discharge: 0.62 };
/// let through = Through {
///     effective: effective_area(&[hole, hole])?,
///     rise: Length::m(0.5),
///     fan: None,
///     drawn_in: 0.0,
/// };
/// let walls = Conductance::w_per_k(2.0);
/// let bay = settles(Power::w(64.8), walls, Some(&through), Temperature::celsius(35.0))?;
/// assert!((bay.in_celsius() - 45.0).abs() < 0.02);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn settles(
    heat: Power,
    walls: Conductance,
    through: Option<&Through>,
    outside: Temperature,
) -> Result<Temperature, HeatError> {
    let heat_w = finite("heat", heat.in_w(), "W")?;
    let walls_w_per_k = not_negative("conductance", walls.in_w_per_k(), "W/K")?;
    if walls_w_per_k == 0.0 {
        return Err(HeatError::Untied { nodes: vec!["bay".to_owned()] });
    }
    let to_c = outside.in_celsius();
    let alone_k = heat_w / walls_w_per_k;
    let Some(through) = through else { return Ok(Temperature::celsius(to_c + alone_k)) };
    // No further than air is computed; a bay that would lie beyond it has no balance there.
    let furthest_k = alone_k.clamp(COLDEST_C - to_c, HOTTEST_C - to_c);
    let over_w = |over_k: f64| {
        let inside = Temperature::celsius(to_c + over_k);
        let air = through.conductance(inside, outside)?;
        Ok((walls_w_per_k + air.in_w_per_k()) * over_k - heat_w)
    };
    let over_k = root("bay's temperature", "K", over_w, 0.0, furthest_k, SMALL_W)?;
    Ok(Temperature::celsius(to_c + over_k))
}
