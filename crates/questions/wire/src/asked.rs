//! One run with what hangs on it, and everything that is found of it.

use spile_answer::{Finding, Given, Point, Swing, Worse, swing};
use spile_build::file::FuseFamily;
use spile_build::{Bank, Build, Cable, Return, Run};
use spile_circuit::fuse::{least_rating, next_up};
use spile_quantity::{Current, Ranged, Voltage};
use spile_tables::fuse::Family;

use crate::conductor::likely_carried;
use crate::fault::Clearing;
use crate::load::Load;
use crate::supply::{BOND, Others};
use crate::way::{State, Way};
use crate::{cable, drop, fault, fuse, start, unsaid};

/// One run of a build, with what hangs on it.
#[derive(Debug, Clone)]
pub(crate) struct Asked<'b> {
    pub(crate) build: &'b Build,
    pub(crate) bank: &'b Bank,
    pub(crate) name: &'b str,
    pub(crate) run: &'b Run,
    /// What the item is called in a sentence.
    pub(crate) item: &'b str,
    pub(crate) load: Load,
    pub(crate) others: Others,
}

/// The fuse of a run: the one in its way, or the one that would be right.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Fuse {
    pub(crate) rating: Current,
    /// `None` of a kind that no table has.
    pub(crate) family: Option<Family>,
    pub(crate) kind: FuseFamily,
    pub(crate) said: bool,
}

/// What is seen of a run over the ranges of its inputs.
#[derive(Debug, Clone)]
pub(crate) struct Seen {
    /// Volts at the item as it starts, the spread of its cut-out counted in.
    pub(crate) start: Swing,
    /// Volts at the item while everything runs, the same.
    pub(crate) running: Swing,
    /// Lost while everything runs, in percent of the nominal voltage.
    pub(crate) drop: Swing,
    /// Amperes of the item while everything runs.
    pub(crate) load: Swing,
    /// Time in which the fuse opens, in percent of what the conductors stand.
    pub(crate) fault: Swing,
}

/// Kinds of fuses to choose from where none is said, in the order of their sizes.
const KINDS: [FuseFamily; 4] =
    [FuseFamily::Blade, FuseFamily::MaxiBlade, FuseFamily::Strip, FuseFamily::ClassT];

/// The family of the tables that a word of the files names.
pub(crate) const fn family(word: FuseFamily) -> Option<Family> {
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
    pub(crate) fn words(&self) -> String {
        let kind = if self.family.is_some() { self.kind.word() } else { "" };
        format!("{} A {kind} fuse", self.rating.in_a()).replace("  ", " ")
    }

    /// The stand-in for what holds it: spring contacts of a blade, bolts of all else.
    pub(crate) const fn holder(&self) -> &'static str {
        match self.kind {
            FuseFamily::Blade | FuseFamily::MiniBlade | FuseFamily::MaxiBlade => {
                "fuse-holder-blade"
            }
            _ => "fuse-holder-main",
        }
    }
}

impl<'b> Asked<'b> {
    pub(crate) fn nominal(&self) -> Voltage {
        self.build.system.likely()
    }

    /// The current while it runs, at the nominal voltage of the circuit.
    pub(crate) fn nominal_current(&self) -> Current {
        self.load.running.likely() / self.nominal()
    }

    /// The fuse in its way; where none is said, the least that is made and carries the load at the
    /// nominal voltage.
    pub(crate) fn fuse(&self) -> Option<Fuse> {
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
    pub(crate) fn suited(&self, load: Current) -> Option<Fuse> {
        let block = self.build.block.ambient.likely();
        let least = least_rating(load, block).ok()?.value;
        let of_way = self.run.way.as_ref().map(|way| way.family);
        of_way.into_iter().chain(KINDS).find_map(|kind| {
            let rating = next_up(family(kind)?, least)?.value.current;
            Some(Fuse { rating, family: family(kind), kind, said: false })
        })
    }

    /// Feed and return, as far as they are the run's own.
    pub(crate) fn cables(&self) -> [&'b Cable; 2] {
        let (Return::Cable(back) | Return::Body { cable: back, .. }) = &self.run.back;
        [&self.run.feed, back]
    }

    /// Every cable that the fuse has to guard, by name: through the body, the one that ties it to
    /// the bus too.
    pub(crate) fn guarded(&self) -> Vec<(&'static str, &'b Cable)> {
        let [feed, back] = self.cables();
        let mut guarded = vec![("feed", feed), ("return", back)];
        if matches!(self.run.back, Return::Body { .. }) {
            guarded.push((BOND, &self.build.body.cable));
        }
        guarded
    }

    pub(crate) fn id(&self, what: &str) -> String {
        format!("{}.{what}", self.name)
    }
}

/// The one of some cables that carries least, at the likely values; one that no table has before
/// all others.
pub(crate) fn weakest<'b>(
    cables: impl IntoIterator<Item = (&'static str, &'b Cable)>,
) -> Option<(&'static str, &'b Cable)> {
    let carries =
        |cable: &Cable| likely_carried(cable).map_or(0.0, |carried| carried.current.in_a());
    cables.into_iter().min_by(|(_, a), (_, b)| carries(a).total_cmp(&carries(b)))
}

