//! A build's folder in, a typed build or its problems out.

mod always;
mod broken;
mod edit;
mod edit_always;
mod jobs;
mod read;
mod schema;
mod store;

use spile_build::{Build, Folder, Problems};

/// Reads a folder of `build.toml` alone; nothing is to be wrong in it.
fn build(text: &str) -> Build {
    match Folder::from_texts([("build.toml", text)]) {
        Ok(folder) => folder.build().clone(),
        Err(problems) => panic!("{problems}"),
    }
}

/// Reads a folder of several texts; nothing is to be wrong in it.
fn folder(texts: &[(&str, &str)]) -> Folder {
    match Folder::from_texts(texts.iter().copied()) {
        Ok(folder) => folder,
        Err(problems) => panic!("{problems}"),
    }
}

/// Reads a folder of several texts, in which something is wrong.
fn problems(texts: &[(&str, &str)]) -> Problems {
    match Folder::from_texts(texts.iter().copied()) {
        Ok(_) => panic!("nothing is wrong in it"),
        Err(problems) => problems,
    }
}

/// The demo build, as it lies in the repository.
fn heron() -> Folder {
    match Folder::open("../../../demo/heron".as_ref()) {
        Ok(folder) => folder,
        Err(problems) => panic!("{problems}"),
    }
}

/// The texts of the demo build, each with its name.
fn heron_texts() -> Vec<(String, String)> {
    let files = heron().files().clone();
    files.all().iter().map(|file| (file.name.clone(), file.text.clone())).collect()
}
