//! The question hold: experts' cases, cases worked by hand, and what always holds.

mod always;
mod arch_edge_panel;
mod cases;
mod fixing;
mod heron;
mod open;
mod picture;

use spile_answer::{Answer, Finding};

/// The answer to a build of one file.
#[track_caller]
fn ask(text: &str) -> Answer {
    let folder = spile_build::Folder::from_texts([("build.toml", text)]);
    let folder = folder.unwrap_or_else(|problems| panic!("{:?}", problems.list));
    spile_hold::answer(folder.build())
}

/// A finding of an answer.
#[track_caller]
fn find<'a>(answer: &'a Answer, id: &str) -> &'a Finding {
    let ids = || answer.findings.iter().map(|finding| finding.id.as_str()).collect::<Vec<_>>();
    answer.findings.iter().find(|finding| finding.id == id).unwrap_or_else(|| panic!("{:?}", ids()))
}

/// The likely figure of a finding.
#[track_caller]
fn figure(answer: &Answer, id: &str) -> f64 {
    find(answer, id).figure.unwrap().likely
}

#[track_caller]
fn near(what: &str, got: f64, expected: f64, tolerance: f64) {
    let off = (got / expected - 1.0).abs();
    assert!(off <= tolerance, "{what}: {got} against {expected}");
}

/// A thing of 500 × 600 × 300 mm with a fixing.
fn thing(mass: &str, contents: &str, held: &str) -> String {
    format!(
        "[parts.thing]\nkind = \"furniture\"\nmass = \"{mass}\"\n\
         size = {{ width = \"500 mm\", height = \"600 mm\", depth = \"300 mm\" }}\n\
         [items.thing]\ncontents = \"{contents}\"\nheld = {{ {held} }}\n"
    )
}
