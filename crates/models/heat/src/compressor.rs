//! The compressor: how much electricity it takes to pump heat out of a cold box.
//!
//! A real circuit reaches a share η of what Carnot allows between the evaporator, somewhat colder
//! than the box, and the condenser, somewhat warmer than the air it stands in. The appliance's papers
//! give η through their stated consumption. It is not quite constant: the hotter the condenser, the
//! more of the liquid boils away uselessly in the expansion, and for R600a and R134a η falls by some
//! 0.75 % a kelvin. That fall is in the model, so that a hot bay is not taken too lightly; with it, η
//! fitted at one air temperature gives the COP of cycle calculations within 5 % at 10 K more or less
//! and 8 % at 20 K, evaporating between −30 and 10 °C and condensing between 20 and 60 °C; at the ends
//! of what was checked, −40 and 70 °C, within 11 and 18 %.

use std::fmt;

use spile_quantity::{Conductance, Energy, Power, Temperature, TemperatureDifference, Time};

use crate::error::{HeatError, finite, not_negative, positive, within};

/// Evaporating temperatures \[°C\] at which the model was checked.
const EVAPORATING_C: (f64, f64) = (-40.0, 10.0);
/// Condensing temperatures \[°C\] at which the model was checked.
const CONDENSING_C: (f64, f64) = (10.0, 70.0);
/// The condensing temperature \[°C\] at which the share of Carnot is stated: air of some 32 °C.
const STATED_AT_C: f64 = 45.0;
/// By how much the share falls for each kelvin of condensing temperature, as a part of itself.
const FALL_PER_K: f64 = 0.0075;
/// No circuit comes nearer to Carnot than this: cycles without loss in the compressor reach 0.43 to
/// 0.93 (`CoolProp`, R600a and R134a).
const GREATEST_SHARE: f64 = 0.7;
/// Temperatures \[°C\] that a cold box is set to.
const INSIDE_C: (f64, f64) = (-30.0, 25.0);

/// What makes the cold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Cooler {
    /// A vapour-compression circuit.
    Compressor(Compressor),
    /// An absorption circuit, driven by heat.
    Absorption,
    /// A thermoelectric (Peltier) element.
    Thermoelectric,
}

/// The name of a principle of cooling.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CoolerKind {
    /// Driven by heat.
    Absorption,
    /// Driven by a current through a junction.
    Thermoelectric,
}

/// How far the refrigerant must be from the air on either side to pass its heat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Approaches {
    /// How much colder the evaporator is than the box, 0 to 30 K; some 8 to 15 K.
    pub evaporator: TemperatureDifference,
    /// How much warmer the condenser is than its air, 0 to 40 K; some 8 to 20 K.
    pub condenser: TemperatureDifference,
    /// The least lift between the two, 5 to 60 K: below it a small circuit with a capillary tube
    /// gets no better, however cold its surroundings. Some 20 K.
    pub least_lift: TemperatureDifference,
}

/// A vapour-compression cooler that runs at one speed or rests.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Compressor {
    share_of_carnot: f64,
    approaches: Approaches,
    power: Power,
}

/// How a [`Compressor`] works while it runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Running {
    /// Temperature in the evaporator.
    pub evaporating: Temperature,
    /// Temperature in the condenser.
    pub condensing: Temperature,
    /// Heat pumped for each unit of electricity.
    pub cop: f64,
    /// Heat taken out of the box.
    pub pumps: Power,
    /// Electricity taken.
    pub takes: Power,
    /// Whether both temperatures lie where the model was checked against cycle calculations
    /// (−40 to 10 and 10 to 70 °C). Outside, the figures show the direction only, and a real
    /// compressor may cut out.
    pub in_range: bool,
}

/// A consumption that papers state.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Consumption {
    /// Electricity in 24 hours.
    pub per_day: Energy,
    /// Temperature of the air round the appliance.
    pub ambient: Temperature,
    /// Temperature held in the box.
    pub inside: Temperature,
}

/// A value found from one or several consumptions.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fitted<T> {
    /// The value.
    pub value: T,
    /// By how much the consumption computed with it misses the worst one stated, as a share of
    /// that one; 0 where a single figure was given.
    pub worst_miss: f64,
}

impl Cooler {
    /// The compressor that this is.
    ///
    /// **Errors** [`HeatError::NotModelled`] for every other principle: their heat and current do
    /// not follow from a compressor's formulas.
    pub fn compressor(&self) -> Result<&Compressor, HeatError> {
        match self {
            Self::Compressor(compressor) => Ok(compressor),
            Self::Absorption => Err(HeatError::NotModelled(CoolerKind::Absorption)),
            Self::Thermoelectric => Err(HeatError::NotModelled(CoolerKind::Thermoelectric)),
        }
    }
}

