//! Where the middle of a thing is, along the vehicle and across it.

use spile_answer::{Basis, Given};
use spile_build::file::Direction;
use spile_build::{Anchor, Build, Item, Middle, typical, typical_number};
use spile_quantity::{Length, Ranged, Share};

/// A middle along the vehicle.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Along {
    /// From the inside rear face forward.
    FromRear(Given<Length>),
    /// A share of the wheelbase forward of the rear axle: a stand-in.
    Share(Given<Share>),
}

/// Where a load sits.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Spot {
    pub(crate) along: Along,
    /// Left of the centre line.
    pub(crate) left: Given<Length>,
}

/// Where a load that is told by its middle sits; `key` names its stand-in.
pub(crate) fn of_load(build: &Build, middle: &Middle, key: &str) -> Spot {
    let along = match &middle.from_rear {
        Some(given) => Along::FromRear(about(given)),
        None => Along::Share(typical_number(key)),
    };
    let half = build.vehicle.inside[1].as_ref().map(|width| width.map(|width| width * 0.5));
    let left = match (half, &middle.from_left, &middle.from_right) {
        (Some(half), Some(left), _) => less(&half, &about(left)),
        (Some(half), None, Some(right)) => less(&about(right), &half),
        _ => typical::<Length>("aboard-across"),
    };
    Spot { along, left }
}

/// Where an item's middle is.
pub(crate) fn of_item(build: &Build, item: &Item) -> Spot {
    Spot {
        along: along(build, item)
            .map_or_else(|| Along::Share(typical_number("thing-place")), Along::FromRear),
        left: across(build, item).unwrap_or_else(|| typical::<Length>("aboard-across")),
    }
}

/// The middle of an item from the inside rear face forward.
fn along(build: &Build, item: &Item) -> Option<Given<Length>> {
    middle(build, item, 0)
}

/// The middle of an item left of the centre line.
fn across(build: &Build, item: &Item) -> Option<Given<Length>> {
    let from_right = middle(build, item, 1)?;
    let half = build.vehicle.inside[1].as_ref()?.map(|width| width * 0.5);
    Some(less(&from_right, &half))
}

/// The middle of an item along one axis of the vehicle, from the low face of the inside: the rear
/// one or the right one.
fn middle(build: &Build, item: &Item, axis: usize) -> Option<Given<Length>> {
    let place = item.place.as_ref()?;
    let bay = match &place.bay {
        Some(name) => Some(build.bays.get(name)?),
        None => None,
    };
    // The space that the distances are taken in: where it begins, and how long it is.
    let (start, span) = match bay {
        Some(bay) => {
            let span = extent([&bay.size.width, &bay.size.depth], bay.opens, axis).clone();
            let anchor = [&bay.place.x, &bay.place.y][axis];
            let start = match anchor {
                Anchor::Low(from) => from.clone(),
                Anchor::High(from) => {
                    less(&less(build.vehicle.inside[axis].as_ref()?, from), &span)
                }
                Anchor::Unsaid => return None,
            };
            (Some(start), Some(span))
        }
        None => (None, build.vehicle.inside[axis].clone()),
    };
    let faces = place.faces.or(bay.map(|bay| bay.opens)).unwrap_or(Direction::Left);
    let size = item.part.size.as_ref();
    let half = size.map_or_else(
        || typical::<Length>("half-a-thing"),
        |size| extent([&size.width, &size.depth], faces, axis).map(|length| length * 0.5),
    );
    let inside = match [&place.x, &place.y][axis] {
        Anchor::Low(from) => more(from, &half),
        Anchor::High(from) => less(&less(&span?, from), &half),
        Anchor::Unsaid => anywhere(&span?, &half),
    };
    Some(match &start {
        Some(start) => more(start, &inside),
        None => inside,
    })
}

/// The extent along an axis of the vehicle of a thing of that width and depth that looks that way.
fn extent([width, depth]: [&Given<Length>; 2], looks: Direction, axis: usize) -> &Given<Length> {
    let fore_and_aft = matches!(looks, Direction::Front | Direction::Rear);
    if fore_and_aft == (axis == 1) { width } else { depth }
}

/// In the middle of a space, and perhaps at either end of it.
fn anywhere(span: &Given<Length>, half: &Given<Length>) -> Given<Length> {
    let middle = span.likely() * 0.5;
    let (a, b) = (half.likely().min(middle), (span.likely() - half.likely()).max(middle));
    Given {
        value: Ranged { low: a, likely: middle, high: b },
        basis: Basis::Typical,
        source: "in the middle of its space, for want of a place".into(),
        how: "Lay a tape from the rear face, and from the left one, to the thing: place = { from_rear = \"..\", from_left = \"..\" }.".into(),
    }
}

/// A middle that was told without a tolerance is not known to the millimetre.
fn about(given: &Given<Length>) -> Given<Length> {
    if !given.value.is_exact() {
        return given.clone();
    }
    let off = typical::<Length>("middle-tolerance").likely();
    let likely = given.likely();
    Given {
        value: Ranged { low: likely - off, likely, high: likely + off },
        source: format!("{}, ± {} mm assumed", given.source, off.in_mm().round()).into(),
        ..given.clone()
    }
}

fn more(a: &Given<Length>, b: &Given<Length>) -> Given<Length> {
    let (x, y) = (a.value, b.value);
    both(a, b, Ranged { low: x.low + y.low, likely: x.likely + y.likely, high: x.high + y.high })
}

fn less(a: &Given<Length>, b: &Given<Length>) -> Given<Length> {
    let (x, y) = (a.value, b.value);
    both(a, b, Ranged { low: x.low - y.high, likely: x.likely - y.likely, high: x.high - y.low })
}

/// A place put together of two lengths: as good as the worse of them.
fn both(a: &Given<Length>, b: &Given<Length>, value: Ranged<Length>) -> Given<Length> {
    let worse = if b.basis > a.basis { b } else { a };
    Given { value, ..worse.clone() }
}
