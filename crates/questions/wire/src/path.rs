//! The way of the current from the bank to an item and back, with everything it meets.

use spile_answer::{Given, Handle, Ledger, Point};
use spile_build::file::{Chemistry, FuseFamily};
use spile_build::{Bank, Build, Cable, Return, Run, typical, typical_number};
use spile_circuit::conductor::cable_resistance;
use spile_circuit::network::{Draw, Network, Node};
use spile_circuit::{conductor, fuse};
use spile_quantity::{CableSize, Current, Length, Power, Resistance, Share, Temperature, Voltage};
use spile_tables::battery;
use spile_tables::fuse::Family;

use crate::load::{Load, Start, from_table};

/// A conductor's inputs.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Conductor {
    pub(crate) per_metre: Handle<Resistance>,
    pub(crate) length: Handle<Length>,
    pub(crate) at: Handle<Temperature>,
}

/// The inputs of the whole way; each cause once, however many figures hang on it.
#[derive(Debug, Clone)]
pub(crate) struct Way {
    pub(crate) ledger: Ledger,
    open: Handle<Voltage>,
    inner: Handle<Resistance>,
    inner_low: Handle<Share>,
    bank_joints: Handle<Resistance>,
    main_fuse: Handle<Resistance>,
    block_feed: Conductor,
    block_back: Conductor,
    way_fuse: Handle<Resistance>,
    holder: Handle<Resistance>,
    pub(crate) feed: Conductor,
    plug: Handle<Resistance>,
    pub(crate) back: Conductor,
    body: Option<BodyWay>,
    pub(crate) running: Handle<Power>,
    start: Option<StartInput>,
    pub(crate) cut_out: Option<Handle<Voltage>>,
}

/// The inputs of a return through the body.
#[derive(Debug, Clone, Copy)]
struct BodyWay {
    stud: Handle<Resistance>,
    sheet: Handle<Resistance>,
    bond: Handle<Resistance>,
    bond_cable: Conductor,
}

#[derive(Debug, Clone, Copy)]
enum StartInput {
    Said(Handle<Current>),
    Times(Handle<Share>),
}

/// Which state the circuit is looked at in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum State {
    /// The item starts on a low, cold battery, nothing else runs.
    Start,
    /// Everything that can run together runs, on a low battery.
    Running,
    /// A fault at the item, on a low battery.
    LeastFault,
}

/// A constant part of the circuit that other runs hang on the same block.
#[derive(Debug, Clone)]
pub(crate) struct Others {
    pub(crate) power: Power,
    pub(crate) names: Vec<String>,
}

/// Where the item's plug is in a network.
#[derive(Debug, Clone)]
pub(crate) struct Wired {
    pub(crate) net: Network,
    pub(crate) post: Node,
    pub(crate) plug_plus: Node,
    pub(crate) plug_minus: Node,
}

/// The family of the tables that a word of the files names; strips and blades have one each.
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

/// The key of a chemistry's rows among the stand-ins.
const fn chemistry_key(kind: Chemistry) -> (&'static str, &'static str, &'static str) {
    match kind {
        Chemistry::Flooded => {
            ("battery-resistance-flooded", "battery-low-flooded", "battery-full-flooded")
        }
        Chemistry::Agm => ("battery-resistance-agm", "battery-low-agm", "battery-full-agm"),
        Chemistry::Gel => ("battery-resistance-gel", "battery-low-gel", "battery-full-gel"),
        Chemistry::Lfp => ("battery-resistance-lfp", "battery-low-lfp", "battery-full-lfp"),
    }
}

/// The bank's internal resistance, warm and full: as measured, else typical for its chemistry in
/// proportion to 100 Ah over its capacity; batteries in parallel share.
///
/// **Source** common practice: resistance falls with plate area, and so with capacity.
pub(crate) fn bank_resistance(build: &Build, bank: &Bank) -> Given<Resistance> {
    let each = bank.resistance.clone().unwrap_or_else(|| {
        let ah = bank.capacity.as_ref().map_or(100.0, |capacity| capacity.likely().in_ah());
        let series = build.system.likely().in_v() / 12.0;
        typical::<Resistance>(chemistry_key(bank.kind).0).map(|ohm| ohm * (series * 100.0 / ah))
    });
    each.map(|ohm| ohm * (1.0 / f64::from(bank.count)))
}

/// The bank's voltage at rest, full.
pub(crate) fn full_voltage(build: &Build, bank: &Bank) -> Given<Voltage> {
    let series = build.system.likely().in_v() / 12.0;
    typical::<Voltage>(chemistry_key(bank.kind).2).map(|volts| volts * series)
}

