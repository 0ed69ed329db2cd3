//! What is wrong in a build's files, each problem in its place.

use std::fmt;

use miette::{
    Diagnostic, GraphicalReportHandler, GraphicalTheme, MietteError, MietteSpanContents,
    SourceCode, SourceSpan, SpanContents,
};
use spile_ask::{clean, count};
use spile_build::{At, Files, Problem, Problems};

use super::page::{COLUMNS, columns};

/// How many columns of a line of a file are shown; the frame takes the rest.
const LINE: usize = 68;
/// How many columns a label has; it goes on below where it is longer.
const LABEL: usize = 44;
/// How many columns the name of a file has.
const NAME: usize = 48;
/// How many lines are shown above and below the one in question.
const AROUND: usize = 1;

/// All problems as they are printed, each with file, line and column, and a line that counts them.
pub fn problems(problems: &Problems) -> String {
    let handler = GraphicalReportHandler::new_themed(GraphicalTheme::unicode())
        .with_width(COLUMNS)
        .with_links(false)
        .with_context_lines(AROUND)
        .without_cause_chain();
    let mut text = String::new();
    for problem in &problems.list {
        // Writing to a string does not fail, and neither does an excerpt that holds its own span.
        if handler.render_report(&mut text, &shown(problem, &problems.files)).is_err() {
            text.push_str(&clean(&format!("{}; {}", problem.says, problem.hint)));
        }
        text.push('\n');
    }
    text.push_str(&count(problems));
    text.push('\n');
    text
}

/// A problem as the library that draws it wants it.
#[derive(Debug, Diagnostic)]
struct Told {
    says: String,
    #[help]
    hint: String,
    #[source_code]
    excerpt: Option<Excerpt>,
    label: String,
    #[label(primary, "{label}")]
    span: Option<SourceSpan>,
}

/// The lines about a problem, cut so that they fit, with the place in the file that they are from.
#[derive(Debug)]
struct Excerpt {
    name: String,
    text: String,
    /// The first of the lines, from 0.
    first: usize,
    /// The column of the problem, from 0.
    column: usize,
}

fn shown(problem: &Problem, files: &Files) -> Told {
    let label = folded(&clean(&problem.label));
    let (excerpt, span) = match &problem.at {
        Some(at) => {
            let (excerpt, span) = excerpt(at, &label, files);
            (Some(excerpt), Some(span))
        }
        None => (None, None),
    };
    Told { says: clean(&problem.says), hint: clean(&problem.hint), excerpt, label, span }
}

/// The lines about a place, and where among them it is.
fn excerpt(at: &At, label: &str, files: &Files) -> (Excerpt, SourceSpan) {
    let file = files.file(at.file);
    let place = files.line_column(at);
    let (line, column) = (place.line - 1, place.column - 1);
    let mut lines: Vec<&str> = file.text.split('\n').collect();
    if lines.len() > line + 1 {
        // Behind the last end of a line there is no further line.
        lines.pop_if(|last| last.is_empty());
    }
    let here = lines.get(line).map(|line| line.trim_end_matches('\r')).unwrap_or_default();
    let here: Vec<char> = here.chars().collect();
    let within = file.text.get(at.span.clone()).unwrap_or_default();
    let length = within.split('\n').next().unwrap_or_default().chars().count();
    let column = column.min(here.len());
    let length = length.min(here.len() - column);

    let mut text = String::new();
    let first = line.saturating_sub(AROUND);
    let mut span = (0, 0);
    for (number, other) in lines.iter().enumerate().take(line + AROUND + 1).skip(first) {
        if number > first {
            text.push('\n');
        }
        if number == line {
            let (cut, from, to) = cut(&here, column, length, label);
            span = (text.len() + from, to - from);
            text.push_str(&cut);
        } else {
            let other: Vec<char> = other.trim_end_matches('\r').chars().collect();
            text.push_str(&cut_end(&other, LINE));
        }
    }
    let name = name(file.path.as_deref().map(|path| path.display().to_string()), &file.name);
    (Excerpt { name, text, first, column: place.column - 1 }, span.into())
}

/// The file's path, or where that is too long its name within the build, as far as it goes.
fn name(path: Option<String>, name: &str) -> String {
    let path = path.map(|path| clean(&path)).filter(|path| columns(path) <= NAME);
    let name = path.unwrap_or_else(|| clean(name));
    if columns(&name) <= NAME {
        return name;
    }
    let end = fitting(name.chars().rev(), NAME - 1);
    let all = name.chars().count();
    format!("…{}", name.chars().skip(all - end).collect::<String>())
}

/// A label in lines that leave room for the stretch that they belong to.
fn folded(label: &str) -> String {
    let mut lines = vec![String::new()];
    for word in label.split(' ').filter(|word| !word.is_empty()) {
        let kept: String = word.chars().take(fitting(word.chars(), LABEL)).collect();
        match lines.last_mut() {
            Some(line) if line.is_empty() => *line = kept,
            Some(line) if columns(line) + 1 + columns(&kept) <= LABEL => {
                line.push(' ');
                line.push_str(&kept);
            }
            _ => lines.push(kept),
        }
    }
    lines.join("\n")
}

