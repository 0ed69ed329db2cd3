//! Heat networks whose balance can be written down, and balances that always close.

use proptest::prelude::*;
use spile_heat::HeatError;
use spile_heat::network::Network;
use spile_heat::place::{Bay, Given, Housing, Surroundings};
use spile_quantity::Conductance;

use crate::{celsius, kelvin, near, w_per_k, watts};

#[test]
fn a_recess_beside_a_bay_settles_as_reckoned_by_hand() {
    // Cabin 30 °C. The bay loses 4 W/K to it and 1 W/K to the recess, which loses 3 W/K. 20 W are
    // drawn from the bay and 80 W given to the recess, in kelvin above the cabin:
    //   4·b + (b − r) = −20 and 3·r + (r − b) = 80
    //   b = (r − 20)/5, 4·r − (r − 20)/5 = 80, 19·r = 380, r = 20, b = 0.
    let bay = |g| Bay { to_cabin: w_per_k(g), to_outdoors: w_per_k(0.0), other_heat: watts(0.0) };
    let van = Surroundings {
        outdoors: celsius(22.0),
        cabin_excess: kelvin(8.0),
        housing: Housing::Recess { bay: bay(4.0), recess: bay(3.0), between: w_per_k(1.0) },
    };
    let air = van.air(Given { cabinet: watts(-20.0), condenser: watts(80.0) }).unwrap();
    near("by hand, bay", air.cabinet.in_celsius(), 30.0, 1e-9);
    near("by hand, recess", air.condenser.in_celsius(), 50.0, 1e-9);
}

#[test]
fn a_wall_of_layers_has_the_temperatures_of_resistances_in_series() {
    // 1/(1/8 + 0.012/0.13 + 0.040/0.035 + 1/23): 12 mm of plywood and 40 mm of foam between air of
    // 20 and −10 °C, a square metre. R = 0.125 + 0.09231 + 1.14286 + 0.04348 = 1.40364 K/W, so
    // 21.373 W; inner surface 20 − 2.672 = 17.328, between 15.355, outer −9.071 °C.
    let mut wall = Network::new();
    let inside = wall.fixed("cabin", celsius(20.0));
    let outside = wall.fixed("outdoors", celsius(-10.0));
    let [a, b, c] = ["inner face", "joint", "outer face"].map(|name| wall.free(name));
    for (from, to, g) in
        [(inside, a, 8.0), (a, b, 0.13 / 0.012), (b, c, 0.035 / 0.040), (c, outside, 23.0)]
    {
        wall.tie(from, to, w_per_k(g)).unwrap();
    }
    let settled = wall.solve().unwrap();
    for (node, expected) in [(a, 17.328), (b, 15.355), (c, -9.071)] {
        near("by hand", settled.temperature(node).unwrap().in_celsius(), expected, 0.0006);
    }
    near("by hand", settled.arriving(outside).unwrap().in_w(), 21.373, 0.0006);
}

#[test]
fn a_place_tied_to_nothing_is_named() {
    let mut heat = Network::new();
    let cabin = heat.fixed("cabin", celsius(20.0));
    let [bay, lost, alone] = ["bay", "locker", "box in it"].map(|name| heat.free(name));
    heat.tie(cabin, bay, w_per_k(1.0)).unwrap();
    heat.tie(lost, alone, w_per_k(1.0)).unwrap();
    heat.tie(lost, bay, w_per_k(0.0)).unwrap();
    let error = heat.solve().unwrap_err();
    assert_eq!(error, HeatError::Untied { nodes: vec!["locker".into(), "box in it".into()] });
    assert_eq!(
        error.to_string(),
        "no heat path leads from locker, box in it to a known temperature"
    );
}

#[test]
fn bad_ties_are_refused() {
    let mut heat = Network::new();
    let cabin = heat.fixed("cabin", celsius(20.0));
    assert!(heat.tie(cabin, cabin, w_per_k(-1.0)).is_err());
    assert!(heat.tie(cabin, cabin, Conductance::w_per_k(f64::INFINITY)).is_err());
    assert!(heat.heat(cabin, watts(f64::NAN)).is_err());
    let mut other = Network::new();
    other.free("a");
    let stranger = other.free("b");
    assert_eq!(heat.tie(cabin, stranger, w_per_k(1.0)), Err(HeatError::Stranger));
    assert_eq!(heat.heat(stranger, watts(1.0)), Err(HeatError::Stranger));
    heat.fixed("sun", celsius(f64::NAN));
    assert!(heat.solve().is_err());
}

proptest! {
    #[test]
    fn what_is_put_in_arrives_at_the_known_temperatures(
        fixed in prop::collection::vec(-20.0..60.0f64, 1..4),
        heats in prop::collection::vec(-100.0..200.0f64, 0..8),
        ties in prop::collection::vec((0..11usize, 0..11usize, 0.0..20.0f64), 0..30),
    ) {
        let mut heat = Network::new();
        let mut nodes = Vec::new();
        for t in &fixed {
            nodes.push(heat.fixed("fixed", celsius(*t)));
        }
        for q in &heats {
            let node = heat.free("free");
            heat.tie(node, nodes[0], w_per_k(0.5)).unwrap();
            heat.heat(node, watts(*q)).unwrap();
            nodes.push(node);
        }
        for (a, b, g) in ties {
            heat.tie(nodes[a % nodes.len()], nodes[b % nodes.len()], w_per_k(g)).unwrap();
        }
        let settled = heat.solve().unwrap();
        let arriving = |node| settled.arriving(node).unwrap().in_w();
        let at_fixed: f64 = nodes[..fixed.len()].iter().map(|node| arriving(*node)).sum();
        prop_assert!((at_fixed - heats.iter().sum::<f64>()).abs() < 1e-6);
        for (node, q) in nodes[fixed.len()..].iter().zip(&heats) {
            prop_assert!((arriving(*node) + q).abs() < 1e-6);
        }
    }
}
