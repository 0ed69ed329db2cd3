//! The questions asked of heron and of small builds, and the answers as JSON.

mod demos;
mod mistakes;
mod next;

use std::path::Path;

use serde_json::Value;
use spile_answer::{Question, Verdict};
use spile_ask::{Report, ask, json, json_schema};
use spile_build::Folder;

/// The first answer of job.md: what it is, how big, where it goes, how long the cable, which battery.
const TWELVE_LINES: &str = r#"[parts.fridge]
kind = "upright fridge"
size = { width = "475 mm", height = "780 mm", depth = "495 mm" }
[bays.galley]
size = { width = "520 mm", height = "1140 mm", depth = "540 mm" }
[items.fridge]
place = { in = "galley" }
[runs.fridge]
length = "7.2 m"
section = "1.5 mm2"
[bank]
capacity = "100 Ah"
"#;

fn heron() -> Folder {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron");
    Folder::open(&path).expect("heron is in order")
}

fn heron_report(option: Option<&str>) -> Report {
    let folder = heron();
    let planned = folder.plan("galley-fridge", option).expect("the job goes together");
    ask("heron", folder.build(), Some(&planned))
}

fn twelve_lines() -> Report {
    let folder = Folder::from_texts([("build.toml", TWELVE_LINES)]).expect("twelve lines are read");
    ask("first", folder.build(), None)
}

fn verdicts(report: &Report, question: Question) -> (Verdict, Option<Verdict>) {
    let asked = report.answers.iter().find(|asked| asked.question == question).expect("all eight");
    (asked.before.verdict(), asked.after.as_ref().map(spile_answer::Answer::verdict))
}

#[test]
fn the_bigger_fridge_keeps_longer_and_does_not_start_on_the_old_cable() {
    let report = heron_report(None);
    assert_eq!(report.option.as_deref(), Some("upright"));
    let (before, after) = verdicts(&report, Question::Wire);
    assert!(matches!(before, Verdict::Care(_)), "{before:?}");
    assert_eq!(after, Some(Verdict::Stop));
    let (before, after) = verdicts(&report, Question::Cold);
    assert!(matches!(before, Verdict::Care(_)), "{before:?}");
    assert!(matches!(after, Some(Verdict::Care(_))), "{after:?}");
    let (before, after) = verdicts(&report, Question::Fit);
    assert!(before <= Verdict::Open && after.is_some_and(|after| after < Verdict::Open));
    let cold = report.answers.iter().find(|asked| asked.question == Question::Cold).unwrap();
    let days = cold.pairs().into_iter().find(|pair| pair.now.id == "days").unwrap();
    let likely = |finding: &spile_answer::Finding| finding.figure.unwrap().likely;
    assert!(likely(days.now) > 2.0 * likely(days.before.unwrap()));
}

#[test]
fn what_no_meter_was_put_to_is_open_and_never_good() {
    for report in [heron_report(None), heron_report(Some("two-boxes")), twelve_lines()] {
        let (before, after) = verdicts(&report, Question::Meter);
        assert_eq!(before, Verdict::Open);
        assert!(after.is_none_or(|after| after == Verdict::Open));
    }
}

#[test]
fn a_job_is_paired_with_the_build_as_it_stands() {
    let report = heron_report(None);
    let wire = report.answers.iter().find(|asked| asked.question == Question::Wire).unwrap();
    let start = wire.pairs().into_iter().find(|pair| pair.now.id == "fridge.start").unwrap();
    let before = start.before.expect("the same run was there before");
    assert!(before.figure.unwrap().likely > start.now.figure.unwrap().likely);
    assert_ne!(before.verdict, Verdict::Stop);
}

#[test]
fn twelve_lines_get_a_first_answer_that_says_what_it_assumed() {
    assert!(TWELVE_LINES.lines().count() <= 12);
    let report = twelve_lines();
    for question in [Question::Fit, Question::Wire, Question::Cold] {
        let asked = report.answers.iter().find(|asked| asked.question == question).unwrap();
        assert!(
            asked.now().findings.iter().any(|finding| finding.figure.is_some()),
            "{question:?} computed nothing"
        );
        assert_ne!(asked.now().verdict(), Verdict::Stop, "{question:?}: a guess is no stop");
        assert!(!asked.now().assumed.is_empty(), "{question:?} assumed nothing?");
    }
    assert!(!report.measure_next.is_empty());
    let typical = |finding: &spile_answer::Finding| {
        finding.inputs.iter().any(|input| input.basis == spile_answer::Basis::Typical)
    };
    assert!(report.answers.iter().flat_map(|asked| &asked.now().findings).any(typical));
}

#[test]
fn measure_next_is_in_order_and_says_how() {
    for report in [heron_report(None), heron_report(Some("two-boxes")), twelve_lines()] {
        let next = &report.measure_next;
        assert!(next.windows(2).all(|pair| pair[0].decided() >= pair[1].decided()));
        for next in next {
            assert!(!next.how.is_empty(), "{} does not say how", next.input);
            assert!(!next.hangs.is_empty());
        }
    }
}

#[test]
fn the_same_build_gives_the_same_answer() {
    assert_eq!(heron_report(None), heron_report(None));
}

#[test]
fn json_keeps_to_its_published_schema() {
    let schema = json_schema();
    let validator = jsonschema::validator_for(&schema).expect("the schema is one");
    for report in [heron_report(None), heron_report(Some("two-boxes")), twelve_lines()] {
        let json = json(&report);
        let faults: Vec<String> =
            validator.iter_errors(&json).map(|error| error.to_string()).collect();
        assert!(faults.is_empty(), "{faults:?}");
    }
    let broken: Value = serde_json::json!({ "build": "heron", "answers": 3 });
    assert!(!validator.is_valid(&broken), "the schema refuses nothing");
}

#[test]
fn json_has_the_keys_that_others_rely_on() {
    let json = json(&heron_report(None));
    let answers = json["answers"].as_array().unwrap();
    assert_eq!(answers.len(), 8);
    for answer in answers {
        assert!(answer["question"].is_string());
        assert!(answer["verdict"]["before"].is_string() && answer["verdict"]["after"].is_string());
        for finding in answer["findings"].as_array().unwrap() {
            for key in ["id", "verdict", "reason", "says", "figure", "before", "limit", "class"] {
                assert!(finding.get(key).is_some(), "{key} is missing in {finding}");
            }
            for key in ["mend", "inputs"] {
                assert!(finding.get(key).is_some(), "{key} is missing in {finding}");
            }
            for input in finding["inputs"].as_array().unwrap() {
                let basis = input["basis"].as_str().unwrap();
                assert!(["measured", "papers", "table", "typical"].contains(&basis));
                assert!(input["name"].is_string() && input["source"].is_string());
                assert!(input["value"].is_number());
            }
        }
    }
    assert!(json["measure_next"].is_array());
}

/// What air says of a bay's warmth and what cold says of the air round the fridge in it come of
/// one balance.
#[test]
fn air_and_cold_come_to_one_temperature() {
    let report = heron_report(None);
    let of = |question: Question, id: &str| {
        let asked = report.answers.iter().find(|asked| asked.question == question).unwrap();
        let finding = asked.now().findings.iter().find(|finding| finding.id == id);
        finding.unwrap_or_else(|| panic!("{question:?} has no {id}")).figure.unwrap()
    };
    let (bay, round) =
        (of(Question::Air, "galley-rear.warm"), of(Question::Cold, "upright.warmest"));
    assert!((bay.likely - round.likely).abs() < 0.1, "{} {}", bay.likely, round.likely);
}
