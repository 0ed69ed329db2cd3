//! "Does it go in, and can it come out again?" — the question fit.

mod clearance;
mod facing;
mod need;
mod practice;
mod scene;
mod sum;

use spile_answer::{Answer, Finding, Question, Verdict};
use spile_build::Build;

use crate::clearance::Case;
use crate::scene::Room;
use crate::sum::Measures;

/// The question asked of a build.
pub fn answer(build: &Build) -> Answer {
    let measures = Measures::default();
    let mut assumed = Vec::new();
    let rooms: Vec<Room<'_>> = build
        .bays
        .iter()
        .map(|(name, bay)| Room::new(build, name, bay, &measures, &mut assumed))
        .collect();
    let mut findings = Vec::new();
    for room in &rooms {
        let things = scene::things(build, room, &rooms, &measures, &mut assumed);
        for (name, item) in &build.items {
            let Some(place) = &item.place else { continue };
            if place.bay.as_deref() != Some(room.name) {
                continue;
            }
            let Some(body) = scene::body_in(build, room, name, item, &measures, &mut assumed)
            else {
                continue;
            };
            let case =
                Case { build, room, name, item, body: &body, things: &things, measures: &measures };
            findings.extend(clearance::findings(&case));
        }
    }
    if findings.is_empty() {
        findings.push(Finding::plain(
            "nothing",
            "nothing to judge",
            Verdict::Open,
            "Nothing of known size stands in a bay. Add a bay with its size, and an item with place = { in = \"the bay\" }.",
        ));
    }
    Answer { question: Question::Fit, findings, assumed }
}
