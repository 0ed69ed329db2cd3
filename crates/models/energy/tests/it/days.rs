//! Generated days against typical years.

use serde::Deserialize;
use spile_energy::weather::{Normals, daily_clearness, year};
use spile_energy::year::sky;
use spile_quantity::{Angle, Temperature, TemperatureDifference};

use crate::{near, reference};

#[derive(Deserialize)]
struct Clearness {
    clearness: Vec<Station>,
}

#[derive(Deserialize)]
struct Station {
    name: String,
    means: [f64; 12],
    deciles: Vec<f64>,
    deviation: f64,
    lag_one: f64,
}

/// TMY3 Greensboro and Sand Point, TMY2 Miami (US government work), each from its monthly means.
/// A typical year has 365 days: its deciles themselves are good to some 0.03. The library's days
/// vary more than Miami's, where the trade wind brings much the same sky every day.
#[test]
fn forty_years_are_spread_like_a_typical_one() {
    let Clearness { clearness } = reference();
    assert_eq!(clearness.len(), 3);
    for station in clearness {
        let years: Vec<Vec<f64>> =
            (0..40).map(|seed| daily_clearness(&station.means, seed).unwrap()).collect();
        let mut all: Vec<f64> = years.iter().flatten().copied().collect();
        let mean = all.iter().sum::<f64>() / all.len() as f64;
        let days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].map(f64::from);
        let asked: f64 = station.means.iter().zip(days).map(|(m, d)| m * d / 365.0).sum();
        near(&format!("{}: mean", station.name), mean, asked, 0.01);
        let deviation = (all.iter().map(|kt| (kt - mean).powi(2)).sum::<f64>()
            / (all.len() as f64 - 1.0))
            .sqrt();
        near(&format!("{}: deviation", station.name), deviation, station.deviation, 0.04);
        let lag = lag_one(&years, &station.means);
        near(&format!("{}: one day to the next", station.name), lag, station.lag_one, 0.15);
        all.sort_by(f64::total_cmp);
        for (at, expected) in station.deciles.iter().enumerate() {
            let got = all[all.len() * (at + 1) / 10];
            near(&format!("{}: decile {}", station.name, at + 1), got, *expected, 0.07);
        }
    }
}

fn lag_one(years: &[Vec<f64>], means: &[f64; 12]) -> f64 {
    let mut sums = [0.0; 2];
    for days in years {
        let off: Vec<f64> = days
            .iter()
            .enumerate()
            .map(|(day, kt)| kt - means[spile_energy::calendar::month_of(day)])
            .collect();
        for pair in off.windows(2) {
            sums[0] += pair[0] * pair[1];
            sums[1] += pair[0] * pair[0];
        }
    }
    sums[0] / sums[1]
}

#[test]
fn a_seed_is_a_year() {
    let same = [0.5; 12];
    assert_eq!(daily_clearness(&same, 7), daily_clearness(&same, 7));
    assert_ne!(daily_clearness(&same, 7), daily_clearness(&same, 8));
    assert!(daily_clearness(&[0.02; 12], 7).is_err());
}

/// The sun of each day is its clearness times that outside the air, and the sky's part is never
/// more than all of it.
#[test]
fn hours_add_up_to_their_day() {
    let normals = Normals {
        clearness: [0.5; 12],
        temperature: [Temperature::celsius(10.0); 12],
        swing: TemperatureDifference::k(8.0),
    };
    for latitude in [-40.0, 0.0, 37.0, 60.0, 68.0] {
        let sky = sky(Angle::degrees(latitude)).unwrap();
        let weather = year(&sky, &normals, 3).unwrap();
        let clearness = daily_clearness(&normals.clearness, 3).unwrap();
        for (day, kt) in clearness.iter().enumerate() {
            let hours = day * 24..day * 24 + 24;
            let sun_j: f64 = weather.global_w_per_m2[hours.clone()].iter().sum::<f64>() * 3600.0;
            let (outside_j, _) =
                spile_energy::sun::day_outside_air(day, Angle::degrees(latitude)).unwrap();
            // FAO's day and our path are two formulas: 2 % where the sun is high, and what half a
            // degree of declination makes where it is low.
            let low_j = if latitude.abs() > 50.0 { 0.7e6 } else { 0.3e6 };
            near(&format!("day {day} at {latitude}°"), sun_j, kt * outside_j, 0.02 * sun_j + low_j);
            for hour in hours {
                let (all, sky) = (weather.global_w_per_m2[hour], weather.diffuse_w_per_m2[hour]);
                assert!((0.0..=all).contains(&sky) && all < 1400.0);
            }
        }
    }
}

#[test]
fn temperature_goes_through_the_months() {
    let temperature = std::array::from_fn(|m| Temperature::celsius(m as f64));
    let normals =
        Normals { clearness: [0.5; 12], temperature, swing: TemperatureDifference::k(8.0) };
    let weather = year(&sky(Angle::degrees(45.0)).unwrap(), &normals, 1).unwrap();
    // Mid July is the mean of July, 6 °C here; the warmest hour is half the swing above.
    near("mid July", weather.day_c[196], 6.0, 0.02);
    let warmest = weather.air_c[196 * 24..][..24].iter().fold(f64::MIN, |a, b| a.max(*b));
    near("its warmest hour", warmest, 6.0 + 4.0, 0.06);
    // New Year is half way from December to January.
    near("New Year", weather.day_c[0], 5.5, 0.3);
}
