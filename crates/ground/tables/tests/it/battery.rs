//! Resting voltages against acid density and against each other.

use spile_quantity::Share;
use spile_tables::Status;
use spile_tables::battery::{
    Cells, Chemistry, gas_constants, gas_stationary, gas_traction, resting_voltage,
    resting_voltages,
};

#[test]
fn voltage_rises_with_charge() {
    for entry in resting_voltages() {
        let curve = &entry.value;
        assert!(curve.points.len() >= 5, "{}", curve.curve);
        for pair in curve.points.windows(2) {
            assert!(pair[0].0 < pair[1].0 && pair[0].1 < pair[1].1, "{}", curve.curve);
        }
        assert!(curve.points.iter().all(|(charge, v)| {
            (0.0..=1.0).contains(&charge.in_of_one()) && (10.0..=14.4).contains(&v.in_v())
        }));
    }
}

#[test]
fn a_flooded_cell_rests_at_its_density_and_0_845() {
    // Rule of six cells at density + 0.845 V, densities of a battery council chart at 27 °C. It
    // meets the chart within 0.06 V a battery above half charge and within 0.1 V when flat.
    let chart = resting_voltages().iter().find(|e| e.value.curve == "flooded-density").unwrap();
    let densities = [1.120, 1.155, 1.190, 1.225, 1.265];
    for ((charge, v), density) in chart.value.points.iter().zip(densities) {
        let rule = 6.0 * (density + 0.845);
        let allowed = if *charge >= Share::percent(50.0) { 0.06 } else { 0.11 };
        assert!((v.in_v() - rule).abs() < allowed, "{charge:?}: {v:?} against {rule:.2}");
    }
}

#[test]
fn charts_of_one_chemistry_differ_by_less_than_half_a_volt_at_the_same_charge() {
    for a in resting_voltages() {
        for b in resting_voltages().iter().filter(|b| b.value.chemistry == a.value.chemistry) {
            for (charge, v) in &a.value.points {
                let other = b.value.points.iter().find(|(c, _)| c == charge);
                if let (Some((_, w)), true) = (other, charge.in_of_one() < 1.0) {
                    assert!((*v - *w).abs().in_v() < 0.5, "{charge:?}");
                }
            }
        }
    }
}

#[test]
fn the_agm_line_lies_in_the_bands_of_an_owners_manual() {
    // Motorcycle owner's manual: 100 % 12.8–13.2 V, 75–100 % 12.6–12.8, 50–75 % 12.3–12.6,
    // 25–50 % 12.0–12.3, below 12.0.
    let bands = [(0.0, 12.0), (12.0, 12.3), (12.3, 12.6), (12.6, 12.8), (12.8, 13.2)];
    let agm = resting_voltage(Chemistry::Agm).unwrap();
    assert_eq!(agm.value.points.len(), bands.len());
    for ((_, v), (low, high)) in agm.value.points.iter().zip(bands) {
        assert!((low..=high).contains(&v.in_v()), "{v:?}");
    }
}

#[test]
fn the_measured_iron_phosphate_cell() {
    // Telemetry table of one cell [V]: 9.6 % 3.17, 52.7 % 3.272; four in series.
    let four = resting_voltages().iter().find(|e| e.value.curve == "lfp-measured").unwrap();
    assert_eq!(four.status, Status::Verified);
    for (charge, cell_v) in [(1.0, 2.90), (9.6, 3.17), (52.7, 3.272), (95.7, 3.32), (100.0, 3.59)] {
        let (_, v) = four.value.points.iter().find(|p| p.0 == Share::percent(charge)).unwrap();
        assert!((v.in_v() - 4.0 * cell_v).abs() < 1e-9, "{charge} %");
    }
    let flat = |from: f64, to: f64| {
        let inside = |c: f64| (from..=to).contains(&c);
        let v: Vec<_> = four.value.points.iter().filter(|p| inside(p.0.in_percent())).collect();
        (v[v.len() - 1].1 - v[0].1).in_v()
    };
    assert!(flat(40.0, 80.0) < 0.17, "the middle tells nothing");
}

#[test]
fn gel_has_no_curve() {
    assert!(resting_voltage(Chemistry::Gel).is_none());
}

#[test]
fn every_kind_has_a_name() {
    for chemistry in Chemistry::ALL {
        assert_eq!(Chemistry::from_key(chemistry.key()), Some(chemistry));
    }
    assert_eq!(Chemistry::from_key("potato"), None);
}

#[test]
fn the_constants_of_gas_are_those_of_the_standard() {
    // Traction-battery maker's ventilation page: 24 x 0.00042 x 5, printed as 0.05; 28 Q.
    let gas = gas_constants();
    assert_eq!((gas.status, gas.value.dilution, gas.value.safety), (Status::Verified, 24.0, 5.0));
    let product = gas.value.dilution * gas.value.hydrogen * gas.value.safety;
    assert!((product - 0.0504).abs() < 1e-12);
    assert!((gas.value.opening.1.in_cm2() - 28.0).abs() < 1e-12);
    // Faraday: half a mole of gas for each mole of electrons, 22.414 l a mole at 0 °C.
    let faraday = 3600.0 / 96_485.33 / 2.0 * 0.022_414;
    assert!((gas.value.hydrogen - faraday).abs() / faraday < 0.01, "{faraday}");
}

#[test]
fn vented_cells_gas_more_and_harder_charging_gases_more() {
    for rows in [gas_stationary(), gas_traction()] {
        for cells in [Cells::Vented, Cells::Sealed] {
            let of: Vec<f64> =
                rows.iter().filter(|e| e.value.cells == cells).map(|e| e.value.rate).collect();
            assert!(of.len() == 2 && of[0] < of[1], "{of:?}");
        }
        assert!(rows[0].value.rate > rows[2].value.rate);
    }
}
