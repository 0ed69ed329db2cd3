//! Each finding with each verdict it can have, from small builds, with the cases of the trade.

use spile_answer::{Reason, Verdict};

use crate::{build, finding, likely, near};

const GOOD: Verdict = Verdict::Good;
const STOP: Verdict = Verdict::Stop;
const OPEN: Verdict = Verdict::Open;
const UNSURE: Verdict = Verdict::Care(Reason::Unsure);
const PRACTICE: Verdict = Verdict::Care(Reason::Practice);

/// A fridge in a galley; `part`, `item` and `bay` are further keys of each, `more` further tables.
fn galley(part: &str, bay: &str, item: &str, more: &str) -> String {
    format!(
        r#"
[parts.fridge]
kind = "upright fridge"
size = {{ width = "475 mm", height = "780 mm", depth = "495 mm" }}
{part}
[bays.galley]
size = {{ width = "520 mm ± 1 mm", height = "1140 mm ± 1 mm", depth = "540 mm ± 1 mm" }}
{bay}
[items.fridge]
place = {{ in = "galley"{item} }}
{more}
"#
    )
}

/// (what, build, finding, verdict, likely figure in mm by hand)
type Row = (&'static str, String, &'static str, Verdict, Option<f64>);

fn check(rows: Vec<Row>) {
    for (what, text, id, verdict, figure) in rows {
        let answer = spile_fit::answer(&build(&text));
        let found = finding(&answer, id);
        assert_eq!(found.verdict, verdict, "{what}: {id}: {}", found.says);
        if let Some(expected) = figure {
            near(what, likely(&answer, id), expected, 1e-3);
        }
        assert!(
            verdict != STOP || found.mend.is_some() || id.ends_with("vehicle-door"),
            "{what}: no mend"
        );
    }
}

#[test]
fn twelve_lines_are_enough_for_a_first_answer() {
    let answer = spile_fit::answer(&build(&galley("", "", "", "")));
    // (520 − 475)/2 in the middle; 540 − 495 behind; 1140 − 780 above.
    near("beside", likely(&answer, "fridge.beside"), 22.5, 1e-3);
    near("behind", likely(&answer, "fridge.behind"), 45.0, 1e-3);
    near("above", likely(&answer, "fridge.above"), 360.0, 1e-3);
    assert!(answer.assumed.iter().any(|text| text.contains("in the middle of its bay")));
    assert!(answer.assumed.iter().any(|text| text.contains("550 mm are taken")));
    // The aisle was not taken, and decides the way in: 550 − 495, and 450 − 495 at worst.
    let way = finding(&answer, "fridge.way-in");
    assert_eq!(
        (way.verdict, way.asks[0].input.as_ref()),
        (UNSURE, "free space in front of the bay galley")
    );
}

#[test]
fn the_room_around_it() {
    let air = |behind: &str| format!("air = {{ behind = \"{behind}\", beside = \"10 mm\" }}");
    let at = |x: &str| format!(", from_rear = \"{x}\"");
    check(vec![
        (
            "540 − 495 = 45 behind, 30 asked",
            galley(&air("30 mm"), "", "", ""),
            "fridge.behind",
            GOOD,
            Some(45.0),
        ),
        (
            "45 ± 1 against 45",
            galley(&air("45 mm"), "", ", from_left = \"0 mm ± 0 mm\"", ""),
            "fridge.behind",
            UNSURE,
            Some(45.0),
        ),
        (
            "papers are a limit: 45 against 60",
            galley(&air("60 mm"), "", "", ""),
            "fridge.behind",
            STOP,
            Some(45.0),
        ),
        (
            "no papers: 45 − 20 = 25 against 30 of practice",
            galley("", "", ", from_left = \"20 mm ± 1 mm\"", ""),
            "fridge.behind",
            PRACTICE,
            Some(25.0),
        ),
        (
            "it does not go in: 45 − 50, whatever practice asks",
            galley("", "", ", from_left = \"50 mm ± 1 mm\"", ""),
            "fridge.behind",
            STOP,
            Some(-5.0),
        ),
        (
            "22 ± 1 on one side, 23 ± 2 on the other, which may be the less",
            galley(&air("30 mm"), "", &at("22 mm ± 1 mm"), ""),
            "fridge.beside",
            GOOD,
            Some(23.0),
        ),
        (
            "520 − 475 − 40 = 5 on its left",
            galley("", "", &at("40 mm ± 1 mm"), ""),
            "fridge.beside",
            PRACTICE,
            Some(5.0),
        ),
        (
            "520 − 475 − 50 = −5",
            galley("", "", &at("50 mm ± 1 mm"), ""),
            "fridge.beside",
            STOP,
            Some(-5.0),
        ),
        (
            "1140 − 780 − 365 = −5",
            galley("", "", ", above = \"365 mm ± 1 mm\"", ""),
            "fridge.above",
            STOP,
            Some(-5.0),
        ),
        (
            "1140 − 780 − 350 = 10 against 20 of practice",
            galley("", "", ", above = \"350 mm ± 1 mm\"", ""),
            "fridge.above",
            PRACTICE,
            Some(10.0),
        ),
    ]);
}

