//! What the drawing of a fixing shows against what the answer says, and against statics.

use spile_build::Folder;
use spile_hold::{Picture, pictures};
use spile_quantity::Force;

use crate::{ask, figure, near, thing};

fn drawn(text: &str) -> Picture {
    let folder = Folder::from_texts([("build.toml", text)]);
    let folder = folder.unwrap_or_else(|problems| panic!("{:?}", problems.list));
    pictures(folder.build()).pop().expect("a fixing")
}

const BOLTS: &str = r#"by = "bolt", size = "M6", class = "8.8", count = 4, washer = "18 mm", into = "steel tube", wall = "1.5 mm", spacing = { width = "420 mm", height = "220 mm" }"#;

#[test]
fn the_weakest_is_used_as_far_as_the_answer_says() {
    let screws = r#"by = "wood screw", size = "5 mm", count = 6, into = "plywood", wall = "15 mm", spacing = { width = "420 mm", height = "420 mm" }"#;
    for (held, face) in [(BOLTS, "below"), (BOLTS, "behind"), (screws, "behind"), (screws, "above")]
    {
        let text = thing("30 kg", "10 kg", &format!("{held}, face = \"{face}\""));
        let picture = drawn(&text);
        near(face, picture.used[0].percent, figure(&ask(&text), "thing.fixing"), 1e-9);
        assert!(picture.used.windows(2).all(|pair| pair[0].percent >= pair[1].percent));
        assert!(picture.hardest.is_some());
    }
}

#[test]
fn what_the_fasteners_take_along_the_face_is_the_push() {
    let text = thing("30 kg", "10 kg", &format!("{BOLTS}, face = \"behind\""));
    let picture = drawn(&text);
    for (axis, whole) in [picture.push.right, picture.push.above].into_iter().enumerate() {
        let sum: f64 = picture.along.iter().map(|force| force[axis].in_n()).sum();
        assert!((sum - whole.in_n()).abs() < 1e-6, "{sum} N of {whole:?}");
    }
    for (share, along) in picture.shares.iter().zip(&picture.along) {
        let whole = Force::n(along[0].in_n().hypot(along[1].in_n()));
        near("across", share.shear.in_n(), whole.in_n(), 1e-12);
    }
}

#[test]
fn straps_have_a_share_and_no_places() {
    let picture = drawn(&thing("30 kg", "0 kg", r#"by = "strap", count = 2, holds = "1500 N""#));
    assert_eq!((picture.places.len(), picture.shares.len(), picture.hardest), (0, 1, Some(0)));
}
