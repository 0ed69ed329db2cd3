//! The jobs of a build, their options, and what each comes to.

use maud::{Markup, html};
use spile_answer::Question;
use spile_ask::{Pair, number};
use spile_build::{Build, JobInfo};
use spile_sheet::numbers;

use crate::page::figure::tiny;
use crate::page::first::of;
use crate::page::job;
use crate::page::shell::Page;
use crate::view::{Choice, View, href};

/// The page.
pub(crate) fn page(view: &View) -> Markup {
    let main = html! {
        div.answer {
            h1 { "Jobs and options" }
            p {
                @if view.jobs.is_empty() {
                    "No job is planned. A change that you plan goes into a file of its own, \
                     jobs/NAME.toml."
                } @else {
                    "Each job is answered before and after, with each of its options."
                }
            }
        }
        div.twin { (options(view)) div.side { (list(view, "h-jobs")) } }
        (job::forms(view))
        @for clash in view.folder().clashes() { p.say { (clash) } }
    };
    Page {
        view,
        title: "jobs".to_owned(),
        sheet: "jobs and options".to_owned(),
        question: None,
        class: "plain",
    }
    .around(&main)
}

/// All jobs, each with its options.
pub(crate) fn list(view: &View, id: &str) -> Markup {
    html! {
        section aria-labelledby=(id) {
            h2 id=(id) { "Jobs" small { "of " (view.report().build) } }
            ul.list {
                @for job in &view.jobs { (entry(view, job)) }
                li {
                    @let stands = Choice { job: None, option: None };
                    @if view.choice == stands { b aria-current="true" { "as it stands" } }
                    @else { a href=(href("/", &stands)) { "as it stands" } }
                    " " span.quiet { "The build without any job." }
                }
            }
        }
    }
}

fn entry(view: &View, job: &JobInfo) -> Markup {
    let is_shown = view.choice.job.as_ref() == Some(&job.name);
    let choice = Choice { job: Some(job.name.clone()), option: None };
    html! {
        li {
            @if is_shown { b aria-current="true" { (job.name) } }
            @else { a href=(href("/", &choice)) { (job.name) } }
            @if !job.about.is_empty() { ", " (job.about) "." }
            @if let Some(done) = &job.done { " " span.quiet { "Finished on " (done) "; in the build." } }
            @if !job.after.is_empty() { " " span.quiet { "Comes after " (job.after.join(", ")) "." } }
            @if !job.options.is_empty() {
                ul.sub { @for (name, about) in &job.options {
                    @let option = Choice { option: Some(name.clone()), ..choice.clone() };
                    li {
                        @if view.choice == option { b aria-current="true" { (name) } }
                        @else { a href=(href("/", &option)) { (name) } }
                        @if !about.is_empty() { ", " span.quiet { (about) } }
                    }
                } }
            }
        }
    }
}

/// The options of the job that is shown, side by side; without one, nothing.
pub(crate) fn options(view: &View) -> Markup {
    let Some(job) = view.job() else { return none(view) };
    let choices: Vec<Choice> = if job.options.is_empty() {
        vec![view.choice.clone()]
    } else {
        let option = |(name, _): &(String, String)| Choice {
            job: Some(job.name.clone()),
            option: Some(name.clone()),
        };
        job.options.iter().map(option).collect()
    };
    let answered: Vec<_> = choices.iter().map(|choice| view.answers_of(choice)).collect();
    let about = |choice: &Choice| {
        let named = job.options.iter().find(|(name, _)| Some(name) == choice.option.as_ref());
        named.map(|(_, about)| about.clone()).unwrap_or_default()
    };
    let shown = |choice: &Choice| *choice == view.choice;
    html! {
        section aria-labelledby="h-opt" {
            h2 #h-opt { "Options" small { "of " (job.name) ", against the build before it" } }
            div.scroll tabindex="0" role="region" aria-label="the options, question by question" {
                table.tbl.options {
                    thead { tr {
                        th scope="col" { span.sr { "question" } }
                        th scope="col" { "as it stands" }
                        @for choice in &choices {
                            th scope="col" {
                                @let name = choice.option.as_deref().unwrap_or(&job.name);
                                @if shown(choice) { b.pick { (name) } ", shown" }
                                @else { a href=(href("/", choice)) { (name) } }
                                @if !about(choice).is_empty() { br; (about(choice)) }
                            }
                        }
                    } }
                    tbody {
                        @for question in Question::ALL { tr {
                            th scope="row" { (question.word()) }
                            td { (of(&view.report().answers, question, true)) }
                            @for answered in &answered {
                                td { @match answered {
                                    Some(one) => (of(&one.report.answers, question, false)),
                                    None => (tiny(spile_answer::Verdict::Open)),
                                } }
                            }
                        } }
                        tr.sub { th scope="rowgroup" colspan=(choices.len() + 2) { "likely figures" } }
                        @for (question, pair) in headlines(view) { tr.fig {
                            th scope="row" { (pair.now.label) }
                            td { (figure(&view.report().answers, question, &pair.now.id, true)) }
                            @for (choice, answered) in choices.iter().zip(&answered) {
                                td.pick[shown(choice)] { @if let Some(one) = answered {
                                    (figure(&one.report.answers, question, &pair.now.id, false))
                                } }
                            }
                        } }
                    }
                }
            }
        }
    }
}

