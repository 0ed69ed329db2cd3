//! Where things are drawn, against the folder's own numbers and against the answer.

use std::path::Path;

use spile_build::{Build, Folder};
use spile_fit::{Sort, answer, picture, placed};

use crate::{likely, near};

fn heron() -> Build {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron");
    Folder::open(&path).unwrap().plan("galley-fridge", Some("upright")).unwrap().after
}

/// The bay is 1,050 mm from the rear at the right wall, 566 deep; the fridge stands 22.5 mm further
/// forward, its face at the opening, on a platform whose top is 335 mm up.
#[test]
fn things_are_where_their_files_say() {
    let all = placed(&heron());
    let find = |name: &str, sort| {
        let found = all.iter().find(|one| one.name == name && one.sort == sort);
        found.unwrap_or_else(|| panic!("no {name}")).block
    };
    let fridge = find("upright", Sort::Item);
    let expected = [[1072.5, 1547.5], [566.0 - 495.0, 566.0], [335.0, 335.0 + 780.0]];
    for (axis, [low, high]) in expected.into_iter().enumerate() {
        near("low", fridge.low[axis].in_mm(), low, 1e-6);
        near("high", fridge.high[axis].in_mm(), high, 1e-6);
    }
    let bay = find("galley-rear", Sort::Bay);
    near("bay", (bay.high[0] - bay.low[0]).in_mm(), 520.0, 1e-6);
    assert!(all.iter().all(|one| one.name != "lights"), "its place is not said");
}

#[test]
fn each_distance_is_that_of_its_finding_and_as_long_as_its_ends_are_apart() {
    let build = heron();
    let (answer, picture) = (answer(&build), picture(&build, "upright").unwrap());
    for (way, id) in [("behind", "upright.behind"), ("above", "upright.above")] {
        let distance = picture.distances.iter().find(|one| one.way == way).unwrap();
        near(way, distance.length.in_mm(), likely(&answer, id), 1e-6);
    }
    for distance in &picture.distances {
        let apart: f64 = (0..3).map(|i| (distance.to[i] - distance.from[i]).in_mm().abs()).sum();
        near(distance.way, apart, distance.length.in_mm().abs(), 1e-6);
    }
    // The arch is highest in its middle: nine points of a tick stick, 290 mm at 290.
    let below = picture.distances.iter().find(|one| one.way == "below").unwrap();
    near("over the arch", below.to[0].in_mm(), 290.0, 1e-6);
    near("over the arch", below.to[2].in_mm(), 290.0, 2.0);
    assert_eq!(picture.spaces.iter().filter(|(words, _)| words.starts_with("air")).count(), 3);
}
