//! A build's bays made ready to be judged.

use spile_build::{Build, Item};

use crate::scene::{self, Body, Room, Thing};
use crate::sum::Measures;

/// The bays of a build and the measures that everything in them hangs on.
pub(crate) struct Stage<'b> {
    build: &'b Build,
    pub(crate) measures: Measures,
    pub(crate) rooms: Vec<Room<'b>>,
    /// What was taken for granted of the bays themselves.
    pub(crate) assumed: Vec<String>,
}

impl<'b> Stage<'b> {
    pub(crate) fn new(build: &'b Build) -> Self {
        let (measures, mut assumed) = (Measures::default(), Vec::new());
        let rooms = build
            .bays
            .iter()
            .map(|(name, bay)| Room::new(build, name, bay, &measures, &mut assumed))
            .collect();
        Self { build, measures, rooms, assumed }
    }

    pub(crate) fn room(&self, name: &str) -> Option<&Room<'b>> {
        self.rooms.iter().find(|room| room.name == name)
    }

    /// Everything in and around a bay.
    pub(crate) fn things(&self, room: &Room<'b>, assumed: &mut Vec<String>) -> Vec<Thing<'b>> {
        scene::things(self.build, room, &self.rooms, &self.measures, assumed)
    }

    /// An item's body in its bay.
    pub(crate) fn body(
        &self,
        room: &Room<'b>,
        name: &str,
        item: &Item,
        assumed: &mut Vec<String>,
    ) -> Option<Body> {
        scene::body_in(self.build, room, name, item, &self.measures, assumed)
    }
}
