//! The marks as a drawing at full size.

use maud::{Markup, html};
use spile_fit::{Behind, FIRST_HOLE, From, Mark, MarkOut, Outline, Points};
use spile_quantity::Length;

use crate::layout::{spread, width, wrapped};
use crate::text::{fine, notes, orientation, tape_word};

/// Sizes of lettering, in millimetres.
const SMALL: f64 = 4.0;
const LETTERS: f64 = 5.0;
const TITLE: f64 = 10.0;

/// From one running dimension to the next at least.
const APART: f64 = 7.5;

/// From the panel to where dimension lines end.
const LEAD: f64 = 34.0;

/// White around everything.
const MARGIN: f64 = 12.0;

const STYLE: &str = "\
text{font-family:Helvetica,Arial,'DejaVu Sans',sans-serif;fill:#000}\
\
.b{font-weight:600}\
.cut{fill:none;stroke:#000;stroke-width:.5px}\
.seen{fill:none;stroke:#000;stroke-width:.35px}\
.thin{fill:none;stroke:#000;stroke-width:.25px}\
.hair{fill:none;stroke:#000;stroke-width:.13px}\
.hidden{fill:none;stroke:#000;stroke-width:.25px;stroke-dasharray:4 2}\
.over{fill:none;stroke:#000;stroke-width:.25px;stroke-dasharray:.5 1.5;stroke-linecap:round}\
.centre{fill:none;stroke:#000;stroke-width:.25px;stroke-dasharray:14 2.5 1.5 2.5}\
.ink{fill:#000;stroke:none}\
.paper{fill:#fff;stroke:none}";

/// The marks of a cut-out as an SVG at full size: one unit is one millimetre.
pub fn marks_svg(marks: &MarkOut) -> String {
    let sheet = Sheet::of(marks);
    let (wide, high) = (number(sheet.wide), number(sheet.high));
    let title = format!("{}: marks on the face of the panel {}", marks.item, marks.panel);
    html! {
        svg xmlns="http://www.w3.org/2000/svg" width={ (wide) "mm" } height={ (high) "mm" }
            viewBox={ "0 0 " (wide) " " (high) } role="img" aria-labelledby="title desc" {
            title id="title" { (title) }
            desc id="desc" { (description(marks)) }
            style { (STYLE) }
            defs {
                pattern id="keep-out" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)" {
                    line class="thin" x1="0" y1="0" x2="0" y2="6" {}
                }
            }
            rect class="paper" width=(wide) height=(high) {}
            (head(marks, &sheet, &title))
            (panel(marks, &sheet))
            (opening(marks, &sheet))
            (drillings(marks, &sheet))
            (orientation_arrows(marks, &sheet))
            (running(marks, &sheet, From::Left))
            (running(marks, &sheet, From::Below))
            (foot(marks, &sheet))
        }
    }
    .into_string()
}

/// Where things are on the sheet, in millimetres from its upper left corner.
struct Sheet {
    wide: f64,
    high: f64,
    /// The panel's left and lower edges.
    left: f64,
    below: f64,
    panel: [f64; 2],
    head: Vec<String>,
    /// How long the labels of the running dimensions are.
    label: f64,
}

impl Sheet {
    fn of(marks: &MarkOut) -> Self {
        let panel = marks.size.map(Length::in_mm);
        let label =
            marks.marks.iter().map(|mark| width(&label(mark), LETTERS)).fold(30.0, f64::max);
        let left = MARGIN + label + LEAD;
        let right = 60.0;
        let wide = (left + panel[0] + right).max(360.0);
        let most = wide - 2.0 * MARGIN;
        let mut head = wrapped(&orientation(marks), LETTERS, most);
        head.extend(notes(marks).iter().flat_map(|note| wrapped(note, LETTERS, most)));
        head.extend(
            marks.cautions.iter().flat_map(|text| wrapped(&format!("! {text}"), LETTERS, most)),
        );
        let top = MARGIN + TITLE * 1.6 + head.len() as f64 * LETTERS * 1.5 + 22.0;
        let below = top + panel[1];
        let high = below + LEAD + label + 62.0 + MARGIN;
        Self { wide, high, left, below, panel, head, label }
    }

    /// A place on the panel, from the datum, on the sheet.
    fn at(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        [self.left + x, self.below - y]
    }
}

