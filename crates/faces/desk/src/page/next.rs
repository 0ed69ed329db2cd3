//! What to measure next, the most decisive first.

use maud::{Markup, html};
use spile_ask::Next;

use crate::page::shell::Page;
use crate::view::View;

/// The page.
pub(crate) fn page(view: &View) -> Markup {
    let next = &view.report().measure_next;
    let main = html! {
        div.answer {
            h1 { "Measure next" }
            p {
                @if next.is_empty() {
                    "Nothing that could be measured would change a verdict."
                } @else {
                    "The inputs whose ranges decide most, the most decisive first."
                }
            }
        }
        ol.list { @for next in next { (measure(view, next)) } }
    };
    Page {
        view,
        title: "measure next".to_owned(),
        sheet: "measure next".to_owned(),
        question: None,
        class: "plain",
    }
    .around(&main)
}

/// One thing to measure: how, and what it would settle.
pub(crate) fn measure(view: &View, next: &Next) -> Markup {
    let how = next.how.trim_end_matches('.');
    let says = next.says.trim_end_matches('.');
    html! {
        li.ask {
            h3 { (next.input) }
            p {
                @if !how.is_empty() { (how) ". " }
                @if !says.is_empty() { "It settles " (says) "." }
            }
            p.settles {
                @for (at, (question, id)) in next.settles.iter().enumerate() {
                    @if at > 0 { ", " }
                    a href=(format!("{}#{}", view.href(&format!("/q/{}", question.word())), anchor(id))) {
                        (question.word()) "." (id)
                    }
                }
            }
        }
    }
}

/// The name of a finding's place on its page.
pub(crate) fn anchor(id: &str) -> String {
    let plain = |c: char| if c.is_alphanumeric() || "._-".contains(c) { c } else { '_' };
    format!("f-{}", id.chars().map(plain).collect::<String>())
}
