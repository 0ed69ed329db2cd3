//! The heat model against the world outside it.

mod air;
mod balance;
mod cabinet;
mod chain;
mod compressor;
mod food;
mod gas;
mod openings;

use spile_quantity::{Conductance, Power, Temperature, TemperatureDifference};

/// Fails unless `got` is `expected` within `tolerance`, both in the unit of the case.
#[track_caller]
fn near(source: &str, got: f64, expected: f64, tolerance: f64) {
    assert!(
        (got - expected).abs() <= tolerance,
        "{source}: got {got}, expected {expected} ± {tolerance}"
    );
}

fn read<T: serde::de::DeserializeOwned>(json: &str) -> T {
    serde_json::from_str(json).expect("a reference file is well formed")
}

fn celsius(t: f64) -> Temperature {
    Temperature::celsius(t)
}

fn kelvin(dt: f64) -> TemperatureDifference {
    TemperatureDifference::k(dt)
}

fn w_per_k(g: f64) -> Conductance {
    Conductance::w_per_k(g)
}

fn watts(q: f64) -> Power {
    Power::w(q)
}
