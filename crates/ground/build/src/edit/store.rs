//! A build's folder on disk, held open: saved whole or not at all, never over somebody else's work.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use super::change::Texts;
use super::meaning::{Edit, edited};
use super::write::{self, Put};
use crate::disk;
use crate::folder::Folder;
use crate::problem::{Problem, Problems};
use crate::source::{At, Files, SourceFile};

/// How many steps can be undone.
const STEPS: usize = 500;

/// A build's folder, with its texts as they were last seen on disk.
///
/// # What is kept to
/// - A save is checked before anything is written: the build is whole with it, or it is refused
///   with every problem in its place. Of a build that is not whole to begin with, a save is taken
///   that leaves fewer of the same problems, so that it can be mended step by step.
/// - A file that is no longer as it was last seen is never written over. Files are compared by
///   their whole text.
/// - Each file is replaced at once and synced to disk, with its permissions. Where a save is of
///   several files, what is to be written is first put down in one file beside them,
///   `.unfinished-save`; should the program or the machine stop between two of them, opening the
///   folder finishes the save.
/// - Only `build.toml`, `parts/*.toml` and `jobs/*.toml` are written, and nothing that a link leads
///   to outside the folder.
///
/// # Limits
/// Between looking at a file and replacing it lies an instant in which another program could write
/// it unseen. Another program that reads the folder while several files are replaced may see some
/// of them new and some old.
#[derive(Debug)]
pub struct Store {
    root: PathBuf,
    texts: Texts,
    now: Result<Folder, Problems>,
    past: Vec<Step>,
    future: Vec<Step>,
    interrupted: Vec<Underneath>,
}

/// The files of one save, each with its text before and after; `None` where there is no file.
type Step = BTreeMap<String, (Option<String>, Option<String>)>;

/// What a save did.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Saved {
    /// The files that were written or taken out.
    pub written: Vec<String>,
    /// Files that had been changed on disk meanwhile, and that the save did not touch.
    pub seen: Vec<String>,
}

/// A file that somebody else changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Underneath {
    /// The file.
    pub file: String,
    /// What was to be written; `None` where it was to go.
    pub ours: Option<String>,
    /// What stands on disk; `None` where there is none.
    pub theirs: Option<String>,
}

/// Why nothing was written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refused {
    /// The build would not be whole.
    Problems(Problems),
    /// Changed underneath: files are no longer as they were last seen. [`Store::refresh`] takes in
    /// what stands on disk; after that, ours can be saved over it on purpose.
    Underneath(Vec<Underneath>),
    /// A file cannot be written.
    Unwritable(Problem),
    /// There is nothing to undo or redo.
    Nothing,
}

impl Store {
    /// Opens a folder, whether or not the build in it is whole.
    ///
    /// # Errors
    /// [`Refused::Unwritable`] where there is no such folder, or a save that was interrupted cannot
    /// be finished.
    pub fn open(folder: &Path) -> Result<Self, Refused> {
        let root = folder.canonicalize().ok().filter(|root| root.is_dir()).ok_or_else(|| {
            let says = format!("there is no folder {}", folder.display());
            Refused::Unwritable(disk::no_build(&says))
        })?;
        let unfinished = write::unfinished(&root);
        let differs = |put: &Put| {
            let stands = write::stands(&root, &put.file);
            stands != put.before && stands != put.after
        };
        let interrupted: Vec<Underneath> = unfinished
            .iter()
            .filter(|put| differs(put))
            .map(|put| Underneath {
                file: put.file.clone(),
                ours: put.after.clone(),
                theirs: write::stands(&root, &put.file),
            })
            .collect();
        if interrupted.is_empty() {
            write::finish(&root, &unfinished).map_err(Refused::Unwritable)?;
        } else {
            write::forget(&root).map_err(Refused::Unwritable)?;
        }
        let (texts, now) = seen(&root);
        Ok(Self { root, texts, now, past: Vec::new(), future: Vec::new(), interrupted })
    }

    /// The folder.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The texts as they were last seen.
    pub const fn texts(&self) -> &Texts {
        &self.texts
    }

    /// The build that they are.
    ///
    /// # Errors
    /// Every problem of every file, if there is any.
    pub const fn folder(&self) -> Result<&Folder, &Problems> {
        self.now.as_ref()
    }

    /// The build that some edits would make; nothing is written.
    ///
    /// # Errors
    /// Every problem that it would have.
    pub fn tried(&self, edits: &[Edit]) -> Result<Folder, Problems> {
        folder_of(&self.root, &edited(&self.texts, edits)?, &[])
    }

    /// Makes some edits and writes them to disk.
    ///
    /// # Errors
    /// As [`Refused`] says; then nothing was written.
    pub fn save(&mut self, edits: &[Edit]) -> Result<Saved, Refused> {
        let after = edited(&self.texts, edits).map_err(Refused::Problems)?;
        let step: Step = self
            .texts
            .keys()
            .chain(after.keys())
            .map(|name| (name.clone(), (self.texts.get(name).cloned(), after.get(name).cloned())))
            .filter(|(_, (before, after))| before != after)
            .collect();
        if step.is_empty() {
            return Ok(Saved::default());
        }
        let saved = self.put(&step)?;
        self.past.push(step);
        if self.past.len() > STEPS {
            self.past.remove(0);
        }
        self.future.clear();
        Ok(saved)
    }

    /// Puts the files of the last save back as they were, byte for byte.
    ///
    /// # Errors
    /// As [`Store::save`]; also where one of the files was changed since.
    pub fn undo(&mut self) -> Result<Saved, Refused> {
        let Some(step) = self.past.last() else { return Err(Refused::Nothing) };
        let back: Step =
            step.iter().map(|(name, (a, b))| (name.clone(), (b.clone(), a.clone()))).collect();
        let saved = self.put(&back)?;
        self.future.extend(self.past.pop());
        Ok(saved)
    }

