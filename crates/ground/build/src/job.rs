//! The jobs of a build's folder: their order, and what they make of the build.

use crate::apply::{self, Change};
use crate::file::{JobFile, OptionFile};
use crate::folder::read_build;
use crate::node::{Node, Table};
use crate::problem::Problem;
use crate::read::{Reader, Record, Said, suggestion};
use crate::source::{FileId, Files};

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

/// A job of the folder.
#[derive(Debug, Clone)]
pub(crate) struct Job {
    pub(crate) name: String,
    file: FileId,
    record: JobFile,
    pub(crate) tree: Table,
    /// Whether nothing is wrong in its syntax.
    is_whole: bool,
}

/// Every job of the folder, by name.
#[derive(Debug, Clone)]
pub(crate) struct Jobs {
    jobs: Vec<Job>,
}

impl Jobs {
    /// Reads the jobs' trees, each with its file, its name and whether its syntax is whole.
    pub(crate) fn read(trees: Vec<(FileId, String, Table, bool)>, reader: &mut Reader) -> Self {
        let read = |(file, name, tree, is_whole)| {
            let record = JobFile::of(&tree, reader);
            Job { name, file, record, tree, is_whole }
        };
        let jobs = Self { jobs: trees.into_iter().map(read).collect() };
        for job in &jobs.jobs {
            job.check(reader);
            jobs.check_order(job, reader);
        }
        jobs
    }

    pub(crate) fn all(&self) -> &[Job] {
        &self.jobs
    }

    pub(crate) fn named(&self, name: &str) -> Option<&Job> {
        self.jobs.iter().find(|job| job.name == name)
    }

    /// Tells where a job comes after nothing there is, or after itself.
    fn check_order(&self, job: &Job, reader: &mut Reader) {
        for after in &job.record.after {
            let Some(earlier) = self.named(&after.value) else {
                let others = self.jobs.iter().filter(|other| other.name != job.name);
                let names: Vec<&str> = others.map(|other| other.name.as_str()).collect();
                reader.tell(
                    &after.at,
                    format!("there is no job `{}`", after.value),
                    "not in jobs/",
                    suggestion(&after.value, &names),
                );
                continue;
            };
            if self.chain(earlier).iter().any(|before| before.name == job.name) {
                reader.tell(
                    &after.at,
                    format!("the job `{}` comes after itself", job.name),
                    "a ring",
                    "take one of the jobs out of the ring",
                );
            }
        }
    }

    /// A job and every job that it comes after, the first to be done first. In a ring each comes
    /// once.
    pub(crate) fn chain<'j>(&'j self, job: &'j Job) -> Vec<&'j Job> {
        let mut reached = Vec::new();
        let mut chain = Vec::new();
        // Each with whether what comes before it has been reached.
        let mut next = vec![(job, false)];
        while let Some((job, is_due)) = next.pop() {
            if is_due {
                chain.push(job);
            } else if !reached.contains(&job.name.as_str()) {
                reached.push(&job.name);
                next.push((job, true));
                let earlier = job.record.after.iter().rev();
                next.extend(earlier.filter_map(|name| Some((self.named(&name.value)?, false))));
            }
        }
        chain
    }

    /// The open jobs that a job comes after, the first to be done first.
    pub(crate) fn before<'j>(&'j self, job: &'j Job) -> Vec<&'j Job> {
        let chain = self.chain(job).into_iter();
        chain.filter(|before| !before.is_done() && before.name != job.name).collect()
    }

    /// Puts every open job into the build, with each of its options, so that what does not go
    /// together is told when the folder is read and not when somebody asks.
    pub(crate) fn try_all(&self, base: &Table, files: &Files, reader: &mut Reader) {
        let mut open: Vec<(&Job, Vec<&Job>)> = self
            .jobs
            .iter()
            .filter(|job| !job.is_done())
            .map(|job| (job, self.chain(job)))
            .collect();
        // What is wrong in an earlier job is to be told of that one.
        open.sort_by_key(|(_, chain)| chain.len());
        let mut told = reader.problems.clone();
        for (job, chain) in open {
            let comes_after = |before: &&Job, name: &str| {
                before.record.after.iter().any(|after| after.value == name)
            };
            let in_a_ring = chain.iter().any(|before| comes_after(before, &job.name));
            if in_a_ring || chain.iter().any(|job| !job.is_whole) {
                continue;
            }
            let options = job.options();
            let options: Vec<Option<&str>> = if options.is_empty() {
                vec![None]
            } else {
                options.into_iter().map(Some).collect()
            };
            for option in options {
                let mut tried = Reader::default();
                self.attempt(job, option, base, files, &mut tried);
                for problem in tried.problems {
                    if !told.iter().any(|told| told.is_of(&problem)) {
                        told.push(problem.clone());
                        reader.problems.push(job.as_its_own(problem, option));
                    }
                }
            }
        }
    }

