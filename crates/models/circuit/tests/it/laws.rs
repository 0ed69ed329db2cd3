//! What holds in every circuit, whatever its figures, and what has no answer.

use proptest::prelude::*;
use spile_circuit::network::{
    Draw, Element, Network, Solution, Trouble, solve, solve_as_if_running,
};
use spile_quantity::{Current, Power, Resistance, Voltage};

use crate::references::{network, reference};

fn v(volt: f64) -> Voltage {
    Voltage::v(volt)
}

fn ohm(ohm: f64) -> Resistance {
    Resistance::ohm(ohm)
}

/// A battery of 12 V, a feed, and one load between the feed's end and the reference.
fn one_load(feed_ohm: f64, draw: Draw, cut_out: Option<Voltage>) -> Network {
    let mut net = Network::new("-");
    let (post, plug, minus) = (net.node("+"), net.node("plug"), net.reference());
    net.battery("bank", post, minus, v(12.0), ohm(0.0));
    net.resistor("feed", post, plug, ohm(feed_ohm));
    net.load("load", plug, minus, draw, cut_out);
    net
}

/// The sum of what batteries give less what the rest takes [W].
fn imbalance_w(net: &Network, found: &Solution) -> f64 {
    let signed = |branch| match net.element(branch) {
        Element::Battery { .. } => found.power(branch).in_w(),
        _ => -found.power(branch).in_w(),
    };
    net.branches().map(signed).sum()
}

#[test]
fn batteries_give_what_the_rest_takes() {
    let reference = reference();
    for case in &reference.networks {
        let (net, _) = network("bank -", &case.elements);
        let found = solve(&net).unwrap();
        assert!(imbalance_w(&net, &found).abs() < 1e-6, "{}", case.name);
    }
}

#[test]
fn order_of_branches_and_nodes_does_not_matter() {
    let reference = reference();
    for case in &reference.networks {
        let (net, _) = network("bank -", &case.elements);
        let mut turned = case.elements.clone();
        turned.reverse();
        let (other, _) = network("bank -", &turned);
        let (found, again) = (solve(&net).unwrap(), solve(&other).unwrap());
        for node in net.nodes() {
            let twin = other.find(net.node_name(node)).unwrap();
            let apart_v = (found.voltage(node) - again.voltage(twin)).in_v();
            assert!(apart_v.abs() < 1e-7, "{}: {}", case.name, net.node_name(node));
        }
    }
}

/// A ladder with loops: feeds and returns between the same taps, and loads on each.
fn ladder(feeds: &[f64], returns: &[f64], cross: f64, loads: &[Draw]) -> Network {
    let mut net = Network::new("-");
    let (mut feed, mut back) = (net.node("+"), net.reference());
    net.battery("bank", feed, back, v(12.6), ohm(0.01));
    let (first, start) = (feed, back);
    for (i, draw) in loads.iter().enumerate() {
        let (next, next_back) = (net.node(&format!("f{i}")), net.node(&format!("r{i}")));
        net.resistor("feed", feed, next, ohm(feeds[i]));
        net.resistor("return", next_back, back, ohm(returns[i]));
        net.resistor("body", next_back, start, ohm(0.02));
        net.load(&format!("load {i}"), next, next_back, *draw, None);
        (feed, back) = (next, next_back);
    }
    net.resistor("cross", first, feed, ohm(cross));
    net
}

fn resistances(count: usize) -> impl Strategy<Value = Vec<f64>> {
    proptest::collection::vec(0.001..0.05_f64, count)
}

