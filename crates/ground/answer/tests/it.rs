//! The rule of the verdicts, and the unfavourable end of a figure.

use proptest::prelude::*;
use spile_answer::{
    Answer, Basis, Class, Figure, Finding, Given, Ledger, Limit, Question, Reason, Sense,
    TIGHT_SHARE, TOGETHER, Unit, Verdict, Worse, judge, swing,
};
use spile_quantity::{Length, Ranged, Resistance};

fn given(low: f64, likely: f64, high: f64) -> Given<Length> {
    Given {
        value: Ranged::new(Length::m(low), Length::m(likely), Length::m(high)).expect("in order"),
        basis: Basis::Measured,
        source: "build.toml:1".into(),
        how: "a tape".into(),
    }
}

fn limit(value: f64, sense: Sense, class: Class, firm: bool) -> Limit {
    Limit { value, sense, class, kind: "test", source: "by hand".into(), firm }
}

fn verdict(likely: f64, unfavourable: f64, limit: &Limit) -> Verdict {
    judge(&Figure { likely, unfavourable, unit: Unit::Millimetre }, limit)
}

/// job.md, "Verdicts": every row by hand.
#[test]
fn each_verdict_by_its_definition() {
    use Class::{Limit as Hard, Practice, Wish};
    use Verdict::{Care, Good, Open, Stop};
    let most = |class, firm| limit(100.0, Sense::AtMost, class, firm);
    let least = |class, firm| limit(100.0, Sense::AtLeast, class, firm);
    let cases = [
        (50.0, 60.0, most(Hard, true), Good),
        (50.0, 110.0, most(Hard, true), Care(Reason::Unsure)),
        (110.0, 120.0, most(Hard, true), Stop),
        (50.0, 99.0, most(Hard, true), Care(Reason::Tight)),
        (110.0, 120.0, most(Hard, false), Care(Reason::Unsure)),
        (110.0, 120.0, most(Practice, true), Care(Reason::Practice)),
        (50.0, 120.0, most(Practice, true), Care(Reason::Unsure)),
        (50.0, 99.0, most(Practice, true), Good),
        (110.0, 120.0, most(Wish, true), Care(Reason::Wish)),
        (50.0, 120.0, most(Wish, true), Care(Reason::Unsure)),
        (150.0, 140.0, least(Hard, true), Good),
        (150.0, 90.0, least(Hard, true), Care(Reason::Unsure)),
        (90.0, 80.0, least(Hard, true), Stop),
        (150.0, 101.0, least(Hard, true), Care(Reason::Tight)),
        (90.0, 80.0, least(Wish, true), Care(Reason::Wish)),
        (100.0, 100.0, most(Practice, true), Good),
        (f64::INFINITY, f64::INFINITY, most(Hard, true), Stop),
        (50.0, f64::INFINITY, most(Hard, true), Care(Reason::Unsure)),
        (f64::NEG_INFINITY, f64::NEG_INFINITY, least(Hard, true), Stop),
        (f64::NAN, 50.0, most(Hard, true), Open),
        (50.0, f64::NAN, most(Practice, true), Open),
    ];
    for (likely, unfavourable, limit, expected) in cases {
        assert_eq!(verdict(likely, unfavourable, &limit), expected, "{likely} {unfavourable}");
    }
}

#[test]
fn the_worst_of_stop_open_care_good_counts() {
    let finding = |id: &str, verdict| Finding::plain(id, "", verdict, "");
    let mut answer = Answer {
        question: Question::Fit,
        findings: vec![
            finding("a", Verdict::Good),
            finding("b", Verdict::Care(Reason::Practice)),
            finding("c", Verdict::Care(Reason::Unsure)),
            finding("d", Verdict::Care(Reason::Unsure)),
        ],
        assumed: Vec::new(),
    };
    assert_eq!(answer.verdict(), Verdict::Care(Reason::Unsure));
    assert_eq!(answer.leading().unwrap().id, "c");
    answer.findings.push(finding("e", Verdict::Open));
    assert_eq!(answer.verdict(), Verdict::Open);
    answer.findings.push(finding("f", Verdict::Stop));
    assert_eq!(answer.verdict(), Verdict::Stop);
    answer.findings.clear();
    assert_eq!(answer.verdict(), Verdict::Open, "nothing found is not good");
}

#[test]
fn a_cause_that_two_figures_share_is_taken_once_and_moves_once() {
    let mut ledger = Ledger::new();
    let width = given(0.9, 1.0, 1.1);
    let first = ledger.take("width", &width);
    let again = ledger.take("width", &width);
    assert_eq!(first.index(), again.index());
    assert_eq!(ledger.inputs().len(), 1);
    // Taken once it cancels: a difference of the same width is nought at every end.
    let [difference] =
        swing(&ledger, [Worse::Higher], |point| [(point.at(first) - point.at(again)).in_m()]);
    assert_eq!((difference.likely, difference.unfavourable), (0.0, 0.0));
    assert!(difference.movers.is_empty());
}

