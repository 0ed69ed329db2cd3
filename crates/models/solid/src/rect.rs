//! Rectangles and edges in a plane square to one of the vehicle's axes. All figures in metres.

use crate::TOUCH_M;
use crate::cuboid::{nearest_in_intervals, share};

/// A point of the plane.
pub(crate) type At = [f64; 2];

/// An upright rectangle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Rect {
    pub low: At,
    pub high: At,
}

impl Rect {
    /// The smallest rectangle around some points.
    pub fn around(points: &[At]) -> Self {
        let mut around = Self { low: [f64::INFINITY; 2], high: [f64::NEG_INFINITY; 2] };
        for at in points {
            for (i, &coordinate) in at.iter().enumerate() {
                around.low[i] = around.low[i].min(coordinate);
                around.high[i] = around.high[i].max(coordinate);
            }
        }
        around
    }

    pub fn centre(&self) -> At {
        [f64::midpoint(self.low[0], self.high[0]), f64::midpoint(self.low[1], self.high[1])]
    }

    pub fn interval(&self, along: usize) -> (f64, f64) {
        (self.low[along], self.high[along])
    }

    /// What is left when each side gives way by a touch.
    pub fn shrunk(&self) -> Self {
        let (first, second) = (shrunk(self.interval(0)), shrunk(self.interval(1)));
        Self { low: [first.0, second.0], high: [first.1, second.1] }
    }

    /// Whether the two share more than a touch.
    pub fn overlaps(&self, other: &Self) -> bool {
        (0..2).all(|i| share(self.interval(i), other.interval(i)))
    }

    pub fn corners(&self) -> [At; 4] {
        let (a, b) = (self.low, self.high);
        [a, [b[0], a[1]], b, [a[0], b[1]]]
    }

    /// The point of the rectangle nearest to `at`.
    pub fn nearest_to(&self, at: At) -> At {
        std::array::from_fn(|i| at[i].clamp(self.low[i], self.high[i]))
    }

    /// The square of the distance between two rectangles.
    pub fn distance_squared(&self, other: &Self) -> f64 {
        let apart = |i: usize| {
            let (a, b) = nearest_in_intervals(self.interval(i), other.interval(i));
            (a - b) * (a - b)
        };
        apart(0) + apart(1)
    }

    /// A point of the edge from `a` to `b` that lies in the rectangle, the middle of all such.
    pub fn middle_of_edge_inside(&self, a: At, b: At) -> Option<At> {
        let (mut from, mut to) = (0.0_f64, 1.0_f64);
        for i in 0..2 {
            let run = b[i] - a[i];
            if run == 0.0 {
                if a[i] < self.low[i] || a[i] > self.high[i] {
                    return None;
                }
            } else {
                let (s, t) = ((self.low[i] - a[i]) / run, (self.high[i] - a[i]) / run);
                from = from.max(s.min(t));
                to = to.min(s.max(t));
            }
        }
        let share = f64::midpoint(from, to);
        (from <= to).then(|| [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])])
    }
}

/// What is left of an interval when both ends give way by a touch; its middle if nothing is.
pub(crate) fn shrunk(interval: (f64, f64)) -> (f64, f64) {
    if interval.1 - interval.0 > 2.0 * TOUCH_M {
        (interval.0 + TOUCH_M, interval.1 - TOUCH_M)
    } else {
        let middle = f64::midpoint(interval.0, interval.1);
        (middle, middle)
    }
}

/// The least and the greatest coordinate `along` of the part of the edge from `a` to `b` whose
/// other coordinate lies within `strip`.
pub(crate) fn extent_in_strip(a: At, b: At, along: usize, strip: (f64, f64)) -> Option<(f64, f64)> {
    let across = 1 - along;
    let (va, vb) = (a[across], b[across]);
    if va.max(vb) < strip.0 || va.min(vb) > strip.1 {
        return None;
    }
    let at = |v: f64, end: f64| {
        let cut = v.clamp(strip.0, strip.1);
        if cut == v { end } else { a[along] + (b[along] - a[along]) * ((cut - va) / (vb - va)) }
    };
    let (p, q) = (at(va, a[along]), at(vb, b[along]));
    Some((p.min(q), p.max(q)))
}

/// The point of the edge from `a` to `b` nearest to `at`.
pub(crate) fn nearest_on_edge(a: At, b: At, at: At) -> At {
    let run = [b[0] - a[0], b[1] - a[1]];
    let length_squared = run[0] * run[0] + run[1] * run[1];
    let along = (at[0] - a[0]) * run[0] + (at[1] - a[1]) * run[1];
    let share = (along / length_squared).clamp(0.0, 1.0);
    [a[0] + share * run[0], a[1] + share * run[1]]
}

/// The square of the distance between two points.
pub(crate) fn apart_squared(a: At, b: At) -> f64 {
    (a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1])
}
