//! Conductors against geometry, physics and the printed pages.

use spile_quantity::Area;
use spile_tables::conductor::{
    Service, awg_sizes, drop_constants, greatest_drop, material, metric_size, metric_sizes,
    sae_sizes,
};
use spile_tables::{Class, Status};

use crate::near;

/// Annealed copper at 20 °C [Ω·mm²/m] (IEC 60028: 1/58).
const COPPER_20C: f64 = 1.0 / 58.0;
const COPPER_ALPHA: f64 = 0.00393;

/// The section of solid wire by ASTM B258: d = 0.005 in · 92^((36 − n)/39).
fn astm_b258_mm2(awg: i32) -> f64 {
    let d_mm = 0.127 * 92f64.powf(f64::from(36 - awg) / 39.0);
    std::f64::consts::FRAC_PI_4 * d_mm * d_mm
}

#[test]
fn printed_resistances_of_iec_60228() {
    // IEC 60228, class 5 plain, class 5 tinned, class 2 plain [Ω/km].
    let cases = [
        (0.5, 39.0, 40.1, 36.0),
        (1.5, 13.3, 13.7, 12.1),
        (2.5, 7.98, 8.21, 7.41),
        (6.0, 3.30, 3.39, 3.08),
        (16.0, 1.21, 1.24, 1.15),
        (50.0, 0.386, 0.393, 0.387),
        (95.0, 0.206, 0.210, 0.193),
    ];
    for (mm2, plain, tinned, class2) in cases {
        let size = metric_size(Area::mm2(mm2)).unwrap().value;
        for (got, expected) in
            [(size.class5, plain), (size.class5_tinned, tinned), (size.class2, class2)]
        {
            near(&format!("{mm2} mm²"), got.in_mohm(), expected, 1e-9);
        }
    }
}

#[test]
fn iec_60228_lies_a_little_above_solid_copper_of_that_section() {
    // Maxima of real conductors against ρ/S of IEC 60028: from 1 % under (a nominal section need
    // not be the true one) to 17 % over (thin strands, lay).
    for entry in metric_sizes() {
        let size = entry.value;
        let mm2 = size.section.in_mm2();
        let ideal = COPPER_20C / mm2 * 1000.0;
        for (kind, r) in [("class 5", size.class5), ("class 2", size.class2)] {
            let over = r.in_mohm() / ideal;
            assert!((0.99..=1.17).contains(&over), "{kind}, {mm2} mm²: {over:.3} of ρ/S");
        }
        let tin = size.class5_tinned / size.class5;
        assert!((1.015..=1.035).contains(&tin), "tin at {mm2} mm²: {tin:.4}");
    }
}

#[test]
fn thicker_conductors_have_less_resistance() {
    for pair in metric_sizes().windows(2) {
        let (a, b) = (pair[0].value, pair[1].value);
        assert!(a.section < b.section);
        assert!(a.class5 > b.class5 && a.class5_tinned > b.class5_tinned && a.class2 > b.class2);
    }
    for pair in awg_sizes().windows(2) {
        assert!(pair[0].value.awg > pair[1].value.awg);
        assert!(pair[0].value.stranded_75c > pair[1].value.stranded_75c);
    }
    for pair in sae_sizes().windows(2) {
        assert!(pair[0].value.gauge > pair[1].value.gauge);
        assert!(pair[0].value.area < pair[1].value.area);
    }
}

#[test]
fn nec_table_8_is_astm_b258_with_two_percent_of_lay() {
    // NEC chapter 9 table 8 [Ω/1000 ft, 75 °C] against the gauge's formula and hot copper.
    for entry in awg_sizes() {
        let size = entry.value;
        let hot = COPPER_20C * (1.0 + COPPER_ALPHA * 55.0);
        let expected = 1.02 * hot / astm_b258_mm2(size.awg);
        near(&format!("AWG {}", size.awg), size.stranded_75c.in_ohm(), expected, 0.01);
    }
}

#[test]
fn nec_table_8_prints_the_stranded_column() {
    // Ω/1000 ft of the solid column, which copies misprint as stranded; stranded is 2 to 3 % more.
    for (awg, solid) in [(14, 3.07), (12, 1.93), (10, 1.21), (8, 0.764)] {
        let size = awg_sizes().iter().find(|e| e.value.awg == awg).unwrap().value;
        let over = size.stranded_75c.in_ohm() * 304.8 / solid;
        assert!((1.015..=1.03).contains(&over), "AWG {awg}: {over:.4} of solid");
    }
}

