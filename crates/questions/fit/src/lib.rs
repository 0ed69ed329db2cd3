//! "Does it go in, and can it come out again?" — the question fit.

mod clearance;
mod cut;
mod door;
mod facing;
mod need;
mod practice;
mod scene;
mod square;
mod sum;
mod way;

use spile_answer::{Answer, Ask, Finding, Question, Verdict};
use spile_build::file::PartKind;
use spile_build::{Build, Item};

pub use crate::door::reach_ahead;

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
        let here = |item: &Item| {
            item.place.as_ref().and_then(|place| place.bay.as_deref()) == Some(room.name)
        };
        if !build.items.values().any(here) {
            continue;
        }
        let things = scene::things(build, room, &rooms, &measures, &mut assumed);
        for (name, item) in build.items.iter().filter(|(_, item)| here(item)) {
            let Some(body) = scene::body_in(build, room, name, item, &measures, &mut assumed)
            else {
                findings.push(no_size(name, room.name));
                continue;
            };
            let (body, things, measures) = (&body, things.as_slice(), &measures);
            let case = Case { build, room, name, item, body, things, measures };
            findings.extend(clearance::findings(&case));
            findings.extend(door::door(&case));
            findings.extend(door::drawer(&case));
            findings.extend(way::findings(&case));
            findings.extend(cut::findings(&case, &mut assumed));
        }
        let cut = |item: &Item| here(item) && item.panel.is_some() && item.part.cutout.is_some();
        findings.extend(square::finding(room, build.items.values().any(cut), &measures));
    }
    for (name, item) in &build.items {
        let placed = item.place.is_some();
        let loose = matches!(item.part.kind, PartKind::Furniture | PartKind::Light);
        if item.part.size.is_some() && !placed && !loose {
            findings.push(no_place(name));
        }
    }
    if findings.is_empty() {
        findings.push(nothing());
    }
    assumed.sort();
    assumed.dedup();
    Answer { question: Question::Fit, findings, assumed }
}

fn no_size(name: &str, bay: &str) -> Finding {
    let says = format!("It is to go into the bay {bay}, and its size is not known.");
    open(
        format!("{name}.size"),
        format!("size of {name}"),
        says,
        "Its papers, or a tape: width, height, depth.",
    )
}

fn no_place(name: &str) -> Finding {
    let says = format!(
        "It is not said where {name} is to go. Give the bay it goes into, with the bay's width, height and depth."
    );
    let how = "A tape in the bay: width, height, and depth from the face of its opening to the wall behind.";
    open(format!("{name}.place"), format!("place of {name}"), says, how)
}

fn nothing() -> Finding {
    let says = "Nothing stands in a bay. Add a bay with its size, and an item with place = { in = \"its name\" }.";
    let how = "A tape in the bay: width, height, and depth from the face of its opening to the wall behind.";
    open("nothing".to_owned(), "size of a bay".to_owned(), says.to_owned(), how)
}

fn open(id: String, label: String, says: String, how: &'static str) -> Finding {
    let mut finding = Finding::plain(id, label.clone(), Verdict::Open, says);
    let settles = "whether it goes in".to_owned();
    finding.asks.push(Ask { input: label.into(), how: how.into(), settles, weight: 1.0 });
    finding
}
