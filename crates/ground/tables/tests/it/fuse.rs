//! Fuses: envelopes that can be, and figures of data sheets and standards.

use spile_quantity::{Current, Time, Voltage};
use spile_tables::Class;
use spile_tables::fuse::{
    Family, ambient_shares, breaking, breaking_by_battery, breakings, cold_resistance, continuous,
    distances, envelope, envelopes, protection, rated_drop, ratings, ratings_of,
};

use crate::near;

fn a(amps: f64) -> Current {
    Current::a(amps)
}

#[test]
fn no_fuse_opens_sooner_under_less_load() {
    for entry in envelopes() {
        let e = &entry.value;
        let name = format!("{:?} from {:?}", e.family, e.from);
        assert!(e.from <= e.to && e.points.len() >= 2, "{name}");
        for p in &e.points {
            assert!(p.multiple >= 1.0 && (p.at_least.is_some() || p.at_most.is_some()), "{name}");
            if let (Some(least), Some(most)) = (p.at_least, p.at_most) {
                assert!(least < most, "{name} at {}", p.multiple);
            }
        }
        for pair in e.points.windows(2) {
            assert!(pair[0].multiple < pair[1].multiple, "{name}");
        }
        let least: Vec<_> = e.points.iter().filter_map(|p| p.at_least).collect();
        let most: Vec<_> = e.points.iter().filter_map(|p| p.at_most).collect();
        assert!(least.windows(2).all(|p| p[0] > p[1]), "{name}");
        assert!(most.windows(2).all(|p| p[0] > p[1]), "{name}");
    }
}

#[test]
fn printed_envelopes() {
    // Data sheets declared to ISO 8820-3: 40 A blade and type E; UL 248-14 glass.
    let cases = [
        (Family::Blade, 40.0, 1.35, Some(0.75), Some(600.0)),
        (Family::Blade, 40.0, 2.0, Some(0.15), Some(5.0)),
        (Family::Blade, 40.0, 6.0, None, Some(0.15)),
        (Family::BladeHigh, 60.0, 1.35, Some(60.0), Some(1800.0)),
        (Family::BladeHigh, 60.0, 3.5, Some(0.2), Some(7.0)),
        (Family::Glass, 10.0, 1.35, None, Some(3600.0)),
        (Family::Glass, 10.0, 2.0, None, Some(120.0)),
    ];
    for (family, amps, multiple, least, most) in cases {
        let entry = envelope(family, a(amps)).unwrap();
        let point = entry.value.points.iter().find(|p| p.multiple == multiple).unwrap();
        assert_eq!(point.at_least.map(Time::in_s), least, "{family:?} {multiple}");
        assert_eq!(point.at_most.map(Time::in_s), most, "{family:?} {multiple}");
    }
}

#[test]
fn a_rating_outside_every_envelope_has_none() {
    assert!(envelope(Family::Blade, a(32.0)).is_none());
    assert!(envelope(Family::Anl, a(100.0)).is_none());
}

#[test]
fn colours_of_iso_8820_3() {
    let colour = |family, amps| {
        let row = ratings_of(family).find(|e| e.value.current == a(amps)).unwrap();
        row.value.colour.clone().unwrap()
    };
    for (amps, name) in [
        (3.0, "violet"),
        (5.0, "tan"),
        (7.5, "brown"),
        (10.0, "red"),
        (15.0, "blue"),
        (20.0, "yellow"),
        (25.0, "clear"),
        (30.0, "green"),
    ] {
        assert_eq!(colour(Family::Blade, amps), name);
        assert_eq!(colour(Family::BladeMini, amps), name);
    }
    assert_eq!(colour(Family::BladeHigh, 50.0), "red");
    assert_eq!(colour(Family::BladeHigh, 80.0), "clear");
}

#[test]
fn ratings_rise_and_have_envelopes_where_the_family_has_one() {
    for family in Family::ALL {
        assert_eq!(Family::from_key(family.key()), Some(family));
        let amps: Vec<_> = ratings_of(family).map(|e| e.value.current).collect();
        assert!(amps.windows(2).all(|p| p[0] < p[1]), "{family:?}");
    }
    for entry in ratings().iter().filter(|e| e.value.current <= a(80.0)) {
        let r = &entry.value;
        if envelopes().iter().any(|e| e.value.family == r.family) {
            assert!(envelope(r.family, r.current).is_some(), "{:?} {:?}", r.family, r.current);
        }
    }
}

