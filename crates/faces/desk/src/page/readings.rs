//! What the owner measured, and where each reading stands.

use maud::{Markup, html};
use spile_answer::{Basis, Input};

use crate::page::figure::input;
use crate::page::shell::Page;
use crate::view::{Choice, View, href};

/// The page.
pub(crate) fn page(view: &View) -> Markup {
    let readings = readings(view);
    let main = html! {
        div.answer {
            h1 { "Readings" }
            p {
                @if readings.is_empty() {
                    "No reading is in the build yet. Each answer that hangs on one says how to take it."
                } @else {
                    "What was taken with tape, meter or scale, as the answers use it, and where it \
                     stands in the files."
                }
            }
        }
        @if !readings.is_empty() {
            div.scroll tabindex="0" role="region" aria-label="readings" {
                table.tbl.values {
                    thead { tr {
                        th scope="col" { "what" } th.n scope="col" { "reading" } th scope="col" { "where it stands" }
                    } }
                    tbody { @for one in readings { tr {
                        th scope="row" { (one.name) }
                        td.n data-l="reading" { (input(one)) }
                        td data-l="where it stands" { (one.source) }
                    } } }
                }
            }
        }
        p { a.btn href=(href("/add/readings", &Choice { job: None, option: None })) { "Type in a round with the meter" } }
        p.small.more { a href=(view.href("/next")) { "What to measure next" } }
    };
    Page {
        view,
        title: "readings".to_owned(),
        sheet: "readings".to_owned(),
        question: None,
        class: "plain",
    }
    .around(&main)
}

/// Every measured input of the answers, each once.
fn readings(view: &View) -> Vec<&Input> {
    let mut all: Vec<&Input> = Vec::new();
    let answers = view.report().answers.iter();
    let inputs = answers.flat_map(|asked| &asked.now().findings).flat_map(|one| &one.inputs);
    for input in inputs.filter(|input| input.basis == Basis::Measured) {
        if !all.contains(&input) {
            all.push(input);
        }
    }
    all
}
