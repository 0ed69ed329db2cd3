//! A bay and everything in and around it, with every face a sum of measures.

use spile_answer::{Basis, Given};
use spile_build::{Anchor, AtHeight, Bay, Build, Hindrance, Item, Place, Shape};
use spile_quantity::{Length, Ranged};
use spile_solid::{
    Axis, Bay as Measured, Covered, Cuboid, Direction, Point, Prism, Profile, Row, Solid,
};

use crate::facing::Facing;
use crate::practice::PRACTICE;
use crate::sum::{Measures, Sum};

/// The low and the high faces of a box, along the vehicle, across it and upwards.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Extents {
    pub(crate) low: [Sum; 3],
    pub(crate) high: [Sum; 3],
}

impl Extents {
    /// Its face in a direction.
    pub(crate) fn face(&self, direction: Direction) -> &Sum {
        let i = direction.axis().index();
        if direction.sign() > 0.0 { &self.high[i] } else { &self.low[i] }
    }

    pub(crate) fn face_mut(&mut self, direction: Direction) -> &mut Sum {
        let i = direction.axis().index();
        if direction.sign() > 0.0 { &mut self.high[i] } else { &mut self.low[i] }
    }

    /// The same with its origin moved to `origin`, or back.
    pub(crate) fn seen_from(&self, origin: &[Sum; 3], factor: f64) -> Self {
        let shift = |at: &Sum, i: usize| at - &(&origin[i] * factor);
        Self {
            low: std::array::from_fn(|i| shift(&self.low[i], i)),
            high: std::array::from_fn(|i| shift(&self.high[i], i)),
        }
    }

    /// From this box's face in a direction to the face of another that looks back at it.
    pub(crate) fn gap(&self, other: &Self, direction: Direction) -> Sum {
        &(other.face(direction.opposite()) - self.face(direction)) * direction.sign()
    }

    /// The box with each face as `value` has it \[m\]; `None` of one that has no thickness.
    pub(crate) fn cuboid(&self, value: impl Fn(&Sum) -> f64) -> Option<Cuboid> {
        let corner = |at: &[Sum; 3]| {
            let [x, y, z] = [&at[0], &at[1], &at[2]].map(|sum| Length::m(value(sum)));
            Point::new(x, y, z)
        };
        let (low, high) = (corner(&self.low), corner(&self.high));
        let upright = Axis::ALL.iter().all(|&axis| low.along(axis) < high.along(axis));
        if upright { Cuboid::new(low, high).ok() } else { None }
    }
}

/// What a thing in the way is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Kind<'b> {
    /// Fixed to the vehicle.
    Fixed(Hindrance),
    /// An item, by its name.
    Item(&'b str, &'b Item),
    /// What stands opposite the bay, as far as a tape says.
    Opposite,
}

/// The profile of a thing that is no box.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Round {
    /// The profile carried along its axis, from its own origin.
    pub(crate) solid: Solid,
    /// Where that origin is.
    pub(crate) origin: [Sum; 3],
    /// How far off the profile may be.
    pub(crate) off: Sum,
}

/// A thing in the way, in the axes of a bay.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Thing<'b> {
    /// Its name in the build.
    pub(crate) name: &'b str,
    /// What it is called.
    pub(crate) what: &'b str,
    pub(crate) kind: Kind<'b>,
    pub(crate) extents: Extents,
    pub(crate) round: Option<Round>,
}

/// An item's body in its bay.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Body {
    pub(crate) facing: Facing,
    pub(crate) extents: Extents,
    /// The name of what it stands on, `floor` for the floor, and nothing where it hangs.
    pub(crate) on: Option<String>,
}

/// A bay made ready: its corner at the rear, to the right, on the floor is the origin.
pub(crate) struct Room<'b> {
    pub(crate) name: &'b str,
    pub(crate) bay: &'b Bay,
    pub(crate) facing: Facing,
    /// Its clear size along the vehicle, across it and upwards, each a measure.
    pub(crate) size: [Sum; 3],
    /// Its origin from the rear, the right and the floor of the vehicle's inside; `None` where it
    /// is not said where along the vehicle it is.
    pub(crate) origin: Option<[Sum; 3]>,
    depths: Option<Measured>,
}

