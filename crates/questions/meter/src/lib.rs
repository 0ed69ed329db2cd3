//! "What should the meter read, and what does it mean that it reads something else?" — what to
//! expect at each place along a run, and the fault that best explains what was read.
//!
//! **Computed**, before any reading: volts at the posts, the block and the plug, the current, the
//! losses along the way in millivolts, each with the spread that the inputs and the meter's own
//! error allow; the answer is *open* and says what to take, in which order. After readings: each is
//! judged against what was to be expected. Where one is outside, the likeliest causes, each with its
//! one unknown (a joint's milliohms, a section, a current) fitted to all readings together, and the
//! next test that best tells the leading ones apart.
//!
//! **Not computed**: two faults at once; what an appliance does inside; temperatures of joints (only
//! what was read is held against the insulation).
//!
//! **Model**: the circuit of the build (`spile_circuit::scene`), held at the posts at the voltage
//! that was read there. Each reading r weighs by its spread σ, half of what the meter and the inputs
//! allow; a cause with its unknown p is fitted by least squares, Σ((r − m(p))/σ)², and a free unknown
//! costs 1, as does what is rarer than a bad joint. Causes that no reading taken tells apart count as
//! one. The posts themselves hold any voltage from low at rest to charging alike; only beyond it
//! does their reading weigh, by the meter's error.
//!
//! **Verdicts**: readings as expected are *good*. A reading outside is *care*: what was expected is
//! no limit. It is *stop* where the poles are swapped, where a thinner cable than was said explains
//! it and nothing else does and its fuse lets through more than that carries, and where a joint is
//! hotter than its insulation stands. A run of which neither the plug was read is *open*.
//!
//! **For drawings**: [`points`] gives the same, place by place.
//!
//! **Sources**: Ohm's and Kirchhoff's laws; what meters are off by, and what is likely where, are
//! common practice, no source.
//!
//! ```
//! let folder = spile_build::Folder::from_texts([("build.toml", r#"
//! [parts.fridge]
//! kind = "upright fridge"
//! power = { running = "72 W", start = "9 A", cut_out = "10.4 V" }
//! [items.fridge]
//! [runs.fridge]
//! section = "4 mm2"
//! length = "4 m"
//! [bank]
//! capacity = "100 Ah"
//! [readings.fridge]
//! battery = "12.80 V"
//! block = "12.75 V"
//! appliance = "11.60 V"
//! current = "6.2 A"
//! "#)]).unwrap();
//! let answer = spile_meter::answer(folder.build());
//! let cause = answer.findings.iter().find(|finding| finding.id == "fridge.cause").unwrap();
//! assert!(cause.says.starts_with("Likeliest: a bad joint"));
//! ```

mod cause;
mod expect;
mod fit;
mod habit;
mod round;
mod spot;
mod tell;

pub use round::{Cause, Round, TestPoint, points};
pub use spot::Spot;

use spile_answer::{Answer, Ask, Finding, Question, Verdict};
use spile_build::Build;
use spile_circuit::scene::OneRun;

/// The question asked of a build.
pub fn answer(build: &Build) -> Answer {
    let mut findings = Vec::new();
    if let Some(bank) = &build.bank {
        for (name, run) in &build.runs {
            let Some(asked) = OneRun::of(build, bank, name, run) else { continue };
            let mut was_read = false;
            for (reading, taken) in build.readings.iter().filter(|(_, taken)| taken.run == *name) {
                let found = tell::read(&asked, reading, taken);
                was_read |=
                    found.iter().any(|finding| finding.id == format!("{reading}.appliance"));
                findings.extend(found);
            }
            if !was_read {
                findings.extend(tell::before(&asked));
            }
        }
    }
    if findings.is_empty() {
        findings.push(nothing());
    }
    Answer { question: Question::Meter, findings, assumed: Vec::new() }
}

fn nothing() -> Finding {
    let says = "Without a house battery, a cable and what hangs on it there is nothing to expect of a meter.";
    let mut finding = Finding::plain("nothing", "readings", Verdict::Open, says);
    finding.asks.push(Ask {
        input: "house battery, runs and the power of what hangs on them".into(),
        how: "Read the battery's label and the appliance's plate, and lay a tape along its cable: [bank] capacity = \"95 Ah @ 20 h\", [runs.fridge] length = \"7.2 m\", section = \"1.5 mm2\".".into(),
        settles: String::new(),
        turns: String::new(),
        weight: 1.0,
    });
    finding
}