#[test]
fn a_figure_that_breaks_down_within_the_ranges_is_infinite_at_its_unfavourable_end() {
    let mut ledger = Ledger::new();
    let stud = Given {
        value: Ranged::new(Resistance::mohm(5.0), Resistance::mohm(20.0), Resistance::mohm(50.0))
            .expect("in order"),
        basis: Basis::Typical,
        source: "common practice".into(),
        how: "millivolts across it".into(),
    };
    let stud = ledger.take("stud", &stud);
    let [swung] = swing(&ledger, [Worse::Higher], |point| {
        let ohm = point.at(stud).in_mohm();
        [if ohm > 40.0 { f64::INFINITY } else { ohm }]
    });
    assert_eq!(swung.likely, 20.0);
    assert_eq!(swung.unfavourable, f64::INFINITY);
}

#[test]
fn what_is_asked_for_decides_the_verdict() {
    let mut ledger = Ledger::new();
    let depth = ledger.take("depth", &given(0.520, 0.529, 0.534));
    let body = ledger.take("body", &given(0.495, 0.495, 0.495));
    let [swung] =
        swing(&ledger, [Worse::Lower], |point| [(point.at(depth) - point.at(body)).in_mm()]);
    let limit = limit(30.0, Sense::AtLeast, Class::Limit, true);
    let finding =
        Finding::measured("behind", "left behind", Unit::Millimetre, &swung, limit, &ledger);
    assert_eq!(finding.verdict, Verdict::Care(Reason::Unsure));
    assert_eq!(finding.asks.len(), 1, "an exact input cannot be asked for");
    assert_eq!(finding.asks[0].input, "depth");
    assert_eq!(finding.asks[0].weight, 1.0);
    assert!((finding.figure.unwrap().unfavourable - 25.0).abs() < 1e-9);
}

/// What the first ask of a finding settles, with the figure worked out again.
fn settled(
    limit: Limit,
    ledger: &Ledger,
    worse: Worse,
    figure: impl Fn(&spile_answer::Point) -> f64,
) -> Finding {
    let [swung] = swing(ledger, [worse], |point| [figure(point)]);
    Finding::measured("id", "label", Unit::Millimetre, &swung, limit, ledger)
        .settling(&swung, ledger, figure)
}

/// A bay of 520 to 534 mm less a body of 495 mm is to leave 30 mm: 525 mm do. Where the body may be
/// 1 mm larger, 526 mm do. Of a hard limit the last fiftieth is tight: 0.6 mm more do.
#[test]
fn an_ask_says_at_which_value_the_verdict_turns() {
    for (off, class, value) in [
        (0.0, Class::Practice, "525 mm"),
        (0.001, Class::Practice, "526 mm"),
        (0.0, Class::Limit, "526 mm"),
        (0.001, Class::Limit, "527 mm"),
    ] {
        let mut ledger = Ledger::new();
        let depth = ledger.take("depth", &given(0.520, 0.529, 0.534));
        let body = ledger.take("body", &given(0.495 - off, 0.495, 0.495 + off));
        let finding =
            settled(limit(30.0, Sense::AtLeast, class, true), &ledger, Worse::Lower, |point| {
                (point.at(depth) - point.at(body)).in_mm()
            });
        assert_eq!(finding.verdict, Verdict::Care(Reason::Unsure));
        assert_eq!(finding.asks[0].turns, format!("good at {value} or more"));
    }
}

#[test]
fn an_ask_within_a_tight_limit_says_where_it_is_within() {
    let mut ledger = Ledger::new();
    let depth = ledger.take("depth", &given(0.9, 0.99, 1.01));
    let mut finding = settled(
        limit(1000.0, Sense::AtMost, Class::Limit, true),
        &ledger,
        Worse::Higher,
        |point| point.at(depth).in_mm().max(985.0),
    );
    assert_eq!(finding.verdict, Verdict::Care(Reason::Unsure));
    assert_eq!(finding.asks.remove(0).turns, "within the limit at 1000 mm or less");
}

