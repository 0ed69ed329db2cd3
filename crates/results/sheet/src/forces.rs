//! Fixings: the pattern of fasteners to scale, what each of them takes, and what gives first.

use spile_build::file::HeldFace;
use spile_build::{Build, Item};
use spile_hold::{Picture, pictures};

use crate::drawing::{Drawing, Rows, Width};
use crate::ink::{Anchor, Box2, Ink, Letter, Line, Spot, View, figure, scale_words, text_width};

/// The longest arrow of a force.
const LONGEST: f64 = 64.0;

/// One drawing a fixing, the hardest worked first.
pub(crate) fn drawings(before: &Build, after: Option<&Build>, width: Width) -> Vec<Drawing> {
    let build = after.unwrap_or(before);
    let mut all = pictures(build);
    let hardest = |picture: &Picture| picture.used.first().map_or(0.0, |used| used.percent);
    all.sort_by(|a, b| hardest(b).total_cmp(&hardest(a)).then_with(|| a.name.cmp(&b.name)));
    all.iter().map(|picture| one(build, before, after.is_some(), picture, width)).collect()
}

fn one(build: &Build, before: &Build, is_job: bool, picture: &Picture, width: Width) -> Drawing {
    let new = is_job && !before.items.contains_key(&picture.name);
    let mut ink = Ink::new(width.units());
    let (room, left) = match width {
        Width::Wide => ([330.0, 230.0], 84.0),
        Width::Narrow => ([200.0, 180.0], 64.0),
    };
    let [wide_mm, high_mm] = picture.face_size.map(spile_quantity::Length::in_mm);
    let out_mm = out_of_face(&build.items[&picture.name], picture);
    let deepest = out_mm.max(picture.lever.in_mm());
    let scale = (wide_mm / room[0]).max(high_mm / room[1]).max(deepest / room[1]).max(1e-6);
    let view = View { name: "face", axes: "x y", scale, origin: [left, 60.0 + high_mm / scale] };
    face(&mut ink, picture, &view, new);
    let bottom = view.origin[1];
    // the other view stands in line below the face
    let reach = (deepest / scale + 44.0).max(LONGEST + 12.0);
    let foot = bottom + 84.0 + reach;
    let edge = View { name: "edge", axes: "x z", scale, origin: [left, foot] };
    let title = Spot { at: [left, foot - reach - 8.0], anchor: Anchor::Start, upright: false };
    ink.text(&Letter::TITLE, &title, "square to it");
    from_the_edge(&mut ink, picture, &edge, out_mm, new);
    let (x, y) = match width {
        Width::Wide => (left + room[0] + 120.0, 60.0),
        Width::Narrow => (12.0, foot + 84.0),
    };
    used(&mut ink, picture, [x, y], width.units() - x - 12.0);
    let weakest = picture.used.first();
    let gives = weakest.map_or_else(String::new, |used| {
        format!(" What gives first is the {}: {:.0} % used.", used.mode, used.percent)
    });
    let says = format!(
        "{} hold {:.1} kg at {}.{gives}",
        picture.fasteners,
        picture.mass.in_kg(),
        picture.case
    );
    let title = format!("Forces on the fixing of the {}", build.items[&picture.name].about);
    Drawing {
        scale: Some(scale_words(scale)),
        svg: ink.finish(width.class(), &title, &says, None),
        table: Some(table(picture)),
        title,
    }
}

/// How far the thing stands out from the face that is held \[mm\].
fn out_of_face(item: &Item, picture: &Picture) -> f64 {
    let Some(size) = &item.part.size else { return 2.0 * picture.lever.in_mm() };
    let out = match picture.face {
        HeldFace::Below | HeldFace::Above => &size.height,
        HeldFace::Behind => &size.depth,
        HeldFace::Beside => &size.width,
    };
    out.likely().in_mm()
}

const fn seen_from(face: HeldFace) -> &'static str {
    match face {
        HeldFace::Below => "its foot, from above",
        HeldFace::Above => "its top, from below",
        HeldFace::Behind => "its back, from the front",
        HeldFace::Beside => "its side, square to it",
    }
}

