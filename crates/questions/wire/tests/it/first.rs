//! A first answer from very little typing.

use crate::check::{answer, find, verdict};

/// Twelve lines: part, its size, the bay, the cable's length, the battery.
const TWELVE: &str = r#"[parts.fridge]
kind = "upright fridge"
size = { width = "475 mm", height = "780 mm", depth = "495 mm" }
[items.fridge]
place = { in = "galley" }
[bays.galley]
opens = "left"
size = { width = "520 mm", height = "1420 mm", depth = "560 mm" }
[runs.fridge]
length = "6 m"
[bank]
capacity = "100 Ah"
"#;

#[test]
fn twelve_lines_are_answered_and_what_was_assumed_is_shown() {
    assert_eq!(TWELVE.lines().count(), 12);
    let answer = answer(TWELVE);
    for what in ["start", "running", "drop", "cable", "fault"] {
        assert!(find(&answer, &format!("fridge.{what}")).figure.is_some(), "{what}");
    }
    let fuse = find(&answer, "fridge.fuse");
    assert_eq!(verdict(fuse), "care unsure");
    assert!(fuse.says.contains("A 7.5 A blade fuse is taken to be there"), "{}", fuse.says);
    assert_eq!(verdict(find(&answer, "bank.fuse")), "care unsure");
    assert_eq!(
        answer.assumed,
        [
            "bank, main fuse, 1.0 m of 16 mm² to a fuse block, and the same back",
            "a bank of AGM",
            "2.5 mm² for the run fridge",
            "a return like the feed for the run fridge",
        ]
    );
    // stand-ins alone never make a stop, and what would settle a care is asked for
    for finding in &answer.findings {
        assert_ne!(finding.verdict.word(), "stop", "{}", finding.id);
        let unsure = verdict(finding) == "care unsure";
        assert!(!unsure || !finding.asks.is_empty(), "{}", finding.id);
    }
}

#[test]
fn what_is_missing_is_asked_for() {
    let alone = answer("[runs]\n");
    assert_eq!(verdict(find(&alone, "bank")), "open");
    let nothing = answer("[bank]\ncapacity = \"100 Ah\"\n");
    assert_eq!(verdict(find(&nothing, "nothing")), "open");
    let text = "[bank]\ncapacity = \"100 Ah\"\n[parts.it]\nkind = \"load\"\n[items.it]\n[runs.it]\nlength = \"2 m\"\n";
    assert_eq!(verdict(find(&answer(text), "it.load")), "open");
    let text = "[bank]\ncapacity = \"100 Ah\"\n[parts.it]\nkind = \"light\"\npower = { running = \"20 W\" }\n[items.it]\n";
    assert_eq!(verdict(find(&answer(text), "it.run")), "open");
}
