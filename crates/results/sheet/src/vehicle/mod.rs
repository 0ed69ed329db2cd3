//! The vehicle in plan and from its right side, with what stands in it.
//!
//! Things hide what is behind them, as seen from above and from the right; what is hidden wholly is
//! drawn with hidden lines. The shell is drawn to its outside sizes; the shape of its ends and its
//! wheels is only that of its kind. What the build does not say is not drawn, and listed below.

mod axle;
mod scene;
mod shell;

use spile_build::Build;
use spile_fit::{Placed, Sort};
use spile_quantity::Length;

use crate::drawing::{Drawing, Numbered, Rows, Width};
use crate::ink::{Box2, Ink, Letter, Line, Spot, View, figure, scale_words, text_width, wrapped};
pub(crate) use axle::on_axles;
use scene::{Change, Scene, Thing};
use shell::Shell;

/// The axis that runs upwards in a view: across the vehicle in plan, its height from the side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum From {
    Above,
    Side,
}

impl From {
    const fn up(self) -> usize {
        match self {
            Self::Above => 1,
            Self::Side => 2,
        }
    }

    const fn name(self) -> &'static str {
        match self {
            Self::Above => "plan",
            Self::Side => "side",
        }
    }

    const fn axes(self) -> &'static str {
        match self {
            Self::Above => "x y",
            Self::Side => "x z",
        }
    }

    const fn title(self) -> &'static str {
        match self {
            Self::Above => "plan, roof taken off",
            Self::Side => "right side, panel taken off",
        }
    }

    /// How near a thing is to whoever looks.
    fn near(self, thing: &Placed) -> f64 {
        match self {
            Self::Above => thing.block.high[2].in_mm(),
            Self::Side => -thing.block.low[1].in_mm(),
        }
    }
}

/// One drawing a view.
pub(crate) fn views(before: &Build, after: Option<&Build>, width: Width) -> Vec<Drawing> {
    let build = after.unwrap_or(before);
    let scene = Scene::of(before, after);
    let shell = Shell::of(&build.vehicle);
    let Some(along) = shell.along(&scene) else { return vec![unsaid(build, width)] };
    let views = [From::Above, From::Side];
    views.into_iter().map(|from| seen(build, &scene, &shell, along, from, width)).collect()
}

/// What is drawn where nothing is known that has a place.
fn unsaid(build: &Build, width: Width) -> Drawing {
    let mut ink = Ink::new(width.units());
    let words = "Nothing can be drawn yet: the vehicle's inside length, width and height are not said, nor where anything stands.";
    let mut y = 20.0;
    for line in wrapped(words, &Letter::NOTE, width.units() - 20.0) {
        ink.text(&Letter::NOTE, &Spot::from([10.0, y]), &line);
        y += 16.0;
    }
    let title = if build.about.is_empty() { "the vehicle" } else { &build.about };
    Drawing {
        title: title.to_owned(),
        scale: None,
        svg: ink.finish(width.class(), title, words, None),
        table: Some(Rows { head: vec![String::new()], rows: vec![vec![words.to_owned()]] }),
    }
}

/// The margins left and right of the vehicle, in units.
const fn margins(width: Width) -> [f64; 2] {
    match width {
        Width::Wide => [50.0, 34.0],
        Width::Narrow => [34.0, 30.0],
    }
}

fn seen(
    build: &Build,
    scene: &Scene,
    shell: &Shell,
    along: [f64; 2],
    from: From,
    width: Width,
) -> Drawing {
    let [left, right] = margins(width);
    let scale = (along[1] - along[0]) / (width.units() - left - right);
    let high = shell.upwards(scene, from);
    let top = 36.0;
    let view = View {
        name: from.name(),
        axes: from.axes(),
        scale,
        origin: [left - along[0] / scale, top + high / scale],
    };
    let mut ink = Ink::new(width.units());
    ink.text(&Letter::TITLE, &Spot::from([left, 10.0]), from.title());
    if from == From::Above && width == Width::Wide {
        ink.scale_bar(&view, [width.units() - right - 150.0, 12.0], 140.0);
    }
    shell.draw(&mut ink, &view, from);
    bodies(&mut ink, &view, scene, from);
    shell.dimensions(&mut ink, &view, from, width);
    dimension_of_changes(&mut ink, &view, scene, from, width);
    names(&mut ink, &view, scene, from);
    if from == From::Side {
        notes(&mut ink, &scene.notes(build, shell), left, width);
    }
    let says = scene.says();
    Drawing {
        title: from.title().to_owned(),
        scale: Some(scale_words(scale)),
        svg: ink.finish(width.class(), from.title(), &says, Some(&view)),
        table: Some(table(scene, shell, from)),
    }
}