impl fmt::Display for CoolerKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Absorption => "absorption",
            Self::Thermoelectric => "thermoelectric",
        })
    }
}

impl Compressor {
    /// A compressor that takes `power` while it runs, its fan and electronics included.
    ///
    /// **Arguments** `share_of_carnot` η at a condensing temperature of 45 °C, above 0 to 0.7, some
    /// 0.25 to 0.45 for small DC compressors; `approaches` in their ranges; `power` \[W\], above 0.
    ///
    /// **Errors** an argument outside those ranges.
    pub fn new(
        share_of_carnot: f64,
        approaches: Approaches,
        power: Power,
    ) -> Result<Self, HeatError> {
        check_share(share_of_carnot)?;
        approaches.check()?;
        positive("power while running", power.in_w(), "W")?;
        Ok(Self { share_of_carnot, approaches, power })
    }

    /// How it works with the box at `inside` and the condenser in air of `air`.
    ///
    /// **Formula** COP = η·exp(−0.0075·(Tc − 45 °C))·Te/(Tc − Te), Te = inside − approach,
    /// Tc = air + approach, Tc − Te never less than the least lift, in kelvin where they multiply
    ///
    /// **Arguments** `inside` \[°C\], −30 to 25; `air` \[°C\], any: what the sums of a hot bay lead to
    /// must stay computable, see [`Running::in_range`].
    ///
    /// **Validity** see the module; steady running, one speed, its power constant.
    ///
    /// **Errors** an inside temperature out of range, an air temperature that is not a finite number.
    ///
    /// **Source** Carnot's limit; the fall of η is a fit of our own to `CoolProp` cycles of R600a and
    /// R134a between −40 and 10 °C and 10 and 70 °C.
    ///
    /// **Example** worked by hand: box 4 °C, air 33 °C, approaches 10 and 12 K, η 0.35, 48 W:
    /// Te = 267.15 K, Tc = 318.15 K (45 °C), COP = 0.35·267.15/51 = 1.833, so 88.0 W are pumped.
    ///
    /// ```
    /// use spile_heat::compressor::{Approaches, Compressor};
    /// use spile_quantity::{Power, Temperature, TemperatureDifference};
    /// let k = TemperatureDifference::k;
    /// let approaches = Approaches { evaporator: k(10.0), condenser: k(12.0), least_lift: k(20.0) };
    /// let compressor = Compressor::new(0.35, approaches, Power::w(48.0))?;
    /// let runs = compressor.running(Temperature::celsius(4.0), Temperature::celsius(33.0))?;
    /// assert!((runs.cop - 1.833).abs() < 0.0005);
    /// assert!((runs.pumps.in_w() - 88.0).abs() < 0.05);
    /// # Ok::<(), spile_heat::HeatError>(())
    /// ```
    pub fn running(&self, inside: Temperature, air: Temperature) -> Result<Running, HeatError> {
        let (evaporating, condensing) = self.approaches.refrigerant(inside, air)?;
        let cop = self.share_of_carnot * cop_of_share_one(evaporating, condensing)?;
        Ok(Running {
            evaporating,
            condensing,
            cop,
            pumps: self.power * cop,
            takes: self.power,
            in_range: lies(evaporating, EVAPORATING_C) && lies(condensing, CONDENSING_C),
        })
    }
}

impl Approaches {
    fn check(&self) -> Result<(), HeatError> {
        within("evaporator approach", self.evaporator.in_k(), "K", 0.0, 30.0)?;
        within("condenser approach", self.condenser.in_k(), "K", 0.0, 40.0)?;
        within("least lift", self.least_lift.in_k(), "K", 5.0, 60.0)?;
        Ok(())
    }

    /// Evaporating and condensing temperature for a box and the condenser's air.
    fn refrigerant(
        &self,
        inside: Temperature,
        air: Temperature,
    ) -> Result<(Temperature, Temperature), HeatError> {
        within("inside temperature", inside.in_celsius(), "°C", INSIDE_C.0, INSIDE_C.1)?;
        finite("air at the condenser", air.in_celsius(), "°C")?;
        let evaporating = inside.warmer(-self.evaporator);
        let condensing = air.warmer(self.condenser).max(evaporating.warmer(self.least_lift));
        Ok((evaporating, condensing))
    }

