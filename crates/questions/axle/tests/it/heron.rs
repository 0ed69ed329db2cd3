//! The demo build, before and after its job.

use std::path::Path;

use spile_answer::Verdict;
use spile_build::Folder;

use crate::{finding, likely};

#[test]
fn heron_carries_its_fridge_with_little_to_spare() {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron");
    let folder = Folder::open(&demo).unwrap_or_else(|problems| panic!("{:?}", problems.list));
    let planned = folder.plan("galley-fridge", Some("upright")).expect("the job can be planned");
    let before = spile_axle::answer(&planned.before);
    let after = spile_axle::answer(&planned.after);
    for answer in [&before, &after] {
        assert_eq!(answer.verdict(), Verdict::Good, "{:#?}", answer.findings);
    }
    // 27.5 and 3.3 kg come, 13 kg go, whatever the state; food is the same.
    let more = likely(&after, "total") - likely(&before, "total");
    assert!((more - 17.8).abs() < 1e-6, "{more}");
    // The fridge stands nearer to the rear axle than the box did, with more food in it.
    assert!(likely(&after, "rear") > likely(&before, "rear"));
    for id in ["front", "rear", "total"] {
        let finding = finding(&after, id);
        let limit = finding.limit.as_ref().unwrap().value;
        assert!(finding.figure.unwrap().unfavourable < limit, "{id}");
    }
}

#[test]
fn the_two_boxes_are_lighter_than_the_fridge() {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron");
    let folder = Folder::open(&demo).unwrap_or_else(|problems| panic!("{:?}", problems.list));
    let total = |option| {
        let planned = folder.plan("galley-fridge", Some(option)).expect("the job can be planned");
        let answer = spile_axle::answer(&planned.after);
        assert_eq!(answer.verdict(), Verdict::Good, "{option}");
        likely(&answer, "total")
    };
    assert!(total("two-boxes") < total("upright"));
}
