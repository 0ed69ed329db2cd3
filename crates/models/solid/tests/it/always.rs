//! What holds for all shapes.

use proptest::prelude::*;
use spile_quantity::{Angle, Length};
use spile_solid::{Axis, Cuboid, Direction, Point, Prism, Profile, Solid, Space, Swing, TOUCH};

/// An outline with hollows: one corner in each of equal sectors around a middle.
fn profiles() -> impl Strategy<Value = Profile> {
    let corner = (0.2..1.0_f64, 0.1..0.9_f64);
    let corners = prop::collection::vec(corner, 3..10);
    (corners, -500.0..500.0_f64, -500.0..500.0_f64).prop_map(|(corners, first, second)| {
        let sector = std::f64::consts::TAU / corners.len() as f64;
        let points: Vec<_> = corners
            .iter()
            .enumerate()
            .map(|(i, (share, turn))| {
                let (sin, cos) = ((i as f64 + turn) * sector).sin_cos();
                [Length::mm(first + 400.0 * share * cos), Length::mm(second + 400.0 * share * sin)]
            })
            .collect();
        Profile::new(&points).expect("an outline")
    })
}

fn axes() -> impl Strategy<Value = Axis> {
    prop::sample::select(Axis::ALL.to_vec())
}

fn directions() -> impl Strategy<Value = Direction> {
    prop::sample::select(Direction::ALL.to_vec())
}

fn prisms() -> impl Strategy<Value = Prism> {
    (axes(), profiles(), -500.0..500.0_f64, 20.0..400.0_f64).prop_map(
        |(axis, profile, from, length)| {
            Prism::new(axis, profile, Length::mm(from), Length::mm(from + length)).expect("a prism")
        },
    )
}

fn cuboids() -> impl Strategy<Value = Cuboid> {
    let corner = [-700.0..500.0_f64, -700.0..500.0_f64, -700.0..500.0_f64];
    let size = [10.0..500.0_f64, 10.0..500.0_f64, 10.0..500.0_f64];
    (corner, size).prop_map(|(at, size)| {
        let high = Point::mm(at[0] + size[0], at[1] + size[1], at[2] + size[2]);
        Cuboid::new(Point::mm(at[0], at[1], at[2]), high).expect("a box")
    })
}

fn solids() -> impl Strategy<Value = Solid> {
    prop_oneof![cuboids().prop_map(Solid::from), prisms().prop_map(Solid::from)]
}

