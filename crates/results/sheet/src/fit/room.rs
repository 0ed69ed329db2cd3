//! The three views: plan above, front below it, right side to the right of the front.

use std::f64::consts::FRAC_PI_2;

use spile_fit::{Block, Distance, Picture, Placed, Profile, Sort};
use spile_quantity::Length;
use spile_solid::Direction;

use super::{letter, table};
use crate::drawing::{Drawing, Width};
use crate::ink::{Box2, Ink, Letter, Line, Spot, View, figure, scale_words};

/// How thick a wall is hatched, in units.
const HATCHED: f64 = 16.0;

/// How much is shown before the opening in the view from the side, beyond flange and door \[mm\].
const BEFORE_MM: f64 = 60.0;

/// The three directions of one who faces the bay: to the right, upwards, and back into it.
pub(super) const RIGHT: usize = 0;
pub(super) const UP: usize = 1;
pub(super) const BACK: usize = 2;

/// A box as one faces the bay: low and high to the right, upwards and back \[mm\].
pub(super) type Faced = [[f64; 2]; 3];

/// A bay as one faces it, from its lower left corner in the plane of the opening.
pub(super) struct Room<'p> {
    picture: &'p Picture,
    pub(super) size: [f64; 3],
    brought: &'p [&'p str],
}

/// A view of the bay: its place, and which direction runs to the right and which upwards.
struct Look {
    view: View,
    across: usize,
    up: usize,
}

impl Look {
    fn at(&self, place: [f64; 3]) -> [f64; 2] {
        self.view.at([place[self.across], place[self.up]])
    }

    fn frame(&self, faced: &Faced) -> Box2 {
        let corner = |end: usize| std::array::from_fn(|i| faced[i][end]);
        Box2::of(self.at(corner(0)), self.at(corner(1)))
    }
}

