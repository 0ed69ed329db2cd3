//! The opening on its panel, with its marks from the datum corner.

use spile_fit::{From, Mark, MarkOut};
use spile_quantity::Length;

use crate::drawing::{Drawing, Rows, Width};
use crate::ink::{Anchor, Ink, Letter, Line, Spot, View, figure, scale_words, text_width, wrapped};
use crate::layout::spread;

/// The face of the panel with what is cut and drilled.
pub(super) fn drawing(marks: &MarkOut, by_job: bool, width: Width) -> Drawing {
    let [wide, high] = marks.size.map(Length::in_mm);
    let widest = marks.marks.iter().filter(|mark| mark.from == From::Below);
    let widest = widest.map(|mark| text_width(&words(mark), Letter::NOTE.size, false));
    let left = widest.fold(40.0, f64::max) + lead(width) + 10.0;
    let (right, most) = match width {
        Width::Wide => (60.0, 430.0),
        Width::Narrow => (12.0, 420.0),
    };
    let scale = (wide / (width.units() - left - right)).max(high / most);
    let view = View { name: "panel", axes: "right up", scale, origin: [left, 40.0 + high / scale] };
    let mut ink = Ink::new(width.units());
    let title = format!("the opening for {} in the panel {}", marks.item, marks.panel);
    ink.text(&Letter::TITLE, &Spot::from([10.0, 8.0]), "face of the panel");
    ink.view(&view, |ink| {
        ink.rect(Line::Seen, view.rect([0.0, 0.0], [wide, high]));
        for behind in &marks.behind {
            let [x, y] = [behind.outline.left, behind.outline.bottom].map(Length::in_mm);
            let size = [behind.outline.width, behind.outline.height].map(Length::in_mm);
            let low = [x.max(0.0), y.max(0.0)];
            let top = [(x + size[0]).min(wide), (y + size[1]).min(high)];
            if low[0] < top[0] && low[1] < top[1] {
                let at = view.rect(low, top);
                ink.thing(&format!("behind.{}", behind.what), &behind.what, |ink| {
                    if behind.keep_out {
                        ink.hatch(&at.corners());
                    }
                    ink.rect(Line::Hidden, at);
                });
            }
        }
        cut(ink, &view, marks, by_job);
        let datum = view.at([0.0, 0.0]);
        ink.circle(Line::Solid, datum, 5.0);
        ink.line(Line::Thin, [datum[0] - 9.0, datum[1]], [datum[0] + 9.0, datum[1]]);
        ink.line(Line::Thin, [datum[0], datum[1] - 9.0], [datum[0], datum[1] + 9.0]);
        running(ink, &view, marks, width);
    });
    let y = ink.bottom() + 20.0;
    for (place, line) in
        wrapped(&crate::text::orientation(marks), &Letter::NOTE, width.units() - 20.0)
            .iter()
            .enumerate()
    {
        ink.text(&Letter::NOTE, &Spot::from([10.0, y + place as f64 * 15.0]), line);
    }
    Drawing {
        title: title.clone(),
        scale: Some(scale_words(scale)),
        svg: ink.finish(
            width.class(),
            &title,
            "Marks run from the lower left corner of the face.",
            None,
        ),
        table: Some(table(marks)),
    }
}

/// The opening, its corner drillings, its diagonals and its fixing holes.
fn cut(ink: &mut Ink, view: &View, marks: &MarkOut, by_job: bool) {
    let (line, thin) =
        if by_job { (Line::AddedBody, Line::AddedThin) } else { (Line::Cut, Line::Thin) };
    let [left, bottom, wide, high] =
        [marks.opening.left, marks.opening.bottom, marks.opening.width, marks.opening.height]
            .map(Length::in_mm);
    let at = view.rect([left, bottom], [left + wide, bottom + high]);
    let radius = view.units(marks.radius.in_mm());
    ink.thing(&format!("items.{}", marks.item), "the opening", |ink| ink.rounded(line, at, radius));
    let [a, b, c, d] = at.corners();
    ink.line(Line::Centre, a, c);
    ink.line(Line::Centre, b, d);
    let diagonal = marks.checks.iter().find(|check| check.what.starts_with("corner"));
    if let Some(check) = diagonal {
        let text = format!("{} both ways", figure(check.mm.in_mm()));
        ink.label(&Letter::NOTE, &[Spot::about(at.middle())], &text);
    }
    for hole in &marks.holes {
        let [x, y] = view.at(hole.map(Length::in_mm));
        ink.circle(thin, [x, y], view.units(marks.hole.map_or(2.0, Length::in_mm) / 2.0).max(1.5));
    }
}

/// How far running dimensions are led from the panel.
const fn lead(width: Width) -> f64 {
    match width {
        Width::Wide => 34.0,
        Width::Narrow => 18.0,
    }
}

/// A mark's place in millimetres and inches.
fn words(mark: &Mark) -> String {
    let inch = mark.inch.map(|inch| format!("  {} in", inch.mark.figure()));
    format!("{}{}", mark.mm.figure(), inch.unwrap_or_default())
}

/// Running dimensions: from the left below the panel, from below on its left.
fn running(ink: &mut Ink, view: &View, marks: &MarkOut, width: Width) {
    let [datum_x, datum_y] = view.at([0.0, 0.0]);
    let labels = |from: From| -> Vec<&Mark> {
        let mut list: Vec<&Mark> = marks.marks.iter().filter(|mark| mark.from == from).collect();
        list.sort_by(|a, b| a.exact.in_m().total_cmp(&b.exact.in_m()));
        list.dedup_by(|a, b| a.mm.figure() == b.mm.figure());
        list
    };
    let below = labels(From::Below);
    let wanted: Vec<f64> =
        below.iter().map(|mark| -view.at([0.0, mark.exact.in_mm()])[1]).collect();
    let places = spread(&wanted, 16.0);
    let end = datum_x - lead(width);
    for (mark, place) in below.iter().zip(&places) {
        let y = view.at([0.0, mark.exact.in_mm()])[1];
        let at = [end, -place];
        ink.through(Line::Dim, &[[datum_x - 3.0, y], [datum_x - 10.0, y], at], false);
        ink.text(
            &Letter::NOTE,
            &Spot { at: [end - 4.0, -place + 4.0], anchor: Anchor::End, upright: false },
            &words(mark),
        );
    }
    let left = labels(From::Left);
    let wanted: Vec<f64> = left.iter().map(|mark| view.at([mark.exact.in_mm(), 0.0])[0]).collect();
    let places = spread(&wanted, 16.0);
    for (mark, place) in left.iter().zip(&places) {
        let x = view.at([mark.exact.in_mm(), 0.0])[0];
        let end = datum_y + 30.0;
        ink.through(Line::Dim, &[[x, datum_y + 3.0], [x, datum_y + 10.0], [*place, end]], false);
        let spot = Spot { at: [*place + 4.0, end + 4.0], anchor: Anchor::End, upright: true };
        ink.text(&Letter::NOTE, &spot, &words(mark));
    }
}

fn table(marks: &MarkOut) -> Rows {
    let row = |mark: &Mark| {
        vec![
            mark.name.clone(),
            mark.what.clone(),
            match mark.from {
                From::Left => "from the left",
                From::Below => "from below",
            }
            .to_owned(),
            mark.mm.figure(),
            mark.inch.map_or_else(String::new, |inch| inch.mark.figure()),
        ]
    };
    Rows {
        head: ["mark", "what", "where", "mm", "inch"].map(str::to_owned).to_vec(),
        rows: marks.marks.iter().map(row).collect(),
    }
}
