//! A bay in three views with what goes into it, its way in, and the opening to be cut.

mod opening;
mod room;
mod way;

use spile_build::file::PartKind;
use spile_build::{Build, Item};
use spile_fit::{Distance, Picture, mark_out, picture};

use crate::drawing::{Drawing, Rows, Width};
use crate::ink::figure;

/// Three views of every item that the job brings into a bay or moves there, or of every item in a
/// bay where there is no job; its way in; and its opening, where one is cut.
pub(crate) fn drawings(before: &Build, after: Option<&Build>, width: Width) -> Vec<Drawing> {
    let build = after.unwrap_or(before);
    let changes = |name: &String, item: &Item| {
        after.is_none()
            || before
                .items
                .get(name)
                .is_none_or(|old| old.place != item.place || old.part != item.part)
    };
    let shown: Vec<(&String, &Item)> = build
        .items
        .iter()
        .filter(|(name, item)| changes(name, item) && item.place.is_some())
        .collect();
    let is_bought = |item: &Item| item.part.kind != PartKind::Furniture;
    let bought = shown.iter().any(|(_, item)| is_bought(item));
    let brought: Vec<&str> = match after {
        Some(_) => shown.iter().map(|(name, _)| name.as_str()).collect(),
        None => Vec::new(),
    };
    let mut drawings = Vec::new();
    for (name, item) in shown {
        // What is built is seen with what stands on it.
        if bought && !is_bought(item) {
            continue;
        }
        let Some(picture) = picture(build, name) else { continue };
        drawings.push(room::views(&picture, &item.about, &brought, width));
        drawings.push(way::drawing(&picture, build, &brought, width));
        if let Ok(marks) = mark_out(build, name) {
            drawings.push(opening::drawing(&marks, after.is_some(), width));
        }
    }
    drawings
}

/// The letters of the smallest distances: a, b, c.
fn letter(place: usize) -> String {
    char::from(b'a' + u8::try_from(place % 26).unwrap_or(0)).to_string()
}

fn table(picture: &Picture) -> Rows {
    let row = |(place, distance): (usize, &Distance)| {
        vec![
            letter(place),
            distance.way.to_owned(),
            distance.what.clone(),
            figure(distance.length.in_mm()),
        ]
    };
    Rows {
        head: ["mark", "way", "to", "mm"].map(str::to_owned).to_vec(),
        rows: picture.distances.iter().enumerate().map(row).collect(),
    }
}
