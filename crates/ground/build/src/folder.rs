//! A build's folder: its files read, its jobs applied.

use std::path::Path;
use std::sync::Arc;

use crate::disk::{self, BUILD};
use crate::file::BuildFile;
use crate::job::{Job, JobInfo, Jobs};
use crate::model::Build;
use crate::node::{Entry, Node, Table, Value, parse};
use crate::problem::{Problem, Problems};
use crate::read::{Reader, Record, suggestion};
use crate::resolve::resolve;
use crate::source::{At, FileId, Files, SourceFile};
use crate::syntax::Broken;

/// A build's folder, read and found to be in order.
#[derive(Debug, Clone)]
pub struct Folder {
    files: Files,
    base: Table,
    build: Build,
    jobs: Jobs,
}

/// A job planned: the build before it and after it.
#[derive(Debug, Clone)]
pub struct Planned {
    /// The job's name.
    pub job: String,
    /// The option taken, where there are options.
    pub option: Option<String>,
    /// The build as it stands when the job begins.
    pub before: Build,
    /// The build when it is done.
    pub after: Build,
}

/// Why a job could not be planned.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unplanned {
    /// There is no such job or option.
    Unknown {
        /// `job` or `option`.
        what: &'static str,
        /// The name that was asked for.
        name: String,
        /// What to do about it.
        hint: String,
    },
    /// The files say things that do not go together.
    Problems(Problems),
}

impl Folder {
    /// Reads a build's folder: `build.toml`, `parts/*.toml`, `jobs/*.toml`.
    ///
    /// # Errors
    /// Every problem of every file, each with its place, if there is any; nothing half-read is
    /// ever given back. A file that cannot be opened is a problem too.
    pub fn open(folder: &Path) -> Result<Self, Problems> {
        let (files, problems) = disk::read(folder);
        Self::of(files, problems)
    }

