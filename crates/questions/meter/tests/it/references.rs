//! Networks, healthy and with a fault in them, against ngspice; `tests/reference/readings.py` wrote
//! the file and works out every resistance by itself.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use serde::Deserialize;
use spile_answer::{Unit, Verdict};

use crate::check::{answer, find};

#[derive(Deserialize)]
struct Reference {
    ngspice: String,
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    cause: String,
    bad_mohm: f64,
    build: String,
    read: BTreeMap<String, f64>,
}

fn reference() -> Reference {
    serde_json::from_str(include_str!("../reference/readings.json")).unwrap()
}

/// The build with what ngspice has at some places as its readings.
fn with_readings(case: &Case, places: &[&str]) -> String {
    let mut build = format!("{}[readings.pump]\n", case.build);
    for place in places {
        let unit = if *place == "current" { "A" } else { "V" };
        writeln!(build, "{place} = \"{:.4} {unit}\"", case.read[*place]).unwrap();
    }
    build
}

const ALL: [&str; 9] = [
    "battery",
    "block",
    "appliance",
    "current",
    "feed_drop",
    "return_drop",
    "main_drop",
    "negative_drop",
    "fuse_drop",
];

/// What is expected of a healthy run: volts within 0.1 % of ngspice's, losses within 0.5 mV, the
/// last digit of a hand meter, and 1 %: the copper is some kelvin warmer than its surroundings.
#[test]
fn what_is_expected_of_healthy_runs_agrees_with_ngspice() {
    let reference = reference();
    assert_eq!((reference.ngspice.as_str(), reference.cases.len()), ("39", 14));
    let healthy: Vec<&Case> = reference.cases.iter().filter(|case| case.cause.is_empty()).collect();
    assert_eq!(healthy.len(), 4);
    for case in healthy {
        let answer = answer(&with_readings(case, &ALL));
        let all_good = answer.findings.iter().all(|finding| finding.verdict == Verdict::Good);
        assert!(all_good && answer.findings.len() == ALL.len(), "{}: {answer:#?}", case.name);
        let expects = expects_of(case);
        for (place, expect) in ALL.iter().zip(&expects).skip(1) {
            let ngspice = case.read[*place];
            let (found, most) = match expect.unit {
                Unit::Millivolt => (expect.likely / 1000.0, 0.0005 + 0.01 * ngspice),
                _ => (expect.likely, 0.001 * ngspice),
            };
            assert!((found - ngspice).abs() <= most, "{} {place}: {found} {ngspice}", case.name);
        }
    }
}

/// What is expected of a run at the posts' voltage of the case, whose plug was not read well: a
/// volt too little there makes the answer tell it all.
fn expects_of(case: &Case) -> Vec<spile_answer::Expect> {
    let build = with_readings(case, &["battery"]);
    let build = format!("{build}appliance = \"5 V\"\n");
    find(&answer(&build), "pump.cause").expects.clone()
}

/// One fault each: with every place read, the cause comes first, with its milliohms within 2 %
/// where it is a joint; with battery, block, plug and current alone, it is among what is named.
#[test]
fn one_fault_in_a_network_of_ngspice_is_found() {
    let reference = reference();
    for case in reference.cases.iter().filter(|case| !case.cause.is_empty()) {
        let all = answer(&with_readings(case, &ALL));
        let cause = find(&all, "pump.cause");
        let first = cause.says.split(" Less likely").next().unwrap();
        for words in case.cause.split(" in ") {
            assert!(first.contains(words), "{}: {first}", case.name);
        }
        if case.bad_mohm > 0.0 {
            let words = first.split("about ").nth(1).unwrap();
            let mohm: f64 = words.split(' ').next().unwrap().parse().unwrap();
            let apart = (mohm / case.bad_mohm - 1.0).abs();
            assert!(apart < 0.02, "{}: {mohm} mΩ of {}", case.name, case.bad_mohm);
        }
        let few = answer(&with_readings(case, &["battery", "block", "appliance", "current"]));
        let says = &find(&few, "pump.cause").says;
        let place = case.cause.rsplit(" in ").next().unwrap();
        assert!(says.contains(place), "{}: {says}", case.name);
    }
}
