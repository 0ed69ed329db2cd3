//! Cold and bank as plots.

use spile_answer::Question;
use spile_sheet::{Drawing, Width, drawings};

use crate::seen::is_sound;
use crate::{build, heron};

const WIDTHS: [Width; 2] = [Width::Wide, Width::Narrow];

/// Every word of a drawing and of its titles.
fn words(drawing: &Drawing) -> String {
    let parsed = roxmltree::Document::parse(&drawing.svg.0).expect("a drawing");
    let texts =
        parsed.descendants().filter(roxmltree::Node::is_text).filter_map(|node| node.text());
    texts.collect::<Vec<_>>().join("\n")
}

#[test]
fn heron_is_plotted_before_and_after() {
    for option in ["upright", "two-boxes"] {
        let [before, after] = heron(option);
        for width in WIDTHS {
            let cold = drawings(Question::Cold, &before, Some(&after), width);
            assert_eq!(cold.len(), 2);
            cold.iter().for_each(is_sound);
        }
        let bank = drawings(Question::Bank, &before, Some(&after), Width::Wide);
        assert_eq!(bank.len(), 2);
        bank.iter().for_each(is_sound);
    }
}

#[test]
fn as_it_stands_there_is_one_line_and_no_accent() {
    let [before, _] = heron("upright");
    for question in [Question::Cold, Question::Bank] {
        for drawing in drawings(question, &before, None, Width::Narrow) {
            is_sound(&drawing);
            assert!(!drawing.svg.0.contains(r#"class="add"#), "{}", drawing.title);
            assert!(!words(&drawing).contains("after the job"));
        }
    }
}

#[test]
fn what_is_not_known_is_not_drawn() {
    let nothing = build("");
    for question in [Question::Cold, Question::Bank] {
        assert!(drawings(question, &nothing, None, Width::Wide).is_empty());
    }
}

#[test]
fn a_plot_shows_the_figures_of_the_answer() {
    let [before, after] = heron("upright");
    let drawn = drawings(Question::Cold, &before, Some(&after), Width::Wide);
    for build in [&before, &after] {
        let answer = spile_cold::answer(build);
        let duty = answer.findings.iter().find(|one| one.id.ends_with(".duty")).expect("a duty");
        let figure = format!("{:.0} %", duty.figure.unwrap().likely);
        assert!(words(&drawn[1]).contains(&figure), "{figure}");
    }
    let bank = drawings(Question::Bank, &before, Some(&after), Width::Wide);
    let answer = spile_bank::answer(&after);
    let off = answer.findings.iter().find(|one| one.id == "without-power").expect("hours");
    let hours = format!("{:.0} h a year without power", off.figure.unwrap().likely);
    assert!(bank[0].svg.0.contains(&hours), "{hours}");
}

#[test]
fn names_are_written_as_they_are() {
    let text = r#"
[parts.box]
kind = "lidded box"
about = "box of ice & <steel> \"3\""
size = { width = "590 mm", height = "410 mm", depth = "370 mm" }
volume = "32 L"
[items.box]
part = "box"
"#;
    for drawing in drawings(Question::Cold, &build(text), None, Width::Wide) {
        is_sound(&drawing);
        assert!(words(&drawing).contains("box of ice & <steel> \"3\""));
    }
}
