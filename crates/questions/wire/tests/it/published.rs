//! Figures and rules that are printed elsewhere, each with its source.

use crate::check::{answer, find, likely, verdict};

/// A pump or fan of so many amperes at 12 V on a bank that loses next to nothing.
fn motor(amps: f64, run: &str, block: &str) -> String {
    format!(
        r#"
[bank]
kind = "AGM"
capacity = "200 Ah"
resistance = "0.5 mΩ"
fuse = {{ rating = "300 A", family = "class T", from_post = "100 mm", resistance = "0.1 mΩ" }}
[block]
feed = {{ section = "120 mm2", length = "0.05 m" }}
joints = "0 mΩ"
{block}
[parts.it]
kind = "water pump"
power = {{ running = "{} W" }}
[items.it]
[runs.it]
{run}
joints = "0 mΩ"
"#,
        12.0 * amps
    )
}

/// Source: a boat chandlery's table of gauges for 10 % of 12 V (2021, page 53): a bilge pump of
/// 10 A, 11 ft out and 10 ft back, wants 16 AWG.
#[test]
fn the_bilge_pump_wants_16_awg() {
    let with = |gauge: &str| {
        let run = format!(
            "section = \"{gauge}\"\nlength = \"11 ft\"\nambient = \"20 °C\"\ninsulation = \"105 °C\"\nreturn = {{ section = \"{gauge}\", length = \"10 ft\" }}"
        );
        answer(&motor(10.0, &run, "ambient = \"20 °C\""))
    };
    assert_eq!(verdict(find(&with("18 AWG"), "it.drop")), "care practice");
    assert_eq!(verdict(find(&with("16 AWG"), "it.drop")), "good");
}

/// Source: UL 1426 boat cable makers' allowable amperage, 105 °C, outside engine spaces; 33 CFR
/// 183.425 table 5 for the ones by themselves.
#[test]
fn cables_carry_what_the_tables_print() {
    let cases = [
        // gauge, insulation, conductors together, amperes
        ("8 AWG", "105 °C", 2, 80.0),
        ("8 AWG", "105 °C", 3, 56.0),
        ("8 AWG", "105 °C", 5, 48.0),
        ("8 AWG", "105 °C", 7, 40.0),
        ("10 AWG", "105 °C", 1, 60.0),
        ("14 AWG", "60 °C", 1, 20.0),
        ("2/0 AWG", "90 °C", 1, 285.0),
    ];
    for (gauge, insulation, bundle, amps) in cases {
        let run = format!(
            "section = \"{gauge}\"\nlength = \"3 m\"\nambient = \"30 °C\"\ninsulation = \"{insulation}\"\nbundle = {bundle}"
        );
        let carries = likely(&answer(&motor(2.0, &run, "")), "it.cable");
        assert!((carries - amps).abs() < 1e-9, "{gauge} {insulation} × {bundle}: {carries}");
    }
}

/// Sources: NEC's 125 % of a continuous load (7 A wants 8.75 A); a data sheet of a 40 A blade that
/// carries 34 A at 65 °C, of which 80 % are 27.2 A.
#[test]
fn fuses_carry_four_fifths() {
    let run = "section = \"10 mm2\"\nlength = \"1 m\"";
    for (amps, ambient, fuse, least) in [(7.0, "20 °C", 10, 8.75), (27.2, "65 °C", 40, 40.0)] {
        let block =
            format!("ambient = \"{ambient}\"\n[block.ways.1]\nfuse = \"{fuse} A\"\nrun = \"it\"");
        let found = likely(&answer(&motor(amps, run, &block)), "it.fuse-load");
        assert!((found - least).abs() < 1e-9, "{amps} A at {ambient}: {found}");
    }
}

/// Source: the trade notes' table of readings after switch-on: 12.8 V at the battery, 12.7 V at the
/// block and 11.9 V at the appliance at the expected amperes are about 160 mΩ in the branch.
#[test]
fn a_branch_of_160_milliohms_loses_what_the_readings_say() {
    // 5 A: 0.1 V before the block, 0.8 V behind it
    let run = "section = \"16 mm2\"\nlength = \"0.05 m\"";
    let text =
        motor(5.0, run, "ambient = \"20 °C\"\n[block.ways.1]\nfuse = \"20 A\"\nrun = \"it\"")
            .replace("joints = \"0 mΩ\"\nambient", "joints = \"20 mΩ\"\nambient")
            .replacen(
                "length = \"0.05 m\"\njoints = \"0 mΩ\"",
                "length = \"0.05 m\"\njoints = \"154 mΩ\"",
                1,
            );
    let lost_v = likely(&answer(&text), "it.drop") * 12.0 / 100.0;
    assert!((lost_v - (12.8 - 11.9)).abs() < 0.05, "{lost_v}");
}

/// Source: ISO 10133, 1 mm² at least for a single conductor longer than 200 mm.
#[test]
fn a_single_conductor_has_a_square_millimetre() {
    let with = |section: &str, length: &str| {
        let answer =
            answer(&motor(1.0, &format!("section = \"{section}\"\nlength = \"{length}\""), ""));
        answer.findings.iter().find(|f| f.id == "it.section").map(verdict)
    };
    assert_eq!(with("0.75 mm2", "2 m").as_deref(), Some("care practice"));
    assert_eq!(with("18 AWG", "2 m").as_deref(), Some("care practice"));
    assert_eq!(with("0.75 mm2", "150 mm"), None);
    assert_eq!(with("1 mm2", "2 m"), None);
}

/// Source: IEC 60364-4-43 clause 434.5.2, t = (k·S/I)² with k = 115 for PVC of 70 °C: the current
/// in the working stands for the time in the working.
#[test]
fn the_time_that_a_cable_stands_is_the_standards() {
    let run = "section = \"1.5 mm2\"\nlength = \"2 m\"\ninsulation = \"70 °C\"";
    let block = "[block.ways.1]\nfuse = \"10 A\"\nrun = \"it\"";
    let answer = answer(&motor(3.0, run, block));
    let working = &find(&answer, "it.fault").working;
    let amps: f64 = working[0].numbers.split(' ').next().unwrap().parse().unwrap();
    let time: f64 =
        working[1].numbers.rsplit("gives ").next().unwrap().trim_end_matches(" s").parse().unwrap();
    let expected = (115.0 * 1.5 / amps).powi(2);
    assert!(expected < 5.0 && (time - expected).abs() < 0.01, "{time} s, {expected} s");
}
