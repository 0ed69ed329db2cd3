//! The question cold, against what others computed, published and hold for usual.

mod heron;
mod picture;
mod practice;
mod reference;
mod rules;
mod verdicts;

use spile_answer::{Answer, Finding};
use spile_build::{Build, Folder};

/// The build of one text.
#[track_caller]
fn build(text: &str) -> Build {
    match Folder::from_texts([("build.toml", text)]) {
        Ok(folder) => folder.build().clone(),
        Err(problems) => panic!("{:?}\n{text}", problems.list),
    }
}

/// What the question answers of a text.
#[track_caller]
fn ask(text: &str) -> Answer {
    spile_cold::answer(&build(text))
}

/// The finding of that name.
#[track_caller]
fn finding<'a>(answer: &'a Answer, id: &str) -> &'a Finding {
    let found = answer.findings.iter().find(|finding| finding.id == id);
    found.unwrap_or_else(|| {
        let ids: Vec<&str> = answer.findings.iter().map(|finding| finding.id.as_str()).collect();
        panic!("no {id} among {ids:?}")
    })
}

/// The likely value of the figure of that finding.
#[track_caller]
fn likely(answer: &Answer, id: &str) -> f64 {
    finding(answer, id).figure.expect("a figure").likely
}

/// `good`, `care unsure`, `stop`.
fn words(finding: &Finding) -> String {
    let verdict = finding.verdict;
    let reason = verdict.reason().map_or_else(String::new, |why| format!(" {}", why.word()));
    format!("{}{reason}", verdict.word())
}