#[test]
fn a_hot_fuse_resists_more_than_a_cold_one() {
    // Data sheets: 10 A blade 7.70 mΩ cold, 109 mV at 10 A, a factor of about 1.4.
    let cold = cold_resistance(Family::Blade, a(10.0)).unwrap().value;
    let drop = rated_drop(Family::Blade, a(10.0)).unwrap().value;
    near("cold", cold.in_mohm(), 7.70, 1e-9);
    near("hot over cold", drop.in_v() / 10.0 / cold.in_ohm(), 1.4, 0.02);
    for entry in ratings_of(Family::Blade) {
        let amps = entry.value.current;
        if let (Some(cold), Some(drop)) =
            (cold_resistance(Family::Blade, amps), rated_drop(Family::Blade, amps))
        {
            let factor = drop.value / (cold.value * amps);
            assert!((1.3..=1.7).contains(&factor), "{amps:?}: {factor:.2}");
        }
    }
    let cold: Vec<_> = ratings_of(Family::Blade)
        .filter_map(|e| cold_resistance(Family::Blade, e.value.current))
        .map(|e| e.value)
        .collect();
    assert_eq!(cold.len(), 12);
    assert!(cold.windows(2).all(|p| p[0] > p[1]), "resistance falls with every rating");
}

#[test]
fn breaking_capacity_falls_with_voltage() {
    // ISO 8820-3: 1000 A at 32 V for every blade.
    for family in [Family::Blade, Family::BladeMini, Family::BladeHigh] {
        let entry = breaking(family, Voltage::v(32.0)).unwrap();
        assert_eq!(entry.value.current, a(1000.0));
        assert!(entry.may_stop());
    }
    assert!(breaking(Family::Blade, Voltage::v(33.0)).is_none());
    assert_eq!(breaking(Family::Terminal, Voltage::v(14.6)).unwrap().value.current, a(5000.0));
    for pair in breakings().windows(2).filter(|p| p[0].value.family == p[1].value.family) {
        assert!(pair[0].value.voltage < pair[1].value.voltage);
        assert!(pair[0].value.current > pair[1].value.current);
    }
    assert!(!breaking(Family::Anl, Voltage::v(12.0)).unwrap().may_stop(), "only from memory");
}

#[test]
fn practice_stays_practice() {
    // Fuseology page: 75 % at 25 °C. Data sheet of a 40 A type E: 34 A at 65 °C, 22 A at 125 °C.
    let c = continuous();
    near("25 °C", c.at_25c.value, 0.75, 1e-12);
    near("3 h", c.over_3h.value, 0.80, 1e-12);
    assert!(!c.at_25c.may_stop() && !c.over_3h.may_stop());
    for (t, amps) in [(65.0, 34.0), (85.0, 30.0), (110.0, 25.0), (125.0, 22.0)] {
        let row = ambient_shares().iter().find(|e| e.value.0.in_celsius() == t).unwrap();
        near("type E", row.value.1 * 40.0, amps, 1e-9);
    }
    assert!(ambient_shares().windows(2).all(|p| p[0].value.1 > p[1].value.1));
    for entry in distances() {
        assert_eq!(entry.class, Class::Practice, "{}", entry.value.key);
    }
    let p = protection();
    assert!(p.tripping_blade.value < p.tripping_over_cable.value);
    assert!(!p.fuse_over_cable_boat.may_stop());
}

#[test]
fn distances_are_the_printed_inches_and_millimetres() {
    // ABYC E-11 7, 40 and 72 in; ISO 10133 200 mm (both from memory).
    let mm =
        |key: &str| distances().iter().find(|e| e.value.key == key).unwrap().value.length.in_mm();
    near("iso", mm("iso"), 200.0, 1e-12);
    for (key, inches) in [("boat", 7.0), ("boat-sheathed", 40.0), ("boat-sheathed-battery", 72.0)] {
        near(key, mm(key), inches * 25.4, 1e-12);
    }
}

#[test]
fn larger_banks_ask_for_more() {
    let rows = breaking_by_battery();
    assert!(rows.last().unwrap().value.cranking_to.is_none());
    for pair in rows.windows(2) {
        assert!(pair[0].value.main < pair[1].value.main);
    }
    assert!(rows.iter().all(|e| e.value.main / 2.0 == e.value.branch));
}
