//! A place in the vehicle.

use crate::Axis;
use spile_quantity::Length;

/// A place in the vehicle's axes (x forward, y to the left, z up).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Forward of the origin.
    pub x: Length,
    /// To the left of the origin.
    pub y: Length,
    /// Above the origin.
    pub z: Length,
}

impl Point {
    /// A place by its three coordinates.
    pub const fn new(x: Length, y: Length, z: Length) -> Self {
        Self { x, y, z }
    }

    /// A place by its three coordinates in millimetres.
    pub fn mm(x: f64, y: f64, z: f64) -> Self {
        Self::new(Length::mm(x), Length::mm(y), Length::mm(z))
    }

    /// Its coordinate along `axis`.
    pub const fn along(self, axis: Axis) -> Length {
        match axis {
            Axis::X => self.x,
            Axis::Y => self.y,
            Axis::Z => self.z,
        }
    }

    /// How far it is from `other`, the straight way.
    pub fn distance(self, other: Self) -> Length {
        let (a, b) = (self.to_m(), other.to_m());
        Length::m((a[0] - b[0]).hypot(a[1] - b[1]).hypot(a[2] - b[2]))
    }

    pub(crate) const fn to_m(self) -> [f64; 3] {
        [self.x.in_m(), self.y.in_m(), self.z.in_m()]
    }

    pub(crate) const fn from_m(at: [f64; 3]) -> Self {
        Self::new(Length::m(at[0]), Length::m(at[1]), Length::m(at[2]))
    }
}

/// The smallest distance between two things, and where it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Nearest {
    /// The distance; 0 where they touch or run into each other.
    pub distance: Length,
    /// The point on the first thing; a common point where they run into each other.
    pub on_first: Point,
    /// The point on the second thing.
    pub on_second: Point,
}

impl Nearest {
    pub(crate) fn between(first: [f64; 3], second: [f64; 3]) -> Self {
        let (on_first, on_second) = (Point::from_m(first), Point::from_m(second));
        Self { distance: on_first.distance(on_second), on_first, on_second }
    }

    /// Whichever is shorter of the two, this one if they are alike.
    pub(crate) fn or_shorter(self, other: Self) -> Self {
        if other.distance < self.distance { other } else { self }
    }

    /// The same seen from the second thing.
    pub(crate) fn reversed(self) -> Self {
        Self { on_first: self.on_second, on_second: self.on_first, ..self }
    }
}