#[test]
fn sae_gauge_holds_3_to_12_percent_less_than_awg() {
    // Marine cable catalogue (2023): nominal AWG areas in circular mils beside the SAE ones.
    let catalogue = [
        (18, 1600.0),
        (16, 2600.0),
        (14, 4100.0),
        (12, 6500.0),
        (10, 10500.0),
        (8, 16800.0),
        (6, 26600.0),
        (4, 42000.0),
        (2, 66500.0),
        (1, 83690.0),
        (0, 105_600.0),
        (-1, 133_100.0),
        (-2, 167_800.0),
        (-3, 211_600.0),
    ];
    assert_eq!(sae_sizes().len(), catalogue.len());
    for (entry, (gauge, awg_cmil)) in sae_sizes().iter().zip(catalogue) {
        assert_eq!(entry.value.gauge, gauge);
        let share = entry.value.area.in_mm2() / (awg_cmil * 5.067_074_8e-4);
        assert!((0.88..0.975).contains(&share), "gauge {gauge}: {share:.3} of AWG");
        assert!(entry.value.area.in_mm2() < astm_b258_mm2(gauge));
    }
}

#[test]
fn materials_agree_with_their_percent_iacs() {
    // % IACS is ρ of annealed copper over ρ: 1350 61/60 %, 6063A 48–55 %, 6061-T6 43 %,
    // 6005-T5 49 %, 5052 35 %, 6063-T5 55 %, 6063-T6 53 % (data sheets: within 2.5 %).
    let cases = [
        ("copper", 100.0, 0.0005),
        ("aluminium-1350", 60.0, 0.001),
        ("aluminium-6005-t5", 49.0, 0.005),
        ("aluminium-5052", 35.0, 0.005),
        ("aluminium-6061-t6", 43.0, 0.01),
        ("aluminium-6063-t5", 55.0, 0.01),
        ("aluminium-6063-t6", 53.0, 0.025),
    ];
    for (key, percent, tolerance) in cases {
        let rho = material(key).unwrap().value.rho20_ohm_m;
        near(key, 100.0 * 1.7241e-8 / rho, percent, tolerance);
    }
    let section = &material("aluminium-6063").unwrap().value;
    near("6063A best", 100.0 * 1.7241e-8 / section.rho20_low_ohm_m, 55.0, 0.015);
    near("6063A worst", 100.0 * 1.7241e-8 / section.rho20_high_ohm_m, 48.0, 0.005);
}

#[test]
fn resistivities_are_metals() {
    for key in ["copper", "aluminium-6063", "mild-steel"] {
        let m = &material(key).unwrap().value;
        assert!(1.5e-8 < m.rho20_low_ohm_m && m.rho20_low_ohm_m <= m.rho20_ohm_m);
        assert!(m.rho20_ohm_m <= m.rho20_high_ohm_m && m.rho20_high_ohm_m <= 2.0e-7);
        assert!((0.003..=0.006).contains(&m.alpha20_per_k.unwrap()));
    }
    assert_eq!(material("mild-steel").unwrap().status, Status::FromMemory);
    assert!(material("unobtainium").is_none());
}

#[test]
fn trade_constants_are_copper_at_some_temperature() {
    // 1 Ω·mm²/m is 601.53 Ω·cmil/ft; 10.75 is copper at 29 °C, 12.9 copper at 75 °C with 2 % lay,
    // and the metric 0.0164 is 4.9 % under copper at 20 °C.
    let at =
        |key: &str| drop_constants().iter().find(|e| e.value.key == key).unwrap().value.constant;
    let cmil_ft = COPPER_20C * 0.3048 / 5.067_074_8e-4;
    near("10.75", at("circular-mil-boat"), cmil_ft * (1.0 + COPPER_ALPHA * 9.3), 0.001);
    near("12.9", at("circular-mil-75c"), 1.02 * cmil_ft * (1.0 + COPPER_ALPHA * 55.0), 0.005);
    near("0.0164", at("metric"), 0.951 * COPPER_20C, 0.001);
}

#[test]
fn drop_rules_are_practice() {
    // ISO 10133 and charts quoting ABYC E-11: 3 % critical, 10 % other.
    for (service, share) in [(Service::Critical, 0.03), (Service::Other, 0.10)] {
        let rule = greatest_drop(service);
        near("drop", rule.value, share, 1e-12);
        assert_eq!(rule.class, Class::Practice);
        assert!(!rule.may_stop());
    }
}
