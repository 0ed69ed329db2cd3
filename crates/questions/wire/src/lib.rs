//! "Are cable, return and fuse right?" — the volts that arrive, the heat in the cable, the fuse
//! that guards it, and what a fault does.
//!
//! For every run of the build and what hangs on it: the volts at the item as it starts on a low,
//! cold battery, against its cut-out; the loss on the way there and back while everything runs;
//! the load against what the cable carries where it lies; the fuse against load, cable and papers;
//! the time in which the least fault opens the fuse against what the cable stands. For the bank:
//! the bolted fault against what the fuses break, the unguarded cable at the post, the main fuse
//! against load and cable. Where a run is not good, the lightest conductors that keep every rule
//! are computed.
//!
//! The whole circuit is solved by modified nodal analysis (`spile-circuit`): returns through the
//! body and shared cables are as they are, loads of constant power draw more the lower the
//! voltage. Conductors are as warm as their surroundings; the heat of their own current, charging,
//! motors' surges by their curves, and fuses behind each other come with a later deepening.
//!
//! Limits: cut-outs and greatest fuses from papers, currents by 33 CFR 183.425, conductor maxima
//! by IEC 60228. Practice: 3 % and 10 % of loss, 80 % of a fuse. Mains wiring is out of scope.
//!
//! ```
//! let folder = spile_build::Folder::from_texts([("build.toml", r#"
//! [parts.fridge]
//! kind = "upright fridge"
//! power = { running = "58 W", start = "8.5 A", cut_out = "10.9 V" }
//! [items.fridge]
//! [runs.fridge]
//! section = "1.5 mm2"
//! length = "7.2 m"
//! [bank]
//! capacity = "100 Ah"
//! "#)]).unwrap();
//! let answer = spile_wire::answer(folder.build());
//! let start = answer.findings.iter().find(|finding| finding.id == "fridge.start").unwrap();
//! assert!(start.figure.unwrap().likely < 10.9);
//! assert!(start.mend.as_ref().unwrap().contains("mm²"));
//! ```

mod bank;
mod load;
mod path;
mod run;
mod size;

use spile_answer::{Answer, Ask, Finding, Question, Verdict};
use spile_build::{Bank, Build, Item, Return, Run};
use spile_quantity::Power;

pub use size::Sized;

use crate::load::load;
use crate::path::Others;
use crate::run::Asked;

/// The question asked of a build.
pub fn answer(build: &Build) -> Answer {
    let mut answer = Answer { question: Question::Wire, findings: Vec::new(), assumed: Vec::new() };
    let Some(bank) = &build.bank else {
        answer.findings.push(no_bank());
        return answer;
    };
    for (name, run) in &build.runs {
        match asked(build, bank, name, run) {
            Some(asked) => answer.findings.extend(run_findings(&asked)),
            None => answer.findings.extend(unknown_load(build, name, run)),
        }
    }
    for (name, item) in &build.items {
        if load(build, item).is_some() && !build.runs.values().any(|run| run.to == *name) {
            answer.findings.push(no_run(name, item));
        }
    }
    if build.runs.is_empty() && answer.findings.is_empty() {
        answer.findings.push(nothing());
        return answer;
    }
    answer.findings.extend(bank::findings(build, bank, together(build)));
    answer.assumed = assumed(build, bank);
    answer
}

/// The lightest conductors and the fuse with which a run keeps every rule at the likely state;
/// `None` if there is no such run, nothing is known of its load, or no size does.
pub fn lightest(build: &Build, run: &str) -> Option<Sized> {
    let (name, found) = build.runs.get_key_value(run)?;
    size::lightest(&asked(build, build.bank.as_ref()?, name, found)?, false)
}

fn asked<'b>(build: &'b Build, bank: &'b Bank, name: &'b str, run: &'b Run) -> Option<Asked<'b>> {
    let item = build.items.get(&run.to)?;
    let load = load(build, item)?;
    let others = others(build, name);
    let item = item.about.split(',').next().unwrap_or(&item.about);
    Some(Asked { build, bank, name, run, item, load, others })
}

/// What hangs on the block besides one run.
fn others(build: &Build, but: &str) -> Others {
    let mut others = Others { power: Power::w(0.0), names: Vec::new() };
    for (name, run) in &build.runs {
        let Some(item) = build.items.get(&run.to) else { continue };
        if let (true, Some(load)) = (name != but, load(build, item)) {
            others.power = others.power + load.running.likely();
            others.names.push(name.clone());
        }
    }
    others
}

