//! `spile new`: a small commented build, from flags or from a few questions.

use std::io::{self, BufRead, Write};
use std::path::Path;

use spile_ask::clean;
use spile_build::first::{First, UNKNOWN, Wanted};

use super::folder::{is_there, write_new};
use super::open::typed;
use super::{Outcome, Status, note};
use crate::args::New;
use crate::show::page::{Page, Text, Tone};

/// Makes a build in a new folder. With an `input`, what the flags do not give is asked for.
pub fn new(args: &New, input: Option<&mut dyn BufRead>, talk: &mut dyn Write) -> Outcome {
    let shown = args.folder.display().to_string();
    if is_there(&args.folder) {
        return Outcome::refused(
            &format!("{shown} stands already, and nothing is written over it"),
            "name a folder that is not there yet",
        );
    }
    let mut answers = First::default();
    for wanted in Wanted::ALL {
        let Some(given) = flag(wanted, args) else { continue };
        if let Err(why) = answers.take(wanted, given) {
            return Outcome::refused(&format!("--{}: {why}", wanted.name()), "nothing was written");
        }
    }
    let missing = answers.missing();
    if !missing.is_empty() {
        let Some(input) = input else {
            let flags: Vec<String> = missing
                .iter()
                .map(|wanted| format!("--{} {}", wanted.name(), in_shell(*wanted)))
                .collect();
            return Outcome::refused(
                &format!("still wanted: {}", flags.join(", ")),
                "give them, or run it on a terminal to be asked; nothing was written",
            );
        };
        match ask(&mut answers, input, talk) {
            Ok(true) => {}
            Ok(false) => {
                return Outcome::refused("the answers ended too soon", "nothing was written");
            }
            Err(error) => {
                return Outcome::refused(
                    &format!("the answers cannot be read: {error}"),
                    "nothing was written",
                );
            }
        }
    }
    match write_new(&args.folder, &[("build.toml", &answers.text(&title(&args.folder)))]) {
        Ok(()) => {
            let text = format!(
                "made {}; next: spile check {}",
                args.folder.join("build.toml").display(),
                typed(&args.folder)
            );
            Outcome::talk(note(&text), Status::Fine)
        }
        Err(error) => Outcome::refused(
            &format!("{shown} cannot be written: {error}"),
            "name a folder that you may write in",
        ),
    }
}

/// Asks for what is missing, each until it can be read; false where the answers end.
fn ask(answers: &mut First, input: &mut dyn BufRead, talk: &mut dyn Write) -> io::Result<bool> {
    while let Some(wanted) = answers.missing().first().copied() {
        let mut page = Page::new();
        page.put(0, &Text::plain(wanted.question()));
        page.put(2, &Text::new().and(Tone::Faint, &wanted.hint()));
        write!(talk, "{}  > ", page.finish())?;
        talk.flush()?;
        let mut line = Vec::new();
        if input.read_until(b'\n', &mut line)? == 0 {
            writeln!(talk)?;
            return Ok(false);
        }
        let said = String::from_utf8_lossy(&line);
        let said = said.trim();
        let said = if said.is_empty() && wanted == Wanted::Section { UNKNOWN } else { said };
        if let Err(why) = answers.take(wanted, said) {
            let mut page = Page::new();
            page.put(2, &Text::plain(&why));
            write!(talk, "{}", page.finish())?;
        }
    }
    Ok(true)
}

/// The flag that answers what is wanted.
fn flag(wanted: Wanted, args: &New) -> Option<&str> {
    let flag = match wanted {
        Wanted::Kind => &args.kind,
        Wanted::Size => &args.size,
        Wanted::Bay => &args.bay,
        Wanted::Cable => &args.cable,
        Wanted::Section => &args.section,
        Wanted::Battery => &args.battery,
    };
    flag.as_deref()
}

/// An answer as it is typed in a shell.
fn in_shell(wanted: Wanted) -> String {
    format!("\"{}\"", wanted.example())
}

fn title(folder: &Path) -> String {
    let name = folder.file_name().map(|name| name.to_string_lossy().into_owned());
    clean(&name.unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use std::fs;

    use spile_build::Folder;

    use super::*;

    fn asked(folder: &Path, given: &str) -> (Outcome, String) {
        let mut talk = Vec::new();
        let args = New { folder: folder.to_path_buf(), ..New::default() };
        let outcome = new(&args, Some(&mut given.as_bytes()), &mut talk);
        (outcome, String::from_utf8(talk).unwrap())
    }

    #[test]
    fn what_cannot_be_read_is_asked_again() {
        let temp = tempfile::tempdir().unwrap();
        let folder = temp.path().join("heron");
        let (outcome, talk) = asked(
            &folder,
            "uprite fridge\nfridge\n475\n475 x 780 x 9000 mm\n475 x 780 x 495 mm\n520 x 1140 x 540 mm\n\
             7.2\n7.2 m\n6 mm\n\n100 A\n100 Ah\n",
        );
        assert_eq!(outcome.status, Status::Fine, "{talk}");
        for told in ["did you mean", "three measures", "cannot be 9000 mm", "outside diameter"] {
            assert!(talk.contains(told), "{told}: {talk}");
        }
        let text = fs::read_to_string(folder.join("build.toml")).unwrap();
        assert!(text.contains("length = \"7.2 m\"") && !text.contains("section ="));
        Folder::open(&folder).unwrap();
    }

    #[test]
    fn answers_that_end_too_soon_write_nothing() {
        let temp = tempfile::tempdir().unwrap();
        let folder = temp.path().join("heron");
        let (outcome, _) = asked(&folder, "fridge\n475 x 780 x 495 mm\n");
        assert_eq!(outcome.status, Status::Unread);
        assert_eq!(fs::read_dir(temp.path()).unwrap().count(), 0);
    }

    #[test]
    fn what_has_no_cable_is_not_asked_for_one() {
        let temp = tempfile::tempdir().unwrap();
        let folder = temp.path().join("heron");
        let (outcome, talk) =
            asked(&folder, "furniture\n475 x 780 x 495 mm\n520 x 1140 x 540 mm\n100 Ah\n");
        assert_eq!(outcome.status, Status::Fine, "{talk}");
        assert!(!talk.contains("cable"), "{talk}");
    }
}
