//! The vehicle, a bay in three views, a vehicle on its axles: sound, to scale, whole.

use std::fmt::Write;
use std::path::Path;

use roxmltree::{Document, Node};
use spile_answer::Question;
use spile_build::{Build, Folder};
use spile_sheet::{Drawing, STYLE, Width, drawings, vehicle};

use crate::seen::{is_sound, lettering, number};
use crate::{build, heron};

const WIDTHS: [Width; 2] = [Width::Wide, Width::Narrow];

/// A demo build before and after a job.
fn demo(name: &str, job: &str) -> [Build; 2] {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo").join(name);
    let planned = Folder::open(&path).unwrap().plan(job, None).unwrap();
    [planned.before, planned.after]
}

/// Everything drawn of a build, in both widths.
fn all(before: &Build, after: Option<&Build>) -> Vec<Drawing> {
    let of = |width| {
        let mut all = vehicle(before, after, width);
        for question in [Question::Fit, Question::Axle] {
            all.extend(drawings(question, before, after, width));
        }
        all
    };
    WIDTHS.into_iter().flat_map(of).collect()
}

/// Every class that is drawn by stands in the style.
#[track_caller]
fn has_its_classes(drawing: &Drawing) {
    let parsed = Document::parse(&drawing.svg.0).unwrap();
    for node in parsed.descendants() {
        for colour in ["fill", "stroke", "color"] {
            assert_eq!(node.attribute(colour), None, "a colour that no class gives");
        }
        let classes = node.attribute("class").unwrap_or("").split(' ');
        for class in classes.filter(|class| !["", "dw", "wide", "narrow", "mid"].contains(class)) {
            assert!(STYLE.contains(&format!(".{class}")), "{class} is not in the style");
        }
    }
}

#[track_caller]
fn are_sound(drawings: &[Drawing]) {
    assert!(!drawings.is_empty());
    for drawing in drawings {
        is_sound(drawing);
        has_its_classes(drawing);
    }
}

fn thing<'a>(drawing: &'a Document<'a>, name: &str) -> Node<'a, 'a> {
    let found = drawing.descendants().find(|node| node.attribute("data-thing") == Some(name));
    found.unwrap_or_else(|| panic!("{name} is not drawn"))
}

#[test]
fn the_demo_builds_are_drawn_before_and_after() {
    for option in ["upright", "two-boxes"] {
        let [before, after] = heron(option);
        are_sound(&all(&before, Some(&after)));
    }
    for (name, job) in [("tern", "heater"), ("bittern", "roof-and-rack")] {
        let [before, after] = demo(name, job);
        are_sound(&all(&before, Some(&after)));
        are_sound(&all(&before, None));
    }
}

/// The fridge is 475 mm wide and 495 deep by its papers, and stands 1,072.5 mm from the rear: the
/// bay's 1,050 and its own 22.5.
#[test]
fn a_thing_has_its_size_and_its_place_in_millimetres() {
    let [before, after] = heron("upright");
    for width in WIDTHS {
        let plan = &vehicle(&before, Some(&after), width)[0];
        let parsed = Document::parse(&plan.svg.0).unwrap();
        let root = parsed.root_element();
        let (scale, x) = (number(root, "data-mm"), number(root, "data-x"));
        assert_eq!(root.attribute("data-axes"), Some("x y"));
        let fridge = thing(&parsed, "items.upright");
        let body = fridge.children().find(|node| node.has_tag_name("rect")).unwrap();
        assert_eq!(body.attribute("class"), Some("addf"));
        let near = |a: f64, b: f64| assert!((a - b).abs() < 0.1, "{a} is not {b}");
        near(number(body, "width") * scale, 475.0);
        near(number(body, "height") * scale, 495.0);
        near((number(body, "x") - x) * scale, 1072.5);
        assert!(fridge.children().any(|node| node.has_tag_name("title")));
        let box_32 = thing(&parsed, "items.lidded-box");
        assert!(box_32.children().any(|node| node.attribute("class") == Some("gone")));
    }
}

/// Where the lettering of the demo's plan stands, so that a change of layout is seen.
#[test]
fn the_layout_of_the_demo() {
    let [before, after] = heron("upright");
    let mut seen = String::new();
    for drawing in vehicle(&before, Some(&after), Width::Narrow) {
        writeln!(seen, "{}, {}", drawing.title, drawing.scale.unwrap_or_default()).unwrap();
        for one in lettering(&Document::parse(&drawing.svg.0).unwrap()) {
            let [x, y] = one.at.middle();
            writeln!(seen, "  {x:4.0} {y:4.0}  {}", one.text).unwrap();
        }
    }
    insta::assert_snapshot!(seen);
}

