//! Cases of the trade and of the geometry books, each with its source.

use crate::{cuboid, near, profile};
use spile_quantity::{Angle, Length, Ranged};
use spile_solid::{
    Axis, Bay, Covered, Cutout, Direction, End, Patch, Point, Prism, Profile, Row, Side, Solid,
    Space, Stuff, Swing, arc, circle, height_to_stand_up, slack_in_opening, straight_way,
};
use std::f64::consts::{FRAC_PI_2, PI};

fn door(width: f64, thickness: f64, angle: f64) -> Swing {
    let leaf = cuboid([0.0, 0.0, 0.0], [width, thickness, 700.0]);
    let hinge = Point::mm(0.0, 0.0, 0.0);
    Swing::new(leaf, Axis::Z, hinge, Direction::Left, Angle::degrees(angle)).expect("a door")
}

#[test]
fn single_figures() {
    let mm = Length::mm;
    let half_turn = circle([mm(0.0), mm(0.0)], mm(200.0), mm(0.001)).expect("a circle");
    let gon = Profile::new(&half_turn).expect("an outline");
    let stand = |h, d| height_to_stand_up(mm(h), mm(d)).expect("a height").in_mm();
    let cut = Cutout::new([mm(900.0), mm(800.0)], patch(50.0, 50.0, 300.0, 400.0), mm(10.0))
        .expect("a cut-out");
    // (source, found, expected, tolerance from the printed digits)
    let cases = [
        // Pythagoras: a door's corner runs on the radius hypot(width, thickness); 3-4-5 × 120.
        ("door radius, 3-4-5 triangle", door(480.0, 360.0, 90.0).reach().in_mm(), 600.0, 1e-9),
        ("door 600 × 25, hypot", door(600.0, 25.0, 90.0).reach().in_mm(), 600.521, 5e-4),
        // Euclid I.47 with the triple 8-15-17: a body 1500 high and 800 deep.
        ("standing up, 8-15-17 triangle", stand(1500.0, 800.0), 1700.0, 1e-9),
        // Euclid I.47 with the triple 3-4-5: both diagonals of a square cut of 300 × 400.
        ("diagonal, 3-4-5 triangle", cut.diagonal().in_mm(), 500.0, 1e-9),
        // Archimedes: the circle's area is π·r², approached from outside.
        ("circle's area", gon.area().in_cm2(), PI * 400.0, 0.02),
    ];
    for (source, found, expected, tolerance) in cases {
        near(source, found, expected, tolerance);
    }
}

/// Source: Archimedes, *Measurement of a Circle*: of a circle of diameter 1 the perimeter lies
/// between 3 10/71 and 3 1/7, by the inscribed and circumscribed 96-sided polygons.
#[test]
fn archimedes_polygons() {
    let (centre, radius) = ([Length::m(0.0); 2], Length::m(0.5));
    let (from, quarter) = (Angle::rad(0.0), Angle::rad(FRAC_PI_2));
    let half = PI / 96.0;
    let perimeter = |stuff, sagitta_m: f64| {
        let sagitta = Length::m(sagitta_m * 1.000_001);
        let points = arc(centre, radius, from, quarter, sagitta, stuff).expect("an arc");
        let side = |pair: &[[Length; 2]]| {
            (pair[1][0] - pair[0][0]).in_m().hypot((pair[1][1] - pair[0][1]).in_m())
        };
        4.0 * points.windows(2).map(side).sum::<f64>()
    };
    // The sagitta of the 96-sided polygon, r·(1 − cos(π/96)), and its excess from outside.
    let inscribed = perimeter(Stuff::Outside, 0.5 * (1.0 - half.cos()));
    let circumscribed = perimeter(Stuff::Inside, 0.5 * (1.0 / half.cos() - 1.0));
    assert!(3.0 + 10.0 / 71.0 < inscribed && inscribed < PI, "{inscribed}");
    assert!(PI < circumscribed && circumscribed < 3.0 + 1.0 / 7.0, "{circumscribed}");
    // W. W. R. Ball, *A Short Account of the History of Mathematics*, 1908: 96 sides give
    // 3.14103 and 3.14271, from memory.
    near("inscribed", inscribed, 3.141_03, 5e-6);
    near("circumscribed", circumscribed, 3.142_71, 5e-6);
}

