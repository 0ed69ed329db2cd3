//! The wide diagram: the current goes from left to right, and back below.

use super::parts::{
    LARGE, LEGEND, STRONG, amps, bar, current, fuse, node, put, shape, sleeve, steel, stud, volts,
    wire,
};
use super::rows::{Change, Net, Row, cable_words, thickness};
use crate::ink::{Anchor, Box2, Ink, Letter, Line, figure};

/// From one run to the next.
const PITCH: f64 = 86.0;
/// The first run, level with the bank's positive post.
const FIRST: f64 = 96.0;

/// From the last run to the stud that ties the body to the bus.
const TIE: f64 = 62.0;

const BANK: [f64; 2] = [30.0, 118.0];
const BLOCK: f64 = 300.0;
const FUSED: f64 = 412.0;
const PLUG: f64 = 756.0;
const ITEM: [f64; 2] = [832.0, 984.0];
const BODY: f64 = 1098.0;
const BUS: f64 = 1152.0;

pub(super) fn drawn(net: &Net<'_>) -> Ink {
    let mut ink = Ink::new(1200.0);
    let at = |row: usize| FIRST + row as f64 * PITCH;
    let last = at(net.rows.len() - 1);
    let by_cable = net.by_cable();
    let body = (by_cable < net.rows.len()).then(|| [at(by_cable), last]);
    let bottom = (last + if body.is_some() { 124.0 } else { 84.0 }).max(FIRST + 250.0);
    let bus_from = match body {
        Some(_) if by_cable == 0 => last + TIE,
        _ => FIRST - 18.0,
    };
    ink.thing("bus", "negative bus", |ink| bar(ink, BUS, bus_from, bottom + 8.0));
    if let Some([first, last]) = body {
        ink.thing("body", "the body as a return", |ink| bonded(ink, net, first, last));
    }
    ink.thing("main", "bank, main fuse and main cables", |ink| main(ink, net, last, bottom));
    for (place, row) in net.rows.iter().enumerate() {
        ink.thing(row.name, &format!("run {} to {}", row.name, row.item), |ink| {
            one(ink, row, at(place));
        });
    }
    ink
}

/// The bank with what lies between it and the bars.
fn main(ink: &mut Ink, net: &Net<'_>, last: f64, bottom: f64) {
    let block = &net.build.block;
    let [feed, back] = [&block.feed, &block.back];
    let y = FIRST;
    // the way back, from the bus to the minus post
    let under = y + 188.0;
    let thick = thickness(back);
    wire(ink, [BUS, bottom], [74.0, bottom], thick, Change::Stays);
    wire(ink, [74.0, bottom + thick / 2.0], [74.0, under], thick, Change::Stays);
    let words = cable_words(back);
    put(ink, &STRONG, [300.0, bottom + 19.0], Anchor::Middle, &words[0], 160.0);
    put(ink, &Letter::NOTE, [300.0, bottom + 33.0], Anchor::Middle, &words[1], 160.0);
    ink.rect(Line::Solid, Box2::of([560.0, bottom - 6.0], [588.0, bottom + 6.0]));
    put(
        ink,
        &Letter::NOTE,
        [574.0, bottom + 22.0],
        Anchor::Middle,
        "posts, isolator, shunt, bars",
        260.0,
    );
    let joints = format!("{:.1} mΩ together", block.joints.likely().in_mohm());
    put(ink, &Letter::NOTE, [574.0, bottom + 36.0], Anchor::Middle, &joints, 260.0);
    put(ink, &Letter::NOTE, [30.0, bottom + 62.0], Anchor::Start, LEGEND, 900.0);
    // the way there
    wire(ink, [BANK[1], y], [BLOCK, y], thickness(feed), Change::Stays);
    fuse(ink, Box2::of([152.0, y - 7.0], [184.0, y + 7.0]), None);
    put(ink, &Letter::NOTE, [168.0, y + 26.0], Anchor::Middle, "main fuse", 90.0);
    if let Some(main) = net.build.bank.as_ref().map(|bank| &bank.fuse) {
        let rating = main.rating.as_ref();
        let rating = rating.map_or_else(
            || "not said".to_owned(),
            |amps| format!("{} A", figure(amps.likely().in_a())),
        );
        put(ink, &STRONG, [168.0, y + 40.0], Anchor::Middle, &rating, 90.0);
        let kind = main.family.map_or("", |family| family.word());
        put(ink, &Letter::NOTE, [168.0, y + 54.0], Anchor::Middle, kind, 90.0);
    }
    let words = cable_words(feed);
    put(ink, &STRONG, [246.0, y + 20.0], Anchor::Middle, &words[0], 70.0);
    put(ink, &Letter::NOTE, [246.0, y + 34.0], Anchor::Middle, &words[1], 70.0);
    // the bank itself
    ink.rect(Line::Solid, Box2::of([BANK[0], y - 28.0], [BANK[1], under]));
    cells(ink, y);
    put(ink, &Letter::TITLE, [86.0, under + 18.0], Anchor::Start, "bank", 180.0);
    for (place, words) in net.bank_words().iter().enumerate() {
        put(
            ink,
            &Letter::NOTE,
            [86.0, under + 34.0 + 14.0 * place as f64],
            Anchor::Start,
            words,
            200.0,
        );
    }
    // the block
    bar(ink, BLOCK, y - 24.0, last + 20.0);
    put(ink, &Letter::NOTE, [BLOCK + 8.0, y - 26.0], Anchor::Start, "fuse block", 90.0);
    put(ink, &Letter::NOTE, [BUS, bottom + 38.0], Anchor::Middle, "negative bus", 94.0);
    let Some(found) = &net.found else { return };
    for (x, voltage) in [(BANK[1], found.post), (BLOCK - 22.0, found.block)] {
        node(ink, [x, y]);
        ink.line(Line::Dim, [x, y - 5.0], [x, y - 40.0]);
        put(ink, &LARGE, [x, y - 46.0], Anchor::Middle, &volts(voltage), 90.0);
    }
    node(ink, [BUS, bottom]);
    put(ink, &LARGE, [BUS, bottom + 24.0], Anchor::Middle, &volts(found.bus), 90.0);
    current(ink, [238.0, y - 12.0], [266.0, y - 12.0], &amps(found.current));
    current(ink, [840.0, bottom - 12.0], [804.0, bottom - 12.0], &amps(found.current));
}

