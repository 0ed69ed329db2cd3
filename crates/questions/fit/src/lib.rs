//! "Does it go in, and can it come out again?" — the room around a thing, its way in, and the hole
//! that it needs.
//!
//! For every item that stands in a bay: the room left behind, beside, above and below it, to the
//! nearest thing by name; its door, lid or drawer as it opens; the slack in the bay's opening; the
//! way in from the aisle and out again with its cable's tail; the doors of the vehicle. Where a
//! panel is cut for it: what is left of the panel, what lies behind the cut, where the fixing holes
//! fall, whether the flange covers and rests. For the bay: whether its opening is square.
//! [`mark_out`] gives the marks to cut by, in millimetres and on the owner's inch tape; [`placed`]
//! and [`picture()`] where everything is, to be drawn.
//!
//! **Model.** Boxes and prisms in the vehicle's axes (`spile-solid`). Every face of every thing is
//! a sum of the measures that it was told by, so that a measure which two faces share cancels in
//! the distance between them; each measure moves within its range. What lies beyond a side of a bay
//! is kept off by the bay's own clear size. The wall behind is taken as deep as its rows say at the
//! height where it is least; beyond the rows its lean is guessed, and the answer asks for the depth
//! there. An item stands where it is said to; what is not said is assumed and listed: on the floor,
//! in the middle, its face at the opening. Furniture is built to its place and needs no slack, and
//! what is wholly within it is in it. A lid is part of its body's height.
//!
//! **Limits and practice.** What has less room than none is stopped by the space itself, whatever
//! the papers or practice ask for; so is a cut through a member of the frame or a keep-out zone.
//! Spaces that papers ask for are limits. Practice, common and without a source: 3 to 5 mm of slack
//! a side, 10 mm over a bare arch, 30 mm for fingers at a door, 20 mm for hands in the aisle, 25 mm
//! of panel beside a cut, four screw diameters to an edge in plywood and two in metal, diagonals
//! within 2 mm.
//!
//! **Not computed.** Turning and tilting on the way in, of which only necessary conditions are
//! known: where no straight way is found and none is excluded, the answer is *open*. Things that
//! give way. Doors against profiles, which are taken as the boxes around them.
//!
//! ```
//! let folder = spile_build::Folder::from_texts([("build.toml", r#"
//! [parts.fridge]
//! kind = "upright fridge"
//! size = { width = "475 mm", height = "780 mm", depth = "495 mm" }
//! air = { behind = "60 mm" }
//! [bays.galley]
//! size = { width = "520 mm", height = "1140 mm", depth = "540 mm" }
//! [items.fridge]
//! place = { in = "galley" }
//! "#)]).unwrap();
//! let answer = spile_fit::answer(folder.build());
//! let behind = answer.findings.iter().find(|finding| finding.id == "fridge.behind").unwrap();
//! assert_eq!(behind.figure.unwrap().likely, 45.0);
//! assert_eq!(behind.verdict, spile_answer::Verdict::Stop);
//! ```

mod clearance;
mod cut;
mod door;
mod drilled;
mod facing;
mod marks;
mod need;
mod picture;
mod practice;
mod scene;
mod square;
mod stage;
mod sum;
mod way;

use spile_answer::{Answer, Ask, Finding, Question, Verdict};
use spile_build::file::PartKind;
use spile_build::{Build, Item};

pub use crate::door::reach_ahead;
pub use crate::marks::{
    BLADE, Behind, Check, FIRST_HOLE, From, Mark, MarkOut, NoMarks, Outline, Points, Purpose, Saw,
    half_chord, mark_out,
};
pub use crate::picture::{
    Block, Distance, Opening, Picture, Placed, Profile, Sort, picture, placed,
};

use crate::clearance::Case;
use crate::stage::Stage;

/// The question asked of a build.
pub fn answer(build: &Build) -> Answer {
    let mut stage = Stage::new(build);
    let mut assumed = std::mem::take(&mut stage.assumed);
    let mut findings = Vec::new();
    for room in &stage.rooms {
        let here = |item: &Item| {
            item.place.as_ref().and_then(|place| place.bay.as_deref()) == Some(room.name)
        };
        if !build.items.values().any(here) {
            continue;
        }
        let things = stage.things(room, &mut assumed);
        for (name, item) in build.items.iter().filter(|(_, item)| here(item)) {
            let Some(body) = stage.body(room, name, item, &mut assumed) else {
                findings.push(no_size(name, room.name));
                continue;
            };
            let (body, things, measures) = (&body, things.as_slice(), &stage.measures);
            let case = Case { build, room, name, item, body, things, measures };
            findings.extend(clearance::findings(&case));
            findings.extend(door::door(&case));
            findings.extend(door::drawer(&case));
            findings.extend(way::findings(&case));
            findings.extend(cut::findings(&case, &mut assumed));
            findings.extend(drilled::findings(&case));
        }
        let cut = |item: &Item| here(item) && item.panel.is_some() && item.part.cutout.is_some();
        let closed = build.items.values().any(cut);
        findings.extend(square::finding(room, closed, &stage.measures));
        findings.extend(closed.then(|| square::heights(room)).flatten());
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
    finding.asks.push(Ask::missing(label, how, "whether it goes in"));
    finding
}
