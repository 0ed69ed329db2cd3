//! The whole circuit with everything on: every run with its own losses, all at once.

use spile_answer::Ledger;
use spile_build::{Build, Return};
use spile_quantity::{Current, Resistance, Voltage};

use super::cable::Copper;
use super::run::OneRun;
use super::supply::{Others, Supply};
use super::way::Way;
use crate::network::{Branch, Network, Node, Solution, solve_as_if_running};

/// Rounds in which the shared cables' warmth and the currents settle on each other, as for one run.
const ROUNDS: usize = 4;

/// Volts against the bank's negative post and amperes, every input at its likely value, on a low
/// and cold battery.
#[derive(Debug, Clone, PartialEq)]
pub struct EverythingOn {
    /// The bank's positive post.
    pub post: Voltage,
    /// The fuse block.
    pub block: Voltage,
    /// The negative bus.
    pub bus: Voltage,
    /// The body at the studs of the runs; `None` where none returns through it.
    pub body: Option<Voltage>,
    /// Out of the bank.
    pub current: Current,
    /// The runs that can be computed, by name.
    pub runs: Vec<RunOn>,
}

/// One run while everything is on.
#[derive(Debug, Clone, PartialEq)]
pub struct RunOn {
    /// Its name.
    pub name: String,
    /// Behind the fuse of its way.
    pub fused: Voltage,
    /// At the feed and at the return of the item.
    pub item: [Voltage; 2],
    /// Through the item.
    pub current: Current,
}

/// The branches and nodes of one run in the whole circuit.
struct Drawn<'b> {
    name: &'b str,
    fused: Node,
    item: [Node; 2],
    load: Branch,
}

/// The circuit of a build with everything on: each run's feed and return as [`Way`] has them, drawn
/// together.
///
/// `None` without a bank or a run, where a shared cable's size is in no table, and where the
/// circuit has no steady state.
pub fn everything_on(build: &Build) -> Option<EverythingOn> {
    let bank = build.bank.as_ref()?;
    let ways: Vec<(OneRun<'_>, Way)> = build
        .runs
        .iter()
        .filter_map(|(name, run)| {
            let one = OneRun::of(build, bank, name, run)?;
            let way = Way::new(&one, &one.fuse()?)?;
            Some((one, way))
        })
        .collect();
    if ways.is_empty() {
        return None;
    }
    let by_body = ways.iter().any(|(one, _)| matches!(one.run.back, Return::Body { .. }));
    let mut ledger = Ledger::new();
    let mut supply = Supply::take(&mut ledger, build, bank, &Others::default(), by_body)?;
    let likely = ledger.likely();
    let mut net = Network::new("bank -");
    let shared = supply.draw(&mut net);
    let drawn: Vec<Drawn<'_>> = ways
        .iter()
        .map(|(one, way)| {
            let back = match one.run.back {
                Return::Body { .. } => shared.steel,
                Return::Cable(_) => shared.bus,
            };
            draw(&mut net, one.name, way, shared.block, back)
        })
        .collect();
    let mut found = None;
    for _ in 0..ROUNDS {
        supply.set(&mut net, &shared, &likely, Copper::Warm, true);
        let solved = solve_as_if_running(&net).ok()?;
        supply.warm(&likely, build, shared.currents(&solved));
        found = Some(solved);
    }
    let found = found?;
    Some(EverythingOn {
        post: found.voltage(shared.post),
        block: found.voltage(shared.block),
        bus: found.voltage(shared.bus),
        body: by_body.then(|| found.voltage(shared.steel)),
        current: shared.currents(&found)[0],
        runs: drawn.iter().map(|run| run.on(&found)).collect(),
    })
}

fn draw<'b>(net: &mut Network, name: &'b str, way: &Way, block: Node, back: Node) -> Drawn<'b> {
    let point = way.ledger.likely();
    let [fused, plus, minus] =
        ["fuse", "feed", "return"].map(|what| net.node(&format!("{what} of the run {name}")));
    let fuse = way.fuse_resistance(&point);
    let rest = way.feed_resistance(&point, Copper::Warm).in_ohm() - fuse.in_ohm();
    net.resistor("fuse", block, fused, fuse);
    net.resistor("feed", fused, plus, Resistance::ohm(rest));
    net.resistor("return", minus, back, way.own_back_resistance(&point, Copper::Warm));
    let load = net.load(name, plus, minus, way.running(&point), None);
    Drawn { name, fused, item: [plus, minus], load }
}

impl Drawn<'_> {
    fn on(&self, found: &Solution) -> RunOn {
        RunOn {
            name: self.name.to_owned(),
            fused: found.voltage(self.fused),
            item: self.item.map(|node| found.voltage(node)),
            current: found.current(self.load),
        }
    }
}
