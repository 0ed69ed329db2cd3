//! Cold boxes: what a day costs, and how long they run, against the warmth round them.

use spile_build::Build;
use spile_cold::{At, Picture, picture};

use crate::drawing::{Drawing, Rows, Width};
use crate::ink::{Box2, Ink, Line, figure};
use crate::plot::{Axis, Plot};

/// The two plots; none where nothing cold can be computed.
pub(crate) fn drawings(before: &Build, after: Option<&Build>, width: Width) -> Vec<Drawing> {
    let pictures = [picture(before), after.and_then(picture)];
    if pictures.iter().flatten().all(|one| one.days.len() < 2) {
        return Vec::new();
    }
    vec![energy(&pictures, width), duty(&pictures, width)]
}

/// Watt-hours of a day.
fn energy(pictures: &[Option<Picture>; 2], width: Width) -> Drawing {
    let title = "Energy of a day against the warmth of the cabin";
    let most = all(pictures).flat_map(|(_, one)| one.days.iter().map(wh)).fold(1.0, f64::max);
    let mut ink = Ink::new(width.units());
    let y = Axis::over([0.0, most * 1.05], 5, "Wh a day");
    let mut plot = Plot::new(&mut ink, frame(width), cabins(pictures), y);
    corners(&mut plot, pictures);
    let mut says = Vec::new();
    for (after, one) in all(pictures) {
        let points = energies(one);
        plot.line(line(after), &points, &one.boxes.join(" and "));
    }
    for (after, one) in all(pictures) {
        let points = energies(one);
        for at in [one.mild.in_celsius(), one.hot.in_celsius()] {
            if let Some(value) = between(&points, at) {
                let words = format!("{} Wh", figure(rounded(value)));
                says.push(format!("{}, {at:.0} °C: {words}", when(after)));
                plot.mark(
                    [at, value],
                    after,
                    &words,
                    &format!("{words} at {at:.0} °C, {}", when(after)),
                );
            }
        }
    }
    for (after, one) in all(pictures) {
        let points = energies(one);
        plot.name(after, &points, &one.boxes.join(", "));
    }
    Drawing {
        title: title.to_owned(),
        scale: None,
        svg: ink.finish(width.class(), title, &format!("{}.", says.join("; ")), None),
        table: Some(table(pictures, "Wh a day", |day| format!("{:.0}", wh(day)))),
    }
}

/// Per cent of the time that each box runs.
fn duty(pictures: &[Option<Picture>; 2], width: Width) -> Drawing {
    let title = "Share of the time that it runs";
    let mut ink = Ink::new(width.units());
    let most = all(pictures)
        .flat_map(|(_, one)| one.days.iter().flat_map(|day| day.duty.iter().copied()))
        .fold(1.2, f64::max)
        .min(2.0);
    let y = Axis::over([0.0, most * 100.0], 5, "% of the time");
    let mut plot = Plot::new(&mut ink, frame(width), cabins(pictures), y);
    corners(&mut plot, pictures);
    plot.at_most(100.0, "at most 100 %, heat");
    for (after, one) in all(pictures) {
        for (place, called) in one.boxes.iter().enumerate() {
            plot.line(line(after), &duties(one, place), called);
        }
    }
    for (after, one) in all(pictures) {
        for (place, called) in one.boxes.iter().enumerate() {
            let points = duties(one, place);
            let hot = one.hot.in_celsius();
            if let Some(value) = between(&points, hot) {
                let words = format!("{value:.0} %");
                plot.mark(
                    [hot, value],
                    after,
                    &words,
                    &format!("{called}: {words} at {hot:.0} °C"),
                );
            }
            plot.name(after, &points, called);
        }
    }
    let each = |day: &At| {
        day.duty.iter().map(|duty| format!("{:.0}", duty * 100.0)).collect::<Vec<_>>().join(", ")
    };
    Drawing {
        title: title.to_owned(),
        scale: None,
        svg: ink.finish(width.class(), title, "Above 100 per cent it cannot keep up.", None),
        table: Some(table(pictures, "% of the time", each)),
    }
}

fn duties(picture: &Picture, place: usize) -> Vec<[f64; 2]> {
    picture.days.iter().map(|day| [day.cabin.in_celsius(), 100.0 * day.duty[place]]).collect()
}

/// What is drawn, each with whether it is after the job.
fn all(pictures: &[Option<Picture>; 2]) -> impl Iterator<Item = (bool, &Picture)> {
    [false, true].into_iter().zip(pictures).filter_map(|(after, one)| Some((after, one.as_ref()?)))
}

fn energies(picture: &Picture) -> Vec<[f64; 2]> {
    picture.days.iter().map(|day| [day.cabin.in_celsius(), wh(day)]).collect()
}

/// To three digits: no balance of heat is known better.
fn rounded(value: f64) -> f64 {
    if value >= 1000.0 { (value / 10.0).round() * 10.0 } else { value.round() }
}

fn wh(day: &At) -> f64 {
    day.energy.in_wh()
}

const fn line(after: bool) -> Line {
    if after { Line::Added } else { Line::Seen }
}

const fn when(after: bool) -> &'static str {
    if after { "after the job" } else { "as it stands" }
}

fn frame(width: Width) -> Box2 {
    let right = match width {
        Width::Wide => width.units() - 150.0,
        Width::Narrow => width.units() - 14.0,
    };
    Box2 { left: 52.0, top: 40.0, right, bottom: 290.0 }
}

fn cabins(pictures: &[Option<Picture>; 2]) -> Axis {
    let days =
        || all(pictures).flat_map(|(_, one)| one.days.iter().map(|day| day.cabin.in_celsius()));
    let range = [days().fold(f64::INFINITY, f64::min), days().fold(f64::NEG_INFINITY, f64::max)];
    Axis::exactly(range, 8, "°C in the cabin")
}

/// The ordinary and the hot day, which are the same before and after.
fn corners(plot: &mut Plot<'_>, pictures: &[Option<Picture>; 2]) {
    if let Some((_, one)) = all(pictures).next() {
        plot.upright(one.mild.in_celsius(), "ordinary day");
        plot.upright(one.hot.in_celsius(), "hot day");
    }
}

/// The value of a line at a place, straight between its points; `None` beyond its ends.
fn between(points: &[[f64; 2]], x: f64) -> Option<f64> {
    points.windows(2).find_map(|pair| {
        let [[x0, y0], [x1, y1]] = [pair[0], pair[1]];
        (x0 <= x && x <= x1).then(|| y0 + (y1 - y0) * (x - x0) / (x1 - x0))
    })
}

fn table(pictures: &[Option<Picture>; 2], unit: &str, value: impl Fn(&At) -> String) -> Rows {
    let mut head = vec!["cabin, °C".to_owned()];
    head.extend(
        all(pictures)
            .map(|(after, one)| format!("{} {}, {unit}", one.boxes.join(" and "), when(after))),
    );
    let Some((_, longest)) = all(pictures).max_by_key(|(_, one)| one.days.len()) else {
        return Rows::default();
    };
    let round = |day: &&At| (day.cabin.in_celsius() / 5.0).fract().abs() < 1e-9;
    let rows = longest.days.iter().filter(round).map(|row| {
        let mut cells = vec![format!("{:.0}", row.cabin.in_celsius())];
        cells.extend(all(pictures).map(|(_, one)| {
            let found = one.days.iter().find(|day| day.cabin == row.cabin);
            found.map_or_else(|| "no balance".to_owned(), &value)
        }));
        cells
    });
    Rows { rows: rows.collect(), head }
}
