//! What must hold of every build.

use proptest::prelude::*;

use crate::{ask, finding, likely};

/// A box in a bay, of some sizes, papers and weather.
fn text(volume: f64, per_day_wh: f64, hot_c: f64, conductance: f64) -> String {
    format!(
        r#"
        wants = {{ people = 2, away = "4 days", inside = "4 °C ± 1 °C" }}
        states.corner.hot-day.cabin = "{hot_c:.3} °C ± 2 °C"
        [bays.locker]
        opens = "left"
        size = {{ width = "640 mm", height = "900 mm", depth = "560 mm" }}
        place = {{ from_rear = "0 mm", from_right = "0 mm", above = "0 mm" }}
        conductance = "{conductance:.3} W/K"
        [parts.box]
        kind = "upright fridge"
        size = {{ width = "480 mm", height = "790 mm", depth = "500 mm" }}
        volume = "{volume:.3} L"
        power = {{ running = "55 W" }}
        warmest = "43 °C"
        [[parts.box.consumption]]
        ambient = "25 °C"
        inside = "5 °C"
        per_day = "{per_day_wh:.3} Wh"
        [items.box]
        part = "box"
        place = {{ in = "locker" }}
        "#
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn worse_is_never_better(
        volume in 30.0..120.0,
        per_day_wh in 150.0..700.0,
        hot_c in 22.0..42.0,
        conductance in 2.0..20.0,
    ) {
        let base = ask(&text(volume, per_day_wh, hot_c, conductance));
        for one in base.findings.iter().filter(|one| one.id != "days") {
            let figure = one.figure.unwrap();
            prop_assert!(figure.unfavourable >= figure.likely, "{}", one.id);
        }
        let days = finding(&base, "days").figure.unwrap();
        prop_assert!(days.unfavourable <= days.likely);
        let worse = [
            text(volume, per_day_wh + 20.0, hot_c, conductance),
            text(volume, per_day_wh, hot_c + 1.0, conductance),
            text(volume, per_day_wh, hot_c, conductance - 0.5),
        ];
        for other in worse {
            let other = ask(&other);
            // A compressor that never rests cannot give off more: then better walls warm the bay.
            let holds = likely(&other, "box.duty") < 100.0;
            let ids = ["box.duty", "use", "box.warmest"];
            for id in ids.into_iter().take(if holds { 3 } else { 2 }) {
                let (a, b) = (likely(&base, id), likely(&other, id));
                prop_assert!(b >= a - 1e-6, "{id}: {a} and then {b}");
            }
        }
    }

    #[test]
    fn days_are_in_proportion_to_litres(volume in 20.0..200.0) {
        let days = |litres: f64| likely(&ask(&text(litres, 400.0, 33.0, 5.0)), "days");
        prop_assert!((days(2.0 * volume) / days(volume) - 2.0).abs() < 1e-4);
    }
}
