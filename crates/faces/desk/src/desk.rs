//! A build's folder on the desk: its files as they are now, and what was answered of them.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, OpenOptions};
use std::hash::{DefaultHasher, Hash, Hasher};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use spile_ask::{Report, ask, clean};
use spile_build::edit::{Edit, Refused, Saved, Store, Texts, Underneath, edited};
use spile_build::{Folder, Planned, Problems, Unplanned};
use tokio::sync::watch;

use crate::view::Choice;

/// The file of the vehicle as it stands.
const BUILD: &str = "build.toml";

/// The files of a build as they lie on disk, by their names within the folder.
type Bytes = BTreeMap<String, Vec<u8>>;

/// How many states of the files are kept, so that a page made of an earlier one can be told what
/// changed since.
const KEPT: usize = 12;

/// One build, open on the desk.
#[derive(Debug)]
pub struct Desk {
    folder: PathBuf,
    name: String,
    port: u16,
    token: String,
    now: Mutex<Arc<Now>>,
    /// States of the files that were shown, the latest at the end.
    shown: Mutex<Vec<Arc<Now>>>,
    /// The files held open for changes, once there is a folder.
    store: Mutex<Option<Store>>,
    /// The build before the last change and after it.
    last: Mutex<Option<(Arc<Now>, Arc<Now>)>>,
    version: watch::Sender<String>,
}

/// What is to be done with the files.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Step<'e> {
    /// Edits are made.
    Edits(&'e [Edit]),
    /// The last change is undone.
    Undo,
    /// What was undone last is made again.
    Redo,
}

impl Step<'_> {
    /// The address that it is asked for at.
    pub(crate) const fn path(self) -> &'static str {
        match self {
            Self::Edits(_) => "/change",
            Self::Undo => "/undo",
            Self::Redo => "/redo",
        }
    }
}

/// The build in one state of its files.
#[derive(Debug)]
pub(crate) struct Now {
    texts: Bytes,
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
        Arc::new(Self {
            shown: Mutex::new(vec![Arc::clone(&now)]),
            now: Mutex::new(now),
            store: Mutex::new(None),
            last: Mutex::new(None),
            token: token(),
            name,
            port,
            version,
            folder,
        })
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
            let mut shown = hold(&self.shown);
            // What is undone is a state that was answered already.
            let known = shown.iter().position(|known| known.texts == texts);
            *now = known.map_or_else(
                || Arc::new(Now::of(texts, &self.folder, &self.name)),
                |known| shown.remove(known),
            );
            shown.push(Arc::clone(&now));
            if shown.len() > KEPT {
                shown.remove(0);
            }
            self.version.send_replace(now.version());
        }
        Arc::clone(&now)
    }

    /// Makes a step in the files on disk, as they are now; `since` is the state of the files that
    /// the page shows from which it was asked for.
    ///
    /// # Errors
    /// As [`Store::save`]; [`Refused::Underneath`] also where a file that the step changes was
    /// changed since the page was made.
    pub(crate) fn step(&self, step: Step<'_>, since: Option<&str>) -> Result<Saved, Refused> {
        let before = self.now();
        let saved = self.with_store(|store| {
            store.refresh();
            match step {
                Step::Edits(edits) => {
                    let underneath = self.underneath(store, edits, since)?;
                    if underneath.is_empty() {
                        store.save(edits)
                    } else {
                        Err(Refused::Underneath(underneath))
                    }
                }
                Step::Undo => store.undo(),
                Step::Redo => store.redo(),
            }
        })?;
        let after = self.now();
        if before.texts != after.texts {
            *hold(&self.last) = Some((before, after));
        }
        Ok(saved)
    }

    /// The files as texts, as they were in a state that was shown; as they are, where that one is
    /// no longer known.
    pub(crate) fn texts_at(&self, version: Option<&str>) -> Texts {
        let shown = hold(&self.shown);
        let known = shown.iter().find(|known| version == Some(&known.version())).cloned();
        drop(shown);
        known.unwrap_or_else(|| self.now()).as_texts()
    }

    /// Does something with the files held open for changes.
    ///
    /// # Errors
    /// Where there is no folder, and whatever comes of it.
    pub(crate) fn with_store<T>(
        &self,
        with: impl FnOnce(&mut Store) -> Result<T, Refused>,
    ) -> Result<T, Refused> {
        let mut store = hold(&self.store);
        if store.is_none() {
            *store = Some(Store::open(&self.folder)?);
        }
        store.as_mut().map_or(Err(Refused::Nothing), with)
    }

    /// How many steps can be undone and made again.
    pub(crate) fn steps(&self) -> (usize, usize) {
        hold(&self.store).as_ref().map_or((0, 0), Store::steps)
    }

    /// The build before the last change and after it, while the files are as it left them.
    pub(crate) fn last(&self) -> Option<(Arc<Now>, Arc<Now>)> {
        let now = Arc::clone(&hold(&self.now));
        let last = hold(&self.last);
        last.as_ref()
            .filter(|(_, after)| after.texts == now.texts)
            .map(|(before, after)| (Arc::clone(before), Arc::clone(after)))
    }

    /// Files that edits would change and that are no longer as the page shows them from which the
    /// edits come.
    fn underneath(
        &self,
        store: &Store,
        edits: &[Edit],
        since: Option<&str>,
    ) -> Result<Vec<Underneath>, Refused> {
        let Some(since) = since.filter(|since| *since != self.now().version()) else {
            return Ok(Vec::new());
        };
        let now = store.texts();
        let then = hold(&self.shown).iter().find(|known| known.version() == since).cloned();
        let then = then.map(|then| then.as_texts());
        // Of a state that is no longer known, every file may have been changed.
        let from = then.as_ref().unwrap_or(now);
        let ours = edited(from, edits)?;
        let files = from.keys().chain(ours.keys()).collect::<BTreeSet<_>>();
        let touched = files.into_iter().filter(|file| from.get(*file) != ours.get(*file));
        let differs =
            |file: &&String| then.as_ref().is_none_or(|then| then.get(*file) != now.get(*file));
        Ok(touched
            .filter(differs)
            .map(|file| Underneath {
                file: file.clone(),
                ours: ours.get(file).cloned(),
                theirs: now.get(file).cloned(),
            })
            .collect())
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

    fn of(texts: Bytes, folder: &Path, name: &str) -> Self {
        Self {
            read: Folder::open(folder),
            texts,
            name: name.to_owned(),
            answered: Mutex::new(BTreeMap::new()),
        }
    }

    /// The files as texts, to be edited.
    pub(crate) fn as_texts(&self) -> Texts {
        let text = |bytes: &Vec<u8>| String::from_utf8_lossy(bytes).into_owned();
        self.texts.iter().map(|(name, bytes)| (name.clone(), text(bytes))).collect()
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
fn texts(folder: &Path) -> Bytes {
    let mut texts = Bytes::new();
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
