//! Stand-ins: each can be read, is bounded, and tells what it is and how to get the real one.

use std::collections::BTreeSet;

use spile_quantity::{
    Angle, Area, Charge, Conductance, Conductivity, Current, Energy, Flow, Force, Length, Mass,
    Power, Pressure, Readable, Resistance, Share, Temperature, TemperatureDifference, Time,
    Voltage, Volume,
};
use spile_tables::battery::Chemistry;
use spile_tables::{typical, typical_keys, typical_number};

/// Low, likely and high in SI units, what and how, if the stand-in is a `Q`.
fn of<Q: Readable>(key: &str) -> Option<([f64; 3], &'static str, &'static str)> {
    let t = typical::<Q>(key)?;
    Some(([t.ranged.low.si(), t.ranged.likely.si(), t.ranged.high.si()], t.what, t.how))
}

fn number(key: &str) -> Option<([f64; 3], &'static str, &'static str)> {
    let (t, unit) = typical_number(key)?;
    assert!(["1", "W/(m²·K)"].contains(&unit), "{key}: {unit}");
    Some(([t.ranged.low, t.ranged.likely, t.ranged.high], t.what, t.how))
}

#[test]
fn every_stand_in_is_one_kind_of_quantity_with_bounds() {
    let kinds = [
        of::<Angle>,
        of::<Area>,
        of::<Charge>,
        of::<Conductance>,
        of::<Conductivity>,
        of::<Current>,
        of::<Energy>,
        of::<Flow>,
        of::<Force>,
        of::<Length>,
        of::<Mass>,
        of::<Power>,
        of::<Pressure>,
        of::<Resistance>,
        of::<Share>,
        of::<Temperature>,
        of::<TemperatureDifference>,
        of::<Time>,
        of::<Voltage>,
        of::<Volume>,
        number,
    ];
    let mut told = BTreeSet::new();
    for (key, kind) in typical_keys() {
        let read: Vec<_> = kinds.iter().filter_map(|of| of(key)).collect();
        assert_eq!(read.len(), 1, "{key} cannot be read as a {kind}");
        let ([low, likely, high], what, how) = read[0];
        assert!(low <= likely && likely <= high, "{key}");
        assert!(what.len() > 4 && !what.ends_with('.'), "{key}: {what}");
        assert!(how.len() > 8 && how.ends_with('.'), "{key}: {how}");
        assert!(told.insert(what), "{what:?} is told twice");
    }
}

#[test]
fn an_unknown_key_or_another_kind_is_none() {
    assert!(typical::<Length>("no-such-thing").is_none());
    assert!(typical::<Length>("stud-body").is_none());
    assert!(typical_number("stud-body").is_none());
    assert!(typical::<Length>("openings").is_none());
}

#[test]
fn worse_joints_resist_more() {
    let likely = |key| typical::<Resistance>(key).unwrap().ranged.likely;
    for pair in ["crimp", "stud-body-clean", "plug", "stud-body", "stud-body-painted"].windows(2) {
        assert!(likely(pair[0]) < likely(pair[1]), "{pair:?}");
    }
}

#[test]
fn a_shorted_battery_gives_the_current_it_is_known_for() {
    // Usual short-circuit currents of 12 V, 100 Ah [A], from memory: AGM 2000 to 3000, flooded
    // 1200 to 2500, iron phosphate 1600 to 6000.
    let cases = [
        (Chemistry::Agm, 2000.0, 3000.0),
        (Chemistry::Flooded, 1200.0, 2500.0),
        (Chemistry::Lfp, 1600.0, 6000.0),
    ];
    for (chemistry, least_a, greatest_a) in cases {
        let key = chemistry.key();
        let r = typical::<Resistance>(&format!("battery-resistance-{key}")).unwrap().ranged;
        let v = typical::<Voltage>(&format!("battery-full-{key}")).unwrap().ranged.likely;
        let shorted_a = v.in_v() / r.likely.in_ohm();
        assert!((least_a..=greatest_a).contains(&shorted_a), "{key}: {shorted_a:.0} A");
    }
}

#[test]
fn every_battery_has_its_stand_ins_in_order() {
    for chemistry in Chemistry::ALL {
        let volts = |state: &str| {
            typical::<Voltage>(&format!("battery-{state}-{}", chemistry.key())).unwrap().ranged
        };
        let (low, full) = (volts("low"), volts("full"));
        assert!(low.high < full.low, "{chemistry:?}");
        let curve = spile_tables::battery::resting_voltage(chemistry);
        if let Some(last) = curve.and_then(|c| c.value.points.last()) {
            assert!((last.1 - full.likely).abs() < Voltage::v(0.11), "{chemistry:?}");
        }
    }
}

#[test]
fn the_cabin_is_no_cooler_than_the_weather() {
    let c = |key: String| typical::<Temperature>(&key).unwrap().ranged;
    for day in ["hot-day", "mild-day", "cold-night"] {
        let (outside, cabin) = (c(format!("outside-{day}")), c(format!("cabin-{day}")));
        assert!(outside.likely < cabin.likely && outside.low <= cabin.low, "{day}");
    }
}
