//! The bank's year: its charge day by day, who fills it, and what more panel or battery would do.

use maud::html;
use spile_bank::{Frontier, Picture, frontier, picture};
use spile_build::Build;
use spile_energy::calendar::days_of;

use crate::drawing::{Drawing, Rows, Width};
use crate::ink::{Anchor, Box2, Ink, Letter, Line, Spot, figure, number};
use crate::plot::{Axis, Plot};

const MONTHS: [&str; 12] =
    ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const GIVERS: [&str; 3] = ["sun", "engine", "hook-up"];

/// The year as a band of days, and the frontier; none where bank, loads or trips are missing.
pub(crate) fn drawings(before: &Build, after: Option<&Build>, width: Width) -> Vec<Drawing> {
    let pictures = [picture(before), after.and_then(picture)];
    let mut drawings = Vec::new();
    if pictures.iter().any(Option::is_some) {
        drawings.push(year(&pictures, width));
    }
    let frontiers = [frontier(before), after.and_then(frontier)];
    if frontiers.iter().any(Option::is_some) {
        drawings.push(bounds(&frontiers, width));
    }
    drawings
}

/// What is drawn, each with whether it is after the job.
fn all<T>(of: &[Option<T>; 2]) -> impl Iterator<Item = (bool, &T)> {
    [false, true].into_iter().zip(of).filter_map(|(after, one)| Some((after, one.as_ref()?)))
}

const fn when(after: bool) -> &'static str {
    if after { "after the job" } else { "as it stands" }
}

/// The charge of each day: the median of the years as a line, down to the worst of them as a band.
fn year(pictures: &[Option<Picture>; 2], width: Width) -> Drawing {
    let title = "The year, day by day: lowest charge of the bank";
    let mut ink = Ink::new(width.units());
    let frame = Box2 {
        left: 44.0,
        top: 66.0,
        right: width.units() - if width == Width::Wide { 150.0 } else { 12.0 },
        bottom: 276.0,
    };
    let y = Axis::exactly([0.0, 100.0], 5, "%");
    let mut plot = Plot::new(&mut ink, frame, months(width), y);
    let (after, last) = all(pictures).last().expect("one of them is there");
    at_home(&mut plot, last);
    for (name, [from, to]) in stretches(last, |day| Some(day.trip)) {
        let [left, right] = [from, to].map(|day| plot.at([day, 0.0])[0]);
        let spots = [
            Spot {
                at: [f64::midpoint(left, right), frame.top - 20.0],
                anchor: Anchor::Middle,
                upright: false,
            },
            Spot { at: [left, frame.top - 20.0], anchor: Anchor::Start, upright: false },
            Spot { at: [right, frame.top - 20.0], anchor: Anchor::End, upright: false },
        ];
        plot.ink.line(Line::Dim, [left, frame.top - 14.0], [right, frame.top - 14.0]);
        plot.ink.label(&Letter::NOTE, &spots, &last.trips[name]);
    }
    for (is_after, one) in all(pictures) {
        let class = if is_after { "band a" } else { "band" };
        for (_, [from, to]) in stretches(one, |_| Some(0)) {
            let days = || (from as usize..to as usize).filter_map(|at| Some((at, one.days[at]?)));
            let line = |of: fn(&spile_bank::Day) -> f64| -> Vec<[f64; 2]> {
                days().map(|(at, day)| [at as f64 + 0.5, 100.0 * of(&day)]).collect()
            };
            let (median, worst) =
                (line(|day| day.median.in_of_one()), line(|day| day.worst.in_of_one()));
            if is_after == after {
                plot.band(
                    class,
                    &worst,
                    &median,
                    &format!("down to the worst of {} years", one.years),
                );
            }
            let line = if is_after { Line::Added } else { Line::Seen };
            plot.line(line, &median, &format!("median of {} years, {}", one.years, when(is_after)));
        }
    }
    below(&mut plot, last, after);
    floors(&mut plot, last);
    let bottom = frame.bottom + 66.0;
    shares(&mut ink, pictures, bottom, width);
    let says: Vec<String> = all(pictures)
        .map(|(after, one)| {
            format!(
                "{}: {:.0} h a year without power, {:.0} h in the worst of {}",
                when(after),
                one.off[0].in_hours(),
                one.off[1].in_hours(),
                one.years
            )
        })
        .collect();
    Drawing {
        title: title.to_owned(),
        scale: None,
        svg: ink.finish(width.class(), title, &format!("{}.", says.join("; ")), None),
        table: Some(by_month(pictures)),
    }
}

