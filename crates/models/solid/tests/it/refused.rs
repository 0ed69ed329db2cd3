//! What is no shape is refused, with the place of what is wrong.

use crate::cuboid;
use spile_quantity::{Angle, Length, Ranged};
use spile_solid::{
    Axis, Bay, Cuboid, Cutout, Direction, Patch, Point, Prism, Profile, Row, ShapeError, Stuff,
    Swing, arc, height_to_stand_up, passage,
};

fn outline(corners: &[[f64; 2]]) -> Result<Profile, ShapeError> {
    let corners: Vec<_> = corners.iter().map(|at| at.map(Length::mm)).collect();
    Profile::new(&corners)
}

#[test]
fn outlines() {
    // (corners, what is wrong)
    let cases: [(&[[f64; 2]], ShapeError); 9] = [
        (&[[0., 0.], [1., 0.]], ShapeError::TooFewPoints { points: 2 }),
        (&[], ShapeError::TooFewPoints { points: 0 }),
        (
            &[[0., 0.], [9., 0.], [9., 9.], [0., 0.]],
            ShapeError::RepeatedPoint { point: 3, earlier: 0 },
        ),
        (&[[0., 0.], [4., 4.], [9., 9.]], ShapeError::NoArea),
        // A bow tie: the edges after the first and the third point cross.
        (&[[0., 0.], [9., 9.], [9., 0.], [0., 9.]], ShapeError::Crossing { first: 0, second: 2 }),
        // A corner that stands on another edge.
        (
            &[[0., 0.], [9., 0.], [9., 9.], [5., 0.], [0., 9.]],
            ShapeError::Crossing { first: 0, second: 2 },
        ),
        // A spike: there and back on one line.
        (
            &[[0., 0.], [9., 0.], [9., 9.], [9., 5.], [0., 5.]],
            ShapeError::Crossing { first: 1, second: 2 },
        ),
        (
            &[[0., 0.], [f64::NAN, 0.], [9., 9.]],
            ShapeError::NotFinite { what: "a point of a profile" },
        ),
        (
            &[[0., 0.], [f64::INFINITY, 0.], [9., 9.]],
            ShapeError::NotFinite { what: "a point of a profile" },
        ),
    ];
    for (corners, wrong) in cases {
        assert_eq!(outline(corners), Err(wrong), "{corners:?}");
    }
    let text = outline(&[[0., 0.], [9., 9.], [9., 0.], [0., 9.]]).unwrap_err().to_string();
    assert_eq!(text, "the profile's edge after point 3 meets the one after point 1");
}

#[test]
fn boxes_and_prisms() {
    let flat = Cuboid::new(Point::mm(0.0, 0.0, 0.0), Point::mm(9.0, 0.0, 9.0)).unwrap_err();
    assert_eq!(
        flat.to_string(),
        "measured crossways, it is 0 mm thick; a solid needs at least 0.01 mm"
    );
    let lost = Cuboid::new(Point::mm(f64::NAN, 0.0, 0.0), Point::mm(9.0, 9.0, 9.0));
    assert_eq!(lost, Err(ShapeError::NotFinite { what: "a corner of a box" }));
    let body = cuboid([0.0, 0.0, 0.0], [9.0, 9.0, 9.0]);
    assert!(matches!(
        body.grown(Direction::Up, Length::mm(-9.0)),
        Err(ShapeError::TooThin { axis: Axis::Z, .. })
    ));
    assert!(body.moved(Direction::Up, Length::mm(f64::INFINITY)).is_err());
    assert!(body.swept(Direction::Up, Length::mm(0.0)).is_err());
    let triangle = outline(&[[0., 0.], [9., 0.], [9., 9.]]).expect("a triangle");
    let thin = Prism::new(Axis::X, triangle, Length::mm(5.0), Length::mm(5.0));
    assert!(matches!(thin, Err(ShapeError::TooThin { axis: Axis::X, .. })));
}

