//! What a meter showed along a run, as the questions see it.

use spile_answer::Given;
use spile_quantity::{Current, Share, Temperature, Time, Voltage};

use crate::file::{Behaviour, ItemState};

/// One round with the meter along a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// The run that it was taken on.
    pub run: String,
    /// When.
    pub date: Option<String>,
    /// What the item did.
    pub state: ItemState,
    /// Whether everything else was on too.
    pub others_on: bool,
    /// How the item behaves over minutes and hours.
    pub behaves: Option<Behaviour>,
    /// How long it had been on.
    pub on_for: Option<Given<Time>>,
    /// Volts between the battery's posts.
    pub battery: Option<Given<Voltage>>,
    /// Volts at the fuse block, against the negative bus.
    pub block: Option<Given<Voltage>>,
    /// Volts at the plug, its feed against its return.
    pub appliance: Option<Given<Voltage>>,
    /// From the battery's positive post to the fuse block.
    pub main_drop: Option<Given<Voltage>>,
    /// Across the fuse in its way.
    pub fuse_drop: Option<Given<Voltage>>,
    /// From the fuse block to the plug's feed.
    pub feed_drop: Option<Given<Voltage>>,
    /// From the plug's return to the negative bus.
    pub return_drop: Option<Given<Voltage>>,
    /// From the negative bus to the battery's negative post.
    pub negative_drop: Option<Given<Voltage>>,
    /// Clamp meter round the feed.
    pub current: Option<Given<Current>>,
    /// What the battery monitor shows.
    pub monitor: Option<Given<Current>>,
    /// Of the hottest joint along the way.
    pub joint: Option<Given<Temperature>>,
    /// Air in the bay.
    pub bay: Option<Given<Temperature>>,
    /// What the meter is off by.
    pub meter: Meter,
}

/// What a meter is off by.
#[derive(Debug, Clone, PartialEq)]
pub struct Meter {
    /// Of volts.
    pub volts: Given<Share>,
    /// Of the clamp.
    pub clamp: Given<Share>,
    /// What the clamp shows with nothing in it.
    pub zero: Given<Current>,
}
