//! Arcs as chains of short edges that never give away room.

use crate::error::{ShapeError, finite, positive};
use crate::rect::At;
use spile_quantity::{Angle, Length};
use std::f64::consts::{FRAC_PI_4, TAU};

/// On which side of an arc the solid thing lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stuff {
    /// Within the circle, as in a wheel arch or a pipe: the edges run outside of the arc.
    Inside,
    /// Beyond the circle, as around a round hole: the edges run inside of the arc.
    Outside,
}

/// The most edges that an arc is divided into.
const MOST_PARTS: f64 = 100_000.0;

/// An arc as points, both ends included, such that the thing drawn by them contains the thing
/// drawn by the arc and nowhere reaches further than `sagitta` beyond it.
///
/// **Formula**: inscribed edges over the angle δ fall short of the radius r by the sagitta
/// r·(1 − cos(δ/2)); circumscribed ones exceed it by r·(1/cos(δ/2) − 1). The arc is divided into
/// the least number of equal parts for which this is at most `sagitta`.
/// **Arguments**: `centre` \[m\]; `radius` \[m\] > 0; `from` \[rad\], |from| ≤ 2π, counter-clockwise from the
/// plane's first axis; `sweep` \[rad\], 0 < |sweep| ≤ 2π, counter-clockwise where positive;
/// `sagitta` \[m\] > 0.
/// **Validity**: exact. An edge turns by at most 90°, however large the sagitta.
/// **Errors**: a figure outside its range; more than 100,000 edges.
/// **Source**: plane trigonometry.
///
/// **Example**: a chord of 60° in a circle of 300 mm has a sagitta of 300·(1 − cos 30°) = 40.19 mm.
/// ```
/// use spile_quantity::{Angle, Length};
/// use spile_solid::{Stuff, arc};
/// let centre = [Length::m(0.0), Length::m(0.0)];
/// let (from, sweep) = (Angle::degrees(0.0), Angle::degrees(60.0));
/// let coarse = arc(centre, Length::mm(300.0), from, sweep, Length::mm(40.2), Stuff::Outside)?;
/// let finer = arc(centre, Length::mm(300.0), from, sweep, Length::mm(40.1), Stuff::Outside)?;
/// assert_eq!((coarse.len(), finer.len()), (2, 3));
/// # Ok::<(), spile_solid::ShapeError>(())
/// ```
pub fn arc(
    centre: [Length; 2],
    radius: Length,
    from: Angle,
    sweep: Angle,
    sagitta: Length,
    stuff: Stuff,
) -> Result<Vec<[Length; 2]>, ShapeError> {
    let what = "the centre of an arc";
    let centre_m = [finite(centre[0], what)?, finite(centre[1], what)?];
    let radius_m = positive(radius, "the radius of an arc [mm]")?;
    let sagitta_m = positive(sagitta, "the sagitta of an arc [mm]")?;
    let turn = Angle::rad(TAU);
    let within_a_turn = from.in_rad().abs() <= TAU;
    if !within_a_turn {
        let what = "the bearing at which an arc begins";
        return Err(ShapeError::AngleOutside { what, value: from, low: -turn, high: turn });
    }
    if !(sweep.in_rad() != 0.0 && sweep.in_rad().abs() <= TAU) {
        let what = "the sweep of an arc";
        return Err(ShapeError::AngleOutside { what, value: sweep, low: -turn, high: turn });
    }
    not_too_fine(radius_m, sweep.in_rad(), sagitta_m, stuff)?;
    let points = arc_m(centre_m, radius_m, from.in_rad(), sweep.in_rad(), sagitta_m, stuff);
    Ok(points.into_iter().map(|at| at.map(Length::m)).collect())
}

/// A full circle as a closed outline around a solid thing: a pipe, a bottle, a post.
///
/// **Formula**, **Arguments**, **Errors**, **Source**: as [`arc`], with the edges outside.
///
/// **Example**: a square around a circle of 10 mm reaches 10·√2 mm at its corners.
/// ```
/// use spile_quantity::Length;
/// let centre = [Length::m(0.0), Length::m(0.0)];
/// let corners = spile_solid::circle(centre, Length::mm(10.0), Length::mm(5.0))?;
/// assert_eq!(corners.len(), 4);
/// let reach = corners[0][0].in_mm().hypot(corners[0][1].in_mm());
/// assert!((reach - 14.142).abs() < 5e-4);
/// # Ok::<(), spile_solid::ShapeError>(())
/// ```
pub fn circle(
    centre: [Length; 2],
    radius: Length,
    sagitta: Length,
) -> Result<Vec<[Length; 2]>, ShapeError> {
    let (from, sweep) = (Angle::rad(0.0), Angle::rad(TAU));
    let mut points = arc(centre, radius, from, sweep, sagitta, Stuff::Inside)?;
    // Both ends of the arc lie at the same place, in the middle of a straight edge.
    points.pop();
    points.remove(0);
    Ok(points)
}

pub(crate) fn arc_m(
    centre_m: At,
    radius_m: f64,
    from_rad: f64,
    sweep_rad: f64,
    sagitta_m: f64,
    stuff: Stuff,
) -> Vec<At> {
    let at = |radius_m: f64, angle_rad: f64| {
        [centre_m[0] + radius_m * angle_rad.cos(), centre_m[1] + radius_m * angle_rad.sin()]
    };
    let parts = parts(radius_m, sweep_rad, sagitta_m, stuff);
    let step_rad = sweep_rad / parts;
    let mut points = vec![at(radius_m, from_rad)];
    let mut part = 0.0;
    while part < parts {
        match stuff {
            Stuff::Inside => {
                let outer_m = radius_m / (step_rad / 2.0).cos();
                points.push(at(outer_m, from_rad + (part + 0.5) * step_rad));
            }
            Stuff::Outside if part + 1.0 < parts => {
                points.push(at(radius_m, from_rad + (part + 1.0) * step_rad));
            }
            Stuff::Outside => {}
        }
        part += 1.0;
    }
    points.push(at(radius_m, from_rad + sweep_rad));
    points
}

/// Whether an arc as fine as that has no more edges than are allowed.
pub(crate) fn not_too_fine(
    radius_m: f64,
    sweep_rad: f64,
    sagitta_m: f64,
    stuff: Stuff,
) -> Result<(), ShapeError> {
    let parts = parts(radius_m, sweep_rad, sagitta_m, stuff);
    if parts <= MOST_PARTS {
        Ok(())
    } else {
        Err(ShapeError::ArcTooFine { parts, most: MOST_PARTS })
    }
}

/// The least whole number of equal parts whose sagitta is at most `sagitta_m`.
fn parts(radius_m: f64, sweep_rad: f64, sagitta_m: f64, stuff: Stuff) -> f64 {
    let ratio = sagitta_m / radius_m;
    let half_rad = match stuff {
        Stuff::Inside => (1.0 / (1.0 + ratio)).acos(),
        Stuff::Outside => (1.0 - ratio).max(-1.0).acos(),
    };
    (sweep_rad.abs() / (2.0 * half_rad.min(FRAC_PI_4)) - 1e-9).ceil().max(1.0)
}