    fn attempt(
        &self,
        job: &Job,
        option: Option<&str>,
        base: &Table,
        files: &Files,
        reader: &mut Reader,
    ) {
        let mut tree = base.clone();
        for earlier in self.before(job) {
            earlier.apply(&mut tree, earlier.choice(), reader);
        }
        job.apply(&mut tree, option, reader);
        read_build(&tree, files, reader);
    }

    /// Open jobs that touch one and the same thing and do not come one after the other.
    pub(crate) fn clashes(&self) -> Vec<String> {
        let open: Vec<(&Job, Vec<String>)> =
            self.jobs.iter().filter(|job| !job.is_done()).map(|job| (job, job.touched())).collect();
        let mut clashes = Vec::new();
        for (index, (a, a_touched)) in open.iter().enumerate() {
            for (b, b_touched) in &open[index + 1..] {
                let comes_after =
                    |job, other: &Job| self.chain(job).iter().any(|job| job.name == other.name);
                if comes_after(a, b) || comes_after(b, a) {
                    continue;
                }
                let both =
                    a_touched.iter().find_map(|a| b_touched.iter().find_map(|b| inner(a, b)));
                if let Some(what) = both {
                    clashes.push(format!(
                        "the jobs {} and {} both touch {what}; say in one of them that it comes \
                         after the other",
                        a.name, b.name
                    ));
                }
            }
        }
        clashes
    }
}

impl Job {
    pub(crate) fn info(&self) -> JobInfo {
        JobInfo {
            name: self.name.clone(),
            about: said(self.record.about.as_ref()),
            options: self
                .record
                .options
                .iter()
                .map(|(name, option)| (name.value.clone(), said(option.about.as_ref())))
                .collect(),
            done: self.record.done.as_ref().map(|done| done.value.0.clone()),
            after: self.record.after.iter().map(|after| after.value.clone()).collect(),
        }
    }

    pub(crate) const fn is_done(&self) -> bool {
        self.record.done.is_some()
    }

    /// The names of its options.
    pub(crate) fn options(&self) -> Vec<&str> {
        self.record.options.names().collect()
    }

    /// The option taken when none is named.
    pub(crate) fn choice(&self) -> Option<&str> {
        let named = self.record.choice.as_ref().map(|choice| choice.value.as_str());
        named.or_else(|| self.record.options.names().next())
    }

    /// Tells of a choice that is no option.
    fn check(&self, reader: &mut Reader) {
        if let Some(choice) = &self.record.choice
            && !self.record.options.knows(&choice.value)
        {
            reader.tell(
                &choice.at,
                format!("there is no option `{}`", choice.value),
                "not an option of this job",
                suggestion(&choice.value, &self.options()),
            );
        }
    }

    /// Puts it into a build's tree, with one of its options.
    pub(crate) fn apply(&self, tree: &mut Table, option: Option<&str>, reader: &mut Reader) {
        apply::apply(tree, &self.change(), reader);
        if let Some((name, record)) =
            option.and_then(|name| self.record.options.get(name).map(|record| (name, record)))
        {
            apply::apply(tree, &self.option_change(name, record), reader);
        }
    }

    /// A problem that comes up when this job is done; where it does not stand in the job's file, it
    /// says that it comes of the job.
    fn as_its_own(&self, problem: Problem, option: Option<&str>) -> Problem {
        if problem.at.as_ref().is_none_or(|at| at.file == self.file) {
            return problem;
        }
        let with = option.map_or_else(String::new, |option| format!(" with `{option}`"));
        let says = format!("once the job `{}` is done{with}, {}", self.name, problem.says);
        Problem { says, ..problem }
    }

    /// What it touches, with all of its options, by key.
    fn touched(&self) -> Vec<String> {
        let mut touched = apply::touched(&self.change());
        for (name, option) in self.record.options.iter() {
            touched.extend(apply::touched(&self.option_change(&name.value, option)));
        }
        touched
    }

    /// What the job itself changes, or one of its options; `None` where there is no such option.
    pub(crate) fn section(&self, option: Option<&str>) -> Option<Change<'_>> {
        let Some(name) = option else { return Some(self.change()) };
        self.record.options.get(name).map(|record| self.option_change(name, record))
    }

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
}

/// Of two keys the one that lies within the other, if one does.
fn inner<'k>(a: &'k str, b: &'k str) -> Option<&'k str> {
    let lies_in = |inner: &str, outer: &str| {
        inner.strip_prefix(outer).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
    };
    if lies_in(a, b) { Some(a) } else { lies_in(b, a).then_some(b) }
}

fn said(text: Option<&Said<String>>) -> String {
    text.map(|said| said.value.clone()).unwrap_or_default()
}
