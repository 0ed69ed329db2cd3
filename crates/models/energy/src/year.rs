//! A year hour by hour: the sun's path, what panels give in it, and what the battery makes of it.

use spile_quantity::{Angle, Charge, Current, Power, Share, Temperature, Time};

use crate::battery::{Battery, Ready};
use crate::calendar::{DAYS, HOURS, days_of, month_of};
use crate::error::{EnergyError, within};
use crate::panel::{self, Array};
use crate::sun::{self, Light, Sun, day_outside_air, outside_air};
use crate::weather::Weather;

/// The sun's path over a latitude, in local mean solar time.
#[derive(Debug, Clone, PartialEq)]
pub struct Sky {
    /// For each hour of the year, at its middle.
    pub(crate) hours: Vec<SkyHour>,
    /// The sun outside the air, of each day \[W/m²\].
    pub(crate) outside_w_per_m2: Vec<f64>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SkyHour {
    pub(crate) sun: Sun,
    /// The sine of its height, 0 below the horizon.
    pub(crate) height: f64,
    /// How much of the day's light it gets, beside its height.
    pub(crate) shape: f64,
}

impl Sky {
    /// The sun outside the air on level ground, the mean of day and night of a month counted from 0
    /// \[W/m²\].
    ///
    /// # Panics
    /// If there is no such month.
    pub fn outside_w_per_m2(&self, month: usize) -> f64 {
        let days = days_of(month);
        let hours = days.len() as f64 * 24.0;
        days.map(|day| {
            let path: f64 = self.hours[day * 24..][..24].iter().map(|hour| hour.height).sum();
            path * self.outside_w_per_m2[day]
        })
        .sum::<f64>()
            / hours
    }
}

/// The sun's path over a latitude, for [`crate::weather::year`].
///
/// **Formula** positions of [`sun::position`] in the middle of each hour at longitude 0; shape
/// a + b·cos ω of Collares-Pereira and Rabl
///
/// **Arguments** `latitude` −90 to 90°
///
/// **Validity** as of [`sun::position`].
///
/// **Errors** a latitude out of range.
///
/// **Source** as of [`sun::position`].
///
/// **Example** as of [`crate::weather::year`].
pub fn sky(latitude: Angle) -> Result<Sky, EnergyError> {
    let mut hours = Vec::with_capacity(HOURS);
    let mut outside_w_per_m2 = Vec::with_capacity(DAYS);
    for day in 0..DAYS {
        outside_w_per_m2.push(outside_air(day)?);
        let (_, daylight) = day_outside_air(day, latitude)?;
        let sunset_rad = daylight.in_hours() / 24.0 * std::f64::consts::PI;
        let late = (sunset_rad - std::f64::consts::FRAC_PI_3).sin();
        let (a, b) = (0.409 + 0.5016 * late, 0.6609 - 0.4767 * late);
        for hour in 0..24 {
            let middle = f64::from(hour) + 0.5;
            let sun = sun::position(day, Time::hours(middle), latitude, Angle::rad(0.0))?;
            let angle_rad = (middle - 12.0) / 12.0 * std::f64::consts::PI;
            hours.push(SkyHour {
                sun,
                height: sun.height().max(0.0),
                shape: (a + b * angle_rad.cos()).max(0.0),
            });
        }
    }
    Ok(Sky { hours, outside_w_per_m2 })
}

/// What panels of one watt give in each hour of the days asked for \[W\]; 0 on the others.
///
/// **Formula** light on the plane by Hay and Davies, the direct part through the glass; cells by
/// Faiman without wind; power by PVWatts; less the losses
///
/// **Arguments** `array`, losses 0 to 1; `sky` and `weather` of one place; `on`: the days, from 0
///
/// **Validity** as of the formulas of [`crate::panel`].
///
/// **Errors** as of the formulas of [`crate::panel`].
///
/// **Source** as of the formulas of [`crate::panel`]; the ground reflects 20 %, as is common practice.
///
/// **Example** on the front page of the crate.
pub fn sun_on(
    array: &Array,
    sky: &Sky,
    weather: &Weather,
    on: impl Fn(usize) -> bool,
) -> Result<Vec<f64>, EnergyError> {
    let left = 1.0 - within("losses", array.losses.in_of_one(), "", 0.0, 1.0)?;
    let one = |at: usize| {
        let hour = &sky.hours[at];
        let global_w_per_m2 = weather.global_w_per_m2[at];
        if global_w_per_m2 <= 0.0 || !on(at / 24) {
            return Ok(0.0);
        }
        let diffuse_w_per_m2 = weather.diffuse_w_per_m2[at];
        let outside = sky.outside_w_per_m2[at / 24];
        let light = Light {
            global_w_per_m2,
            beam_w_per_m2: ((global_w_per_m2 - diffuse_w_per_m2) / hour.height.max(0.017_45))
                .min(outside),
            diffuse_w_per_m2,
        };
        let air = Temperature::celsius(weather.air_c[at]);
        Ok(left * power_of_one(array, hour.sun, light, outside, air)?.in_w())
    };
    (0..HOURS).map(one).collect()
}

/// Power \[W\] of panels of one watt in a given light, without losses.
///
/// **Formula** as of [`sun_on`]
///
/// **Arguments** `array`; `sun`; `light` \[W/m²\] 0 or more; `outside_w_per_m2`; `air`
///
/// **Validity** as of [`sun_on`].
///
/// **Errors** as of [`sun_on`].
///
/// **Source** as of [`sun_on`].
///
/// **Example** monthly sums of a real year against `pvlib`, in the tests.
pub fn power_of_one(
    array: &Array,
    sun: Sun,
    light: Light,
    outside_w_per_m2: f64,
    air: Temperature,
) -> Result<Power, EnergyError> {
    let on = panel::on_plane(array.plane, sun, light, outside_w_per_m2, Share::percent(20.0))?;
    let cell = panel::cell_temperature(on.total(), air, array.cooling_w_per_m2_k, 0.0, 0.0)?;
    let glass = panel::through_glass(panel::incidence(array.plane, sun))?;
    let used = on.direct_w_per_m2 * glass + on.sky_w_per_m2 + on.ground_w_per_m2;
    panel::panel_power(Power::w(1.0), used, cell, array.per_kelvin)
}

/// What charges the battery.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Giver {
    /// Panels.
    Sun,
    /// The engine.
    Engine,
    /// Mains.
    HookUp,
}

