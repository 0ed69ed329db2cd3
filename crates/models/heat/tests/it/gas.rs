//! Hydrogen against published examples.

use proptest::prelude::*;
use spile_heat::gas::{air_needed, hydrogen, opening_needed};
use spile_quantity::{Charge, Current};

use crate::{celsius, near};

#[test]
fn published_amounts_of_hydrogen_are_met() {
    // (source, cells, amperes, °C, printed [m³/h], share of it allowed)
    let ft3 = 0.028_316_8;
    let cases = [
        // Knowledge base quoting IEEE 484: 0.000269 cfm for each ampere and cell, 25 A and 24
        // cells: 0.161 cfm, at 25 °C.
        ("IEEE 484", 24, 25.0, 25.0, 0.161 * 60.0 * ft3, 0.01),
        // Battery room note: 0.0158 ft³/h for each ampere and cell, 50 A and 100 cells: 79 ft³/h, at
        // about 20 °C (0.447 litres against 0.42 at 0 °C).
        ("battery room note", 100, 50.0, 20.0, 79.0 * ft3, 0.02),
        // IEC 62485-2 itself: 0.42 litres for each ampere-hour and cell at 0 °C.
        ("IEC 62485-2", 1, 1.0, 0.0, 0.00042, 1e-12),
    ];
    for (source, cells, amps, t, printed, allowed) in cases {
        let an_hour = hydrogen(cells, Current::a(amps), celsius(t)).unwrap();
        near(source, an_hour.in_m3(), printed, allowed * printed);
    }
}

#[test]
fn air_and_opening_of_the_standard() {
    // Exercise after IEC 62485-2: six cells, 100 Ah, valve-regulated in boost, 8 mA/Ah.
    let air = air_needed(6, 0.008, Charge::ah(100.0)).unwrap();
    near("IEC 62485-2", air.in_m3_per_h(), 0.24, 1e-12);
    near("IEC 62485-2", opening_needed(air).unwrap().in_cm2(), 6.7, 0.05);
    // The same vented, 20 mA/Ah: 0.05·6·0.02·100 = 0.60 m³/h, 16.8 cm².
    let air = air_needed(6, 0.02, Charge::ah(100.0)).unwrap();
    near("by hand", air.in_m3_per_h(), 0.60, 1e-12);
    near("by hand", opening_needed(air).unwrap().in_cm2(), 16.8, 1e-9);
    // IEC 62485-3, IU charger, vented, 2 A/100 Ah, 12 cells, 400 Ah: 0.05·12·2·4 = 4.8 m³/h.
    let air = air_needed(12, 0.02, Charge::ah(400.0)).unwrap();
    near("IEC 62485-3", air.in_m3_per_h(), 4.8, 1e-12);
}

#[test]
fn out_of_range_is_refused() {
    assert!(air_needed(6, -0.1, Charge::ah(100.0)).is_err());
    assert!(air_needed(6, 0.01, Charge::ah(f64::NAN)).is_err());
    assert!(hydrogen(6, Current::a(1.0), celsius(200.0)).is_err());
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_air_thins_the_gas_far_below_what_burns(cells in 1_u32..24, amps in 0.01..50.0) {
        // With the standard's factor of safety of five, the gas is 4 % / 5 of the air.
        let gas = hydrogen(cells, Current::a(amps), celsius(0.0)).unwrap();
        let air = air_needed(cells, amps / 100.0, Charge::ah(100.0)).unwrap();
        let share = gas.in_m3() / air.in_m3_per_h();
        prop_assert!((share - 0.04 / 5.0).abs() < 0.001, "{}", share);
    }
}
