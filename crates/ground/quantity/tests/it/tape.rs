//! Marks of a tape.

use spile_quantity::*;

const TAPES: [Tape; 5] = [
    Tape::Sixteenth,
    Tape::ThirtySecond,
    Tape::SixtyFourth,
    Tape::Millimetre,
    Tape::HalfMillimetre,
];

#[test]
fn fractions_have_the_millimetres_of_the_conversion_table() {
    // Inch fractions in millimetres, exact by the inch of 25.4 mm.
    let rows = [
        ("1/4", 6.35),
        ("3/8", 9.525),
        ("1/2", 12.7),
        ("5/8", 15.875),
        ("3/4", 19.05),
        ("15/32", 11.90625),
        ("23/32", 18.25625),
    ];
    for (figure, mm) in rows {
        let at = Tape::ThirtySecond.nearest(Length::mm(mm)).unwrap();
        assert_eq!((at.mark.figure().as_str(), at.mark.length()), (figure, Length::mm(mm)));
    }
    // Steps of the same table: 1/16 is 1.5875 mm, 1/32 is 0.79375 mm, 1/64 is 0.396875 mm.
    assert_eq!(Tape::Sixteenth.step(), Length::mm(1.5875));
    assert_eq!(Tape::ThirtySecond.step(), Length::mm(0.79375));
    assert_eq!(Tape::SixtyFourth.step(), Length::mm(0.396875));
}

#[test]
fn figures_are_reduced() {
    let figure = |mm: f64, tape: Tape| tape.nearest(Length::mm(mm)).unwrap().mark.figure();
    assert_eq!(figure(20.53125 * 25.4, Tape::SixtyFourth), "20 17/32");
    assert_eq!(figure(0.25 * 25.4, Tape::Sixteenth), "1/4");
    assert_eq!(figure(-0.5 * 25.4, Tape::Sixteenth), "-1/2");
    assert_eq!(figure(17.0 * 25.4, Tape::SixtyFourth), "17");
    assert_eq!(figure(0.0, Tape::Sixteenth), "0");
    assert_eq!(figure(440.4, Tape::HalfMillimetre), "440.5");
    assert_eq!(figure(-0.4, Tape::HalfMillimetre), "-0.5");
    assert_eq!(figure(440.4, Tape::Millimetre), "440");
}

#[test]
fn a_length_on_a_mark_stays_there() {
    for tape in TAPES {
        for steps in 0..5000 {
            let on = tape.step() * f64::from(steps);
            let marks = [tape.down(on), tape.up(on), tape.nearest(on)].map(Option::unwrap);
            for at in marks {
                assert!(at.error.abs() < Length::m(1e-12), "{on:?} on {tape:?}: {at:?}");
            }
            let mark = marks[0].mark;
            let back = read::<Length>(&mark.to_string()).unwrap().ranged.likely;
            assert_eq!(back, mark.length(), "{mark}");
        }
    }
}

#[test]
fn marks_between_bounds_or_none() {
    let marks = |low, high, tape: Tape| -> Vec<String> {
        tape.between(Length::mm(low), Length::mm(high)).map(|mark| mark.to_string()).collect()
    };
    // 17 5/16 in is 439.7375 mm, 17 3/8 in is 441.325 mm.
    assert_eq!(marks(439.0, 442.0, Tape::Sixteenth), ["17 5/16 in", "17 3/8 in"]);
    assert_eq!(marks(440.0, 441.0, Tape::Sixteenth), [""; 0]);
    assert_eq!(marks(440.0, 441.0, Tape::ThirtySecond), ["17 11/32 in"]);
    assert_eq!(marks(440.0, 441.0, Tape::HalfMillimetre), ["440 mm", "440.5 mm", "441 mm"]);
    assert_eq!(marks(441.0, 440.0, Tape::HalfMillimetre), [""; 0]);
    assert_eq!(marks(f64::NAN, 440.0, Tape::Millimetre), [""; 0]);

    let wanted = read::<Length>("440 mm +2/-0").unwrap().ranged;
    assert_eq!(Tape::Sixteenth.within(&wanted).unwrap().mark.to_string(), "17 3/8 in");
    let wanted = read::<Length>("440 mm +1/-0").unwrap().ranged;
    assert_eq!(Tape::Sixteenth.within(&wanted), None);
}

#[test]
fn lengths_no_tape_has_are_refused() {
    for bad in [f64::NAN, f64::INFINITY, -f64::INFINITY, 1e300] {
        for tape in TAPES {
            assert_eq!((tape.down(Length::m(bad)), tape.up(Length::m(bad))), (None, None));
            assert_eq!(tape.nearest(Length::m(bad)), None);
        }
    }
}

#[test]
fn pairs_tell_what_the_mark_is_off_by() {
    let pair = |mm, tape: Tape| display_pair(Length::mm(mm), tape);
    assert_eq!(pair(440.0, Tape::Sixteenth), "440 mm (17 5/16 in, 0.26 mm short)");
    assert_eq!(pair(441.0, Tape::Sixteenth), "441 mm (17 3/8 in, 0.33 mm over)");
    assert_eq!(pair(12.7, Tape::Sixteenth), "12.7 mm (1/2 in)");
    assert_eq!(pair(440.0, Tape::Millimetre), "440 mm");
}
