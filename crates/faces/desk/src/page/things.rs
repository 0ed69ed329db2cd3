//! All that can be changed: what the build has one of, and what it has under names.

use maud::{Markup, html};
use spile_ask::clean;
use spile_build::edit::names;

use crate::leaf::{collections, singles};
use crate::page::shell::Page;
use crate::page::thing::scope_of;
use crate::view::{View, escaped};

/// The page.
pub(crate) fn page(view: &View) -> Markup {
    let (texts, scope) = (view.texts(), scope_of(view));
    let link = |verb: &str, what: &str| view.href(&format!("/{verb}/{}", escaped(what)));
    let main = html! {
        div.answer {
            h1 { "Change the build" }
            p { "Whatever the files say can be changed here, in the units that you measure in." }
        }
        section aria-labelledby="h-one" {
            h2 #h-one { "Of the whole vehicle" }
            ul.list {
                li { a href=(link("thing", "build")) { "build" } " " span.quiet { "What it is, its tape and its voltage." } }
                @for (what, doc) in singles() {
                    li { a href=(link("thing", what)) { (what) } " " span.quiet { (doc) } }
                }
            }
        }
        @for (what, doc) in collections() {
            section.group aria-label=(what) {
                h2 { (what.replace('.', ", ").replace('_', " ")) small { (doc.replace('`', "")) } }
                ul.list {
                    @for name in names(&texts, &scope, &what) {
                        li { a href=(link("thing", &format!("{what}.{name}"))) { (clean(&name)) } }
                    }
                    li { a href=(link("add", &what)) { "add" span.sr { " to " (what) } } }
                }
            }
        }
    };
    Page {
        view,
        title: "change".to_owned(),
        sheet: "change".to_owned(),
        question: None,
        class: "plain",
    }
    .around(&main)
}
