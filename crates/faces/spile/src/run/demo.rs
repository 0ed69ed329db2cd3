//! `spile demo`: the demo builds as folders, and the main job of one of them answered.

use std::path::Path;

use super::folder::{is_there, write_new};
use super::open::{flags, open};
use super::{Outcome, Status, note};
use crate::demo_files::DEMO_BUILDS;
use crate::show::{self, Shown};

/// The build and the job that are answered.
const MAIN: (&str, &str) = ("heron", "galley-fridge");

/// Writes the demo builds that are not there yet, and answers the main job.
pub fn demo(folder: &Path) -> Outcome {
    let mut talk = String::new();
    for build in DEMO_BUILDS {
        let path = folder.join(build.name);
        let shown = path.display();
        if is_there(&path) {
            talk.push_str(&note(&format!(
                "{shown} stands already; it is taken as it is, and nothing is written"
            )));
            continue;
        }
        match write_new(&path, build.files) {
            Ok(()) => talk.push_str(&note(&format!("wrote {shown}"))),
            Err(error) => {
                return Outcome::refused(
                    &format!("{shown} cannot be written: {error}"),
                    "name a folder that you may write in: spile demo FOLDER",
                );
            }
        }
    }
    let (build, job) = MAIN;
    let answered = open(&folder.join(build)).and_then(|opened| {
        let report = opened.ask(Some(job), None)?;
        let jobs = opened.folder.jobs();
        let (build, flags) = (opened.typed.as_str(), flags(Some(job), None));
        Ok(show::report(&report, &Shown { build, flags: &flags, jobs: &jobs, all: false }))
    });
    match answered {
        Ok(data) => Outcome { data, talk, status: Status::Fine },
        Err(outcome) => Outcome { talk: talk + &outcome.talk, ..outcome },
    }
}
