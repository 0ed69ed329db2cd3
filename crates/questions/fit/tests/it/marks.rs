//! The marks: what they allow is never passed, and what they say is right.

use proptest::prelude::*;
use spile_fit::{From, MarkOut, NoMarks, Points, Purpose, half_chord, mark_out};
use spile_quantity::Length;

use crate::{build, near};

/// The opening of a part on a panel, with the tape of choice; widths in mm.
fn text(width: &str, height: &str, x: f64, z: f64, tape: &str) -> String {
    format!(
        r#"
tape = "{tape}"
[parts.box]
kind = "other"
size = {{ width = "300 mm", height = "400 mm", depth = "200 mm" }}
cutout = {{ width = "{width}", height = "{height}", radius = "8 mm" }}
fixing = {{ screw = "4 mm", hole = "4.5 mm", unit = "mm", rows = [[-12, 0], [-12, 400], [312, 0], [312, 400]] }}
[bays.bay]
size = {{ width = "800 mm", height = "900 mm", depth = "500 mm" }}
[panels.front]
closes = "bay"
material = "poplar plywood"
size = {{ width = "800 mm", height = "900 mm", depth = "12 mm" }}
[items.box]
panel = "front"
place = {{ in = "bay", from_rear = "{x} mm ± 0 mm", above = "{z} mm ± 0 mm" }}
"#
    )
}

fn marks(text: &str) -> MarkOut {
    mark_out(&build(text), "box").unwrap_or_else(|no| panic!("{}", no.words()))
}

/// The lines of the four edges in millimetres, on the metric tape or on the inch one.
fn edges(marks: &MarkOut, inch: bool) -> Vec<Option<f64>> {
    let edges = marks.marks.iter().filter(|mark| mark.purpose == Purpose::Edge);
    edges
        .map(|mark| {
            if inch {
                mark.inch.map(|at| at.mark.length().in_mm())
            } else {
                Some(mark.mm.length().in_mm())
            }
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 10_000, failure_persistence: None, ..ProptestConfig::default() })]

    /// The opening as it is cut: each edge lies where the blade's side ran, which is off its line
    /// by the hand; the kerf, however wide, lies on the waste side of it.
    #[test]
    fn no_opening_between_two_marks_is_outside_its_limits(
        width in 305.0..420.0_f64, height in 405.0..520.0_f64,
        total in 2.001..6.0_f64, share in 0.0..1.0_f64,
        x in 130.0..350.0_f64, z in 130.0..330.0_f64,
        tape in prop::sample::select(vec!["1/16 in", "1/32 in", "1/64 in"]),
        hand in prop::array::uniform4(-1.0..1.0_f64),
        extreme in any::<bool>(),
    ) {
        let (over, under) = (total * share, total * (1.0 - share));
        let round = |value: f64| (value * 10.0).round() / 10.0;
        let (width, height) = (round(width), round(height));
        let written = |size: f64| format!("{size} mm +{over:.3}/-{under:.3}");
        let marks = marks(&text(&written(width), &written(height), round(x), round(z), tape));
        prop_assert_eq!(marks.hand.in_mm(), 0.5);
        let off = hand.map(|share| if extreme { share.signum() * 0.5 } else { share * 0.5 });
        for inch in [false, true] {
            let lines = edges(&marks, inch);
            for (pair, size) in [(0, width), (2, height)] {
                let (Some(low), Some(high)) = (lines[pair], lines[pair + 1]) else { continue };
                let cut = (high + off[pair + 1]) - (low + off[pair]);
                // Where no millimetre lies between, the mark is on the small side, and says so.
                let filed = !inch && marks.marks[pair..pair + 2].iter().any(|mark| mark.file);
                prop_assert!(filed || cut >= size - under - 0.001, "{cut} below {size} - {under}");
                prop_assert!(cut <= size + over + 0.001, "{cut} above {size} + {over}");
                if inch {
                    // Every inch line is a mark of the owner's tape.
                    let parts = tape[2..4].parse::<f64>().expect("a tape");
                    for line in [low, high] {
                        let steps = line / 25.4 * parts;
                        prop_assert!((steps - steps.round()).abs() < 1e-6, "{line} is no mark");
                    }
                }
            }
        }
    }
}

/// Where the tape has a mark within what is allowed it is given, and where it has none, none is.
#[test]
fn an_inch_is_given_where_there_is_one() {
    let marks = marks(&text("305 mm +2/-1", "405 mm +2/-1", 237.0, 231.0, "1/16 in"));
    let sixteenth = 25.4 / 16.0;
    let mut without = 0;
    for mark in &marks.marks {
        let (low, high) = (mark.allowed.low.in_mm(), mark.allowed.high.in_mm());
        let there = (low / sixteenth - 1e-9).ceil() <= (high / sixteenth + 1e-9).floor();
        assert_eq!(mark.inch.is_some(), there, "{}", mark.name);
        without += usize::from(!there);
    }
    assert!(without > 0 && without < marks.marks.len(), "{without}");
    assert!(marks.cautions.iter().any(|text| text.contains("use the millimetre")));
}