/// The strokes of a battery between its posts.
fn cells(ink: &mut Ink, y: f64) {
    let x = 74.0;
    for (place, (half, line)) in
        [(16.0, Line::Seen), (9.0, Line::Cut), (16.0, Line::Seen), (9.0, Line::Cut)]
            .into_iter()
            .enumerate()
    {
        let at = y + 64.0 + 14.0 * place as f64;
        ink.line(line, [x - half, at], [x + half, at]);
    }
    ink.through(Line::Thin, &[[BANK[1], y], [x, y], [x, y + 64.0]], false);
    ink.line(Line::Thin, [x, y + 106.0], [x, y + 188.0]);
    put(ink, &LARGE, [98.0, y + 36.0], Anchor::Middle, "+", 20.0);
    put(ink, &LARGE, [98.0, y + 150.0], Anchor::Middle, "−", 20.0);
}

/// The body's steel, from the studs of its runs to the stud that ties it to the bus.
fn bonded(ink: &mut Ink, net: &Net<'_>, first: f64, last: f64) {
    let tie = last + TIE;
    let body = &net.build.body;
    wire(ink, [BODY, tie], [BUS, tie], thickness(&body.cable), Change::Stays);
    steel(ink, BODY, first - 14.0, tie);
    stud(ink, [BODY, tie]);
    let words = format!("stud, then {} to the bus", cable_words(&body.cable).join(", "));
    put(ink, &STRONG, [BODY - 14.0, tie + 4.0], Anchor::End, &words, 300.0);
    let sheet = format!("body, {:.1} mΩ from stud to stud", body.resistance.likely().in_mohm());
    put(ink, &Letter::NOTE, [BODY - 14.0, tie + 20.0], Anchor::End, &sheet, 300.0);
    let Some(steel) = net.found.as_ref().and_then(|found| found.body) else { return };
    put(ink, &LARGE, [BODY, first - 22.0], Anchor::Middle, &volts(steel), 90.0);
}

