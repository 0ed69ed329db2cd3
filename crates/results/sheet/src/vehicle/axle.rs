//! The vehicle on its axles: what each carries before and after, against the plate, and the middle
//! of it all.
//!
//! An arrow is as long as its load; the plate is a heavy line across its way, on the same scale.

use spile_axle::{OnAxle, Standing, standings};
use spile_build::Build;
use spile_quantity::{Length, Mass};

use super::scene::Scene;
use super::shell::Shell;
use super::{From, bodies, margins};
use crate::drawing::{Drawing, Rows, Width};
use crate::ink::{Anchor, Box2, Ink, Letter, Line, Spot, View, figure, scale_words};

/// How long the arrow of the greatest load or plate is, in units.
const LONGEST: f64 = 84.0;

/// The vehicle from its side, and from behind.
pub(crate) fn on_axles(before: &Build, after: Option<&Build>, width: Width) -> Vec<Drawing> {
    let build = after.unwrap_or(before);
    let (old, new) = (standings(before), after.map(standings));
    let now = new.as_deref().unwrap_or(&old);
    let Some(worst) = now.iter().max_by(|a, b| {
        let ([share_a, total_a], [share_b, total_b]) = (fullness(a), fullness(b));
        share_a.total_cmp(&share_b).then(total_a.total_cmp(&total_b))
    }) else {
        return Vec::new();
    };
    let was = old.iter().find(|was| was.state == worst.state).filter(|_| after.is_some());
    let (scene, shell) = (Scene::of(before, after), Shell::of(&build.vehicle));
    let Some(along) = shell.along(&scene) else { return Vec::new() };
    let pair = Pair { was, now: worst };
    let table = table(&old, now, after.is_some());
    vec![
        from_side(&pair, &scene, &shell, along, width, table),
        from_behind(&pair, &shell, along, width),
    ]
}

/// A state before the job, where there is one, and as it is to be told.
struct Pair<'s> {
    was: Option<&'s Standing>,
    now: &'s Standing,
}

impl Pair<'_> {
    /// Whether it has a coupling in place of a front axle.
    fn is_trailer(&self) -> bool {
        self.now.axles.iter().any(|on| on.name == "nose")
    }
}

/// The greatest share of a plate, then the whole mass \[kg\].
fn fullness(standing: &Standing) -> [f64; 2] {
    let shares = standing.axles.iter().filter_map(|on| Some(on.load.in_kg() / on.plate?.in_kg()));
    [shares.fold(0.0, f64::max), standing.total.in_kg()]
}

fn kilograms(mass: Mass) -> String {
    figure(mass.in_kg().round())
}

fn from_side(
    pair: &Pair<'_>,
    scene: &Scene,
    shell: &Shell,
    along: [f64; 2],
    width: Width,
    table: Rows,
) -> Drawing {
    let [left, right] = margins(width);
    let scale = (along[1] - along[0]) / (width.units() - left - right);
    let high = shell.upwards(scene, From::Side);
    let view = View {
        name: "axles",
        axes: "x z",
        scale,
        origin: [left - along[0] / scale, 36.0 + high / scale],
    };
    let mut ink = Ink::new(width.units());
    let title = format!("on its axles, {}", pair.now.state);
    ink.text(&Letter::TITLE, &Spot::from([left, 10.0]), &title);
    shell.draw(&mut ink, &view, From::Side);
    bodies(&mut ink, &view, scene, From::Side);
    let ground = view.at([0.0, shell.ground()])[1];
    let most = pair.now.axles.iter().chain(pair.was.iter().flat_map(|was| &was.axles));
    let most = most
        .flat_map(|on| [Some(on.load), on.plate])
        .flatten()
        .map(Mass::in_kg)
        .fold(1.0, f64::max);
    for on in &pair.now.axles {
        let was = pair.was.and_then(|was| was.axles.iter().find(|old| old.name == on.name));
        load(&mut ink, pair.is_trailer(), &view, was, on, ground, LONGEST / most);
    }
    middle(&mut ink, &view, pair, ground);
    let says =
        format!("In the load state {}, {} kg in all.", pair.now.state, kilograms(pair.now.total));
    Drawing {
        title: title.clone(),
        scale: Some(scale_words(scale)),
        svg: ink.finish(width.class(), &title, &says, Some(&view)),
        table: Some(table),
    }
}

