//! Doors and lids: what swings about a hinge line.

use crate::arc::{Stuff, arc_m, not_too_fine};
use crate::error::{ShapeError, finite, positive};
use crate::prism::shadow;
use crate::rect::{At, Rect};
use crate::{Axis, Cuboid, Direction, Nearest, Point, Prism, Profile, Solid, TOUCH_M};
use spile_quantity::{Angle, Length};
use std::f64::consts::{FRAC_PI_2, TAU};

/// How far the edges of [`Swing::swept`] reach beyond the true arc at most: 0.1 mm.
pub const SAGITTA: Length = Length::m(1e-4);

/// A door or lid, given as the box that it fills when closed, which swings about a hinge line.
///
/// ```
/// use spile_quantity::{Angle, Length};
/// use spile_solid::{Axis, Cuboid, Direction, Point, Solid, Swing};
/// // A fridge door 440 mm wide and 60 mm thick, hinged at its left edge on the outer face.
/// let leaf = Cuboid::new(Point::mm(0.0, 0.0, 0.0), Point::mm(440.0, 60.0, 760.0))?;
/// let hinge = Point::mm(440.0, 60.0, 0.0);
/// let door = Swing::new(leaf, Axis::Z, hinge, Direction::Left, Angle::degrees(110.0))?;
/// assert!((door.reach().in_mm() - 444.07).abs() < 0.005);
/// // A cupboard side, square to the front, 300 mm beyond the hinge.
/// let side = Cuboid::new(Point::mm(740.0, 60.0, 0.0), Point::mm(760.0, 500.0, 900.0))?;
/// assert_eq!(door.free_angle(&side.into()), None); // at 110° it is 150 mm past the hinge
/// # Ok::<(), spile_solid::ShapeError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Swing {
    leaf: Cuboid,
    axis: Axis,
    hinge: At,
    /// 1 if it turns from the plane's first axis to the second, −1 if it turns back.
    sense: f64,
    angle: Angle,
    swept: Vec<Prism>,
}

impl Swing {
    /// The closed `leaf`, hinged on the line through `hinge` along `axis`, whose free side sets
    /// off towards `opens` and turns through `angle`.
    ///
    /// **Errors**: an angle that is not above 0° and at most 360°; a direction along the hinge
    /// line; a leaf whose middle lies on the hinge line.
    pub fn new(
        leaf: Cuboid,
        axis: Axis,
        hinge: Point,
        opens: Direction,
        angle: Angle,
    ) -> Result<Self, ShapeError> {
        if !(angle.in_rad() > 0.0 && angle.in_rad() <= TAU) {
            let (what, low, high) = ("the swing", Angle::rad(0.0), Angle::rad(TAU));
            return Err(ShapeError::AngleOutside { what, value: angle, low, high });
        }
        if opens.axis() == axis {
            return Err(ShapeError::OpensAlongHinge { axis, opens });
        }
        let [first, second] = axis.plane();
        let at = [finite(hinge.along(first), "a hinge")?, finite(hinge.along(second), "a hinge")?];
        let middle = shadow(&leaf, axis).centre();
        // Turning from the first axis to the second moves what lies at (a, b) towards (−b, a).
        let arm_m = if opens.axis() == second { middle[0] - at[0] } else { at[1] - middle[1] };
        if arm_m.abs() <= TOUCH_M {
            return Err(ShapeError::HingedInTheMiddle);
        }
        let sense = opens.sign() * arm_m.signum();
        let mut made = Self { leaf, axis, hinge: at, sense, angle, swept: Vec::new() };
        made.swept = made.outlines(SAGITTA.in_m())?;
        Ok(made)
    }

    /// The box that the leaf fills when closed.
    pub const fn leaf(&self) -> &Cuboid {
        &self.leaf
    }

    /// How far it opens.
    pub const fn angle(&self) -> Angle {
        self.angle
    }

    /// The greatest distance of the leaf from its hinge line, the radius of the arc that it needs.
    ///
    /// **Formula** R = √(w² + t²), for a leaf of width w and thickness t hinged at a corner.
    ///
    /// **Validity** any leaf: the farthest of its corners from the hinge line.
    ///
    /// **Source** Pythagoras.
    pub fn reach(&self) -> Length {
        let corners = self.closed().corners();
        Length::m(corners.map(|at| at[0].hypot(at[1])).into_iter().fold(0.0, f64::max))
    }

    /// All the room that the leaf takes while it opens, in one or several pieces that may overlap;
    /// it contains the true room and reaches at most [`SAGITTA`] beyond it.
    pub fn swept(&self) -> &[Prism] {
        &self.swept
    }