/// One run, from the block to its item and on to where it returns.
fn one(ink: &mut Ink, row: &Row<'_>, y: f64) {
    let change = row.change;
    let gone = change == Change::Gone;
    wire(ink, [BLOCK, y], [PLUG - 7.0, y], thickness(&row.run.feed), change);
    wire(ink, [PLUG + 8.0, y], [ITEM[0], y], thickness(&row.run.feed), change);
    let end = if row.by_body() { BODY } else { BUS };
    wire(ink, [ITEM[1], y], [end, y], thickness(row.back()), change);
    if row.by_body() {
        stud(ink, [BODY, y]);
        put(ink, &Letter::NOTE, [BODY - 10.0, y - 9.0], Anchor::End, "stud", 40.0);
    }
    plug(ink, y);
    // the fuse in its way
    let ways = row.way_words();
    fuse(ink, Box2::of([324.0, y - 7.0], [354.0, y + 7.0]), row.colour());
    put(ink, &Letter::NOTE, [310.0, y + 24.0], Anchor::Start, &ways[0], 120.0);
    put(
        ink,
        &STRONG,
        [310.0, y + 38.0],
        Anchor::Start,
        ways.get(1).map_or("", String::as_str),
        130.0,
    );
    // the feed
    if let Some(way) = &row.run.way {
        sleeve(ink, [468.0, y], &way.number, true);
        sleeve(ink, [1058.0, y], &way.number, false);
    }
    let words = row.feed_words();
    put(ink, &LARGE, [570.0, y - 9.0], Anchor::Middle, &words[0], 110.0);
    let along = [words[1].clone(), row.run.along.clone()].join(", ");
    put(ink, &Letter::NOTE, [570.0, y + 19.0], Anchor::Middle, along.trim_end_matches(", "), 190.0);
    // the return
    let words = cable_words(row.back());
    put(ink, &STRONG, [1040.0, y + 20.0], Anchor::Middle, &words[0], 86.0);
    put(ink, &Letter::NOTE, [1040.0, y + 34.0], Anchor::Middle, &words[1], 86.0);
    if let Some(verdict) = row.verdict {
        shape(ink, [690.0, y + 18.0], verdict);
        put(ink, &STRONG, [702.0, y + 22.0], Anchor::Start, verdict.word(), 44.0);
        let reason = verdict.reason().map_or("", |reason| reason.word());
        put(ink, &Letter::NOTE, [702.0, y + 35.0], Anchor::Start, reason, 60.0);
    }
    item(ink, row, y);
    if gone {
        return;
    }
    let Some(found) = &row.found else { return };
    for (x, voltage) in [(FUSED, found.fused), (796.0, found.item[0]), (1018.0, found.item[1])] {
        node(ink, [x, y]);
        ink.line(Line::Dim, [x, y - 5.0], [x, y - 17.0]);
        put(ink, &LARGE, [x, y - 22.0], Anchor::Middle, &volts(voltage), 70.0);
    }
    current(ink, [688.0, y - 12.0], [724.0, y - 12.0], &amps(found.current));
}

/// The two halves of a plug.
fn plug(ink: &mut Ink, y: f64) {
    for x in [PLUG - 7.0, PLUG + 1.0] {
        ink.path(Line::Seen, &format!("M{x} {}a7 7 0 0 1 0 14", y - 7.0));
    }
    put(ink, &Letter::NOTE, [PLUG + 4.0, y + 22.0], Anchor::Middle, "plug", 40.0);
}

/// The item, with the volts that are left for it.
fn item(ink: &mut Ink, row: &Row<'_>, y: f64) {
    let line = match (row.change, row.item_new) {
        (Change::Gone, _) => Line::Gone,
        (_, true) => Line::AddedBody,
        _ => Line::Solid,
    };
    ink.rect(line, Box2::of([ITEM[0], y - 30.0], [ITEM[1], y + 30.0]));
    let middle = f64::midpoint(ITEM[0], ITEM[1]);
    let name = if row.item_new { Letter { class: "t-a t-b t-s onwash", ..STRONG } } else { STRONG };
    put(ink, &name, [middle, y - 15.0], Anchor::Middle, row.item, 140.0);
    if row.change == Change::Gone {
        put(ink, &Letter::NOTE, [middle, y + 6.0], Anchor::Middle, "goes out", 140.0);
        return;
    }
    let figure = if row.item_new { Letter { class: "t-a t-l onwash", ..LARGE } } else { LARGE };
    let note =
        if row.item_new { Letter { class: "t2 t-s onwash", ..Letter::NOTE } } else { Letter::NOTE };
    let left = row.found.as_ref().map(|found| volts(found.item[0] - found.item[1]));
    put(
        ink,
        &figure,
        [middle, y + 3.0],
        Anchor::Middle,
        left.as_deref().unwrap_or("volts not known"),
        140.0,
    );
    let last = match (&row.start, &row.takes) {
        (Some([start, least]), _) => format!("start {start:.2}, off at {least:.1}"),
        (None, Some(takes)) => takes.clone(),
        (None, None) => String::new(),
    };
    put(ink, &note, [middle, y + 20.0], Anchor::Middle, &last, 144.0);
    if let Some(other) = row.instead_of {
        put(
            ink,
            &Letter::NOTE,
            [middle, y + 44.0],
            Anchor::Middle,
            &format!("in place of {other}"),
            170.0,
        );
    }
}
