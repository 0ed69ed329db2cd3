//! Mistakes 11 to 14 and 25: what holds, and what the axles carry.

use spile_answer::Question::{Axle, Hold};

use super::{Caught, but, caught, likely, near};

/// A locker on four bolts.
pub const LOCKER: &str = r#"
[parts.locker]
kind = "furniture"
mass = "12 kg"
size = { width = "500 mm", height = "400 mm", depth = "400 mm" }
[bays.rear]
size = { width = "900 mm", height = "1200 mm", depth = "500 mm" }
[obstacles.arch]
kind = "wheel arch"
place = { in = "rear", from_rear = "0 mm", from_right = "0 mm" }
size = { length = "900 mm", width = "250 mm", height = "290 mm" }
[items.locker]
place = { in = "rear", above = "303 mm ± 1 mm" }
held = { by = "bolt", size = "M6", class = "8.8", count = 4, into = "steel tube", wall = "3 mm", washer = "25 mm", spacing = { width = "420 mm", height = "320 mm" }, face = "behind" }
"#;

/// 11: carry it on the frame, 10 to 15 mm of air.
#[test]
fn mistake_11_weight_on_bare_arch_sheet() {
    let on_it = but(LOCKER, "303 mm", "291 mm");
    let expected = Caught {
        question: Hold,
        id: "locker.arch",
        verdict: "care practice",
        says: &["carries nothing", "on a frame"],
    };
    let finding = caught(&on_it, LOCKER, &expected);
    near("291 − 290", likely(&finding), 1.0, 1e-6);
}

/// 12: self-tapping screws in 1.5 mm tube engage fewer than two threads; rivet nut or through-bolt.
#[test]
fn mistake_12_tapping_screws_in_thin_tube() {
    let tapped = but(
        LOCKER,
        "by = \"bolt\", size = \"M6\", class = \"8.8\"",
        "by = \"tapping screw\", size = \"4.8 mm\"",
    );
    let thin = but(&tapped, "wall = \"3 mm\"", "wall = \"1.5 mm\"");
    let expected = Caught {
        question: Hold,
        id: "locker.turns",
        verdict: "care practice",
        says: &["rivet nut", "right through"],
    };
    let finding = caught(&thin, &but(&tapped, "wall = \"3 mm\"", "wall = \"4 mm\""), &expected);
    // 1.5 mm of a pitch of 1.6 mm
    near("turns", likely(&finding), 0.94, 0.01);
    caught(&thin, LOCKER, &expected);
}

/// 13: large washers, 25 mm, and modest torque.
#[test]
fn mistake_13_crushed_panel() {
    let wood = but(
        LOCKER,
        "into = \"steel tube\", wall = \"3 mm\"",
        "into = \"plywood\", wall = \"15 mm\"",
    );
    let small = but(&wood, "washer = \"25 mm\"", "washer = \"12 mm\"");
    let expected = Caught {
        question: Hold,
        id: "locker.washer",
        verdict: "care practice",
        says: &["25 mm", "modest torque"],
    };
    caught(&small, &wood, &expected);
    caught(&but(&wood, "washer = \"25 mm\", ", ""), &wood, &expected);
}

/// 14: spring balance at least twice the worst drawer force; small magnets hold 30 to 50 N each.
#[test]
fn mistake_14_latch_by_feel() {
    let drawer = |latch: &str| {
        format!(
            "[parts.drawer]\nkind = \"drawer fridge\"\nmass = \"25 kg\"\nsize = {{ width = \"440 mm\", height = \"450 mm\", depth = \"560 mm\" }}\ndrawer = {{ travel = \"400 mm\" }}\n[items.drawer]\ncontents = \"10 kg\"\nheld = {{ by = \"bolt\", size = \"M6\", class = \"8.8\", count = 4, washer = \"18 mm\", into = \"steel tube\", wall = \"1.5 mm\", face = \"below\", spacing = {{ width = \"400 mm\", height = \"500 mm\" }}{latch} }}\n"
        )
    };
    let magnets = drawer(", latch = { by = \"magnet latch\", count = 2 }");
    let latched = drawer(", latch = { by = \"positive latch\", count = 2, holds = \"500 N\" }");
    let expected = Caught {
        question: Hold,
        id: "drawer.latch",
        verdict: "care unsure",
        // 35 kg at 1 g is 343 N
        says: &["343 N", "spring balance"],
    };
    let finding = caught(&magnets, &latched, &expected);
    near("686 N over two of 40 N", likely(&finding), 100.0 * 686.0 / 80.0, 2.0);
    let weighed = but(&magnets, "count = 2 }", "count = 2, holds = \"50 N\" }");
    caught(&weighed, &latched, &Caught { verdict: "stop", ..expected });
    caught(
        &drawer(""),
        &latched,
        &Caught { verdict: "open", says: &["spring balance"], ..expected },
    );
}

/// 25: the total is legal and an axle is not; with full water, people and food.
#[test]
fn mistake_25_total_legal_axle_not() {
    let van = |rear: &str| {
        format!(
            r#"
[vehicle]
wheelbase = "3600 mm"
rear_axle = "1200 mm"
track = "1700 mm"
inside = {{ length = "3.4 m", width = "1.8 m" }}
limits = {{ front = "1850 kg", rear = "1900 kg", total = "3500 kg" }}
[states.load.full]
water = "100 L"
people = "150 kg"
food = "30 kg"
[weighings.full]
state = "full"
front = "1350 kg"
rear = "{rear}"
"#
        )
    };
    let expected =
        Caught { question: Axle, id: "rear", verdict: "stop", says: &["1950 kg", "1900 kg"] };
    let (over, within) = (van("1950 kg"), van("1700 kg"));
    caught(&over, &within, &expected);
    let report = super::report(&over);
    let total = super::one(&report, Axle, "total");
    assert_eq!(super::words(total), "good", "{}", total.says);
}
