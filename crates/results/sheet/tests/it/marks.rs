//! The marks on paper: well formed, to scale, whole, and nothing written over anything else.

use roxmltree::{Document, Node};
use spile_build::Folder;
use spile_fit::{MarkOut, mark_out};
use spile_sheet::{marks_svg, marks_text};

/// A part on a panel; holes right of and above the body's lower left corner.
fn marks(size: [f64; 3], panel: [f64; 2], holes: &str, tape: &str) -> MarkOut {
    let [width, height, depth] = size;
    let text = format!(
        r#"
tape = "{tape}"
[parts.box]
kind = "upright fridge"
about = "box of glass & steel <3"
size = {{ width = "{width} mm", height = "{height} mm", depth = "{depth} mm" }}
flange = {{ width = "{} mm", height = "{} mm" }}
cutout = {{ width = "{} mm +2/-1", height = "{} mm +2/-1", radius = "8 mm" }}
fixing = {{ screw = "4 mm", hole = "4.5 mm", unit = "mm", rows = {holes} }}
[bays.bay]
size = {{ width = "{} mm", height = "{} mm", depth = "600 mm" }}
[panels.front]
closes = "bay"
material = "poplar plywood"
size = {{ width = "{} mm", height = "{} mm", depth = "12 mm" }}
[frame.post]
material = "steel tube"
place = {{ in = "bay", from_rear = "2 mm", from_left = "12 mm", above = "0 mm" }}
size = {{ length = "20 mm", width = "20 mm", height = "{} mm" }}
[keep_out.pipe]
what = "gas pipe"
place = {{ in = "bay", from_rear = "10 mm", from_left = "30 mm", above = "5 mm" }}
size = {{ length = "300 mm", width = "20 mm", height = "20 mm" }}
[items.box]
panel = "front"
place = {{ in = "bay", above = "60 mm" }}
"#,
        width + 40.0,
        height + 40.0,
        width + 7.0,
        height + 7.0,
        panel[0],
        panel[1],
        panel[0],
        panel[1],
        panel[1],
    );
    let folder = Folder::from_texts([("build.toml", text.as_str())]);
    let folder = folder.unwrap_or_else(|problems| panic!("{:?}", problems.list));
    mark_out(folder.build(), "box").unwrap_or_else(|no| panic!("{}", no.words()))
}

fn samples() -> Vec<MarkOut> {
    vec![
        marks(
            [475.0, 780.0, 495.0],
            [560.0, 1140.0],
            "[[-12, 0], [-12, 390], [-12, 780], [487, 0], [487, 390], [487, 780]]",
            "1/32 in",
        ),
        marks([200.0, 150.0, 100.0], [320.0, 300.0], "[[-10, -10], [210, 160]]", "1/64 in"),
        marks(
            [390.0, 390.0, 60.0],
            [700.0, 520.0],
            "[[-12, 100], [-12, 280], [402, 100], [402, 280]]",
            "1/16 in",
        ),
        marks([600.0, 400.0, 300.0], [900.0, 560.0], "[]", "1/32 in"),
    ]
}

fn attribute(node: Node<'_, '_>, name: &str) -> f64 {
    let text = node.attribute(name).unwrap_or_else(|| panic!("{node:?} has no {name}"));
    text.trim_end_matches("mm").parse().unwrap_or_else(|_| panic!("{name} = {text}"))
}

fn words(node: Node<'_, '_>) -> String {
    node.descendants().filter(Node::is_text).filter_map(|text| text.text()).collect()
}

#[test]
fn the_drawing_is_well_formed_and_one_unit_is_one_millimetre() {
    for marks in samples() {
        let svg = marks_svg(&marks);
        let drawing = Document::parse(&svg).unwrap_or_else(|error| panic!("{error}\n{svg}"));
        let root = drawing.root_element();
        assert_eq!(root.tag_name().name(), "svg");
        let (wide, high) = (attribute(root, "width"), attribute(root, "height"));
        assert_eq!(root.attribute("viewBox"), Some(format!("0 0 {wide} {high}").as_str()));
        for (id, length) in [("check-mm", "h100"), ("check-in", "h101.6")] {
            let bar = drawing.descendants().find(|node| node.attribute("id") == Some(id));
            let path = bar.and_then(|bar| bar.attribute("d")).expect("a bar");
            assert!(path.ends_with(length), "{path}");
        }
        // The opening has its size, and stands as far from the datum as its marks say.
        let opening = drawing
            .descendants()
            .find(|node| node.has_tag_name("rect") && node.attribute("class") == Some("cut"));
        let opening = opening.expect("an opening");
        assert!((attribute(opening, "width") - marks.opening.width.in_mm()).abs() < 1e-3);
        assert!((attribute(opening, "height") - marks.opening.height.in_mm()).abs() < 1e-3);
        let datum = drawing.descendants().find(|node| node.attribute("class") == Some("datum"));
        let datum =
            datum.and_then(|group| group.children().find(|node| node.has_tag_name("circle")));
        let datum = datum.expect("a datum");
        let left = attribute(opening, "x") - attribute(datum, "cx");
        assert!((left - marks.opening.left.in_mm()).abs() < 1e-3, "{left}");
        let bottom =
            attribute(datum, "cy") - attribute(opening, "y") - attribute(opening, "height");
        assert!((bottom - marks.opening.bottom.in_mm()).abs() < 1e-3, "{bottom}");
    }
}

