//! What can be wrong with a shape.

use crate::{Axis, Direction};
use spile_quantity::{Angle, Length};

/// Why a shape cannot be made from the figures given.
///
/// Points are counted from 1 in the messages, as people count them, and from 0 in the fields.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ShapeError {
    /// A figure is not a number, or larger than anything that stands in a vehicle.
    #[error("{what} is not a number below a million metres")]
    NotFinite {
        /// The figure.
        what: &'static str,
    },
    /// A solid is thinner along an axis than any thing is.
    #[error(
        "measured {}, it is {} mm thick; a solid needs at least {} mm",
        axis.words(), length.in_mm(), least.in_mm()
    )]
    TooThin {
        /// The axis along which it is too thin.
        axis: Axis,
        /// The thickness it would have.
        length: Length,
        /// The least thickness.
        least: Length,
    },
    /// A profile needs three points.
    #[error("a profile needs at least 3 points, here are {points}")]
    TooFewPoints {
        /// How many there are.
        points: usize,
    },
    /// Two points of a profile fall together.
    #[error("point {} of the profile is the same as point {}", point + 1, earlier + 1)]
    RepeatedPoint {
        /// The later of the two.
        point: usize,
        /// The earlier of the two.
        earlier: usize,
    },
    /// A profile runs through itself.
    #[error(
        "the profile's edge after point {} meets the one after point {}",
        second + 1, first + 1
    )]
    Crossing {
        /// The point at which the earlier edge begins.
        first: usize,
        /// The point at which the later edge begins.
        second: usize,
    },
    /// All points of a profile lie on one line.
    #[error("the points of the profile lie on one line")]
    NoArea,
    /// A figure that has to be positive is not.
    #[error("{what} must be more than 0, not {value}")]
    NotPositive {
        /// The figure, with its unit.
        what: &'static str,
        /// Its value in that unit.
        value: f64,
    },
    /// An angle outside what is meant.
    #[error("{what} of {}° is not between {}° and {}°", value.in_degrees(), low.in_degrees(), high.in_degrees())]
    AngleOutside {
        /// The angle.
        what: &'static str,
        /// Its value.
        value: Angle,
        /// The least it may be.
        low: Angle,
        /// The most it may be.
        high: Angle,
    },
    /// An arc drawn as finely as that has too many edges.
    #[error(
        "an arc drawn that finely needs {parts} edges, more than {most}; allow a larger sagitta"
    )]
    ArcTooFine {
        /// How many it would need.
        parts: f64,
        /// The most there may be.
        most: f64,
    },
    /// A door cannot open along its own hinge line.
    #[error("what is hinged on a line that runs {} cannot open to the {opens}", axis.words())]
    OpensAlongHinge {
        /// The hinge line's axis.
        axis: Axis,
        /// The direction in which it was to open.
        opens: Direction,
    },
    /// A door whose middle is on its hinge line opens both ways at once.
    #[error("the middle of the leaf lies on the hinge line, so that neither side opens first")]
    HingedInTheMiddle,
    /// The corner radius of a cut does not fit into the cut.
    #[error("a corner radius of {} mm is more than half the cut's shorter side, {} mm", radius.in_mm(), most.in_mm())]
    RadiusTooLarge {
        /// The corner radius.
        radius: Length,
        /// The most it can be.
        most: Length,
    },
    /// A bay without a measured row has no size.
    #[error("{what} needs at least one measured row")]
    NoRows {
        /// What was to be measured.
        what: &'static str,
    },
    /// Two rows of one bay were taken at the same height.
    #[error("{what} was measured twice at {} mm", height.in_mm())]
    RepeatedRow {
        /// What was measured.
        what: &'static str,
        /// The height.
        height: Length,
    },
    /// The lower end of a stretch lies above its upper end.
    #[error("a stretch from {} mm to {} mm is upside down", from.in_mm(), to.in_mm())]
    UpsideDown {
        /// Where it begins.
        from: Length,
        /// Where it ends.
        to: Length,
    },
    /// A bay's back lies in one of the four level directions.
    #[error("the back of a bay lies to the front, rear, left or right, not {back}")]
    BackNotLevel {
        /// The direction given.
        back: Direction,
    },
}

/// `value` in metres, if it is a number of a size that the arithmetic holds to a touch.
pub(crate) fn finite(value: Length, what: &'static str) -> Result<f64, ShapeError> {
    let metres = value.in_m();
    if metres.abs() < 1e6 { Ok(metres) } else { Err(ShapeError::NotFinite { what }) }
}

/// `value` in metres, if it is a number above 0.
pub(crate) fn positive(value: Length, what: &'static str) -> Result<f64, ShapeError> {
    let metres = finite(value, what)?;
    if metres > 0.0 {
        Ok(metres)
    } else {
        Err(ShapeError::NotPositive { what, value: value.in_mm() })
    }
}
