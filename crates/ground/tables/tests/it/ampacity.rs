//! Currents against the legal text, machine manuals and the square-root rule.

use spile_quantity::{Area, Temperature};
use spile_tables::Status;
use spile_tables::ampacity::{
    Laid, ambient_factors, boat_current, boat_currents, bundle, bundles, engine_space_factors,
    grouping_factors, laying, metric_current, metric_currents, pvc_currents,
};

use crate::near;

/// I(ambient)/I(base) = √((rating − ambient)/(rating − base)).
fn root(rating: f64, ambient: f64, base: f64) -> f64 {
    ((rating - ambient) / (rating - base)).sqrt()
}

fn c(celsius: f64) -> Temperature {
    Temperature::celsius(celsius)
}

#[test]
fn printed_currents_of_33_cfr_183_425() {
    // 33 CFR 183.425 table 5: AWG, rating [°C], current [A].
    let cases = [
        (18, 60.0, 10.0),
        (16, 105.0, 25.0),
        (14, 75.0, 20.0),
        (12, 90.0, 40.0),
        (10, 105.0, 60.0),
        (8, 80.0, 70.0),
        (6, 105.0, 120.0),
        (4, 125.0, 170.0),
        (2, 105.0, 210.0),
        (1, 90.0, 210.0),
        (0, 105.0, 285.0),
        (-1, 75.0, 265.0),
        (-2, 200.0, 430.0),
        (-3, 105.0, 445.0),
    ];
    for (awg, rating, amps) in cases {
        let got = boat_current(awg, c(rating)).unwrap();
        assert_eq!(got.value.in_a(), amps, "AWG {awg}, {rating} °C");
        assert!(got.may_stop());
    }
}

#[test]
fn a_rating_between_columns_takes_the_lower() {
    assert_eq!(boat_current(10, c(104.9)), boat_current(10, c(90.0)));
    assert_eq!(boat_current(10, c(59.0)), None);
    assert_eq!(boat_current(11, c(90.0)), None);
    assert_eq!(metric_current(Area::mm2(1.5), c(75.0)), metric_current(Area::mm2(1.5), c(70.0)));
}

#[test]
fn currents_rise_with_copper_and_with_rating() {
    for pair in boat_currents().windows(2) {
        assert!(pair[0].value.awg > pair[1].value.awg);
        for (thin, thick) in pair[0].value.by_rating.iter().zip(&pair[1].value.by_rating) {
            assert!(thin.1 < thick.1, "AWG {}", pair[1].value.awg);
        }
    }
    for pair in metric_currents().windows(2) {
        assert!(pair[0].value.section < pair[1].value.section);
        for (thin, thick) in pair[0].value.by_rating.iter().zip(&pair[1].value.by_rating) {
            assert!(thin.1 < thick.1, "{:?}", pair[1].value.section);
        }
    }
    let by_rating = boat_currents()
        .iter()
        .map(|e| &e.value.by_rating)
        .chain(metric_currents().iter().map(|e| &e.value.by_rating));
    for columns in by_rating {
        for pair in columns.windows(2) {
            assert!(pair[0].0 < pair[1].0 && pair[0].1 <= pair[1].1);
        }
    }
    for laid in [Laid::InConduit, Laid::Clipped, Laid::FreeAir] {
        let rows: Vec<_> = pvc_currents(laid).map(|e| e.value).collect();
        assert!(rows.windows(2).all(|p| p[0].0 < p[1].0 && p[0].1 < p[1].1), "{laid:?}");
    }
}

#[test]
fn current_densities_are_those_of_copper_in_air() {
    // A bound a class: single conductors in air run between 1 A/mm² (thick, 60 °C) and
    // 34 A/mm² (thin, 200 °C).
    for entry in metric_currents() {
        for (_, current) in &entry.value.by_rating {
            let density = current.in_a() / entry.value.section.in_mm2();
            assert!((1.0..=35.0).contains(&density), "{:?}: {density}", entry.value.section);
        }
    }
}

#[test]
fn remembered_metric_currents_lie_under_the_boat_table() {
    // ISO 10133 annex A, from memory, must not exceed 33 CFR for no less copper.
    for (mm2, awg) in [(1.5, 14), (4.0, 10), (6.0, 8), (16.0, 4), (25.0, 2), (50.0, 0)] {
        for rating in [60.0, 90.0, 105.0] {
            let iso = metric_current(Area::mm2(mm2), c(rating)).unwrap();
            assert_eq!(iso.status, Status::FromMemory);
            assert!(iso.value <= boat_current(awg, c(rating)).unwrap().value, "{mm2} at {rating}");
        }
    }
}

#[test]
fn engine_space_factors_follow_the_square_root() {
    // 33 CFR 183.425: √((T − 50)/(T − 30)) to two digits, but for 200 °C, printed as 1.
    for entry in engine_space_factors() {
        let (rating, printed) = (entry.value.0.in_celsius(), entry.value.1);
        let computed = root(rating, 50.0, 30.0);
        if rating == 200.0 {
            assert!(printed > computed);
            assert_eq!(entry.status, Status::FromMemory);
        } else {
            assert!((printed - computed).abs() < 0.0065, "{rating} °C: {printed}, {computed:.4}");
        }
    }
}

