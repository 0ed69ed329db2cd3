//! Groups of fasteners against linear systems solved by SciPy, and against a handbook.

use serde::Deserialize;
use spile_quantity::{Force, Length};
use spile_strength::group::{Group, Push};

use crate::near;

#[derive(Deserialize)]
struct File {
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    places: Vec<[f64; 2]>,
    face: [f64; 2],
    push: [f64; 3],
    through: [f64; 2],
    lever: f64,
    shear: Vec<f64>,
    tension: Vec<f64>,
}

#[test]
fn groups_share_as_springs_do() {
    let file: File = serde_json::from_str(include_str!("../reference/groups.json")).unwrap();
    assert_eq!(file.cases.len(), 24);
    for case in &file.cases {
        let places: Vec<_> = case.places.iter().map(|place| place.map(Length::m)).collect();
        let group = Group::new(&places, case.face.map(Length::m)).unwrap();
        let [right, above, away] = case.push.map(Force::n);
        let push = Push { right, above, away };
        let shares = group.shares(push, case.through.map(Length::m), Length::m(case.lever));
        for (share, (shear, tension)) in shares.iter().zip(case.shear.iter().zip(&case.tension)) {
            near("SciPy, shear", share.shear.in_n(), *shear, 1e-9);
            near("SciPy, tension", share.tension.in_n(), *tension, 1e-9);
        }
    }
}

#[test]
fn the_handbook_s_channel_is_reproduced() {
    // Shigley, Mechanical Engineering Design, 8th ed., example 8-7 (from memory): four bolts at
    // ±75 and ±60 mm, 16 kN at 425 mm from their middle: 21.0 kN on the near ones, 14.8 on the far
    let at = |x: f64, y: f64| [Length::mm(x), Length::mm(y)];
    let places = [at(75.0, 60.0), at(75.0, -60.0), at(-75.0, -60.0), at(-75.0, 60.0)];
    let group = Group::new(&places, at(200.0, 200.0)).unwrap();
    let down = Push { right: Force::n(0.0), above: Force::n(-16_000.0), away: Force::n(0.0) };
    let shares = group.shares(down, at(425.0, 0.0), Length::mm(0.0));
    near("Shigley 8-7, near bolts", shares[0].shear.in_n(), 21_000.0, 0.004);
    near("Shigley 8-7, far bolts", shares[2].shear.in_n(), 14_800.0, 0.004);
}

#[test]
fn a_row_on_the_tipped_edge_holds_nothing() {
    let at = |x: f64, y: f64| [Length::mm(x), Length::mm(y)];
    let group = Group::new(&[at(400.0, 50.0), at(400.0, 200.0)], at(400.0, 300.0)).unwrap();
    let push = Push { right: Force::n(10.0), above: Force::n(0.0), away: Force::n(0.0) };
    let shares = group.shares(push, at(200.0, 150.0), Length::mm(100.0));
    assert!(shares.iter().all(|share| share.tension.in_n().is_infinite()));
    assert!(Group::new(&[], at(400.0, 300.0)).is_err());
}
