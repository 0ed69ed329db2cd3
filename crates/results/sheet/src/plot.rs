//! A plot: axes with round ticks and their units, and lines, bands, limits and marks on them.

use maud::html;

use crate::ink::{Anchor, Box2, Ink, Letter, Line, Spot, figure, number, text_width};

/// Steps between ticks, times a power of ten.
const STEPS: [f64; 4] = [1.0, 2.0, 2.5, 5.0];

/// One axis: its ends and its ticks.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Axis {
    /// Its lower or left end.
    pub(crate) low: f64,
    /// Its upper or right end.
    pub(crate) high: f64,
    /// Where its ticks are, each with its figure.
    pub(crate) ticks: Vec<(f64, String)>,
    /// Its unit, and what it measures where that is not plain.
    pub(crate) unit: String,
}

impl Axis {
    /// An axis over a range, its ends moved out to round ticks, of which there are `most` at most.
    pub(crate) fn over(range: [f64; 2], most: usize, unit: &str) -> Self {
        let step = step(range[1] - range[0], most);
        let (low, high) = ((range[0] / step).floor() * step, (range[1] / step).ceil() * step);
        Self::ticked(low, high, step, unit)
    }

    /// An axis with the ends it is given; its ticks are round.
    pub(crate) fn exactly(range: [f64; 2], most: usize, unit: &str) -> Self {
        let [low, high] = range;
        let step = step(high - low, most);
        let first = (low / step - 1e-9).ceil() * step;
        Self { low, high, ..Self::ticked(first, high, step, unit) }
    }

    fn ticked(low: f64, high: f64, step: f64, unit: &str) -> Self {
        let decimals = usize::try_from(-step.log10().floor() as i64).unwrap_or(0);
        let decimals = if (step * 10_f64.powi(decimals as i32)).fract() > 1e-9 {
            decimals + 1
        } else {
            decimals
        };
        let count = ((high - low) / step + 1e-9).floor() as usize;
        let ticks = (0..=count).map(|at| {
            let value = low + at as f64 * step;
            let whole = decimals == 0;
            let text = if whole { figure(value) } else { format!("{value:.decimals$}") };
            (value, text.replace('-', "−"))
        });
        Self { low, high, ticks: ticks.collect(), unit: unit.to_owned() }
    }

    fn share(&self, value: f64) -> f64 {
        (value - self.low) / (self.high - self.low)
    }
}

/// The least round step with which a span has `most` ticks at most.
fn step(span: f64, most: usize) -> f64 {
    let span = if span.is_finite() && span > 0.0 { span } else { 1.0 };
    let exact = span / most.max(1) as f64;
    let ten = 10_f64.powf(exact.log10().floor());
    let round = STEPS.into_iter().find(|step| step * ten >= exact - 1e-9 * ten);
    round.unwrap_or(10.0) * ten
}

/// A plot on a sheet.
pub(crate) struct Plot<'i> {
    /// The sheet.
    pub(crate) ink: &'i mut Ink,
    /// Where its axes span.
    pub(crate) frame: Box2,
    x: Axis,
    y: Axis,
}

impl<'i> Plot<'i> {
    /// Axes on a sheet: figures left of and below the frame.
    pub(crate) fn new(ink: &'i mut Ink, frame: Box2, x: Axis, y: Axis) -> Self {
        let mut plot = Self { ink, frame, x, y };
        plot.axes();
        plot
    }

    fn axes(&mut self) {
        let Box2 { left, top, right, bottom } = self.frame;
        self.ink.line(Line::Thin, [left, bottom], [right, bottom]);
        self.ink.line(Line::Hair, [left, bottom], [left, top]);
        for (value, figure) in self.y.ticks.clone() {
            let y = self.at([self.x.low, value])[1];
            self.ink.line(Line::Hair, [left - 5.0, y], [left, y]);
            self.ink.text(&Letter::NOTE, &Spot::to([left - 9.0, y]), &figure);
        }
        for (value, figure) in self.x.ticks.clone() {
            let x = self.at([value, self.y.low])[0];
            self.ink.line(Line::Hair, [x, bottom], [x, bottom + 5.0]);
            let under = Spot { at: [x, bottom + 18.0], anchor: Anchor::Middle, upright: false };
            self.ink.text(&Letter::NOTE, &under, &figure);
        }
        // The unit of the y axis stands over it, that of the x axis under its end.
        let fits = text_width(&self.y.unit, Letter::NOTE.size, false) < left - 9.0;
        let anchor = if fits { Anchor::End } else { Anchor::Start };
        let over = Spot { at: [left - 9.0, top - 16.0], anchor, upright: false };
        self.ink.text(&Letter::NOTE, &over, &self.y.unit.clone());
        if !self.x.unit.is_empty() {
            let under = Spot { at: [right, bottom + 35.0], anchor: Anchor::End, upright: false };
            self.ink.text(&Letter::NOTE, &under, &self.x.unit.clone());
        }
    }

