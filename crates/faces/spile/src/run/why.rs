//! `spile why`: the working of one finding.

use spile_answer::Question;
use spile_ask::{Pair, Report};

use super::open::open;
use super::{Outcome, Status};
use crate::args::Why;
use crate::show;
use crate::show::page::{Page, Text, Tone};

/// How many of the nearest names are told where there is none of the name asked for.
const NEAREST: usize = 3;

/// Shows how one finding was worked out.
pub fn why(args: &Why) -> Outcome {
    let report = open(&args.build)
        .and_then(|opened| opened.ask(args.job.as_deref(), args.option.as_deref()));
    let report = match report {
        Ok(report) => report,
        Err(outcome) => return outcome,
    };
    match find(&report, &args.finding) {
        Ok((question, pair)) => Outcome::data(show::why(&report, question, &pair), Status::Fine),
        Err(outcome) => outcome,
    }
}

/// A finding with its question and its whole name, `wire.fridge.drop`.
struct Named<'r> {
    question: Question,
    name: String,
    pair: Pair<'r>,
}

/// The one finding that is meant by `asked`: its whole name, its name within its question, or the
/// beginning of either.
fn find<'r>(report: &'r Report, asked: &str) -> Result<(Question, Pair<'r>), Outcome> {
    let all: Vec<Named<'r>> = report
        .answers
        .iter()
        .flat_map(|answer| {
            answer.pairs().into_iter().map(|pair| Named {
                question: answer.question,
                name: format!("{}.{}", answer.question.word(), pair.now.id),
                pair,
            })
        })
        .collect();
    let asked = asked.trim();
    let readings: [&dyn Fn(&Named<'r>) -> bool; 3] =
        [&|finding| finding.name == asked, &|finding| finding.pair.now.id == asked, &|finding| {
            finding.name.starts_with(asked) || finding.pair.now.id.starts_with(asked)
        }];
    for reading in readings {
        let meant: Vec<&Named<'r>> = all.iter().filter(|finding| reading(finding)).collect();
        match meant.as_slice() {
            [] => {}
            [one] => return Ok((one.question, one.pair)),
            many => {
                let says = format!("`{asked}` can be each of these findings:");
                return Err(told(&says, many));
            }
        }
    }
    Err(told(&format!("there is no finding `{asked}`; the nearest are:"), &nearest(&all, asked)))
}

fn nearest<'a, 'r>(all: &'a [Named<'r>], asked: &str) -> Vec<&'a Named<'r>> {
    let start: String = asked.chars().take(100).collect();
    let mut near: Vec<(usize, &Named<'r>)> = all
        .iter()
        .map(|finding| {
            let far = |name: &str| strsim::damerau_levenshtein(name, &start);
            (far(&finding.name).min(far(&finding.pair.now.id)), finding)
        })
        .collect();
    near.sort_by_key(|(far, _)| *far);
    near.into_iter().take(NEAREST).map(|(_, finding)| finding).collect()
}

fn told(says: &str, findings: &[&Named<'_>]) -> Outcome {
    if findings.is_empty() {
        return Outcome::refused("there is no finding at all", "spile check shows the answers");
    }
    let mut outcome = Outcome::refused(says, "");
    let mut page = Page::new();
    for finding in findings {
        let name = Text::new().and(Tone::Strong, &finding.name);
        page.hang(7, &name, 36, &Text::plain(&finding.pair.now.label));
    }
    outcome.talk.push_str(&page.finish());
    outcome
}
