//! "It is legal by the weighbridge, but is the rear axle?" — the question **axle**: do axles and
//! tyres carry it, and does it sit level?
//!
//! **Computed**, in every load state of the build: what the front axle, the rear axle, a tag axle
//! and the whole weigh, against the plate; what the most loaded tyre of each axle carries, against
//! its load index and its load at the pressure in use; left against right; of a trailer, the load
//! on the coupling and what it does to the axles of the towing car. Where papers of the bare
//! vehicle are there beside a weighing, what nobody has listed, and where it lies.
//!
//! **Not computed**: braking and cornering, springs (how far it sags), the height of the centre of
//! mass, three axles that share by their springs, how a boat floats.
//!
//! **Model**: a beam on two supports ([`statics`]). A weighing is the base, and everything else a
//! change to it: items that a job adds, removes or moves since then, and the difference between
//! the load state on the weighbridge and the one asked of. So what is in the vehicle need not be
//! weighed piece by piece. Without a weighing the papers of the bare vehicle are the base, all
//! items come on top, and so does a typical mass of what is not listed.
//!
//! **Assumed**: what a load state says nothing of is as on the weighbridge. Food lies in the cold
//! boxes first. What other items hold is aboard in every state but `empty`. Both axles have one
//! track. A tag axle takes its stated share of the rear pair. Tyres of one side share equally.
//!
//! **Limits**: the plate and tyre makers' papers, firm; load indices as published; 5 % from side to
//! side and 4 % on the coupling are practice.
//!
//! ```
//! let folder = spile_build::Folder::from_texts([("build.toml", r#"
//! [vehicle]
//! wheelbase = "3500 mm"
//! limits = { front = "1850 kg", rear = "2100 kg", total = "3500 kg" }
//! [states.load.full]
//! people = "150 kg"
//! [weighings.spring]
//! state = "full"
//! front = "1300 kg"
//! rear = "2150 kg"
//! "#)]).unwrap();
//! let answer = spile_axle::answer(folder.build());
//! let words = |id: &str| answer.findings.iter().find(|f| f.id == id).unwrap().verdict.word();
//! assert_eq!((words("total"), words("rear")), ("care", "stop"));
//! ```

mod aboard;
mod axle;
mod mend;
mod open;
mod picture;
mod place;
mod scene;
mod side;
pub mod statics;
mod trailer;
mod tyre;
mod unlisted;
mod working;

use spile_answer::{Answer, Basis, Finding, Question, Swing};
use spile_build::file::VehicleKind;
use spile_build::{Build, LoadState, typical};
use spile_quantity::{Length, Mass};

pub use crate::picture::{OnAxle, Standing, standings};

use crate::scene::{Base, FIGURES, Scene};

/// The question asked of a build. Readings are of the build as it stands, which a build after a
/// job carries along: [`Build::stands`].
pub fn answer(build: &Build) -> Answer {
    let mut answer = Answer { question: Question::Axle, findings: Vec::new(), assumed: Vec::new() };
    let stands = build.stands.as_deref().unwrap_or(build);
    let base = scene::base(stands);
    if let Some(finding) = open::cannot_begin(build, base.as_ref()) {
        answer.findings.push(finding);
        return answer;
    }
    let (Some(base), Some(wheelbase)) = (base, &build.vehicle.wheelbase) else { return answer };
    let nothing = aboard::nothing();
    let states: Vec<(&str, &LoadState)> = if build.loads.is_empty() {
        answer.findings.push(open::no_states());
        vec![(scene::AS_WEIGHED, &nothing)]
    } else {
        build.loads.iter().map(|(name, state)| (name.as_str(), state)).collect()
    };
    let scenes: Vec<Scene> =
        states.into_iter().map(|state| Scene::new(build, &base, wheelbase, state)).collect();
    let swings = scenes.iter().map(Scene::swings).collect();
    let case = Case { build, stands, base, scenes, swings };
    answer.findings.extend(findings(&case));
    answer.assumed = assumed(&case);
    answer
}

/// A build with its loads in every state.
pub(crate) struct Case<'b> {
    pub(crate) build: &'b Build,
    /// The build as it was weighed.
    pub(crate) stands: &'b Build,
    pub(crate) base: Base<'b>,
    pub(crate) scenes: Vec<Scene>,
    pub(crate) swings: Vec<[Swing; FIGURES]>,
}

impl Case<'_> {
    /// The state in which a figure is worst, with how it swings there.
    pub(crate) fn worst(&self, figure: usize) -> (&Scene, &Swing) {
        let pairs = self.scenes.iter().zip(&self.swings).map(|(scene, all)| (scene, &all[figure]));
        pairs
            .max_by(|(_, a), (_, b)| {
                a.unfavourable.total_cmp(&b.unfavourable).then(a.likely.total_cmp(&b.likely))
            })
            .expect("there is at least one load state")
    }

    pub(crate) fn is_trailer(&self) -> bool {
        self.build.vehicle.kind == VehicleKind::Trailer
    }
}

fn findings(case: &Case<'_>) -> Vec<Finding> {
    let mut findings = open::no_masses(case);
    findings.extend(if case.is_trailer() { trailer::nose(case) } else { axle::front(case) });
    findings.extend(axle::rear(case));
    findings.extend(axle::total(case));
    findings.extend(tyre::findings(case));
    findings.push(side::finding(case));
    findings.extend(side::readings(case));
    if case.is_trailer() {
        findings.extend(trailer::car(case));
    }
    findings.extend(unlisted::finding(case));
    findings
}

/// What was taken for granted, in words.
fn assumed(case: &Case<'_>) -> Vec<String> {
    let build = case.build;
    let mut said = Vec::new();
    let off = typical::<Mass>("weighbridge-tolerance").likely().in_kg();
    let track = typical::<Length>("track").likely().in_m();
    let mut say = |when: bool, what: String| {
        if when && !said.contains(&what) {
            said.push(what);
        }
    };
    for scene in &case.scenes {
        for input in scene.ledger.inputs() {
            say(input.source.ends_with("kg assumed"), format!("± {off} kg on the weighbridge"));
            say(
                input.source == "common practice" && input.name.ends_with("along the vehicle"),
                format!("where the {} sits", input.name.trim_end_matches(" along the vehicle")),
            );
        }
    }
    if let Some((weighed, _)) = case.base.state {
        for (name, state) in &build.loads {
            let parts = [
                ("people", state.people.is_none()),
                ("water", state.water.is_none()),
                ("fuel", state.fuel.is_none()),
                ("food", state.food.is_none()),
            ];
            for (what, unsaid) in parts {
                say(unsaid && name != weighed, format!("{what} in {name} as in {weighed}"));
            }
        }
    }
    let axles = &build.vehicle.axles;
    say(axles.track.is_none(), format!("a track of {track} m"));
    say(build.vehicle.rear_axle.is_none(), "where the rear axle is".to_owned());
    for (what, tyres) in [("front", &axles.front), ("rear", &axles.rear), ("tag", &axles.tag_tyres)]
    {
        let uncounted = tyres.as_ref().is_some_and(|tyres| tyres.count.is_none());
        say(uncounted, format!("two tyres on the {what} axle"));
    }
    said
}

/// Whether a figure may be held firmly against what its owner said of a plate.
pub(crate) fn is_firm(basis: Basis) -> bool {
    basis != Basis::Typical
}
