//! Charge is neither made nor lost, and more is never less.

use proptest::prelude::*;
use spile_energy::battery::{Battery, lasts};
use spile_energy::year::{Hour, Outcome, run};
use spile_quantity::{Charge, Current, Share, Temperature, Time};

use crate::near;

fn battery(capacity_ah: f64) -> Battery {
    Battery {
        capacity: Charge::ah(capacity_ah),
        hour_rate: Time::hours(20.0),
        peukert: 1.1,
        kept: Share::percent(94.0),
        taper: Time::hours(1.5),
        greatest_charge: Current::a(1000.0),
        coldest_charge: Temperature::celsius(-20.0),
        floor: Share::percent(20.0),
    }
}

fn hour(drawn_a: f64, sun_a: f64, engine_a: f64) -> Option<Hour> {
    Some(Hour {
        drawn: Current::a(drawn_a),
        offered: [Current::a(sun_a), Current::a(engine_a), Current::a(0.0)],
        at: Temperature::celsius(15.0),
    })
}

fn all(charges: &[Charge]) -> f64 {
    charges.iter().map(|charge| charge.in_ah()).sum()
}

/// By hand: 100 Ah without losses, 2 A all day, 8 A of sun from 8 to 16 h, from full. The sun
/// gives 6 A more than is drawn for 8 h, 48 Ah; the night takes 32 Ah. So each morning at 8 h,
/// after the first, 32 Ah are missing, and each afternoon none.
#[test]
fn a_year_of_coulombs_by_hand() {
    let plain = Battery {
        peukert: 1.0,
        kept: Share::percent(100.0),
        taper: Time::s(1.0),
        ..battery(100.0)
    };
    let hours: Vec<Option<Hour>> = (0..8760)
        .map(|at| hour(2.0, if (8..16).contains(&(at % 24)) { 8.0 } else { 0.0 }, 0.0))
        .collect();
    let year = run(&plain, &hours, 0).unwrap();
    near("hours off", year.off.in_hours(), 0.0, 0.0);
    for low in year.lowest {
        near("lowest by hand", low.unwrap().in_percent(), 68.0, 1e-9);
    }
    near("loads, 2 A for 8760 h", all(&year.served), 17_520.0, 1e-6);
    near("offered, 64 Ah a day", all(&year.offered.map(|each| each[0])), 23_360.0, 1e-6);
    // From full at midnight to eight hours of night and more: 16 Ah missing at the end.
    near("given", year.given[0].in_ah(), 17_520.0 - 16.0, 1e-6);
}

/// Published cases: a tutorial page (capacity taken at 1 A), an engineering article of 2010, and
/// the 20 h form (from memory, recomputed).
#[test]
fn peukerts_examples() {
    let cases = [
        ("250 Ah at 1 A, 20 A, 1.3", 250.0, 250.0, 1.3, 20.0, 5.088_631_644, 1e-8),
        ("100 Ah at 1 A, 5 A, 1.2", 100.0, 100.0, 1.2, 5.0, 14.5, 0.03),
        ("100 Ah at 20 h, 10 A, 1.2", 100.0, 20.0, 1.2, 10.0, 8.7, 0.02),
    ];
    for (source, ah, hours, exponent, amps, expected, tolerance) in cases {
        let t = lasts(Charge::ah(ah), Time::hours(hours), exponent, Current::a(amps)).unwrap();
        near(source, t.in_hours(), expected, tolerance);
    }
}

/// The year's own discharge against Peukert's time: 100 Ah at 20 h, 10 A from full to empty.
#[test]
fn a_discharge_hour_by_hour_lasts_as_peukert_says() {
    let lead = Battery { peukert: 1.2, floor: Share::percent(0.0), ..battery(100.0) };
    let year = run(&lead, &[hour(10.0, 0.0, 0.0); 24], 0).unwrap();
    near("encyclopaedia's 8.7 h", 24.0 - year.off.in_hours(), 8.7055, 0.001);
    near("and its 87 Ah", all(&year.served), 87.055, 0.01);
}

