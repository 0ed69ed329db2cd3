//! Changes of the build: read from a form or from a script, saved at once, and told with what they
//! did to the eight answers.

use std::sync::Arc;

use axum::body::Bytes;
use axum::extract::State;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use serde_json::{Value as Json, json};
use spile_build::edit::{Edit, Refused, Scope, Value};
use spile_build::{Kind, Problem, Problems, fields};

use crate::desk::{Desk, Step};
use crate::did::did;
use crate::error;
use crate::page::conflict;
use crate::typed::{Typed, choice, scope};

/// Takes changes, writes them, and answers: a script with what they did, anybody else with the
/// page that they came from.
///
/// A form has `do` (`set`, `add`, `remove`, `rename`, `take-back`), `what` (the keys, with dots
/// between) and `value` (what was typed, or the new name), each as often as there are edits;
/// beside them `job` and `option` (nowhere: in the build as it stands), `since` (the state of the
/// files that it was made of) and `back` (the page to go to). A script may send the same as
/// `{"edits": [{"do": …, "what": …, "value": …}], "job": …, "option": …, "since": …}`.
pub(crate) async fn change(
    State(desk): State<Arc<Desk>>,
    headers: HeaderMap,
    body: Bytes,
) -> Response {
    let made = tokio::task::spawn_blocking(move || {
        let typed = Typed::of(&headers, &body);
        let edits = match edits(&typed) {
            Ok(edits) => edits,
            Err(why) => return unread(&headers, &why),
        };
        answered(&desk, &headers, &typed, Step::Edits(&edits))
    });
    made.await.unwrap_or_else(|_| error::broken())
}

/// Puts the build back to what it was before the last change.
pub(crate) async fn undo(
    State(desk): State<Arc<Desk>>,
    headers: HeaderMap,
    body: Bytes,
) -> Response {
    let made = tokio::task::spawn_blocking(move || {
        answered(&desk, &headers, &Typed::of(&headers, &body), Step::Undo)
    });
    made.await.unwrap_or_else(|_| error::broken())
}

/// Makes the change again that was undone last.
pub(crate) async fn redo(
    State(desk): State<Arc<Desk>>,
    headers: HeaderMap,
    body: Bytes,
) -> Response {
    let made = tokio::task::spawn_blocking(move || {
        answered(&desk, &headers, &Typed::of(&headers, &body), Step::Redo)
    });
    made.await.unwrap_or_else(|_| error::broken())
}

/// Makes a step and answers it.
pub(crate) fn answered(
    desk: &Arc<Desk>,
    headers: &HeaderMap,
    typed: &Typed,
    step: Step<'_>,
) -> Response {
    let choice = choice(typed);
    match desk.step(step, typed.get("since")) {
        Ok(saved) if wants_json(headers) => {
            let (undo, redo) = desk.steps();
            axum::Json(json!({
                "version": desk.now().version(),
                "written": saved.written,
                "did": did(desk, &choice).unwrap_or_default(),
                "undo": undo,
                "redo": redo,
            }))
            .into_response()
        }
        Ok(_) => Redirect::to(&back(typed)).into_response(),
        Err(refused) => refusal(desk, headers, typed, &refused, step),
    }
}

/// The page to go to: one of ours, whatever was sent.
pub(crate) fn back(typed: &Typed) -> String {
    let back = typed.get("back").unwrap_or("/");
    let ours = back.starts_with('/')
        && !back.starts_with("//")
        && !back.contains(|c: char| c == '\\' || c.is_control());
    if ours { back.to_owned() } else { "/".to_owned() }
}

/// Whether a script asks, and not a page.
pub(crate) fn wants_json(headers: &HeaderMap) -> bool {
    let accepts = headers.get(header::ACCEPT).and_then(|accept| accept.to_str().ok());
    accepts.is_some_and(|accept| accept.contains("application/json"))
}

/// What may stand at some keys of the build.
pub(crate) fn kind_of(what: &str) -> Option<Kind> {
    let (above, key) = what.rsplit_once('.').unwrap_or(("", what));
    fields(above).into_iter().find(|field| field.key == key).map(|field| field.kind)
}

/// The edits that were sent.
fn edits(typed: &Typed) -> Result<Vec<Edit>, String> {
    let scope = scope(typed);
    let edits: Result<Vec<Edit>, String> = typed.edits().map(|one| edit(&scope, one)).collect();
    match edits {
        Ok(edits) if edits.is_empty() => Err("nothing was named that is to change".to_owned()),
        edits => edits,
    }
}

