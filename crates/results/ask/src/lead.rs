//! What every face says of a report, in the same words.

use std::collections::BTreeSet;

use spile_answer::{Basis, Input, Verdict};
use spile_build::Problems;

use crate::next::Next;
use crate::report::Report;

/// Said below every report.
pub const CAUTION: &str = "Mains and gas are outside all this. The papers of the parts and local \
                           rules come before anything said here. Isolate the battery before you \
                           work on cables.";

/// How many things to measure are named.
const MEASURES: usize = 3;

/// What it comes to, in a few words.
pub const fn lead(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Good => "Nothing stands against it.",
        Verdict::Care(_) => "It can be done, with care.",
        Verdict::Open => "It cannot be said yet.",
        Verdict::Stop => "Do not cut, do not switch on.",
    }
}

/// The measurements to name first.
pub fn measures(report: &Report) -> Vec<&Next> {
    report.measure_next.iter().take(MEASURES).collect()
}

/// Every stand-in that the answers hang on, each once: those first that the most findings take.
pub fn typical_inputs(report: &Report) -> Vec<&Input> {
    let mut all: Vec<(&Input, usize)> = Vec::new();
    let findings = report.answers.iter().flat_map(|asked| &asked.now().findings);
    for input in findings.flat_map(|finding| &finding.inputs) {
        if input.basis != Basis::Typical {
            continue;
        }
        match all.iter_mut().find(|(known, _)| *known == input) {
            Some((_, times)) => *times += 1,
            None => all.push((input, 1)),
        }
    }
    all.sort_by_key(|(_, times)| std::cmp::Reverse(*times));
    all.into_iter().map(|(input, _)| input).collect()
}

/// How many problems there are: `2 problems in 1 file; nothing was computed`.
pub fn count(problems: &Problems) -> String {
    let files: BTreeSet<_> =
        problems.list.iter().filter_map(|problem| problem.at.as_ref()).map(|at| at.file).collect();
    let of = |count: usize, what: &str| {
        if count == 1 { format!("1 {what}") } else { format!("{count} {what}s") }
    };
    let within =
        if files.is_empty() { String::new() } else { format!(" in {}", of(files.len(), "file")) };
    format!("{}{within}; nothing was computed", of(problems.list.len(), "problem"))
}

/// `text` without what would move the cursor, break a line or turn the direction of writing.
pub fn clean(text: &str) -> String {
    let unseen = |c: char| {
        ('\u{200b}'..='\u{200f}').contains(&c)
            || ('\u{2028}'..='\u{202e}').contains(&c)
            || ('\u{2060}'..='\u{206f}').contains(&c)
            || c == '\u{feff}'
    };
    let shown = |c: char| match c {
        '\n' | '\t' | '\r' => ' ',
        c if c.is_control() => '\u{fffd}',
        c => c,
    };
    text.chars().filter(|c| !unseen(*c)).map(shown).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_moves_the_cursor() {
        assert_eq!(clean("a\u{1b}[31m\nb\u{202e}"), "a\u{fffd}[31m b");
    }
}