#[test]
fn over_an_arch() {
    let over = |z: &str| {
        let arch = r#"[obstacles.arch]
kind = "wheel arch"
place = { in = "galley", from_rear = "0 mm ± 0 mm", from_right = "0 mm ± 0 mm", above = "0 mm ± 0 mm" }
size = { length = "520 mm", width = "300 mm", height = "290 mm ± 1 mm" }"#;
        galley("", "", &format!(", above = \"{z} mm ± 1 mm\""), arch)
    };
    check(vec![
        ("a bare arch wants 10 of air: 310 − 290", over("310"), "fridge.below", GOOD, Some(20.0)),
        ("301 − 290 = 11, 9 at worst", over("301"), "fridge.below", UNSURE, Some(11.0)),
        ("295 − 290 = 5", over("295"), "fridge.below", PRACTICE, Some(5.0)),
        ("280 − 290 = −10", over("280"), "fridge.below", STOP, Some(-10.0)),
    ]);
}

#[test]
fn doors_and_drawers() {
    let door = |angle: &str| format!("door = {{ hinge = \"left\"{angle}, thickness = \"40 mm\" }}");
    let aisle = |free: &str| format!("in_front = \"{free} mm ± 1 mm\"");
    let drawer = "drawer = { travel = \"400 mm\" }";
    // √(475² + 40²) = 476.681.
    check(vec![
        (
            "600 − 476.681",
            galley(&door(", angle = \"90°\""), &aisle("600"), "", ""),
            "fridge.door",
            GOOD,
            Some(123.319),
        ),
        (
            "500 − 476.681 against 30",
            galley(&door(", angle = \"90°\""), &aisle("500"), "", ""),
            "fridge.door",
            PRACTICE,
            Some(23.319),
        ),
        (
            "470 − 476.681: the papers' angle",
            galley(&door(", angle = \"90°\""), &aisle("470"), "", ""),
            "fridge.door",
            STOP,
            Some(-6.681),
        ),
        (
            "the same, the angle a stand-in",
            galley(&door(""), &aisle("470"), "", ""),
            "fridge.door",
            UNSURE,
            Some(-6.681),
        ),
        // 475·sin 30° + 40·cos 30° = 272.141.
        (
            "opened to 30° only",
            galley(&door(", angle = \"30°\""), &aisle("470"), "", ""),
            "fridge.door",
            GOOD,
            Some(197.859),
        ),
        ("500 − 400", galley(drawer, &aisle("500"), "", ""), "fridge.drawer", GOOD, Some(100.0)),
        (
            "420 − 400 against 30",
            galley(drawer, &aisle("420"), "", ""),
            "fridge.drawer",
            PRACTICE,
            Some(20.0),
        ),
        ("390 − 400", galley(drawer, &aisle("390"), "", ""), "fridge.drawer", STOP, Some(-10.0)),
    ]);
}

#[test]
fn a_lid_under_the_top_of_the_bay() {
    let chest = |height: &str| {
        format!(
            r#"
[parts.chest]
kind = "lidded box"
size = {{ width = "590 mm", height = "410 mm", depth = "370 mm" }}
door = {{ hinge = "back", angle = "80°", thickness = "45 mm" }}
[bays.low]
size = {{ width = "640 mm ± 1 mm", height = "{height} mm ± 1 mm", depth = "560 mm ± 1 mm" }}
in_front = "600 mm"
[items.chest]
place = {{ in = "low" }}
"#
        )
    };
    // Its pin is at 365; 370·sin 80° + 45·cos 80° = 372.193 above it.
    check(vec![
        ("800 − 365 − 372.193", chest("800"), "chest.door", GOOD, Some(62.807)),
        ("700 − 365 − 372.193", chest("700"), "chest.door", STOP, Some(-37.193)),
    ]);
}

