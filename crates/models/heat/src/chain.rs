//! The steady day: cabin, bay, cabinet and compressor, each waiting for the other, brought to one
//! answer.
//!
//! A hotter bay puts more heat through the walls and makes a worse compressor, which gives more
//! heat to the bay. Seen from the condenser this is one equation, x = D(x): in surroundings that
//! get x watts from the running compressor, the appliance gives D(x). D rises until the compressor
//! runs without rest, and falls after that. So from x = 0 the steps x → D(x) climb towards the
//! lowest balance and can never pass it: that is the one a cool vehicle comes to. If they climb
//! until the compressor never rests, the balance is there, and the answer says how much is missing.

use spile_quantity::{Charge, Conductance, Current, Power, Temperature, Time, Voltage};

use crate::compressor::{Cooler, Running};
use crate::error::{HeatError, finite, not_negative, positive};
use crate::place::{Air, Given, Standing};
use crate::root::root;

/// A share of the compressor's greatest heat that counts as nothing.
const SMALL: f64 = 1e-10;
/// Steps towards the lowest balance; only at the very edge of running away are so many not enough.
const MOST_STEPS: usize = 500;
/// A box that is warmer inside \[°C\] is none.
const WARMEST_C: f64 = 25.0;

/// A cooled box.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Appliance {
    /// What makes the cold; only a compressor can be computed.
    pub cooler: Cooler,
    /// The temperature it is set to.
    pub inside: Temperature,
    /// Conductance of the walls that stand in the air of the bay.
    pub walls_to_bay: Conductance,
    /// Conductance of what faces the cabin: a door or lid with its gasket.
    pub walls_to_cabin: Conductance,
    /// Mean power of light and fan inside the box, which is heat in it as well.
    pub light_and_fan: Power,
    /// Power drawn all the time by what stands at the condenser: a display, a heater of the frame.
    pub standby: Power,
    /// The voltage it is fed with.
    pub voltage: Voltage,
}

/// What people do to it, spread over the day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Use {
    /// Heat that comes in when it is opened.
    pub openings: Power,
    /// Heat of the food put in warm.
    pub food: Power,
}

/// Whether the compressor gets any rest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pace {
    /// There is nothing to cool.
    Rests,
    /// It runs part of the time.
    Cycles,
    /// It runs without rest and does not hold the temperature it is set to.
    Saturated,
}

/// The heat to be pumped, by where it comes from; negative where it leaves the box.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Load {
    /// Through the walls in the bay.
    pub walls_to_bay: Power,
    /// Through the walls that face the cabin.
    pub walls_to_cabin: Power,
    /// From openings.
    pub openings: Power,
    /// From food put in warm.
    pub food: Power,
    /// From light and fan.
    pub light_and_fan: Power,
}

/// A steady day of an appliance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Day {
    /// The heat to be pumped with the box at its set temperature.
    pub load: Load,
    /// Load over what the compressor pumps while it runs: 0 at rest, above 1 when it falls short.
    pub duty: f64,
    /// In words.
    pub pace: Pace,
    /// Mean electrical power, all of it.
    pub power: Power,
    /// Charge drawn in 24 hours.
    pub charge_per_day: Charge,
    /// The air round cabinet and condenser.
    pub air: Air,
    /// The compressor while it runs in that air.
    pub running: Running,
    /// Heat pumped, a mean: the load, or all that the compressor can.
    pub pumped: Power,
    /// Heat that the load has beyond that, which warms the box; 0 unless saturated.
    pub unmet: Power,
    /// Heat given to the places round it.
    pub given: Given,
}

/// A box at the temperature that it comes to in the end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Settled {
    /// The temperature inside.
    pub inside: Temperature,
    /// A day at that temperature.
    pub day: Day,
}

impl Load {
    /// All of it.
    pub fn total(&self) -> Power {
        self.walls_to_bay + self.walls_to_cabin + self.openings + self.food + self.light_and_fan
    }
}

