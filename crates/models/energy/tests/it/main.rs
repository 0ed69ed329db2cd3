//! The energy model against the world outside it.

mod balance;
mod days;
mod speed;
mod sun;

/// Fails unless `got` is `expected` within `tolerance`, both in the unit of the case.
#[track_caller]
fn near(source: &str, got: f64, expected: f64, tolerance: f64) {
    assert!(
        (got - expected).abs() <= tolerance,
        "{source}: got {got}, expected {expected} ± {tolerance}"
    );
}

/// What `make_sun.py` wrote.
fn reference<T: serde::de::DeserializeOwned>() -> T {
    serde_json::from_str(include_str!("../reference/sun.json")).expect("sun.json is well formed")
}