#[test]
fn swings() {
    let leaf = cuboid([0.0, 0.0, 0.0], [400.0, 20.0, 700.0]);
    let hinge = Point::mm(0.0, 0.0, 0.0);
    let swing = |hinge, opens, degrees| {
        Swing::new(leaf, Axis::Z, hinge, opens, Angle::degrees(degrees)).map(|_| ())
    };
    for degrees in [0.0, -90.0, 361.0, f64::NAN] {
        let wrong = swing(hinge, Direction::Left, degrees).unwrap_err();
        assert!(matches!(wrong, ShapeError::AngleOutside { what: "the swing", .. }), "{degrees}");
    }
    assert_eq!(
        swing(hinge, Direction::Up, 90.0),
        Err(ShapeError::OpensAlongHinge { axis: Axis::Z, opens: Direction::Up })
    );
    let middle = Point::mm(200.0, 0.0, 0.0);
    assert_eq!(swing(middle, Direction::Left, 90.0), Err(ShapeError::HingedInTheMiddle));
    let door = Swing::new(leaf, Axis::Z, hinge, Direction::Left, Angle::degrees(90.0)).unwrap();
    let fine = door.swept_within(Length::m(1e-300));
    assert!(matches!(fine, Err(ShapeError::ArcTooFine { .. })));
    assert!(door.swept_within(Length::m(0.0)).is_err());
}

#[test]
fn arcs() {
    let centre = [Length::m(0.0); 2];
    let make = |radius, sweep, sagitta| {
        let (from, sweep) = (Angle::degrees(0.0), Angle::degrees(sweep));
        arc(centre, Length::mm(radius), from, sweep, Length::mm(sagitta), Stuff::Inside)
    };
    assert!(make(10.0, 90.0, 0.1).is_ok() && make(10.0, -360.0, 0.1).is_ok());
    assert!(matches!(make(0.0, 90.0, 0.1), Err(ShapeError::NotPositive { .. })));
    assert!(matches!(make(10.0, 90.0, -0.1), Err(ShapeError::NotPositive { .. })));
    assert!(matches!(make(10.0, 90.0, 1e-200), Err(ShapeError::ArcTooFine { .. })));
    for sweep in [0.0, 361.0, f64::NAN] {
        assert!(matches!(make(10.0, sweep, 0.1), Err(ShapeError::AngleOutside { .. })), "{sweep}");
    }
}

#[test]
fn bays_and_cuts_and_ways() {
    let mm = Length::mm;
    let row =
        |height, measured| Row { height: mm(height), measured: Ranged::exactly(mm(measured)) };
    let height = Ranged::exactly(mm(900.0));
    let bay = |depth: &[Row]| Bay::new(height, depth, &[row(0.0, 450.0)]);
    assert_eq!(bay(&[]), Err(ShapeError::NoRows { what: "the depth of a bay" }));
    let twice = bay(&[row(100.0, 500.0), row(100.0, 501.0)]);
    assert!(matches!(twice, Err(ShapeError::RepeatedRow { .. })));
    assert!(matches!(bay(&[row(0.0, -5.0)]), Err(ShapeError::NotPositive { .. })));
    let good = bay(&[row(0.0, 500.0)]).expect("a bay");
    assert!(matches!(good.free_depth(mm(9.0), mm(1.0)), Err(ShapeError::UpsideDown { .. })));
    let corner = Point::mm(0.0, 0.0, 0.0);
    let up = good.back_wall(corner, Direction::Up, mm(9.0), mm(9.0), spile_solid::End::Likely);
    assert_eq!(up, Err(ShapeError::BackNotLevel { back: Direction::Up }));

    let cut = Patch { left: mm(50.0), bottom: mm(50.0), width: mm(300.0), height: mm(200.0) };
    let cutout = |radius| Cutout::new([mm(500.0), mm(400.0)], cut, mm(radius)).map(|_| ());
    assert_eq!(cutout(100.0), Ok(()));
    let large = ShapeError::RadiusTooLarge { radius: mm(101.0), most: mm(100.0) };
    assert_eq!(cutout(101.0), Err(large));
    assert!(matches!(cutout(-1.0), Err(ShapeError::NotPositive { .. })));
    assert!(height_to_stand_up(mm(900.0), mm(-1.0)).is_err());
    assert!(passage([mm(1.0), mm(f64::NAN), mm(1.0)], mm(9.0), mm(9.0)).is_err());
}