/// The steady day of an appliance in a cabin, standing where `air_for` tells the temperatures at
/// which its surroundings settle with it.
///
/// **Formula** load Q = G1·(Tbay − Ti) + G2·(Tcabin − Ti) + openings + food + light and fan;
/// duty = Q/(COP·P); heat to the condenser's air = pumped + P·min(duty, 1) + standby; all with the
/// temperatures that follow from that heat
///
/// **Arguments** `appliance`: inside −30 to 25 °C, conductances \[W/K\] and powers \[W\] 0 or more,
/// voltage \[V\] above 0; `used`: powers \[W\], any sign; `cabin` \[°C\]; `air_for`: more heat never
/// makes cooler air.
///
/// **Validity** a mean over a day in steady weather; the box held at its set temperature, also
/// while saturated, where `unmet` says what heat is left to warm it ([`settled_day`] tells how far).
/// Whether the compressor is within its checked range is in [`Running::in_range`].
///
/// **Errors** [`HeatError::NotModelled`] for a cooler that is not a compressor; an argument out of
/// range; what `air_for` answers.
///
/// **Source** heat balance; the compressor as of [`crate::compressor`].
///
/// **Example** worked by hand: a box of 1 W/K at 4 °C free in a cabin of 33 °C, with 2 W from
/// openings: Q = 29 + 2 = 31 W. η 0.35 and approaches of 10 and 12 K give COP = 0.35·267.15/51 =
/// 1.833, so 48 W pump 88.0 W; duty = 35.2 %, 16.9 W, and at 12.5 V 32.5 Ah a day.
///
/// ```
/// use spile_heat::chain::{Appliance, Use, steady_day};
/// use spile_heat::compressor::{Approaches, Compressor, Cooler};
/// use spile_heat::place::{Housing, Surroundings};
/// use spile_quantity::{Conductance, Power, Temperature, TemperatureDifference, Voltage};
/// let k = TemperatureDifference::k;
/// let approaches = Approaches { evaporator: k(10.0), condenser: k(12.0), least_lift: k(20.0) };
/// let fridge = Appliance {
///     cooler: Cooler::Compressor(Compressor::new(0.35, approaches, Power::w(48.0))?),
///     inside: Temperature::celsius(4.0),
///     walls_to_bay: Conductance::w_per_k(1.0),
///     walls_to_cabin: Conductance::w_per_k(0.0),
///     light_and_fan: Power::w(0.0),
///     standby: Power::w(0.0),
///     voltage: Voltage::v(12.5),
/// };
/// let van = Surroundings {
///     outdoors: Temperature::celsius(33.0),
///     cabin_excess: k(0.0),
///     housing: Housing::Free,
/// };
/// let used = Use { openings: Power::w(2.0), food: Power::w(0.0) };
/// let day = steady_day(&fridge, used, van.cabin(), |standing| van.round(standing))?;
/// assert!((day.duty - 0.352).abs() < 0.0005);
/// assert!((day.charge_per_day.in_ah() - 32.5).abs() < 0.05);
/// # Ok::<(), spile_heat::HeatError>(())
/// ```
pub fn steady_day(
    appliance: &Appliance,
    used: Use,
    cabin: Temperature,
    air_for: impl Fn(Standing) -> Result<Air, HeatError>,
) -> Result<Day, HeatError> {
    check(appliance, used, cabin)?;
    let at = |compressor_w: f64| state(appliance, used, cabin, &air_for, compressor_w);
    let mut here = at(0.0)?;
    let most_w = here.full_heat_w();
    let small_w = SMALL * most_w;
    let mut x = 0.0;
    let mut balance = None;
    for _ in 0..MOST_STEPS {
        let demand = here.heat_w();
        if demand - x <= small_w {
            balance = Some(x);
            break;
        }
        let next = at(demand)?;
        if here.duty() >= 1.0 || next.duty() >= 1.0 {
            break;
        }
        // Where the steps are going, if D goes on as straight as between the last two: twice as far
        // is beyond the balance, unless D bends up too much.
        let slope = (next.heat_w() - demand) / (demand - x);
        let beyond = demand + 2.0 * (next.heat_w() - demand) / (1.0 - slope);
        if slope < 1.0 && beyond > demand {
            let there = at(beyond)?;
            if there.duty() < 1.0 && there.heat_w() <= beyond {
                balance = Some(solve(&at, demand, beyond, small_w)?);
                break;
            }
        }
        x = demand;
        here = next;
    }
    let balance = match balance {
        Some(balance) => balance,
        None => solve(&at, x, most_w * (1.0 + 1e-9), small_w)?,
    };
    Ok(day(appliance, &at(balance)?))
}