/// The months as an axis: named in their middles, parted by ticks.
fn months(width: Width) -> Axis {
    let ticks = (0..12).map(|month| {
        let days = days_of(month);
        let middle = (days.start + days.end) as f64 / 2.0;
        let name = match width {
            Width::Wide => MONTHS[month],
            Width::Narrow => &MONTHS[month][..1],
        };
        (middle, name.to_owned())
    });
    Axis { low: 0.0, high: 365.0, ticks: ticks.collect(), unit: String::new() }
}

/// Stretches of days that have the same of something, each from its first day to that after its
/// last.
fn stretches<T: PartialEq + Copy>(
    picture: &Picture,
    of: impl Fn(&spile_bank::Day) -> Option<T>,
) -> Vec<(T, [f64; 2])> {
    let mut found: Vec<(T, [f64; 2])> = Vec::new();
    for (at, day) in picture.days.iter().enumerate() {
        let Some(what) = day.as_ref().and_then(&of) else { continue };
        let at = at as f64;
        match found.last_mut() {
            Some((last, [_, end])) if *last == what && *end >= at => *end = at + 1.0,
            _ => found.push((what, [at, at + 1.0])),
        }
    }
    found
}

/// Days at home, hatched lightly: the bank is full there.
fn at_home(plot: &mut Plot<'_>, picture: &Picture) {
    let away = stretches(picture, |_| Some(0));
    let mut from = 0.0;
    let ends = away.iter().map(|(_, [start, end])| (*start, *end)).chain([(365.0, 365.0)]);
    for (start, end) in ends {
        if start - from > 20.0 {
            let [x, y] = plot.at([f64::midpoint(from, start), 75.0]);
            plot.ink.label(&Letter::NOTE, &[Spot::about([x, y])], "at home");
        }
        from = end;
    }
}

/// Under the axis: days of driving, of hook-up, and hours without power.
fn below(plot: &mut Plot<'_>, picture: &Picture, after: bool) {
    let base = plot.frame.bottom;
    let mut seen = [false; 3];
    for (at, day) in picture.days.iter().enumerate() {
        let Some(day) = day else { continue };
        let x = plot.at([at as f64 + 0.5, 0.0])[0];
        if day.driven.in_hours() > 0.0 {
            seen[0] = true;
            plot.ink.line(Line::Thin, [x, base + 26.0], [x, base + 32.0]);
        }
        if day.hook_up {
            seen[1] = true;
            plot.ink.line(Line::Cut, [x, base + 36.0], [x, base + 42.0]);
        }
        let off_hours = day.off.in_hours();
        if off_hours > 0.05 {
            seen[2] = true;
            let class = if after { "off a" } else { "off" };
            let high = off_hours / 24.0 * plot.frame.height();
            let wide = plot.frame.width() / 365.0;
            plot.ink.put(&html! {
                rect class=(class) x=(number(x - wide / 2.0)) y=(number(base - high)) width=(number(wide)) height=(number(high)) {
                    title { (format!("day {}: {off_hours:.1} h without power, a mean of the years", at + 1)) }
                }
            });
        }
    }
    let right = plot.frame.right;
    let words = ["drives", "hook-up", "hours without power"];
    for (place, row) in [29.0, 39.0].into_iter().enumerate() {
        if seen[place] {
            let spots = [
                Spot::from([right + 6.0, base + row]),
                Spot::to([plot.frame.left - 4.0, base + row]),
            ];
            plot.ink.label(&Letter::NOTE, &spots, words[place]);
        }
    }
    plot.ink.reached(base + 44.0);
}

/// The charge at which loads go off, and that which a long life asks for.
fn floors(plot: &mut Plot<'_>, picture: &Picture) {
    let rows = [
        (picture.floor, "loads go off", Line::Limit),
        (picture.kept, "for a long life", Line::Hidden),
    ];
    for (share, words, line) in rows {
        let [left, y] = plot.at([0.0, share.in_percent()]);
        let right = plot.frame.right;
        plot.ink.line(line, [left, y], [right, y]);
        plot.ink.keep_free(Box2::of([left, y - 2.0], [right, y + 2.0]));
        let figure = format!("{:.0} %, {words}", share.in_percent());
        let spots = [
            Spot::from([right + 6.0, y]),
            Spot { at: [left + 6.0, y - 6.0], anchor: Anchor::Start, upright: false },
            Spot { at: [right - 4.0, y - 6.0], anchor: Anchor::End, upright: false },
            Spot { at: [left + 6.0, y + 15.0], anchor: Anchor::Start, upright: false },
        ];
        plot.ink.label(&Letter::NOTE, &spots, &figure);
    }
}

