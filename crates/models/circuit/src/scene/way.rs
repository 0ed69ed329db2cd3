//! The way of the current from the bank to an item and back, and the circuit that it makes.

use std::cell::RefCell;

use crate::fuse;
use crate::network::{Branch, Draw, Element, Network, Node, solve_as_if_running};
use spile_answer::{Handle, Ledger, Point};
use spile_build::{Return, typical};
use spile_quantity::{Current, Power, Resistance, Share, Voltage};
use spile_tables::fuse::Family;

use super::cable::{Conductor, Copper};
use super::load::{Start, from_table};
use super::run::{Fuse, OneRun};
use super::supply::{Supply, SupplyNet};

/// Rounds in which the conductors' warmth and the currents settle on each other: a kelvin more
/// adds 0.4 % of resistance, so each round brings them some thirty times nearer.
const ROUNDS: usize = 4;

/// The inputs of the whole way, each cause once, and the circuit that they are put into.
#[derive(Debug, Clone)]
pub struct Way {
    /// The inputs.
    pub ledger: Ledger,
    pub(super) supply: Supply,
    way_fuse: Handle<Resistance>,
    holder: Handle<Resistance>,
    /// The feed.
    pub feed: Conductor,
    pub(super) plug: Handle<Resistance>,
    /// The return, as far as it is the run's own.
    pub back: Conductor,
    pub(super) stud: Option<Handle<Resistance>>,
    running: Handle<Power>,
    motor: bool,
    start: Option<StartInput>,
    /// The voltage at which the item switches itself off.
    pub cut_out: Option<Handle<Voltage>>,
    nominal: Voltage,
    pub(super) circuit: Circuit,
}

#[derive(Debug, Clone, Copy)]
enum StartInput {
    Said(Handle<Current>),
    Times(Handle<Share>),
}

/// Which state the circuit is looked at in; the battery is low and cold in all of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// The item starts, nothing else runs, and no cable has warmed yet.
    Start,
    /// Everything that can run together runs, and the cables are as warm as that makes them.
    Running,
    /// A bolted fault at the item, nothing runs, and the run's copper is as hot as its insulation
    /// stands.
    Fault,
}

/// The circuit, drawn once; only its figures change from point to point.
#[derive(Debug, Clone)]
pub(super) struct Circuit {
    pub(super) net: RefCell<Network>,
    pub(super) shared: SupplyNet,
    pub(super) plug: [Node; 2],
    pub(super) feed: Branch,
    pub(super) back: Branch,
    pub(super) item: Branch,
}

/// What is found in one state at one point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Solved {
    /// Between the bank's posts.
    pub posts: Voltage,
    /// At the item's plug.
    pub item: Voltage,
    /// Through the item, or through the fault.
    pub current: Current,
    /// Out of the bank, and through the body.
    pub(super) shared: [Current; 2],
}

impl Way {
    /// The way to a run's item with a fuse in it; `None` if a cable's size is in no table.
    pub fn new(asked: &OneRun<'_>, fuse: &Fuse) -> Option<Self> {
        let OneRun { build, bank, run, load, .. } = asked;
        let mut ledger = Ledger::new();
        let by_body = matches!(run.back, Return::Body { .. });
        let supply = Supply::take(&mut ledger, build, bank, &asked.others, by_body)?;
        let circuit = Circuit::draw(&supply, by_body);
        let (back_cable, stud) = match &run.back {
            Return::Cable(cable) => (cable, None),
            Return::Body { cable, stud } => (cable, Some(stud)),
        };
        let mut way = Self {
            supply,
            way_fuse: take_fuse(&mut ledger, fuse, asked.nominal_current())?,
            holder: ledger.take("contacts of the fuse", &typical(fuse.holder())),
            feed: Conductor::own(&mut ledger, "feed", &run.feed)?,
            plug: ledger.take("plug and crimps of the feed", &run.joints),
            back: Conductor::own(&mut ledger, "return", back_cable)?,
            stud: stud.map(|stud| ledger.take("stud of the return on the body", stud)),
            running: ledger.take("power while it runs", &load.running),
            motor: load.motor,
            start: load.start.as_ref().map(|start| match start {
                Start::Said(amps) => StartInput::Said(ledger.take("current as it starts", amps)),
                Start::Times(times) => StartInput::Times(
                    ledger.take("current as it starts, over that while it runs", times),
                ),
            }),
            cut_out: load
                .cut_out
                .as_ref()
                .map(|volts| ledger.take("voltage at which it cuts out", volts)),
            nominal: asked.nominal(),
            circuit,
            ledger,
        };
        way.settle(asked);
        Some(way)
    }

    /// Lets the warmth of the cables and the currents settle on each other, at the likely point.
    /// A circuit that has no steady state leaves its cables as warm as their surroundings.
    fn settle(&mut self, asked: &OneRun<'_>) {
        let likely = self.ledger.likely();
        for _ in 0..ROUNDS {
            let Some(found) = self.solve(&likely, State::Running) else { return };
            let [feed, back] = asked.cables();
            self.feed.warm(&likely, feed, found.current);
            self.back.warm(&likely, back, found.current);
            self.supply.warm(&likely, asked.build, found.shared);
        }
    }