/// The bank's voltage at rest at the build's low charge: by its chemistry's curve at that charge,
/// with the spread that is typical at 20 %; by the typical value itself where no curve is known.
pub(crate) fn low_voltage(build: &Build, bank: &Bank) -> Given<Voltage> {
    let series = build.system.likely().in_v() / 12.0;
    let stand_in = typical::<Voltage>(chemistry_key(bank.kind).1);
    let chemistry = match bank.kind {
        Chemistry::Flooded => battery::Chemistry::Flooded,
        Chemistry::Agm => battery::Chemistry::Agm,
        Chemistry::Gel => battery::Chemistry::Gel,
        Chemistry::Lfp => battery::Chemistry::Lfp,
    };
    let curve = |charge: Share| {
        let points = &battery::resting_voltage(chemistry)?.value.points;
        let above = points.iter().position(|(share, _)| *share >= charge)?;
        let (low, high) = (points[above.saturating_sub(1)], points[above]);
        let width = high.0 - low.0;
        let part = if width.in_of_one() > 0.0 { (charge - low.0) / width } else { 0.0 };
        Some(low.1 + (high.1 - low.1) * part)
    };
    let charge = &build.corners.low_charge.value;
    let shifted = match (curve(charge.likely), curve(Share::percent(20.0))) {
        (Some(at), Some(at_20)) => stand_in.map(|volts| volts + (at - at_20)),
        _ => stand_in,
    };
    shifted.map(|volts| volts * series)
}

impl Way {
    /// The way to a run's item; the fuse is the one in its way, or the one that would be right.
    pub(crate) fn new(
        build: &Build,
        bank: &Bank,
        run: &Run,
        load: &Load,
        rating: Current,
    ) -> Option<Self> {
        let mut ledger = Ledger::new();
        let open = ledger.take("battery at rest, low", &low_voltage(build, bank));
        let inner = ledger.take("internal resistance of the bank", &bank_resistance(build, bank));
        let inner_low = ledger.take(
            "its resistance when low and cold, over that",
            &typical_number("battery-resistance-low-cold"),
        );
        let bank_joints = ledger.take("posts, isolator, shunt and bus bars", &build.block.joints);
        let main_fuse = ledger.take("main fuse with its holder", &bank.fuse.resistance);
        let block_feed =
            conductor(&mut ledger, "cable from the bank to the fuse block", &build.block.feed)?;
        let block_back =
            conductor(&mut ledger, "cable from the negative bus to the bank", &build.block.back)?;
        let fuse_family =
            run.way.as_ref().and_then(|way| family(way.family)).unwrap_or(Family::Blade);
        let nominal = load.running.likely().in_w() / build.system.likely().in_v();
        let shown = Current::a(nominal.min(rating.in_a()));
        let entry = fuse::resistance(fuse_family, rating, shown).ok()?;
        let way_fuse = ledger.take(
            format!("fuse of {} A", rating.in_a()),
            &from_table(
                entry.value,
                entry.source.title.clone(),
                "Millivolts across the fuse with the load on: divide by the amperes.",
            ),
        );
        let holder = ledger.take("contacts of the fuse's way", &typical("fuse-holder-blade"));
        let feed = conductor(&mut ledger, "feed", &run.feed)?;
        let plug = ledger.take("plug and crimps of the feed", &run.joints);
        let (back_cable, body) = match &run.back {
            Return::Cable(cable) => (cable, None),
            Return::Body { cable, stud } => (cable, Some(stud)),
        };
        let back = conductor(&mut ledger, "return", back_cable)?;
        let body = match body {
            Some(stud) => Some(BodyWay {
                stud: ledger.take("stud of the return on the body", stud),
                sheet: ledger.take("body between the two studs", &build.body.resistance),
                bond: ledger.take("stud that ties the body to the negative bus", &build.body.stud),
                bond_cable: conductor(
                    &mut ledger,
                    "cable from the body to the negative bus",
                    &build.body.cable,
                )?,
            }),
            None => None,
        };
        let running = ledger.take("power while it runs", &load.running);
        let start = load.start.as_ref().map(|start| match start {
            Start::Said(amps) => StartInput::Said(ledger.take("current as it starts", amps)),
            Start::Times(times) => StartInput::Times(
                ledger.take("current as it starts, over that while it runs", times),
            ),
        });
        let cut_out =
            load.cut_out.as_ref().map(|volts| ledger.take("voltage at which it cuts out", volts));
        Some(Self {
            ledger,
            open,
            inner,
            inner_low,
            bank_joints,
            main_fuse,
            block_feed,
            block_back,
            way_fuse,
            holder,
            feed,
            plug,
            back,
            body,
            running,
            start,
            cut_out,
        })
    }

    /// The point at which everything that lowers the volts at the item is at its worse end: open
    /// voltage low, every resistance, length and temperature high, power and start high.
    pub(crate) fn worst(&self) -> Point {
        let mut point = self.ledger.likely();
        for (index, input) in self.ledger.inputs().iter().enumerate() {
            let low = index == self.open.index();
            point.set(index, if low { input.low } else { input.high });
        }
        point
    }

    /// Whether anything is known of its start.
    pub(crate) const fn starts(&self) -> bool {
        self.start.is_some()
    }

