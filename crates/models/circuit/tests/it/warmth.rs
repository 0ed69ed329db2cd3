//! Conductors that warm, and what never turns the wrong way.

use proptest::prelude::*;
use spile_circuit::ampacity::allowed;
use spile_circuit::conductor::{copper_warming, operating_temperature};
use spile_circuit::fuse::opening;
use spile_circuit::network::{Branch, Draw, Network, solve};
use spile_circuit::warm::{Conductor, TooWarm, solve_warm};
use spile_quantity::{
    Area, CableSize, Current, Power, Resistance, Temperature, TemperatureDifference, Voltage,
};
use spile_tables::fuse::envelopes;

fn c(celsius: f64) -> Temperature {
    Temperature::celsius(celsius)
}

/// 12 V, one warming feed of 40 mΩ that may carry 60 A, one load.
fn one_feed(draw: Draw, cut_out: Option<Voltage>) -> (Network, Conductor, Branch) {
    let mut net = Network::new("-");
    let [post, plug] = ["+", "plug"].map(|name| net.node(name));
    let at_20 = Resistance::mohm(40.0);
    net.battery("bank", post, net.reference(), Voltage::v(12.0), Resistance::ohm(0.0));
    let branch = net.resistor("feed", post, plug, at_20);
    let load = net.load("load", plug, net.reference(), draw, cut_out);
    let [ambient, rated] = [30.0, 105.0].map(c);
    (net, Conductor { branch, at_20, ambient, rated, allowed: Current::a(60.0) }, load)
}

#[test]
fn warm_copper_and_its_current_agree() {
    // second opinion: the two relations alone, u·i = P and u = 12 − R(T)·i, run in turn by hand
    let (net, feed, load) = one_feed(Draw::Power(Power::w(450.0)), None);
    let warm = solve_warm(&net, &[feed]).unwrap();
    let (mut current_a, mut at_c) = (0.0_f64, 30.0_f64);
    for _ in 0..200 {
        let ohm = 0.040 * (1.0 + 0.00393 * (at_c - 20.0));
        current_a = 450.0 / (12.0 - ohm * current_a);
        let heat = (1.0 + 0.00393 * (at_c - 20.0)) / (1.0 + 0.00393 * 85.0);
        at_c = 30.0 + 75.0 * (current_a / 60.0).powi(2) * heat;
    }
    assert!((warm.temperatures[0].in_celsius() - at_c).abs() < 0.01);
    assert!((warm.solution.current(load).in_a() - current_a).abs() < 1e-3);
    let cold = solve(&net).unwrap();
    assert!(warm.solution.across(load) < cold.across(load));
}

#[test]
fn a_load_that_warm_copper_switches_off_stays_off() {
    // 45 A: 10.2 V over copper of 20 °C, less than 10.0 V once it is warm
    let (net, feed, load) = one_feed(Draw::Current(Current::a(45.0)), Some(Voltage::v(10.0)));
    assert!(!solve(&net).unwrap().is_off(load));
    let warm = solve_warm(&net, &[feed]).unwrap();
    assert!(warm.solution.is_off(load));
    assert_eq!(warm.temperatures, [c(30.0)]);
}

#[test]
fn a_conductor_loaded_beyond_all_reason_is_named() {
    let (net, feed, _) = one_feed(Draw::Current(Current::a(120.0)), None);
    let trouble = solve_warm(&net, &[feed]).unwrap_err();
    assert_eq!(
        trouble.to_string(),
        "feed: load over allowed current is 2 times; this holds from 0 to 1.5 times"
    );
    let (net, feed, _) = one_feed(Draw::Power(Power::w(5000.0)), None);
    assert!(matches!(solve_warm(&net, &[feed]), Err(TooWarm::Circuit(_))));
}

#[test]
fn figures_outside_their_range_are_refused() {
    let at = |ambient, rated, load, allowed| {
        operating_temperature(c(ambient), c(rated), Current::a(load), Current::a(allowed))
    };
    assert!(at(30.0, 105.0, 10.0, 60.0).is_ok());
    assert!(at(105.0, 105.0, 10.0, 60.0).is_err());
    assert!(at(30.0, 300.0, 10.0, 60.0).is_err());
    assert!(at(30.0, 105.0, f64::NAN, 60.0).is_err());
    assert!(at(30.0, 105.0, 10.0, 0.0).is_err());
    assert!(copper_warming(c(300.0)).is_err());
}

proptest! {
    #[test]
    fn more_heat_never_lets_a_cable_carry_more(
        mm2 in 0.83..107.0_f64, rating in 60.0..200.0_f64, ambient in -40.0..50.0_f64,
        more in 0.0..9.0_f64, bundled in 1..40_u32,
    ) {
        let size = CableSize::Metric(Area::mm2(mm2));
        let at = |ambient, bundled| allowed(size, c(rating), ambient, bundled).unwrap().current;
        let warmer = c(ambient).warmer(TemperatureDifference::k(more));
        prop_assert!(at(warmer, bundled) <= at(c(ambient), bundled));
        prop_assert!(at(c(ambient), bundled + 1) <= at(c(ambient), bundled));
    }

    #[test]
    fn more_copper_never_carries_less(
        mm2 in 0.83..100.0_f64, more in 1.0..1.07_f64, rating in 60.0..200.0_f64,
    ) {
        let at = |mm2| allowed(CableSize::Metric(Area::mm2(mm2)), c(rating), c(30.0), 1);
        prop_assert!(at(mm2 * more).unwrap().current >= at(mm2).unwrap().current);
    }

    #[test]
    fn more_load_never_cools(share in 0.0..1.4_f64, more in 0.0..0.1_f64, ambient in -20.0..90.0_f64) {
        let at = |share| {
            let (load, allowed) = (Current::a(60.0 * share), Current::a(60.0));
            operating_temperature(c(ambient), c(105.0), load, allowed).unwrap()
        };
        prop_assert!(at(share + more) >= at(share));
        prop_assert!(at(share) >= c(ambient - 1e-9));
    }

    #[test]
    fn more_current_never_opens_a_fuse_later(multiple in 0.5..20.0_f64, more in 1.0..2.0_f64) {
        for entry in envelopes() {
            let curve = &entry.value;
            let at = |multiple| opening(curve, curve.from, curve.from * multiple).unwrap();
            let (first, second) = (at(multiple), at(multiple * more));
            let slack = 1.0 + 1e-12;
            if let (Some(first), Some(second)) = (first.at_least, second.at_least) {
                prop_assert!(second <= first * slack);
            }
            if let (Some(first), Some(second)) = (first.at_most, second.at_most) {
                prop_assert!(second <= first * slack);
            }
            if let (Some(least), Some(most)) = (first.at_least, first.at_most) {
                prop_assert!(least <= most);
            }
        }
    }
}
