//! Mistakes 18 to 24: fuse, cable, return, and the bank.

use spile_answer::Question::Wire;

use super::{Caught, but, caught, likely, near, one, report, words};

/// A fridge on a cable of its own, behind a class T fuse at a lithium bank.
pub const FRIDGE: &str = r#"
[bank]
kind = "LiFePO4"
capacity = "100 Ah"
limit = "100 A"
resistance = "3 mΩ"
fuse = { rating = "100 A", family = "class T", from_post = "120 mm" }
[block]
feed = { section = "25 mm2", length = "0.5 m", ambient = "25 °C" }
return = { section = "25 mm2", length = "0.5 m", ambient = "25 °C" }
ambient = "25 °C"
[block.ways.1]
fuse = "10 A"
run = "fridge"
[parts.fridge]
kind = "upright fridge"
power = { running = "58 W", start = "8.5 A", cut_out = "10.4 V", fuse = "15 A" }
[items.fridge]
[runs.fridge]
section = "6 mm2"
length = "5 m"
ambient = "25 °C"
joints = "4 mΩ"
"#;

/// 18: load / 0.8 ≤ fuse ≤ derated cable; the maker's fuse wins where the cable carries it.
#[test]
fn mistake_18_fuse_chosen_for_the_appliance() {
    let thin = but(FRIDGE, "section = \"6 mm2\"", "section = \"1 mm2\"");
    let thin = but(&thin, "fuse = \"10 A\"", "fuse = \"30 A\"");
    let expected =
        Caught { question: Wire, id: "fridge.fuse-cable", verdict: "stop", says: &["30 A"] };
    caught(&thin, FRIDGE, &expected);
    // 58 W of 12 V over 0.8 are 6.0 A
    let small = but(FRIDGE, "fuse = \"10 A\"", "fuse = \"5 A\"");
    let expected =
        Caught { id: "fridge.fuse-load", verdict: "care practice", says: &["5 A"], ..expected };
    caught(&small, FRIDGE, &expected);
    let maker = but(FRIDGE, "fuse = \"15 A\"", "fuse = \"7.5 A\"");
    let expected =
        Caught { id: "fridge.fuse-papers", verdict: "stop", says: &["7.5 A"], ..expected };
    caught(&maker, FRIDGE, &expected);
}

/// 19: feed and return both count; it says which one holds the drop.
#[test]
fn mistake_19_thick_feed_thin_return() {
    let thin = but(
        FRIDGE,
        "joints = \"4 mΩ\"",
        "joints = \"4 mΩ\"\nreturn = { section = \"0.75 mm2\", length = \"5 m\", ambient = \"25 °C\" }",
    );
    let expected =
        Caught { question: Wire, id: "fridge.drop", verdict: "care practice", says: &["return"] };
    caught(&thin, FRIDGE, &expected);
}

/// 20: "6 mm" cable may be 4 mm²; ask for mm² or AWG.
#[test]
fn mistake_20_cable_sold_by_outside_diameter() {
    let outside = but(FRIDGE, "section = \"6 mm2\"", "section = \"6 mm outside\"");
    let expected = Caught {
        question: Wire,
        id: "fridge.sold-by",
        verdict: "care unsure",
        says: &["6.0 mm across", "4.0 to 10.0 mm²", "mm² or AWG"],
    };
    caught(&outside, FRIDGE, &expected);
}

/// 21: the main fuse within 180 mm of the post, or the cable sheathed.
#[test]
fn mistake_21_unfused_cable_past_the_battery() {
    let far = but(FRIDGE, "from_post = \"120 mm\"", "from_post = \"450 mm\"");
    let expected = Caught {
        question: Wire,
        id: "bank.fuse",
        verdict: "care practice",
        says: &["450 mm", "180 mm", "sheath"],
    };
    let finding = caught(&far, FRIDGE, &expected);
    near("the rule", finding.limit.unwrap().value, 180.0, 0.0);
}

/// 22: breaking capacity of 10 to 20 kA at a lithium bank.
#[test]
fn mistake_22_small_fuse_on_lithium() {
    let small = but(FRIDGE, "family = \"class T\"", "family = \"strip\", breaks = \"2000 A\"");
    let expected = Caught {
        question: Wire,
        id: "bank.breaking",
        verdict: "stop",
        says: &["10 to 20 kA", "class T"],
    };
    let finding = caught(&small, FRIDGE, &expected);
    // some 13.4 V over 3 mΩ
    near("bolted fault", likely(&finding) / 1000.0, 4.5, 0.2);
}

/// 23: a bond of the body that bypasses the battery monitor's shunt.
#[test]
fn mistake_23_a_bond_past_the_shunt() {
    let body = but(
        FRIDGE,
        "joints = \"4 mΩ\"",
        "joints = \"4 mΩ\"\nreturn = { by = \"body\", section = \"6 mm2\", length = \"0.5 m\" }",
    );
    let counted = but(&body, "limit = \"100 A\"", "limit = \"100 A\"\nshunt = true");
    let tied = |to: &str| format!("{counted}[body]\ntied_to = \"{to}\"\n");
    let expected = Caught {
        question: Wire,
        id: "body.shunt",
        verdict: "care practice",
        says: &["past the shunt", "negative bus"],
    };
    let finding = caught(&tied("post"), &tied("bus"), &expected);
    near("58 W of 12 V", likely(&finding), 4.83, 0.01);
    caught(
        &counted,
        &body,
        &Caught { verdict: "care unsure", says: &["clamp the meter"], ..expected },
    );
}

/// 24: cut-out and running drop against the battery under load.
#[test]
fn mistake_24_cut_out_on_high_with_a_long_cable() {
    let high = but(FRIDGE, "cut_out = \"10.4 V\"", "cut_out = \"12.3 V\"");
    let high = but(&high, "section = \"6 mm2\"", "section = \"1.5 mm2\"");
    let high = but(&high, "length = \"5 m\"", "length = \"7.2 m\"");
    let expected =
        Caught {
            question: Wire, id: "fridge.running", verdict: "stop", says: &["12.30 V", "mm²"]
        };
    caught(&high, FRIDGE, &expected);
    let low = but(&high, "12.3 V", "10.4 V");
    assert_eq!(words(one(&report(&low), Wire, "fridge.running")), "good");
}
