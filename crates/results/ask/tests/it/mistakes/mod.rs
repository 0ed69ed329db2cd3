//! The mistakes that people make when they fit out a vehicle, one case each: the smallest build that
//! makes it, what is said of it, and its sibling without the mistake, of which that is not said.
//!
//! Source of all: the project's trade notes (common practice, no source), whose numbers the cases
//! have. Five live on paper, in the marks and templates, and are tried where those are made: both
//! units with the rounding error and the corner's radius in `fit`, the printed words and bars in
//! `sheet`.

mod air;
mod electric;
mod experts;
mod opens;
mod room;
mod stays;

use spile_answer::{Finding, Question};
use spile_ask::{Report, ask};
use spile_build::Folder;

/// What is asked of a mistake: the question, the finding's name, its verdict and reason, and words
/// that it says, as one text with its mend.
pub struct Caught<'a> {
    pub question: Question,
    pub id: &'a str,
    pub verdict: &'a str,
    pub says: &'a [&'a str],
}

/// The report of a build of one file.
#[track_caller]
pub fn report(text: &str) -> Report {
    match Folder::from_texts([("build.toml", text)]) {
        Ok(folder) => ask("case", folder.build(), None),
        Err(problems) => panic!("{:?}\n{text}", problems.list),
    }
}

/// A finding of a report, if there is one of that name.
pub fn found<'r>(report: &'r Report, question: Question, id: &str) -> Option<&'r Finding> {
    let asked = report.answers.iter().find(|asked| asked.question == question)?;
    asked.now().findings.iter().find(|finding| finding.id == id)
}

/// The finding of that name.
#[track_caller]
pub fn one<'r>(report: &'r Report, question: Question, id: &str) -> &'r Finding {
    found(report, question, id).unwrap_or_else(|| {
        let asked = report.answers.iter().find(|asked| asked.question == question);
        let ids = asked.map(|asked| {
            asked.now().findings.iter().map(|finding| finding.id.as_str()).collect::<Vec<_>>()
        });
        panic!("no {}.{id} among {ids:?}", question.word())
    })
}

/// Verdict and reason in words: `stop`, `care practice`.
pub fn words(finding: &Finding) -> String {
    match finding.verdict.reason() {
        Some(reason) => format!("{} {}", finding.verdict.word(), reason.word()),
        None => finding.verdict.word().to_owned(),
    }
}

/// The likely figure of a finding.
#[track_caller]
pub fn likely(finding: &Finding) -> f64 {
    finding.figure.unwrap_or_else(|| panic!("{} has no figure", finding.id)).likely
}

/// Whether a figure is what it should be, within the printed digits.
#[track_caller]
pub fn near(what: &str, got: f64, expected: f64, tolerance: f64) {
    assert!((got - expected).abs() <= tolerance, "{what}: {got}, not {expected}");
}

/// The build with the mistake is caught, and the one without it is not: there the finding is good,
/// or absent.
#[track_caller]
pub fn caught(with: &str, without: &str, expected: &Caught<'_>) -> Finding {
    let Caught { question, id, verdict, says } = expected;
    let report = report(with);
    let finding = one(&report, *question, id).clone();
    assert_eq!(&words(&finding), verdict, "{id}: {}", finding.says);
    let told = format!(
        "{} {} {}",
        finding.says,
        finding.mend.as_deref().unwrap_or_default(),
        finding.asks.iter().map(|ask| ask.how.as_ref()).collect::<Vec<_>>().join(" ")
    );
    for word in *says {
        assert!(told.contains(word), "{id} does not say `{word}`: {told}");
    }
    let clean = self::report(without);
    if let Some(finding) = found(&clean, *question, id) {
        assert_eq!(words(finding), "good", "{id} fires without the mistake: {}", finding.says);
    }
    finding
}

/// The text with one stretch of it in other words; the stretch must be there.
#[track_caller]
pub fn but(text: &str, from: &str, to: &str) -> String {
    assert!(text.contains(from), "`{from}` is not in the build");
    text.replacen(from, to, 1)
}
