//! The vehicle, its bays, panels and items: made typed.

use std::collections::BTreeMap;

use spile_answer::{Basis, Given};
use spile_quantity::{Length, Ranged};

use super::part::size;
use super::place::{of_bay, place};
use super::plausible as p;
use super::shape::row_unit;
use super::{Resolver, named, text, typical};
use crate::file::{
    BayFile, BuildFile, Direction, DoorFile, ItemFile, MeasuredAt, PanelFile, SizeFile, VehicleKind,
};
use crate::model::{AtHeight, Bay, Door, Item, Named, Panel, Part, Size, Vehicle};
use crate::read::{Record, Said, nearest, suggestion};

pub(super) fn vehicle(whole: &BuildFile, r: &mut Resolver<'_>) -> Vehicle {
    let file = whole.vehicle.as_ref().map(|said| said.value.clone()).unwrap_or_default();
    let inside = file.inside.as_ref().map(|said| said.value.clone()).unwrap_or_default();
    Vehicle {
        kind: file.kind.map_or(VehicleKind::Van, |kind| kind.value),
        outside: [&file.length, &file.width, &file.height].map(|q| r.taped(q, p::OUTSIDE_M)),
        floor: r.taped(&file.floor, p::FLOOR_M),
        wheelbase: r.taped(&file.wheelbase, p::OUTSIDE_M),
        rear_axle: r.taped(&file.rear_axle, p::DISTANCE_M),
        axles: super::axle::axles(whole, r),
        inside: [&inside.length, &inside.width, &inside.height].map(|q| r.taped(q, p::INSIDE_M)),
        doors: named(&file.doors, |name, door| one_door(name, door, r)),
    }
}

fn one_door(name: &Said<String>, file: &DoorFile, r: &mut Resolver<'_>) -> Option<Door> {
    let width = r.taped(&file.width, p::DOOR_M);
    let height = r.taped(&file.height, p::DOOR_M);
    r.lacking(&name.at, "a door", &file.lacks(&["width", "height"]));
    Some(Door { side: file.side.as_ref().map(|side| side.value), width: width?, height: height? })
}

/// Every bay of the build.
pub(super) fn bays(file: &BuildFile, r: &mut Resolver<'_>) -> Named<Bay> {
    named(&file.bays, |name, bay| one_bay(name, bay, r))
}

fn one_bay(name: &Said<String>, file: &BayFile, r: &mut Resolver<'_>) -> Option<Bay> {
    let opens = file.opens.as_ref().map_or(Direction::Left, |opens| opens.value);
    if let (Direction::Down, Some(said)) = (opens, &file.opens) {
        r.reader.tell(
            &said.at,
            "a bay cannot open downwards",
            "not a way in",
            "choose left, right, front, rear or up",
        );
    }
    let place = of_bay(file.place.as_ref(), r);
    let Some(said) = &file.size else {
        let hint = "add size = { width = \"520 mm\", height = \"1140 mm\", depth = \"540 mm\" }, as you face its opening";
        let what = format!("the bay `{}`", name.value);
        r.reader.lacking(&name.at, &what, &file.lacks(&["size"]), hint);
        return None;
    };
    let size = size(said, p::BAY_M, Basis::Measured, r)?;
    let depths = at_heights(file.depths.as_ref(), &size, r);
    let widths = at_heights(file.widths.as_ref(), &size, r);
    let diagonals = match file.diagonals.as_slice() {
        [] => None,
        [a, b] => {
            let [a, b] = [a, b].map(|said| r.taped(&Some(said.clone()), p::BAY_M));
            Some([a?, b?])
        }
        [_, _, third, ..] => {
            r.reader.tell(
                &third.at,
                "an opening has two diagonals",
                "one too many",
                "give both, corner to corner",
            );
            None
        }
        [one] => {
            r.reader.tell(
                &one.at,
                "one diagonal says nothing",
                "the other is missing",
                "give both, corner to corner",
            );
            None
        }
    };
    let opening = file.opening.as_ref().and_then(|said| {
        let width = r.taped(&said.value.width, p::BAY_M);
        let height = r.taped(&said.value.height, p::BAY_M);
        r.lacking(&said.at, "an opening", &said.value.lacks(&["width", "height"]));
        Some([width?, height?])
    });
    Some(Bay {
        about: text(&file.about),
        opens,
        place,
        depths,
        widths,
        diagonals,
        opening,
        in_front: r.taped(&file.in_front, p::ROOM_M),
        conductance: r.given(&file.conductance, Basis::Measured, p::CONDUCTANCE),
        air: file.air.as_ref().map(|said| super::air::bay(&said.value, r)),
        size,
    })
}

