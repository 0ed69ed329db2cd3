//! What is assumed until somebody says otherwise.

use maud::{Markup, html};
use spile_ask::typical_inputs;

use crate::page::figure::input;
use crate::page::shell::Page;
use crate::view::View;

/// The page.
pub(crate) fn page(view: &View) -> Markup {
    let inputs = typical_inputs(view.report());
    let main = html! {
        div.answer {
            h1 { "Assumed" }
            p { "What nobody has said yet is taken as typical, with a range. Say more, and the answers \
                 become surer." }
        }
        section aria-labelledby="h-v" {
            h2 #h-v { "Values" small { "those first that the most findings take" } }
            div.scroll tabindex="0" role="region" aria-label="assumed values" {
                table.tbl.values {
                    thead { tr {
                        th scope="col" { "what" } th.n scope="col" { "taken" }
                        th scope="col" { "from" } th scope="col" { "how to get it better" }
                    } }
                    tbody { @for one in &inputs { tr {
                        th scope="row" { (one.name) }
                        td.n data-l="taken" { (input(one)) }
                        td data-l="from" { (one.source) }
                        td data-l="how to get it better" { (one.how) }
                    } } }
                }
            }
            @if inputs.is_empty() { p { "No value was assumed." } }
        }
        section.after aria-labelledby="h-t" {
            h2 #h-t { "Taken for granted" small { "question by question" } }
            @for asked in &view.report().answers {
                @if !asked.now().assumed.is_empty() {
                    h3 { (asked.question.word()) }
                    ul.list { @for one in &asked.now().assumed { li { (one) } } }
                }
            }
        }
    };
    Page {
        view,
        title: "assumed".to_owned(),
        sheet: "assumed".to_owned(),
        question: None,
        class: "plain",
    }
    .around(&main)
}
