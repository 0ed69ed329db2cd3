//! What must hold of every vehicle.

use proptest::prelude::*;
use spile_axle::statics::{centre, supports};
use spile_quantity::{Length, Mass};

use crate::{after, likely, worst};

proptest! {
    #[test]
    fn the_axles_together_carry_the_mass_and_no_moment_is_left(
        kg in -500.0..5000.0, x in -3.0..8.0, length in 1.5..8.0, datum in -20.0..20.0,
    ) {
        let on = supports(Mass::kg(kg), Length::m(x), Length::m(length)).unwrap();
        let (front, rear) = (on.front.in_kg(), on.rear.in_kg());
        prop_assert!((front + rear - kg).abs() < 1e-9);
        // About any point: supports at `length` and 0 against the mass at x.
        let moment: f64 = front * (length - datum) - rear * datum - kg * (x - datum);
        prop_assert!(moment.abs() < 1e-7, "{moment}");
    }

    #[test]
    fn forward_never_raises_the_rear_axle(
        kg in 0.0..5000.0, x in -3.0..8.0, more in 0.0..3.0, length in 1.5..8.0,
    ) {
        let rear = |x: f64| {
            supports(Mass::kg(kg), Length::m(x), Length::m(length)).unwrap().rear.in_kg()
        };
        prop_assert!(rear(x + more) <= rear(x) + 1e-9);
    }

    #[test]
    fn a_mass_is_found_where_it_was_put(kg in 1.0..5000.0, x in -3.0..8.0, length in 1.5..8.0) {
        let on = supports(Mass::kg(kg), Length::m(x), Length::m(length)).unwrap();
        let (mass, forward) = centre(on, Length::m(length)).unwrap();
        prop_assert!((mass.in_kg() - kg).abs() < 1e-9 && (forward.in_m() - x).abs() < 1e-9);
    }
}

/// A van with a chest of some mass at some place that a job puts in.
fn van(kg: f64, from_rear_mm: f64) -> (String, String) {
    let text = format!(
        r#"
        [vehicle]
        wheelbase = "3600 mm"
        rear_axle = "1200 mm"
        track = "1700 mm"
        inside = {{ length = "3.4 m", width = "1.8 m" }}
        limits = {{ front = "1850 kg", rear = "2240 kg", total = "3500 kg" }}
        [parts.chest]
        kind = "furniture"
        mass = "{kg:.3} kg"
        size = {{ width = "600 mm", depth = "400 mm", height = "400 mm" }}
        [states.load.full]
        people = "150 kg"
        [weighings.one]
        state = "full"
        front = "1500 kg"
        rear = "1700 kg"
        "#
    );
    let job = format!(
        "[add.items.chest]\nplace = {{ from_rear = \"{from_rear_mm:.3} mm\", from_left = \"700 mm\", faces = \"left\" }}"
    );
    (text, job)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn heavier_and_further_back_is_never_better_for_the_rear_axle(
        kg in 1.0..400.0, more in 0.1..100.0, from_rear in 100.0..2500.0, back in 1.0..90.0,
    ) {
        let of = |kg: f64, from_rear: f64| {
            let (text, job) = van(kg, from_rear);
            let answer = after(&text, &job);
            (likely(&answer, "rear"), worst(&answer, "rear"), likely(&answer, "total"))
        };
        let base = of(kg, from_rear);
        let (heavier, further) = (of(kg + more, from_rear), of(kg, from_rear - back));
        prop_assert!(base.1 >= base.0);
        prop_assert!(heavier.0 > base.0 && heavier.1 > base.1);
        prop_assert!(further.0 > base.0 && further.1 > base.1);
        prop_assert!((further.2 - base.2).abs() < 1e-9);
        prop_assert!((base.2 - 3200.0 - kg).abs() < 1e-2);
    }

    #[test]
    fn what_is_moved_and_moved_back_changes_nothing(from_rear in 100.0..2500.0) {
        let (text, _) = van(40.0, 0.0);
        let text = format!(
            "{text}[items.chest]\nplace = {{ from_rear = \"{from_rear:.3} mm\", from_left = \"0 mm\" }}"
        );
        // The chest was aboard on the weighbridge: a job that leaves it alone has no effect at all.
        let answer = after(&text, "about = \"nothing\"");
        prop_assert_eq!(likely(&answer, "front"), 1500.0);
        prop_assert_eq!(worst(&answer, "rear"), 1720.0);
    }
}