impl<'b> Room<'b> {
    /// A bay of the build, and what was taken for granted of it.
    pub(crate) fn new(
        build: &'b Build,
        name: &'b str,
        bay: &'b Bay,
        measures: &Measures,
        assumed: &mut Vec<String>,
    ) -> Self {
        let facing = Facing::of(bay.opens);
        let mut size: [Sum; 3] = Default::default();
        let sides =
            [("width", &bay.size.width), ("height", &bay.size.height), ("depth", &bay.size.depth)];
        for (axis, (word, given)) in facing.axes().into_iter().zip(sides) {
            size[axis] = measures.take(format!("{word} of the bay {name}"), given);
        }
        let origin = bay_origin(build, name, bay, facing, &size, measures, assumed);
        Self { name, bay, facing, size, origin, depths: measured(bay) }
    }

    /// Its clear depth over the heights that a body takes, as a measure, and the height at which it
    /// is least.
    pub(crate) fn depth(
        &self,
        from_m: f64,
        to_m: f64,
        measures: &Measures,
    ) -> (Sum, Option<Length>) {
        let axis = self.facing.axes()[2];
        self.least(from_m, to_m, &self.bay.depths, "depth", axis, measures)
    }

    /// Its clear width over the heights that a body takes.
    pub(crate) fn width(
        &self,
        from_m: f64,
        to_m: f64,
        measures: &Measures,
    ) -> (Sum, Option<Length>) {
        let axis = self.facing.axes()[0];
        self.least(from_m, to_m, &self.bay.widths, "width", axis, measures)
    }

    fn least(
        &self,
        from_m: f64,
        to_m: f64,
        rows: &[AtHeight],
        word: &str,
        axis: usize,
        measures: &Measures,
    ) -> (Sum, Option<Length>) {
        let Some(measured) =
            self.depths.as_ref().filter(|_| !rows.is_empty() && self.facing.up == Direction::Up)
        else {
            return (self.size[axis].clone(), None);
        };
        let (from, to) = (Length::m(from_m.max(0.0)), Length::m(to_m.max(from_m).max(0.0)));
        let found = if word == "depth" {
            measured.free_depth(from, to)
        } else {
            measured.free_width(from, to)
        };
        let Ok(room) = found else { return (self.size[axis].clone(), None) };
        let taken: Vec<String> =
            rows.iter().map(|row| format!("{:.0}", row.height.in_mm())).collect();
        let height = format!("{:.0} mm above its floor", room.height.in_mm());
        let basis = if room.covered == Covered::Beyond { Basis::Typical } else { Basis::Measured };
        let source = match room.covered {
            Covered::Beyond => format!("guessed from the lean between {} mm", taken.join(" and ")),
            Covered::Between | Covered::OneRow => rows[0].value.source.to_string(),
        };
        let how = if word == "depth" {
            format!(
                "A tape from the face of the opening to the wall behind, square to it, {height}."
            )
        } else {
            format!("A tape from side to side, {height}.")
        };
        let given = Given { value: room.length, basis, source: source.into(), how: how.into() };
        let least = measures.take(format!("{word} of the bay {}, {height}", self.name), &given);
        (least, Some(room.height))
    }

    /// Free space in front of the opening, as it was taped or as is usual.
    fn in_front(&self, measures: &Measures) -> Sum {
        let given = self.bay.in_front.as_ref().unwrap_or(&PRACTICE.aisle);
        measures.take(format!("free space in front of the bay {}", self.name), given)
    }

    /// Where the plane of its opening is.
    pub(crate) fn opening(&self) -> Sum {
        let i = self.facing.out.axis().index();
        if self.facing.out.sign() > 0.0 { self.size[i].clone() } else { Sum::default() }
    }
}

