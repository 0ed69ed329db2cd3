//! The vehicle, its bays, what is in the way, and where things are: made typed.

use std::collections::BTreeMap;

use spile_answer::{Basis, Given};
use spile_quantity::{Length, Ranged};

use super::part::{incomplete, size};
use super::plausible as p;
use super::{Resolver, named, text, typical};
use crate::file::{
    BayFile, BuildFile, Direction, DoorFile, FrameFile, ItemFile, KeepOutFile, MeasuredAt,
    ObstacleFile, PanelFile, PlaceFile, ProfileFile, Q, SizeFile, SpanFile, VehicleKind,
};
use crate::model::{
    Anchor, AtHeight, Bay, Door, Hindrance, Item, Named, Obstacle, Panel, Part, Place, Shape, Size,
    Vehicle,
};
use crate::read::Said;
use crate::source::At;

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
    let width = r.taped(&file.width, p::OUTSIDE_M);
    let height = r.taped(&file.height, p::OUTSIDE_M);
    incomplete(
        &name.at,
        "a door",
        "its clear width and height",
        [file.width.is_none(), file.height.is_none()],
        r,
    );
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
    let place = file.place.as_ref().map_or_else(nowhere, |said| place(said, r));
    if let Some(said) = &file.place
        && let Some(inside) = &said.value.r#in
    {
        r.reader.tell(
            &inside.at,
            "a bay is told from the inside of the vehicle",
            "a bay in a bay",
            "leave `in` out and measure from the vehicle's own faces",
        );
    }
    let Some(said) = &file.size else {
        r.reader.tell(
            &name.at,
            format!("the bay `{}` has no size", name.value),
            "`size` is missing here",
            "add size = { width = \"520 mm\", height = \"1140 mm\", depth = \"540 mm\" }, as you face its opening",
        );
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
        incomplete(
            &said.at,
            "an opening",
            "width and height",
            [said.value.width.is_none(), said.value.height.is_none()],
            r,
        );
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
        in_front: r.taped(&file.in_front, p::DISTANCE_M),
        conductance: r.given(&file.conductance, Basis::Measured, p::CONDUCTANCE),
        air: file.air.as_ref().map(|said| super::air::bay(&said.value, r)),
        size,
    })
}

