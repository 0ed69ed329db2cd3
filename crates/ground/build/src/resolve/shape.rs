//! The shapes of what is in the way: made typed.

use spile_answer::Basis;
use spile_quantity::Length;

use super::place::place;
use super::plausible as p;
use super::{Resolver, typical};
use crate::file::{BuildFile, PlaceFile, ProfileFile, SpanFile};
use crate::model::{Hindrance, Named, Obstacle, Shape};
use crate::read::{Record, Said, suggestion};
use crate::source::At;

/// A thing in the way as its file tells of it, whatever it is.
struct Standing<'f> {
    what: String,
    hindrance: Hindrance,
    place: Option<&'f Said<PlaceFile>>,
    size: Option<&'f Said<SpanFile>>,
    profile: Option<&'f Said<ProfileFile>>,
    /// Whether neither a size nor a profile is written.
    has_no_shape: bool,
}

/// Everything that is in the way: obstacles, members of the frame, keep-out zones.
pub(super) fn obstacles(file: &BuildFile, r: &mut Resolver<'_>) -> Named<Obstacle> {
    const SHAPE: [&str; 2] = ["size", "profile"];
    let said = |said: &Option<Said<String>>, otherwise: &str| {
        said.as_ref().map_or_else(|| otherwise.to_owned(), |said| said.value.clone())
    };
    let mut all: Vec<(&Said<String>, Standing<'_>)> = Vec::new();
    for (name, thing) in file.obstacles.iter() {
        let standing = Standing {
            what: said(&thing.kind, &name.value),
            hindrance: Hindrance::Obstacle,
            place: thing.place.as_ref(),
            size: thing.size.as_ref(),
            profile: thing.profile.as_ref(),
            has_no_shape: thing.lacks(&SHAPE).len() == SHAPE.len(),
        };
        all.push((name, standing));
    }
    for (name, thing) in file.frame.iter() {
        r.taped(&thing.wall, p::SHEET_M);
        let belt = thing.belt.as_ref().is_some_and(|belt| belt.value);
        let standing = Standing {
            what: said(&thing.material, "frame"),
            hindrance: Hindrance::Frame { belt },
            place: thing.place.as_ref(),
            size: thing.size.as_ref(),
            profile: thing.profile.as_ref(),
            has_no_shape: thing.lacks(&SHAPE).len() == SHAPE.len(),
        };
        all.push((name, standing));
    }
    for (name, thing) in file.keep_out.iter() {
        let standing = Standing {
            what: said(&thing.what, &name.value),
            hindrance: Hindrance::KeepOut,
            place: thing.place.as_ref(),
            size: thing.size.as_ref(),
            profile: thing.profile.as_ref(),
            has_no_shape: thing.lacks(&SHAPE).len() == SHAPE.len(),
        };
        all.push((name, standing));
    }
    let mut obstacles = Named::new();
    for (name, standing) in all {
        if obstacles.contains_key(&name.value) {
            r.reader.tell(
                &name.at,
                format!("`{}` is the name of another thing in the way", name.value),
                "used twice",
                "obstacles, frame and keep-out zones share their names: choose another",
            );
        }
        let place = place(standing.place, file, r);
        if let Some(shape) = shape(name, &standing, r) {
            let Standing { what, hindrance, .. } = standing;
            obstacles.insert(name.value.clone(), Obstacle { what, hindrance, shape, place });
        }
    }
    obstacles
}

fn shape(name: &Said<String>, standing: &Standing<'_>, r: &mut Resolver<'_>) -> Option<Shape> {
    match (standing.size, standing.profile) {
        (Some(size), None) => span(size, r),
        (None, Some(said)) => profile(said, r),
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
            if standing.has_no_shape {
                r.reader.tell(
                    &name.at,
                    format!("`{}` has no shape", name.value),
                    "size or profile is missing here",
                    "add size = { length = \"60 mm\", width = \"60 mm\", height = \"900 mm\" }, or a profile",
                );
            }
            None
        }
    }
}

fn span(said: &Said<SpanFile>, r: &mut Resolver<'_>) -> Option<Shape> {
    let file = &said.value;
    let sides = [&file.length, &file.width, &file.height];
    let [length, width, height] = sides.map(|q| r.taped(q, p::SPAN_M));
    let missing = file.lacks(&["length", "width", "height"]);
    r.lacking(&said.at, "the size of a thing in the way", &missing);
    Some(Shape::Box([length?, width?, height?]))
}