/// A line cut on both sides so that the stretch in question and its label have room; with the
/// bytes of it that the stretch fills now.
fn cut(line: &[char], column: usize, length: usize, label: &str) -> (String, usize, usize) {
    // The label begins at the middle of the stretch and four columns on.
    let middle = LINE - 1 - label.lines().map(columns).max().unwrap_or(0).min(LABEL);
    let (before, rest) = line.split_at(column);
    let (within, _) = rest.split_at(length);
    let shown = fitting(within.iter().copied(), (LINE - 2).min(2 * middle)).max(length.min(1));
    let filled = columns(&spelled(&within[..shown]));
    let left = (LINE - 2).saturating_sub(filled).min(middle.saturating_sub(filled / 2));
    let mut back = fitting(before.iter().rev().copied(), left);
    let mut text = String::new();
    if back < column {
        back = fitting(before.iter().rev().copied(), left.saturating_sub(1));
        text.push('…');
    }
    text.push_str(&spelled(&before[column - back..]));
    let start = text.len();
    text.push_str(&spelled(&within[..shown]));
    let end = text.len();
    let left = LINE.saturating_sub(columns(&text));
    text.push_str(&cut_end(&rest[shown..], left));
    (text, start, end)
}

fn cut_end(line: &[char], room: usize) -> String {
    let whole = fitting(line.iter().copied(), room);
    if whole == line.len() {
        return spelled(line);
    }
    let kept = fitting(line.iter().copied(), room.saturating_sub(1));
    format!("{}…", spelled(&line[..kept]))
}

/// How many of the first of these characters fill no more than `room` columns.
fn fitting(characters: impl Iterator<Item = char>, room: usize) -> usize {
    let mut filled = 0;
    characters
        .take_while(|c| {
            filled += columns(&clean(c.encode_utf8(&mut [0; 4])));
            filled <= room
        })
        .count()
}

/// Characters that can be shown, and each in its own place.
fn spelled(line: &[char]) -> String {
    clean(&line.iter().collect::<String>())
}

impl fmt::Display for Told {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.says)
    }
}

impl std::error::Error for Told {}

impl SourceCode for Excerpt {
    fn read_span<'a>(
        &'a self,
        span: &SourceSpan,
        before: usize,
        after: usize,
    ) -> Result<Box<dyn SpanContents<'a> + 'a>, MietteError> {
        let inner = self.text.read_span(span, before, after)?;
        Ok(Box::new(MietteSpanContents::new_named(
            self.name.clone(),
            inner.data(),
            *inner.span(),
            inner.line() + self.first,
            if before == 0 { self.column } else { inner.column() },
            inner.line_count(),
        )))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use spile_build::Folder;
    use unicode_width::UnicodeWidthStr;

    fn told(files: &[(&str, &str)]) -> String {
        let problems = Folder::from_texts(files.iter().copied()).unwrap_err();
        anstream::adapter::strip_str(&super::problems(&problems)).to_string()
    }

    #[test]
    fn a_problem_is_told_in_its_place() {
        let text = told(&[("build.toml", "about = \"a van\"\n[bank]\ncapacity = \"95 A\"\n")]);
        assert!(text.contains("[build.toml:3:16]"), "{text}");
        assert!(text.ends_with("1 problem in 1 file; nothing was computed\n"), "{text}");
    }

    #[test]
    fn a_long_line_is_cut_about_its_problem() {
        let long = format!("about = \"{}\" = \"\"", "a van ".repeat(40));
        let text = told(&[("build.toml", &long)]);
        assert!(text.contains('…'), "{text}");
        assert!(text.lines().all(|line| line.width() <= COLUMNS), "{text}");
    }

    #[test]
    fn columns_are_counted_in_characters() {
        let text = told(&[("build.toml", "bank = { volts = \"é\", küche = 1 }\n")]);
        assert!(text.contains("[build.toml:1:19]"), "{text}");
        assert!(text.contains("[build.toml:1:23]"), "{text}");
    }

    #[test]
    fn a_long_label_goes_on_below() {
        let text = told(&[("build.toml", "[parts.x]\nconductivity = \"zero point zero three\"\n")]);
        assert!(text.contains("such as"), "{text}");
        assert!(text.lines().all(|line| line.width() <= COLUMNS), "{text}");
    }

    #[test]
    fn a_very_long_line_is_told_at_once() {
        let long = "a".repeat(300_000);
        let text =
            told(&[("build.toml", &format!("about = \"{long}\"\n{long} = 1\nx = \"{long}"))]);
        assert!(text.lines().all(|line| line.width() <= COLUMNS));
    }

    proptest! {
        #[test]
        fn no_line_is_too_long(
            before in "\\PC{0,120}", key in "[a-zü\u{7}\t漢=\"]{0,100}", after in "[ -~]{0,120}",
            name in "[a-z漢]{1,90}",
        ) {
            let text = format!("# {before}\n{key} = 3 # {after}\n[parts]\n");
            let name = format!("parts/{name}.toml");
            let folder = Folder::from_texts([("build.toml", text.as_str()), (&name, "x = 1\n")]);
            if let Err(problems) = folder {
                let text = super::problems(&problems);
                for line in anstream::adapter::strip_str(&text).to_string().lines() {
                    prop_assert!(line.width() <= COLUMNS, "{line}");
                }
            }
        }
    }
}
