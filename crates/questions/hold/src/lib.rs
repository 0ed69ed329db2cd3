//! "Does it stay where it is put?" — on a rough road, behind a shut latch, and in a crash.
//!
//! For every thing that weighs something and of which is said how it is held: its hardest worked
//! fastener over the whole envelope of the road (3 g down, 2 g up, 1 g along the floor), in its
//! weakest way of failing; the distance of its holes to the edge; the latch of its drawer against
//! twice the push of 1 g; the panel that it hangs in; 2 g in any direction for a battery; the air
//! under what stands over a wheel arch; and whether it stays where it is at 10 g, at most *care*.
//! Where it does not hold, the fasteners that do are computed and tried.
//!
//! Masses are those of the full vehicle: with contents, and with what stands on the thing. The
//! physics is in `spile-strength`. A strength known from a stand-in or from memory never makes a
//! *stop*. Welds, straps' own hooks, fatigue and corrosion are not computed; who carries a belt is
//! a matter of `fit`.
//!
//! ```
//! let folder = spile_build::Folder::from_texts([("build.toml", r#"
//! [parts.locker]
//! kind = "furniture"
//! mass = "20 kg"
//! size = { width = "500 mm", height = "600 mm", depth = "400 mm" }
//! [items.locker]
//! contents = "20 kg"
//! held = { by = "bolt", size = "M6", class = "8.8", count = 4, into = "steel tube", wall = "1.5 mm", washer = "18 mm", spacing = { width = "420 mm", height = "320 mm" }, face = "below" }
//! "#)]).unwrap();
//! let answer = spile_hold::answer(folder.build());
//! let fixing = answer.findings.iter().find(|finding| finding.id == "locker.fixing").unwrap();
//! assert_eq!(fixing.verdict.word(), "good");
//! assert!(fixing.figure.unwrap().likely < 60.0);
//! ```

mod arch;
mod edge;
mod fixing;
mod latch;
mod mend;
mod modes;
mod panel;
mod picture;
mod scene;

use spile_answer::{Answer, Ask, Finding, Question, Verdict};
use spile_build::file::{HeldBy, PartKind};
use spile_build::{Build, Item};
use spile_quantity::Mass;

pub use picture::{Picture, Used, pictures};

use crate::scene::Scene;

/// From here on a thing has to be held.
///
/// **Source** common practice, no source.
const HEAVY: Mass = Mass::kg(5.0);

/// The question asked of a build.
pub fn answer(build: &Build) -> Answer {
    let mut answer = Answer { question: Question::Hold, findings: Vec::new(), assumed: Vec::new() };
    for (name, item) in &build.items {
        one(build, name, item, &mut answer);
    }
    if build.bank.is_some() && !build.items.values().any(is_battery) {
        answer.findings.push(bank());
    }
    if answer.findings.is_empty() {
        answer.findings.push(nothing());
    }
    answer
}

/// Everything found of one item.
fn one(build: &Build, name: &str, item: &Item, answer: &mut Answer) {
    answer.findings.extend(arch::finding(build, name, item));
    let Some(held) = &item.held else {
        let heavy = full(item).is_some_and(|mass| mass >= HEAVY);
        if heavy {
            answer.findings.push(not_said(name, item));
        }
        if heavy && latch::slides(item) {
            answer.findings.push(latch::not_said(name, item));
        }
        return;
    };
    if item.mass.is_none() {
        answer.findings.push(no_mass(name, item));
        return;
    }
    answer.findings.extend(latch::finding(name, item, held));
    if matches!(held.by, HeldBy::MagnetLatch | HeldBy::PositiveLatch) {
        return;
    }
    match Scene::new(build, name, item, held) {
        Ok(scene) => {
            answer.findings.extend(fixing::findings(&scene));
            answer.findings.extend(panel::finding(&scene));
            answer.findings.extend(edge::finding(&scene));
            answer.findings.extend(edge::turns(&scene));
            answer.findings.extend(edge::washer(&scene));
            answer.assumed.extend(scene.assumed.iter().cloned());
        }
        Err(open) => answer.findings.push(*open),
    }
}

pub(crate) fn is_battery(item: &Item) -> bool {
    item.part.kind == PartKind::Battery
}

/// What it most likely weighs with what is in it.
fn full(item: &Item) -> Option<Mass> {
    let contents = item.contents.as_ref().map_or(Mass::kg(0.0), spile_answer::Given::likely);
    Some(item.mass.as_ref()?.likely() + contents)
}

/// What it is called in a sentence: the words before the first comma.
pub(crate) fn called(item: &Item) -> &str {
    item.about.split(',').next().unwrap_or(&item.about)
}

/// A finding that waits for something.
pub(crate) fn open(id: String, label: &str, says: String, input: String, how: &str) -> Finding {
    let mut finding = Finding::plain(id, label, Verdict::Open, says);
    finding.asks.push(Ask::missing(input, how.to_owned(), ""));
    finding
}

fn not_said(name: &str, item: &Item) -> Finding {
    let called = called(item);
    open(
        format!("{name}.fixing"),
        "how it is held",
        format!("Nothing is said of how the {called} is held."),
        format!("fixing of the {called}"),
        "Look under and behind it: what goes into what, how many, how thick; a calliper on the screws, a tape between the outermost ones: held = { by = \"bolt\", size = \"M6\", class = \"8.8\", count = 4, into = \"steel tube\", wall = \"1.5 mm\", spacing = { width = \"400 mm\", height = \"300 mm\" }, face = \"below\" }.",
    )
}

fn no_mass(name: &str, item: &Item) -> Finding {
    let called = called(item);
    open(
        format!("{name}.fixing"),
        "its mass",
        format!("Nothing is said of what the {called} weighs."),
        format!("mass of the {called}"),
        "Its papers; or stand on a bathroom scale with it and without it: mass = \"25 kg\".",
    )
}

fn bank() -> Finding {
    open(
        "bank.hold-down".to_owned(),
        "the battery's hold-down",
        "Nothing is said of how the house battery is held; it must stand 2 g in any direction."
            .to_owned(),
        "hold-down of the house battery".to_owned(),
        "Read its mass from the label, look at its tray and straps, and enter it as an item whose part is of kind = \"battery\", with held = { by = \"strap\", count = 2, holds = \"1500 N\" } or its bolts.",
    )
}

fn nothing() -> Finding {
    open(
        "nothing".to_owned(),
        "things that weigh something",
        "The build has nothing that weighs something, so there is nothing to hold.".to_owned(),
        "mass and fixing of each thing".to_owned(),
        "Weigh each thing above 5 kg and look how it is fixed: mass = \"25 kg\" in its part, held = { by = \"bolt\", size = \"M6\", count = 4 } in its item.",
    )
}
