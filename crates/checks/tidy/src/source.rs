//! What the code never reaches for, and what its docs always have.

use crate::tokens::{Token, starts};

/// Parts of `std` that would let the world in.
const WORLD: [&str; 7] = ["env", "fs", "io", "net", "process", "thread", "time"];

/// Collections whose order changes from run to run.
const UNORDERED: [&str; 3] = ["HashMap", "HashSet", "RandomState"];

/// Macros that print.
const PRINTING: [&str; 5] = ["dbg", "eprint", "eprintln", "print", "println"];

/// The headings of a formula's doc, in their order.
const FORMULA: [&str; 5] =
    ["**Formula**", "**Arguments**", "**Validity**", "**Errors**", "**Source**"];

/// What keeps a model or a question from being a function of its arguments alone: files, clock,
/// environment, printing, collections without order.
pub fn reaches_out(path: &str, row: &[Token]) -> Vec<String> {
    let mut problems = Vec::new();
    let mut tell = |line: usize, what: &str| problems.push(format!("{path}:{line}: {what}"));
    for (at, token) in row.iter().enumerate().filter(|(_, token)| token.is_name) {
        let name = token.text.as_str();
        if name == "std" && starts(&row[at + 1..], &[":", ":"]) {
            for part in first_parts(&row[at + 3..]) {
                if WORLD.contains(&part.text.as_str()) {
                    tell(part.line, &format!("std::{} has no place here", part.text));
                }
            }
        }
        if UNORDERED.contains(&name) {
            tell(token.line, &format!("{name} has no order; take a BTreeMap, a BTreeSet or a Vec"));
        }
        if PRINTING.contains(&name) && starts(&row[at + 1..], &["!"]) {
            tell(token.line, &format!("{name}! prints"));
        }
    }
    problems
}

/// The names right after `std::`: one, or those of a `{...}` list.
fn first_parts(row: &[Token]) -> Vec<&Token> {
    if !starts(row, &["{"]) {
        return row.first().into_iter().collect();
    }
    let mut depth = 0_usize;
    let mut parts = Vec::new();
    for (at, token) in row.iter().enumerate() {
        match token.text.as_str() {
            "{" => depth += 1,
            "}" => depth -= 1,
            _ => {}
        }
        if depth == 0 {
            break;
        }
        if depth == 1 && matches!(token.text.as_str(), "{" | ",") {
            parts.extend(row.get(at + 1));
        }
    }
    parts
}

/// Every test or example that is passed over.
pub fn passed_over(path: &str, source: &str, row: &[Token]) -> Vec<String> {
    let ignored = row
        .iter()
        .enumerate()
        .filter(|(at, _)| starts(&row[*at..], &["#", "[", "ignore"]))
        .map(|(_, token)| format!("{path}:{}: an ignored test", token.line));
    let fence = concat!("```", "ignore");
    let skipped = source
        .lines()
        .enumerate()
        .filter(|(_, line)| line.contains(fence))
        .map(|(at, _)| format!("{path}:{}: an example that never runs", at + 1));
    ignored.chain(skipped).collect()
}

/// A crate's front doc: there, at the very top, and for a library with an example.
pub fn front_doc(path: &str, source: &str) -> Vec<String> {
    let doc: Vec<&str> = source.lines().take_while(|line| line.starts_with("//!")).collect();
    if doc.is_empty() {
        return vec![format!("{path}: no front doc")];
    }
    if path.ends_with("/lib.rs") && !doc.iter().any(|line| line.starts_with("//! ```")) {
        return vec![format!("{path}: no example in the front doc")];
    }
    Vec::new()
}

/// Every public function whose doc states a formula but lacks a heading that goes with it:
/// **Validity** and **Source** always, **Arguments** where it takes some, **Errors** where it can
/// fail. A doc that refers to another formula (`**Formula**: as`) is left to that one.
pub fn formula_docs(path: &str, source: &str) -> Vec<String> {
    let lines: Vec<&str> = source.lines().map(str::trim_start).collect();
    let mut problems = Vec::new();
    let mut at = 0;
    while at < lines.len() {
        let length = lines[at..].iter().take_while(|line| line.starts_with("///")).count();
        let doc = lines[at..at + length].join("\n");
        let item = lines[at + length..].iter().take(30).copied().collect::<Vec<_>>().join(" ");
        let signature = item.split(['{', ';']).next().unwrap_or_default();
        let is_public = signature.contains("pub ") && signature.contains("fn ");
        let is_ours = is_public && !doc.contains("**: as [`");
        if is_ours && doc.contains(FORMULA[0]) {
            let mut from = 0;
            for heading in FORMULA.into_iter().filter(|heading| is_due(heading, signature)) {
                match doc[from..].find(heading) {
                    Some(place) => from += place,
                    None => problems.push(format!(
                        "{path}:{}: a formula without {heading} in its place",
                        at + 1
                    )),
                }
            }
        }
        at += length.max(1);
    }
    problems
}

