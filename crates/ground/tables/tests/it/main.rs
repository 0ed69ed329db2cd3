//! The tables against the world outside, and against each other.

mod ampacity;
mod axle;
mod battery;
mod climate;
mod cold;
mod conductor;
mod every_table;
mod fault;
mod fuse;
mod typical;
mod workshop;

/// Fails with `what` unless `got` lies within `tolerance` (a share) of `expected`.
#[track_caller]
fn near(what: &str, got: f64, expected: f64, tolerance: f64) {
    let off = (got / expected - 1.0).abs();
    assert!(off <= tolerance, "{what}: {got} against {expected}, off by {:.2} %", off * 100.0);
}