fn label(mark: &Mark) -> String {
    format!("{}   {}   {}", mark.name, mark.mm.figure(), inch(mark))
}

fn inch(mark: &Mark) -> String {
    mark.inch.map_or_else(String::new, |inch| format!("{} in", inch.mark.figure()))
}

fn description(marks: &MarkOut) -> String {
    let list: Vec<String> = marks
        .marks
        .iter()
        .map(|mark| {
            let from = match mark.from {
                From::Left => "from the left",
                From::Below => "from below",
            };
            format!("{} {} {from} {} mm", mark.name, mark.what, mark.mm.figure())
        })
        .collect();
    format!(
        "At full size, one unit a millimetre. {} Marks: {}.",
        orientation(marks),
        list.join("; ")
    )
}

fn head(marks: &MarkOut, sheet: &Sheet, title: &str) -> Markup {
    let size = TITLE.min((sheet.wide - 2.0 * MARGIN) / width(title, 1.0));
    let top = MARGIN + TITLE;
    html! {
        text class="b" x=(number(MARGIN)) y=(number(top)) font-size=(number(size)) { (title) }
        @for (place, line) in sheet.head.iter().enumerate() {
            text x=(number(MARGIN)) y=(number(top + TITLE + place as f64 * LETTERS * 1.5)) font-size=(LETTERS) { (line) }
        }
        text x=(number(sheet.left)) y=(number(sheet.below - sheet.panel[1] - 6.0)) font-size=(LETTERS) {
            "panel " (marks.panel)
            @if !marks.material.is_empty() { ", " (marks.material) }
            ", " (fine(marks.thickness)) " mm thick"
        }
    }
}

/// The panel's outline, the datum, and what lies behind it.
fn panel(marks: &MarkOut, sheet: &Sheet) -> Markup {
    let [wide, high] = sheet.panel;
    let [x, y] = sheet.at([0.0, high]);
    let datum = sheet.at([0.0, 0.0]);
    html! {
        g class="behind" {
            @for behind in &marks.behind { (one_behind(behind, sheet)) }
        }
        rect class="seen" x=(number(x)) y=(number(y)) width=(number(wide)) height=(number(high)) {}
        g class="datum" {
            title { "datum: the lower left corner of the face" }
            circle class="paper" cx=(number(datum[0])) cy=(number(datum[1])) r="4" {}
            circle class="seen" cx=(number(datum[0])) cy=(number(datum[1])) r="4" {}
            path class="ink" d=(quarters(datum, 4.0)) {}
        }
    }
}

/// Two opposite quarters of a disc.
fn quarters([x, y]: [f64; 2], r: f64) -> String {
    format!(
        "M{} {}v{}a{r} {r} 0 0 1 {r} {r}zM{} {}v{r}a{r} {r} 0 0 1 -{r} -{r}z",
        number(x),
        number(y),
        -r,
        number(x),
        number(y)
    )
}

/// What lies behind the panel, as far as the panel goes.
fn one_behind(behind: &Behind, sheet: &Sheet) -> Markup {
    let [left, bottom, wide, high] = numbers(&behind.outline);
    let (x0, x1) = (left.max(0.0), (left + wide).min(sheet.panel[0]));
    let (y0, y1) = (bottom.max(0.0), (bottom + high).min(sheet.panel[1]));
    if x1 <= x0 || y1 <= y0 {
        return html! {};
    }
    let [x, y] = sheet.at([x0, y1]);
    let words = if behind.keep_out {
        format!("KEEP OUT: {}", behind.what)
    } else {
        format!("behind: {}", behind.what)
    };
    let (long, across) = ((y1 - y0).max(x1 - x0), (y1 - y0).min(x1 - x0));
    let fits = width(&words, SMALL) < long - 4.0 && across > SMALL * 1.4;
    let upright = y1 - y0 > x1 - x0;
    let middle = sheet.at([f64::midpoint(x0, x1), f64::midpoint(y0, y1)]);
    let turn = if upright {
        format!("rotate(-90 {} {})", number(middle[0]), number(middle[1]))
    } else {
        String::new()
    };
    html! {
        rect class="hidden" x=(number(x)) y=(number(y)) width=(number(x1 - x0)) height=(number(y1 - y0)) {
            title { (words) }
        }
        @if behind.keep_out {
            rect fill="url(#keep-out)" x=(number(x)) y=(number(y)) width=(number(x1 - x0)) height=(number(y1 - y0)) {}
        }
        @if fits {
            (Over { class: "", at: [middle[0], middle[1] + SMALL * 0.35], size: SMALL, anchor: "middle", turn: &turn }.text(&words))
        }
    }
}

