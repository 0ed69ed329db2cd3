//! The straight way in, and what must be true of any way in.

use crate::error::{ShapeError, positive};
use crate::{Axis, Cuboid, Direction, Overlap, Space};
use spile_quantity::{Area, Length};

/// A body pushed straight to its place: the room it takes on the way, and what is in that way.
#[derive(Debug, Clone, PartialEq)]
pub struct WayIn<'a> {
    /// The room that the body takes, from where it sets out to its place.
    pub swept: Cuboid,
    /// What it runs into on the way or at its place.
    pub overlaps: Vec<Overlap<'a>>,
}

/// The way in for `body`, given at its place, from `travel` away in the direction `from`.
pub fn straight_way<'a>(
    space: &'a Space,
    body: &Cuboid,
    from: Direction,
    travel: Length,
) -> Result<WayIn<'a>, ShapeError> {
    let swept = body.swept(from, travel)?;
    Ok(WayIn { swept, overlaps: space.overlaps(&swept) })
}

/// The room left around `body` as it goes straight along `axis` through the opening whose clear
/// rectangle is that of `opening` seen along `axis`; negative on a side where it does not pass.
pub fn slack_in_opening(opening: &Cuboid, body: &Cuboid, axis: Axis) -> [(Direction, Length); 4] {
    let [first, second] = axis.plane().map(Axis::directions);
    [first[0], first[1], second[0], second[1]].map(|direction| {
        let slack = (opening.face(direction) - body.face(direction)) * direction.sign();
        (direction, slack)
    })
}

/// The height D that a body needs to be stood up from lying: the diagonal of its side \[m\].
///
/// **Formula**: D = √(h² + d²)
/// **Arguments**: h, the body's height when it stands \[m\]; d, the side that lies in the plane in
/// which it is tilted \[m\]; both > 0.
/// **Validity**: a box that is brought in lying down. It needs at least this height whatever the
/// motion, if d is the smaller of its depth and width: with its height at the angle θ to the
/// horizontal it is h·sin θ + d·cos θ high at least, and on the way from 0° to 90° that passes
/// through D. A body that comes in standing needs no more than h.
/// **Errors**: a side that is not a positive number.
/// **Source**: Pythagoras.
///
/// **Example**: the triangle of sides 3, 4 and 5.
/// ```
/// use spile_quantity::Length;
/// let needed = spile_solid::height_to_stand_up(Length::mm(1200.0), Length::mm(900.0))?;
/// assert!((needed.in_mm() - 1500.0).abs() < 1e-9);
/// # Ok::<(), spile_solid::ShapeError>(())
/// ```
pub fn height_to_stand_up(height: Length, depth: Length) -> Result<Length, ShapeError> {
    let height_m = positive(height, "the height of a body [mm]")?;
    let depth_m = positive(depth, "the depth of a body [mm]")?;
    Ok(Length::m(height_m.hypot(depth_m)))
}

/// How a body of three sides passes, or does not, through a rectangular opening.
///
/// Every slack is what is left over, negative by what is missing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Passage {
    /// The sides of the body that cross the opening's width and height when it goes straight in,
    /// square to the opening, the way it fits best.
    pub across: [Length; 2],
    /// What is left then of the opening's width and height.
    pub straight: [Length; 2],
    /// What is left of the opening's shorter side when the body goes in end on, rolled about its
    /// longest side to the best angle; unrolled, if even its shortest side is more than the
    /// opening's longer one.
    pub rolled: Length,
    /// The opening's shorter side less the body's shortest: negative, and no motion takes the body
    /// through.
    pub thinnest: Length,
    /// The opening's diagonal less that of the body's smallest face: negative, and no motion takes
    /// the body through.
    pub diagonal: Length,
    /// The opening's area less that of the body's smallest face: negative, and no motion takes the
    /// body through.
    pub area: Area,
}

/// How a body of the given sides passes through an opening of `width` and `height`.
///
/// **Formula**: with a ≤ b ≤ c the body's sides and p ≤ q the opening's. Straight: of the six ways
/// to choose two sides and lay them across the opening, the one whose smaller slack is largest.
/// Rolled: a × b lies within p × q when a ≤ p and b ≤ q, or else when b > q and
/// p ≥ \[2·a·b·q + (b² − a²)·√(a² + b² − q²)\]/(a² + b²). Necessary for any motion: a ≤ p,
/// a² + b² ≤ p² + q² and a·b ≤ p·q.
/// **Arguments**: all sides \[m\], > 0.
/// **Validity**: a rigid box, and an opening in a thin flat wall. A motion that tips the body in
/// the opening may pass where neither straight nor rolled does; the three necessary slacks hold
/// for that too: at some moment half of the body is through, and the opening then holds a section
/// through the body's middle. That has at least the area a·b, and contains an ellipse that is at
/// least a thick and b long, since the ellipsoid of axes a, b, c lies in the body.
/// **Errors**: a side that is not a positive number.
/// **Source**: rolled: W. B. Carver, American Mathematical Monthly 64 (1957) 114, and J. E. Wetzel,
/// *Rectangles in Rectangles*, Mathematics Magazine 73 (2000) 204, from memory, tested against a
/// search over all angles; the area of central sections: J. D. Vaaler, Pacific Journal of
/// Mathematics 83 (1979) 543, from memory; the ellipse by Cauchy's interlacing of axes.
///
/// **Example**: a strip of width 0.2 m lies across a square of 1 m if its length is at most
/// √2 − 0.2 m.
/// ```
/// use spile_quantity::Length;
/// let long = Length::m(2.0_f64.sqrt() - 0.2);
/// let (thin, unit) = (Length::m(0.2), Length::m(1.0));
/// let passage = spile_solid::passage([thin, Length::m(2.0), long], unit, unit)?;
/// assert!(passage.rolled.in_m().abs() < 1e-12 && passage.straight[1].in_m() < 0.0);
/// # Ok::<(), spile_solid::ShapeError>(())
/// ```
pub fn passage(sides: [Length; 3], width: Length, height: Length) -> Result<Passage, ShapeError> {
    let mut sorted = [0.0; 3];
    for (sorted, side) in sorted.iter_mut().zip(sides) {
        *sorted = positive(side, "a side of a body [mm]")?;
    }
    sorted.sort_by(f64::total_cmp);
    let [a, b, _] = sorted;
    let (width_m, height_m) =
        (positive(width, "the width of an opening [mm]")?, positive(height, "its height [mm]")?);
    let (p, q) = (width_m.min(height_m), width_m.max(height_m));
    let across = if width_m <= height_m { [a, b] } else { [b, a] };
    let needed = if b <= q {
        a
    } else if a <= q {
        let beyond = a * a + b * b - q * q;
        b.min((2.0 * a * b * q + (b * b - a * a) * beyond.sqrt()) / (a * a + b * b))
    } else {
        b
    };
    Ok(Passage {
        across: across.map(Length::m),
        straight: [Length::m(width_m - across[0]), Length::m(height_m - across[1])],
        rolled: Length::m(p - needed),
        thinnest: Length::m(p - a),
        diagonal: Length::m(p.hypot(q) - a.hypot(b)),
        area: Area::m2(p * q - a * b),
    })
}