fn edit(scope: &Scope, (verb, what, value): (&str, &str, Option<&Json>)) -> Result<Edit, String> {
    if what.is_empty() {
        return Err("what is to change is not named".to_owned());
    }
    let text = || value.and_then(Json::as_str).unwrap_or_default().trim().to_owned();
    let empty = value.is_none_or(|value| *value == json!(""));
    let given = || match value {
        Some(value) if !empty => taken(value, what),
        _ => Value::Table(Vec::new()),
    };
    match verb {
        "set" if empty || value.is_some_and(Json::is_null) => Ok(Edit::remove(scope, what)),
        "set" => Ok(Edit::set(scope, what, given())),
        "add" => Ok(Edit::add(scope, what, given())),
        "remove" => Ok(Edit::remove(scope, what)),
        "rename" => Ok(Edit::rename(scope, what, &text())),
        "take-back" => Ok(Edit::take_back(scope, what)),
        _ => Err(format!("`{verb}` is no change that is known here")),
    }
}

/// What a script, or a field of a form, says is to stand at some keys.
fn taken(json: &Json, what: &str) -> Value {
    match json {
        Json::String(text) => kind_of(what)
            .map_or_else(|| Value::Text(text.clone()), |kind| Value::typed(text, &kind)),
        Json::Bool(flag) => Value::Flag(*flag),
        Json::Number(number) => match number.as_i64() {
            Some(whole) => Value::Whole(whole),
            None => Value::Number(number.as_f64().unwrap_or_default()),
        },
        Json::Array(items) => Value::List(items.iter().map(|item| taken(item, what)).collect()),
        Json::Object(entries) => Value::Table(
            entries
                .iter()
                .map(|(key, value)| (key.clone(), taken(value, &format!("{what}.{key}"))))
                .collect(),
        ),
        Json::Null => Value::Text(String::new()),
    }
}

fn unread(headers: &HeaderMap, why: &str) -> Response {
    if wants_json(headers) {
        let told = json!({ "problems": [{ "says": why, "hint": "" }] });
        return (StatusCode::UNPROCESSABLE_ENTITY, axum::Json(told)).into_response();
    }
    error::not_taken(why, "Nothing was written.")
}

/// What is answered where nothing was written.
pub(crate) fn refusal(
    desk: &Arc<Desk>,
    headers: &HeaderMap,
    typed: &Typed,
    refused: &Refused,
    step: Step<'_>,
) -> Response {
    let script = wants_json(headers);
    match refused {
        Refused::Underneath(files) if script => {
            let files: Vec<Json> = files
                .iter()
                .map(|one| json!({ "file": one.file, "ours": one.ours, "theirs": one.theirs }))
                .collect();
            let told = json!({ "underneath": files, "version": desk.now().version() });
            (StatusCode::CONFLICT, axum::Json(told)).into_response()
        }
        Refused::Underneath(files) => {
            (StatusCode::CONFLICT, conflict::page(desk, typed, files, step.path())).into_response()
        }
        Refused::Problems(problems) if script => {
            let told: Vec<Json> =
                problems.list.iter().map(|problem| told(problems, problem)).collect();
            let told = json!({ "problems": told });
            (StatusCode::UNPROCESSABLE_ENTITY, axum::Json(told)).into_response()
        }
        Refused::Problems(problems) => {
            let says: Vec<String> = problems
                .list
                .iter()
                .map(|problem| format!("{}; {}.", problem.says, problem.hint))
                .collect();
            error::not_taken("This cannot stand in the build.", &says.join(" "))
        }
        Refused::Unwritable(problem) => {
            unread(headers, &format!("{}; {}", problem.says, problem.hint))
        }
        Refused::Nothing => unread(headers, "there is nothing to undo or to do again"),
    }
}

fn told(problems: &Problems, problem: &Problem) -> Json {
    let mut told = json!({ "says": problem.says, "label": problem.label, "hint": problem.hint });
    if let (Some(at), Some(told)) = (&problem.at, told.as_object_mut()) {
        let place = problems.files.line_column(at);
        told.insert("file".to_owned(), json!(problems.files.file(at.file).name));
        told.insert("line".to_owned(), json!(place.line));
        told.insert("column".to_owned(), json!(place.column));
    }
    told
}
