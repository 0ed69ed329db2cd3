//! A question's page: its drawings, then what was found, each figure with its working.

use maud::{Markup, html};
use spile_answer::{Basis, Finding, Question, Verdict};
use spile_ask::{Asked, Pair, number};
use spile_sheet::{BarSize, Drawing, Width, drawings};

use crate::page::figure::{bar, change, drawing, limit, verdict};
use crate::page::next::{anchor, measure};
use crate::page::shell::Page;
use crate::view::View;

/// The page of a question.
pub(crate) fn page(view: &View, question: Question) -> Markup {
    let word = question.word();
    let report = view.report();
    let Some(asked) = report.answers.iter().find(|asked| asked.question == question) else {
        return html! {};
    };
    let (before, after) = view.before_after();
    let wide = drawings(question, before, after, Width::Wide);
    let narrow = drawings(question, before, after, Width::Narrow);
    let mut pairs = asked.pairs();
    pairs.sort_by_key(|pair| std::cmp::Reverse(pair.now.verdict));
    let main = html! {
        div.qhead {
            h1 { (word) }
            p.q { (question.sentence()) }
            (verdict(asked.now().verdict(), "big"))
        }
        (said(asked))
        // The one-line diagram needs the whole width; every other drawing has its list beside it.
        div.sheet .across[question == Question::Wire] .bare[wide.is_empty()] {
            @if !wide.is_empty() {
                div.drawn {
                    @for (at, wide) in wide.iter().enumerate() {
                        (drawn(&format!("{word}-{at}"), wide, narrow.get(at)))
                    }
                }
            }
            aside.side aria-label="what to measure, and what the lines mean" {
                (next(view, question))
                @if !wide.is_empty() { (lines()) }
            }
        }
        section.after aria-labelledby="h-f" {
            h2 #h-f { "Findings" }
            @for pair in &pairs { (finding(pair)) }
            @if pairs.is_empty() { p { "Nothing was found." } }
        }
        (taken(view, asked))
    };
    let sheet = Question::ALL.iter().position(|other| *other == question).unwrap_or_default() + 2;
    Page {
        view,
        title: word.to_owned(),
        sheet: format!("{sheet} of 9"),
        question: Some(question),
        class: "question",
    }
    .around(&main)
}

/// A drawing under its title.
fn drawn(id: &str, wide: &Drawing, narrow: Option<&Drawing>) -> Markup {
    html! {
        section aria-labelledby=(format!("{id}-h")) {
            h2 id=(format!("{id}-h")) { (wide.title) }
            (drawing(id, wide, narrow))
        }
    }
}

/// What to measure to settle this question.
fn next(view: &View, question: Question) -> Markup {
    let all = view.report().measure_next.iter();
    let here: Vec<_> = all
        .filter(|next| next.hangs.iter().any(|hangs| hangs.question == question))
        .take(3)
        .collect();
    html! {
        section aria-labelledby="h-n" {
            h2 #h-n { "Measure next" }
            @if here.is_empty() {
                p.small { "Nothing that could be measured would change what is found here." }
            } @else {
                ol { @for next in here { (measure(view, next)) } }
                p.small.more { a href=(view.href("/next")) { "All that is worth measuring" } }
            }
        }
    }
}

/// What the lines of a drawing mean.
fn lines() -> Markup {
    let all = [
        ("cut", "cut through"),
        ("out", "seen"),
        ("hid", "hidden, or where it may be"),
        ("add", "brought by the job"),
        ("gone", "taken away"),
        ("space", "space that papers ask for"),
    ];
    html! {
        section aria-labelledby="h-l" {
            h2 #h-l { "Lines" }
            ul.lines { @for (class, words) in all { li {
                svg.dw viewBox="0 0 44 14" aria-hidden="true" focusable="false" {
                    line .(class) x1="0" y1="7" x2="44" y2="7" {}
                }
                span { (words) }
            } } }
        }
    }
}

/// What the leading finding says.
fn said(asked: &Asked) -> Markup {
    let leading = asked.now().leading();
    let before = asked.before.verdict();
    let now = asked.now().verdict();
    html! {
        @if let Some(leading) = leading {
            p.lead {
                @if asked.after.is_some() && before.word() != now.word() {
                    "Before the job: " (before.word()) ". "
                }
                (leading.says)
                @if let (Some(mend), Verdict::Stop) = (&leading.mend, now) {
                    " To clear it: " (mend)
                }
            }
        }
    }
}

