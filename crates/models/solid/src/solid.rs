//! Any solid thing, and how far a box is from it.

use crate::prism::{ahead, shadow};
use crate::{Axis, Cuboid, Direction, Nearest, Prism, Profile, pair};
use spile_quantity::Length;

/// A thing that takes room.
#[derive(Debug, Clone, PartialEq)]
pub enum Solid {
    /// A box.
    Cuboid(Cuboid),
    /// A profile carried along an axis.
    Prism(Prism),
}

impl From<Cuboid> for Solid {
    fn from(cuboid: Cuboid) -> Self {
        Self::Cuboid(cuboid)
    }
}

impl From<Prism> for Solid {
    fn from(prism: Prism) -> Self {
        Self::Prism(prism)
    }
}

impl Solid {
    /// The smallest box around it.
    pub fn around(&self) -> Cuboid {
        match self {
            Self::Cuboid(cuboid) => *cuboid,
            Self::Prism(prism) => prism.around(),
        }
    }

    /// Whether the two take the same room somewhere, by more than a touch of
    /// [`TOUCH`](crate::TOUCH).
    pub fn overlaps(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Cuboid(a), Self::Cuboid(b)) => a.overlaps(b),
            (Self::Cuboid(a), Self::Prism(b)) | (Self::Prism(b), Self::Cuboid(a)) => {
                b.overlaps_cuboid(a)
            }
            (Self::Prism(a), Self::Prism(b)) => pair::overlap(a, b),
        }
    }

    /// The smallest distance between the two, and the two points where it is.
    pub fn nearest(&self, other: &Self) -> Nearest {
        match (self, other) {
            (Self::Cuboid(a), Self::Cuboid(b)) => a.nearest(b),
            (Self::Cuboid(a), Self::Prism(b)) => b.nearest_to_cuboid(a),
            (Self::Prism(a), Self::Cuboid(b)) => a.nearest_to_cuboid(b).reversed(),
            (Self::Prism(a), Self::Prism(b)) => pair::nearest(a, b),
        }
    }

    /// How far `cuboid` may move in `direction` until it touches this thing; `None` if it never
    /// does, 0 if it overlaps already.
    pub fn free(&self, cuboid: &Cuboid, direction: Direction) -> Option<Length> {
        if self.overlaps_cuboid(cuboid) {
            Some(Length::m(0.0))
        } else {
            self.free_when_clear(cuboid, direction)
        }
    }

    /// How far `cuboid` must move in `direction` to come clear of this thing; 0 if it is clear.
    pub fn way_clear(&self, cuboid: &Cuboid, direction: Direction) -> Length {
        if !self.overlaps_cuboid(cuboid) {
            return Length::m(0.0);
        }
        match self {
            Self::Cuboid(own) => -own.gap(cuboid, direction),
            Self::Prism(prism) => Length::m(prism.way_clear_m(cuboid, direction)),
        }
    }

    pub(crate) fn nearest_to_prism(&self, prism: &Prism) -> Nearest {
        match self {
            Self::Cuboid(own) => prism.nearest_to_cuboid(own),
            Self::Prism(own) => pair::nearest(own, prism),
        }
    }

    pub(crate) fn overlaps_cuboid(&self, cuboid: &Cuboid) -> bool {
        match self {
            Self::Cuboid(own) => own.overlaps(cuboid),
            Self::Prism(prism) => prism.overlaps_cuboid(cuboid),
        }
    }

    /// As [`Solid::free`], for a box that is known to be clear of this thing.
    pub(crate) fn free_when_clear(&self, cuboid: &Cuboid, direction: Direction) -> Option<Length> {
        let seen = shadow(&self.around(), direction.axis());
        if !seen.overlaps(&shadow(cuboid, direction.axis())) {
            return None;
        }
        match self {
            Self::Cuboid(own) => ahead(cuboid, own, direction)
                .then(|| cuboid.gap(own, direction).max(Length::m(0.0))),
            Self::Prism(prism) => prism.free_m(cuboid, direction).map(Length::m),
        }
    }

    /// The outlines that the part of it within `slab` \[m\] of `axis` shows along that axis.
    pub(crate) fn shadows(&self, axis: Axis, slab: (f64, f64)) -> Vec<Profile> {
        match self {
            Self::Cuboid(own) => {
                let seen = crate::cuboid::share(own.interval_m(axis), slab);
                let corners = || Profile::from_simple(shadow(own, axis).corners().to_vec());
                seen.then(corners).into_iter().collect()
            }
            Self::Prism(prism) => pair::shadows(prism, axis, slab),
        }
    }
}
