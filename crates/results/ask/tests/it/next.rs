//! What is measured first, where that is known by hand, and against a second opinion.

use spile_answer::{
    Answer, Basis, Class, Finding, Given, Ledger, Limit, Point, Question, Reason, Sense, Unit,
    Verdict, Worse, swing,
};
use spile_ask::{Asked, Next, ask, measure_next};
use spile_build::Folder;
use spile_quantity::{Length, Ranged};

/// An input of so many millimetres, more or less.
type Told = (&'static str, f64, f64);

/// A figure that is the sum of its inputs, each with a factor, and the least that it may be.
struct Sum {
    id: &'static str,
    question: Question,
    of: &'static [(usize, f64)],
    least: f64,
    class: Class,
}

/// Verdicts known by hand. Likely are 100, 100 and 100 mm, and each is typical.
///
/// `a`, ± 10, alone turns *one* (100 − 10 against 95), *two* and, from outside, *wish* (100 against
/// 105); `b`, ± 6, turns *two*; `c`, ± 1, turns nothing: *two* is 200 − 16 at worst, and 185 are
/// wanted, which `c` has no part in. *three* hangs on `b` and `c`: 200 − 7 against 193.5, which each
/// of both turns.
const SUMS: [Sum; 4] = [
    Sum {
        id: "one",
        question: Question::Fit,
        of: &[(0, 1.0)],
        least: 95.0,
        class: Class::Practice,
    },
    Sum {
        id: "two",
        question: Question::Cold,
        of: &[(0, 1.0), (1, 1.0)],
        least: 185.0,
        class: Class::Limit,
    },
    Sum { id: "wish", question: Question::Bank, of: &[(0, 1.0)], least: 105.0, class: Class::Wish },
    Sum {
        id: "three",
        question: Question::Axle,
        of: &[(1, 1.0), (2, 1.0)],
        least: 193.5,
        class: Class::Practice,
    },
];

const INPUTS: [Told; 3] = [("a", 100.0, 10.0), ("b", 100.0, 6.0), ("c", 100.0, 1.0)];

fn finding(sum: &Sum, inputs: &[Told]) -> Finding {
    let mut ledger = Ledger::new();
    let handles: Vec<_> = sum
        .of
        .iter()
        .map(|(index, factor)| {
            let (name, likely, off) = inputs[*index];
            let given = Given {
                value: Ranged {
                    low: Length::mm(likely - off),
                    likely: Length::mm(likely),
                    high: Length::mm(likely + off),
                },
                basis: Basis::Typical,
                source: "common practice".into(),
                how: "A tape.".into(),
            };
            (ledger.take(name, &given), *factor)
        })
        .collect();
    let figure = |point: &Point| -> f64 {
        handles.iter().map(|(handle, factor)| point.at(*handle).in_mm() * factor).sum()
    };
    let [swung] = swing(&ledger, [Worse::Lower], |point| [figure(point)]);
    let limit = Limit {
        value: sum.least,
        sense: Sense::AtLeast,
        class: sum.class,
        kind: "space",
        source: "by hand".into(),
        firm: true,
    };
    Finding::measured(sum.id, sum.id, Unit::Millimetre, &swung, limit, &ledger)
        .settling(&swung, &ledger, figure)
}

fn asked(sums: &[Sum], inputs: &[Told]) -> Vec<Asked> {
    sums.iter()
        .map(|sum| {
            let findings = vec![finding(sum, inputs)];
            let before = Answer { question: sum.question, findings, assumed: Vec::new() };
            Asked { question: sum.question, before, after: None }
        })
        .collect()
}

/// The names of the findings that an input decides alone.
fn decided(next: &Next) -> Vec<&str> {
    let hangs = next.hangs.iter().filter(|hangs| hangs.is_decided());
    hangs.map(|hangs| hangs.finding.as_str()).collect()
}

#[test]
fn the_input_that_decides_the_most_verdicts_comes_first() {
    let asked = asked(&SUMS, &INPUTS);
    let words: Vec<_> = asked.iter().map(|asked| asked.now().verdict()).collect();
    let unsure = Verdict::Care(Reason::Unsure);
    assert_eq!(words, [unsure, unsure, Verdict::Care(Reason::Wish), unsure]);
    let next = measure_next(&asked);
    let order: Vec<_> = next.iter().map(|next| (next.input.as_str(), decided(next))).collect();
    assert_eq!(
        order,
        [
            // A wish that is missed is worse than what is unsure.
            ("a", vec!["wish", "one", "two"]),
            ("b", vec!["two", "three"]),
            ("c", vec!["three"]),
        ]
    );
    let turns = |input: usize, id: &str| {
        let hangs = next[input].hangs.iter().find(|hangs| hangs.finding == id).unwrap();
        hangs.turns.as_str()
    };
    assert_eq!(turns(0, "one"), "good at 95 mm or more");
    assert_eq!(turns(0, "wish"), "within the limit at 105 mm or more, if all else is as likely");
    // By hand: 185 and its fiftieth, 188.7, less the 94 of `b` at worst.
    assert_eq!(turns(0, "two"), "good at 95 mm or more");
}

/// The second opinion: close the range of one input at its likely value and judge everything
/// again. Whatever gets better is among what the input is said to decide.
#[test]
fn what_gets_better_with_an_input_known_exactly_is_decided_by_it() {
    let open = asked(&SUMS, &INPUTS);
    let next = measure_next(&open);
    let mut improved = 0;
    for (index, (name, ..)) in INPUTS.iter().enumerate() {
        let mut inputs = INPUTS;
        inputs[index].2 = 0.0;
        let closed = asked(&SUMS, &inputs);
        let said = next.iter().find(|next| next.input == *name).map(decided).unwrap_or_default();
        for (before, after) in open.iter().zip(&closed) {
            let (before, after) = (&before.now().findings[0], &after.now().findings[0]);
            if after.verdict < before.verdict {
                improved += 1;
                assert!(said.contains(&before.id.as_str()), "{name} betters {}", before.id);
            }
        }
    }
    assert!(improved >= 4, "{improved}");
}

/// Two runs each have a feed: of one name, but not one thing.
#[test]
fn things_of_one_name_are_told_apart_by_their_numbers() {
    let longer = [("a", 100.5, 10.0)];
    let mut both = asked(&SUMS[..1], &INPUTS);
    both.extend(asked(&SUMS[..1], &longer));
    let next = measure_next(&both);
    assert_eq!(next.iter().map(Next::decided).collect::<Vec<_>>(), [1, 1]);
}

#[test]
fn what_is_open_comes_before_what_is_unsure_where_each_decides_one() {
    let mut asked = asked(&SUMS[..1], &INPUTS);
    let mut missing = Finding::plain("open", "open", Verdict::Open, "");
    missing.asks.push(spile_answer::Ask::missing("d", "Its papers.", "whether it goes"));
    let mut stopped = Finding::plain("stop", "stop", Verdict::Stop, "");
    stopped.asks.push(spile_answer::Ask::missing("e", "Its papers.", "whether it goes"));
    asked[0].before.findings.extend([missing, stopped]);
    let next = measure_next(&asked);
    let order: Vec<_> = next.iter().map(|next| next.input.as_str()).collect();
    // A stop rests on what is known: its input is not asked for.
    assert_eq!(order, ["d", "a"]);
}

/// After the few answers that `spile new` asks for, what is asked next is for a tape, a meter, a
/// thermometer, a scale, an eye or the papers, and comes in an order that leads with what decides.
#[test]
fn a_first_build_leads_to_things_that_one_can_get() {
    let next = super::twelve_lines().measure_next;
    let tools = [
        "tape",
        "papers",
        "label",
        "meter",
        "thermometer",
        "volts",
        "weigh",
        "scale",
        "plate",
        "read",
        "note",
        "litres",
        "count",
        "tally",
        "size",
        "watts",
        "amp",
        "name the bay",
        "bag of ice",
        "strip of paper",
        "follow",
        "look",
    ];
    let deciding: Vec<_> = next.iter().filter(|next| next.decided() > 0).collect();
    for next in &deciding {
        let how = next.how.to_lowercase();
        assert!(tools.iter().any(|tool| how.contains(tool)), "{}: {how}", next.input);
        assert!(!how.starts_with("not worth"), "{}", next.input);
    }
    let most = deciding[0].decided();
    assert!(most >= 2, "nothing decides more than one verdict");
    // What nothing can be said without comes before what is only unsure.
    let ones = deciding.iter().filter(|next| next.decided() == 1);
    let is_open: Vec<bool> = ones.map(|next| next.hangs[0].verdict == Verdict::Open).collect();
    assert!(is_open[0] && is_open.is_sorted_by(|a, b| a >= b), "{is_open:?}");
}

/// Heron with one stand-in known exactly: each verdict that gets better was said to hang on it.
#[test]
fn heron_with_a_stand_in_known_is_judged_as_measure_next_says() {
    let open = super::heron_report(None);
    let mut all = 0;
    for (input, file, old, new) in [
        ("temperature inside", BUILD, "[wants]\n", "[wants]\ninside = \"4 °C\"\n"),
        ("cold food, a person and day", BUILD, "[wants]\n", "[wants]\nlitres = \"5.4 L\"\n"),
        (
            "distance of platform from the floor",
            "jobs/galley-fridge.toml",
            "above = \"303 mm\"",
            "above = \"303 mm ± 0.1 mm\"",
        ),
    ] {
        let next = open.measure_next.iter().find(|next| next.input == input);
        let next = next.unwrap_or_else(|| panic!("{input} is not asked for"));
        let closed = heron_with(file, old, new);
        for (open, closed) in open.answers.iter().zip(&closed.answers) {
            for after in &closed.now().findings {
                let before = open.now().findings.iter().find(|before| before.id == after.id);
                if before.is_some_and(|before| after.verdict < before.verdict) {
                    all += 1;
                    let said = |hangs: &spile_ask::Hangs| {
                        hangs.question == open.question && hangs.finding == after.id
                    };
                    assert!(next.hangs.iter().any(said), "{input} betters {}", after.id);
                }
            }
        }
    }
    assert!(all > 0, "no verdict got better: nothing was tried");
}

/// The file of the vehicle as it stands.
const BUILD: &str = "build.toml";

/// Heron after its job, with one stretch of one of its files told otherwise.
fn heron_with(file: &str, old: &str, new: &str) -> spile_ask::Report {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron");
    let mut texts = Vec::new();
    for folder in ["", "parts", "jobs"] {
        let mut files: Vec<_> = std::fs::read_dir(root.join(folder)).unwrap().collect();
        files.sort_by_key(|file| file.as_ref().unwrap().path());
        for file in files.into_iter().map(|file| file.unwrap().path()) {
            if file.extension().is_some_and(|ending| ending == "toml") {
                let name = file.strip_prefix(&root).unwrap().to_string_lossy().into_owned();
                texts.push((name, std::fs::read_to_string(&file).unwrap()));
            }
        }
    }
    let text = &mut texts.iter_mut().find(|(name, _)| name == file).unwrap().1;
    assert!(text.contains(old), "{file} has no `{old}`");
    *text = text.replacen(old, new, 1);
    let texts: Vec<_> = texts.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
    let folder = Folder::from_texts(texts).expect("heron is in order");
    let planned = folder.plan("galley-fridge", None).expect("the job goes together");
    ask("heron", folder.build(), Some(&planned))
}