impl<'p> Room<'p> {
    pub(super) fn of(picture: &'p Picture, brought: &'p [&'p str]) -> Self {
        let [right, up, out] = picture.axes;
        let size = [right, up, out].map(|direction| picture.size[direction.axis().index()].in_mm());
        Self { picture, size, brought }
    }

    /// Body, flange and closed door together.
    pub(super) fn outer(&self) -> Faced {
        let picture = self.picture;
        let door = picture.door.filter(|door| door.out == picture.axes[2]).map(|door| door.closed);
        let blocks = [Some(picture.body), picture.flange, door];
        let faced = blocks.iter().flatten().map(|block| self.faced(block));
        let join = |a: Faced, b: Faced| {
            std::array::from_fn(|i| [a[i][0].min(b[i][0]), a[i][1].max(b[i][1])])
        };
        faced.reduce(join).unwrap_or_default()
    }

    /// A place in the axes of the bay, as one faces it.
    fn place(&self, at: &[Length; 3]) -> [f64; 3] {
        let along = |direction: Direction| {
            let i = direction.axis().index();
            let from = at[i].in_mm();
            if direction.sign() > 0.0 { from } else { self.picture.size[i].in_mm() - from }
        };
        let [right, up, out] = self.picture.axes;
        [along(right), along(up), along(out.opposite())]
    }

    pub(super) fn faced(&self, block: &Block) -> Faced {
        let (a, b) = (self.place(&block.low), self.place(&block.high));
        std::array::from_fn(|i| [a[i].min(b[i]), a[i].max(b[i])])
    }

    /// Where the wall behind is at a height: as it was taken, else straight.
    fn wall(&self, height: f64) -> f64 {
        let rows: Vec<[f64; 2]> = self.rows();
        match rows.as_slice() {
            [] => self.size[BACK],
            [only] => only[1],
            rows => {
                let after =
                    rows.iter().position(|row| row[0] >= height).unwrap_or(rows.len() - 1).max(1);
                let (a, b) = (rows[after - 1], rows[after]);
                a[1] + (b[1] - a[1]) * (height - a[0]) / (b[0] - a[0])
            }
        }
    }

    fn rows(&self) -> Vec<[f64; 2]> {
        let rows = self.picture.depths.iter().map(|row| row.map(Length::in_mm));
        rows.filter(|_| self.is_upright()).collect()
    }

    /// Whether a thing ends below the item's body.
    fn is_below(&self, thing: &Placed) -> bool {
        let (body, thing) = (self.faced(&self.picture.body), self.faced(&thing.block));
        thing[UP][1] <= body[UP][0] + 1e-6
    }

    /// How far flange and closed door stand out before the opening, at least nought.
    fn ahead(&self) -> f64 {
        let picture = self.picture;
        let door = picture.door.map(|door| door.closed);
        let blocks = [Some(picture.body), picture.flange, picture.panel, door];
        blocks.iter().flatten().map(|block| -self.faced(block)[BACK][0]).fold(0.0, f64::max)
    }

    /// How far before the opening something stands opposite, where the plan shows it.
    pub(super) fn opposite(&self) -> Option<f64> {
        let opposite = self.picture.around.iter().filter(|thing| thing.sort == Sort::Opposite);
        let far = opposite.map(|thing| -self.faced(&thing.block)[BACK][1]);
        let far = far.filter(|far| *far > 0.0).reduce(f64::min)?;
        (far < self.door_reach() * 2.0 + 700.0).then_some(far)
    }

    /// How far the door comes before the opening.
    fn door_reach(&self) -> f64 {
        let size = |faced: Faced, i: usize| faced[i][1] - faced[i][0];
        let swing = self.picture.door.map_or(0.0, |door| {
            let leaf = self.faced(&door.closed);
            size(leaf, RIGHT) + size(leaf, BACK)
        });
        self.ahead() + swing
    }

    /// How far before the opening the plan goes: to what stands opposite, or as far as the door
    /// comes.
    fn aisle(&self) -> f64 {
        self.opposite().unwrap_or(self.door_reach() + BEFORE_MM)
    }

    /// Whether one faces the bay standing upright.
    fn is_upright(&self) -> bool {
        self.picture.axes[1] == Direction::Up
    }
}

/// Three views of a bay.
///
/// `brought` are the items that the job brings, this one among them.
pub(super) fn views(picture: &Picture, about: &str, brought: &[&str], width: Width) -> Drawing {
    let by_job = brought.contains(&picture.item.as_str());
    let room = Room::of(picture, brought);
    let mut ink = Ink::new(width.units());
    let looks = layout(&room, width);
    let scale = looks[0].view.scale;
    for (place, look) in looks.iter().enumerate() {
        let view = look.view;
        ink.view(&view, |ink| draw(ink, &room, look, by_job, place, width));
    }
    let title = format!("{about} in the bay {}", picture.bay);
    let says = "Plan, front and right side, in third angle.";
    Drawing {
        title: title.clone(),
        scale: Some(scale_words(scale)),
        svg: ink.finish(width.class(), &title, says, None),
        table: Some(table(picture)),
    }
}

/// Plan, front and side, in third angle; under one another where the page is narrow.
fn layout(room: &Room<'_>, width: Width) -> [Look; 3] {
    let [wide, high, deep] = room.size;
    let (aisle, before) = (room.aisle(), room.ahead() + BEFORE_MM);
    let (left, top) = (70.0, 40.0);
    let (scale, gap) = match width {
        Width::Wide => {
            let across = (wide + deep + before) / (width.units() - left - 130.0 - 110.0);
            (across.max((deep + aisle + high) / 960.0), 96.0)
        }
        Width::Narrow => (wide.max(deep + before) / (width.units() - left - 60.0), 96.0),
    };
    let units = |length: f64| length / scale;
    let plan = [left, top + units(deep) + HATCHED];
    let front = [left, plan[1] + units(aisle) + gap + units(high)];
    let side = match width {
        Width::Wide => [left + units(wide) + 130.0 + units(before), front[1]],
        Width::Narrow => [left + units(before), front[1] + 150.0 + units(high)],
    };
    let look = |name, axes, origin, across, up| Look {
        view: View { name, axes, scale, origin },
        across,
        up,
    };
    [
        look("bay plan", "right back", plan, RIGHT, BACK),
        look("bay front", "right up", front, RIGHT, UP),
        look("bay side", "back up", side, BACK, UP),
    ]
}

fn draw(ink: &mut Ink, room: &Room<'_>, look: &Look, by_job: bool, place: usize, width: Width) {
    let title = titles(room)[place];
    shell(ink, room, look, place);
    // In plan, what lies below the body is hidden by it.
    let (below, beside): (Vec<&Placed>, Vec<&Placed>) = room
        .picture
        .around
        .iter()
        .partition(|thing| place == 0 && room.is_upright() && room.is_below(thing));
    for thing in beside {
        around(ink, room, look, thing, place);
    }
    bodies(ink, room, look, by_job, place);
    for thing in below.into_iter().filter(|thing| thing.sort != Sort::Item) {
        if let Some(seen) = within(room, look, &room.faced(&thing.block), place) {
            let at = look.frame(&seen);
            ink.thing(&thing.name, &thing.what, |ink| ink.rect(Line::Hidden, at));
            let [x, y] = at.middle();
            let letter = if by_job { Letter::NOTE_ON_ADDED } else { Letter::NOTE };
            let spots = [Spot::about([x, at.bottom - 11.0]), Spot::about([x, y])];
            ink.label(&letter, &spots, &format!("{} below", thing.what));
        }
    }
    let top = match place {
        0 => look.view.origin[1] - look.view.units(room.size[BACK]) - HATCHED - 14.0,
        _ => look.view.origin[1] - look.view.units(room.size[UP]) - 44.0,
    };
    let left = look.view.origin[0] - if place == 2 { look.view.units(room.ahead()) } else { 0.0 };
    ink.text(&Letter::TITLE, &Spot::from([left, top]), title);
    chains(ink, room, look, place);
    for (index, distance) in room.picture.distances.iter().enumerate() {
        if shows(distance, place) {
            gap(ink, room, look, distance, &letter(index), by_job);
        }
    }
    words(ink, room, look, place, width);
}

/// What the three views are called, by the side that the bay opens to.
fn titles(room: &Room<'_>) -> [&'static str; 3] {
    match room.picture.axes[2] {
        Direction::Up => ["from the front", "from above", "from its right side"],
        Direction::Down => ["from the front", "from below", "from its right side"],
        _ => ["plan, at its middle", "from the front, panel off", "from its right side"],
    }
}

/// The sides of the bay, its floor, and the wall behind.
fn shell(ink: &mut Ink, room: &Room<'_>, look: &Look, place: usize) {
    let [wide, high, deep] = room.size;
    let body = room.faced(&room.picture.body);
    match place {
        0 => {
            let depth = room.wall(f64::midpoint(body[UP][0], body[UP][1]));
            for x in [0.0, wide] {
                ink.line(Line::Seen, look.at([x, 0.0, 0.0]), look.at([x, 0.0, deep]));
            }
            let (a, b) = (look.at([0.0, 0.0, depth]), look.at([wide, 0.0, depth]));
            wall(ink, a, b, [0.0, -HATCHED]);
        }
        1 => {
            for x in [0.0, wide] {
                ink.line(Line::Seen, look.at([x, 0.0, 0.0]), look.at([x, high, 0.0]));
            }
            ink.line(Line::Hidden, look.at([0.0, high, 0.0]), look.at([wide, high, 0.0]));
            let (a, b) = (look.at([0.0, 0.0, 0.0]), look.at([wide, 0.0, 0.0]));
            if room.is_upright() {
                wall(ink, a, b, [0.0, HATCHED]);
            } else {
                ink.line(Line::Seen, a, b);
            }
        }
        _ => {
            let foot = look.at([0.0, 0.0, -room.ahead()]);
            let back = look.at([0.0, 0.0, deep]);
            if room.is_upright() {
                wall(ink, foot, back, [0.0, HATCHED]);
            } else {
                ink.line(Line::Seen, look.at([0.0, 0.0, 0.0]), back);
            }
            ink.line(
                Line::Hidden,
                look.at([0.0, high, 0.0]),
                look.at([0.0, high, room.wall(high)]),
            );
            ink.line(Line::Hidden, look.at([0.0, 0.0, 0.0]), look.at([0.0, high, 0.0]));
            back_wall(ink, room, look);
        }
    }
}

/// The wall behind: full where its depth was taken, dashed where its lean is only carried on.
fn back_wall(ink: &mut Ink, room: &Room<'_>, look: &Look) {
    let high = room.size[UP];
    let rows = room.rows();
    let at = |height: f64| look.at([0.0, height, room.wall(height)]);
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else {
        wall(ink, at(0.0), at(high), [HATCHED, 0.0]);
        return;
    };
    let mut heights = vec![0.0];
    heights.extend(rows.iter().map(|row| row[0]).filter(|height| *height > 0.0 && *height < high));
    heights.push(high);
    let mut around: Vec<[f64; 2]> = heights.iter().map(|height| at(*height)).collect();
    around.extend(heights.iter().rev().map(|height| {
        let [x, y] = at(*height);
        [x + HATCHED, y]
    }));
    ink.hatch(&around);
    for pair in heights.windows(2) {
        let taken = pair[0] >= first[0] - 1e-6 && pair[1] <= last[0] + 1e-6;
        ink.line(if taken { Line::Cut } else { Line::Hidden }, at(pair[0]), at(pair[1]));
    }
    for row in &rows {
        let [x, y] = at(row[0]);
        ink.circle(Line::Filled, [x, y], 2.0);
        let text = format!("{} taken", figure(row[1]));
        ink.label(&Letter::NOTE, &[Spot::from([x + HATCHED + 6.0, y])], &text);
    }
}

/// A wall from one place to another, hatched on the side that `into` leads to.
fn wall(ink: &mut Ink, a: [f64; 2], b: [f64; 2], into: [f64; 2]) {
    let moved = |at: [f64; 2]| [at[0] + into[0], at[1] + into[1]];
    ink.hatch(&[a, b, moved(b), moved(a)]);
    ink.line(Line::Cut, a, b);
    ink.reached(moved(a)[1]);
}

/// What else is in the bay or before it.
fn around(ink: &mut Ink, room: &Room<'_>, look: &Look, thing: &Placed, place: usize) {
    let faced = room.faced(&thing.block);
    if thing.sort == Sort::Opposite {
        let far = faced[BACK][1];
        if place == 0 && -far <= room.aisle() + 1.0 {
            let (a, b) = (look.at([0.0, 0.0, far]), look.at([room.size[RIGHT], 0.0, far]));
            wall(ink, a, b, [0.0, HATCHED]);
            let spots = [Spot::to([b[0] - 6.0, b[1] - 9.0]), Spot::from([b[0] + 8.0, b[1] + 4.0])];
            ink.label(&Letter::NOTE, &spots, &thing.what);
        }
        return;
    }
    let Some(seen) = within(room, look, &faced, place) else { return };
    ink.thing(&thing.name, &thing.what, |ink| match &thing.outline {
        Some(profile) => match corners(room, look, profile) {
            Some(corners) => {
                ink.hatch(&corners);
                ink.through(Line::Seen, &corners, true);
            }
            None => ink.rect(Line::Hidden, look.frame(&seen)),
        },
        None => {
            let at = look.frame(&seen);
            if matches!(thing.sort, Sort::Fixed(_)) {
                ink.hatch(&at.corners());
            }
            let brought = thing.sort == Sort::Item && room.brought.contains(&thing.name.as_str());
            ink.rect(if brought { Line::AddedBody } else { Line::Seen }, at);
        }
    });
}

/// The part of a box that the view has room for; `None` of what lies outside it.
fn within(room: &Room<'_>, look: &Look, faced: &Faced, place: usize) -> Option<Faced> {
    let ahead = if place == 0 { room.aisle() } else { room.ahead() + BEFORE_MM };
    let limits =
        [[-30.0, room.size[RIGHT] + 30.0], [-20.0, room.size[UP]], [-ahead, room.size[BACK]]];
    let cut: Faced =
        std::array::from_fn(|i| [faced[i][0].max(limits[i][0]), faced[i][1].min(limits[i][1])]);
    let shows = [look.across, look.up].iter().all(|i| cut[*i][1] > cut[*i][0]);
    shows.then_some(cut)
}

/// The corners of a profile in a view that looks along it.
fn corners(room: &Room<'_>, look: &Look, profile: &Profile) -> Option<Vec<[f64; 2]>> {
    let [right, up, out] = room.picture.axes;
    let depth = 3 - look.across - look.up;
    let along = [right, up, out][depth].axis().index();
    if profile.along != along {
        return None;
    }
    let axes: Vec<usize> = (0..3).filter(|axis| *axis != along).collect();
    let corner = |at: &[Length; 2]| {
        let mut place = [Length::m(0.0); 3];
        place[axes[0]] = at[0];
        place[axes[1]] = at[1];
        look.at(room.place(&place))
    };
    Some(profile.corners.iter().map(corner).collect())
}

/// Flange, body, door and the spaces that papers ask for.
fn bodies(ink: &mut Ink, room: &Room<'_>, look: &Look, by_job: bool, place: usize) {
    let picture = room.picture;
    let (body_line, thin, space) = if by_job {
        (Line::AddedBody, Line::AddedThin, Line::Space)
    } else {
        (Line::Solid, Line::Thin, Line::SpaceNow)
    };
    if let Some(panel) = picture.panel.filter(|_| place != 1) {
        let faced = room.faced(&panel);
        if let Some(seen) = within(room, look, &faced, place) {
            ink.rect(Line::Wall, look.frame(&seen));
            ink.rect(Line::Seen, look.frame(&seen));
        }
    }
    let name = format!("items.{}", picture.item);
    let body = look.frame(&room.faced(&picture.body));
    ink.thing(&name, &format!("{}, its body", picture.item), |ink| {
        if let Some(door) = &picture.door {
            let closed = look.frame(&room.faced(&door.closed));
            if place == 1 {
                ink.rect(Line::Hidden, closed);
            } else {
                ink.rect(body_line, closed);
            }
        }
        if let Some(flange) = &picture.flange {
            let at = look.frame(&room.faced(flange));
            ink.rect(if place == 1 { thin } else { body_line }, at);
        }
        ink.rect(body_line, body);
    });
    for (words, block) in &picture.spaces {
        let at = look.frame(&room.faced(block));
        ink.thing(&format!("{name}.space"), words, |ink| ink.rect(space, at));
    }
    swing(ink, room, look, thin, place);
}

/// The way of a door's edge, in the view that looks along its pin.
fn swing(ink: &mut Ink, room: &Room<'_>, look: &Look, line: Line, place: usize) {
    let Some(door) = &room.picture.door else { return };
    let closed = room.faced(&door.closed);
    let [right, up, out] = room.picture.axes;
    let faced = |direction: Direction| {
        [(right, RIGHT, 1.0), (up, UP, 1.0), (out, BACK, -1.0)].into_iter().find_map(
            |(axis, i, sign)| {
                (axis.axis() == direction.axis())
                    .then(|| (i, if axis == direction { sign } else { -sign }))
            },
        )
    };
    let (Some((along, side)), Some((ahead, way))) = (faced(door.hinge), faced(door.out)) else {
        return;
    };
    if ![look.across, look.up].contains(&along)
        || ![look.across, look.up].contains(&ahead)
        || place == 1
    {
        return;
    }
    let pick = |i: usize, sign: f64| if sign > 0.0 { closed[i][1] } else { closed[i][0] };
    let mut pin = [0.0; 3];
    pin[along] = pick(along, side);
    pin[ahead] = pick(ahead, -way);
    let leaf = closed[along][1] - closed[along][0];
    let thick = closed[ahead][1] - closed[ahead][0];
    // A place on the leaf: so far from the pin along it and through it, at an angle.
    let on = |far: f64, deep: f64, angle_rad: f64| {
        let (sin, cos) = angle_rad.sin_cos();
        let mut at = pin;
        at[along] += -side * (far * cos - deep * sin);
        at[ahead] += way * (far * sin + deep * cos);
        look.at(at)
    };
    let open_rad = door.angle.in_rad();
    let steps = (open_rad / (FRAC_PI_2 / 18.0)).ceil().max(1.0);
    let arc: Vec<[f64; 2]> =
        (0..=steps as usize).map(|step| on(leaf, thick, open_rad * step as f64 / steps)).collect();
    ink.through(line, &arc, false);
    let corners = [
        on(0.0, 0.0, open_rad),
        on(leaf, 0.0, open_rad),
        on(leaf, thick, open_rad),
        on(0.0, thick, open_rad),
    ];
    ink.through(line, &corners, true);
}

/// Whether a smallest distance is shown in a view.
fn shows(distance: &Distance, place: usize) -> bool {
    // What stands on something has no way to it.
    if distance.length.in_mm().abs() < 0.05 {
        return false;
    }
    match distance.way {
        "behind" => place == 2,
        "left" | "right" | "above" | "below" => place == 1,
        _ => false,
    }
}

/// A smallest distance with its letter.
fn gap(
    ink: &mut Ink,
    room: &Room<'_>,
    look: &Look,
    distance: &Distance,
    letter: &str,
    by_job: bool,
) {
    let (a, b) = (look.at(room.place(&distance.from)), look.at(room.place(&distance.to)));
    let text = figure(distance.length.in_mm());
    let before = ink.lettered().len();
    if (a[1] - b[1]).abs() < 1e-6 {
        ink.dimension_across(a[1], [a[0], b[0]], a[1], &text);
    } else {
        ink.dimension_up(a[0], [a[1], b[1]], a[0], &text);
    }
    let Some(stands) = ink.lettered().get(before).copied() else { return };
    let [x, y] = stands.middle();
    let places = [
        [stands.right + 12.0, y],
        [stands.left - 12.0, y],
        [x, stands.top - 11.0],
        [x, stands.bottom + 11.0],
    ];
    let around = |[x, y]: [f64; 2]| Box2::of([x - 9.0, y - 9.0], [x + 9.0, y + 9.0]);
    if let Some(free) = places.into_iter().find(|at| ink.is_free(&around(*at))) {
        ink.ball(by_job, free, letter);
    }
}

/// Dimensions of bay and body, one after the other.
fn chains(ink: &mut Ink, room: &Room<'_>, look: &Look, place: usize) {
    let body = room.faced(&room.picture.body);
    let [wide, high, deep] = room.size;
    let chain = |marks: &mut Vec<f64>| {
        marks.sort_by(f64::total_cmp);
        marks.dedup_by(|a, b| (*a - *b).abs() < 0.05);
    };
    match place {
        1 => {
            let down = look.at([0.0, 0.0, 0.0])[1] + HATCHED;
            let mut marks = vec![0.0, body[RIGHT][0], body[RIGHT][1], wide];
            chain(&mut marks);
            for pair in marks.windows(2) {
                let ends = [look.at([pair[0], 0.0, 0.0])[0], look.at([pair[1], 0.0, 0.0])[0]];
                ink.dimension_across(down + 26.0, ends, down, &figure(pair[1] - pair[0]));
            }
            let ends = [look.at([0.0, 0.0, 0.0])[0], look.at([wide, 0.0, 0.0])[0]];
            ink.dimension_across(
                down + 52.0,
                ends,
                down + 30.0,
                &format!("{} clear", figure(wide)),
            );
            let left = look.view.origin[0];
            let mut marks = vec![0.0, body[UP][0], body[UP][1], high];
            chain(&mut marks);
            for pair in marks.windows(2) {
                let ends = [look.at([0.0, pair[0], 0.0])[1], look.at([0.0, pair[1], 0.0])[1]];
                ink.dimension_up(left - 34.0, ends, left - 8.0, &figure(pair[1] - pair[0]));
            }
        }
        2 => {
            let top = look.at([0.0, high, 0.0])[1];
            let ends =
                [look.at([0.0, 0.0, body[BACK][0]])[0], look.at([0.0, 0.0, body[BACK][1]])[0]];
            let foot = look.at([0.0, body[UP][1], 0.0])[1];
            ink.dimension_across(top - 14.0, ends, foot, &figure(body[BACK][1] - body[BACK][0]));
        }
        _ => {
            let right = look.at([wide, 0.0, 0.0])[0];
            if let Some(far) = room.opposite() {
                let ends = [look.at([0.0, 0.0, 0.0])[1], look.at([0.0, 0.0, -far])[1]];
                ink.dimension_up(right + 44.0, ends, right + 8.0, &figure(far));
            }
            let depth = room.wall(f64::midpoint(body[UP][0], body[UP][1]));
            let ends = [look.at([0.0, 0.0, 0.0])[1], look.at([0.0, 0.0, depth.min(deep)])[1]];
            ink.dimension_up(right + 44.0, ends, right + 8.0, &figure(depth.min(deep)));
        }
    }
}

/// Names of what is seen, where they fit.
fn words(ink: &mut Ink, room: &Room<'_>, look: &Look, place: usize, width: Width) {
    let by_job = room.brought.contains(&room.picture.item.as_str());
    let letter = if by_job { Letter::ON_ADDED } else { Letter::NOTE };
    let [x, y] = look.frame(&room.faced(&room.picture.body)).middle();
    if place != 1 || width == Width::Wide {
        let spots = [Spot::about([x, y]), Spot::about([x, y + 30.0])];
        ink.label(&letter, &spots[usize::from(place == 0)..], &room.picture.item);
    }
    let named = |thing: &&Placed| {
        thing.sort != Sort::Opposite && !(place == 0 && room.is_upright() && room.is_below(thing))
    };
    for thing in room.picture.around.iter().filter(named) {
        let faced = room.faced(&thing.block);
        let Some(seen) = within(room, look, &faced, place) else { continue };
        let at = look.frame(&seen);
        let [x, y] = at.middle();
        let text = if matches!(thing.sort, Sort::Item) { &thing.name } else { &thing.what };
        let spots = [
            Spot::about([x, y]),
            Spot::about([x, at.bottom - 12.0]),
            Spot::about([x, at.top + 12.0]),
        ];
        let stands = ink.stands(&Letter::NOTE, &spots[0], text);
        if at.width() > stands.width() + 8.0 && at.height() > 16.0 {
            ink.label(&Letter::NOTE, &spots, text);
        } else if place == 2 {
            let right = look.at([0.0, 0.0, room.size[BACK]])[0] + HATCHED + 8.0;
            let spots: Vec<Spot> =
                (0..6).map(|step| Spot::from([right, y + f64::from(step) * 15.0])).collect();
            ink.lead(&Letter::NOTE, [at.right.min(right - 20.0) - 4.0, y], &spots, text);
        }
    }
    // The plane of the opening: where somebody stands who works at it.
    if place == 0 && room.is_upright() {
        let middle = look.at([room.size[RIGHT] / 2.0, 0.0, -room.aisle() * 0.8]);
        ink.label(&Letter::NOTE, &[Spot::about(middle)], "aisle");
    }
}
