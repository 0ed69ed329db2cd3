//! A bay of a build: what leads heat out of it, and what else is warm in it.

use spile_answer::{Basis, Given, Handle, Ledger};
use spile_build::file::{Blows, LeadsTo, PartKind, Which};
use spile_build::{Bay, Build, Fan as BuildFan, Vent};
use spile_quantity::{
    Area, Conductance, Current, Flow, Length, Power, Pressure, Resistance, Share, Temperature, Time,
};

use super::{STOCK, Values, compressors};
use crate::error::HeatError;
use crate::fan::Fan;
use crate::losses;
use crate::openings::{Opening, Through, carried, effective_area, settles};
use crate::place::Standing;

/// Air for which a flow that was said carries its heat.
pub const WARM_AIR: Temperature = Temperature::celsius(35.0);

/// The inputs of a bay.
#[derive(Debug, Clone)]
pub struct BayInputs {
    /// What leads heat out.
    pub heats: Heats,
    /// What is warm in it besides cold boxes.
    pub machines: Vec<MachineInputs>,
}

/// What leads heat out of a bay.
#[derive(Debug, Clone, Copy)]
pub enum Heats {
    /// As measured, all of it.
    Measured(Handle<Conductance>),
    /// Furniture, the vehicle's skin, and air.
    Assumed {
        /// Through furniture.
        to_cabin: Handle<Conductance>,
        /// Through the vehicle's skin.
        to_outside: Handle<Conductance>,
        /// With air; `None` where there are no vents.
        vents: Option<Vents>,
    },
}

/// Air through a bay.
#[derive(Debug, Clone, Copy)]
pub enum Vents {
    /// So much of it.
    Flow(Handle<Flow>),
    /// As much as openings and fan let through.
    Openings(OpeningInputs),
}

/// The openings of a bay.
#[derive(Debug, Clone, Copy)]
pub struct OpeningInputs {
    /// Free areas of inlet and outlet.
    pub areas: [Handle<Area>; 2],
    /// The share of them that is used.
    pub discharges: [Handle<Share>; 2],
    /// Gaps of the void that an opening leads to, inlet and outlet.
    pub voids: [Option<Handle<Area>>; 2],
    /// The outlet over the inlet.
    pub rise: RiseInputs,
    /// A fan.
    pub fan: Option<FanInputs>,
    /// The share of the air that is drawn in again.
    pub drawn_in: Handle<Share>,
}

/// The height of the outlet over the inlet.
#[derive(Debug, Clone, Copy)]
pub enum RiseInputs {
    /// Inlet and outlet over the bay's floor.
    Heights([Handle<Length>; 2]),
    /// One over the other.
    Apart(Handle<Length>),
}

/// The fan of a bay.
#[derive(Debug, Clone, Copy)]
pub struct FanInputs {
    /// Its flow with nothing in its way.
    pub flow: Handle<Flow>,
    /// Its pressure at no flow.
    pub pressure: Handle<Pressure>,
    /// Whether it drives air from inlet to outlet.
    pub forward: bool,
}

/// Something warm in a bay.
#[derive(Debug, Clone, Copy)]
pub enum MachineInputs {
    /// An inverter or charger.
    Converter {
        /// What it takes at full load.
        input: Handle<Power>,
        /// What comes out of it.
        efficiency: Handle<Share>,
        /// What it takes at idle.
        idle: Handle<Power>,
        /// The share of the afternoon at full load.
        on: Handle<Share>,
        /// Of an inverter, how long a day it is at full load, and switched on.
        daily: Option<[Handle<Time>; 2]>,
    },
    /// The bank, charging.
    Bank {
        /// The current through it.
        current: Handle<Current>,
        /// The resistance of each battery.
        resistance: Handle<Resistance>,
        /// How many stand in parallel.
        count: u32,
    },
}

/// A bay at one value for each input.
#[derive(Debug, Clone, Copy)]
pub struct BayPlace {
    /// What leaves for each kelvin but through openings.
    pub walls: Conductance,
    /// The way of the air.
    pub through: Option<Through>,
    /// What is warm in it besides cold boxes: on a hot afternoon, or as a mean of the day.
    pub machines: Power,
}