    /// Makes the save again that was undone last.
    ///
    /// # Errors
    /// As [`Store::undo`].
    pub fn redo(&mut self) -> Result<Saved, Refused> {
        let Some(step) = self.future.last().cloned() else { return Err(Refused::Nothing) };
        let saved = self.put(&step)?;
        self.past.extend(self.future.pop());
        Ok(saved)
    }

    /// How many saves can be undone and redone.
    pub const fn steps(&self) -> (usize, usize) {
        (self.past.len(), self.future.len())
    }

    /// Takes in what stands on disk now, and says which files were changed, made or taken out
    /// there.
    pub fn refresh(&mut self) -> Vec<String> {
        let (texts, now) = seen(&self.root);
        let changed = differing(&self.texts, &texts);
        (self.texts, self.now) = (texts, now);
        changed
    }

    /// Files of a save that was interrupted and that were changed before the folder was opened
    /// again: the save was not finished. Told once.
    pub fn interrupted(&mut self) -> Vec<Underneath> {
        std::mem::take(&mut self.interrupted)
    }

    /// Writes the files of a step, if each stands on disk as it was before it.
    fn put(&mut self, step: &Step) -> Result<Saved, Refused> {
        let (files, problems) = disk::read(&self.root);
        let mut texts = texts_of(&files);
        let seen: Vec<String> = differing(&self.texts, &texts)
            .into_iter()
            .filter(|name| !step.contains_key(name))
            .collect();
        let underneath: Vec<Underneath> = step
            .iter()
            .filter(|(name, (before, _))| texts.get(*name) != before.as_ref())
            .map(|(name, (_, after))| Underneath {
                file: name.clone(),
                ours: after.clone(),
                theirs: texts.get(name).cloned(),
            })
            .collect();
        if !underneath.is_empty() {
            return Err(Refused::Underneath(underneath));
        }
        let unread = named(&files, problems);
        if let Some((name, problem)) = unread
            .iter()
            .find(|(name, _)| name.as_ref().is_some_and(|name| step.contains_key(name)))
        {
            let says = format!(
                "{} cannot be changed: {}",
                name.as_deref().unwrap_or_default(),
                problem.says
            );
            return Err(Refused::Unwritable(Problem::nowhere(says, problem.hint.clone())));
        }
        for (name, (_, after)) in step {
            match after {
                Some(text) => texts.insert(name.clone(), text.clone()),
                None => texts.remove(name),
            };
        }
        let now = folder_of(&self.root, &texts, &unread);
        if let Err(problems) = &now
            && !self.mends(problems)
        {
            return Err(Refused::Problems(problems.clone()));
        }
        let puts: Vec<Put> = step
            .iter()
            .map(|(file, (before, after))| Put {
                file: file.clone(),
                before: before.clone(),
                after: after.clone(),
            })
            .collect();
        if let Err(problem) = write::all(&self.root, &puts) {
            self.refresh();
            return Err(Refused::Unwritable(problem));
        }
        (self.texts, self.now) = (texts, now);
        Ok(Saved { written: step.keys().cloned().collect(), seen })
    }

    /// Whether what is left are fewer of the same problems.
    fn mends(&self, left: &Problems) -> bool {
        let Err(before) = &self.now else { return false };
        left.list.len() < before.list.len()
            && left.list.iter().all(|left| before.list.iter().any(|known| known.says == left.says))
    }
}

impl From<Problems> for Refused {
    fn from(problems: Problems) -> Self {
        Self::Problems(problems)
    }
}

/// What stands on disk.
fn seen(root: &Path) -> (Texts, Result<Folder, Problems>) {
    let (files, problems) = disk::read(root);
    (texts_of(&files), Folder::of(files, problems))
}

fn texts_of(files: &Files) -> Texts {
    files.all().iter().map(|file| (file.name.clone(), file.text.clone())).collect()
}

fn differing(a: &Texts, b: &Texts) -> Vec<String> {
    let mut names: Vec<String> =
        a.keys().chain(b.keys()).filter(|name| a.get(*name) != b.get(*name)).cloned().collect();
    names.sort();
    names.dedup();
    names
}

/// Problems of files that could not be read as texts, each with its file's name.
fn named(files: &Files, problems: Vec<Problem>) -> Vec<(Option<String>, Problem)> {
    let name = |at: &At| files.file(at.file).name.clone();
    problems.into_iter().map(|problem| (problem.at.as_ref().map(name), problem)).collect()
}

/// The build that texts are, of files that lie in a folder.
fn folder_of(
    root: &Path,
    texts: &Texts,
    unread: &[(Option<String>, Problem)],
) -> Result<Folder, Problems> {
    let mut files = Files::default();
    let mut problems = Vec::new();
    let has_build = texts.contains_key(disk::BUILD);
    for (name, text) in texts {
        let path = Some(root.join(name));
        let id = files.add(SourceFile { name: name.clone(), path, text: text.clone() });
        for (_, problem) in unread.iter().filter(|(of, _)| of.as_ref() == Some(name)) {
            let at = problem.at.as_ref().map(|at| At { file: id, span: at.span.clone() });
            problems.push(Problem { at, ..problem.clone() });
        }
    }
    let nowhere = unread.iter().filter(|(of, _)| of.is_none()).map(|(_, problem)| problem);
    if has_build {
        // That there is no build.toml yet is no problem of a save that makes it.
        let missing = "there is no build.toml";
        problems.extend(nowhere.filter(|problem| !problem.says.starts_with(missing)).cloned());
    } else {
        problems.push(disk::no_build("there is no build.toml"));
    }
    Folder::of(files, problems)
}
