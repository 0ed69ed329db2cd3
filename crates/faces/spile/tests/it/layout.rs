//! The layout of answers and workings, of a report made by hand.

use spile::show::{Shown, report, why};
use spile_answer::Question;
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
