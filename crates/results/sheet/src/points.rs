//! Where to put the meter along a run: the places on a simplified circuit, in the order in which
//! they are read, what to expect there, what was read, and what explains it.

use spile_answer::{Reason, Unit, Verdict};
use spile_build::{Build, Return};
use spile_meter::{Round, Spot as Place, TestPoint, points};

use crate::drawing::{Drawing, Rows, Width};
use crate::ink::{Anchor, Box2, Ink, Letter, Line, Spot, wrapped};
use crate::oneline::shape;

/// The feed's line and the return's, from the top of the sheet.
const FEED: f64 = 84.0;
const BACK: f64 = 224.0;
/// Where losses are dimensioned, over the feed and under the return.
const OVER: f64 = 34.0;
const UNDER: f64 = 272.0;
/// From one line of lettering to the next.
const LINE: f64 = 16.0;

const CAUTION: &str = "Probes that touch each other at the posts short the battery: one probe at a time, the other hand off metal. The clamp goes round the feed alone.";

/// One drawing for each round, those with something to explain first; none where nothing can be
/// expected.
pub(crate) fn drawings(before: &Build, after: Option<&Build>, width: Width) -> Vec<Drawing> {
    let build = after.unwrap_or(before);
    let mut rounds = points(build);
    rounds.sort_by_key(|round| round.causes.is_empty());
    let is_new = |round: &Round| !before.runs.contains_key(&round.run);
    rounds.iter().map(|round| drawn(build, round, is_new(round), width)).collect()
}

fn drawn(build: &Build, round: &Round, is_new: bool, width: Width) -> Drawing {
    let title = match &round.reading {
        Some(reading) => {
            format!("Test points of the {}, with what was read: {reading}", round.item)
        }
        None => format!("Test points of the {}", round.item),
    };
    let mut ink = Ink::new(width.units());
    let by_body = matches!(build.runs[&round.run].back, Return::Body { .. });
    let loop_ = Loop::of(match width {
        Width::Wide => 410.0,
        Width::Narrow => width.units(),
    });
    loop_.circuit(&mut ink, &round.item, is_new, by_body);
    for (place, point) in round.points.iter().enumerate() {
        loop_.meter(&mut ink, place + 1, point);
    }
    let at = match width {
        Width::Wide => [450.0, 40.0],
        Width::Narrow => [0.0, UNDER + 58.0],
    };
    let listed = list(&mut ink, round, at);
    let below = listed.max(UNDER + 16.0) + 32.0;
    said(&mut ink, round, below);
    Drawing {
        svg: ink.finish(width.class(), &title, &says(round), None),
        title,
        scale: None,
        table: Some(table(round)),
    }
}

/// The circuit of one run as a loop, from the left to the right of the sheet.
struct Loop {
    post: f64,
    bus: f64,
    fuse: [f64; 2],
    plug: f64,
    end: f64,
}

impl Loop {
    fn of(wide: f64) -> Self {
        let bus = wide * 0.36;
        Self { post: 30.0, bus, fuse: [bus + 22.0, bus + 50.0], plug: wide - 80.0, end: wide - 8.0 }
    }

