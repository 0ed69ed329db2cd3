//! The corpus of broken builds: each folder in `tests/broken` is read and told of in the places
//! that are marked in it, and its messages are kept beside it in `messages.snap`.
//!
//! A place is marked below its line by a remark with nothing but a `^` in the column, or `#<` for
//! the first column, which a remark begins in. Where a remark would change what is wrong, the
//! places stand in `expect.txt`, one a line: `build.toml:2:8`, or `nowhere` for what is wrong with
//! the folder itself.

use std::fs;
use std::path::{Path, PathBuf};

use spile_build::{Folder, Problems};

#[test]
fn every_broken_build_is_told_of_in_its_places() {
    let folders = folders();
    assert!(folders.len() >= 65, "only {} broken builds", folders.len());
    let mut wrong = String::new();
    for folder in folders {
        let name = folder.file_name().unwrap().to_string_lossy().into_owned();
        let Err(problems) = Folder::open(&folder) else {
            wrong.push_str(&format!("{name}: nothing is wrong with it\n"));
            continue;
        };
        let (told, marked) = (places(&problems), marks(&folder));
        if told != marked {
            wrong.push_str(&format!("{name}: marked {marked:?}, told {told:?}\n{problems}"));
        }
        insta::with_settings!({
            snapshot_path => format!("../broken/{name}"),
            prepend_module_to_snapshot => false,
            omit_expression => true,
        }, {
            insta::assert_snapshot!("messages", problems.to_string());
        });
    }
    assert!(wrong.is_empty(), "{wrong}");
}

/// The folders of the corpus, as they are named from here, in order of name.
fn folders() -> Vec<PathBuf> {
    let mut folders: Vec<PathBuf> = fs::read_dir("tests/broken")
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.is_dir())
        .collect();
    folders.sort();
    folders
}

/// Where each problem is told, in order. What is told twice stands here twice.
fn places(problems: &Problems) -> Vec<String> {
    let mut places: Vec<String> = problems
        .list
        .iter()
        .map(|problem| match &problem.at {
            Some(at) => {
                let place = problems.files.line_column(at);
                format!("{}:{}:{}", problems.files.file(at.file).name, place.line, place.column)
            }
            None => "nowhere".to_owned(),
        })
        .collect();
    places.sort();
    places
}

/// Where the folder says that something is wrong, in order.
fn marks(folder: &Path) -> Vec<String> {
    let mut marks = Vec::new();
    let mut within = vec![PathBuf::new()];
    while let Some(below) = within.pop() {
        for entry in fs::read_dir(folder.join(&below)).unwrap() {
            let name = below.join(entry.unwrap().file_name());
            let path = folder.join(&name);
            if path.is_dir() {
                within.push(name);
            } else if name.ends_with("expect.txt") {
                let text = fs::read_to_string(path).unwrap();
                marks.extend(text.lines().map(ToOwned::to_owned));
            } else if name.extension().is_some_and(|extension| extension == "toml") {
                let bytes = fs::read(path).unwrap();
                let text = String::from_utf8_lossy(&bytes);
                let name = name.to_string_lossy().replace('\\', "/");
                marks.extend(marks_of(&text).map(|place| format!("{name}:{place}")));
            }
        }
    }
    marks.sort();
    marks
}

/// `line:column` of every mark in a text.
fn marks_of(text: &str) -> impl Iterator<Item = String> {
    let mut marked = 0;
    text.lines().enumerate().flat_map(move |(index, line)| {
        let mark = line.strip_prefix('#');
        let is_mark = mark.is_some_and(|mark| {
            mark.starts_with('<')
                || (mark.contains('^') && mark.trim_matches([' ', '^']).is_empty())
        });
        if !is_mark {
            marked = index + 1;
            return Vec::new();
        }
        let columns = line.chars().enumerate().filter_map(|(column, c)| match c {
            '<' => Some(1),
            '^' => Some(column + 1),
            _ => None,
        });
        columns.map(|column| format!("{marked}:{column}")).collect()
    })
}
