//! The vehicle in plan and from its side, with what stands in it.

use spile_build::{Build, Vehicle};

use crate::drawing::{Drawing, Rows, Width};
use crate::ink::{Ink, Line, View, figure, scale_words};

/// One drawing a view.
pub(crate) fn views(before: &Build, after: Option<&Build>, width: Width) -> Vec<Drawing> {
    let build = after.unwrap_or(before);
    let Some(room) = inside(&build.vehicle) else { return Vec::new() };
    vec![seen(room, 1, width), seen(room, 2, width)]
}

/// The inside, along, across and up \[mm\]; `None` where a side is not known.
fn inside(vehicle: &Vehicle) -> Option<[f64; 3]> {
    let [x, y, z] = &vehicle.inside;
    Some([x.as_ref()?, y.as_ref()?, z.as_ref()?].map(|given| given.likely().in_mm()))
}

/// The room in plan, or from the side where the second axis is the height.
fn seen(room: [f64; 3], up: usize, width: Width) -> Drawing {
    let (name, axes, title) = if up == 1 {
        ("plan", "x y", "plan, roof taken off")
    } else {
        ("side", "x z", "right side, panel taken off")
    };
    let margin = 40.0;
    let scale = room[0] / (width.units() - 2.0 * margin);
    let high = room[up] / scale;
    let view = View { name, axes, scale, origin: [margin, margin + high] };
    let mut ink = Ink::new(width.units());
    ink.rect(Line::Seen, view.rect([0.0, 0.0], [room[0], room[up]]));
    let ends = [view.at([0.0, 0.0])[0], view.at([room[0], 0.0])[0]];
    ink.dimension_across(margin + high + 24.0, ends, margin + high, &figure(room[0]));
    Drawing {
        title: title.to_owned(),
        scale: Some(scale_words(scale)),
        svg: ink.finish(width.class(), title, "", Some(&view)),
        table: Some(Rows {
            head: vec!["inside".to_owned(), "mm".to_owned()],
            rows: vec![vec!["length".to_owned(), figure(room[0])]],
        }),
    }
}