/// The arrows under an axle, with their figures.
fn load(
    ink: &mut Ink,
    is_trailer: bool,
    view: &View,
    was: Option<&OnAxle>,
    on: &OnAxle,
    ground: f64,
    per_kg: f64,
) {
    let x = view.at([on.at.in_mm(), 0.0])[0];
    let top = ground + 6.0;
    let tail = |mass: Mass| top + (mass.in_kg() * per_kg).max(4.0);
    let changed = was.filter(|was| kilograms(was.load) != kilograms(on.load));
    if let Some(was) = was {
        ink.arrow(Line::Seen, [x - 6.0, tail(was.load)], [x - 6.0, top]);
        ink.arrow(Line::Added, [x + 6.0, tail(on.load)], [x + 6.0, top]);
    } else {
        ink.arrow(Line::Seen, [x, tail(on.load)], [x, top]);
    }
    let mut foot = tail(on.load);
    if let Some(plate) = on.plate {
        let y = tail(plate);
        ink.line(Line::Limit, [x - 14.0, y], [x + 14.0, y]);
        ink.hatch(&[
            [x - 14.0, y + 2.0],
            [x + 14.0, y + 2.0],
            [x + 14.0, y + 9.0],
            [x - 14.0, y + 9.0],
        ]);
        foot = foot.max(y + 9.0);
    }
    ink.reached(foot);
    ink.keep_free(Box2 { left: x - 15.0, top, right: x + 15.0, bottom: foot });
    let name = match on.name {
        "nose" => "coupling".to_owned(),
        "rear" if is_trailer => "axle".to_owned(),
        name => format!("{name} axle"),
    };
    let mut lines = vec![(Letter::TITLE, name)];
    match changed {
        Some(was) => {
            lines.push((Letter::NOTE, format!("{} before", kilograms(was.load))));
            lines.push((Letter::AFTER, format!("{} kg", kilograms(on.load))));
        }
        None => lines.push((Letter::PLAIN, format!("{} kg", kilograms(on.load)))),
    }
    lines.push(match on.plate {
        Some(plate) => (Letter::NOTE, format!("{}, plate", kilograms(plate))),
        None => (Letter::NOTE, "plate not said".to_owned()),
    });
    block(ink, [x, top + 12.0], &lines);
}

/// Lines under one another right of a place, or left of it, or lower down, where they are free.
fn block(ink: &mut Ink, [x, y]: [f64; 2], lines: &[(Letter, String)]) {
    let spots = |anchor, down: f64| -> Vec<Spot> {
        let at = match anchor {
            Anchor::End => x - 20.0,
            _ => x + 20.0,
        };
        (0..lines.len())
            .map(|line| Spot { at: [at, y + down + line as f64 * 15.0], anchor, upright: false })
            .collect()
    };
    let places = (0..12).flat_map(|step| {
        [Anchor::Start, Anchor::End].map(|anchor| spots(anchor, f64::from(step) * 30.0))
    });
    let free = |places: &Vec<Spot>| {
        places
            .iter()
            .zip(lines)
            .all(|(spot, (letter, text))| ink.is_free(&ink.stands(letter, spot, text)))
    };
    let Some(places) = places.into_iter().find(free) else { return };
    for (spot, (letter, text)) in places.iter().zip(lines) {
        ink.text(letter, spot, text);
    }
}

/// The middle of all masses, on the floor: how high it is, nobody has measured.
fn middle(ink: &mut Ink, view: &View, pair: &Pair<'_>, ground: f64) {
    let at = |standing: &Standing| view.at([standing.centre.in_mm(), 0.0]);
    let [x, y] = at(pair.now);
    if let Some(was) = pair.was {
        let [x, y] = at(was);
        ink.circle(Line::Solid, [x, y], 7.0);
    }
    let by_job = pair.was.is_some();
    ink.line(Line::Centre, [x, y], [x, ground]);
    ink.circle(if by_job { Line::AddedBody } else { Line::Solid }, [x, y], 6.0);
    let filled = if by_job { Line::FilledAdded } else { Line::Filled };
    ink.through(filled, &[[x, y], [x + 6.0, y], [x, y - 6.0]], true);
    ink.through(filled, &[[x, y], [x - 6.0, y], [x, y + 6.0]], true);
    let rear = pair.now.axles.iter().find(|on| on.name == "rear");
    let far = rear.map_or(Length::m(0.0), |rear| pair.now.centre - rear.at);
    let words = format!("middle of {} kg", kilograms(pair.now.total));
    let axle = if pair.is_trailer() { "axle" } else { "rear axle" };
    let side = if far.in_m() < 0.0 { "behind" } else { "ahead of" };
    let place = format!("{} mm {side} the {axle}", figure(far.in_mm().abs().round()));
    let letter = if by_job { Letter::ADDED } else { Letter::NOTE };
    block(ink, [x - 8.0, y + 18.0], &[(letter, words), (letter, place)]);
}

