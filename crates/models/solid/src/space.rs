//! Everything that stands around a place, by name.

use crate::{Cuboid, Direction, Nearest, Solid};
use spile_quantity::Length;

/// A wall, floor or ceiling that is flat and square to the vehicle: nothing goes beyond it.
#[derive(Debug, Clone, PartialEq)]
pub struct Face {
    /// What people call it.
    pub name: String,
    /// On which side of the space it is: a floor is `Down`.
    pub side: Direction,
    /// Where it stands along that direction's axis.
    pub at: Length,
}

/// Named solids and flat faces, kept in the order in which they were put in.
///
/// ```
/// use spile_quantity::Length;
/// use spile_solid::{Cuboid, Direction, Point, Space};
/// let mut space = Space::default();
/// space.face("floor", Direction::Down, Length::mm(0.0));
/// space.solid("rib", Cuboid::new(Point::mm(0.0, -900.0, 0.0), Point::mm(50.0, -850.0, 1800.0))?);
/// let fridge = Cuboid::new(Point::mm(-100.0, -845.0, 20.0), Point::mm(340.0, -400.0, 900.0))?;
/// let found = space.clearances(&fridge, &[Direction::Right, Direction::Down, Direction::Up]);
/// assert_eq!((found[0].nearest, found[2].nearest), (Some("rib"), None));
/// assert_eq!(found[1].distance.map(|d| d.in_mm()), Some(20.0));
/// # Ok::<(), spile_solid::ShapeError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Space {
    solids: Vec<(String, Solid, Cuboid)>,
    faces: Vec<Face>,
}

/// How far a box may move in a direction, and what it meets there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clearance<'a> {
    /// The direction.
    pub direction: Direction,
    /// What it meets first; the earlier in the space where two things are equally far.
    pub nearest: Option<&'a str>,
    /// How far that is; negative by how far the box must move back if it runs into that thing;
    /// `None` if nothing stands there.
    pub distance: Option<Length>,
}

/// Something that a box runs into.
#[derive(Debug, Clone, PartialEq)]
pub struct Overlap<'a> {
    /// The thing's name.
    pub name: &'a str,
    /// How far the box must move in which direction to come clear of this thing, the shortest way
    /// first. A flat face can be left in one direction only.
    pub ways_clear: Vec<(Direction, Length)>,
}

impl Space {
    /// Puts a solid thing into the space.
    pub fn solid(&mut self, name: impl Into<String>, solid: impl Into<Solid>) {
        let solid = solid.into();
        let around = solid.around();
        self.solids.push((name.into(), solid, around));
    }

    /// Closes the space on one side.
    pub fn face(&mut self, name: impl Into<String>, side: Direction, at: Length) {
        self.faces.push(Face { name: name.into(), side, at });
    }

    /// The solid things with their names.
    pub fn solids(&self) -> impl Iterator<Item = (&str, &Solid)> {
        self.solids.iter().map(|(name, solid, _)| (name.as_str(), solid))
    }

    /// The flat faces.
    pub fn faces(&self) -> &[Face] {
        &self.faces
    }

    /// Everything that `cuboid` runs into, solids first, in the order of the space.
    pub fn overlaps(&self, cuboid: &Cuboid) -> Vec<Overlap<'_>> {
        let solids = self
            .solids
            .iter()
            .filter(|(_, solid, around)| around.overlaps(cuboid) && solid.overlaps_cuboid(cuboid))
            .map(|(name, solid, _)| Overlap { name, ways_clear: ways_clear(solid, cuboid) });
        let faces = self.faces.iter().filter_map(|face| {
            let beyond = -to_face(cuboid, face);
            (beyond > crate::TOUCH).then(|| Overlap {
                name: &face.name,
                ways_clear: vec![(face.side.opposite(), beyond)],
            })
        });
        solids.chain(faces).collect()
    }

    /// How far `cuboid` may move in each of `directions`, and what it meets there.
    ///
    /// A thing that the box runs into counts, with a negative distance, in the one direction that
    /// it is left most shortly by moving back; in the others it does not count, so that the
    /// clearances there are those of the things beyond.
    pub fn clearances(&self, cuboid: &Cuboid, directions: &[Direction]) -> Vec<Clearance<'_>> {
        let mut found: Vec<Clearance<'_>> = directions
            .iter()
            .map(|&direction| Clearance { direction, nearest: None, distance: None })
            .collect();
        for (name, solid, around) in &self.solids {
            if around.overlaps(cuboid) && solid.overlaps_cuboid(cuboid) {
                let (back, way) = ways_clear(solid, cuboid)[0];
                let there = found.iter_mut().filter(|c| c.direction == back.opposite());
                there.for_each(|clearance| clearance.offer(name, -way));
                continue;
            }
            for clearance in &mut found {
                // The box around a thing is never further away than the thing.
                let at_least = cuboid.gap(around, clearance.direction);
                if clearance.distance.is_some_and(|best| at_least >= best) {
                    continue;
                }
                if let Some(way) = solid.free_when_clear(cuboid, clearance.direction) {
                    clearance.offer(name, way);
                }
            }
        }
        for face in &self.faces {
            let there = found.iter_mut().filter(|c| c.direction == face.side);
            there.for_each(|clearance| clearance.offer(&face.name, to_face(cuboid, face)));
        }
        found
    }

    /// The solid thing nearest to `cuboid` in any direction, and where they are nearest.
    pub fn nearest(&self, cuboid: &Cuboid) -> Option<(&str, Nearest)> {
        let mut best: Option<(&str, Nearest)> = None;
        let own = Solid::Cuboid(*cuboid);
        for (name, solid, around) in &self.solids {
            let at_least = cuboid.nearest(around).distance;
            if best.is_none_or(|(_, best)| at_least < best.distance) {
                let found = own.nearest(solid);
                if best.is_none_or(|(_, best)| found.distance < best.distance) {
                    best = Some((name, found));
                }
            }
        }
        best
    }
}

impl<'a> Clearance<'a> {
    fn offer(&mut self, name: &'a str, way: Length) {
        if self.distance.is_none_or(|best| way < best) {
            (self.nearest, self.distance) = (Some(name), Some(way));
        }
    }
}

/// The six ways out of a solid that the box overlaps, the shortest first.
fn ways_clear(solid: &Solid, cuboid: &Cuboid) -> Vec<(Direction, Length)> {
    let mut ways: Vec<_> = Direction::ALL
        .into_iter()
        .map(|direction| (direction, solid.way_clear(cuboid, direction)))
        .collect();
    ways.sort_by(|a, b| a.1.in_m().total_cmp(&b.1.in_m()));
    ways
}

/// From the box to a flat face, negative beyond it.
fn to_face(cuboid: &Cuboid, face: &Face) -> Length {
    (face.at - cuboid.face(face.side)) * face.side.sign()
}
