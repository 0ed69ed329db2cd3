//! Dimensions, hatching, arrows, balls, scale bars.

use super::canvas::{Ink, Line};
use super::letter::{Anchor, Letter, Spot, figure, text_width};
use super::view::{Box2, View, number};

/// From one line of a hatching to the next, in units.
const HATCH: f64 = 6.0;

impl Ink {
    /// A dimension along a line that runs across the sheet at `y`, from `ends[0]` to `ends[1]`;
    /// `foot` is where the feature lies that it measures.
    pub fn dimension_across(&mut self, y: f64, ends: [f64; 2], foot: f64, text: &str) {
        let [a, b] = [ends[0].min(ends[1]), ends[0].max(ends[1])];
        self.extension([a, foot], [a, y]);
        self.extension([b, foot], [b, y]);
        let wide = text_width(text, Letter::PLAIN.size, false);
        let (middle, over) = (f64::midpoint(a, b), y - 5.0);
        let inside = Spot { at: [middle, over], anchor: Anchor::Middle, upright: false };
        let right = Spot { at: [b + 7.0, over], anchor: Anchor::Start, upright: false };
        let left = Spot { at: [a - 7.0, over], anchor: Anchor::End, upright: false };
        let spots = if wide + 6.0 <= b - a { [inside, right, left] } else { [right, left, inside] };
        let placed =
            spots.into_iter().find(|spot| self.is_free(&self.stands(&Letter::PLAIN, spot, text)));
        self.line(Line::Dim, [a, y], [b, y]);
        if let Some(spot) = placed {
            let stands = self.stands(&Letter::PLAIN, &spot, text);
            if spot == right {
                self.line(Line::Dim, [b, y], [stands.right, y]);
            } else if spot == left {
                self.line(Line::Dim, [stands.left, y], [a, y]);
            }
            self.text(&Letter::PLAIN, &spot, text);
        }
        self.stroke([a, y]);
        self.stroke([b, y]);
    }

    /// A dimension along an upright line at `x`, from `ends[0]` to `ends[1]`; `foot` is where the
    /// feature lies that it measures.
    pub fn dimension_up(&mut self, x: f64, ends: [f64; 2], foot: f64, text: &str) {
        let [a, b] = [ends[0].min(ends[1]), ends[0].max(ends[1])];
        self.extension([foot, a], [x, a]);
        self.extension([foot, b], [x, b]);
        let wide = text_width(text, Letter::PLAIN.size, false);
        let (middle, over) = (f64::midpoint(a, b), x - 5.0);
        let inside = Spot { at: [over, middle], anchor: Anchor::Middle, upright: true };
        let above = Spot { at: [over, a - 7.0], anchor: Anchor::Start, upright: true };
        let below = Spot { at: [over, b + 7.0], anchor: Anchor::End, upright: true };
        let spots =
            if wide + 6.0 <= b - a { [inside, above, below] } else { [above, below, inside] };
        let placed =
            spots.into_iter().find(|spot| self.is_free(&self.stands(&Letter::PLAIN, spot, text)));
        self.line(Line::Dim, [x, a], [x, b]);
        if let Some(spot) = placed {
            let stands = self.stands(&Letter::PLAIN, &spot, text);
            if spot == above {
                self.line(Line::Dim, [x, stands.top], [x, a]);
            } else if spot == below {
                self.line(Line::Dim, [x, b], [x, stands.bottom]);
            }
            self.text(&Letter::PLAIN, &spot, text);
        }
        self.stroke([x, a]);
        self.stroke([x, b]);
    }

    /// From near a feature to a little past its dimension line.
    fn extension(&mut self, from: [f64; 2], to: [f64; 2]) {
        let way = [to[0] - from[0], to[1] - from[1]];
        let long = way[0].hypot(way[1]);
        if long < 5.0 {
            return;
        }
        let unit = way.map(|part| part / long);
        let start = [from[0] + unit[0] * 3.0, from[1] + unit[1] * 3.0];
        let end = [to[0] + unit[0] * 4.0, to[1] + unit[1] * 4.0];
        self.line(Line::Dim, start, end);
    }

    /// The oblique stroke at a dimension's end.
    fn stroke(&mut self, [x, y]: [f64; 2]) {
        self.line(Line::Tick, [x - 4.0, y + 4.0], [x + 4.0, y - 4.0]);
    }

    /// Hatches a polygon at 45 degrees.
    pub fn hatch(&mut self, corners: &[[f64; 2]]) {
        let path = hatching(corners, HATCH);
        if !path.is_empty() {
            self.path(Line::Hair, &path);
        }
    }

