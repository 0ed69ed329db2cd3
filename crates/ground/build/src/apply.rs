//! A job put into the tree of a build: what it removes, moves, changes and adds.

use crate::file::{ChangeFile, MoveFile, RemoveFile};
use crate::node::{Entry, Node, Table, Value};
use crate::read::{Reader, Said, suggestion};
use crate::source::At;

/// The parts of a job, or of one of its options, that change the build.
pub(crate) struct Change<'a> {
    pub(crate) remove: &'a [Said<RemoveFile>],
    pub(crate) moves: &'a [Said<MoveFile>],
    pub(crate) change: &'a [Said<ChangeFile>],
    /// The table `add`, as it stands in the job's file.
    pub(crate) add: Option<&'a Node>,
}

/// The kinds of thing that a job may add, with where they go in the build.
const ADDED: [(&str, &[&str]); 11] = [
    ("bays", &["bays"]),
    ("obstacles", &["obstacles"]),
    ("panels", &["panels"]),
    ("frame", &["frame"]),
    ("keep_out", &["keep_out"]),
    ("parts", &["parts"]),
    ("items", &["items"]),
    ("runs", &["runs"]),
    ("ways", &["block", "ways"]),
    ("sources", &["sources"]),
    ("trips", &["trips"]),
];

/// Applies a change to the tree; every problem is told, and the tree is then not to be used.
pub(crate) fn apply(tree: &mut Table, change: &Change<'_>, reader: &mut Reader) {
    for Said { value: RemoveFile { what, found }, at } in change.remove {
        let Some(what) = named(what.as_ref(), at, reader) else { continue };
        let path: Vec<&str> = what.value.split('.').collect();
        let Some(node) = find(tree, &path, what, reader) else { continue };
        if let Some(found) = found {
            compare(node, &found.value.0, reader);
        }
        if let Some((last, above)) = path.split_last()
            && let Some(table) = table_mut(tree, above)
        {
            table.entries.retain(|entry| entry.key != *last);
        }
    }
    for Said { value: MoveFile { what, found, to }, at } in change.moves {
        let Some(what) = named(what.as_ref(), at, reader) else { continue };
        let place = Said { value: format!("{}.place", what.value), at: what.at.clone() };
        set(
            tree,
            &place,
            found.as_ref().map(|raw| &raw.value.0),
            to.as_ref().map(|raw| &raw.value.0),
            at,
            reader,
        );
    }
    for Said { value: ChangeFile { what, found, to }, at } in change.change {
        let Some(what) = named(what.as_ref(), at, reader) else { continue };
        set(
            tree,
            what,
            found.as_ref().map(|raw| &raw.value.0),
            to.as_ref().map(|raw| &raw.value.0),
            at,
            reader,
        );
    }
    if let Some(add) = change.add.and_then(Node::table) {
        for (key, path) in ADDED {
            if let Some(node) = add.get(key)
                && let Some(things) = node.table()
            {
                insert(tree, path, things, &node.at, reader);
            }
        }
    }
}

/// What a change touches, by key: for telling two open jobs that touch one thing.
pub(crate) fn touched(change: &Change<'_>) -> Vec<String> {
    let removed = change.remove.iter().filter_map(|said| said.value.what.as_ref());
    let moved = change.moves.iter().filter_map(|said| said.value.what.as_ref());
    let changed = change.change.iter().filter_map(|said| said.value.what.as_ref());
    let mut touched: Vec<String> =
        removed.chain(moved).chain(changed).map(|what| what.value.clone()).collect();
    if let Some(add) = change.add.and_then(Node::table) {
        for (key, path) in ADDED {
            if let Some(things) = add.get(key).and_then(Node::table) {
                let prefix = path.join(".");
                touched
                    .extend(things.entries.iter().map(|entry| format!("{prefix}.{}", entry.key)));
            }
        }
    }
    touched
}

fn named<'a>(
    what: Option<&'a Said<String>>,
    at: &At,
    reader: &mut Reader,
) -> Option<&'a Said<String>> {
    if what.is_none() {
        reader.tell(
            at,
            "it does not say what it is about",
            "`what` is missing here",
            "name the thing by its key: what = \"items.lidded-box\"",
        );
    }
    what
}

/// The node at a path, or a problem that names the nearest key there is.
fn find<'t>(
    tree: &'t Table,
    path: &[&str],
    what: &Said<String>,
    reader: &mut Reader,
) -> Option<&'t Node> {
    let mut table = tree;
    for (depth, key) in path.iter().enumerate() {
        let Some(entry) = table.entry(key) else {
            let known: Vec<&str> = table.entries.iter().map(|entry| entry.key.as_str()).collect();
            reader.tell(
                &what.at,
                format!("there is no `{}` in the build", path[..=depth].join(".")),
                "not in the build",
                suggestion(key, &known),
            );
            return None;
        };
        if depth + 1 == path.len() {
            return Some(&entry.node);
        }
        let Some(next) = entry.node.table() else {
            reader.tell(
                &what.at,
                format!(
                    "`{}` holds {}, nothing is inside it",
                    path[..=depth].join("."),
                    entry.node.value.kind()
                ),
                "no such key",
                "name the value by the keys that lead to it, with dots between",
            );
            return None;
        };
        table = next;
    }
    None
}

