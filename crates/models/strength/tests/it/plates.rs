//! Plates and beams against tables and another series.

use serde::Deserialize;
use spile_quantity::{Force, Length, Pressure};
use spile_strength::beam::{Held, Section, carries, sag, stress};
use spile_strength::plate::{Panel, clamped_spread, supported, supported_middle, supported_spread};
use spile_strength::{Allowable, NoAnswer};

use crate::near;

/// Theory of Plates and Shells, table 8: b/a, α, β, β₁.
const TABLE_8: [[f64; 4]; 11] = [
    [1.0, 0.00406, 0.0479, 0.0479],
    [1.1, 0.00487, 0.0555, 0.0493],
    [1.2, 0.00565, 0.0627, 0.0501],
    [1.3, 0.00639, 0.0694, 0.0503],
    [1.4, 0.00708, 0.0755, 0.0502],
    [1.5, 0.00772, 0.0812, 0.0498],
    [1.6, 0.00831, 0.0862, 0.0493],
    [1.8, 0.00932, 0.0948, 0.0479],
    [2.0, 0.01013, 0.1017, 0.0464],
    [3.0, 0.01223, 0.1189, 0.0406],
    [4.0, 0.01282, 0.1235, 0.0384],
];

/// Roark, 7th edition, table 11.4 case 1a: a/b, β, α.
const ROARK_1A: [[f64; 3]; 8] = [
    [1.0, 0.2874, 0.0444],
    [1.2, 0.3762, 0.0616],
    [1.4, 0.4530, 0.0770],
    [1.6, 0.5172, 0.0906],
    [1.8, 0.5688, 0.1017],
    [2.0, 0.6102, 0.1110],
    [3.0, 0.7134, 0.1335],
    [4.0, 0.7410, 0.1400],
];

#[test]
fn navier_s_series_gives_timoshenko_s_table() {
    for [ratio, alpha, beta, beta_1] in TABLE_8 {
        let [sag, across, along] = supported(ratio).unwrap();
        assert!((sag - alpha).abs() < 1.01e-5, "α at {ratio}: {sag}");
        assert!((across - beta).abs() < 1.01e-4, "β at {ratio}: {across}");
        assert!((along - beta_1).abs() < 1.01e-4, "β₁ at {ratio}: {along}");
    }
}

#[test]
fn navier_s_series_gives_levy_s() {
    #[derive(Deserialize)]
    struct File {
        plates: Vec<[f64; 4]>,
    }
    let file: File = serde_json::from_str(include_str!("../reference/plates.json")).unwrap();
    for [ratio, alpha, beta, beta_1] in file.plates {
        let [sag, across, along] = supported(ratio).unwrap();
        near("Levy, α", sag, alpha, 1e-5);
        near("Levy, β", across, beta, 1e-3);
        near("Levy, β₁", along, beta_1, 2e-3);
    }
}

#[test]
fn panels_bend_as_roark_s_table_has_it() {
    for [ratio, beta, alpha] in ROARK_1A {
        let panel = panel(ratio);
        let bent = supported_spread(&panel, Pressure::pa(1000.0)).unwrap();
        let (b, t, e) = (0.4, 0.012, 5e9);
        near("Roark 1a, stress", bent.stress.in_pa(), beta * 1000.0 * b * b / (t * t), 0.002);
        near("Roark 1a, sag", bent.sag.in_m(), alpha * 1000.0 * b.powi(4) / (e * t.powi(3)), 0.006);
    }
    // case 1b, a/b = 1.4, 100 N on a circle of 20 mm: worked by hand
    let bent = supported_middle(&panel(1.4), Force::n(100.0), Length::mm(20.0)).unwrap();
    let spread = 1.3 * (2.0 * 0.4 / (std::f64::consts::PI * 0.02)).ln() + 0.789;
    let by_hand = 3.0 * 100.0 / (2.0 * std::f64::consts::PI * 0.012 * 0.012) * spread;
    near("Roark 1b, stress", bent.stress.in_pa(), by_hand, 1e-9);
    // Timoshenko table 23, α = 0.01484 of P·a²/D, is another way to the same sag
    let rigidity = 5e9 * 0.012_f64.powi(3) / (12.0 * 0.91);
    near("Timoshenko table 23", bent.sag.in_m(), 0.01484 * 100.0 * 0.16 / rigidity, 0.002);
}

#[test]
fn clamped_panels_bend_as_roark_s_case_8a() {
    // β₁ and α of Roark's table 11.4 case 8a, recomputed by the Ritz method
    for (ratio, beta_1, alpha) in
        [(1.0, 0.3078, 0.0138), (1.4, 0.4356, 0.0226), (2.0, 0.4974, 0.0277)]
    {
        let bent = clamped_spread(&panel(ratio), Pressure::pa(1000.0)).unwrap();
        near("Roark 8a, stress", bent.stress.in_pa(), beta_1 * 1000.0 * 0.16 / 1.44e-4, 0.001);
        near("Roark 8a, sag", bent.sag.in_m(), alpha * 1000.0 * 0.0256 / (5e9 * 1.728e-6), 0.005);
    }
    let long = clamped_spread(&panel(2.5), Pressure::pa(1.0));
    assert!(matches!(long, Err(NoAnswer::OutOfRange { high: 2.0, .. })));
}

#[test]
fn beams_bend_as_the_textbooks_have_it() {
    // Gere and Timoshenko, Mechanics of Materials, appendix: M/(F·L) and w·E·I/(F·L³)
    let table = [
        (Held::RestingSpread, 1.0 / 8.0, 5.0 / 384.0),
        (Held::RestingMiddle, 1.0 / 4.0, 1.0 / 48.0),
        (Held::ClampedSpread, 1.0 / 12.0, 1.0 / 384.0),
        (Held::ClampedMiddle, 1.0 / 8.0, 1.0 / 192.0),
        (Held::CantileverSpread, 1.0 / 2.0, 1.0 / 8.0),
        (Held::CantileverEnd, 1.0, 1.0 / 3.0),
    ];
    let [wide, thick, span] = [60.0, 12.0, 900.0].map(Length::mm);
    let strip = Section::rectangle(wide, thick).unwrap();
    let (modulus_mm3, moment_mm4) = (60.0 * 144.0 / 6.0, 60.0 * 1728.0 / 12.0);
    for (held, moment, bend) in table {
        let got = stress(held, Force::n(50.0), span, &strip).unwrap();
        near("beam stress", got.in_mpa(), moment * 50.0 * 900.0 / modulus_mm3, 1e-9);
        let got = sag(held, Force::n(50.0), span, &strip, Pressure::mpa(5000.0)).unwrap();
        near(
            "beam sag",
            got.in_mm(),
            bend * 50.0 * 900.0_f64.powi(3) / (5000.0 * moment_mm4),
            1e-9,
        );
        let most = carries(held, span, &strip, Allowable::by_rule(Pressure::mpa(12.0))).unwrap();
        let back = stress(held, most.value(), span, &strip).unwrap();
        near("carries and stress agree", back.in_mpa(), 12.0, 1e-9);
    }
}

fn panel(ratio: f64) -> Panel {
    Panel {
        width: Length::mm(400.0 * ratio),
        height: Length::mm(400.0),
        thickness: Length::mm(12.0),
        stiffness: Pressure::mpa(5000.0),
    }
}
