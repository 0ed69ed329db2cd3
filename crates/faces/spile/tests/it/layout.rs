//! The layout of answers and workings, of a report made by hand.

use proptest::prelude::*;
use proptest::test_runner::Config;
use spile::show::{Shown, report, why};
use spile_answer::{Class, Figure, Question, Reason, Sense, Unit, Verdict};
use spile_ask::Report;

use crate::fits;
use crate::hand::{self, jobs};

fn plain(text: &str) -> String {
    let text = anstream::adapter::strip_str(text).to_string();
    fits(&text);
    text
}

fn shown(of: &Report, all: bool) -> String {
    let flags = if of.job.is_some() { " --job galley-fridge" } else { "" };
    plain(&report(of, &Shown { build: "heron", flags, jobs: &jobs(), all }))
}

#[test]
fn before_and_after_a_job() {
    insta::assert_snapshot!(shown(&hand::report(true), false));
}

#[test]
fn as_it_stands_with_all_that_is_good() {
    insta::assert_snapshot!(shown(&hand::report(false), true));
}

#[test]
fn the_working_of_a_finding() {
    let report = hand::report(true);
    let asked = report.answers.iter().find(|asked| asked.question == Question::Wire).unwrap();
    let pairs = asked.pairs();
    let pair = pairs.iter().find(|pair| pair.now.id == "fridge.start").unwrap();
    insta::assert_snapshot!(plain(&why(&report, Question::Wire, pair)));
}

proptest! {
    #![proptest_config(Config { failure_persistence: None, ..Config::default() })]

    #[test]
    fn no_line_is_too_long_whatever_a_finding_says(
        texts in proptest::collection::vec("\\PC{0,200}", 8),
        numbers in proptest::array::uniform8(any::<u64>().prop_map(f64::from_bits)),
        unit in 0_usize..12, at_most: bool, verdict in 0_usize..4,
    ) {
        let mut of = hand::report(true);
        let units = [
            Unit::Millimetre, Unit::Volt, Unit::Ampere, Unit::Percent, Unit::Day, Unit::Celsius,
            Unit::AmpereHour, Unit::Litre, Unit::Second, Unit::SquareMillimetre, Unit::Count,
            Unit::Kilogram,
        ];
        let verdicts = [Verdict::Good, Verdict::Care(Reason::Practice), Verdict::Stop, Verdict::Open];
        let sense = if at_most { Sense::AtMost } else { Sense::AtLeast };
        let figure = |numbers: &[f64]| Figure {
            likely: numbers[0], unfavourable: numbers[1], unit: units[unit],
        };
        let asked = &mut of.answers[3];
        let before = &mut asked.before.findings[2];
        before.figure = Some(figure(&numbers[..2]));
        let after = &mut asked.after.as_mut().unwrap().findings[3];
        after.figure = Some(figure(&numbers[2..4]));
        after.limit = Some(hand::limit(numbers[4], sense, Class::Practice, "practice"));
        after.verdict = verdicts[verdict];
        after.says.clone_from(&texts[0]);
        after.label.clone_from(&texts[1]);
        after.mend = Some(texts[2].clone());
        after.inputs[0].name = texts[3].clone().into();
        after.inputs[0].source = texts[4].clone().into();
        (after.inputs[0].low, after.inputs[0].likely) = (numbers[5], numbers[6]);
        after.working[0].numbers.clone_from(&texts[5]);
        of.measure_next[0].how.clone_from(&texts[6]);
        of.about.clone_from(&texts[7]);
        for all in [false, true] {
            shown(&of, all);
        }
        let pairs = of.answers[3].pairs();
        plain(&why(&of, Question::Wire, &pairs[3]));
    }
}

#[test]
fn colour_is_only_added() {
    let report = hand::report(true);
    let shown = Shown { build: "heron", flags: "", jobs: &[], all: false };
    let coloured = spile::show::report(&report, &shown);
    assert!(coloured.contains('\u{1b}'));
    for word in ["stop", "care", "open", "⬣", "△", "◌"] {
        assert!(plain(&coloured).contains(word), "{word}");
    }
}
