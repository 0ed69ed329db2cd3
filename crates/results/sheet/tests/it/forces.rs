//! Fixings with the forces on them.

use roxmltree::Document;
use spile_answer::Question;
use spile_sheet::{Width, drawings};

use crate::seen::{is_sound, lettering};
use crate::{build, heron};

#[test]
fn every_fixing_of_heron_is_drawn_with_what_gives_first() {
    for option in ["upright", "two-boxes"] {
        let [before, after] = heron(option);
        let pictures = spile_hold::pictures(&after);
        for width in [Width::Wide, Width::Narrow] {
            let all = drawings(Question::Hold, &before, Some(&after), width);
            assert_eq!(all.len(), pictures.len());
            for picture in &pictures {
                let drawing = all
                    .iter()
                    .find(|one| {
                        one.title.ends_with(&format!("the {}", after.items[&picture.name].about))
                    })
                    .expect("one");
                is_sound(drawing);
                let parsed = Document::parse(&drawing.svg.0).expect("a drawing");
                let says = |text: &str| lettering(&parsed).iter().any(|one| one.text == text);
                assert!(says(&format!("{}, gives first", picture.used[0].mode)));
                let used = format!("{:.0} %", picture.used[0].percent);
                assert!(says(&used), "{used} of the {}", picture.called);
                let circles = parsed
                    .descendants()
                    .filter(|node| node.has_tag_name("circle") && node.attribute("r") == Some("5"));
                assert_eq!(circles.count(), picture.places.len());
            }
        }
    }
}

#[test]
fn a_thing_on_a_wall_is_drawn_under_its_own_name() {
    let text = r#"
[parts.locker]
kind = "furniture"
about = "locker <tall> & deep"
mass = "20 kg"
size = { width = "500 mm", height = "600 mm", depth = "60 mm" }
[items.locker]
held = { by = "rivet nut", size = "M6", class = "8.8", count = 4, into = "steel tube", wall = "1.5 mm", spacing = { width = "420 mm", height = "320 mm" }, face = "behind" }
"#;
    let build = build(text);
    for width in [Width::Wide, Width::Narrow] {
        let all = drawings(Question::Hold, &build, None, width);
        is_sound(&all[0]);
        assert!(all[0].title.contains("locker <tall> & deep"));
    }
    assert!(drawings(Question::Hold, &crate::build(""), None, Width::Wide).is_empty());
}