/// The three views stand in line: the front below the plan, the side beside the front.
#[test]
fn the_views_of_a_bay_are_in_line_and_of_one_scale() {
    let [before, after] = heron("upright");
    let fit = drawings(Question::Fit, &before, Some(&after), Width::Wide);
    let parsed = Document::parse(&fit[0].svg.0).unwrap();
    let views: Vec<Node<'_, '_>> =
        parsed.descendants().filter(|node| node.attribute("data-view").is_some()).collect();
    let [plan, front, side] = views.as_slice() else { panic!("{} views", views.len()) };
    assert_eq!(number(*plan, "data-x"), number(*front, "data-x"));
    assert_eq!(number(*front, "data-y"), number(*side, "data-y"));
    assert_eq!(number(*plan, "data-mm"), number(*side, "data-mm"));
    // Every smallest distance of the table is that of the finding of the same side.
    let rows = &fit[0].table.as_ref().unwrap().rows;
    let answer = spile_fit::answer(&after);
    let behind = answer.findings.iter().find(|finding| finding.id == "upright.behind").unwrap();
    let row = rows.iter().find(|row| row[1] == "behind").unwrap();
    assert_eq!(row[3], format!("{:.1}", behind.figure.unwrap().likely));
}

/// What is drawn on the axles is what the answer says of them.
#[test]
fn the_axles_carry_what_the_answer_says() {
    let [before, after] = heron("upright");
    let drawn = &drawings(Question::Axle, &before, Some(&after), Width::Wide)[0];
    let answer = spile_axle::answer(&after);
    for on in ["front", "rear"] {
        let finding = answer.findings.iter().find(|finding| finding.id == on).unwrap();
        let row = |row: &&Vec<String>| row[1] == on && finding.label.ends_with(&row[0]);
        let row = drawn.table.as_ref().unwrap().rows.iter().find(row).unwrap();
        let shown: f64 = row[3].replace(',', "").parse().unwrap();
        assert!((shown - finding.figure.unwrap().likely).abs() <= 0.5, "{row:?}");
    }
}

#[test]
fn where_little_is_said_that_little_is_drawn_and_the_rest_is_listed() {
    let empty = build("");
    let nothing = vehicle(&empty, None, Width::Narrow);
    assert!(nothing[0].svg.0.contains("Nothing can be drawn yet"));
    are_sound(&nothing);
    let inside = build(
        "[vehicle]\ninside = { length = \"3 m\", width = \"1.7 m\", height = \"1.8 m\" }\n[parts.fan]\nkind = \"roof fan\"\n[items.fan]\n",
    );
    let drawn = all(&inside, None);
    are_sound(&drawn);
    let words = drawn.iter().map(|one| one.svg.0.clone()).collect::<String>();
    assert!(words.contains("Not drawn, since place or size is not said: fan."));
    assert!(words.contains("wheelbase") && !words.contains("rear axle</text>"));
}

/// A build of many boxes in rows, each of a size, with a name.
fn many(count: usize, size_mm: f64, inside_mm: [f64; 3], name: &str) -> Build {
    let [length, width, height] = inside_mm;
    let mut text = format!(
        "[vehicle]\nfloor = \"600 mm\"\nwheelbase = \"{} mm\"\nrear_axle = \"{} mm\"\n\
         inside = {{ length = \"{length} mm\", width = \"{width} mm\", height = \"{height} mm\" }}\n",
        length * 0.9,
        length * 0.2
    );
    let across = ((width / (size_mm * 1.2)) as usize).max(1);
    for item in 0..count {
        let (x, y) =
            ((item / across) as f64 * size_mm * 1.1, (item % across) as f64 * size_mm * 1.2);
        write!(
            text,
            "[parts.p{item}]\nkind = \"other\"\nabout = {name:?}\n\
             size = {{ width = \"{size_mm} mm\", height = \"{size_mm} mm\", depth = \"{size_mm} mm\" }}\n\
             [items.thing-{item}]\npart = \"p{item}\"\n\
             place = {{ from_rear = \"{x} mm\", from_right = \"{y} mm\", on = \"floor\" }}\n"
        )
        .unwrap();
    }
    build(&text)
}

#[test]
fn no_build_is_too_small_too_large_or_too_full() {
    are_sound(&all(&many(60, 150.0, [3300.0, 1780.0, 1930.0], "a box"), None));
    are_sound(&all(&many(12, 40.0, [900.0, 700.0, 600.0], "tiny"), None));
    are_sound(&all(&many(8, 1500.0, [15_000.0, 2500.0, 3000.0], "a very large crate"), None));
    let long = "the box with the longest name that anybody has ever given to a box of tools & <more> \"things\"";
    let drawn = all(&many(8, 300.0, [3300.0, 1780.0, 1930.0], long), None);
    are_sound(&drawn);
    assert!(drawn[0].svg.0.contains("&lt;more&gt;"));
}
