//! Test points along a run.

use spile_answer::Question;
use spile_sheet::{Drawing, Width, drawings};

use crate::seen::{is_sound, lettering};
use crate::{build, heron};

const PUMP: &str = r#"
[parts.pump]
kind = "pump"
power = { running = "60 W" }
[items.pump]
part = "pump"
[runs.pump]
section = "2.5 mm2"
length = "4 m"
[bank]
capacity = "100 Ah"
"#;

const WIDTHS: [Width; 2] = [Width::Wide, Width::Narrow];

fn has(drawing: &Drawing, words: &str) -> bool {
    let parsed = roxmltree::Document::parse(&drawing.svg.0).expect("a drawing");
    lettering(&parsed).iter().any(|one| one.text == words)
}

#[test]
fn heron_is_drawn_to_be_read() {
    for option in ["upright", "two-boxes"] {
        let [before, after] = heron(option);
        for width in WIDTHS {
            let drawn = drawings(Question::Meter, &before, Some(&after), width);
            assert!(!drawn.is_empty());
            drawn.iter().for_each(is_sound);
        }
    }
}

/// The places and figures of the answer stand in the drawing, the odd reading with its causes.
#[test]
fn what_was_read_stands_beside_what_is_expected() {
    let text = format!(
        "{PUMP}[readings.pump]\nbattery = \"12.80 V\"\nblock = \"12.77 V\"\nappliance = \"11.54 V\"\ncurrent = \"5.0 A\"\nfeed_drop = \"145 mV\"\nreturn_drop = \"1086 mV\"\n"
    );
    let build = build(&text);
    let answer = spile_meter::answer(&build);
    let expects = &answer.findings.iter().find(|one| one.id == "pump.cause").unwrap().expects;
    for width in WIDTHS {
        let [drawing] = &drawings(Question::Meter, &build, None, width)[..] else { panic!() };
        is_sound(drawing);
        assert!(has(drawing, "read 11.54 V, not as expected"));
        assert!(has(drawing, "What explains it, the likeliest first"));
        let table = drawing.table.as_ref().unwrap();
        let places: Vec<&str> = table.rows.iter().map(|row| row[1].as_str()).collect();
        assert_eq!(places, expects.iter().map(|one| &*one.place).collect::<Vec<_>>());
        for expect in expects {
            assert!(has(drawing, &expect.place));
        }
    }
}

#[test]
fn nothing_is_drawn_where_nothing_is_expected() {
    assert!(drawings(Question::Meter, &build(""), None, Width::Wide).is_empty());
}