/// A thing's box in a view.
fn frame(view: &View, thing: &Placed, from: From) -> Box2 {
    let (low, high, up) = (&thing.block.low, &thing.block.high, from.up());
    view.rect([low[0].in_mm(), low[up].in_mm()], [high[0].in_mm(), high[up].in_mm()])
}

/// Bays, then what is fixed, then items, the farthest first.
fn bodies(ink: &mut Ink, view: &View, scene: &Scene, from: From) {
    for bay in scene.sorted(from, |placed| placed.sort == Sort::Bay) {
        let at = frame(view, &bay.placed, from);
        ink.thing(&bay.key, &bay.title(), |ink| ink.rect(Line::Thin, at));
    }
    for fixed in scene.sorted(from, |placed| matches!(placed.sort, Sort::Fixed(_))) {
        ink.thing(&fixed.key, &fixed.title(), |ink| obstacle(ink, view, fixed, from));
    }
    let items = scene.sorted(from, |placed| placed.sort == Sort::Item);
    for (place, item) in items.iter().enumerate() {
        let at = frame(view, &item.placed, from);
        let hidden = items[place + 1..].iter().any(|other| {
            other.change != Change::Gone && frame(view, &other.placed, from).holds(&at)
        });
        if !hidden {
            ink.thing(&item.key, &item.title(), |ink| ink.rect(item.line(), at));
        }
    }
    for (place, item) in items.iter().enumerate() {
        let at = frame(view, &item.placed, from);
        let hidden = items[place + 1..].iter().any(|other| {
            other.change != Change::Gone && frame(view, &other.placed, from).holds(&at)
        });
        if hidden {
            let line = match item.change {
                Change::Stays => Line::Hidden,
                Change::Gone => Line::Gone,
                Change::Comes => Line::Added,
            };
            ink.thing(&item.key, &item.title(), |ink| ink.rect(line, at));
        }
    }
}

/// A fixed thing: its profile where the view looks along it, else its box with hidden lines.
fn obstacle(ink: &mut Ink, view: &View, thing: &Thing, from: From) {
    let looks_along = 3 - from.up();
    match &thing.placed.outline {
        Some(profile) if profile.along == looks_along => {
            let corners: Vec<[f64; 2]> =
                profile.corners.iter().map(|corner| view.at(corner.map(Length::in_mm))).collect();
            ink.hatch(&corners);
            ink.through(Line::Seen, &corners, true);
        }
        _ => {
            let at = frame(view, &thing.placed, from);
            let line = if thing.is_kept_out() { Line::Hidden } else { Line::Thin };
            ink.rect(if thing.placed.outline.is_some() { Line::Hidden } else { line }, at);
            if thing.is_kept_out() {
                ink.hatch(&at.corners());
            }
        }
    }
}

/// Where the largest thing lies that the job brings, from the rear.
fn dimension_of_changes(ink: &mut Ink, view: &View, scene: &Scene, from: From, width: Width) {
    let comes = scene.things.iter().filter(|thing| thing.change == Change::Comes);
    let widest = comes.max_by(|a, b| a.volume().total_cmp(&b.volume()));
    let Some(thing) = widest.filter(|_| from == From::Above) else { return };
    let (at, foot) = (frame(view, &thing.placed, from), ink.bottom());
    let rear = view.at([0.0, 0.0])[0];
    let from_rear = thing.placed.block.low[0].in_mm();
    if from_rear > 0.0 {
        ink.dimension_across(foot + 26.0, [rear, at.left], foot, &figure(from_rear));
    }
    // One line for both where there is room for both figures.
    let second = match width {
        Width::Wide => 26.0,
        Width::Narrow => 52.0,
    };
    let long = (thing.placed.block.high[0] - thing.placed.block.low[0]).in_mm();
    ink.dimension_across(foot + second, [at.left, at.right], foot, &figure(long));
}

/// The numbers that the vehicle's drawings give to what changes.
pub(crate) fn numbers(before: &Build, after: &Build) -> Vec<Numbered> {
    Scene::of(before, Some(after)).numbers()
}

/// How many numbers of what stays may stand outside their things; of more, nobody could follow the
/// lines, and the table has them all.
const MOST_LED: usize = 8;

