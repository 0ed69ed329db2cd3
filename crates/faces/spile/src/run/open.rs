//! Opening a build and planning its job, as the arguments name them.

use std::fs;
use std::path::Path;

use spile_ask::{Report, ask, clean};
use spile_build::{Folder, Planned, Unplanned};

use super::{Outcome, Status};
use crate::show;

/// A build that could be read.
pub struct Opened {
    pub folder: Folder,
    /// Its folder's name.
    pub name: String,
    /// How it was named on the command line, for commands to be typed.
    pub typed: String,
}

/// Opens a build by its folder, or by the `build.toml` in it.
pub fn open(build: &Path) -> Result<Opened, Outcome> {
    let path = if build.is_file() {
        if build.file_name() != Some("build.toml".as_ref()) {
            return Err(Outcome::refused(
                &format!("{} is a file", build.display()),
                "a build is a folder with a build.toml in it; name the folder",
            ));
        }
        build.parent().filter(|parent| *parent != Path::new("")).unwrap_or(Path::new(".")).into()
    } else {
        build.to_path_buf()
    };
    let folder = Folder::open(&path)
        .map_err(|problems| Outcome::talk(show::problems(&problems), Status::Unread))?;
    Ok(Opened { folder, name: name(&path), typed: typed(build) })
}

impl Opened {
    /// The build before and after a job, where one is named.
    pub fn plan(
        &self,
        job: Option<&str>,
        option: Option<&str>,
    ) -> Result<Option<Planned>, Outcome> {
        job.map(|job| self.folder.plan(job, option).map_err(unplanned)).transpose()
    }

    /// The answers, of the build as it stands or before and after a job.
    pub fn ask(&self, job: Option<&str>, option: Option<&str>) -> Result<Report, Outcome> {
        let planned = self.plan(job, option)?;
        Ok(ask(&self.name, self.folder.build(), planned.as_ref()))
    }
}

fn unplanned(why: Unplanned) -> Outcome {
    match why {
        Unplanned::Unknown { what, name, hint } => {
            Outcome::refused(&format!("there is no {what} `{name}`"), &hint)
        }
        Unplanned::Problems(problems) => Outcome::talk(show::problems(&problems), Status::Unread),
    }
}

fn name(path: &Path) -> String {
    let whole = fs::canonicalize(path).unwrap_or_else(|_| path.to_path_buf());
    let name = whole.file_name().map(|name| name.to_string_lossy().into_owned());
    clean(&name.unwrap_or_else(|| "build".to_owned()))
}

/// The flags that name a job and its option, as they are typed behind a command.
pub fn flags(job: Option<&str>, option: Option<&str>) -> String {
    let flag = |name: &str, value: Option<&str>| {
        value.map_or_else(String::new, |value| format!(" --{name} {}", typed(Path::new(value))))
    };
    format!("{}{}", flag("job", job), flag("option", option))
}

/// A path or name as it is typed in a shell.
pub fn typed(path: &Path) -> String {
    let text = path.display().to_string();
    let is_plain = |c: char| c.is_alphanumeric() || "._-/\\:~+".contains(c);
    if text.chars().all(is_plain) { text } else { format!("'{}'", text.replace('\'', r"'\''")) }
}
