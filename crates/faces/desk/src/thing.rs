//! A thing of the build in a form: what its files say of it, what was typed, and the edits between.

use spile_build::edit::{Edit, Scope, Texts, Value, edited, where_is};
use spile_build::{Kind, Problem, Problems};

use crate::leaf::{Group, Leaf, groups, joined};
use crate::typed::Typed;

/// What a field's name in a form begins with.
const FIELD: &str = "v.";

/// A thing, or one that is to be added.
#[derive(Debug)]
pub(crate) struct Thing {
    /// The keys that lead to it; of one that is to be added, to its collection; empty of the build.
    pub(crate) what: String,
    /// What can be said of it.
    pub(crate) groups: Vec<Group>,
    /// Whether it is to be added.
    pub(crate) is_new: bool,
}

impl Thing {
    /// The thing at some keys; `None` where there can be none.
    pub(crate) fn of(what: &str, is_new: bool) -> Option<Self> {
        let what = if what == "build" { "" } else { what };
        let groups = groups(what);
        (!groups.is_empty()).then(|| Self { what: what.to_owned(), groups, is_new })
    }

    /// The keys of a field of it.
    pub(crate) fn key(&self, path: &str) -> String {
        joined(&self.what, path)
    }

    /// What a field shows: what was typed, or what its owner wrote.
    pub(crate) fn shown(
        &self,
        texts: &Texts,
        scope: &Scope,
        typed: Option<&Typed>,
        path: &str,
    ) -> String {
        let kept = typed.and_then(|typed| typed.get(&field_name(path)));
        kept.map_or_else(|| self.written(texts, scope, path), str::to_owned)
    }

    /// What its owner wrote of a field; empty where nothing is said.
    fn written(&self, texts: &Texts, scope: &Scope, path: &str) -> String {
        if self.is_new {
            return String::new();
        }
        let spot = where_is(texts, scope, &self.key(path));
        spot.and_then(|spot| spot.shown).unwrap_or_default()
    }

    /// What was typed otherwise than the texts say it: the keys of each field, and the text.
    fn changed(&self, texts: &Texts, scope: &Scope, typed: &Typed) -> Vec<(&Leaf, String)> {
        let fields = self.groups.iter().flat_map(|group| &group.leaves);
        let typed = fields.filter_map(|leaf| {
            let text = typed.get(&field_name(&leaf.path))?.trim().replace("\r\n", "\n");
            (text != self.written(texts, scope, &leaf.path)).then_some((leaf, text))
        });
        typed.collect()
    }

    /// The edits that make of what the texts say what was typed.
    pub(crate) fn edits(&self, texts: &Texts, scope: &Scope, typed: &Typed) -> Vec<Edit> {
        let changed = self.changed(texts, scope, typed).into_iter();
        changed
            .map(|(leaf, text)| {
                let key = self.key(&leaf.path);
                if text.is_empty() {
                    Edit::remove(scope, &key)
                } else {
                    Edit::set(scope, &key, value(&text, &leaf.field.kind))
                }
            })
            .collect()
    }

    /// The same, as it is sent to be changed: what is done, the keys and the text.
    pub(crate) fn sent(
        &self,
        texts: &Texts,
        scope: &Scope,
        name: &str,
        typed: &Typed,
    ) -> Vec<(&'static str, String, String)> {
        let above = joined(&self.what, name);
        let new = self.is_new.then(|| ("add", above.clone(), String::new()));
        let changed = self.changed(texts, scope, typed).into_iter();
        let set = changed.map(|(leaf, text)| ("set", joined(&above, &leaf.path), text));
        new.into_iter().chain(set).collect()
    }

    /// The edit that adds it under a name.
    pub(crate) fn added(&self, scope: &Scope, name: &str, typed: &Typed) -> Edit {
        let mut table = Vec::new();
        for leaf in self.groups.iter().flat_map(|group| &group.leaves) {
            let text = typed.text(&field_name(&leaf.path));
            if !text.is_empty() {
                let keys: Vec<&str> = leaf.path.split('.').collect();
                put(&mut table, &keys, value(text, &leaf.field.kind));
            }
        }
        Edit::add(scope, &joined(&self.what, name), Value::Table(table))
    }

    /// Each problem with the field in which it stands once the edits are made; with none where it
    /// is of the thing as a whole.
    pub(crate) fn placed(
        &self,
        texts: &Texts,
        scope: &Scope,
        edits: &[Edit],
        name: &str,
        problems: &Problems,
    ) -> Vec<(Option<String>, Problem)> {
        let after = edited(texts, edits).unwrap_or_default();
        let top = joined(&self.what, name);
        let leaves = self.groups.iter().flat_map(|group| &group.leaves);
        let spots: Vec<_> = leaves
            .filter_map(|leaf| {
                Some((&leaf.path, where_is(&after, scope, &joined(&top, &leaf.path))?))
            })
            .collect();
        let field = |problem: &Problem| -> Option<String> {
            let at = problem.at.as_ref()?;
            let file = &problems.files.file(at.file).name;
            let stands = spots.iter().find(|(_, spot)| {
                spot.file == *file
                    && spot.span.start <= at.span.start
                    && at.span.start < spot.span.end.max(spot.span.start + 1)
            });
            stands.map(|(path, _)| (*path).clone()).or_else(|| self.missing(problem))
        };
        problems.list.iter().map(|problem| (field(problem), problem.clone())).collect()
    }

    /// The field that a problem says is missing.
    fn missing(&self, problem: &Problem) -> Option<String> {
        let leaves = self.groups.iter().flat_map(|group| &group.leaves);
        let lacks = problem.says.contains(" lacks ");
        let names = |key: &str| problem.says.contains(&format!("`{key}`"));
        leaves
            .filter(|leaf| lacks && names(leaf.field.key))
            .min_by_key(|leaf| leaf.path.len())
            .map(|leaf| leaf.path.clone())
    }
}

/// The name that a field has in a form.
pub(crate) fn field_name(path: &str) -> String {
    format!("{FIELD}{path}")
}

fn value(text: &str, kind: &Kind) -> Value {
    match kind {
        // Rows of records are typed as they stand in the file.
        Kind::List(inner) if matches!(**inner, Kind::Record { .. }) => {
            Value::Written(text.to_owned())
        }
        kind => Value::typed(text, kind),
    }
}

fn put(table: &mut Vec<(String, Value)>, keys: &[&str], value: Value) {
    let Some((first, rest)) = keys.split_first() else { return };
    if rest.is_empty() {
        table.push(((*first).to_owned(), value));
        return;
    }
    if !table.iter().any(|(key, _)| key == first) {
        table.push(((*first).to_owned(), Value::Table(Vec::new())));
    }
    if let Some((_, Value::Table(inner))) = table.iter_mut().find(|(key, _)| key == first) {
        put(inner, rest, value);
    }
}