proptest! {
    #[test]
    fn power_balances(
        feeds in resistances(5), returns in resistances(5), cross in 0.001..1.0_f64,
        watts in proptest::collection::vec(0.0..40.0_f64, 5),
    ) {
        let loads: Vec<Draw> = watts.iter().map(|w| Draw::Power(Power::w(*w))).collect();
        let net = ladder(&feeds, &returns, cross, &loads);
        let found = solve(&net).unwrap();
        prop_assert!(imbalance_w(&net, &found).abs() < 1e-6);
    }

    #[test]
    fn linear_circuits_superpose(
        feeds in resistances(4), returns in resistances(4), cross in 0.001..1.0_f64,
        one in proptest::collection::vec(-9.0..9.0_f64, 4),
        two in proptest::collection::vec(-9.0..9.0_f64, 4),
    ) {
        // voltages less those without load are linear in the currents
        let drops = |amperes: Vec<f64>| {
            let loads: Vec<Draw> = amperes.iter().map(|a| Draw::Current(Current::a(*a))).collect();
            let net = ladder(&feeds, &returns, cross, &loads);
            let found = solve(&net).unwrap();
            let last = (net.find("f3").unwrap(), net.find("r3").unwrap());
            found.between(last.0, last.1).in_v() - 12.6
        };
        let both = one.iter().zip(&two).map(|(a, b)| a + b).collect();
        prop_assert!((drops(one) + drops(two) - drops(both)).abs() < 1e-9);
    }

    #[test]
    fn with_one_load_a_thicker_conductor_never_increases_the_drop(
        feeds in resistances(4), returns in resistances(4), cross in 0.001..1.0_f64,
        watts in 1.0..200.0_f64, which in 0..4_usize, thicker in 0.3..1.0_f64,
    ) {
        let mut loads = vec![Draw::Current(Current::a(0.0)); 3];
        loads.push(Draw::Power(Power::w(watts)));
        let terminal = |feeds: &[f64]| {
            let net = ladder(feeds, &returns, cross, &loads);
            let found = solve(&net).unwrap();
            found.between(net.find("f3").unwrap(), net.find("r3").unwrap()).in_v()
        };
        let mut fat = feeds.clone();
        fat[which] *= thicker;
        prop_assert!(terminal(&fat) >= terminal(&feeds) - 1e-9);
    }

    #[test]
    fn what_is_said_of_any_circuit_holds(
        feeds in resistances(5), returns in resistances(5), cross in 0.001..1.0_f64,
        draws in proptest::collection::vec((0..3_u8, 0.1..900.0_f64, 0.0..12.0_f64), 5),
    ) {
        // loads from a lamp to far too much; about one case in eight is without any cut-out
        let loads: Vec<Draw> = draws.iter().map(|(kind, size, _)| match kind {
            0 => Draw::Power(Power::w(*size)),
            1 => Draw::Current(Current::a(size / 12.0)),
            _ => Draw::Resistance(ohm(144.0 / size)),
        }).collect();
        let mut net = ladder(&feeds, &returns, cross, &loads);
        let branches: Vec<_> = net.branches().filter(|b| net.branch_name(*b).starts_with("load")).collect();
        for (branch, (_, _, cut_out)) in branches.iter().zip(&draws) {
            if let Element::Load { draw, .. } = net.element(*branch) && *cut_out > 8.0 {
                net.set(*branch, Element::Load { draw, cut_out: Some(v(*cut_out)) });
            }
        }
        match solve(&net) {
            Ok(found) => {
                prop_assert!(imbalance_w(&net, &found).abs() < 1e-6);
                for branch in &branches {
                    if let Element::Load { cut_out: Some(cut_out), .. } = net.element(*branch) {
                        prop_assert!(found.is_off(*branch) || found.across(*branch) >= cut_out);
                    }
                }
            }
            // which loads switch off before a collapse depends on what they all draw
            Err(Trouble::Collapse { .. }) if draws.iter().any(|(_, _, cut_out)| *cut_out > 8.0) => {}
            Err(Trouble::Collapse { load, greatest, .. }) => {
                let branch = *branches.iter().find(|b| net.branch_name(**b) == load).unwrap();
                for (share, runs) in [(0.999, true), (1.001, false)] {
                    let draw = match greatest {
                        Draw::Power(power) if power.in_w() > 0.0 => Draw::Power(power * share),
                        Draw::Current(current) if current.in_a() > 0.0 => Draw::Current(current * share),
                        _ => continue,
                    };
                    net.set(branch, Element::Load { draw, cut_out: None });
                    prop_assert_eq!(solve(&net).is_ok(), runs, "{} {} {}", load, greatest, share);
                }
            }
            Err(trouble) => prop_assert!(false, "{trouble}"),
        }
    }

    #[test]
    fn a_constant_power_runs_exactly_to_its_greatest(share in 0.5..0.999_999_f64) {
        // maximum power transfer: 12 V behind 0.4 Ω brings 12²/(4·0.4) = 90 W, at 6 V
        let net = one_load(0.4, Draw::Power(Power::w(90.0 * share)), None);
        let volt = solve(&net).unwrap().voltage(net.find("plug").unwrap()).in_v();
        let expected = 6.0 * (1.0 + (1.0 - share).sqrt());
        prop_assert!((volt - expected).abs() < 1e-6, "{volt} {expected}");
        let over = one_load(0.4, Draw::Power(Power::w(90.0 / share)), None);
        let collapsed = matches!(solve(&over), Err(Trouble::Collapse { .. }));
        prop_assert!(collapsed);
    }
}

