//! Against the reference files, which `tests/reference/generate.py` writes.

use crate::near;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use spile_quantity::{Angle, Length};
use spile_solid::{Axis, Cuboid, Cutout, Direction, Patch, Point, Prism, Profile, Solid, Swing};
use std::collections::BTreeMap;
use std::path::Path;

/// Distances: a part in a million or a nanometre.
fn close(what: &str, found_m: f64, expected_m: f64) {
    near(what, found_m, expected_m, (expected_m.abs() * 1e-6).max(1e-9));
}

#[derive(Deserialize)]
struct Shapely {
    flat: Vec<Flat>,
    swing: Vec<SwingCase>,
    cut: Vec<CutCase>,
}

#[derive(Deserialize)]
struct Flat {
    points: Vec<[f64; 2]>,
    rect: [f64; 4],
    area: f64,
    overlaps: bool,
    distance: f64,
    ways: BTreeMap<String, Option<f64>>,
}

#[derive(Deserialize)]
struct SwingCase {
    leaf: [f64; 4],
    angle: f64,
    points: Vec<[f64; 2]>,
    free: Option<f64>,
    area: Option<f64>,
}

#[derive(Deserialize)]
struct CutCase {
    panel: [f64; 2],
    cut: [f64; 4],
    radius: f64,
    hole: [f64; 2],
    to_cut: f64,
    to_panel_edge: f64,
}

#[derive(Deserialize)]
struct Polytopes {
    with_box: Vec<WithBox>,
    with_prism: Vec<WithPrism>,
}

#[derive(Deserialize)]
struct WithBox {
    prism: PrismCase,
    low: [f64; 3],
    high: [f64; 3],
    distance: f64,
}

#[derive(Deserialize)]
struct WithPrism {
    first: PrismCase,
    second: PrismCase,
    distance: f64,
}

#[derive(Deserialize)]
struct PrismCase {
    axis: usize,
    points: Vec<[f64; 2]>,
    ends: [f64; 2],
}

fn read<T: DeserializeOwned>(name: &str) -> T {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference").join(name);
    let text = std::fs::read_to_string(path).expect("the reference file");
    serde_json::from_str(&text).expect("the reference file's form")
}

fn prism(axis: Axis, points: &[[f64; 2]], ends: [f64; 2]) -> Prism {
    let points: Vec<_> = points.iter().map(|at| at.map(Length::m)).collect();
    let profile = Profile::new(&points).expect("an outline");
    Prism::new(axis, profile, Length::m(ends[0]), Length::m(ends[1])).expect("a prism")
}

fn point(at: [f64; 3]) -> Point {
    Point::new(Length::m(at[0]), Length::m(at[1]), Length::m(at[2]))
}

/// The box that fills a rectangle of the plane square to `axis` and `ends` along it.
fn boxed(axis: Axis, rect: [f64; 4], ends: [f64; 2]) -> Cuboid {
    let [first, second] = axis.plane().map(Axis::index);
    let mut corners = [[0.0; 3]; 2];
    for (i, corner) in corners.iter_mut().enumerate() {
        corner[first] = rect[2 * i];
        corner[second] = rect[2 * i + 1];
        corner[axis.index()] = ends[i];
    }
    Cuboid::new(point(corners[0]), point(corners[1])).expect("a box")
}

/// The direction that the generator calls `+0`, `-0`, `+1` or `-1` in the plane square to `axis`.
fn direction(axis: Axis, name: &str) -> Direction {
    let [up, down] = axis.plane()[usize::from(name.ends_with('1'))].directions();
    if name.starts_with('+') { up } else { down }
}

/// Source: Shapely 2.2.0, GEOS 3.14.1: `area`, `distance`, and `relate` under bisection.
#[test]
fn boxes_beside_profiles_are_as_far_as_geos_says() {
    let cases = read::<Shapely>("shapely.json").flat;
    assert_eq!(cases.len(), 48);
    for (i, case) in cases.iter().enumerate() {
        for axis in Axis::ALL {
            let prism = prism(axis, &case.points, [-0.2, 0.3]);
            close("area", prism.profile().area().in_m2(), case.area);
            let solid = Solid::from(prism);
            let body = boxed(axis, case.rect, [0.1, 0.7]);
            assert_eq!(solid.overlaps(&body.into()), case.overlaps, "case {i}");
            let nearest = solid.nearest(&body.into());
            close("distance", nearest.distance.in_m(), case.distance);
            let apart = nearest.on_first.distance(nearest.on_second);
            close("the two points", apart.in_m(), case.distance);
            for (name, way) in &case.ways {
                let direction = direction(axis, name);
                let what = format!("case {i}, {direction}");
                if case.overlaps {
                    let clear = solid.way_clear(&body, direction);
                    close(&what, clear.in_m(), way.expect("a way out"));
                } else {
                    let free = solid.free(&body, direction);
                    assert_eq!(free.is_some(), way.is_some(), "{what}");
                    close(&what, free.map_or(0.0, Length::in_m), way.unwrap_or(0.0));
                }
            }
        }
    }
}

