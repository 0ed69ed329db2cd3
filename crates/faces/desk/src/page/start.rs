//! From nothing to eight first answers: six fields, and a build.

use std::sync::Arc;

use axum::Form;
use axum::extract::State;
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use serde::Deserialize;
use spile_ask::number;
use spile_build::Folder;
use spile_build::file::PartKind;
use spile_build::first::{First, UNKNOWN, Wanted};

use crate::desk::{Desk, NotMade};
use crate::error;
use crate::page::shell::bare;

/// What was typed.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(default)]
pub(crate) struct Typed {
    kind: String,
    size: String,
    bay: String,
    cable: String,
    section: String,
    battery: String,
}

/// The page, as long as there is no build.
pub(crate) async fn show(State(desk): State<Arc<Desk>>) -> Response {
    let made = tokio::task::spawn_blocking(move || {
        if desk.now().is_there() {
            return Redirect::to("/").into_response();
        }
        page(&desk, &Typed::default(), &[]).into_response()
    });
    made.await.unwrap_or_else(|_| error::broken())
}

/// Makes the build, or tells what cannot be read.
pub(crate) async fn make(State(desk): State<Arc<Desk>>, Form(typed): Form<Typed>) -> Response {
    let made = tokio::task::spawn_blocking(move || made(&desk, &typed));
    made.await.unwrap_or_else(|_| error::broken())
}

fn made(desk: &Desk, typed: &Typed) -> Response {
    let mut first = First::default();
    let mut wrong: Vec<(Wanted, String)> = Vec::new();
    for wanted in Wanted::ALL {
        if wanted != Wanted::Kind && !first.missing().contains(&wanted) {
            continue;
        }
        let said = typed.of(wanted).trim();
        let said = if said.is_empty() && wanted == Wanted::Section { UNKNOWN } else { said };
        let taken = if said.is_empty() {
            Err("this is still wanted".to_owned())
        } else {
            first.take(wanted, said)
        };
        if let Err(why) = taken {
            wrong.push((wanted, why));
        }
    }
    if !wrong.is_empty() {
        return page(desk, typed, &wrong).into_response();
    }
    match desk.begin(&first.text(desk.name())) {
        Ok(()) | Err(NotMade::Stands) => Redirect::to("/").into_response(),
        Err(NotMade::Unwritten(error)) => {
            let why = format!("the build cannot be written: {error}");
            page(desk, typed, &[(Wanted::Kind, why)]).into_response()
        }
    }
}

impl Typed {
    fn of(&self, wanted: Wanted) -> &str {
        match wanted {
            Wanted::Kind => &self.kind,
            Wanted::Size => &self.size,
            Wanted::Bay => &self.bay,
            Wanted::Cable => &self.cable,
            Wanted::Section => &self.section,
            Wanted::Battery => &self.battery,
        }
    }
}

fn page(desk: &Desk, typed: &Typed, wrong: &[(Wanted, String)]) -> Markup {
    let main = html! {
        div.answer {
            h1 { "A first build" }
            p {
                "Six answers make a first build of " b { (desk.name()) } ", and the eight questions \
                 are answered of it at once. Everything else is a stand-in until you say more."
            }
        }
        form.start method="post" action="/start" {
            input type="hidden" name="token" value=(desk.token());
            @for wanted in Wanted::ALL { (field(wanted, typed, wrong)) }
            p.act { button.btn.main type="submit" { "Make the build" } }
        }
        (stand_ins())
    };
    bare(desk, &desk.now().version(), &format!("a first build: {}", desk.name()), &main)
}

fn field(wanted: Wanted, typed: &Typed, wrong: &[(Wanted, String)]) -> Markup {
    let name = wanted.name();
    let why = wrong.iter().find(|(of, _)| *of == wanted).map(|(_, why)| why);
    let value = typed.of(wanted);
    let hint = format!("{name}-hint");
    let described = if why.is_some() { format!("{name}-wrong {hint}") } else { hint.clone() };
    html! {
        div.field .wrong[why.is_some()] {
            label for=(name) { (wanted.question()) }
            @if let Some(why) = why { p.why id=(format!("{name}-wrong")) { (why) } }
            @if wanted == Wanted::Kind {
                select id=(name) name=(name) required aria-describedby=(described)
                    aria-invalid=[why.map(|_| "true")] {
                    @for kind in PartKind::WORDS {
                        option value=(kind) selected[*kind == chosen(value)] { (kind) }
                    }
                }
                p id=(hint) { "The thing that you are about to fit." }
            } @else {
                input type="text" id=(name) name=(name) value=(value) autocomplete="off"
                    placeholder=(wanted.example()) aria-describedby=(described)
                    aria-invalid=[why.map(|_| "true")];
                p id=(hint) {
                    (wanted.hint())
                    @match wanted {
                        Wanted::Section => "; left empty, it counts as not known",
                        Wanted::Cable => "; not asked of what has no cable of its own",
                        _ => "",
                    }
                }
            }
        }
    }
}

fn chosen(value: &str) -> &str {
    if value.is_empty() { Wanted::Kind.example() } else { value }
}

/// What is taken until somebody says more, as the reader of builds takes it.
fn stand_ins() -> Markup {
    let Ok(folder) = Folder::from_texts([("build.toml", "")]) else { return html! {} };
    let build = folder.build();
    let wants = &build.wants;
    let all = [
        ("house circuit", number::quantity(build.system.likely())),
        ("people who eat from it", wants.people.to_string()),
        ("away from shops", number::quantity(wants.away.likely())),
        ("cold food a person and day", number::quantity(wants.litres.likely())),
        ("temperature inside", number::quantity(wants.inside.likely())),
    ];
    html! {
        section.after.start aria-labelledby="h-s" {
            h2 #h-s { "Taken until you say more" }
            table.parts { tbody {
                tr { th scope="row" { "where it stands" } td.n { "on the floor of its bay" } }
                @for (what, value) in all { tr { th scope="row" { (what) } td.n { (value) } } }
            } }
            p.small.quiet.more {
                "Every stand-in is listed with its range, and how to get it better, once the answers \
                 are there."
            }
        }
    }
}