#[test]
fn collapse_names_the_load_and_the_most_that_reaches_it() {
    // V²/4R = 144/1.6 = 90 W (maximum power transfer theorem)
    let net = one_load(0.4, Draw::Power(Power::w(120.0)), None);
    let trouble = solve(&net).unwrap_err();
    let Trouble::Collapse { node, load, wanted, greatest: Draw::Power(most) } = &trouble else {
        panic!("{trouble}");
    };
    assert_eq!((node.as_str(), load.as_str()), ("plug", "load"));
    assert_eq!(*wanted, Draw::Power(Power::w(120.0)));
    assert!((most.in_w() - 90.0).abs() < 1e-9);
    assert_eq!(trouble.to_string(), "load wants 120.0 W, but no more than 90.0 W can reach plug");
}

#[test]
fn collapse_is_put_to_the_load_that_is_too_much_not_to_the_largest() {
    // the big one sits on a thick cable; the small one wants 50 W behind 1 Ω of its own
    let mut net = Network::new("-");
    let (post, minus) = (net.node("+"), net.reference());
    let (near, far) = (net.node("near"), net.node("far"));
    net.battery("bank", post, minus, v(12.0), ohm(0.002));
    net.resistor("thick", post, near, ohm(0.001));
    net.resistor("thin", post, far, ohm(1.0));
    net.load("inverter", near, minus, Draw::Power(Power::w(1000.0)), None);
    net.load("lamp", far, minus, Draw::Power(Power::w(50.0)), None);
    let Err(Trouble::Collapse { load, greatest: Draw::Power(most), .. }) = solve(&net) else {
        panic!("no collapse");
    };
    assert_eq!(load, "lamp");
    // with the inverter on, the post is below 12 V: less than 36 W, but not by much
    assert!((34.0..36.0).contains(&most.in_w()), "{most:?}");
    // and what it says can be had, can be had; a hair more cannot
    for (share, runs) in [(0.999_999, true), (1.000_01, false)] {
        let last = net.branches().last().unwrap();
        let draw = Draw::Power(most * share);
        net.set(last, Element::Load { draw, cut_out: None });
        assert_eq!(solve(&net).is_ok(), runs, "{share}");
    }
}

#[test]
fn two_loads_that_are_each_too_much_leave_nothing() {
    let mut net = one_load(1.0, Draw::Power(Power::w(40.0)), None);
    let (post, other, minus) = (net.node("+"), net.node("other"), net.reference());
    net.resistor("thin", post, other, ohm(1.0));
    net.load("second", other, minus, Draw::Power(Power::w(50.0)), None);
    let Err(Trouble::Collapse { load, greatest, .. }) = solve(&net) else { panic!("no collapse") };
    assert_eq!((load.as_str(), greatest), ("second", Draw::Power(Power::w(0.0))));
}

#[test]
fn constant_current_beyond_the_short_circuit_collapses() {
    // 12 V / 0.5 Ω = 24 A is all there is
    let net = one_load(0.5, Draw::Current(Current::a(30.0)), None);
    let Err(Trouble::Collapse { greatest: Draw::Current(most), .. }) = solve(&net) else {
        panic!("no collapse");
    };
    assert!((most.in_a() - 24.0).abs() < 1e-9);
}

#[test]
fn a_load_switches_off_below_its_cut_out() {
    // 60 W at 12 V behind 0.4 Ω: 6·(1 + √(1 − 60/90)) = 9.464 V
    let draw = Draw::Power(Power::w(60.0));
    let net = one_load(0.4, draw, Some(v(9.5)));
    let plug = net.find("plug").unwrap();
    let load = net.branches().last().unwrap();
    let found = solve(&net).unwrap();
    assert!(found.is_off(load));
    assert_eq!(found.current(load).in_a(), 0.0);
    assert!((found.voltage(plug).in_v() - 12.0).abs() < 1e-9);
    let trying = solve_as_if_running(&net).unwrap();
    assert!((trying.voltage(plug).in_v() - 9.464_101_615).abs() < 1e-6);
    assert!(!solve(&one_load(0.4, draw, Some(v(9.4)))).unwrap().is_off(load));
}

