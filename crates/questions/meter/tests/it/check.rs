//! A build as text in, an answer out.

use spile_answer::{Answer, Expect, Finding};
use spile_build::Folder;
use spile_meter::Round;

pub fn answer(build: &str) -> Answer {
    let folder = Folder::from_texts([("build.toml", build)]);
    let folder = folder.unwrap_or_else(|problems| panic!("{problems:?}\n{build}"));
    spile_meter::answer(folder.build())
}

/// The rounds of a build for a drawing.
pub fn rounds(build: &str) -> Vec<Round> {
    let folder = Folder::from_texts([("build.toml", build)]).unwrap();
    spile_meter::points(folder.build())
}

pub fn find<'a>(answer: &'a Answer, id: &str) -> &'a Finding {
    let found = answer.findings.iter().find(|finding| finding.id == id);
    found.unwrap_or_else(|| panic!("no finding {id} among {:#?}", answer.findings))
}

pub fn expected<'a>(finding: &'a Finding, place: &str) -> &'a Expect {
    finding.expects.iter().find(|expect| expect.place == place).unwrap()
}

/// What is told of the cause, and the next test with how to take it.
pub fn told(answer: &Answer, reading: &str) -> String {
    let cause = find(answer, &format!("{reading}.cause"));
    format!("{} {} {}", cause.says, cause.asks[0].input, cause.asks[0].how)
}