/// The rows of a bay as the solids have them.
fn measured(bay: &Bay) -> Option<Measured> {
    let row = |at: &AtHeight| Row { height: at.height, measured: at.value.value };
    let rows = |rows: &[AtHeight], size: &Given<Length>| match rows {
        [] => vec![Row { height: Length::m(0.0), measured: size.value }],
        rows => rows.iter().map(row).collect(),
    };
    let depths = rows(&bay.depths, &bay.size.depth);
    let widths = rows(&bay.widths, &bay.size.width);
    Measured::new(bay.size.height.value, &depths, &widths).ok()
}

fn bay_origin(
    build: &Build,
    name: &str,
    bay: &Bay,
    facing: Facing,
    size: &[Sum; 3],
    measures: &Measures,
    assumed: &mut Vec<String>,
) -> Option<[Sum; 3]> {
    let said = [&bay.place.x, &bay.place.y, &bay.place.z];
    if said.iter().all(|anchor| **anchor == Anchor::Unsaid) {
        return None;
    }
    let mut origin: [Sum; 3] = Default::default();
    for axis in 0..3 {
        let whose = format!("the bay {name}");
        origin[axis] = match (said[axis], inside(build, axis, measures)) {
            (Anchor::Unsaid, within) if axis == facing.axes()[2] => {
                assumed.push(format!(
                    "The bay {name} is taken to reach to the side opposite its opening."
                ));
                if facing.out.sign() > 0.0 { Sum::default() } else { &within? - &size[axis] }
            }
            (Anchor::Unsaid, _) if axis == 2 => Sum::default(),
            (anchor, within) => {
                low_face(anchor, axis, &whose, &size[axis], within.as_ref(), measures)?
            }
        };
    }
    Some(origin)
}

/// The clear size of the vehicle's inside along an axis.
pub(crate) fn inside(build: &Build, axis: usize, measures: &Measures) -> Option<Sum> {
    let word = ["length", "width", "height"][axis];
    let given = build.vehicle.inside[axis].as_ref()?;
    Some(measures.take(format!("inside {word} of the vehicle"), given))
}

/// The low face of a thing that is `size` long, by its anchor in a space that is `within` long.
fn low_face(
    anchor: &Anchor,
    axis: usize,
    whose: &str,
    size: &Sum,
    within: Option<&Sum>,
    measures: &Measures,
) -> Option<Sum> {
    let words = [("rear", "front"), ("right", "left"), ("floor", "top")][axis];
    match anchor {
        Anchor::Low(given) if given.value.high == Length::m(0.0) => Some(Sum::default()),
        Anchor::Low(given) => {
            Some(measures.take(format!("distance of {whose} from the {}", words.0), given))
        }
        Anchor::High(given) => {
            let distance =
                measures.take(format!("distance of {whose} from the {}", words.1), given);
            Some(&(within? - &distance) - size)
        }
        Anchor::Unsaid => None,
    }
}

/// The size of an item's body along the vehicle's axes, each a measure.
fn body_size(name: &str, item: &Item, facing: Facing, measures: &Measures) -> Option<[Sum; 3]> {
    let size = item.part.size.as_ref()?;
    let mut sums: [Sum; 3] = Default::default();
    let sides = [("width", &size.width), ("height", &size.height), ("depth", &size.depth)];
    for (axis, (word, given)) in facing.axes().into_iter().zip(sides) {
        sums[axis] = measures.take(format!("{word} of {name}"), given);
    }
    Some(sums)
}