/// One finding, with the working of its figure.
fn finding(pair: &Pair<'_>) -> Markup {
    let now = pair.now;
    let id = anchor(&now.id);
    let shows = now.figure.is_some() && !now.inputs.is_empty() || !now.working.is_empty();
    html! {
        article.finding id=(id) aria-labelledby=(format!("{id}-h")) {
            (verdict(now.verdict, ""))
            div {
                h3 id=(format!("{id}-h")) { (now.label) }
                p.headline { (change(pair)) }
                @if !now.says.is_empty() { p.say { (now.says) } }
                @if let (Some(mend), false) = (&now.mend, now.verdict == Verdict::Good) {
                    p.say { b { "To clear it: " } (mend) }
                }
                @if !now.expects.is_empty() { (expected(now)) }
                @for ask in &now.asks {
                    p.say.small {
                        b { (ask.input) } ": " (ask.how.trim_end_matches('.')) "."
                        @if !ask.settles.is_empty() {
                            " It settles " (ask.settles.trim_end_matches('.')) "."
                        }
                        @if !ask.turns.is_empty() { " It is " (ask.turns) "." }
                    }
                }
            }
            div.bwrap { (bar(pair, BarSize::Full)) }
            @if shows { (working(now)) }
        }
    }
}

/// What a meter should show, place by place in their order, and what it did show.
fn expected(now: &Finding) -> Markup {
    let was_read = now.expects.iter().any(|one| one.read.is_some());
    html! {
        div.scroll tabindex="0" role="region" aria-label=(format!("what to expect: {}", now.label)) {
            table.tbl {
                thead { tr {
                    th scope="col" { "where" }
                    th.n scope="col" { "expect" }
                    th.n scope="col" { "from" }
                    th.n scope="col" { "to" }
                    @if was_read { th.n scope="col" { "read" } }
                } }
                tbody { @for one in &now.expects {
                    @let figure = |value| number::with_unit(value, one.unit);
                    tr {
                        th scope="row" { (one.place) }
                        td.n data-l="expect" { b { (figure(one.likely)) } }
                        td.n data-l="from" { (figure(one.low)) }
                        td.n data-l="to" { (figure(one.high)) }
                        @if was_read { td.n data-l="read" { (one.read.map(figure).unwrap_or_default()) } }
                    }
                } }
            }
        }
    }
}

/// How a figure was worked out: its formulas, the numbers put in, where its limit comes from.
fn working(now: &Finding) -> Markup {
    html! {
        details.working {
            summary {
                "how it is worked out"
                span.sr { ": " (now.label) }
            }
            div {
                @for step in &now.working {
                    div.step {
                        h4 { (step.what) }
                        @if !step.formula.is_empty() { p.formula { (step.formula) } }
                        @if !step.numbers.is_empty() { p.formula.num { (step.numbers) } }
                        @if !step.source.is_empty() { p.src { "source: " (step.source) } }
                    }
                }
                (against(now))
                (put_in(now))
            }
        }
    }
}

fn against(now: &Finding) -> Markup {
    let Some((held, words)) = now.limit.as_ref().zip(limit(now)) else { return html! {} };
    html! {
        h4 { "The limit" }
        p { (words) @if held.kind != held.class.word() { " (" (held.class.word()) ")" } }
        @if !held.source.is_empty() { p.src { "source: " (held.source) } }
        @if !held.firm {
            p.src { "It is known from memory or a stand-in only, so it never makes a stop." }
        }
    }
}

/// What was put in: low, likely and high in one unit, what stands behind it, and where it stands.
fn put_in(now: &Finding) -> Markup {
    if now.inputs.is_empty() {
        return html! {};
    }
    html! {
        h4 { "What was put in" }
        div.scroll tabindex="0" role="region" aria-label=(format!("what was put in: {}", now.label)) {
            table.tbl.inputs {
                thead { tr {
                    th scope="col" { "what" }
                    th.n scope="col" { "low" }
                    th.n scope="col" { "likely" }
                    th.n scope="col" { "high" }
                    th scope="col" { "basis" }
                } }
                tbody { @for input in &now.inputs {
                    @let ([low, likely, high], unit) = number::input(input);
                    tr {
                        th scope="row" { (input.name) @if !unit.is_empty() { ", " (unit) } }
                        td.n data-l="low" { (low) }
                        td.n data-l="likely" { b { (likely) } }
                        td.n data-l="high" { (high) }
                        td.from {
                            span.basis .typical[input.basis == Basis::Typical] { (input.basis.word()) }
                            @if !input.source.is_empty() { " " span.small.quiet { (input.source) } }
                        }
                    }
                } }
            }
        }
    }
}

/// What was taken for granted to answer the question.
fn taken(view: &View, asked: &Asked) -> Markup {
    let assumed = &asked.now().assumed;
    html! {
        @if !assumed.is_empty() {
            section.after aria-labelledby="h-t" {
                h2 #h-t { "Taken for granted" }
                ul.list { @for one in assumed { li { (one) } } }
                p.small.more { a href=(view.href("/assumed")) { "Everything that was assumed" } }
            }
        }
    }
}