/// Source: the sagitta of a chord c in a circle r is r − √(r² − c²/4) (plane trigonometry); for a
/// chord of 600 mm in r = 500 mm that is 500 − 400 = 100 mm, by the triangle 3-4-5.
#[test]
fn a_box_stands_on_a_wheel_arch_as_the_sagitta_says() {
    let (centre, radius) = ([Length::mm(0.0), Length::mm(-200.0)], Length::mm(500.0));
    let (from, sweep) = (Angle::rad(0.0), Angle::rad(PI));
    let round = arc(centre, radius, from, sweep, Length::mm(0.001), Stuff::Inside).expect("an arc");
    let profile = Profile::new(&round).expect("an outline");
    let arch = Prism::new(Axis::Y, profile, Length::mm(-900.0), Length::mm(-700.0));
    let arch = Solid::from(arch.expect("an arch"));
    // Over the middle it comes down to the crown, 300 mm above the floor.
    let over = cuboid([-300.0, -880.0, 500.0], [300.0, -720.0, 900.0]);
    near("to the crown", arch.free(&over, Direction::Down).unwrap().in_mm(), 200.0, 0.002);
    // Beginning at half the chord it meets the arch at its corner, 100 mm lower.
    let beside = cuboid([300.0, -880.0, 500.0], [800.0, -720.0, 900.0]);
    near("to the arch", arch.free(&beside, Direction::Down).unwrap().in_mm(), 300.0, 0.002);
    // Beside it at that height it can go back as far as the half chord.
    let ahead = cuboid([600.0, -880.0, 200.0], [800.0, -720.0, 900.0]);
    near("to the slope", arch.free(&ahead, Direction::Rear).unwrap().in_mm(), 300.0, 0.002);
}

/// Source: plane trigonometry. A thin leaf of length L hinged at the distance d from a wall square
/// to it passes the right angle by arcsin(d/L); a leaf of thickness t, whose inner corner leads,
/// by arcsin(d/R) − arctan(t/L), R = √(L² + t²); and a post at the distance e from the hinge,
/// under the bearing β, stops the face at β − arcsin(t/e).
#[test]
fn doors_stop_where_trigonometry_says() {
    let wall = cuboid([-400.0, -900.0, 0.0], [-250.0, 900.0, 700.0]).into();
    let thin = door(500.0, 0.02, 180.0).free_angle(&wall).unwrap();
    near("thin leaf, 90° + 30°", thin.in_degrees(), 120.0, 0.01);
    let expected = 90.0 + (250.0_f64 / 500.0_f64.hypot(40.0)).asin().to_degrees()
        - (40.0_f64 / 500.0).atan().to_degrees();
    let thick = door(500.0, 40.0, 180.0).free_angle(&wall).unwrap();
    near("thick leaf", thick.in_degrees(), expected, 0.01);
    // A rib's corner at (−240, 320) is 400 from the hinge, its bearing 90° + arctan(240/320).
    let rib = Prism::new(
        Axis::Z,
        profile(&[[-240.0, 320.0], [-300.0, 340.0], [-300.0, 300.0]]),
        Length::mm(0.0),
        Length::mm(900.0),
    );
    let rib = Solid::from(rib.expect("a rib"));
    let expected =
        90.0 + (240.0_f64 / 320.0).atan().to_degrees() - (20.0_f64 / 400.0).asin().to_degrees();
    let stopped = door(600.0, 20.0, 180.0).free_angle(&rib).unwrap();
    near("at a rib", stopped.in_degrees(), expected, 0.01);
    assert_eq!(door(390.0, 20.0, 180.0).free_angle(&rib), None, "too short to reach it");
}