#[test]
fn the_105_c_engine_space_column_follows_from_table_and_factor() {
    // Engine-space column for 105 °C in a marine cable catalogue [A]: table × 0.85, cut off.
    let inside = [17, 21, 30, 38, 51, 68, 102, 136, 153, 178, 208, 242, 280, 327, 378];
    let factor = engine_space_factors().iter().find(|e| e.value.0 == c(105.0)).unwrap().value.1;
    assert_eq!(boat_currents().len(), inside.len());
    for (entry, expected) in boat_currents().iter().zip(inside) {
        let outside = boat_current(entry.value.awg, c(105.0)).unwrap().value.in_a();
        assert!((outside * factor - f64::from(expected)).abs() < 1.0, "AWG {}", entry.value.awg);
    }
}

#[test]
fn the_square_root_rule_gives_the_ship_factors() {
    // Marine cable maker's page, factors of the IEC 60092 kind, base 45 °C. It cuts 0.745 and
    // 1.106 off rather than rounding them.
    let ambient = [35.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0, 70.0, 75.0, 80.0];
    let printed: [(f64, &[f64]); 4] = [
        (60.0, &[1.29, 1.15, 1.00, 0.82]),
        (70.0, &[1.18, 1.10, 1.00, 0.89, 0.77, 0.63]),
        (85.0, &[1.12, 1.06, 1.00, 0.94, 0.87, 0.79, 0.71, 0.61, 0.50]),
        (90.0, &[1.10, 1.05, 1.00, 0.94, 0.88, 0.82, 0.74, 0.67, 0.58, 0.47]),
    ];
    for (rating, factors) in printed {
        for (factor, ambient) in factors.iter().zip(ambient) {
            let computed = root(rating, ambient, 45.0);
            assert!((factor - computed).abs() < 0.0065, "{rating}, {ambient}: {computed:.4}");
        }
    }
}

#[test]
fn iec_ambient_factors_follow_the_square_root() {
    for entry in ambient_factors() {
        let f = entry.value;
        let t = f.ambient.in_celsius();
        assert!((f.pvc70 - root(70.0, t, 30.0)).abs() < 0.0055, "PVC {t} °C");
        assert!((f.xlpe90 - root(90.0, t, 30.0)).abs() < 0.0055, "XLPE {t} °C");
    }
}

#[test]
fn iec_currents_at_50_c_in_a_compressor_manual() {
    // Method B2 at 50 °C as a compressor manual reprints it: the 30 °C column × the factor.
    let at_50c = [11.0, 14.0, 19.0, 24.0, 33.0, 44.0, 57.0, 70.0];
    let factor = ambient_factors().iter().find(|e| e.value.ambient == c(50.0)).unwrap().value.pvc70;
    for (entry, printed) in pvc_currents(Laid::InConduit).zip(at_50c) {
        let (section, amps) = entry.value;
        assert!((amps.in_a() * factor - printed).abs() <= 0.5, "{} mm²", section.in_mm2());
    }
}

#[test]
fn freer_air_carries_more() {
    for b2 in pvc_currents(Laid::InConduit) {
        let same = |laid| pvc_currents(laid).find(|e| e.value.0 == b2.value.0).map(|e| e.value.1);
        let free = same(Laid::FreeAir).unwrap();
        let clipped = same(Laid::Clipped);
        assert!(b2.value.1 < free);
        assert!(clipped.is_none_or(|c| b2.value.1 < c && c < free));
    }
}

#[test]
fn bundles_cover_every_number_once() {
    // Tables of makers of boat cable: 3: 0.70, 4–6: 0.60, 7–24: 0.50.
    for (n, factor) in [(1, 1.0), (2, 1.0), (3, 0.70), (4, 0.60), (6, 0.60), (7, 0.50), (24, 0.50)]
    {
        assert_eq!(bundle(n).unwrap().value.factor, factor, "{n}");
    }
    assert_eq!(bundle(500).unwrap().status, Status::FromMemory);
    assert!(bundle(0).is_none());
    for pair in bundles().windows(2) {
        assert_eq!(pair[0].value.to.unwrap() + 1, pair[1].value.from);
        assert!(pair[0].value.factor > pair[1].value.factor);
    }
}

#[test]
fn grouping_lies_above_equal_heat() {
    // n circuits that together lose the heat of one carry 1/√n each; the standard allows more,
    // and never more than it does for one fewer.
    for pair in grouping_factors().windows(2) {
        let (n, factor) = pair[1].value;
        assert!(factor < pair[0].value.1);
        assert!(factor > 1.0 / f64::from(n).sqrt(), "{n}");
    }
}

#[test]
fn iso_10133_clause_7() {
    let rules = laying().value;
    near("single", rules.single.in_mm2(), 1.0, 1e-12);
    near("sheath", rules.in_sheath.in_mm2(), 0.75, 1e-12);
    near("support", rules.support.in_mm(), 450.0, 1e-12);
    near("battery cable", rules.support_battery_cable.in_mm(), 300.0, 1e-12);
}
