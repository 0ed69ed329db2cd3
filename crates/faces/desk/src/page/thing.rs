//! One thing in a form: what can be said of it, in what its owner wrote.

use std::sync::Arc;

use axum::body::Bytes;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use spile_ask::clean;
use spile_build::edit::{Edit, Refused, Scope, Texts, names, where_is};
use spile_build::{Kind, Problem};

use crate::change;
use crate::desk::{Desk, Step};
use crate::error;
use crate::leaf::{Group, Leaf};
use crate::page::shell::Page;
use crate::routes::shown;
use crate::safe::TOKEN;
use crate::thing::{Thing, field_name};
use crate::typed::{Typed, scope};
use crate::view::{Asked, Choice, View, escaped, href};

/// What is asked first, by what leads to the thing; besides what nothing can be said without, and
/// what is said already.
const FIRST: [(&str, &[&str]); 12] = [
    ("items", &["part", "place.in", "place.on", "place.from_rear", "place.from_left"]),
    ("parts", &["kind", "size.width", "size.height", "size.depth", "mass", "power.running"]),
    ("bays", &["opens", "place.from_rear", "place.from_left", "place.from_right", "place.above"]),
    ("runs", &["to", "section", "length", "return.by"]),
    ("block.ways", &["fuse", "run"]),
    ("sources", &["kind", "power", "current"]),
    ("panels", &["closes", "material"]),
    ("trips", &["latitude", "longitude", "months", "stays", "drives"]),
    ("readings", &["run", "date", "state", "battery", "block", "appliance", "current"]),
    ("states.load", &["people", "water", "fuel", "food"]),
    ("weighings", &["date", "state", "front", "rear"]),
    ("bank", &["kind", "count", "capacity", "place.in"]),
];

/// The form of a thing that stands in the build.
pub(crate) async fn show(
    desk: State<Arc<Desk>>,
    asked: Query<Asked>,
    what: Path<String>,
) -> Response {
    opened(desk, asked, what, false).await
}

/// The form of a thing that is to be added to a collection.
pub(crate) async fn new(
    desk: State<Arc<Desk>>,
    asked: Query<Asked>,
    what: Path<String>,
) -> Response {
    opened(desk, asked, what, true).await
}

/// Writes what was typed into the form of a thing.
pub(crate) async fn save(
    desk: State<Arc<Desk>>,
    headers: HeaderMap,
    what: Path<String>,
    body: Bytes,
) -> Response {
    saved(desk, headers, what, body, false).await
}

/// Adds a thing of what was typed.
pub(crate) async fn add(
    desk: State<Arc<Desk>>,
    headers: HeaderMap,
    what: Path<String>,
    body: Bytes,
) -> Response {
    saved(desk, headers, what, body, true).await
}

async fn opened(
    desk: State<Arc<Desk>>,
    asked: Query<Asked>,
    Path(what): Path<String>,
    is_new: bool,
) -> Response {
    match Thing::of(&what, is_new) {
        Some(thing) => shown(desk, asked, move |view| page(view, &thing, None, &[])).await,
        None => error::not_found(),
    }
}

async fn saved(
    State(desk): State<Arc<Desk>>,
    headers: HeaderMap,
    Path(what): Path<String>,
    body: Bytes,
    is_new: bool,
) -> Response {
    let made = tokio::task::spawn_blocking(move || {
        let typed = Typed::of(&headers, &body);
        match Thing::of(&what, is_new) {
            Some(thing) => written(&desk, &headers, &thing, &typed),
            None => error::not_found(),
        }
    });
    made.await.unwrap_or_else(|_| error::broken())
}

