//! What every run shares: the bank, its fuse and cables, the body as a return, and whatever else
//! hangs on the fuse block.

use crate::network::{Branch, Draw, Element, Network, Node};
use spile_answer::{Basis, Given, Handle, Ledger, Point};
use spile_build::{Bank, Build, Return, typical_number};
use spile_quantity::{Current, Power, Quantity, Ranged, Resistance, Share, Voltage};

use super::bank::{bank_resistance, low_voltage};
use super::cable::{Conductor, Copper};
use super::load::load;

/// What hangs on the fuse block besides one run, by how it takes its current and by which way that
/// returns; each run's own loss counts with its load as none.
#[derive(Debug, Clone, Default)]
pub struct Others {
    /// The names of their runs.
    pub names: Vec<String>,
    powers: [Option<Given<Power>>; 2],
    currents: [Option<Given<Current>>; 2],
}

/// The place of the returns through the body in [`Others`]; the other are those by cable.
const BY_BODY: usize = 1;

impl Others {
    /// Everything but the run of that name; an empty name leaves none out.
    pub fn of(build: &Build, but: &str) -> Self {
        let mut others = Self::default();
        for (name, run) in &build.runs {
            let Some(item) = build.items.get(&run.to) else { continue };
            let (true, Some(load)) = (name != but, load(build, item)) else { continue };
            let by = usize::from(matches!(run.back, Return::Body { .. }));
            if load.motor {
                let nominal = build.system.likely();
                add(&mut others.currents[by], &load.running.map(|power| power / nominal));
            } else {
                add(&mut others.powers[by], &load.running);
            }
            others.names.push(name.clone());
        }
        others
    }

    /// What they take together at the nominal voltage, and what of it returns through the body.
    pub fn nominal(&self, volts: Voltage) -> [Current; 2] {
        let by = |by: usize| {
            let power = self.powers[by].as_ref().map(|power| power.likely() / volts);
            let current = self.currents[by].as_ref().map(Given::likely);
            power.into_iter().chain(current).fold(Current::a(0.0), |sum, more| sum + more)
        };
        [by(0) + by(BY_BODY), by(BY_BODY)]
    }

    /// Whether any of it returns through the body.
    pub const fn by_body(&self) -> bool {
        self.powers[BY_BODY].is_some() || self.currents[BY_BODY].is_some()
    }
}

/// Adds one load to those before it; the sum is known as badly as the worst of them.
fn add<Q: Quantity>(sum: &mut Option<Given<Q>>, more: &Given<Q>) {
    let (known, basis) = match &sum {
        Some(known) => (known.value, known.basis.max(more.basis)),
        None => (Ranged::exactly(Q::from_si(0.0)), Basis::Measured),
    };
    let plus = |a: Q, b: Q| Q::from_si(a.si() + b.si());
    let value = Ranged {
        low: plus(known.low, more.value.low),
        likely: plus(known.likely, more.value.likely),
        high: plus(known.high, more.value.high),
    };
    *sum = Some(Given {
        value,
        basis,
        source: "the other runs together".into(),
        how: "Clamp the meter round the cable to the fuse block with all of them on.".into(),
    });
}

/// The inputs of what every run shares.
#[derive(Debug, Clone)]
pub struct Supply {
    /// The voltage of the bank without load.
    pub open: Handle<Voltage>,
    inner: Handle<Resistance>,
    inner_low: Handle<Share>,
    pub(super) joints: Handle<Resistance>,
    pub(super) main_fuse: Handle<Resistance>,
    pub(super) feed: Conductor,
    pub(super) back: Conductor,
    /// The way through the body, where anything returns by it.
    pub body: Option<BodyWay>,
    powers: [Option<Handle<Power>>; 2],
    currents: [Option<Handle<Current>>; 2],
}

/// The inputs of a return through the body, from one stud to the negative bus.
#[derive(Debug, Clone, Copy)]
pub struct BodyWay {
    pub(super) sheet: Handle<Resistance>,
    pub(super) stud: Handle<Resistance>,
    pub(super) cable: Conductor,
}

/// The shared part of a circuit.
#[derive(Debug, Clone)]
pub struct SupplyNet {
    /// The bank's positive post.
    pub post: Node,
    /// The fuse block.
    pub block: Node,
    /// The negative bus.
    pub bus: Node,
    /// The body at the stud; the bus, where nothing returns through the body.
    pub steel: Node,
    pub(super) bank: Branch,
    pub(super) main: Branch,
    pub(super) body: Option<Branch>,
    pub(super) tail: Branch,
    others: Vec<(Branch, Taken)>,
}

#[derive(Debug, Clone, Copy)]
enum Taken {
    Power(Handle<Power>),
    Current(Handle<Current>),
}

