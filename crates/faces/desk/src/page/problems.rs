//! What is wrong in a build's files, each problem in its place; shown until it is mended.

use maud::{Markup, html};
use spile_ask::{clean, count};
use spile_build::{At, Files, Problem, Problems, Unplanned};

use crate::desk::{Desk, Now};
use crate::page::shell::{bare, plain};

/// How many lines are shown above and below the one in question.
const AROUND: usize = 1;

/// How many characters of a line are shown on each side of what is underlined.
const LINE: usize = 400;

/// The page, in the place of every other until the files can be read.
pub(crate) fn page(desk: &Desk, now: &Now) -> Markup {
    let Err(problems) = &now.read else { return plain("The files are in order.", "") };
    bare(desk, &now.version(), &format!("problems: {}", desk.name()), &told(problems))
}

/// The page where a job cannot be shown.
pub(crate) fn unplanned(desk: &Desk, why: &Unplanned) -> Markup {
    match why {
        Unplanned::Unknown { what, name, hint } => {
            plain(&format!("There is no {what} {}.", clean(name)), hint)
        }
        Unplanned::Problems(problems) => {
            bare(desk, "", &format!("problems: {}", desk.name()), &told(problems))
        }
    }
}

fn told(problems: &Problems) -> Markup {
    html! {
        div.answer {
            h1 { "The files cannot be read." }
            p { (count(problems)) ". Mend them in your editor; this page follows." }
        }
        ol.problems {
            @for problem in &problems.list { (one(problem, &problems.files)) }
        }
    }
}

fn one(problem: &Problem, files: &Files) -> Markup {
    html! {
        li.problem {
            h2 { (clean(&problem.says)) }
            @if let Some(at) = &problem.at { (place(at, &problem.label, files)) }
            @if !problem.hint.is_empty() { p { b { "help: " } (clean(&problem.hint)) } }
        }
    }
}

/// The lines about a place, the stretch in question underlined with its label below.
fn place(at: &At, label: &str, files: &Files) -> Markup {
    let file = files.file(at.file);
    let place = files.line_column(at);
    let line = place.line - 1;
    let lines: Vec<&str> = file.text.lines().collect();
    let first = line.saturating_sub(AROUND);
    html! {
        p.where { (clean(&file.name)) ":" (place.line) ":" (place.column) }
        pre.lines-of tabindex="0" role="region" aria-label=(format!("{}, line {}", clean(&file.name), place.line)) {
            @for (number, text) in lines.iter().enumerate().take(line + AROUND + 1).skip(first) {
                span.no aria-hidden="true" { (number + 1) }
                @if number == line { code { (underlined(text, at, &file.text, place.column - 1)) } }
                @else { code { (cut(text)) } }
                "\n"
            }
            @if lines.len() <= line { span.no aria-hidden="true" { (line + 1) } code { mark { " " } } "\n" }
        }
        @if !label.is_empty() { p.label { "underlined: " (clean(label)) } }
    }
}

fn underlined(line: &str, at: &At, text: &str, column: usize) -> Markup {
    let characters: Vec<char> = line.chars().collect();
    let within = text.get(at.span.clone()).unwrap_or_default();
    let long = within.lines().next().unwrap_or_default().chars().count();
    let column = column.min(characters.len());
    let end = (column + long).min(characters.len());
    let part = |part: &[char]| clean(&part.iter().collect::<String>());
    let from = column.saturating_sub(LINE);
    let to = characters.len().min(end + LINE);
    let end = end.min(column + LINE);
    html! {
        @if from > 0 { "…" }
        (part(&characters[from..column]))
        mark { (part(&characters[column..end])) @if end == column { " " } }
        (part(&characters[end..to.max(end)]))
        @if to < characters.len() { "…" }
    }
}

fn cut(line: &str) -> String {
    let short: String = line.chars().take(2 * LINE).collect();
    clean(&short)
}