    /// The current as the item starts, at nominal voltage where only its power is known.
    pub(crate) fn start_current(&self, point: &Point, nominal: Voltage) -> Current {
        match self.start {
            Some(StartInput::Said(amps)) => point.at(amps),
            Some(StartInput::Times(times)) => {
                point.at(self.running) / nominal * point.at(times).in_of_one()
            }
            None => point.at(self.running) / nominal,
        }
    }

    /// Everything in series on the way there, from the block to the plug.
    pub(crate) fn feed_resistance(&self, point: &Point) -> Resistance {
        point.at(self.way_fuse)
            + point.at(self.holder)
            + hot(&self.feed, point)
            + point.at(self.plug)
    }

    /// Everything in series from the bank's post to the block.
    pub(crate) fn block_resistance(&self, point: &Point) -> Resistance {
        point.at(self.main_fuse) + hot(&self.block_feed, point)
    }

    /// Everything in series from the item to the negative bus.
    pub(crate) fn back_resistance(&self, point: &Point) -> Resistance {
        let through_body = self.body.map_or(Resistance::ohm(0.0), |body| {
            point.at(body.stud)
                + point.at(body.sheet)
                + point.at(body.bond)
                + hot(&body.bond_cable, point)
        });
        hot(&self.back, point) + through_body
    }

    /// Everything in series from the negative bus to the bank's negative post.
    pub(crate) fn bus_resistance(&self, point: &Point) -> Resistance {
        hot(&self.block_back, point) + point.at(self.bank_joints)
    }

    /// The circuit in one state, at one point of the inputs.
    pub(crate) fn wire(
        &self,
        point: &Point,
        state: State,
        nominal: Voltage,
        others: &Others,
    ) -> Wired {
        let mut net = Network::new("bank -");
        let minus = net.reference();
        let post = net.node("bank +");
        let block = net.node("fuse block");
        let bus = net.node("negative bus");
        let plug_plus = net.node("plug +");
        let plug_minus = net.node("plug -");
        let inner = point.at(self.inner) * point.at(self.inner_low).in_of_one();
        net.battery("bank", post, minus, point.at(self.open), inner);
        net.resistor("main fuse and cable", post, block, self.block_resistance(point));
        net.resistor("feed", block, plug_plus, self.feed_resistance(point));
        if let Some(body) = self.body {
            let steel = net.node("body");
            net.resistor("return", plug_minus, steel, hot(&self.back, point) + point.at(body.stud));
            let bond = point.at(body.sheet) + point.at(body.bond) + hot(&body.bond_cable, point);
            net.resistor("body", steel, bus, bond);
        } else {
            net.resistor("return", plug_minus, bus, hot(&self.back, point));
        }
        net.resistor("bus to bank", bus, minus, self.bus_resistance(point));
        let draw = match state {
            State::Start => Draw::Current(self.start_current(point, nominal)),
            State::Running => Draw::Power(point.at(self.running)),
            State::LeastFault => Draw::Current(Current::a(0.0)),
        };
        net.load("item", plug_plus, plug_minus, draw, None);
        if state == State::Running && others.power > Power::w(0.0) {
            net.load("everything else", block, bus, Draw::Power(others.power), None);
        }
        Wired { net, post, plug_plus, plug_minus }
    }
}

/// The resistance of a conductor as warm as its surroundings.
fn hot(conductor: &Conductor, point: &Point) -> Resistance {
    let metres = point.at(conductor.length).in_m();
    let factor = conductor::copper_warming(point.at(conductor.at)).unwrap_or(1.0);
    point.at(conductor.per_metre) * (metres * factor)
}

fn conductor(ledger: &mut Ledger, name: &str, cable: &Cable) -> Option<Conductor> {
    let at_20 = Temperature::celsius(20.0);
    let metre = cable_resistance(cable.section, Length::m(1.0), at_20).ok()?;
    let given = from_table(
        metre,
        table_of(cable.section),
        "The print along the cable; without print, the diameter of its copper.",
    );
    Some(Conductor {
        per_metre: ledger.take(format!("a metre of {} at 20 °C", cable.section), &given),
        length: ledger.take(format!("length of the {name}"), &cable.length),
        at: ledger.take(format!("temperature of the {name}"), &cable.ambient),
    })
}

/// Where the resistance of a size is published.
pub(crate) fn table_of(size: CableSize) -> String {
    match size {
        CableSize::Metric(_) => "copper of 0.017241 Ω·mm²/m (IEC 60028); at most IEC 60228 class 5",
        CableSize::Awg(_) => "ASTM B258 with a stranding lay of 2 %; NEC chapter 9 table 8",
        CableSize::Sae(_) => "SAE areas of a marine cable catalogue, with a stranding lay of 2 %",
        CableSize::Outside(_) => "common practice: 4 to 10 mm² in 6 mm of outside diameter",
    }
    .to_owned()
}
