//! The question fit and the marks, against the world outside.

mod brute;
mod drilled;
mod heron;
mod marks;
mod picture;
mod verdicts;

use spile_answer::{Answer, Finding};
use spile_build::{Build, Folder};

/// A build from the text of its `build.toml`.
fn build(text: &str) -> Build {
    match Folder::from_texts([("build.toml", text)]) {
        Ok(folder) => folder.build().clone(),
        Err(problems) => panic!("{:?}\n{text}", problems.list),
    }
}

/// The finding of that name.
fn finding<'a>(answer: &'a Answer, id: &str) -> &'a Finding {
    let ids: Vec<&str> = answer.findings.iter().map(|finding| finding.id.as_str()).collect();
    let found = answer.findings.iter().find(|finding| finding.id == id);
    found.unwrap_or_else(|| panic!("no {id} among {ids:?}"))
}

/// The likely figure of a finding.
fn likely(answer: &Answer, id: &str) -> f64 {
    finding(answer, id).figure.unwrap_or_else(|| panic!("{id} has no figure")).likely
}

/// Whether a figure is what it should be, within the printed digits.
fn near(what: &str, found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{what}: {found}, not {expected}");
}
