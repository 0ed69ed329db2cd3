//! The published figures that the program carries, and where they are from.

use maud::{Markup, html};
use spile_ask::{seen, table_line};
use spile_tables::{sources, tables};

use crate::page::shell::Page;
use crate::view::View;

/// The page.
pub(crate) fn page(view: &View) -> Markup {
    let tables = tables();
    let main = html! {
        div.answer {
            h1 { "Sources" }
            p { "The published figures that the program carries, where they are printed, and whether \
                 they were seen in print." }
        }
        ul.list {
            @for source in sources() {
                @let resting: Vec<_> =
                    tables.iter().filter(|table| table.source.key == source.key).collect();
                li.source id=(format!("s-{}", source.key)) {
                    h3 { (source.title) }
                    p { (source.edition) }
                    p.small.quiet { (seen(source)) }
                    p.small.quiet {
                        "carries: "
                        @if resting.is_empty() { "single rows of tables that rest on other sources" }
                        @for (at, table) in resting.iter().enumerate() {
                            @if at > 0 { "; " } (table_line(table))
                        }
                    }
                }
            }
        }
        p.small.quiet { (spile_ask::SOURCES_NOTE) }
    };
    Page {
        view,
        title: "sources".to_owned(),
        sheet: "sources".to_owned(),
        question: None,
        class: "plain",
    }
    .around(&main)
}
