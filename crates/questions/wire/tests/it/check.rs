//! A build's text in, an answer out.

use spile_answer::{Answer, Finding};
use spile_build::{Build, Folder};

/// The build of one text.
pub fn build(text: &str) -> Build {
    let folder = Folder::from_texts([("build.toml", text)]);
    folder.unwrap_or_else(|problems| panic!("{text}\n{:?}", problems.list)).build().clone()
}

/// What is answered of the build of one text.
pub fn answer(text: &str) -> Answer {
    spile_wire::answer(&build(text))
}

/// The finding of that name.
pub fn find<'a>(answer: &'a Answer, id: &str) -> &'a Finding {
    let ids: Vec<&str> = answer.findings.iter().map(|finding| finding.id.as_str()).collect();
    answer
        .findings
        .iter()
        .find(|finding| finding.id == id)
        .unwrap_or_else(|| panic!("{id} is not in {ids:?}"))
}

/// The likely value of the figure of that finding.
pub fn likely(answer: &Answer, id: &str) -> f64 {
    find(answer, id).figure.unwrap_or_else(|| panic!("{id} has no figure")).likely
}

/// The verdict of a finding with its reason: `good`, `care unsure`, `stop`.
pub fn verdict(finding: &Finding) -> String {
    let reason = finding.verdict.reason().map(|reason| format!(" {}", reason.word()));
    format!("{}{}", finding.verdict.word(), reason.unwrap_or_default())
}
