//! The first page of a build: the vehicle, the eight questions, what to measure next, the jobs.

use maud::{Markup, html};
use spile_answer::{Question, Verdict};
use spile_ask::{Asked, Pair, lead, measures, typical_inputs};
use spile_sheet::{BarSize, Width, vehicle};

use crate::page::figure::{bar, change, drawing, input, tiny, verdict};
use crate::page::jobs;
use crate::page::next::measure;
use crate::page::shell::{Page, WORST_FIRST};
use crate::view::View;

/// How many assumed values the first page names.
const ASSUMED: usize = 4;

/// The page.
pub(crate) fn page(view: &View) -> Markup {
    let main = html! {
        (answer(view))
        div.sheet {
            (drawn(view))
            aside.side aria-label="what changes and what to measure" {
                (jobs::changes(view))
                (next(view))
            }
        }
        (questions(view))
        div.twin {
            (jobs::options(view))
            div.side {
                (jobs::list(view, "h-jobs"))
                (assumed(view))
            }
        }
    };
    let title = view.choice.job.as_deref().unwrap_or("as it stands");
    Page {
        view,
        title: title.to_owned(),
        sheet: "first page".to_owned(),
        question: None,
        class: "first",
    }
    .around(&main)
}

/// What it comes to, in a sentence and in numbers.
fn answer(view: &View) -> Markup {
    let report = view.report();
    let worst = report.verdict();
    let count = |word: &str| {
        report.answers.iter().filter(|asked| asked.now().verdict().word() == word).count()
    };
    let leading = report
        .answers
        .iter()
        .filter_map(|asked| Some((asked, asked.now().leading()?)))
        .find(|(_, finding)| finding.verdict == worst);
    html! {
        div.answer {
            h1 { (lead(worst)) }
            p {
                @for (at, one) in WORST_FIRST.into_iter().filter(|one| count(one.word()) > 0).enumerate() {
                    @if at > 0 { ", " }
                    (count(one.word())) " " b { (one.word()) }
                }
                ". "
                @if let (Some((asked, finding)), true) = (leading, worst != Verdict::Good) {
                    b { (asked.question.word()) } ": " (finding.says)
                    @if let (Some(mend), Verdict::Stop) = (&finding.mend, worst) {
                        " To clear it: " (mend)
                    }
                }
            }
        }
    }
}

fn drawn(view: &View) -> Markup {
    let (before, after) = view.before_after();
    let wide = vehicle(before, after, Width::Wide);
    let narrow = vehicle(before, after, Width::Narrow);
    html! {
        div.drawn {
            @for (at, wide) in wide.iter().enumerate() {
                (drawing(&format!("vehicle-{at}"), wide, narrow.get(at)))
            }
            @if wide.is_empty() {
                p.quiet {
                    "There is no drawing yet: it needs the inside length, width and height of the \
                     vehicle, and where its bays and things are."
                }
            }
        }
    }
}

fn next(view: &View) -> Markup {
    let measures = measures(view.report());
    html! {
        section aria-labelledby="h-next" {
            h2 #h-next { "Measure next" }
            @if measures.is_empty() {
                p.small { "Nothing that could be measured would change a verdict." }
            } @else {
                ol { @for next in &measures { (measure(view, next)) } }
            }
            @if !view.report().measure_next.is_empty() {
                p.small.more { a href=(view.href("/next")) { "All that is worth measuring" } }
            }
        }
    }
}

fn questions(view: &View) -> Markup {
    let has_before = view.choice.job.is_some();
    html! {
        section.rows aria-labelledby="h-eight" {
            div.rows-head {
                h2 #h-eight { "The eight questions" }
                (key(has_before))
            }
            div.rows-list {
                @for asked in &view.report().answers { (row(view, asked)) }
            }
        }
    }
}

/// What the marks of a limit bar mean.
fn key(has_before: bool) -> Markup {
    html! {
        div.key {
            @if has_before {
                span { svg.bar aria-hidden="true" focusable="false" {
                    circle.b-before cx="13" cy="8" r="5.25" {}
                } "as it stands" }
            }
            span { svg.bar aria-hidden="true" focusable="false" {
                circle.b-after cx="13" cy="8" r="6" {}
            } @if has_before { "after the job" } @else { "as it stands" } }
            span { svg.bar aria-hidden="true" focusable="false" {
                line.b-whisk x1="4" x2="22" y1="8" y2="8" {} line.b-cap x1="22" x2="22" y1="2" y2="14" {}
            } "to the unfavourable end" }
            span { svg.bar aria-hidden="true" focusable="false" {
                path.b-wall d="M14.75 2l6 -6M14.75 8.2l6 -6M14.75 14.4l6 -6" {}
                line.b-limit x1="13" x2="13" y1="-2" y2="18" {}
            } "limit, hatched where it may not be" }
        }
    }
}

/// One question in a row.
fn row(view: &View, asked: &Asked) -> Markup {
    let word = asked.question.word();
    let pairs = asked.pairs();
    let leading = asked.now().leading();
    let leading: Option<&Pair<'_>> =
        pairs.iter().find(|pair| leading.is_some_and(|leading| leading.id == pair.now.id));
    html! {
        article.row id=(word) aria-labelledby=(format!("w-{word}")) {
            h3 id=(format!("w-{word}")) { a href=(view.href(&format!("/q/{word}"))) { (word) } }
            div.row-q {
                p.q { (asked.question.sentence()) }
                @if let Some(pair) = leading { p.m { (said(asked, pair)) } }
            }
            (verdict(asked.now().verdict(), ""))
            div.row-f {
                @if let Some(pair) = leading {
                    span.lab { (pair.now.label) }
                    (change(pair))
                }
            }
            div.row-b { @if let Some(pair) = leading { (bar(pair, BarSize::Compact)) } }
        }
    }
}

/// What a leading finding says, and of a stop what would clear it.
fn said(asked: &Asked, pair: &Pair<'_>) -> Markup {
    let before = asked.before.verdict();
    let now = asked.now().verdict();
    html! {
        @if asked.after.is_some() && before.word() != now.word() {
            "Before the job: " (before.word()) ". "
        }
        (pair.now.says)
        @if let (Some(mend), Verdict::Stop) = (&pair.now.mend, now) { " To clear it: " (mend) }
    }
}

fn assumed(view: &View) -> Markup {
    let inputs = typical_inputs(view.report());
    html! {
        section aria-labelledby="h-as" {
            h2 #h-as { "Assumed" small { "until you say otherwise" } }
            table.parts { tbody {
                @for one in inputs.iter().take(ASSUMED) {
                    tr { th scope="row" { (one.name) } td.n { (input(one)) } }
                }
            } }
            p.small.more {
                a href=(view.href("/assumed")) {
                    @if inputs.len() > ASSUMED { "All " (inputs.len()) " assumed values" }
                    @else { "Everything that was assumed" }
                }
            }
        }
    }
}

/// The verdict of one question, of a report.
pub(crate) fn of(answers: &[Asked], question: Question, before: bool) -> Markup {
    let asked = answers.iter().find(|asked| asked.question == question);
    html! {
        @if let Some(asked) = asked {
            (tiny(if before { asked.before.verdict() } else { asked.now().verdict() }))
        }
    }
}