/// Measures at heights, sorted by height.
fn at_heights(said: Option<&Said<MeasuredAt>>, size: &Size, r: &mut Resolver<'_>) -> Vec<AtHeight> {
    let Some(said) = said else { return Vec::new() };
    let file = &said.value;
    let Some(rows) = &file.rows else {
        r.reader.tell(
            &said.at,
            "measures at heights have no rows",
            "`rows` is missing here",
            "add rows = [[0, 566], [700, 552]]",
        );
        return Vec::new();
    };
    let Some(scale) = row_unit(file.unit.as_ref(), &said.at, r) else { return Vec::new() };
    let tolerance = r
        .given(&file.tolerance, Basis::Measured, p::TOLERANCE_M)
        .unwrap_or_else(|| typical::<Length>("tape-tolerance"))
        .likely();
    let mut measures = Vec::new();
    for row in &rows.value.0 {
        let [height, value] = row.value.map(scale);
        if height < Length::m(0.0)
            || height > size.height.value.high
            || value.in_m() < 0.02
            || value.in_m() > 15.0
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
                how: "take it again, more exactly".into(),
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

/// What turns a plain number of a row into a length, by the unit named beside the rows.
pub(super) fn row_unit(
    unit: Option<&Said<String>>,
    at: &At,
    r: &mut Resolver<'_>,
) -> Option<fn(f64) -> Length> {
    let Some(unit) = unit else {
        r.reader.tell(
            at,
            "the rows have no unit",
            "`unit` is missing here",
            "add unit = \"mm\" beside the rows",
        );
        return None;
    };
    match unit.value.trim() {
        "mm" => Some(Length::mm),
        "cm" => Some(|cm| Length::mm(cm * 10.0)),
        "m" => Some(Length::m),
        "in" => Some(|inches| Length::mm(inches * 25.4)),
        other => {
            r.reader.tell(
                &unit.at,
                format!("rows cannot be in `{other}`"),
                "not a unit for rows",
                "use mm, cm, m or in",
            );
            None
        }
    }
}

fn nowhere() -> Place {
    Place {
        bay: None,
        on: None,
        faces: None,
        x: Anchor::Unsaid,
        y: Anchor::Unsaid,
        z: Anchor::Unsaid,
    }
}

fn place(said: &Said<PlaceFile>, r: &mut Resolver<'_>) -> Place {
    let file = &said.value;
    let x = anchor(&file.from_rear, &file.from_front, "from_rear", "from_front", r);
    let y = anchor(&file.from_right, &file.from_left, "from_right", "from_left", r);
    let mut z = anchor(&file.above, &file.below, "above", "below", r);
    let on = file.on.as_ref().map(|said| said.value.clone());
    if let Some(on_said) = &file.on {
        if !matches!(z, Anchor::Unsaid) {
            r.reader.tell(
                &on_said.at,
                "a thing that stands on something needs no height",
                "told twice",
                "keep either `on` or `above`",
            );
        }
        if on_said.value == "floor" {
            z = Anchor::Low(Given {
                value: Ranged::exactly(Length::m(0.0)),
                basis: Basis::Measured,
                source: r.files.place(&on_said.at).into(),
                how: "it stands on the floor".into(),
            });
        }
    }
    Place {
        bay: file.r#in.as_ref().map(|said| said.value.clone()),
        on: on.filter(|on| on != "floor"),
        faces: file.faces.as_ref().map(|said| said.value),
        x,
        y,
        z,
    }
}

fn anchor(
    low: &Q<Length>,
    high: &Q<Length>,
    low_key: &str,
    high_key: &str,
    r: &mut Resolver<'_>,
) -> Anchor {
    if let (Some(_), Some(said)) = (low, high) {
        r.reader.tell(
            &said.at,
            format!("both {low_key} and {high_key} are said"),
            "one too many",
            "keep the one you measured; the other follows from the size",
        );
    }
    match (r.taped(low, p::DISTANCE_M), r.taped(high, p::DISTANCE_M)) {
        (Some(low), _) => Anchor::Low(low),
        (None, Some(high)) => Anchor::High(high),
        (None, None) => Anchor::Unsaid,
    }
}

fn known_place(
    said: Option<&Said<PlaceFile>>,
    bays: &Named<Bay>,
    file: &BuildFile,
    r: &mut Resolver<'_>,
) {
    if let Some(said) = said {
        r.known(
            said.value.r#in.as_ref(),
            "bay",
            file.bays.names().chain(bays.keys().map(String::as_str)),
        );
    }
}

/// Everything that is in the way: obstacles, members of the frame, keep-out zones.
pub(super) fn obstacles(
    file: &BuildFile,
    bays: &Named<Bay>,
    r: &mut Resolver<'_>,
) -> Named<Obstacle> {
    let mut all = Named::new();
    for (name, ObstacleFile { kind, place, size, profile }) in file.obstacles.iter() {
        let what = kind.as_ref().map_or_else(|| name.value.clone(), |kind| kind.value.clone());
        put(
            &mut all,
            name,
            what,
            Hindrance::Obstacle,
            place.as_ref(),
            size.as_ref(),
            profile.as_ref(),
            bays,
            file,
            r,
        );
    }
    for (name, FrameFile { material, place, size, profile, wall, belt }) in file.frame.iter() {
        r.taped(wall, p::SHEET_M);
        let what = material.as_ref().map_or_else(|| "frame".to_owned(), |said| said.value.clone());
        let belt = belt.as_ref().is_some_and(|belt| belt.value);
        put(
            &mut all,
            name,
            what,
            Hindrance::Frame { belt },
            place.as_ref(),
            size.as_ref(),
            profile.as_ref(),
            bays,
            file,
            r,
        );
    }
    for (name, KeepOutFile { what, place, size, profile }) in file.keep_out.iter() {
        let what = what.as_ref().map_or_else(|| name.value.clone(), |said| said.value.clone());
        put(
            &mut all,
            name,
            what,
            Hindrance::KeepOut,
            place.as_ref(),
            size.as_ref(),
            profile.as_ref(),
            bays,
            file,
            r,
        );
    }
    all
}

#[expect(clippy::too_many_arguments, reason = "one call for each of three like records")]
fn put(
    all: &mut Named<Obstacle>,
    name: &Said<String>,
    what: String,
    hindrance: Hindrance,
    placed: Option<&Said<PlaceFile>>,
    span: Option<&Said<SpanFile>>,
    profile: Option<&Said<ProfileFile>>,
    bays: &Named<Bay>,
    file: &BuildFile,
    r: &mut Resolver<'_>,
) {
    known_place(placed, bays, file, r);
    let shape = match (span, profile) {
        (Some(span), None) => span_shape(span, r),
        (None, Some(profile)) => profile_shape(profile, r),
        (Some(_), Some(profile)) => {
            r.reader.tell(
                &profile.at,
                format!("`{}` has a size and a profile", name.value),
                "one too many",
                "keep the size of a box, or the profile of anything else",
            );
            None
        }
        (None, None) => {
            r.reader.tell(
                &name.at,
                format!("`{}` has no shape", name.value),
                "size or profile is missing here",
                "add size = { length = \"..\", width = \"..\", height = \"..\" }, or a profile",
            );
            None
        }
    };
    let place = placed.map_or_else(nowhere, |said| place(said, r));
    if all.contains_key(&name.value) {
        r.reader.tell(
            &name.at,
            format!("`{}` is the name of another thing in the way", name.value),
            "used twice",
            "obstacles, frame and keep-out zones share their names: choose another",
        );
    }
    if let Some(shape) = shape {
        all.insert(name.value.clone(), Obstacle { what, hindrance, shape, place });
    }
}

fn span_shape(said: &Said<SpanFile>, r: &mut Resolver<'_>) -> Option<Shape> {
    let file = &said.value;
    let sides = [&file.length, &file.width, &file.height];
    let missing = sides.map(Option::is_none);
    let [length, width, height] = sides.map(|q| r.taped(q, p::SPAN_M));
    incomplete(
        &said.at,
        "the size of a thing fixed to the vehicle",
        "length, width and height",
        missing,
        r,
    );
    Some(Shape::Box([length?, width?, height?]))
}

fn profile_shape(said: &Said<ProfileFile>, r: &mut Resolver<'_>) -> Option<Shape> {
    let file = &said.value;
    incomplete(
        &said.at,
        "a profile",
        "columns, unit, rows and carried",
        [file.columns.is_empty(), file.unit.is_none(), file.rows.is_none(), file.carried.is_none()],
        r,
    );
    let carried = r.taped(&file.carried, p::SPAN_M)?;
    let scale = row_unit(file.unit.as_ref(), &said.at, r)?;
    let [a, b] = file.columns.as_slice() else {
        r.reader.tell(
            &said.at,
            "a profile has two columns",
            "not two columns",
            "write columns = [\"from_rear\", \"above\"]",
        );
        return None;
    };
    let [a_axis, b_axis] = [column(a, r)?, column(b, r)?];
    if a_axis.0 == b_axis.0 {
        r.reader.tell(
            &b.at,
            "both columns of the profile run along one direction",
            "the same direction",
            "choose two of: along (from_rear), across (from_left), up (above)",
        );
        return None;
    }
    let rows = file.rows.as_ref()?;
    let points: Vec<[f64; 2]> =
        rows.value.0.iter().map(|row| row.value.map(|number| scale(number).in_m())).collect();
    if points.len() < 3 {
        r.reader.tell(
            &rows.at,
            "a profile needs at least three corners",
            "too few corners",
            "give the corners one after the other round the shape",
        );
        return None;
    }
    for row in &rows.value.0 {
        if row.value.iter().any(|number| scale(*number).in_m().abs() > 20.0) {
            r.reader.tell(
                &row.at,
                "this corner lies outside any vehicle",
                "far outside",
                "check the unit beside the rows",
            );
            return None;
        }
    }
    let tolerance = r
        .given(&file.tolerance, Basis::Measured, p::TOLERANCE_M)
        .unwrap_or_else(|| typical::<Length>("tape-tolerance"));
    Some(Shape::Profile { axes: [a_axis, b_axis], points, tolerance, carried })
}

/// The axis of a profile's column, and whether it runs from the low face.
fn column(said: &Said<String>, r: &mut Resolver<'_>) -> Option<(usize, bool)> {
    const COLUMNS: [(&str, (usize, bool)); 6] = [
        ("from_rear", (0, true)),
        ("from_front", (0, false)),
        ("from_right", (1, true)),
        ("from_left", (1, false)),
        ("above", (2, true)),
        ("below", (2, false)),
    ];
    let found = COLUMNS.iter().find(|(word, _)| *word == said.value).map(|(_, axis)| *axis);
    if found.is_none() {
        r.known(Some(said), "direction", COLUMNS.iter().map(|(word, _)| *word));
    }
    found
}

/// Every panel of the build.
pub(super) fn panels(file: &BuildFile, bays: &Named<Bay>, r: &mut Resolver<'_>) -> Named<Panel> {
    named(&file.panels, |name, panel: &PanelFile| {
        known_place(panel.place.as_ref(), bays, file, r);
        let Some(closes) = &panel.closes else {
            r.reader.tell(
                &name.at,
                format!("the panel `{}` does not say which bay it closes", name.value),
                "`closes` is missing here",
                "add closes = \"the bay's name\"",
            );
            return None;
        };
        if !r.known(Some(closes), "bay", file.bays.names()) {
            return None;
        }
        let Some(said) = &panel.size else {
            r.reader.tell(&name.at, format!("the panel `{}` has no size", name.value), "`size` is missing here", "add size = { width = \"..\", height = \"..\", depth = \"12 mm\" }; its depth is its thickness");
            return None;
        };
        let size = panel_size(said, r)?;
        Some(Panel {
            closes: closes.value.clone(),
            material: text(&panel.material),
            size,
            place: panel.place.as_ref().map_or_else(nowhere, |said| place(said, r)),
            removable: panel.removable.as_ref().is_none_or(|said| said.value),
        })
    })
}

fn panel_size(said: &Said<SizeFile>, r: &mut Resolver<'_>) -> Option<Size> {
    let file = &said.value;
    let width = r.taped(&file.width, p::PANEL_M);
    let height = r.taped(&file.height, p::PANEL_M);
    let depth = r.given(&file.depth, Basis::Measured, p::SHEET_M);
    incomplete(
        &said.at,
        "the size of a panel",
        "width, height and depth, which is its thickness",
        [file.width.is_none(), file.height.is_none(), file.depth.is_none()],
        r,
    );
    Some(Size { width: width?, height: height?, depth: depth? })
}

/// Every item of the build.
pub(super) fn items(
    file: &BuildFile,
    parts: &BTreeMap<String, Part>,
    bays: &Named<Bay>,
    r: &mut Resolver<'_>,
) -> Named<Item> {
    named(&file.items, |name, item: &ItemFile| {
        known_place(item.place.as_ref(), bays, file, r);
        r.known(item.panel.as_ref(), "panel", file.panels.names());
        r.known(item.condenser_in.as_ref(), "bay", file.bays.names());
        let part_name = item.part.as_ref().unwrap_or(name);
        let Some(part) = parts.get(&part_name.value) else {
            if !file.parts.names().any(|known| known == part_name.value) {
                let names: Vec<&str> = file.parts.names().collect();
                r.reader.tell(
                    &part_name.at,
                    format!("there is no part `{}`", part_name.value),
                    "not in parts",
                    format!(
                        "{}; a part has a file parts/{}.toml or a heading [parts.{}]",
                        crate::read::suggestion(&part_name.value, &names),
                        part_name.value,
                        part_name.value
                    ),
                );
            }
            return None;
        };
        let about =
            match (&item.about, file.parts.get(&part.name).and_then(|part| part.about.as_ref())) {
                (Some(said), _) | (None, Some(said)) => said.value.clone(),
                (None, None) => name.value.replace('-', " "),
            };
        let weighed = r.given(&item.mass, Basis::Measured, p::PART_KG);
        let papers = file.parts.get(&part.name).and_then(|part| r.papers(&part.mass, p::PART_KG));
        Some(Item {
            about,
            part: part.clone(),
            place: item.place.as_ref().map(|said| place(said, r)),
            panel: item.panel.as_ref().map(|said| said.value.clone()),
            condenser_in: item.condenser_in.as_ref().map(|said| said.value.clone()),
            mass: weighed.or(papers),
            contents: r.given(&item.contents, Basis::Measured, p::PART_KG),
            removable: item.removable.as_ref().is_some_and(|said| said.value),
            held: super::hold::held(item.held.as_ref(), r),
        })
    })
}

/// Checks what items are said to stand on: another item, and never in a ring.
pub(super) fn stands(file: &BuildFile, r: &mut Resolver<'_>) {
    let on = |name: &str| -> Option<&Said<String>> {
        file.items.get(name)?.place.as_ref()?.value.on.as_ref().filter(|on| on.value != "floor")
    };
    for (name, _) in file.items.iter() {
        let Some(first) = on(&name.value) else { continue };
        if !r.known(Some(first), "item", file.items.names()) {
            continue;
        }
        let mut under = first.value.as_str();
        for _ in 0..file.items.names().count() {
            if under == name.value {
                r.reader.tell(
                    &first.at,
                    format!("`{}` stands on itself", name.value),
                    "a ring",
                    "say what the lowest of them stands on: on = \"floor\"",
                );
                break;
            }
            let Some(next) = on(under) else { break };
            under = &next.value;
        }
    }
}