#[test]
fn ways_in_and_out() {
    let power = "power = { running = \"50 W\" }";
    let aisle = |free: &str| format!("in_front = \"{free} mm ± 1 mm\"");
    let opening = |width: &str| {
        format!(
            "in_front = \"600 mm\"\nopening = {{ width = \"{width} mm ± 1 mm\", height = \"1100 mm ± 1 mm\" }}"
        )
    };
    let doors = |width: &str, height: &str| {
        format!(
            "[vehicle.doors.side]\nwidth = \"{width} mm ± 1 mm\"\nheight = \"{height} mm ± 1 mm\""
        )
    };
    check(vec![
        ("600 − 495", galley("", &aisle("600"), "", ""), "fridge.way-in", GOOD, Some(105.0)),
        (
            "505 − 495 against 20",
            galley("", &aisle("505"), "", ""),
            "fridge.way-in",
            PRACTICE,
            Some(10.0),
        ),
        (
            "490: no straight way, and no proof that there is none",
            galley("", &aisle("490"), "", ""),
            "fridge.way-in",
            OPEN,
            None,
        ),
        (
            "470: less than its smallest side, 475",
            galley("", &aisle("470"), "", ""),
            "fridge.way-in",
            STOP,
            Some(-5.0),
        ),
        (
            "600 − 495 − 300 of tail",
            galley(power, &aisle("600"), "", ""),
            "fridge.way-out",
            PRACTICE,
            Some(-195.0),
        ),
        (
            "900 − 495 − 300",
            galley(power, &aisle("900"), "", ""),
            "fridge.way-out",
            GOOD,
            Some(105.0),
        ),
        (
            "490 − 475 in the opening",
            galley("", &opening("490"), "", ""),
            "fridge.opening",
            GOOD,
            Some(15.0),
        ),
        (
            "480 − 475 against twice 4",
            galley("", &opening("480"), "", ""),
            "fridge.opening",
            PRACTICE,
            Some(5.0),
        ),
        ("470 − 475", galley("", &opening("470"), "", ""), "fridge.opening", STOP, Some(-5.0)),
    ]);
    // A larger one, 675 × 780 × 695, so that the doors are ones that a vehicle has.
    let large = |width: &str, height: &str| {
        let text = galley("", "", "", &doors(width, height));
        text.replace("\"475 mm\"", "\"675 mm\"").replace("\"495 mm\"", "\"695 mm\"")
    };
    check(vec![
        (
            "900 − 675 through the door",
            large("900", "1800"),
            "fridge.vehicle-door",
            GOOD,
            Some(225.0),
        ),
        (
            "smallest side 675 by 660: no motion",
            large("660", "1800"),
            "fridge.vehicle-door",
            STOP,
            Some(-15.0),
        ),
        // √(680² + 690²) − √(675² + 695²) = 968.762 − 968.839.
        (
            "the smallest face's diagonal",
            large("680", "690"),
            "fridge.vehicle-door",
            STOP,
            Some(-0.077),
        ),
        (
            "680 × 694: no way found, nothing proven",
            large("680", "694"),
            "fridge.vehicle-door",
            OPEN,
            None,
        ),
    ]);
}

/// The galley with a panel before it and a cut-out in it.
fn cut(panel: &str, more: &str) -> String {
    let part = r#"cutout = { width = "482 mm +2/-1", height = "787 mm +2/-1", radius = "8 mm" }
flange = { width = "516 mm", height = "820 mm" }
fixing = { screw = "4 mm", hole = "4.5 mm", unit = "mm", rows = [[-12, 390], [487, 780]] }"#;
    let panel = format!(
        "panel = \"front\"\n[panels.front]\ncloses = \"galley\"\nmaterial = \"birch plywood\"\n{panel}\n{more}"
    );
    galley(part, "", ", above = \"200 mm ± 1 mm\"", &panel)
}

const WIDE: &str = "size = { width = \"600 mm\", height = \"1140 mm\", depth = \"12 mm\" }";

