//! Edits in terms of the build: they find the right file and keys themselves.

use super::change::{Change, Texts, apply, is_stem, refused};
use super::layers::{Layers, Scope, Upto, find};
use super::renaming;
use super::value::Value;
use super::{finish, within_job};
use crate::disk::BUILD;
use crate::problem::Problems;
use crate::read::{Reader, suggestion};

/// An edit of the build. What it is about is named by the keys that lead there in the build, with
/// the name of the thing among them: `items`, `upright`, `place`, `from_rear`.
#[derive(Debug, Clone, PartialEq)]
pub enum Edit {
    /// Says what stands at a key; what is not there yet is brought.
    Set {
        /// In the build or in a job.
        scope: Scope,
        /// The keys.
        what: Vec<String>,
        /// What is to stand there.
        value: Value,
    },
    /// Brings a thing under a name that is not taken.
    Add {
        /// In the build or in a job.
        scope: Scope,
        /// The keys.
        what: Vec<String>,
        /// The thing, mostly a [`Value::table`].
        value: Value,
    },
    /// Takes a thing out, or a key of it.
    Remove {
        /// In the build or in a job.
        scope: Scope,
        /// The keys.
        what: Vec<String>,
    },
    /// Gives a thing another name, wherever it is named.
    Rename {
        /// Where the thing comes from: the build, or the job that adds it.
        scope: Scope,
        /// The keys.
        what: Vec<String>,
        /// Its new name.
        to: String,
    },
    /// Leaves a thing, or a key of it, as it would be without the job: what the job removes,
    /// moves, changes or adds of it is taken back.
    TakeBack {
        /// The job.
        scope: Scope,
        /// The keys.
        what: Vec<String>,
    },
    /// Begins a job.
    NewJob {
        /// Its name, which is that of its file.
        job: String,
        /// What it is, in a line.
        about: String,
    },
    /// Adds an option to a job.
    NewOption {
        /// The job.
        job: String,
        /// The option's name.
        option: String,
        /// What it is, in a line.
        about: String,
    },
    /// Says a key of a job or of its option itself: `about`, `after`, `choice`.
    JobKey {
        /// The job and option.
        scope: Scope,
        /// The key.
        key: String,
        /// What is to stand there; `None` takes the key out.
        value: Option<Value>,
    },
    /// Drops a job, or one of its options.
    Drop {
        /// The job and option.
        scope: Scope,
    },
    /// Marks a job done: what it does goes into the build as it stands, and its file keeps the day.
    Done {
        /// The job.
        job: String,
        /// The option that was taken, where there are options.
        option: Option<String>,
        /// The day, as 2026-03-14.
        day: String,
    },
    /// A change by file and key.
    Plain(Change),
}

impl Edit {
    /// Says what stands at a key of the build: `items.upright.place.from_rear`.
    pub fn set(scope: &Scope, what: &str, value: impl Into<Value>) -> Self {
        Self::Set { scope: scope.clone(), what: keys(what), value: value.into() }
    }

    /// Brings a thing: `items.kettle`.
    pub fn add(scope: &Scope, what: &str, value: impl Into<Value>) -> Self {
        Self::Add { scope: scope.clone(), what: keys(what), value: value.into() }
    }

    /// Takes a thing out, or a key of it.
    pub fn remove(scope: &Scope, what: &str) -> Self {
        Self::Remove { scope: scope.clone(), what: keys(what) }
    }

    /// Gives a thing another name.
    pub fn rename(scope: &Scope, what: &str, to: &str) -> Self {
        Self::Rename { scope: scope.clone(), what: keys(what), to: to.to_owned() }
    }

    /// Takes back what a job does to a thing.
    pub fn take_back(scope: &Scope, what: &str) -> Self {
        Self::TakeBack { scope: scope.clone(), what: keys(what) }
    }

    /// Begins a job.
    pub fn new_job(job: &str, about: &str) -> Self {
        Self::NewJob { job: job.to_owned(), about: about.to_owned() }
    }

    /// Adds an option to a job.
    pub fn new_option(job: &str, option: &str, about: &str) -> Self {
        let [job, option, about] = [job, option, about].map(str::to_owned);
        Self::NewOption { job, option, about }
    }

    /// Marks a job done.
    pub fn done(job: &str, option: Option<&str>, day: &str) -> Self {
        let option = option.map(str::to_owned);
        Self::Done { job: job.to_owned(), option, day: day.to_owned() }
    }