/// The share of each source in what was used, one bar as it stands and one after the job.
fn shares(ink: &mut Ink, pictures: &[Option<Picture>; 2], top: f64, width: Width) {
    let (left, right) = match width {
        Width::Wide => (140.0, width.units() - 150.0),
        Width::Narrow => (12.0, width.units() - 12.0),
    };
    let title = Spot { at: [12.0, top], anchor: Anchor::Start, upright: false };
    ink.text(&Letter::TITLE, &title, "who gives what is used");
    let mut y = top + 14.0;
    for (after, one) in all(pictures) {
        let words = when(after);
        if width == Width::Wide {
            ink.text(&Letter::NOTE, &Spot::to([left - 10.0, y + 9.0]), words);
        } else {
            ink.text(&Letter::NOTE, &Spot::from([left, y + 2.0]), words);
            y += 12.0;
        }
        let mut x = left;
        let mut said = 12.0;
        for (place, share) in one.shares.iter().enumerate() {
            let wide = (right - left) * share.in_of_one();
            if wide <= 0.0 {
                continue;
            }
            let at = Box2::of([x, y], [x + wide, y + 18.0]);
            let class = if after { Line::AddedBody } else { Line::Seen };
            ink.rect(class, at);
            if place == 1 {
                ink.hatch(&at.corners());
            } else if place == 2 {
                ink.line(Line::Hair, [x, y + 9.0], [x + wide, y + 9.0]);
            }
            let words = format!("{} {:.0} %", GIVERS[place], share.in_percent());
            let letter = if after { Letter::ADDED } else { Letter::NOTE };
            let under = |at: f64, anchor| Spot { at: [at, y + 32.0], anchor, upright: false };
            let spots = [
                under(x + wide / 2.0, Anchor::Middle),
                under(x, Anchor::Start),
                under(x + wide, Anchor::End),
                under(left + said, Anchor::Start),
            ];
            ink.label(&letter, &spots, &words);
            said += 90.0;
            x += wide;
        }
        y += 44.0;
    }
}

/// Hours without power over panels and battery: figures on the grid, and the line to stay above.
fn bounds(frontiers: &[Option<Frontier>; 2], width: Width) -> Drawing {
    let title = "What panel and battery would do: hours a year without power";
    let mut ink = Ink::new(width.units());
    let (after, last) = all(frontiers).last().expect("one of them is there");
    let frame = Box2 {
        left: 52.0,
        top: 40.0,
        right: width.units() - if width == Width::Wide { 150.0 } else { 14.0 },
        bottom: 320.0,
    };
    let ends = |of: &dyn Fn(&Frontier) -> Vec<f64>| {
        let values: Vec<f64> = all(frontiers).flat_map(|(_, one)| of(one)).collect();
        let fold = |pick: fn(f64, f64) -> f64, from| values.iter().copied().fold(from, pick);
        [fold(f64::min, f64::INFINITY), fold(f64::max, f64::NEG_INFINITY)]
    };
    let [_, most_w] = ends(&|one| one.panels.iter().map(|panel| panel.in_w()).collect());
    let ah = ends(&|one| one.banks.iter().map(|bank| bank.in_ah()).collect());
    let padding = (ah[1] - ah[0]) * 0.06;
    let x = Axis::exactly([-most_w * 0.07, most_w * 1.03], 6, "W of panel");
    let y = Axis::exactly([ah[0] - padding, ah[1] + padding], 6, "Ah of bank");
    let mut plot = Plot::new(&mut ink, frame, x, y);
    for (is_after, one) in all(frontiers) {
        let line = if is_after { Line::Added } else { Line::Seen };
        let points = enough(one);
        let words = format!("{:.0} h, the wish", one.wanted.in_hours());
        plot.line(line, &points, &format!("{words}, {}", when(is_after)));
        let has = [one.has.0.in_w(), one.has.1.in_ah()];
        plot.mark(
            has,
            is_after,
            "",
            &format!("{:.0} W and {:.0} Ah, {}", has[0], has[1], when(is_after)),
        );
    }
    for (row, bank) in last.banks.iter().enumerate() {
        for (column, panel) in last.panels.iter().enumerate() {
            if width == Width::Narrow && column % 2 == 1 {
                continue;
            }
            let hours = last.off[row][column].in_hours();
            let [px, py] = plot.at([panel.in_w(), bank.in_ah()]);
            let letter = if after { Letter::ADDED } else { Letter::NOTE };
            let shift =
                |dy: f64| Spot { at: [px, py + dy], anchor: Anchor::Middle, upright: false };
            plot.ink.label(&letter, &[shift(4.0), shift(-8.0), shift(18.0)], &hours_words(hours));
        }
    }
    for (is_after, one) in all(frontiers) {
        let words = format!("about {:.0} h, {}", one.wanted.in_hours(), when(is_after));
        plot.name(is_after, &enough(one), &words);
    }
    let says = format!(
        "There are {:.0} W and {:.0} Ah; {:.0} h a year without power are accepted.",
        last.has.0.in_w(),
        last.has.1.in_ah(),
        last.wanted.in_hours()
    );
    let mut head = vec!["Ah of bank".to_owned()];
    head.extend(last.panels.iter().map(|panel| format!("{:.0} W", panel.in_w())));
    let rows = last.banks.iter().zip(&last.off).map(|(bank, off)| {
        let hours = off.iter().map(|off| hours_words(off.in_hours()));
        std::iter::once(format!("{:.0}", bank.in_ah())).chain(hours).collect()
    });
    Drawing {
        title: title.to_owned(),
        scale: None,
        svg: ink.finish(width.class(), title, &says, None),
        table: Some(Rows { rows: rows.collect(), head }),
    }
}

