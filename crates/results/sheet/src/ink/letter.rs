//! Lettering: how wide it is, and how figures are written.

use super::view::Box2;

/// How a text stands to its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

impl Anchor {
    pub(crate) const fn word(self) -> Option<&'static str> {
        match self {
            Self::Start => None,
            Self::Middle => Some("middle"),
            Self::End => Some("end"),
        }
    }
}

/// A kind of lettering, by its classes in the style.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Letter {
    /// Its classes besides `halo`.
    pub class: &'static str,
    /// Its size, in units.
    pub size: f64,
    /// Whether it is heavy.
    pub bold: bool,
}

impl Letter {
    /// Figures and plain words.
    pub const PLAIN: Self = Self { class: "", size: 12.5, bold: false };
    /// Names of things, notes.
    pub const NOTE: Self = Self { class: "t2 t-s", size: 11.5, bold: false };
    /// The title of a view.
    pub const TITLE: Self = Self { class: "t-b", size: 12.5, bold: true };
    /// What the job brings.
    pub const ADDED: Self = Self { class: "t-a t-s", size: 11.5, bold: false };
    /// The same, upon the body of an addition.
    pub const ON_ADDED: Self = Self { class: "t-a t-s onwash", size: 11.5, bold: false };
    /// A note upon the body of an addition.
    pub const NOTE_ON_ADDED: Self = Self { class: "t2 t-s onwash", size: 11.5, bold: false };
    /// A figure after the job.
    pub const AFTER: Self = Self { class: "t-a t-b", size: 12.5, bold: true };
    /// In a ball.
    pub const BALL: Self = Self { class: "ball-t", size: 11.0, bold: true };

    /// Where a text stands if its base line begins, ends or has its middle at a place.
    pub fn stands(&self, [x, y]: [f64; 2], anchor: Anchor, text: &str) -> Box2 {
        let wide = text_width(text, self.size, self.bold);
        let left = match anchor {
            Anchor::Start => x,
            Anchor::Middle => x - wide / 2.0,
            Anchor::End => x - wide,
        };
        Box2 { left, top: y - self.size * 0.8, right: left + wide, bottom: y + self.size * 0.25 }
    }

    /// The same for a text that runs upwards.
    pub fn stands_upright(&self, [x, y]: [f64; 2], anchor: Anchor, text: &str) -> Box2 {
        let flat = self.stands([0.0, 0.0], anchor, text);
        Box2 {
            left: x + flat.top,
            top: y - flat.right,
            right: x + flat.bottom,
            bottom: y - flat.left,
        }
    }
}

/// A place where a label may stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// Its base line.
    pub at: [f64; 2],
    /// How it stands to it.
    pub anchor: Anchor,
    /// Whether it runs upwards.
    pub upright: bool,
}

impl Spot {
    /// A level text about a place: its middle, in both directions.
    pub const fn about([x, y]: [f64; 2]) -> Self {
        Self { at: [x, y + 4.0], anchor: Anchor::Middle, upright: false }
    }

    /// A level text that begins at a place.
    pub const fn from([x, y]: [f64; 2]) -> Self {
        Self { at: [x, y + 4.0], anchor: Anchor::Start, upright: false }
    }

    /// A level text that ends at a place.
    pub const fn to([x, y]: [f64; 2]) -> Self {
        Self { at: [x, y + 4.0], anchor: Anchor::End, upright: false }
    }

    /// An upright text about a place.
    pub const fn up_about([x, y]: [f64; 2]) -> Self {
        Self { at: [x + 4.0, y], anchor: Anchor::Middle, upright: true }
    }
}

/// The estimated width of a text, on the safe side for the sans faces that systems have.
///
/// Advances are those of a wide humanist sans, the widest face in the style's list; others are up
/// to a sixth narrower.
pub fn text_width(text: &str, size: f64, bold: bool) -> f64 {
    let wide: f64 = text.chars().map(advance).sum();
    wide * size * if bold { 1.09 } else { 1.0 }
}

fn advance(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | '\'' | '|' => 0.28,
        ' ' | ',' | '.' | ':' | ';' => 0.33,
        'f' | 't' | 'r' | '(' | ')' | '[' | ']' | '-' | '/' | 'I' | '!' => 0.41,
        'm' | 'w' | 'M' | 'W' | '%' | '@' | '→' | '…' => 0.99,
        'a'..='z' | '0'..='9' => 0.64,
        '×' | '±' | '−' | '+' | '=' | '<' | '>' | '–' => 0.84,
        'A'..='Z' | '&' => 0.77,
        letter if letter.is_ascii() => 0.64,
        letter if letter >= '\u{1100}' => 1.1,
        _ => 0.8,
    }
}

/// A text in lines that are at most `most` wide; a longer word stands by itself.
pub fn wrapped(text: &str, letter: &Letter, most: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        if let Some(line) = lines.last_mut()
            && text_width(&format!("{line} {word}"), letter.size, letter.bold) <= most
        {
            line.push(' ');
            line.push_str(word);
        } else {
            lines.push(word.to_owned());
        }
    }
    lines
}

/// A figure in millimetres as drawings have it: whole, or to the tenth where it is not, with
/// thousands parted.
pub fn figure(value: f64) -> String {
    let tenths = (value.abs() * 10.0).round();
    let (whole, tenth) = ((tenths / 10.0).floor(), tenths % 10.0);
    let digits = format!("{whole:.0}");
    let mut text = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place) % 3 == 0 {
            text.push(',');
        }
        text.push(digit);
    }
    if tenth > 0.0 {
        text.push_str(&format!(".{tenth:.0}"));
    }
    if value < 0.0 && tenths > 0.0 { format!("−{text}") } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_whole_or_to_the_tenth() {
        assert_eq!(figure(3820.0), "3,820");
        assert_eq!(figure(22.5), "22.5");
        assert_eq!(figure(-0.04), "0");
        assert_eq!(figure(-12.04), "−12");
        assert_eq!(figure(1_234_567.0), "1,234,567");
    }

    #[test]
    fn lines_are_no_wider_than_they_may_be() {
        let text = "upright fridge, 92 L, over the right rear wheel arch";
        let lines = wrapped(text, &Letter::NOTE, 110.0);
        assert!(lines.iter().all(|line| text_width(line, 11.5, false) <= 110.0), "{lines:?}");
        assert_eq!(lines.join(" "), text);
    }
}
