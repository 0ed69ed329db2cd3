//! The places where a meter is put, in the order in which they are read.

use spile_answer::Unit;
use spile_build::{Meter, Reading, typical};
use spile_circuit::scene::Metered;
use spile_quantity::Voltage;

/// A place where a meter is put.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spot {
    /// The battery's posts.
    Battery,
    /// The fuse block's bus, against the negative bus.
    Block,
    /// The plug, its feed against its return.
    Appliance,
    /// The feed, in the clamp.
    Current,
    /// From the block's bus to the plug's feed.
    FeedDrop,
    /// From the plug's return to the negative bus.
    ReturnDrop,
    /// From the positive post to the block's bus.
    MainDrop,
    /// From the negative bus to the negative post.
    NegativeDrop,
    /// Across the fuse in its way.
    FuseDrop,
}

/// All of them, in the order in which they are read.
pub(crate) const ALL: [Spot; 9] = [
    Spot::Battery,
    Spot::Block,
    Spot::Appliance,
    Spot::Current,
    Spot::FeedDrop,
    Spot::ReturnDrop,
    Spot::MainDrop,
    Spot::NegativeDrop,
    Spot::FuseDrop,
];

impl Spot {
    /// Its key in the files.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Battery => "battery",
            Self::Block => "block",
            Self::Appliance => "appliance",
            Self::Current => "current",
            Self::FeedDrop => "feed_drop",
            Self::ReturnDrop => "return_drop",
            Self::MainDrop => "main_drop",
            Self::NegativeDrop => "negative_drop",
            Self::FuseDrop => "fuse_drop",
        }
    }

    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Battery => "volts at the posts",
            Self::Block => "volts at the fuse block",
            Self::Appliance => "volts at the plug",
            Self::Current => "current in the feed",
            Self::FeedDrop => "lost on the feed",
            Self::ReturnDrop => "lost on the return",
            Self::MainDrop => "lost, post to block",
            Self::NegativeDrop => "lost, bus to post",
            Self::FuseDrop => "lost across the fuse",
        }
    }

    /// How it is taken.
    pub const fn how(self) -> &'static str {
        match self {
            Self::Battery => "Direct volts, probes on the battery's posts themselves.",
            Self::Block => "Direct volts, the block's bus against the negative bus.",
            Self::Appliance => {
                "Direct volts in the plug, its feed against its return, with the load on."
            }
            Self::Current => {
                "Clamp for direct current, zeroed, round the feed alone; the arrow points to the load."
            }
            Self::FeedDrop => {
                "Millivolts from the block's bus to the plug's feed, with the load on; a long lead on one probe."
            }
            Self::ReturnDrop => {
                "Millivolts from the plug's return to the negative bus, with the load on."
            }
            Self::MainDrop => {
                "Millivolts from the positive post to the block's bus, with the load on."
            }
            Self::NegativeDrop => {
                "Millivolts from the negative bus to the negative post, with the load on."
            }
            Self::FuseDrop => {
                "Millivolts across the fuse in its way, on its two test points, with the load on."
            }
        }
    }

    /// The unit that it is shown in.
    pub(crate) const fn unit(self) -> Unit {
        match self {
            Self::Battery | Self::Block | Self::Appliance => Unit::Volt,
            Self::Current => Unit::Ampere,
            _ => Unit::Millivolt,
        }
    }

    /// What a figure in SI is in that unit.
    pub(crate) fn shown(self, si: f64) -> f64 {
        if self.unit() == Unit::Millivolt { 1000.0 * si } else { si }
    }

    /// The last digit that counts there, in SI.
    pub(crate) const fn digit(self) -> f64 {
        match self.unit() {
            Unit::Ampere => 0.1,
            Unit::Millivolt => 0.001,
            _ => 0.01,
        }
    }

    /// What a meter shows there, in SI.
    pub(crate) fn of(self, posts: Voltage, metered: &Metered) -> f64 {
        match self {
            Self::Battery => posts.in_v(),
            Self::Block => metered.block.in_v(),
            Self::Appliance => metered.plug.in_v(),
            Self::Current => metered.current.in_a(),
            Self::FeedDrop => metered.feed_drop.in_v(),
            Self::ReturnDrop => metered.back_drop.in_v(),
            Self::MainDrop => metered.main_drop.in_v(),
            Self::NegativeDrop => metered.tail_drop.in_v(),
            Self::FuseDrop => metered.fuse_drop.in_v(),
        }
    }

    /// What was read there, in SI.
    pub(crate) fn read(self, taken: &Reading) -> Option<f64> {
        let volts = match self {
            Self::Battery => &taken.battery,
            Self::Block => &taken.block,
            Self::Appliance => &taken.appliance,
            Self::FeedDrop => &taken.feed_drop,
            Self::ReturnDrop => &taken.return_drop,
            Self::MainDrop => &taken.main_drop,
            Self::NegativeDrop => &taken.negative_drop,
            Self::FuseDrop => &taken.fuse_drop,
            Self::Current => return taken.current.as_ref().map(|read| read.likely().in_a()),
        };
        volts.as_ref().map(|read| read.likely().in_v())
    }

    /// By how much a meter may be off there, in SI.
    pub(crate) fn error(self, meter: &Meter, value: f64) -> f64 {
        let digit = |key| typical::<Voltage>(key).likely().in_v();
        let volts = meter.volts.likely().in_of_one() * value.abs();
        match self.unit() {
            Unit::Ampere => {
                meter.clamp.likely().in_of_one() * value.abs() + meter.zero.likely().in_a()
            }
            Unit::Millivolt => volts + digit("meter-millivolts-digit"),
            _ => volts + digit("meter-volts-digit"),
        }
    }
}
