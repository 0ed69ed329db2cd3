//! Edges by the trade's diameters, air over the arch, strips beside a cut-out.

use crate::{ask, figure, find, near, thing};

#[test]
fn holes_keep_two_diameters_in_metal_and_four_in_plywood() {
    // trade, mistake 7
    let verdict = |into: &str, edge: &str| {
        let held = format!(
            "by = \"bolt\", size = \"M5\", class = \"8.8\", count = 4, into = \"{into}\", \
             wall = \"3 mm\", edge = \"{edge}\", face = \"below\""
        );
        let answer = ask(&thing("6 kg", "0.1 kg", &held));
        let edge = find(&answer, "thing.edge");
        (edge.verdict.word(), edge.mend.is_some())
    };
    assert_eq!(verdict("steel tube", "11 mm ± 1 mm"), ("good", false));
    assert_eq!(verdict("steel tube", "9 mm ± 0 mm"), ("care", true));
    assert_eq!(verdict("plywood", "21 mm ± 1 mm"), ("good", false));
    assert_eq!(verdict("plywood", "19 mm ± 0 mm"), ("care", true));
}

const GALLEY: &str = "[bays.galley]\nopens = \"left\"\n\
    size = { width = \"600 mm\", height = \"1000 mm\", depth = \"566 mm\" }\n\
    place = { from_rear = \"1050 mm\", from_right = \"0 mm\", above = \"0 mm\" }\n";

fn over_arch(above: &str) -> String {
    format!(
        "{GALLEY}[obstacles.arch]\nkind = \"wheel arch\"\n\
         place = {{ in = \"galley\", from_right = \"0 mm\" }}\n\
         size = {{ length = \"520 mm\", width = \"310 mm\", height = \"290 mm\" }}\n\
         [parts.thing]\nkind = \"other\"\nmass = \"30 kg\"\n\
         size = {{ width = \"475 mm\", height = \"600 mm\", depth = \"495 mm\" }}\n\
         [items.thing]\nplace = {{ in = \"galley\", above = \"{above}\" }}\n"
    )
}

#[test]
fn weight_keeps_10_mm_off_a_bare_arch() {
    // trade, mistake 11
    let good = ask(&over_arch("303 mm ± 1 mm"));
    near("303 − 290", figure(&good, "thing.arch"), 13.0, 1e-9);
    assert_eq!(find(&good, "thing.arch").verdict.word(), "good");
    let bare = ask(&over_arch("291 mm ± 1 mm"));
    assert_eq!(find(&bare, "thing.arch").verdict.reason().unwrap().word(), "practice");
    assert!(find(&bare, "thing.arch").mend.as_ref().unwrap().contains("10 mm higher"));
    let beside = ask(&over_arch("0 mm ± 1 mm"));
    assert!(beside.findings.iter().all(|finding| finding.id != "thing.arch"));
}

#[test]
fn strips_beside_a_cut_out_are_beams() {
    let text = format!(
        "{GALLEY}[panels.front]\ncloses = \"galley\"\n\
         size = {{ width = \"560 mm ± 0 mm\", height = \"900 mm ± 0 mm\", depth = \"12 mm\" }}\n\
         [parts.thing]\nkind = \"other\"\nmass = \"20 kg\"\n\
         size = {{ width = \"440 mm\", height = \"500 mm\", depth = \"300 mm\" }}\n\
         cutout = {{ width = \"460 mm\", height = \"520 mm\" }}\n\
         [items.thing]\npanel = \"front\"\nplace = {{ in = \"galley\" }}\n\
         held = {{ by = \"wood screw\", size = \"4 mm\", count = 6, into = \"plywood\", \
         wall = \"12 mm\", face = \"behind\" }}\n"
    );
    let answer = ask(&text);
    // 196.1 N, half on each strip of 50 × 12 mm over 900 mm: σ = 98.07·900/(8·1200) = 9.19 MPa of 12
    near("by hand", figure(&answer, "thing.panel"), 76.6, 0.002);
    let panel = find(&answer, "thing.panel");
    assert_eq!(panel.verdict.reason().unwrap().word(), "unsure");
    assert!(panel.mend.as_ref().unwrap().contains("15 mm"), "{:?}", panel.mend);
}

#[test]
fn bolts_through_plywood_want_large_washers_said_or_not() {
    // trade, mistake 13: large washers, 25 mm; without a word they are the ordinary 2 diameters
    let held = "by = \"bolt\", size = \"M6\", count = 4, into = \"plywood\", wall = \"15 mm\"";
    let with = |washer: &str| ask(&thing("20 kg", "0 kg", &format!("{held}{washer}")));
    let unsaid = with("");
    near("2 × 6 mm", figure(&unsaid, "thing.washer"), 12.0, 1e-9);
    assert_eq!(find(&unsaid, "thing.washer").verdict.reason().unwrap().word(), "practice");
    assert!(find(&unsaid, "thing.washer").mend.as_ref().unwrap().contains("25 mm"));
    let large = with(", washer = \"25 mm\"");
    assert_eq!(find(&large, "thing.washer").verdict.word(), "good");
}
