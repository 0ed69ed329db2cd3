//! What is true of every drawing.

use roxmltree::{Document, Node};
use spile_sheet::Drawing;
use spile_sheet::ink::{Box2, text_width};

/// A lettering of a drawing, and where it stands.
pub struct Lettering {
    pub text: String,
    pub at: Box2,
    /// Whether it stands on a sleeve.
    pub on_sleeve: bool,
}

/// The size and weight that the style gives a text by its classes.
fn letter(class: &str) -> (f64, bool) {
    let has = |name: &str| class.split(' ').any(|one| one == name);
    let size = match () {
        () if has("t-xl") => 22.0,
        () if has("t-l") => 14.0,
        () if has("ball-t") || has("s-t") => 11.0,
        () if has("t-s") => 11.5,
        () => 12.5,
    };
    (size, ["t-xl", "t-l", "t-b", "ball-t", "s-t"].into_iter().any(has))
}

pub fn number(node: Node<'_, '_>, name: &str) -> f64 {
    let text = node.attribute(name).unwrap_or_else(|| panic!("{node:?} has no {name}"));
    text.parse().unwrap_or_else(|_| panic!("{name} = {text}"))
}

/// All lettering of a drawing.
pub fn lettering(drawing: &Document<'_>) -> Vec<Lettering> {
    let texts = drawing.descendants().filter(|node| node.has_tag_name("text"));
    texts
        .map(|node| {
            let text: String =
                node.descendants().filter_map(|one| one.is_text().then(|| one.text())?).collect();
            let (size, bold) = letter(node.attribute("class").unwrap_or(""));
            let (x, y, wide) =
                (number(node, "x"), number(node, "y"), text_width(&text, size, bold));
            let left = match node.attribute("text-anchor") {
                Some("middle") => x - wide / 2.0,
                Some("end") => x - wide,
                _ => x,
            };
            let at = match node.attribute("transform") {
                Some(_) => Box2 {
                    left: x - size * 0.8,
                    right: x + size * 0.25,
                    top: y - (left + wide - x),
                    bottom: y - (left - x),
                },
                None => {
                    Box2 { left, right: left + wide, top: y - size * 0.8, bottom: y + size * 0.25 }
                }
            };
            let on_sleeve = node.attribute("class") == Some("s-t");
            Lettering { text, at, on_sleeve }
        })
        .collect()
}

/// What is true of every drawing: it is well formed, has a name, is drawn by classes alone, stays
/// on its sheet, and no lettering touches other lettering.
#[track_caller]
pub fn is_sound(drawing: &Drawing) {
    let svg = &drawing.svg.0;
    let parsed = Document::parse(svg).unwrap_or_else(|error| panic!("{error}\n{svg}"));
    let root = parsed.root_element();
    assert_eq!(root.attribute("role"), Some("img"));
    assert!(root.attribute("aria-label").is_some_and(|label| label.contains(&drawing.title)));
    assert!(!svg.contains("style=") && !svg.contains("NaN") && !svg.contains("inf"), "{svg}");
    let frame: Vec<f64> =
        root.attribute("viewBox").unwrap().split(' ').map(|part| part.parse().unwrap()).collect();
    let letters = lettering(&parsed);
    assert!(!letters.is_empty());
    for (place, one) in letters.iter().enumerate() {
        let inside = one.at.left >= frame[0] - 0.5
            && one.at.right <= frame[0] + frame[2] + 0.5
            && one.at.top >= frame[1] - 0.5
            && one.at.bottom <= frame[1] + frame[3] + 0.5;
        assert!(inside, "{} is off the sheet {frame:?}: {:?}", one.text, one.at);
        for other in &letters[place + 1..] {
            assert!(
                !one.at.touches(&other.at),
                "{} touches {} in {}",
                one.text,
                other.text,
                drawing.title
            );
        }
    }
    let table = drawing.table.as_ref().expect("a table");
    assert!(!table.rows.is_empty());
    assert!(table.rows.iter().all(|row| row.len() == table.head.len()), "{table:?}");
}
