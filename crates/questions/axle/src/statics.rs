//! A vehicle as a beam on two supports: what a mass puts on each, and on each side.

use spile_quantity::{Length, Mass};
use thiserror::Error;

/// Why no load can be told.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum Impossible {
    /// A length is not that of a vehicle.
    #[error("{what} of {length_m} m is not between {low_m} and {high_m} m")]
    Length {
        /// Which length.
        what: &'static str,
        /// What it is.
        length_m: f64,
        /// The least it may be.
        low_m: f64,
        /// The most it may be.
        high_m: f64,
    },
    /// A mass that would be nothing or less has no place.
    #[error("a mass of {mass_kg} kg has no place")]
    NoMass {
        /// What it is.
        mass_kg: f64,
    },
}

/// What two supports carry: axles, or coupling and axle of a trailer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Supports {
    /// The front axle, or the coupling.
    pub front: Mass,
    /// The rear axle.
    pub rear: Mass,
}

/// The loads R_f and R_r \[kg\] that a mass m \[kg\] puts on front and rear support.
///
/// **Formula**: R_f = m·x/L; R_r = m − R_f.
///
/// **Arguments**: `mass` m \[kg\], negative where it is taken away; `forward` x \[m\] of the mass's
/// middle forward of the rear support, −25 to 40, negative behind it; `between` L \[m\] from support
/// to support, 0.5 to 25.
///
/// **Validity**: level ground, standing still, two supports that do not turn against the body.
///
/// **Errors**: [`Impossible::Length`] outside these lengths.
///
/// **Source**: moments about the rear support; so in a truck maker's manual for body builders,
/// appendix on weight distribution.
///
/// **Example**: that manual's even payload of 14 500 lb, 156 in behind the front axle of a
/// wheelbase of 214 in, puts 10 570 lb on the rear axle and 3 929.9 lb on the front one:
///
/// ```
/// use spile_axle::statics::supports;
/// use spile_quantity::{Length, Mass};
/// let inches = |n: f64| Length::mm(n * 25.4);
/// let on = supports(Mass::kg(14_500.0), inches(214.0 - 156.0), inches(214.0))?;
/// assert!((on.rear.in_kg() - 10_570.0).abs() < 0.5 && (on.front.in_kg() - 3_929.9).abs() < 0.1);
/// # Ok::<(), spile_axle::statics::Impossible>(())
/// ```
pub fn supports(mass: Mass, forward: Length, between: Length) -> Result<Supports, Impossible> {
    within("a place along a vehicle", forward, -25.0, 40.0)?;
    within("a wheelbase", between, 0.5, 25.0)?;
    let front = mass * (forward / between);
    Ok(Supports { front, rear: mass - front })
}

/// The difference D \[kg\] of left and right wheels that a mass m \[kg\] makes.
///
/// **Formula**: D = 2·m·y/t.
///
/// **Arguments**: `mass` m \[kg\]; `left` y \[m\] of its middle left of the centre line, −3 to 3;
/// `track` t \[m\] from the middle of the left wheels to that of the right ones, 0.5 to 3.
///
/// **Validity**: as [`supports`]; both axles of one track.
///
/// **Errors**: [`Impossible::Length`] outside these lengths.
///
/// **Source**: moments about the right wheels, R_left = m·(1/2 + y/t).
pub fn side_difference(mass: Mass, left: Length, track: Length) -> Result<Mass, Impossible> {
    within("a place across a vehicle", left, -3.0, 3.0)?;
    within("a track", track, 0.5, 3.0)?;
    Ok(mass * (2.0 * (left / track)))
}

/// The mass m \[kg\] that makes up given loads, and its middle x \[m\] forward of the rear support.
///
/// **Formula**: m = R_f + R_r; x = R_f·L/m.
///
/// **Arguments**: `loads` R_f and R_r \[kg\]; `between` L \[m\], 0.5 to 25.
///
/// **Validity**: m > 0.
///
/// **Errors**: [`Impossible::Length`] outside these lengths, [`Impossible::NoMass`] where there is
/// no mass to be placed.
///
/// **Source**: the inverse of [`supports`].
pub fn centre(loads: Supports, between: Length) -> Result<(Mass, Length), Impossible> {
    within("a wheelbase", between, 0.5, 25.0)?;
    let mass = loads.front + loads.rear;
    if mass.in_kg() > 0.0 {
        Ok((mass, between * (loads.front / mass)))
    } else {
        Err(Impossible::NoMass { mass_kg: mass.in_kg() })
    }
}

fn within(what: &'static str, length: Length, low_m: f64, high_m: f64) -> Result<(), Impossible> {
    let length_m = length.in_m();
    if (low_m..=high_m).contains(&length_m) {
        Ok(())
    } else {
        Err(Impossible::Length { what, length_m, low_m, high_m })
    }
}