#[test]
fn an_ask_of_what_is_passed_says_what_would_clear_it() {
    let mut ledger = Ledger::new();
    let stud = Given {
        value: Ranged::new(Resistance::mohm(5.0), Resistance::mohm(20.0), Resistance::mohm(50.0))
            .expect("in order"),
        basis: Basis::Typical,
        source: "common practice".into(),
        how: "millivolts across it".into(),
    };
    let stud = ledger.take("stud", &stud);
    // 10 A through 15 mΩ of cable and the stud lose 0.35 V; 0.3 V are allowed, which 15 mΩ keep.
    let loss = |point: &spile_answer::Point| 10.0 * (0.015 + point.at(stud).in_ohm());
    for (class, verdict) in
        [(Class::Practice, Verdict::Care(Reason::Practice)), (Class::Limit, Verdict::Stop)]
    {
        let finding = settled(limit(0.3, Sense::AtMost, class, true), &ledger, Worse::Higher, loss);
        assert_eq!(finding.verdict, verdict);
        assert_eq!(finding.asks.len(), 1);
        assert_eq!(
            finding.asks[0].turns,
            "within the limit at 15 mΩ or less, if all else is as likely"
        );
        assert_eq!(finding.asks[0].weight, 1.0);
    }
    // Where even the better end is outside, it is asked for and nothing is promised.
    let finding =
        settled(limit(0.16, Sense::AtMost, Class::Limit, true), &ledger, Worse::Higher, loss);
    assert_eq!((finding.asks.len(), finding.asks[0].turns.as_str()), (1, ""));
    let finding =
        settled(limit(1.0, Sense::AtMost, Class::Limit, true), &ledger, Worse::Higher, loss);
    assert_eq!((finding.verdict, finding.asks.len()), (Verdict::Good, 0));
}

#[test]
fn what_its_owner_cannot_get_better_is_not_asked_for() {
    let papers = Given { basis: Basis::Papers, ..given(0.480, 0.490, 0.500) };
    let table = Given { basis: Basis::Table, ..given(0.0, 0.001, 0.010) };
    let hardly = Given {
        basis: Basis::Typical,
        how: "Not worth measuring: it hardly counts.".into(),
        ..given(0.0, 0.001, 0.010)
    };
    let mut ledger = Ledger::new();
    let handles = [
        ("papers", &papers),
        ("table", &table),
        ("hardly", &hardly),
        ("tape", &given(0.0, 0.001, 0.010)),
    ]
    .map(|(name, given)| ledger.take(name, given));
    let finding =
        settled(limit(500.0, Sense::AtMost, Class::Limit, true), &ledger, Worse::Higher, |point| {
            handles.iter().map(|handle| point.at(*handle).in_mm()).sum()
        });
    assert_eq!(finding.verdict, Verdict::Care(Reason::Unsure));
    let asked: Vec<&str> = finding.asks.iter().map(|ask| ask.input.as_ref()).collect();
    assert_eq!(asked, ["tape"]);
    // Alone it settles nothing: the papers' range by itself passes the limit.
    assert_eq!(finding.asks[0].turns, "");
}

#[test]
fn what_is_no_number_anywhere_is_open() {
    let mut ledger = Ledger::new();
    let depth = ledger.take("depth", &given(0.520, 0.529, 0.534));
    let [swung] = swing(&ledger, [Worse::Lower], |point| {
        let mm = point.at(depth).in_mm();
        [if mm < 525.0 { f64::NAN } else { mm }]
    });
    assert!(swung.unfavourable.is_nan() && swung.likely == 529.0);
    let least = limit(500.0, Sense::AtLeast, Class::Limit, true);
    let finding = Finding::measured("id", "label", Unit::Millimetre, &swung, least, &ledger);
    assert_eq!(finding.verdict, Verdict::Open);
    assert_eq!(finding.asks[0].input, "depth");
    let no_limit = limit(f64::NAN, Sense::AtMost, Class::Limit, true);
    assert_eq!(verdict(1.0, 1.0, &no_limit), Verdict::Open);
}

proptest! {
    /// The value that an ask names does settle it, and one a good step worse does not.
    #[test]
    fn the_value_that_settles_a_verdict_does(
        low in 0.3_f64..0.5, range in 0.005_f64..0.1, likely in 0.3_f64..1.0, at in 0.05_f64..0.95,
        other in 0.0_f64..0.002, more in any::<bool>(),
    ) {
        let high = low + range;
        let likely = if more { low + range * (at + (1.0 - at) * likely) } else { low + range * at * (1.0 - likely) };
        let mut ledger = Ledger::new();
        let depth = ledger.take("depth", &given(low, likely, high));
        let body = ledger.take("body", &given(0.1 - other, 0.1, 0.1 + other));
        let sign = if more { 1.0 } else { -1.0 };
        let figure = |point: &spile_answer::Point| sign * (point.at(depth) - point.at(body)).in_mm();
        let border = (low + range * at - 0.1) * 1000.0;
        let least = limit(sign * border, Sense::AtLeast, Class::Practice, true);
        let finding = settled(least, &ledger, Worse::Lower, figure);
        prop_assume!(finding.verdict == Verdict::Care(Reason::Unsure));
        let Some(ask) = finding.asks.iter().find(|ask| ask.input == "depth" && !ask.turns.is_empty()) else {
            return Ok(());
        };
        let (value, way) = ask.turns.strip_prefix("good at ").unwrap().split_once(" mm or ").unwrap();
        prop_assert_eq!(way, if more { "more" } else { "less" });
        let value: f64 = value.parse().unwrap();
        // By hand: the figure meets its limit where the depth makes up for the body's worse end.
        let exact = border + 100.0 + sign * other * 1000.0;
        let beyond = sign * (value - exact);
        prop_assert!(beyond > -1e-6 && beyond <= range * 1000.0 / 10.0, "{value} for {exact}");
    }
}

