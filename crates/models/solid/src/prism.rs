//! A thing that is the same all along one axis: a wheel arch, a rib, a leaning wall, a tube.

use crate::cuboid::{nearest_in_intervals, share, thick_enough};
use crate::error::{ShapeError, finite};
use crate::rect::Rect;
use crate::{Axis, Cuboid, Direction, Nearest, Profile};
use spile_quantity::{Length, Volume};

/// A profile carried along an axis of the vehicle, from one end to the other.
///
/// ```
/// use spile_quantity::Length;
/// use spile_solid::{Axis, Cuboid, Direction, Point, Prism, Profile, Solid};
/// // A wheel arch 700 mm long and 200 mm wide; its profile is seen from the side, as x and z.
/// let side = [[0.0, 0.0], [700.0, 0.0], [500.0, 300.0], [200.0, 300.0]];
/// let profile = Profile::new(&side.map(|at| at.map(Length::mm)))?;
/// let arch = Prism::new(Axis::Y, profile, Length::mm(-900.0), Length::mm(-700.0))?;
/// // A box 100 mm above the floor in front of it may slide back until it meets the slope.
/// let low = Point::mm(900.0, -850.0, 150.0);
/// let fridge = Cuboid::new(low, Point::mm(1300.0, -400.0, 900.0))?;
/// let free = Solid::from(arch).free(&fridge, Direction::Rear).unwrap();
/// assert!((free.in_mm() - 300.0).abs() < 1e-9);
/// # Ok::<(), spile_solid::ShapeError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Prism {
    axis: Axis,
    profile: Profile,
    low_m: f64,
    high_m: f64,
}

impl Prism {
    /// The profile carried along `axis` from `from` to `to`, in either order.
    pub fn new(axis: Axis, profile: Profile, from: Length, to: Length) -> Result<Self, ShapeError> {
        let what = "an end of a prism";
        let (from_m, to_m) = (finite(from, what)?, finite(to, what)?);
        let (low_m, high_m) = (from_m.min(to_m), from_m.max(to_m));
        thick_enough(axis, high_m - low_m)?;
        Ok(Self { axis, profile, low_m, high_m })
    }

    /// The axis it is carried along.
    pub const fn axis(&self) -> Axis {
        self.axis
    }

    /// Its profile.
    pub const fn profile(&self) -> &Profile {
        &self.profile
    }

    /// Its two ends along its axis, the lower first.
    pub const fn ends(&self) -> [Length; 2] {
        [Length::m(self.low_m), Length::m(self.high_m)]
    }

    /// Its volume.
    pub fn volume(&self) -> Volume {
        self.profile.area() * Length::m(self.high_m - self.low_m)
    }

    /// The smallest box around it.
    pub fn around(&self) -> Cuboid {
        let (low, high) = (self.profile.around().low, self.profile.around().high);
        Cuboid { low_m: self.place(low, self.low_m), high_m: self.place(high, self.high_m) }
    }

    pub(crate) const fn interval_m(&self) -> (f64, f64) {
        (self.low_m, self.high_m)
    }

    /// The point of space at `at` in the profile's plane and `along_m` along the axis.
    pub(crate) fn place(&self, at: [f64; 2], along_m: f64) -> [f64; 3] {
        let [first, second] = self.axis.plane();
        let mut place = [0.0; 3];
        place[first.index()] = at[0];
        place[second.index()] = at[1];
        place[self.axis.index()] = along_m;
        place
    }

    pub(crate) fn overlaps_cuboid(&self, cuboid: &Cuboid) -> bool {
        share(self.interval_m(), cuboid.interval_m(self.axis))
            && self.profile.overlaps(&shadow(cuboid, self.axis))
    }

    /// The nearest points, the box first. The distance along the axis and the one in the plane
    /// stand square to each other, so that each can be found alone.
    pub(crate) fn nearest_to_cuboid(&self, cuboid: &Cuboid) -> Nearest {
        let (on_cuboid, on_self) = self.profile.nearest(&shadow(cuboid, self.axis));
        let (a, b) = nearest_in_intervals(cuboid.interval_m(self.axis), self.interval_m());
        Nearest::between(self.place(on_cuboid, a), self.place(on_self, b))
    }

    /// How far a box that is clear of this prism may move before it touches.
    pub(crate) fn free_m(&self, cuboid: &Cuboid, direction: Direction) -> Option<f64> {
        let shadow = shadow(cuboid, self.axis);
        if direction.axis() == self.axis {
            let gap_m = cuboid.gap(&self.around(), direction).in_m();
            let ahead = ahead(cuboid, &self.around(), direction);
            (ahead && self.profile.overlaps(&shadow)).then_some(gap_m.max(0.0))
        } else if share(self.interval_m(), cuboid.interval_m(self.axis)) {
            self.profile.free_m(&shadow, place_in_plane(self.axis, direction), direction.sign())
        } else {
            None
        }
    }

    /// How far a box that overlaps this prism must move to come clear.
    pub(crate) fn way_clear_m(&self, cuboid: &Cuboid, direction: Direction) -> f64 {
        if direction.axis() == self.axis {
            -self.around().gap(cuboid, direction).in_m()
        } else {
            let along = place_in_plane(self.axis, direction);
            self.profile.way_clear_m(&shadow(cuboid, self.axis), along, direction.sign())
        }
    }
}

/// The rectangle that a box fills when seen along `axis`.
pub(crate) fn shadow(cuboid: &Cuboid, axis: Axis) -> Rect {
    let [first, second] = axis.plane().map(Axis::index);
    Rect {
        low: [cuboid.low_m[first], cuboid.low_m[second]],
        high: [cuboid.high_m[first], cuboid.high_m[second]],
    }
}

/// Whether `other` lies further in `direction` than `cuboid`, by their middles.
pub(crate) fn ahead(cuboid: &Cuboid, other: &Cuboid, direction: Direction) -> bool {
    let axis = direction.axis();
    let (a, b) = (cuboid.interval_m(axis), other.interval_m(axis));
    (b.0 + b.1 - a.0 - a.1) * direction.sign() > 0.0
}

/// Which coordinate of the plane square to `axis` a direction runs along.
fn place_in_plane(axis: Axis, direction: Direction) -> usize {
    usize::from(axis.plane()[1] == direction.axis())
}
