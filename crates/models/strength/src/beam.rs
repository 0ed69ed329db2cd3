//! Strips of panel and tubes of a frame as beams.

use spile_quantity::{Force, Length, Pressure};

use crate::no_answer::within;
use crate::{Allowable, NoAnswer};

/// A section that is bent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Section {
    second_moment_m4: f64,
    modulus_m3: f64,
}

impl Section {
    /// A full rectangle, bent over its height: I = b·h³/12, Z = b·h²/6.
    ///
    /// # Errors
    /// [`NoAnswer::OutOfRange`] for a side of no size.
    pub fn rectangle(width: Length, height: Length) -> Result<Self, NoAnswer> {
        let wide_m = within("width", width.in_m(), "m", 1e-4, 10.0)?;
        let high_m = within("height", height.in_m(), "m", 1e-4, 10.0)?;
        Ok(Self {
            second_moment_m4: wide_m * high_m.powi(3) / 12.0,
            modulus_m3: wide_m * high_m.powi(2) / 6.0,
        })
    }

    /// A tube with square corners: I = (b·h³ − (b−2t)(h−2t)³)/12, Z = 2·I/h.
    ///
    /// # Errors
    /// [`NoAnswer::OutOfRange`] for a wall thicker than half of a side.
    pub fn tube(width: Length, height: Length, wall: Length) -> Result<Self, NoAnswer> {
        let outer = Self::rectangle(width, height)?;
        let most_m = 0.49 * width.min(height).in_m();
        within("wall", wall.in_m(), "m", 1e-4, most_m)?;
        let inner = Self::rectangle(width - wall * 2.0, height - wall * 2.0)?;
        let second_moment_m4 = outer.second_moment_m4 - inner.second_moment_m4;
        Ok(Self { second_moment_m4, modulus_m3: 2.0 * second_moment_m4 / height.in_m() })
    }
}

/// How a beam is held and loaded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Held {
    /// Resting on both ends, load spread evenly.
    RestingSpread,
    /// Resting on both ends, load in the middle.
    RestingMiddle,
    /// Clamped at both ends, load spread evenly.
    ClampedSpread,
    /// Clamped at both ends, load in the middle.
    ClampedMiddle,
    /// Clamped at one end, load spread evenly.
    CantileverSpread,
    /// Clamped at one end, load at the other.
    CantileverEnd,
}

impl Held {
    /// m of M = F·L/m, and k of w = F·L³/(k·E·I).
    const fn numbers(self) -> (f64, f64) {
        match self {
            Self::RestingSpread => (8.0, 384.0 / 5.0),
            Self::RestingMiddle => (4.0, 48.0),
            Self::ClampedSpread => (12.0, 384.0),
            Self::ClampedMiddle => (8.0, 192.0),
            Self::CantileverSpread => (2.0, 8.0),
            Self::CantileverEnd => (1.0, 3.0),
        }
    }
}

/// The greatest bending stress of a beam, σ \[Pa\].
///
/// **Formula** σ = F·L/(m·Z), m = 8 resting and spread, 4 resting and in the middle, 12 and 8
/// clamped, 2 and 1 for a cantilever
///
/// **Arguments** `held`; `force` F \[N\], all of it; `span` L \[m\], above 0; `section`.
///
/// **Validity** slender beams, small sag, within the elastic range.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** elementary beam theory; Gere and Timoshenko, Mechanics of Materials, appendix.
pub fn stress(
    held: Held,
    force: Force,
    span: Length,
    section: &Section,
) -> Result<Pressure, NoAnswer> {
    let span_m = within("span", span.in_m(), "m", 1e-3, 20.0)?;
    Ok(Pressure::pa(force.in_n().abs() * span_m / (held.numbers().0 * section.modulus_m3)))
}

/// The greatest sag of a beam, w \[m\].
///
/// **Formula** w = F·L³/(k·E·I), k = 384/5, 48, 384, 192, 8, 3 in the order of [`Held`]
///
/// **Arguments** as [`stress`]; `stiffness` E \[Pa\], above 0.
///
/// **Validity** as [`stress`].
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** as [`stress`].
pub fn sag(
    held: Held,
    force: Force,
    span: Length,
    section: &Section,
    stiffness: Pressure,
) -> Result<Length, NoAnswer> {
    let span_m = within("span", span.in_m(), "m", 1e-3, 20.0)?;
    let stiffness_pa = within("stiffness", stiffness.in_pa(), "Pa", 1e6, 1e12)?;
    let bent = held.numbers().1 * stiffness_pa * section.second_moment_m4;
    Ok(Length::m(force.in_n().abs() * span_m.powi(3) / bent))
}

/// The load at which a beam uses up what its material allows, F \[N\].
///
/// **Formula** F = m·Z·σ/L, m as in [`stress`]
///
/// **Arguments** as [`stress`]; `allowed` σ \[Pa\].
///
/// **Validity** as [`stress`].
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** as [`stress`].
pub fn carries(
    held: Held,
    span: Length,
    section: &Section,
    allowed: Allowable<Pressure>,
) -> Result<Allowable<Force>, NoAnswer> {
    let one = stress(held, Force::n(1.0), span, section)?;
    Ok(Allowable::by_rule(Force::n(allowed.value().in_pa() / one.in_pa())))
}