proptest! {
    /// Of a figure that is linear in at most [`TOGETHER`] inputs, the unfavourable end is the
    /// worst of all corners, tried one by one.
    #[test]
    fn the_unfavourable_end_of_a_linear_figure_is_its_worst_corner(
        inputs in prop::collection::vec((0.1_f64..1.0, 0.0_f64..0.5, 0.0_f64..0.5, -3.0_f64..3.0), 1..=TOGETHER),
        higher in any::<bool>(),
    ) {
        let mut ledger = Ledger::new();
        let handles: Vec<_> = inputs
            .iter()
            .enumerate()
            .map(|(index, (likely, below, above, _))| {
                ledger.take(format!("input {index}"), &given(likely - below, *likely, likely + above))
            })
            .collect();
        let factors: Vec<f64> = inputs.iter().map(|input| input.3).collect();
        let worse = if higher { Worse::Higher } else { Worse::Lower };
        let [swung] = swing(&ledger, [worse], |point| {
            [handles.iter().zip(&factors).map(|(handle, factor)| point.at(*handle).in_m() * factor).sum()]
        });
        let corners = (0..1_u32 << inputs.len()).map(|corner| -> f64 {
            inputs
                .iter()
                .enumerate()
                .map(|(index, (likely, below, above, factor))| {
                    let end = if corner >> index & 1 == 1 { likely + above } else { likely - below };
                    end * factor
                })
                .sum()
        });
        let worst = if higher {
            corners.fold(f64::NEG_INFINITY, f64::max)
        } else {
            corners.fold(f64::INFINITY, f64::min)
        };
        prop_assert!((swung.unfavourable - worst).abs() < 1e-9, "{} {worst}", swung.unfavourable);
    }

    /// A verdict never gets better where the unfavourable end gets worse.
    #[test]
    fn worse_is_never_better(likely in 0.0_f64..200.0, more in 0.0_f64..200.0, still in 0.0_f64..200.0, firm in any::<bool>()) {
        for class in [Class::Limit, Class::Practice, Class::Wish] {
            let limit = limit(100.0, Sense::AtMost, class, firm);
            let once = verdict(likely, likely + more, &limit);
            let worse = verdict(likely, likely + more + still, &limit);
            prop_assert!(worse == Verdict::Care(Reason::Unsure) || worse >= once);
        }
    }
}

#[test]
fn tight_is_the_last_fiftieth() {
    assert_eq!(TIGHT_SHARE, 0.02);
    let hundred = limit(100.0, Sense::AtMost, Class::Limit, true);
    assert_eq!(verdict(90.0, 97.9, &hundred), Verdict::Good);
    assert_eq!(verdict(90.0, 98.1, &hundred), Verdict::Care(Reason::Tight));
    // Of nought there is no fiftieth.
    for least in [0.0, 0.1] {
        let limit = limit(0.0, Sense::AtLeast, Class::Limit, true);
        assert_eq!(verdict(5.0, least, &limit), Verdict::Good);
    }
}

/// Of three inputs of 4, 2 and 1 mm either way with 100 mm likely and 95.5 mm wanted, the first
/// and the second each bring the 93 mm that are left at worst to 95.5 or more; the third does not.
#[test]
fn every_input_that_turns_the_verdict_is_asked_for() {
    let mut ledger = Ledger::new();
    let handles = [("first", 0.004), ("second", 0.002), ("third", 0.001)]
        .map(|(name, off)| ledger.take(name, &given(1.0 - off, 1.0, 1.0 + off)));
    let finding = settled(
        limit(95.5, Sense::AtLeast, Class::Practice, true),
        &ledger,
        Worse::Lower,
        |point| handles.iter().map(|handle| point.at(*handle).in_mm()).sum::<f64>() - 2900.0,
    );
    let asked: Vec<_> = finding
        .asks
        .iter()
        .map(|ask| (ask.input.as_ref(), ask.decides(), ask.turns.as_str()))
        .collect();
    assert_eq!(
        asked,
        [
            ("first", true, "good at 998.5 mm or more"),
            ("second", true, "good at 1000.5 mm or more"),
            ("third", false, "")
        ]
    );
}
