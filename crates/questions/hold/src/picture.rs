//! What a drawing of a fixing shows: where the fasteners are and what each of them takes.

use spile_build::file::{HeldBy, HeldFace};
use spile_build::{Build, Item};
use spile_quantity::{Force, Length, Mass};
use spile_strength::envelope::Case;
use spile_strength::group::{Group, Push, Share};

use crate::fixing::{self, Test};
use crate::modes::{Worst, worst};
use crate::scene::Scene;
use crate::{called, is_battery};

/// A fixing in the load case that works its fasteners hardest, every input at its likely value.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// The name of the item.
    pub name: String,
    /// What it is called.
    pub called: String,
    /// The fasteners in words: `4 bolts M6 of class 8.8`.
    pub fasteners: String,
    /// The face of the thing that they are on.
    pub face: HeldFace,
    /// Width and height of that face.
    pub face_size: [Length; 2],
    /// Where each fastener is, right of and above the face's lower left corner; empty of glue and
    /// straps.
    pub places: Vec<[Length; 2]>,
    /// The load case in words: `2 g up`.
    pub case: String,
    /// What pushes, with contents and what stands on it.
    pub mass: Mass,
    /// How far in front of the face it pushes.
    pub lever: Length,
    /// The push on the whole thing.
    pub push: Push,
    /// What each fastener takes; of straps one for all of them, of glue none.
    pub shares: Vec<Share>,
    /// What each takes along the face, to the right and up.
    pub along: Vec<[Force; 2]>,
    /// The place in `shares` of the one that works hardest.
    pub hardest: Option<usize>,
    /// The ways of failing of the one that works hardest, the weakest first.
    pub used: Vec<Used>,
}

/// How much of one way of failing is used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Used {
    /// What gives: `bolt`, `washer through the wall`.
    pub mode: &'static str,
    /// The share used \[%\] in the load case that is worst for it.
    pub percent: f64,
    /// Whether it is known well enough to make a *stop*.
    pub firm: bool,
}

/// The fixing of every item that can be computed, by the items' names.
pub fn pictures(build: &Build) -> Vec<Picture> {
    build.items.iter().filter_map(|(name, item)| picture(build, name, item)).collect()
}

fn picture(build: &Build, name: &str, item: &Item) -> Option<Picture> {
    let held = item.held.as_ref()?;
    item.mass.as_ref()?;
    if matches!(held.by, HeldBy::MagnetLatch | HeldBy::PositiveLatch) {
        return None;
    }
    let scene = Scene::new(build, name, item, held).ok()?;
    let point = scene.ledger.likely();
    let mut cases: Vec<Case> = fixing::road().cases;
    if is_battery(item) {
        let Test { cases: more, .. } = fixing::battery();
        cases.extend(more);
    }
    let found = worst(&scene, &point, &cases, false, |_| true)?;
    let (mass, lever) = scene.pushing(&point);
    let push = scene.push(&found.case, mass);
    let places = match held.by {
        HeldBy::Adhesive | HeldBy::Strap => Vec::new(),
        _ => scene.places(&point),
    };
    let middle = scene.face_size.map(|side| side / 2.0);
    let group = Group::new(&places, scene.face_size).ok();
    let along = group.as_ref().map_or_else(Vec::new, |group| group.along(push, middle));
    let shares = match &group {
        Some(group) => group.shares(push, middle, lever),
        None if held.by == HeldBy::Strap => vec![found.share],
        None => Vec::new(),
    };
    Some(Picture {
        name: name.to_owned(),
        called: called(item).to_owned(),
        fasteners: scene.fasteners(),
        face: scene.face,
        face_size: scene.face_size,
        case: scene.case_words(&found.case),
        mass,
        lever,
        push,
        hardest: shares.iter().position(|share| *share == found.share),
        used: used(&scene, &cases, &found),
        places,
        shares,
        along,
    })
}

/// Every way of failing with its own worst case, the weakest first.
fn used(scene: &Scene<'_>, cases: &[Case], found: &Worst) -> Vec<Used> {
    let point = scene.ledger.likely();
    let modes = crate::modes::modes(scene, &point);
    let one = |name: &'static str| {
        let worst = worst(scene, &point, cases, false, |mode| mode.name == name)?;
        Some(Used { mode: name, percent: worst.used * 100.0, firm: worst.mode.firm })
    };
    let mut used: Vec<Used> = modes.iter().filter_map(|mode| one(mode.name)).collect();
    let is_first = |used: &Used| used.mode != found.mode.name;
    used.sort_by(|a, b| {
        b.percent.total_cmp(&a.percent).then_with(|| is_first(a).cmp(&is_first(b)))
    });
    used
}