fn hours_words(hours: f64) -> String {
    if hours > 0.0 && hours < 0.5 { "< 1".to_owned() } else { figure(hours.round()) }
}

/// For each capacity the least of the panels that is enough; capacities with which none is, or with
/// which none is needed, are left out.
///
/// Between two of the panels the logarithm of the hours is taken as a straight line: hours without
/// power shrink by shares.
fn enough(frontier: &Frontier) -> Vec<[f64; 2]> {
    let share = |hours: f64| (1.0 + hours).ln();
    let wanted = share(frontier.wanted.in_hours());
    let mut points = Vec::new();
    for (bank, off) in frontier.banks.iter().zip(&frontier.off) {
        let row: Vec<[f64; 2]> = frontier
            .panels
            .iter()
            .zip(off)
            .map(|(panel, off)| [panel.in_w(), share(off.in_hours())])
            .collect();
        let least = row.windows(2).find_map(|pair| {
            let [[less_w, worse], [more_w, better]] = [pair[0], pair[1]];
            let between = worse > wanted && better <= wanted;
            between.then(|| less_w + (more_w - less_w) * (worse - wanted) / (worse - better))
        });
        points.extend(least.map(|watts| [watts, bank.in_ah()]));
    }
    points
}

/// The months of the trips: lowest charge and hours without power.
fn by_month(pictures: &[Option<Picture>; 2]) -> Rows {
    let mut head = vec!["month".to_owned()];
    for (after, _) in all(pictures) {
        head.push(format!("lowest charge, median, %, {}", when(after)));
        head.push(format!("in the worst year, %, {}", when(after)));
        head.push(format!("hours without power, {}", when(after)));
    }
    let mut rows = Vec::new();
    for (month, name) in MONTHS.iter().enumerate() {
        let days = |one: &Picture| -> Vec<spile_bank::Day> {
            days_of(month).filter_map(|at| one.days[at]).collect()
        };
        if all(pictures).all(|(_, one)| days(one).is_empty()) {
            continue;
        }
        let mut row = vec![(*name).to_owned()];
        for (_, one) in all(pictures) {
            let days = days(one);
            let least =
                |of: fn(&spile_bank::Day) -> f64| days.iter().map(of).fold(f64::INFINITY, f64::min);
            row.push(format!("{:.0}", least(|day| day.median.in_percent())));
            row.push(format!("{:.0}", least(|day| day.worst.in_percent())));
            row.push(format!("{:.0}", days.iter().map(|day| day.off.in_hours()).sum::<f64>()));
        }
        rows.push(row);
    }
    Rows { head, rows }
}