    /// The COP of η = 1 where a stated consumption was measured, and the difference across the walls.
    fn at(&self, stated: &Consumption) -> Result<(f64, f64), HeatError> {
        let (evaporating, condensing) = self.refrigerant(stated.inside, stated.ambient)?;
        for (what, t, (low, high)) in [
            ("evaporating temperature", evaporating, EVAPORATING_C),
            ("condensing temperature", condensing, CONDENSING_C),
        ] {
            within(what, t.in_celsius(), "°C", low, high)?;
        }
        let across = stated.ambient.above(stated.inside).in_k();
        positive("ambient above inside", across, "K")?;
        Ok((cop_of_share_one(evaporating, condensing)?, across))
    }
}

/// The greatest COP that any cooler can have between two temperatures.
///
/// **Formula** COP = Te/(Tc − Te), in kelvin
///
/// **Arguments** `evaporating` \[°C\], above −273.15; `condensing` \[°C\], above `evaporating`.
///
/// **Validity** always; nothing real reaches it.
///
/// **Errors** a temperature outside those ranges.
///
/// **Source** second law of thermodynamics.
///
/// **Example** Çengel and Boles, Thermodynamics, example 6-6 (from memory, recomputed): a
/// refrigerator at 35 °F in a room at 75 °F cannot do better than 12.4.
///
/// ```
/// use spile_heat::compressor::carnot_cop;
/// use spile_quantity::Temperature;
/// let fahrenheit = |t| Temperature::celsius((t - 32.0) / 1.8);
/// let cop = carnot_cop(fahrenheit(35.0), fahrenheit(75.0))?;
/// assert!((cop - 12.4).abs() < 0.05);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn carnot_cop(evaporating: Temperature, condensing: Temperature) -> Result<f64, HeatError> {
    let te_k = positive("evaporating temperature", evaporating.in_kelvin(), "K")?;
    let lift_k = positive("temperature lift", condensing.above(evaporating).in_k(), "K")?;
    finite("condensing temperature", condensing.in_celsius(), "°C")?;
    Ok(te_k / lift_k)
}

/// The conductance UA \[W/K\] of a cabinet with which a compressor of known η uses what the papers
/// state.
///
/// **Formula** (P − P0)·COP = UA·(Ta − Ti), COP as of [`Compressor::running`]; of several figures, the UA of least squares
/// of the relative misses
///
/// **Arguments** `stated`, one or more consumptions P at ambient Ta and inside Ti, each above P0;
/// `share_of_carnot` η, above 0 to 0.7; `approaches` those of normal running; `standby` P0
/// \[W\], drawn all the time, 0 or more.
///
/// **Validity** box shut and empty or at temperature, as such figures are measured; evaporating
/// −40 to 10 °C, condensing 10 to 70 °C.
///
/// **Errors** no figure given; an argument outside those ranges.
///
/// **Source** the balance of [`Compressor::running`] turned round.
///
/// **Example** worked by hand: 0.36 kWh a day at 33 °C with 5 °C inside is 15 W. Approaches of 10
/// and 12 K give Te = 268.15 K, Tc = 318.15 K (45 °C) and COP = 0.35·268.15/50 = 1.877, so
/// UA = 15·1.877/28 = 1.0056 W/K.
///
/// ```
/// use spile_heat::compressor::{Approaches, Consumption, fit_conductance};
/// use spile_quantity::{Energy, Power, Temperature, TemperatureDifference};
/// let k = TemperatureDifference::k;
/// let approaches = Approaches { evaporator: k(10.0), condenser: k(12.0), least_lift: k(20.0) };
/// let stated = Consumption {
///     per_day: Energy::wh(360.0),
///     ambient: Temperature::celsius(33.0),
///     inside: Temperature::celsius(5.0),
/// };
/// let ua = fit_conductance(&[stated], 0.35, approaches, Power::w(0.0))?;
/// assert!((ua.value.in_w_per_k() - 1.0056).abs() < 0.0005);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn fit_conductance(
    stated: &[Consumption],
    share_of_carnot: f64,
    approaches: Approaches,
    standby: Power,
) -> Result<Fitted<Conductance>, HeatError> {
    check_share(share_of_carnot)?;
    let power_of_one_w = |stated: &Consumption| {
        let (cop, across_k) = approaches.at(stated)?;
        Ok(across_k / (share_of_carnot * cop))
    };
    let Fitted { value, worst_miss } = fit(stated, approaches, standby, power_of_one_w)?;
    Ok(Fitted { value: Conductance::w_per_k(value), worst_miss })
}

