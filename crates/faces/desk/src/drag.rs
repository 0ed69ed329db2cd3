//! A thing that is dragged: tried in the build as it is in memory, while the files stay as they
//! are.
//!
//! The script says how far the thing was moved in the axes of a drawing; the answer says what is
//! left around it and what fit finds of it there, and once it is put down, with which edits it
//! stays there. Edits are made by the address for changes.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::body::Bytes;
use axum::extract::{Query, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::{Value as Json, json};
use spile_answer::{Finding, Verdict};
use spile_ask::number;
use spile_build::edit::{Scope, where_is};
use spile_build::{Anchor, Build, Place};
use spile_fit::Picture;
use spile_quantity::Length;

use crate::desk::Desk;
use crate::error;
use crate::page::figure::reason;
use crate::placing::{self, Stays};
use crate::view::{Asked, View};

/// What the script sends.
#[derive(Debug, Deserialize)]
struct Move {
    /// Which of its moves this is; the answer has the same.
    seq: u64,
    /// The thing: `items.upright`.
    thing: String,
    /// How far it was moved \[mm\] along axes of the drawing: of the vehicle (`x`, `y`, `z`, with a
    /// `-` before it where it runs back) or of the bay as one faces it (`right`, `up`, `back`).
    by: BTreeMap<String, f64>,
    /// Whether it is put down.
    #[serde(default)]
    down: bool,
}

/// Why a move is not answered: what, and what to do.
#[derive(Debug)]
struct NotMoved(String, &'static str);

/// Tries a move in memory and answers it; nothing is written.
pub(crate) async fn drag(
    State(desk): State<Arc<Desk>>,
    Query(asked): Query<Asked>,
    body: Bytes,
) -> Response {
    let answered = tokio::task::spawn_blocking(move || {
        let moved: Move = serde_json::from_slice(&body).map_err(|_| {
            let what = "this is no move of a thing".to_owned();
            NotMoved(what, "load the page again, and drag once more")
        })?;
        let view = View::of(&desk, asked).map_err(|_| {
            let what = "the build cannot be answered as its files are now".to_owned();
            NotMoved(what, "load the page again to see what is wrong in them")
        })?;
        answer(&view, &moved)
    });
    match answered.await {
        Ok(Ok(reply)) => json_response(StatusCode::OK, &reply),
        Ok(Err(NotMoved(says, hint))) => {
            let told = json!({ "problems": [{ "says": says, "hint": hint }] });
            json_response(StatusCode::UNPROCESSABLE_ENTITY, &told)
        }
        Err(_) => error::broken(),
    }
}

fn json_response(status: StatusCode, reply: &Json) -> Response {
    (status, [(header::CONTENT_TYPE, "application/json")], reply.to_string()).into_response()
}

fn answer(view: &View, moved: &Move) -> Result<Json, NotMoved> {
    let build = view.build();
    let unknown = || {
        let what = format!("there is no item `{}` with a place in this build", moved.thing);
        NotMoved(what, "drag a thing that has a place, or give it one")
    };
    let name = moved.thing.strip_prefix("items.").ok_or_else(unknown)?;
    let place = build.items.get(name).and_then(|item| item.place.as_ref()).ok_or_else(unknown)?;
    let shift = shift(build, name, &moved.by)?;
    let anchors = [&place.x, &place.y, &place.z];
    let stays: [Option<Stays>; 3] =
        std::array::from_fn(|axis| placing::stays(anchors[axis], axis, place.on.as_deref()));
    let shift: [Length; 3] =
        std::array::from_fn(
            |axis| if stays[axis].is_some() { Length::m(0.0) } else { shift[axis] },
        );
    let tried = tried(build, name, place, shift)?;
    let fit = spile_fit::answer(&tried);
    let prefix = format!("{name}.");
    let of_it = |finding: &&Finding| finding.id.starts_with(&prefix);
    let found: Vec<&Finding> = fit.findings.iter().filter(of_it).collect();
    let worst = found.iter().map(|finding| finding.verdict).max();
    let mut reply = json!({
        "seq": moved.seq,
        "version": view.version(),
        "job": view.choice.job,
        "option": view.choice.option,
        "by": shift.map(|length| tidy(length.in_mm())),
        "stays": notes(place, stays),
        "place": told(&tried, name),
        "around": spile_fit::picture(&tried, name).as_ref().map(around).unwrap_or_default(),
        "verdict": worst.map(worded),
        "fit": worded(fit.verdict()),
        "found": found.iter().map(|finding| shown(finding)).collect::<Vec<_>>(),
    });
    if moved.down
        && let Some(reply) = reply.as_object_mut()
    {
        reply.insert("edits".to_owned(), Json::Array(edits(view, name, place, shift)?));
    }
    Ok(reply)
}

/// How far it was moved towards the front, to the left and upwards.
fn shift(build: &Build, name: &str, by: &BTreeMap<String, f64>) -> Result<[Length; 3], NotMoved> {
    let mut shift = [Length::m(0.0); 3];
    for (word, mm) in by {
        let (plain, sign) =
            word.strip_prefix('-').map_or((word.as_str(), 1.0), |rest| (rest, -1.0));
        let (axis, sign) = match plain {
            "x" => (0, sign),
            "y" => (1, sign),
            "z" => (2, sign),
            "right" | "up" | "back" => {
                let Some(picture) = spile_fit::picture(build, name) else {
                    let what = format!("{name} stands in no bay that one could face");
                    return Err(NotMoved(what, "drag it in the plan or the side of the vehicle"));
                };
                let [right, up, out] = picture.axes;
                let along = match plain {
                    "right" => right,
                    "up" => up,
                    _ => out.opposite(),
                };
                (along.axis().index(), sign * along.sign())
            }
            _ => {
                let what = format!("a drawing has no axis `{word}`");
                return Err(NotMoved(what, "load the page again, and drag once more"));
            }
        };
        shift[axis] = shift[axis] + Length::mm(sign * mm);
    }
    Ok(shift)
}

/// The build with the item in its new place.
fn tried(build: &Build, name: &str, place: &Place, shift: [Length; 3]) -> Result<Build, NotMoved> {
    let to = |anchor: &Anchor, by: Length| {
        placing::shifted(anchor, by).ok_or_else(|| {
            let what = format!("{name} would be outside of any vehicle there");
            NotMoved(what, "a place is at most 20 m from the face that it is told from")
        })
    };
    let [x, y, z] = shift;
    let (x, y, z) = (to(&place.x, x)?, to(&place.y, y)?, to(&place.z, z)?);
    let mut tried = build.clone();
    if let Some(item) = tried.items.get_mut(name) {
        item.place = Some(Place { x, y, z, ..place.clone() });
    }
    Ok(tried)
}

/// The edits that put it there, in the words of its owner.
fn edits(
    view: &View,
    name: &str,
    place: &Place,
    shift: [Length; 3],
) -> Result<Vec<Json>, NotMoved> {
    let texts = view.texts();
    let scope = match &view.choice.job {
        Some(job) => Scope::Job { job: job.clone(), option: view.choice.option.clone() },
        None => Scope::Base,
    };
    let mut edits = Vec::new();
    for (axis, anchor) in [&place.x, &place.y, &place.z].into_iter().enumerate() {
        let by = if matches!(anchor, Anchor::High(_)) { -shift[axis] } else { shift[axis] };
        let Some(key) = placing::key(anchor, axis).filter(|_| by != Length::m(0.0)) else {
            continue;
        };
        let what = format!("items.{name}.place.{key}");
        let stands = where_is(&texts, &scope, &what).and_then(|spot| spot.shown);
        let value = stands.and_then(|text| placing::written(&text, by)).ok_or_else(|| {
            let what = format!("where {name} is, is written in a way that cannot be changed here");
            NotMoved(what, "write its place in the file")
        })?;
        edits.push(json!({ "do": "set", "what": what, "value": value }));
    }
    Ok(edits)
}

/// The distances that say where it is, by their keys.
fn told(build: &Build, name: &str) -> Vec<Json> {
    let Some(place) = build.items.get(name).and_then(|item| item.place.as_ref()) else {
        return Vec::new();
    };
    [&place.x, &place.y, &place.z]
        .into_iter()
        .enumerate()
        .filter_map(|(axis, anchor)| {
            let (Anchor::Low(given) | Anchor::High(given)) = anchor else { return None };
            let words = placing::key(anchor, axis)?.replace('_', " ");
            Some(json!({ "words": words, "figure": number::quantity(given.likely()) }))
        })
        .collect()
}

/// What is left around it, by direction.
fn around(picture: &Picture) -> Vec<Json> {
    let told = picture.distances.iter().map(|distance| {
        json!({
            "way": distance.way,
            "what": distance.what,
            "mm": tidy(distance.length.in_mm()),
            "figure": number::quantity(distance.length),
        })
    });
    told.collect()
}

/// Why it stays along an axis, in words.
fn notes(place: &Place, stays: [Option<Stays>; 3]) -> Vec<Json> {
    let words = ["along the vehicle", "across the vehicle", "in height"];
    let note = |(axis, stays): (usize, Option<Stays>)| {
        let says = match stays? {
            Stays::Stands => {
                let on = place.on.as_deref().unwrap_or("the floor");
                format!("It stands on {on} and stays on it.")
            }
            Stays::Unsaid => format!("Its place {} is not said, so it stays.", words[axis]),
        };
        Some(json!({ "axis": axis, "says": says }))
    };
    stays.into_iter().enumerate().filter_map(note).collect()
}

fn shown(finding: &Finding) -> Json {
    let limit = finding.limit.as_ref();
    json!({
        "id": finding.id,
        "label": finding.label,
        "verdict": worded(finding.verdict),
        "figure": finding.figure.as_ref().map(|figure| number::change(None, figure, limit)),
        "says": finding.says,
    })
}

/// A verdict with its reason, and the word alone for its shape.
fn worded(verdict: Verdict) -> Json {
    json!({ "word": verdict.word(), "says": format!("{}{}", verdict.word(), reason(verdict)) })
}

/// Millimetres without the dust of arithmetic.
fn tidy(mm: f64) -> f64 {
    (mm * 1e6).round() / 1e6
}
