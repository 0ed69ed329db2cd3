//! Files of a build written to disk, each at once, and several of them all or none.

use std::fs;
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

use atomic_write_file::AtomicWriteFile;
use serde_json::{Value, json};

use super::change::is_file;
use crate::problem::Problem;

/// What is to be written, while a save of several files is on its way.
const UNFINISHED: &str = ".unfinished-save";

/// One file to be written: its text before and after, `None` where there is no file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Put {
    pub(super) file: String,
    pub(super) before: Option<String>,
    pub(super) after: Option<String>,
}

/// Writes every file, or leaves all as they were.
pub(super) fn all(root: &Path, puts: &[Put]) -> Result<(), Problem> {
    for put in puts {
        target(root, &put.file)?;
    }
    let several = puts.len() > 1;
    if several {
        let path = root.join(UNFINISHED);
        replace(&path, &noted(puts)).map_err(|error| told(UNFINISHED, &error))?;
    }
    for (number, put) in puts.iter().enumerate() {
        if let Err(problem) = one(root, &put.file, put.after.as_deref()) {
            let mut all_back = true;
            for put in puts[..number].iter().rev() {
                all_back &= one(root, &put.file, put.before.as_deref()).is_ok();
            }
            if all_back && several {
                forget(root)?;
            }
            return Err(problem);
        }
    }
    if several { forget(root) } else { Ok(()) }
}

/// The files of a save that was interrupted.
pub(super) fn unfinished(root: &Path) -> Vec<Put> {
    let Ok(text) = fs::read_to_string(root.join(UNFINISHED)) else { return Vec::new() };
    let Ok(Value::Array(puts)) = serde_json::from_str(&text) else { return Vec::new() };
    let text = |value: &Value| value.as_str().map(str::to_owned);
    puts.iter()
        .filter_map(|put| {
            let file = text(&put["file"])?;
            Some(Put { file, before: text(&put["before"]), after: text(&put["after"]) })
        })
        .filter(|put| is_file(&put.file))
        .collect()
}

/// Finishes a save that was interrupted.
pub(super) fn finish(root: &Path, puts: &[Put]) -> Result<(), Problem> {
    for put in puts {
        if stands(root, &put.file) != put.after {
            one(root, &put.file, put.after.as_deref())?;
        }
    }
    forget(root)
}

/// Takes out the note of a save on its way.
pub(super) fn forget(root: &Path) -> Result<(), Problem> {
    match fs::remove_file(root.join(UNFINISHED)) {
        Err(error) if error.kind() != ErrorKind::NotFound => Err(told(UNFINISHED, &error)),
        _ => Ok(()),
    }
}

/// The text of a file on disk, if there is one.
pub(super) fn stands(root: &Path, file: &str) -> Option<String> {
    let bytes = fs::read(root.join(file)).ok()?;
    Some(String::from_utf8_lossy(&bytes).into_owned())
}

/// Writes a file, or takes it out.
fn one(root: &Path, file: &str, text: Option<&str>) -> Result<(), Problem> {
    let path = target(root, file)?;
    let done = match text {
        Some(text) => replace(&path, text),
        None => fs::remove_file(&path),
    };
    done.map_err(|error| told(file, &error))
}

fn replace(path: &Path, text: &str) -> io::Result<()> {
    let mut file = AtomicWriteFile::open(path)?;
    file.write_all(text.as_bytes())?;
    file.commit()
}

/// Where a file of the build is to be written: within the folder, whatever links lead there, and
/// only if its owner lets it be written.
fn target(root: &Path, file: &str) -> Result<PathBuf, Problem> {
    let outside = || {
        Problem::nowhere(
            format!("{file} does not lie in the build's folder"),
            "only build.toml, parts/*.toml and jobs/*.toml in the folder itself are written; put \
             the file there, in the place of the link",
        )
    };
    if !is_file(file) {
        return Err(outside());
    }
    let path = root.join(file);
    let folder = path.parent().unwrap_or(root);
    if !folder.exists() && folder.symlink_metadata().is_err() {
        fs::create_dir(folder).map_err(|error| told(file, &error))?;
    }
    let folder = folder.canonicalize().map_err(|error| told(file, &error))?;
    if !folder.starts_with(root) {
        return Err(outside());
    }
    let Ok(metadata) = path.symlink_metadata() else { return Ok(path) };
    let path = if metadata.is_symlink() {
        path.canonicalize().ok().filter(|path| path.starts_with(root)).ok_or_else(outside)?
    } else {
        path
    };
    let metadata = path.metadata().map_err(|error| told(file, &error))?;
    if !metadata.is_file() || metadata.permissions().readonly() {
        return Err(Problem::nowhere(
            format!("{file} may be read only"),
            "allow it to be written, and save again",
        ));
    }
    Ok(path)
}

fn told(file: &str, error: &io::Error) -> Problem {
    Problem::nowhere(
        format!("{file} cannot be written: {error}"),
        "check that the folder may be written and that the disk is not full",
    )
}

fn noted(puts: &[Put]) -> String {
    let puts = puts
        .iter()
        .map(|put| json!({ "file": put.file, "before": put.before, "after": put.after }));
    Value::Array(puts.collect()).to_string()
}
