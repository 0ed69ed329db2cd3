//! A job put into the tree of a build: what it removes, moves, changes and adds.

use crate::file::{ChangeFile, MoveFile, Raw, RemoveFile};
use crate::node::{Entry, Node, Table, Value};
use crate::read::{Reader, Record, Said, suggestion};
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
pub(crate) const ADDED: [(&str, &[&str]); 12] = [
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
    ("readings", &["readings"]),
];

/// Applies a change to the tree; every problem is told, and the tree is then not to be used.
pub(crate) fn apply(tree: &mut Table, change: &Change<'_>, reader: &mut Reader) {
    for said in change.remove {
        remove(tree, said, reader);
    }
    for Said { value: file, at } in change.moves {
        if let Some(what) = named(file, file.what.as_ref(), at, reader) {
            let place = Said { value: format!("{}.place", what.value), at: what.at.clone() };
            let example = "{ in = \"galley\", from_rear = \"20 mm\" }";
            let set = Set { what: &place, found: &file.found, to: &file.to, at, example };
            set.apply(tree, file, reader);
        }
    }
    for Said { value: file, at } in change.change {
        if let Some(what) = named(file, file.what.as_ref(), at, reader) {
            let example = "\"4 mm2\"";
            let set = Set { what, found: &file.found, to: &file.to, at, example };
            set.apply(tree, file, reader);
        }
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
    file: &impl Record,
    what: Option<&'a Said<String>>,
    at: &At,
    reader: &mut Reader,
) -> Option<&'a Said<String>> {
    reader.lacking(
        at,
        "this",
        &file.lacks(&["what"]),
        "name the thing by its key: what = \"items.lidded-box\"",
    );
    what
}

fn remove(tree: &mut Table, said: &Said<RemoveFile>, reader: &mut Reader) {
    let Said { value: file, at } = said;
    let Some(what) = named(file, file.what.as_ref(), at, reader) else { return };
    let path: Vec<&str> = what.value.split('.').collect();
    let Some(node) = find(tree, &path, what, reader) else { return };
    if let Some(found) = &file.found {
        compare(node, &found.value.0, reader);
    }
    if let Some((last, above)) = path.split_last()
        && let Some(table) = table_mut(tree, above)
    {
        table.entries.retain(|entry| entry.key != *last);
    }
}

/// The node at a path, or a problem that names the nearest key there is.
fn find<'t>(
    tree: &'t Table,
    path: &[&str],
    what: &Said<String>,
    reader: &mut Reader,
) -> Option<&'t Node> {
    let (last, above) = path.split_last()?;
    let table = find_table(tree, above, what, reader)?;
    let node = table.get(last);
    if node.is_none() {
        let known: Vec<&str> = table.entries.iter().map(|entry| entry.key.as_str()).collect();
        reader.tell(
            &what.at,
            format!("there is no `{}` in the build", path.join(".")),
            "not in the build",
            suggestion(last, &known),
        );
    }
    node
}

/// The table at a path; the whole tree at the empty one.
fn find_table<'t>(
    tree: &'t Table,
    path: &[&str],
    what: &Said<String>,
    reader: &mut Reader,
) -> Option<&'t Table> {
    if path.is_empty() {
        return Some(tree);
    }
    let node = find(tree, path, what, reader)?;
    if node.table().is_none() {
        reader.tell(
            &what.at,
            format!("`{}` is {} and has no keys", path.join("."), node.value.kind()),
            "no such key",
            "name the value by the keys that lead to it, with dots between",
        );
    }
    node.table()
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

/// A new value to be put where `found` stands.
struct Set<'a> {
    what: &'a Said<String>,
    found: &'a Option<Said<Raw>>,
    to: &'a Option<Said<Raw>>,
    at: &'a At,
    /// How such a value is written.
    example: &'static str,
}

impl Set<'_> {
    fn apply(&self, tree: &mut Table, file: &impl Record, reader: &mut Reader) {
        let Set { what, found, at, example, .. } = self;
        let Some(to) = self.to else {
            let hint = format!("give the new value: to = {example}");
            reader.lacking(at, "this", &file.lacks(&["to"]), &hint);
            return;
        };
        let path: Vec<&str> = what.value.split('.').collect();
        let Some((last, above)) = path.split_last() else { return };
        let Some(table) = find_table(tree, above, what, reader) else { return };
        match (table.get(last), found) {
            (Some(standing), Some(found)) => {
                if !compare(standing, &found.value.0, reader) {
                    return;
                }
            }
            (Some(standing), None) => {
                let stands = shown(&standing.value).unwrap_or_else(|| (*example).to_owned());
                reader.tell(
                    at,
                    format!("`{}` has a value, and this does not say which it expects", what.value),
                    "`found` is missing",
                    format!(
                        "add the value as it stands, so that a build changed meanwhile is \
                         noticed: found = {stands}"
                    ),
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
        let Some(table) = table_mut(tree, above) else { return };
        if let Some(node) = table.get_mut(last) {
            *node = to.value.0.clone();
        } else {
            table.entries.push(Entry {
                key: (*last).to_owned(),
                key_at: what.at.clone(),
                node: to.value.0.clone(),
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
            let stands = shown(a).unwrap_or_else(|| a.kind().to_owned());
            moved(&found.at, &stands, reader);
            false
        }
    }
}

fn moved(at: &At, stands: &str, reader: &mut Reader) {
    reader.tell(
        at,
        format!("the build has changed since this job was planned: here stands {stands} now"),
        "no longer so",
        "look at the job again, then write what stands now",
    );
}

/// A value as it is written in a file, if it is short.
fn shown(value: &Value) -> Option<String> {
    let shown = match value {
        Value::Text(text) => format!("\"{text}\""),
        Value::Date(date) => date.clone(),
        Value::Whole(number) => number.to_string(),
        Value::Number(number) => number.to_string(),
        Value::Flag(flag) => flag.to_string(),
        Value::List(items) => {
            let items: Option<Vec<String>> = items.iter().map(|item| shown(&item.value)).collect();
            format!("[{}]", items?.join(", "))
        }
        Value::Table(table) => {
            let entries = table.entries.iter();
            let entries: Option<Vec<String>> = entries
                .map(|entry| Some(format!("{} = {}", entry.key, shown(&entry.node.value)?)))
                .collect();
            format!("{{ {} }}", entries?.join(", "))
        }
    };
    (shown.len() <= 80).then_some(shown)
}

fn same_value(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Text(a), Value::Text(b)) => plain(a) == plain(b),
        (Value::List(a), Value::List(b)) => {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same_value(&a.value, &b.value))
        }
        (Value::Table(a), Value::Table(b)) => {
            let same = |entry: &Entry| {
                b.get(&entry.key).is_some_and(|node| same_value(&entry.node.value, &node.value))
            };
            a.entries.len() == b.entries.len() && a.entries.iter().all(same)
        }
        (a, b) => a == b,
    }
}

/// A text without what two spellings of one quantity differ in: spaces, unless they keep two
/// numbers apart, and raised figures.
fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    let mut after_space = false;
    for c in text.chars() {
        if c.is_whitespace() {
            after_space = true;
            continue;
        }
        if after_space && c.is_ascii_digit() && plain.ends_with(|last: char| last.is_ascii_digit())
        {
            plain.push(' ');
        }
        after_space = false;
        plain.push(match c {
            '²' => '2',
            '³' => '3',
            other => other,
        });
    }
    plain
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