/// Measures at heights, sorted by height.
fn at_heights(said: Option<&Said<MeasuredAt>>, size: &Size, r: &mut Resolver<'_>) -> Vec<AtHeight> {
    let Some(said) = said else { return Vec::new() };
    let file = &said.value;
    let missing = file.lacks(&["unit", "rows"]);
    let hint = "write it like { unit = \"mm\", rows = [[0, 566], [700, 552]] }";
    r.reader.lacking(&said.at, "this table of measures", &missing, hint);
    let scale = file.unit.as_ref().and_then(|unit| row_unit(unit, r));
    let (Some(scale), Some(rows)) = (scale, &file.rows) else { return Vec::new() };
    let tolerance = r
        .given(&file.tolerance, Basis::Measured, p::TOLERANCE_M)
        .unwrap_or_else(|| typical::<Length>("tape-tolerance"))
        .likely();
    let mut measures = Vec::new();
    for row in &rows.value.0 {
        let [height, value] = row.value.map(scale);
        if height < Length::m(0.0)
            || height > size.height.value.high
            || !p::BAY_M.hold(&Ranged::exactly(value))
            || value <= tolerance
        {
            r.reader.tell(
                &row.at,
                "this measure lies outside its bay",
                "outside the bay",
                "a row is [height above the bay's floor, what was measured there]; check the unit",
            );
            continue;
        }
        measures.push(AtHeight {
            height,
            value: Given {
                value: Ranged { low: value - tolerance, likely: value, high: value + tolerance },
                basis: Basis::Measured,
                source: r.files.place(&row.at).into(),
                how: "Take it again, more exactly.".into(),
            },
        });
    }
    measures.sort_by(|a, b| a.height.in_m().total_cmp(&b.height.in_m()));
    if let Some(twice) = measures.windows(2).find(|pair| pair[0].height == pair[1].height) {
        let height = twice[0].height.in_mm();
        r.reader.tell(
            &rows.at,
            format!("two measures stand at one height, {height} mm"),
            "twice",
            "keep the one you trust",
        );
    }
    measures
}

/// Every panel of the build.
pub(super) fn panels(file: &BuildFile, r: &mut Resolver<'_>) -> Named<Panel> {
    named(&file.panels, |name, panel: &PanelFile| {
        let what = format!("the panel `{}`", name.value);
        let place = place(panel.place.as_ref(), file, r);
        r.known(panel.closes.as_ref(), "bay", &file.bays);
        let hint = "write it like closes = \"galley\", size = { width = \"560 mm\", height = \"1140 mm\", depth = \"12 mm\" }; its depth is its thickness";
        r.reader.lacking(&name.at, &what, &panel.lacks(&["closes", "size"]), hint);
        let size = panel.size.as_ref().and_then(|said| panel_size(said, r));
        Some(Panel {
            closes: panel.closes.as_ref()?.value.clone(),
            material: text(&panel.material),
            size: size?,
            place,
            removable: panel.removable.as_ref().is_none_or(|said| said.value),
        })
    })
}

fn panel_size(said: &Said<SizeFile>, r: &mut Resolver<'_>) -> Option<Size> {
    let file = &said.value;
    let width = r.taped(&file.width, p::PANEL_M);
    let height = r.taped(&file.height, p::PANEL_M);
    let depth = r.given(&file.depth, Basis::Measured, p::SHEET_M);
    let missing = file.lacks(&["width", "height", "depth"]);
    let hint = "add what is missing; the depth of a panel is its thickness";
    r.reader.lacking(&said.at, "the size of a panel", &missing, hint);
    Some(Size { width: width?, height: height?, depth: depth? })
}

/// Every item of the build.
pub(super) fn items(
    file: &BuildFile,
    parts: &BTreeMap<String, Part>,
    r: &mut Resolver<'_>,
) -> Named<Item> {
    named(&file.items, |name, item: &ItemFile| {
        let placed = place(item.place.as_ref(), file, r);
        r.known(item.panel.as_ref(), "panel", &file.panels);
        r.known(item.condenser_in.as_ref(), "bay", &file.bays);
        let mass = r.given(&item.mass, Basis::Measured, p::PART_KG);
        let contents = r.given(&item.contents, Basis::Measured, p::CONTENTS_KG);
        let part_name = match &item.part {
            None if item.lacks(&["part"]).is_empty() => return None,
            said => said.as_ref().unwrap_or(name),
        };
        if !file.parts.knows(&part_name.value) {
            let names: Vec<&str> = file.parts.names().collect();
            let part = &part_name.value;
            let mut hint = suggestion(part, &names);
            if nearest(part, &names).is_none() {
                hint.push_str(&format!(
                    "; a part has a file parts/{part}.toml or a heading [parts.{part}]"
                ));
            }
            r.reader.tell(
                &part_name.at,
                format!("there is no part `{part}`"),
                "not in parts",
                hint,
            );
        }
        let part = parts.get(&part_name.value)?;
        let of_part = file.parts.get(&part.name);
        let about = item.about.as_ref().or_else(|| of_part?.about.as_ref());
        Some(Item {
            about: about.map_or_else(|| name.value.replace('-', " "), |said| said.value.clone()),
            part: part.clone(),
            place: item.place.as_ref().map(|_| placed),
            panel: item.panel.as_ref().map(|said| said.value.clone()),
            condenser_in: item.condenser_in.as_ref().map(|said| said.value.clone()),
            mass: mass.or_else(|| r.papers(&of_part?.mass, p::PART_KG)),
            contents,
            hours: r.given(&item.hours, Basis::Measured, p::DAILY_S),
            on: r.given(&item.on, Basis::Measured, p::DAILY_S),
            removable: item.removable.as_ref().is_some_and(|said| said.value),
            held: super::hold::held(item.held.as_ref(), r),
        })
    })
}
