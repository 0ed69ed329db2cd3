//! "Will the milk still be cold on the sixth day, and what does that cost the battery?" — the
//! question **cold**: does it keep the food, as long as we stay away from shops?
//!
//! **Computed**, of everything in the build that is cooled: the days of fresh food that all of it
//! holds together, against what is wanted; and of each compressor box the share of a hot afternoon
//! that it runs, how warm its bay gets, and the amp-hours of a hot and an ordinary day.
//!
//! **Not computed**: warm-up and pull-down (days are steady), sun on the skin, absorption and
//! thermoelectric boxes (*open*), ice, a freezer compartment inside a fridge, how long each food
//! keeps.
//!
//! **Model**: [`spile_heat::chain`]: heat comes in through the walls, from the bay or through the
//! front from the cabin, with the air of openings and with food put in warm; a compressor reaches a
//! share η of Carnot's limit, stated at 45 °C condensing; what it gives off warms the bay, which is
//! one temperature. Where the papers state consumptions, they fix UA/η: η keeps its typical range,
//! and UA is fitted to the papers for each η tried, since a small circuit's η is known better than
//! what pipes, frames and a condenser in the wall let through. Without papers, UA comes from sizes,
//! insulation, gasket and a factor for such bridges. The duty is that of the afternoon, as if it
//! lasted; amp-hours are those of the mean of day and night.
//!
//! **Assumed**: a bay leads its heat to cabin and skin, both as warm as the cabin, and with the air
//! of its openings where they are told, else of vents where the papers ask for vents. Light and fan are in a consumption that papers state.
//! All the nominal volume counts as air when the door is opened. Food is as milk. Boxes in one bay
//! warm each other.
//!
//! **Limits**: physics and papers make a *stop* where they rest on more than stand-ins; the
//! temperature wanted inside is held against advice (practice), the days against a wish.
//!
//! **Sources**: those of [`spile_heat`]; food temperatures of the USA and the United Kingdom.
//!
//! ```
//! let folder = spile_build::Folder::from_texts([("build.toml", r#"
//! wants = { people = 2, away = "3 days" }
//! [parts.box]
//! kind = "lidded box"
//! size = { width = "590 mm", height = "410 mm", depth = "370 mm" }
//! volume = "32 L"
//! [items.box]
//! part = "box"
//! "#)]).unwrap();
//! let answer = spile_cold::answer(folder.build());
//! let days = &answer.findings[0];
//! assert_eq!((days.id.as_str(), days.verdict.word()), ("days", "care"));
//! assert!((days.figure.unwrap().likely - 32.0 * 0.75 / (2.0 * 5.4)).abs() < 1e-9);
//! ```

mod duty;
mod keep;
mod mend;
mod picture;
mod total;
mod working;

use spile_answer::{Answer, Basis, Finding, Question, Verdict};
use spile_build::file::Cooling;
use spile_build::{Build, Item};

use spile_heat::scene::{Cold, Scene, compressors};

pub use picture::{At, Picture, picture};

/// The answer of a build.
pub fn answer(build: &Build) -> Answer {
    if cold_items(build).next().is_none() {
        return Answer {
            question: Question::Cold,
            findings: vec![keep::nothing(build)],
            assumed: Vec::new(),
        };
    }
    let mut findings = vec![keep::days(build)];
    for (name, item) in cold_items(build) {
        findings.extend(one(build, name, item));
    }
    findings.extend(total::of_all(build));
    findings.extend(keep::inside(build));
    Answer { question: Question::Cold, findings, assumed: assumed(build) }
}

/// Everything in the build that is cooled, by name.
pub(crate) fn cold_items(build: &Build) -> impl Iterator<Item = (&str, &Item)> {
    let cooled = build.items.iter().filter(|(_, item)| item.part.cooling.is_some());
    cooled.map(|(name, item)| (name.as_str(), item))
}

/// What is found of one cold item.
fn one(build: &Build, name: &str, item: &Item) -> Vec<Finding> {
    match item.part.cooling {
        Some(Cooling::Absorption) => return vec![not_a_compressor(name, "by absorption")],
        Some(Cooling::Thermoelectric) => {
            return vec![not_a_compressor(name, "by a thermoelectric block")];
        }
        Some(Cooling::Compressor) | None => {}
    }
    let cold = Cold::new(build, name, item);
    // The box itself first, then the others that warm its bay, as far as they can be computed.
    let mates = compressors(build)
        .filter(|mate| mate.name != name && mate.shares_bay(&cold))
        .filter(Cold::is_computable);
    match Scene::new(build, std::iter::once(cold).chain(mates).collect(), false) {
        Some(scene) => duty::findings(build, &scene),
        None => vec![duty::too_little(&cold)],
    }
}

fn not_a_compressor(name: &str, how: &str) -> Finding {
    let says = format!(
        "The {name} is cooled {how}, which is not computed yet. It is not a compressor, and nothing \
         here can say whether it keeps cold on a hot day or what it uses."
    );
    Finding::plain(format!("{name}.duty"), format!("{name}, not computed yet"), Verdict::Open, says)
}

/// What was taken for granted, in words.
fn assumed(build: &Build) -> Vec<String> {
    let wants = &build.wants;
    let mut assumed: Vec<String> =
        wants.assumed.iter().filter(|what| !what.contains("without power")).cloned().collect();
    if build.corners.hot_cabin.basis == Basis::Typical {
        let hot = build.corners.hot_cabin.likely().in_celsius();
        assumed.push(format!("{hot} °C in the cabin on a hot afternoon"));
    }
    for cold in compressors(build) {
        match cold.bay {
            None => assumed.push(format!("the {} stands free in the cabin", cold.name)),
            Some((_, of)) if of.air.is_some() => {}
            Some((bay, of)) if of.conductance.is_none() && cold.wants_vents() => {
                assumed.push(format!(
                    "{bay} has the vents that the papers of the {} ask for",
                    cold.name
                ));
            }
            Some((bay, of)) if of.conductance.is_none() => {
                assumed.push(format!("{bay} is closed, without vents"));
            }
            Some(_) => {}
        }
    }
    assumed
}
