//! `spile marks`: the marks to cut by, as a table and as a full-size drawing.

use std::fs::OpenOptions;
use std::io::Write;
use std::path::Path;

use spile_ask::clean;
use spile_build::Build;
use spile_fit::{MarkOut, NoMarks, mark_out};
use spile_sheet::{marks_svg, marks_text};

use super::open::{open, typed};
use super::{Outcome, Status, note};
use crate::args::Marks;

/// Prints the marks of every cut-out of the build, or after a job those that the job brings; with
/// `--svg`, writes the drawing of one.
pub fn marks(args: &Marks) -> Outcome {
    let opened = match open(&args.build) {
        Ok(opened) => opened,
        Err(outcome) => return outcome,
    };
    let planned = match opened.plan(args.job.as_deref(), args.option.as_deref()) {
        Ok(planned) => planned,
        Err(outcome) => return outcome,
    };
    let stands = opened.folder.build();
    let build = planned.as_ref().map_or(stands, |planned| &planned.after);
    let before = planned.as_ref().map(|planned| &planned.before);
    let marked = match args.item.as_deref() {
        Some(item) => match one(build, item) {
            Ok(marks) => vec![marks],
            Err(outcome) => return outcome,
        },
        None => all(build, before),
    };
    let [first, ..] = marked.as_slice() else {
        let hint = "an item is marked out where it names its panel and its part's papers give a \
                    cut-out: panel = \"...\" in the item, cutout = { ... } in the part; name an \
                    item with --item to hear what it lacks";
        return Outcome::refused("nothing in the build has a cut-out to mark", hint);
    };
    let data = marked.iter().map(marks_text).collect::<Vec<_>>().join("\n");
    let Some(svg) = &args.svg else {
        let talk = note("--svg FILE writes the drawing at full size");
        return Outcome { data, talk, status: Status::Fine };
    };
    if marked.len() > 1 {
        let names: Vec<&str> = marked.iter().map(|marks| marks.item.as_str()).collect();
        let hint = format!("name one of them with --item: {}", clean(&names.join(", ")));
        return Outcome::refused("there are several cut-outs, and one drawing holds one", &hint);
    }
    match write_new(svg, &marks_svg(first)) {
        Ok(()) => {
            let talk = note(&format!(
                "{} is written at full size: print it at 100 % and lay a rule on its bar",
                typed(svg)
            ));
            Outcome { data, talk, status: Status::Fine }
        }
        Err(error) => Outcome::refused(
            &format!("{} cannot be written: {error}", typed(svg)),
            "choose a name that is not taken, in a folder that is there",
        ),
    }
}

fn one(build: &Build, item: &str) -> Result<MarkOut, Outcome> {
    mark_out(build, item).map_err(|lack| {
        let hint = match lack {
            NoMarks::NoItem => {
                let names: Vec<&str> = build.items.keys().map(String::as_str).collect();
                format!("items there are: {}", clean(&names.join(", ")))
            }
            _ => String::new(),
        };
        Outcome::refused(&format!("`{}`: {}", clean(item), lack.words()), &hint)
    })
}

/// The marks of all items that can be marked out, without those that were cut before the job.
fn all(build: &Build, before: Option<&Build>) -> Vec<MarkOut> {
    let new = |name: &&String| before.is_none_or(|before| !before.items.contains_key(*name));
    build.items.keys().filter(new).filter_map(|name| mark_out(build, name).ok()).collect()
}

/// Writes a file that is not there yet.
fn write_new(path: &Path, text: &str) -> std::io::Result<()> {
    let mut file = OpenOptions::new().write(true).create_new(true).open(path)?;
    file.write_all(text.as_bytes())?;
    file.sync_all()
}