/// A steady day of a box at the temperature \[°C\] that it comes to in the end: the one it is set
/// to, or the warmer one that a compressor without rest can hold.
///
/// **Formula** the inside temperature at which load and what is pumped are equal while the
/// compressor gives its full heat
///
/// **Arguments** as for [`steady_day`]
///
/// **Validity** as for [`steady_day`]; heat of openings and food is taken as unchanged, which is a
/// little too much for a warmer box. Whether the compressor rests is decided with the box at its set
/// temperature: one that once runs without rest is not brought back by the box warming.
///
/// **Errors** as for [`steady_day`]; no temperature up to 25 °C that the compressor could hold.
///
/// **Source** heat balance.
///
/// **Example** in the tests, against the balance solved by hand.
pub fn settled_day(
    appliance: &Appliance,
    used: Use,
    cabin: Temperature,
    air_for: impl Fn(Standing) -> Result<Air, HeatError>,
) -> Result<Settled, HeatError> {
    let held = steady_day(appliance, used, cabin, &air_for)?;
    if held.pace != Pace::Saturated {
        return Ok(Settled { inside: appliance.inside, day: held });
    }
    let set_to = |inside_c: f64| Appliance { inside: Temperature::celsius(inside_c), ..*appliance };
    let at_full = |inside_c: f64| {
        let set = set_to(inside_c);
        let at = |x| state(&set, used, cabin, &air_for, x);
        // The more heat in the surroundings, the less is pumped: there is one balance only.
        let most_w = at(0.0)?.full_heat_w();
        let excess = |x| Ok(at(x)?.full_heat_w() - x);
        let high_w = most_w * (1.0 + 1e-9);
        at(root("compressor heat", "W", excess, 0.0, high_w, SMALL * most_w)?)
    };
    let short_by = |inside_c: f64| {
        let full = at_full(inside_c)?;
        Ok((full.load.total() - full.running.pumps).in_w())
    };
    let inside_c =
        root("inside temperature", "°C", short_by, appliance.inside.in_celsius(), WARMEST_C, 1e-7)?;
    let day = day(&set_to(inside_c), &at_full(inside_c)?);
    Ok(Settled { inside: Temperature::celsius(inside_c), day })
}

/// The appliance in the surroundings that a given heat of the compressor makes.
struct State {
    load: Load,
    air: Air,
    running: Running,
}

impl State {
    fn duty(&self) -> f64 {
        (self.load.total() / self.running.pumps).max(0.0)
    }

    /// Mean heat of the compressor to the condenser's air: what it pumps and what it takes.
    fn heat_w(&self) -> f64 {
        self.full_heat_w() * self.duty().min(1.0)
    }

    fn full_heat_w(&self) -> f64 {
        (self.running.pumps + self.running.takes).in_w()
    }
}

fn check(appliance: &Appliance, used: Use, cabin: Temperature) -> Result<(), HeatError> {
    not_negative("walls to the bay", appliance.walls_to_bay.in_w_per_k(), "W/K")?;
    not_negative("walls to the cabin", appliance.walls_to_cabin.in_w_per_k(), "W/K")?;
    not_negative("light and fan", appliance.light_and_fan.in_w(), "W")?;
    not_negative("standby power", appliance.standby.in_w(), "W")?;
    positive("voltage", appliance.voltage.in_v(), "V")?;
    finite("heat of openings", used.openings.in_w(), "W")?;
    finite("heat of food", used.food.in_w(), "W")?;
    finite("cabin temperature", cabin.in_celsius(), "°C")?;
    Ok(())
}

fn state(
    appliance: &Appliance,
    used: Use,
    cabin: Temperature,
    air_for: &impl Fn(Standing) -> Result<Air, HeatError>,
    compressor_w: f64,
) -> Result<State, HeatError> {
    let compressor = appliance.cooler.compressor()?;
    let standing = Standing {
        walls: appliance.walls_to_bay,
        inside: appliance.inside,
        condenser: Power::w(compressor_w) + appliance.standby,
    };
    let air = air_for(standing)?;
    Ok(State {
        load: Load {
            walls_to_bay: -standing.given(air.cabinet).cabinet,
            walls_to_cabin: appliance.walls_to_cabin * cabin.above(appliance.inside),
            openings: used.openings,
            food: used.food,
            light_and_fan: appliance.light_and_fan,
        },
        air,
        running: compressor.running(appliance.inside, air.condenser)?,
    })
}

fn solve(
    at: &impl Fn(f64) -> Result<State, HeatError>,
    low_w: f64,
    high_w: f64,
    small_w: f64,
) -> Result<f64, HeatError> {
    root("compressor heat", "W", |x| Ok(at(x)?.heat_w() - x), low_w, high_w, small_w)
}

fn day(appliance: &Appliance, state: &State) -> Day {
    let State { load, air, running } = *state;
    let duty = state.duty();
    let run_share = duty.min(1.0);
    let pumped = running.pumps * run_share;
    let power = running.takes * run_share + appliance.standby + appliance.light_and_fan;
    let pace = if duty > 1.0 {
        Pace::Saturated
    } else if duty > 0.0 {
        Pace::Cycles
    } else {
        Pace::Rests
    };
    let nothing = Power::w(0.0);
    Day {
        load,
        duty,
        pace,
        power,
        charge_per_day: Current::a(power.in_w() / appliance.voltage.in_v()) * Time::days(1.0),
        air,
        running,
        pumped,
        unmet: if pace == Pace::Saturated { load.total() - pumped } else { nothing },
        given: Given {
            cabinet: -load.walls_to_bay,
            condenser: pumped + running.takes * run_share + appliance.standby,
        },
    }
}
