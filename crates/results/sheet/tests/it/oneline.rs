//! The network as a one-line diagram: whole, in order, and readable at any size.

use std::fmt::Write;

use proptest::prelude::*;
use roxmltree::Document;
use spile_answer::Question;
use spile_build::Build;
use spile_sheet::ink::Box2;
use spile_sheet::{Drawing, Width, drawings};

use crate::seen::{is_sound, lettering, number};
use crate::{build, heron};

const WIDTHS: [Width; 2] = [Width::Wide, Width::Narrow];

/// The diagrams of a build, each sound and with no conductor through lettering.
#[track_caller]
fn drawn(before: &Build, after: Option<&Build>) -> Vec<Drawing> {
    let all: Vec<Drawing> =
        WIDTHS.iter().flat_map(|width| drawings(Question::Wire, before, after, *width)).collect();
    for drawing in &all {
        is_sound(drawing);
        no_conductor_crosses_a_label(drawing);
    }
    all.into_iter().filter(|one| one.title.starts_with("One-line diagram")).collect()
}

#[track_caller]
fn no_conductor_crosses_a_label(drawing: &Drawing) {
    let parsed = Document::parse(&drawing.svg.0).expect("a drawing");
    let letters = lettering(&parsed);
    let wires = parsed.descendants().filter(|node| {
        node.attribute("class").is_some_and(|class| class.split(' ').any(|one| one == "wire"))
    });
    for wire in wires {
        let [x1, y1, x2, y2] = ["x1", "y1", "x2", "y2"].map(|name| number(wire, name));
        assert!(x1 == x2 || y1 == y2, "a conductor lies aslant");
        let half =
            wire.attribute("stroke-width").map_or(0.75, |text| text.parse::<f64>().unwrap() / 2.0);
        let at = Box2::of([x1, y1], [x2, y2]).grown(half);
        // The sleeve's letters stand on the sleeve, which covers its conductor.
        for one in letters.iter().filter(|one| !one.on_sleeve) {
            assert!(!one.at.touches(&at), "a conductor goes through {}", one.text);
        }
    }
}

fn things(drawing: &Drawing) -> Vec<String> {
    let parsed = Document::parse(&drawing.svg.0).expect("a drawing");
    parsed
        .descendants()
        .filter_map(|node| node.attribute("data-thing").map(str::to_owned))
        .collect()
}

#[test]
fn every_run_of_heron_is_on_the_diagram_before_and_after() {
    for option in ["upright", "two-boxes"] {
        let [before, after] = heron(option);
        for drawing in drawn(&before, Some(&after)) {
            let things = things(&drawing);
            for run in before.runs.keys().chain(after.runs.keys()) {
                assert!(things.contains(run), "{run} among {things:?}");
            }
            for part in ["main", "bus", "body"] {
                assert!(things.iter().any(|thing| thing == part), "{part}");
            }
        }
    }
}

#[test]
fn volts_are_those_of_the_answer() {
    // One run alone: the loss that the answer tells of is that between the bank and the item.
    let text = r#"
[parts.fridge]
kind = "upright fridge"
power = { running = "58 W", start = "8.5 A", cut_out = "10.9 V" }
[items.fridge]
[runs.fridge]
section = "1.5 mm2"
length = "7.2 m"
[bank]
capacity = "100 Ah"
"#;
    let build = build(text);
    let answer = spile_wire::answer(&build);
    let percent =
        answer.findings.iter().find(|one| one.id == "fridge.drop").unwrap().figure.unwrap().likely;
    let found = spile_circuit::scene::everything_on(&build).expect("a circuit");
    let [plus, minus] = found.runs[0].item;
    let lost_v = found.post.in_v() - (plus.in_v() - minus.in_v());
    assert!((100.0 * lost_v / 12.0 - percent).abs() < 1e-6, "{lost_v} V, {percent} %");
    let start =
        answer.findings.iter().find(|one| one.id == "fridge.start").unwrap().figure.unwrap().likely;
    for drawing in drawn(&build, None) {
        for words in [format!("{:.2} V", plus.in_v() - minus.in_v()), format!("start {start:.2}")] {
            assert!(drawing.svg.0.contains(&words), "{words}");
        }
    }
}

