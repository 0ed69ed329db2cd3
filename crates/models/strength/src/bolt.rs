//! Bolts: stress area, proof and breaking load, tension with shear.

use spile_quantity::{Area, Force, Length};
use spile_tables::Entry;
use spile_tables::fastener::{bolt_class, thread};

use crate::no_answer::within;
use crate::{Allowable, Factor, NoAnswer, Proof, Ultimate};

/// What is asked of a bolt beyond EN 1993-1-8's own 1.25: loads are not factored here.
pub const LOADS: Factor =
    Factor { value: 1.5, why: "loads are taken without a factor of their own" };

/// The stress area of a metric thread, A_s \[m²\].
///
/// **Formula** A_s = π/4 · (d − 0.938194·P)²
///
/// **Arguments** `nominal` d \[m\], 1 to 100 mm; `pitch` P \[m\], above 0, below half of d.
///
/// **Validity** ISO metric screw threads of the basic profile.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** ISO 898-1:2013, 9.1.6.1.
///
/// **Example** M6 × 1 has 20.1 mm²:
/// ```
/// use spile_quantity::Length;
/// let area = spile_strength::bolt::stress_area(Length::mm(6.0), Length::mm(1.0)).unwrap();
/// assert!((area.in_mm2() - 20.1).abs() < 0.05);
/// ```
pub fn stress_area(nominal: Length, pitch: Length) -> Result<Area, NoAnswer> {
    let nominal_m = within("nominal diameter", nominal.in_m(), "m", 1e-3, 0.1)?;
    let pitch_m = within("pitch", pitch.in_m(), "m", 1e-4, 0.5 * nominal_m)?;
    let across_m = nominal_m - 0.938_194 * pitch_m;
    Ok(Area::m2(std::f64::consts::FRAC_PI_4 * across_m * across_m))
}

/// The load that a bolt breaks at, F \[N\].
///
/// **Formula** F = A_s · R_m
///
/// **Arguments** `nominal` d, a coarse thread of the table, M4 to M10; `class`, a property class.
///
/// **Validity** plain tension, at room temperature.
///
/// **Errors** [`NoAnswer::NotInTables`].
///
/// **Source** ISO 898-1:2013 table 5; ISO 3506-1 for stainless classes.
///
/// **Example** M8 of class 8.8 breaks at 29,200 N or more (printed):
/// ```
/// use spile_quantity::Length;
/// let load = spile_strength::bolt::breaking(Length::mm(8.0), "8.8").unwrap().value.0;
/// assert!((load.in_n() / 29_200.0 - 1.0).abs() < 0.004);
/// ```
pub fn breaking(nominal: Length, class: &str) -> Result<Entry<Ultimate<Force>>, NoAnswer> {
    let (size, class) = found(nominal, class)?;
    Ok(class.map(|c| Ultimate(Force::n(c.ultimate.in_pa() * size.in_m2()))))
}

/// The load that a bolt stands without a set, F \[N\].
///
/// **Formula** F = A_s · S_p
///
/// **Arguments** as [`breaking`].
///
/// **Validity** carbon-steel classes.
///
/// **Errors** [`NoAnswer::NotInTables`], for a stainless class too.
///
/// **Source** ISO 898-1:2013 table 4.
pub fn proof(nominal: Length, class: &str) -> Result<Entry<Proof<Force>>, NoAnswer> {
    let (size, class) = found(nominal, class)?;
    let stress = class.value.proof.ok_or_else(|| NoAnswer::NotInTables {
        what: format!("a proof stress of {}", class.value.class),
    })?;
    Ok(class.map(|_| Proof(Force::n(stress.in_pa() * size.in_m2()))))
}

/// What a bolt bears along and across its axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Resistance {
    /// Along its axis.
    pub tension: Allowable<Force>,
    /// Across its axis, one plane, through the thread.
    pub shear: Allowable<Force>,
}

/// What a bolt bears, F_t and F_v \[N\].
///
/// **Formula** F_t = 0.9·R_m·A_s/(1.25·1.5), F_v = α·R_m·A_s/(1.25·1.5), α = 0.6, but 0.5 for the
/// classes 4.8, 5.8, 6.8, 10.9, 12.9 and stainless
///
/// **Arguments** as [`breaking`].
///
/// **Validity** one shear plane through the thread; loads without a factor, hence the 1.5.
///
/// **Errors** [`NoAnswer::NotInTables`].
///
/// **Source** EN 1993-1-8:2005 table 3.4, γ_M2 = 1.25; γ_Q = 1.5 of EN 1990.
///
/// **Example** before the 1.5, a bolt with 244.794 mm² and 800 MPa has 94.0 kN (188.002 kN in two
/// planes, a library's test): see the crate's tests.
pub fn resistance(nominal: Length, class: &str) -> Result<Entry<Resistance>, NoAnswer> {
    let broken = breaking(nominal, class)?;
    let Ultimate(load) = broken.value;
    Ok(broken.map(|_| Resistance {
        tension: design_tension(load).over(LOADS),
        shear: design_shear(load, class).over(LOADS),
    }))
}

/// The tension that EN 1993-1-8 lets a factored load reach, of a bolt that breaks at `load`.
pub fn design_tension(load: Force) -> Ultimate<Force> {
    Ultimate(load * (0.9 / 1.25))
}

/// The shear that EN 1993-1-8 lets a factored load reach in one plane through the thread.
pub fn design_shear(load: Force, class: &str) -> Ultimate<Force> {
    let tough = ["4.6", "5.6", "8.8"].contains(&class.trim());
    Ultimate(load * (if tough { 0.6 } else { 0.5 } / 1.25))
}

impl Resistance {
    /// The share of the bolt that tension and shear use together \[1\].
    ///
    /// **Formula** max(F_v/F_v,R + F_t/(1.4·F_t,R), F_t/F_t,R)
    ///
    /// **Arguments** `tension`, `shear` \[N\].
    ///
    /// **Validity** as [`resistance`].
    ///
    /// **Source** EN 1993-1-8:2005 table 3.4.
    pub fn used(&self, tension: Force, shear: Force) -> f64 {
        let pulled = self.tension.used(tension);
        (self.shear.used(shear) + pulled / 1.4).max(pulled)
    }
}

/// The stress area and the class.
fn found(
    nominal: Length,
    class: &str,
) -> Result<(Area, &'static Entry<spile_tables::fastener::BoltClass>), NoAnswer> {
    let size = thread(nominal)
        .ok_or_else(|| NoAnswer::NotInTables { what: format!("M{}", nominal.in_mm()) })?;
    let class = bolt_class(class)
        .ok_or_else(|| NoAnswer::NotInTables { what: format!("bolts of class {class}") })?;
    Ok((size.value.stress_area, class))
}
