//! What makes each finding of a run good, care, stop or open, by builds that differ in one thing.

use crate::check::{answer, find, verdict};

/// A fridge on which nothing is amiss: everything stated, everything well within.
const GOOD: &str = r#"
[bank]
kind = "LiFePO4"
capacity = "200 Ah"
resistance = "2 mΩ"
fuse = { rating = "100 A", family = "class T", from_post = "120 mm", resistance = "0.8 mΩ" }
[block]
per_way = "30 A"
total = "100 A"
feed = { section = "35 mm2", length = "0.9 m", insulation = "105 °C", ambient = "35 °C" }
joints = "1 mΩ"
ambient = "30 °C"
[block.ways.1]
fuse = "10 A"
run = "fridge"
[parts.fridge]
kind = "upright fridge"
power = { running = "58 W", start = "8.5 A", cut_out = "10.9 V", fuse = "15 A" }
[items.fridge]
[runs.fridge]
section = "6 mm2"
length = "5 m ± 50 mm"
insulation = "70 °C"
ambient = "35 °C ± 5 °C"
joints = "5 mΩ ± 2 mΩ"
"#;

/// What to change in the good build, and the verdict of which finding that gives.
type Case<'a> = (&'a [(&'a str, &'a str)], &'a str, &'a str);

/// The verdict of a finding after some changes to the good build.
fn after(changes: &[(&str, &str)], id: &str) -> String {
    let text = changes.iter().fold(GOOD.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "nothing to change: {from}");
        text.replacen(from, to, 1)
    });
    verdict(find(&answer(&text), id))
}

#[test]
fn the_good_build_is_good() {
    let answer = answer(GOOD);
    for finding in &answer.findings {
        // a bolted fault at the block is more than a blade breaks on any such bank
        let expected = if finding.id == "block.breaking" { "care practice" } else { "good" };
        assert_eq!(verdict(finding), expected, "{}: {}", finding.id, finding.says);
        assert!(finding.mend.is_some() == (expected != "good"), "{}", finding.id);
    }
    assert_eq!(answer.findings.len(), 15);
}

#[test]
fn one_thing_amiss_shows_where_it_belongs() {
    let thin = ("6 mm2", "1.5 mm2");
    let lead = ("LiFePO4", "AGM");
    let body = ("joints = \"5 mΩ ± 2 mΩ\"", "return = { by = \"body\", section = \"6 mm2\" }");
    let cases: &[Case<'_>] = &[
        // volts as it starts and while everything runs, against its cut-out
        (&[thin, lead], "fridge.start", "stop"),
        (
            &[thin, lead, ("cut_out = \"10.9 V\"", "cut_out = \"10.5 V\"")],
            "fridge.start",
            "care unsure",
        ),
        (&[lead, ("cut_out = \"10.9 V\"", "cut_out = \"11.0 V\"")], "fridge.start", "care tight"),
        (&[thin, lead, (", cut_out = \"10.9 V\"", "")], "fridge.start", "care unsure"),
        (&[thin, lead, ("length = \"5 m ± 50 mm\"", "length = \"9 m\"")], "fridge.running", "stop"),
        // a heater's glow start, whose cut-out nobody has read
        (&[("upright fridge", "heater"), (", cut_out = \"10.9 V\"", "")], "fridge.start", "open"),
        (&[("upright fridge", "heater"), thin, lead], "fridge.start", "stop"),
        // the loss is practice, but a circuit without a steady state is physics
        (&[thin], "fridge.drop", "care practice"),
        (
            &[("6 mm2", "4 mm2"), ("joints = \"5 mΩ ± 2 mΩ\"", "joints = \"6 mΩ +60/-4\"")],
            "fridge.drop",
            "care unsure",
        ),
        (&[("running = \"58 W\"", "running = \"1200 W\""), thin], "fridge.drop", "stop"),
        // heat: load against cable
        (&[("running = \"58 W\"", "running = \"400 W\""), thin], "fridge.cable", "stop"),
        (
            &[("running = \"58 W\"", "running = \"120 W\""), thin, ("± 5 °C", "± 20 °C")],
            "fridge.cable",
            "care unsure",
        ),
        (&[("6 mm2", "0.5 mm2")], "fridge.cable", "open"),
        // the fuse against load, cable, papers and way
        (&[("fuse = \"10 A\"", "fuse = \"5 A\"")], "fridge.fuse-load", "care practice"),
        (&[("fuse = \"10 A\"", "fuse = \"20 A\""), thin], "fridge.fuse-cable", "stop"),
        (
            &[("fuse = \"10 A\"", "fuse = \"15 A\""), thin, ("35 °C ± 5 °C", "30 °C ± 10 °C")],
            "fridge.fuse-cable",
            "care unsure",
        ),
        (&[("fuse = \"10 A\"", "fuse = \"20 A\"")], "fridge.fuse-papers", "stop"),
        (&[("fuse = \"10 A\"", "fuse = \"15 A\"")], "fridge.fuse-papers", "good"),
        (&[("per_way = \"30 A\"", "per_way = \"7.5 A\"")], "fridge.way", "stop"),
        (&[("fuse = \"10 A\"\nrun", "run")], "fridge.fuse", "care unsure"),
        // the least fault
        (
            &[("fuse = \"10 A\"", "fuse = \"40 A\""), ("6 mm2", "1 mm2"), ("5 m ± 50 mm", "11 m")],
            "fridge.fault",
            "stop",
        ),
        (
            &[("fuse = \"10 A\"", "fuse = \"30 A\""), ("6 mm2", "1 mm2"), ("5 m ± 50 mm", "12 m")],
            "fridge.fault",
            "care unsure",
        ),
        (
            &[("fuse = \"10 A\"", "fuse = \"40 A\"\nfamily = \"other\""), thin],
            "fridge.fault",
            "open",
        ),
        (&[("fuse = \"10 A\"", "fuse = \"10 A\"\nfamily = \"other\"")], "fridge.fault", "good"),
        (
            &[
                ("fuse = \"10 A\"", "fuse = \"15 A\"\nfamily = \"other\""),
                thin,
                ("35 °C ± 5 °C", "30 °C ± 10 °C"),
            ],
            "fridge.fault",
            "care unsure",
        ),
        // a return through the body: the bond is guarded too
        (&[body], "fridge.fuse-cable", "good"),
        (
            &[
                body,
                (
                    "[block]\n",
                    "[body]\ncable = { section = \"1 mm2\", length = \"0.6 m\", insulation = \"70 °C\", ambient = \"35 °C\" }\n[block]\n",
                ),
                ("fuse = \"10 A\"", "fuse = \"15 A\""),
            ],
            "fridge.fuse-cable",
            "stop",
        ),
        (&[body, ("[block]\n", "[body]\ninsulated = true\n[block]\n")], "body.insulated", "stop"),
    ];
    for (changes, id, expected) in cases {
        assert_eq!(after(changes, id), *expected, "{id} after {changes:?}");
    }
}

