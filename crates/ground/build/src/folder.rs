//! A build's folder: its files read, its jobs applied.

use std::fs;
use std::path::Path;
use std::sync::Arc;

use crate::apply::{self, Change};
use crate::file::{BuildFile, JobFile, OptionFile};
use crate::model::Build;
use crate::node::{Entry, Node, Table, Value, parse};
use crate::problem::{Problem, Problems};
use crate::read::{Read, Reader, Said, suggestion};
use crate::resolve::resolve;
use crate::source::{At, FileId, Files, SourceFile};

/// A build's folder, read and found to be in order.
#[derive(Debug, Clone)]
pub struct Folder {
    files: Files,
    base: Table,
    build: Build,
    jobs: Vec<Job>,
}

/// A job of the folder.
#[derive(Debug, Clone)]
struct Job {
    file: FileId,
    name: String,
    record: JobFile,
    tree: Table,
}

/// What a job is, for those who choose one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobInfo {
    /// Its name: its file's, without `.toml`.
    pub name: String,
    /// What it is, in a line; empty where nothing is said.
    pub about: String,
    /// The options there are, each with what it is.
    pub options: Vec<(String, String)>,
    /// When it was finished.
    pub done: Option<String>,
    /// Jobs that come before it.
    pub after: Vec<String>,
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
        let mut texts = Vec::new();
        let mut problems = Vec::new();
        if folder.is_dir() {
            read_file(folder, "build.toml", &mut texts, &mut problems);
            for part in ["parts", "jobs"] {
                read_files(folder, part, &mut texts, &mut problems);
            }
        } else {
            problems.push(Problem::nowhere(
                format!("there is no folder {}", folder.display()),
                "a build is a folder with a build.toml in it; `spile new` makes one",
            ));
        }
        Self::from_files(texts, problems)
    }

    /// Reads a build from texts, each with its name within the folder: `build.toml`,
    /// `parts/upright.toml`, `jobs/galley-fridge.toml`.
    ///
    /// # Errors
    /// As [`Folder::open`].
    pub fn from_texts<'t>(
        texts: impl IntoIterator<Item = (&'t str, &'t str)>,
    ) -> Result<Self, Problems> {
        let files = texts
            .into_iter()
            .map(|(name, text)| SourceFile {
                name: name.to_owned(),
                path: None,
                text: text.to_owned(),
            })
            .collect();
        Self::from_files(files, Vec::new())
    }

    fn from_files(sources: Vec<SourceFile>, problems: Vec<Problem>) -> Result<Self, Problems> {
        let mut files = Files::default();
        let mut reader = Reader { problems };
        let mut base = Table::default();
        let mut jobs = Vec::new();
        let mut parts = Vec::new();
        for source in sources {
            let name = source.name.clone();
            let id = files.add(source);
            let (tree, problems) = parse(id, &files.file(id).text);
            let broken = !problems.is_empty();
            reader.problems.extend(problems);
            let stem =
                name.rsplit('/').next().unwrap_or(&name).trim_end_matches(".toml").to_owned();
            if name == "build.toml" {
                base = tree;
            } else if name.starts_with("parts/") {
                parts.push((id, stem, tree));
            } else if !broken {
                jobs.push((id, stem, tree));
            }
        }
        for (id, stem, tree) in parts {
            add_part(&mut base, id, stem, tree, &mut reader);
        }
        let jobs: Vec<Job> = jobs
            .into_iter()
            .filter_map(|(file, name, tree)| read_job(file, name, tree, &mut reader))
            .collect();
        check_order(&jobs, &mut reader);
        if !reader.problems.is_empty() {
            // The base is read all the same, so that its problems are told too.
            read_build(&base, &files, &mut reader);
            return Err(Problems::new(files, reader.problems));
        }
        let Some(build) = read_build(&base, &files, &mut reader) else {
            return Err(Problems::new(files, reader.problems));
        };
        let folder = Self { files, base, build, jobs };
        folder.try_jobs(&mut reader);
        if reader.problems.is_empty() {
            Ok(folder)
        } else {
            Err(Problems::new(folder.files, reader.problems))
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
        self.jobs
            .iter()
            .map(|job| JobInfo {
                name: job.name.clone(),
                about: said(job.record.about.as_ref()),
                options: job
                    .record
                    .options
                    .iter()
                    .map(|(name, option)| (name.value.clone(), said(option.about.as_ref())))
                    .collect(),
                done: job.record.done.as_ref().map(|done| done.value.clone()),
                after: job.record.after.iter().map(|after| after.value.clone()).collect(),
            })
            .collect()
    }

    /// The build before a job and after it, with one of its options.
    ///
    /// # Errors
    /// [`Unplanned::Unknown`] if there is no such job or option; [`Unplanned::Problems`] if the
    /// jobs it comes after and the job itself do not go together.
    pub fn plan(&self, job: &str, option: Option<&str>) -> Result<Planned, Unplanned> {
        let names: Vec<&str> = self.jobs.iter().map(|job| job.name.as_str()).collect();
        let unknown = |what, name: &str, known: &[&str]| Unplanned::Unknown {
            what,
            name: name.to_owned(),
            hint: suggestion(name, known),
        };
        let Some(job) = self.jobs.iter().find(|known| known.name == job) else {
            return Err(unknown("job", job, &names));
        };
        let options: Vec<&str> = job.record.options.names().collect();
        if let Some(name) = option
            && !options.contains(&name)
        {
            return Err(unknown("option", name, &options));
        }
        let mut reader = Reader::default();
        let planned = self.planned(job, option, &mut reader);
        match planned {
            Some(planned) if reader.problems.is_empty() => Ok(planned),
            _ => Err(Unplanned::Problems(Problems::new(self.files.clone(), reader.problems))),
        }
    }

    /// Open jobs that touch one and the same thing and do not come one after the other.
    pub fn clashes(&self) -> Vec<String> {
        let open: Vec<(&Job, Vec<String>)> = self
            .jobs
            .iter()
            .filter(|job| job.record.done.is_none())
            .map(|job| {
                let mut touched = apply::touched(&job.change());
                for (name, option) in job.record.options.iter() {
                    touched.extend(apply::touched(&job.option_change(&name.value, option)));
                }
                (job, touched)
            })
            .collect();
        let mut clashes = Vec::new();
        for (index, (a, a_touched)) in open.iter().enumerate() {
            for (b, b_touched) in &open[index + 1..] {
                if self.comes_after(a, b) || self.comes_after(b, a) {
                    continue;
                }
                let both = a_touched.iter().find(|what| b_touched.contains(what));
                if let Some(what) = both {
                    clashes.push(format!(
                        "the jobs {} and {} both touch {what}; say in one of them that it comes after the other",
                        a.name, b.name
                    ));
                }
            }
        }
        clashes
    }

    fn comes_after(&self, job: &Job, other: &Job) -> bool {
        self.before(job).iter().any(|before| before.name == other.name)
    }

    /// The open jobs that a job comes after, the first to be done first. Rings were told before.
    fn before<'f>(&'f self, job: &Job) -> Vec<&'f Job> {
        let mut before: Vec<&Job> = Vec::new();
        for name in &job.record.after {
            let Some(earlier) = self.jobs.iter().find(|known| known.name == name.value) else {
                continue;
            };
            for each in self.before(earlier).into_iter().chain([earlier]) {
                if each.record.done.is_none() && !before.iter().any(|known| known.name == each.name)
                {
                    before.push(each);
                }
            }
        }
        before
    }

    fn planned(&self, job: &Job, option: Option<&str>, reader: &mut Reader) -> Option<Planned> {
        let mut tree = self.base.clone();
        for earlier in self.before(job) {
            let choice = earlier.choice();
            earlier.apply(&mut tree, choice.as_deref(), reader);
        }
        let before = if self.before(job).is_empty() {
            self.build.clone()
        } else {
            let mut before = read_build(&tree, &self.files, reader)?;
            before.stands = Some(Arc::new(self.build.clone()));
            before
        };
        let option = option.map(ToOwned::to_owned).or_else(|| job.choice());
        if job.record.done.is_none() {
            job.apply(&mut tree, option.as_deref(), reader);
        }
        let mut after = read_build(&tree, &self.files, reader)?;
        after.stands = Some(Arc::new(self.build.clone()));
        Some(Planned { job: job.name.clone(), option, before, after })
    }

    /// Plans every open job with each of its options, so that what does not go together is told
    /// when the folder is read and not when somebody asks.
    fn try_jobs(&self, reader: &mut Reader) {
        for job in self.jobs.iter().filter(|job| job.record.done.is_none()) {
            let options: Vec<&str> = job.record.options.names().collect();
            if options.is_empty() {
                self.planned(job, None, reader);
            }
            for option in options {
                self.planned(job, Some(option), reader);
            }
        }
    }
}