#[test]
fn cut_outs_on_their_panels() {
    let post = |x: &str, belt: &str| {
        format!(
            r#"[frame.post]
material = "steel tube"
{belt}
place = {{ in = "galley", from_rear = "{x} mm ± 1 mm", from_left = "12 mm ± 1 mm", above = "0 mm ± 0 mm" }}
size = {{ length = "20 mm", width = "20 mm", height = "1140 mm" }}"#
        )
    };
    let line = |x: &str, z: &str| {
        format!(
            r#"[keep_out.pipe]
what = "gas pipe"
place = {{ in = "galley", from_rear = "{x} mm ± 1 mm", from_left = "20 mm ± 1 mm", above = "{z} mm ± 1 mm" }}
size = {{ length = "10 mm", width = "10 mm", height = "60 mm" }}"#
        )
    };
    let small =
        "size = { width = \"500 mm ± 1 mm\", height = \"1140 mm ± 1 mm\", depth = \"12 mm\" }";
    let tiny =
        "size = { width = \"470 mm ± 1 mm\", height = \"1140 mm ± 1 mm\", depth = \"12 mm\" }";
    let metal = WIDE.to_owned() + "\nplace = { above = \"0 mm ± 0 mm\" }";
    check(vec![
        // (600 − 482)/2.
        ("59 left and right", cut(WIDE, ""), "fridge.cut-strips", GOOD, Some(59.0)),
        ("(500 − 482)/2 = 9 against 25", cut(small, ""), "fridge.cut-strips", PRACTICE, Some(9.0)),
        ("(470 − 482)/2 = −6: off the panel", cut(tiny, ""), "fridge.cut-strips", STOP, Some(-6.0)),
        (
            "(520 − 500)/2 less: the flange stands out by 8",
            cut(small, ""),
            "fridge.flange-edge",
            PRACTICE,
            Some(-8.0),
        ),
        ("the flange covers by (820 − 787)/2", cut(WIDE, ""), "fridge.flange", GOOD, Some(16.5)),
        // The hole at −12 from the body is 12 − 3.5 from the cut.
        ("8.5 against four diameters", cut(&metal, ""), "fridge.cut-holes", PRACTICE, Some(8.5)),
        // The cut reaches from 19 to 501 of the bay.
        (
            "a post at −21 … −1 is 20 from the cut",
            cut(WIDE, &post("-21", "")),
            "fridge.cut-frame",
            GOOD,
            Some(20.0),
        ),
        (
            "a post at 0 … 20 lies 1 in the cut",
            cut(WIDE, &post("0", "")),
            "fridge.cut-frame",
            STOP,
            Some(-1.0),
        ),
        // The screw's hole at 10.5 of the bay is 9.5 inside the post, and half of 4.5 more.
        (
            "one that carries a belt, which no screw may go into either",
            cut(WIDE, &post("0", "belt = true")),
            "fridge.cut-belt",
            STOP,
            Some(-11.75),
        ),
        (
            "a pipe at 0 … 10, 9 from the cut",
            cut(WIDE, &line("0", "400")),
            "fridge.cut-keep-out",
            GOOD,
            Some(9.0),
        ),
        (
            "a pipe at 30 … 40, 21 in the cut",
            cut(WIDE, &line("30", "400")),
            "fridge.cut-keep-out",
            STOP,
            Some(-21.0),
        ),
        // The hole at 487 of the body, seen from the aisle its right side, is at 10.5 of the bay
        // and 980 above its floor; the pipe's middle is 0.5 from it, its near edge 4.5, and the
        // hole's half 2.25.
        (
            "a hole on the pipe",
            cut(WIDE, &line("5", "950")),
            "fridge.cut-keep-out",
            STOP,
            Some(-6.75),
        ),
    ]);
}

#[test]
fn a_belt_member_is_named_and_holes_in_metal_want_less() {
    let belted = cut(
        WIDE,
        "[frame.post]\nbelt = true\nplace = { in = \"galley\", from_rear = \"100 mm\", from_left = \"12 mm\", above = \"0 mm\" }\nsize = { length = \"20 mm\", width = \"20 mm\", height = \"1140 mm\" }",
    );
    let answer = spile_fit::answer(&build(&belted));
    let frame = finding(&answer, "fridge.cut-belt");
    assert!(frame.says.contains("never cut"), "{}", frame.says);
    let limit = frame.limit.as_ref().expect("a limit");
    assert_eq!((limit.kind, limit.value), ("law", 0.0));
    assert!(limit.source.starts_with("rule of law"), "{}", limit.source);
    // Two diameters in metal, 8, are less than the 8.5 there are; 7.5 at the papers' widest.
    let metal = cut(WIDE, "").replace("birch plywood", "aluminium sheet");
    let answer = spile_fit::answer(&build(&metal));
    assert_eq!(finding(&answer, "fridge.cut-holes").verdict, UNSURE);
}

