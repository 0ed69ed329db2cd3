//! Lines of at most 80 columns: wrapping at words, hanging indents, tones.

use anstyle::{AnsiColor, Style};
use spile_ask::clean;
use unicode_width::UnicodeWidthChar;

/// The most columns that a line has.
pub const COLUMNS: usize = 80;

/// The fewest columns that a text is laid in.
const NARROWEST: usize = 8;

/// A space at which no line is broken; printed as an ordinary one.
const TIED: char = '\u{a0}';

/// The units that stay on the line of their number.
const UNITS: [&str; 32] = [
    "mm", "cm", "m", "in", "mm²", "cm²", "m²", "V", "mV", "A", "kA", "Ah", "Ω", "mΩ", "mΩ/m", "W",
    "W/K", "Wh", "kWh", "%", "°C", "K", "L", "kg", "g", "N", "s", "ms", "min", "h", "days", "AWG",
];

/// What a piece of text is set in. Colour only adds to what the words say already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    /// As it is.
    Plain,
    /// Names, words that are looked for.
    Strong,
    /// Sources, identifiers, what was assumed.
    Faint,
    /// A *good*.
    Good,
    /// A *care*.
    Care,
    /// A *stop*.
    Stop,
    /// An *open*.
    Open,
    /// What the job brings.
    Accent,
}

impl Tone {
    const fn style(self) -> Style {
        match self {
            Self::Plain => Style::new(),
            Self::Strong => Style::new().bold(),
            Self::Faint => Style::new().dimmed(),
            Self::Good => AnsiColor::Green.on_default(),
            Self::Care => AnsiColor::Yellow.on_default(),
            Self::Stop => AnsiColor::Red.on_default().bold(),
            Self::Open => AnsiColor::Cyan.on_default(),
            Self::Accent => AnsiColor::Blue.on_default().bold(),
        }
    }
}

/// Text in pieces, each with its tone.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Text {
    pieces: Vec<(Tone, String)>,
}

impl Text {
    /// Nothing yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Plain text.
    pub fn plain(text: &str) -> Self {
        Self::new().and(Tone::Plain, text)
    }

    /// This, and right behind it `text`.
    #[must_use]
    pub fn and(mut self, tone: Tone, text: &str) -> Self {
        if !text.is_empty() {
            self.pieces.push((tone, tie_units(&clean(text))));
        }
        self
    }

    /// How many columns it fills on one line.
    pub fn columns(&self) -> usize {
        self.pieces.iter().map(|(_, text)| columns(text)).sum()
    }

    /// Whether there is nothing in it.
    pub fn is_empty(&self) -> bool {
        self.pieces.is_empty()
    }

    /// Its words, each of one piece or of pieces without a space between them.
    fn words(&self) -> Vec<Self> {
        let mut words = vec![Self::new()];
        for (tone, text) in &self.pieces {
            for (at, part) in text.split(' ').enumerate() {
                if at > 0 {
                    words.push(Self::new());
                }
                if let (Some(word), false) = (words.last_mut(), part.is_empty()) {
                    word.pieces.push((*tone, part.to_owned()));
                }
            }
        }
        words.retain(|word| !word.is_empty());
        words
    }

    /// Goes on after a space, which has the tone of the words on both sides of it.
    fn join(&mut self, word: Self) {
        let [before, behind] =
            [self.pieces.last(), word.pieces.first()].map(|piece| piece.map(|one| one.0));
        let tone = before.filter(|tone| Some(*tone) == behind).unwrap_or(Tone::Plain);
        self.pieces.push((tone, " ".to_owned()));
        self.pieces.extend(word.pieces);
    }

    /// Cut into parts of at most `room` columns.
    fn cut(self, room: usize) -> Vec<Self> {
        if self.columns() <= room {
            return vec![self];
        }
        let mut parts = vec![Self::new()];
        let mut filled = 0;
        for (tone, text) in self.pieces {
            let mut piece = String::new();
            for c in text.chars() {
                let wide = char_columns(c);
                if filled + wide > room && filled > 0 {
                    if let Some(part) = parts.last_mut() {
                        part.pieces.push((tone, std::mem::take(&mut piece)));
                    }
                    parts.push(Self::new());
                    filled = 0;
                }
                piece.push(c);
                filled += wide;
            }
            if let Some(part) = parts.last_mut() {
                part.pieces.push((tone, piece));
            }
        }
        parts
    }
}

/// A text that grows line by line, none of them longer than [`COLUMNS`].
#[derive(Debug, Default)]
pub struct Page {
    text: String,
}

impl Page {
    /// An empty page.
    pub fn new() -> Self {
        Self::default()
    }

    /// The page as it is printed, with its tones as escape sequences.
    pub fn finish(self) -> String {
        self.text
    }

    /// How many lines there are.
    pub fn lines(&self) -> usize {
        self.text.lines().count()
    }

    /// Another page below this one.
    pub fn append(&mut self, below: &Self) {
        self.text.push_str(&below.text);
    }

    /// An empty line; none at the top, and never two in a row.
    pub fn gap(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with("\n\n") {
            self.text.push('\n');
        }
    }