    /// The changes by file and key that make this edit in some texts.
    ///
    /// # Errors
    /// Where it is about what is not there, or brings what is there already.
    pub fn changes(&self, texts: &Texts) -> Result<Vec<Change>, Problems> {
        let layers = Layers::of(texts);
        match self {
            Self::Set { scope: Scope::Base, what, value } => {
                let (file, path) = at_base(texts, &layers, what);
                Ok(vec![Change::Set { file, path, value: value.clone() }])
            }
            Self::Set { scope, what, value } => {
                within_job::set(&layers, &scope.known(&layers)?, what, value)
            }
            Self::Add { scope, what, value } => {
                let tree = layers.with(scope, Upto::All, &mut Reader::default());
                if tree.is_some_and(|tree| find(&tree, what).is_some()) {
                    return Err(refused(
                        format!("the build already has `{}`", what.join(".")),
                        "choose another name, or change what is there",
                    ));
                }
                let (scope, what, value) = (scope.clone(), what.clone(), value.clone());
                Self::Set { scope, what, value }.changes(texts)
            }
            Self::Remove { scope: Scope::Base, what } => {
                if find(&layers.base, what).is_none() {
                    return Err(not_there(what));
                }
                let (file, path) = at_base(texts, &layers, what);
                Ok(vec![if path.is_empty() {
                    Change::File { file, text: None }
                } else {
                    Change::Remove { file, path }
                }])
            }
            Self::Remove { scope, what } => {
                within_job::remove(&layers, &scope.known(&layers)?, what)
            }
            Self::Rename { scope, what, to } => renaming::rename(texts, &layers, scope, what, to),
            Self::TakeBack { scope, what } => within_job::take_back(&scope.known(&layers)?, what),
            Self::NewJob { job, about } => {
                let file = format!("jobs/{job}.toml");
                if !is_stem(job) || job.contains('.') || texts.contains_key(&file) {
                    return Err(refused(
                        format!("a job cannot be named `{job}`"),
                        "choose a name that no other job has and that a file can have",
                    ));
                }
                let path = vec!["about".to_owned()];
                Ok(vec![Change::Set { file, path, value: Value::Text(about.clone()) }])
            }
            Self::NewOption { job, option, about } => {
                let known = Scope::job(job).known(&layers)?;
                if known.job.options().contains(&option.as_str()) || option.is_empty() {
                    return Err(refused(
                        format!("an option of this job cannot be named `{option}`"),
                        "choose a name that no other option of the job has",
                    ));
                }
                let path = ["options", option.as_str(), "about"];
                Ok(vec![Change::set(&known.file, &path, about.as_str())])
            }
            Self::JobKey { scope, key, value } => {
                let known = scope.known(&layers)?;
                let path = known.path(&[key]);
                Ok(vec![match value.clone() {
                    Some(value) => Change::Set { file: known.file, path, value },
                    None => Change::Remove { file: known.file, path },
                }])
            }
            Self::Drop { scope } => {
                let known = scope.known(&layers)?;
                Ok(vec![match known.option {
                    Some(option) => Change::remove(&known.file, &["options", option]),
                    None => Change::File { file: known.file, text: None },
                }])
            }
            Self::Done { job, option, day } => {
                finish::done(texts, &layers, job, option.as_deref(), day)
            }
            Self::Plain(change) => Ok(vec![change.clone()]),
        }
    }
}

/// The texts with some edits made in them, one after the other; each finds what those before it
/// left.
///
/// # Errors
/// As [`Edit::changes`] and [`apply`]; the texts given are then as they were.
pub fn edited(texts: &Texts, edits: &[Edit]) -> Result<Texts, Problems> {
    let mut texts = texts.clone();
    for edit in edits {
        texts = apply(&texts, &edit.changes(&texts)?)?;
    }
    Ok(texts)
}

/// A job that there is, with the part of it that an edit is made in.
pub(super) struct Known<'l> {
    pub(super) scope: Scope,
    pub(super) job: &'l crate::job::Job,
    pub(super) option: Option<&'l str>,
    pub(super) file: String,
}

impl Known<'_> {
    /// The path, in the job's file, of what stands at some keys of the part.
    pub(super) fn path(&self, keys: &[&str]) -> Vec<String> {
        let option = self.option.map(|option| ["options", option]);
        option.iter().flatten().chain(keys).map(|key| (*key).to_owned()).collect()
    }
}

impl Scope {
    /// The job that it names, if it is there and not yet done.
    pub(super) fn known<'l>(&self, layers: &'l Layers) -> Result<Known<'l>, Problems> {
        let Self::Job { job: name, option } = self else {
            return Err(refused("no job is named", "name the job that this is about"));
        };
        let Some(job) = layers.jobs.named(name) else {
            let names: Vec<&str> = layers.jobs.all().iter().map(|job| job.name.as_str()).collect();
            return Err(refused(format!("there is no job `{name}`"), suggestion(name, &names)));
        };
        if job.is_done() {
            return Err(refused(
                format!("the job `{name}` is done, and part of the build as it stands"),
                "change the build itself, or begin another job",
            ));
        }
        let known = option.as_deref().map(|option| {
            job.options().into_iter().find(|known| *known == option).ok_or_else(|| {
                let hint = suggestion(option, &job.options());
                refused(format!("the job `{name}` has no option `{option}`"), hint)
            })
        });
        let option = known.transpose()?;
        Ok(Known { scope: self.clone(), job, option, file: format!("jobs/{name}.toml") })
    }
}

/// The file of the build as it stands that has what stands at some keys, or is to have it, and the
/// keys that lead there in that file.
pub(super) fn at_base(texts: &Texts, layers: &Layers, what: &[String]) -> (String, Vec<String>) {
    if let [collection, name, rest @ ..] = what
        && collection == "parts"
    {
        let file = format!("parts/{name}.toml");
        let stands = find(&layers.base, &what[..2]).is_some();
        if texts.contains_key(&file) || (!stands && is_stem(name)) {
            return (file, rest.to_vec());
        }
    }
    (BUILD.to_owned(), what.to_vec())
}

pub(super) fn not_there(what: &[String]) -> Problems {
    refused(
        format!("there is no `{}` in the build", what.join(".")),
        "name what stands in it by the keys that lead there, with dots between",
    )
}

fn keys(what: &str) -> Vec<String> {
    what.split('.').map(str::to_owned).collect()
}
