//! The repository as text: every file that is ours, and every crate's manifest.

use std::fs;
use std::path::{Path, PathBuf};

/// A text file of the repository.
#[derive(Debug, Clone)]
pub struct File {
    /// Where it lies below the root, with forward slashes.
    pub path: String,
    /// What stands in it.
    pub text: String,
}

/// A crate of the workspace: `crates/FLOOR/FOLDER`.
#[derive(Debug, Clone)]
pub struct Crate {
    /// The floor it stands on: `ground`, `models`, ...
    pub floor: String,
    /// The name of its folder: `quantity`.
    pub folder: String,
    /// The name of its package: `spile-quantity`.
    pub package: String,
    /// Its whole manifest.
    pub manifest: toml::Table,
}

/// The root of the repository that this crate was built in.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../..")
}

/// Every text file below `root`, in order of path: without what git keeps, what is built and what
/// `spile demo` writes.
///
/// # Panics
/// Where a folder cannot be read.
pub fn files(root: &Path) -> Vec<File> {
    let mut found = Vec::new();
    collect(root, "", &mut found);
    found.sort_by(|a, b| a.path.cmp(&b.path));
    found
}

fn collect(folder: &Path, prefix: &str, found: &mut Vec<File>) {
    for entry in fs::read_dir(folder).expect("a folder of the repository") {
        let entry = entry.expect("an entry of a folder");
        let name = entry.file_name().to_string_lossy().into_owned();
        let path = format!("{prefix}{name}");
        if matches!(path.as_str(), ".git" | "target" | "spile-demo") {
            continue;
        }
        if entry.path().is_dir() {
            collect(&entry.path(), &format!("{path}/"), found);
        } else if let Ok(text) = fs::read_to_string(entry.path()) {
            found.push(File { path, text });
        }
    }
}

/// The crates among `files`, in order of path.
///
/// # Errors
/// A manifest that is not TOML or has no package name.
pub fn crates(files: &[File]) -> Result<Vec<Crate>, String> {
    let manifests = files.iter().filter_map(|file| {
        let parts: Vec<&str> = file.path.split('/').collect();
        match parts[..] {
            ["crates", floor, folder, "Cargo.toml"] => Some((file, floor, folder)),
            _ => None,
        }
    });
    manifests
        .map(|(file, floor, folder)| {
            let manifest: toml::Table =
                file.text.parse().map_err(|error| format!("{}: {error}", file.path))?;
            let package = manifest
                .get("package")
                .and_then(|package| package.get("name")?.as_str())
                .ok_or_else(|| format!("{}: no package name", file.path))?
                .to_owned();
            Ok(Crate { floor: floor.to_owned(), folder: folder.to_owned(), package, manifest })
        })
        .collect()
}
