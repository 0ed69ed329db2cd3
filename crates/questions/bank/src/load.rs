//! What everything takes in a day, by hour.

use spile_answer::{Handle, Ledger};
use spile_build::file::PartKind;
use spile_build::{Build, typical};
use spile_heat::HeatError;
use spile_heat::scene::{BayIs, Cold, STOCK, Scene, Values, Weather, compressors};
use spile_quantity::{Power, Temperature, Time, Voltage};

/// When in the day a thing is used: from this hour to that, round midnight where the first is
/// greater. **Source** common practice, no source.
type Window = (usize, usize);

/// A thing that runs some hours a day.
pub(crate) struct Load {
    pub(crate) name: String,
    pub(crate) power: Handle<Power>,
    pub(crate) hours: Handle<Time>,
    window: Window,
    /// Whether it runs only on days that are cold outside.
    pub(crate) when_cold: bool,
}

/// Everything that takes a current.
pub(crate) struct Loads<'b> {
    pub(crate) each: Vec<Load>,
    pub(crate) fridges: Option<Scene<'b>>,
    /// Cold boxes that cannot be computed.
    pub(crate) cold_left_out: Vec<String>,
    /// Things that take a current, nobody says how much.
    pub(crate) without_power: Vec<String>,
    pub(crate) heats_below: Handle<Temperature>,
    /// Nominal voltage of the house circuit.
    pub(crate) system: Voltage,
}

impl<'b> Loads<'b> {
    /// All of a build, with the ledger of their inputs.
    pub(crate) fn new(build: &'b Build) -> (Self, Ledger) {
        let boxes: Vec<Cold<'_>> = compressors(build).filter(Cold::is_computable).collect();
        let fridges = (!boxes.is_empty()).then(|| Scene::new(build, boxes, false)).flatten();
        let computed = |name: &str| {
            fridges.iter().flat_map(|scene| &scene.boxes).any(|cold| cold.name == name)
        };
        let cooled = build.items.iter().filter(|(_, item)| item.part.cooling.is_some());
        let cold_left_out =
            cooled.map(|(name, _)| name).filter(|name| !computed(name)).cloned().collect();
        let mut own = fridges.as_ref().map_or_else(Ledger::new, |scene| scene.ledger.clone());
        let ledger = &mut own;
        let (mut each, mut without_power) = (Vec::new(), Vec::new());
        for (name, item) in &build.items {
            if item.part.cooling.is_some() {
                continue;
            }
            let Some((key, window)) = pattern(item.part.kind) else {
                if item.part.power.running.is_some() && !gives(item.part.kind) {
                    each.extend(load(build, ledger, name, "load", (8, 22)));
                }
                continue;
            };
            match load(build, ledger, name, key, window) {
                Some(load) => each.push(load),
                None => without_power.push(name.clone()),
            }
            if item.part.kind == PartKind::Inverter {
                let idle = item.part.heat.idle.as_ref().unwrap_or(&STOCK.inverter_idle);
                each.push(Load {
                    name: format!("{name} with nothing plugged in"),
                    power: ledger.take(format!("idle power of {name}"), idle),
                    hours: ledger.take(
                        format!("{name} switched on, a day"),
                        &item.on.clone().unwrap_or_else(|| typical("use-inverter-on")),
                    ),
                    window: (8, 22),
                    when_cold: false,
                });
            }
        }
        let heats_below =
            ledger.take("mean outside below which one heats", &typical("heats-below"));
        let system = build.system.likely();
        (Self { each, fridges, cold_left_out, without_power, heats_below, system }, own)
    }

    /// Whether there is nothing that takes a current.
    pub(crate) fn is_empty(&self) -> bool {
        self.each.is_empty() && self.fridges.is_none()
    }

    /// Ampere-hours of a day in a cabin of that warmth.
    pub(crate) fn day_ah(
        &self,
        values: &impl Values,
        cabin: Temperature,
        cold: bool,
    ) -> Result<f64, HeatError> {
        let mut energy_wh: f64 = self
            .each
            .iter()
            .filter(|load| cold || !load.when_cold)
            .map(|load| load.wh(values))
            .sum();
        energy_wh += self.fridges_w(values, cabin)?.iter().sum::<f64>() * 24.0;
        Ok(energy_wh / self.system.in_v())
    }

    /// Mean watts of each fridge in a cabin of that warmth.
    pub(crate) fn fridges_w(
        &self,
        values: &impl Values,
        cabin: Temperature,
    ) -> Result<Vec<f64>, HeatError> {
        let Some(scene) = &self.fridges else { return Ok(Vec::new()) };
        let days = scene.days(values, Weather::Cabin(cabin), BayIs::Balanced)?;
        Ok(days.iter().map(|day| day.power.in_w()).collect())
    }

    /// Amperes of each hour of a day, the fridges left out.
    pub(crate) fn amperes_by_hour(&self, values: &impl Values, cold: bool) -> [f64; 24] {
        let mut hours = [0.0; 24];
        for load in self.each.iter().filter(|load| cold || !load.when_cold) {
            let (from, to) = load.window;
            let span = (to + 24 - from) % 24;
            let span = if span == 0 { 24 } else { span };
            let spread = load.wh(values) / self.system.in_v() / span as f64;
            for at in from..from + span {
                hours[at % 24] += spread;
            }
        }
        hours
    }
}

impl Load {
    /// What it takes in a day \[W·h\].
    pub(crate) fn wh(&self, values: &impl Values) -> f64 {
        values.at(self.power).in_w() * values.at(self.hours).in_hours().min(24.0)
    }
}

/// The stand-in of its hours and when it is used; `None` of what takes no current by its kind.
fn pattern(kind: PartKind) -> Option<(&'static str, Window)> {
    Some(match kind {
        PartKind::Light => ("light", (18, 23)),
        PartKind::Pump => ("pump", (7, 22)),
        PartKind::RoofFan => ("fan", (10, 22)),
        PartKind::Heater => ("heater", (18, 8)),
        PartKind::Hob => ("hob", (18, 20)),
        PartKind::Inverter => ("inverter", (8, 22)),
        PartKind::Load => ("load", (8, 22)),
        _ => return None,
    })
}

/// Whether a thing of that kind gives a current rather than takes one.
fn gives(kind: PartKind) -> bool {
    matches!(kind, PartKind::Battery | PartKind::Charger | PartKind::SolarPanel)
}

fn load(build: &Build, ledger: &mut Ledger, name: &str, key: &str, window: Window) -> Option<Load> {
    let item = &build.items[name];
    let power = item.part.power.running.as_ref()?;
    let hours = item.hours.clone().unwrap_or_else(|| typical(&format!("use-{key}")));
    Some(Load {
        name: name.to_owned(),
        power: ledger.take(format!("power of {name} while it runs"), power),
        hours: ledger.take(format!("{name}, hours a day"), &hours),
        window,
        when_cold: key == "heater",
    })
}
