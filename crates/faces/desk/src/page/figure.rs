//! Verdicts, figures before and after, and limit bars, as every page shows them.

use maud::{Markup, PreEscaped, html};
use spile_answer::{Finding, Input, Verdict};
use spile_ask::{Pair, number};
use spile_sheet::{BarSize, Drawing, limit_bar};

/// The shapes of the verdicts and the mark, for every page to use.
pub(crate) fn shapes() -> Markup {
    PreEscaped(include_str!("../../static/shapes.svg").to_owned())
}

/// The shape of a verdict; its word always stands beside it.
pub(crate) fn shape(verdict: Verdict) -> Markup {
    html! {
        svg aria-hidden="true" focusable="false" { use href=(format!("#v-{}", verdict.word())); }
    }
}

/// `: unsure`, behind the word of a care.
pub(crate) fn reason(verdict: Verdict) -> String {
    verdict.reason().map(|reason| format!(": {}", reason.word())).unwrap_or_default()
}

/// A verdict as shape and word, with its reason.
pub(crate) fn verdict(verdict: Verdict, class: &str) -> Markup {
    html! {
        div.verdict .(class) {
            (shape(verdict))
            div {
                b { (verdict.word()) @if verdict.reason().is_some() { i { ":" } } }
                @if let Some(reason) = verdict.reason() { " " span { (reason.word()) } }
            }
        }
    }
}

/// A verdict in a line of text.
pub(crate) fn tiny(verdict: Verdict) -> Markup {
    html! { span.verdict.tiny { (shape(verdict)) b { (verdict.word()) } } }
}

/// The figure of a finding, before and after.
pub(crate) fn change(pair: &Pair<'_>) -> Markup {
    let Pair { before, now } = pair;
    let Some(figure) = &now.figure else { return html! {} };
    let limit = now.limit.as_ref();
    let had = before.and_then(|before| before.figure.as_ref());
    let change = number::parts(had, figure, limit);
    html! {
        span.moved {
            @if let Some(before) = &change.before {
                span.b { (before) }
                span.to aria-hidden="true" { " → " }
                span.sr { " before, after " }
            }
            span .(if before.is_some() { "a" } else { "n" }) { (change.now) }
            @if !change.unit.is_empty() { " " span.u { (change.unit) } }
            @if change.is_as_before { " " span.u { "as before" } }
            @if let Some(worst) = number::worst(figure, limit) { span.w { (worst) } }
        }
    }
}

/// The limit bar of a finding.
pub(crate) fn bar(pair: &Pair<'_>, size: BarSize) -> Markup {
    limit_bar(pair.before, Some(pair.now), size, None)
}

/// `at most 3 %, practice`.
pub(crate) fn limit(finding: &Finding) -> Option<String> {
    let (figure, limit) = (finding.figure.as_ref()?, finding.limit.as_ref()?);
    Some(format!("{}, {}", number::limit_in_words(limit, figure.unit), limit.kind))
}

/// The likely value of an input, and its bounds: `20 mΩ (5 to 50)`.
pub(crate) fn input(input: &Input) -> Markup {
    let ([low, likely, high], unit) = number::input(input);
    html! {
        (likely) @if !unit.is_empty() { " " (unit) }
        @if low != high { " " span.quiet { "(" (low) " to " (high) ")" } }
    }
}

/// A drawing for wide pages and the same drawn anew for narrow ones, with its figures as a table.
pub(crate) fn drawing(id: &str, wide: &Drawing, narrow: Option<&Drawing>) -> Markup {
    html! {
        figure.draw id=(id) aria-label=(wide.title) {
            (wide.svg)
            @if let Some(narrow) = narrow { (narrow.svg) }
            @if let Some(scale) = &wide.scale { figcaption { span { "millimetres, " (scale) } } }
            (table(wide))
        }
    }
}

/// The figures of a drawing as a table that opens.
fn table(drawing: &Drawing) -> Markup {
    let Some(table) = drawing.table.as_ref().filter(|table| !table.rows.is_empty()) else {
        return html! {};
    };
    html! {
        details.working.figures {
            summary { "the same in figures" span.sr { ": " (drawing.title) } }
            div { div.scroll tabindex="0" role="region" aria-label=(drawing.title) {
                table.tbl {
                    thead { tr { @for head in &table.head { th scope="col" { (head) } } } }
                    tbody { @for row in &table.rows { tr { @for cell in row { td { (cell) } } } } }
                }
            } }
        }
    }
}
