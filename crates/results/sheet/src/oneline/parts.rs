//! What the diagram is put together from: conductors, fuses, nodes, sleeves, verdicts.

use maud::html;
use spile_answer::Verdict;
use spile_quantity::{Current, Voltage};

use super::rows::Change;
use crate::ink::{Anchor, Box2, Ink, Letter, Line, Spot, number, text_width};

/// A figure of volts or a size of cable.
pub(super) const LARGE: Letter = Letter { class: "t-l", size: 14.0, bold: true };
/// A word in bold, small.
pub(super) const STRONG: Letter = Letter { class: "t-b t-s", size: 11.5, bold: true };

/// How to read the diagram.
pub(super) const LEGEND: &str =
    "volts to the bank’s minus; each conductor is drawn as thick as its copper, 1 px a millimetre";

pub(super) fn volts(voltage: Voltage) -> String {
    format!("{:.2} V", voltage.in_v()).replace("-0.00", "0.00").replace('-', "−")
}

pub(super) fn amps(current: Current) -> String {
    format!("{:.1} A", current.in_a())
}

pub(super) fn verdict_words(verdict: Verdict) -> String {
    match verdict.reason() {
        Some(reason) => format!("{}: {}", verdict.word(), reason.word()),
        None => verdict.word().to_owned(),
    }
}

/// A text cut to a width, with dots where something is left out.
pub(super) fn fitted(text: &str, letter: &Letter, most: f64) -> String {
    let wide = |text: &str| text_width(text, letter.size, letter.bold);
    if wide(text) <= most {
        return text.to_owned();
    }
    let mut cut: String = text.to_owned();
    while !cut.is_empty() && wide(&format!("{cut}…")) > most {
        cut.pop();
    }
    format!("{}…", cut.trim_end_matches([' ', ',']))
}

/// A text on its base line, no wider than it may be.
pub(super) fn put(
    ink: &mut Ink,
    letter: &Letter,
    at: [f64; 2],
    anchor: Anchor,
    text: &str,
    most: f64,
) {
    if !text.is_empty() {
        ink.text(letter, &Spot { at, anchor, upright: false }, &fitted(text, letter, most));
    }
}

/// A conductor along a straight line, as thick as its copper.
pub(super) fn wire(ink: &mut Ink, from: [f64; 2], to: [f64; 2], thick: f64, change: Change) {
    let (class, thick) = match change {
        Change::Stays => ("wire", Some(thick)),
        Change::New => ("wire a", Some(thick)),
        Change::Gone => ("wire gone", None),
    };
    for [_, y] in [from, to] {
        ink.reached(y);
    }
    ink.put(&html! {
        line class=(class) x1=(number(from[0])) y1=(number(from[1])) x2=(number(to[0])) y2=(number(to[1])) stroke-width=[thick.map(number)] {}
    });
}

/// A fuse on a conductor, in its published colour where it has one.
pub(super) fn fuse(ink: &mut Ink, at: Box2, colour: Option<&str>) {
    let class = colour.map_or_else(|| "out solid".to_owned(), |word| format!("out f-{word}"));
    ink.reached(at.top);
    ink.reached(at.bottom);
    let [x, y] = at.middle().map(number);
    let through = if at.width() >= at.height() {
        format!("M{} {y}H{}", number(at.left), number(at.right))
    } else {
        format!("M{x} {}V{}", number(at.top), number(at.bottom))
    };
    let core = if colour.is_some_and(|word| word != "clear") { "thin core" } else { "thin" };
    ink.put(&html! {
        rect class=(class) x=(number(at.left)) y=(number(at.top)) width=(number(at.width())) height=(number(at.height())) {}
        path class=(core) d=(through) {}
    });
}

/// A place where a meter reads: an open dot.
pub(super) fn node(ink: &mut Ink, [x, y]: [f64; 2]) {
    ink.circle(Line::Solid, [x, y], 3.4);
}

/// A bolt on the body: a filled dot.
pub(super) fn stud(ink: &mut Ink, at: [f64; 2]) {
    ink.circle(Line::Filled, at, 5.0);
}

/// The sleeve of a conductor, with its way and its sign.
pub(super) fn sleeve(ink: &mut Ink, [x, y]: [f64; 2], way: &str, positive: bool) {
    let text = format!("{way} {}", if positive { '+' } else { '−' });
    let wide = text_width(&text, 11.0, true) + 8.0;
    let class = if positive { "thin s-plus" } else { "thin s-minus" };
    ink.put(&html! {
        rect class=(class) x=(number(x - wide / 2.0)) y=(number(y - 7.5)) width=(number(wide)) height="15" {}
        text class="s-t" x=(number(x)) y=(number(y + 4.0)) text-anchor="middle" { (text) }
    });
}

/// A bar to which many conductors come.
pub(super) fn bar(ink: &mut Ink, x: f64, from: f64, to: f64) {
    wire(ink, [x, from], [x, to], 4.0, Change::Stays);
}

/// The body's steel along an upright line.
pub(super) fn steel(ink: &mut Ink, x: f64, from: f64, to: f64) {
    let at = Box2::of([x - 5.0, from], [x + 5.0, to]);
    ink.rect(Line::Thin, at);
    ink.hatch(&at.corners());
}

/// The shape of a verdict about a place.
pub(crate) fn shape(ink: &mut Ink, [x, y]: [f64; 2], verdict: Verdict) {
    let at = |dx: f64, dy: f64| format!("{} {}", number(x + dx), number(y + dy));
    let ring =
        |class: &str| html! { circle class=(class) cx=(number(x)) cy=(number(y)) r="5.5" {} };
    let drawn = match verdict {
        Verdict::Good => ring("v-line"),
        Verdict::Open => ring("v-line v-dash"),
        Verdict::Care(_) => {
            let path = format!("M{}L{}L{}Z", at(0.0, -6.0), at(6.5, 5.5), at(-6.5, 5.5));
            html! { path class="v-line" d=(path) {} }
        }
        Verdict::Stop => {
            let corners = [
                (-2.9, -7.0),
                (2.9, -7.0),
                (7.0, -2.9),
                (7.0, 2.9),
                (2.9, 7.0),
                (-2.9, 7.0),
                (-7.0, 2.9),
                (-7.0, -2.9),
            ];
            let path = corners.map(|(dx, dy)| at(dx, dy)).join("L");
            html! {
                path class="inkf" d={ "M" (path) "Z" } {}
                path class="v-bar" d={ "M" (at(-3.2, 0.0)) "h6.4" } {}
            }
        }
    };
    ink.put(&drawn);
}

/// An arrow along a conductor with the amperes before its foot.
pub(super) fn current(ink: &mut Ink, from: [f64; 2], to: [f64; 2], words: &str) {
    let right = to[0] > from[0];
    let (x, anchor) =
        if right { (from[0] - 6.0, Anchor::End) } else { (from[0] + 6.0, Anchor::Start) };
    put(ink, &STRONG, [x, from[1] + 4.0], anchor, words, 80.0);
    let head = if right { -8.0 } else { 8.0 };
    let path = format!(
        "M{} {}H{}m{head} -3.6L{} {}l{head} 3.6",
        number(from[0]),
        number(from[1]),
        number(to[0]),
        number(to[0]),
        number(to[1])
    );
    ink.path(Line::Thin, &path);
}