    /// Battery, block, fuse, feed, plug and return.
    fn circuit(&self, ink: &mut Ink, item: &str, is_new: bool, by_body: bool) {
        let wire = if is_new { Line::Added } else { Line::Cut };
        let item_x = self.end - 27.0;
        let battery = Box2::of([8.0, FEED + 14.0], [52.0, BACK - 14.0]);
        ink.rect(Line::Seen, battery);
        ink.text(&Letter::NOTE, &Spot::up_about(battery.middle()), "battery");
        for (sign, y) in [("+", FEED + 28.0), ("−", BACK - 20.0)] {
            let spot = Spot { at: [self.post, y], anchor: Anchor::Middle, upright: false };
            ink.text(&Letter::TITLE, &spot, sign);
        }
        ink.through(
            Line::Cut,
            &[[self.post, FEED + 14.0], [self.post, FEED], [self.bus, FEED]],
            false,
        );
        ink.through(
            Line::Cut,
            &[[self.post, BACK - 14.0], [self.post, BACK], [self.bus, BACK]],
            false,
        );
        ink.through(wire, &[[self.bus, FEED], [item_x, FEED], [item_x, FEED + 14.0]], false);
        ink.through(wire, &[[item_x, BACK - 14.0], [item_x, BACK], [self.bus, BACK]], false);
        let fuse = Box2::of([self.fuse[0], FEED - 6.0], [self.fuse[1], FEED + 6.0]);
        ink.rect(Line::Solid, fuse);
        ink.line(Line::Thin, [fuse.left, FEED], [fuse.right, FEED]);
        for y in [FEED, BACK] {
            ink.line(Line::Cut, [self.bus, y - 10.0], [self.bus, y + 10.0]);
            ink.circle(Line::Solid, [self.plug, y], 3.4);
        }
        let body = if is_new { Line::AddedBody } else { Line::Seen };
        let stands = Box2::of([self.end - 54.0, FEED + 14.0], [self.end, BACK - 14.0]);
        ink.rect(body, stands);
        let letter = if is_new { Letter::ON_ADDED } else { Letter::NOTE };
        let lines = wrapped(item, &letter, stands.height() - 8.0);
        let first = stands.middle()[0] - (lines.len().min(3) as f64 - 1.0) * 7.5;
        for (place, line) in lines.iter().take(3).enumerate() {
            let x = first + place as f64 * 15.0;
            ink.text(&letter, &Spot::up_about([x, stands.middle()[1]]), line);
        }
        let back = [self.bus + 34.0, self.plug - 26.0];
        if by_body {
            let steel = Box2::of([back[0], BACK - 5.0], [back[1], BACK + 5.0]);
            ink.rect(Line::Solid, steel);
            ink.hatch(&steel.corners());
            ink.circle(Line::Filled, [back[0], BACK], 5.0);
            ink.circle(Line::Filled, [back[1], BACK], 5.0);
        }
        let names = [
            ([self.bus - 7.0, FEED + 17.0], Anchor::End, "block"),
            ([f64::midpoint(self.fuse[0], self.fuse[1]), FEED + 21.0], Anchor::Middle, "fuse"),
            ([self.plug - 8.0, FEED + 17.0], Anchor::End, "plug"),
            ([self.bus - 7.0, BACK - 9.0], Anchor::End, "bus"),
            (
                [f64::midpoint(back[0], back[1]), BACK - 12.0],
                Anchor::Middle,
                if by_body { "body steel" } else { "return" },
            ),
        ];
        for (at, anchor, name) in names {
            ink.text(&Letter::NOTE, &Spot { at, anchor, upright: false }, name);
        }
    }

    /// Where one place is measured: its ball on the line from probe to probe.
    fn meter(&self, ink: &mut Ink, number: usize, point: &TestPoint) {
        let across = |x: f64| [[x, FEED], [x, BACK]];
        let along = |from: f64, to: f64, y: f64| [[from, y], [to, y]];
        let probes = match point.spot {
            Place::Battery => across(self.post + 42.0),
            Place::Block => across(self.bus),
            Place::Appliance => across(self.plug),
            Place::Current => {
                let x = f64::midpoint(self.fuse[1], self.plug);
                ink.circle(Line::Seen, [x, FEED], 7.0);
                [[x, FEED + 7.0], [x, FEED + 45.0]]
            }
            Place::FeedDrop => along(self.bus, self.plug, OVER),
            Place::ReturnDrop => along(self.bus, self.plug, UNDER),
            Place::MainDrop => along(self.post, self.bus, OVER),
            Place::NegativeDrop => along(self.post, self.bus, UNDER),
            Place::FuseDrop => along(self.fuse[0] - 8.0, self.fuse[1] + 8.0, FEED - 24.0),
        };
        let [from, to] = probes;
        if from[1] == to[1] {
            let foot = if from[1] < FEED { FEED } else { BACK };
            for [x, y] in probes {
                let towards = (foot - y).signum();
                ink.line(Line::Dim, [x, y - 4.0 * towards], [x, foot - 11.0 * towards]);
                ink.line(Line::Tick, [x - 4.0, y + 4.0], [x + 4.0, y - 4.0]);
            }
        }
        ink.line(Line::Dim, from, to);
        let at = match point.spot {
            Place::Current => to,
            _ => [f64::midpoint(from[0], to[0]), f64::midpoint(from[1], to[1])],
        };
        ink.ball(false, at, &number.to_string());
        if let Some(is_expected) = point.is_as_expected() {
            // The plug's stands towards the loop's inside: the item is close on the other side.
            let aside = if point.spot == Place::Appliance { -19.0 } else { 19.0 };
            shape(ink, [at[0] + aside, at[1]], verdict(is_expected));
        }
    }
}

