//! Bays as sections: openings, the air through them, how warm it is where, and where the heat goes.

use maud::html;
use spile_air::{Picture, pictures};
use spile_build::file::LeadsTo;
use spile_build::{Bay, Build, Vent};
use spile_fit::{Block, Placed, Sort, placed};
use spile_solid::Direction;

use crate::drawing::{Drawing, Rows, Width};
use crate::ink::{Anchor, Box2, Ink, Letter, Line, Spot, View, figure, number, scale_words};

/// Where the section begins below the top of the sheet.
const TOP: f64 = 54.0;

/// One section a warm bay; of bays whose place in the vehicle is known.
pub(crate) fn drawings(before: &Build, after: Option<&Build>, width: Width) -> Vec<Drawing> {
    let build = after.unwrap_or(before);
    let things = placed(build);
    let old = after.map(|_| pictures(before)).unwrap_or_default();
    let one = |picture: &Picture| {
        let bay =
            things.iter().find(|thing| thing.sort == Sort::Bay && thing.name == picture.name)?;
        let was = old.iter().find(|was| was.name == picture.name);
        Some(section(build, after.map(|_| before), picture, was, bay, &things, width))
    };
    pictures(build).iter().filter_map(one).collect()
}

fn section(
    build: &Build,
    before: Option<&Build>,
    picture: &Picture,
    was: Option<&Picture>,
    bay: &Placed,
    things: &[Placed],
    width: Width,
) -> Drawing {
    let of = &build.bays[&picture.name];
    let [deep_mm, high_mm] =
        [depth_of(&bay.block, of), (bay.block.high[2] - bay.block.low[2]).in_mm()];
    let (room, left) = match width {
        Width::Wide => ([220.0, 340.0], 190.0),
        Width::Narrow => ([110.0, 260.0], 106.0),
    };
    let scale = (deep_mm / room[0]).max(high_mm / room[1]).max(1e-6);
    let view =
        View { name: "section", axes: "out z", scale, origin: [left, TOP + high_mm / scale] };
    let mut ink = Ink::new(width.units());
    let at = view.rect([0.0, 0.0], [deep_mm, high_mm]);
    ink.rect(Line::Cut, at);
    for x in [at.left, at.right] {
        ink.keep_free(Box2::of([x - 2.0, at.top], [x + 2.0, at.bottom]));
    }
    for thing in
        things.iter().filter(|thing| thing.sort == Sort::Item && meets(&thing.block, &bay.block))
    {
        let [near_mm, far_mm] = across(&thing.block, &bay.block, of);
        let up = [thing.block.low[2], thing.block.high[2]].map(|z| (z - bay.block.low[2]).in_mm());
        let body = view.rect([near_mm, up[0]], [far_mm, up[1]]);
        let new = before.is_some_and(|before| !before.items.contains_key(&thing.name));
        ink.thing(&thing.name, &thing.what, |ink| {
            ink.rect(if new { Line::AddedBody } else { Line::Solid }, body);
        });
        let letter = if new { Letter::ADDED } else { Letter::NOTE };
        let name = thing.what.split(',').next().unwrap_or(&thing.what);
        ink.label(&letter, &[Spot::about(body.middle())], name);
    }
    let letters = [
        (
            Spot { at: [at.left, TOP - 32.0], anchor: Anchor::Start, upright: false },
            format!("{}, section", picture.name),
            Letter::TITLE,
        ),
        (
            Spot { at: [8.0, TOP + 14.0], anchor: Anchor::Start, upright: false },
            "cabin".to_owned(),
            Letter::NOTE,
        ),
        (
            Spot { at: [8.0, TOP + 32.0], anchor: Anchor::Start, upright: false },
            celsius(picture.cabin),
            Letter::TITLE,
        ),
    ];
    for (spot, words, letter) in &letters {
        ink.label(letter, &[*spot], words);
    }
    let warm = if before.is_some() { Letter::AFTER } else { Letter::TITLE };
    let inside = |dy: f64| Spot {
        at: [at.middle()[0], at.top + dy],
        anchor: Anchor::Middle,
        upright: false,
    };
    let over = Spot { at: [at.right, TOP - 14.0], anchor: Anchor::End, upright: false };
    ink.label(&warm, &[inside(18.0), inside(34.0), over], &format!("bay {}", celsius(picture.bay)));
    vents(&mut ink, of, picture, &view, deep_mm, high_mm);
    ink.dimension_across(at.bottom + 28.0, [at.left, at.right], at.bottom, &figure(deep_mm));
    let end = match width {
        Width::Wide => heat(&mut ink, picture, was, [600.0, TOP + 12.0]),
        Width::Narrow => heat(&mut ink, picture, was, [8.0, at.bottom + 72.0]),
    };
    ink.reached(end);
    let title = format!("Air and heat of the bay {}", picture.name);
    let says =
        format!("{} in the cabin, {} in the bay.", celsius(picture.cabin), celsius(picture.bay));
    Drawing {
        scale: Some(scale_words(scale)),
        svg: ink.finish(width.class(), &title, &says, None),
        table: Some(Rows {
            head: ["what", "figure"].map(str::to_owned).to_vec(),
            rows: rows(picture, was),
        }),
        title,
    }
}