impl BayInputs {
    /// The inputs of a bay: openings where they are told, else vents where the papers of anything
    /// cold in it ask for them, else none.
    pub fn new(build: &Build, name: &str, bay: &Bay, ledger: &mut Ledger) -> Self {
        Self { heats: heats(build, name, bay, ledger), machines: machines(build, name, ledger) }
    }

    /// The bay at these values on a hot afternoon.
    pub fn place(&self, values: &impl Values) -> Result<BayPlace, HeatError> {
        self.with_machines(values, MachineInputs::heat)
    }

    /// The same over a whole day, with what its machines give off as a mean.
    pub fn place_over_a_day(&self, values: &impl Values) -> Result<BayPlace, HeatError> {
        self.with_machines(values, MachineInputs::heat_over_a_day)
    }

    fn with_machines<V: Values>(
        &self,
        values: &V,
        heat: impl Fn(&MachineInputs, &V) -> Result<Power, HeatError>,
    ) -> Result<BayPlace, HeatError> {
        let mut machines = Power::w(0.0);
        for machine in &self.machines {
            machines = machines + heat(machine, values)?;
        }
        let (walls, through) = match self.heats {
            Heats::Measured(all) => (values.at(all), None),
            Heats::Assumed { to_cabin, to_outside, vents } => {
                let walls = values.at(to_cabin) + values.at(to_outside);
                match vents {
                    None => (walls, None),
                    Some(Vents::Flow(flow)) => (walls + carried(values.at(flow), WARM_AIR)?, None),
                    Some(Vents::Openings(openings)) => (walls, Some(openings.through(values)?)),
                }
            }
        };
        Ok(BayPlace { walls, through, machines })
    }
}

impl OpeningInputs {
    /// The way of the air at these values.
    pub fn through(&self, values: &impl Values) -> Result<Through, HeatError> {
        let mut openings = Vec::with_capacity(4);
        for ((area, discharge), void) in self.areas.iter().zip(self.discharges).zip(self.voids) {
            let discharge = values.at(discharge).in_of_one();
            openings.push(Opening { area: values.at(*area), discharge });
            if let Some(gaps) = void {
                openings.push(Opening { area: values.at(gaps), discharge });
            }
        }
        Ok(Through {
            effective: effective_area(&openings)?,
            rise: match self.rise {
                RiseInputs::Heights([inlet, outlet]) => values.at(outlet) - values.at(inlet),
                RiseInputs::Apart(rise) => values.at(rise),
            },
            fan: self.fan.map(|fan| {
                let of = Fan {
                    free_flow: values.at(fan.flow),
                    greatest_pressure: values.at(fan.pressure),
                };
                (of, fan.forward)
            }),
            drawn_in: values.at(self.drawn_in).in_of_one(),
        })
    }
}

impl MachineInputs {
    /// What it gives off on a hot afternoon, a mean.
    pub fn heat(&self, values: &impl Values) -> Result<Power, HeatError> {
        match *self {
            Self::Converter { input, efficiency, idle, on, .. } => {
                let input = values.at(input) * values.at(on).in_of_one();
                losses::converter(input, values.at(efficiency).in_of_one(), values.at(idle))
            }
            Self::Bank { current, resistance, count } => {
                let each = values.at(resistance) / f64::from(count);
                losses::battery(values.at(current), each)
            }
        }
    }

    /// What it gives off as a mean of the day. Only an inverter's hours are known: a charger and the
    /// bank are taken to work all day as on a hot afternoon.
    pub fn heat_over_a_day(&self, values: &impl Values) -> Result<Power, HeatError> {
        let Self::Converter { input, efficiency, idle, daily: Some([full, on]), .. } = *self else {
            return self.heat(values);
        };
        let share = |hours: Handle<Time>| values.at(hours) / Time::days(1.0);
        losses::converter(
            values.at(input) * share(full),
            values.at(efficiency).in_of_one(),
            values.at(idle) * share(on),
        )
    }

    /// What it gives off at full load, and at idle.
    pub fn full_and_idle(&self, values: &impl Values) -> Result<[Power; 2], HeatError> {
        match *self {
            Self::Converter { input, efficiency, idle, .. } => {
                let efficiency = values.at(efficiency).in_of_one();
                let idle = values.at(idle);
                Ok([losses::converter(values.at(input), efficiency, idle)?, idle])
            }
            Self::Bank { .. } => Ok([self.heat(values)?, Power::w(0.0)]),
        }
    }
}