#[test]
fn sizes_of_every_kind_are_understood() {
    // what is known by its outside diameter alone is asked for
    let by_diameter = answer(&GOOD.replacen("6 mm2", "6 mm outside", 1));
    let cable = find(&by_diameter, "fridge.cable");
    let figure = cable.figure.unwrap();
    assert!(figure.unfavourable < 0.95 * figure.likely);
    assert!(cable.inputs.iter().any(|input| input.how.contains("count its strands")));
    // SAE gauge has less copper than American gauge of the number
    let drop = |size: &str| {
        find(&answer(&GOOD.replacen("6 mm2", size, 1)), "fridge.drop").figure.unwrap().likely
    };
    let (sae, awg) = (drop("12 SAE"), drop("12 AWG"));
    assert!(sae > 1.03 * awg && sae < 1.15 * awg, "{sae} {awg}");
}

#[test]
fn at_24_volts_the_stand_ins_are_doubled() {
    let text = format!("system = \"24 V\"\n{GOOD}").replace("resistance = \"2 mΩ\"\n", "");
    let high =
        answer(&text.replace("cut_out = \"10.9 V\", ", "").replace("start = \"8.5 A\", ", ""));
    let low = answer(&GOOD.replace("resistance = \"2 mΩ\"\n", ""));
    let input = |answer: &spile_answer::Answer, name: &str| {
        let inputs = &find(answer, "fridge.start").inputs;
        inputs.iter().find(|input| input.name == name).unwrap().likely
    };
    for name in ["battery at rest, low", "internal resistance of the bank"] {
        assert!((input(&high, name) / input(&low, name) - 2.0).abs() < 1e-9, "{name}");
    }
    assert_eq!(find(&high, "fridge.start").limit.as_ref().unwrap().value, 22.8);
}

#[test]
fn sentences_are_short_and_have_no_mark_of_praise() {
    for text in [GOOD.to_owned(), GOOD.replace("6 mm2", "1 mm2").replace("LiFePO4", "AGM")] {
        for finding in answer(&text).findings {
            let says = format!("{} {}", finding.says, finding.mend.unwrap_or_default());
            assert!(
                finding.says.split(". ").count() <= 4 && finding.says.len() < 300,
                "{}",
                finding.says
            );
            assert!(
                !says.contains('!') && !says.contains("NaN") && !says.contains("inf "),
                "{says}"
            );
        }
    }
}

/// What measuring would settle holds once it was measured: a feed as long as the ask names loses
/// what is *good*, and one half a metre longer does not.
#[test]
fn a_length_that_settles_a_loss_does() {
    let with = |length: &str| {
        let back = "length = \"5 m ± 50 mm\"\nreturn = { section = \"4 mm2\", length = \"5 m ± 10 mm\", insulation = \"70 °C\", ambient = \"35 °C ± 5 °C\" }";
        let changes =
            [("6 mm2", "4 mm2"), ("length = \"5 m ± 50 mm\"", back), ("5 m ± 50 mm", length)];
        answer(&changes.iter().fold(GOOD.to_owned(), |text, (from, to)| text.replacen(from, to, 1)))
    };
    let unsure = with("5 m ± 4 m");
    let finding = find(&unsure, "fridge.drop");
    assert_eq!(verdict(finding), "care unsure", "{}", finding.says);
    let ask = finding.asks.iter().find(|ask| ask.input == "length of the feed").unwrap();
    let words = ask.turns.strip_prefix("good at ").unwrap();
    let most: f64 = words.strip_suffix(" m or less").unwrap().parse().unwrap();
    assert!((1.0..9.0).contains(&most), "{words}");
    let after =
        |length_m: f64| verdict(find(&with(&format!("{length_m} m ± 1 mm")), "fridge.drop"));
    assert_eq!(after(most), "good");
    assert_ne!(after(most + 0.5), "good");
}
