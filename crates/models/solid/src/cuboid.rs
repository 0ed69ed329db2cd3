//! A box that stands square to the vehicle.

use crate::error::{ShapeError, finite, positive};
use crate::{Axis, Direction, LEAST_SIDE_M, Nearest, Point, TOUCH_M};
use spile_quantity::{Length, Volume};

/// A box whose faces are square to the vehicle's axes.
///
/// ```
/// use spile_quantity::Length;
/// use spile_solid::{Cuboid, Direction, Point};
/// let fridge = Cuboid::new(Point::mm(0.0, 0.0, 0.0), Point::mm(440.0, 480.0, 760.0))?;
/// let drawer = fridge.swept(Direction::Left, Length::mm(300.0))?;
/// assert_eq!(drawer.face(Direction::Left).in_mm(), 780.0);
/// # Ok::<(), spile_solid::ShapeError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cuboid {
    pub(crate) low_m: [f64; 3],
    pub(crate) high_m: [f64; 3],
}

impl Cuboid {
    /// The box between two opposite corners, in either order.
    pub fn new(corner: Point, opposite: Point) -> Result<Self, ShapeError> {
        let (a, b) = (corner.to_m(), opposite.to_m());
        let mut made = Self { low_m: [0.0; 3], high_m: [0.0; 3] };
        for axis in Axis::ALL {
            let i = axis.index();
            finite(corner.along(axis), "a corner of a box")?;
            finite(opposite.along(axis), "a corner of a box")?;
            made.low_m[i] = a[i].min(b[i]);
            made.high_m[i] = a[i].max(b[i]);
            thick_enough(axis, made.high_m[i] - made.low_m[i])?;
        }
        Ok(made)
    }

    /// Its corner at the rear, to the right, at the bottom.
    pub const fn low(&self) -> Point {
        Point::from_m(self.low_m)
    }

    /// Its corner at the front, to the left, at the top.
    pub const fn high(&self) -> Point {
        Point::from_m(self.high_m)
    }

    /// Its middle.
    pub fn centre(&self) -> Point {
        Point::from_m(std::array::from_fn(|i| f64::midpoint(self.low_m[i], self.high_m[i])))
    }

    /// Its extent along `axis`.
    pub fn size(&self, axis: Axis) -> Length {
        Length::m(self.high_m[axis.index()] - self.low_m[axis.index()])
    }

    /// Its volume.
    pub fn volume(&self) -> Volume {
        self.size(Axis::X) * self.size(Axis::Y) * self.size(Axis::Z)
    }

    /// Where its face in `direction` lies along that direction's axis.
    pub fn face(&self, direction: Direction) -> Length {
        let i = direction.axis().index();
        Length::m(if direction.sign() > 0.0 { self.high_m[i] } else { self.low_m[i] })
    }

    /// The smallest box around this one and `other`.
    #[must_use]
    pub fn union(&self, other: &Self) -> Self {
        Self {
            low_m: std::array::from_fn(|i| self.low_m[i].min(other.low_m[i])),
            high_m: std::array::from_fn(|i| self.high_m[i].max(other.high_m[i])),
        }
    }

    /// This box with its face in `direction` moved outward by `by`, inward where `by` is negative.
    pub fn grown(&self, direction: Direction, by: Length) -> Result<Self, ShapeError> {
        let by_m = finite(by, "what a box grows by")?;
        let (mut grown, axis) = (*self, direction.axis());
        let i = axis.index();
        if direction.sign() > 0.0 {
            grown.high_m[i] += by_m;
        } else {
            grown.low_m[i] -= by_m;
        }
        thick_enough(axis, grown.high_m[i] - grown.low_m[i])?;
        Ok(grown)
    }

    /// This box moved by `by` in `direction`.
    pub fn moved(&self, direction: Direction, by: Length) -> Result<Self, ShapeError> {
        let shift_m = direction.sign() * finite(by, "what a box is moved by")?;
        let (mut moved, i) = (*self, direction.axis().index());
        moved.low_m[i] += shift_m;
        moved.high_m[i] += shift_m;
        Ok(moved)
    }

    /// All the room that this box takes while it is moved by `travel` in `direction`: a drawer
    /// pulled out, a body pushed in.
    pub fn swept(&self, direction: Direction, travel: Length) -> Result<Self, ShapeError> {
        positive(travel, "the travel [mm]")?;
        self.grown(direction, travel)
    }

    /// Whether `other` lies in this box; faces may touch.
    pub fn contains(&self, other: &Self) -> bool {
        (0..3).all(|i| {
            self.low_m[i] - TOUCH_M <= other.low_m[i] && other.high_m[i] <= self.high_m[i] + TOUCH_M
        })
    }

    /// Whether the two take the same room somewhere; touching is not overlapping.
    pub fn overlaps(&self, other: &Self) -> bool {
        (0..3).all(|i| common(self, other, i))
    }

    /// From this box's face in `direction` to the face of `other` that looks back at it, measured
    /// along `direction`: negative where `other` does not lie wholly ahead. Whether the two would
    /// ever meet is not asked; [`Solid::free`](crate::Solid::free) does.
    pub fn gap(&self, other: &Self, direction: Direction) -> Length {
        (other.face(direction.opposite()) - self.face(direction)) * direction.sign()
    }

    /// The smallest distance to `other`.
    pub fn nearest(&self, other: &Self) -> Nearest {
        let mut on = ([0.0; 3], [0.0; 3]);
        for i in 0..3 {
            (on.0[i], on.1[i]) = nearest_in_intervals(
                (self.low_m[i], self.high_m[i]),
                (other.low_m[i], other.high_m[i]),
            );
        }
        Nearest::between(on.0, on.1)
    }

    /// Its extent along `axis` as an interval in metres.
    pub(crate) fn interval_m(&self, axis: Axis) -> (f64, f64) {
        (self.low_m[axis.index()], self.high_m[axis.index()])
    }
}

/// Whether the two boxes share more than a touch along the axis of index `i`.
pub(crate) fn common(a: &Cuboid, b: &Cuboid, i: usize) -> bool {
    share((a.low_m[i], a.high_m[i]), (b.low_m[i], b.high_m[i]))
}

/// Whether two intervals share more than a touch.
pub(crate) fn share(a: (f64, f64), b: (f64, f64)) -> bool {
    a.0 + TOUCH_M < b.1 && b.0 + TOUCH_M < a.1
}

/// The nearest numbers of two intervals; the middle of what they share where they meet.
pub(crate) fn nearest_in_intervals(a: (f64, f64), b: (f64, f64)) -> (f64, f64) {
    if a.1 < b.0 {
        (a.1, b.0)
    } else if b.1 < a.0 {
        (a.0, b.1)
    } else {
        let middle = f64::midpoint(a.0.max(b.0), a.1.min(b.1));
        (middle, middle)
    }
}

pub(crate) fn thick_enough(axis: Axis, thickness_m: f64) -> Result<(), ShapeError> {
    if thickness_m >= LEAST_SIDE_M {
        Ok(())
    } else {
        let (length, least) = (Length::m(thickness_m), Length::m(LEAST_SIDE_M));
        Err(ShapeError::TooThin { axis, length, least })
    }
}