/// The opening with its diagonals, the body behind it and the flange over it.
fn opening(marks: &MarkOut, sheet: &Sheet) -> Markup {
    let [left, bottom, wide, high] = numbers(&marks.opening);
    let [x, y] = sheet.at([left, bottom + high]);
    let radius = number(marks.radius.in_mm());
    let corners = [
        [left, bottom],
        [left + wide, bottom + high],
        [left, bottom + high],
        [left + wide, bottom],
    ]
    .map(|at| sheet.at(at));
    let middle = sheet.at([left + wide / 2.0, bottom + high / 2.0]);
    let diagonal = marks.checks.iter().find(|check| check.what.starts_with("corner"));
    html! {
        g class="opening" {
            @for pair in corners.chunks(2) {
                line class="centre" x1=(number(pair[0][0])) y1=(number(pair[0][1])) x2=(number(pair[1][0])) y2=(number(pair[1][1])) {}
            }
            rect class="cut" x=(number(x)) y=(number(y)) width=(number(wide)) height=(number(high)) rx=(radius) {
                title { "edge of the opening: saw on the inside of this line" }
            }
            @if let Some(check) = diagonal {
                (Over { class: "", at: middle, size: LETTERS, anchor: "middle", turn: "" }.text(&format!("{} both ways", fine(check.mm))))
            }
            (outlined(&marks.body, "hidden", "the body, behind", sheet))
            @if let Some(flange) = &marks.flange { (outlined(flange, "over", "the flange, over it", sheet)) }
        }
    }
}

fn outlined(outline: &Outline, class: &str, title: &str, sheet: &Sheet) -> Markup {
    let [left, bottom, wide, high] = numbers(outline);
    let [x, y] = sheet.at([left, bottom + high]);
    html! {
        rect class=(class) x=(number(x)) y=(number(y)) width=(number(wide)) height=(number(high)) { title { (title) } }
    }
}

/// Corner drillings and fixing holes, each with its centre and its number.
fn drillings(marks: &MarkOut, sheet: &Sheet) -> Markup {
    let middle = marks.opening.left.in_mm() + marks.opening.width.in_mm() / 2.0;
    let corner = marks.radius.in_mm();
    let hole = marks.hole.map_or(0.0, |hole| hole.in_mm() / 2.0);
    let corners = marks.corners.iter().enumerate().map(|(place, at)| (place + 5, at, corner, true));
    let holes =
        marks.holes.iter().enumerate().map(|(place, at)| (place + FIRST_HOLE, at, hole, false));
    html! {
        g class="drillings" {
            @for (name, at, radius, inside) in corners.chain(holes) {
                (drilling(name, at.map(Length::in_mm), radius, (at[0].in_mm() < middle) == inside, sheet))
            }
            (drill_note(marks, sheet))
        }
    }
}

/// A circle with its centre cross, its number to the right or to the left.
fn drilling(name: usize, at: [f64; 2], radius: f64, to_the_right: bool, sheet: &Sheet) -> Markup {
    let [x, y] = sheet.at(at);
    let (cross, beside) = (radius + 2.0, radius + 2.5);
    let (text_x, anchor) = if to_the_right { (x + beside, "start") } else { (x - beside, "end") };
    html! {
        circle class="seen" cx=(number(x)) cy=(number(y)) r=(number(radius)) { title { (name) } }
        path class="hair" d={ "M" (number(x - cross)) " " (number(y)) "h" (number(2.0 * cross)) "M" (number(x)) " " (number(y - cross)) "v" (number(2.0 * cross)) } {}
        (Over { class: "", at: [text_x, y + SMALL * 0.35], size: SMALL, anchor, turn: "" }.text(&name.to_string()))
    }
}

