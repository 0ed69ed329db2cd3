//! A build's folder on the desk: its files as they are now, and what was answered of them.

use std::collections::BTreeMap;
use std::fs::{self, OpenOptions};
use std::hash::{DefaultHasher, Hash, Hasher};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use spile_ask::{Report, ask, clean};
use spile_build::{Folder, Planned, Problems, Unplanned};
use tokio::sync::watch;

use crate::view::Choice;

/// The file of the vehicle as it stands.
const BUILD: &str = "build.toml";

/// The files of a build as they lie on disk, by their names within the folder.
type Texts = BTreeMap<String, Vec<u8>>;

/// One build, open on the desk.
#[derive(Debug)]
pub struct Desk {
    folder: PathBuf,
    name: String,
    port: u16,
    token: String,
    now: Mutex<Arc<Now>>,
    version: watch::Sender<String>,
}

/// The build in one state of its files.
#[derive(Debug)]
pub(crate) struct Now {
    texts: Texts,
    /// The files, found to be in order, or everything that is wrong in them.
    pub(crate) read: Result<Folder, Problems>,
    name: String,
    answered: Mutex<BTreeMap<Choice, Arc<Answered>>>,
}

/// What was answered of one job and option, or of the build as it stands.
#[derive(Debug)]
pub(crate) struct Answered {
    pub(crate) report: Report,
    pub(crate) planned: Option<Planned>,
}

impl Desk {
    /// Opens the build of a folder, which need not be there yet; `port` is the one it is served on.
    pub fn open(folder: &Path, port: u16) -> Arc<Self> {
        let folder = folder.to_path_buf();
        let name = name(&folder);
        let now = Arc::new(Now::read(&folder, &name));
        let version = watch::Sender::new(now.version());
        Arc::new(Self { name, port, token: token(), now: Mutex::new(now), version, folder })
    }

    /// The build's folder.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// The build's name: its folder's.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The port that it is served on.
    pub const fn port(&self) -> u16 {
        self.port
    }

    /// What a form that writes must carry; another at each start.
    pub fn token(&self) -> &str {
        &self.token
    }

    /// The build as its files are at this moment.
    pub(crate) fn now(&self) -> Arc<Now> {
        let texts = texts(&self.folder);
        let mut now = hold(&self.now);
        if now.texts != texts {
            *now = Arc::new(Now::of(texts, &self.folder, &self.name));
            self.version.send_replace(now.version());
        }
        Arc::clone(&now)
    }

    /// Makes the first build of a folder that has none yet.
    pub(crate) fn begin(&self, text: &str) -> Result<(), NotMade> {
        fs::create_dir_all(&self.folder).map_err(NotMade::Unwritten)?;
        let path = self.folder.join(BUILD);
        let mut file = match OpenOptions::new().write(true).create_new(true).open(path) {
            Ok(file) => file,
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {
                return Err(NotMade::Stands);
            }
            Err(error) => return Err(NotMade::Unwritten(error)),
        };
        file.write_all(text.as_bytes()).and_then(|()| file.sync_all()).map_err(NotMade::Unwritten)
    }

    /// Goes on when the files are no longer those of a version.
    pub(crate) async fn changed(&self, since: &str) -> String {
        let mut version = self.version.subscribe();
        match version.wait_for(|version| version != since).await {
            Ok(version) => version.clone(),
            Err(_) => since.to_owned(),
        }
    }
}

impl Now {
    fn read(folder: &Path, name: &str) -> Self {
        Self::of(texts(folder), folder, name)
    }

    fn of(texts: Texts, folder: &Path, name: &str) -> Self {
        Self {
            read: Folder::open(folder),
            texts,
            name: name.to_owned(),
            answered: Mutex::new(BTreeMap::new()),
        }
    }

    /// Whether there is a build at all.
    pub(crate) fn is_there(&self) -> bool {
        self.texts.contains_key(BUILD)
    }

    /// Names this state of the files: another for every other state.
    pub(crate) fn version(&self) -> String {
        let mut hasher = DefaultHasher::new();
        self.texts.hash(&mut hasher);
        format!("{:016x}", hasher.finish())
    }

    /// The answers of a choice, worked out once.
    pub(crate) fn answer(&self, choice: &Choice) -> Result<Arc<Answered>, Unanswered> {
        let folder = self.read.as_ref().map_err(|_| Unanswered::Unread)?;
        if let Some(known) = hold(&self.answered).get(choice) {
            return Ok(Arc::clone(known));
        }
        let planned = match &choice.job {
            Some(job) => {
                Some(folder.plan(job, choice.option.as_deref()).map_err(Unanswered::Plan)?)
            }
            None => None,
        };
        let report = ask(&self.name, folder.build(), planned.as_ref());
        let answered = Arc::new(Answered { report, planned });
        hold(&self.answered).insert(choice.clone(), Arc::clone(&answered));
        Ok(answered)
    }
}

/// Why a first build was not made.
#[derive(Debug)]
pub(crate) enum NotMade {
    /// There is one already.
    Stands,
    /// The folder cannot be written.
    Unwritten(io::Error),
}

/// Why there is no answer.
#[derive(Debug)]
pub(crate) enum Unanswered {
    /// Something is wrong in the files.
    Unread,
    /// There is no such job or option, or it does not go together with the rest.
    Plan(Unplanned),
}

/// What a lock guards; a page that broke off in the middle leaves it whole, since nothing is put
/// in before it is made.
fn hold<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}

/// The files that a build is made of, and no other.
fn texts(folder: &Path) -> Texts {
    let mut texts = Texts::new();
    let mut take = |name: String| {
        if let Ok(text) = fs::read(folder.join(&name)) {
            texts.insert(name, text);
        }
    };
    take(BUILD.to_owned());
    for part in ["parts", "jobs"] {
        let entries = fs::read_dir(folder.join(part)).into_iter().flatten().flatten();
        for entry in entries {
            let name = entry.file_name().to_string_lossy().into_owned();
            if name.ends_with(".toml") && !name.starts_with('.') {
                take(format!("{part}/{name}"));
            }
        }
    }
    texts
}

fn name(folder: &Path) -> String {
    let whole = fs::canonicalize(folder).unwrap_or_else(|_| folder.to_path_buf());
    let name = whole.file_name().map(|name| name.to_string_lossy().into_owned());
    clean(&name.unwrap_or_else(|| "build".to_owned()))
}

/// A name that nobody can guess.
fn token() -> String {
    let mut bytes = [0_u8; 16];
    // Without the system's randomness nothing can be written: an empty token is never taken.
    if getrandom::fill(&mut bytes).is_err() {
        return String::new();
    }
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}
