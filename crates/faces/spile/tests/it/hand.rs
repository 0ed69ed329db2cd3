//! A report made by hand, with every kind of finding in it. Its figures are invented.

use spile_answer::{
    Answer, Ask, Basis, Class, Figure, Finding, Input, Limit, Question, Reason, Sense, Step, Unit,
    Verdict,
};
use spile_ask::{Asked, Hangs, Next, Report};
use spile_build::JobInfo;

pub fn jobs() -> Vec<JobInfo> {
    let option = |name: &str, about: &str| (name.to_owned(), about.to_owned());
    vec![
        JobInfo {
            name: "galley-fridge".to_owned(),
            about: "a bigger fridge in the galley".to_owned(),
            options: vec![
                option("upright", "upright fridge, 92 L"),
                option("two-boxes", "two lidded boxes"),
            ],
            done: None,
            after: Vec::new(),
        },
        JobInfo {
            name: "roof-fan".to_owned(),
            about: String::new(),
            options: Vec::new(),
            done: Some("2026-03-14".to_owned()),
            after: Vec::new(),
        },
    ]
}

pub fn limit(value: f64, sense: Sense, class: Class, kind: &'static str) -> Limit {
    Limit { value, sense, class, kind, source: "the papers of the part".into(), firm: true }
}

pub fn input(name: &'static str, basis: Basis, numbers: [f64; 3], kind: &'static str) -> Input {
    let [low, likely, high] = numbers;
    let unit = match kind {
        "resistance" => "Ω",
        "length" => "m",
        "area" => "m²",
        _ => "1",
    };
    Input {
        name: name.into(),
        kind,
        unit,
        low,
        likely,
        high,
        basis,
        source: if basis == Basis::Typical { "common practice" } else { "build.toml:140" }.into(),
        how: "millivolts across it while the fridge runs, divided by the amps".into(),
    }
}

fn figured(
    id: &str,
    label: &str,
    verdict: Verdict,
    [likely, unfavourable]: [f64; 2],
    unit: Unit,
    limit: Limit,
) -> Finding {
    let mut finding = Finding::plain(id, label, verdict, "");
    finding.figure = Some(Figure { likely, unfavourable, unit });
    finding.limit = Some(limit);
    finding
}

fn ask(input: &'static str) -> Ask {
    Ask {
        input: input.into(),
        how: "millivolts across it while the fridge runs, divided by the amps".into(),
        settles: "whether the fridge starts on a low battery".to_owned(),
        turns: "good at 20 mΩ or less".to_owned(),
        weight: 1.0,
    }
}

fn fit(after: bool) -> Answer {
    let space = limit(0.0, Sense::AtLeast, Class::Limit, "space");
    let air = limit(10.0, Sense::AtLeast, Class::Limit, "papers");
    let side = if after { [20.5, 19.5] } else { [82.0, 80.0] };
    let back = if after { [-3.2, -8.0] } else { [95.0, 93.0] };
    let good = Verdict::Good;
    let verdict = if after { Verdict::Stop } else { good };
    let mut findings = vec![
        figured("left", "air on the left", good, side, Unit::Millimetre, air.clone()),
        figured("right", "air on the right", good, side, Unit::Millimetre, air),
        figured("behind", "room behind", verdict, back, Unit::Millimetre, space)
            .saying("The body reaches 3.2 mm into the wall behind, which leans in above 700 mm.")
            .mended(after.then(|| "move the bay's face 12 mm into the aisle".to_owned())),
    ];
    if after {
        let says = "The service cable must be pulled out 300 mm with it before its plug can be \
                    reached, and the aisle leaves that.";
        findings.push(Finding::plain("way-out", "the way out", Verdict::Care(Reason::Tight), says));
    }
    Answer { question: Question::Fit, findings, assumed: Vec::new() }
}

