//! A glued face: shear along it, peel at its edge.

use spile_quantity::{Force, Length, Pressure};

use crate::no_answer::within;
use crate::{Factor, NoAnswer};

/// What is kept of a glue's printed lap shear: its surface is never the laboratory's.
///
/// **Source** from memory: 10 to 20 % for short loads.
pub const LAP: Factor = Factor { value: 7.0, why: "the surface, age, damp and heat" };

/// Peel over shear that a glue bears \[1\]: peel is the weak one.
///
/// **Source** common practice, no source.
pub const PEEL_SHARE: f64 = 1.0 / 3.0;

/// The stresses in a glued face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stress {
    /// Along the face.
    pub shear: Pressure,
    /// Away from it, at the edge where it begins to peel.
    pub peel: Pressure,
}

/// Shear τ and peel σ of a glued face \[Pa\].
///
/// **Formula** τ = F/(b·l); σ = N/(b·l) + 6·F·h/(b·l²)
///
/// **Arguments** `along` F, `away` N \[N\], what presses on is none; `size` l along F and b across
/// \[m\]; `lever` h \[m\], how far in front of the face F acts.
///
/// **Validity** a stiff thing on an even layer; stresses at the ends of thin layers are higher.
///
/// **Errors** [`NoAnswer::OutOfRange`] for a face without area.
///
/// **Source** elementary mechanics: direct stress and bending of the glued area.
pub fn stress(
    along: Force,
    away: Force,
    size: [Length; 2],
    lever: Length,
) -> Result<Stress, NoAnswer> {
    let long_m = within("length of the glue", size[0].in_m(), "m", 1e-3, 20.0)?;
    let wide_m = within("width of the glue", size[1].in_m(), "m", 1e-3, 20.0)?;
    let area_m2 = long_m * wide_m;
    let moment_n_m = along.in_n().abs() * lever.in_m();
    let peel_pa = away.in_n().max(0.0) / area_m2 + 6.0 * moment_n_m / (area_m2 * long_m);
    Ok(Stress { shear: Pressure::pa(along.in_n().abs() / area_m2), peel: Pressure::pa(peel_pa) })
}