/// The face with its fasteners and what each takes along it.
fn face(ink: &mut Ink, picture: &Picture, view: &View, new: bool) {
    let [wide_mm, high_mm] = picture.face_size.map(spile_quantity::Length::in_mm);
    let at = view.rect([0.0, 0.0], [wide_mm, high_mm]);
    ink.rect(if new { Line::AddedBody } else { Line::Solid }, at);
    keep_outline_free(ink, at);
    let title = Spot { at: [at.left, 20.0], anchor: Anchor::Start, upright: false };
    ink.text(&Letter::TITLE, &title, seen_from(picture.face));
    ink.dimension_across(at.bottom + 26.0, [at.left, at.right], at.bottom, &figure(wide_mm));
    ink.dimension_up(at.left - 26.0, [at.top, at.bottom], at.left, &figure(high_mm));
    let most_n = picture.along.iter().map(|[x, y]| x.in_n().hypot(y.in_n())).fold(1e-9, f64::max);
    let scale = arrow_scale(most_n, picture);
    for (place, spot) in picture.places.iter().enumerate() {
        let [x, y] = view.at(spot.map(spile_quantity::Length::in_mm));
        ink.circle(Line::Seen, [x, y], 5.0);
        ink.line(Line::Hair, [x - 9.0, y], [x + 9.0, y]);
        ink.line(Line::Hair, [x, y - 9.0], [x, y + 9.0]);
        ink.keep_free(Box2::of([x - 9.0, y - 9.0], [x + 9.0, y + 9.0]));
        let [right, above] = picture.along[place].map(spile_quantity::Force::in_n);
        let to = [x + right * scale, y - above * scale];
        if (to[0] - x).hypot(to[1] - y) > 6.0 {
            ink.arrow(Line::Cut, [x, y], to);
            ink.keep_free(Box2::of([x, y], to).grown(3.0));
        }
    }
    for (place, spot) in picture.places.iter().enumerate() {
        let [x, y] = view.at(spot.map(spile_quantity::Length::in_mm));
        let share = &picture.shares[place];
        let words = share_words(share.tension.in_n(), share.shear.in_n());
        let hardest = picture.hardest == Some(place);
        let letter = if hardest { Letter::TITLE } else { Letter::NOTE };
        let beside =
            |dx: f64, dy: f64, anchor| Spot { at: [x + dx, y + dy], anchor, upright: false };
        let spots = [
            beside(14.0, -12.0, Anchor::Start),
            beside(14.0, 18.0, Anchor::Start),
            beside(-14.0, -12.0, Anchor::End),
            beside(-14.0, 18.0, Anchor::End),
            beside(30.0, 4.0, Anchor::Start),
            beside(-4.0, 36.0, Anchor::Start),
            beside(4.0, 36.0, Anchor::End),
            beside(-4.0, -30.0, Anchor::Start),
            beside(4.0, -30.0, Anchor::End),
        ];
        ink.label(&letter, &spots, &words);
    }
    if picture.places.is_empty() {
        ink.label(&Letter::NOTE, &[Spot::about(at.middle())], &picture.fasteners);
    }
}

/// Keeps lettering off the outline of a rectangle.
fn keep_outline_free(ink: &mut Ink, at: Box2) {
    for y in [at.top, at.bottom] {
        ink.keep_free(Box2::of([at.left, y - 1.5], [at.right, y + 1.5]));
    }
    for x in [at.left, at.right] {
        ink.keep_free(Box2::of([x - 1.5, at.top], [x + 1.5, at.bottom]));
    }
}

/// `298 N out, 40 N across`, as far as there is any.
fn share_words(tension_n: f64, shear_n: f64) -> String {
    let part = |newton: f64, way: &str| {
        (newton >= 0.5).then(|| format!("{} N {way}", figure(newton.round())))
    };
    if !tension_n.is_finite() {
        return "no hold against tipping".to_owned();
    }
    let parts: Vec<String> =
        part(tension_n, "out").into_iter().chain(part(shear_n, "across")).collect();
    if parts.is_empty() { "no force".to_owned() } else { parts.join(", ") }
}

/// Units for a newton: the greatest force of the two views is the longest arrow.
fn arrow_scale(most_along_n: f64, picture: &Picture) -> f64 {
    let pulled = picture.shares.iter().map(|share| share.tension.in_n()).filter(|n| n.is_finite());
    LONGEST / pulled.fold(most_along_n, f64::max)
}

