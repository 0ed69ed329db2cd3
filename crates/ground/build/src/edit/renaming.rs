//! A thing that gets another name: in its own heading, and wherever it is named.

use super::change::{Change, Texts, is_stem, refused};
use super::layers::{Layers, Scope, find, in_add};
use super::meaning::{at_base, not_there};
use super::splice::join;
use super::value::Value;
use crate::apply::ADDED;
use crate::kind::{Kind, Root};
use crate::node::{Node, Table, Value as Stands};
use crate::problem::Problems;

/// Tells in which file what stands at some keys of the build is written, and by which keys there.
type At<'a> = dyn Fn(&[String]) -> (String, Vec<String>) + 'a;

/// Things that are named by their own name where nothing is said: a run goes to the item of its
/// name, an item is of the part of its name.
const LIKE_ITSELF: [(&str, &str, &str); 2] = [("runs", "to", "items"), ("items", "part", "parts")];

/// The changes that give a thing another name.
pub(super) fn rename(
    texts: &Texts,
    layers: &Layers,
    scope: &Scope,
    what: &[String],
    to: &str,
) -> Result<Vec<Change>, Problems> {
    let Some((old, collection)) = what.split_last() else { return Err(not_there(what)) };
    let is_thing = matches!(Root::Build.at(collection), Some(Kind::Keyed(_)));
    if !is_thing || to.is_empty() || to.contains('.') {
        return Err(refused(
            format!("`{}` cannot be named `{to}`", what.join(".")),
            "a thing of the build has a name of its own, without a dot in it",
        ));
    }
    let mut renaming = Renaming { collection, old, to, what, changes: Vec::new() };
    let own = match scope {
        Scope::Base => {
            if find(&layers.base, what).is_none() {
                return Err(not_there(what));
            }
            let base = layers.base.entries.iter();
            for entry in base {
                renaming.visit(&entry.node, std::slice::from_ref(&entry.key), &|path| {
                    at_base(texts, layers, path)
                });
            }
            at_base(texts, layers, what)
        }
        Scope::Job { .. } => {
            let known = scope.known(layers)?;
            let (inner, _) = in_add(what).ok_or_else(|| not_there(what))?;
            let path: Vec<String> = known.path(&["add"]).into_iter().chain(inner).collect();
            if find(&known.job.tree, &path).is_none() {
                return Err(not_there(what));
            }
            (known.file, path)
        }
    };
    for job in layers.jobs.all() {
        let file = format!("jobs/{}.toml", job.name);
        let is_concerned = match scope {
            Scope::Base => true,
            Scope::Job { job: name, option: None } => {
                layers.jobs.chain(job).iter().any(|earlier| earlier.name == *name)
            }
            Scope::Job { job: name, .. } => job.name == *name,
        };
        if !is_concerned {
            continue;
        }
        let only = match scope {
            Scope::Job { job: name, option: Some(option) } if *name == job.name => Some(option),
            _ => None,
        };
        if only.is_none() {
            renaming.visit_section(&job.tree, &file, &[]);
        }
        let options = job.tree.get("options").and_then(Node::table);
        for entry in options.into_iter().flat_map(|options| &options.entries) {
            if only.is_none_or(|only| *only == entry.key)
                && let Some(table) = entry.node.table()
            {
                renaming.visit_section(table, &file, &["options".to_owned(), entry.key.clone()]);
            }
        }
    }
    let (file, path) = own;
    if path.is_empty() {
        let new = format!("parts/{to}.toml");
        if !is_stem(to) || texts.contains_key(&new) {
            return Err(refused(
                format!("a part cannot be named `{to}`"),
                "choose a name that no other part has and that a file can have",
            ));
        }
        let text = texts.get(&file).cloned();
        renaming.changes.push(Change::File { file, text: None });
        renaming.changes.push(Change::File { file: new, text });
    } else {
        renaming.changes.push(Change::Rename { file, path, to: to.to_owned() });
    }
    Ok(renaming.changes)
}

struct Renaming<'a> {
    /// What the thing is one of: `items`, `block.ways`.
    collection: &'a [String],
    old: &'a str,
    to: &'a str,
    what: &'a [String],
    changes: Vec<Change>,
}

