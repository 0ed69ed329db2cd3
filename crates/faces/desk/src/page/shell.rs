//! What stands around every page: head, title block, the eight questions, foot.

use maud::{DOCTYPE, Markup, html};
use spile_answer::{Question, Verdict};
use spile_ask::CAUTION;

use crate::desk::Desk;
use crate::did::did;
use crate::page::figure::{reason, shape, shapes};
use crate::page::thing::{hidden, scope_of};
use crate::view::View;

/// A page of a build.
pub(crate) struct Page<'v> {
    pub(crate) view: &'v View,
    /// What the browser's tab says before the build's name.
    pub(crate) title: String,
    /// What the title block calls the page.
    pub(crate) sheet: String,
    /// The question it is about.
    pub(crate) question: Option<Question>,
    /// The class of the main part.
    pub(crate) class: &'static str,
}

impl Page<'_> {
    /// The page around its main part.
    pub(crate) fn around(&self, main: &Markup) -> Markup {
        let view = self.view;
        let report = view.report();
        let job = view.job();
        let title = format!("{}: {}", self.title, report.build);
        let option = report.option.as_ref();
        let head = html! {
            header {
                a.skip href="#main" { "to the answer" }
                div.block {
                    div.brand { (mark(&view.href("/"))) }
                    dl {
                        div.c-b { dt { "build" } dd { (report.build) } }
                        div.c-j { dt { "job" } dd {
                            (job.map_or("none: as it stands", |job| job.name.as_str()))
                        } }
                        @if let Some(option) = option {
                            div.c-o { dt { "option" } dd { (option) } }
                        }
                        div.last { dt { "sheet" } dd { (self.sheet) } }
                    }
                }
            }
            nav.eight aria-label="the eight questions" {
                @for asked in &report.answers {
                    @let verdict = asked.now().verdict();
                    a href=(view.href(&format!("/q/{}", asked.question.word())))
                        aria-current=[(self.question == Some(asked.question)).then_some("page")] {
                        (shape(verdict))
                        b { (asked.question.word()) }
                        span { (verdict.word()) (reason(verdict)) }
                    }
                }
            }
        };
        let foot = html! {
            nav aria-label="the build" {
                ul.foot-links {
                    @for (path, name) in LISTS {
                        li { a href=(view.href(path)) { (name) } }
                    }
                }
            }
        };
        let main = html! { (changed(view)) (main) };
        document(&title, &head, self.class, &main, &foot, Some((&view.desk, &view.version())))
    }
}

/// What the last change did to the eight answers, and the way back; nothing where none was made.
fn changed(view: &View) -> Markup {
    let (undo, redo) = view.desk.steps();
    if undo + redo == 0 {
        return html! {};
    }
    let back = view.href("/");
    let act = |path: &str, says: &str| {
        html! {
            form method="post" action=(path) {
                (hidden(view, &scope_of(view), &back))
                button.btn type="submit" { (says) }
            }
        }
    };
    html! {
        section.did aria-label="the last change" {
            p role="status" { @for one in did(&view.desk, &view.choice).unwrap_or_default() { (one) " " } }
            @if undo > 0 { (act("/undo", "Undo")) }
            @if redo > 0 { (act("/redo", "Redo")) }
        }
    }
}

/// The pages beside the eight.
const LISTS: [(&str, &str); 8] = [
    ("/", "First page"),
    ("/things", "Change"),
    ("/jobs", "Jobs and options"),
    ("/parts", "Parts"),
    ("/readings", "Readings"),
    ("/next", "Measure next"),
    ("/assumed", "Assumed"),
    ("/sources", "Sources"),
];

/// A page of a build that cannot be shown as it should.
pub(crate) fn bare(desk: &Desk, version: &str, title: &str, main: &Markup) -> Markup {
    let head = html! {
        header {
            a.skip href="#main" { "to the page" }
            div.block {
                div.brand { (mark("/")) }
                dl { div.c-b { dt { "build" } dd { (desk.name()) } } }
            }
        }
    };
    document(title, &head, "bare", main, &html! {}, Some((desk, version)))
}

/// A page that says one thing, and knows nothing of the build.
pub(crate) fn plain(what: &str, why: &str) -> Markup {
    let head = html! { header { div.block { div.brand { (mark("/")) } } } };
    let main = html! {
        div.answer { h1 { (what) } p { (why) } }
        p { a href="/" { "To the first page" } }
    };
    document(what, &head, "bare", &main, &html! {}, None)
}

fn document(
    title: &str,
    head: &Markup,
    class: &str,
    main: &Markup,
    foot: &Markup,
    desk: Option<(&Desk, &str)>,
) -> Markup {
    let version = desk.map(|(_, version)| version);
    let token = desk.map(|(desk, _)| desk.token());
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) }
                link rel="icon" href="/static/mark.svg" type="image/svg+xml";
                link rel="stylesheet" href="/static/sheet.css";
                link rel="stylesheet" href="/static/look.css";
                script src="/static/desk.js" defer {}
                script src="/static/drag.js" defer {}
            }
            body data-version=[version] data-token=[token] {
                (shapes())
                (head)
                main #main .(class) tabindex="-1" { (main) }
                footer.foot-note { p { (CAUTION) } (foot) }
                p #said .sr role="status" {}
            }
        }
    }
}

/// The mark of the project, and its name.
fn mark(href: &str) -> Markup {
    html! {
        a.mark href=(href) {
            svg aria-hidden="true" focusable="false" { use href="#mark"; }
            "Spile"
        }
    }
}

/// The verdicts in the order in which they are told, the worst first.
pub(crate) const WORST_FIRST: [Verdict; 4] =
    [Verdict::Stop, Verdict::Open, Verdict::Care(spile_answer::Reason::Tight), Verdict::Good];
