//! A job that is done: what it does goes into the build as it stands.

use super::change::{Change, Texts, apply};
use super::layers::{Layers, Scope};
use super::meaning::at_base;
use super::value::Value;
use crate::apply::{ADDED, Change as Section};
use crate::file::Raw;
use crate::node::Node;
use crate::problem::Problems;
use crate::read::{Reader, Said};

/// The changes that put a job into the build and its day into its file.
pub(super) fn done(
    texts: &Texts,
    layers: &Layers,
    job: &str,
    option: Option<&str>,
    day: &str,
) -> Result<Vec<Change>, Problems> {
    let job_scope = Scope::job(job);
    let known = job_scope.known(layers)?;
    let option = option.or_else(|| known.job.choice());
    let scope = Scope::Job { job: job.to_owned(), option: option.map(str::to_owned) };
    let known = scope.known(layers)?;
    // What does not go together is told before anything is put into the build.
    let mut reader = Reader::default();
    let mut tree = layers.base.clone();
    known.job.apply(&mut tree, option, &mut reader);
    if !reader.problems.is_empty() {
        return Err(Problems::new(layers.files.clone(), reader.problems));
    }
    let mut changes = Vec::new();
    let mut now = texts.clone();
    let own = option.and_then(|option| known.job.section(Some(option)));
    for section in known.job.section(None).into_iter().chain(own) {
        for (what, value) in said(&section, layers) {
            let now_layers = Layers::of(&now);
            let (file, path) = at_base(&now, &now_layers, &what);
            let change = match value {
                Some(value) => Change::Set { file, path, value },
                None if path.is_empty() => Change::File { file, text: None },
                None => Change::Remove { file, path },
            };
            now = apply(&now, std::slice::from_ref(&change))?;
            changes.push(change);
        }
    }
    if let Some(option) = option {
        changes.push(Change::set(&known.file, &["choice"], option));
    }
    changes.push(Change::set(&known.file, &["done"], day));
    Ok(changes)
}

/// What a part of a job does, by the keys of the build and in its order; `None` takes it out.
fn said(section: &Section<'_>, layers: &Layers) -> Vec<(Vec<String>, Option<Value>)> {
    let keys = |what: &Option<Said<String>>, tail: Option<&str>| -> Vec<String> {
        let what = what.as_ref().map_or("", |what| what.value.as_str());
        what.split('.').chain(tail).map(str::to_owned).collect()
    };
    let value = |to: &Option<Said<Raw>>| Some(Value::of(&to.as_ref()?.value.0, &layers.files));
    let mut said: Vec<(Vec<String>, Option<Value>)> = Vec::new();
    said.extend(section.remove.iter().map(|entry| (keys(&entry.value.what, None), None)));
    said.extend(
        section
            .moves
            .iter()
            .map(|Said { value: entry, .. }| (keys(&entry.what, Some("place")), value(&entry.to))),
    );
    said.extend(
        section
            .change
            .iter()
            .map(|Said { value: entry, .. }| (keys(&entry.what, None), value(&entry.to))),
    );
    let Some(add) = section.add.and_then(Node::table) else { return said };
    for (key, prefix) in ADDED {
        let things = add.get(key).and_then(Node::table);
        for entry in things.into_iter().flat_map(|things| &things.entries) {
            let path = prefix.iter().map(|key| (*key).to_owned()).chain([entry.key.clone()]);
            said.push((path.collect(), Some(Value::of(&entry.node, &layers.files))));
        }
    }
    said
}
