//! Printed examples, and cases with their arithmetic beside them.

use spile_axle::statics::{Impossible, Supports, centre, side_difference, supports};
use spile_quantity::{Length, Mass};

use crate::{ask, likely};

fn inches(number: f64) -> Length {
    Length::mm(number * 25.4)
}

/// {source, mass, behind the front axle, wheelbase, printed rear, printed front, tolerance}
struct Printed {
    source: &'static str,
    mass: f64,
    behind_front_in: f64,
    wheelbase_in: f64,
    rear: f64,
    front: f64,
    tolerance: f64,
}

#[test]
fn printed_examples_of_axle_loads() {
    let cases = [
        // It prints 38.86 for the front axle, a slip: 100 − 62.14 is 37.86.
        Printed {
            source: "a truck maker's manual for body builders, weight distribution, figure B-2",
            mass: 100.0,
            behind_front_in: 133.0,
            wheelbase_in: 214.0,
            rear: 62.14,
            front: 37.86,
            tolerance: 0.011,
        },
        Printed {
            source: "the same, water-level payload, figure B-5",
            mass: 14_500.0,
            behind_front_in: 156.0,
            wheelbase_in: 214.0,
            rear: 10_570.0,
            front: 3_929.9,
            tolerance: 0.5,
        },
        // 850 lb on the ball, said to weigh 1.5 times as much on the rear axle: a coupling half a
        // wheelbase behind it.
        Printed {
            source: "a US car maker's owner's manual, trailer tongue weight",
            mass: 850.0,
            behind_front_in: 180.0,
            wheelbase_in: 120.0,
            rear: 1_275.0,
            front: -425.0,
            tolerance: 0.5,
        },
    ];
    for case in cases {
        let forward = inches(case.wheelbase_in - case.behind_front_in);
        let on = supports(Mass::kg(case.mass), forward, inches(case.wheelbase_in)).unwrap();
        let (rear, front) = (on.rear.in_kg(), on.front.in_kg());
        assert!((rear - case.rear).abs() < case.tolerance, "{}: rear {rear}", case.source);
        assert!((front - case.front).abs() < case.tolerance, "{}: front {front}", case.source);
    }
}

#[test]
fn a_tank_behind_the_axle_lifts_the_front() {
    // By hand: 100 kg 0.8 m behind the rear axle of 4 m: front 100·(−0.8)/4 = −20, rear 120.
    let on = supports(Mass::kg(100.0), Length::m(-0.8), Length::m(4.0)).unwrap();
    assert!((on.front.in_kg() + 20.0).abs() < 1e-9 && (on.rear.in_kg() - 120.0).abs() < 1e-9);
    // And back: −20 and 120 are 100 kg at −20·4/100 = −0.8 m.
    let (mass, forward) = centre(on, Length::m(4.0)).unwrap();
    assert!((mass.in_kg() - 100.0).abs() < 1e-9 && (forward.in_m() + 0.8).abs() < 1e-9);
}

#[test]
fn left_and_right_by_hand() {
    // 60 kg 0.5 m left of the middle, track 1.5 m: right 60·(0.75 − 0.5)/1.5 = 10, left 50: 40 kg.
    let off = side_difference(Mass::kg(60.0), Length::m(0.5), Length::m(1.5)).unwrap();
    assert!((off.in_kg() - 40.0).abs() < 1e-9);
}

#[test]
fn what_is_no_vehicle_is_an_error() {
    let long = supports(Mass::kg(1.0), Length::m(0.0), Length::m(26.0));
    assert!(matches!(long, Err(Impossible::Length { length_m, .. }) if length_m == 26.0));
    let none = supports(Mass::kg(1.0), Length::m(f64::NAN), Length::m(3.0));
    assert!(none.is_err());
    let air = centre(Supports { front: Mass::kg(0.0), rear: Mass::kg(0.0) }, Length::m(3.0));
    assert_eq!(air, Err(Impossible::NoMass { mass_kg: 0.0 }));
    assert!(side_difference(Mass::kg(1.0), Length::m(0.0), Length::m(0.0)).is_err());
}

#[test]
fn a_nose_and_its_car_by_hand() {
    // A trailer of 60 kg nose and 940 kg axle; 100 kg more, 0.6 m ahead of its axle, coupling 3 m
    // ahead: nose 60 + 100·0.6/3 = 80, axle 940 + 80 = 1020, whole 1100, 7.27 %. The car: coupling
    // 1.2 m behind an axle of 2.8 m: rear 1000 + 80·4/2.8 = 1114.29, front 1100 − 80·1.2/2.8 =
    // 1065.71.
    let answer = ask(r#"
        [vehicle]
        kind = "trailer"
        wheelbase = "3 m"
        rear_axle = "1.4 m"
        [vehicle.towing]
        wheelbase = "2.8 m"
        overhang = "1.2 m"
        front = "1100 kg"
        rear = "1000 kg"
        limits = { front = "1200 kg", rear = "1200 kg", total = "2300 kg", nose = "90 kg" }
        [states.at]
        water = { from_rear = "2 m" }
        [states.load.empty]
        water = "0 L"
        [states.load.full]
        water = "100 L"
        [weighings.one]
        state = "empty"
        front = "60 kg"
        rear = "940 kg"
    "#);
    for (id, expected) in [
        ("nose", 80.0),
        ("nose-share", 60.0 / 1000.0 * 100.0),
        ("car.rear", 1114.2857),
        ("car.front", 1100.0 - 60.0 * 1.2 / 2.8),
        ("car.total", 2180.0),
    ] {
        let got = likely(&answer, id);
        assert!((got - expected).abs() < 1e-3, "{id}: {got}, by hand {expected}");
    }
}
