//! Cases worked by hand beside the check, and what makes a *stop*, an *open*, a *good*.

use spile_answer::Verdict;
use spile_meter::{Round, Spot};

use crate::check::{answer, expected, find, rounds, told};

/// A pump of 60 W on 12 V takes 5 A at any voltage; everything that a build can state is stated.
fn pump(more: &str) -> String {
    format!(
        r#"
system = "12 V"
[bank]
kind = "AGM"
capacity = "100 Ah"
fuse = {{ rating = "100 A", family = "strip", resistance = "2 mΩ" }}
[block]
feed = {{ section = "16 mm2", length = "1 m", ambient = "20 °C" }}
return = {{ section = "16 mm2", length = "1 m", ambient = "20 °C" }}
joints = "2 mΩ"
[block.ways.1]
fuse = "15 A"
run = "pump"
[parts.pump]
kind = "pump"
power = {{ running = "60 W" }}
[items.pump]
[runs.pump]
section = "4 mm2"
length = "4 m"
ambient = "20 °C"
joints = "5 mΩ"
{more}
"#
    )
}

/// 0.017241 Ω·mm²/m × 4 m / 4 mm² = 17.2 mΩ; at 5 A that is 86 mV on the return; from the post to
/// the block 2 mΩ + 0.017241 × 1 / 16 = 3.08 mΩ, 15 mV. Copper at 20 °C; 5 A warm it by less than
/// two kelvin, which adds 1 %.
#[test]
fn losses_by_ohms_law() {
    let answer = answer(&pump(""));
    let finding = find(&answer, "pump.read");
    assert_eq!(finding.verdict, Verdict::Open);
    assert!((expected(finding, "lost on the return").likely - 86.2).abs() < 1.0);
    assert!((expected(finding, "lost, post to block").likely - 15.4).abs() < 0.2);
    assert!((expected(finding, "current in the feed").likely - 5.0).abs() < 0.01);
}

/// A joint of 200 mΩ at 5 A loses 1 V and turns 5 W into heat (P = I²R).
#[test]
fn a_joint_by_ohms_law() {
    let reading = "[readings.pump]\nbattery = \"12.80 V\"\nblock = \"12.77 V\"\nappliance = \"11.54 V\"\ncurrent = \"5.0 A\"\nfeed_drop = \"145 mV\"\nreturn_drop = \"1086 mV\"";
    let answer = answer(&pump(reading));
    let told = told(&answer, "pump");
    assert!(told.starts_with("Likeliest: a bad joint in the return, about 200 mΩ"), "{told}");
    assert!(told.contains("5.0 W of heat"), "{told}");
}

/// The same as a drawing gets it: the places in their order, which of them is odd, and why. Without
/// a reading the places are the same, and nothing is to be explained.
#[test]
fn a_round_for_a_drawing() {
    let reading = "[readings.first]\nrun = \"pump\"\nbattery = \"12.80 V\"\nappliance = \"11.54 V\"\ncurrent = \"5.0 A\"\nfeed_drop = \"145 mV\"\nreturn_drop = \"1086 mV\"";
    let [taken, to_take] = [reading, ""].map(|reading| rounds(&pump(reading)).remove(0));
    assert_eq!((taken.run.as_str(), taken.reading.as_deref()), ("pump", Some("first")));
    let odd = |spot| {
        let point = taken.points.iter().find(|point| point.spot == spot).unwrap();
        point.is_as_expected()
    };
    assert_eq!([Spot::Battery, Spot::FeedDrop].map(odd), [Some(true); 2]);
    assert_eq!([Spot::Appliance, Spot::ReturnDrop].map(odd), [Some(false); 2]);
    assert_eq!(odd(Spot::MainDrop), None);
    assert!(taken.causes[0].says.starts_with("a bad joint in the return, about 200 mΩ"));
    assert!(taken.causes.is_sorted_by(|a, b| a.misfit <= b.misfit) && taken.next.is_some());
    let spots = |round: &Round| round.points.iter().map(|point| point.spot).collect::<Vec<_>>();
    assert_eq!(spots(&taken), spots(&to_take));
    assert_eq!((to_take.reading, to_take.causes, to_take.next), (None, Vec::new(), None));
}

/// A lead battery of 12 V is charged with at most some 14.8 V, and gases at 16 V: common practice.
#[test]
fn a_battery_charged_with_too_many_volts() {
    let reading =
        "[readings.pump]\nbattery = \"16.4 V\"\nblock = \"16.37 V\"\nappliance = \"16.2 V\"";
    let told = told(&answer(&pump(reading)), "pump");
    assert!(told.starts_with("Likeliest: the battery is charged with more volts"), "{told}");
    assert!(told.contains("each charger off in turn"), "{told}");
}

#[test]
fn swapped_poles_are_a_stop() {
    let reading =
        "[readings.pump]\nbattery = \"12.8 V\"\nblock = \"12.77 V\"\nappliance = \"-12.5 V\"";
    let answer = answer(&pump(reading));
    assert_eq!(find(&answer, "pump.cause").verdict, Verdict::Stop);
    assert!(told(&answer, "pump").contains("swapped"));
}

/// A limit of its own: what the papers say that the insulation stands.
#[test]
fn a_joint_hotter_than_its_insulation_is_a_stop() {
    let joint = |joint: &str| {
        let reading = format!("insulation = \"70 °C\"\n[readings.pump]\njoint = \"{joint}\"");
        find(&answer(&pump(&reading)), "pump.joint").verdict
    };
    assert_eq!(joint("85 °C"), Verdict::Stop);
    assert_eq!(joint("45 °C"), Verdict::Good);
}

/// 1 mm² in the place of 4 mm² has four times the resistance, 69 mΩ each way; at 60 °C of insulation
/// 18 AWG (0.82 mm²) carries 10 A and 16 AWG (1.3 mm²) 15 A by 33 CFR 183.425 table 5, and the fuse
/// of 15 A lets more through.
#[test]
fn a_thinner_cable_behind_too_large_a_fuse_is_a_stop() {
    let reading = "insulation = \"60 °C\"\n[readings.pump]\nbattery = \"12.80 V\"\nblock = \"12.77 V\"\nappliance = \"12.02 V\"\ncurrent = \"5.0 A\"\nfeed_drop = \"404 mV\"\nreturn_drop = \"345 mV\"\nfuse_drop = \"35 mV\"";
    let answer = answer(&pump(reading));
    let cause = find(&answer, "pump.cause");
    assert!(cause.says.starts_with("Likeliest: cables with 4."), "{}", cause.says);
    assert!(cause.mend.as_ref().is_some_and(|mend| mend.contains("fuse of at most")));
    assert_eq!(cause.verdict, Verdict::Stop);
}

#[test]
fn a_run_whose_plug_was_not_read_stays_open() {
    let answer = answer(&pump("[readings.pump]\nbattery = \"12.8 V\""));
    assert_eq!(answer.verdict(), Verdict::Open);
    assert_eq!(find(&answer, "pump.battery").verdict, Verdict::Good);
}

#[test]
fn nothing_to_expect_is_open() {
    let answer = answer("");
    assert_eq!(answer.verdict(), Verdict::Open);
    assert!(answer.findings[0].asks[0].how.contains("Read the battery's label"));
}