    /// A place on the axes, on the sheet; what lies beyond the y axis is drawn at its end.
    pub(crate) fn at(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let up = self.y.share(y).clamp(-0.01, 1.01);
        [
            self.frame.left + self.x.share(x) * self.frame.width(),
            self.frame.bottom - up * self.frame.height(),
        ]
    }

    /// A line through points, with what it is for pointers and screen readers.
    pub(crate) fn line(&mut self, line: Line, points: &[[f64; 2]], title: &str) {
        let points: Vec<[f64; 2]> = points.iter().map(|point| self.at(*point)).collect();
        if points.len() > 1 {
            self.ink.thing("line", title, |ink| ink.through(line, &points, false));
        }
        for pair in points.windows(2) {
            keep_line_free(self.ink, pair[0], pair[1]);
        }
    }

    /// The area between two lines over the same places.
    pub(crate) fn band(&mut self, class: &str, low: &[[f64; 2]], high: &[[f64; 2]], title: &str) {
        let points = low.iter().chain(high.iter().rev()).map(|point| self.at(*point));
        let path: Vec<String> =
            points.map(|[x, y]| format!("{} {}", number(x), number(y))).collect();
        if path.len() > 2 {
            let path = format!("M{}Z", path.join("L"));
            self.ink.put(&html! { path class=(class) d=(path) { title { (title) } } });
        }
    }

    /// A limit that is not to be passed upwards, hatched on the side where it may not be.
    pub(crate) fn at_most(&mut self, value: f64, words: &str) {
        let [_, y] = self.at([self.x.low, value]);
        let (left, right) = (self.frame.left, self.frame.right);
        self.ink.line(Line::Limit, [left, y], [right, y]);
        let mut path = String::new();
        let mut x = left;
        while x + 6.0 <= right {
            path.push_str(&format!("M{} {}l6 -6", number(x), number(y - 1.75)));
            x += 7.0;
        }
        self.ink.path(Line::Hair, &path);
        self.ink.keep_free(Box2::of([left, y - 8.0], [right, y + 2.0]));
        let wide = text_width(words, Letter::TITLE.size, true);
        let spots = [
            Spot::from([right + 6.0, y]),
            Spot { at: [left + 6.0, y - 13.0], anchor: Anchor::Start, upright: false },
            Spot { at: [right - wide - 6.0, y - 13.0], anchor: Anchor::Start, upright: false },
            Spot { at: [left + 6.0, y + 15.0], anchor: Anchor::Start, upright: false },
        ];
        self.ink.label(&Letter::TITLE, &spots, words);
    }

    /// An upright centre line at a place, named over the plot.
    pub(crate) fn upright(&mut self, x: f64, words: &str) {
        let [x, _] = self.at([x, self.y.low]);
        self.ink.line(Line::Centre, [x, self.frame.bottom + 5.0], [x, self.frame.top - 2.0]);
        let over = |anchor, shift: f64| Spot {
            at: [x + shift, self.frame.top - 6.0],
            anchor,
            upright: false,
        };
        let spots = [over(Anchor::Middle, 0.0), over(Anchor::Start, -4.0), over(Anchor::End, 4.0)];
        self.ink.label(&Letter::NOTE, &spots, words);
    }