    /// A point with the inputs that most often matter at their worse ends: no worse than the
    /// unfavourable end, for a first look.
    pub fn bad_point(&self) -> Point {
        let mut point = self.ledger.likely();
        let high = |index: usize| self.ledger.inputs()[index].high;
        for index in self.supply.worst_inputs() {
            point.set(index, high(index));
        }
        for ohm in [Some(self.plug), Some(self.feed.per_metre), self.stud].into_iter().flatten() {
            point.set(ohm.index(), high(ohm.index()));
        }
        let open = self.supply.open.index();
        point.set(open, self.ledger.inputs()[open].low);
        point
    }

    /// Whether anything is known of its start.
    pub const fn starts(&self) -> bool {
        self.start.is_some()
    }

    /// The circuit in one state at one point of the inputs; `None` where it has no steady state.
    pub fn solve(&self, point: &Point, state: State) -> Option<Solved> {
        let copper = match state {
            State::Start => Copper::Cool,
            State::Running => Copper::Warm,
            State::Fault => Copper::Rated,
        };
        let Circuit { shared, plug: [plus, minus], feed, back, item, .. } = &self.circuit;
        let net = &mut *self.circuit.net.borrow_mut();
        self.supply.set(net, shared, point, copper, state == State::Running);
        net.set(*feed, Element::Resistor(self.feed_resistance(point, copper)));
        net.set(*back, Element::Resistor(self.own_back_resistance(point, copper)));
        let load = |draw| Element::Load { draw, cut_out: None };
        let element = match state {
            State::Start => load(Draw::Current(self.start_current(point))),
            State::Running => load(self.running(point)),
            State::Fault => Element::Resistor(Resistance::ohm(0.0)),
        };
        net.set(*item, element);
        let found = solve_as_if_running(net).ok()?;
        Some(Solved {
            posts: found.between(shared.post, net.reference()),
            item: found.between(*plus, *minus),
            current: found.current(*item),
            shared: shared.currents(&found),
        })
    }

    /// What the item takes while it runs.
    pub(super) fn running(&self, point: &Point) -> Draw {
        if self.motor {
            Draw::Current(self.at_nominal(point))
        } else {
            Draw::Power(point.at(self.running))
        }
    }

    fn at_nominal(&self, point: &Point) -> Current {
        point.at(self.running) / self.nominal
    }

    /// The current that the item takes while it runs at a voltage.
    pub fn current_at(&self, point: &Point, volts: Voltage) -> Current {
        let by = if self.motor { self.nominal } else { volts };
        point.at(self.running) / by
    }

    /// The current as the item starts.
    pub fn start_current(&self, point: &Point) -> Current {
        match self.start {
            Some(StartInput::Said(amps)) => point.at(amps),
            Some(StartInput::Times(times)) => self.at_nominal(point) * point.at(times).in_of_one(),
            None => self.at_nominal(point),
        }
    }

    /// Everything in series on the way there, from the block to the plug.
    pub fn feed_resistance(&self, point: &Point, copper: Copper) -> Resistance {
        self.fuse_resistance(point) + self.feed.resistance(point, copper) + point.at(self.plug)
    }

    /// The fuse of its way with its contacts.
    pub(super) fn fuse_resistance(&self, point: &Point) -> Resistance {
        point.at(self.way_fuse) + point.at(self.holder)
    }

    /// From the item to the negative bus, or to the body.
    pub(super) fn own_back_resistance(&self, point: &Point, copper: Copper) -> Resistance {
        let stud = self.stud.map_or(Resistance::ohm(0.0), |stud| point.at(stud));
        self.back.resistance(point, copper) + stud
    }

    /// Everything in series from the item to the negative bus, the body included.
    pub fn back_resistance(&self, point: &Point, copper: Copper) -> Resistance {
        let through = self.stud.and(self.supply.body);
        let through = through.map(|body| body.resistance(point, copper));
        self.own_back_resistance(point, copper) + through.unwrap_or(Resistance::ohm(0.0))
    }

    /// From the bank to the block, and from the bus back to the bank.
    pub fn shared_resistance(&self, point: &Point, copper: Copper) -> Resistance {
        self.supply.main_resistance(point, copper) + self.supply.tail_resistance(point, copper)
    }
}

impl Circuit {
    fn draw(supply: &Supply, by_body: bool) -> Self {
        let none = Resistance::ohm(0.0);
        let mut net = Network::new("bank -");
        let shared = supply.draw(&mut net);
        let plug = ["plug +", "plug -"].map(|name| net.node(name));
        let feed = net.resistor("feed", shared.block, plug[0], none);
        let back_to = if by_body { shared.steel } else { shared.bus };
        let back = net.resistor("return", plug[1], back_to, none);
        let item = net.load("item", plug[0], plug[1], Draw::Current(Current::a(0.0)), None);
        Self { net: RefCell::new(net), shared, plug, feed, back, item }
    }
}

/// A fuse's own resistance; one of a kind that no table has loses as much as fuses commonly do.
fn take_fuse(ledger: &mut Ledger, fuse: &Fuse, load: Current) -> Option<Handle<Resistance>> {
    let rating = fuse.rating;
    let family = fuse.family.unwrap_or(Family::Terminal);
    let entry = fuse::resistance(family, rating, load.min(rating)).ok()?;
    let given = from_table(
        entry.value,
        entry.source.title.clone(),
        "Millivolts across the fuse with the load on: divide by the amperes.",
    );
    Some(ledger.take(format!("fuse of {} A", rating.in_a()), &given))
}
