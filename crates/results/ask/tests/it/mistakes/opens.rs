//! What holds of every finding of every question, over builds in which this or that is not said:
//! each *open* says how to get what is missing, a *care* that rests on stand-ins leads with the
//! measurement that would settle it, and a cause that several questions share is one number.

use std::collections::{BTreeMap, BTreeSet};

use spile_answer::{Ask, Basis, Finding, Question, Reason, Sense, Verdict};
use spile_ask::{Report, ask};
use spile_build::Folder;

use super::{air, electric, room, stays};

/// A heater, a battery as an item, a trailer's worth of questions: kinds that the cases lack.
const REST: &str = r#"
[vehicle]
kind = "van"
wheelbase = "3600 mm"
rear_axle = "1200 mm"
track = "1700 mm"
inside = { length = "3.4 m", width = "1.8 m", height = "1.9 m" }
limits = { front = "1850 kg", rear = "2240 kg", total = "3500 kg" }
[states.load.full]
people = "150 kg"
[weighings.one]
state = "full"
front = "1500 kg"
rear = "1700 kg"
[parts.heater]
kind = "heater"
power = { running = "40 W", start = "12 A", cut_out = "10.5 V" }
[items.heater]
mass = "6 kg"
[runs.heater]
section = "2.5 mm2"
length = "3 m"
[parts.box]
kind = "lidded box"
volume = "32 L"
power = { running = "45 W" }
[items.box]
mass = "14 kg"
contents = "12 kg"
[parts.pump]
kind = "water pump"
power = { running = "84 W" }
[items.pump]
[runs.pump]
section = "1.5 mm2"
length = "3 m"
[bank]
kind = "flooded"
capacity = "95 Ah"
[sources.engine]
kind = "alternator"
current = "30 A"
[trips.summer]
latitude = "45°"
longitude = "5°"
months = [6, 7]
stays = "3 days"
drives = "2 h"
[wants]
people = 2
away = "6 days"
"#;

/// Every base, and every one of its siblings that lacks a line, or one `key = value` in a line.
fn builds() -> Vec<(String, Report)> {
    let bases = [
        room::GALLEY,
        room::PANEL,
        room::CHEST,
        stays::LOCKER,
        air::LOCKER,
        electric::FRIDGE,
        REST,
        "",
        "[parts.inverter]\nkind = \"inverter\"\npower = { running = \"9000 W\" }\n[items.inverter]\n[runs.inverter]\nsection = \"95 mm2\"\nlength = \"1 m\"\n[bank]\ncapacity = \"100 Ah\"\n",
    ];
    let mut texts: Vec<String> = Vec::new();
    for base in bases {
        texts.push(base.to_owned());
        let lines: Vec<&str> = base.lines().collect();
        for (at, line) in lines.iter().enumerate() {
            let with = |line: &str| {
                let mut all = lines.clone();
                all[at] = line;
                all.join("\n")
            };
            texts.push(with(""));
            let Some((head, inner)) = line.split_once("{ ") else { continue };
            let Some(inner) = inner.strip_suffix(" }") else { continue };
            let keys: Vec<&str> = inner.split("\", ").collect();
            for left_out in 0..keys.len() {
                let kept: Vec<String> =
                    keys.iter()
                        .enumerate()
                        .filter(|(key, _)| *key != left_out)
                        .map(|(_, key)| {
                            if key.ends_with('"') { (*key).to_owned() } else { format!("{key}\"") }
                        })
                        .collect();
                texts.push(with(&format!("{head}{{ {} }}", kept.join(", "))));
            }
        }
    }
    texts
        .into_iter()
        .filter_map(|text| {
            let folder = Folder::from_texts([("build.toml", text.as_str())]).ok()?;
            let report = ask("case", folder.build(), None);
            Some((text, report))
        })
        .collect()
}

fn findings(report: &Report) -> impl Iterator<Item = (Question, &Finding)> {
    report
        .answers
        .iter()
        .flat_map(|asked| asked.now().findings.iter().map(move |finding| (asked.question, finding)))
}

/// What an owner can lay hands on.
const WAYS: [&str; 18] = [
    "tape",
    "meter",
    "scale",
    "weigh",
    "papers",
    "label",
    "plate",
    "print",
    "read",
    "count",
    "look",
    "clamp",
    "calliper",
    "balance",
    "name the",
    "ask",
    "width times height",
    "tissue",
];