fn moved(solid: &Solid, direction: Direction, by: Length) -> Solid {
    match solid {
        Solid::Cuboid(cuboid) => cuboid.moved(direction, by).expect("a place").into(),
        Solid::Prism(prism) => {
            let shift = by * direction.sign();
            let [first, second] = prism.axis().plane();
            let along = |axis| if direction.axis() == axis { shift } else { Length::m(0.0) };
            let points: Vec<_> = prism
                .profile()
                .points()
                .map(|at| [at[0] + along(first), at[1] + along(second)])
                .collect();
            let profile = Profile::new(&points).expect("an outline");
            let [from, to] = prism.ends().map(|end| end + along(prism.axis()));
            Prism::new(prism.axis(), profile, from, to).expect("a prism").into()
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 400,
        // Two random shapes overlap in about one case of fifteen.
        max_global_rejects: 40_000,
        ..ProptestConfig::default()
    })]

    #[test]
    fn moved_as_far_as_it_may_a_box_touches_and_does_not_overlap(
        solid in solids(), body in cuboids(), direction in directions(),
    ) {
        prop_assume!(!solid.overlaps(&body.into()));
        match solid.free(&body, direction) {
            Some(way) => {
                let there = body.moved(direction, way).unwrap();
                prop_assert!(!solid.overlaps(&there.into()));
                prop_assert!(solid.nearest(&there.into()).distance <= Length::mm(1e-6));
                // A little way before, it is clear all along; a little beyond, it overlaps, unless
                // it only brushes past a corner.
                prop_assert_eq!(solid.way_clear(&there, direction), Length::m(0.0));
                let half = body.moved(direction, way * 0.5).unwrap();
                prop_assert!(!solid.overlaps(&half.into()));
                prop_assert!((solid.free(&half, direction).unwrap() - way * 0.5).abs() < TOUCH);
            }
            None => {
                let swept = body.swept(direction, Length::m(10.0)).unwrap();
                prop_assert!(!solid.overlaps(&swept.into()));
            }
        }
    }

    #[test]
    fn moved_clear_a_box_touches_and_no_shorter_way_is_clear(
        solid in solids(), body in cuboids(), direction in directions(), share in 0.0..1.0_f64,
    ) {
        prop_assume!(solid.overlaps(&body.into()));
        let way = solid.way_clear(&body, direction);
        prop_assert!(way > Length::m(0.0));
        let there = body.moved(direction, way).unwrap();
        prop_assert!(!solid.overlaps(&there.into()));
        prop_assert!(solid.nearest(&there.into()).distance <= Length::mm(1e-6));
        // Through an oblique side it is in by more than `TOUCH` only TOUCH / sin(angle) further on:
        // a millimetre does for every side that is not all but along the way.
        let short = (way - TOUCH * 1000.0).max(Length::m(0.0)) * share;
        let short = body.moved(direction, short).unwrap();
        prop_assert!(solid.overlaps(&short.into()), "clear at {share} of {way:?}");
        prop_assert_eq!(solid.free(&body, direction), Some(Length::m(0.0)));
    }

    #[test]
    fn distances_look_the_same_from_both_sides(a in solids(), b in solids()) {
        let (there, back) = (a.nearest(&b), b.nearest(&a));
        prop_assert!((there.distance - back.distance).abs().in_m() < 1e-9);
        prop_assert_eq!(a.overlaps(&b), b.overlaps(&a));
        prop_assert!(!a.overlaps(&b) || there.distance.in_m() < 1e-9);
        // Each of the two points lies in its own thing; what two outlines share is found on a grid
        // of a nanometre or so.
        for (solid, at) in [(&a, there.on_first), (&b, there.on_second)] {
            let tip = Length::mm(0.1);
            let high = Point::new(at.x + tip, at.y + tip, at.z + tip);
            let point = Solid::from(Cuboid::new(at, high).unwrap());
            prop_assert!(solid.nearest(&point).distance.in_m() < 1e-8);
        }
    }

    #[test]
    fn where_everything_stands_does_not_matter(
        solid in solids(), body in cuboids(), shift in directions(), by in 1.0..5000.0_f64,
        direction in directions(),
    ) {
        let by = Length::mm(by);
        let (there, body_there) = (moved(&solid, shift, by), body.moved(shift, by).unwrap());
        let same = |a: Length, b: Length| (a - b).abs().in_m() < 1e-9;
        prop_assert!(same(
            solid.nearest(&body.into()).distance,
            there.nearest(&body_there.into()).distance
        ));
        let (free, free_there) =
            (solid.free(&body, direction), there.free(&body_there, direction));
        prop_assert_eq!(free.is_some(), free_there.is_some());
        if let (Some(a), Some(b)) = (free, free_there) {
            prop_assert!(same(a, b));
        }
    }

    #[test]
    fn gaps_of_boxes_agree_with_their_distances(
        a in cuboids(), b in cuboids(), direction in directions(),
    ) {
        prop_assert_eq!(a.gap(&b, direction), b.gap(&a, direction.opposite()));
        let ahead = Axis::ALL.map(|axis| {
            let [plus, minus] = axis.directions();
            a.gap(&b, plus).max(a.gap(&b, minus)).max(Length::m(0.0)).in_m()
        });
        let expected = ahead.iter().map(|gap| gap * gap).sum::<f64>().sqrt();
        prop_assert!((a.nearest(&b).distance.in_m() - expected).abs() < 1e-12);
        // A box is a prism too, along each axis, and everything found for it is the same.
        for axis in Axis::ALL {
            let same: Solid = as_prism(&b, axis).into();
            let nearest = same.nearest(&a.into()).distance;
            prop_assert!((nearest.in_m() - expected).abs() < 1e-12);
            prop_assert_eq!(same.overlaps(&a.into()), a.overlaps(&b));
            let (free, other) = (Solid::from(b).free(&a, direction), same.free(&a, direction));
            prop_assert_eq!(free.is_some(), other.is_some());
            let apart = free.zip(other).map_or(0.0, |(p, q)| (p - q).in_m());
            prop_assert!(apart.abs() < 1e-12);
            let ways = (Solid::from(b).way_clear(&a, direction), same.way_clear(&a, direction));
            prop_assert!((ways.0 - ways.1).abs().in_m() < 1e-12);
        }
    }

    #[test]
    fn a_space_tells_the_least_of_all_things(
        things in prop::collection::vec(solids(), 1..12), body in cuboids(),
    ) {
        let mut space = Space::default();
        for (i, thing) in things.iter().enumerate() {
            space.solid(format!("thing {i}"), thing.clone());
        }
        let clear: Vec<_> = things.iter().filter(|thing| !thing.overlaps(&body.into())).collect();
        prop_assert_eq!(space.overlaps(&body).len(), things.len() - clear.len());
        for clearance in space.clearances(&body, &Direction::ALL) {
            let ways = clear.iter().filter_map(|thing| thing.free(&body, clearance.direction));
            let least = ways.reduce(Length::min);
            let found = clearance.distance;
            prop_assert!(found == least || found.is_some_and(|d| d < Length::m(0.0)));
        }
        let least = things.iter().map(|t| t.nearest(&body.into()).distance).reduce(Length::min);
        prop_assert_eq!(space.nearest(&body).map(|(_, nearest)| nearest.distance), least);
    }

    #[test]
    fn a_door_that_opens_freely_and_one_that_does_not(
        solid in solids(), width in 100.0..700.0_f64, thickness in 1.0..60.0_f64,
        axis in axes(), side in 0..4_usize, degrees in 10.0..360.0_f64,
    ) {
        let [first, second] = axis.plane().map(Axis::directions);
        let (x, y) = ([1.0, 1.0, -1.0, -1.0][side], [1.0, -1.0, 1.0, -1.0][side]);
        let mut far = [300.0; 3];
        far[axis.plane()[0].index()] = width * x;
        far[axis.plane()[1].index()] = thickness * y;
        let hinge = Point::mm(0.0, 0.0, 0.0);
        let leaf = Cuboid::new(hinge, Point::mm(far[0], far[1], far[2])).unwrap();
        let opens = if y > 0.0 { second[0] } else { second[1] };
        let angle = Angle::degrees(degrees);
        let door = Swing::new(leaf, axis, hinge, opens, angle).unwrap();
        prop_assert!(first.iter().all(|d| d.axis() != opens.axis()));
        let nearest = door.nearest(&solid);
        match door.free_angle(&solid) {
            // What it touches lies in the room that it sweeps.
            Some(free) => {
                prop_assert!(nearest.distance.in_m() < 2e-6);
                prop_assert!(free < angle);
                if solid.overlaps(&leaf.into()) {
                    prop_assert_eq!(free, Angle::rad(0.0));
                } else if free > Angle::degrees(0.1) {
                    let less = free - Angle::degrees(0.01);
                    let part = Swing::new(leaf, axis, hinge, opens, less).unwrap();
                    prop_assert_eq!(part.free_angle(&solid), None);
                }
            }
            // What it does not touch reaches into that room by no more than the sagitta.
            None => {
                let finely = door.swept_within(Length::m(1e-8)).unwrap();
                let clear = finely.into_iter().all(|piece| !solid.overlaps(&piece.into()));
                prop_assert!(clear);
            }
        }
    }
}

fn as_prism(cuboid: &Cuboid, axis: Axis) -> Prism {
    let [first, second] = axis.plane();
    let (low, high) = (cuboid.low(), cuboid.high());
    let corners = [
        [low.along(first), low.along(second)],
        [high.along(first), low.along(second)],
        [high.along(first), high.along(second)],
        [low.along(first), high.along(second)],
    ];
    let profile = Profile::new(&corners).expect("an outline");
    Prism::new(axis, profile, low.along(axis), high.along(axis)).expect("a prism")
}
