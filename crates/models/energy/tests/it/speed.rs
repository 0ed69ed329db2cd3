//! A year is quick enough to be asked for many times.

use std::time::Instant;

use spile_energy::battery::Battery;
use spile_energy::panel::{Array, Plane};
use spile_energy::weather::{Normals, year};
use spile_energy::year::{Hour, run, sky, sun_on};
use spile_quantity::{Angle, Charge, Current, Share, Temperature, TemperatureDifference, Time};

/// Under 3 ms in a build for speed: weather, panels and battery of one year, the sun's path known.
/// A build for tests is some twenty times slower, and the bound here leaves room for a busy machine.
#[test]
fn a_year_takes_little_time() {
    let sky = sky(Angle::degrees(37.0)).unwrap();
    let normals = Normals {
        clearness: [0.5; 12],
        temperature: [Temperature::celsius(15.0); 12],
        swing: TemperatureDifference::k(9.0),
    };
    let roof = Array {
        plane: Plane::FLAT,
        cooling_w_per_m2_k: 20.0,
        per_kelvin: -0.0035,
        losses: Share::percent(10.0),
    };
    let battery = Battery {
        capacity: Charge::ah(190.0),
        hour_rate: Time::hours(20.0),
        peukert: 1.1,
        kept: Share::percent(94.0),
        taper: Time::hours(1.5),
        greatest_charge: Current::a(50.0),
        coldest_charge: Temperature::celsius(-20.0),
        floor: Share::percent(20.0),
    };
    let mut best_ms = f64::INFINITY;
    for seed in 0..5 {
        let begun = Instant::now();
        let weather = year(&sky, &normals, seed).unwrap();
        let sun = sun_on(&roof, &sky, &weather, |_| true).unwrap();
        let hours: Vec<Option<Hour>> = sun
            .iter()
            .map(|w| {
                Some(Hour {
                    drawn: Current::a(3.0),
                    offered: [Current::a(230.0 * w / 13.6), Current::a(0.0), Current::a(0.0)],
                    at: Temperature::celsius(15.0),
                })
            })
            .collect();
        assert!(run(&battery, &hours, 0).unwrap().given[0] > Charge::ah(100.0));
        best_ms = best_ms.min(begun.elapsed().as_secs_f64() * 1000.0);
    }
    let bound_ms = if cfg!(debug_assertions) { 300.0 } else { 3.0 };
    assert!(best_ms < bound_ms, "{best_ms:.2} ms a year");
}
