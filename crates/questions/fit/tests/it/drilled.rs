//! Holes that things are held by: what lies on the other side. By hand, from the measures written.

use spile_answer::{Reason, Verdict};

use crate::{build, finding, near};

/// A chest of 400 × 300 × 300 mm on the floor of a bay that opens to the left, its rear side 100
/// and its right side 50 mm from the bay's; a brake line under the floor, and a crossmember.
fn chest(held: &str, line: &str, belt: bool) -> String {
    format!(
        r#"
[parts.chest]
kind = "furniture"
size = {{ width = "400 mm ± 0 mm", height = "300 mm ± 0 mm", depth = "300 mm ± 0 mm" }}
[bays.side]
size = {{ width = "800 mm", height = "900 mm", depth = "500 mm" }}
[items.chest]
place = {{ in = "side", from_rear = "100 mm ± 0 mm", from_right = "50 mm ± 0 mm", above = "0 mm" }}
held = {{ by = "bolt", {held} }}
[keep_out.brake]
what = "brake line"
place = {{ in = "side", {line} }}
size = {{ length = "800 mm", width = "10 mm ± 0 mm", height = "10 mm" }}
[frame.cross]
belt = {belt}
place = {{ in = "side", from_rear = "120 mm ± 0 mm", from_right = "0 mm", above = "-45 mm" }}
size = {{ length = "40 mm ± 0 mm", width = "500 mm", height = "40 mm" }}
"#
    )
}

/// Four bolts of M6, 320 mm along the vehicle and 200 mm across it.
const FOUR: &str = "size = \"M6\", count = 4, into = \"plywood\", face = \"below\", spacing = { width = \"320 mm ± 0 mm\", height = \"200 mm ± 0 mm\" }";

/// Beneath the floor, its right side so far from the bay's.
fn line(from_right: f64, above: f64) -> String {
    format!("from_rear = \"0 mm\", from_right = \"{from_right} mm ± 0 mm\", above = \"{above} mm\"")
}

#[test]
fn a_hole_above_a_brake_line_is_stopped() {
    // Across, the chest's middle is 50 + 150 = 200 from the right, the holes at 100 and 300.
    let answer =
        |at: f64, above: f64| spile_fit::answer(&build(&chest(FOUR, &line(at, above), false)));
    // From 95 to 105: the middle of the hole is 5 inside, and 3 more of its half.
    let on = answer(95.0, -40.0);
    let drilled = finding(&on, "chest.drilled");
    assert_eq!(drilled.verdict, Verdict::Stop);
    near("on the line", drilled.figure.unwrap().likely, -8.0, 1e-6);
    assert!(drilled.says.contains("brake line") && drilled.says.contains("nobody may drill"));
    // 8 over and 5 of slack.
    assert!(drilled.mend.as_deref().unwrap().starts_with("Bore it 13 mm"), "{:?}", drilled.mend);
    // From 120 to 130: 20 less 3 from the hole at 100.
    let beside = answer(120.0, -40.0);
    assert_eq!(finding(&beside, "chest.drilled").verdict, Verdict::Good);
    near("beside", finding(&beside, "chest.drilled").figure.unwrap().likely, 17.0, 1e-6);
    // 100 mm below the floor a drill that reaches 50 does not come.
    let deep = answer(95.0, -110.0);
    assert!(deep.findings.iter().all(|finding| finding.id != "chest.drilled"));
}

#[test]
fn holes_in_rows_lie_where_they_are_written() {
    // Seen from above by who faces it from the left: right is the rear, so 40 right of the lower
    // left corner is 500 − 40 = 460 from the rear; 150 above it is 350 − 150 = 200 from the right.
    let rows =
        "size = \"M6\", into = \"plywood\", face = \"below\", unit = \"mm\", rows = [[40, 150]]";
    let answer = spile_fit::answer(&build(&chest(rows, &line(210.0, -40.0), false)));
    near("7 off", finding(&answer, "chest.drilled").figure.unwrap().likely, 7.0, 1e-6);
    // Above it is the far side: 100 is 250 from the right, 40 from 200 … 210 and not 60.
    let rows = rows.replace("150", "100");
    let answer = spile_fit::answer(&build(&chest(&rows, &line(200.0, -40.0), false)));
    near("37 off", finding(&answer, "chest.drilled").figure.unwrap().likely, 37.0, 1e-6);
}

#[test]
fn a_member_that_carries_a_belt_is_never_drilled() {
    // The crossmember lies from 120 to 160; the holes are at 300 ± 160, so 140: in its middle.
    let belted = spile_fit::answer(&build(&chest(FOUR, &line(400.0, -40.0), true)));
    let found = finding(&belted, "chest.drilled-belt");
    assert_eq!(found.verdict, Verdict::Stop);
    near("in its middle", found.figure.unwrap().likely, -23.0, 1e-6);
    assert!(found.says.contains("never drilled"), "{}", found.says);
    let other = spile_fit::answer(&build(&chest(FOUR, &line(400.0, -40.0), false)));
    assert!(other.findings.iter().all(|finding| finding.id != "chest.drilled-belt"));
}

#[test]
fn a_floor_is_looked_at_from_underneath_first() {
    let of = |held: &str| spile_fit::answer(&build(&chest(held, &line(400.0, -40.0), false)));
    let unseen = of(FOUR);
    let look = finding(&unseen, "chest.look-first");
    assert_eq!(look.verdict, Verdict::Care(Reason::Practice));
    assert!(look.says.contains("Look underneath first"), "{}", look.says);
    assert!(look.asks[0].how.contains("looked = true"));
    for held in [format!("{FOUR}, looked = true"), FOUR.replace("plywood", "steel tube")] {
        let answer = of(&held);
        assert!(answer.findings.iter().all(|finding| finding.id != "chest.look-first"), "{held}");
    }
    // The body's sheet at the side is looked at from behind.
    let sheet = FOUR.replace("plywood", "body sheet").replace("below", "behind");
    let answer = of(&sheet);
    assert!(finding(&answer, "chest.look-first").says.contains("behind it first"));
}

#[test]
fn holes_that_nobody_told_of_are_open_where_something_lies_behind() {
    let unsaid = "size = \"M6\", count = 4, into = \"plywood\", face = \"below\"";
    let answer = spile_fit::answer(&build(&chest(unsaid, &line(95.0, -40.0), false)));
    let found = finding(&answer, "chest.drilled");
    assert_eq!(found.verdict, Verdict::Open);
    assert!(found.asks[0].how.contains("spacing"));
    let deep = spile_fit::answer(&build(&chest(unsaid, &line(95.0, -110.0), false)));
    assert!(deep.findings.iter().all(|finding| finding.id != "chest.drilled"));
}
