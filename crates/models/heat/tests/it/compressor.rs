//! The compressor against `CoolProp` cycles, and the fits to papers.

use serde::Deserialize;
use spile_heat::HeatError;
use spile_heat::compressor::{
    Approaches, Compressor, Consumption, Cooler, CoolerKind, carnot_cop, fit_conductance,
    fit_share_of_carnot,
};
use spile_quantity::{Energy, Power};

use crate::{celsius, kelvin, near, read, w_per_k, watts};

#[derive(Deserialize)]
struct Reference {
    cycles: Vec<Cycle>,
}

#[derive(Deserialize)]
struct Cycle {
    fluid: String,
    evaporating_c: f64,
    condensing_c: f64,
    isentropic: f64,
    cop: f64,
}

impl Cycle {
    fn share(&self) -> f64 {
        self.cop / carnot_cop(celsius(self.evaporating_c), celsius(self.condensing_c)).unwrap()
    }

    /// The COP of another cycle as the model has it with the share fitted to this one, the air at the
    /// condenser being as warm as the refrigerant. A motor that gives half of its power to the
    /// compression keeps the share of the loss-free cycles below the greatest allowed.
    fn model_cop(&self, other: &Self) -> f64 {
        let approaches = Approaches { condenser: kelvin(0.0), ..approaches() };
        let stated = Consumption {
            per_day: Energy::wh(24.0),
            ambient: celsius(self.condensing_c),
            inside: celsius(self.evaporating_c + 10.0),
        };
        let motor = 0.5;
        let ua = w_per_k(motor * self.cop / stated.ambient.above(stated.inside).in_k());
        let share = fit_share_of_carnot(&[stated], ua, approaches, watts(0.0)).unwrap().value;
        let compressor = Compressor::new(share, approaches, watts(1.0)).unwrap();
        let inside = celsius(other.evaporating_c + 10.0);
        compressor.running(inside, celsius(other.condensing_c)).unwrap().cop / motor
    }
}

fn cycles() -> Vec<Cycle> {
    read::<Reference>(include_str!("../reference/cycles.json")).cycles
}

fn approaches() -> Approaches {
    Approaches { evaporator: kelvin(10.0), condenser: kelvin(12.0), least_lift: kelvin(20.0) }
}

#[test]
fn no_cycle_beats_carnot_and_real_ones_reach_a_fifth_to_a_half() {
    // CoolProp, R600a and R134a. Compression without loss stays below Carnot by throttling and
    // superheat alone. At 50 to 70 % isentropic efficiency and a motor of 75 to 85 %, between −30 and
    // 0 °C and 30 and 60 °C, the shares span what the documentation calls usual, 0.25 to 0.45, with
    // a little on either side.
    for cycle in cycles() {
        let share = cycle.share();
        let name = format!("{} {} {}", cycle.fluid, cycle.evaporating_c, cycle.condensing_c);
        let usual = (-30.0..=0.0).contains(&cycle.evaporating_c)
            && (30.0..=60.0).contains(&cycle.condensing_c);
        if cycle.isentropic == 1.0 {
            assert!((0.42..0.95).contains(&share), "{name}: {share}");
        } else if usual {
            assert!((0.2..0.53).contains(&(share * 0.75)), "{name}: {share}");
            assert!((0.2..0.53).contains(&(share * 0.85)), "{name}: {share}");
        }
    }
}

#[test]
fn a_share_fitted_at_one_condenser_holds_at_others() {
    // η fitted at one CoolProp cycle gives the COP of those of the same fluid, efficiency and
    // evaporator whose condenser is hotter or cooler. A share that did not fall would miss by up to
    // 25 % at 20 K even between −30 and 10 °C and 20 and 60 °C, on the hopeful side.
    let cycles = cycles();
    let mild = |c: &Cycle| c.evaporating_c >= -30.0 && (20.0..=60.0).contains(&c.condensing_c);
    let mut compared = 0;
    for fitted in &cycles {
        for other in &cycles {
            let apart_k = (other.condensing_c - fitted.condensing_c).abs();
            let same = fitted.fluid == other.fluid
                && fitted.isentropic == other.isentropic
                && fitted.evaporating_c == other.evaporating_c;
            let tolerance = match (apart_k as u32, mild(fitted) && mild(other)) {
                (10, true) => 0.05,
                (20, true) => 0.08,
                (10, false) => 0.11,
                (20, false) => 0.18,
                _ => continue,
            };
            if same {
                near("CoolProp cycles", fitted.model_cop(other) / other.cop, 1.0, tolerance);
                compared += 1;
            }
        }
    }
    // 396 pairs 10 K apart, 324 pairs 20 K apart.
    assert_eq!(compared, 720);
}