    /// Reads a build from texts, each with its name within the folder: `build.toml`,
    /// `parts/upright.toml`, `jobs/galley-fridge.toml`. Texts of other names are passed over.
    ///
    /// # Errors
    /// As [`Folder::open`].
    pub fn from_texts<'t>(
        texts: impl IntoIterator<Item = (&'t str, &'t str)>,
    ) -> Result<Self, Problems> {
        let mut files = Files::default();
        let mut problems = Vec::new();
        for (name, text) in texts {
            files.add(SourceFile { name: name.to_owned(), path: None, text: text.to_owned() });
        }
        if !files.all().iter().any(|file| file.name == BUILD) {
            problems.push(disk::no_build("there is no build.toml"));
        }
        Self::of(files, problems)
    }

    /// Makes the folder of its files, or tells of everything that is wrong in them.
    ///
    /// Whatever has been told already of a file is in `problems`; such a file is not read.
    pub(crate) fn of(files: Files, problems: Vec<Problem>) -> Result<Self, Problems> {
        let unread: Vec<FileId> =
            problems.iter().filter_map(|problem| Some(problem.at.as_ref()?.file)).collect();
        let mut base_is_whole = problems.iter().all(|problem| problem.at.is_some());
        let mut reader = Reader { problems };
        let mut base = Table::default();
        let (mut parts, mut jobs) = (Vec::new(), Vec::new());
        let mut broken: Vec<(FileId, Broken)> = Vec::new();
        for (id, file) in files.iter() {
            let (folder, stem) = match file.name.split_once('/') {
                Some((folder, name)) => (folder, name.strip_suffix(".toml").unwrap_or(name)),
                None => ("", file.name.as_str()),
            };
            let is_base = matches!((folder, stem), ("", BUILD) | ("parts", _));
            if !is_base && folder != "jobs" {
                continue;
            }
            let (tree, errors) =
                if unread.contains(&id) { Default::default() } else { parse(id, &file.text) };
            let is_whole = errors.is_empty() && !unread.contains(&id);
            base_is_whole &= is_whole || !is_base;
            if !errors.is_empty() {
                broken.push((id, errors));
            }
            match folder {
                "" => base = tree,
                "parts" => parts.push((id, stem.to_owned(), tree)),
                _ => jobs.push((id, stem.to_owned(), tree, is_whole)),
            }
        }
        for (id, stem, tree) in parts {
            add_part(&mut base, id, stem, tree, &mut reader);
        }
        let jobs = Jobs::read(jobs, &mut reader);
        let record = BuildFile::of(&base, &mut reader);
        reader.problems.retain(|Problem { at, .. }| {
            let covers =
                |at: &At| broken.iter().any(|(file, broken)| *file == at.file && broken.covers(at));
            !at.as_ref().is_some_and(covers)
        });
        reader.problems.extend(broken.into_iter().flat_map(|(_, broken)| broken.problems));
        if !base_is_whole {
            return Err(Problems::new(files, reader.problems));
        }
        let build = resolve(&record, &files, &mut reader);
        jobs.try_all(&base, &files, &mut reader);
        if reader.problems.is_empty() {
            Ok(Self { files, base, build, jobs })
        } else {
            Err(Problems::new(files, reader.problems))
        }
    }

    /// The build as it stands, with every finished job in it.
    pub const fn build(&self) -> &Build {
        &self.build
    }

    /// The files it was read from.
    pub const fn files(&self) -> &Files {
        &self.files
    }

    /// The jobs there are, by name.
    pub fn jobs(&self) -> Vec<JobInfo> {
        self.jobs.all().iter().map(Job::info).collect()
    }

    /// The build before a job and after it, with one of its options.
    ///
    /// # Errors
    /// [`Unplanned::Unknown`] if there is no such job or option; [`Unplanned::Problems`] if the
    /// jobs it comes after and the job itself do not go together.
    pub fn plan(&self, job: &str, option: Option<&str>) -> Result<Planned, Unplanned> {
        let unknown = |what, name: &str, known: &[&str]| Unplanned::Unknown {
            what,
            name: name.to_owned(),
            hint: suggestion(name, known),
        };
        let Some(job) = self.jobs.named(job) else {
            let names: Vec<&str> = self.jobs.all().iter().map(|job| job.name.as_str()).collect();
            return Err(unknown("job", job, &names));
        };
        if let Some(name) = option
            && !job.options().contains(&name)
        {
            return Err(unknown("option", name, &job.options()));
        }
        let mut reader = Reader::default();
        match self.planned(job, option, &mut reader) {
            Some(planned) if reader.problems.is_empty() => Ok(planned),
            _ => Err(Unplanned::Problems(Problems::new(self.files.clone(), reader.problems))),
        }
    }

    /// Open jobs that touch one and the same thing and do not come one after the other.
    pub fn clashes(&self) -> Vec<String> {
        self.jobs.clashes()
    }

    fn planned(&self, job: &Job, option: Option<&str>, reader: &mut Reader) -> Option<Planned> {
        let mut tree = self.base.clone();
        let earlier = self.jobs.before(job);
        for earlier in &earlier {
            earlier.apply(&mut tree, earlier.choice(), reader);
        }
        let before = if earlier.is_empty() {
            self.build.clone()
        } else {
            let mut before = read_build(&tree, &self.files, reader)?;
            before.stands = Some(Arc::new(self.build.clone()));
            before
        };
        let option = option.or_else(|| job.choice());
        if !job.is_done() {
            job.apply(&mut tree, option, reader);
        }
        let mut after = read_build(&tree, &self.files, reader)?;
        after.stands = Some(Arc::new(self.build.clone()));
        let option = option.map(ToOwned::to_owned);
        Some(Planned { job: job.name.clone(), option, before, after })
    }
}

/// Makes the typed build of a tree, if nothing is wrong so far.
pub(crate) fn read_build(tree: &Table, files: &Files, reader: &mut Reader) -> Option<Build> {
    if !reader.problems.is_empty() {
        return None;
    }
    let record = BuildFile::of(tree, reader);
    let build = resolve(&record, files, reader);
    reader.problems.is_empty().then_some(build)
}

/// Puts the part of a file of its own among the build's parts.
pub(crate) fn add_part(
    base: &mut Table,
    id: FileId,
    name: String,
    tree: Table,
    reader: &mut Reader,
) {
    let at = At { file: id, span: 0..0 };
    if base.get("parts").is_none() {
        base.entries.push(Entry {
            key: "parts".to_owned(),
            key_at: at.clone(),
            node: Node { at: at.clone(), value: Value::Table(Table::default()) },
        });
    }
    let Some(Node { value: Value::Table(parts), .. }) = base.get_mut("parts") else { return };
    if let Some(entry) = parts.entry(&name) {
        reader.tell(
            &entry.key_at,
            format!("the part `{name}` has a file of its own as well"),
            "told twice",
            format!("keep it here or in parts/{name}.toml"),
        );
        return;
    }
    let key_at = tree.entries.first().map_or_else(|| at.clone(), |entry| entry.key_at.clone());
    parts.entries.push(Entry { key: name, key_at, node: Node { at, value: Value::Table(tree) } });
}