fn profile(said: &Said<ProfileFile>, r: &mut Resolver<'_>) -> Option<Shape> {
    let file = &said.value;
    let missing = file.lacks(&["columns", "unit", "rows", "carried"]);
    r.lacking(&said.at, "a profile", &missing);
    let axes = axes(said, r);
    let carried = r.taped(&file.carried, p::SPAN_M);
    let tolerance = r
        .given(&file.tolerance, Basis::Measured, p::TOLERANCE_M)
        .unwrap_or_else(|| typical::<Length>("tape-tolerance"));
    let scale = row_unit(file.unit.as_ref()?, r)?;
    let rows = file.rows.as_ref()?;
    let mut corners: Vec<Corner<'_>> = rows
        .value
        .0
        .iter()
        .map(|row| Corner { at: &row.at, point: row.value.map(|number| scale(number).in_m()) })
        .collect();
    if let Some(far) = corners.iter().find(|corner| corner.point.iter().any(|m| m.abs() > 20.0)) {
        r.reader.tell(
            far.at,
            "this corner lies outside any vehicle",
            "far outside",
            "check the unit beside the rows",
        );
        return None;
    }
    // Some close the shape by writing the first corner again at the end.
    if corners.len() > 3 && corners.first().map(|c| c.point) == corners.last().map(|c| c.point) {
        corners.pop();
    }
    if corners.len() < 3 {
        r.reader.tell(
            &rows.at,
            "a profile needs at least three corners",
            "too few corners",
            "give the corners one after the other round the shape",
        );
        return None;
    }
    let is_simple = outline(&corners, &rows.at, r);
    let points = corners.iter().map(|corner| corner.point).collect();
    let shape = Shape::Profile { axes: axes?, points, tolerance, carried: carried? };
    is_simple.then_some(shape)
}

/// The two axes of a profile's columns.
fn axes(said: &Said<ProfileFile>, r: &mut Resolver<'_>) -> Option<[(usize, bool); 2]> {
    let columns = &said.value.columns;
    let [a, b] = columns.as_slice() else {
        if let Some(last) = columns.last() {
            r.reader.tell(
                &last.at,
                "a profile has two columns",
                "not two columns",
                "write columns = [\"from_rear\", \"above\"]",
            );
        }
        return None;
    };
    let (a_axis, b_axis) = (column(a, r), column(b, r));
    let (a_axis, b_axis) = (a_axis?, b_axis?);
    if a_axis.0 == b_axis.0 {
        r.reader.tell(
            &b.at,
            "both columns of the profile run along one direction",
            "the same direction",
            "choose two of: along (from_rear), across (from_left), up (above)",
        );
        return None;
    }
    Some([a_axis, b_axis])
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
        r.reader.tell(
            &said.at,
            format!("`{}` is not a direction to measure in", said.value),
            "not a direction",
            suggestion(&said.value, &COLUMNS.map(|(word, _)| word)),
        );
    }
    found
}

/// One corner of a profile [m], and where it stands.
struct Corner<'f> {
    at: &'f At,
    point: [f64; 2],
}

/// Whether corners, one after the other, go round one shape; tells of the first that does not.
fn outline(corners: &[Corner<'_>], rows: &At, r: &mut Resolver<'_>) -> bool {
    let count = corners.len();
    let side = |index: usize| [corners[index].point, corners[(index + 1) % count].point];
    for (index, corner) in corners.iter().enumerate() {
        if let Some(first) = corners[..index].iter().position(|other| other.point == corner.point) {
            r.reader.tell(
                corner.at,
                format!("corner {} of the profile is corner {} again", index + 1, first + 1),
                "the same corner",
                "give each corner once, one after the other round the shape",
            );
            return false;
        }
    }
    for (later, corner) in corners.iter().enumerate().skip(2) {
        // The last side ends where the first begins.
        let from = usize::from(later == count - 1);
        if let Some(earlier) = (from..later - 1).find(|earlier| cross(side(*earlier), side(later)))
        {
            r.reader.tell(
                corner.at,
                format!(
                    "the profile crosses itself: the side from corner {} meets the side from \
                     corner {}",
                    later + 1,
                    earlier + 1
                ),
                "this side",
                "give the corners one after the other round the shape",
            );
            return false;
        }
    }
    let area: f64 = (0..count).map(|index| turn([0.0; 2], side(index)[0], side(index)[1])).sum();
    if area.abs() < 2e-9 {
        r.reader.tell(
            rows,
            "the corners of the profile lie on one line",
            "no shape",
            "give the corners one after the other round the shape",
        );
        return false;
    }
    true
}

/// Twice the area of a triangle \[m²\], positive where it turns to the left.
fn turn(a: [f64; 2], b: [f64; 2], c: [f64; 2]) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/// Whether two sides have a point in common.
fn cross([a, b]: [[f64; 2]; 2], [c, d]: [[f64; 2]; 2]) -> bool {
    let apart = |axis: usize| {
        a[axis].max(b[axis]) < c[axis].min(d[axis]) || c[axis].max(d[axis]) < a[axis].min(b[axis])
    };
    let on_one_side = |from, to, one, other| turn(from, to, one) * turn(from, to, other) > 0.0;
    !apart(0) && !apart(1) && !on_one_side(a, b, c, d) && !on_one_side(c, d, a, b)
}

/// What turns a plain number of a row into a length, by the unit named beside the rows.
pub(super) fn row_unit(unit: &Said<String>, r: &mut Resolver<'_>) -> Option<fn(f64) -> Length> {
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