/// Source: plane trigonometry: a lid of length L hinged at its rear edge stands L·sin θ high, so
/// that under a ceiling h above the hinge it opens to arcsin(h/L); here arcsin(1/2) = 30°.
#[test]
fn a_lid_meets_the_ceiling() {
    let lid = cuboid([0.0, -400.0, 500.0], [600.0, 0.0, 500.02]);
    let hinge = Point::mm(0.0, 0.0, 500.0);
    let lid = Swing::new(lid, Axis::Y, hinge, Direction::Up, Angle::degrees(90.0)).expect("a lid");
    let ceiling = cuboid([-500.0, -900.0, 800.0], [900.0, 900.0, 820.0]).into();
    near("lid", lid.free_angle(&ceiling).unwrap().in_degrees(), 30.0, 0.01);
    // A shelf carried across at the same height, as a prism along another axis, does the same.
    let shelf = profile(&[[-900.0, 800.0], [900.0, 800.0], [900.0, 820.0], [-900.0, 820.0]]);
    let shelf = Prism::new(Axis::X, shelf, Length::mm(-500.0), Length::mm(900.0)).expect("a shelf");
    near("shelf", lid.free_angle(&shelf.into()).unwrap().in_degrees(), 30.0, 0.01);
}

/// Source: the area that a leaf sweeps over α is A + α·(R² − r²)/2; for a quarter turn of a leaf
/// hinged at its corner, the quarter circle on R plus the two halves of the leaf beside it.
#[test]
fn a_quarter_turn_sweeps_the_quarter_circle_and_the_leaf() {
    let pieces = door(400.0, 30.0, 90.0).swept_within(Length::m(1e-8)).expect("an outline");
    let quarter = FRAC_PI_2 / 2.0 * (0.4 * 0.4 + 0.03 * 0.03);
    near("area", pieces[0].profile().area().in_m2(), quarter + 0.4 * 0.03, 1e-7);
    // The outline for use is never smaller, and at most 0.1 mm larger along the arc.
    let rough = door(400.0, 30.0, 90.0).swept()[0].profile().area().in_m2();
    assert!(quarter + 0.4 * 0.03 < rough && rough < quarter + 0.4 * 0.03 + 0.65 * 1e-4);
}

#[test]
fn the_drawer_and_the_way_in() {
    let fridge = cuboid([0.0, -900.0, 10.0], [440.0, -420.0, 770.0]);
    let mut space = Space::default();
    space.solid("cupboard", cuboid([-600.0, 300.0, 0.0], [2000.0, 900.0, 900.0]));
    space.solid("step", cuboid([400.0, 0.0, 0.0], [600.0, 300.0, 30.0]));
    // The aisle is 720 wide; a drawer of 400 leaves 320 for the knees.
    let drawer = fridge.grown(Direction::Down, Length::mm(-300.0)).expect("a drawer");
    let open = drawer.swept(Direction::Left, Length::mm(400.0)).expect("a drawer");
    let left = space.clearances(&open, &[Direction::Left])[0];
    assert_eq!(left.nearest, Some("cupboard"));
    near("knee room", left.distance.unwrap().in_mm(), 320.0, 1e-9);
    // Pushed straight in from the aisle it passes the corner of the step 20 mm too low.
    let way = straight_way(&space, &fridge, Direction::Left, Length::mm(490.0)).expect("a way");
    assert_eq!(way.overlaps.len(), 1);
    let (direction, by) = way.overlaps[0].ways_clear[0];
    assert_eq!((way.overlaps[0].name, direction), ("step", Direction::Up));
    near("lift", by.in_mm(), 20.0, 1e-9);
    let opening = cuboid([-4.0, -425.0, 0.0], [446.0, -415.0, 780.0]);
    let slack = slack_in_opening(&opening, &fridge, Axis::Y).map(|(d, s)| (d, s.in_mm().round()));
    let expected = [
        (Direction::Front, 6.0),
        (Direction::Rear, 4.0),
        (Direction::Up, 10.0),
        (Direction::Down, 10.0),
    ];
    assert_eq!(slack, expected);
}

