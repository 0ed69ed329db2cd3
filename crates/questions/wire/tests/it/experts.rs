//! Cases with an expert's verdict, from the project's own trade notes (common practice, magnitudes
//! ± 30 % where they depend on the appliance). Copper there is 0.0175 Ω·mm²/m at 20 °C and joints
//! are ignored, so joints are stated here as good as nothing, and losses are compared cold.

use crate::check::{answer, find, likely, verdict};

/// Two thousand watts behind an efficiency of 0.88 are 2273 W, 189 A at 12 V.
fn inverter(section: &str, fuse: &str, ambient: &str) -> String {
    format!(
        r#"
[bank]
kind = "LiFePO4"
count = 3
capacity = "100 Ah"
resistance = "3 mΩ"
fuse = {{ rating = "300 A", family = "class T", from_post = "100 mm", resistance = "0.05 mΩ" }}
[block]
feed = {{ section = "120 mm2", length = "0.1 m", insulation = "105 °C", ambient = "25 °C" }}
joints = "0.05 mΩ"
ambient = "20 °C"
[block.ways.1]
fuse = "{fuse}"
family = "class T"
run = "inverter"
[parts.inverter]
kind = "inverter"
power = {{ running = "2273 W", cut_out = "10.5 V" }}
[items.inverter]
[runs.inverter]
section = "{section}"
length = "2.5 m ± 0 mm"
insulation = "105 °C"
ambient = "{ambient}"
joints = "0 mΩ"
"#
    )
}

/// Source: trade notes, case 1.
#[test]
fn an_inverter_of_2000_watts() {
    let thin = answer(&inverter("35 mm2", "200 A", "60 °C ± 10 °C"));
    let carries = find(&thin, "inverter.fuse-cable").figure.unwrap();
    // "cable in a locker carries 150-180 A: stop"
    assert!(carries.unfavourable > 145.0 && carries.likely < 180.0, "{carries:?}");
    assert_eq!(verdict(find(&thin, "inverter.fuse-cable")), "stop");
    // "fuse needs at least 237 A"
    assert_eq!(verdict(find(&thin, "inverter.fuse-load")), "care practice");
    assert!((likely(&thin, "inverter.fuse-load") / 237.0 - 1.0).abs() < 0.05);
    // "0.47 V (3.9 %)"
    assert!((own_loss_percent(&thin) / 3.9 - 1.0).abs() < 0.03);
    assert_eq!(thin.verdict().word(), "stop");

    let middle = answer(&inverter("70 mm2", "250 A", "60 °C ± 10 °C"));
    let carries = find(&middle, "inverter.fuse-cable").figure.unwrap();
    // "in a closed warm locker it carries only 230-280 A: with a 250 A fuse care"
    assert!(carries.unfavourable > 228.0 && carries.likely < 280.0, "{carries:?}");
    assert_eq!(verdict(find(&middle, "inverter.fuse-cable")), "care unsure");
    assert!((own_loss_percent(&middle) / 2.0 - 1.0).abs() < 0.05);
    assert_eq!(middle.verdict().word(), "care");

    let thick = answer(&inverter("95 mm2", "300 A", "60 °C"));
    // "about 316 A there", "207 A at 11.0 V needs at least 258 A: good"
    assert!((likely(&thick, "inverter.fuse-cable") / 316.0 - 1.0).abs() < 0.03);
    let least = find(&thick, "inverter.fuse-load").figure.unwrap();
    assert!(least.likely < 258.0 && least.unfavourable < 300.0, "{least:?}");
    for what in ["running", "cable", "fuse-load", "fuse-cable", "fault"] {
        assert_eq!(verdict(find(&thick, &format!("inverter.{what}"))), "good", "{what}");
    }
    assert_eq!(verdict(find(&thick, "bank.breaking")), "good");
    assert!(likely(&thick, "inverter.drop") < 3.0);
}

/// The loss of the run's own two cables at 20 °C and 189 A of 12 V, in percent, by the metres and
/// the milliohms of each that the working shows: `0.49 mΩ/m × 2.50 m, at ...`.
fn own_loss_percent(answer: &spile_answer::Answer) -> f64 {
    let cold_mohm = |numbers: &str| {
        let (per_metre, rest) = numbers.split_once(" mΩ/m × ").unwrap();
        let (metres, _) = rest.split_once(" m,").unwrap();
        per_metre.parse::<f64>().unwrap() * metres.parse::<f64>().unwrap()
    };
    let steps = &find(answer, "inverter.drop").working[..2];
    let mohm: f64 = steps.iter().map(|step| cold_mohm(&step.numbers)).sum();
    100.0 * mohm / 1000.0 * 189.0 / 12.0
}

