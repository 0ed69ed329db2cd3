//! "Are cable, return and fuse right?" — the volts that arrive, the heat in the cable, the fuse
//! that guards it, and what a fault does.
//!
//! **Computed** for every run and what hangs on it: the volts at the item as it starts, and while
//! everything runs, against its cut-out; the loss on the way there and back; the load against what
//! the cables carry where they lie; the least section; the fuse against load, cables, papers and
//! its way; the time in which the least fault opens the fuse against what the conductors stand.
//! For bank, block and body: the bolted fault against what the fuses break, the unguarded cable at
//! the post, the main fuse and cables against everything together and against each other, the
//! limits of one battery and of the block, the body as a return. Whatever a cable, a stud or a fuse
//! can mend comes with the lightest change that does, found by asking the changed run again.
//!
//! **Not computed**: charging and sources, the surge of a motor against the fuse's curve, fuses
//! behind each other, electronics of a lithium battery that switch off in a fault, mains wiring.
//!
//! **Model**: the circuit by modified nodal analysis (`spile-circuit`): what has a converter takes
//! its power at any voltage, a pump or a fan its current. The battery is low and cold but for the
//! bolted faults, when it is full and warm. As the item starts, cables are as warm as their
//! surroundings; while everything runs, as warm as their current makes them; in the least fault the
//! run's own are as hot as their insulation stands.
//!
//! **Assumed**: the other runs hang on the block without losses of their own, all of them on; where
//! no fuse is said, the one that would be right; PVC insulation in a fault.
//!
//! **Limits**: cut-outs, greatest fuses and currents from papers; currents of cables by
//! 33 CFR 183.425 (ISO 10133 annex A, from memory, beyond its sizes); fuse and fault by
//! IEC 60364-4-43. **Practice**: 3 % and 10 % of loss, 80 % of a fuse, 1 mm², 180 mm at the post.
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

mod asked;
mod bank;
mod block;
mod cable;
mod drop;
mod fault;
mod fuse;
mod heater;
mod mend;
mod shunt;
mod size;
mod sold;
mod start;
mod unsaid;
mod whole;
mod words;

use spile_answer::{Answer, Finding, Question};
use spile_build::Build;
use spile_circuit::scene::{OneRun, load};

pub use size::{Mends, NewReturn, Sized};

/// The question asked of a build.
pub fn answer(build: &Build) -> Answer {
    let mut answer = Answer { question: Question::Wire, findings: Vec::new(), assumed: Vec::new() };
    let Some(bank) = &build.bank else {
        answer.findings.push(unsaid::no_bank());
        return answer;
    };
    for (name, run) in &build.runs {
        answer.findings.extend(heater::switch(build, name, run));
        match OneRun::of(build, bank, name, run) {
            Some(asked) => {
                answer.findings.extend(sold::finding(name, run));
                answer.findings.extend(run_findings(&asked));
            }
            None => answer.findings.extend(unsaid::no_load(build, name, run)),
        }
    }
    for (name, item) in &build.items {
        if load(build, item).is_some() && !build.runs.values().any(|run| run.to == *name) {
            answer.findings.push(unsaid::no_run(name, item));
        }
    }
    if build.runs.is_empty() && answer.findings.is_empty() {
        answer.findings.push(unsaid::nothing());
        return answer;
    }
    answer.findings.extend(bank::findings(build, bank));
    answer.findings.extend(shunt::finding(build, bank));
    answer.assumed = unsaid::assumed(build, bank);
    answer
}

/// The changes with the least copper that mend a run; `None` if there is no such run or nothing is
/// known of its load.
pub fn mends(build: &Build, run: &str) -> Option<Mends> {
    let (name, found) = build.runs.get_key_value(run)?;
    let asked = OneRun::of(build, build.bank.as_ref()?, name, found)?;
    Some(mend::mends(&asked, &asked::findings(&asked)))
}

/// What is found of one run, with what would clear it.
fn run_findings(asked: &OneRun<'_>) -> Vec<Finding> {
    let mut findings = asked::settled(asked);
    mend::put(asked, &mut findings);
    findings
}
