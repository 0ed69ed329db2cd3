//! The working of one finding: the figure, its limit, the formulas, what was put in.

use spile_answer::{Expect, Figure, Finding, Input, Limit, Question, Step, Verdict};
use spile_ask::{Pair, Report, number};

use super::page::{COLUMNS, Page, Text, Tone};
use super::report::expected;
use super::verdict;

/// The column of what stands beside a word on the left.
const BESIDE: usize = 10;
/// The column in which the numbers of an input begin.
const NUMBERS: usize = 40;

/// The working of one finding as it is printed.
pub fn why(report: &Report, question: Question, pair: &Pair<'_>) -> String {
    let mut page = Page::new();
    let now = pair.now;
    heading(&mut page, report, question, now);
    if !now.says.is_empty() {
        page.gap();
        page.put(0, &Text::plain(&now.says));
    }
    figure(&mut page, pair);
    if let (Some(mend), false) = (&now.mend, now.verdict == Verdict::Good) {
        page.gap();
        title(&mut page, "to clear it");
        page.put(2, &Text::plain(mend));
    }
    if !now.expects.is_empty() {
        page.gap();
        expects(&mut page, &now.expects);
    }
    if !now.asks.is_empty() {
        page.gap();
        title(&mut page, "what to measure");
        for ask in &now.asks {
            let how = ask.how.trim_end_matches('.');
            let settles = ask.settles.trim_end_matches('.');
            let settles =
                if settles.is_empty() { String::new() } else { format!(" It settles {settles}.") };
            let turns = match ask.turns.as_str() {
                "" => String::new(),
                turns => format!(" It is {turns}."),
            };
            let text = Text::new()
                .and(Tone::Strong, &ask.input)
                .and(Tone::Plain, &format!(": {how}.{settles}{turns}"));
            page.hang(2, &Text::plain("·"), 4, &text);
        }
    }
    if !now.working.is_empty() {
        page.gap();
        title(&mut page, "how it is worked out");
        for (number, step) in now.working.iter().enumerate() {
            worked(&mut page, number + 1, step);
        }
    }
    if !now.inputs.is_empty() {
        page.gap();
        inputs(&mut page, &now.inputs);
    }
    page.finish()
}

/// What a meter should show, place by place, in the order in which to take it, and how.
fn expects(page: &mut Page, expects: &[Expect]) {
    title(page, "what to expect of the meter, its own error counted in");
    for (number, expect) in expects.iter().enumerate() {
        let lead = Text::plain(&format!("{:>2}", number + 1));
        page.hang(1, &lead, 4, &expected(expect));
        page.put(6, &Text::new().and(Tone::Faint, &expect.how));
    }
}

fn heading(page: &mut Page, report: &Report, question: Question, now: &Finding) {
    let mut about = report.build.clone();
    for part in [&report.job, &report.option].into_iter().flatten() {
        about = format!("{about}, {part}");
    }
    page.put(0, &Text::new().and(Tone::Faint, &about));
    let name = Text::new().and(Tone::Strong, &format!("{}.{}", question.word(), now.id));
    let text = Text::new().and(verdict::tone(now.verdict), &verdict::in_words(now.verdict));
    page.hang(0, &name, name.columns() + 3, &text);
    page.put(0, &Text::plain(&now.label));
}

fn title(page: &mut Page, text: &str) {
    page.put(0, &Text::new().and(Tone::Strong, text));
}

fn figure(page: &mut Page, pair: &Pair<'_>) {
    let Pair { before, now } = pair;
    let Some(figure) = &now.figure else { return };
    page.gap();
    let limit = now.limit.as_ref();
    if let Some(before) = before.and_then(|before| before.figure.as_ref()) {
        page.hang(0, &Text::plain("before"), BESIDE, &with_worst(Tone::Plain, before, limit));
    }
    let word = if before.is_some() { "after" } else { "figure" };
    page.hang(0, &Text::plain(word), BESIDE, &with_worst(Tone::Strong, figure, limit));
    let Some(limit) = limit else { return };
    let kind = if limit.kind == limit.class.word() {
        limit.kind.to_owned()
    } else {
        format!("{} ({})", limit.kind, limit.class.word())
    };
    let text = format!("{}, {kind}", number::limit_in_words(limit, figure.unit));
    page.hang(0, &Text::plain("limit"), BESIDE, &Text::plain(&text));
    source(page, BESIDE, &limit.source);
    if !limit.firm {
        let text = "It is known from memory or a stand-in only, so it never makes a stop.";
        page.put(BESIDE, &Text::plain(text));
    }
    verdict::bar(page, pair);
}

/// `11.41 V (worst 10.62 V)`.
fn with_worst(tone: Tone, figure: &Figure, limit: Option<&Limit>) -> Text {
    let text = Text::new().and(tone, &number::change(None, figure, limit));
    match number::worst(figure, limit) {
        Some(worst) => text.and(Tone::Plain, &format!(" ({worst})")),
        None => text,
    }
}

fn source(page: &mut Page, at: usize, source: &str) {
    if !source.is_empty() {
        let text = Text::new().and(Tone::Faint, source);
        page.hang(at, &Text::new().and(Tone::Faint, "source:"), at + 8, &text);
    }
}

fn worked(page: &mut Page, number: usize, step: &Step) {
    let lead = Text::plain(&format!("{number:>2}"));
    page.hang(1, &lead, 4, &Text::new().and(Tone::Strong, &step.what));
    for line in [step.formula.as_ref(), &step.numbers] {
        if !line.is_empty() {
            page.put(6, &Text::plain(line));
        }
    }
    source(page, 6, &step.source);
}

/// What was put in: low, likely and high in one unit, what stands behind it, and where it stands.
fn inputs(page: &mut Page, inputs: &[Input]) {
    let head = columns(["low", "likely", "high"].map(str::to_owned), "");
    page.hang(0, &Text::new().and(Tone::Strong, "what was put in"), NUMBERS, &head);
    for input in inputs {
        let (numbers, unit) = number::input(input);
        page.hang(2, &Text::plain(&input.name), NUMBERS, &columns(numbers, unit));
        let behind = if input.source.is_empty() {
            input.basis.word().to_owned()
        } else {
            format!("{}, {}", input.basis.word(), input.source)
        };
        page.put(6, &Text::new().and(Tone::Faint, &behind));
    }
}

/// Three numbers set right in columns, and their unit; in a row where they are too long for that.
fn columns([low, likely, high]: [String; 3], unit: &str) -> Text {
    let text = format!("{low:>9}{likely:>10}{high:>10} {unit}");
    let text = text.trim_end();
    let wide = NUMBERS + super::page::columns(text) > COLUMNS;
    let long = [&low, &likely, &high].iter().any(|number| number.chars().count() > 9);
    if wide || long {
        Text::plain(format!("{low} {likely} {high} {unit}").trim_end())
    } else {
        Text::plain(&super::page::tied(text))
    }
}
