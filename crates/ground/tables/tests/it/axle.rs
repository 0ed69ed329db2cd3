//! Tyre load indices against three printed tables.

use spile_tables::Status;
use spile_tables::axle::{Sense, balance, tyre_load, tyre_loads};

#[test]
fn loads_as_three_tables_print_them() {
    // A Polish, a US and a UK table of load indices (50 to 119), a tyre maker's chart (75 to 150),
    // tractor manuals (142, 165, 168).
    let printed = [
        (62, 265.0),
        (75, 387.0),
        (88, 560.0),
        (91, 615.0),
        (100, 800.0),
        (107, 975.0),
        (115, 1215.0),
        (119, 1360.0),
        (121, 1450.0),
        (133, 2060.0),
        (142, 2650.0),
        (143, 2725.0),
        (150, 3350.0),
        (165, 5150.0),
        (168, 5600.0),
    ];
    for (index, kg) in printed {
        let entry = tyre_load(index).unwrap();
        assert_eq!((entry.value.load.in_kg(), entry.status), (kg, Status::Verified), "{index}");
        assert!(entry.may_stop());
    }
}

#[test]
fn pounds_as_a_tyre_shop_prints_them() {
    // A US tyre shop's chart in pounds; to the pound printed.
    for (index, pounds) in [(71, 761.0), (85, 1135.0), (99, 1709.0), (110, 2337.0)] {
        let kg = tyre_load(index).unwrap().value.load.in_kg();
        assert!((kg / 0.453_592_37 - pounds).abs() <= 1.0, "{index}: {kg} kg");
    }
}

#[test]
fn loads_rise_by_about_three_per_cent_an_index() {
    // The series is geometric: a factor of 10 every 80 indices, 10^(1/80) = 1.0292 a step.
    for pair in tyre_loads().windows(2) {
        let [a, b] = [&pair[0].value, &pair[1].value];
        let steps = f64::from(b.index - a.index);
        let step = (b.load.in_kg() / a.load.in_kg()).powf(1.0 / steps);
        assert!(b.index > a.index && (1.017..1.040).contains(&step), "{}: {step}", a.index);
    }
    let all: Vec<_> = tyre_loads().iter().map(|e| e.value).collect();
    let of = |index| all.iter().find(|row| row.index == index).unwrap().load.in_kg();
    assert!((of(130) / of(50) / 10.0 - 1.0).abs() < 0.001);
}

#[test]
fn what_two_tables_print_differently_is_not_firm() {
    let entry = tyre_load(135).unwrap();
    assert!(!entry.may_stop() && entry.value.load.in_kg() == 2180.0);
    assert!(tyre_load(49).is_none() && tyre_load(160).is_none());
}

#[test]
fn balance_is_practice_and_never_a_limit() {
    let (side, nose) = (balance("side").unwrap(), balance("nose").unwrap());
    assert!(!side.may_stop() && !nose.may_stop());
    assert_eq!((side.value.sense, nose.value.sense), (Sense::AtMost, Sense::AtLeast));
    assert!(balance("nobody").is_none());
}
