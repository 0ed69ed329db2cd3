//! What is in the vehicle, and the papers it rests on.

use maud::{Markup, html};
use spile_ask::number;
use spile_build::{Item, Size};

use crate::page::shell::Page;
use crate::view::{View, escaped};

/// The page.
pub(crate) fn page(view: &View) -> Markup {
    let build = view.build();
    let main = html! {
        div.answer {
            h1 { "Parts" }
            p { "What is in the vehicle" @if view.choice.job.is_some() { " when the job is done" }
                ", each with the part whose papers it rests on." }
        }
        div.scroll tabindex="0" role="region" aria-label="what is in the vehicle" {
            table.tbl.values {
                thead { tr {
                    th scope="col" { "thing" } th scope="col" { "part" } th scope="col" { "kind" }
                    th.n scope="col" { "width × height × depth" } th.n scope="col" { "mass" }
                    th scope="col" { "where" }
                } }
                tbody { @for (name, item) in &build.items { (row(view, name, item)) } }
            }
        }
        p.act {
            a.btn href=(view.href("/add/items")) { "Add a thing" } " "
            a.btn href=(view.href("/add/parts")) { "Add a part from its papers" }
        }
        @if build.items.is_empty() { p { "Nothing is in the vehicle yet." } }
    };
    Page {
        view,
        title: "parts".to_owned(),
        sheet: "parts".to_owned(),
        question: None,
        class: "plain",
    }
    .around(&main)
}

fn row(view: &View, name: &str, item: &Item) -> Markup {
    let mass = item.mass.as_ref().map(|mass| number::quantity(mass.likely()));
    html! {
        tr id=(format!("i-{name}")) {
            th scope="row" {
                a href=(view.href(&format!("/thing/{}", escaped(&format!("items.{name}"))))) { (name) }
                @if item.about != name { br; span.small.quiet { (item.about) } }
            }
            td data-l="part" {
                a href=(view.href(&format!("/thing/{}", escaped(&format!("parts.{}", item.part.name))))) {
                    (item.part.name)
                }
            }
            td data-l="kind" { (item.part.kind.word()) }
            td.n data-l="width × height × depth" {
                @if let Some(size) = &item.part.size { (dimensions(size)) } @else { span.quiet { "not said" } }
            }
            td.n data-l="mass" { @match mass { Some(mass) => (mass), None => span.quiet { "not said" } } }
            td data-l="where" {
                @match item.place.as_ref() {
                    Some(place) => {
                        @match (&place.bay, &place.on) {
                            (Some(bay), Some(on)) => { "in " (bay) ", on " (on) },
                            (Some(bay), None) => { "in " (bay) },
                            (None, Some(on)) => { "on " (on) },
                            (None, None) => { "in the vehicle" },
                        }
                    },
                    None => span.quiet { "not said" },
                }
            }
        }
    }
}

fn dimensions(size: &Size) -> String {
    let [width, height, depth] =
        [&size.width, &size.height, &size.depth].map(|side| number::quantity(side.likely()));
    format!("{} × {} × {depth}", width.trim_end_matches(" mm"), height.trim_end_matches(" mm"))
}
