//! A text as it is read from left to right, with look-alike characters made one.

use std::ops::Range;

use crate::{Misread, MisreadKind};

/// A place in a text that is being read.
#[derive(Debug, Clone)]
pub(crate) struct Cursor<'a> {
    text: &'a str,
    chars: Vec<(usize, char)>,
    at: usize,
}

impl<'a> Cursor<'a> {
    pub(crate) fn new(text: &'a str) -> Self {
        let chars = text.char_indices().map(|(byte, c)| (byte, plain(c))).collect();
        Self { text, chars, at: 0 }
    }

    pub(crate) fn at(&self) -> usize {
        self.at
    }

    pub(crate) fn set(&mut self, at: usize) {
        self.at = at;
    }

    /// Goes `count` characters on.
    pub(crate) fn skip(&mut self, count: usize) {
        self.at += count;
    }

    pub(crate) fn peek(&self) -> Option<char> {
        self.peek_at(0)
    }

    /// The character `ahead` places on.
    pub(crate) fn peek_at(&self, ahead: usize) -> Option<char> {
        self.chars.get(self.at + ahead).map(|&(_, c)| c)
    }

    pub(crate) fn is_digit_at(&self, ahead: usize) -> bool {
        self.peek_at(ahead).is_some_and(|c| c.is_ascii_digit())
    }

    pub(crate) fn at_end(&self) -> bool {
        self.at >= self.chars.len()
    }

    pub(crate) fn skip_spaces(&mut self) {
        while self.peek() == Some(' ') {
            self.at += 1;
        }
    }

    /// Takes `wanted` if it comes next.
    pub(crate) fn eat(&mut self, wanted: &str) -> bool {
        let mut ahead = 0;
        for c in wanted.chars() {
            if self.peek_at(ahead) != Some(c) {
                return false;
            }
            ahead += 1;
        }
        self.at += ahead;
        true
    }

    /// Takes `word`, in any case, if it comes next and no letter or digit follows it.
    pub(crate) fn eat_word(&mut self, word: &str) -> bool {
        self.eat_unless(word, char::is_alphanumeric)
    }

    /// Takes `letters`, in any case, if they come next and no letter follows them.
    pub(crate) fn eat_letters(&mut self, letters: &str) -> bool {
        self.eat_unless(letters, char::is_alphabetic)
    }

    fn eat_unless(&mut self, word: &str, goes_on: impl Fn(char) -> bool) -> bool {
        let mut ahead = 0;
        for c in word.chars() {
            if !self.peek_at(ahead).is_some_and(|found| found.eq_ignore_ascii_case(&c)) {
                return false;
            }
            ahead += 1;
        }
        if self.peek_at(ahead).is_some_and(goes_on) {
            return false;
        }
        self.at += ahead;
        true
    }

    /// Takes digits, at least none.
    pub(crate) fn digits(&mut self) -> String {
        let mut digits = String::new();
        while let Some(c) = self.peek().filter(char::is_ascii_digit) {
            digits.push(c);
            self.at += 1;
        }
        digits
    }

    /// Where the word that begins at `from` ends: at a space or the end of the text.
    pub(crate) fn word_end(&self, from: usize) -> usize {
        let length = self.chars[from.min(self.chars.len())..]
            .iter()
            .position(|&(_, c)| c == ' ')
            .unwrap_or(self.chars.len() - from.min(self.chars.len()));
        from + length
    }

    /// The place behind the last character.
    pub(crate) fn end(&self) -> usize {
        self.chars.len()
    }

    /// What stands in the text between two places.
    pub(crate) fn between(&self, range: Range<usize>) -> &'a str {
        &self.text[self.bytes(range)]
    }

    /// Why what stands between two places cannot be read.
    pub(crate) fn misread(
        &self,
        kind: MisreadKind,
        range: Range<usize>,
        expected: impl Into<String>,
        hint: impl Into<String>,
    ) -> Misread {
        let span = self.bytes(range);
        Misread {
            kind,
            found: self.text[span.clone()].to_owned(),
            span,
            expected: expected.into(),
            hint: hint.into(),
        }
    }

    fn bytes(&self, range: Range<usize>) -> Range<usize> {
        let byte = |at: usize| self.chars.get(at).map_or(self.text.len(), |&(byte, _)| byte);
        let start = byte(range.start);
        start..byte(range.end).max(start)
    }
}

/// One character for all that look alike: spaces, dashes, quotes, micro signs.
fn plain(c: char) -> char {
    match c {
        '\t' | '\u{a0}' | '\u{2007}' | '\u{2009}' | '\u{202f}' => ' ',
        '\u{2010}' | '\u{2011}' | '\u{2013}' | '\u{2212}' => '-',
        '\u{3bc}' => '\u{b5}',
        '\u{2126}' => '\u{3a9}',
        '\u{22c5}' | '*' => '\u{b7}',
        '\u{2033}' | '\u{201c}' | '\u{201d}' => '"',
        '\u{2032}' | '\u{2018}' | '\u{2019}' => '\'',
        '\u{2044}' | '\u{2215}' => '/',
        '\u{ba}' => '\u{b0}',
        other => other,
    }
}
