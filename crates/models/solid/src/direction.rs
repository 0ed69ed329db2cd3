//! The axes of the vehicle and the six directions along them.

use std::fmt;

/// An axis of the vehicle, as ISO 8855 lays them: x forward, y to the left, z up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Axis {
    /// Lengthways, positive to the front.
    X,
    /// Crossways, positive to the left.
    Y,
    /// Upright, positive upward.
    Z,
}

impl Axis {
    /// All three.
    pub const ALL: [Self; 3] = [Self::X, Self::Y, Self::Z];

    /// Its place in a triple of coordinates.
    pub const fn index(self) -> usize {
        self as usize
    }

    /// How people say it: `lengthways`, `crossways`, `upright`.
    pub const fn words(self) -> &'static str {
        match self {
            Self::X => "lengthways",
            Self::Y => "crossways",
            Self::Z => "upright",
        }
    }

    /// The other two axes, in the order x, y, z: the plane that is square to this axis.
    pub const fn plane(self) -> [Self; 2] {
        match self {
            Self::X => [Self::Y, Self::Z],
            Self::Y => [Self::X, Self::Z],
            Self::Z => [Self::X, Self::Y],
        }
    }

    /// The direction along this axis that the coordinate grows in, and the other one.
    pub const fn directions(self) -> [Direction; 2] {
        match self {
            Self::X => [Direction::Front, Direction::Rear],
            Self::Y => [Direction::Left, Direction::Right],
            Self::Z => [Direction::Up, Direction::Down],
        }
    }
}

/// A direction in the vehicle, named as seen by somebody who sits in it and faces forward.
///
/// ```
/// use spile_solid::{Axis, Direction};
/// assert_eq!(Direction::Left.axis(), Axis::Y);
/// assert_eq!(Direction::Left.sign(), 1.0);
/// assert_eq!(Direction::Left.opposite(), Direction::Right);
/// assert_eq!(Direction::Rear.to_string(), "rear");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Direction {
    /// Towards the front of the vehicle, +x.
    Front,
    /// Towards its rear, −x.
    Rear,
    /// To the left, +y.
    Left,
    /// To the right, −y.
    Right,
    /// Upward, +z.
    Up,
    /// Downward, −z.
    Down,
}

impl Direction {
    /// All six, in the order in which answers list them.
    pub const ALL: [Self; 6] =
        [Self::Front, Self::Rear, Self::Left, Self::Right, Self::Up, Self::Down];

    /// The axis it runs along.
    pub const fn axis(self) -> Axis {
        match self {
            Self::Front | Self::Rear => Axis::X,
            Self::Left | Self::Right => Axis::Y,
            Self::Up | Self::Down => Axis::Z,
        }
    }

    /// 1 where the coordinate grows, −1 where it falls.
    pub const fn sign(self) -> f64 {
        match self {
            Self::Front | Self::Left | Self::Up => 1.0,
            Self::Rear | Self::Right | Self::Down => -1.0,
        }
    }

    /// The direction back.
    pub const fn opposite(self) -> Self {
        match self {
            Self::Front => Self::Rear,
            Self::Rear => Self::Front,
            Self::Left => Self::Right,
            Self::Right => Self::Left,
            Self::Up => Self::Down,
            Self::Down => Self::Up,
        }
    }

    /// Its name in plain words.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Rear => "rear",
            Self::Left => "left",
            Self::Right => "right",
            Self::Up => "up",
            Self::Down => "down",
        }
    }
}

impl fmt::Display for Direction {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}