#[test]
fn every_open_says_how_to_get_what_is_missing() {
    let builds = builds();
    assert!(builds.len() > 100, "{} builds", builds.len());
    let mut seen: BTreeSet<String> = BTreeSet::new();
    let mut faults: BTreeMap<String, String> = BTreeMap::new();
    for (text, report) in &builds {
        for (question, finding) in findings(report) {
            if finding.verdict != Verdict::Open {
                continue;
            }
            let name = format!("{}.{}", question.word(), finding.id);
            let says_how = |ask: &Ask| {
                let how = ask.how.to_lowercase();
                !ask.input.is_empty() && WAYS.iter().any(|way| how.contains(way))
            };
            if finding.asks.is_empty() || !finding.asks.iter().all(says_how) {
                let fault = format!("{} {:?}\n{text}", finding.says, finding.asks);
                faults.entry(name.clone()).or_insert(fault);
            }
            seen.insert(name);
        }
    }
    let told: Vec<&String> = faults.values().collect();
    assert!(faults.is_empty(), "{:?} do not say how\n{told:#?}", faults.keys());
    assert!(seen.len() > 20, "only {seen:?} were open");
    for question in Question::ALL.into_iter().filter(|question| *question != Question::Meter) {
        let of = format!("{}.", question.word());
        assert!(seen.iter().any(|name| name.starts_with(&of)), "nothing open in {of}");
    }
}

#[test]
fn a_care_on_stand_ins_alone_leads_with_what_would_settle_it() {
    let mut seen = 0;
    for (text, report) in &builds() {
        for (question, finding) in findings(report) {
            let unsure = finding.verdict == Verdict::Care(Reason::Unsure);
            let typical = |name: &str| {
                finding.inputs.iter().any(|i| i.name == name && i.basis == Basis::Typical)
            };
            let alone = finding
                .inputs
                .iter()
                .filter(|input| input.high > input.low)
                .all(|input| input.basis == Basis::Typical);
            // Outside at the likely values it is the limit that is not firm, not the inputs.
            let within = finding.figure.zip(finding.limit.as_ref()).is_some_and(
                |(figure, limit)| match limit.sense {
                    Sense::AtMost => figure.likely <= limit.value,
                    Sense::AtLeast => figure.likely >= limit.value,
                },
            );
            if !unsure || !within || finding.inputs.is_empty() || !alone {
                continue;
            }
            let name = format!("{}.{}", question.word(), finding.id);
            let first = finding.asks.first();
            let first = first.unwrap_or_else(|| panic!("{name}: {}\n{text}", finding.says));
            assert!(typical(&first.input), "{name} leads with {}\n{text}", first.input);
            assert!(!first.how.is_empty(), "{name}");
            seen += 1;
        }
    }
    assert!(seen > 20, "only {seen} such findings");
}

/// The states that questions share are one: what is called the same is the same number of the same
/// basis, whoever asks; and a hotter day is hotter in all that know of it.
#[test]
fn what_questions_share_is_one_number() {
    for (text, report) in &builds() {
        let mut known: BTreeMap<&str, (Question, [u64; 3], Basis)> = BTreeMap::new();
        for (question, finding) in findings(report) {
            for input in finding.inputs.iter().filter(|input| SHARED.contains(&input.name.as_ref()))
            {
                let bounds = [input.low, input.likely, input.high].map(f64::to_bits);
                let first = known.entry(&input.name).or_insert((question, bounds, input.basis));
                assert_eq!(
                    (first.1, first.2),
                    (bounds, input.basis),
                    "{} of {:?} and {question:?}\n{text}",
                    input.name,
                    first.0
                );
            }
        }
    }
    let at = |day: &str| super::report(&super::but(air::LOCKER, "28 °C", day));
    let (mild, hot) = (at("28 °C"), at("36 °C"));
    let of = |report: &Report, question, id: &str| super::likely(super::one(report, question, id));
    for (question, id) in [(Question::Air, "locker.warm"), (Question::Cold, "fridge.warmest")] {
        let rise = of(&hot, question, id) - of(&mild, question, id);
        assert!((5.0..12.0).contains(&rise), "{id} rises by {rise} K with 8 K more in the cabin");
    }
}

/// The inputs that several questions take.
const SHARED: [&str; 4] = [
    "cabin on a hot day",
    "internal resistance of the bank",
    "main fuse with its holder",
    "posts, isolator, shunt and bus bars",
];