/// Everything found of one run.
pub(crate) fn findings(asked: &Asked<'_>) -> Vec<Finding> {
    let Some(fuse) = asked.fuse() else {
        return vec![unsaid::no_fuse_made(asked)];
    };
    let Some(way) = Way::new(asked, &fuse) else {
        return vec![unsaid::unreadable(asked)];
    };
    let clearing = Clearing::of(asked, &fuse);
    let seen = look(asked, &way, clearing.as_ref());
    let load = load_given(asked, &seen);
    let mut found = Vec::new();
    found.extend(start::start(asked, &way, &seen));
    found.extend(start::running(asked, &way, &seen));
    found.push(drop::drop(asked, &way, &seen));
    found.extend(cable::cable(asked, &load));
    found.extend(cable::section(asked));
    found.extend(fuse::findings(asked, &fuse, &load));
    found.push(fault::fault(asked, &way, &seen, clearing.as_ref(), &fuse));
    found
}

/// Looks at every figure of the circuit at once, over the ranges of its inputs.
fn look(asked: &Asked<'_>, way: &Way, clearing: Option<&Clearing>) -> Seen {
    let nominal = asked.nominal();
    let cut_out = asked.load.cut_out.as_ref().map(Given::likely);
    let over_cut_out = |point: &Point| match (way.cut_out, cut_out) {
        (Some(volts), Some(likely)) => (point.at(volts) - likely).in_v(),
        _ => 0.0,
    };
    let figures = |point: &Point| {
        let start_v = match cut_out {
            Some(_) if way.starts() => way
                .solve(point, State::Start)
                .map_or(f64::NEG_INFINITY, |found| found.item.in_v() - over_cut_out(point)),
            _ => 0.0,
        };
        let fault = clearing.map_or(0.0, |clearing| {
            let fault = way.solve(point, State::Fault);
            fault.map_or(f64::INFINITY, |fault| clearing.share_percent(fault.current))
        });
        let Some(running) = way.solve(point, State::Running) else {
            return [start_v, f64::NEG_INFINITY, f64::INFINITY, f64::INFINITY, fault];
        };
        let most =
            way.cut_out.map_or(f64::INFINITY, |volts| way.current_at(point, point.at(volts)));
        [
            start_v,
            running.item.in_v() - over_cut_out(point),
            100.0 * ((running.posts - running.item) / nominal),
            running.current.in_a().min(most),
            fault,
        ]
    };
    let worse = [Worse::Lower, Worse::Lower, Worse::Higher, Worse::Higher, Worse::Higher];
    let [start, running, drop, load, fault] = swing(&way.ledger, worse, figures);
    Seen { start, running, drop, load, fault }
}

/// The load as an input of what is found of cable and fuse. Where the circuit has no steady state
/// there is no current to tell, and that at the nominal voltage counts.
fn load_given(asked: &Asked<'_>, seen: &Seen) -> Given<Current> {
    let nominal = asked.nominal_current();
    let finite = |current_a: f64| current_a.is_finite().then_some(Current::a(current_a));
    let likely = finite(seen.load.likely).unwrap_or(nominal);
    let high = finite(seen.load.unfavourable).unwrap_or(likely).max(likely);
    Given {
        value: Ranged { low: likely, likely, high },
        basis: asked.load.running.basis,
        source: "by the circuit, everything on, on a low battery".into(),
        how: "Clamp the meter round the feed while it runs on a low battery.".into(),
    }
}
