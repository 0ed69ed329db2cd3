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
    /// Whether somebody has looked at the other side of what is drilled.
    pub looked: bool,
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

/// Where so many fasteners are, as shares of the width and height of their pattern from its middle:
/// in two columns, the left one the fuller; two beside each other, and one in the middle.
pub fn columns(count: u32) -> Vec<[f64; 2]> {
    if count == 1 {
        return vec![[0.0, 0.0]];
    }
    let left = count.div_ceil(2);
    let column = |count: u32, across: f64| {
        (0..count).map(move |at| {
            let share = if count == 1 { 0.5 } else { f64::from(at) / f64::from(count - 1) };
            [across, share - 0.5]
        })
    };
    column(left, -0.5).chain(column(count - left, 0.5)).collect()
}