    /// As [`Swing::swept`], with edges that reach at most `sagitta` beyond the true arc.
    ///
    /// **Formula** a leaf of cross-section A whose nearest and farthest points from the hinge
    /// line are at r and R sweeps, over the angle α, the area A + α·(R² − r²)/2, where it stands
    /// wholly in one quadrant about the hinge line.
    ///
    /// **Arguments** `sagitta` \[mm\], above 0.
    ///
    /// **Validity** any leaf; the formula for the area where the leaf stands in one quadrant.
    ///
    /// **Errors** [`ShapeError`] for a sagitta that is none.
    ///
    /// **Source** integrating the arc length r·(α + the leaf's own angle) over the radius.
    pub fn swept_within(&self, sagitta: Length) -> Result<Vec<Prism>, ShapeError> {
        self.outlines(positive(sagitta, "the sagitta of an arc [mm]")?)
    }

    /// The smallest distance between the room that the leaf takes while it opens and `solid`.
    pub fn nearest(&self, solid: &Solid) -> Nearest {
        let closed = Solid::Cuboid(self.leaf).nearest(solid);
        self.swept
            .iter()
            .map(|piece| solid.nearest_to_prism(piece).reversed())
            .fold(closed, Nearest::or_shorter)
    }

    /// How far the leaf opens before it touches `solid`; `None` if it opens all the way.
    ///
    /// **Formula** seen along the hinge line, the leaf touches first where a corner of `solid`
    /// meets a side of the leaf, or where a corner of the leaf, on its circle, meets an edge of
    /// `solid`. The least of these angles is the answer.
    ///
    /// **Arguments** `solid`, anything that stands still.
    ///
    /// **Validity** exact for a leaf that gives way by [`TOUCH`](crate::TOUCH) on each side, so
    /// that what only grazes it does not stop it.
    ///
    /// **Source** plane geometry; what stands before the leaf's ends along the hinge line counts
    /// with the part that lies between them.
    ///
    /// **Example** a thin leaf of 500 mm, hinged 300 mm from a wall that is square to it, touches
    /// it beyond the right angle by arcsin(300/500) = 36.87°.
    /// ```
    /// use spile_quantity::{Angle, Length};
    /// use spile_solid::{Axis, Cuboid, Direction, Point, Swing};
    /// let leaf = Cuboid::new(Point::mm(0.0, 0.0, 0.0), Point::mm(500.0, 0.02, 700.0))?;
    /// let (hinge, whole) = (Point::mm(0.0, 0.0, 0.0), Angle::degrees(180.0));
    /// let door = Swing::new(leaf, Axis::Z, hinge, Direction::Left, whole)?;
    /// let wall = Cuboid::new(Point::mm(-320.0, -100.0, 0.0), Point::mm(-300.0, 900.0, 700.0))?;
    /// let free = door.free_angle(&wall.into()).unwrap();
    /// assert!((free.in_degrees() - 126.87).abs() < 0.01);
    /// # Ok::<(), spile_solid::ShapeError>(())
    /// ```
    pub fn free_angle(&self, solid: &Solid) -> Option<Angle> {
        let slab = self.leaf.interval_m(self.axis);
        let leaf = self.closed().shrunk();
        let mut free_rad = f64::INFINITY;
        for seen in solid.shadows(self.axis, slab) {
            let points = seen.points_m().iter().map(|at| self.to_hinge(*at)).collect();
            let seen = Profile::from_simple(points);
            if seen.meets(&leaf) {
                return Some(Angle::rad(0.0));
            }
            for (turn_rad, part) in quadrants(&leaf) {
                free_rad = free_rad.min(first_touch_rad(&part, turn_rad, &seen));
            }
        }
        (free_rad < self.angle.in_rad()).then(|| Angle::rad(free_rad))
    }

    /// The closed leaf seen along the hinge line: the hinge at the origin, opening
    /// counter-clockwise.
    fn closed(&self) -> Rect {
        let seen = shadow(&self.leaf, self.axis);
        Rect::around(&seen.corners().map(|at| self.to_hinge(at)))
    }

    fn to_hinge(&self, at: At) -> At {
        [at[0] - self.hinge[0], (at[1] - self.hinge[1]) * self.sense]
    }

    fn outlines(&self, sagitta_m: f64) -> Result<Vec<Prism>, ShapeError> {
        let (low, high) = self.leaf.interval_m(self.axis);
        let (reach_m, angle_rad) = (self.reach().in_m(), self.angle.in_rad());
        for stuff in [Stuff::Inside, Stuff::Outside] {
            not_too_fine(reach_m, angle_rad, sagitta_m, stuff)?;
        }
        // In steps of at most a right angle, so that no outline closes on itself.
        let steps = (angle_rad / FRAC_PI_2 - 1e-9).ceil().max(1.0);
        let step_rad = angle_rad / steps;
        let mut pieces = Vec::new();
        for (turn_rad, part) in quadrants(&self.closed()) {
            let mut step = 0.0;
            while step < steps {
                let outline = swept_outline(&part, step_rad, sagitta_m);
                let points = outline.into_iter().map(|at| {
                    let at = turned(at, turn_rad + step * step_rad);
                    [self.hinge[0] + at[0], self.hinge[1] + at[1] * self.sense]
                });
                let profile = Profile::from_simple(points.collect());
                pieces.push(Prism::new(self.axis, profile, Length::m(low), Length::m(high))?);
                step += 1.0;
            }
        }
        Ok(pieces)
    }
}

