//! What a meter shows along the way to an item, healthy or with one fault in it.

use spile_answer::Point;
use spile_quantity::{Current, Resistance, Voltage};

use super::cable::Copper;
use super::way::Way;
use crate::network::{Draw, Element, solve_as_if_running};

/// A stretch of the way in which a joint can be bad.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stretch {
    /// From the bank's post to the fuse block: main fuse, isolator, cable.
    Main,
    /// The fuse in its way, with its contacts.
    Fuse,
    /// From the fuse to the plug: cable, crimps, plug.
    Feed,
    /// From the plug to the negative bus or to the body: cable, crimps, stud.
    Back,
    /// From the body at that stud to the negative bus.
    Body,
    /// From the negative bus to the bank's post: shunt, bus bars, cable.
    Tail,
}

/// What the item does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Does {
    /// It is off, or gets nothing.
    Nothing,
    /// It starts.
    Starts,
    /// It runs.
    Runs,
    /// It takes a known current.
    Draws(Current),
}

/// The state in which a meter is put to a way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stand {
    /// Between the bank's posts.
    pub posts: Voltage,
    /// What the item does.
    pub does: Does,
    /// Whether everything else is on too.
    pub others_on: bool,
    /// What one stretch has more than it should; of an open one, [`OPEN`].
    pub bad: Option<(Stretch, Resistance)>,
    /// The resistance of the run's own cables, over what it should be.
    pub cables: f64,
}

/// What a meter shows; drops count in the direction of the current.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Metered {
    /// From the fuse block to the negative bus.
    pub block: Voltage,
    /// At the plug, its feed against its return.
    pub plug: Voltage,
    /// From the bank's post to the fuse block.
    pub main_drop: Voltage,
    /// Across the fuse in its way.
    pub fuse_drop: Voltage,
    /// From the fuse block to the plug.
    pub feed_drop: Voltage,
    /// From the plug to the negative bus.
    pub back_drop: Voltage,
    /// From the negative bus to the bank's post.
    pub tail_drop: Voltage,
    /// Through the feed.
    pub current: Current,
}

/// A blown fuse, a joint that has come apart.
pub const OPEN: Resistance = Resistance::ohm(9e6);

/// An item that is off: its electronics, and the meter for volts itself.
///
/// **Source** common practice, no source.
const OFF: Resistance = Resistance::ohm(2e3);

impl Way {
    /// What a meter shows along the way in one state, at one point of the inputs; `None` where the
    /// circuit has no steady state.
    ///
    /// The posts hold the voltage that was read there, so the bank's own inputs do not matter.
    pub fn metered(&self, point: &Point, stand: &Stand) -> Option<Metered> {
        let copper = match stand.does {
            Does::Runs | Does::Draws(_) => Copper::Warm,
            Does::Nothing | Does::Starts => Copper::Cool,
        };
        let more = |at: Stretch| match stand.bad {
            Some((stretch, ohm)) if stretch == at => ohm,
            _ => Resistance::ohm(0.0),
        };
        let drawn = &self.circuit;
        let net = &mut *drawn.net.borrow_mut();
        let shared = &drawn.shared;
        self.supply.set(net, shared, point, copper, stand.others_on);
        let held = Element::Battery { open: stand.posts, inner: Resistance::ohm(0.0) };
        net.set(shared.bank, held);
        let main = self.supply.main_resistance(point, copper) + more(Stretch::Main);
        net.set(shared.main, Element::Resistor(main));
        let tail = self.supply.tail_resistance(point, copper) + more(Stretch::Tail);
        net.set(shared.tail, Element::Resistor(tail));
        if let (Some(body), Some(branch)) = (&self.supply.body, shared.body) {
            let body = body.resistance(point, copper) + more(Stretch::Body);
            net.set(branch, Element::Resistor(body));
        }
        let fuse = self.fuse_resistance(point) + more(Stretch::Fuse);
        let cable = self.feed.resistance(point, copper) * (stand.cables - 1.0);
        let feed =
            self.feed_resistance(point, copper) + cable + more(Stretch::Fuse) + more(Stretch::Feed);
        net.set(drawn.feed, Element::Resistor(feed));
        let cable = self.back.resistance(point, copper) * (stand.cables - 1.0);
        let back = self.own_back_resistance(point, copper) + cable + more(Stretch::Back);
        net.set(drawn.back, Element::Resistor(back));
        let load = |draw| Element::Load { draw, cut_out: None };
        let item = match stand.does {
            Does::Nothing => Element::Resistor(OFF),
            Does::Starts => load(Draw::Current(self.start_current(point))),
            Does::Runs => load(self.running(point)),
            Does::Draws(current) => load(Draw::Current(current)),
        };
        net.set(drawn.item, item);
        let found = solve_as_if_running(net).ok()?;
        let [plus, minus] = drawn.plug;
        let current = found.current(drawn.item);
        Some(Metered {
            block: found.between(shared.block, shared.bus),
            plug: found.between(plus, minus),
            main_drop: found.between(shared.post, shared.block),
            fuse_drop: Voltage::v(current.in_a() * fuse.in_ohm()),
            feed_drop: found.between(shared.block, plus),
            back_drop: found.between(minus, shared.bus),
            tail_drop: found.between(shared.bus, net.reference()),
            current,
        })
    }
}