impl Giver {
    /// Each of them, in their order.
    pub const ALL: [Self; 3] = [Self::Sun, Self::Engine, Self::HookUp];
}

/// One hour of the vehicle's life.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hour {
    /// What the loads draw.
    pub drawn: Current,
    /// What each giver could give, in the order of [`Giver::ALL`].
    pub offered: [Current; 3],
    /// The battery's temperature.
    pub at: Temperature,
}

/// What became of a year.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// Time on trips in which the loads were off.
    pub off: Time,
    /// Lowest state of charge of each month; `None` where the vehicle was not away.
    pub lowest: [Option<Share>; 12],
    /// What the loads drew and got, by month.
    pub served: [Charge; 12],
    /// What the loads would have drawn, by month.
    pub wanted: [Charge; 12],
    /// What each giver could have given, by month.
    pub offered: [[Charge; 3]; 12],
    /// What each gave.
    pub given: [Charge; 3],
    /// What the battery lost.
    pub lost: Charge,
    /// What it gained from the first hour to the last, topping up at home left out.
    pub gained: Charge,
    /// Time in which the cold kept the battery from a charge.
    pub too_cold: Time,
    /// Each day, from 1 January; `None` where the vehicle stood at home for all of it.
    pub days: Vec<Option<DayOf>>,
}

/// What became of one day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DayOf {
    /// The lowest state of charge.
    pub lowest: Share,
    /// Time in which the loads were off.
    pub off: Time,
}

/// A year of hours, each `None` where the vehicle stands at home and its battery is full.
///
/// **Formula** [`Battery::step`] hour by hour from a full battery; givers share what is used in the
/// shares that they offer
///
/// **Arguments** `battery`; `hours` from 1 January, at most 8760; currents \[A\] 0 or more; `first`,
/// the hour to begin with, goes round the year's end
///
/// **Validity** as of [`Battery::step`].
///
/// **Errors** an argument out of range.
///
/// **Source** counting of coulombs.
///
/// **Example** a load of 5 A, no source, 100 Ah down to 50: ten hours, then off:
///
/// ```
/// use spile_energy::{battery::Battery, year::{Hour, run}};
/// use spile_quantity::{Charge, Current, Share, Temperature, Time};
/// let battery = Battery {
///     capacity: Charge::ah(100.0), hour_rate: Time::hours(20.0), peukert: 1.2,
///     kept: Share::percent(95.0), taper: Time::hours(1.5), greatest_charge: Current::a(30.0),
///     coldest_charge: Temperature::celsius(-20.0), floor: Share::percent(50.0),
/// };
/// let hour = Hour {
///     drawn: Current::a(5.0), offered: [Current::a(0.0); 3], at: Temperature::celsius(20.0),
/// };
/// let outcome = run(&battery, &[Some(hour); 24], 0)?;
/// assert!((outcome.off.in_hours() - 14.0).abs() < 1e-9);
/// assert_eq!(outcome.lowest[0], Some(Share::percent(50.0)));
/// # Ok::<(), spile_energy::EnergyError>(())
/// ```
pub fn run(
    battery: &Battery,
    hours: &[Option<Hour>],
    first: usize,
) -> Result<Outcome, EnergyError> {
    const HOUR_S: f64 = 3600.0;
    within("hours", hours.len() as f64, "", 0.0, HOURS as f64)?;
    let ready: Ready = battery.checked()?;
    let room = ready.room(HOUR_S);
    let full = ready.capacity_a_s;
    let mut charge = full;
    let mut sums =
        Sums { days: vec![[f64::INFINITY, 0.0]; hours.len().div_ceil(24)], ..Sums::default() };
    let month: Vec<usize> = (0..DAYS).map(month_of).collect();
    for step in 0..hours.len() {
        let at = (first + step) % hours.len();
        let Some(hour) = &hours[at] else {
            charge = full;
            continue;
        };
        let offered_a = hour.offered.map(Current::in_a);
        let (all_a, drawn_a) = (offered_a.iter().sum::<f64>(), hour.drawn.in_a());
        for current_a in offered_a.into_iter().chain([drawn_a]) {
            within("current", current_a, "A", 0.0, f64::MAX)?;
        }
        let done = ready.step(charge, all_a, drawn_a, hour.at.in_celsius(), HOUR_S, room);
        let m = month[at / 24];
        sums.off_s += done.off * HOUR_S;
        sums.too_cold_s += if done.too_cold { HOUR_S } else { 0.0 };
        sums.lowest[m] = sums.lowest[m].min(done.charge);
        let [lowest, off_s] = &mut sums.days[at / 24];
        *lowest = lowest.min(done.charge);
        *off_s += done.off * HOUR_S;
        sums.served[m] += done.served;
        sums.wanted[m] += drawn_a * HOUR_S;
        sums.lost += done.lost;
        sums.gained += done.charge - charge;
        for (giver, offered_a) in offered_a.iter().enumerate() {
            sums.offered[m][giver] += offered_a * HOUR_S;
            if all_a > 0.0 {
                sums.given[giver] += done.used * offered_a / all_a;
            }
        }
        charge = done.charge;
    }
    Ok(sums.outcome(full))
}