impl BayPlace {
    /// The temperature at which it settles with the heat of cold boxes in it.
    pub fn settles(&self, heat: Power, cabin: Temperature) -> Result<Temperature, HeatError> {
        settles(heat + self.machines, self.walls, self.through.as_ref(), cabin)
    }

    /// The same round a cabinet that draws heat from it: seen from the bay its walls are more walls,
    /// with the inside behind them instead of the cabin.
    pub fn settles_round(
        &self,
        standing: &Standing,
        heat: Power,
        cabin: Temperature,
    ) -> Result<Temperature, HeatError> {
        // G·(T − Ti) = G·(T − Tcabin) + G·(Tcabin − Ti), of which only the first hangs on the bay.
        let drawn = standing.walls * cabin.above(standing.inside);
        let walls = self.walls + standing.walls;
        settles(heat + self.machines - drawn, walls, self.through.as_ref(), cabin)
    }

    /// What leaves it for each kelvin when it is that warm.
    pub fn conductance(
        &self,
        bay: Temperature,
        cabin: Temperature,
    ) -> Result<Conductance, HeatError> {
        let air =
            self.through.as_ref().map(|through| through.conductance(bay, cabin)).transpose()?;
        Ok(self.walls + air.unwrap_or_default())
    }
}

/// Whether what leads heat out of a bay was told, and not only guessed: all of it, or both openings.
pub fn is_known(bay: &Bay) -> bool {
    let told = |basis: Basis| basis != Basis::Typical;
    let vent = |vent: &Option<Vent>| {
        vent.as_ref().and_then(|vent| vent.area.as_ref()).is_some_and(|area| told(area.basis))
    };
    bay.conductance.as_ref().is_some_and(|measured| told(measured.basis))
        || bay.air.as_ref().is_some_and(|air| vent(&air.inlet) && vent(&air.outlet))
}

fn heats(build: &Build, name: &str, bay: &Bay, ledger: &mut Ledger) -> Heats {
    if let Some(measured) = &bay.conductance {
        return Heats::Measured(ledger.take(format!("heat out of {name}, a kelvin"), measured));
    }
    let vented = compressors(build).any(|cold| {
        cold.condenser_bay().is_some_and(|(other, _)| other == name) && cold.wants_vents()
    });
    Heats::Assumed {
        to_cabin: ledger
            .take(format!("heat from {name} to the cabin, a kelvin"), &STOCK.bay_to_cabin),
        to_outside: ledger.take(
            format!("heat from {name} through the vehicle's skin, a kelvin"),
            &STOCK.bay_to_outside,
        ),
        vents: if bay.air.is_some() {
            Some(Vents::Openings(openings(name, bay, ledger)))
        } else {
            vented.then(|| {
                let what = format!("air through {name} while the fan runs");
                Vents::Flow(ledger.take(what, &STOCK.vent_flow))
            })
        },
    }
}