/// Radius and drill, led from the upper right corner into the waste.
fn drill_note(marks: &MarkOut, sheet: &Sheet) -> Markup {
    let [x, y] = sheet.at(marks.corners[3].map(Length::in_mm));
    let (end_x, end_y) = (x - marks.radius.in_mm() - 12.0, y + marks.radius.in_mm() + 12.0);
    let reach = marks.radius.in_mm() * 0.7;
    html! {
        path class="hair" d={ "M" (number(x - reach)) " " (number(y + reach)) "L" (number(end_x)) " " (number(end_y)) "h-4" } {}
        (Over { class: "", at: [end_x - 5.0, end_y + SMALL * 0.35], size: SMALL, anchor: "end", turn: "" }
            .text(&format!("R {}, drill {}", fine(marks.radius), fine(marks.radius * 2.0))))
    }
}

/// FACE, and the arrows that say how the panel lies, in the waste.
fn orientation_arrows(marks: &MarkOut, sheet: &Sheet) -> Markup {
    let [left, bottom, wide, high] = numbers(&marks.opening);
    let size = (wide / 14.0).min(high / 14.0).min(14.0);
    let face = sheet.at([left + wide / 2.0, bottom + high * 0.72]);
    let arrows = [(marks.up, "UP", 0.22), (marks.front, "FRONT", 0.34)];
    html! {
        g class="orientation" {
            (Over { class: "b", at: face, size, anchor: "middle", turn: "" }.text("FACE"))
            @for (points, word, height) in arrows {
                (arrow(points, word, sheet.at([left + wide / 2.0, bottom + high * height]), size))
            }
        }
    }
}

/// A word with an arrow before it.
fn arrow(points: Points, word: &str, [x, y]: [f64; 2], size: f64) -> Markup {
    let turn = match points {
        Points::Up => 0.0,
        Points::Right => 90.0,
        Points::Down => 180.0,
        Points::Left => -90.0,
        Points::Outward | Points::Inward => {
            let side = if points == Points::Outward { "towards you" } else { "away from you" };
            return html! {
                (Over { class: "b", at: [x, y], size: size * 0.7, anchor: "middle", turn: "" }.text(&format!("{word}: {side}")))
            };
        }
    };
    let size = size * 0.7;
    let (stem, tip) = (size * 1.6, size * 0.6);
    let middle = x - size * 1.4;
    html! {
        g transform={ "translate(" (number(middle)) " " (number(y - size * 0.35)) ") rotate(" (number(turn)) ")" } {
            line class="cut" x1="0" y1=(number(stem / 2.0)) x2="0" y2=(number(-stem / 2.0 + tip)) {}
            path class="ink" d={ "M0 " (number(-stem / 2.0 - tip / 2.0)) "l" (number(tip / 2.0)) " " (number(tip * 1.5)) "h" (number(-tip)) "z" } {}
        }
        (Over { class: "b", at: [x, y], size, anchor: "start", turn: "" }.text(word))
    }
}

/// Lettering that stands over lines, on a patch of white.
struct Over<'t> {
    class: &'t str,
    at: [f64; 2],
    size: f64,
    anchor: &'t str,
    turn: &'t str,
}

impl Over<'_> {
    fn text(&self, words: &str) -> Markup {
        let ([x, y], size) = (self.at, self.size);
        let wide = width(words, size);
        let left = match self.anchor {
            "middle" => x - wide / 2.0,
            "end" => x - wide,
            _ => x,
        };
        let turn = (!self.turn.is_empty()).then_some(self.turn);
        let class = (!self.class.is_empty()).then_some(self.class);
        html! {
            rect class="paper" x=(number(left)) y=(number(y - size * 0.85)) width=(number(wide)) height=(number(size * 1.1)) transform=[turn] {}
            text class=[class] x=(number(x)) y=(number(y)) font-size=(number(size)) text-anchor=(self.anchor) transform=[turn] { (words) }
        }
    }
}

/// The running dimensions along one edge, from nought at the datum to the panel's far edge.
fn running(marks: &MarkOut, sheet: &Sheet, from: From) -> Markup {
    let axis = usize::from(from == From::Below);
    let mut lines: Vec<(f64, String, String, String)> = marks
        .marks
        .iter()
        .filter(|mark| mark.from == from)
        .map(|mark| (mark.mm.length().in_mm(), mark.name.clone(), mark.mm.figure(), inch(mark)))
        .collect();
    lines.push((0.0, String::new(), "0".to_owned(), String::new()));
    lines.push((sheet.panel[axis], String::new(), fine(marks.size[axis]), String::new()));
    lines.sort_by(|a, b| a.0.total_cmp(&b.0));
    let places = spread(&lines.iter().map(|line| line.0).collect::<Vec<_>>(), APART);
    html! {
        g class=(if axis == 0 { "from-left" } else { "from-below" }) {
            @for ((at, name, figure, inches), place) in lines.iter().zip(places) {
                (dimension(sheet, axis, [*at, place], [name, figure, inches]))
            }
        }
    }
}