/// The parts of a rectangle in the four quadrants about the origin, each turned into the first one,
/// with the angle that turns it back.
fn quadrants(leaf: &Rect) -> Vec<(f64, Rect)> {
    let mut parts = Vec::new();
    for (turns, (x_sign, y_sign)) in
        [(0.0, (1.0, 1.0)), (1.0, (-1.0, 1.0)), (2.0, (-1.0, -1.0)), (3.0, (1.0, -1.0))]
    {
        let half = |i: usize, sign: f64| {
            let (a, b) = (leaf.low[i] * sign, leaf.high[i] * sign);
            (a.min(b).max(0.0), a.max(b).max(0.0))
        };
        let (x, y) = (half(0, x_sign), half(1, y_sign));
        if x.1 - x.0 <= TOUCH_M || y.1 - y.0 <= TOUCH_M {
            continue;
        }
        let (first, second) = if x_sign * y_sign > 0.0 { (x, y) } else { (y, x) };
        let part = Rect { low: [first.0, second.0], high: [first.1, second.1] };
        parts.push((turns * FRAC_PI_2, part));
    }
    parts
}

/// What a rectangle of the first quadrant sweeps while it turns about the origin by `angle_rad`,
/// at most a right angle: out along its lower side, round with its far corner, back along its
/// turned upper side, round with its near corner.
fn swept_outline(part: &Rect, angle_rad: f64, sagitta_m: f64) -> Vec<At> {
    let [near, lower, far, upper] = part.corners();
    let (near_m, far_m) = (near[0].hypot(near[1]), far[0].hypot(far[1]));
    let bearing = |at: At| at[1].atan2(at[0]);
    let mut outline = vec![near, lower];
    outline.extend(arc_m([0.0; 2], far_m, bearing(far), angle_rad, sagitta_m, Stuff::Inside));
    outline.push(turned(upper, angle_rad));
    if near_m > TOUCH_M {
        let from_rad = bearing(near) + angle_rad;
        let back = arc_m([0.0; 2], near_m, from_rad, -angle_rad, sagitta_m, Stuff::Outside);
        outline.extend(&back[..back.len() - 1]);
    }
    outline
}

/// The angle by which a rectangle of the first quadrant, turned back by `turn_rad`, first touches
/// `seen` as it turns on about the origin.
fn first_touch_rad(part: &Rect, turn_rad: f64, seen: &Profile) -> f64 {
    let [near, _, far, upper] = part.corners();
    let radius = |at: At| at[0].hypot(at[1]);
    let (near_m, far_m, upper_m) = (radius(near), radius(far), radius(upper));
    // The bearing of the leaf's leading side at a distance from the hinge.
    let leading_rad = |radius_m: f64| {
        if radius_m <= upper_m {
            (part.low[0] / radius_m).clamp(-1.0, 1.0).acos()
        } else {
            (part.high[1] / radius_m).clamp(-1.0, 1.0).asin()
        }
    };
    let way_rad = |at: At, bearing_rad: f64| {
        let way = (at[1].atan2(at[0]) - bearing_rad - turn_rad).rem_euclid(TAU);
        if way > TAU - 1e-9 { 0.0 } else { way }
    };
    let mut first_rad = f64::INFINITY;
    for (a, b) in seen.edges() {
        let radius_m = radius(a);
        if (near_m..=far_m).contains(&radius_m) && radius_m > 0.0 {
            first_rad = first_rad.min(way_rad(a, leading_rad(radius_m)));
        }
        for corner in [near, upper, far] {
            for at in on_circle(a, b, radius(corner)).into_iter().flatten() {
                first_rad = first_rad.min(way_rad(at, corner[1].atan2(corner[0])));
            }
        }
    }
    first_rad
}

/// Where the edge from `a` to `b` crosses the circle of `radius_m` about the origin.
fn on_circle(a: At, b: At, radius_m: f64) -> [Option<At>; 2] {
    let run = [b[0] - a[0], b[1] - a[1]];
    let square = run[0] * run[0] + run[1] * run[1];
    // The foot of the perpendicular from the origin, and half the chord, as shares of the edge.
    let foot = -(a[0] * run[0] + a[1] * run[1]) / square;
    let apart = a[0] * run[1] - a[1] * run[0];
    let half = (radius_m * radius_m / square - apart * apart / (square * square)).sqrt();
    [foot - half, foot + half].map(|share| {
        (0.0..=1.0).contains(&share).then(|| [a[0] + share * run[0], a[1] + share * run[1]])
    })
}

fn turned(at: At, angle_rad: f64) -> At {
    let (sin, cos) = angle_rad.sin_cos();
    [at[0] * cos - at[1] * sin, at[0] * sin + at[1] * cos]
}