impl Renaming<'_> {
    /// Looks for the name in a node that stands at some keys of the build; `at` tells where those
    /// are written.
    fn visit(&mut self, node: &Node, path: &[String], at: &At<'_>) {
        match &node.value {
            Stands::Text(text) if *text == self.old && self.is_named_at(path) => {
                self.set(at(path), self.to);
            }
            Stands::List(items) => {
                for (number, item) in items.iter().enumerate() {
                    self.visit(item, &join(path, &number.to_string()), at);
                }
            }
            Stands::Table(table) => {
                self.like_itself(table, path, at);
                for entry in &table.entries {
                    self.visit(&entry.node, &join(path, &entry.key), at);
                }
            }
            _ => {}
        }
    }

    /// Says a name that went without saying, where it no longer does.
    fn like_itself(&mut self, table: &Table, path: &[String], at: &At<'_>) {
        let [owner, name] = path else { return };
        for (things, key, named) in LIKE_ITSELF {
            if *owner == things && *name == self.old && table.get(key).is_none() {
                let key = join(path, key);
                if self.collection == [things] {
                    self.set(at(&key), self.old);
                } else if self.collection == [named] {
                    self.set(at(&key), self.to);
                }
            }
        }
    }

    /// Looks for the name in what a job, or one of its options, adds, removes, moves and changes.
    fn visit_section(&mut self, section: &Table, file: &str, prefix: &[String]) {
        let within = |keys: &[&str], rest: &[String]| -> Vec<String> {
            let keys = keys.iter().map(|key| (*key).to_owned());
            prefix.iter().cloned().chain(keys).chain(rest.iter().cloned()).collect()
        };
        let add = section.get("add").and_then(Node::table);
        for (key, path) in ADDED {
            if let Some(node) = add.and_then(|add| add.get(key)) {
                let path: Vec<String> = path.iter().map(|key| (*key).to_owned()).collect();
                let length = path.len();
                self.visit(node, &path, &|path| {
                    (file.to_owned(), within(&["add", key], &path[length..]))
                });
            }
        }
        for (list, tail) in [("remove", None), ("move", Some("place")), ("change", None)] {
            let Some(Node { value: Stands::List(items), .. }) = section.get(list) else { continue };
            for (number, item) in items.iter().enumerate() {
                let number = number.to_string();
                let Some(table) = item.table() else { continue };
                let Some(Node { value: Stands::Text(what), .. }) = table.get("what") else {
                    continue;
                };
                let path: Vec<String> = what.split('.').map(str::to_owned).collect();
                if path.starts_with(self.what) {
                    let mut new = path.clone();
                    self.to.clone_into(&mut new[self.what.len() - 1]);
                    let at = (file.to_owned(), within(&[list, &number, "what"], &[]));
                    self.set(at, &new.join("."));
                }
                let path: Vec<String> = path.into_iter().chain(tail.map(str::to_owned)).collect();
                for key in ["found", "to"] {
                    if let Some(node) = table.get(key) {
                        let length = path.len();
                        self.visit_found(node, &path, &|path| {
                            (file.to_owned(), within(&[list, &number, key], &path[length..]))
                        });
                    }
                }
            }
        }
    }

    /// As [`Self::visit`], of a part of a thing: what it does not say may be said elsewhere.
    fn visit_found(&mut self, node: &Node, path: &[String], at: &At<'_>) {
        match &node.value {
            Stands::Table(table) => {
                for entry in &table.entries {
                    self.visit_found(&entry.node, &join(path, &entry.key), at);
                }
            }
            _ => self.visit(node, path, at),
        }
    }

    fn set(&mut self, (file, path): (String, Vec<String>), name: &str) {
        self.changes.push(Change::Set { file, path, value: Value::Text(name.to_owned()) });
    }

    /// Whether a text at a path names a thing of the collection.
    fn is_named_at(&self, path: &[String]) -> bool {
        let Some((key, above)) = path.split_last() else { return false };
        let Some(Kind::Record { fields, .. }) = Root::Build.at(above) else { return false };
        let names =
            fields().into_iter().find(|field| field.key == *key).and_then(|field| field.names);
        names.is_some_and(|names| names == self.collection.join("."))
    }
}
