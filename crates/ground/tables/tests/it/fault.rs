//! Printed k against the formula they come from.

use spile_tables::fault::{adiabatic, adiabatics, metal, metals};

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