/// What everything together takes.
fn together(build: &Build) -> Power {
    others(build, "").power
}

/// What is found of one run, with what would clear it.
fn run_findings(asked: &Asked<'_>) -> Vec<Finding> {
    let mut findings = run::findings(asked);
    let by_size = |finding: &Finding| {
        let what = finding.id.rsplit('.').next().unwrap_or_default();
        finding.verdict != Verdict::Good
            && ["start", "drop", "cable", "fuse-cable", "fault"].contains(&what)
    };
    if findings.iter().any(by_size) {
        let sized = size::lightest(asked, true).or_else(|| size::lightest(asked, false));
        let words = sized.map_or_else(
            || "No single size of cable clears it on this way: it needs a shorter way, a return of its own, or two runs.".to_owned(),
            |sized| size::words(asked, &sized),
        );
        for finding in findings.iter_mut().filter(|finding| by_size(finding)) {
            finding.mend = Some(words.clone());
        }
    }
    if let Some(suitable) = asked.suitable_fuse() {
        for finding in &mut findings {
            let fuse = finding.id.ends_with(".fuse-load") || finding.id.ends_with(".fuse-papers");
            if fuse && finding.verdict != Verdict::Good {
                finding.mend = Some(format!("A fuse of {} A carries the load.", suitable.in_a()));
            }
        }
    }
    findings
}

fn open(id: String, label: &str, says: String, input: String, how: &str) -> Finding {
    let mut finding = Finding::plain(id, label, Verdict::Open, says);
    finding.asks.push(Ask {
        input: input.into(),
        how: how.to_owned().into(),
        settles: String::new(),
        weight: 1.0,
    });
    finding
}

fn no_bank() -> Finding {
    open(
        "bank".to_owned(),
        "house battery",
        "Nothing is said of the house battery, so no voltage can be computed.".to_owned(),
        "capacity of the house battery".to_owned(),
        "Read the label of the battery: [bank] capacity = \"95 Ah @ 20 h\".",
    )
}

fn nothing() -> Finding {
    open(
        "nothing".to_owned(),
        "runs",
        "The build has no cable to anything, so there is nothing to compute.".to_owned(),
        "runs".to_owned(),
        "Lay a tape along the cable to each thing: [runs.fridge] length = \"7.2 m\", section = \"1.5 mm2\".",
    )
}

fn no_run(name: &str, item: &Item) -> Finding {
    open(
        format!("{name}.run"),
        "its cable",
        format!("Nothing is said of the cable to the {}.", item.about),
        format!("cable to the {}", item.about),
        "Lay a tape along its way from the fuse block, and read the print along the cable: [runs.NAME] to = \"ITEM\", length = \"7.2 m\", section = \"1.5 mm2\".",
    )
}

/// What is said of a run whose load is not known.
fn unknown_load(build: &Build, name: &str, run: &Run) -> Option<Finding> {
    let item = build.items.get(&run.to)?;
    Some(open(
        format!("{name}.load"),
        "its load",
        format!(
            "Nothing is said of what the {} takes, so its cable and fuse cannot be judged.",
            item.about
        ),
        format!("power of the {}", item.about),
        "Read its plate or its papers: power = { running = \"58 W\" } in its part; or clamp the meter round the feed while it runs, and multiply amperes by volts.",
    ))
}

/// The topology that was taken for granted, in words.
fn assumed(build: &Build, bank: &Bank) -> Vec<String> {
    let mut said = Vec::new();
    let block = &build.block;
    if block.assumed {
        said.push(format!(
            "bank, main fuse, {:.1} m of {} to a fuse block, and the same back",
            block.feed.length.likely().in_m(),
            block.feed.section
        ));
    }
    if bank.kind_assumed {
        said.push(format!("a bank of {}", bank.kind.word()));
    }
    for (name, run) in &build.runs {
        if run.feed.section_assumed {
            said.push(format!("{} for the run {name}", run.feed.section));
        }
        if run.back_assumed && matches!(run.back, Return::Cable(_)) {
            said.push(format!("a return like the feed for the run {name}"));
        }
    }
    said
}
