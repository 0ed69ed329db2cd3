//! What to measure next, the most decisive first.

use maud::{Markup, html};
use spile_ask::{Hangs, Next};
use spile_build::edit::{Scope, names};

use crate::page::shell::Page;
use crate::page::thing::hidden;
use crate::thing::field_name;
use crate::view::{Choice, View, escaped, href};

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
                    "The inputs that decide the most verdicts, the most decisive first."
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
            @let put = put(view, &next.input);
            @let id = anchor(&format!("put-{}", next.input));
            @match &put {
                Some(Put::Value { .. }) => { h3 { label for=(id) { (next.input) } } },
                _ => { h3 { (next.input) } },
            }
            p {
                @if !how.is_empty() { (how) ". " }
                @if !says.is_empty() { "It settles " (says) "." }
            }
            p.settles {
                @for (at, hangs) in next.hangs.iter().enumerate() {
                    @if at > 0 { ", " }
                    (finding(view, hangs))
                    @if !hangs.turns.is_empty() { ": " (hangs.turns) }
                }
            }
            @match put {
                Some(Put::Value { thing, path, example }) => {
                    form method="post" action=(format!("/thing/{}", escaped(&thing))) {
                        (hidden(view, &Scope::Base, &view.href("/next")))
                        div.blank {
                            input type="text" id=(id) name=(field_name(path)) autocomplete="off"
                                placeholder=(example);
                            button.btn type="submit" { "Put in" }
                        }
                    }
                },
                Some(Put::Readings) => {
                    p { a href=(href("/add/readings", &STANDS)) { "Type in what the meter showed" } }
                },
                None => {},
            }
        }
    }
}

/// The build as it stands: what was measured is a fact of it, whatever is planned.
const STANDS: Choice = Choice { job: None, option: None };

/// Where a measured value goes.
enum Put {
    /// A key of a thing, with an example that has its tolerance.
    Value { thing: String, path: &'static str, example: &'static str },
    /// A round with the meter.
    Readings,
}

/// Where the build takes what is asked for; `None` where no single key takes it.
fn put(view: &View, input: &str) -> Option<Put> {
    if input.starts_with("readings of ") {
        return Some(Put::Readings);
    }
    let of_build = INPUTS.iter().find(|(name, ..)| *name == input);
    let found = of_build.map(|(_, thing, path, example)| ((*thing).to_owned(), *path, *example));
    let (thing, path, example) = found.or_else(|| {
        let bay = input.strip_prefix("heat from ")?.strip_suffix(" to the cabin, a kelvin")?;
        let stands = names(&view.texts(), &Scope::Base, "bays").iter().any(|name| name == bay);
        stands.then(|| (format!("bays.{bay}"), "conductance", "2.5 W/K ± 0.5 W/K"))
    })?;
    Some(Put::Value { thing, path, example })
}

/// Inputs of the answers that stand at one key of every build: the input's name, the thing, the
/// key in it, and how a measured value is written.
const INPUTS: [(&str, &str, &str, &str); 4] = [
    ("temperature inside", "wants", "inside", "5 °C ± 1 °C"),
    ("cold food, a person and day", "wants", "litres", "4 L ± 0.5 L"),
    ("cabin on a hot day", "states.corner.hot-day", "cabin", "41 °C ± 3 °C"),
    ("cabin on an ordinary day", "states.corner.mild-day", "cabin", "24 °C ± 2 °C"),
];

/// A finding, leading to where it is told.
fn finding(view: &View, hangs: &Hangs) -> Markup {
    let word = hangs.question.word();
    let href = format!("{}#{}", view.href(&format!("/q/{word}")), anchor(&hangs.finding));
    html! { a href=(href) { (word) "." (hangs.finding) } }
}

/// The name of a finding's place on its page.
pub(crate) fn anchor(id: &str) -> String {
    let plain = |c: char| if c.is_alphanumeric() || "._-".contains(c) { c } else { '_' };
    format!("f-{}", id.chars().map(plain).collect::<String>())
}