/// What is expected in each place, and what was read; gives where it ends.
fn list(ink: &mut Ink, round: &Round, [left, top]: [f64; 2]) -> f64 {
    let text = |ink: &mut Ink, letter: &Letter, at: [f64; 2], anchor, words: &str| {
        ink.text(letter, &Spot { at, anchor, upright: false }, words);
    };
    text(ink, &Letter::NOTE, [left + 232.0, top - 24.0], Anchor::End, "expect");
    text(ink, &Letter::NOTE, [left + 239.0, top - 24.0], Anchor::Start, "from and to");
    let mut y = top;
    for (place, point) in round.points.iter().enumerate() {
        let expect = &point.expect;
        ink.ball(false, [left + 9.0, y - 4.0], &(place + 1).to_string());
        text(ink, &Letter::PLAIN, [left + 25.0, y], Anchor::Start, &expect.place);
        let likely = shown(expect.likely, expect.unit, true);
        text(ink, &Letter::TITLE, [left + 232.0, y], Anchor::End, &likely);
        text(ink, &Letter::NOTE, [left + 239.0, y], Anchor::Start, &ends(point));
        if let (Some(read), Some(is_expected)) = (expect.read, point.is_as_expected()) {
            y += LINE + 2.0;
            shape(ink, [left + 34.0, y - 4.0], verdict(is_expected));
            let read = shown(read, expect.unit, true);
            let (letter, words) = if is_expected {
                (Letter::NOTE, format!("read {read}, as expected"))
            } else {
                (Letter::TITLE, format!("read {read}, not as expected"))
            };
            text(ink, &letter, [left + 46.0, y], Anchor::Start, &words);
        }
        y += 1.6 * LINE;
    }
    y - 1.6 * LINE
}

/// What explains the readings, the next test, and the caution.
fn said(ink: &mut Ink, round: &Round, top: f64) {
    let mut y = top;
    let most = ink.wide();
    let mut put = |letter: &Letter, words: &str| {
        for line in wrapped(words, letter, most) {
            ink.text(letter, &Spot { at: [0.0, y], anchor: Anchor::Start, upright: false }, &line);
            y += LINE;
        }
        y += 4.0;
    };
    if !round.causes.is_empty() {
        put(&Letter::TITLE, "What explains it, the likeliest first");
        for (place, cause) in round.causes.iter().enumerate() {
            put(&Letter::PLAIN, &format!("{}. {}", place + 1, cause.says));
        }
    }
    if let Some((test, how)) = &round.next {
        put(&Letter::PLAIN, &format!("Next: {test}. {how}"));
    }
    put(&Letter::NOTE, CAUTION);
}

/// What was expected is no limit, so a reading outside is *care*.
const fn verdict(is_expected: bool) -> Verdict {
    if is_expected { Verdict::Good } else { Verdict::Care(Reason::Practice) }
}

fn shown(value: f64, unit: Unit, with_unit: bool) -> String {
    let digits = match unit {
        Unit::Millivolt => 0,
        Unit::Ampere => 1,
        _ => 2,
    };
    let figure = format!("{value:.digits$}");
    let nought = figure.trim_start_matches('-').chars().all(|one| matches!(one, '0' | '.'));
    let figure = if nought { figure.replace('-', "") } else { figure.replace('-', "−") };
    if with_unit { format!("{figure} {}", unit.symbol()) } else { figure }
}

fn ends(point: &TestPoint) -> String {
    let expect = &point.expect;
    let end = |value| shown(value, expect.unit, false);
    format!("{} to {}", end(expect.low), end(expect.high))
}

fn says(round: &Round) -> String {
    let count = round.points.len();
    let causes: Vec<&str> = round.causes.iter().map(|cause| cause.says.as_str()).collect();
    if causes.is_empty() {
        format!("{count} places in the order in which they are read, with what to expect there.")
    } else {
        format!("{count} places in their order. The likeliest cause first: {}.", causes.join("; "))
    }
}

fn table(round: &Round) -> Rows {
    let head =
        ["order", "place", "how it is taken", "expect", "from and to", "read", "as expected"];
    let row = |(place, point): (usize, &TestPoint)| {
        let expect = &point.expect;
        vec![
            (place + 1).to_string(),
            expect.place.to_string(),
            expect.how.to_string(),
            shown(expect.likely, expect.unit, true),
            ends(point),
            expect.read.map_or_else(String::new, |read| shown(read, expect.unit, true)),
            point
                .is_as_expected()
                .map_or("", |is_expected| if is_expected { "yes" } else { "no" })
                .to_owned(),
        ]
    };
    Rows {
        head: head.map(str::to_owned).to_vec(),
        rows: round.points.iter().enumerate().map(row).collect(),
    }
}