fn written(desk: &Arc<Desk>, headers: &HeaderMap, thing: &Thing, typed: &Typed) -> Response {
    let scope = scope(typed);
    let texts = desk.texts_at(typed.get("since"));
    let name = if thing.is_new { typed.text("name") } else { "" };
    let edits = if !thing.is_new {
        thing.edits(&texts, &scope, typed)
    } else if name.is_empty() || name.contains('.') {
        let says = "a name is wanted, without a dot in it";
        let wrong = Problem::nowhere(says, "write what you call it: fridge, left-bay");
        return again(desk, thing, typed, &[(Some("name".to_owned()), wrong)]);
    } else {
        vec![thing.added(&scope, name, typed)]
    };
    match desk.step(Step::Edits(&edits), typed.get("since")) {
        Ok(_) if thing.is_new => {
            let key = thing.key(name);
            Redirect::to(&href(&format!("/thing/{}", escaped(&key)), &choice(&scope)))
                .into_response()
        }
        Ok(_) => Redirect::to(&change::back(typed)).into_response(),
        Err(Refused::Problems(problems)) => {
            let wrong = thing.placed(&texts, &scope, &edits, name, &problems);
            again(desk, thing, typed, &wrong)
        }
        Err(refused) => {
            let typed = typed.sent(&thing.sent(&texts, &scope, name, typed));
            change::refusal(desk, headers, &typed, &refused, Step::Edits(&edits))
        }
    }
}

/// The form once more, with what was typed and what is wrong in it.
fn again(
    desk: &Arc<Desk>,
    thing: &Thing,
    typed: &Typed,
    wrong: &[(Option<String>, Problem)],
) -> Response {
    let asked = Asked::of(&choice(&scope(typed)));
    match View::of(desk, asked) {
        Ok(view) => {
            let page = page(&view, thing, Some(typed), wrong);
            (StatusCode::UNPROCESSABLE_ENTITY, page).into_response()
        }
        Err(_) => error::not_taken("This cannot stand in the build.", &said(wrong)),
    }
}

fn said(wrong: &[(Option<String>, Problem)]) -> String {
    let says = wrong.iter().map(|(_, one)| format!("{}; {}.", one.says, one.hint));
    says.collect::<Vec<_>>().join(" ")
}

fn choice(scope: &Scope) -> Choice {
    match scope {
        Scope::Base => Choice { job: None, option: None },
        Scope::Job { job, option } => Choice { job: Some(job.clone()), option: option.clone() },
    }
}

/// Where changes are made on a page of some choice: in its job while it is open, with its option.
pub(crate) fn scope_of(view: &View) -> Scope {
    match (view.job(), &view.choice.option) {
        (Some(job), option) if job.done.is_none() => {
            Scope::Job { job: job.name.clone(), option: option.clone() }
        }
        _ => Scope::Base,
    }
}

fn page(
    view: &View,
    thing: &Thing,
    typed: Option<&Typed>,
    wrong: &[(Option<String>, Problem)],
) -> Markup {
    let scope = scope_of(view);
    let texts = view.texts();
    let name = if thing.what.is_empty() { "the build" } else { thing.what.as_str() };
    let title = if thing.is_new { format!("add to {name}") } else { name.to_owned() };
    let verb = if thing.is_new { "add" } else { "thing" };
    let path =
        format!("/{verb}/{}", escaped(if thing.what.is_empty() { "build" } else { &thing.what }));
    let general: Vec<&Problem> =
        wrong.iter().filter(|(field, _)| field.is_none()).map(|(_, one)| one).collect();
    let form = Form { view, thing, texts: &texts, scope: &scope, typed, wrong };
    let main = html! {
        div.answer {
            h1 { (clean(&title)) }
            p { (place_of(view, &scope, &path)) }
        }
        @if !wrong.is_empty() {
            p.say role="alert" { "Nothing was written: " (wrong.len()) " to mend below." }
        }
        @for one in &general { p.say { b { (clean(&one.says)) } "; " (clean(&one.hint)) } }
        form.start method="post" action=(path) {
            (hidden(view, &scope, &view.href(&path)))
            @if thing.is_new { (form.name()) }
            (form.fields())
            p.act {
                button.btn.main type="submit" { @if thing.is_new { "Add it" } @else { "Write it" } }
            }
        }
        @if !thing.is_new && !thing.what.is_empty() { (form.other()) }
        p.small.more { a href=(view.href("/things")) { "All that can be changed" } }
    };
    Page { view, sheet: title.clone(), title, question: None, class: "plain" }.around(&main)
}

/// What every form that writes carries: where it writes, of which state of the files it is made,
/// and the page to go back to.
pub(crate) fn hidden(view: &View, scope: &Scope, back: &str) -> Markup {
    let (job, option) = match scope {
        Scope::Base => ("", ""),
        Scope::Job { job, option } => (job.as_str(), option.as_deref().unwrap_or_default()),
    };
    html! {
        input type="hidden" name=(TOKEN) value=(view.desk.token());
        input type="hidden" name="since" value=(view.version());
        input type="hidden" name="job" value=(job);
        input type="hidden" name="option" value=(option);
        input type="hidden" name="back" value=(back);
    }
}

