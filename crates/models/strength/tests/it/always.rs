//! What holds for every group of fasteners.

use proptest::prelude::*;
use spile_quantity::{Force, Length};
use spile_strength::group::{Group, Push};

fn regular(columns: u32, rows: u32, face: [f64; 2]) -> Group {
    let spread = |at: u32, of: u32, side: f64| {
        Length::m(if of == 1 {
            side / 2.0
        } else {
            0.05 + (side - 0.1) * f64::from(at) / f64::from(of - 1)
        })
    };
    let places: Vec<_> = (0..columns)
        .flat_map(|x| {
            (0..rows).map(move |y| [spread(x, columns, face[0]), spread(y, rows, face[1])])
        })
        .collect();
    Group::new(&places, face.map(Length::m)).unwrap()
}

fn push(right: f64, above: f64, away: f64) -> Push {
    Push { right: Force::n(right), above: Force::n(above), away: Force::n(away) }
}

fn worst(group: &Group, push: Push, face: [f64; 2]) -> [f64; 2] {
    let shares = group.shares(push, face.map(|side| Length::m(side / 2.0)), Length::m(0.2));
    let most =
        |of: fn(&spile_strength::group::Share) -> f64| shares.iter().map(of).fold(0.0, f64::max);
    [most(|share| share.tension.in_n()), most(|share| share.shear.in_n())]
}

fn side() -> impl Strategy<Value = f64> {
    0.2..1.5
}

fn force() -> impl Strategy<Value = f64> {
    -900.0..900.0
}

proptest! {
    #[test]
    fn left_and_right_are_alike(x in side(), y in side(), f in force(), g in force(), n in 1_u32..5, m in 1_u32..5) {
        let group = regular(n, m, [x, y]);
        let [one, other] = [push(f, g, 0.0), push(-f, g, 0.0)].map(|push| worst(&group, push, [x, y]));
        for axis in 0..2 {
            prop_assert!((one[axis] - other[axis]).abs() <= 1e-9 * (1.0 + one[axis]));
        }
    }

    #[test]
    fn one_more_row_never_makes_the_worst_worse(x in side(), y in side(), f in force(), g in force(), away in 0.0..900.0_f64, n in 2_u32..5, m in 2_u32..5) {
        let fewer = worst(&regular(n, m, [x, y]), push(f, g, away), [x, y]);
        let more = worst(&regular(n, m + 1, [x, y]), push(f, g, away), [x, y]);
        for axis in 0..2 {
            prop_assert!(more[axis] <= fewer[axis] * (1.0 + 1e-9) + 1e-9);
        }
    }

    #[test]
    fn pushes_add_up(x in side(), y in side(), f in 0.0..900.0_f64, g in 0.0..900.0_f64, away in 0.0..900.0_f64, n in 1_u32..5) {
        let group = regular(n, 2, [x, y]);
        let through = [Length::m(x * 0.3), Length::m(y * 0.8)];
        let tension = |push| -> Vec<f64> {
            let shares = group.shares(push, through, Length::m(0.3));
            shares.iter().map(|share| share.tension.in_n()).collect()
        };
        let whole = tension(push(f, g, away));
        let parts = [tension(push(f, 0.0, 0.0)), tension(push(0.0, g, 0.0)), tension(push(0.0, 0.0, away))];
        for (at, whole) in whole.iter().enumerate() {
            let sum: f64 = parts.iter().map(|part| part[at]).sum();
            prop_assert!((whole - sum).abs() <= 1e-9 * (1.0 + sum));
        }
    }

    #[test]
    fn the_shears_carry_the_push(x in side(), y in side(), f in force(), away in 0.0..900.0_f64, n in 1_u32..5) {
        // through the middle of the fasteners there is no turning: each has an equal part
        let group = regular(n, 2, [x, y]);
        let shares = group.shares(push(f, 0.0, away), [x, y].map(|side| Length::m(side / 2.0)), Length::m(0.0));
        for share in shares {
            prop_assert!((share.shear.in_n() * f64::from(2 * n) - f.abs()).abs() < 1e-6);
            prop_assert!((share.tension.in_n() * f64::from(2 * n) - away).abs() < 1e-6);
        }
    }
}
