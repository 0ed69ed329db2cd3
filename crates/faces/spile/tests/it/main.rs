//! The program from outside: what it prints, how it ends, and that nothing typed breaks it.

mod commands;
mod hand;
mod layout;
mod nonsense;

use unicode_width::UnicodeWidthStr;

/// Every line fits a terminal of 80 columns and has no colour in it.
#[track_caller]
fn fits(text: &str) {
    for line in text.lines() {
        assert!(line.width() <= 80, "{} columns:\n{line}", line.width());
        assert!(!line.contains('\u{1b}'), "{line}");
    }
}
