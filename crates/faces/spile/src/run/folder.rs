//! Writing a folder: whole or not at all, and never over anything.

use std::path::{Path, PathBuf};
use std::{fs, io, process};

/// Whether something of that name is there, a link to nothing among it.
pub fn is_there(path: &Path) -> bool {
    fs::symlink_metadata(path).is_ok()
}

/// Makes a folder with files in it, each with its name within the folder.
///
/// It is built beside its place and then renamed, so that there is never half of it.
pub fn write_new(folder: &Path, files: &[(&str, &str)]) -> io::Result<()> {
    let Some(name) = folder.file_name() else {
        return Err(io::Error::new(io::ErrorKind::InvalidInput, "it has no name of its own"));
    };
    let above = folder.parent().unwrap_or(Path::new(""));
    if above != Path::new("") {
        fs::create_dir_all(above)?;
    }
    let beside = format!(".{}.{}.new", name.to_string_lossy(), process::id());
    let beside = above.join(beside);
    fs::create_dir(&beside)?;
    let written = fill(&beside, files).and_then(|()| {
        if is_there(folder) {
            return Err(io::Error::from(io::ErrorKind::AlreadyExists));
        }
        fs::rename(&beside, folder)
    });
    if written.is_err() {
        // Whatever went wrong is told; what is left behind is only tidied up.
        let _ = fs::remove_dir_all(&beside);
    }
    written
}

fn fill(folder: &Path, files: &[(&str, &str)]) -> io::Result<()> {
    for (name, text) in files {
        let path: PathBuf = folder.join(name);
        if let Some(above) = path.parent() {
            fs::create_dir_all(above)?;
        }
        fs::write(path, text)?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_folder_is_whole_or_not_there() {
        let temp = tempfile::tempdir().unwrap();
        let folder = temp.path().join("a/heron");
        write_new(&folder, &[("build.toml", "x"), ("parts/a.toml", "y")]).unwrap();
        assert_eq!(fs::read_to_string(folder.join("parts/a.toml")).unwrap(), "y");
        write_new(&folder, &[("build.toml", "z")]).unwrap_err();
        assert_eq!(fs::read_to_string(folder.join("build.toml")).unwrap(), "x");

        let broken = temp.path().join("broken");
        write_new(&broken, &[("a", "x"), ("a/b", "y")]).unwrap_err();
        assert!(!is_there(&broken));
        let left: Vec<_> = fs::read_dir(temp.path()).unwrap().collect();
        assert_eq!(left.len(), 1);
        write_new(Path::new(".."), &[]).unwrap_err();
    }
}
