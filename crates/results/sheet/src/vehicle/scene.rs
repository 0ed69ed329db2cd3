//! What stands in the vehicle, and what of it the job changes.

use crate::drawing::Numbered;
use spile_build::{Build, Hindrance};
use spile_fit::{Placed, Sort, placed};

use super::From;
use super::shell::Shell;
use crate::ink::{Line, figure};

/// What the job does to a thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Change {
    Stays,
    /// It is taken out, or moved from here.
    Gone,
    /// It is brought in, or moved to here.
    Comes,
}

impl Change {
    pub(super) const fn word(self) -> &'static str {
        match self {
            Self::Stays => "",
            Self::Gone => "goes out",
            Self::Comes => "goes in",
        }
    }
}

/// A thing as it is drawn.
#[derive(Debug, Clone)]
pub(super) struct Thing {
    pub(super) placed: Placed,
    /// Its place in the build: `items.upright`.
    pub(super) key: String,
    pub(super) change: Change,
    /// Its number, of what changes first.
    pub(super) number: usize,
}

/// Everything that has a place.
#[derive(Debug)]
pub(super) struct Scene {
    pub(super) things: Vec<Thing>,
}

impl Scene {
    pub(super) fn of(before: &Build, after: Option<&Build>) -> Self {
        let old = placed(before);
        let mut things: Vec<Thing> = Vec::new();
        let mut put = |placed: &Placed, change| {
            let key = format!("{}.{}", table_of(placed.sort), placed.name);
            things.push(Thing { placed: placed.clone(), key, change, number: 0 });
        };
        let Some(after) = after else {
            old.iter().for_each(|placed| put(placed, Change::Stays));
            return Self { things }.numbered();
        };
        let new = placed(after);
        let same =
            |a: &Placed, b: &Placed| table_of(a.sort) == table_of(b.sort) && a.name == b.name;
        for placed in &new {
            let was = old.iter().find(|old| same(old, placed));
            let stays = was.is_some_and(|was| was.block == placed.block);
            put(placed, if stays { Change::Stays } else { Change::Comes });
        }
        for placed in &old {
            let is = new.iter().find(|new| same(new, placed));
            if is.is_none_or(|is| is.block != placed.block) {
                put(placed, Change::Gone);
            }
        }
        Self { things }.numbered()
    }

    /// What changes has the first numbers, the rest those after them.
    fn numbered(mut self) -> Self {
        let mut next = 1;
        for change in [Change::Comes, Change::Gone, Change::Stays] {
            let of_it =
                |thing: &&mut Thing| thing.change == change && thing.placed.sort == Sort::Item;
            for thing in self.things.iter_mut().filter(of_it) {
                thing.number = next;
                next += 1;
            }
        }
        self
    }

    /// The numbers on the balls of what changes.
    pub(super) fn numbers(&self) -> Vec<Numbered> {
        let changes =
            |thing: &&Thing| thing.change != Change::Stays && thing.placed.sort == Sort::Item;
        let numbered = |thing: &Thing| Numbered {
            number: thing.number,
            item: thing.placed.name.clone(),
            comes: thing.change == Change::Comes,
        };
        self.things.iter().filter(changes).map(numbered).collect()
    }

    /// Things of a sort, the farthest first.
    pub(super) fn sorted(&self, from: From, sort: impl Fn(&Placed) -> bool) -> Vec<&Thing> {
        let mut things: Vec<&Thing> =
            self.things.iter().filter(|thing| sort(&thing.placed)).collect();
        things.sort_by(|a, b| from.near(&a.placed).total_cmp(&from.near(&b.placed)));
        things
    }

    /// How far things reach along an axis \[mm\].
    pub(super) fn reach(&self, axis: usize) -> Option<[f64; 2]> {
        let ends = self.things.iter().map(|thing| {
            let block = &thing.placed.block;
            [block.low[axis].in_mm(), block.high[axis].in_mm()]
        });
        ends.reduce(|all, one| [all[0].min(one[0]), all[1].max(one[1])])
    }

    /// What changes, in words.
    pub(super) fn says(&self) -> String {
        let list = |change| {
            let of_it = self.things.iter().filter(|thing| thing.change == change);
            of_it.map(Thing::words).collect::<Vec<_>>().join("; ")
        };
        let words = [("Goes in", list(Change::Comes)), ("Goes out", list(Change::Gone))];
        let said = words.into_iter().filter(|(_, list)| !list.is_empty());
        said.map(|(word, list)| format!("{word}: {list}.")).collect::<Vec<_>>().join(" ")
    }

    /// What the drawing cannot show, and what of it is only a likeness.
    pub(super) fn notes(&self, build: &Build, shell: &Shell) -> Vec<String> {
        let mut notes = shell.notes();
        let has = |name: &String| {
            self.things
                .iter()
                .any(|thing| thing.placed.sort == Sort::Item && thing.placed.name == *name)
        };
        let missing: Vec<&str> =
            build.items.keys().filter(|name| !has(name)).map(String::as_str).collect();
        if !missing.is_empty() {
            notes.push(format!(
                "Not drawn, since place or size is not said: {}.",
                missing.join(", ")
            ));
        }
        let bays: Vec<&str> = build
            .bays
            .keys()
            .filter(|name| {
                !self
                    .things
                    .iter()
                    .any(|thing| thing.placed.sort == Sort::Bay && thing.placed.name == **name)
            })
            .map(String::as_str)
            .collect();
        if !bays.is_empty() {
            notes.push(format!(
                "Not drawn, since where it is along the vehicle is not said: {}.",
                bays.join(", ")
            ));
        }
        for (name, door) in &build.vehicle.doors {
            notes.push(format!(
                "Door {name}, {} × {} mm: where along its side it is, is not said.",
                figure(door.width.likely().in_mm()),
                figure(door.height.likely().in_mm())
            ));
        }
        notes
    }
}

impl Thing {
    /// What it is called: its line, else its name.
    pub(super) fn words(&self) -> String {
        if self.placed.what.is_empty() {
            self.placed.name.clone()
        } else {
            self.placed.what.clone()
        }
    }

    /// What a pointer is told.
    pub(super) fn title(&self) -> String {
        let block = &self.placed.block;
        let size: Vec<String> =
            (0..3).map(|axis| figure((block.high[axis] - block.low[axis]).in_mm())).collect();
        let change = match self.change {
            Change::Stays => String::new(),
            change => format!(", {}", change.word()),
        };
        format!("{}{change}: {} mm along, across and up", self.words(), size.join(" × "))
    }

    /// The number on its ball, where it may have one.
    pub(super) fn shown_number(&self) -> Option<usize> {
        (self.placed.sort == Sort::Item).then_some(self.number)
    }

    pub(super) fn is_kept_out(&self) -> bool {
        self.placed.sort == Sort::Fixed(Hindrance::KeepOut)
    }

    pub(super) fn volume(&self) -> f64 {
        let block = &self.placed.block;
        (0..3).map(|axis| (block.high[axis] - block.low[axis]).in_mm()).product()
    }

    pub(super) const fn line(&self) -> Line {
        match self.change {
            Change::Stays => Line::Solid,
            Change::Gone => Line::Gone,
            Change::Comes => Line::AddedBody,
        }
    }
}

const fn table_of(sort: Sort) -> &'static str {
    match sort {
        Sort::Bay => "bays",
        Sort::Item => "items",
        Sort::Fixed(Hindrance::Obstacle) | Sort::Opposite => "obstacles",
        Sort::Fixed(Hindrance::Frame { .. }) => "frame",
        Sort::Fixed(Hindrance::KeepOut) => "keep_out",
    }
}
