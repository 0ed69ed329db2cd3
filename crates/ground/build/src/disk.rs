//! A build's files, as they lie on disk.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;

use crate::problem::Problem;
use crate::source::{At, Files, SourceFile};

/// The file of the vehicle as it stands.
pub(crate) const BUILD: &str = "build.toml";

/// Reads every file of a build's folder, and tells of those that cannot be read.
pub(crate) fn read(folder: &Path) -> (Files, Vec<Problem>) {
    let mut files = Files::default();
    let mut problems = Vec::new();
    if !folder.is_dir() {
        problems.push(no_build(&format!("there is no folder {}", folder.display())));
        return (files, problems);
    }
    if folder.join(BUILD).exists() {
        one(folder, BUILD.to_owned(), &mut files, &mut problems);
    } else {
        problems.push(no_build(&format!("there is no build.toml in {}", folder.display())));
    }
    for part in ["parts", "jobs"] {
        all(folder, part, &mut files, &mut problems);
    }
    (files, problems)
}

/// That there is no build, and how to come by one.
pub(crate) fn no_build(says: &str) -> Problem {
    Problem::nowhere(says, "a build is a folder with a build.toml in it; `spile new` makes one")
}

/// Reads the TOML files of a folder within the build's, by name.
fn all(folder: &Path, part: &str, files: &mut Files, problems: &mut Vec<Problem>) {
    let within = folder.join(part);
    let entries = match fs::read_dir(&within) {
        Ok(entries) => entries,
        Err(error) if error.kind() == ErrorKind::NotFound => return,
        Err(error) => {
            problems.push(Problem::nowhere(
                format!("{} cannot be read: {error}", within.display()),
                "it is a folder of TOML files, or not there at all",
            ));
            return;
        }
    };
    let mut names: Vec<String> = entries
        .filter_map(|entry| Some(entry.ok()?.file_name().to_string_lossy().into_owned()))
        .filter(|name| name.ends_with(".toml") && !name.starts_with('.'))
        .collect();
    names.sort();
    for name in names {
        one(folder, format!("{part}/{name}"), files, problems);
    }
}

fn one(folder: &Path, name: String, files: &mut Files, problems: &mut Vec<Problem>) {
    let path = folder.join(&name);
    let bytes = match fs::read(&path) {
        Ok(bytes) => bytes,
        Err(error) => {
            problems.push(Problem::nowhere(
                format!("{} cannot be read: {error}", path.display()),
                "check that it is a file and that you may read it",
            ));
            return;
        }
    };
    let (text, wrong) = match String::from_utf8(bytes) {
        Ok(text) => (text, None),
        Err(error) => {
            let place = error.utf8_error().valid_up_to();
            (String::from_utf8_lossy(error.as_bytes()).into_owned(), Some(place))
        }
    };
    let file = files.add(SourceFile { name, path: Some(path), text });
    if let Some(place) = wrong {
        let span = place..place + char::REPLACEMENT_CHARACTER.len_utf8();
        problems.push(Problem::new(
            At { file, span },
            "this file is not a text in UTF-8",
            "the first byte that is not",
            "save it as UTF-8 in your editor",
        ));
    }
}
