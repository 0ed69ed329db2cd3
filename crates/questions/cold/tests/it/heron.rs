//! The demo build before and after its job.

use std::path::Path;

use spile_answer::Answer;
use spile_build::Folder;

use crate::{finding, likely, words};

fn before_and_after(option: &str) -> [Answer; 2] {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron");
    let folder = Folder::open(&folder).unwrap();
    let planned = folder.plan("galley-fridge", Some(option)).unwrap();
    [&planned.before, &planned.after].map(spile_cold::answer)
}

#[test]
fn the_upright_keeps_what_the_box_does_not() {
    let [before, after] = before_and_after("upright");
    // By hand: 32 and 92 L × 75 % / (2 × 5.4 L a day).
    assert!((likely(&before, "days") - 2.22).abs() < 0.005);
    assert!((likely(&after, "days") - 6.39).abs() < 0.005);
    assert_eq!(words(finding(&before, "days")), "care wish");
    assert_ne!(words(finding(&after, "days")), "care wish");
    assert!(after.findings.iter().any(|finding| finding.id == "upright.duty"));
    assert!(before.findings.iter().any(|finding| finding.id == "lidded-box.duty"));
}

#[test]
fn two_boxes_keep_less_than_is_wanted() {
    let [_, after] = before_and_after("two-boxes");
    // By hand: 53 L × 75 % / 10.8 L a day.
    assert!((likely(&after, "days") - 3.68).abs() < 0.005);
    assert_eq!(words(finding(&after, "days")), "care wish");
}

#[test]
fn a_hot_day_takes_what_such_fridges_take() {
    // Common practice, no source: 35 to 70 Ah at 12 V for a fridge of some 90 L, less for a box.
    let [before, after] = before_and_after("upright");
    let [small, large] = [&before, &after].map(|answer| likely(answer, "use"));
    assert!((35.0..=70.0).contains(&large), "{large}");
    assert!(small < large && small > 15.0, "{small}");
}
