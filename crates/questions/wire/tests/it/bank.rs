//! What is found of bank, block and body.

use crate::check::{answer, find, verdict};

const BANK: &str = r#"
[bank]
kind = "AGM"
count = 2
capacity = "95 Ah"
resistance = "5 mΩ"
fuse = { rating = "60 A", family = "class T", from_post = "120 mm" }
[block]
total = "100 A"
feed = { section = "16 mm2", length = "0.9 m", insulation = "70 °C", ambient = "35 °C ± 5 °C" }
[parts.pump]
kind = "water pump"
power = { running = "84 W" }
[items.pump]
[runs.pump]
section = "2.5 mm2"
length = "3 m"
return = { by = "body" }
"#;

#[test]
fn each_is_judged_by_its_own_rule() {
    let load = |watts: &str| ("84 W", watts.to_owned());
    let with = |from: &'static str, to: &str| (from, to.to_owned());
    let cases = [
        (vec![], "bank.breaking", "good"),
        // 12.85 V over 2.5 mΩ is 5140 A
        (
            vec![with("family = \"class T\"", "family = \"strip\", breaks = \"2000 A\"")],
            "bank.breaking",
            "stop",
        ),
        (vec![with("family = \"class T\"", "family = \"strip\"")], "bank.breaking", "care unsure"),
        (vec![with("family = \"class T\", ", "")], "bank.breaking", "open"),
        // what is only typical of a chemistry makes no stop
        (
            vec![
                with("resistance = \"5 mΩ\"\n", ""),
                with("family = \"class T\"", "family = \"strip\", breaks = \"2000 A\""),
            ],
            "bank.breaking",
            "care unsure",
        ),
        (vec![], "block.breaking", "care practice"),
        (vec![], "bank.fuse", "good"),
        (vec![with("120 mm", "400 mm")], "bank.fuse", "care practice"),
        (vec![with(", from_post = \"120 mm\"", "")], "bank.fuse", "care unsure"),
        (
            vec![with(
                "fuse = { rating = \"60 A\", family = \"class T\", from_post = \"120 mm\" }\n",
                "",
            )],
            "bank.fuse",
            "care unsure",
        ),
        (vec![], "block.total", "good"),
        (vec![load("1300 W")], "block.total", "stop"),
        (vec![], "bank.fuse-load", "good"),
        (vec![load("600 W")], "bank.fuse-load", "care practice"),
        (vec![with("rating = \"60 A\", ", "")], "bank.fuse-load", "open"),
        (vec![with("rating = \"60 A\", ", "")], "bank.cable", "good"),
        (vec![], "bank.fuse-cable", "good"),
        (vec![with("16 mm2", "10 mm2")], "bank.fuse-cable", "stop"),
        (
            vec![with("60 A", "80 A"), with("35 °C ± 5 °C", "35 °C ± 15 °C")],
            "bank.fuse-cable",
            "care unsure",
        ),
        (vec![], "body.cable", "good"),
        (vec![load("1100 W")], "body.cable", "care unsure"),
        (
            vec![
                load("1100 W"),
                with(
                    "[parts",
                    "[body]\ncable = { section = \"6 mm2\", length = \"0.6 m\" }\n[parts",
                ),
            ],
            "body.cable",
            "stop",
        ),
        (vec![with("count = 2\n", "limit = \"5 A\"\n")], "bank.limit", "stop"),
        (vec![with("count = 2\n", "count = 2\nlimit = \"4 A\"\n")], "bank.limit", "care unsure"),
        (vec![with("count = 2\n", "count = 2\nlimit = \"100 A\"\n")], "bank.limit", "good"),
    ];
    for (changes, id, expected) in cases {
        let text = changes.iter().fold(BANK.to_owned(), |text, (from, to)| {
            assert!(text.contains(from), "nothing to change: {from}");
            text.replacen(from, to, 1)
        });
        let answer = answer(&text);
        let finding = find(&answer, id);
        assert_eq!(verdict(finding), expected, "{id} after {changes:?}: {}", finding.says);
        let needs_mend = matches!(expected, "stop" | "care practice");
        assert!(!needs_mend || finding.mend.is_some(), "{id} has no mend");
    }
}

/// The mends of main fuse and main cable are right by the same rules.
#[test]
fn main_mends_clear_what_they_mend() {
    // too much for the fuse: the next one, on a cable that carries it
    let text = BANK.replacen("84 W", "600 W", 1);
    let mend = find(&answer(&text), "bank.fuse-load").mend.clone().unwrap();
    assert!(mend.contains("a main fuse of 80 A (class T)") && mend.contains("25 mm²"), "{mend}");
    let mended = text.replacen("60 A", "80 A", 1).replacen("16 mm2", "25 mm2", 1);
    for id in ["bank.fuse-load", "bank.fuse-cable"] {
        assert_eq!(verdict(find(&answer(&mended), id)), "good", "{id}");
    }
    // too thin for the fuse
    let text = BANK.replacen("16 mm2", "6 mm2", 1);
    let mend = find(&answer(&text), "bank.fuse-cable").mend.clone().unwrap();
    assert!(mend.contains("16 mm² from the bank"), "{mend}");
}
