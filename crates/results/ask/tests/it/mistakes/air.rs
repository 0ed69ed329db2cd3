//! Mistakes 15 to 17 and 27: fans, exhaust drawn in again, openings, an inverter in the fridge's air.

use spile_answer::Question::Air;

use super::{Caught, but, caught, likely, near};

/// A fridge in a locker with an opening low and one high.
pub const LOCKER: &str = r#"
states.corner.hot-day.cabin = "28 °C"
[bays.locker]
size = { width = "600 mm", height = "900 mm", depth = "600 mm" }
[bays.locker.air]
inlet = { area = "180 cm2", above = "60 mm", cover = "nothing", leads_to = "cabin" }
outlet = { area = "200 cm2", above = "820 mm", cover = "nothing", leads_to = "cabin" }
apart = "900 mm"
fan = { flow = "60 m³/h", pressure = "20 Pa", at = "outlet", blows = "out" }
[parts.fridge]
kind = "upright fridge"
size = { width = "475 mm", height = "780 mm", depth = "495 mm" }
volume = "92 L"
power = { running = "58 W" }
air = { inlet = "160 cm2", outlet = "160 cm2" }
warmest = "43 °C"
consumption = [{ ambient = "25 °C", inside = "5 °C", per_day = "430 Wh" }]
[items.fridge]
place = { in = "locker" }
"#;

/// Its fan.
const FAN: &str =
    "fan = { flow = \"60 m³/h\", pressure = \"20 Pa\", at = \"outlet\", blows = \"out\" }";

/// A line of its papers.
const ASKED: &str = "air = { inlet = \"160 cm2\", outlet = \"160 cm2\" }";

/// 15: brushless fans do not reverse; turn the body round.
#[test]
fn mistake_15_fan_reversed() {
    let reversed = but(LOCKER, "blows = \"out\"", "blows = \"in\"");
    let expected = Caught {
        question: Air,
        id: "locker.fan",
        verdict: "care practice",
        says: &["Turn the fan's body round", "does not reverse a brushless fan"],
    };
    caught(&reversed, LOCKER, &expected);
}

/// 16: the inlet no more than 5 K above the cabin.
#[test]
fn mistake_16_exhaust_drawn_in_again() {
    let tight = LOCKER
        .replace("area = \"180 cm2\"", "area = \"40 cm2\"")
        .replace("area = \"200 cm2\"", "area = \"40 cm2\"");
    let still = but(&tight, FAN, "");
    let beside = but(&still, "apart = \"900 mm\"", "apart = \"60 mm\"");
    let expected =
        Caught { question: Air, id: "locker.again", verdict: "care unsure", says: &["5 K"] };
    let finding = caught(&beside, LOCKER, &expected);
    near("the limit", finding.limit.unwrap().value, 5.0, 0.0);
    // A bay without openings breathes its own air.
    let air: Vec<&str> = LOCKER
        .lines()
        .filter(|line| {
            !["inlet = {", "outlet = {", "apart", "fan", "[bays.locker.air]"]
                .iter()
                .any(|key| line.starts_with(key))
        })
        .collect();
    let closed = but(&air.join("\n"), ASKED, "");
    caught(&closed, LOCKER, &Caught { verdict: "care practice", ..expected });
}

/// 17: exhaust into a closed void; the outlet's free area at least the inlet's, 150 to 200 cm² each.
#[test]
fn mistake_17_exhaust_into_a_closed_void() {
    let void = but(
        LOCKER,
        "above = \"820 mm\", cover = \"nothing\", leads_to = \"cabin\"",
        "above = \"820 mm\", cover = \"nothing\", leads_to = \"closed void\"",
    );
    let expected = Caught {
        question: Air,
        id: "locker.outlet-void",
        verdict: "care practice",
        says: &["closed void", "Open the void"],
    };
    caught(&void, LOCKER, &expected);
    let small = but(LOCKER, "area = \"200 cm2\"", "area = \"165 cm2\"");
    let expected = Caught {
        id: "locker.outlet",
        says: &["at least the inlet's", "15 cm² larger"],
        ..expected
    };
    let finding = caught(&small, LOCKER, &expected);
    near("165 − 180", likely(&finding), -15.0, 1e-6);
    let silent = but(LOCKER, ASKED, "");
    let few = but(&silent, "area = \"180 cm2\"", "area = \"90 cm2\"");
    let expected = Caught { id: "fridge.inlet", says: &["150 to 200 cm² are usual"], ..expected };
    caught(&few, &silent, &expected);
}

/// 27: 2273 W in at 88 % are 273 W of heat at 2 kW, and 15 W idle around the clock.
#[test]
fn mistake_27_inverter_and_fridge_in_one_void() {
    let inverter = |place: &str| {
        format!(
            "{LOCKER}[parts.inverter]\nkind = \"inverter\"\npower = {{ running = \"2273 W\" }}\nheat = {{ efficiency = \"88 %\", idle = \"15 W\" }}\n[items.inverter]\n{place}"
        )
    };
    let expected = Caught {
        question: Air,
        id: "locker.together",
        verdict: "care practice",
        says: &["288 W", "15 W at idle"],
    };
    let together = but(&inverter("place = { in = \"locker\" }"), FAN, "");
    caught(&together, &but(&inverter(""), FAN, ""), &expected);
}