/// Sums of a year \[s\], \[A·s\].
struct Sums {
    off_s: f64,
    too_cold_s: f64,
    lowest: [f64; 12],
    served: [f64; 12],
    wanted: [f64; 12],
    offered: [[f64; 3]; 12],
    given: [f64; 3],
    lost: f64,
    gained: f64,
    /// Of each day the lowest charge, infinite at home, and the time off.
    days: Vec<[f64; 2]>,
}

impl Default for Sums {
    fn default() -> Self {
        Self {
            off_s: 0.0,
            too_cold_s: 0.0,
            lowest: [f64::INFINITY; 12],
            served: [0.0; 12],
            wanted: [0.0; 12],
            offered: [[0.0; 3]; 12],
            given: [0.0; 3],
            lost: 0.0,
            gained: 0.0,
            days: Vec::new(),
        }
    }
}

impl Sums {
    fn outcome(&self, full: f64) -> Outcome {
        let day = |[lowest, off_s]: &[f64; 2]| {
            let away = lowest.is_finite();
            away.then(|| DayOf { lowest: Share::of_one(lowest / full), off: Time::s(*off_s) })
        };
        Outcome {
            off: Time::s(self.off_s),
            lowest: self.lowest.map(|low| low.is_finite().then(|| Share::of_one(low / full))),
            served: self.served.map(Charge::a_s),
            wanted: self.wanted.map(Charge::a_s),
            offered: self.offered.map(|each| each.map(Charge::a_s)),
            given: self.given.map(Charge::a_s),
            lost: Charge::a_s(self.lost),
            gained: Charge::a_s(self.gained),
            too_cold: Time::s(self.too_cold_s),
            days: self.days.iter().map(day).collect(),
        }
    }
}

/// How long a full battery carries a daily use without any charge, down to a share left \[s\].
///
/// **Formula** t = C·(1 − floor)/(I·max(1, (I·H/C)^(n−1))), I the mean current
///
/// **Arguments** `battery`; `daily` \[A·s\] above 0
///
/// **Validity** the use spread evenly over the day.
///
/// **Errors** an argument out of range.
///
/// **Source** counting of coulombs; Peukert (1897).
///
/// **Example** 190 Ah at 20 h, half of it, 48 Ah a day: 1.98 days:
///
/// ```
/// use spile_energy::{battery::Battery, year::autonomy};
/// use spile_quantity::{Charge, Current, Share, Temperature, Time};
/// let battery = Battery {
///     capacity: Charge::ah(190.0), hour_rate: Time::hours(20.0), peukert: 1.1,
///     kept: Share::percent(94.0), taper: Time::hours(1.5), greatest_charge: Current::a(50.0),
///     coldest_charge: Temperature::celsius(-20.0), floor: Share::percent(50.0),
/// };
/// assert!((autonomy(&battery, Charge::ah(48.0))?.in_days() - 95.0 / 48.0).abs() < 1e-9);
/// # Ok::<(), spile_energy::EnergyError>(())
/// ```
pub fn autonomy(battery: &Battery, daily: Charge) -> Result<Time, EnergyError> {
    let ready = battery.checked()?;
    let daily_a_s = within("use of a day", daily.in_a_s(), "A·s", f64::MIN_POSITIVE, f64::MAX)?;
    let drawn_a = daily_a_s / 86_400.0;
    let rated_a = battery.capacity.in_a_s() / battery.hour_rate.in_s();
    let factor = (drawn_a / rated_a).max(1.0).powf(battery.peukert - 1.0);
    let usable = ready.capacity_a_s * (1.0 - battery.floor.in_of_one());
    Ok(Time::s(usable / (drawn_a * factor)))
}
