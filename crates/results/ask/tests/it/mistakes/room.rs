//! Mistakes 1 to 3, 7, 9 and 10: the way in, the room round a body, the cut and the drill.

use spile_answer::Question::Fit;

use super::{Caught, but, caught, likely, near};

/// A fridge of 495 mm depth in a bay before an aisle.
pub const GALLEY: &str = r#"
[parts.fridge]
kind = "upright fridge"
size = { width = "475 mm ± 1 mm", height = "780 mm ± 1 mm", depth = "495 mm ± 1 mm" }
power = { running = "58 W" }
[bays.galley]
size = { width = "520 mm", height = "1140 mm", depth = "640 mm" }
in_front = "900 mm"
[items.fridge]
place = { in = "galley" }
"#;

/// The same behind a panel, with its cut-out and its screws.
pub const PANEL: &str = r#"
[parts.fridge]
kind = "upright fridge"
size = { width = "475 mm", height = "780 mm", depth = "495 mm" }
flange = { width = "500 mm", height = "820 mm" }
cutout = { width = "482 mm", height = "787 mm", radius = "8 mm" }
fixing = { screw = "4 mm", hole = "4.5 mm", unit = "mm", rows = [[-20, 100], [-20, 680], [495, 100], [495, 680]] }
[bays.galley]
size = { width = "640 mm", height = "1140 mm", depth = "640 mm" }
widths = { unit = "mm", rows = [[50, 640], [550, 640], [1090, 640]] }
diagonals = ["1307 mm ± 0.5 mm", "1307 mm ± 0.5 mm"]
in_front = "900 mm"
[panels.front]
closes = "galley"
material = "birch plywood"
size = { width = "640 mm", height = "1140 mm", depth = "12 mm" }
[items.fridge]
panel = "front"
place = { in = "galley", above = "150 mm" }
[frame.post]
material = "steel tube"
place = { in = "galley", from_rear = "0 mm", from_left = "12 mm", above = "0 mm" }
size = { length = "30 mm", width = "30 mm", height = "1140 mm" }
"#;

/// A chest that stands on the floor, with a line beneath.
pub const CHEST: &str = r#"
[parts.chest]
kind = "furniture"
size = { width = "400 mm", height = "300 mm", depth = "300 mm" }
[bays.side]
size = { width = "800 mm", height = "900 mm", depth = "500 mm" }
[items.chest]
place = { in = "side", from_rear = "100 mm", from_right = "50 mm", above = "0 mm" }
held = { by = "bolt", size = "M6", count = 4, into = "plywood", face = "below", spacing = { width = "320 mm", height = "200 mm" }, looked = true }
[keep_out.brake]
what = "brake line"
place = { in = "side", from_rear = "0 mm", from_right = "150 mm", above = "-30 mm" }
size = { length = "800 mm", width = "10 mm", height = "10 mm" }
"#;

/// 1: body depth and some 300 mm of cable tail against the aisle.
#[test]
fn mistake_1_no_way_out() {
    let narrow = but(GALLEY, "900 mm", "584 mm");
    let expected =
        Caught { question: Fit, id: "fridge.way-out", verdict: "care practice", says: &["tail"] };
    let finding = caught(&narrow, GALLEY, &expected);
    // 584 − 495 of body − 300 of tail: 211 too little
    near("left in the aisle", likely(&finding), -211.0, 1.0);
    let shut = but(GALLEY, "900 mm", "450 mm");
    let expected = Caught { verdict: "stop", id: "fridge.way-in", says: &[], ..expected };
    caught(&shut, GALLEY, &expected);
}

/// 2: the body alone goes in, the air that its papers ask for does not; 3 to 5 mm slack a side.
#[test]
fn mistake_2_body_size_only() {
    let papers = "size = { width = \"475 mm ± 1 mm\"";
    let with_air = but(GALLEY, papers, &format!("air = {{ behind = \"60 mm\" }}\n{papers}"));
    let short = but(&with_air, "depth = \"640 mm\"", "depth = \"540 mm\"");
    let expected = Caught { question: Fit, id: "fridge.behind", verdict: "stop", says: &["60 mm"] };
    let finding = caught(&short, &with_air, &expected);
    near("540 − 495", likely(&finding), 45.0, 1e-6);
    // The plug and its hose behind it count as its air does.
    let plug = but(GALLEY, papers, &format!("service = {{ behind = \"80 mm\" }}\n{papers}"));
    let short = but(&plug, "depth = \"640 mm\"", "depth = \"540 mm\"");
    caught(&short, &plug, &Caught { says: &["80 mm"], ..expected });
    let snug = but(GALLEY, "width = \"520 mm\"", "width = \"481 mm\"");
    let expected =
        Caught { question: Fit, id: "fridge.beside", verdict: "care practice", says: &[] };
    caught(&snug, GALLEY, &expected);
}

