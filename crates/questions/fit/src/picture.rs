//! Where everything is, for whoever draws it: boxes and profiles at their likely places.

use std::f64::consts::PI;

use spile_build::{AtHeight, Build, Hindrance, Item};
use spile_quantity::{Angle, Length};
use spile_solid::{Direction, Solid};

use crate::clearance::Case;
use crate::cut::Cut;
use crate::door::Leaf;
use crate::facing::Facing;
use crate::scene::{self, Extents, Kind, Round};
use crate::stage::Stage;
use crate::sum::{Measures, Sum};

/// A box: its corner at the rear, to the right, at the bottom, and the opposite one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Block {
    /// The low corner, along the vehicle, across it and upwards.
    pub low: [Length; 3],
    /// The high corner.
    pub high: [Length; 3],
}

impl Block {
    /// Its face in a direction.
    pub fn face(&self, direction: Direction) -> Length {
        let i = direction.axis().index();
        if direction.sign() > 0.0 { self.high[i] } else { self.low[i] }
    }
}

/// A profile that is carried along an axis.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// The axis it is carried along: 0, 1 or 2.
    pub along: usize,
    /// Its corners along the other two axes, the lower axis first.
    pub corners: Vec<[Length; 2]>,
}

/// What a thing is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sort {
    /// A space that things go into.
    Bay,
    /// Fixed to the vehicle.
    Fixed(Hindrance),
    /// An item.
    Item,
    /// What stands opposite a bay, as far as a tape says.
    Opposite,
}

/// A thing in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Placed {
    /// Its name in the build.
    pub name: String,
    /// What it is, in a line.
    pub what: String,
    /// What it is in the build.
    pub sort: Sort,
    /// The box around it.
    pub block: Block,
    /// Its profile, of one that is no box.
    pub outline: Option<Profile>,
}

/// The smallest way from a body to what it meets in one direction.
#[derive(Debug, Clone, PartialEq)]
pub struct Distance {
    /// Which way, as one faces the body: `behind`, `left`, `right`, `above`, `below`.
    pub way: &'static str,
    /// What it meets: `the wall behind`.
    pub what: String,
    /// How long the way is; below nought where it runs into it.
    pub length: Length,
    /// Where it begins, on the body.
    pub from: [Length; 3],
    /// Where it ends.
    pub to: [Length; 3],
}

/// A door or lid as it is closed, and how it opens.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Opening {
    /// Where it is closed.
    pub closed: Block,
    /// From its middle to its pin.
    pub hinge: Direction,
    /// Where it sets off to.
    pub out: Direction,
    /// How far it opens.
    pub angle: Angle,
}

/// An item in its bay, with all that is around it, in the axes of the bay: its corner at the rear,
/// to the right, on the floor is the origin.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// The bay.
    pub bay: String,
    /// The item.
    pub item: String,
    /// The bay's clear size along the vehicle, across it and upwards.
    pub size: [Length; 3],
    /// The bay's origin from the rear, the right and the floor of the inside, where it is known.
    pub origin: Option<[Length; 3]>,
    /// To the right of somebody who faces the bay, upwards, and out of its opening.
    pub axes: [Direction; 3],
    /// The depth of the bay at the heights where it was taken.
    pub depths: Vec<[Length; 2]>,
    /// The item's body.
    pub body: Block,
    /// Body and flange together, as one faces it; its depth is the flange's.
    pub flange: Option<Block>,
    /// The panel that it is cut into.
    pub panel: Option<Block>,
    /// Its door or lid.
    pub door: Option<Opening>,
    /// Spaces that papers ask for, each with its words: `air behind`.
    pub spaces: Vec<(&'static str, Block)>,
    /// What else is there.
    pub around: Vec<Placed>,
    /// The smallest ways from the body.
    pub distances: Vec<Distance>,
}

/// Every bay, every fixed thing and every item whose place is known, in the axes of the vehicle's
/// inside: from the rear forward, from the right to the left, from the floor upwards.
pub fn placed(build: &Build) -> Vec<Placed> {
    let stage = Stage::new(build);
    let measures = &stage.measures;
    let mut all = Vec::new();
    for room in &stage.rooms {
        let Some(origin) = &room.origin else { continue };
        let extents =
            Extents { low: Default::default(), high: room.size.clone() }.seen_from(origin, -1.0);
        all.extend(whole(room.name, &room.bay.about, Sort::Bay, &extents, None, measures));
    }
    let inside = std::array::from_fn(|axis| scene::inside(build, axis, measures));
    let nowhere: [Sum; 3] = Default::default();
    for (name, obstacle) in &build.obstacles {
        let bay = obstacle.place.bay.as_deref();
        let (within, origin) = match bay.map(|bay| stage.room(bay)) {
            Some(Some(room)) => (room.size.clone().map(Some), room.origin.as_ref()),
            Some(None) => continue,
            None => (inside.clone(), Some(&nowhere)),
        };
        let found =
            scene::fixed(name, &obstacle.shape, &obstacle.place, &within, measures).zip(origin);
        let Some(((extents, round), origin)) = found else { continue };
        let extents = extents.seen_from(origin, -1.0);
        let round = round.map(|round| Round {
            origin: std::array::from_fn(|axis| &round.origin[axis] + &origin[axis]),
            ..round
        });
        let sort = Sort::Fixed(obstacle.hindrance);
        all.extend(whole(name, &obstacle.what, sort, &extents, round.as_ref(), measures));
    }
    for (name, item) in &build.items {
        if let Some(extents) = item_extents(build, &stage, name, item) {
            all.extend(whole(name, &item.about, Sort::Item, &extents, None, measures));
        }
    }
    all
}