impl Job {
    fn change(&self) -> Change<'_> {
        Change {
            remove: &self.record.remove,
            moves: &self.record.r#move,
            change: &self.record.change,
            add: self.tree.get("add"),
        }
    }

    fn option_change<'a>(&'a self, name: &str, option: &'a OptionFile) -> Change<'a> {
        let table = self.tree.get("options").and_then(Node::table);
        let tree = table.and_then(|options| options.get(name)).and_then(Node::table);
        Change {
            remove: &option.remove,
            moves: &option.r#move,
            change: &option.change,
            add: tree.and_then(|tree| tree.get("add")),
        }
    }

    /// The option taken when none is named.
    fn choice(&self) -> Option<String> {
        let named = self.record.choice.as_ref().map(|choice| choice.value.clone());
        named.or_else(|| self.record.options.names().next().map(ToOwned::to_owned))
    }

    fn apply(&self, tree: &mut Table, option: Option<&str>, reader: &mut Reader) {
        apply::apply(tree, &self.change(), reader);
        if let Some((name, record)) =
            option.and_then(|name| self.record.options.get(name).map(|record| (name, record)))
        {
            apply::apply(tree, &self.option_change(name, record), reader);
        }
    }
}

fn said(text: Option<&Said<String>>) -> String {
    text.map(|said| said.value.clone()).unwrap_or_default()
}

