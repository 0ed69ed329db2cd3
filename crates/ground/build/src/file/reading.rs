//! What a meter showed, where and in which state.

use spile_quantity::{Current, Share, Temperature, Time, Voltage};

use super::{Q, Text};
use crate::date::Day;
use crate::read::{Said, record, words};

words! {
    /// What the item did while the readings were taken.
    pub enum ItemState ("a state of the item") {
        /// It was off, or got nothing.
        Off = "off" | "idle",
        /// It started.
        Starting = "starting" | "at start",
        /// It ran.
        Running = "running" | "on",
    }
}

words! {
    /// How the item behaves over minutes and hours.
    pub enum Behaviour ("a way to behave") {
        /// It runs and rests as it should.
        Steady = "steady" | "cycles",
        /// It starts and stops each minute.
        StopsEachMinute = "stops each minute",
        /// It runs without pause, and gets no colder.
        NeverStops = "never stops",
        /// It runs without pause, and gets colder.
        StillFalling = "still falling",
    }
}

record! {
    /// One round with the meter along a run. Each reading may be missing.
    pub struct ReadingFile ("a reading") {
        /// The run that it was taken on; without it, the run of the reading's own name.
        run: Text,
        /// When, as 2026-03-14.
        date: Option<Said<Day>>,
        /// What the item did: `off`, `starting` or `running`; without it, `running`.
        state: Option<Said<ItemState>>,
        /// Whether everything else was on too; without it, only this item was.
        others_on: Option<Said<bool>>,
        /// How it behaves: `steady`, `stops each minute`, `never stops` or `still falling`.
        behaves: Option<Said<Behaviour>>,
        /// How long it had been on.
        on_for: Q<Time>,
        /// Volts between the battery's posts.
        battery: Q<Voltage>,
        /// Volts at the fuse block, against the negative bus.
        block: Q<Voltage>,
        /// Volts at the appliance's plug, its feed against its return.
        appliance: Q<Voltage>,
        /// Millivolts from the battery's positive post to the fuse block.
        main_drop: Q<Voltage>,
        /// Millivolts across the fuse in its way.
        fuse_drop: Q<Voltage>,
        /// Millivolts from the fuse block to the plug's feed.
        feed_drop: Q<Voltage>,
        /// Millivolts from the plug's return to the negative bus.
        return_drop: Q<Voltage>,
        /// Millivolts from the negative bus to the battery's negative post.
        negative_drop: Q<Voltage>,
        /// Clamp meter round the feed.
        current: Q<Current>,
        /// Current that the battery monitor shows.
        monitor: Q<Current>,
        /// Temperature of the hottest joint along the way.
        joint: Q<Temperature>,
        /// Air in the bay, beside the appliance.
        bay: Q<Temperature>,
        /// What the meter is known to be off by.
        meter: Option<Said<MeterFile>>,
    }
}

record! {
    /// What a meter is known to be off by.
    pub struct MeterFile ("a meter") {
        /// Of volts: `0.5 %`.
        volts: Q<Share>,
        /// Of the clamp: `2 %`.
        clamp: Q<Share>,
        /// What the clamp shows with nothing in it: `0.5 A`.
        zero: Q<Current>,
    }
}