    /// A mark with its figure: hollow as it stands, filled after the job.
    pub(crate) fn mark(&mut self, at: [f64; 2], after: bool, words: &str, title: &str) {
        let [x, y] = self.at(at);
        let (class, radius) =
            if after { (Line::FilledAdded.class(), 6.0) } else { (Line::Solid.class(), 5.25) };
        self.ink.reached(y - radius);
        self.ink.put(&html! {
            circle class=(class) cx=(number(x)) cy=(number(y)) r=(number(radius)) { title { (title) } }
        });
        self.ink.keep_free(Box2::of([x - radius, y - radius], [x + radius, y + radius]));
        let letter = if after { Letter::AFTER } else { Letter::PLAIN };
        let beside =
            |dx: f64, dy: f64, anchor| Spot { at: [x + dx, y + dy], anchor, upright: false };
        let spots = [
            beside(-9.0, -8.0, Anchor::End),
            beside(9.0, 18.0, Anchor::Start),
            beside(0.0, -12.0, Anchor::Middle),
            beside(9.0, 4.0, Anchor::Start),
            beside(-9.0, 20.0, Anchor::End),
            beside(0.0, 22.0, Anchor::Middle),
            beside(-12.0, -22.0, Anchor::End),
            beside(12.0, 30.0, Anchor::Start),
        ];
        self.ink.label(&letter, &spots, words);
    }

    /// The words of a line at its last point, or where else there is room.
    pub(crate) fn name(&mut self, after: bool, points: &[[f64; 2]], words: &str) {
        let letter = if after { Letter::ADDED } else { Letter::NOTE };
        let along = |share: f64| {
            let place = share * points.len().saturating_sub(1) as f64;
            let (from, part) = (place.floor() as usize, place.fract());
            let [a, b] = [points.get(from)?, points.get(from + 1)?];
            Some(self.at([0, 1].map(|axis| a[axis] + (b[axis] - a[axis]) * part)))
        };
        let places = [0.75, 0.6, 0.5, 0.4, 0.85, 0.3, 0.15].into_iter().filter_map(along);
        let beside = |[x, y]: [f64; 2]| {
            [
                (-6.0, -9.0, Anchor::End),
                (6.0, 18.0, Anchor::Start),
                (6.0, 26.0, Anchor::Start),
                (-10.0, -18.0, Anchor::End),
                (8.0, 4.0, Anchor::Start),
                (-8.0, 4.0, Anchor::End),
            ]
            .map(|(dx, dy, anchor)| Spot {
                at: [x + dx, y + dy],
                anchor,
                upright: false,
            })
        };
        let spots: Vec<Spot> = places.flat_map(beside).collect();
        self.ink.label(&letter, &spots, words);
    }
}

/// Keeps lettering off a line.
fn keep_line_free(ink: &mut Ink, from: [f64; 2], to: [f64; 2]) {
    let steps = ((to[0] - from[0]).hypot(to[1] - from[1]) / 4.0).ceil().clamp(1.0, 400.0) as usize;
    for step in 0..=steps {
        let share = step as f64 / steps as f64;
        let [x, y] = [0, 1].map(|axis| from[axis] + (to[axis] - from[axis]) * share);
        ink.keep_free(Box2::of([x - 1.5, y - 1.5], [x + 1.5, y + 1.5]));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_round_and_few() {
        let figures =
            |axis: Axis| axis.ticks.into_iter().map(|(_, figure)| figure).collect::<Vec<_>>();
        assert_eq!(figures(Axis::over([0.0, 1.28], 4, "V")), ["0.0", "0.5", "1.0", "1.5"]);
        assert_eq!(
            figures(Axis::over([0.0, 870.0], 5, "Wh")),
            ["0", "200", "400", "600", "800", "1,000"]
        );
        assert_eq!(
            figures(Axis::exactly([12.0, 45.0], 8, "°C")),
            ["15", "20", "25", "30", "35", "40", "45"]
        );
        assert_eq!(figures(Axis::over([-0.3, 0.2], 2, "")), ["−0.50", "−0.25", "0.00", "0.25"]);
        for high in [1e-6, 0.3, 7.0, 99.0, 12_345.0, f64::NAN] {
            let axis = Axis::over([0.0, if high.is_nan() { 0.0 } else { high }], 5, "");
            assert!((1..=7).contains(&axis.ticks.len()), "{axis:?}");
        }
    }
}
