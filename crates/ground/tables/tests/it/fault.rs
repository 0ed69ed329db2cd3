//! Printed k against the formula they come from; batteries against known currents.

use spile_tables::battery::Chemistry;
use spile_tables::fault::{adiabatic, adiabatics, battery_resistance, metal, metals};

use crate::near;

#[test]
fn printed_k_follow_from_their_formula() {
    // IEC 60949: k = K √(ln((β + end)/(β + start))); printed to whole numbers.
    for entry in adiabatics() {
        let row = &entry.value;
        let m = &metal(&row.metal).unwrap().value;
        let (start, end) = (row.start.in_celsius(), row.end.in_celsius());
        let k = m.k_a_sqrt_s_per_mm2 * ((m.beta_k + end) / (m.beta_k + start)).ln().sqrt();
        assert!((row.k_a_sqrt_s_per_mm2 - k).abs() < 0.6, "{}: {k:.2}", row.key);
    }
}

#[test]
fn printed_k_of_cable_sizing_pages() {
    let cases = [
        ("copper-pvc70", 115.0),
        ("copper-xlpe90", 143.0),
        ("copper-rubber60", 141.0),
        ("aluminium-pvc70", 76.0),
        ("aluminium-xlpe90", 94.0),
    ];
    for (key, k) in cases {
        assert_eq!(adiabatic(key).unwrap().value.k_a_sqrt_s_per_mm2, k);
    }
    assert!(adiabatic("gold").is_none());
}

#[test]
fn aluminium_in_pvc_ends_at_160_not_140() {
    // One tutorial prints 140 °C beside k = 76; the formula gives 68 there.
    let m = &metal("aluminium").unwrap().value;
    let k = m.k_a_sqrt_s_per_mm2 * ((m.beta_k + 140.0) / (m.beta_k + 70.0)).ln().sqrt();
    near("at 140 °C", k, 68.0, 0.01);
    assert_eq!(adiabatic("aluminium-pvc70").unwrap().value.end.in_celsius(), 160.0);
}

#[test]
fn beta_is_the_reciprocal_of_alpha_at_nought() {
    // β = 1/α20 − 20: copper 1/0.00393 − 20 = 234.5 K.
    near("copper", metal("copper").unwrap().value.beta_k, 1.0 / 0.00393 - 20.0, 0.001);
    near("aluminium", metal("aluminium").unwrap().value.beta_k, 1.0 / 0.00403 - 20.0, 0.001);
    assert_eq!(metals().len(), 3);
}

#[test]
fn batteries_give_the_currents_they_are_known_for() {
    // Shorted 12 V, 100 Ah batteries [A] (the usual ranges): AGM 2000–3000, flooded 1200–2500,
    // iron phosphate 1600–6000; E/R at 12.8 or 13.2 V must bracket them within a tenth.
    let cases = [
        (Chemistry::Agm, 12.8, 2000.0, 3000.0),
        (Chemistry::Flooded, 12.6, 1200.0, 2500.0),
        (Chemistry::Lfp, 13.2, 1600.0, 6000.0),
    ];
    for (chemistry, volts, low_a, high_a) in cases {
        let r = battery_resistance(chemistry).unwrap().value;
        near("least", volts / r.high.in_ohm(), low_a, 0.11);
        near("greatest", volts / r.low.in_ohm(), high_a, 0.11);
        assert!(r.low <= r.likely && r.likely <= r.high);
    }
    for chemistry in Chemistry::ALL {
        assert_eq!(Chemistry::from_key(chemistry.key()), Some(chemistry));
        assert!(battery_resistance(chemistry).is_some_and(|e| !e.may_stop()));
    }
}
