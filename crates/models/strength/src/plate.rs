//! Rectangular panels: simply supported by Navier's series, clamped by table, point loads by
//! Roark.

use std::f64::consts::PI;

use spile_quantity::{Force, Length, Pressure};
use spile_tables::plate::{Clamped, central, clamped};

use crate::NoAnswer;
use crate::no_answer::within;

/// Poisson's ratio of every formula here \[1\].
pub const POISSON: f64 = 0.3;

/// A panel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Panel {
    /// One side.
    pub width: Length,
    /// The other.
    pub height: Length,
    /// Its thickness.
    pub thickness: Length,
    /// Modulus of elasticity.
    pub stiffness: Pressure,
}

/// How far a panel sags and how hard it is bent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bent {
    /// The greatest sag.
    pub sag: Length,
    /// The greatest bending stress.
    pub stress: Pressure,
}

/// The coefficients of a simply supported plate under an even load: α of w = α·q·a⁴/D and β, β₁ of
/// the moments across the short and the long span, M = β·q·a², all \[1\].
///
/// **Formula** w = 16/π⁶ · Σ sin sin /(m·n·(m² + n²/r²)²), m, n odd, r = b/a; moments from its
/// second derivatives; ν = 0.3
///
/// **Arguments** `ratio` r, long side over short, 1 to 100 \[1\].
///
/// **Validity** thin isotropic plates, sag below half the thickness.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** Navier's solution: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells,
/// section 30.
///
/// **Example** a square plate: 0.00406 and 0.0479 (table 8):
/// ```
/// let [alpha, beta, _] = spile_strength::plate::supported(1.0).unwrap();
/// assert!((alpha - 0.00406).abs() < 5e-6 && (beta - 0.0479).abs() < 5e-5);
/// ```
pub fn supported(ratio: f64) -> Result<[f64; 3], NoAnswer> {
    let ratio = within("long side over short", ratio, "", 1.0, 100.0)?;
    let odd = |most: u32| (1..=most).step_by(2).map(f64::from);
    let sign = |at: f64| if (at - 1.0) % 4.0 == 0.0 { 1.0 } else { -1.0 };
    let [mut sag, mut across, mut along] = [0.0; 3];
    let most_along = if ratio > 5.0 { 1999 } else { 399 };
    for m in odd(199) {
        for n in odd(most_along) {
            let (mm, nn) = (m * m, (n / ratio) * (n / ratio));
            let term = sign(m) * sign(n) / (m * n * (mm + nn) * (mm + nn));
            sag += term;
            across += term * (mm + POISSON * nn);
            along += term * (nn + POISSON * mm);
        }
    }
    let (four, six) = (16.0 / PI.powi(4), 16.0 / PI.powi(6));
    Ok([six * sag, four * across, four * along])
}

/// A simply supported panel under an even load.
///
/// **Formula** w = α·q·a⁴/D, σ = 6·β·q·a²/t², D = E·t³/(12·(1 − ν²)), α and β by [`supported`]
///
/// **Arguments** `panel`; `pressure` q \[Pa\].
///
/// **Validity** as [`supported`].
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** as [`supported`].
pub fn supported_spread(panel: &Panel, pressure: Pressure) -> Result<Bent, NoAnswer> {
    let (ratio, short_m) = panel.sides()?;
    let [alpha, beta, _] = supported(ratio)?;
    Ok(panel.bent(
        alpha * pressure.in_pa() * short_m.powi(4),
        beta * pressure.in_pa() * short_m.powi(2),
    ))
}

/// A panel clamped all round under an even load.
///
/// **Formula** w = α·q·a⁴/D, σ = 6·β·q·a²/t² at the middle of the long edge
///
/// **Arguments** as [`supported_spread`].
///
/// **Validity** sides of 1 to 2; between the table's rows on straight lines.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** Theory of Plates and Shells, table 35 (recomputed by the Ritz method).
pub fn clamped_spread(panel: &Panel, pressure: Pressure) -> Result<Bent, NoAnswer> {
    let (ratio, short_m) = panel.sides()?;
    let rows: Vec<Clamped> = clamped().iter().map(|entry| entry.value).collect();
    let alpha = between(&rows, ratio, |row| (row.ratio, row.deflection))?;
    let beta = between(&rows, ratio, |row| (row.ratio, row.edge_moment))?;
    Ok(panel.bent(
        alpha * pressure.in_pa() * short_m.powi(4),
        beta * pressure.in_pa() * short_m.powi(2),
    ))
}

