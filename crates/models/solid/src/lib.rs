//! "Will it go in past the wheel arch, and how much air is left on each side?"
//!
//! This crate has the shapes that a vehicle is fitted out with and computes the distances between
//! them: boxes ([`Cuboid`]), profiles carried along an axis ([`Prism`]: wheel arches, ribs, leaning
//! walls, tubes), bays as a tape measures them ([`Bay`]), doors and lids that swing ([`Swing`]),
//! drawers and bodies that are pushed ([`Cuboid::swept`], [`straight_way`]) and cut-outs on their
//! panels ([`Cutout`]). It tells overlap, the smallest distance with its two points, the free way in
//! each of the six directions and the way back out of an overlap, by the name of what is met
//! ([`Space`]). It returns numbers and gives no verdicts; how much is enough is asked elsewhere.
//!
//! **Model.** The axes are those of ISO 8855:2011, x forward, y to the left, z up; metres inside,
//! [`Length`] at the boundary. Boxes stand square to the axes; a prism runs along one of them and
//! its profile is a simple polygon, hollows allowed. A box seen along a prism's axis is a
//! rectangle, so that every question about the two falls into one along the axis and one in the
//! plane, each answered exactly. Arcs become chains of short edges that contain the true arc and
//! reach beyond it by a stated sagitta at most. Things that share a layer no thicker than [`TOUCH`]
//! touch; touching is not overlapping.
//!
//! **Limits.** Nothing bends or gives way. A thing that leans in two directions has to be enclosed
//! by several prisms. The way in is straight; of turning and tilting only necessary conditions are
//! computed ([`passage`], [`height_to_stand_up`]).
//!
//! ```
//! use spile_quantity::Length;
//! use spile_solid::{Axis, Cuboid, Direction, Point, Prism, Profile, Space};
//! let mm = |x, z| [Length::mm(x), Length::mm(z)];
//! // A wheel arch seen from behind (y to the left, z up), 700 mm long.
//! let arch = Profile::new(&[mm(-900., 0.), mm(-650., 0.), mm(-700., 280.), mm(-900., 300.)])?;
//! let mut space = Space::default();
//! space.solid("wheel arch", Prism::new(Axis::X, arch, Length::mm(-350.), Length::mm(350.))?);
//! space.face("right wall", Direction::Right, Length::mm(-900.));
//! let fridge = Cuboid::new(Point::mm(0., -640., 0.), Point::mm(440., -160., 760.))?;
//! let right = space.clearances(&fridge, &[Direction::Right])[0];
//! assert_eq!(right.nearest, Some("wheel arch"));
//! assert_eq!(right.distance.map(|d| d.in_mm().round()), Some(10.0));
//! # Ok::<(), spile_solid::ShapeError>(())
//! ```

mod arc;
mod bay;
mod cuboid;
mod cutout;
mod direction;
mod error;
mod pair;
mod point;
mod prism;
mod profile;
mod rect;
mod solid;
mod space;
mod swing;
mod way;

pub use arc::{Stuff, arc, circle};
pub use bay::{Bay, Covered, End, Room, Row};
pub use cuboid::Cuboid;
pub use cutout::{Cutout, HolePlace, Patch, Side};
pub use direction::{Axis, Direction};
pub use error::ShapeError;
pub use point::{Nearest, Point};
pub use prism::Prism;
pub use profile::Profile;
pub use solid::Solid;
pub use space::{Clearance, Face, Overlap, Space};
pub use swing::{SAGITTA, Swing};
pub use way::{Passage, WayIn, height_to_stand_up, passage, slack_in_opening, straight_way};

use spile_quantity::Length;

/// What counts as a touch: two things that share a layer no thicker than this, a thousandth of a
/// millimetre, touch and do not overlap. It is far above the rounding of the arithmetic and far
/// below what a tape can tell.
pub const TOUCH: Length = Length::m(TOUCH_M);

const TOUCH_M: f64 = 1e-6;

/// The least thickness of a solid: ten touches.
const LEAST_SIDE_M: f64 = 1e-5;