/// Where the form writes, and where else it could.
fn place_of(view: &View, scope: &Scope, path: &str) -> Markup {
    let open = view.jobs.iter().filter(|job| job.done.is_none());
    html! {
        @match scope {
            Scope::Base => { "This is written into " b { "the build as it stands" } "." },
            Scope::Job { job, option } => {
                "This is written into the job " b { (job) }
                @if let Some(option) = option { ", option " b { (option) } } "."
            },
        }
        @if *scope != Scope::Base {
            " Or write it into "
            a href=(href(path, &Choice { job: None, option: None })) { "the build as it stands" } "."
        }
        @for job in open {
            @let other = Choice { job: Some(job.name.clone()), option: None };
            @if view.choice.job.as_ref() != Some(&job.name) {
                " Or into " a href=(href(path, &other)) { (job.name) } "."
            }
        }
    }
}

/// What a form is made of.
struct Form<'p> {
    view: &'p View,
    thing: &'p Thing,
    texts: &'p Texts,
    scope: &'p Scope,
    typed: Option<&'p Typed>,
    wrong: &'p [(Option<String>, Problem)],
}

impl Form<'_> {
    fn name(&self) -> Markup {
        let why = self.why("name");
        html! {
            div.field .wrong[why.is_some()] {
                label for="name" { "name" }
                (told(why, "name"))
                input type="text" id="name" name="name" autocomplete="off" required
                    value=(self.typed.map(|typed| typed.text("name")).unwrap_or_default())
                    aria-describedby="name-hint";
                p id="name-hint" { "What you call it; it is named so in the files." }
            }
        }
    }

    /// The fields: what matters first, the rest under what opens.
    fn fields(&self) -> Markup {
        let leaves = self.thing.groups.iter().flat_map(|group| &group.leaves);
        let first: Vec<&Leaf> = leaves.clone().filter(|leaf| self.leads(leaf)).collect();
        let rest = |group: &Group| -> Vec<Leaf> {
            group.leaves.iter().filter(|leaf| !self.leads(leaf)).cloned().collect()
        };
        html! {
            @for leaf in &first { (self.field(leaf)) }
            @for group in &self.thing.groups {
                @let rest = rest(group);
                @if !rest.is_empty() {
                    details.working {
                        summary {
                            @if group.path.is_empty() { "more" }
                            @else { (group.path.replace('.', ", ")) ": " span.quiet { (group.doc) } }
                        }
                        div { @for leaf in &rest { (self.field(leaf)) } }
                    }
                }
            }
        }
    }

    /// Whether a field is shown at once.
    fn leads(&self, leaf: &Leaf) -> bool {
        let what = &self.thing.what;
        let first = FIRST.iter().find(|(of, _)| {
            what == of || what.strip_prefix(of).is_some_and(|rest| rest.starts_with('.'))
        });
        let asked = first.is_some_and(|(_, paths)| paths.contains(&leaf.path.as_str()));
        let needed = leaf.field.required && !leaf.path.contains('.');
        let few = first.is_none() && !leaf.path.contains('.');
        let said = !self.thing.shown(self.texts, self.scope, self.typed, &leaf.path).is_empty();
        asked || needed || few || said || self.why(&leaf.path).is_some()
    }

    fn why(&self, path: &str) -> Option<&Problem> {
        self.wrong.iter().find(|(field, _)| field.as_deref() == Some(path)).map(|(_, one)| one)
    }

    fn field(&self, leaf: &Leaf) -> Markup {
        let name = field_name(&leaf.path);
        let value = self.thing.shown(self.texts, self.scope, self.typed, &leaf.path);
        let why = self.why(&leaf.path);
        let hint = format!("{name}-hint");
        let described = if why.is_some() { format!("{name}-wrong {hint}") } else { hint.clone() };
        let invalid = why.map(|_| "true");
        let label = leaf.path.replace('.', ", ").replace('_', " ");
        let known =
            leaf.field.names.map(|of| names(self.texts, self.scope, of)).unwrap_or_default();
        let list = (!known.is_empty()).then(|| format!("{name}-list"));
        let long = matches!(&leaf.field.kind, Kind::Rows | Kind::Any)
            || matches!(&leaf.field.kind, Kind::List(inner) if matches!(**inner, Kind::Record { .. }));
        html! {
            div.field .wrong[why.is_some()] {
                label for=(name) { (label) }
                (told(why, &name))
                @match &leaf.field.kind {
                    Kind::Words(words) => (chosen(&name, &value, words, &described)),
                    Kind::Flag => (chosen(&name, &value, &["true", "false"], &described)),
                    _ if long => {
                        textarea id=(name) name=(name) rows="4"
                            aria-describedby=(described) aria-invalid=[invalid] { (value) }
                    },
                    kind => {
                        input type="text" id=(name) name=(name) value=(value)
                        autocomplete="off" placeholder=[example(kind)] list=[list.as_ref()]
                        aria-describedby=(described) aria-invalid=[invalid];
                    },
                }
                @if let Some(list) = &list {
                    datalist id=(list) { @for one in &known { option value=(one) {} } }
                }
                p id=(hint) {
                    (leaf.field.doc.replace('`', ""))
                    @if value.is_empty() && leaf.field.required { " Without it the rest says nothing." }
                    @if let Some(place) = self.stands(&leaf.path) { " " span.basis { (place) } }
                }
            }
        }
    }

    /// The file and line in which a value stands.
    fn stands(&self, path: &str) -> Option<String> {
        if self.thing.is_new {
            return None;
        }
        let spot = where_is(self.texts, self.scope, &self.thing.key(path))?;
        Some(format!("{}:{}", spot.file, spot.place.line))
    }

    /// What else can be done with a thing: another name, taken out, taken back.
    fn other(&self) -> Markup {
        let what = &self.thing.what;
        let own = what.rsplit_once('.').map(|(_, name)| name);
        let stands = where_is(self.texts, self.scope, what).is_some();
        let touched = Edit::take_back(self.scope, what).changes(self.texts).is_ok();
        let back = self.view.href("/things");
        let act = |verb: &'static str, says: &'static str, field: Markup| {
            html! {
                form.field method="post" action="/change" {
                    (hidden(self.view, self.scope, &back))
                    input type="hidden" name="do" value=(verb);
                    input type="hidden" name="what" value=(what);
                    (field)
                    p.act { button.btn type="submit" { (says) } }
                }
            }
        };
        html! {
            section.start aria-labelledby="h-other" {
                h2 #h-other { "Besides" }
                @if let (Some(own), true) = (own, stands) {
                    (act("rename", "Give it this name", html! {
                        label for="to" { "another name" }
                        input type="text" id="to" name="value" value=(own) autocomplete="off";
                        p { "Wherever it is named, the new name is put." }
                    }))
                }
                @if touched { (act("take-back", "Leave it as it stands", html! {
                    p { "What the job does to it is taken back." }
                })) }
                @if stands { (act("remove", "Take it out", html! {
                    p { "What names it must be changed first." }
                })) }
            }
        }
    }
}

/// What is wrong with a field, in the words of the files' problems.
fn told(why: Option<&Problem>, name: &str) -> Markup {
    html! {
        @if let Some(why) = why {
            p.why id=(format!("{name}-wrong")) { (clean(&why.says)) "; " (clean(&why.hint)) }
        }
    }
}

fn chosen(name: &str, value: &str, words: &[&str], described: &str) -> Markup {
    let other = !value.is_empty() && !words.contains(&value);
    html! {
        select id=(name) name=(name) aria-describedby=(described) {
            option value="" selected[value.is_empty()] { "not said" }
            @if other { option value=(value) selected { (value) } }
            @for word in words { option value=(word) selected[*word == value] { (word) } }
        }
    }
}

fn example(kind: &Kind) -> Option<String> {
    match kind {
        Kind::Quantity { example, .. } => Some((*example).to_owned()),
        Kind::Day => Some("2026-03-14".to_owned()),
        Kind::Count => Some("2".to_owned()),
        Kind::List(inner) => example(inner).map(|one| format!("{one}, {one}")),
        _ => None,
    }
}