#[test]
fn what_the_job_takes_out_is_dashed_and_what_it_brings_is_in_accent() {
    let [before, after] = heron("two-boxes");
    for drawing in drawn(&before, Some(&after)) {
        assert!(
            drawing.svg.0.contains(r#"class="wire a""#) && !drawing.svg.0.contains("wire gone")
        );
    }
    for drawing in drawn(&after, Some(&before)) {
        assert!(
            drawing.svg.0.contains(r#"class="wire gone""#) && drawing.svg.0.contains("goes out")
        );
    }
}

#[test]
fn without_runs_or_a_bank_nothing_is_made_up() {
    assert!(drawings(Question::Wire, &build(""), None, Width::Wide).is_empty());
    let text = "[parts.lamp]\nkind = \"light\"\npower = { running = \"5 W\" }\n[items.lamp]\n[runs.lamp]\nsection = \"1 mm2\"\nlength = \"2 m\"\n";
    for drawing in drawn(&build(text), None) {
        assert!(drawing.svg.0.contains("volts not known") && !drawing.svg.0.contains(" V<"));
    }
}

/// The places of all lettering of the demo: a change of it is to be looked at.
#[test]
fn the_layout_of_heron_stays() {
    let [before, after] = heron("upright");
    for (drawing, name) in drawn(&before, Some(&after)).iter().zip(["wide", "narrow"]) {
        let parsed = Document::parse(&drawing.svg.0).expect("a drawing");
        let mut lines = String::new();
        for one in lettering(&parsed) {
            writeln!(lines, "{:7.1} {:7.1}  {}", one.at.left, one.at.bottom, one.text).unwrap();
        }
        insta::assert_snapshot!(format!("heron_{name}"), lines);
    }
}

/// One run of a random network.
#[derive(Debug, Clone)]
struct Random {
    section: &'static str,
    length_m: f64,
    by_body: bool,
    fuse: Option<u32>,
    watts: f64,
    about: String,
    along: String,
}

fn random() -> impl Strategy<Value = Random> {
    let section = prop::sample::select(vec![
        "0.75 mm2", "1.5 mm2", "2.5 mm2", "6 mm2", "35 mm2", "14 AWG", "2/0 AWG",
    ]);
    let fuse =
        prop::option::of(prop::sample::select(vec![1, 2, 3, 4, 5, 10, 15, 20, 25, 30, 35, 40]));
    let words = "[ a-zA-Z0-9&<>,'éß×]{0,40}";
    (section, 0.2..12.0_f64, any::<bool>(), fuse, 0.5..150.0_f64, words, words).prop_map(
        |(section, length_m, by_body, fuse, watts, about, along)| Random {
            section,
            length_m,
            by_body,
            fuse,
            watts,
            about,
            along,
        },
    )
}

fn network(runs: &[Random]) -> String {
    let mut text = String::from(
        "[bank]\ncapacity = \"200 Ah\"\n[block]\nfeed = { section = \"50 mm2\", length = \"0.8 m\" }\n",
    );
    for (at, run) in runs.iter().enumerate() {
        let Random { section, length_m, watts, about, along, .. } = run;
        let back = if run.by_body {
            format!("return = {{ by = \"body\", section = \"{section}\", length = \"0.4 m\" }}\n")
        } else {
            String::new()
        };
        write!(
            text,
            "[parts.p{at}]\nkind = \"light\"\npower = {{ running = \"{watts:.1} W\" }}\n\
             [items.i{at}]\nabout = \"{about}\"\npart = \"p{at}\"\n\
             [runs.r{at}]\nto = \"i{at}\"\nsection = \"{section}\"\nlength = \"{length_m:.1} m\"\nalong = \"{along}\"\n{back}"
        )
        .unwrap();
        let fuse = run.fuse.map_or_else(String::new, |amps| format!("fuse = \"{amps} A\"\n"));
        write!(text, "[block.ways.{}]\n{fuse}run = \"r{at}\"\n", at + 1).unwrap();
    }
    text
}

/// Forty runs, the most that a diagram is made for, each with what fits it.
#[test]
fn forty_runs_are_readable() {
    let runs: Vec<Random> = (0..40)
        .map(|at| Random {
            section: ["2.5 mm2", "4 mm2", "14 AWG"][at % 3],
            length_m: 0.5 + at as f64 / 20.0,
            by_body: at % 4 == 3,
            fuse: Some([5, 7, 10][at % 3]),
            watts: 2.0,
            about: format!("lamp & reading light number {at} over the <long> bench"),
            along: "along the left side, over the wheel arch and up".to_owned(),
        })
        .collect();
    let build = build(&network(&runs));
    for drawing in drawn(&build, None) {
        let things = things(&drawing);
        assert!(build.runs.keys().all(|run| things.contains(run)));
        assert_eq!(drawing.table.expect("a table").rows.len(), 40);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 5, ..ProptestConfig::default() })]

    /// Networks of any cables, returns, fuses and names, before and after any change.
    #[test]
    fn any_network_is_drawn_whole(
        before in prop::collection::vec(random(), 1..=4),
        after in prop::option::of(prop::collection::vec(random(), 1..=4)),
    ) {
        let [before, after] = [Some(before), after].map(|runs| runs.map(|runs| build(&network(&runs))));
        let before = before.expect("one");
        for drawing in drawn(&before, after.as_ref()) {
            let things = things(&drawing);
            for run in before.runs.keys().chain(after.iter().flat_map(|after| after.runs.keys())) {
                prop_assert!(things.contains(run));
            }
        }
    }
}