/// An item in the axes of the vehicle's inside.
fn item_extents(build: &Build, stage: &Stage<'_>, name: &str, item: &Item) -> Option<Extents> {
    let place = item.place.as_ref()?;
    let mut unsaid = Vec::new();
    match &place.bay {
        Some(bay) => {
            let room = stage.room(bay)?;
            let body = stage.body(room, name, item, &mut unsaid)?;
            Some(body.extents.seen_from(room.origin.as_ref()?, -1.0))
        }
        None => scene::loose(build, name, item, place, &stage.measures, &mut unsaid),
    }
}

/// An item in its bay; `None` where it stands in none, or its size is not known.
pub fn picture(build: &Build, name: &str) -> Option<Picture> {
    let stage = Stage::new(build);
    let (name, item) = build.items.get_key_value(name)?;
    let room = stage.room(item.place.as_ref()?.bay.as_deref()?)?;
    let mut unsaid = Vec::new();
    let body = stage.body(room, name, item, &mut unsaid)?;
    let things = stage.things(room, &mut unsaid);
    let measures = &stage.measures;
    let (body, things) = (&body, things.as_slice());
    let case = Case { build, room, name, item, body, things, measures };
    let block = block(&body.extents, measures);
    let flange = item.part.flange.as_ref().map(|_| flange(&case));
    let around = things
        .iter()
        .filter(|thing| thing.name != name && case.is_here(thing))
        .filter_map(|thing| {
            let sort = match thing.kind {
                Kind::Fixed(hindrance) => Sort::Fixed(hindrance),
                Kind::Item(..) => Sort::Item,
                Kind::Opposite => Sort::Opposite,
            };
            whole(thing.name, thing.what, sort, &thing.extents, thing.round.as_ref(), measures)
        })
        .collect();
    let likely = |sums: &[Sum; 3]| sums.each_ref().map(|sum| Length::m(measures.likely_m(sum)));
    let facing = room.facing;
    Some(Picture {
        bay: room.name.to_owned(),
        item: name.clone(),
        size: likely(&room.size),
        origin: room.origin.as_ref().map(likely),
        axes: [facing.right, facing.up, facing.out],
        depths: depths(&room.bay.depths),
        body: block,
        flange,
        panel: Cut::of(&case).map(|cut| self::block(&cut.sheet, measures)),
        door: item.part.door.as_ref().map(|door| {
            let leaf = Leaf::of(&case, door);
            Opening {
                closed: self::block(&leaf.extents, measures),
                hinge: leaf.hinge,
                out: leaf.out,
                angle: Angle::rad(door.angle.likely().in_rad().min(PI)),
            }
        }),
        spaces: spaces(item, body.facing, &block),
        around,
        distances: distances(&case, &block),
    })
}

/// The flange, from its own front to the face of the body.
fn flange(case: &Case<'_, '_>) -> Block {
    let mut front = case.front();
    let out = case.body.facing.out;
    *front.face_mut(out.opposite()) = case.body.extents.face(out).clone();
    block(&front, case.measures)
}

fn depths(rows: &[AtHeight]) -> Vec<[Length; 2]> {
    rows.iter().map(|row| [row.height, row.value.likely()]).collect()
}

fn block(extents: &Extents, measures: &Measures) -> Block {
    let corner = |at: &[Sum; 3]| at.each_ref().map(|sum| Length::m(measures.likely_m(sum)));
    Block { low: corner(&extents.low), high: corner(&extents.high) }
}

