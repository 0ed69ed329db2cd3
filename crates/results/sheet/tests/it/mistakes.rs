//! Mistakes that the marks on paper prevent, by the project's trade notes: 4 inch and millimetre
//! slips, 5 a mirrored template, 6 a scaled print, 8 square inside corners.

use roxmltree::Document;
use spile_build::Folder;
use spile_fit::{MarkOut, mark_out};
use spile_sheet::{marks_svg, marks_text};

/// A cut-out whose papers give a radius, or leave it out.
fn marks(radius: &str) -> MarkOut {
    let text = format!(
        r#"
tape = "1/32 in"
[parts.box]
kind = "upright fridge"
size = {{ width = "475 mm", height = "780 mm", depth = "495 mm" }}
cutout = {{ width = "482 mm +2/-1", height = "787 mm +2/-1"{radius} }}
[bays.bay]
size = {{ width = "560 mm", height = "1140 mm", depth = "600 mm" }}
[panels.front]
closes = "bay"
material = "poplar plywood"
size = {{ width = "560 mm", height = "1140 mm", depth = "12 mm" }}
[items.box]
panel = "front"
place = {{ in = "bay", above = "60 mm" }}
"#
    );
    let folder = Folder::from_texts([("build.toml", text.as_str())]);
    let folder = folder.unwrap_or_else(|problems| panic!("{:?}", problems.list));
    mark_out(folder.build(), "box").unwrap_or_else(|no| panic!("{}", no.words()))
}

/// Every mark in both units, with the rounding error shown. A tape in thirty-seconds has a mark each
/// 0.79 mm; the one taken lies within what the papers allow, even where another is nearer.
#[test]
fn mistake_4_inch_and_millimetre_slips() {
    let marks = marks("");
    let table = marks_text(&marks);
    let mut seen = 0;
    for mark in &marks.marks {
        let Some(inch) = mark.inch else { continue };
        let off_mm = (inch.mark.length() - mark.exact).in_mm();
        assert!(off_mm.abs() <= 25.4 / 32.0, "{} is off by {off_mm}", mark.name);
        let at_mm = inch.mark.length().in_mm();
        let allowed_mm = [mark.allowed.low, mark.allowed.high].map(spile_quantity::Length::in_mm);
        assert!((allowed_mm[0] - 1e-6..=allowed_mm[1] + 1e-6).contains(&at_mm), "{}", mark.name);
        let line = table
            .lines()
            .find(|line| line.starts_with(&format!("{} ", mark.name)) && line.contains(&mark.what));
        let line = line.unwrap_or_else(|| panic!("no line for {}", mark.name));
        // The error stands before what is allowed, `38.5 to 39`.
        let words: Vec<&str> = line.split_whitespace().collect();
        let error = words[words.len() - 4].replace('−', "-");
        let shown: f64 = error.parse().unwrap_or_else(|_| panic!("no error in {line}"));
        assert!((shown - off_mm).abs() <= 0.05 + 1e-9, "{shown} is not {off_mm}: {line}");
        seen += 1;
    }
    assert!(seen >= 4, "{seen} marks have an inch mark");
}

#[test]
fn mistakes_5_and_6_a_mirrored_and_a_scaled_print() {
    let svg = marks_svg(&marks(""));
    let drawing = Document::parse(&svg).expect("a drawing");
    let texts: Vec<&str> = drawing.descendants().filter_map(|node| node.text()).collect();
    for word in ["FACE", "UP", "FRONT"] {
        assert!(texts.iter().any(|text| text.contains(word)), "{word}");
    }
    let bar = drawing.descendants().find(|node| node.attribute("id") == Some("check-mm"));
    let path = bar.and_then(|bar| bar.attribute("d")).expect("a bar");
    assert!(path.ends_with("h100"), "{path}");
    // One unit of the drawing is one millimetre of paper.
    let root = drawing.root_element();
    let (wide, high) = (root.attribute("width").unwrap(), root.attribute("height").unwrap());
    let view = format!("0 0 {} {}", wide.trim_end_matches("mm"), high.trim_end_matches("mm"));
    assert!(wide.ends_with("mm") && root.attribute("viewBox") == Some(view.as_str()));
    assert!(texts.iter().any(|text| text.contains("100")), "the bar's length is not told");
}

/// 8 to 10 mm of radius where the papers leave it out, bored at each corner.
#[test]
fn mistake_8_square_inside_corners() {
    for (marks, least, most) in [(marks(""), 8.0, 10.0), (marks(", radius = \"5 mm\""), 5.0, 5.0)] {
        let radius_mm = marks.radius.in_mm();
        assert!((least..=most).contains(&radius_mm), "{radius_mm}");
        let svg = marks_svg(&marks);
        let drawing = Document::parse(&svg).expect("a drawing");
        let opening = drawing
            .descendants()
            .find(|node| node.has_tag_name("rect") && node.attribute("class") == Some("cut"));
        let rx: f64 = opening.and_then(|node| node.attribute("rx")).unwrap().parse().unwrap();
        assert!((rx - radius_mm).abs() < 1e-3);
        let bored = drawing.descendants().filter(|node| {
            let r = node.attribute("r").and_then(|r| r.parse::<f64>().ok());
            node.has_tag_name("circle") && r.is_some_and(|r| (r - radius_mm).abs() < 1e-3)
        });
        assert!(bored.count() >= 4, "a hole at each corner");
        assert!(marks_text(&marks).contains(&format!("{}", 2.0 * radius_mm)), "the drill");
    }
}
