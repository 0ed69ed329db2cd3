//! The demo build.

use std::path::Path;

use spile_answer::Question;
use spile_build::Folder;

use crate::{finding, words};

#[test]
fn heron_is_answered_and_every_open_says_how() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron");
    let folder = Folder::open(&path).unwrap();
    let answer = spile_air::answer(folder.build());
    assert_eq!(answer.question, Question::Air);
    // The lidded box stands in a closed bay; 190 Ah of glass mat: 0.05·6·0.01·190·28 = 16.0 cm².
    assert_eq!(words(finding(&answer, "galley-front.warm")), "care unsure");
    assert_eq!(words(finding(&answer, "galley-front.again")), "care practice");
    let gas = finding(&answer, "bank.gas");
    assert!((gas.figure.unwrap().likely - 15.96).abs() < 1e-9);
    for found in answer.findings.iter().filter(|found| words(found) == "open") {
        assert!(!found.asks.is_empty(), "{}", found.id);
    }
}
