//! "It is always hot behind that grille: does the fridge breathe, or does it breathe its own air?" —
//! the question **air**: does it get the air it needs?
//!
//! **Computed**: of each bay with something warm in it how warm it gets on a hot afternoon, how much
//! warmer than the cabin the air is that comes to a condenser, whether openings are large enough,
//! the outlet as large as the inlet and open to somewhere, which way a fan blows, and what an
//! inverter at full load does to a fridge in the same space; the opening that a lead bank needs for
//! its gas; whether lithium may be charged where it stands.
//!
//! **Not computed**: wind on an opening, warmth in layers, gas of a battery that is being destroyed,
//! the air and the exhaust of what burns fuel: of that the caution is stated and nothing judged
//! *good*.
//!
//! **Model**: [`spile_heat::scene`], the same balance that tells how hard a compressor works: heat
//! of condensers less what cabinets draw in, of inverters and chargers by efficiency and idle, of the
//! bank by I²R; it leaves through walls and with the air that warmth and fans drive through the
//! openings ([`spile_heat::openings`]). What warms a bay is there as the afternoon's mean.
//!
//! **Assumed**: air comes in as warm as the cabin, also from outdoors; openings that are not told are
//! of usual size where something is said of the bay's air or papers ask for them, else there are
//! none; an inverter is at full load for a tenth of a hot afternoon.
//!
//! **Limits**: the papers' warmest surroundings and openings make a *stop* where they and what they
//! are held against were told; so does a hole too small for a fifth of the air of IEC 62485, since
//! gas could burn there. All else is practice. For gas the worse of stationary and traction use
//! counts, up to a charger of constant current at its end (IUI) as the unfavourable end.
//!
//! **Sources**: those of [`spile_heat`]; IEC 62485-2 and IEC 62485-3 for gas.
//!
//! ```
//! let folder = spile_build::Folder::from_texts([("build.toml", r#"
//! [bays.locker]
//! size = { width = "640 mm", height = "900 mm", depth = "560 mm" }
//! air.inlet = { area = "160 cm2" }
//! air.outlet = { area = "90 cm2" }
//! [parts.inverter]
//! kind = "inverter"
//! power = { running = "800 W" }
//! [items.inverter]
//! place = { in = "locker" }
//! "#)]).unwrap();
//! let answer = spile_air::answer(folder.build());
//! let outlet = answer.findings.iter().find(|finding| finding.id == "locker.outlet").unwrap();
//! assert_eq!(outlet.verdict.reason().unwrap().word(), "practice");
//! ```

mod bank;
mod bay;
mod fuel;
mod mend;
mod picture;
mod place;
mod vents;
mod words;
mod working;

use spile_answer::{Answer, Basis, Finding, Question};
use spile_build::Build;
use spile_heat::scene::compressors;

pub use picture::{Picture, Stream, pictures};

/// The answer of a build.
pub fn answer(build: &Build) -> Answer {
    let mut findings = Vec::new();
    for (name, bay) in &build.bays {
        findings.extend(bay::findings(build, name, bay));
    }
    findings.extend(bank::findings(build));
    findings.extend(fuel::findings(build));
    if findings.is_empty() {
        findings.push(nothing());
    }
    Answer { question: Question::Air, findings, assumed: assumed(build) }
}

/// Nothing in the build asks for air.
fn nothing() -> Finding {
    let says =
        "Nothing in a bay of the build gives off heat, and there is no bank: nothing to judge.";
    let mend = "Say in which bay the fridge, the inverter, the charger and the bank stand: \
                place = { in = \"…\" }, with the bay's size and its openings.";
    let how = "A tape in the bay: width, height and depth, and of each opening width times height, less \
               what bars and mesh cover.";
    let asks =
        vec![words::ask("bays and their openings", how, "whether what gives off heat has air")];
    words::open("none".to_owned(), "air".to_owned(), says.to_owned(), asks)
        .mended(Some(mend.to_owned()))
}

/// What was taken for granted, in words.
fn assumed(build: &Build) -> Vec<String> {
    let mut assumed = Vec::new();
    if build.corners.hot_cabin.basis == Basis::Typical {
        let hot = build.corners.hot_cabin.likely().in_celsius();
        assumed.push(format!("{hot} °C in the cabin on a hot afternoon"));
    }
    for (name, bay) in &build.bays {
        let warm = place::is_warm(build, name);
        if !warm || bay.conductance.is_some() || bay.air.is_some() {
            continue;
        }
        let wants = |cold: &spile_heat::scene::Cold<'_>| {
            cold.condenser_bay().is_some_and(|(bay, _)| bay == name) && cold.wants_vents()
        };
        match compressors(build).find(wants) {
            Some(cold) => assumed
                .push(format!("{name} has the vents that the papers of the {} ask for", cold.name)),
            None => assumed.push(format!("{name} is closed, without vents")),
        }
    }
    assumed
}
