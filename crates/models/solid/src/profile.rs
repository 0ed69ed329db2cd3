//! The outline of a thing that is the same all along one axis.

use crate::TOUCH_M;
use crate::error::{ShapeError, finite};
use crate::rect::{At, Rect, apart_squared, extent_in_strip, nearest_on_edge, shrunk};
use geo::{Intersects, Kernel};
use spile_quantity::{Area, Length};

/// A simple polygon, hollows allowed, in a plane square to one of the vehicle's axes.
///
/// Its points have the plane's two coordinates in the order x, y, z, as
/// [`Axis::plane`](crate::Axis::plane) lists them.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// Counter-clockwise, the first not repeated at the end.
    points_m: Vec<At>,
    around: Rect,
}

impl Profile {
    /// The outline through `points`, closed from the last to the first, in either sense.
    ///
    /// **Errors**: fewer than three points, a point that is no number or comes twice, edges that
    /// cross or touch, no area; each names the point.
    pub fn new(points: &[[Length; 2]]) -> Result<Self, ShapeError> {
        let mut points_m = Vec::with_capacity(points.len());
        for at in points {
            let what = "a point of a profile";
            points_m.push([finite(at[0], what)?, finite(at[1], what)?]);
        }
        simple(&points_m)?;
        Ok(Self::from_simple(points_m))
    }

    /// An outline that is known to be simple.
    pub(crate) fn from_simple(mut points_m: Vec<At>) -> Self {
        if signed_area(&points_m) < 0.0 {
            points_m.reverse();
        }
        let around = Rect::around(&points_m);
        Self { points_m, around }
    }

    /// Its corners, counter-clockwise.
    pub fn points(&self) -> impl ExactSizeIterator<Item = [Length; 2]> {
        self.points_m.iter().map(|at| at.map(Length::m))
    }

    /// The area inside.
    pub fn area(&self) -> Area {
        Area::m2(signed_area(&self.points_m))
    }

    pub(crate) fn points_m(&self) -> &[At] {
        &self.points_m
    }

    pub(crate) fn around(&self) -> &Rect {
        &self.around
    }

    /// Its edges, each from one corner to the next.
    pub(crate) fn edges(&self) -> impl Iterator<Item = (At, At)> {
        let next = self.points_m.iter().cycle().skip(1);
        self.points_m.iter().copied().zip(next.copied())
    }

    /// Whether `at` lies inside (even–odd rule; on the outline either answer is right).
    pub(crate) fn contains(&self, at: At) -> bool {
        let mut inside = false;
        for (a, b) in self.edges() {
            if (a[1] > at[1]) != (b[1] > at[1])
                && at[0] < a[0] + (b[0] - a[0]) * ((at[1] - a[1]) / (b[1] - a[1]))
            {
                inside = !inside;
            }
        }
        inside
    }

    /// Whether the outline or the inside meets the rectangle anywhere, touch included.
    pub(crate) fn meets(&self, rect: &Rect) -> bool {
        self.around.distance_squared(rect) == 0.0
            && (self.edges().any(|(a, b)| rect.middle_of_edge_inside(a, b).is_some())
                || self.contains(rect.centre()))
    }

    /// Whether the two share more than a touch.
    pub(crate) fn overlaps(&self, rect: &Rect) -> bool {
        self.around.overlaps(rect) && self.meets(&rect.shrunk())
    }

    /// The nearest points of the rectangle and of this outline with its inside.
    pub(crate) fn nearest(&self, rect: &Rect) -> (At, At) {
        let mut best = (f64::INFINITY, [0.0; 2], [0.0; 2]);
        for (a, b) in self.edges() {
            if rect.distance_squared(&Rect::around(&[a, b])) >= best.0 {
                continue;
            }
            if let Some(at) = rect.middle_of_edge_inside(a, b) {
                return (at, at);
            }
            let ends = [a, b].map(|end| (rect.nearest_to(end), end));
            let sides = rect.corners().map(|corner| (corner, nearest_on_edge(a, b, corner)));
            for (on_rect, on_self) in ends.into_iter().chain(sides) {
                let apart = apart_squared(on_rect, on_self);
                if apart < best.0 {
                    best = (apart, on_rect, on_self);
                }
            }
        }
        if self.contains(rect.centre()) {
            return (rect.centre(), rect.centre());
        }
        (best.1, best.2)
    }

    /// How far `rect`, which is clear of this outline, may move along the axis `along` (0 or 1)
    /// towards `sign` until it touches; `None` if it never does.
    ///
    /// **Formula**: only edges that reach into the strip which the moving rectangle sweeps can stop
    /// it; the nearest point of such an edge, cut off at the strip's borders, lies at one of its
    /// two ends.
    pub(crate) fn free_m(&self, rect: &Rect, along: usize, sign: f64) -> Option<f64> {
        let strip = rect.interval(1 - along);
        let core = shrunk(strip);
        let middle = rect.centre()[along];
        let front = if sign > 0.0 { rect.high[along] } else { rect.low[along] };
        let mut free: Option<f64> = None;
        for (a, b) in self.edges() {
            let Some((from, to)) = extent_in_strip(a, b, along, core) else { continue };
            if (f64::midpoint(from, to) - middle) * sign < 0.0 {
                continue;
            }
            if let Some((from, to)) = extent_in_strip(a, b, along, strip) {
                let way = ((if sign > 0.0 { from } else { to }) - front) * sign;
                free = Some(free.map_or(way, |best| best.min(way)).max(0.0));
            }
        }
        free
    }

