//! A verdict as word and shape, and a figure on its bar.

use spile_answer::{Figure, Limit, Unit, Verdict};
use spile_ask::{Pair, number};

use super::bar::{Bar, Spot, draw};
use super::page::{Page, Text, Tone, tied};

/// The column in which the verdict of a row begins.
pub const VERDICT: usize = 7;
/// The column in which the text of a row begins.
pub const TEXT: usize = 25;
/// What stands for the bar of what is open.
pub const NO_BAR: &str = "┄ ┄ ┄";

/// The column in which a bar's scale begins.
const SCALE: usize = 9;
/// The column in which what is said beside a bar begins.
const BESIDE: usize = 54;

/// The shape of a verdict: circle, triangle, octagon (as near as terminals have it), dashed ring.
pub const fn shape(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Good => "○",
        Verdict::Care(_) => "△",
        Verdict::Stop => "⬣",
        Verdict::Open => "◌",
    }
}

/// The tone of a verdict.
pub const fn tone(verdict: Verdict) -> Tone {
    match verdict {
        Verdict::Good => Tone::Good,
        Verdict::Care(_) => Tone::Care,
        Verdict::Stop => Tone::Stop,
        Verdict::Open => Tone::Open,
    }
}

/// `△ care: unsure`.
pub fn in_words(verdict: Verdict) -> String {
    let reason = verdict.reason().map(|reason| format!(": {}", reason.word())).unwrap_or_default();
    format!("{} {}{reason}", shape(verdict), verdict.word())
}

/// What a finding's figure is and how it changes: `volts at the fridge: 12.15 → 11.41 V`.
pub fn headline(pair: &Pair<'_>) -> Text {
    let Pair { before, now } = pair;
    let mut text = Text::new().and(Tone::Plain, &now.label);
    if let Some(figure) = &now.figure {
        let before = before.and_then(|before| before.figure.as_ref());
        let change = number::change(before, figure, now.limit.as_ref());
        text = text.and(Tone::Plain, ": ").and(Tone::Strong, &tied(&change));
        if let Some(worst) = number::worst(figure, now.limit.as_ref()) {
            text = text.and(Tone::Plain, &format!(" {}", tied(&format!("({worst})"))));
        }
    } else if now.verdict == Verdict::Open {
        text = text.and(Tone::Faint, &format!(" {}", tied(NO_BAR)));
    }
    text
}

/// The bar of a finding that has a figure and a limit.
pub fn bar(page: &mut Page, pair: &Pair<'_>) {
    let Pair { before, now } = pair;
    let (Some(figure), Some(limit)) = (&now.figure, &now.limit) else { return };
    if now.verdict == Verdict::Open {
        page.put(SCALE, &Text::new().and(Tone::Faint, &tied(NO_BAR)));
        return;
    }
    let before = before.and_then(|before| before.figure.as_ref());
    let before = before.filter(|before| before.unit == figure.unit);
    let bar = Bar {
        before: before.map(|before| before.likely),
        after: figure.likely,
        worst: figure.unfavourable,
        limit: limit.value,
        sense: limit.sense,
    };
    let Some(drawn) = draw(&bar) else { return };
    let start = number::limit(drawn.start, Unit::Count);
    let [left, right] = [(drawn.off_left, '‹'), (drawn.off_right, '›')]
        .map(|(off, mark)| if off { mark } else { ' ' });
    let at = SCALE.saturating_sub(start.chars().count() + 1);
    let lead = Text::plain(&start).and(Tone::Plain, &format!("{left}"));
    let lead = marked(lead, &drawn.cells).and(Tone::Plain, &format!("{right}"));
    page.hang(at, &lead, BESIDE, &beside(&bar, figure, limit));
}

/// The scale with what the job brings in its own tone.
fn marked(lead: Text, cells: &str) -> Text {
    cells.chars().fold(lead, |text, cell| {
        let tone = if matches!(cell, '●' | '◉') { Tone::Accent } else { Tone::Plain };
        text.and(tone, &cell.to_string())
    })
}

/// What is said beside a bar: what lies off its scale, and the limit with its kind.
fn beside(bar: &Bar, figure: &Figure, limit: &Limit) -> Text {
    let off = |value: &f64| matches!(bar.spot(*value), Some(Spot::OffLeft | Spot::OffRight));
    let moved = bar.before.filter(|before| *before != bar.after);
    let before = moved.filter(off).map(|before| ("before ", before));
    let word = if moved.is_some() { "after " } else { "" };
    let after = Some((word, bar.after)).filter(|(_, after)| off(after));
    let worst = Some(("worst ", bar.worst)).filter(|(_, worst)| off(worst) && after.is_none());
    let mut text = Text::new();
    for (word, value) in [before, after, worst].into_iter().flatten() {
        let said = format!("{word}{}", number::with_unit(value, figure.unit));
        text = text.and(Tone::Plain, &format!("{}; ", tied(&said)));
    }
    text.and(Tone::Plain, &tied(&number::limit_in_words(limit, figure.unit)))
        .and(Tone::Plain, &format!(", {}", limit.kind))
}