/// 3: width at three heights, both diagonals within 2 mm.
#[test]
fn mistake_3_one_corner_measured() {
    let once =
        but(PANEL, "widths = { unit = \"mm\", rows = [[50, 640], [550, 640], [1090, 640]] }", "");
    let expected = Caught {
        question: Fit,
        id: "galley.heights",
        verdict: "care practice",
        says: &["three heights", "once", "A tape from side to side"],
    };
    caught(&once, PANEL, &expected);
    let out = but(PANEL, "[\"1307 mm", "[\"1303 mm");
    let expected = Caught {
        question: Fit,
        id: "galley.square",
        verdict: "care practice",
        says: &["differ by 4 mm"],
    };
    caught(&out, PANEL, &expected);
    let unmeasured = but(PANEL, "diagonals = [\"1307 mm ± 0.5 mm\", \"1307 mm ± 0.5 mm\"]", "");
    caught(&unmeasured, PANEL, &Caught { says: &["diagonals"], ..expected });
}

/// 7: at least two diameters in metal, four in plywood, else a backer.
#[test]
fn mistake_7_fixing_hole_at_the_edge_of_the_cut() {
    let near_cut = PANEL.replace("[-20, ", "[-12, ").replace("[495, ", "[487, ");
    let expected = Caught {
        question: Fit,
        id: "fridge.cut-holes",
        verdict: "care practice",
        says: &["4 screw diameters", "16 mm", "hardwood strips behind the panel"],
    };
    let finding = caught(&near_cut, PANEL, &expected);
    // 12 beside the body less the cut's own 3.5
    near("to the cut", likely(&finding), 8.5, 1e-6);
    let metal =
        near_cut.replace("birch plywood", "aluminium sheet").replace("482 mm", "480 mm ± 0 mm");
    let report = super::report(&metal);
    assert_eq!(super::words(super::one(&report, Fit, "fridge.cut-holes")), "good");
}

/// 9: a member that carries a belted seat or a belt anchorage is never cut; stop.
#[test]
fn mistake_9_a_belt_member_is_never_cut() {
    let into = but(PANEL, "from_rear = \"0 mm\"", "from_rear = \"120 mm\"");
    let plain = but(&into, "material = \"steel tube\"", "material = \"steel tube\"\nbelt = false");
    let belted = but(&plain, "belt = false", "belt = true");
    let expected =
        Caught { question: Fit, id: "fridge.cut-belt", verdict: "stop", says: &["never cut"] };
    let finding = caught(&belted, &plain, &expected);
    assert!(finding.limit.as_ref().unwrap().source.contains("rule of law"));
    caught(&belted, &but(PANEL, "material = \"steel tube\"", "belt = true"), &expected);
    // another member that is cut as deep does not hide it
    let two = format!(
        "{belted}[frame.other]\nplace = {{ in = \"galley\", from_rear = \"300 mm\", from_left = \"12 mm\", above = \"0 mm\" }}\nsize = {{ length = \"60 mm\", width = \"30 mm\", height = \"1140 mm\" }}\n"
    );
    caught(&two, &plain, &expected);
}

/// 10: look underneath first; every drilled hole is checked against the keep-out zones.
#[test]
fn mistake_10_drilled_blind() {
    let on_the_line = but(CHEST, "from_right = \"150 mm\"", "from_right = \"95 mm\"");
    let expected = Caught {
        question: Fit,
        id: "chest.drilled",
        verdict: "stop",
        says: &["brake line", "nobody may drill there", "stop on the drill"],
    };
    caught(&on_the_line, CHEST, &expected);
    let unseen = but(CHEST, ", looked = true", "");
    let expected = Caught {
        question: Fit,
        id: "chest.look-first",
        verdict: "care practice",
        says: &["Look underneath first", "brake and fuel lines", "tyre", "tanks"],
    };
    caught(&unseen, CHEST, &expected);
    let pipe = "[keep_out.pipe]\nwhat = \"gas pipe\"\nplace = { in = \"galley\", from_rear = \"100 mm\", from_left = \"20 mm\", above = \"0 mm\" }\nsize = { length = \"10 mm\", width = \"10 mm\", height = \"1140 mm\" }\n";
    let cut = format!("{PANEL}{pipe}");
    let expected =
        Caught { question: Fit, id: "fridge.cut-keep-out", verdict: "stop", says: &["gas pipe"] };
    caught(&cut, &cut.replace("from_rear = \"100 mm\"", "from_rear = \"20 mm\""), &expected);
}