    /// An arrow whose point is at `to`.
    pub fn arrow(&mut self, line: Line, from: [f64; 2], to: [f64; 2]) {
        let way = [to[0] - from[0], to[1] - from[1]];
        let long = way[0].hypot(way[1]);
        if long < 1e-9 {
            return;
        }
        let unit = way.map(|part| part / long);
        let (length, half) = (9.0_f64.min(long), 3.2);
        let neck = [to[0] - unit[0] * length, to[1] - unit[1] * length];
        let side = [-unit[1] * half, unit[0] * half];
        self.line(line, from, neck);
        let head =
            [to, [neck[0] + side[0], neck[1] + side[1]], [neck[0] - side[0], neck[1] - side[1]]];
        let filled = match line {
            Line::Added | Line::AddedThin => Line::FilledAdded,
            _ => Line::Filled,
        };
        self.through(filled, &head, true);
    }

    /// A leader from a dot on a thing to a text at the first place that is free; `false` where
    /// there is none.
    pub fn lead(&mut self, letter: &Letter, from: [f64; 2], spots: &[Spot], text: &str) -> bool {
        let free = |spot: &&Spot| self.is_free(&self.stands(letter, spot, text));
        let Some(spot) = spots.iter().find(free).copied() else { return false };
        let stands = self.stands(letter, &spot, text);
        let x = from[0].clamp(stands.left, stands.right);
        let end = match spot.anchor {
            Anchor::Start => [stands.left - 3.0, stands.middle()[1]],
            Anchor::End => [stands.right + 3.0, stands.middle()[1]],
            Anchor::Middle if from[1] < stands.top => [x, stands.top - 1.0],
            Anchor::Middle => [x, stands.bottom + 1.0],
        };
        self.line(Line::Dim, from, end);
        self.circle(Line::Filled, from, 2.0);
        self.text(letter, &spot, text);
        true
    }

    /// A ball with a number or letter in it.
    pub fn ball(&mut self, added: bool, [x, y]: [f64; 2], text: &str) {
        let class = if added { "ballc a" } else { "ballc" };
        let letter =
            if added { Letter { class: "ball-t t-a", ..Letter::BALL } } else { Letter::BALL };
        let radius = ball_radius(text);
        self.reached(y - radius);
        self.reached(y + radius);
        self.put(&maud::html! {
            circle class=(class) cx=(number(x)) cy=(number(y)) r=(number(radius)) {}
        });
        let spot = Spot { at: [x, y + 4.0], anchor: Anchor::Middle, upright: false };
        self.text(&letter, &spot, text);
        self.keep_free(Box2::of([x - radius, y - radius], [x + radius, y + radius]));
    }

    /// A ball with a number within a thing's box; `false`, and not drawn, where no place is free
    /// that nothing nearer covers.
    pub fn ball_within(&mut self, added: bool, at: &Box2, nearer: &[Box2], text: &str) -> bool {
        let radius = ball_radius(text);
        let places = ball_places(at, radius);
        let free = |place: &[f64; 2]| {
            let stands = ball_box(*place, radius);
            at.holds(&stands) && is_clear(&stands, nearer) && self.is_free(&stands)
        };
        let Some(place) = places.into_iter().find(free) else { return false };
        self.ball(added, place, text);
        true
    }

    /// A ball with a number at the nearest free place outside a thing's box, led to it.
    pub fn ball_beside(&mut self, added: bool, at: &Box2, nearer: &[Box2], text: &str) {
        let radius = ball_radius(text);
        let middle = at.middle();
        let ring = (1..80)
            .flat_map(|ring| (0..24).map(move |step| (f64::from(ring) * 9.0, f64::from(step))));
        let out = ring
            .map(|(far, step)| {
                let angle_rad = (step / 24.0) * std::f64::consts::TAU + 0.9;
                [middle[0] + far * angle_rad.cos(), middle[1] - far * angle_rad.sin()]
            })
            .find(|place| {
                let stands = ball_box(*place, radius + 1.0);
                !at.touches(&stands) && self.is_within_reach(&stands) && self.is_free(&stands)
            });
        let Some([x, y]) = out else { return };
        let seen = ball_places(at, radius)
            .into_iter()
            .find(|place| is_clear(&Box2::of(*place, *place).grown(1.0), nearer));
        let from = seen.unwrap_or([x.clamp(at.left, at.right), y.clamp(at.top, at.bottom)]);
        let way = [x - from[0], y - from[1]];
        let long = way[0].hypot(way[1]).max(1e-9);
        let end = [x - way[0] / long * radius, y - way[1] / long * radius];
        self.line(Line::Dim, from, end);
        self.circle(if added { Line::FilledAdded } else { Line::Filled }, from, 2.0);
        self.ball(added, [x, y], text);
    }