/// A simply supported panel loaded on a small circle at its middle.
///
/// **Formula** σ = 3W/(2π·t²)·((1+ν)·ln(2b/(π·r)) + β), y = α·W·b²/(E·t³), b the short side,
/// r = √(1.6·r₀² + t²) − 0.675·t below r₀ = t/2
///
/// **Arguments** `panel`; `force` W \[N\]; `radius` r₀ \[m\], above 0, below a quarter of b.
///
/// **Validity** sides of 1 to 2; between the table's rows on straight lines.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** Roark's Formulas for Stress and Strain, 7th edition, table 11.4 case 1b.
pub fn supported_middle(panel: &Panel, force: Force, radius: Length) -> Result<Bent, NoAnswer> {
    let (ratio, short_m) = panel.sides()?;
    let thick_m = panel.thickness.in_m();
    let radius_m = within("radius of the load", radius.in_m(), "m", 1e-4, 0.25 * short_m)?;
    let even_m = if radius_m < 0.5 * thick_m {
        (1.6 * radius_m * radius_m + thick_m * thick_m).sqrt() - 0.675 * thick_m
    } else {
        radius_m
    };
    let rows: Vec<_> = central().iter().map(|entry| entry.value).collect();
    let alpha = between(&rows, ratio, |row| (row.ratio, row.alpha))?;
    let beta = between(&rows, ratio, |row| (row.ratio, row.beta))?;
    let spread = (1.0 + POISSON) * (2.0 * short_m / (PI * even_m)).ln() + beta;
    let force_n = force.in_n().abs();
    let stress_pa = 3.0 * force_n / (2.0 * PI * thick_m * thick_m) * spread;
    let sag_m = alpha * force_n * short_m * short_m / (panel.stiffness.in_pa() * thick_m.powi(3));
    Ok(Bent { sag: Length::m(sag_m), stress: Pressure::pa(stress_pa) })
}

impl Panel {
    /// Long side over short, and the short side [m].
    fn sides(&self) -> Result<(f64, f64), NoAnswer> {
        let (wide, high) = (self.width.in_m(), self.height.in_m());
        let (short_m, long_m) = (wide.min(high), wide.max(high));
        within("side of the panel", short_m, "m", 1e-2, 20.0)?;
        within("thickness of the panel", self.thickness.in_m(), "m", 1e-4, 0.2 * short_m)?;
        within("stiffness", self.stiffness.in_pa(), "Pa", 1e6, 1e12)?;
        Ok((long_m / short_m, short_m))
    }

    /// From w·D [N·m²... as α·q·a⁴] and the moment over the width [N].
    fn bent(&self, sag_times_rigidity: f64, moment_n: f64) -> Bent {
        let thick_m = self.thickness.in_m();
        let rigidity =
            self.stiffness.in_pa() * thick_m.powi(3) / (12.0 * (1.0 - POISSON * POISSON));
        Bent {
            sag: Length::m(sag_times_rigidity / rigidity),
            stress: Pressure::pa(6.0 * moment_n / (thick_m * thick_m)),
        }
    }
}

/// A value between two rows of a table, on a straight line.
fn between<R>(rows: &[R], at: f64, of: impl Fn(&R) -> (f64, f64)) -> Result<f64, NoAnswer> {
    let points: Vec<(f64, f64)> = rows.iter().map(of).collect();
    let (first, last) = (points[0].0, points[points.len() - 1].0);
    within("long side over short", at, "", first, last)?;
    let above = points.partition_point(|(ratio, _)| *ratio < at).max(1);
    let ((x1, y1), (x2, y2)) = (points[above - 1], points[above]);
    Ok(y1 + (y2 - y1) * (at - x1) / (x2 - x1))
}
