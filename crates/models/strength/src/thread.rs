//! Stripping of threads, in nuts, in tapped holes and in thin walls.

use std::f64::consts::PI;

use spile_quantity::{Area, Force, Length, Pressure};
use spile_tables::fastener::{Thread, thread};

use crate::no_answer::within;
use crate::{NoAnswer, Ultimate};

/// Shear strength over tensile strength of steel and aluminium \[1\].
///
/// **Source** from memory: 0.55 to 0.6; the smaller is taken.
pub const SHEAR_SHARE: f64 = 0.55;

/// The area that shears when the bolt's own threads strip, A \[m²\].
///
/// **Formula** A = π/P · L_e · K · (P/2 + 0.57735·(E − K)), K the greatest minor diameter of the
/// hole, E the least pitch diameter of the bolt
///
/// **Arguments** `size`, limits of the thread \[m\]; `engaged` L_e \[m\], 0 to 3 diameters.
///
/// **Validity** 60° threads engaged over whole turns; below one turn only a bound.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** Machinery's Handbook, 24th edition (a paraphrase); FED-STD-H28/2B.
///
/// **Example** M6 over 6 mm: 51.875 mm² (Bickford):
/// ```
/// use spile_quantity::Length;
/// let m6 = spile_tables::fastener::thread(Length::mm(6.0)).unwrap().value;
/// let area = spile_strength::thread::bolt_strip_area(&m6, Length::mm(6.0)).unwrap();
/// assert!((area.in_mm2() - 51.875).abs() < 0.005);
/// ```
pub fn bolt_strip_area(size: &Thread, engaged: Length) -> Result<Area, NoAnswer> {
    let (engaged_m, pitch_m) = engagement(size, engaged)?;
    let minor_m = size.minor_max.in_m();
    let tooth_m = 0.5 * pitch_m + TAN_30 * (size.pitch_min.in_m() - minor_m);
    Ok(Area::m2(PI / pitch_m * engaged_m * minor_m * tooth_m))
}

/// The area that shears when the threads of a nut or hole strip, A \[m²\].
///
/// **Formula** A = π/P · L_e · D · (P/2 + 0.57735·(D − E)), D the least major diameter of the bolt,
/// E the greatest pitch diameter of the hole
///
/// **Arguments** as [`bolt_strip_area`].
///
/// **Validity** as [`bolt_strip_area`].
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** as [`bolt_strip_area`].
pub fn hole_strip_area(size: &Thread, engaged: Length) -> Result<Area, NoAnswer> {
    let (engaged_m, pitch_m) = engagement(size, engaged)?;
    let major_m = size.major_min.in_m();
    let tooth_m = 0.5 * pitch_m + TAN_30 * (major_m - size.pitch_max.in_m());
    Ok(Area::m2(PI / pitch_m * engaged_m * major_m * tooth_m))
}

/// How many turns of a thread a wall engages, n \[1\].
///
/// **Formula** n = t/P
///
/// **Arguments** `wall` t, `pitch` P \[m\], above 0.
///
/// **Validity** threads that go through the wall.
///
/// **Source** plain geometry; at least two turns: common practice, no source.
pub fn turns(wall: Length, pitch: Length) -> f64 {
    wall.in_m() / pitch.in_m()
}

/// The load at which a hole tapped in a wall strips, F \[N\].
///
/// **Formula** F = 0.55 · R_m · A, A by [`hole_strip_area`] over the wall
///
/// **Arguments** `nominal`, a coarse thread M4 to M10; `wall` t \[m\], up to 3 diameters;
/// `ultimate` R_m \[Pa\] of the wall.
///
/// **Validity** the wall's threads give first, as in tube; below two turns it is a bound that
/// practice does not trust.
///
/// **Errors** [`NoAnswer`] for a thread of no table and a wall out of range.
///
/// **Source** areas as above; 0.55 from memory.
pub fn tapped_wall(
    nominal: Length,
    wall: Length,
    ultimate: Ultimate<Pressure>,
) -> Result<Ultimate<Force>, NoAnswer> {
    let size = thread(nominal)
        .ok_or_else(|| NoAnswer::NotInTables { what: format!("M{}", nominal.in_mm()) })?;
    let area = hole_strip_area(&size.value, wall)?;
    Ok(Ultimate(Force::n(SHEAR_SHARE * ultimate.0.in_pa() * area.in_m2())))
}

const TAN_30: f64 = 0.577_35;

fn engagement(size: &Thread, engaged: Length) -> Result<(f64, f64), NoAnswer> {
    let most_m = 3.0 * size.thread.in_m();
    Ok((within("engaged length", engaged.in_m(), "m", 0.0, most_m)?, size.pitch.in_m()))
}
