//! One run with what hangs on it, and the fuse in its way.

use spile_build::file::FuseFamily;
use spile_build::{Bank, Build, Cable, Return, Run};
use spile_quantity::{Current, Voltage};
use spile_tables::fuse::Family;

use super::cable::likely_carried;
use super::load::{Load, load};
use super::supply::{BOND, Others};
use crate::fuse::{least_rating, next_up};

/// One run of a build, with what hangs on it.
#[derive(Debug, Clone)]
pub struct OneRun<'b> {
    /// The build it is part of.
    pub build: &'b Build,
    /// The bank that feeds it.
    pub bank: &'b Bank,
    /// Its name.
    pub name: &'b str,
    /// The run itself.
    pub run: &'b Run,
    /// What the item is called in a sentence.
    pub item: &'b str,
    /// What hangs on it.
    pub load: Load,
    /// What else hangs on the block.
    pub others: Others,
}

/// The fuse of a run: the one in its way, or the one that would be right.
#[derive(Debug, Clone, PartialEq)]
pub struct Fuse {
    /// Its rated current.
    pub rating: Current,
    /// `None` of a kind that no table has.
    pub family: Option<Family>,
    /// The word of the files for its kind.
    pub kind: FuseFamily,
    /// Whether it was said, and is not the one that would be right.
    pub said: bool,
}

/// Kinds of fuses to choose from where none is said, in the order of their sizes.
const KINDS: [FuseFamily; 4] =
    [FuseFamily::Blade, FuseFamily::MaxiBlade, FuseFamily::Strip, FuseFamily::ClassT];

/// The family of the tables that a word of the files names.
pub const fn family(word: FuseFamily) -> Option<Family> {
    Some(match word {
        FuseFamily::Blade => Family::Blade,
        FuseFamily::MiniBlade => Family::BladeMini,
        FuseFamily::MaxiBlade => Family::BladeHigh,
        FuseFamily::SmallStrip => Family::Strip30,
        FuseFamily::Strip => Family::Strip51,
        FuseFamily::ClassT => Family::ClassT,
        FuseFamily::Other => return None,
    })
}

impl Fuse {
    /// `10 A blade fuse`.
    pub fn words(&self) -> String {
        let kind = if self.family.is_some() { self.kind.word() } else { "" };
        format!("{} A {kind} fuse", self.rating.in_a()).replace("  ", " ")
    }

    /// The stand-in for what holds it: spring contacts of a blade, bolts of all else.
    pub const fn holder(&self) -> &'static str {
        match self.kind {
            FuseFamily::Blade | FuseFamily::MiniBlade | FuseFamily::MaxiBlade => {
                "fuse-holder-blade"
            }
            _ => "fuse-holder-main",
        }
    }
}

impl<'b> OneRun<'b> {
    /// A run of a build; `None` if it goes to nothing, or nothing is known of its load.
    pub fn of(build: &'b Build, bank: &'b Bank, name: &'b str, run: &'b Run) -> Option<Self> {
        let item = build.items.get(&run.to)?;
        let load = load(build, item)?;
        let others = Others::of(build, name);
        let item = item.about.split(',').next().unwrap_or(&item.about);
        Some(Self { build, bank, name, run, item, load, others })
    }

    /// The nominal voltage of the circuit.
    pub fn nominal(&self) -> Voltage {
        self.build.system.likely()
    }

    /// The current while it runs, at the nominal voltage of the circuit.
    pub fn nominal_current(&self) -> Current {
        self.load.running.likely() / self.nominal()
    }

    /// The fuse in its way; where none is said, the least that is made and carries the load at the
    /// nominal voltage.
    pub fn fuse(&self) -> Option<Fuse> {
        let said = self.run.way.as_ref().and_then(|way| Some((way.fuse.as_ref()?, way.family)));
        said.map_or_else(
            || self.suited(self.nominal_current()),
            |(rating, kind)| {
                let rating = rating.likely();
                Some(Fuse { rating, family: family(kind), kind, said: true })
            },
        )
    }

    /// The least fuse that carries a load for hours as practice has it, of the kind that its way
    /// takes where one is made so large, else of the next larger kind.
    pub fn suited(&self, load: Current) -> Option<Fuse> {
        let block = self.build.block.ambient.likely();
        let least = least_rating(load, block).ok()?.value;
        let of_way = self.run.way.as_ref().map(|way| way.family);
        of_way.into_iter().chain(KINDS).find_map(|kind| {
            let rating = next_up(family(kind)?, least)?.value.current;
            Some(Fuse { rating, family: family(kind), kind, said: false })
        })
    }

    /// Feed and return, as far as they are the run's own.
    pub fn cables(&self) -> [&'b Cable; 2] {
        let (Return::Cable(back) | Return::Body { cable: back, .. }) = &self.run.back;
        [&self.run.feed, back]
    }

    /// Every cable that the fuse has to guard, by name: through the body, the one that ties it to
    /// the bus too.
    pub fn guarded(&self) -> Vec<(&'static str, &'b Cable)> {
        let [feed, back] = self.cables();
        let mut guarded = vec![("feed", feed), ("return", back)];
        if matches!(self.run.back, Return::Body { .. }) {
            guarded.push((BOND, &self.build.body.cable));
        }
        guarded
    }

    /// The name of something of this run: `fridge.start`.
    pub fn id(&self, what: &str) -> String {
        format!("{}.{what}", self.name)
    }
}

/// The one of some cables that carries least, at the likely values; one that no table has before
/// all others.
pub fn weakest<'b>(
    cables: impl IntoIterator<Item = (&'static str, &'b Cable)>,
) -> Option<(&'static str, &'b Cable)> {
    let carries =
        |cable: &Cable| likely_carried(cable).map_or(0.0, |carried| carried.current.in_a());
    cables.into_iter().min_by(|(_, a), (_, b)| carries(a).total_cmp(&carries(b)))
}
