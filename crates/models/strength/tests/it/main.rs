//! The model strength against the world outside.

mod always;
mod fasteners;
mod groups;
mod loads;
mod plates;

/// Fails with `source` unless `got` lies within `tolerance` (a share) of `expected`.
#[track_caller]
fn near(source: &str, got: f64, expected: f64, tolerance: f64) {
    let off = (got / expected - 1.0).abs();
    assert!(off <= tolerance, "{source}: {got} against {expected}, off by {:.3} %", off * 100.0);
}

/// A pound-force in newtons, an inch in millimetres.
const POUND: f64 = 4.448_221_615;
const INCH: f64 = 25.4;
