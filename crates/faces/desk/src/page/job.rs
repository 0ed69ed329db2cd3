//! A job begun, given options, chosen between, marked done and dropped.

use std::sync::Arc;

use axum::body::Bytes;
use axum::extract::State;
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use spile_build::edit::{Edit, Scope, Value};

use crate::change::answered;
use crate::desk::{Desk, Step};
use crate::error;
use crate::page::thing::hidden;
use crate::typed::{Typed, scope};
use crate::view::View;

/// Writes what a form about a job says.
pub(crate) async fn save(
    State(desk): State<Arc<Desk>>,
    headers: HeaderMap,
    body: Bytes,
) -> Response {
    let made = tokio::task::spawn_blocking(move || {
        let typed = Typed::of(&headers, &body);
        match edit(&typed) {
            Some(edit) => answered(&desk, &headers, &typed, Step::Edits(&[edit])),
            None => error::not_taken("This is no change of a job.", "Nothing was written."),
        }
    });
    made.await.unwrap_or_else(|_| error::broken())
}

fn edit(typed: &Typed) -> Option<Edit> {
    let (job, option) = (typed.text("job"), typed.text("option"));
    let option = Some(option).filter(|option| !option.is_empty());
    let (name, about) = (typed.text("name"), typed.text("about"));
    Some(match typed.text("do") {
        "new" => Edit::new_job(name, about),
        "option" => Edit::new_option(job, name, about),
        "choose" => Edit::JobKey {
            scope: Scope::job(job),
            key: "choice".to_owned(),
            value: Some(Value::Text(option?.to_owned())),
        },
        "done" => Edit::done(job, option, typed.text("day")),
        "drop" => Edit::Drop { scope: scope(typed) },
        _ => return None,
    })
}

/// The forms about jobs.
pub(crate) fn forms(view: &View) -> Markup {
    let open = view.job().filter(|job| job.done.is_none());
    html! {
        section.start aria-labelledby="h-job" {
            @if let Some(job) = open {
                @let option = view.choice.option.clone();
                @let whole = Scope::job(&job.name);
                @let taken = Scope::Job { job: job.name.clone(), option: option.clone() };
                h2 #h-job { "The job " (job.name) }
                (form(view, &whole, "option", "Add this option", &html! {
                    (field("option-name", "name", "another option", "What you call it."))
                    (field("option-about", "about", "what it is", "In a line."))
                }))
                @if let Some(option) = &option {
                    (form(view, &taken, "choose", "Choose it", &html! {
                        p { "Take " b { (option) } " where no option is named." }
                    }))
                }
                (form(view, &taken, "done", "Mark it done", &html! {
                    (field("done-day", "day", "finished on", "As 2026-03-14. What the job does goes \
                        into the build as it stands."))
                }))
                (form(view, &taken, "drop", "Drop it", &html! {
                    p {
                        @match &option {
                            Some(option) => { "The option " b { (option) } " goes out of the job." },
                            None => "The job's file goes; the build stays as it stands.",
                        }
                    }
                }))
            }
            h2 id=[open.is_none().then_some("h-job")] { "A new job" }
            (form(view, &Scope::Base, "new", "Begin it", &html! {
                (field("new-name", "name", "its name", "A word or two, as in galley-fridge."))
                (field("new-about", "about", "what it is", "In a line."))
            }))
        }
    }
}

fn form(view: &View, scope: &Scope, verb: &str, says: &str, fields: &Markup) -> Markup {
    html! {
        form.field method="post" action="/job" {
            (hidden(view, scope, "/jobs"))
            input type="hidden" name="do" value=(verb);
            (fields)
            p.act { button.btn type="submit" { (says) } }
        }
    }
}

fn field(id: &str, name: &str, label: &str, hint: &str) -> Markup {
    html! {
        label for=(id) { (label) }
        input type="text" id=(id) name=(name) autocomplete="off" required
            aria-describedby=(format!("{id}-hint"));
        p id=(format!("{id}-hint")) { (hint) }
    }
}
