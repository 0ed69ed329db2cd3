//! The shapes against other libraries, published formulas and what must always hold.

mod always;
mod reference;
mod refused;
mod trade;
mod way_through;

use spile_quantity::Length;
use spile_solid::{Cuboid, Point, Profile};

/// A box by its two corners in millimetres.
fn cuboid(low: [f64; 3], high: [f64; 3]) -> Cuboid {
    let point = |at: [f64; 3]| Point::mm(at[0], at[1], at[2]);
    Cuboid::new(point(low), point(high)).expect("a box")
}

/// An outline by its corners in millimetres.
fn profile(corners: &[[f64; 2]]) -> Profile {
    let corners: Vec<_> = corners.iter().map(|at| at.map(Length::mm)).collect();
    Profile::new(&corners).expect("an outline")
}

/// Fails unless `found` is `expected` within `tolerance`, all in one unit.
#[track_caller]
fn near(what: &str, found: f64, expected: f64, tolerance: f64) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{what}: {found} found, {expected} ± {tolerance} expected"
    );
}
