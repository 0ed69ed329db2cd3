//! Lines of a text: where they begin and end, and how some are put in or taken out.

use std::ops::Range;

/// The mark that some editors put at the beginning of a file.
const BOM: char = '\u{feff}';

/// How the lines of a text end: as its first one does.
pub(super) fn eol(text: &str) -> &'static str {
    match text.find('\n') {
        Some(newline) if text[..newline].ends_with('\r') => "\r\n",
        _ => "\n",
    }
}

/// Where the line begins that a place lies in.
pub(super) fn line_start(text: &str, place: usize) -> usize {
    text[..place].rfind('\n').map_or_else(|| top(text), |newline| newline + 1)
}

/// Where the line ends that a place lies in, its newline included.
pub(super) fn line_end(text: &str, place: usize) -> usize {
    text[place..].find('\n').map_or(text.len(), |newline| place + newline + 1)
}

/// Where the first line begins.
pub(super) fn top(text: &str) -> usize {
    if text.starts_with(BOM) { BOM.len_utf8() } else { 0 }
}

/// Where the comment begins that stands right above a line, or else the line. What stands at the
/// very top of a file is about the file.
pub(super) fn attached(text: &str, place: usize) -> usize {
    let line = line_start(text, place);
    let mut start = line;
    while start > top(text) {
        let above = line_start(text, start - 1);
        if !text[above..start].trim_start().starts_with('#') {
            return start;
        }
        start = above;
    }
    line
}

/// Whether the line above a place is blank, or there is none.
pub(super) fn blank_before(text: &str, place: usize) -> bool {
    place <= top(text) || text[line_start(text, place - 1)..place].trim().is_empty()
}

/// A text with stretches of it put anew. Stretches do not overlap.
pub(super) fn put(text: &str, mut stretches: Vec<(Range<usize>, String)>) -> String {
    stretches.sort_by_key(|(span, _)| span.start);
    let mut out = String::with_capacity(text.len());
    let mut done = 0;
    for (span, new) in stretches {
        out.push_str(&text[done..span.start]);
        out.push_str(&super::splice::with_ends_of(text, &new));
        done = span.end;
    }
    out.push_str(&text[done..]);
    out
}

/// A text with lines put in where a line begins, or at its end; `apart` with blank lines around.
pub(super) fn insert(text: &str, place: usize, lines: &str, apart: bool) -> String {
    let mut new = String::new();
    let ends_open = place > top(text) && !text[..place].ends_with('\n');
    if ends_open {
        new.push('\n');
    }
    if apart && (ends_open || !blank_before(text, place)) {
        new.push('\n');
    }
    new.push_str(lines);
    if ends_open {
        new.truncate(new.trim_end_matches('\n').len());
    }
    let after = &text[place..];
    if apart && !after.is_empty() && !after.starts_with(['\n', '\r']) {
        new.push('\n');
    }
    put(text, vec![(place..place, new)])
}

/// A text without some stretches of whole lines, and without blank lines that would then end it.
pub(super) fn without(text: &str, mut stretches: Vec<Range<usize>>) -> String {
    stretches.sort_by_key(|span| span.start);
    let mut merged: Vec<Range<usize>> = Vec::new();
    for span in stretches {
        match merged.last_mut() {
            Some(last) if span.start <= last.end => last.end = last.end.max(span.end),
            _ => merged.push(span),
        }
    }
    if let Some(last) = merged.last_mut()
        && last.end == text.len()
    {
        while last.start > top(text) && blank_before(text, last.start) {
            last.start = line_start(text, last.start - 1);
        }
    }
    put(text, merged.into_iter().map(|span| (span, String::new())).collect())
}