#[test]
fn a_load_with_a_cut_out_switches_off_where_it_would_collapse() {
    let net = one_load(0.4, Draw::Power(Power::w(120.0)), Some(v(10.4)));
    let load = net.branches().last().unwrap();
    assert!(solve(&net).unwrap().is_off(load));
    assert!(matches!(solve_as_if_running(&net), Err(Trouble::Collapse { .. })));
    // the same for constant currents and plain resistances
    for draw in [Draw::Current(Current::a(40.0)), Draw::Resistance(ohm(0.1))] {
        assert!(solve(&one_load(0.4, draw, Some(v(10.4)))).unwrap().is_off(load));
    }
}

#[test]
fn the_load_furthest_below_its_cut_out_goes_first_and_may_save_the_rest() {
    // 25 A drag 12 V down to 9.0 V at the tap, too low for both; the fridge alone has 11.4 V
    let mut net = Network::new("-");
    let (post, tap, minus) = (net.node("+"), net.node("tap"), net.reference());
    net.battery("bank", post, minus, v(12.0), ohm(0.02));
    net.resistor("feed", post, tap, ohm(0.1));
    let fridge = net.load("fridge", tap, minus, Draw::Current(Current::a(5.0)), Some(v(9.6)));
    let inverter = net.load("inverter", tap, minus, Draw::Current(Current::a(20.0)), Some(v(11.0)));
    let found = solve(&net).unwrap();
    assert_eq!(found.cut_out().collect::<Vec<_>>(), [inverter]);
    assert!(!found.is_off(fridge));
    assert!((found.across(fridge).in_v() - 11.4).abs() < 1e-9);
}

#[test]
fn no_resistance_is_an_ideal_connection() {
    let mut net = one_load(0.0, Draw::Current(Current::a(8.0)), None);
    let feed = net.branches().nth(1).unwrap();
    let found = solve(&net).unwrap();
    assert!((found.current(feed).in_a() - 8.0).abs() < 1e-12);
    assert_eq!(found.across(feed).in_v(), 0.0);
    let (post, plug) = net.ends(feed);
    net.resistor("bar", post, plug, ohm(0.0));
    assert_eq!(solve(&net), Err(Trouble::NoResistance { branch: "bar".into() }));
}

#[test]
fn a_short_without_resistance_is_named() {
    let mut net = one_load(0.1, Draw::Current(Current::a(1.0)), None);
    let (post, minus) = (net.node("+"), net.reference());
    net.resistor("dropped spanner", post, minus, ohm(0.0));
    assert_eq!(solve(&net), Err(Trouble::NoResistance { branch: "dropped spanner".into() }));
}

#[test]
fn a_floating_node_is_named() {
    let mut net = one_load(0.1, Draw::Current(Current::a(1.0)), None);
    let (plug, lost) = (net.node("plug"), net.node("lost return"));
    net.load("fan", plug, lost, Draw::Power(Power::w(10.0)), None);
    let trouble = solve(&net).unwrap_err();
    assert_eq!(trouble.to_string(), "nothing conducts between lost return and -");
}

#[test]
fn figures_that_nothing_can_start_from_are_refused() {
    let draws = [
        Draw::Power(Power::w(f64::NAN)),
        Draw::Power(Power::w(-5.0)),
        Draw::Current(Current::a(f64::INFINITY)),
        Draw::Resistance(ohm(0.0)),
    ];
    for draw in draws {
        let net = one_load(0.1, draw, None);
        assert!(matches!(solve(&net), Err(Trouble::Input { branch, .. }) if branch == "load"));
    }
    let draw = Draw::Current(Current::a(1.0));
    for feed_ohm in [-0.1, f64::NAN, 1e8] {
        let net = one_load(feed_ohm, draw, None);
        assert!(matches!(solve(&net), Err(Trouble::Input { branch, .. }) if branch == "feed"));
    }
    assert!(matches!(
        solve(&one_load(0.1, draw, Some(v(0.0)))),
        Err(Trouble::Input { quantity: "cut-out voltage", .. })
    ));
    let mut net = one_load(0.1, draw, None);
    let bank = net.branches().next().unwrap();
    net.set(bank, Element::Battery { open: v(f64::NAN), inner: ohm(0.0) });
    assert!(matches!(solve(&net), Err(Trouble::Input { branch, .. }) if branch == "bank"));
}
