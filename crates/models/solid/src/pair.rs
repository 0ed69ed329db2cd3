//! Two prisms against each other.

use crate::cuboid::{nearest_in_intervals, share};
use crate::rect::{At, Rect, apart_squared, nearest_on_edge};
use crate::{Axis, Cuboid, Nearest, Prism, Profile, TOUCH_M};
use geo::BooleanOps;
use std::iter::once;

/// Whether two prisms take the same room somewhere; touching is not overlapping.
pub(crate) fn overlap(a: &Prism, b: &Prism) -> bool {
    common_point(a, b).is_some()
}

/// The nearest points of two prisms.
///
/// Two solids with flat faces that are apart are nearest at a corner of one of them or between two
/// of their straight edges, so that trying all of these is exact.
pub(crate) fn nearest(a: &Prism, b: &Prism) -> Nearest {
    if let Some(at) = common_point(a, b) {
        return Nearest::between(at, at);
    }
    if a.axis() == b.axis() {
        let (at_a, at_b) = match common_in_plane(a.profile(), b.profile()) {
            Some(at) => (at, at),
            None => nearest_profiles(a.profile(), b.profile()),
        };
        let (along_a, along_b) = nearest_in_intervals(a.interval_m(), b.interval_m());
        return Nearest::between(a.place(at_a, along_a), b.place(at_b, along_b));
    }
    let some_corner =
        |prism: &Prism| prism.place(prism.profile().points_m()[0], prism.interval_m().0);
    let mut best = Nearest::between(some_corner(a), some_corner(b));
    nearest_from_corners(a, b, &mut best);
    best = best.reversed();
    nearest_from_corners(b, a, &mut best);
    best = best.reversed();
    let may_win = |p: &Cuboid, q: &Cuboid, best: &Nearest| p.nearest(q).distance < best.distance;
    let (around_a, around_b) = (a.around(), b.around());
    let of_b: Vec<Edge> = edges(b).filter(|e| may_win(&e.around, &around_a, &best)).collect();
    for edge_a in edges(a) {
        if !may_win(&edge_a.around, &around_b, &best) {
            continue;
        }
        for edge_b in &of_b {
            if may_win(&edge_a.around, &edge_b.around, &best) {
                let (p, q) = nearest_on_edges(&edge_a, edge_b);
                best = best.or_shorter(Nearest::between(p, q));
            }
        }
    }
    best
}

/// Betters `best` by what is found from the corners of `one` to `other`.
fn nearest_from_corners(one: &Prism, other: &Prism, best: &mut Nearest) {
    let around = other.around();
    for at in corners(one) {
        let tip = Cuboid { low_m: at, high_m: at };
        if tip.nearest(&around).distance < best.distance {
            *best = best.or_shorter(other.nearest_to_cuboid(&tip));
        }
    }
}

/// The outlines that a prism shows when the part of it within `slab` of `axis` is seen along that
/// axis.
pub(crate) fn shadows(prism: &Prism, axis: Axis, slab: (f64, f64)) -> Vec<Profile> {
    if axis == prism.axis() {
        let seen = share(prism.interval_m(), slab);
        return seen.then(|| prism.profile().clone()).into_iter().collect();
    }
    // Seen across, each stretch that the profile covers within the slab is a rectangle.
    let across = usize::from(prism.axis().plane()[0] == axis);
    let around = prism.around().interval_m(axis);
    if !share(around, slab) {
        return Vec::new();
    }
    let stretches = prism.profile().spans(across, slab);
    let along_first = axis.plane()[0] == prism.axis();
    stretches
        .into_iter()
        .map(|stretch| {
            let (first, second) = if along_first {
                (prism.interval_m(), stretch)
            } else {
                (stretch, prism.interval_m())
            };
            let rect = Rect { low: [first.0, second.0], high: [first.1, second.1] };
            Profile::from_simple(rect.corners().to_vec())
        })
        .collect()
}

/// A point that lies in both, if they share more than a touch.
fn common_point(a: &Prism, b: &Prism) -> Option<[f64; 3]> {
    if a.axis() == b.axis() {
        if !share(a.interval_m(), b.interval_m()) {
            return None;
        }
        let at = common_in_plane(a.profile(), b.profile())?;
        return Some(a.place(at, nearest_in_intervals(a.interval_m(), b.interval_m()).0));
    }
    for seen in shadows(b, a.axis(), a.interval_m()) {
        if a.profile().overlaps(seen.around()) {
            // Where b is seen from along a's axis, some part of b within a's ends lies behind it.
            let at = a.profile().nearest(&seen.around().shrunk()).0;
            let (low, high) = a.interval_m();
            let needle = Cuboid { low_m: a.place(at, low), high_m: a.place(at, high) };
            return Some(b.nearest_to_cuboid(&needle).on_first.to_m());
        }
    }
    None
}

