//! Days of weather that follow one another like real ones, from monthly means.

use std::f64::consts::PI;

use spile_quantity::{Temperature, TemperatureDifference};
use spile_tables::clearness::{ranges, transitions};

use crate::calendar::{DAYS, HOURS, MONTH_DAYS, days_of};
use crate::error::{EnergyError, within};
use crate::year::Sky;

/// What the months of a place are like, January first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Normals {
    /// Share of the sun outside the air that reaches level ground.
    pub clearness: [f64; 12],
    /// Mean temperature.
    pub temperature: [Temperature; 12],
    /// Warmest over coldest hour of a day.
    pub swing: TemperatureDifference,
}

/// A year of weather, hour by hour in local mean solar time.
#[derive(Debug, Clone, PartialEq)]
pub struct Weather {
    /// On level ground, all of it \[W/m²\].
    pub global_w_per_m2: Vec<f64>,
    /// On level ground, from the sky without the sun \[W/m²\].
    pub diffuse_w_per_m2: Vec<f64>,
    /// Outside.
    pub air_c: Vec<f64>,
    /// Outside, the mean of each day.
    pub day_c: Vec<f64>,
}

/// A source of numbers that look like chance and are the same for the same seed.
#[derive(Debug, Clone)]
struct Chance(u64);

impl Chance {
    /// From 0 to below 1: `SplitMix64` (Steele, Lea and Flood, 2014), its upper 53 bits.
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }
}

/// One matrix, ready to be drawn from.
struct Chain {
    least: f64,
    width: f64,
    /// Chances of tomorrow's classes, added up.
    rising: [[f64; 10]; 10],
    /// The mean that it comes to.
    mean: f64,
}

impl Chain {
    fn all() -> Vec<Self> {
        let of = |(at, range): (usize, &spile_tables::Entry<spile_tables::clearness::Range>)| {
            let mut chances = [[0.0; 10]; 10];
            for (row, printed) in chances.iter_mut().zip(&transitions()[at * 10..]) {
                let sum: f64 = printed.value.iter().sum();
                *row = printed.value.map(|chance| chance / sum);
            }
            let mut share = [0.1; 10];
            for _ in 0..200 {
                let mut next = [0.0; 10];
                for (row, today) in chances.iter().zip(share) {
                    for (next, chance) in next.iter_mut().zip(row) {
                        *next += today * chance;
                    }
                }
                share = next;
            }
            let (least, width) =
                (range.value.least, (range.value.greatest - range.value.least) / 10.0);
            let mean = (0..10).map(|at| share[at] * (least + width * (at as f64 + 0.5))).sum();
            let rising = chances.map(|row| {
                let mut sum = 0.0;
                row.map(|chance| {
                    sum += chance;
                    sum
                })
            });
            Self { least, width, rising, mean }
        };
        ranges().iter().enumerate().map(of).collect()
    }

    fn class(&self, clearness: f64) -> usize {
        let at = ((clearness - self.least) / self.width).floor();
        (at.max(0.0) as usize).min(9)
    }

    fn tomorrow(&self, today: f64, chance: &mut Chance) -> f64 {
        let row = &self.rising[self.class(today)];
        let drawn = chance.next();
        let class = row.iter().position(|sum| drawn < *sum).unwrap_or(9);
        self.least + self.width * (class as f64 + chance.next())
    }
}

/// The clearness of each day of a year, Kt \[1\]: the sun on level ground over that outside the air.
///
/// **Formula** a chain of days by the transition matrix of the month's mean; within a class every
/// clearness is as likely; each day is scaled by the month's mean over the mean that its matrix
/// comes to, so that many years have the mean asked for
///
/// **Arguments** `monthly`, each 0.05 to 0.8; `seed`: another one, another year
///
/// **Validity** climates from deserts to the high latitudes: the authors drew the library from nine
/// places and tried it on others. Cloudy and clear spells last as long as one day's memory lets them.
///
/// **Errors** a mean out of range.
///
/// **Source** Aguiar, Collares-Pereira and Conde, Solar Energy 40 (1988) 269; the scaling is ours.
///
/// **Example** in the tests, against three typical years.
pub fn daily_clearness(monthly: &[f64; 12], seed: u64) -> Result<Vec<f64>, EnergyError> {
    for mean in monthly {
        within("mean clearness of a month", *mean, "", 0.05, 0.8)?;
    }
    let chains = Chain::all();
    let mut chance = Chance(seed);
    let mut days = Vec::with_capacity(DAYS);
    let mut today: Option<f64> = None;
    for (mean, length) in monthly.iter().zip(MONTH_DAYS) {
        let at = ranges().iter().position(|range| *mean <= range.value.mean_to).unwrap_or(9);
        let chain = &chains[at];
        for _ in 0..length {
            let raw = chain.tomorrow(today.unwrap_or(chain.mean), &mut chance);
            today = Some(raw);
            days.push((raw * mean / chain.mean).min(GREATEST_DAY));
        }
    }
    Ok(days)
}

