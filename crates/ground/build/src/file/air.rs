//! The air of a bay: its openings, its fan; and what parts turn into heat.

use spile_quantity::{Area, Flow, Length, Power, Pressure, Share};

use super::Q;
use crate::read::{Said, record, words};

words! {
    /// What covers an opening for air.
    pub enum Cover ("a cover of an opening") {
        /// Nothing.
        Open = "nothing" | "none" | "open",
        /// Mesh against insects.
        Mesh = "mesh" | "fly screen",
        /// Slats.
        Louvre = "louvre" | "louver" | "grille",
    }
}

words! {
    /// What an opening for air leads to.
    pub enum LeadsTo ("a place that an opening leads to") {
        /// The cabin.
        Cabin = "cabin" | "inside",
        /// The outdoors.
        Outdoors = "outdoors" | "outside",
        /// A space without a way out.
        Void = "closed void" | "void",
    }
}

words! {
    /// Which of two openings.
    pub enum Which ("an opening") {
        /// The one that lets cool air in.
        Inlet = "inlet",
        /// The one that lets warm air out.
        Outlet = "outlet",
    }
}

words! {
    /// Which way a fan blows.
    pub enum Blows ("a way to blow") {
        /// Into the bay.
        In = "in",
        /// Out of the bay.
        Out = "out",
    }
}

record! {
    /// How air goes through a bay.
    pub struct BayAirFile ("the air of a bay") {
        /// The opening that lets cool air in.
        inlet: Option<Said<VentFile>>,
        /// The opening that lets warm air out.
        outlet: Option<Said<VentFile>>,
        /// The way round from one opening to the other, outside the bay; beside each other, warm air
        /// is drawn in again.
        apart: Q<Length>,
        /// Its fan.
        fan: Option<Said<FanFile>>,
    }
}

record! {
    /// An opening for air.
    pub struct VentFile ("an opening for air") {
        /// Free area: width times height, less what bars and mesh cover. `0 cm2` where there is none.
        area: Q<Area>,
        /// Height of its middle above the bay's floor.
        above: Q<Length>,
        /// What covers it: `nothing`, `mesh` or `louvre`.
        cover: Option<Said<Cover>>,
        /// Where it leads: `cabin`, `outdoors` or `closed void`.
        leads_to: Option<Said<LeadsTo>>,
    }
}

record! {
    /// A fan that moves the air of a bay.
    pub struct FanFile ("a fan of a bay") {
        /// The flow that its papers give, without anything in its way.
        flow: Q<Flow>,
        /// The pressure that its papers give at no flow.
        pressure: Q<Pressure>,
        /// The opening it stands at: `inlet` or `outlet`.
        at: Option<Said<Which>>,
        /// Which way it blows: `in` or `out`.
        blows: Option<Said<Blows>>,
    }
}

record! {
    /// What a part turns into heat.
    pub struct HeatFile ("a part's heat") {
        /// What comes out of it for what goes in: `88 %`.
        efficiency: Q<Share>,
        /// What it takes while it is on and nothing is asked of it.
        idle: Q<Power>,
    }
}
