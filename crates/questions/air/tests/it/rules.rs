//! What holds for every build.

use proptest::prelude::*;
use spile_answer::Verdict;

use crate::{FRIDGE, INVERTER, ask, build, likely, locker};

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 24, failure_persistence: None, ..ProptestConfig::default()
    })]

    #[test]
    fn larger_openings_are_never_warmer(area in 20_u32..250, more in 5_u32..100, both: bool) {
        let at = |area: u32| {
            let air = format!(
                "air.inlet = {{ area = \"{area} cm2\", above = \"50 mm\" }}\n\
                 air.outlet = {{ area = \"{area} cm2\", above = \"800 mm\" }}"
            );
            let inverter = if both { INVERTER } else { "" };
            likely(&ask(&locker(&air, &format!("{FRIDGE}{inverter}"))), "locker.warm")
        };
        prop_assert!(at(area + more) <= at(area) + 1e-6);
    }

    #[test]
    fn a_hotter_cabin_makes_a_hotter_bay(t in 20_u32..40, more in 1_u32..6) {
        let at = |t: u32| {
            let text = locker(crate::WELL, FRIDGE);
            likely(&ask(&format!("states.corner.hot-day.cabin = \"{t} °C\"\n{text}")), "locker.warm")
        };
        prop_assert!(at(t + more) > at(t));
    }

    #[test]
    fn guesses_alone_never_stop(area in 1_u32..300, papers in 100_u32..300, warmest in 30_u32..45) {
        let air = format!("air.inlet.area = \"about {area} cm2\"\nair.outlet.area = \"about {area} cm2\"");
        let fridge = FRIDGE
            .replace("inlet = \"160 cm2\"", &format!("inlet = \"{papers} cm2\""))
            .replace("43 °C", &format!("about {warmest} °C"));
        let answer = ask(&locker(&air, &format!("{fridge}{INVERTER}")));
        for found in &answer.findings {
            prop_assert_ne!(found.verdict, Verdict::Stop, "{}", found.id);
            prop_assert!(!found.says.is_empty() && !found.label.is_empty());
            prop_assert!(found.asks.iter().all(|ask| !ask.settles.is_empty() && !ask.how.is_empty()));
        }
    }
}

#[test]
fn the_same_build_has_the_same_answer() {
    let build = build(&locker(crate::WELL, &format!("{FRIDGE}{INVERTER}")));
    assert_eq!(
        format!("{:?}", spile_air::answer(&build)),
        format!("{:?}", spile_air::answer(&build))
    );
}
