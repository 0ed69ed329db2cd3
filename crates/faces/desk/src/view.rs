//! What a page shows: a build, a job and an option of it, and their answers.

use std::sync::Arc;

use serde::Deserialize;
use spile_ask::Report;
use spile_build::edit::Texts;
use spile_build::{Build, Folder, JobInfo, Unplanned};

use crate::desk::{Answered, Desk, Now, Unanswered};

/// What an address asks for: `?job=galley-fridge&option=upright`; `?job=` for the build as it
/// stands; nothing for the first job that is open.
#[derive(Debug, Clone, Default, Deserialize)]
pub(crate) struct Asked {
    job: Option<String>,
    option: Option<String>,
}

/// A job with its option, or the build as it stands.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Choice {
    pub(crate) job: Option<String>,
    pub(crate) option: Option<String>,
}

/// Everything that a page is made of.
#[derive(Debug)]
pub(crate) struct View {
    pub(crate) desk: Arc<Desk>,
    now: Arc<Now>,
    folder: Folder,
    answered: Arc<Answered>,
    pub(crate) choice: Choice,
    pub(crate) jobs: Vec<JobInfo>,
}

/// Why there is nothing to show.
#[derive(Debug)]
pub(crate) enum NoView {
    /// There is no build yet.
    NoBuild,
    /// The files have problems, which [`Now`] tells.
    Unread(Arc<Now>),
    /// There is no such job or option, or it does not go together with the rest.
    Unplanned(Unplanned),
}

impl View {
    /// The build at this moment, as an address asks for it.
    pub(crate) fn of(desk: &Arc<Desk>, asked: Asked) -> Result<Self, NoView> {
        let now = desk.now();
        if !now.is_there() {
            return Err(NoView::NoBuild);
        }
        let Ok(folder) = &now.read else { return Err(NoView::Unread(now)) };
        let jobs = folder.jobs();
        let choice = asked.choice(&jobs);
        let answered = match now.answer(&choice) {
            Ok(answered) => answered,
            Err(Unanswered::Plan(why)) => return Err(NoView::Unplanned(why)),
            Err(Unanswered::Unread) => return Err(NoView::Unread(Arc::clone(&now))),
        };
        let folder = folder.clone();
        // What is shown is named even where the address leaves it to the job.
        let option = answered.report.option.clone();
        let choice = Choice { option, ..choice };
        Ok(Self { desk: Arc::clone(desk), folder, answered, choice, jobs, now })
    }

    /// The answers.
    pub(crate) fn report(&self) -> &Report {
        &self.answered.report
    }

    /// The answers of another choice, where there are any.
    pub(crate) fn answers_of(&self, choice: &Choice) -> Option<Arc<Answered>> {
        self.now.answer(choice).ok()
    }

    /// The folder that it was read from.
    pub(crate) const fn folder(&self) -> &Folder {
        &self.folder
    }

    /// The build before the job and after it; as it stands, and none, where no job is shown.
    pub(crate) fn before_after(&self) -> (&Build, Option<&Build>) {
        let planned = self.answered.planned.as_ref();
        let before = planned.map_or(self.folder.build(), |planned| &planned.before);
        (before, planned.map(|planned| &planned.after))
    }

    /// The build that the answers are about: after the job, or as it stands.
    pub(crate) fn build(&self) -> &Build {
        let (before, after) = self.before_after();
        after.unwrap_or(before)
    }

    /// The job that is shown.
    pub(crate) fn job(&self) -> Option<&JobInfo> {
        let name = self.choice.job.as_deref()?;
        self.jobs.iter().find(|job| job.name == name)
    }

    /// The address of a page about what is shown.
    pub(crate) fn href(&self, path: &str) -> String {
        href(path, &self.choice)
    }

    /// The files as texts.
    pub(crate) fn texts(&self) -> Texts {
        self.now.as_texts()
    }

    /// Names the state of the files.
    pub(crate) fn version(&self) -> String {
        self.now.version()
    }
}

impl Asked {
    /// What asks for a choice.
    pub(crate) fn of(choice: &Choice) -> Self {
        let job = choice.job.clone().unwrap_or_default();
        Self { job: Some(job), option: choice.option.clone() }
    }

    fn choice(self, jobs: &[JobInfo]) -> Choice {
        match self.job {
            Some(job) if job.is_empty() => Choice { job: None, option: None },
            Some(job) => Choice { job: Some(job), option: self.option.filter(|o| !o.is_empty()) },
            None => {
                let open = jobs.iter().filter(|job| job.done.is_none());
                let first = open.min_by_key(|job| job.after.len());
                Choice { job: first.map(|job| job.name.clone()), option: None }
            }
        }
    }
}

/// The address of a page about a choice.
pub(crate) fn href(path: &str, choice: &Choice) -> String {
    let mut address = format!("{path}?job={}", escaped(choice.job.as_deref().unwrap_or_default()));
    if let Some(option) = &choice.option {
        address.push_str(&format!("&option={}", escaped(option)));
    }
    address
}

/// A name as it stands in an address.
pub(crate) fn escaped(name: &str) -> String {
    let mut text = String::with_capacity(name.len());
    for byte in name.bytes() {
        if byte.is_ascii_alphanumeric() || b"-_.~".contains(&byte) {
            text.push(char::from(byte));
        } else {
            text.push_str(&format!("%{byte:02X}"));
        }
    }
    text
}