/// An item's body in the axes of the bay it is in, and what was taken for granted of it.
pub(crate) fn body_in(
    build: &Build,
    room: &Room<'_>,
    name: &str,
    item: &Item,
    measures: &Measures,
    assumed: &mut Vec<String>,
) -> Option<Body> {
    let place = item.place.as_ref()?;
    let facing = place.faces.map_or(room.facing, Facing::of);
    let size = body_size(name, item, facing, measures)?;
    let hangs = item.panel.is_some() || item.part.flange.is_some();
    let depth_axis = room.facing.axes()[2];
    let mut on = None;
    let mut low: [Sum; 3] = Default::default();
    for (axis, anchor) in [&place.x, &place.y, &place.z].into_iter().enumerate() {
        let within = &room.size[axis];
        let rests = axis == 2 && !(depth_axis == 2 && hangs);
        low[axis] = match low_face(anchor, axis, name, &size[axis], Some(within), measures) {
            Some(low) => {
                if axis == 2 && measures.likely_m(&low) == 0.0 {
                    on = Some("floor".to_owned());
                }
                low
            }
            None if rests => match stands_on(build, room, place, measures, assumed) {
                Some((under, top)) => {
                    on = Some(under);
                    top
                }
                None => {
                    if let Some(under) = &place.on {
                        assumed.push(format!("Where {under} is in the bay {} is not said: {name} is taken to stand on the floor.", room.name));
                    } else if place.z == Anchor::Unsaid {
                        assumed.push(format!("{name} is taken to stand on the floor of its bay."));
                    }
                    on = Some("floor".to_owned());
                    Sum::default()
                }
            },
            None if axis == depth_axis => {
                assumed
                    .push(format!("The face of {name} is taken to be at the opening of its bay."));
                if room.facing.out.sign() > 0.0 { within - &size[axis] } else { Sum::default() }
            }
            None => {
                assumed.push(format!("{name} is taken to stand in the middle of its bay."));
                &(within - &size[axis]) * 0.5
            }
        };
    }
    let high = std::array::from_fn(|axis| &low[axis] + &size[axis]);
    Some(Body { facing, extents: Extents { low, high }, on })
}

/// The item that a place says it stands on, and that item's upper side, in the same bay.
fn stands_on(
    build: &Build,
    room: &Room<'_>,
    place: &Place,
    measures: &Measures,
    assumed: &mut Vec<String>,
) -> Option<(String, Sum)> {
    let under = place.on.as_ref()?;
    let item = build.items.get(under)?;
    if item.place.as_ref()?.bay.as_deref() != Some(room.name) {
        return None;
    }
    let body = body_in(build, room, under, item, measures, assumed)?;
    Some((under.clone(), body.extents.high[2].clone()))
}

/// Everything in and around a bay, in its axes: items first, then what is fixed.
pub(crate) fn things<'b>(
    build: &'b Build,
    room: &Room<'b>,
    rooms: &[Room<'b>],
    measures: &Measures,
    assumed: &mut Vec<String>,
) -> Vec<Thing<'b>> {
    let mut things = Vec::new();
    for (name, item) in &build.items {
        let Some(place) = &item.place else { continue };
        let extents = match &place.bay {
            Some(bay) => rooms.iter().find(|other| other.name == bay).and_then(|other| {
                let body = body_in(build, other, name, item, measures, &mut Vec::new())?;
                moved(body.extents, other.name, other.origin.as_ref(), room)
            }),
            None => loose(build, name, item, place, measures, assumed)
                .and_then(|extents| moved(extents, "", Some(&Default::default()), room)),
        };
        if let Some(extents) = extents {
            things.push(Thing {
                name,
                what: &item.about,
                kind: Kind::Item(name, item),
                extents,
                round: None,
            });
        }
    }
    for (name, obstacle) in &build.obstacles {
        let frame = obstacle.place.bay.as_deref();
        let other = rooms.iter().find(|other| Some(other.name) == frame);
        let within: [Option<Sum>; 3] = match (frame, other) {
            (Some(_), Some(other)) => other.size.clone().map(Some),
            (Some(_), None) => continue,
            (None, _) => std::array::from_fn(|axis| inside(build, axis, measures)),
        };
        let Some((extents, round)) =
            fixed(name, &obstacle.shape, &obstacle.place, &within, measures)
        else {
            assumed.push(format!("It is not said where {name} is: it is left out."));
            continue;
        };
        let nowhere = Default::default();
        let (from, origin) =
            other.map_or(("", Some(&nowhere)), |other| (other.name, other.origin.as_ref()));
        let Some(extents) = moved(extents, from, origin, room) else { continue };
        let round = round.and_then(|round| {
            let at = Extents { low: round.origin.clone(), high: round.origin };
            let at = moved(at, from, origin, room)?;
            Some(Round { origin: at.low, ..round })
        });
        let kind = Kind::Fixed(obstacle.hindrance);
        things.push(Thing { name, what: &obstacle.what, kind, extents, round });
    }
    opposite(build, room, &mut things, measures, assumed);
    things
}

