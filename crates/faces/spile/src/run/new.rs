//! `spile new`: a small commented build, from flags or from a few questions.

use std::io::{self, BufRead, Write};
use std::path::Path;

use spile_build::file::PartKind;
use spile_build::{Folder, Problem, Problems};
use spile_quantity::{Length, MisreadKind, read};

use super::folder::{is_there, write_new};
use super::open::typed;
use super::{Outcome, Status, note};
use crate::args::New;
use crate::show::page::{Page, Text, Tone};

/// What is said where the section of a cable is not known.
const UNKNOWN: &str = "unknown";

/// What is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Wanted {
    Kind,
    Size,
    Bay,
    Cable,
    Section,
    Battery,
}

/// Makes a build in a new folder. With an `input`, what the flags do not give is asked for.
pub fn new(args: &New, input: Option<&mut dyn BufRead>, talk: &mut dyn Write) -> Outcome {
    let shown = args.folder.display().to_string();
    if is_there(&args.folder) {
        return Outcome::refused(
            &format!("{shown} stands already, and nothing is written over it"),
            "name a folder that is not there yet",
        );
    }
    let mut answers = Answers::default();
    for wanted in Wanted::ALL {
        let Some(given) = wanted.flag(args) else { continue };
        if let Err(why) = answers.take(wanted, given) {
            return Outcome::refused(&format!("--{}: {why}", wanted.name()), "nothing was written");
        }
    }
    let missing = answers.missing();
    if !missing.is_empty() {
        let Some(input) = input else {
            let flags: Vec<String> = missing
                .iter()
                .map(|wanted| format!("--{} {}", wanted.name(), wanted.example()))
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
fn ask(answers: &mut Answers, input: &mut dyn BufRead, talk: &mut dyn Write) -> io::Result<bool> {
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

impl Wanted {
    const ALL: [Self; 6] =
        [Self::Kind, Self::Size, Self::Bay, Self::Cable, Self::Section, Self::Battery];

    const fn name(self) -> &'static str {
        match self {
            Self::Kind => "kind",
            Self::Size => "size",
            Self::Bay => "bay",
            Self::Cable => "cable",
            Self::Section => "section",
            Self::Battery => "battery",
        }
    }

    fn flag(self, args: &New) -> Option<&str> {
        let flag = match self {
            Self::Kind => &args.kind,
            Self::Size => &args.size,
            Self::Bay => &args.bay,
            Self::Cable => &args.cable,
            Self::Section => &args.section,
            Self::Battery => &args.battery,
        };
        flag.as_deref()
    }

    const fn example(self) -> &'static str {
        match self {
            Self::Kind => "\"upright fridge\"",
            Self::Size => "\"475 x 780 x 495 mm\"",
            Self::Bay => "\"520 x 1140 x 540 mm\"",
            Self::Cable => "\"7.2 m\"",
            Self::Section => "\"1.5 mm2\"",
            Self::Battery => "\"100 Ah\"",
        }
    }

    const fn question(self) -> &'static str {
        match self {
            Self::Kind => "What goes in?",
            Self::Size => "How big is it, as one faces it: width, height, depth?",
            Self::Bay => "How big is the bay it goes into: width, height, depth?",
            Self::Cable => "How long is its cable from the fuse block, one way?",
            Self::Section => "What section has that cable? Leave it empty if you do not know.",
            Self::Battery => "What does the house battery hold, all of it together?",
        }
    }

    fn hint(self) -> String {
        let example = self.example().trim_matches('"');
        match self {
            Self::Kind => PartKind::WORDS.join(", "),
            Self::Section => format!("such as {example} or 16 AWG"),
            Self::Size | Self::Bay => format!("such as {example}, or 18 1/2 x 30 x 19 in"),
            _ => format!("such as {example}"),
        }
    }
}

/// What was answered, each as it stands in the file.
#[derive(Debug, Clone, Default)]
struct Answers {
    kind: Option<String>,
    size: Option<[String; 3]>,
    bay: Option<[String; 3]>,
    cable: Option<String>,
    section: Option<String>,
    battery: Option<String>,
}

impl Answers {
    /// Takes an answer in if the build's own reader takes it.
    fn take(&mut self, wanted: Wanted, said: &str) -> Result<(), String> {
        let mut tried = self.clone();
        let text = || Some(said.trim().to_owned());
        match wanted {
            Wanted::Kind => tried.kind = text(),
            Wanted::Size => tried.size = Some(three(said)?),
            Wanted::Bay => tried.bay = Some(three(said)?),
            Wanted::Cable => tried.cable = text(),
            Wanted::Section => tried.section = text(),
            Wanted::Battery => tried.battery = text(),
        }
        let text = tried.with_stand_ins().text("build");
        if let Err(problems) = Folder::from_texts([("build.toml", text.as_str())]) {
            return Err(told(&problems));
        }
        *self = tried;
        Ok(())
    }

    /// With something where nothing was answered yet, so that what was can be read in its place.
    fn with_stand_ins(&self) -> Self {
        let size = || Some(["500 mm", "500 mm", "500 mm"].map(str::to_owned));
        Self {
            kind: self.kind.clone().or_else(|| Some("load".to_owned())),
            bay: self.bay.clone().or_else(size),
            ..self.clone()
        }
    }

    fn missing(&self) -> Vec<Wanted> {
        let given = |wanted: &Wanted| match wanted {
            Wanted::Kind => self.kind.is_some(),
            Wanted::Size => self.size.is_some(),
            Wanted::Bay => self.bay.is_some(),
            Wanted::Cable => self.cable.is_some() || !self.has_cable(),
            Wanted::Section => self.section.is_some() || !self.has_cable(),
            Wanted::Battery => self.battery.is_some(),
        };
        Wanted::ALL.into_iter().filter(|wanted| !given(wanted)).collect()
    }

    /// Whether the thing is fed from the fuse block by a cable of its own.
    fn has_cable(&self) -> bool {
        let kind = self.name();
        let without =
            ["battery", "furniture", "platform", "drawer", "tank", "solar-panel", "other"];
        !without.contains(&kind.as_str())
    }

    /// Whether it keeps food cold.
    fn is_cold(&self) -> bool {
        let kind = self.name();
        ["fridge", "box"].iter().any(|word| kind.ends_with(word))
    }

    /// The name of the part and its item in the file.
    fn name(&self) -> String {
        let kind = self.kind.as_deref().unwrap_or("thing").to_lowercase();
        kind.split_whitespace().collect::<Vec<_>>().join("-")
    }

    /// The file, as far as it is answered.
    fn text(&self, title: &str) -> String {
        let name = self.name();
        let mut text = format!("# {title}: a first build, to be gone on with in any editor.\n");
        text.push_str(HEAD);
        if let Some(kind) = &self.kind {
            text.push_str(&format!("{PART}[parts.{name}]\nkind = {}\n", quoted(kind)));
            push_size(&mut text, self.size.as_ref());
            text.push_str(PART_MORE);
            if self.is_cold() {
                text.push_str(PART_COLD);
            }
            if self.has_cable() {
                text.push_str(PART_FED);
            }
        }
        if let Some(bay) = &self.bay {
            text.push_str(&format!("{BAY}[bays.bay]\n"));
            push_size(&mut text, Some(bay));
            text.push_str(BAY_MORE);
        }
        if self.kind.is_some() && self.bay.is_some() {
            text.push_str(&format!("{ITEM}[items.{name}]\npart = \"{name}\"\n"));
            text.push_str("place = { in = \"bay\", on = \"floor\" }\n");
            text.push_str(ITEM_MORE);
        }
        if self.kind.is_some() && self.bay.is_some() && self.has_cable() {
            text.push_str(&format!("{RUN}[runs.{name}]\n"));
            push(&mut text, "length", self.cable.as_deref());
            push(&mut text, "section", self.section.as_deref().filter(|said| *said != UNKNOWN));
            text.push_str(RUN_MORE);
        }
        if let Some(battery) = &self.battery {
            text.push_str(&format!("{BANK}[bank]\n"));
            push(&mut text, "capacity", Some(battery));
            text.push_str(BANK_MORE);
        }
        text
    }
}

/// The problem with an answer itself, and not with the heading above it.
fn told(problems: &Problems) -> String {
    let in_heading = |problem: &&Problem| {
        problem.at.as_ref().is_some_and(|at| {
            let line = problems.files.line_column(at).line;
            let text = problems.files.file(at.file).text.lines().nth(line - 1);
            text.is_some_and(|text| text.starts_with('['))
        })
    };
    let answer = problems.list.iter().find(|problem| !in_heading(problem));
    let problem = answer.or(problems.list.first());
    problem.map_or_else(String::new, |problem| format!("{}; {}", problem.says, problem.hint))
}

/// What stands at the top of the file.
const HEAD: &str = "\
#
# A quantity is a text with its unit: \"440 mm\", \"17 5/16 in\", \"1.5 mm2\", \"6 AWG\";
# with a tolerance where you know one: \"440 mm ± 2 mm\". What is not said here is
# taken as typical, and `spile check` says what to measure next. A change that you
# plan goes into a file of its own, jobs/NAME.toml; `spile demo` writes one to look
# at. `spile schema` prints what lets your editor complete this file.
";

const PART: &str = "
# What goes in. Its papers say more: write their figures and take the # away.
";

const PART_MORE: &str = "\
# mass = \"27.5 kg\"
# air = { behind = \"30 mm\", beside = \"10 mm\" }
";

const PART_COLD: &str = "\
# volume = \"92 L\"
# insulation = \"40 mm\"
";

const PART_FED: &str = "\
# power = { volts = \"12 V\", running = \"58 W\", start = \"8.5 A\", cut_out = \"10.9 V\" }
";

const BAY: &str = "
# The space it goes into: clear width and height, and depth from the face of the
# opening to the wall behind.
";

const BAY_MORE: &str = "\
# in_front = \"600 mm\"
";

const ITEM: &str = "
# Where it stands.
";

const ITEM_MORE: &str = "\
# contents = \"25 kg\"
";

const RUN: &str = "
# Its cable from the fuse block: the length one way, and the section of the copper.
";

const RUN_MORE: &str = "\
# insulation = \"70 °C\"
# return = { by = \"body\", length = \"1.4 m\" }
";

const BANK: &str = "
# The house battery.
";

const BANK_MORE: &str = "\
# kind = \"AGM\"
# fuse = { rating = \"60 A\", family = \"strip\", from_post = \"120 mm\" }
";

fn title(folder: &Path) -> String {
    let name = folder.file_name().map(|name| name.to_string_lossy().into_owned());
    crate::show::page::clean(&name.unwrap_or_default())
}

fn push(text: &mut String, key: &str, value: Option<&str>) {
    if let Some(value) = value {
        text.push_str(&format!("{key} = {}\n", quoted(value)));
    }
}

fn push_size(text: &mut String, size: Option<&[String; 3]>) {
    if let Some([width, height, depth]) = size {
        text.push_str(&format!(
            "size = {{ width = {}, height = {}, depth = {} }}\n",
            quoted(width),
            quoted(height),
            quoted(depth)
        ));
    }
}

/// A text in the quotes of the file; JSON's are read by TOML too.
fn quoted(text: &str) -> String {
    serde_json::Value::from(text).to_string()
}

/// Three lengths with a cross between them; those without a unit have the last one's.
fn three(said: &str) -> Result<[String; 3], String> {
    let parts: Vec<&str> = said.split(['x', 'X', '×', '*']).map(str::trim).collect();
    let [width, height, depth] = parts.as_slice() else {
        let given = parts.len();
        return Err(format!("three measures are wanted, as 475 x 780 x 495 mm, not {given}"));
    };
    let unit = read::<Length>(depth).map_err(|misread| misread.to_string())?.unit.symbol();
    let with_unit = |part: &str| match read::<Length>(part) {
        Err(misread) if misread.kind == MisreadKind::NoUnit => Ok(format!("{part} {unit}")),
        Err(misread) => Err(misread.to_string()),
        Ok(_) => Ok(part.to_owned()),
    };
    Ok([with_unit(width)?, with_unit(height)?, (*depth).to_owned()])
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::*;

    const FULL: [(Wanted, &str); 6] = [
        (Wanted::Kind, "upright fridge"),
        (Wanted::Size, "475 x 780 x 495 mm"),
        (Wanted::Bay, "20 1/2 in x 44 7/8 in x 21 1/4 in"),
        (Wanted::Cable, "7.2 m ± 0.1 m"),
        (Wanted::Section, "16 AWG"),
        (Wanted::Battery, "100 Ah @ 20 h"),
    ];

    fn text(kind: &str) -> String {
        let mut answers = Answers::default();
        for (wanted, said) in FULL {
            let said = if wanted == Wanted::Kind { kind } else { said };
            answers.take(wanted, said).unwrap();
        }
        answers.text("heron")
    }

    #[test]
    fn a_first_build_of_every_kind_is_read() {
        for kind in PartKind::WORDS {
            Folder::from_texts([("build.toml", text(kind).as_str())]).unwrap();
        }
    }

    #[test]
    fn what_is_commented_out_is_read_too() {
        let text = text("upright fridge");
        let is_key = |line: &str| line.strip_prefix("# ").is_some_and(|key| key.contains(" = "));
        assert!(text.lines().filter(|line| is_key(line)).count() >= 10);
        let all: Vec<&str> =
            text.lines().map(|line| if is_key(line) { &line[2..] } else { line }).collect();
        Folder::from_texts([("build.toml", all.join("\n").as_str())]).unwrap();
    }

    #[test]
    fn a_size_is_three_lengths_of_one_unit_or_of_three() {
        assert_eq!(three("475 x 780 x 495 mm").unwrap(), ["475 mm", "780 mm", "495 mm"]);
        assert_eq!(three("18 1/2 × 30x1 ft 7 in").unwrap(), ["18 1/2 in", "30 in", "1 ft 7 in"]);
        for wrong in ["", "475 mm", "1 x 2 x 3 x 4 mm", "475 x 780 x 495", "475 kg x 780 x 495 mm"]
        {
            three(wrong).unwrap_err();
        }
    }

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
