//! Whole runs against ngspice; `tests/reference/runs.py` wrote the file and works out every
//! resistance by itself.

use serde::Deserialize;

use crate::check::{answer, find, likely, verdict};

#[derive(Deserialize)]
struct Reference {
    ngspice: String,
    runs: Vec<Run>,
}

#[derive(Deserialize)]
struct Run {
    name: String,
    build: String,
    start: Option<State>,
    running: State,
    fault: State,
}

#[derive(Deserialize)]
struct State {
    item_v: f64,
    feed_a: f64,
    drop_percent: Option<f64>,
}

/// Volts at the item and loss within 0.1 %; the fault within its printed digit.
#[test]
fn whole_runs_agree_with_ngspice() {
    let text = include_str!("../reference/runs.json");
    let reference: Reference = serde_json::from_str(text).unwrap();
    assert_eq!((reference.ngspice.as_str(), reference.runs.len()), ("39", 11));
    for run in &reference.runs {
        let answer = answer(&run.build);
        let near = |what: &str, found: f64, expected: f64| {
            let apart = (found / expected - 1.0).abs();
            assert!(apart < 1e-3, "{}: {what} is {found}, ngspice has {expected}", run.name);
        };
        let cuts_out = run.build.contains("cut_out");
        if let (Some(start), true) = (&run.start, cuts_out) {
            near("the volts at start", likely(&answer, "item.start"), start.item_v);
        }
        if cuts_out {
            near("the volts running", likely(&answer, "item.running"), run.running.item_v);
        }
        near("the loss", likely(&answer, "item.drop"), run.running.drop_percent.unwrap());
        // below its cut-out it takes nothing, and the load counts as that at the cut-out
        let runs = answer.findings.iter().all(|f| f.id != "item.running" || verdict(f) != "stop");
        if runs {
            near(
                "the load",
                input(&answer, "item.cable", "load while everything runs"),
                run.running.feed_a,
            );
        }
        if let Some(fault_a) = least_fault_a(&answer) {
            let apart_a = (fault_a - run.fault.feed_a).abs();
            assert!(
                apart_a < 0.051,
                "{}: {fault_a} A, ngspice has {} A",
                run.name,
                run.fault.feed_a
            );
        }
    }
}

fn input(answer: &spile_answer::Answer, id: &str, name: &str) -> f64 {
    let input = find(answer, id).inputs.iter().find(|input| input.name == name);
    input.unwrap_or_else(|| panic!("{id} has no {name}")).likely
}

/// The fault current as it stands in the working: `76.3 A, 7.6 times the fuse's rating`.
fn least_fault_a(answer: &spile_answer::Answer) -> Option<f64> {
    let step = find(answer, "item.fault").working.first()?;
    step.numbers.split(' ').next()?.parse().ok()
}
