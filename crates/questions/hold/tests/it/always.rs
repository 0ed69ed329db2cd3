//! What holds for every build.

use proptest::prelude::*;

use crate::{ask, figure, find, thing};

const FACES: [&str; 4] = ["below", "behind", "above", "beside"];

fn held(by: &str, count: u32, face: &str) -> String {
    let size = if by == "bolt" { "M6\", class = \"8.8" } else { "4.8 mm" };
    format!(
        "by = \"{by}\", size = \"{size}\", count = {count}, into = \"steel tube\", \
         wall = \"1.5 mm\", face = \"{face}\""
    )
}

fn used(kg: f64, count: u32, face: &str) -> f64 {
    figure(&ask(&thing(&format!("{kg:.3} kg"), "1 kg", &held("bolt", count, face))), "thing.fixing")
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn more_mass_is_never_better(kg in 6.0..200.0_f64, more in 0.0..100.0_f64, face in 0_usize..4) {
        prop_assert!(used(kg + more, 4, FACES[face]) >= used(kg, 4, FACES[face]) * (1.0 - 1e-9));
    }

    #[test]
    fn more_fasteners_are_never_worse(kg in 6.0..200.0_f64, count in 1_u32..4, face in 0_usize..4) {
        let [fewer, more] = [2, 4].map(|times| used(kg, times * count, FACES[face]));
        prop_assert!(more <= fewer * (1.0 + 1e-9));
    }

    #[test]
    fn a_crash_is_at_most_care_and_stand_ins_never_stop(kg in 6.0..900.0_f64, count in 2_u32..9, bolt in any::<bool>()) {
        let by = if bolt { "bolt" } else { "tapping screw" };
        let answer = ask(&thing(&format!("{kg:.3} kg"), "1 kg", &held(by, count, "behind")));
        prop_assert_ne!(find(&answer, "thing.crash").verdict.word(), "stop");
        if !bolt {
            prop_assert_ne!(answer.verdict().word(), "stop");
        }
    }
}
