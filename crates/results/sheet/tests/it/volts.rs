//! Where the volts go.

use spile_answer::Question;
use spile_sheet::{Drawing, Width, drawings};

use crate::seen::is_sound;
use crate::{build, heron};

fn plotted(drawn: Vec<Drawing>) -> Option<Drawing> {
    drawn.into_iter().find(|one| one.title.starts_with("Where the volts go"))
}

#[test]
fn heron_is_plotted_before_and_after() {
    for option in ["upright", "two-boxes"] {
        let [before, after] = heron(option);
        for width in [Width::Wide, Width::Narrow] {
            for later in [None, Some(&after)] {
                let drawn = drawings(Question::Wire, &before, later, width);
                is_sound(&plotted(drawn).expect("a plot"));
            }
        }
    }
}

/// By Ohm's law: 0.017241 Ω·mm²/m × 4 m / 4 mm² = 17.2 mΩ at 20 °C, and 5 A through it lose 86 mV;
/// the copper's own warmth at 5 A adds less than 1 %.
#[test]
fn a_feed_by_ohms_law() {
    let text = r#"
system = "12 V"
[bank]
kind = "AGM"
capacity = "100 Ah"
[parts.pump]
kind = "pump"
power = { running = "60 W" }
[items.pump]
[runs.pump]
section = "4 mm2"
length = "4 m"
ambient = "20 °C"
"#;
    let drawing = plotted(drawings(Question::Wire, &build(text), None, Width::Wide)).unwrap();
    let table = drawing.table.unwrap();
    let feed = table.rows.iter().find(|row| row[0] == "feed").unwrap();
    assert_eq!(feed[2], "4.0");
    let lost_v: f64 = feed[3].parse().unwrap();
    assert!((lost_v - 0.0862).abs() < 0.0014, "{lost_v}");
}

#[test]
fn nothing_is_plotted_without_runs() {
    assert!(plotted(drawings(Question::Wire, &build(""), None, Width::Wide)).is_none());
}
