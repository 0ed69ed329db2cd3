//! How things are held, made typed.

use spile_answer::Given;
use spile_quantity::{Force, Length};

use crate::file::{HeldBy, HeldFace, HeldInto};

/// How a thing is held in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// What holds it.
    pub by: HeldBy,
    /// Nominal diameter of the screws.
    pub size: Option<Length>,
    /// Property class of bolts, as the tables write it.
    pub class: Option<String>,
    /// How many there are.
    pub count: Option<u32>,
    /// Diameter of washers or heads.
    pub washer: Option<Given<Length>>,
    /// What they are in.
    pub into: Option<HeldInto>,
    /// Thickness of the wall; of wood, the length of thread in it.
    pub wall: Option<Given<Length>>,
    /// Where they are.
    pub pattern: HeldPattern,
    /// The face of the thing that they are on.
    pub face: Option<HeldFace>,
    /// From that face to the middle of the mass.
    pub lever: Option<Given<Length>>,
    /// From the outermost hole to the nearest edge.
    pub edge: Option<Given<Length>>,
    /// What one latch, strap or screw holds.
    pub holds: Option<Given<Force>>,
    /// What keeps its drawer or door shut.
    pub latch: Option<Latch>,
}

/// Where fasteners are on their face.
#[derive(Debug, Clone, PartialEq)]
pub enum HeldPattern {
    /// Each right of and above the lower left corner.
    Rows(Vec<[Length; 2]>),
    /// Along the rim of a rectangle in the middle of the face: its width and height.
    Spacing([Given<Length>; 2]),
    /// Nothing is said.
    Unsaid,
}

/// What keeps a drawer or door shut.
#[derive(Debug, Clone, PartialEq)]
pub struct Latch {
    /// A magnet latch or a positive latch.
    pub by: HeldBy,
    /// How many there are.
    pub count: u32,
    /// What one of them holds.
    pub holds: Option<Given<Force>>,
    /// What each is fixed by.
    pub screws: Option<HeldBy>,
    /// Nominal diameter of its screws.
    pub size: Option<Length>,
    /// Property class of its screws.
    pub class: Option<String>,
    /// How many screws each latch has.
    pub each: u32,
    /// What the screws are in.
    pub into: Option<HeldInto>,
    /// Thickness of the wall they are in.
    pub wall: Option<Given<Length>>,
    /// What one of its screws may be used for.
    pub screw_holds: Option<Given<Force>>,
}