/// The thing from its edge: where its mass pushes, and how each fastener is pulled.
fn from_the_edge(ink: &mut Ink, picture: &Picture, view: &View, out_mm: f64, new: bool) {
    let wide_mm = picture.face_size[0].in_mm();
    let body = view.rect([0.0, 0.0], [wide_mm, out_mm]);
    ink.rect(if new { Line::AddedBody } else { Line::Solid }, body);
    let wall = [
        [body.left - 20.0, body.bottom],
        [body.right + 20.0, body.bottom],
        [body.right + 20.0, body.bottom + 10.0],
        [body.left - 20.0, body.bottom + 10.0],
    ];
    ink.hatch(&wall);
    ink.line(Line::Cut, wall[0], wall[1]);
    let middle = view.at([wide_mm / 2.0, picture.lever.in_mm()]);
    ink.circle(Line::Solid, middle, 6.0);
    ink.line(Line::Thin, [middle[0] - 6.0, middle[1]], [middle[0] + 6.0, middle[1]]);
    ink.line(Line::Thin, [middle[0], middle[1] - 6.0], [middle[0], middle[1] + 6.0]);
    ink.keep_free(Box2::of([middle[0] - 7.0, middle[1] - 7.0], [middle[0] + 7.0, middle[1] + 7.0]));
    let [right, away, above] = [picture.push.right, picture.push.away, picture.push.above]
        .map(spile_quantity::Force::in_n);
    let whole = right.hypot(away).hypot(above);
    let long = 40.0 / right.hypot(away).max(1e-9);
    if right.hypot(away) > 1e-6 {
        let to = [middle[0] + right * long, middle[1] - away * long];
        ink.arrow(Line::Cut, middle, to);
        ink.keep_free(Box2::of(middle, to).grown(3.0));
    }
    ink.dimension_up(
        body.left - 46.0,
        [middle[1], body.bottom],
        body.left,
        &figure(picture.lever.in_mm()),
    );
    let scale = arrow_scale(1e-9, picture);
    let mut told: Vec<f64> = Vec::new();
    for (spot, share) in picture.places.iter().zip(&picture.shares) {
        let [x, y] = view.at([spot[0].in_mm(), 0.0]);
        if told.iter().any(|other| (other - x).abs() < 4.0) {
            continue;
        }
        told.push(x);
        ink.line(Line::Centre, [x, y + 16.0], [x, y - 10.0]);
        let same =
            picture.places.iter().zip(&picture.shares).filter(|(other, _)| other[0] == spot[0]);
        let tension_n =
            same.map(|(_, share)| share.tension.in_n()).fold(share.tension.in_n(), f64::max);
        let words = if tension_n.is_finite() {
            format!("{} N out", figure(tension_n.round()))
        } else {
            "no hold against tipping".to_owned()
        };
        if tension_n.is_finite() && tension_n * scale > 6.0 {
            ink.arrow(Line::Cut, [x, y], [x, y - tension_n * scale]);
            ink.keep_free(Box2::of([x - 3.0, y - tension_n * scale], [x + 3.0, y]));
        }
        let under = |dy: f64, anchor| Spot { at: [x, y + dy], anchor, upright: false };
        ink.label(
            &Letter::NOTE,
            &[
                under(30.0, Anchor::Middle),
                under(46.0, Anchor::Middle),
                under(62.0, Anchor::Middle),
            ],
            &words,
        );
    }
    let words = format!("{}: {} N", picture.case, figure(whole.round()));
    let beside = |dx: f64, dy: f64, anchor| Spot {
        at: [middle[0] + dx, middle[1] + dy],
        anchor,
        upright: false,
    };
    ink.label(
        &Letter::TITLE,
        &[
            beside(12.0, -12.0, Anchor::Start),
            beside(12.0, 20.0, Anchor::Start),
            beside(-12.0, -12.0, Anchor::End),
            beside(0.0, -50.0, Anchor::Middle),
        ],
        &words,
    );
}

/// Each way of failing with how much of it is used, against all of it.
fn used(ink: &mut Ink, picture: &Picture, [x, y]: [f64; 2], wide: f64) {
    let head = Spot { at: [x, y - 40.0], anchor: Anchor::Start, upright: false };
    ink.text(&Letter::TITLE, &head, "what gives, hardest worked fastener");
    let most = picture
        .used
        .iter()
        .map(|used| used.percent)
        .filter(|p| p.is_finite())
        .fold(140.0, f64::max);
    let unit = (wide - 60.0) / most;
    for (place, used) in picture.used.iter().enumerate() {
        let at = y + place as f64 * 46.0;
        let letter = if place == 0 { Letter::TITLE } else { Letter::NOTE };
        let first = if place == 0 { ", gives first" } else { "" };
        let words = format!("{}{first}", used.mode);
        ink.text(
            &letter,
            &Spot { at: [x, at - 4.0], anchor: Anchor::Start, upright: false },
            &words,
        );
        let percent = if used.percent.is_finite() { used.percent } else { most };
        ink.rect(
            if place == 0 { Line::Filled } else { Line::Seen },
            Box2::of([x, at + 2.0], [x + percent * unit, at + 12.0]),
        );
        let limit = x + 100.0 * unit;
        ink.line(Line::Limit, [limit, at - 1.0], [limit, at + 15.0]);
        let figure = if used.percent.is_finite() {
            format!("{:.0} %", used.percent)
        } else {
            "no hold".to_owned()
        };
        let end = x + (percent * unit).max(100.0 * unit) + 8.0;
        let fits = end + text_width(&figure, 12.5, false) < x + wide + 12.0;
        let spot = if fits {
            Spot { at: [end, at + 12.0], anchor: Anchor::Start, upright: false }
        } else {
            Spot { at: [x, at + 26.0], anchor: Anchor::Start, upright: false }
        };
        ink.text(&Letter::PLAIN, &spot, &figure);
    }
    let under = y + picture.used.len() as f64 * 46.0;
    let note = Spot { at: [x, under], anchor: Anchor::Start, upright: false };
    ink.text(&Letter::NOTE, &note, "the heavy tick is 100 %, what it may bear");
}

fn table(picture: &Picture) -> Rows {
    let head = ["what", "along its axis, N", "across it, N", "used, %"];
    let mut rows: Vec<Vec<String>> = Vec::new();
    for (place, share) in picture.shares.iter().enumerate() {
        rows.push(vec![
            format!("fastener {}", place + 1),
            format!("{:.0}", share.tension.in_n()),
            format!("{:.0}", share.shear.in_n()),
            String::new(),
        ]);
    }
    for used in &picture.used {
        rows.push(vec![
            used.mode.to_owned(),
            String::new(),
            String::new(),
            format!("{:.0}", used.percent),
        ]);
    }
    Rows { head: head.map(str::to_owned).to_vec(), rows }
}