    /// A scale bar from `at` to the right: a round length that is at most `most` units long.
    pub fn scale_bar(&mut self, view: &View, [x, y]: [f64; 2], most: f64) {
        let reach = most * view.scale;
        let ten = 10_f64.powf(reach.log10().floor());
        let step = [5.0, 2.0, 1.0].into_iter().find(|step| step * ten <= reach).unwrap_or(1.0);
        let length_mm = step * ten;
        let end = x + view.units(length_mm);
        self.line(Line::Seen, [x, y], [end, y]);
        for share in [0.0, 0.5, 1.0] {
            let at = x + (end - x) * share;
            let high = if share == 0.5 { 3.0 } else { 5.0 };
            self.line(Line::Thin, [at, y - high], [at, y]);
        }
        let words = if length_mm >= 1000.0 {
            format!("{} m", figure(length_mm / 1000.0))
        } else {
            format!("{} mm", figure(length_mm))
        };
        let under = |at: f64, anchor| Spot { at: [at, y + 14.0], anchor, upright: false };
        self.text(&Letter::NOTE, &under(x, Anchor::Middle), "0");
        self.text(&Letter::NOTE, &under(end, Anchor::Middle), &words);
    }
}

/// How large a ball is that holds a number.
fn ball_radius(text: &str) -> f64 {
    (text_width(text, Letter::BALL.size, true) / 2.0 + 2.0).max(8.0)
}

fn ball_box([x, y]: [f64; 2], radius: f64) -> Box2 {
    Box2::of([x - radius, y - radius], [x + radius, y + radius])
}

/// Where a ball may stand in a box, the best first.
fn ball_places(at: &Box2, radius: f64) -> [[f64; 2]; 5] {
    let [x, y] = at.middle();
    let in_from = radius + 3.0;
    [
        [x, y],
        [at.left + in_from, y],
        [at.right - in_from, y],
        [x, at.top + in_from],
        [x, at.bottom - in_from],
    ]
}

fn is_clear(stands: &Box2, nearer: &[Box2]) -> bool {
    !nearer.iter().any(|other| other.touches(stands))
}

/// The lines of a hatching at 45 degrees inside a polygon, as a path.
fn hatching(corners: &[[f64; 2]], apart: f64) -> String {
    // Along each line x + y stays as it is.
    let apart = apart * std::f64::consts::SQRT_2;
    let sums = corners.iter().map(|[x, y]| x + y);
    let (least, most) = sums.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), sum| {
        (least.min(sum), most.max(sum))
    });
    let mut path = String::new();
    if !(most - least).is_finite() || most - least > 1e5 {
        return path;
    }
    let mut sum = (least / apart).ceil() * apart;
    while sum < most {
        let mut crossings: Vec<f64> = Vec::new();
        for (place, a) in corners.iter().enumerate() {
            let b = corners[(place + 1) % corners.len()];
            let (from, to) = (a[0] + a[1] - sum, b[0] + b[1] - sum);
            if (from < 0.0) != (to < 0.0) {
                crossings.push(a[0] + (b[0] - a[0]) * from / (from - to));
            }
        }
        crossings.sort_by(f64::total_cmp);
        for pair in crossings.chunks_exact(2) {
            path.push_str(&format!(
                "M{} {}L{} {}",
                number(pair[0]),
                number(sum - pair[0]),
                number(pair[1]),
                number(sum - pair[1])
            ));
        }
        sum += apart;
    }
    path
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hatching_stays_inside_its_polygon() {
        let path = hatching(&[[0.0, 0.0], [40.0, 0.0], [40.0, 20.0], [0.0, 20.0]], 5.0);
        let numbers: Vec<f64> = path
            .split(['M', 'L', ' '])
            .filter(|part| !part.is_empty())
            .map(|part| part.parse().expect("a number"))
            .collect();
        assert!(numbers.len() >= 16, "{path}");
        for at in numbers.chunks(2) {
            assert!(
                (-1e-3..=40.001).contains(&at[0]) && (-1e-3..=20.001).contains(&at[1]),
                "{at:?}"
            );
        }
    }

    #[test]
    fn a_narrow_dimension_has_its_figure_outside() {
        let mut ink = Ink::new(400.0);
        ink.dimension_across(50.0, [100.0, 110.0], 20.0, "1,050");
        assert!(ink.lettered()[0].left > 110.0);
        ink.dimension_across(50.0, [110.0, 300.0], 20.0, "1,900");
        assert!(!ink.lettered()[0].touches(&ink.lettered()[1]));
    }
}