fn read_file(folder: &Path, name: &str, texts: &mut Vec<SourceFile>, problems: &mut Vec<Problem>) {
    let path = folder.join(name);
    match fs::read(&path) {
        Ok(bytes) => match String::from_utf8(bytes) {
            Ok(text) => texts.push(SourceFile { name: name.to_owned(), path: Some(path), text }),
            Err(error) => problems.push(Problem::nowhere(
                format!(
                    "{} is not a text in UTF-8 (byte {})",
                    path.display(),
                    error.utf8_error().valid_up_to()
                ),
                "save it as UTF-8 in your editor",
            )),
        },
        Err(error) => problems.push(Problem::nowhere(
            format!("{} cannot be read: {error}", path.display()),
            "check that it is there and that you may read it",
        )),
    }
}

fn read_files(folder: &Path, part: &str, texts: &mut Vec<SourceFile>, problems: &mut Vec<Problem>) {
    let Ok(entries) = fs::read_dir(folder.join(part)) else { return };
    let mut names: Vec<String> = entries
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| name.ends_with(".toml") && !name.starts_with('.'))
        .collect();
    names.sort();
    for name in names {
        read_file(folder, &format!("{part}/{name}"), texts, problems);
    }
}

/// Puts the part of a file of its own among the build's parts.
fn add_part(base: &mut Table, id: FileId, name: String, tree: Table, reader: &mut Reader) {
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

fn read_job(file: FileId, name: String, tree: Table, reader: &mut Reader) -> Option<Job> {
    let node = Node { at: At { file, span: 0..0 }, value: Value::Table(tree) };
    let record = JobFile::read(&node, reader)?;
    let Value::Table(tree) = node.value else { return None };
    if let Some(choice) = &record.choice {
        let options: Vec<&str> = record.options.names().collect();
        if !options.contains(&choice.value.as_str()) {
            reader.tell(
                &choice.at,
                format!("there is no option `{}`", choice.value),
                "not an option of this job",
                suggestion(&choice.value, &options),
            );
        }
    }
    if let Some(done) = &record.done {
        crate::date::check(done, reader);
    }
    Some(Job { file, name, record, tree })
}

/// Tells of jobs that come after nothing there is, or after themselves.
fn check_order(jobs: &[Job], reader: &mut Reader) {
    let names: Vec<&str> = jobs.iter().map(|job| job.name.as_str()).collect();
    for job in jobs {
        for after in &job.record.after {
            if !names.contains(&after.value.as_str()) {
                reader.tell(
                    &after.at,
                    format!("there is no job `{}`", after.value),
                    "not in jobs/",
                    suggestion(&after.value, &names),
                );
            }
        }
        let mut reached: Vec<&str> = Vec::new();
        let mut next: Vec<&Said<String>> = job.record.after.iter().collect();
        while let Some(after) = next.pop() {
            if after.value == job.name {
                let at = job
                    .record
                    .after
                    .first()
                    .map_or(At { file: job.file, span: 0..0 }, |first| first.at.clone());
                reader.tell(
                    &at,
                    format!("the job `{}` comes after itself", job.name),
                    "a ring",
                    "take one of the jobs out of the ring",
                );
                break;
            }
            if !reached.contains(&after.value.as_str()) {
                reached.push(&after.value);
                let earlier = jobs.iter().find(|job| job.name == after.value);
                next.extend(earlier.iter().flat_map(|job| &job.record.after));
            }
        }
    }
}

/// Makes the typed build of a tree, if nothing is wrong in it.
fn read_build(tree: &Table, files: &Files, reader: &mut Reader) -> Option<Build> {
    let told = reader.problems.len();
    let at = At { file: FileId(0), span: 0..0 };
    let node = Node { at, value: Value::Table(tree.clone()) };
    let record = BuildFile::read(&node, reader)?;
    let build = resolve(&record, files, reader);
    (reader.problems.len() == told).then_some(build)
}