impl Supply {
    /// Takes the shared inputs in; `None` if a cable's size is in no table.
    pub fn take(
        ledger: &mut Ledger,
        build: &Build,
        bank: &Bank,
        others: &Others,
        by_body: bool,
    ) -> Option<Self> {
        let block = &build.block;
        let body = if by_body || others.by_body() {
            let of = &build.body;
            Some(BodyWay {
                sheet: ledger.take("body between the two studs", &of.resistance),
                stud: ledger.take("stud that ties the body to the negative bus", &of.stud),
                cable: Conductor::shared(ledger, BOND, &of.cable)?,
            })
        } else {
            None
        };
        Some(Self {
            open: ledger.take("battery at rest, low", &low_voltage(build, bank)),
            inner: ledger.take("internal resistance of the bank", &bank_resistance(build, bank)),
            inner_low: ledger.take(
                "its resistance when low and cold, over that",
                &typical_number("battery-resistance-low-cold"),
            ),
            joints: ledger.take("posts, isolator, shunt and bus bars", &block.joints),
            main_fuse: ledger.take("main fuse with its holder", &bank.fuse.resistance),
            feed: Conductor::shared(ledger, MAIN, &block.feed)?,
            back: Conductor::shared(ledger, MAIN_BACK, &block.back)?,
            body,
            powers: [0, 1].map(|by| {
                let power = others.powers[by].as_ref()?;
                Some(ledger.take(OTHERS[by], power))
            }),
            currents: [0, 1].map(|by| {
                let current = others.currents[by].as_ref()?;
                Some(ledger.take(MOTORS[by], current))
            }),
        })
    }

    /// The shared resistances that most often matter.
    pub fn worst_inputs(&self) -> impl Iterator<Item = usize> {
        let stud = self.body.map(|body| body.stud.index());
        stud.into_iter().chain([self.inner_low.index()])
    }

    /// Draws the shared part into an empty circuit.
    pub fn draw(&self, net: &mut Network) -> SupplyNet {
        let none = Resistance::ohm(0.0);
        let minus = net.reference();
        let [post, block, bus] =
            ["bank +", "fuse block", "negative bus"].map(|name| net.node(name));
        let bank = net.battery("bank", post, minus, Voltage::v(0.0), none);
        let main = net.resistor("main fuse and cable", post, block, none);
        let steel = if self.body.is_some() { net.node("body") } else { bus };
        let body = self.body.map(|_| net.resistor("body", steel, bus, none));
        let tail = net.resistor("bus to bank", bus, minus, none);
        let mut others = Vec::new();
        for (by, back) in [bus, steel].into_iter().enumerate() {
            let power = self.powers[by].map(Taken::Power);
            let current = self.currents[by].map(Taken::Current);
            for taken in [power, current].into_iter().flatten() {
                let name = "everything else";
                let idle = Draw::Current(Current::a(0.0));
                others.push((net.load(name, block, back, idle, None), taken));
            }
        }
        SupplyNet { post, block, bus, steel, bank, main, body, tail, others }
    }

    /// Puts the shared inputs of one point into the circuit.
    pub fn set(
        &self,
        net: &mut Network,
        drawn: &SupplyNet,
        point: &Point,
        copper: Copper,
        others_on: bool,
    ) {
        let inner = point.at(self.inner) * point.at(self.inner_low).in_of_one();
        net.set(drawn.bank, Element::Battery { open: point.at(self.open), inner });
        let main = self.main_resistance(point, copper);
        net.set(drawn.main, Element::Resistor(main));
        if let (Some(body), Some(branch)) = (&self.body, drawn.body) {
            net.set(branch, Element::Resistor(body.resistance(point, copper)));
        }
        net.set(drawn.tail, Element::Resistor(self.tail_resistance(point, copper)));
        for (branch, taken) in &drawn.others {
            let draw = match taken {
                _ if !others_on => Draw::Current(Current::a(0.0)),
                Taken::Power(power) => Draw::Power(point.at(*power)),
                Taken::Current(current) => Draw::Current(point.at(*current)),
            };
            net.set(*branch, Element::Load { draw, cut_out: None });
        }
    }

    /// From the bank's post to the block.
    pub fn main_resistance(&self, point: &Point, copper: Copper) -> Resistance {
        point.at(self.main_fuse) + self.feed.resistance(point, copper)
    }

    /// From the negative bus to the bank's negative post.
    pub fn tail_resistance(&self, point: &Point, copper: Copper) -> Resistance {
        self.back.resistance(point, copper) + point.at(self.joints)
    }

    /// Settles how much the currents of a solved circuit warm the shared cables.
    pub fn warm(&mut self, likely: &Point, build: &Build, currents: [Current; 2]) {
        let [bank, body_current] = currents;
        self.feed.warm(likely, &build.block.feed, bank);
        self.back.warm(likely, &build.block.back, bank);
        if let Some(body) = &mut self.body {
            body.cable.warm(likely, &build.body.cable, body_current);
        }
    }
}

impl BodyWay {
    /// From the body at the run's stud to the negative bus.
    pub fn resistance(&self, point: &Point, copper: Copper) -> Resistance {
        point.at(self.sheet) + point.at(self.stud) + self.cable.resistance(point, copper)
    }
}

impl SupplyNet {
    /// The current out of the bank, and that through the body.
    pub fn currents(&self, found: &crate::network::Solution) -> [Current; 2] {
        let through_body = self.body.map_or(Current::a(0.0), |branch| found.current(branch));
        [found.current(self.bank), through_body]
    }
}

/// The name of the cable to the block, in ledgers and sentences.
pub const MAIN: &str = "cable from the bank to the fuse block";
/// The name of the cable from the bus.
pub const MAIN_BACK: &str = "cable from the negative bus to the bank";
/// The name of the cable that ties the body to the bus.
pub const BOND: &str = "cable from the body to the negative bus";
const OTHERS: [&str; 2] =
    ["power of the other runs", "power of the other runs that return through the body"];
const MOTORS: [&str; 2] =
    ["current of the other motors", "current of the other motors that return through the body"];