/// Whether the doc of a formula with this signature needs `heading`.
fn is_due(heading: &str, signature: &str) -> bool {
    match heading {
        "**Arguments**" => {
            let inside = signature.split_once('(').map_or("", |(_, inside)| inside);
            inside.split("->").next().unwrap_or_default().contains(": ")
        }
        "**Errors**" => signature.contains("Result<"),
        _ => true,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tokens::tokens;

    fn reached(source: &str) -> Vec<String> {
        reaches_out("a.rs", &tokens(source).unwrap())
    }

    #[test]
    fn the_world_is_told_in_every_spelling() {
        assert_eq!(reached("\nuse std::fs;"), ["a.rs:2: std::fs has no place here"]);
        assert_eq!(reached("fn f() { std::env::var(\"A\"); }").len(), 1);
        assert_eq!(reached("use std::{fmt, time::Instant, io::{self, Read}};").len(), 2);
        assert_eq!(reached("fn f() { println!(\"{}\", 1); }"), ["a.rs:1: println! prints"]);
        assert_eq!(reached("use std::collections::HashMap;").len(), 1);
    }

    #[test]
    fn what_is_harmless_is_let_be() {
        assert!(reached("use std::{fmt, collections::BTreeMap}; // std::fs, HashMap").is_empty());
        assert!(reached("fn print(time: f64) { let env = \"std::env HashMap\"; }").is_empty());
        assert!(reached("use std::fmt::{self, io};").is_empty());
    }

    #[test]
    fn tests_passed_over_are_told() {
        let told = |source: &str| passed_over("a.rs", source, &tokens(source).unwrap());
        assert_eq!(told("#[test]\n#[ignore = \"slow\"]\nfn f() {}"), ["a.rs:2: an ignored test"]);
        let fence = concat!("/// ```", "ignore\n/// a\n/// ```\nfn f() {}");
        assert_eq!(told(fence), ["a.rs:1: an example that never runs"]);
        assert!(told("#[test]\nfn ignore() {}").is_empty());
    }

    #[test]
    fn a_front_doc_is_asked_for() {
        assert_eq!(front_doc("a/src/lib.rs", "use b;\n//! Late."), ["a/src/lib.rs: no front doc"]);
        assert_eq!(front_doc("a/src/lib.rs", "//! Says little.").len(), 1);
        assert!(front_doc("a/src/lib.rs", "//! Says.\n//!\n//! ```\n//! ```").is_empty());
        assert!(front_doc("a/src/main.rs", "//! The program.").is_empty());
    }

    #[test]
    fn a_formula_has_all_its_headings_in_order() {
        let whole = "/// R.\n/// **Formula** a\n/// **Arguments** b\n/// **Validity** c\n\
                     /// **Errors** d\n/// **Source** e\n\
                     pub fn r(\nl: f64,\n) -> Result<f64, E> {}";
        assert!(formula_docs("a.rs", whole).is_empty());
        for heading in FORMULA.into_iter().skip(1) {
            assert_eq!(
                formula_docs("a.rs", &whole.replace(heading, "")),
                [format!("a.rs:1: a formula without {heading} in its place")]
            );
        }
        let turned = whole.replace("**Source**", "").replace("R.", "**Source**");
        assert_eq!(formula_docs("a.rs", &turned).len(), 1);
    }

    #[test]
    fn a_formula_says_nothing_about_what_it_has_not() {
        let plain = "/// **Formula** a\n/// **Validity** b\n/// **Source** c\n";
        assert!(formula_docs("a.rs", &format!("{plain}pub fn r(&self) -> f64 {{}}")).is_empty());
        assert!(formula_docs("a.rs", "/// **Formula** a\nfn r(a: f64) {}").is_empty());
        assert!(formula_docs("a.rs", "/// No formula.\npub fn r(a: f64) {}").is_empty());
        let refers = "/// **Formula**, **Source**: as [`r`].\npub fn s(a: f64) {}";
        assert!(formula_docs("a.rs", refers).is_empty());
    }
}