/// The share η of Carnot with which a compressor on a cabinet of known conductance uses what the
/// papers state.
///
/// **Formula** (P − P0)·COP = UA·(Ta − Ti) with COP proportional to η; of several figures, the 1/η of least
/// squares of the relative misses
///
/// **Arguments** `stated`, `approaches`, `standby` as for [`fit_conductance`]; `conductance` UA
/// \[W/K\], above 0.
///
/// **Validity** as for [`fit_conductance`].
///
/// **Errors** no figure given; an argument outside those ranges; an η above 0.7, which means
/// that conductance or consumption is wrong.
///
/// **Source** the balance of [`Compressor::running`] turned round.
///
/// **Example** the figures of [`fit_conductance`]: 1.0056 W/K and 0.36 kWh a day give 0.35 again.
///
/// ```
/// use spile_heat::compressor::{Approaches, Consumption, fit_share_of_carnot};
/// use spile_quantity::{Conductance, Energy, Power, Temperature, TemperatureDifference};
/// let k = TemperatureDifference::k;
/// let approaches = Approaches { evaporator: k(10.0), condenser: k(12.0), least_lift: k(20.0) };
/// let stated = Consumption {
///     per_day: Energy::wh(360.0),
///     ambient: Temperature::celsius(33.0),
///     inside: Temperature::celsius(5.0),
/// };
/// let ua = Conductance::w_per_k(1.0056);
/// let share = fit_share_of_carnot(&[stated], ua, approaches, Power::w(0.0))?;
/// assert!((share.value - 0.35).abs() < 0.0005);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn fit_share_of_carnot(
    stated: &[Consumption],
    conductance: Conductance,
    approaches: Approaches,
    standby: Power,
) -> Result<Fitted<f64>, HeatError> {
    let ua_w_per_k = positive("conductance", conductance.in_w_per_k(), "W/K")?;
    let power_of_one_w = |stated: &Consumption| {
        let (cop, across_k) = approaches.at(stated)?;
        Ok(ua_w_per_k * across_k / cop)
    };
    let Fitted { value, worst_miss } = fit(stated, approaches, standby, power_of_one_w)?;
    Ok(Fitted { value: check_share(1.0 / value)?, worst_miss })
}

/// The factor on `power_of_one_w` that meets the stated powers with least squares of the relative
/// misses: Σ(x·a/y − 1)² is least at x = Σ(a/y)/Σ(a/y)².
fn fit(
    stated: &[Consumption],
    approaches: Approaches,
    standby: Power,
    power_of_one_w: impl Fn(&Consumption) -> Result<f64, HeatError>,
) -> Result<Fitted<f64>, HeatError> {
    approaches.check()?;
    let standby_w = not_negative("standby power", standby.in_w(), "W")?;
    if stated.is_empty() {
        return Err(HeatError::NothingToFit);
    }
    let mut ratios = Vec::with_capacity(stated.len());
    let mut totals_w = Vec::with_capacity(stated.len());
    for stated in stated {
        let total_w = (stated.per_day / Time::days(1.0)).in_w();
        let pumping_w = positive("consumption beyond standby", total_w - standby_w, "W")?;
        ratios.push(power_of_one_w(stated)? / pumping_w);
        totals_w.push(total_w);
    }
    let value = ratios.iter().sum::<f64>() / ratios.iter().map(|r| r * r).sum::<f64>();
    let worst_miss = ratios
        .iter()
        .zip(&totals_w)
        .map(|(ratio, total_w)| ((value * ratio - 1.0) * (total_w - standby_w) / total_w).abs())
        .fold(0.0, f64::max);
    Ok(Fitted { value, worst_miss })
}

fn check_share(share_of_carnot: f64) -> Result<f64, HeatError> {
    within("share of Carnot", share_of_carnot, "of 1", f64::MIN_POSITIVE, GREATEST_SHARE)
}

/// Carnot's COP, less what the share loses on its way from 45 °C to the condensing temperature.
fn cop_of_share_one(evaporating: Temperature, condensing: Temperature) -> Result<f64, HeatError> {
    let hotter_k = condensing.in_celsius() - STATED_AT_C;
    Ok(carnot_cop(evaporating, condensing)? * (-FALL_PER_K * hotter_k).exp())
}

fn lies(t: Temperature, (low, high): (f64, f64)) -> bool {
    (low..=high).contains(&t.in_celsius())
}
