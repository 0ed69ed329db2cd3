//! The way in: the body as it is carried, against each opening and in the aisle, to one scale.

use spile_build::Build;
use spile_fit::Picture;
use spile_quantity::Length;

use super::room::{BACK, RIGHT, Room, UP};
use crate::drawing::{Drawing, Rows, Width};
use crate::ink::{Ink, Letter, Line, Spot, View, figure, scale_words, text_width, wrapped};

/// Around each of the figures, in units: left for its upright dimensions, right, above, below.
const LEFT: f64 = 58.0;
const RIGHT_OF: f64 = 46.0;
const ABOVE: f64 = 34.0;
const BELOW: f64 = 62.0;

/// How high the highest of them is at most, in units, so that a van's stand in one row.
const HIGHEST: f64 = 175.0;

/// From one line of a title to the next.
const LINE: f64 = 16.0;

/// A clear space and what goes through it \[mm\].
struct Passage {
    title: String,
    clear: [f64; 2],
    body: [f64; 2],
    /// Whether it is seen from above, where something stands at its far side.
    is_aisle: bool,
}

/// The doors of the vehicle, the opening of the bay, and the aisle before it.
pub(super) fn drawing(picture: &Picture, build: &Build, brought: &[&str], width: Width) -> Drawing {
    let passages = passages(picture, build, brought);
    let by_job = brought.contains(&picture.item.as_str());
    let size = |one: &Passage| [0, 1].map(|i| one.clear[i].max(one.body[i]));
    let most = |i: usize| passages.iter().map(|one| size(one)[i]).fold(1.0, f64::max);
    let scale = (most(0) / (width.units() - LEFT - RIGHT_OF)).max(most(1) / HIGHEST);
    let titles: Vec<Vec<String>> = passages
        .iter()
        .map(|one| wrapped(&one.title, &Letter::TITLE, width.units() - LEFT - 8.0))
        .collect();
    let above = ABOVE + LINE * (titles.iter().map(Vec::len).max().unwrap_or(1) as f64 - 1.0);
    let mut ink = Ink::new(width.units());
    let (mut x, mut y) = (LEFT, 0.0);
    for (passage, title) in passages.iter().zip(&titles) {
        let titled = title.iter().map(|line| text_width(line, Letter::TITLE.size, true) + 8.0);
        let wide = titled.fold(size(passage)[0] / scale + RIGHT_OF, f64::max);
        if x > LEFT && x + wide > width.units() {
            (x, y) = (LEFT, y + above + most(1) / scale + BELOW);
        }
        // In a row they stand on one line.
        let origin = [x, y + above + most(1) / scale];
        let view = View { name: "way", axes: "right up", scale, origin };
        draw(&mut ink, &view, passage, title, by_job);
        x += wide + LEFT;
    }
    let title = format!("the way in for {}", picture.item);
    Drawing {
        title: title.clone(),
        scale: Some(scale_words(scale)),
        svg: ink.finish(
            width.class(),
            &title,
            "Carried upright, with its flange and its door on.",
            None,
        ),
        table: Some(table(&passages)),
    }
}

fn passages(picture: &Picture, build: &Build, brought: &[&str]) -> Vec<Passage> {
    let room = Room::of(picture, brought);
    let (outer, body) = (room.outer(), room.faced(&picture.body));
    let size = |faced: &[[f64; 2]; 3], i: usize| faced[i][1] - faced[i][0];
    let mm = |given: &spile_answer::Given<Length>| given.likely().in_mm();
    let mut passages: Vec<Passage> = Vec::new();
    for (name, door) in &build.vehicle.doors {
        passages.push(Passage {
            title: format!("door {name}"),
            clear: [mm(&door.width), mm(&door.height)],
            body: [size(&outer, RIGHT), size(&outer, UP)],
            is_aisle: false,
        });
    }
    let opening = build.bays.get(&picture.bay).and_then(|bay| bay.opening.as_ref());
    let clear = opening
        .map_or([room.size[RIGHT], room.size[UP]], |[width, height]| [mm(width), mm(height)]);
    let through = [size(&body, RIGHT), size(&body, UP)];
    passages.push(Passage {
        title: format!("bay {}", picture.bay),
        clear,
        body: through,
        is_aisle: false,
    });
    if let Some(far) = room.opposite() {
        passages.push(Passage {
            title: "drawn out".to_owned(),
            clear: [room.size[RIGHT], far],
            body: [size(&outer, RIGHT), size(&outer, BACK)],
            is_aisle: true,
        });
    }
    passages
}

fn draw(ink: &mut Ink, view: &View, passage: &Passage, title: &[String], by_job: bool) {
    let ([wide, high], [body_wide, body_high]) = (passage.clear, passage.body);
    let [x, top] = view.at([0.0, high.max(body_high)]);
    for (place, line) in title.iter().rev().enumerate() {
        ink.text(&Letter::TITLE, &Spot::from([x, top - 18.0 - place as f64 * LINE]), line);
    }
    let start = (wide - body_wide) / 2.0;
    let line = if by_job { Line::AddedBody } else { Line::Solid };
    ink.rect(line, view.rect([start, 0.0], [start + body_wide, body_high]));
    let clear = view.rect([0.0, 0.0], [wide, high]);
    if passage.is_aisle {
        // The bay's own face below, what stands opposite above.
        for y in [clear.bottom, clear.top] {
            ink.line(Line::Cut, [clear.left, y], [clear.right, y]);
        }
    } else {
        ink.rect(Line::Cut, clear);
        let [a, b] = [view.at([start, 0.0])[0], view.at([start + body_wide, 0.0])[0]];
        ink.dimension_across(clear.bottom + 22.0, [a, b], clear.bottom, &figure(body_wide));
        let ends = [clear.left, clear.right];
        ink.dimension_across(clear.bottom + 46.0, ends, clear.bottom + 26.0, &figure(wide));
    }
    ink.dimension_up(clear.left - 16.0, [clear.top, clear.bottom], clear.left, &figure(high));
    let [right, body_top] = view.at([start + body_wide, body_high]);
    ink.dimension_up(
        clear.right.max(right) + 24.0,
        [body_top, clear.bottom],
        right,
        &figure(body_high),
    );
}

fn table(passages: &[Passage]) -> Rows {
    let row = |passage: &Passage| {
        let [wide, high] = [0, 1].map(|i| [passage.clear[i], passage.body[i]]);
        let sizes = |[clear, body]: [f64; 2]| format!("{} of {}", figure(body), figure(clear));
        vec![passage.title.clone(), sizes(wide), sizes(high)]
    };
    Rows {
        head: ["opening", "across, mm", "up or ahead, mm"].map(str::to_owned).to_vec(),
        rows: passages.iter().map(row).collect(),
    }
}
