//! A first build: a small commented `build.toml`, made of six answers.
//!
//! What is asked for is what the eight questions need first: what goes in, how big it is, the bay
//! it goes into, its cable, and the battery. Everything else is a stand-in until somebody says
//! more, and the file shows as comments what more there is to say.

use crate::file::PartKind;
use crate::folder::Folder;
use crate::problem::{Problem, Problems};
use spile_quantity::{Length, MisreadKind, read};

/// What is said where the section of a cable is not known.
pub const UNKNOWN: &str = "unknown";

/// What is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wanted {
    /// What goes in.
    Kind,
    /// How big it is.
    Size,
    /// How big the bay is.
    Bay,
    /// How long its cable is.
    Cable,
    /// The section of the cable.
    Section,
    /// What the battery holds.
    Battery,
}

impl Wanted {
    /// All, in the order they are asked for.
    pub const ALL: [Self; 6] =
        [Self::Kind, Self::Size, Self::Bay, Self::Cable, Self::Section, Self::Battery];

    /// The word it goes by: a flag, a field.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Kind => "kind",
            Self::Size => "size",
            Self::Bay => "bay",
            Self::Cable => "cable",
            Self::Section => "section",
            Self::Battery => "battery",
        }
    }

    /// An answer to it: `475 x 780 x 495 mm`.
    pub const fn example(self) -> &'static str {
        match self {
            Self::Kind => "upright fridge",
            Self::Size => "475 x 780 x 495 mm",
            Self::Bay => "520 x 1140 x 540 mm",
            Self::Cable => "7.2 m",
            Self::Section => "1.5 mm2",
            Self::Battery => "100 Ah",
        }
    }

    /// The question.
    pub const fn question(self) -> &'static str {
        match self {
            Self::Kind => "What goes in?",
            Self::Size => "How big is it, as one faces it: width, height, depth?",
            Self::Bay => "How big is the bay it goes into: width, height, depth?",
            Self::Cable => "How long is its cable from the fuse block, one way?",
            Self::Section => "What section has that cable? Leave it empty if you do not know.",
            Self::Battery => "What does the house battery hold, all of it together?",
        }
    }

    /// What can be answered.
    pub fn hint(self) -> String {
        let example = self.example();
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
pub struct First {
    kind: Option<String>,
    size: Option<[String; 3]>,
    bay: Option<[String; 3]>,
    cable: Option<String>,
    section: Option<String>,
    battery: Option<String>,
}

impl First {
    /// Takes an answer in if the build's own reader takes it.
    ///
    /// # Errors
    /// What is wrong with it and how to mend it, in words.
    pub fn take(&mut self, wanted: Wanted, said: &str) -> Result<(), String> {
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

    /// What is still to be answered; a cable is not asked for where the thing has none.
    pub fn missing(&self) -> Vec<Wanted> {
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
    pub fn has_cable(&self) -> bool {
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
    pub fn text(&self, title: &str) -> String {
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
        let mut answers = First::default();
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
}