fn table_mut<'t>(tree: &'t mut Table, path: &[&str]) -> Option<&'t mut Table> {
    let mut table = tree;
    for key in path {
        table = match &mut table.get_mut(key)?.value {
            Value::Table(table) => table,
            _ => return None,
        };
    }
    Some(table)
}

/// Puts a new value where `found` stands.
fn set(
    tree: &mut Table,
    what: &Said<String>,
    found: Option<&Node>,
    to: Option<&Node>,
    at: &At,
    reader: &mut Reader,
) {
    let Some(to) = to else {
        reader.tell(
            at,
            "it does not say what comes there",
            "`to` is missing here",
            "give the new value: to = \"4 mm2\"",
        );
        return;
    };
    let path: Vec<&str> = what.value.split('.').collect();
    let Some((last, above)) = path.split_last() else { return };
    if !above.is_empty() && find(tree, above, what, reader).is_none() {
        return;
    }
    let standing = table_mut(tree, above).and_then(|table| table.get(last).cloned());
    match (&standing, found) {
        (Some(standing), Some(found)) => {
            if !compare(standing, found, reader) {
                return;
            }
        }
        (Some(_), None) => {
            reader.tell(
                at,
                format!("`{}` has a value already, and this does not say which it counts on", what.value),
                "`found` is missing here",
                "give the value as it stands, so that a build changed meanwhile is noticed: found = \"1.5 mm2\"",
            );
            return;
        }
        (None, Some(found)) => {
            reader.tell(
                &found.at,
                format!("`{}` has no value in the build", what.value),
                "not found",
                "leave `found` out where nothing stands yet, or mend the key",
            );
            return;
        }
        (None, None) => {}
    }
    if let Some(table) = table_mut(tree, above) {
        if let Some(node) = table.get_mut(last) {
            *node = to.clone();
        } else {
            table.entries.push(Entry {
                key: (*last).to_owned(),
                key_at: what.at.clone(),
                node: to.clone(),
            });
        }
    }
}

/// Whether what stands is what was found; a table is compared in the keys that `found` names.
fn compare(standing: &Node, found: &Node, reader: &mut Reader) -> bool {
    match (&standing.value, &found.value) {
        (Value::Table(standing_table), Value::Table(found_table)) => {
            let mut same = true;
            for entry in &found_table.entries {
                if let Some(node) = standing_table.get(&entry.key) {
                    same &= compare(node, &entry.node, reader);
                } else {
                    same = false;
                    moved(&entry.key_at, "nothing", reader);
                }
            }
            same
        }
        (a, b) if same_value(a, b) => true,
        (a, _) => {
            moved(&found.at, &shown(a), reader);
            false
        }
    }
}

fn moved(at: &At, stands: &str, reader: &mut Reader) {
    reader.tell(
        at,
        "the build has changed since this job was planned",
        format!("the build now has {stands} here"),
        "look at the job again, then write the value that stands now",
    );
}

fn shown(value: &Value) -> String {
    match value {
        Value::Text(text) | Value::Date(text) => format!("\"{text}\""),
        Value::Whole(number) => number.to_string(),
        Value::Number(number) => number.to_string(),
        Value::Flag(flag) => flag.to_string(),
        Value::List(_) | Value::Table(_) => "something else".to_owned(),
    }
}

fn same_value(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Text(a), Value::Text(b)) => plain(a) == plain(b),
        (Value::List(a), Value::List(b)) => {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same_value(&a.value, &b.value))
        }
        (a, b) => a == b,
    }
}

/// A text without what two spellings of one quantity differ in.
fn plain(text: &str) -> String {
    text.chars()
        .filter(|c| !c.is_whitespace())
        .map(|c| match c {
            '²' => '2',
            '³' => '3',
            other => other,
        })
        .flat_map(char::to_lowercase)
        .collect()
}

/// Puts named things into the build, each under a name that is not taken.
fn insert(tree: &mut Table, path: &[&str], things: &Table, at: &At, reader: &mut Reader) {
    let mut table = tree;
    for key in path {
        if table.get(key).is_none() {
            table.entries.push(Entry {
                key: (*key).to_owned(),
                key_at: at.clone(),
                node: Node { at: at.clone(), value: Value::Table(Table::default()) },
            });
        }
        let Some(Node { value: Value::Table(next), .. }) = table.get_mut(key) else { return };
        table = next;
    }
    for entry in &things.entries {
        if table.get(&entry.key).is_some() {
            reader.tell(
                &entry.key_at,
                format!("the build already has `{}.{}`", path.join("."), entry.key),
                "this name is taken",
                "choose another name, or remove the old thing in the same job",
            );
        } else {
            table.entries.push(entry.clone());
        }
    }
}