/// How much nearer than what was taped before the bay a thing must be not to be what was taped \[m\].
const SAME_M: f64 = 0.015;

/// How near the vehicle's own side an opening is one to the outside \[m\].
const AT_THE_SHELL_M: f64 = 0.1;

/// How far across what stands opposite is taken to reach \[m\].
const ACROSS_M: f64 = 3.0;

/// Puts what stands opposite the opening among the things, once: as it was taped where it was, else
/// as the places of things have it, else at the far side of the vehicle, else as is usual.
fn opposite<'b>(
    build: &Build,
    room: &Room<'b>,
    things: &mut Vec<Thing<'b>>,
    measures: &Measures,
    assumed: &mut Vec<String>,
) {
    let out = room.facing.out;
    let (axis, opening) = (out.axis().index(), room.opening());
    let ahead_m = |thing: &Thing<'_>| {
        let gap = &(thing.extents.face(out.opposite()) - &opening) * out.sign();
        let clear = (0..3).filter(|other| *other != axis).all(|other| {
            measures.likely_m(&thing.extents.low[other]) < measures.likely_m(&room.size[other])
                && measures.likely_m(&thing.extents.high[other]) > 0.0
        });
        let gap_m = measures.likely_m(&gap);
        (clear && gap_m >= 0.0).then_some(gap_m)
    };
    let mut what = "what stands opposite";
    let free = if room.bay.in_front.is_some() {
        let free = room.in_front(measures);
        let taped_m = measures.likely_m(&free) - SAME_M;
        let taped = |thing: &Thing<'_>| ahead_m(thing).is_some_and(|ahead_m| ahead_m >= taped_m);
        if let Some(thing) = things.iter().find(|thing| taped(thing)) {
            what = thing.name;
        }
        things.retain(|thing| !taped(thing));
        free
    } else if things.iter().any(|thing| ahead_m(thing).is_some()) {
        return;
    } else if let (Some(origin), Some(inside)) = (&room.origin, inside(build, axis, measures)) {
        what = "the far side of the vehicle";
        let opening = &origin[axis] + &opening;
        let free = if out.sign() > 0.0 { &inside - &opening } else { opening };
        if measures.likely_m(&free) < AT_THE_SHELL_M {
            // It opens to the outside, through a door of the vehicle.
            return;
        }
        free
    } else {
        assumed.push(format!(
            "Nothing is said of the space in front of the bay {}: {} mm are taken.",
            room.name,
            PRACTICE.aisle.likely().in_mm().round()
        ));
        room.in_front(measures)
    };
    let near = &opening + &(&free * out.sign());
    let far = &near + &Sum::fixed(out.sign());
    let across = |end_m: f64| std::array::from_fn(|_| Sum::fixed(end_m));
    let mut extents = Extents { low: across(-ACROSS_M), high: across(ACROSS_M) };
    *extents.face_mut(out.opposite()) = near;
    *extents.face_mut(out) = far;
    things.push(Thing { name: what, what, kind: Kind::Opposite, extents, round: None });
}

/// A box of the bay or vehicle `from`, seen from a bay.
fn moved(
    extents: Extents,
    from: &str,
    origin: Option<&[Sum; 3]>,
    room: &Room<'_>,
) -> Option<Extents> {
    if from == room.name {
        return Some(extents);
    }
    let here = room.origin.as_ref()?;
    Some(extents.seen_from(origin?, -1.0).seen_from(here, 1.0))
}

