//! The narrow diagram: a list of runs between the block's bar on the left and the bus on the right.

use super::parts::{
    LARGE, STRONG, amps, bar, fuse, node, put, shape, steel, stud, verdict_words, volts, wire,
};
use super::rows::{Change, Net, Row, cable_words, thickness};
use crate::ink::{Anchor, Box2, Ink, Letter, Line, figure};

/// From one run to the next.
const PITCH: f64 = 150.0;
const FIRST: f64 = 226.0;
const BLOCK: f64 = 12.0;
const ITEM: [f64; 2] = [84.0, 240.0];
const BODY: f64 = 288.0;
const BUS: f64 = 316.0;

pub(super) fn drawn(net: &Net<'_>) -> Ink {
    let mut ink = Ink::new(328.0);
    let at = |row: usize| FIRST + row as f64 * PITCH;
    let last = at(net.rows.len() - 1);
    let by_cable = net.by_cable();
    let body = (by_cable < net.rows.len()).then(|| [at(by_cable), last]);
    let tie = last + 112.0;
    ink.thing("bus", "negative bus", |ink| {
        bar(ink, BUS, 166.0, body.map_or(last + 16.0, |_| tie + 8.0));
    });
    if let Some([first, _]) = body {
        ink.thing("body", "the body as a return", |ink| bonded(ink, net, first, tie));
    }
    ink.thing("main", "bank, main fuse and main cables", |ink| main(ink, net, last));
    for (place, row) in net.rows.iter().enumerate() {
        ink.thing(row.name, &format!("run {} to {}", row.name, row.item), |ink| {
            one(ink, row, at(place));
        });
    }
    ink
}

/// The bank over both bars.
fn main(ink: &mut Ink, net: &Net<'_>, last: f64) {
    let block = &net.build.block;
    wire(ink, [BLOCK, 60.0], [BLOCK, 166.0], thickness(&block.feed), Change::Stays);
    wire(ink, [BUS, 60.0], [BUS, 166.0], thickness(&block.back), Change::Stays);
    ink.rect(Line::Solid, Box2::of([2.0, 8.0], [326.0, 60.0]));
    let words = net.bank_words();
    put(ink, &STRONG, [164.0, 30.0], Anchor::Middle, &format!("bank, {}", words[0]), 240.0);
    put(
        ink,
        &Letter::NOTE,
        [164.0, 46.0],
        Anchor::Middle,
        words.get(1).map_or("", String::as_str),
        240.0,
    );
    put(ink, &LARGE, [14.0, 50.0], Anchor::Middle, "+", 20.0);
    put(ink, &LARGE, [314.0, 50.0], Anchor::Middle, "−", 20.0);
    // the main fuse with its cable on the left, the way back on the right
    fuse(ink, Box2::of([BLOCK - 7.0, 92.0], [BLOCK + 7.0, 122.0]), None);
    let bank = net.build.bank.as_ref().map(|bank| &bank.fuse);
    let rating = bank.and_then(|fuse| fuse.rating.as_ref());
    let rating = rating.map_or_else(
        || "not said".to_owned(),
        |amps| format!("{} A", figure(amps.likely().in_a())),
    );
    put(ink, &Letter::NOTE, [26.0, 104.0], Anchor::Start, "main fuse", 120.0);
    put(ink, &STRONG, [26.0, 119.0], Anchor::Start, &rating, 120.0);
    put(
        ink,
        &Letter::NOTE,
        [26.0, 138.0],
        Anchor::Start,
        &cable_words(&block.feed).join(", "),
        130.0,
    );
    ink.rect(Line::Solid, Box2::of([BUS - 6.0, 94.0], [BUS + 6.0, 120.0]));
    put(ink, &Letter::NOTE, [302.0, 104.0], Anchor::End, "posts, isolator, shunt", 150.0);
    put(
        ink,
        &STRONG,
        [302.0, 119.0],
        Anchor::End,
        &format!("{:.1} mΩ", block.joints.likely().in_mohm()),
        130.0,
    );
    put(
        ink,
        &Letter::NOTE,
        [302.0, 138.0],
        Anchor::End,
        &cable_words(&block.back).join(", "),
        130.0,
    );
    bar(ink, BLOCK, 166.0, last + 16.0);
    put(ink, &Letter::NOTE, [24.0, 190.0], Anchor::Start, "fuse block", 100.0);
    put(ink, &Letter::NOTE, [302.0, 190.0], Anchor::End, "negative bus", 100.0);
    let Some(found) = &net.found else { return };
    for (x, y, voltage) in
        [(BLOCK, 76.0, found.post), (BLOCK, 166.0, found.block), (BUS, 166.0, found.bus)]
    {
        node(ink, [x, y]);
        let (from, to, anchor) = if x < 100.0 {
            (x + 5.0, x + 12.0, Anchor::Start)
        } else {
            (x - 5.0, x - 12.0, Anchor::End)
        };
        ink.line(Line::Dim, [from, y], [to, y]);
        let text = if x < 100.0 { to + 3.0 } else { to - 3.0 };
        put(ink, &LARGE, [text, y + 5.0], anchor, &volts(voltage), 80.0);
    }
    put(
        ink,
        &STRONG,
        [164.0, 153.0],
        Anchor::Middle,
        &format!("{} through the bank", amps(found.current)),
        180.0,
    );
}

