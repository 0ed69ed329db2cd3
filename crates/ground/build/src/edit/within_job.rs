//! Edits made in a job: what it says of a thing is put into its own `add`, `move`, `change` and
//! `remove`, with the value found.
//!
//! Only the part of the job that an edit is made in is touched: the job itself, or one of its
//! options. Of what lies below it, the value that stands there is what was found.

use super::change::{Change, refused};
use super::layers::{Layers, Upto, adds, find, in_add};
use super::meaning::{Known, not_there};
use super::value::Value;
use crate::node::{Node, Table};
use crate::problem::Problems;
use crate::read::{Reader, Said};

/// Says what is to stand at some keys of the build once the job is done.
pub(super) fn set(
    layers: &Layers,
    known: &Known<'_>,
    what: &[String],
    value: &Value,
) -> Result<Vec<Change>, Problems> {
    let file = known.file.clone();
    let tree = tree(layers, known, Upto::Changes);
    let added = in_add(what).filter(|(_, thing)| find(&tree, &what[..*thing]).is_none());
    if let Some((inner, _)) = added {
        let path = known.path(&["add"]).into_iter().chain(inner).collect();
        return Ok(vec![Change::Set { file, path, value: value.clone() }]);
    }
    nameable(what)?;
    let found = find(&tree, what).map(|node| Value::of(node, &layers.files));
    if let Some(path) = said_already(known, what) {
        return Ok(vec![Change::Set { file, path, value: value.clone() }]);
    }
    if found.as_ref().is_some_and(|found| value.is(&found.written())) {
        return Ok(Vec::new());
    }
    if let Some(place) = what.iter().skip(1).position(|key| key == "place") {
        let (thing, rest) = (&what[..=place], &what[place + 2..]);
        let found = find(&tree, &what[..place + 2]).map(|node| Value::of(node, &layers.files));
        let mut to = found.clone().unwrap_or_else(|| Value::Table(Vec::new()));
        to.put(rest, value.clone());
        return Ok(vec![push(known, "move", thing, found, Some(to))]);
    }
    // The innermost key that is not there yet, so that the tables on the way come with it.
    let stands = (1..what.len()).rev().find(|length| find(&tree, &what[..*length]).is_some());
    let (what, deeper) = what.split_at(stands.map_or(1, |length| length + 1));
    let wrap = |value, key: &String| Value::Table(vec![(key.clone(), value)]);
    let to = deeper.iter().rev().fold(value.clone(), wrap);
    Ok(vec![push(known, "change", what, found, Some(to))])
}

/// Takes out what stands at some keys of the build: what the job itself brings is no longer
/// brought, and what was there before is removed by it.
pub(super) fn remove(
    layers: &Layers,
    known: &Known<'_>,
    what: &[String],
) -> Result<Vec<Change>, Problems> {
    if adds(known.job, known.option, what) {
        return Ok(vec![remove_added(known, what)]);
    }
    nameable(what)?;
    let entries = entries(known);
    let around = entries.iter().rev().find(|entry| {
        entry.list != "remove" && what.len() > entry.what.len() && what.starts_with(&entry.what)
    });
    if let Some(Entry { list, number, what: outer }) = around {
        let keys = [*list, &number.to_string(), "to"];
        let rest = what[outer.len()..].iter().cloned();
        let path = known.path(&keys).into_iter().chain(rest).collect();
        return Ok(vec![Change::Remove { file: known.file.clone(), path }]);
    }
    let mut changes =
        drop_entries(known, |entry| entry.list != "remove" && entry.what.starts_with(what));
    let below = tree(layers, known, Upto::Below);
    match find(&below, what) {
        Some(node) => {
            changes.push(push(known, "remove", what, telling(node, layers), None));
            Ok(changes)
        }
        None if changes.is_empty() => Err(not_there(what)),
        None => Ok(changes),
    }
}

/// Takes back whatever the job does to what stands at some keys of the build.
pub(super) fn take_back(known: &Known<'_>, what: &[String]) -> Result<Vec<Change>, Problems> {
    let mut changes = drop_entries(known, |entry| {
        entry.what.starts_with(what) || (entry.list != "remove" && what.starts_with(&entry.what))
    });
    if adds(known.job, known.option, what) {
        changes.push(remove_added(known, what));
    }
    if changes.is_empty() {
        return Err(refused(
            format!("this job does nothing to `{}`", what.join(".")),
            "name what it adds, removes, moves or changes",
        ));
    }
    Ok(changes)
}

