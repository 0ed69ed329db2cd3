//! The load cases as their sources have them.

use spile_quantity::Mass;
use spile_strength::envelope::{Way, battery, cases, crash, road};
use spile_tables::load::load_case;

use crate::near;

#[test]
fn the_envelope_is_harder_than_every_standard_of_cargo() {
    // 49 CFR 393.102 (regulator's page): 0.8, 0.5, 0.5 g, upward 20 % of the weight
    let us = &load_case("49-cfr-393.102").unwrap().value;
    assert_eq!((us.forward, us.rearward, us.sideways, us.up), (0.8, 0.5, 0.5, Some(0.2)));
    // working load limit: 0.435, 0.5, 0.25 g
    let working = &load_case("49-cfr-393.102 working").unwrap().value;
    assert_eq!((working.forward, working.rearward, working.sideways), (0.435, 0.5, 0.25));
    // EN 12195-1 (CTU code training page): 0.8, 0.5, 0.5; 0.6 for what may tip
    let eu = &load_case("en-12195-1").unwrap().value;
    assert_eq!((eu.forward, eu.rearward, eu.sideways), (0.8, 0.5, 0.5));
    for softer in [us, eu] {
        for case in cases(softer, 1.0) {
            let ours = road().value.into_iter().find(|one| one.way == case.way).unwrap();
            assert!(ours.times_gravity >= case.times_gravity, "{:?}", case.way);
        }
    }
}

#[test]
fn a_drawer_of_37_kg_pushes_as_the_trade_works_it_out() {
    // trade case 6: 218 N at 0.6 g, 363 N at 1 g
    let side = road().value.into_iter().find(|case| case.way == Way::Left).unwrap();
    near("trade", side.force(Mass::kg(37.0)).in_n(), 363.0, 0.001);
    near("trade", side.force(Mass::kg(37.0)).in_n() * 0.6, 218.0, 0.002);
}

#[test]
fn a_battery_is_held_for_twice_its_weight_in_any_direction() {
    // ISO 10133, 5.2 (text page)
    let cases = battery().value;
    assert_eq!(cases.len(), 6);
    for case in &cases {
        near("ISO 10133", case.force(Mass::kg(28.0)).in_n(), 2.0 * 28.0 * 9.80665, 1e-12);
    }
    assert!(battery().status == spile_tables::Status::Verified && !battery().may_stop());
    assert!(crash().value.iter().all(|case| case.times_gravity == 10.0 && case.weight == 0.0));
}
