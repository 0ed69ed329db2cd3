//! Which way a thing looks, and what is left, right, above and behind as one faces it.

use spile_build::file::Direction as Said;
use spile_solid::Direction;

/// A thing as one faces it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Facing {
    /// Out of its face.
    pub(crate) out: Direction,
    /// To the right of somebody who faces it.
    pub(crate) right: Direction,
    /// Upwards on its face.
    pub(crate) up: Direction,
}

impl Facing {
    /// Of a face that looks upward or downward, the top is towards the front of the vehicle.
    pub(crate) const fn of(said: Said) -> Self {
        use Direction::{Down, Front, Left, Rear, Right, Up};
        let (out, right, up) = match said {
            Said::Left => (Left, Rear, Up),
            Said::Right => (Right, Front, Up),
            Said::Front => (Front, Left, Up),
            Said::Rear => (Rear, Right, Up),
            Said::Up => (Up, Right, Front),
            Said::Down => (Down, Left, Front),
        };
        Self { out, right, up }
    }

    /// The three axes that width, height and depth run along.
    pub(crate) const fn axes(self) -> [usize; 3] {
        [self.right.axis().index(), self.up.axis().index(), self.out.axis().index()]
    }

    /// A direction in words, as one faces the thing.
    pub(crate) fn words(self, direction: Direction) -> &'static str {
        if direction == self.right {
            "right"
        } else if direction == self.right.opposite() {
            "left"
        } else if direction == self.up {
            "above"
        } else if direction == self.up.opposite() {
            "below"
        } else if direction == self.out {
            "in front"
        } else {
            "behind"
        }
    }
}
