//! What would hold: fasteners that were tried in the place of those that do not.

use spile_answer::{Basis, Given};
use spile_build::Held;
use spile_build::file::{HeldBy, HeldInto};
use spile_quantity::{Length, Ranged};

use crate::fixing::{Test, swung};
use crate::scene::{Scene, fasteners as in_words};

/// A fixing clears it where its unfavourable end stays below this share [%].
const CLEAR: f64 = 98.0;

/// The least change of the fixing that clears a test at its unfavourable end, in words.
pub(crate) fn fasteners(scene: &Scene<'_>, test: &Test) -> Option<String> {
    for (held, plate) in candidates(scene) {
        let Ok(tried) = Scene::new(scene.build, scene.name, scene.item, &held) else { continue };
        let [all, _] = swung(&tried, test);
        if all.unfavourable <= CLEAR {
            let washer = held.washer.as_ref().map_or(0.0, |washer| washer.likely().in_mm());
            let under = if plate {
                format!("a plate at least {washer:.0} mm across under each nut")
            } else {
                format!("washers of {washer:.0} mm")
            };
            return Some(format!(
                "{} with {under} hold it: {:.0} % at worst.",
                in_words(&held, tried.count),
                all.unfavourable
            ));
        }
    }
    Some(format!(
        "No pattern of up to eight M10 bolts in this {} holds it by itself: carry it on the frame, brace its top, or back the {} with a steel plate.",
        scene.into.word(),
        scene.into.word()
    ))
}

/// Fixings to try, the least work first; with whether the washers are plates.
fn candidates(scene: &Scene<'_>) -> Vec<(Held, bool)> {
    let mut all = Vec::new();
    let now = scene.held;
    let rows = now.count.filter(|_| !matches!(now.pattern, spile_build::HeldPattern::Unsaid));
    let bolted = now.by == HeldBy::Bolt;
    for (washer_mm, plate) in [(25.0, false), (50.0, true)] {
        for count in [scene.count, 4, 6, 8] {
            let moved = rows != Some(count);
            for size_mm in [5.0, 6.0, 8.0, 10.0] {
                let smaller = bolted && now.size.is_some_and(|size| size.in_mm() > size_mm);
                if count < scene.count || smaller || (bolted && count == 1) {
                    continue;
                }
                let mut held = now.clone();
                held.by = HeldBy::Bolt;
                held.holds = None;
                held.size = Some(Length::mm(size_mm));
                held.class =
                    now.class.clone().filter(|_| bolted).or_else(|| Some("8.8".to_owned()));
                held.count = Some(count);
                held.washer = Some(chosen(Length::mm(washer_mm)));
                held.into = Some(now.into.unwrap_or(HeldInto::SteelTube));
                if moved && matches!(now.pattern, spile_build::HeldPattern::Rows(_)) {
                    held.pattern = spile_build::HeldPattern::Unsaid;
                }
                all.push((held, plate));
            }
        }
    }
    all
}

fn chosen(length: Length) -> Given<Length> {
    Given {
        value: Ranged::exactly(length),
        basis: Basis::Papers,
        source: "chosen".into(),
        how: "Choose it.".into(),
    }
}