/// The worked example: a body of 475 × 780 on a panel of 560 × 1140, its cut-out 482 × 787 +2/−1.
/// By hand: the body is 42.5 from the left and 275 from below; the opening 3.5 further out. Of the
/// +2 each edge has 1, of the −1 each has 0.5, less 0.5 of the hand: 0.5 outward, 0 inward.
#[test]
fn a_worked_mark_out() {
    let made = build(
        r#"
[parts.fridge]
kind = "upright fridge"
size = { width = "475 mm", height = "780 mm", depth = "495 mm" }
cutout = { width = "482 mm +2/-1", height = "787 mm +2/-1", radius = "8 mm" }
[bays.galley]
size = { width = "520 mm", height = "1420 mm", depth = "566 mm" }
[panels.front]
closes = "galley"
size = { width = "560 mm", height = "1140 mm", depth = "12 mm" }
place = { above = "60 mm" }
[items.fridge]
panel = "front"
place = { in = "galley", from_rear = "22.5 mm", above = "335 mm" }
"#,
    );
    let marks = mark_out(&made, "fridge").expect("marks");
    let expected = [
        ("1", From::Left, 39.0, 38.5, 39.0, "39", "1 17/32"),
        ("2", From::Left, 521.0, 521.0, 521.5, "521", "20 17/32"),
        ("3", From::Below, 271.5, 271.0, 271.5, "271.5", "10 11/16"),
        ("4", From::Below, 1058.5, 1058.5, 1059.0, "1058.5", "41 11/16"),
    ];
    for (mark, (name, from, exact, low, high, mm, inch)) in marks.marks.iter().zip(expected) {
        assert_eq!((mark.name.as_str(), mark.from), (name, from));
        near(name, mark.exact.in_mm(), exact, 1e-6);
        near(name, mark.allowed.low.in_mm(), low, 1e-6);
        near(name, mark.allowed.high.in_mm(), high, 1e-6);
        assert_eq!(mark.mm.figure(), mm, "{name}");
        assert_eq!(mark.inch.map(|at| at.mark.figure()).as_deref(), Some(inch), "{name}");
    }
    let corner = marks.corners[0].map(Length::in_mm);
    near("corner drill, across", corner[0], 47.0, 1e-6);
    near("corner drill, up", corner[1], 279.5, 1e-6);
    // √(482² + 787²).
    near("diagonal", marks.checks[2].mm.in_mm(), 922.872, 1e-3);
    // It opens left: seen from the aisle the front of the vehicle is on the left.
    assert_eq!((marks.front, marks.up), (Points::Left, Points::Up));
}

/// Chords: the triangles 3-4-5, 5-12-13 and 7-24-25, and a blade's rim at its widest.
#[test]
fn chords_of_a_blade() {
    for (diameter, depth, expected) in [
        (100.0, 10.0, 30.0),
        (130.0, 5.0, 25.0),
        (250.0, 5.0, 35.0),
        (160.0, 80.0, 80.0),
        (160.0, 0.0, 0.0),
    ] {
        let half = half_chord(Length::mm(diameter), Length::mm(depth)).expect("a chord");
        near("half chord", half.in_mm(), expected, 1e-6);
    }
    // A blade of 160 set 3 through a sheet of 12: √(80² − 65²) − √(80² − 77²) = 46.637 − 21.703.
    let saw =
        marks(&text("305 mm +2/-1", "405 mm +2/-1", 237.0, 231.0, "1/32 in")).saw.expect("a saw");
    near("stop", saw.stop.in_mm(), 46.637, 1e-3);
    near("ahead", saw.ahead.in_mm(), 24.934, 1e-3);
}

#[test]
fn papers_without_tolerance_and_papers_too_tight() {
    let plain = marks(&text("310 mm", "410 mm", 237.0, 231.0, "1/32 in"));
    // Never smaller than the papers say, and no more over it than two hands at each line.
    near("least", plain.limits[0].low.in_mm(), 310.0, 1e-9);
    near("greatest", plain.limits[0].high.in_mm(), 312.0, 1e-9);
    assert!(plain.assumed.iter().any(|text| text.contains("no tolerance")));
    let tight = marks(&text("310 mm ± 0.2 mm", "410 mm ± 0.2 mm", 237.0, 231.0, "1/32 in"));
    assert!(tight.cautions.iter().any(|text| text.contains("file to fit")));
}

#[test]
fn without_an_item_a_panel_or_papers_there_are_no_marks() {
    let whole = text("310 mm", "410 mm", 237.0, 231.0, "1/32 in");
    let of = |text: &str, item: &str| mark_out(&build(text), item).err();
    assert_eq!(of(&whole, "bin"), Some(NoMarks::NoItem));
    assert_eq!(of(&whole.replace("panel = \"front\"\n", ""), "box"), Some(NoMarks::NoPanel));
    let cutout =
        whole.lines().filter(|line| !line.starts_with("cutout")).collect::<Vec<_>>().join("\n");
    assert_eq!(of(&cutout, "box"), Some(NoMarks::NoCutout));
    let other = whole.replace("closes = \"bay\"", "closes = \"bin\"")
        + "[bays.bin]\nsize = { width = \"300 mm\", height = \"400 mm\", depth = \"300 mm\" }\n";
    assert_eq!(of(&other, "box"), Some(NoMarks::OtherBay));
}