/// The body of an item that stands in no bay, in the vehicle's axes.
pub(crate) fn loose(
    build: &Build,
    name: &str,
    item: &Item,
    place: &Place,
    measures: &Measures,
    assumed: &mut Vec<String>,
) -> Option<Extents> {
    use spile_build::file::Direction as Said;
    let square =
        item.part.size.as_ref().is_some_and(|size| size.width.likely() == size.depth.likely());
    let faces = place.faces.unwrap_or_else(|| {
        let (faces, word) = match place.y {
            Anchor::High(_) => (Said::Right, "right"),
            Anchor::Low(_) => (Said::Left, "left"),
            Anchor::Unsaid => (Said::Front, "front"),
        };
        if !square && item.part.size.is_some() {
            assumed.push(format!("{name} is taken to face {word}."));
        }
        faces
    });
    let size = body_size(name, item, Facing::of(faces), measures)?;
    let mut low: [Sum; 3] = Default::default();
    for (axis, anchor) in [&place.x, &place.y, &place.z].into_iter().enumerate() {
        let within = inside(build, axis, measures);
        low[axis] = match low_face(anchor, axis, name, &size[axis], within.as_ref(), measures) {
            Some(low) => low,
            None if axis == 2 && place.on.is_none() => Sum::default(),
            None => return None,
        };
    }
    let high = std::array::from_fn(|axis| &low[axis] + &size[axis]);
    Some(Extents { low, high })
}

/// A thing fixed to the vehicle, in the axes of what its distances are taken from.
pub(crate) fn fixed(
    name: &str,
    shape: &Shape,
    place: &Place,
    within: &[Option<Sum>; 3],
    measures: &Measures,
) -> Option<(Extents, Option<Round>)> {
    let anchors = [&place.x, &place.y, &place.z];
    let low = |axis: usize, size: &Sum| match anchors[axis] {
        Anchor::Unsaid if axis == 2 => Some(Sum::default()),
        anchor => low_face(anchor, axis, name, size, within[axis].as_ref(), measures),
    };
    match shape {
        Shape::Box(sides) => {
            let mut extents = Extents { low: Default::default(), high: Default::default() };
            for (axis, word) in ["length", "width", "height"].into_iter().enumerate() {
                let size = measures.take(format!("{word} of {name}"), &sides[axis]);
                extents.low[axis] = low(axis, &size)?;
                extents.high[axis] = &extents.low[axis] + &size;
            }
            Some((extents, None))
        }
        Shape::Profile { axes, points, tolerance, carried } => {
            let along = (0..3).find(|axis| axes.iter().all(|(used, _)| used != axis))?;
            let carried_sum = measures.take(format!("length of {name}"), carried);
            let mut origin: [Sum; 3] = Default::default();
            origin[along] = low(along, &carried_sum)?;
            let mut extents = Extents { low: origin.clone(), high: origin.clone() };
            extents.high[along] = &origin[along] + &carried_sum;
            for (column, &(axis, from_low)) in axes.iter().enumerate() {
                origin[axis] = match (from_low, anchors[axis]) {
                    (true, Anchor::Low(_)) => low(axis, &Sum::default())?,
                    (true, _) => Sum::default(),
                    (false, _) => within[axis].clone()?,
                };
                let sign = if from_low { 1.0 } else { -1.0 };
                let ends = points.iter().map(|point| point[column] * sign);
                let (least, most) = ends
                    .fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), end| {
                        (least.min(end), most.max(end))
                    });
                extents.low[axis] = &origin[axis] + &Sum::fixed(least);
                extents.high[axis] = &origin[axis] + &Sum::fixed(most);
            }
            let sign = axes.map(|(_, from_low)| if from_low { 1.0 } else { -1.0 });
            let swapped = axes[0].0 > axes[1].0;
            let corners: Vec<[Length; 2]> = points
                .iter()
                .map(|point| {
                    let [a, b] = [Length::m(point[0] * sign[0]), Length::m(point[1] * sign[1])];
                    if swapped { [b, a] } else { [a, b] }
                })
                .collect();
            let profile = Profile::new(&corners).ok()?;
            let solid =
                Prism::new(Axis::ALL[along], profile, Length::m(0.0), carried.likely()).ok()?;
            let off = &tolerance.value.high;
            let given = Given {
                value: Ranged { low: -*off, likely: Length::m(0.0), high: *off },
                ..tolerance.clone()
            };
            let off = measures.take(format!("error of the profile of {name}"), &given);
            Some((extents, Some(Round { solid: solid.into(), origin, off })))
        }
    }
}