#[test]
fn an_overlap_tells_the_shortest_way_out_and_does_not_hide_the_rest() {
    let mut space = Space::default();
    space.face("rear wall", Direction::Rear, Length::mm(-150.0));
    space.solid("tube", cuboid([-20.0, -500.0, 0.0], [12.0, 500.0, 20.0]));
    space.solid("shelf", cuboid([0.0, -500.0, 800.0], [500.0, 500.0, 820.0]));
    let fridge = cuboid([0.0, -200.0, 0.0], [440.0, 200.0, 760.0]);
    let found = space.clearances(&fridge, &Direction::ALL);
    let told: Vec<_> = found
        .iter()
        .filter_map(|c| Some((c.direction.word(), c.nearest?, c.distance?.in_mm().round())))
        .collect();
    assert_eq!(told, [("rear", "tube", -12.0), ("up", "shelf", 40.0)]);
    assert_eq!(space.overlaps(&fridge).len(), 1);
    let moved = fridge.moved(Direction::Front, Length::mm(12.0)).expect("a place");
    assert!(space.overlaps(&moved).is_empty());
    let beyond = fridge.moved(Direction::Rear, Length::mm(250.0)).expect("a place");
    let walls = space.overlaps(&beyond);
    assert_eq!(walls[1].name, "rear wall");
    assert_eq!(walls[1].ways_clear[0].0, Direction::Front);
    near("back", walls[1].ways_clear[0].1.in_mm(), 100.0, 1e-9);
    let (name, nearest) = space.nearest(&fridge).expect("something");
    assert_eq!((name, nearest.distance.in_mm()), ("tube", 0.0));
}

fn row(height: f64, low: f64, likely: f64, high: f64) -> Row {
    let measured = Ranged::new(Length::mm(low), Length::mm(likely), Length::mm(high));
    Row { height: Length::mm(height), measured: measured.expect("a range") }
}

#[test]
fn a_bay_between_and_beyond_its_rows() {
    // A wall that bulges at 300: measured ± 2 there, ± 1 elsewhere.
    let depth = [
        row(600.0, 509.0, 510.0, 511.0),
        row(0.0, 519.0, 520.0, 521.0),
        row(300.0, 498.0, 500.0, 502.0),
    ];
    let height = Ranged::exactly(Length::mm(900.0));
    let bay = Bay::new(height, &depth, &[row(400.0, 449.0, 450.0, 451.0)]).expect("a bay");
    let values =
        |r: Ranged<Length>| [r.low, r.likely, r.high].map(|l| (l.in_mm() * 1e6).round() / 1e6);
    let whole = bay.free_depth(Length::mm(0.0), Length::mm(600.0)).expect("a depth");
    assert_eq!((values(whole.length), whole.covered), ([498.0, 500.0, 502.0], Covered::Between));
    assert_eq!(whole.height.in_mm(), 300.0);
    // Half way between the rows at 300 and 600: the means of the two.
    let upper = bay.free_depth(Length::mm(450.0), Length::mm(600.0)).expect("a depth");
    assert_eq!(values(upper.length), [503.5, 505.0, 506.5]);
    // 150 above the last row: it may lean out on twice as steeply, by 2·(511 − 498)/2 = 13, or
    // stand upright.
    let above = bay.free_depth(Length::mm(750.0), Length::mm(750.0)).expect("a depth");
    assert_eq!((values(above.length), above.covered), ([509.0, 510.0, 524.0], Covered::Beyond));
    // A wall that leans in by 14 ± 4 over 365, seen 415 above the last row: by 14·415/365 = 15.92
    // more if it leans on, by 2·18·415/365 = 40.93 more than its least if it curves in.
    let leaning = [row(335.0, 564.0, 566.0, 568.0), row(700.0, 550.0, 552.0, 554.0)];
    let bay = Bay::new(height, &leaning, &[row(400.0, 449.0, 450.0, 451.0)]).expect("a bay");
    let top = bay.free_depth(Length::mm(335.0), Length::mm(1115.0)).expect("a depth");
    near("leans on", top.length.likely.in_mm(), 552.0 - 15.918, 5e-4);
    near("curves in", top.length.low.in_mm(), 550.0 - 40.932, 5e-4);
    let wide = bay.free_width(Length::mm(0.0), Length::mm(760.0)).expect("a width");
    assert_eq!((values(wide.length), wide.covered), ([449.0, 450.0, 451.0], Covered::OneRow));
    let bay = Bay::new(height, &depth, &[row(400.0, 449.0, 450.0, 451.0)]).expect("a bay");
    // The derived wall stops a box as the rows say: the bulge, seen from the front.
    let corner = Point::mm(100.0, -900.0, 50.0);
    let (width, thickness) = (Length::mm(800.0), Length::mm(10.0));
    let body = cuboid([-50.0, -800.0, 60.0], [90.0, -500.0, 700.0]);
    for (end, expected) in [(End::Low, 508.0), (End::Likely, 510.0), (End::High, 512.0)] {
        let wall = bay.back_wall(corner, Direction::Front, width, thickness, end).expect("a wall");
        let free = Solid::from(wall).free(&body, Direction::Front).expect("a wall ahead");
        near("to the back wall", free.in_mm(), expected, 1e-9);
    }
}