fn wire(after: bool) -> Answer {
    let cut_out = limit(10.9, Sense::AtLeast, Class::Limit, "cut-out");
    let practice = limit(3.0, Sense::AtMost, Class::Practice, "practice");
    let fuse = limit(15.0, Sense::AtMost, Class::Limit, "papers");
    let volt = if after { [11.41, 10.62] } else { [12.15, 11.9] };
    let drop = if after { [4.93, 8.2] } else { [2.4, 3.2] };
    let unsure = Verdict::Care(if after { Reason::Unsure } else { Reason::Tight });
    let mut start =
        figured("fridge.start", "volts at the fridge, at start", unsure, volt, Unit::Volt, cut_out)
            .saying(
                "On a low battery the fridge sees 11.41 V as it starts, and 10.62 V if the stud \
                 in the galley is a bad one; below 10.9 V it switches itself off.",
            )
            .mended(Some("run a 10 mm² return to the bus; then 11.92 V at worst".to_owned()))
            .worked(vec![
                Step {
                    what: "resistance of the feed".into(),
                    formula: "R = ρ·(1 + α·(T − 20 °C))·L / A".into(),
                    numbers: "0.017241 · 1.059 · 7.2 / 1.5 = 87.6 mΩ".to_owned(),
                    source: "IEC 60028:1925".into(),
                },
                Step {
                    what: "volts at the fridge".into(),
                    formula: "U = U₀ − I·ΣR".into(),
                    numbers: String::new(),
                    source: "".into(),
                },
            ]);
    start.inputs = vec![
        input("stud in the galley", Basis::Typical, [0.005, 0.02, 0.05], "resistance"),
        input("length of the feed", Basis::Measured, [7.19, 7.2, 7.21], "length"),
        input("section of the feed", Basis::Papers, [1.5e-6; 3], "area"),
        input(
            "share of the day that the compressor runs on a hot day with the door opened often",
            Basis::Typical,
            [0.3, 0.45, 0.75],
            "share",
        ),
    ];
    start.asks = vec![ask("stud in the galley")];
    let reason = Verdict::Care(Reason::Practice);
    let drop = figured("fridge.drop", "drop to the fridge", reason, drop, Unit::Percent, practice);
    let fuse =
        figured("fridge.fuse", "fuse of way 5", Verdict::Good, [10.0; 2], Unit::Ampere, fuse);
    let mut findings = vec![fuse, drop, start];
    if after {
        let inrush = limit(9.6, Sense::AtLeast, Class::Practice, "practice");
        let broken = [f64::NEG_INFINITY; 2];
        let pump = figured("pump.start", "volts at the pump", reason, broken, Unit::Volt, inrush);
        findings.insert(0, pump);
    }
    let assumed = vec![
        "the bank, its main fuse, the bus and the fuse block lie in one line".to_owned(),
        "nothing else runs at the same time.".to_owned(),
    ];
    Answer { question: Question::Wire, findings, assumed }
}

fn cold(after: bool) -> Answer {
    let wish = limit(6.0, Sense::AtLeast, Class::Wish, "wish");
    let days = if after { [5.86, 5.1] } else { [2.1, 1.8] };
    let care = Verdict::Care(Reason::Wish);
    let says = "92 L hold 5.9 days of food for two; 6 days are wanted.";
    let days = figured("days", "days of food", care, days, Unit::Day, wish).saying(says);
    let heat = limit(100.0, Sense::AtMost, Class::Limit, "physics");
    let duty =
        figured("duty", "share of time it runs", Verdict::Good, [46.0, 71.0], Unit::Percent, heat);
    let mut open =
        Finding::plain("warm-up", "warm-up time", Verdict::Open, "The mass of food is not known.");
    open.asks = vec![ask("mass of food")];
    let mut findings = vec![days, duty];
    if !after {
        findings.push(open);
    }
    Answer { question: Question::Cold, findings, assumed: Vec::new() }
}

fn not_computed(question: Question) -> Answer {
    let says = "This is not computed yet, so nothing can be said of it.";
    let finding = Finding::plain("not-computed", "not computed yet", Verdict::Open, says);
    Answer { question, findings: vec![finding], assumed: Vec::new() }
}

/// The report of a job, or without one of the build as it stands.
pub fn report(with_job: bool) -> Report {
    let answer = |question: Question, after: bool| match question {
        Question::Fit => fit(after),
        Question::Wire => wire(after),
        Question::Cold => cold(after),
        Question::Hold => Answer { question, findings: Vec::new(), assumed: Vec::new() },
        other => not_computed(other),
    };
    let answers: Vec<Asked> = Question::ALL
        .into_iter()
        .map(|question| Asked {
            question,
            before: answer(question, false),
            after: with_job.then(|| answer(question, true)),
        })
        .collect();
    let next = |input: &str, hangs: &[(Question, &str, &str)], says: &str| Next {
        input: input.to_owned(),
        how: "millivolts across it while the fridge runs, divided by the amps".to_owned(),
        hangs: hangs
            .iter()
            .map(|&(question, finding, turns)| Hangs {
                question,
                finding: finding.to_owned(),
                verdict: Verdict::Care(Reason::Unsure),
                weight: 1.0,
                turns: turns.to_owned(),
            })
            .collect(),
        says: says.to_owned(),
    };
    Report {
        build: "heron".to_owned(),
        about: "long high-roof panel van for two".to_owned(),
        job: with_job.then(|| "galley-fridge".to_owned()),
        option: with_job.then(|| "upright".to_owned()),
        answers,
        measure_next: vec![
            next(
                "stud in the galley",
                &[(Question::Wire, "fridge.start", "good at 20 mΩ or less")],
                "",
            ),
            next(
                "length of the feed",
                &[(Question::Wire, "fridge.start", "")],
                "how much it loses",
            ),
            next(
                "mass of food",
                &[(Question::Cold, "warm-up", "")],
                "how long it takes to cool down",
            ),
        ],
    }
}