/// One running dimension: its line, led aside where labels would touch, and its label.
fn dimension(
    sheet: &Sheet,
    axis: usize,
    [at, place]: [f64; 2],
    [name, figure, inches]: [&str; 3],
) -> Markup {
    let on = |along: f64, out: f64| {
        if axis == 0 { sheet.at([along, -out]) } else { sheet.at([-out, along]) }
    };
    let points = [(at, 3.0), (at, 12.0), (place, 24.0), (place, LEAD - 4.0)]
        .map(|(along, out)| on(along, out));
    let path = points
        .iter()
        .map(|[x, y]| format!("{} {}", number(*x), number(*y)))
        .collect::<Vec<_>>()
        .join("L");
    let [x, y] = on(place, LEAD);
    let turn = if axis == 0 {
        format!("translate({} {}) rotate(-90)", number(x), number(y))
    } else {
        format!("translate({} {})", number(x), number(y))
    };
    let base = number(LETTERS * 0.35);
    html! {
        path class="hair" d={ "M" (path) } {}
        g transform=(turn) {
            text text-anchor="end" y=(base) font-size=(LETTERS) {
                @if !name.is_empty() { tspan class="name" { (name) } }
                tspan class="b" dx=[(!name.is_empty()).then_some(LETTERS)] { (figure) }
                @if !inches.is_empty() { tspan dx=(LETTERS) { (inches) } }
            }
        }
    }
}

/// The two bars that show whether the printer kept the size, and what the lines mean.
fn foot(marks: &MarkOut, sheet: &Sheet) -> Markup {
    let y = sheet.below + LEAD + sheet.label + 14.0;
    let (x, aside) = (MARGIN + 4.0, MARGIN + 150.0);
    let lines = [
        ("cut", "edge of the opening"),
        ("centre", "corner to corner"),
        ("hidden", "body, and what lies behind"),
        ("over", "flange, over the panel"),
    ];
    html! {
        g class="bars" {
            title { "check bars: 100 mm and 4 in" }
            (bar(x, y, 100.0, "100 mm", "check-mm"))
            (bar(x, y + 16.0, 101.6, "4 in", "check-in"))
            text x=(number(x)) y=(number(y + 32.0)) font-size=(SMALL) { "Measure the bars before you trust the sheet:" }
            text x=(number(x)) y=(number(y + 38.0)) font-size=(SMALL) { "100 mm must be 100 ± 0.5 mm." }
        }
        g class="lines" {
            @for (place, (class, words)) in lines.into_iter().enumerate() {
                @let down = y + place as f64 * 8.0;
                line class=(class) x1=(number(aside)) y1=(number(down)) x2=(number(aside + 34.0)) y2=(number(down)) {}
                text x=(number(aside + 38.0)) y=(number(down + SMALL * 0.35)) font-size=(SMALL) { (words) }
            }
            text x=(number(aside)) y=(number(y + 38.0)) font-size=(SMALL) { "mm in bold; inches on a tape of " (tape_word(marks.tape)) " in" }
        }
    }
}

fn bar(x: f64, y: f64, length: f64, words: &str, id: &str) -> Markup {
    html! {
        path id=(id) class="cut" d={ "M" (number(x)) " " (number(y)) "h" (number(length)) } {}
        path class="thin" d={ "M" (number(x)) " " (number(y - 3.0)) "v6M" (number(x + length)) " " (number(y - 3.0)) "v6" } {}
        text x=(number(x + length / 2.0)) y=(number(y - 2.0)) font-size=(SMALL) text-anchor="middle" { (words) }
    }
}

fn numbers(outline: &Outline) -> [f64; 4] {
    [outline.left, outline.bottom, outline.width, outline.height].map(Length::in_mm)
}

/// A number as SVG wants it, to the micrometre.
fn number(value: f64) -> String {
    let text = format!("{value:.3}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}