/// The trade's case: a roof fan's opening of 400 × 400 across a rib is not cut.
#[test]
fn a_roof_fan_across_a_rib_is_stopped() {
    let fan = |rib: &str| {
        format!(
            r#"
[parts.fan]
kind = "roof fan"
size = {{ width = "390 mm", height = "390 mm", depth = "60 mm" }}
cutout = {{ width = "400 mm ± 2 mm", height = "400 mm ± 2 mm" }}
[bays.roof]
opens = "up"
size = {{ width = "1200 mm", height = "900 mm", depth = "100 mm" }}
[panels.skin]
closes = "roof"
material = "steel"
size = {{ width = "1200 mm", height = "900 mm", depth = "1 mm" }}
[items.fan]
place = {{ in = "roof" }}
panel = "skin"
[frame.rib]
material = "steel rib"
place = {{ in = "roof", from_rear = "{rib} mm", from_left = "0 mm", below = "1 mm" }}
size = {{ length = "40 mm", width = "1200 mm", height = "30 mm" }}
"#
        )
    };
    // The opening reaches from 250 to 650 along the roof.
    check(vec![
        ("a rib at 430 … 470", fan("430"), "fan.cut-frame", STOP, Some(-220.0)),
        ("a rib at 750 … 790", fan("750"), "fan.cut-frame", GOOD, Some(100.0)),
    ]);
    let answer = spile_fit::answer(&build(&fan("430")));
    assert_eq!(answer.verdict(), STOP);
}

#[test]
fn openings_out_of_square() {
    let square = |one: &str, other: &str| {
        galley("", &format!("diagonals = [\"{one} mm ± 0.5 mm\", \"{other} mm ± 0.5 mm\"]"), "", "")
    };
    check(vec![
        (
            "1 apart, 2 at worst, against 2",
            square("1252", "1253"),
            "galley.square",
            GOOD,
            Some(1.0),
        ),
        ("2 apart, 3 at worst", square("1252", "1254"), "galley.square", UNSURE, Some(2.0)),
        ("5 apart", square("1252", "1257"), "galley.square", PRACTICE, Some(5.0)),
        ("a panel is cut and none was taken", cut(WIDE, ""), "galley.square", PRACTICE, None),
    ]);
}

#[test]
fn what_cannot_be_said_is_open() {
    let nothing = "[vehicle]\nkind = \"van\"";
    let no_size = "[parts.fridge]\nkind = \"upright fridge\"\n[bays.galley]\nsize = { width = \"520 mm\", height = \"1140 mm\", depth = \"540 mm\" }\n[items.fridge]\nplace = { in = \"galley\" }";
    let no_place = "[parts.fridge]\nkind = \"upright fridge\"\nsize = { width = \"475 mm\", height = \"780 mm\", depth = \"495 mm\" }\n[items.fridge]";
    for (text, id) in [(nothing, "nothing"), (no_size, "fridge.size"), (no_place, "fridge.place")] {
        let answer = spile_fit::answer(&build(text));
        assert_eq!(answer.verdict(), OPEN, "{id}");
        assert!(!finding(&answer, id).asks.is_empty(), "{id} asks for nothing");
    }
}

/// What a mend says, done, clears the finding.
#[test]
fn a_mend_mends() {
    let shifted = |x: f64| galley("", "", &format!(", from_rear = \"{x} mm ± 1 mm\""), "");
    let answer = spile_fit::answer(&build(&shifted(38.0)));
    // 520 − 475 − 38 = 7 on its left, 5 at worst, against 10: 5 are missing, 10 … 27 to spare.
    let mend = finding(&answer, "fridge.beside").mend.clone().expect("a mend");
    assert_eq!(mend, "Shift it 5 mm towards the rear.");
    let answer = spile_fit::answer(&build(&shifted(33.0)));
    assert_eq!(finding(&answer, "fridge.beside").verdict, GOOD);
    let post = "[frame.post]\nplace = { in = \"galley\", from_rear = \"-6 mm ± 0 mm\", from_left = \"12 mm ± 0 mm\", above = \"0 mm ± 0 mm\" }\nsize = { length = \"30 mm ± 0 mm\", width = \"20 mm ± 0 mm\", height = \"1140 mm ± 0 mm\" }";
    let answer = spile_fit::answer(&build(&cut(WIDE, post)));
    // The post ends at 24, the cut begins at 19: 5 over, and 4 of practice.
    let mend = finding(&answer, "fridge.cut-frame").mend.clone().expect("a mend");
    assert!(mend.starts_with("Move it 9 mm to the left"), "{mend}");
}
