//! The table of a fitter after switch-on, row by row: readings, the likely cause, the next test.
//!
//! Common practice, no source; amperes of a fridge of 66 W are by Ohm's law.

use spile_answer::Verdict;

use crate::check::{answer, find, told};

const BUILD: &str = r#"
[parts.fridge]
kind = "upright fridge"
power = { running = "66 W", start = "9 A", cut_out = "10.4 V" }
[items.fridge]
[runs.fridge]
section = "4 mm2"
length = "4 m"
[block.ways.1]
fuse = "15 A"
run = "fridge"
[bank]
kind = "AGM"
capacity = "100 Ah"
"#;

fn with(reading: &str) -> spile_answer::Answer {
    answer(&format!("{BUILD}[readings.fridge]\n{reading}\n"))
}

/// Battery, block, plug and current while it runs.
fn running(volts: [f64; 3], current_a: f64) -> spile_answer::Answer {
    let [battery, block, plug] = volts;
    with(&format!(
        "battery = \"{battery} V\"\nblock = \"{block} V\"\nappliance = \"{plug} V\"\ncurrent = \"{current_a} A\""
    ))
}

fn says(answer: &spile_answer::Answer, all: &[&str]) {
    let told = told(answer, "fridge");
    for words in all {
        assert!(told.contains(words), "{words:?} is not in: {told}");
    }
    let leads = told.starts_with(&format!("Likeliest: {}", all[0]));
    assert!(leads, "{:?} does not lead: {told}", all[0]);
}

#[test]
fn healthy() {
    let answer = running([13.1, 13.05, 12.8], 5.1);
    assert_eq!(answer.verdict(), Verdict::Good, "{:#?}", answer.findings);
}

#[test]
fn about_160_milliohms_in_the_branch() {
    let answer = running([12.8, 12.7, 11.9], 5.3);
    says(
        &answer,
        &[
            "a bad joint in",
            "the feed with its plug",
            "the return",
            "millivolts on the feed, then on the return",
        ],
    );
}

#[test]
fn main_fuse_isolator_or_common_return() {
    let answer = running([12.8, 12.1, 12.0], 5.4);
    says(
        &answer,
        &[
            "a bad joint in",
            "the way from the post to the block",
            "the common return",
            "millivolts across main fuse, isolator and common return",
        ],
    );
}

#[test]
fn a_flat_or_failing_bank() {
    let answer = running([11.6, 11.55, 11.3], 5.7);
    says(&answer, &["the battery is flat or failing", "Charge it, let it rest"]);
}

#[test]
fn fuse_missing_or_blown() {
    let answer = running([12.8, 12.8, 0.0], 0.0);
    says(&answer, &["an open way in", "a fuse missing or blown", "each side of the fuse"]);
}

#[test]
fn satisfied_or_standby() {
    let answer = running([12.8, 12.8, 12.8], 0.0);
    says(
        &answer,
        &[
            "the fridge asks for nothing",
            "Lower its set point, wait 5 minutes, and count the flashes",
        ],
    );
}

#[test]
fn volts_good_idle_and_collapsing_at_start() {
    let idle =
        with("state = \"off\"\nbattery = \"12.8 V\"\nblock = \"12.8 V\"\nappliance = \"12.8 V\"");
    assert_eq!(idle.verdict(), Verdict::Good);
    let start = with(
        "state = \"starting\"\nbattery = \"12.6 V\"\nblock = \"12.5 V\"\nappliance = \"8.0 V\"",
    );
    says(&start, &["a bad joint in", "keep its lowest value", "bulb"]);
}

#[test]
fn only_the_fan_runs() {
    let answer = running([12.8, 12.8, 12.78], 0.4);
    says(&answer, &["only the fan runs", "Wait"]);
}

#[test]
fn it_starts_and_stops_each_minute() {
    let answer = with("behaves = \"stops each minute\"");
    let finding = find(&answer, "fridge.behaves");
    assert!(matches!(finding.verdict, Verdict::Care(_)));
    assert!(
        finding.says.contains("too few volts at its start")
            && finding.says.contains("volts at its terminals during a start")
    );
}

#[test]
fn high_amperes_and_a_hot_bay() {
    let answer = with(
        "battery = \"12.8 V\"\nblock = \"12.7 V\"\nappliance = \"12.25 V\"\ncurrent = \"8.5 A\"\nbay = \"48 °C\"",
    );
    says(&answer, &["the fridge takes 8", "current with the panel open"]);
    let bay = find(&answer, "fridge.bay");
    assert!(matches!(bay.verdict, Verdict::Care(_)) && bay.says.contains("drawn in again"));
}

#[test]
fn it_never_stops_with_few_amperes() {
    let answer = with("behaves = \"never stops\"");
    let finding = find(&answer, "fridge.behaves");
    assert!(matches!(finding.verdict, Verdict::Care(_)));
    assert!(
        finding.says.contains("gas is lost") && finding.says.contains("refrigeration engineer")
    );
}

#[test]
fn it_never_stops_and_still_gets_colder() {
    let answer = with("behaves = \"still falling\"\non_for = \"14 h\"");
    let finding = find(&answer, "fridge.behaves");
    assert_eq!(finding.verdict, Verdict::Good);
    assert!(finding.says.contains("12 to 24 hours") && finding.says.contains("wait"));
}

#[test]
fn the_clamp_has_a_zero() {
    let answer = with("state = \"off\"\ncurrent = \"0.5 A\"");
    let finding = find(&answer, "fridge.zero");
    assert!(matches!(finding.verdict, Verdict::Care(_)));
    assert!(finding.says.contains("zero it") && finding.says.contains("alternating current only"));
}

#[test]
fn a_return_on_the_wrong_side_of_the_shunt() {
    let answer = with("current = \"5.2 A\"\nmonitor = \"0.0 A\"");
    let finding = find(&answer, "fridge.monitor");
    assert!(matches!(finding.verdict, Verdict::Care(_)));
    assert!(finding.mend.as_ref().unwrap().starts_with("Move that return"));
    let right = with("current = \"5.2 A\"\nmonitor = \"-5.3 A\"");
    assert_eq!(find(&right, "fridge.monitor").verdict, Verdict::Good);
}