fn bonded(ink: &mut Ink, net: &Net<'_>, first: f64, tie: f64) {
    let body = &net.build.body;
    wire(ink, [BODY, tie], [BUS, tie], thickness(&body.cable), Change::Stays);
    steel(ink, BODY, first - 14.0, tie);
    stud(ink, [BODY, tie]);
    let words = format!("stud, then {} to the bus", cable_words(&body.cable).join(", "));
    put(ink, &STRONG, [BODY - 12.0, tie + 4.0], Anchor::End, &words, 252.0);
    let steel = net.found.as_ref().and_then(|found| found.body);
    let steel = steel.map_or_else(String::new, |steel| format!(", {} at the studs", volts(steel)));
    let sheet = format!("body, {:.1} mΩ{steel}", body.resistance.likely().in_mohm());
    put(ink, &Letter::NOTE, [BODY - 12.0, tie + 20.0], Anchor::End, &sheet, 252.0);
}

/// One run: its fuse and item on the line from bar to bar, its cables in words below.
fn one(ink: &mut Ink, row: &Row<'_>, y: f64) {
    wire(ink, [BLOCK, y], [ITEM[0], y], thickness(&row.run.feed), row.change);
    let end = if row.by_body() { BODY } else { BUS };
    wire(ink, [ITEM[1], y], [end, y], thickness(row.back()), row.change);
    if row.by_body() {
        stud(ink, [BODY, y]);
    }
    fuse(ink, Box2::of([28.0, y - 7.0], [58.0, y + 7.0]), row.colour());
    let ways = row.way_words();
    put(ink, &Letter::NOTE, [22.0, y - 14.0], Anchor::Start, &ways[0], 58.0);
    let rating = ways.get(1).map_or("", String::as_str);
    let (first, second) = rating.split_once(", ").unwrap_or((rating, ""));
    put(ink, &STRONG, [22.0, y + 22.0], Anchor::Start, first, 60.0);
    put(ink, &Letter::NOTE, [22.0, y + 36.0], Anchor::Start, second, 60.0);
    item(ink, row, y);
    // the cables in words
    let current = row.found.as_ref().map(|found| amps(found.current));
    let there: Vec<String> = row
        .feed_words()
        .into_iter()
        .chain(current)
        .chain((!row.run.along.is_empty()).then(|| row.run.along.clone()))
        .collect();
    put(
        ink,
        &Letter::NOTE,
        [24.0, y + 58.0],
        Anchor::Start,
        &format!("there {}", there.join(", ")),
        254.0,
    );
    let back = format!("back {}", row.back_words().join(", "));
    put(ink, &Letter::NOTE, [24.0, y + 74.0], Anchor::Start, &back, 254.0);
    if let Some(verdict) = row.verdict {
        shape(ink, [31.0, y + 90.0], verdict);
        put(ink, &STRONG, [44.0, y + 94.0], Anchor::Start, &verdict_words(verdict), 104.0);
    }
    if let Some(other) = row.instead_of {
        put(
            ink,
            &Letter::NOTE,
            [278.0, y + 94.0],
            Anchor::End,
            &format!("in place of {other}"),
            128.0,
        );
    }
}

fn item(ink: &mut Ink, row: &Row<'_>, y: f64) {
    let line = match (row.change, row.item_new) {
        (Change::Gone, _) => Line::Gone,
        (_, true) => Line::AddedBody,
        _ => Line::Solid,
    };
    ink.rect(line, Box2::of([ITEM[0], y - 32.0], [ITEM[1], y + 40.0]));
    let middle = f64::midpoint(ITEM[0], ITEM[1]);
    let [name, large, note] = if row.item_new {
        [
            Letter { class: "t-a t-b t-s onwash", ..STRONG },
            Letter { class: "t-a t-l onwash", ..LARGE },
            Letter { class: "t2 t-s onwash", ..Letter::NOTE },
        ]
    } else {
        [STRONG, LARGE, Letter::NOTE]
    };
    put(ink, &name, [middle, y - 16.0], Anchor::Middle, row.item, 148.0);
    if row.change == Change::Gone {
        put(ink, &note, [middle, y + 6.0], Anchor::Middle, "goes out", 148.0);
        return;
    }
    let Some(found) = &row.found else {
        put(ink, &note, [middle, y + 4.0], Anchor::Middle, "volts not known", 148.0);
        return;
    };
    let [plus, minus] = found.item;
    put(ink, &large, [middle, y + 3.0], Anchor::Middle, &volts(plus - minus), 148.0);
    let ends = format!("+ {}, − {}", volts(plus), volts(minus));
    put(ink, &note, [middle, y + 18.0], Anchor::Middle, &ends, 152.0);
    let last = match (&row.start, &row.takes) {
        (Some([start, least]), _) => format!("start {start:.2}, off at {least:.1}"),
        (None, Some(takes)) => takes.clone(),
        (None, None) => String::new(),
    };
    put(ink, &note, [middle, y + 33.0], Anchor::Middle, &last, 152.0);
}
