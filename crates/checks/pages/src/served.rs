//! A build of one's own, served to a browser by the desk itself.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use tempfile::TempDir;

use crate::Failed;

/// A copy of a build, and the desk that serves it until the program ends.
pub struct Served {
    folder: TempDir,
    name: String,
    home: String,
}

impl Served {
    /// A copy of one of the demo builds.
    ///
    /// # Errors
    /// If there is no such build, or it cannot be served.
    pub fn demo(name: &str) -> Result<Self, Failed> {
        let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo").join(name);
        Self::made(name, |folder| copy(&from, folder))
    }

    /// A build of the texts given, each with its name in the folder.
    ///
    /// # Errors
    /// If it cannot be written or served.
    pub fn of(name: &str, texts: &[(&str, &str)]) -> Result<Self, Failed> {
        Self::made(name, |folder| {
            fs::create_dir_all(folder)?;
            for (file, text) in texts {
                let path = folder.join(file);
                fs::create_dir_all(path.parent().unwrap_or(folder))?;
                fs::write(path, text)?;
            }
            Ok(())
        })
    }

    fn made(name: &str, make: impl FnOnce(&Path) -> std::io::Result<()>) -> Result<Self, Failed> {
        let folder = tempfile::tempdir()?;
        let build = folder.path().join(name);
        make(&build)?;
        let bound = spile_desk::bind(None)?;
        let home = bound.address();
        let desk = spile_desk::Desk::open(&build, bound.port());
        // Served from a thread that ends with the program: nobody has to be told to stop.
        std::thread::spawn(move || {
            let desk = Arc::clone(&desk);
            spile_desk::serve(bound, &desk)
        });
        Ok(Self { folder, name: name.to_owned(), home })
    }

    /// The address of a page, from what comes after the host: `q/wire`.
    pub fn at(&self, page: &str) -> String {
        format!("{}{page}", self.home)
    }

    /// Where a file of the build is.
    pub fn file(&self, name: &str) -> PathBuf {
        self.folder.path().join(&self.name).join(name)
    }
}

/// Copies a folder with all that is in it.
fn copy(from: &Path, to: &Path) -> std::io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}