/// The leading figures of the answers that are shown.
fn headlines(view: &View) -> Vec<(Question, Pair<'_>)> {
    let leading = |asked: &'_ spile_ask::Asked| asked.now().leading().map(|one| one.id.clone());
    let answers = view.report().answers.iter();
    answers
        .filter_map(|asked| {
            let id = leading(asked)?;
            let pair = asked.pairs().into_iter().find(|pair| pair.now.id == id)?;
            pair.now.figure.is_some().then_some((asked.question, pair))
        })
        .collect()
}

/// The figure of a finding among some answers; a dash where it is not asked there.
fn figure(answers: &[spile_ask::Asked], question: Question, id: &str, before: bool) -> String {
    let asked = answers.iter().find(|asked| asked.question == question);
    let answer = asked.map(|asked| if before { &asked.before } else { asked.now() });
    let finding = answer.and_then(|answer| answer.findings.iter().find(|finding| finding.id == id));
    let figure = finding.and_then(|one| Some((one.figure.as_ref()?, one.limit.as_ref())));
    figure.map_or_else(|| "–".to_owned(), |(figure, limit)| number::change(None, figure, limit))
}

fn none(view: &View) -> Markup {
    html! {
        section aria-labelledby="h-opt" {
            h2 #h-opt { "Options" }
            p {
                "No job is shown: this is " (view.report().build) " as it stands. "
                @if view.jobs.is_empty() {
                    "A change that you plan goes into a file of its own, jobs/NAME.toml."
                } @else { "Choose a job to see what it changes." }
            }
        }
    }
}

/// What the job brings and takes away, with the numbers that the drawings give to it.
pub(crate) fn changes(view: &View) -> Markup {
    let (before, Some(after)) = view.before_after() else { return html! {} };
    let numbers = numbers(before, after);
    html! {
        section aria-labelledby="h-parts" {
            h2 #h-parts { "What changes" }
            table.parts {
                @for (comes, from, to) in [(true, before, after), (false, after, before)] {
                    @let class = if comes { "add" } else { "gone" };
                    @let numbered = numbers.iter().filter(|one| one.comes == comes);
                    @let without = to.items.keys().filter(|name| {
                        !from.items.contains_key(*name)
                            && numbers.iter().all(|one| one.comes != comes || one.item != **name)
                    });
                    tbody {
                        tr.grp { th scope="rowgroup" colspan="3" {
                            (line(class)) @if comes { "goes in" } @else { "goes out" }
                        } }
                        @for one in numbered { (changed(Some(one.number), &one.item, comes, from, to)) }
                        @for name in without { (changed(None, name, comes, from, to)) }
                    }
                }
                (sum(before, after))
            }
        }
    }
}

/// An item of a list that the other list has not, or has elsewhere.
fn changed(number: Option<usize>, name: &str, comes: bool, from: &Build, to: &Build) -> Markup {
    let Some(item) = to.items.get(name) else { return html! {} };
    let sign = if comes { "+" } else { "−" };
    let mass = item.mass.as_ref().map(|mass| number::quantity(mass.likely()));
    html! {
        tr {
            td { @if let Some(number) = number { span.ball .add[comes] { (number) } } }
            th scope="row" { (item.about) }
            td.n {
                @if from.items.contains_key(name) { "moved" }
                @else if let Some(mass) = mass { (sign) (mass) }
                @else { span.quiet { "not weighed" } }
            }
        }
    }
}

/// What it comes to in mass, empty.
fn sum(before: &Build, after: &Build) -> Markup {
    let only = |from: &Build, of: &Build| -> Vec<_> {
        let others = of.items.iter().filter(|(name, _)| !from.items.contains_key(*name));
        others.map(|(_, item)| item.mass.as_ref().map(spile_answer::Given::likely)).collect()
    };
    let (comes, goes) = (only(before, after), only(after, before));
    let unweighed = comes.iter().chain(&goes).filter(|mass| mass.is_none()).count();
    let together = |masses: &[Option<_>]| masses.iter().flatten().copied().reduce(|a, b| a + b);
    let (sign, mass) = match (together(&comes), together(&goes)) {
        (None, None) => return html! {},
        (Some(comes), None) => ("+", comes),
        (None, Some(goes)) => ("−", goes),
        (Some(comes), Some(goes)) if comes >= goes => ("+", comes - goes),
        (Some(comes), Some(goes)) => ("−", goes - comes),
    };
    html! {
        tbody { tr.sum {
            td colspan="2" {
                "empty" @if unweighed > 0 { ", without what is not weighed" }
            }
            td.n { (sign) (number::quantity(mass)) }
        } }
    }
}

/// The line that a thing is drawn in.
fn line(class: &str) -> Markup {
    html! {
        svg.dw viewBox="0 0 34 8" aria-hidden="true" focusable="false" {
            line .(class) x1="0" y1="4" x2="34" y2="4" {}
        }
    }
}