/// Every way of standing up a swing that is given in the plane: hinge axis, and whether the leaf
/// opens from the plane's first axis to the second or is mirrored.
fn swings(case: &SwingCase) -> impl Iterator<Item = (Swing, Solid)> {
    Axis::ALL.into_iter().flat_map(|axis| [1.0, -1.0].map(|mirror| (axis, mirror))).map(
        |(axis, mirror)| {
            let [_, second] = axis.plane();
            let [left, low, right, high] = case.leaf;
            let leaf = boxed(axis, [left, low * mirror, right, high * mirror], [0.0, 0.5]);
            let [plus, minus] = second.directions();
            let opens = if mirror > 0.0 { plus } else { minus };
            let (hinge, angle) = (Point::mm(0.0, 0.0, 0.0), Angle::degrees(case.angle));
            let swing = Swing::new(leaf, axis, hinge, opens, angle).expect("a swing");
            let points: Vec<_> = case.points.iter().map(|at| [at[0], at[1] * mirror]).collect();
            (swing, prism(axis, &points, [0.4, 0.9]).into())
        },
    )
}

/// Source: Shapely 2.2.0, GEOS 3.14.1: the leaf turned in steps of 0.02°, then bisection.
#[test]
fn doors_open_as_far_as_geos_says() {
    let cases = read::<Shapely>("shapely.json").swing;
    assert!(cases.iter().filter(|case| case.free.is_some()).count() >= 8);
    for (i, case) in cases.iter().enumerate() {
        for (swing, obstacle) in swings(case) {
            let free = swing.free_angle(&obstacle);
            assert_eq!(free.is_some(), case.free.is_some(), "case {i}");
            let found = free.map_or(0.0, Angle::in_degrees);
            near("free angle", found, case.free.unwrap_or(0.0), 0.01);
            let apart = swing.nearest(&obstacle).distance;
            assert_eq!(case.free.is_some(), apart.in_m() == 0.0, "case {i}");
        }
    }
}

/// Source: Shapely 2.2.0, GEOS 3.14.1: the union of the hulls of the leaf's positions, each 0.05°.
#[test]
fn doors_sweep_the_area_that_geos_unites() {
    for case in read::<Shapely>("shapely.json").swing {
        let Some(area_m2) = case.area else { continue };
        for (swing, _) in swings(&case) {
            let pieces = swing.swept_within(Length::m(1e-8)).expect("outlines");
            let leaf = case.leaf;
            let area = |piece: &Prism| piece.profile().area().in_m2();
            // Two steps overlap by the leaf where the one ends and the other begins.
            let twice = (pieces.len() - 1) as f64 * (leaf[2] - leaf[0]) * (leaf[3] - leaf[1]);
            let swept = pieces.iter().map(area).sum::<f64>() - twice;
            near("swept area", swept, area_m2, 1e-6 * area_m2);
        }
    }
}

/// Source: Shapely 2.2.0, GEOS 3.14.1: `buffer` with 20,000 segments a quarter, `distance`.
#[test]
fn holes_are_as_far_from_round_corners_as_geos_says() {
    let cases = read::<Shapely>("shapely.json").cut;
    assert_eq!(cases.len(), 40);
    for case in cases {
        let [left, bottom, width, height] = case.cut.map(Length::m);
        let cut = Patch { left, bottom, width, height };
        let cutout = Cutout::new(case.panel.map(Length::m), cut, Length::m(case.radius));
        let cutout = cutout.expect("a cut-out");
        let place = cutout.hole(case.hole.map(Length::m)).expect("a hole");
        close("to the cut", place.to_cut.in_m(), case.to_cut);
        close("to the panel's edge", place.to_panel_edge.in_m(), case.to_panel_edge);
    }
}

fn from_case(case: &PrismCase) -> Solid {
    prism(Axis::ALL[case.axis], &case.points, case.ends).into()
}

/// Source: SciPy 1.17.1: faces of the Minkowski difference by Qhull, its shortest vector by NNLS.
#[test]
fn boxes_and_prisms_in_space_are_as_far_as_scipy_says() {
    for case in read::<Polytopes>("polytopes.json").with_box {
        let solid = from_case(&case.prism);
        let body = Cuboid::new(point(case.low), point(case.high)).expect("a box").into();
        close("distance", solid.nearest(&body).distance.in_m(), case.distance);
        assert_eq!(solid.overlaps(&body), case.distance == 0.0);
    }
}

/// Source: SciPy 1.17.1: faces of the Minkowski difference by Qhull, its shortest vector by NNLS.
#[test]
fn two_prisms_in_space_are_as_far_as_scipy_says() {
    for case in read::<Polytopes>("polytopes.json").with_prism {
        let (first, second) = (from_case(&case.first), from_case(&case.second));
        for (a, b) in [(&first, &second), (&second, &first)] {
            let nearest = a.nearest(b);
            close("distance", nearest.distance.in_m(), case.distance);
            close("points", nearest.on_first.distance(nearest.on_second).in_m(), case.distance);
            assert_eq!(a.overlaps(b), case.distance == 0.0);
        }
    }
}