fn patch(left: f64, bottom: f64, width: f64, height: f64) -> Patch {
    let [left, bottom, width, height] = [left, bottom, width, height].map(Length::mm);
    Patch { left, bottom, width, height }
}

#[test]
fn a_cut_out_and_what_is_left_of_its_panel() {
    let mm = Length::mm;
    let cut = patch(80.0, 60.0, 440.0, 500.0);
    let mut cutout = Cutout::new([mm(700.0), mm(650.0)], cut, mm(10.0)).expect("a cut-out");
    let strips = cutout.strips().map(|(side, width)| (side, width.in_mm().round()));
    let expected =
        [(Side::Left, 80.0), (Side::Right, 180.0), (Side::Bottom, 60.0), (Side::Top, 90.0)];
    assert_eq!(strips, expected);
    let corner = |at: [Length; 2]| at.map(|c| c.in_mm().round());
    assert_eq!(cutout.corners().map(corner)[2], [520.0, 560.0]);
    assert_eq!(cutout.drill_centres().map(corner)[0], [90.0, 70.0]);
    cutout.put_behind("post", patch(530.0, 0.0, 20.0, 650.0)).expect("a post");
    cutout.put_behind("rail", patch(0.0, 555.0, 700.0, 20.0)).expect("a rail");
    // The block touches the lower edge; the clip's corner stands where the cut's would be.
    cutout.put_behind("block", patch(500.0, 40.0, 10.0, 20.0)).expect("a block");
    cutout.put_behind("clip", patch(520.0, 560.0, 9.0, 9.0)).expect("a clip");
    let found = cutout.to_what_is_behind();
    near("post", found[0].1.unwrap().in_mm(), 10.0, 1e-9);
    assert_eq!(found[1], ("rail", None));
    near("block, edge to edge", found[2].1.unwrap().in_mm(), 0.0, 1e-9);
    near("clip, 10·(√2 − 1) round the corner", found[3].1.unwrap().in_mm(), 4.142, 5e-4);
    // A hole in the post; one inside the cut; one off the panel.
    let hole = cutout.hole([mm(537.0), mm(300.0)]).expect("a hole");
    assert_eq!(hole.over.iter().map(|(name, _)| *name).collect::<Vec<_>>(), ["post"]);
    near("into the post", hole.over[0].1.in_mm(), 7.0, 1e-9);
    near("beside the cut", hole.to_cut.in_mm(), 17.0, 1e-9);
    assert!(cutout.hole([mm(300.0), mm(300.0)]).expect("a hole").to_cut < mm(0.0));
    let off = cutout.hole([mm(703.0), mm(654.0)]).expect("a hole").to_panel_edge;
    near("off the corner, 3-4-5 triangle", off.in_mm(), -5.0, 1e-9);
}