/// Names where they fit, balls with numbers where they do not.
fn names(ink: &mut Ink, view: &View, scene: &Scene, from: From) {
    let items = scene.sorted(from, |placed| placed.sort == Sort::Item);
    let mut led = 0;
    for (place, item) in items.iter().enumerate().rev() {
        let at = frame(view, &item.placed, from);
        let nearer: Vec<Box2> =
            items[place + 1..].iter().map(|other| frame(view, &other.placed, from)).collect();
        let (added, number) = (item.change == Change::Comes, item.number.to_string());
        if item.change != Change::Stays {
            if !ink.ball_within(added, &at, &nearer, &number) {
                ink.ball_beside(added, &at, &nearer, &number);
            }
            continue;
        }
        // Where there are many, what is wholly hidden has none.
        let hidden = items.len() > 2 * MOST_LED && nearer.iter().any(|other| other.holds(&at));
        let named = hidden
            || lettered(ink, item, &at, &nearer)
            || ink.ball_within(false, &at, &nearer, &number);
        if !named && led < MOST_LED {
            ink.ball_beside(false, &at, &nearer, &number);
            led += 1;
        }
    }
    for bay in scene.sorted(from, |placed| placed.sort == Sort::Bay) {
        let at = frame(view, &bay.placed, from);
        let middle = at.middle();
        let (top, bottom) = (at.top + 11.0, at.bottom - 11.0);
        let spots = [
            Spot::about(middle),
            Spot::about([middle[0], top]),
            Spot::about([middle[0], bottom]),
            Spot::from([at.left + 6.0, top]),
            Spot::from([at.left + 6.0, bottom]),
        ];
        let text = &bay.placed.name;
        if text_width(text, Letter::NOTE.size, false) < at.width() - 6.0 && at.height() > 16.0 {
            ink.label(&Letter::NOTE, &spots, text);
        }
    }
}

/// Writes a thing's words into its box, in lines or upright; `false` where they do not fit.
fn lettered(ink: &mut Ink, item: &Thing, at: &Box2, nearer: &[Box2]) -> bool {
    let [x, y] = at.middle();
    for text in [&item.placed.what, &item.placed.name] {
        let lines = wrapped(text, &Letter::NOTE, at.width() - 8.0);
        let first = y - (lines.len() as f64 - 1.0) * 7.0;
        let spots: Vec<Spot> =
            (0..lines.len()).map(|line| Spot::about([x, first + line as f64 * 14.0])).collect();
        let fits = spots.iter().zip(&lines).all(|(spot, line)| {
            let stands = ink.stands(&Letter::NOTE, spot, line);
            at.grown(-2.0).holds(&stands)
                && ink.is_free(&stands)
                && !nearer.iter().any(|other| other.touches(&stands))
        });
        if fits && !lines.is_empty() {
            for (spot, line) in spots.iter().zip(&lines) {
                ink.text(&Letter::NOTE, spot, line);
            }
            return true;
        }
    }
    let upright = Spot::up_about([x, y]);
    let stands = ink.stands(&Letter::NOTE, &upright, &item.placed.name);
    let fits = at.grown(-1.0).holds(&stands)
        && ink.is_free(&stands)
        && !nearer.iter().any(|other| other.touches(&stands));
    if fits {
        ink.text(&Letter::NOTE, &upright, &item.placed.name);
    }
    fits
}

/// What the drawing does not show, below it.
fn notes(ink: &mut Ink, notes: &[String], left: f64, width: Width) {
    let mut y = ink.bottom() + 24.0;
    for note in notes {
        for line in wrapped(note, &Letter::NOTE, width.units() - left - 4.0) {
            ink.text(&Letter::NOTE, &Spot::from([left, y]), &line);
            y += 15.0;
        }
    }
}

fn table(scene: &Scene, shell: &Shell, from: From) -> Rows {
    let head: Vec<String> = match from {
        From::Above => vec!["no.", "thing", "from the rear, mm", "from the right, mm", "change"],
        From::Side => vec!["no.", "thing", "from the rear, mm", "above the floor, mm", "change"],
    }
    .into_iter()
    .map(str::to_owned)
    .collect();
    let ends = |thing: &Thing, axis: usize| {
        let (low, high) = (thing.placed.block.low[axis], thing.placed.block.high[axis]);
        format!("{} to {}", figure(low.in_mm()), figure(high.in_mm()))
    };
    let inside = vec![
        String::new(),
        "the inside".to_owned(),
        shell.inside_words(0),
        shell.inside_words(from.up()),
        String::new(),
    ];
    let things = scene.things.iter().map(|thing| {
        vec![
            thing.shown_number().map_or_else(String::new, |number| number.to_string()),
            thing.words(),
            ends(thing, 0),
            ends(thing, from.up()),
            thing.change.word().to_owned(),
        ]
    });
    Rows { head, rows: std::iter::once(inside).chain(things).collect() }
}
