//! What was sent by a form or a script.

use axum::http::{HeaderMap, header};
use serde_json::{Value as Json, json};
use spile_build::edit::Scope;

use crate::view::Choice;

/// The fields that were sent, by name and in order.
#[derive(Debug, Clone, Default)]
pub(crate) struct Typed {
    fields: Vec<(String, String)>,
    edits: Vec<(String, String, Option<Json>)>,
}

impl Typed {
    /// Reads a form, or the object that a script sends; of what is neither, nothing.
    pub(crate) fn of(headers: &HeaderMap, body: &[u8]) -> Self {
        let kind = headers.get(header::CONTENT_TYPE).and_then(|kind| kind.to_str().ok());
        if kind.is_some_and(|kind| kind.starts_with("application/json")) {
            return Self::of_json(&serde_json::from_slice(body).unwrap_or_default());
        }
        let fields: Vec<(String, String)> = form(body);
        let all = |name: &'static str| {
            fields.iter().filter(move |(key, _)| key == name).map(|(_, value)| value.clone())
        };
        let (mut verbs, mut values) = (all("do"), all("value"));
        let edits = all("what")
            .map(|what| {
                let verb = verbs.next().unwrap_or_else(|| "set".to_owned());
                (verb, what, values.next().map(|value| json!(value)))
            })
            .collect();
        Self { edits, fields }
    }

    /// A field, if it was sent.
    pub(crate) fn get(&self, name: &str) -> Option<&str> {
        self.fields.iter().find(|(key, _)| key == name).map(|(_, value)| value.as_str())
    }

    /// A field without the space around it; empty where it was not sent.
    pub(crate) fn text(&self, name: &str) -> &str {
        self.get(name).unwrap_or_default().trim()
    }

    /// Every field.
    pub(crate) fn fields(&self) -> &[(String, String)] {
        &self.fields
    }

    /// The edits named: what is done, the keys and the value.
    pub(crate) fn edits(&self) -> impl Iterator<Item = (&str, &str, Option<&Json>)> {
        self.edits.iter().map(|(verb, what, value)| (verb.as_str(), what.as_str(), value.as_ref()))
    }

    /// The same with some edits as they are sent to be changed, in the place of other fields.
    pub(crate) fn sent(&self, edits: &[(&str, String, String)]) -> Self {
        let kept = ["job", "option", "since", "back"];
        let kept = self.fields.iter().filter(|(name, _)| kept.contains(&name.as_str()));
        let mut fields: Vec<(String, String)> = kept.cloned().collect();
        for (verb, what, value) in edits {
            let triple = [("do", *verb), ("what", what.as_str()), ("value", value.as_str())];
            fields.extend(triple.map(|(name, value)| (name.to_owned(), value.to_owned())));
        }
        Self { fields, edits: Vec::new() }
    }

    fn of_json(json: &Json) -> Self {
        let text = |value: &Json| value.as_str().map(str::to_owned);
        let fields = json.as_object().into_iter().flatten();
        let fields = fields.filter_map(|(key, value)| Some((key.clone(), text(value)?))).collect();
        let edits = json["edits"].as_array().into_iter().flatten();
        let edits = edits.map(|edit| {
            let verb = text(&edit["do"]).unwrap_or_else(|| "set".to_owned());
            (verb, text(&edit["what"]).unwrap_or_default(), edit.get("value").cloned())
        });
        Self { fields, edits: edits.collect() }
    }
}

/// Where the changes are to be made.
pub(crate) fn scope(typed: &Typed) -> Scope {
    let option = Some(typed.text("option")).filter(|option| !option.is_empty());
    match typed.text("job") {
        "" => Scope::Base,
        job => Scope::Job { job: job.to_owned(), option: option.map(str::to_owned) },
    }
}

/// The job and option that the page shows.
pub(crate) fn choice(typed: &Typed) -> Choice {
    let said = |name: &str| Some(typed.text(name).to_owned()).filter(|text| !text.is_empty());
    Choice { job: said("job"), option: said("option") }
}

/// The pairs of a form, decoded.
fn form(body: &[u8]) -> Vec<(String, String)> {
    let pairs = body.split(|byte| *byte == b'&').filter(|pair| !pair.is_empty());
    pairs
        .map(|pair| {
            let cut = pair.iter().position(|byte| *byte == b'=').unwrap_or(pair.len());
            (decoded(&pair[..cut]), decoded(pair.get(cut + 1..).unwrap_or_default()))
        })
        .collect()
}

fn decoded(text: &[u8]) -> String {
    let hex = |byte: Option<&u8>| byte.and_then(|byte| char::from(*byte).to_digit(16));
    let mut bytes = Vec::with_capacity(text.len());
    let mut at = 0;
    while let Some(byte) = text.get(at) {
        let escaped = hex(text.get(at + 1)).zip(hex(text.get(at + 2)));
        match (byte, escaped) {
            (b'%', Some((high, low))) => {
                bytes.push(u8::try_from(high * 16 + low).unwrap_or_default());
                at += 2;
            }
            (b'+', _) => bytes.push(b' '),
            _ => bytes.push(*byte),
        }
        at += 1;
    }
    String::from_utf8_lossy(&bytes).into_owned()
}