/// An entry of a job's `remove`, `move` or `change`: its number and the keys that it sets.
struct Entry {
    list: &'static str,
    number: usize,
    what: Vec<String>,
}

/// What the part of the job removes, moves and changes, in the order in which it is done.
fn entries(known: &Known<'_>) -> Vec<Entry> {
    let Some(section) = known.job.section(known.option) else { return Vec::new() };
    let of = |list, texts: Vec<Option<&Said<String>>>, tail: Option<&str>| -> Vec<Entry> {
        let keys = |what: &Said<String>| -> Vec<String> {
            what.value.split('.').chain(tail).map(str::to_owned).collect()
        };
        let all = texts.into_iter().enumerate();
        all.filter_map(|(number, what)| Some(Entry { list, number, what: keys(what?) })).collect()
    };
    let removed = section.remove.iter().map(|said| said.value.what.as_ref()).collect();
    let moved = section.moves.iter().map(|said| said.value.what.as_ref()).collect();
    let changed = section.change.iter().map(|said| said.value.what.as_ref()).collect();
    let mut entries = of("remove", removed, None);
    entries.extend(of("move", moved, Some("place")));
    entries.extend(of("change", changed, None));
    entries
}

/// Where the part of the job says already what is to stand at some keys.
fn said_already(known: &Known<'_>, what: &[String]) -> Option<Vec<String>> {
    let entries = entries(known);
    let mut said = entries.iter().rev().filter(|entry| entry.list != "remove");
    let entry = said.find(|entry| what.starts_with(&entry.what))?;
    let path = known.path(&[entry.list, &entry.number.to_string(), "to"]);
    Some(path.into_iter().chain(what[entry.what.len()..].iter().cloned()).collect())
}

/// Takes out entries, the last first, so that the numbers of the others stay.
fn drop_entries(known: &Known<'_>, goes: impl Fn(&Entry) -> bool) -> Vec<Change> {
    let all = entries(known).into_iter().rev().filter(|entry| goes(entry));
    all.map(|entry| {
        let path = known.path(&[entry.list, &entry.number.to_string()]);
        Change::Remove { file: known.file.clone(), path }
    })
    .collect()
}

fn remove_added(known: &Known<'_>, what: &[String]) -> Change {
    let inner = in_add(what).map_or_else(Vec::new, |(inner, _)| inner);
    let path = known.path(&["add"]).into_iter().chain(inner).collect();
    Change::Remove { file: known.file.clone(), path }
}

fn push(
    known: &Known<'_>,
    list: &str,
    what: &[String],
    found: Option<Value>,
    to: Option<Value>,
) -> Change {
    let mut entry = vec![("what".to_owned(), Value::Text(what.join(".")))];
    entry.extend(found.map(|found| ("found".to_owned(), found)));
    entry.extend(to.map(|to| ("to".to_owned(), to)));
    let (file, path) = (known.file.clone(), known.path(&[list]));
    Change::Insert { file, path, number: usize::MAX, value: Value::Table(entry) }
}

/// What of a thing is enough to tell that it is the same: the value itself, or of a table the key
/// that says what it is.
fn telling(node: &Node, layers: &Layers) -> Option<Value> {
    let Some(table) = node.table() else { return Some(Value::of(node, &layers.files)) };
    let keys = ["part", "kind", "what", "closes", "material", "to", "run", "section", "length"];
    let entry = keys.iter().find_map(|key| table.entry(key))?;
    Some(Value::Table(vec![(entry.key.clone(), Value::of(&entry.node, &layers.files))]))
}

fn tree(layers: &Layers, known: &Known<'_>, upto: Upto) -> Table {
    layers.with(&known.scope, upto, &mut Reader::default()).unwrap_or_default()
}

/// A job names things by keys with dots between, and so none with a dot in its name.
fn nameable(what: &[String]) -> Result<(), Problems> {
    match what.iter().find(|key| key.contains('.')) {
        None => Ok(()),
        Some(key) => Err(refused(
            format!("`{key}` has a dot in its name, and a job cannot name it"),
            "give it another name first",
        )),
    }
}