/// A thing at its likely place; `None` of one that has no thickness.
fn whole(
    name: &str,
    what: &str,
    sort: Sort,
    extents: &Extents,
    round: Option<&Round>,
    measures: &Measures,
) -> Option<Placed> {
    extents.cuboid(|sum| measures.likely_m(sum))?;
    let outline = round.and_then(|round| {
        let Solid::Prism(prism) = &round.solid else { return None };
        let along = prism.axis().index();
        let origin = round.origin.each_ref().map(|sum| measures.likely_m(sum));
        let plane = prism.axis().plane().map(|axis| Length::m(origin[axis.index()]));
        let corners = prism.profile().points().map(|[a, b]| [a + plane[0], b + plane[1]]).collect();
        Some(Profile { along, corners })
    });
    let block = block(extents, measures);
    Some(Placed { name: name.to_owned(), what: what.to_owned(), sort, block, outline })
}

/// The spaces that papers ask for around a body.
fn spaces(item: &Item, facing: Facing, body: &Block) -> Vec<(&'static str, Block)> {
    let (air, service) = (&item.part.air, &item.part.service);
    let (behind, left) = (facing.out.opposite(), facing.right.opposite());
    let asked = [
        ("air behind", behind, &air.behind),
        ("air on its left", left, &air.beside),
        ("air on its right", facing.right, &air.beside),
        ("air above", facing.up, &air.above),
        ("air below", facing.up.opposite(), &air.below),
        ("plug and hose behind", behind, &service.behind),
        ("room on its left", left, &service.left),
        ("room on its right", facing.right, &service.right),
        ("room above", facing.up, &service.above),
    ];
    asked
        .into_iter()
        .filter_map(|(words, direction, given)| {
            let deep = given.as_ref()?.likely();
            let mut space = *body;
            let i = direction.axis().index();
            if direction.sign() > 0.0 {
                space.low[i] = body.high[i];
                space.high[i] = body.high[i] + deep;
            } else {
                space.high[i] = body.low[i];
                space.low[i] = body.low[i] - deep;
            }
            Some((words, space))
        })
        .collect()
}

/// The smallest ways behind, beside, above and below a body.
fn distances(case: &Case<'_, '_>, body: &Block) -> Vec<Distance> {
    let facing = case.body.facing;
    let ways = [
        ("behind", facing.out.opposite()),
        ("left", facing.right.opposite()),
        ("right", facing.right),
        ("above", facing.up),
        ("below", facing.up.opposite()),
    ];
    let directions = ways.map(|(_, direction)| direction);
    let all = case.gaps(&case.body.extents, &directions);
    ways.into_iter()
        .zip(all)
        .filter_map(|((way, direction), gaps)| {
            let gap = gaps.first().filter(|gap| gap.likely_m.is_finite())?;
            let met = gap.thing.map(|thing| {
                let block = block(&thing.extents, case.measures);
                let round = thing.round.as_ref();
                let name = thing.name;
                (block, whole(name, "", Sort::Opposite, &thing.extents, round, case.measures))
            });
            let mut from: [Length; 3] = std::array::from_fn(|i| {
                let (low, high) = met.as_ref().map_or((body.low[i], body.high[i]), |(met, _)| {
                    (body.low[i].max(met.low[i]), body.high[i].min(met.high[i]))
                });
                Length::m(f64::midpoint(low.in_m(), high.in_m()))
            });
            let i = direction.axis().index();
            from[i] = body.face(direction);
            let outline = met.and_then(|(_, whole)| whole?.outline);
            if let Some(outline) = outline.filter(|outline| outline.along != i) {
                nearest_corner(&outline, body, direction, &mut from);
            } else if way == "behind" && gap.thing.is_none() {
                // The wall is nearest where it leans in most: at the height of the body's top or
                // foot that has the lesser depth.
                lean(case, body, &mut from);
            }
            let mut to = from;
            to[i] = from[i] + Length::m(gap.likely_m) * direction.sign();
            Some(Distance {
                way,
                what: gap.what.clone(),
                length: Length::m(gap.likely_m),
                from,
                to,
            })
        })
        .collect()
}

/// Moves a place on a body to where a profile comes nearest to it.
fn nearest_corner(outline: &Profile, body: &Block, direction: Direction, at: &mut [Length; 3]) {
    let plane: Vec<usize> = (0..3).filter(|axis| *axis != outline.along).collect();
    let across = usize::from(plane[0] == direction.axis().index());
    let (axis, up) = (plane[across], 1 - across);
    let beside = |corner: &&[Length; 2]| {
        corner[across] >= body.low[axis] && corner[across] <= body.high[axis]
    };
    let nearest = outline.corners.iter().filter(beside).min_by(|a, b| {
        let way = |corner: &[Length; 2]| corner[up].in_m() * direction.sign();
        way(a).total_cmp(&way(b))
    });
    if let Some(corner) = nearest {
        at[axis] = corner[across];
    }
}

fn lean(case: &Case<'_, '_>, body: &Block, at: &mut [Length; 3]) {
    let ends = [body.low[2], body.high[2]].map(Length::in_m);
    if let (_, Some(height)) = case.room.depth(ends[0], ends[1], case.measures) {
        at[2] = height;
    }
}