#[test]
fn one_fit_reproduces_the_consumption_of_cycles_at_several_ambients() {
    // What the papers of a fridge would state whose circuit is a CoolProp cycle of R600a (50 %
    // isentropic, evaporator at −10 °C) on 1.1 W/K at 0 °C inside: air of 18, 28 and 38 °C with a
    // condenser 12 K warmer. One η must meet all three, and the first two, within 2 %.
    let stated: Vec<Consumption> = cycles()
        .iter()
        .filter(|c| c.fluid == "R600a" && c.isentropic == 0.5 && c.evaporating_c == -10.0)
        .filter(|c| (30.0..=50.0).contains(&c.condensing_c))
        .map(|c| {
            let ambient_c = c.condensing_c - 12.0;
            Consumption {
                per_day: Energy::wh(24.0 * 1.1 * ambient_c / c.cop),
                ambient: celsius(ambient_c),
                inside: celsius(0.0),
            }
        })
        .collect();
    assert_eq!(stated.len(), 3);
    let share = |stated: &[Consumption]| {
        fit_share_of_carnot(stated, w_per_k(1.1), approaches(), watts(0.0)).unwrap()
    };
    assert!(share(&stated).worst_miss < 0.02, "{:?}", share(&stated));
    assert!(share(&stated[..2]).worst_miss < 0.02, "{:?}", share(&stated[..2]));
    assert!(share(&stated[..2]).worst_miss > 0.0);
    let ua = fit_conductance(&stated, share(&stated).value, approaches(), watts(0.0)).unwrap();
    near("the cycles' 1.1 W/K", ua.value.in_w_per_k(), 1.1, 0.01);
}

#[test]
fn a_fit_returns_what_a_balance_by_hand_was_made_from() {
    // 1.2 W/K at 5 °C inside, η 0.4, 1 W standby. At 25 °C, condensing at 37:
    // COP = 0.4·e^0.06·268.15/42 = 2.7117, 1.2·20/2.7117 + 1 = 9.8504 W = 236.41 Wh; at 40 °C,
    // condensing at 52: COP = 0.4·e^−0.0525·268.15/57 = 1.7855, 1.2·35/1.7855 + 1 = 24.5227 W =
    // 588.54 Wh.
    let stated = [(25.0, 236.41), (40.0, 588.54)].map(|(ambient, wh)| Consumption {
        per_day: Energy::wh(wh),
        ambient: celsius(ambient),
        inside: celsius(5.0),
    });
    let ua = fit_conductance(&stated, 0.4, approaches(), watts(1.0)).unwrap();
    near("by hand", ua.value.in_w_per_k(), 1.2, 0.0005);
    assert!(ua.worst_miss < 0.0005);
    let share = fit_share_of_carnot(&stated, w_per_k(1.2), approaches(), watts(1.0)).unwrap();
    near("by hand", share.value, 0.4, 0.0005);
}

#[test]
fn papers_that_cannot_be_are_refused() {
    let stated = |wh, ambient, inside| Consumption {
        per_day: Energy::wh(wh),
        ambient: celsius(ambient),
        inside: celsius(inside),
    };
    let fit = |stated: &[Consumption], standby| {
        fit_conductance(stated, 0.35, approaches(), Power::w(standby))
    };
    assert_eq!(fit(&[], 0.0), Err(HeatError::NothingToFit));
    assert!(fit(&[stated(240.0, 4.0, 5.0)], 0.0).is_err(), "ambient below inside");
    assert!(fit(&[stated(240.0, 25.0, 5.0)], 10.0).is_err(), "standby is all of it");
    assert!(fit(&[stated(240.0, 65.0, 5.0)], 0.0).is_err(), "condensing at 77 °C");
    let too_good =
        fit_share_of_carnot(&[stated(60.0, 32.0, 5.0)], w_per_k(1.5), approaches(), watts(0.0));
    assert!(matches!(too_good, Err(HeatError::OutOfRange { what: "share of Carnot", .. })));
    assert!(Compressor::new(1.0, approaches(), watts(45.0)).is_err());
    assert!(Compressor::new(0.3, approaches(), watts(0.0)).is_err());
}

#[test]
fn coolers_that_are_no_compressors_cannot_be_taken_for_one() {
    for (cooler, kind) in [
        (Cooler::Absorption, CoolerKind::Absorption),
        (Cooler::Thermoelectric, CoolerKind::Thermoelectric),
    ] {
        assert_eq!(cooler.compressor(), Err(HeatError::NotModelled(kind)));
    }
}