fn openings(name: &str, bay: &Bay, ledger: &mut Ledger) -> OpeningInputs {
    let air = bay.air.clone().unwrap_or_default();
    let sides = ["inlet", "outlet"];
    let vents: [Vent; 2] = [air.inlet.unwrap_or_default(), air.outlet.unwrap_or_default()];
    let each = |i: usize| (format!("{} of {name}", sides[i]), &vents[i]);
    let areas = [0, 1].map(|i| {
        let (of, vent) = each(i);
        ledger
            .take(format!("free area at the {of}"), vent.area.as_ref().unwrap_or(&STOCK.vent_area))
    });
    let discharges = [0, 1].map(|i| {
        let (of, vent) = each(i);
        ledger.take(format!("share of it used, {of}"), STOCK.discharge(vent.cover))
    });
    let voids = [0, 1].map(|i| {
        let (of, vent) = each(i);
        let void = vent.leads_to == Some(LeadsTo::Void);
        void.then(|| ledger.take(format!("gaps of the void at the {of}"), &STOCK.void_leak))
    });
    let rise = if let [Some(inlet), Some(outlet)] = [&vents[0].above, &vents[1].above] {
        RiseInputs::Heights([
            ledger.take(format!("inlet of {name} above its floor"), inlet),
            ledger.take(format!("outlet of {name} above its floor"), outlet),
        ])
    } else {
        let what = format!("outlet of {name} over its inlet");
        RiseInputs::Apart(ledger.take(what, &STOCK.vent_rise))
    };
    let fan = air.fan.as_ref().map(|fan| FanInputs {
        flow: ledger.take(
            format!("free flow of the fan of {name}"),
            fan.flow.as_ref().unwrap_or(&STOCK.fan_flow),
        ),
        pressure: ledger.take(
            format!("greatest pressure of the fan of {name}"),
            fan.pressure.as_ref().unwrap_or(&STOCK.fan_pressure),
        ),
        forward: drives_forward(fan),
    });
    let beside =
        air.apart.as_ref().is_some_and(|apart| apart.likely() < STOCK.vents_apart.likely());
    let drawn_in: &Given<Share> = if fan.is_some_and(|fan| !fan.forward) {
        &STOCK.drawn_in_against
    } else if beside {
        &STOCK.drawn_in_beside
    } else {
        &STOCK.drawn_in_apart
    };
    OpeningInputs {
        areas,
        discharges,
        voids,
        rise,
        fan,
        drawn_in: ledger.take(format!("share of the air drawn in again, {name}"), drawn_in),
    }
}

/// Whether a fan drives air from inlet to outlet; so where its place or its way is not said.
fn drives_forward(fan: &BuildFan) -> bool {
    !matches!(
        (fan.at, fan.blows),
        (Some(Which::Inlet), Some(Blows::Out)) | (Some(Which::Outlet), Some(Blows::In))
    )
}

/// Inverters and chargers whose power is known, and the bank.
fn machines(build: &Build, bay: &str, ledger: &mut Ledger) -> Vec<MachineInputs> {
    let mut machines = Vec::new();
    for (name, item) in &build.items {
        if item.place.as_ref().and_then(|place| place.bay.as_deref()) != Some(bay) {
            continue;
        }
        let part = &item.part;
        let (efficiency, idle) = match part.kind {
            PartKind::Inverter => (&STOCK.inverter_efficiency, &STOCK.inverter_idle),
            PartKind::Charger => (&STOCK.charger_efficiency, &STOCK.charger_idle),
            _ => continue,
        };
        let Some(input) = &part.power.running else { continue };
        machines.push(MachineInputs::Converter {
            input: ledger.take(format!("power of {name} while it runs"), input),
            efficiency: ledger.take(
                format!("efficiency of {name}"),
                part.heat.efficiency.as_ref().unwrap_or(efficiency),
            ),
            idle: ledger
                .take(format!("idle power of {name}"), part.heat.idle.as_ref().unwrap_or(idle)),
            on: ledger.take(
                format!("share of a hot afternoon that {name} is at full load"),
                &STOCK.on_in_the_heat,
            ),
            daily: (part.kind == PartKind::Inverter).then(|| {
                let [full, on] = &STOCK.inverter_daily;
                [
                    ledger
                        .take(format!("{name}, hours a day"), item.hours.as_ref().unwrap_or(full)),
                    ledger
                        .take(format!("{name} switched on, a day"), item.on.as_ref().unwrap_or(on)),
                ]
            }),
        });
    }
    let bank = build.bank.as_ref().filter(|bank| bank.bay.as_deref() == Some(bay));
    let strongest = build
        .sources
        .iter()
        .filter_map(|(name, source)| Some((name, source.current.as_ref()?)))
        .max_by(|(_, a), (_, b)| a.likely().in_a().total_cmp(&b.likely().in_a()));
    if let (Some(bank), Some((source, current))) = (bank, strongest) {
        let resistance =
            bank.resistance.as_ref().unwrap_or_else(|| STOCK.battery_resistance(bank.kind));
        machines.push(MachineInputs::Bank {
            current: ledger.take(format!("greatest current of {source}"), current),
            resistance: ledger.take("resistance of each battery", resistance),
            count: bank.count.max(1),
        });
    }
    machines
}