/// The vehicle from behind, with what left and right carry.
fn from_behind(pair: &Pair<'_>, shell: &Shell, along: [f64; 2], width: Width) -> Drawing {
    let [left, right] = margins(width);
    let scale = (along[1] - along[0]) / (width.units() - left - right);
    let [right_mm, left_mm] = shell.sides();
    let roof = shell.roof();
    let view = View {
        name: "behind",
        axes: "-y z",
        scale,
        origin: [width.units() / 2.0 + (left_mm + right_mm) / 2.0 / scale, 36.0 + roof / scale],
    };
    let mut ink = Ink::new(width.units());
    let title = format!("left and right, {}", pair.now.state);
    ink.text(&Letter::TITLE, &Spot::from([left, 10.0]), &title);
    let ground = view.at([0.0, shell.ground()])[1];
    let low = (shell.ground() + 300.0).min(0.0);
    ink.rounded(Line::Cut, view.rect([-left_mm, low], [-right_mm, roof]), 8.0);
    ink.line(
        Line::Thin,
        [view.at([-left_mm, 0.0])[0] - 40.0, ground],
        [view.at([-right_mm, 0.0])[0] + 40.0, ground],
    );
    let track = pair.now.track.in_mm();
    let centre = f64::midpoint(left_mm, right_mm);
    let most = [pair.was, Some(pair.now)]
        .into_iter()
        .flatten()
        .flat_map(|standing| [half(standing, 1.0), half(standing, -1.0)]);
    let per_kg = LONGEST * 0.7 / most.map(Mass::in_kg).fold(1.0, f64::max);
    for (name, side) in [("left wheels", 1.0), ("right wheels", -1.0)] {
        let y = -(centre + side * track / 2.0);
        let wheel = view.rect([y - 107.0, shell.ground()], [y + 107.0, shell.ground() + 690.0]);
        ink.rounded(Line::Solid, wheel, 3.0);
        let x = wheel.middle()[0];
        let (top, now) = (ground + 6.0, half(pair.now, side));
        let tail = |mass: Mass| top + (mass.in_kg() * per_kg).max(4.0);
        let mut lines = vec![(Letter::TITLE, name.to_owned())];
        match pair.was.map(|was| half(was, side)) {
            Some(was) => {
                ink.arrow(Line::Seen, [x - 6.0, tail(was)], [x - 6.0, top]);
                ink.arrow(Line::Added, [x + 6.0, tail(now)], [x + 6.0, top]);
                if kilograms(was) != kilograms(now) {
                    lines.push((Letter::NOTE, format!("{} before", kilograms(was))));
                }
                lines.push((Letter::AFTER, format!("{} kg", kilograms(now))));
            }
            None => {
                ink.arrow(Line::Seen, [x, tail(now)], [x, top]);
                lines.push((Letter::PLAIN, format!("{} kg", kilograms(now))));
            }
        }
        ink.keep_free(Box2 { left: x - 12.0, top, right: x + 12.0, bottom: tail(now) });
        outwards(&mut ink, [x, top + 12.0], side > 0.0, &lines);
    }
    let says = "Seen from behind; the track and both halves of the mass.";
    Drawing {
        title: title.clone(),
        scale: Some(scale_words(scale)),
        svg: ink.finish(width.class(), &title, says, Some(&view)),
        table: Some(halves(pair)),
    }
}

/// What one side carries: the left one for 1, the right one for −1.
fn half(standing: &Standing, side: f64) -> Mass {
    (standing.total + standing.left_over_right * side) / 2.0
}

fn halves(pair: &Pair<'_>) -> Rows {
    let row = |(name, side): (&str, f64)| {
        let before = pair.was.map_or_else(String::new, |was| kilograms(half(was, side)));
        vec![name.to_owned(), before, kilograms(half(pair.now, side))]
    };
    Rows {
        head: ["wheels", "before, kg", "now, kg"].map(str::to_owned).to_vec(),
        rows: [("left", 1.0), ("right", -1.0)].map(row).to_vec(),
    }
}

/// Lines under one another on the outer side of a place.
fn outwards(ink: &mut Ink, [x, y]: [f64; 2], to_left: bool, lines: &[(Letter, String)]) {
    for (place, (letter, text)) in lines.iter().enumerate() {
        let down = y + place as f64 * 15.0;
        let spot = if to_left { Spot::to([x - 16.0, down]) } else { Spot::from([x + 16.0, down]) };
        ink.text(letter, &spot, text);
    }
}

fn table(old: &[Standing], now: &[Standing], by_job: bool) -> Rows {
    let mut rows = Vec::new();
    for standing in now {
        let was = old.iter().find(|was| by_job && was.state == standing.state);
        for on in &standing.axles {
            let before = was.and_then(|was| was.axles.iter().find(|old| old.name == on.name));
            rows.push(vec![
                standing.state.clone(),
                on.name.to_owned(),
                before.map_or_else(String::new, |before| kilograms(before.load)),
                kilograms(on.load),
                on.plate.map_or_else(|| "not said".to_owned(), kilograms),
            ]);
        }
    }
    Rows {
        head: ["load state", "on", "before, kg", "now, kg", "plate, kg"]
            .map(str::to_owned)
            .to_vec(),
        rows,
    }
}
