//! Warm bays as sections.

use spile_answer::Question;
use spile_sheet::{Width, drawings};

use crate::seen::is_sound;
use crate::{build, heron};

#[test]
fn heron_breathes_on_the_drawing_as_in_the_answer() {
    for option in ["upright", "two-boxes"] {
        let [before, after] = heron(option);
        for width in [Width::Wide, Width::Narrow] {
            let all = drawings(Question::Air, &before, Some(&after), width);
            assert_eq!(all.len(), spile_air::pictures(&after).len());
            all.iter().for_each(is_sound);
        }
    }
    let [before, after] = heron("upright");
    let answer = spile_air::answer(&after);
    let warm = answer.findings.iter().find(|one| one.id == "galley-rear.warm").expect("a bay");
    let all = drawings(Question::Air, &before, Some(&after), Width::Wide);
    let galley = all.iter().find(|one| one.title.ends_with("galley-rear")).expect("a section");
    let words = format!("bay {:.0} °C", warm.figure.unwrap().likely);
    assert!(galley.svg.0.contains(&words), "{words}");
}

#[test]
fn openings_without_a_height_say_so() {
    let text = r#"
[bays.locker]
size = { width = "640 mm", height = "900 mm", depth = "560 mm" }
place = { from_rear = "100 mm", from_left = "0 mm", above = "0 mm" }
air.inlet = { area = "160 cm2", leads_to = "outdoors" }
air.outlet = { area = "90 cm2" }
[parts.inverter]
kind = "inverter"
about = "inverter <800 W> & fan"
power = { running = "800 W" }
[items.inverter]
place = { in = "locker" }
"#;
    for width in [Width::Wide, Width::Narrow] {
        for drawing in drawings(Question::Air, &build(text), None, width) {
            is_sound(&drawing);
            assert!(width == Width::Narrow || drawing.svg.0.contains("height not said"));
        }
    }
    assert!(drawings(Question::Air, &build(""), None, Width::Wide).is_empty());
}