#[test]
fn every_mark_is_on_the_drawing_and_in_the_table() {
    for marks in samples() {
        let (svg, table) = (marks_svg(&marks), marks_text(&marks));
        let drawing = Document::parse(&svg).expect("a drawing");
        let texts: Vec<String> =
            drawing.descendants().filter(|node| node.has_tag_name("text")).map(words).collect();
        for mark in &marks.marks {
            let inch = mark.inch.map_or_else(String::new, |at| format!("{} in", at.mark.figure()));
            let written = format!("{}{}{inch}", mark.name, mark.mm.figure());
            assert!(texts.contains(&written), "{written} is not among {texts:?}");
            let line = table.lines().find(|line| {
                line.starts_with(&format!("{} ", mark.name)) && line.contains(&mark.what)
            });
            let line = line.unwrap_or_else(|| panic!("no line for {} in\n{table}", mark.name));
            assert!(line.contains(&mark.mm.figure()), "{line}");
            assert!(mark.inch.is_none_or(|at| line.contains(&at.mark.figure())), "{line}");
        }
        let circles = drawing.descendants().filter(|node| node.has_tag_name("circle")).count();
        assert_eq!(circles, 2 + 4 + marks.holes.len(), "datum, corners and holes");
        for word in ["FACE", "UP", "FRONT"] {
            assert!(texts.iter().any(|text| text == word), "{word}");
        }
        assert!(texts.iter().any(|text| text.contains("both ways")));
        assert!(texts.iter().any(|text| text.contains("KEEP OUT") && text.contains("gas pipe")));
    }
}

#[test]
fn the_table_is_no_wider_than_a_terminal() {
    for marks in samples() {
        for line in marks_text(&marks).lines() {
            assert!(line.chars().count() <= 80, "{line}");
        }
    }
}

/// Where a text stands: its box, by 0.6 of its size a letter, which a sans does not exceed.
fn lettered(node: Node<'_, '_>) -> [f64; 4] {
    let size = attribute(node, "font-size");
    let gaps = node.children().filter(|child| child.attribute("dx").is_some()).count() as f64;
    let wide = words(node).chars().count() as f64 * size * 0.6 + gaps * size;
    let number =
        |name: &str| node.attribute(name).map_or(0.0, |text| text.parse().expect("a number"));
    let (x, y) = (number("x"), number("y"));
    let left = match node.attribute("text-anchor") {
        Some("middle") => x - wide / 2.0,
        Some("end") => x - wide,
        _ => x,
    };
    let mut place = [left, y - size * 0.75, left + wide, y + size * 0.2];
    let own = node.attribute("transform").filter(|turn| turn.starts_with("rotate"));
    let above = node.parent().and_then(|group| group.attribute("transform"));
    for turn in [own, above].into_iter().flatten() {
        let numbers: Vec<f64> = turn
            .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
            .filter_map(|number| number.parse().ok())
            .collect();
        let [l, t, r, b] = place;
        place = match numbers.as_slice() {
            // Turned a quarter to the left about a point.
            [-90.0, x, y] => [x + t - y, y - (r - x), x + b - y, y - (l - x)],
            // Moved, then turned a quarter to the left.
            [x, y, -90.0] => [x + t, y - r, x + b, y - l],
            [x, y] => [x + l, y + t, x + r, y + b],
            other => panic!("{other:?} in {turn}"),
        };
    }
    place
}

#[test]
fn no_lettering_touches_other_lettering_and_all_of_it_is_on_the_sheet() {
    for marks in samples() {
        let svg = marks_svg(&marks);
        let drawing = Document::parse(&svg).expect("a drawing");
        let root = drawing.root_element();
        let (wide, high) = (attribute(root, "width"), attribute(root, "height"));
        let texts: Vec<([f64; 4], String)> = drawing
            .descendants()
            .filter(|node| node.has_tag_name("text"))
            .map(|node| (lettered(node), words(node)))
            .collect();
        for (place, (a, text)) in texts.iter().enumerate() {
            let on_sheet = a[0] >= 0.0 && a[1] >= 0.0 && a[2] <= wide && a[3] <= high;
            assert!(on_sheet, "`{text}` at {a:?} leaves the sheet of {wide} × {high}");
            for (b, other) in &texts[..place] {
                let apart = a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1];
                assert!(apart, "`{text}` {a:?} touches `{other}` {b:?}");
            }
        }
    }
}