/// A corner of what two outlines share, if that is wider than a touch in the mean.
fn common_in_plane(a: &Profile, b: &Profile) -> Option<At> {
    if !a.around().overlaps(b.around()) {
        return None;
    }
    let shared = polygon(a).intersection(&polygon(b));
    shared.0.iter().find_map(|piece| {
        let ring: Vec<At> = piece.exterior().coords().skip(1).map(|c| [c.x, c.y]).collect();
        let shape = Profile::from_simple(ring);
        let round_m: f64 = shape.edges().map(|(p, q)| apart_squared(p, q).sqrt()).sum();
        let mean_width_m = 2.0 * shape.area().in_m2() / round_m;
        (mean_width_m > TOUCH_M).then(|| shape.points_m()[0])
    })
}

fn polygon(profile: &Profile) -> geo::Polygon {
    let ring = profile.points_m().iter().map(|at| (at[0], at[1])).collect();
    geo::Polygon::new(ring, Vec::new())
}

/// The nearest points of two outlines with their insides, which share no more than a touch.
fn nearest_profiles(a: &Profile, b: &Profile) -> (At, At) {
    let mut best = (f64::INFINITY, [0.0; 2], [0.0; 2]);
    for (p, q) in a.edges() {
        let near = Rect::around(&[p, q]);
        for (r, s) in b.edges() {
            if near.distance_squared(&Rect::around(&[r, s])) >= best.0 {
                continue;
            }
            let offers = [
                (p, nearest_on_edge(r, s, p)),
                (q, nearest_on_edge(r, s, q)),
                (nearest_on_edge(p, q, r), r),
                (nearest_on_edge(p, q, s), s),
            ];
            for (on_a, on_b) in offers {
                let apart = apart_squared(on_a, on_b);
                if apart < best.0 {
                    best = (apart, on_a, on_b);
                }
            }
        }
    }
    (best.1, best.2)
}

/// A straight edge of a solid.
struct Edge {
    from: [f64; 3],
    run: [f64; 3],
    around: Cuboid,
}

impl Edge {
    fn between(from: [f64; 3], to: [f64; 3]) -> Self {
        let around = Cuboid {
            low_m: std::array::from_fn(|i| from[i].min(to[i])),
            high_m: std::array::from_fn(|i| from[i].max(to[i])),
        };
        Self { from, run: std::array::from_fn(|i| to[i] - from[i]), around }
    }

    fn at(&self, share: f64) -> [f64; 3] {
        std::array::from_fn(|i| self.from[i] + share * self.run[i])
    }
}

fn corners(prism: &Prism) -> impl Iterator<Item = [f64; 3]> {
    let (low, high) = prism.interval_m();
    let points = prism.profile().points_m().iter();
    points.flat_map(move |at| [prism.place(*at, low), prism.place(*at, high)])
}

fn edges(prism: &Prism) -> impl Iterator<Item = Edge> {
    let (low, high) = prism.interval_m();
    prism.profile().edges().flat_map(move |(a, b)| {
        once(Edge::between(prism.place(a, low), prism.place(a, high)))
            .chain([low, high].map(|end| Edge::between(prism.place(a, end), prism.place(b, end))))
    })
}

/// The nearest points of two straight edges.
///
/// **Formula**: the point on each infinite line nearest to the other, brought back to the edges
/// one after the other.
/// **Source**: C. Ericson, *Real-Time Collision Detection*, 2005, section 5.1.9.
fn nearest_on_edges(a: &Edge, b: &Edge) -> ([f64; 3], [f64; 3]) {
    let dot = |u: [f64; 3], v: [f64; 3]| u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
    let between: [f64; 3] = std::array::from_fn(|i| a.from[i] - b.from[i]);
    let (aa, bb, ab) = (dot(a.run, a.run), dot(b.run, b.run), dot(a.run, b.run));
    let (a_between, b_between) = (dot(a.run, between), dot(b.run, between));
    let across = aa * bb - ab * ab;
    let along_a = |along_b: f64| ((ab * along_b - a_between) / aa).clamp(0.0, 1.0);
    let first = if across > 1e-12 * aa * bb {
        ((ab * b_between - a_between * bb) / across).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let along_b = ((ab * first + b_between) / bb).clamp(0.0, 1.0);
    (a.at(along_a(along_b)), b.at(along_b))
}