#[test]
fn the_cold_refuses_a_charge_and_only_that() {
    let lithium = Battery { coldest_charge: Temperature::celsius(0.0), ..battery(100.0) };
    let at = |c: f64, charge: f64, offered: f64| {
        lithium
            .step(
                Charge::ah(charge),
                Current::a(offered),
                Current::a(2.0),
                Temperature::celsius(c),
                Time::hours(1.0),
            )
            .unwrap()
    };
    let cold = at(-1.0, 50.0, 10.0);
    assert!(cold.too_cold && cold.charge == Charge::ah(50.0) && cold.off == 0.0);
    near("2 Ah to the loads all the same", cold.used.in_ah(), 2.0, 1e-12);
    let warm = at(1.0, 50.0, 10.0);
    near("8 A, 94 % kept", warm.charge.in_ah(), 57.52, 1e-9);
    assert!(!at(-1.0, 50.0, 0.0).too_cold && at(-1.0, 50.0, 0.0).charge < Charge::ah(50.0));
}

#[test]
fn home_fills_the_battery() {
    let mut hours = vec![hour(5.0, 0.0, 0.0); 48];
    hours[24..30].fill(None);
    let year = run(&battery(100.0), &hours, 0).unwrap();
    near("24 h of 5 A, twice", year.off.in_hours(), 24.0 - 16.0 + 18.0 - 16.0, 1e-9);
    let later = run(&battery(100.0), &hours, 30).unwrap();
    near("begun after home: 42 h in a row", later.off.in_hours(), 42.0 - 16.0, 1e-9);
}

#[test]
fn nonsense_is_told() {
    let told = run(&battery(100.0), &[hour(-1.0, 0.0, 0.0)], 0).unwrap_err().to_string();
    assert!(told.starts_with("current is -1 A"), "{told}");
    assert!(run(&battery(0.0), &[hour(1.0, 0.0, 0.0)], 0).is_err());
    assert!(run(&battery(1.0), &[hour(f64::NAN, 0.0, 0.0)], 0).is_err());
}

fn any_hours() -> impl Strategy<Value = Vec<Option<Hour>>> {
    let one = prop_oneof![
        8 => (0.0..15.0_f64, 0.0..12.0_f64, prop_oneof![Just(0.0), Just(20.0)])
            .prop_map(|(drawn, sun, engine)| hour(drawn, sun, engine)),
        1 => Just(None),
    ];
    prop::collection::vec(one, 1..400)
}

fn with_sun(hours: &[Option<Hour>], times: f64) -> Vec<Option<Hour>> {
    hours
        .iter()
        .map(|one| {
            one.map(|mut hour| {
                hour.offered[0] = hour.offered[0] * times;
                hour
            })
        })
        .collect()
}

fn year(battery: &Battery, hours: &[Option<Hour>]) -> Outcome {
    run(battery, hours, 0).unwrap()
}

proptest! {
    #[test]
    fn charge_is_balanced(hours in any_hours(), ah in 20.0..300.0_f64) {
        let year = year(&battery(ah), &hours);
        let came: f64 = all(&year.given);
        let went = all(&year.served) + year.lost.in_ah() + year.gained.in_ah();
        prop_assert!((came - went).abs() < 1e-6 * (1.0 + came), "{came} {went}");
        prop_assert!(year.lowest.iter().flatten().all(|low| (0.19..=1.0).contains(&low.in_of_one())));
    }

    #[test]
    fn more_panel_is_never_more_hours_off(hours in any_hours(), times in 1.0..3.0_f64) {
        let (less, more) = (
            year(&battery(80.0), &hours).off,
            year(&battery(80.0), &with_sun(&hours, times)).off,
        );
        prop_assert!(more.in_s() <= less.in_s() + 1e-6);
    }

    #[test]
    fn a_bigger_battery_is_never_more_hours_off(
        hours in any_hours(), ah in 20.0..200.0_f64, more in 0.0..200.0_f64
    ) {
        let (small, big) = (year(&battery(ah), &hours).off, year(&battery(ah + more), &hours).off);
        prop_assert!(big.in_s() <= small.in_s() + 1e-6);
    }
}
