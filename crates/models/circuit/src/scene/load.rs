//! What an item takes from the house circuit.

use spile_answer::{Basis, Given};
use spile_build::file::PartKind;
use spile_build::{Build, Item, typical, typical_number};
use spile_quantity::{Current, Power, Quantity, Ranged, Share, Voltage};
use spile_tables::conductor::Service;

/// What an item takes.
#[derive(Debug, Clone)]
pub struct Load {
    /// While it runs.
    pub running: Given<Power>,
    /// Whether it takes its current at any voltage, as a motor does, and not its power.
    pub motor: bool,
    /// As it starts; `None` of a thing of which nothing is known that starts harder than it runs.
    pub start: Option<Start>,
    /// The voltage below which it switches itself off.
    pub cut_out: Option<Given<Voltage>>,
    /// The greatest fuse its papers allow.
    pub fuse: Option<Given<Current>>,
    /// How much hangs on its voltage.
    pub service: Service,
}

/// The current as it starts.
#[derive(Debug, Clone)]
pub enum Start {
    /// From its papers.
    Said(Given<Current>),
    /// So many times the running current.
    Times(Given<Share>),
}

/// What an item takes, or nothing where its papers do not say and nothing typical is known.
///
/// What has a converter in it (a fridge, an inverter, lamps) takes its power at any voltage; the
/// plain motor of a pump or a fan takes its current.
///
/// **Source** common practice, no source.
pub fn load(build: &Build, item: &Item) -> Option<Load> {
    let power = &item.part.power;
    let kind = item.part.kind;
    let running = power.running.clone().or_else(|| fridge_power(item))?;
    let start = match &power.start {
        Some(said) => Some(Start::Said(said.clone())),
        None if is_cold(kind) => Some(Start::Times(typical_number("fridge-start"))),
        None => None,
    };
    let cut_out = power.cut_out.clone().or_else(|| typical_cut_out(build, kind));
    let critical =
        is_cold(kind) || matches!(kind, PartKind::Heater | PartKind::Inverter | PartKind::Charger);
    Some(Load {
        running,
        motor: matches!(kind, PartKind::Pump | PartKind::RoofFan),
        start,
        cut_out,
        fuse: power.fuse.clone(),
        service: if critical { Service::Critical } else { Service::Other },
    })
}

const fn is_cold(kind: PartKind) -> bool {
    matches!(kind, PartKind::UprightFridge | PartKind::LiddedBox | PartKind::DrawerFridge)
}

/// Compressor boxes for 12 V and 24 V have a typical cut-out; nothing is known of others.
fn typical_cut_out(build: &Build, kind: PartKind) -> Option<Given<Voltage>> {
    let volts = build.system.likely().in_v();
    match volts {
        _ if !is_cold(kind) => None,
        10.0..18.0 => Some(typical("cut-out-12v")),
        18.0..30.0 => Some(typical("cut-out-24v")),
        _ => None,
    }
}

/// The typical power of a fridge of that size, while it runs.
///
/// Where the nominal volume is not said, half of the outside volume stands in for it.
fn fridge_power(item: &Item) -> Option<Given<Power>> {
    if !is_cold(item.part.kind) {
        return None;
    }
    let outside = item.part.size.as_ref().map(|size| {
        let volume = size.width.likely() * size.height.likely() * size.depth.likely();
        volume * 0.5
    });
    let litres = item.part.volume.as_ref().map(Given::likely).or(outside)?.in_litres();
    Some(typical(match litres {
        ..=50.0 => "fridge-power-small",
        ..=100.0 => "fridge-power-medium",
        _ => "fridge-power-large",
    }))
}

/// A number that a published table or formula gives.
pub fn from_table<Q: Quantity>(value: Ranged<Q>, source: String, how: &'static str) -> Given<Q> {
    Given { value, basis: Basis::Table, source: source.into(), how: how.into() }
}