/// Whether two boxes have room in common.
fn meets(one: &Block, other: &Block) -> bool {
    (0..3).all(|axis| one.low[axis] < other.high[axis] && other.low[axis] < one.high[axis])
}

fn depth_of(block: &Block, bay: &Bay) -> f64 {
    let axis = outward(bay).axis().index();
    (block.high[axis] - block.low[axis]).in_mm()
}

/// Near and far face of a box, from the opening of its bay inwards \[mm\].
fn across(block: &Block, bay: &Block, of: &Bay) -> [f64; 2] {
    let out = outward(of);
    let from = bay.face(out);
    [out, out.opposite()].map(|way| ((from - block.face(way)).in_mm() * out.sign()).max(0.0))
}

/// Which way the bay opens.
fn outward(bay: &Bay) -> Direction {
    use spile_build::file::Direction as Word;
    match bay.opens {
        Word::Front => Direction::Front,
        Word::Rear => Direction::Rear,
        Word::Left => Direction::Left,
        Word::Right => Direction::Right,
        Word::Up => Direction::Up,
        Word::Down => Direction::Down,
    }
}

/// The openings with the air through them, each arrow as wide as its flow.
fn vents(ink: &mut Ink, bay: &Bay, picture: &Picture, view: &View, deep_mm: f64, high_mm: f64) {
    let Some(air) = &bay.air else { return };
    let stream = picture.stream;
    for (vent, word, low) in [(&air.inlet, "inlet", true), (&air.outlet, "outlet", false)] {
        let Some(vent) = vent else { continue };
        let (up_mm, told) = height(vent, low, high_mm);
        let to_cabin = !matches!(vent.leads_to, Some(LeadsTo::Outdoors | LeadsTo::Void));
        let [x, y] = view.at([if to_cabin { 0.0 } else { deep_mm }, up_mm]);
        ink.rect(Line::Solid, Box2::of([x - 4.0, y - 9.0], [x + 4.0, y + 9.0]));
        let away = if to_cabin { -1.0 } else { 1.0 };
        let comes_in = stream.is_none_or(|stream| stream.forward) == low;
        if let Some(stream) = stream {
            let thick = (stream.flow.in_m3_per_h() / 3.0).clamp(1.5, 12.0);
            flow(ink, [x + away * 44.0, y], [x + away * 8.0, y], comes_in, thick);
        }
        let area = vent
            .area
            .as_ref()
            .map_or_else(String::new, |area| format!(" {:.0} cm²", area.likely().in_cm2()));
        let words = format!("{word}{area}{}", if told { "" } else { ", height not said" });
        let anchor = if to_cabin { Anchor::End } else { Anchor::Start };
        let beside = |dy: f64| Spot { at: [x + away * 10.0, y + dy], anchor, upright: false };
        let spots = [beside(26.0), beside(-18.0)];
        if !ink.label(&Letter::NOTE, &spots, &words) {
            ink.label(&Letter::NOTE, &spots, word);
        }
        let warm = stream.map(|stream| if comes_in { stream.incoming } else { picture.bay });
        if let Some(warm) = warm {
            ink.label(&Letter::TITLE, &[beside(-12.0), beside(42.0)], &celsius(warm));
        }
    }
}

