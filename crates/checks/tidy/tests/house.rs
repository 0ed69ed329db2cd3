//! The whole repository through every check.

use spile_tidy::repository::{Crate, File, crates, files, root};
use spile_tidy::tokens::{Token, tokens, without_tests};
use spile_tidy::{floors, names, origins, source, words};

fn all() -> Vec<File> {
    files(&root())
}

fn all_crates() -> Vec<Crate> {
    let found = crates(&all()).unwrap();
    assert!(found.len() >= 12, "the crates of the workspace were not found");
    found
}

/// A Rust file of a crate's own code, cut into tokens.
struct Code {
    file: File,
    floor: String,
    /// All of it; `own` is without the tests.
    row: Vec<Token>,
    own: Vec<Token>,
}

/// Every Rust file below `crates`.
fn code() -> Vec<Code> {
    let rust = all().into_iter().filter(|file| file.path.ends_with(".rs"));
    let code: Vec<Code> = rust
        .filter_map(|file| {
            let mut parts = file.path.strip_prefix("crates/")?.split('/');
            let floor = parts.next()?.to_owned();
            let is_source = parts.nth(1)? == "src" && !parts.any(|part| part.starts_with("tests"));
            let row = tokens(&file.text).unwrap_or_else(|why| panic!("{}: {why}", file.path));
            let own = if is_source { without_tests(&row) } else { Vec::new() };
            Some(Code { file, floor, row, own })
        })
        .collect();
    assert!(code.len() >= 12, "the sources of the workspace were not found");
    code
}

fn text(path: &str) -> String {
    let file = all().into_iter().find(|file| file.path == path);
    file.unwrap_or_else(|| panic!("no {path}")).text
}

#[track_caller]
fn none(problems: impl IntoIterator<Item = String>) {
    let problems: Vec<String> = problems.into_iter().collect();
    assert!(problems.is_empty(), "\n{}\n", problems.join("\n"));
}

#[test]
fn crates_use_only_what_lies_below() {
    none(floors::upward(&all_crates()));
}

#[test]
fn models_and_questions_take_no_library_of_the_world() {
    none(floors::worldly(&all_crates()));
}

#[test]
fn no_dependency_is_unused() {
    none(floors::unused(&all_crates(), &all()));
}

#[test]
fn models_and_questions_reach_for_nothing_outside() {
    let physics = code().into_iter().filter(|one| floors::computes(&one.floor));
    none(physics.flat_map(|one| source::reaches_out(&one.file.path, &one.own)));
}

#[test]
fn every_crate_takes_the_shared_lints() {
    none(floors::without_lints(&all_crates()));
}

#[test]
fn every_crate_has_a_front_doc() {
    let fronts = code().into_iter().filter(|one| {
        one.file.path.ends_with("/src/lib.rs") || one.file.path.ends_with("/src/main.rs")
    });
    none(fronts.flat_map(|one| source::front_doc(&one.file.path, &one.file.text)));
}

#[test]
fn every_formula_says_where_it_holds_and_where_it_comes_from() {
    let ours = code().into_iter().filter(|one| one.floor != "checks");
    none(ours.flat_map(|one| source::formula_docs(&one.file.path, &one.file.text)));
}

#[test]
fn no_test_is_passed_over() {
    none(
        code().iter().flat_map(|one| source::passed_over(&one.file.path, &one.file.text, &one.row)),
    );
}

#[test]
fn names_end_in_units_of_the_nomenclature() {
    let page = names::read(&text("NOMENCLATURE.md"));
    none(names::unsound(&page));
    let ours = code().into_iter().filter(|one| one.floor != "checks");
    none(ours.flat_map(|one| names::strangers(&one.file.path, &one.floor, &one.own, &page)));
}

#[test]
fn nothing_is_left_unfinished() {
    none(all().iter().flat_map(|file| words::unfinished(&file.path, &file.text)));
}

#[test]
fn no_path_belongs_to_one_machine() {
    let here = "crates/checks/tidy/";
    let ours = all().into_iter().filter(|file| !file.path.starts_with(here));
    none(ours.flat_map(|file| words::machine_paths(&file.path, &file.text)));
}

#[test]
fn files_have_one_subject() {
    let sources = all().into_iter().filter(|file| {
        file.path.rsplit_once('.').is_some_and(|(_, kind)| matches!(kind, "rs" | "py"))
    });
    none(sources.flat_map(|file| words::too_long(&file.path, &file.text)));
}

#[test]
fn every_crate_is_on_the_map() {
    none(floors::off_the_map(&all_crates(), &text("ARCHITECTURE.md")));
}

#[test]
fn links_of_pages_lead_somewhere() {
    let files = all();
    let pages = files.iter().filter(|file| file.path.ends_with(".md"));
    none(pages.flat_map(|page| words::dead_links(page, |path| root().join(path).exists())));
}

#[test]
fn reference_values_have_an_origin() {
    none(origins::without_origin(&all()));
}

#[test]
fn there_is_one_test_command() {
    let last = text(".ci/run").lines().last().unwrap_or_default().to_owned();
    assert_eq!(last, "exec \"$(dirname \"$0\")/../scripts/test\"");
    assert!(text("README.md").lines().any(|line| line == "scripts/test"));
}