/// No day is clearer than this: the greatest of the library's ranges, and what a clear sky over high
/// ground lets through.
const GREATEST_DAY: f64 = 0.865;

/// A year of weather: clearness by chance, shaped over each day by the sun's path.
///
/// **Formula** a day's sun Kt·H₀ is spread as cos z·(a + b·cos ω), a = 0.409 + 0.5016·sin(ωs − 60°),
/// b = 0.6609 − 0.4767·sin(ωs − 60°); of each hour the diffuse share is 1 − 0.09·k up to k = 0.22,
/// 0.9511 − 0.1604·k + 4.388·k² − 16.638·k³ + 12.336·k⁴ up to 0.8, then 0.165; temperature runs
/// straight between the middles of months, with half the swing up at 15 h and down at 3 h
///
/// **Arguments** `sky` of the latitude; `normals`: clearness 0.05 to 0.8; `seed`
///
/// **Validity** means of hours; temperature does not follow the clouds.
///
/// **Errors** a clearness out of range.
///
/// **Source** Collares-Pereira and Rabl, Solar Energy 22 (1979) 155; Erbs, Klein and Duffie, Solar
/// Energy 28 (1982) 293; the temperature's shape is common practice, no source.
///
/// **Example** in the tests: each day has the sun of its clearness.
pub fn year(sky: &Sky, normals: &Normals, seed: u64) -> Result<Weather, EnergyError> {
    let clearness = daily_clearness(&normals.clearness, seed)?;
    let mut weather = Weather {
        global_w_per_m2: vec![0.0; HOURS],
        diffuse_w_per_m2: vec![0.0; HOURS],
        air_c: Vec::with_capacity(HOURS),
        day_c: day_temperatures(&normals.temperature),
    };
    let half_swing_k = normals.swing.in_k() / 2.0;
    let swing: [f64; 24] = std::array::from_fn(|hour| {
        half_swing_k * (2.0 * PI * (hour as f64 + 0.5 - 15.0) / 24.0).cos()
    });
    for (day, kt) in clearness.iter().enumerate() {
        weather.air_c.extend(swing.iter().map(|k| weather.day_c[day] + k));
        let hours = &sky.hours[day * 24..][..24];
        let outside = sky.outside_w_per_m2[day];
        let path: f64 = hours.iter().map(|hour| hour.height).sum();
        if path <= 0.0 {
            continue;
        }
        let weights: f64 = hours.iter().map(|hour| hour.height * hour.shape).sum();
        let level = kt * path / weights;
        for (at, hour) in hours.iter().enumerate().filter(|(_, hour)| hour.height > 0.0) {
            let k = (level * hour.shape).min(1.0);
            let global = level * hour.shape * outside * hour.height;
            weather.global_w_per_m2[day * 24 + at] = global;
            weather.diffuse_w_per_m2[day * 24 + at] = global * diffuse_share(k);
        }
    }
    Ok(weather)
}

/// The share of an hour's light that comes from the sky without the sun, at a clearness of 0 to 1.
fn diffuse_share(k: f64) -> f64 {
    if k <= 0.22 {
        1.0 - 0.09 * k
    } else if k <= 0.8 {
        0.9511 - 0.1604 * k + 4.388 * k.powi(2) - 16.638 * k.powi(3) + 12.336 * k.powi(4)
    } else {
        0.165
    }
}

/// Means of days, straight between the middles of months.
fn day_temperatures(monthly: &[Temperature; 12]) -> Vec<f64> {
    let middle = |month: usize| {
        let days = days_of(month);
        (days.start + days.end) as f64 / 2.0
    };
    (0..DAYS)
        .map(|day| {
            let at = day as f64 + 0.5;
            let next = (0..12).find(|month| middle(*month) > at);
            let (before, after) = match next {
                Some(0) | None => (11, 0),
                Some(month) => (month - 1, month),
            };
            let length = (middle(after) - middle(before)).rem_euclid(DAYS as f64);
            let along = (at - middle(before)).rem_euclid(DAYS as f64) / length;
            let [from_c, to_c] = [before, after].map(|month| monthly[month].in_celsius());
            from_c + (to_c - from_c) * along
        })
        .collect()
}