    /// A text whose lines all begin at `column`.
    pub fn put(&mut self, column: usize, text: &Text) {
        let column = column.min(COLUMNS - NARROWEST);
        for line in fill(text, COLUMNS - column) {
            self.line(column, &line);
        }
    }

    /// `lead` from the column `at`, its spaces kept, and beside it from `column` on a text; below
    /// it where the lead is too long for that.
    pub fn hang(&mut self, at: usize, lead: &Text, column: usize, text: &Text) {
        let reaches = at + lead.columns();
        let column = column.min(COLUMNS - NARROWEST);
        let lines = fill(text, COLUMNS - column);
        let (Some((first, rest)), true) = (lines.split_first(), reaches < column) else {
            self.put(at, lead);
            self.put(column, text);
            return;
        };
        self.indent(at);
        self.write(lead);
        self.line(column - reaches, first);
        for line in rest {
            self.line(column, line);
        }
    }

    fn line(&mut self, indent: usize, text: &Text) {
        self.indent(indent);
        self.write(text);
        self.text.push('\n');
    }

    fn indent(&mut self, columns: usize) {
        self.text.push_str(&" ".repeat(columns));
    }

    fn write(&mut self, line: &Text) {
        for run in line.pieces.chunk_by(|a, b| a.0 == b.0) {
            let text: String = run.iter().map(|(_, text)| text.replace(TIED, " ")).collect();
            let style = run[0].0.style();
            self.text.push_str(&format!("{style}{text}{style:#}"));
        }
    }
}

/// How many columns a text fills on a terminal, never fewer than it does.
pub fn columns(text: &str) -> usize {
    text.chars().map(char_columns).sum()
}

/// A number and its unit, or other words that stay on one line.
pub fn tied(text: &str) -> String {
    text.replace(' ', "\u{a0}")
}

/// `text` with each number tied to the unit behind it.
fn tie_units(text: &str) -> String {
    let mut tied = String::with_capacity(text.len());
    let mut after_number = false;
    for (at, word) in text.split(' ').enumerate() {
        let unit = word.trim_end_matches(['.', ',', ';', ':', ')']);
        if at > 0 {
            tied.push(if after_number && UNITS.contains(&unit) { TIED } else { ' ' });
        }
        tied.push_str(word);
        after_number = word.ends_with(|c: char| c.is_ascii_digit());
    }
    tied
}

/// A sign that makes the one before it a picture makes it a column wider.
fn char_columns(c: char) -> usize {
    if c == '\u{fe0f}' { 1 } else { c.width().unwrap_or(0) }
}

/// The lines of a text, each of at most `room` columns; a longer word is cut.
fn fill(text: &Text, room: usize) -> Vec<Text> {
    let mut lines: Vec<Text> = Vec::new();
    let mut filled = 0;
    for word in text.words().into_iter().flat_map(|word| word.cut(room)) {
        let wide = word.columns();
        match lines.last_mut() {
            Some(line) if filled + 1 + wide <= room => {
                line.join(word);
                filled += 1 + wide;
            }
            _ => {
                lines.push(word);
                filled = wide;
            }
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use unicode_width::UnicodeWidthStr;

    fn page(make: impl FnOnce(&mut Page)) -> String {
        let mut page = Page::new();
        make(&mut page);
        anstream::adapter::strip_str(&page.finish()).to_string()
    }

    #[test]
    fn words_hang_below_the_first() {
        let text = "one two ".repeat(12);
        let laid = page(|page| page.hang(0, &Text::plain("wire"), 7, &Text::plain(&text)));
        let lines: Vec<&str> = laid.lines().collect();
        assert_eq!(lines.len(), 2);
        assert!(lines[0].starts_with("wire   one two"));
        assert!(lines[1].starts_with("       one"));
    }

    #[test]
    fn a_lead_with_nothing_beside_it_is_not_lost() {
        assert_eq!(
            page(|page| page.hang(1, &Text::plain("wire"), 7, &Text::plain(" "))),
            " wire\n"
        );
    }

    #[test]
    fn a_number_stays_with_its_unit() {
        let text = format!("{} {}", "x".repeat(76), tied("3 mm"));
        assert_eq!(page(|page| page.put(0, &Text::plain(&text))).lines().last(), Some("3 mm"));
    }

    #[test]
    fn a_number_in_a_sentence_stays_with_its_unit() {
        let text = format!("{} 8.5 A, and 10.61 V arrive", "x".repeat(76));
        let laid = page(|page| page.put(0, &Text::plain(&text)));
        assert_eq!(laid.lines().nth(1), Some("8.5 A, and 10.61 V arrive"));
    }

    proptest! {
        #[test]
        fn no_line_is_too_long(lead in ".{0,90}", text in "\\PC{0,300}", at in 0_usize..9) {
            let laid = page(|page| page.hang(at, &Text::plain(&lead), 24, &Text::plain(&text)));
            for line in laid.lines() {
                prop_assert!(line.width() <= COLUMNS, "{line:?}");
            }
        }

        #[test]
        fn no_word_is_lost(text in "[a-zé漢 ]{0,200}") {
            let laid = page(|page| page.put(60, &Text::plain(&text)));
            let letters = |text: &str| text.split_whitespace().collect::<String>();
            prop_assert_eq!(letters(&laid), letters(&text));
        }
    }
}
