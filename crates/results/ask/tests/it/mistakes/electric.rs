//! Mistakes 18 to 24, 26 and 28: fuse, cable, return, the bank, and a heater.

use spile_answer::Question::{Bank, Wire};

use super::{Caught, but, caught, found, likely, near, one, report, words};

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

/// 26: unlike batteries on the same posts; like ones that are not one pair.
#[test]
fn mistake_26_unlike_batteries_in_parallel() {
    let beside = |kind: &str| {
        but(
            FRIDGE,
            "limit = \"100 A\"",
            &format!("limit = \"100 A\"\nbeside = {{ kind = \"{kind}\", capacity = \"95 Ah\" }}"),
        )
    };
    let expected = Caught {
        question: Bank,
        id: "parallel",
        verdict: "stop",
        says: &["the same posts", "Take the other battery off", "80 Ah"],
    };
    for lead in ["AGM", "gel", "flooded"] {
        let finding = caught(&beside(lead), FRIDGE, &expected);
        assert!(!finding.working.is_empty(), "{lead}");
    }
    let like = ["0.1 V", "a fuse to each", "plus from one and minus from the other", "60 of 100"];
    let expected = Caught { verdict: "care practice", says: &like, ..expected };
    caught(&beside("LiFePO4"), FRIDGE, &expected);
    // of 100 A each, two that share 60 to 40 give 100 / 0.6 = 167 A: 150 A is within, 180 A is not
    let pair = |watts: &str| {
        let two = but(FRIDGE, "limit = \"100 A\"", "limit = \"100 A\"\ncount = 2");
        but(&but(&two, "running = \"58 W\"", &format!("running = \"{watts}\"")), "6 mm2", "120 mm2")
    };
    let expected = Caught { question: Wire, id: "bank.limit", verdict: "care unsure", says: &[] };
    caught(&pair("2200 W"), &pair("1500 W"), &expected);
}

/// A heater that starts on a glow pin, and the cable to it.
const HEATER: &str = r#"
[bank]
kind = "AGM"
capacity = "100 Ah"
fuse = { rating = "60 A", family = "class T", from_post = "120 mm" }
[block]
feed = { section = "16 mm2", length = "1 m" }
return = { section = "16 mm2", length = "1 m" }
[block.ways.1]
fuse = "15 A"
run = "heater"
[parts.heater]
kind = "heater"
power = { running = "24 W", start = "10 A", cut_out = "10.5 V" }
[items.heater]
about = "diesel heater"
[runs.heater]
section = "6 mm2"
length = "3.6 m"
"#;

/// 28: a glow start on thin cable; never on a switch that cuts the run-on.
#[test]
fn mistake_28_a_glow_start_on_thin_cable_and_on_a_switch() {
    // 2 × 3.6 m of 1 mm² at 0.0175 Ω·mm²/m lose 1.26 V of 10 A before any joint: of 11.9 V at rest
    // some 10.5 V are left at the very best
    let thin = but(HEATER, "section = \"6 mm2\"", "section = \"1 mm2\"");
    let start =
        Caught { question: Wire, id: "heater.start", verdict: "stop", says: &["10.50 V", "mm²"] };
    let finding = caught(&thin, HEATER, &start);
    let arrives_v = likely(&finding);
    assert!((9.5..10.5).contains(&arrives_v), "{arrives_v} V");
    let switched =
        but(HEATER, "length = \"3.6 m\"", "length = \"3.6 m\"\nswitch = \"at the door\"");
    let says = ["at the door", "runs on", "its own control"];
    let switch = Caught { id: "heater.switch", verdict: "care practice", says: &says, ..start };
    caught(&switched, HEATER, &switch);
    let unsaid = report(HEATER);
    let wire = unsaid.answers.iter().find(|asked| asked.question == Wire).unwrap();
    let assumed = &wire.now().assumed;
    assert!(assumed.iter().any(|what| what.contains("no switch")), "{assumed:?}");
    // a switch in the feed of a lamp is nothing to tell of
    let lamp = but(&switched, "kind = \"heater\"", "kind = \"light\"");
    assert!(found(&report(&lamp), Wire, "heater.switch").is_none());
}