fn load(kind: &str, watts: f64, run: &str, fuse: &str, bank: &str) -> String {
    format!(
        r#"
[bank]
{bank}
fuse = {{ rating = "300 A", family = "class T", from_post = "100 mm", resistance = "0.2 mΩ" }}
[block]
feed = {{ section = "120 mm2", length = "0.1 m", ambient = "25 °C" }}
joints = "0 mΩ"
ambient = "20 °C"
[block.ways.1]
{fuse}
run = "it"
[parts.it]
kind = "{kind}"
power = {{ running = "{watts} W" }}
[items.it]
[runs.it]
{run}
insulation = "105 °C"
ambient = "20 °C"
joints = "0 mΩ"
"#
    )
}

const LITHIUM: &str =
    "kind = \"LiFePO4\"\ncapacity = \"100 Ah\"\nlimit = \"100 A\"\nresistance = \"3 mΩ\"";

/// Source: trade notes, case 2, second half: "two like 100 Ah lithium with 100 A limits under
/// 189 A: care (60/40 sharing gives 114 A)".
#[test]
fn two_like_batteries_share_unevenly() {
    let run = "section = \"95 mm2\"\nlength = \"1 m\"";
    let fuse = "fuse = \"300 A\"\nfamily = \"class T\"";
    let two = answer(&load("inverter", 2273.0, run, fuse, &format!("count = 2\n{LITHIUM}")));
    let limit = find(&two, "bank.limit");
    assert_eq!(verdict(limit), "care unsure");
    assert!((limit.figure.unwrap().unfavourable / 114.0 - 1.0).abs() < 0.08, "{:?}", limit.figure);
    assert!(limit.mend.as_ref().unwrap().contains("3 such batteries"), "{:?}", limit.mend);
}

/// Source: trade notes, case 3: "0.49 V (4.1 %), not critical (10 % rule): good, 10 A fuse".
#[test]
fn a_water_pump() {
    let run = "section = \"1.5 mm2\"\nlength = \"3 m\"";
    let text = load("water pump", 84.0, run, "fuse = \"10 A\"", LITHIUM);
    let pump = answer(&text);
    for what in ["drop", "cable", "fuse-load", "fuse-cable", "fault"] {
        assert_eq!(verdict(find(&pump, &format!("it.{what}"))), "good", "{what}");
    }
    // fuse and contacts are some 12 mΩ of the way, 0.7 %
    assert!((likely(&pump, "it.drop") - 0.7 - 4.1).abs() < 0.3, "{}", likely(&pump, "it.drop"));
}

/// Source: trade notes, case 4: "0.53 V (4.4 %), 5 A fuse: good for wire".
#[test]
fn a_roof_fan() {
    let run = "section = \"1 mm2\"\nlength = \"5 m\"";
    let fan = answer(&load("roof fan", 36.0, run, "fuse = \"5 A\"", LITHIUM));
    for what in ["drop", "cable", "fuse-load", "fuse-cable", "fault"] {
        assert_eq!(verdict(find(&fan, &format!("it.{what}"))), "good", "{what}");
    }
    // the fuse of 5 A and its contacts are some 23 mΩ, 0.6 %
    assert!((likely(&fan, "it.drop") - 0.6 - 4.4).abs() < 0.3, "{}", likely(&fan, "it.drop"));
}

/// Source: trade notes, case 5: 1800 W is 170 A and a stop on a limit of 100 A, 1000 W is 95 A and
/// care; both behind the inverter's 0.88.
#[test]
fn an_induction_hob_on_one_battery() {
    let run = "section = \"95 mm2\"\nlength = \"1 m\"";
    let fuse = "fuse = \"300 A\"\nfamily = \"class T\"";
    // how much it sags is not said
    let bank = LITHIUM.replace("\nresistance = \"3 mΩ\"", "");
    let limit = |watts: f64| {
        let answer = answer(&load("inverter", watts / 0.88, run, fuse, &bank));
        let finding = find(&answer, "bank.limit").clone();
        (verdict(&finding), finding.figure.unwrap().likely)
    };
    let (high, low) = (limit(1800.0), limit(1000.0));
    assert_eq!((high.0.as_str(), low.0.as_str()), ("stop", "care unsure"));
    assert!((high.1 / 170.0 - 1.0).abs() < 0.05 && (low.1 / 95.0 - 1.0).abs() < 0.05);
}
