//! What stands in a build once a job, or one of its options, is done, and where it stands.
//!
//! Every value keeps the file and the place it is written in, so that a form shows it as its owner
//! wrote it, and an edit knows which file has it.

use std::ops::Range;

use super::change::Texts;
use crate::apply::{self, ADDED};
use crate::disk::BUILD;
use crate::folder::add_part;
use crate::job::{Job, Jobs};
use crate::node::{Node, Table, Value, parse};
use crate::read::Reader;
use crate::source::{Files, LineColumn, SourceFile};

/// Where an edit is made: in the build as it stands, or in a job, with one of its options.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Scope {
    /// The build as it stands.
    Base,
    /// A job.
    Job {
        /// Its name.
        job: String,
        /// The option that the edit is made in; without one, it holds with every option.
        option: Option<String>,
    },
}

impl Scope {
    /// A job, whatever option is taken.
    pub fn job(job: &str) -> Self {
        Self::Job { job: job.to_owned(), option: None }
    }

    /// A job with one of its options.
    pub fn option(job: &str, option: &str) -> Self {
        Self::Job { job: job.to_owned(), option: Some(option.to_owned()) }
    }
}

/// Where a value stands, and how.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Spot {
    /// The file: `jobs/galley-fridge.toml`.
    pub file: String,
    /// The stretch of its text, in bytes; of a table with a heading, the heading.
    pub span: Range<usize>,
    /// The line and column where it begins.
    pub place: LineColumn,
    /// The value as its owner wrote it, with quotes and all.
    pub written: String,
    /// What a form shows: a text without its quotes; any other value as it is written. `None` of a
    /// table.
    pub shown: Option<String>,
}

/// What a value is, as its owner wrote it, with the job of the scope in it.
///
/// `what` is the keys that lead to it in the build, with dots between:
/// `items.upright.place.from_rear`. `None` where nothing stands.
pub fn where_is(texts: &Texts, scope: &Scope, what: &str) -> Option<Spot> {
    let path: Vec<String> = what.split('.').map(str::to_owned).collect();
    let layers = Layers::of(texts);
    let tree = layers.with(scope, Upto::All, &mut Reader::default())?;
    let at = &find(&tree, &path)?;
    let file = layers.files.file(at.at.file);
    let written = file.text.get(at.at.span.clone()).unwrap_or_default().to_owned();
    let shown = match &at.value {
        Value::Text(text) => Some(text.clone()),
        Value::Table(_) => None,
        _ => Some(written.clone()),
    };
    let place = layers.files.line_column(&at.at);
    Some(Spot { file: file.name.clone(), span: at.at.span.clone(), place, written, shown })
}

/// The names of the things in a collection, in the order of the files, with the job of the scope in
/// it; `what` is the keys that lead to the collection: `items`, `block.ways`.
///
/// ```
/// use spile_build::edit::{Scope, Texts, names};
///
/// let text = "[runs.pump]\n[block.ways.2]\nrun = \"pump\"\n".to_owned();
/// let texts = Texts::from([("build.toml".to_owned(), text)]);
/// assert_eq!(names(&texts, &Scope::Base, "runs"), ["pump"]);
/// assert_eq!(names(&texts, &Scope::Base, "block.ways"), ["2"]);
/// assert!(names(&texts, &Scope::Base, "items").is_empty());
/// ```
pub fn names(texts: &Texts, scope: &Scope, what: &str) -> Vec<String> {
    let path: Vec<String> = what.split('.').map(str::to_owned).collect();
    let tree = Layers::of(texts).with(scope, Upto::All, &mut Reader::default());
    let things = tree.as_ref().and_then(|tree| find(tree, &path)).and_then(Node::table);
    things.map_or_else(Vec::new, |things| {
        things.entries.iter().map(|entry| entry.key.clone()).collect()
    })
}

/// How far the part of the job that an edit is made in is itself put into the build.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Upto {
    /// Not at all.
    Below,
    /// What it removes, moves and changes.
    Changes,
    /// With what it adds.
    All,
}

/// The trees of a build's files, whether or not they go together.
pub(super) struct Layers {
    pub(super) files: Files,
    pub(super) base: Table,
    pub(super) jobs: Jobs,
}

impl Layers {
    pub(super) fn of(texts: &Texts) -> Self {
        let mut files = Files::default();
        let mut reader = Reader::default();
        let mut base = Table::default();
        let (mut parts, mut jobs) = (Vec::new(), Vec::new());
        for (name, text) in texts {
            let id = files.add(SourceFile { name: name.clone(), path: None, text: text.clone() });
            let (tree, broken) = parse(id, text);
            match name.split_once('/') {
                Some((folder, file)) => {
                    let stem = file.strip_suffix(".toml").unwrap_or(file).to_owned();
                    match folder {
                        "parts" => parts.push((id, stem, tree)),
                        _ => jobs.push((id, stem, tree, broken.is_empty())),
                    }
                }
                None if name == BUILD => base = tree,
                None => {}
            }
        }
        for (id, stem, tree) in parts {
            add_part(&mut base, id, stem, tree, &mut reader);
        }
        let jobs = Jobs::read(jobs, &mut reader);
        Self { files, base, jobs }
    }

    /// The build with a job in it; `None` where there is no such job or option.
    pub(super) fn with(&self, scope: &Scope, upto: Upto, reader: &mut Reader) -> Option<Table> {
        let mut tree = self.base.clone();
        let Scope::Job { job, option } = scope else { return Some(tree) };
        let job = self.jobs.named(job)?;
        if job.is_done() {
            return Some(tree);
        }
        for earlier in self.jobs.before(job) {
            earlier.apply(&mut tree, earlier.choice(), reader);
        }
        if option.is_some() {
            apply::apply(&mut tree, &job.section(None)?, reader);
        }
        let mut own = job.section(option.as_deref())?;
        if upto == Upto::Below {
            return Some(tree);
        }
        if upto == Upto::Changes {
            own.add = None;
        }
        apply::apply(&mut tree, &own, reader);
        Some(tree)
    }
}

/// The node at a path of a tree.
pub(super) fn find<'t>(tree: &'t Table, path: &[String]) -> Option<&'t Node> {
    let (last, above) = path.split_last()?;
    let mut table = tree;
    for key in above {
        table = table.get(key)?.table()?;
    }
    table.get(last)
}

/// Where a job's `add` has what stands at a path of the build, and how much of the path leads to
/// the thing itself: `block.ways.6.fuse` is at `ways.6.fuse`, and three keys lead to the way.
pub(super) fn in_add(path: &[String]) -> Option<(Vec<String>, usize)> {
    ADDED.iter().find_map(|(key, prefix)| {
        let rest = path.get(prefix.len()..).filter(|rest| !rest.is_empty())?;
        let leads = path.iter().zip(*prefix).all(|(a, b)| a == b);
        let inner = std::iter::once((*key).to_owned()).chain(rest.iter().cloned());
        leads.then(|| (inner.collect(), prefix.len() + 1))
    })
}

/// Whether a part of a job adds the thing that a path leads to, or into.
pub(super) fn adds(job: &Job, option: Option<&str>, path: &[String]) -> bool {
    let Some((inner, length)) = in_add(path) else { return false };
    let thing = &inner[..inner.len() - (path.len() - length.min(path.len()))];
    let add = job.section(option).and_then(|section| section.add);
    add.and_then(Node::table).is_some_and(|add| find(add, thing).is_some())
}