    /// How far `rect` must move along the axis `along` (0 or 1) towards `sign` to come clear of
    /// this outline; 0 if it is clear.
    pub(crate) fn way_clear_m(&self, rect: &Rect, along: usize, sign: f64) -> f64 {
        if !self.overlaps(rect) {
            return 0.0;
        }
        // A span [a, b] of the outline blocks each shift between a − high and b − low.
        let mut blocked: Vec<(f64, f64)> = self
            .spans(along, rect.interval(1 - along))
            .into_iter()
            .map(|(a, b)| (a - rect.high[along], b - rect.low[along]))
            .map(|(a, b)| if sign > 0.0 { (a, b) } else { (-b, -a) })
            .collect();
        blocked.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut clear = 0.0_f64;
        for (from, to) in blocked {
            if from < clear.max(TOUCH_M) - TOUCH_M {
                clear = clear.max(to);
            }
        }
        clear
    }

    /// The stretches along the axis `along` (0 or 1) that the outline with its inside covers
    /// anywhere within a strip of the other coordinate; in order, and apart by more than a touch.
    pub(crate) fn spans(&self, along: usize, strip: (f64, f64)) -> Vec<(f64, f64)> {
        let core = shrunk(strip);
        let mut spans: Vec<(f64, f64)> = self
            .edges()
            .filter(|&(a, b)| extent_in_strip(a, b, along, core).is_some())
            .filter_map(|(a, b)| extent_in_strip(a, b, along, strip))
            .chain(self.inside_on_line(along, core.0))
            .chain(self.inside_on_line(along, core.1))
            .collect();
        spans.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut joined: Vec<(f64, f64)> = Vec::new();
        for (from, to) in spans {
            match joined.last_mut() {
                Some(last) if from <= last.1 + TOUCH_M => last.1 = last.1.max(to),
                _ => joined.push((from, to)),
            }
        }
        joined
    }

    /// The stretches along the axis `along` (0 or 1) that lie inside, where the other coordinate
    /// is `level`.
    fn inside_on_line(&self, along: usize, level: f64) -> Vec<(f64, f64)> {
        let across = 1 - along;
        let mut crossings: Vec<f64> = self
            .edges()
            .filter(|(a, b)| (a[across] > level) != (b[across] > level))
            .map(|(a, b)| {
                let share = (level - a[across]) / (b[across] - a[across]);
                a[along] + (b[along] - a[along]) * share
            })
            .collect();
        crossings.sort_by(f64::total_cmp);
        crossings.chunks_exact(2).map(|pair| (pair[0], pair[1])).collect()
    }
}

/// The area by the trapezoid (shoelace) formula, positive where the points go counter-clockwise.
fn signed_area(points: &[At]) -> f64 {
    let Some(&origin) = points.first() else { return 0.0 };
    let relative = |at: At| [at[0] - origin[0], at[1] - origin[1]];
    let twice: f64 = points
        .windows(2)
        .map(|pair| (relative(pair[0]), relative(pair[1])))
        .map(|(a, b)| a[0] * b[1] - a[1] * b[0])
        .sum();
    twice / 2.0
}

/// Whether the closed outline through `points` neither meets itself nor is empty.
fn simple(points: &[At]) -> Result<(), ShapeError> {
    let count = points.len();
    if count < 3 {
        return Err(ShapeError::TooFewPoints { points: count });
    }
    for (point, at) in points.iter().enumerate() {
        if let Some(earlier) = points[..point].iter().position(|other| same(*other, *at)) {
            return Err(ShapeError::RepeatedPoint { point, earlier });
        }
    }
    let coord = |i: usize| geo::Coord { x: points[i % count][0], y: points[i % count][1] };
    let line = |i: usize| geo::Line::new(coord(i), coord(i + 1));
    let turn = |i: usize| <f64 as geo::GeoNum>::Ker::orient2d(coord(i), coord(i + 1), coord(i + 2));
    if (0..count).all(|i| turn(i) == geo::Orientation::Collinear) {
        return Err(ShapeError::NoArea);
    }
    for first in 0..count {
        let next = (first + 1) % count;
        let back = turn(first) == geo::Orientation::Collinear
            && line(first).delta().x * line(next).delta().x
                + line(first).delta().y * line(next).delta().y
                < 0.0;
        if back {
            return Err(ShapeError::Crossing { first: first.min(next), second: first.max(next) });
        }
        for second in first + 2..count {
            let neighbours = first == 0 && second == count - 1;
            if !neighbours && line(first).intersects(&line(second)) {
                return Err(ShapeError::Crossing { first, second });
            }
        }
    }
    Ok(())
}

fn same(a: At, b: At) -> bool {
    apart_squared(a, b).sqrt() <= TOUCH_M
}