/// How high the middle of an opening lies, and whether that was told.
fn height(vent: &Vent, low: bool, high_mm: f64) -> (f64, bool) {
    match &vent.above {
        Some(above) => (above.likely().in_mm().clamp(0.0, high_mm), true),
        None => (high_mm * if low { 0.1 } else { 0.9 }, false),
    }
}

/// An arrow of air between a place outside and an opening.
fn flow(ink: &mut Ink, outer: [f64; 2], inner: [f64; 2], comes_in: bool, thick: f64) {
    let (from, to) = if comes_in { (outer, inner) } else { (inner, outer) };
    let head = if to[0] > from[0] { -1.0 } else { 1.0 } * (thick + 5.0);
    let half = thick / 2.0 + 4.0;
    ink.put(&html! {
        line class="flow" x1=(number(from[0])) y1=(number(from[1])) x2=(number(to[0] + head)) y2=(number(to[1])) stroke-width=(number(thick)) {}
        path class="flow-head" d=(format!("M{} {}l{} {}v{}Z", number(to[0]), number(to[1]), number(head), number(-half), number(2.0 * half))) {}
    });
    ink.keep_free(Box2::of([from[0], from[1] - half], [to[0], to[1] + half]));
}

/// Heat in and out, and the flow, in words; where they end.
fn heat(ink: &mut Ink, picture: &Picture, was: Option<&Picture>, [x, y]: [f64; 2]) -> f64 {
    let mut at = y;
    for row in rows(picture, was) {
        ink.text(
            &Letter::NOTE,
            &Spot { at: [x, at], anchor: Anchor::Start, upright: false },
            &row[0],
        );
        ink.text(
            &Letter::TITLE,
            &Spot { at: [x + 140.0, at], anchor: Anchor::Start, upright: false },
            &row[1],
        );
        at += 20.0;
    }
    at
}

fn rows(picture: &Picture, was: Option<&Picture>) -> Vec<Vec<String>> {
    let mut rows: Vec<[String; 2]> = vec![
        ["cabin".to_owned(), celsius(picture.cabin)],
        ["bay".to_owned(), celsius(picture.bay)],
    ];
    if let Some(was) = was {
        rows.push(["bay, as it stands".to_owned(), celsius(was.bay)]);
    }
    rows.push(["heat of cold boxes".to_owned(), watts(picture.boxes.in_w())]);
    if picture.machines.in_w() > 0.0 {
        rows.push(["heat of the rest".to_owned(), watts(picture.machines.in_w())]);
    }
    rows.push(["out through the walls".to_owned(), watts(picture.walls.in_w())]);
    if let Some(stream) = picture.stream {
        rows.push(["out with the air".to_owned(), watts(stream.carried.in_w())]);
        let usual = if stream.known { "" } else { ", usual" };
        let flow = format!("{:.0} m³/h", stream.flow.in_m3_per_h());
        rows.push([format!("air through it{usual}"), flow]);
        rows.push([
            "of it been here before".to_owned(),
            format!("{:.0} %", 100.0 * stream.drawn_in),
        ]);
    }
    rows.into_iter().map(|row| row.to_vec()).collect()
}

fn celsius(temperature: spile_quantity::Temperature) -> String {
    format!("{:.0} °C", temperature.in_celsius()).replace('-', "−")
}

fn watts(heat_w: f64) -> String {
    format!("{heat_w:.0} W").replace("-0 W", "0 W").replace('-', "−")
}
