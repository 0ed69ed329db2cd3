//! Whole fits against Shapely and trial: tests/reference/fits.json, made by fits.py beside it.

use std::fmt::Write;

use serde::Deserialize;
use spile_answer::Verdict;
use spile_quantity::{Angle, Length};

use crate::{build, finding, likely, near};

#[derive(Deserialize)]
struct Reference {
    clear: Vec<Case>,
    shared: Vec<Case>,
    doors: Vec<Leaf>,
}

#[derive(Deserialize)]
struct Case {
    bay: [f64; 3],
    rows: Vec<[f64; 2]>,
    arch: Vec<[f64; 2]>,
    carried: f64,
    boxes: Vec<[[f64; 2]; 3]>,
    body: [[f64; 2]; 3],
    left: Option<Left>,
}

#[derive(Deserialize)]
struct Left {
    front: f64,
    rear: f64,
    up: f64,
    down: f64,
    behind: f64,
}

#[derive(Deserialize)]
struct Leaf {
    width: f64,
    thickness: f64,
    angle: f64,
    reach: f64,
}

fn reference() -> Reference {
    serde_json::from_str(include_str!("../reference/fits.json")).expect("the reference file")
}

/// The case as a build, every measure exact.
fn text(case: &Case) -> String {
    let [width, height, depth] = case.bay;
    let [x, y, z] = case.body;
    let mut text = format!(
        r#"
[parts.body]
kind = "other"
size = {{ width = "{} mm ± 0 mm", height = "{} mm ± 0 mm", depth = "{} mm ± 0 mm" }}
[bays.bay]
opens = "left"
size = {{ width = "{width} mm ± 0 mm", height = "{height} mm ± 0 mm", depth = "{depth} mm ± 0 mm" }}
depths = {{ unit = "mm", tolerance = "0 mm", rows = {:?} }}
[items.body]
place = {{ in = "bay", from_rear = "{} mm ± 0 mm", from_left = "0 mm ± 0 mm", above = "{} mm ± 0 mm" }}
[obstacles.arch]
kind = "wheel arch"
place = {{ in = "bay", from_right = "0 mm ± 0 mm" }}
[obstacles.arch.profile]
columns = ["from_rear", "above"]
unit = "mm"
tolerance = "0 mm"
carried = "{} mm ± 0 mm"
rows = {:?}
"#,
        x[1] - x[0],
        z[1] - z[0],
        y[1] - y[0],
        case.rows,
        x[0],
        z[0],
        case.carried,
        case.arch,
    );
    for (place, [x, y, z]) in case.boxes.iter().enumerate() {
        let _ = writeln!(
            text,
            r#"[obstacles.box-{place}]
place = {{ in = "bay", from_rear = "{} mm ± 0 mm", from_right = "{} mm ± 0 mm", above = "{} mm ± 0 mm" }}
size = {{ length = "{} mm ± 0 mm", width = "{} mm ± 0 mm", height = "{} mm ± 0 mm" }}"#,
            x[0],
            y[0],
            z[0],
            x[1] - x[0],
            y[1] - y[0],
            z[1] - z[0],
        );
    }
    text
}

#[test]
fn the_room_on_every_side_is_what_shapely_finds() {
    let mut below = 0;
    for (number, case) in reference().clear.iter().enumerate() {
        let Some(left) = &case.left else { panic!("case {number} shares room") };
        let answer = spile_fit::answer(&build(&text(case)));
        let what = |side: &str| format!("case {number}, {side}");
        near(&what("behind"), likely(&answer, "body.behind"), left.behind, 1e-3);
        near(&what("beside"), likely(&answer, "body.beside"), left.front.min(left.rear), 1e-3);
        near(&what("above"), likely(&answer, "body.above"), left.up, 1e-3);
        // Below, only what is fixed counts; over the bare floor there is nothing to say.
        let under = answer.findings.iter().find(|finding| finding.id == "body.below");
        let [_, _, z] = case.body;
        assert_eq!(under.is_some(), left.down < z[0] - 1e-6, "{}", what("below"));
        if under.is_some() {
            below += 1;
            near(&what("below"), likely(&answer, "body.below"), left.down, 1e-3);
        }
        assert_ne!(answer.verdict(), Verdict::Stop, "{}", what("verdict"));
    }
    assert!(below >= 10, "too few cases with something below: {below}");
}

#[test]
fn a_body_that_shares_room_with_anything_is_stopped() {
    for (number, case) in reference().shared.iter().enumerate() {
        let answer = spile_fit::answer(&build(&text(case)));
        assert_eq!(answer.verdict(), Verdict::Stop, "case {number}");
        let leading = answer.leading().expect("a finding");
        assert_eq!(leading.limit.as_ref().map(|limit| limit.kind), Some("space"), "case {number}");
        assert!(leading.says.contains("runs"), "case {number}: {}", leading.says);
        assert!(finding(&answer, &leading.id).mend.is_some(), "case {number} offers nothing");
    }
}

#[test]
fn a_door_reaches_as_far_as_trying_its_angles_finds() {
    for leaf in reference().doors {
        let reach = spile_fit::reach_ahead(
            Length::mm(leaf.width),
            Length::mm(leaf.thickness),
            Angle::degrees(leaf.angle),
        );
        near("reach", reach.in_mm(), leaf.reach, 1e-5);
    }
}
