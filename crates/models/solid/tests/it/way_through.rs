//! A body through an opening, against a search over all angles.

use crate::near;
use proptest::prelude::*;
use spile_quantity::Length;
use spile_solid::{Passage, passage};

fn through(sides: [f64; 3], opening: [f64; 2]) -> Passage {
    passage(sides.map(Length::mm), Length::mm(opening[0]), Length::mm(opening[1])).expect("sides")
}

/// The least shorter side of an opening `q` long that takes a × b at some angle: both extents of
/// the turned rectangle are tried at many angles.
fn searched(a: f64, b: f64, q: f64) -> f64 {
    (0..=900_000)
        .map(|k| f64::from(k) * 1e-4_f64.to_radians())
        .filter(|angle| b * angle.cos() + a * angle.sin() <= q)
        .map(|angle| b * angle.sin() + a * angle.cos())
        .fold(f64::INFINITY, f64::min)
}

/// Source: brute force over the angle, in steps of 0.0001°.
#[test]
fn rolling_as_a_search_finds() {
    // (sides in mm, opening in mm); the longest side goes in.
    for (sides, opening) in [
        ([300.0, 900.0, 950.0], [600.0, 800.0]),
        ([100.0, 820.0, 900.0], [500.0, 800.0]),
        ([450.0, 700.0, 1200.0], [620.0, 690.0]),
        ([440.0, 480.0, 760.0], [500.0, 900.0]),
    ] {
        let [a, b, _] = sides;
        let found = through(sides, opening).rolled.in_mm();
        near("rolled", found, opening[0] - searched(a, b, opening[1]), 0.01);
    }
}

/// Source: the diagonal of a unit square is √2 (Euclid); a thin sheet passes it if no longer.
#[test]
fn a_sheet_through_a_square() {
    let sheet = |long: f64| through([0.001, long, 2000.0], [1000.0, 1000.0]);
    assert!(sheet(1414.0).rolled > Length::mm(0.0) && sheet(1414.3).rolled < Length::mm(0.0));
    assert!(sheet(1414.0).straight[1] < Length::mm(0.0));
    assert!(sheet(1414.0).diagonal > Length::mm(0.0) && sheet(1414.3).diagonal < Length::mm(0.0));
}

#[test]
fn a_fridge_through_a_side_door() {
    // Straight in by its 480 × 440 section; lying the 760 would not be needed at all.
    let fridge = through([440.0, 480.0, 760.0], [1200.0, 450.0]);
    assert_eq!(fridge.across.map(|side| side.in_mm().round()), [480.0, 440.0]);
    assert_eq!(fridge.straight.map(|slack| slack.in_mm().round()), [720.0, 10.0]);
    assert_eq!(fridge.thinnest.in_mm().round(), 10.0);
    near("area", fridge.area.in_cm2(), 5400.0 - 2112.0, 1e-6);
}

proptest! {
    /// What passes straight or rolled must never be refused by a condition called necessary.
    #[test]
    fn necessary_is_necessary(
        a in 1.0..1000.0_f64, b in 1.0..1000.0_f64, c in 1.0..1000.0_f64,
        p in 1.0..1000.0_f64, q in 1.0..1000.0_f64,
    ) {
        let passage = through([a, b, c], [p, q]);
        let passes = passage.rolled.in_mm() >= 0.0;
        let straight = passage.straight.iter().all(|slack| slack.in_mm() >= 0.0);
        prop_assert!(passes || !straight);
        if passes {
            prop_assert!(passage.thinnest.in_mm() >= 0.0);
            prop_assert!(passage.diagonal.in_mm() >= -1e-9);
            prop_assert!(passage.area.in_mm2() >= -1e-6);
        }
    }
}
