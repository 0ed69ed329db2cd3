//! What a compressor box takes at a given warmth of the cabin, with every number it hangs on.

use spile_answer::{Given, Handle, Ledger};
use spile_build::file::{Cooling, PartKind};
use spile_build::{Build, Item, Part, typical, typical_number};
use spile_heat::HeatError;
use spile_heat::air::MoistAir;
use spile_heat::cabinet::{self, Shell};
use spile_heat::chain::{Appliance, Use, steady_day};
use spile_heat::compressor::{Approaches, Compressor, Consumption, Cooler, fit_conductance};
use spile_heat::food::{Food, heat_to_cool};
use spile_heat::place::Air;
use spile_quantity::{
    Conductance, Conductivity, Energy, Flow, Length, Mass, Power, Pressure, Share, Temperature,
    TemperatureDifference, Time, Voltage, Volume,
};
use spile_tables::cold::food;

use crate::values::Values;

/// Heat that a cubic metre of air carries for each kelvin, at some 35 °C \[J/(m³·K)\].
const AIR_J_PER_M3_K: f64 = 353.0 / 308.0 * 1006.0;

/// A box with its inputs.
pub(crate) struct Fridge {
    pub(crate) name: String,
    power: Handle<Power>,
    inside: Handle<Temperature>,
    carnot: Handle<Share>,
    approaches: [Handle<TemperatureDifference>; 3],
    standby: Handle<Power>,
    walls: WallInputs,
    volume: BoxVolume,
    /// The share of its outer surface that looks into the cabin.
    cabin_share: f64,
    openings: Handle<Share>,
    air_change: Handle<Share>,
    humidity: [Handle<Share>; 2],
    warm_food: Handle<Mass>,
    /// Food of how many people goes into it.
    people: f64,
    system: Handle<Voltage>,
    bay: Option<BayInputs>,
}

/// The space in a box: nominal, or from outside sizes and wall.
enum BoxVolume {
    Said(Handle<Volume>),
    Inner(Volume),
}

enum WallInputs {
    Papers(Vec<(Handle<Temperature>, Handle<Temperature>, Handle<Energy>)>),
    Sizes {
        outside: [Handle<Length>; 3],
        wall: Handle<Length>,
        foam: Handle<Conductivity>,
        films: [Handle<Share>; 2],
        bridges: Handle<Share>,
        gasket: Handle<Conductivity>,
        light_and_fan: Handle<Power>,
        lidded: bool,
    },
}

enum BayInputs {
    Measured(Handle<Conductance>),
    Assumed { walls: [Handle<Conductance>; 2], vents: Option<Handle<Flow>> },
}

/// Everything that a compressor cools and of which enough is known, and the names of the rest.
pub(crate) fn all(build: &Build, ledger: &mut Ledger) -> (Vec<Fridge>, Vec<String>) {
    let cooled: Vec<(&String, &Item)> =
        build.items.iter().filter(|(_, item)| item.part.cooling.is_some()).collect();
    let (mut found, mut left_out) = (Vec::new(), Vec::new());
    for (name, item) in &cooled {
        let known = item.part.cooling == Some(Cooling::Compressor);
        let people = f64::from(build.wants.people) * food_share(&cooled, &item.part);
        match known.then(|| Fridge::new(build, name, item, people, ledger)).flatten() {
            Some(fridge) => found.push(fridge),
            None => left_out.push((*name).clone()),
        }
    }
    (found, left_out)
}

impl Fridge {
    fn new(
        build: &Build,
        name: &str,
        item: &Item,
        people: f64,
        ledger: &mut Ledger,
    ) -> Option<Self> {
        let part = &item.part;
        if part.consumption.is_empty() && part.size.is_none() {
            return None;
        }
        let kind = match part.kind {
            PartKind::LiddedBox => "lidded",
            PartKind::DrawerFridge => "drawer",
            _ => "upright",
        };
        let litres = part.volume.as_ref().map_or(80.0, |volume| volume.likely().in_litres());
        let size = match litres {
            ..=50.0 => "small",
            ..=100.0 => "medium",
            _ => "large",
        };
        let power =
            part.power.running.clone().unwrap_or_else(|| typical(&format!("fridge-power-{size}")));
        let exact = Given {
            value: spile_quantity::Ranged::exactly(build.system.likely()),
            ..build.system.clone()
        };
        Some(Self {
            name: name.to_owned(),
            power: ledger.take(format!("power of {name} while it runs"), &power),
            inside: ledger.take("temperature inside", &build.wants.inside),
            carnot: ledger
                .take("share of the ideal that the circuit reaches", &typical("fridge-carnot")),
            approaches: [
                ledger.take("cold plate under the inside", &typical("fridge-evaporator")),
                ledger.take("condenser over its air", &typical("fridge-condenser")),
                ledger.take("least lift of the circuit", &typical("fridge-least-lift")),
            ],
            standby: ledger.take("standby power of a fridge", &typical("fridge-standby")),
            walls: walls(name, part, kind, ledger)?,
            volume: match &part.volume {
                Some(said) => {
                    BoxVolume::Said(ledger.take(format!("nominal volume of {name}"), said))
                }
                None => BoxVolume::Inner(inner_volume(part, kind)?),
            },
            cabin_share: cabin_share(build, item),
            openings: ledger.take("openings a day", &typical_number("openings")),
            air_change: ledger.take(
                format!("air that {name} loses at one opening"),
                &typical(&format!("air-change-{kind}")),
            ),
            humidity: [
                ledger.take("humidity of the cabin", &typical("cabin-humidity")),
                ledger.take("humidity in the fridge", &typical("fridge-humidity")),
            ],
            warm_food: ledger
                .take("food put in warm, a person and day", &typical::<Mass>("warm-food")),
            people,
            system: ledger.take("voltage of the house circuit", &exact),
            bay: bay(build, item, ledger),
        })
    }

    /// Its mean power in a cabin of that warmth.
    ///
    /// **Formula** the steady day of [`spile_heat::chain`], in its own bay, other boxes' heat left out
    ///
    /// **Arguments** `values` of its inputs; `cabin` \[°C\]
    ///
    /// **Validity** as of [`steady_day`].
    ///
    /// **Errors** as of [`steady_day`].
    ///
    /// **Source** as of [`steady_day`].
    ///
    /// **Example** a day of the papers' own warmth, in the tests.
    pub(crate) fn mean_power(
        &self,
        values: &impl Values,
        cabin: Temperature,
    ) -> Result<Power, HeatError> {
        let inside = values.at(self.inside);
        let [evaporator, condenser, least_lift] = self.approaches.map(|handle| values.at(handle));
        let approaches = Approaches { evaporator, condenser, least_lift };
        let (standby, carnot) = (values.at(self.standby), values.at(self.carnot).in_of_one());
        let (conductance, light_and_fan) = self.conductance(values, carnot, approaches, standby)?;
        let appliance = Appliance {
            cooler: Cooler::Compressor(Compressor::new(carnot, approaches, values.at(self.power))?),
            inside,
            walls_to_bay: conductance * (1.0 - self.cabin_share),
            walls_to_cabin: conductance * self.cabin_share,
            light_and_fan,
            standby,
            voltage: values.at(self.system),
        };
        let bay = self.bay.as_ref().map(|bay| bay.conductance(values));
        let day = steady_day(&appliance, self.used(values, cabin, inside)?, cabin, |given| {
            let heat_w = (given.cabinet + given.condenser).in_w();
            let rise_k = bay.map_or(0.0, |bay| heat_w / bay.in_w_per_k());
            let air = cabin.warmer(TemperatureDifference::k(rise_k));
            Ok(Air { cabinet: air, condenser: air })
        })?;
        Ok(day.power)
    }

    fn conductance(
        &self,
        values: &impl Values,
        carnot: f64,
        approaches: Approaches,
        standby: Power,
    ) -> Result<(Conductance, Power), HeatError> {
        match &self.walls {
            WallInputs::Papers(figures) => {
                let stated: Vec<Consumption> = figures
                    .iter()
                    .map(|&(ambient, inside, per_day)| Consumption {
                        per_day: values.at(per_day),
                        ambient: values.at(ambient),
                        inside: values.at(inside),
                    })
                    .collect();
                let fitted = fit_conductance(&stated, carnot, approaches, standby)?;
                Ok((fitted.value, Power::w(0.0)))
            }
            WallInputs::Sizes {
                outside,
                wall,
                foam,
                films,
                bridges,
                gasket,
                light_and_fan,
                lidded,
            } => {
                let outside = outside.map(|side| values.at(side));
                let [inside_film_w_per_m2_k, outside_film_w_per_m2_k] =
                    films.map(|film| values.at(film).in_of_one());
                let walls = cabinet::walls(&Shell {
                    outside,
                    wall: values.at(*wall),
                    insulation: values.at(*foam),
                    inside_film_w_per_m2_k,
                    outside_film_w_per_m2_k,
                })?;
                let [width, height, depth] = outside;
                let rim = (width + if *lidded { depth } else { height }) * 2.0;
                let gasket = cabinet::gasket(rim, values.at(*gasket))?;
                let total = walls.total * values.at(*bridges).in_of_one() + gasket;
                Ok((total, values.at(*light_and_fan)))
            }
        }
    }

    fn used(
        &self,
        values: &impl Values,
        cabin: Temperature,
        inside: Temperature,
    ) -> Result<Use, HeatError> {
        let air = |temperature, humidity: Handle<Share>| MoistAir {
            temperature,
            relative_humidity: values.at(humidity).in_of_one(),
            pressure: Pressure::pa(101_325.0),
        };
        let volume = match self.volume {
            BoxVolume::Said(volume) => values.at(volume),
            BoxVolume::Inner(volume) => volume,
        };
        let openings = cabinet::openings(
            values.at(self.openings).in_of_one(),
            values.at(self.air_change).in_of_one(),
            volume,
            air(cabin, self.humidity[0]),
            air(inside, self.humidity[1]),
        )?;
        let mass = values.at(self.warm_food) * self.people;
        let food = heat_to_cool(&mixed_food(), mass, cabin.max(inside), inside)?;
        Ok(Use { openings: openings.heat, food: food / Time::days(1.0) })
    }
}

impl BayInputs {
    fn conductance(&self, values: &impl Values) -> Conductance {
        match self {
            Self::Measured(all) => values.at(*all),
            Self::Assumed { walls: [cabin, outside], vents } => {
                let by_air =
                    vents.map_or(0.0, |flow| AIR_J_PER_M3_K * values.at(flow).in_m3_per_s());
                values.at(*cabin) + values.at(*outside) + Conductance::w_per_k(by_air)
            }
        }
    }
}

fn walls(name: &str, part: &Part, kind: &str, ledger: &mut Ledger) -> Option<WallInputs> {
    if !part.consumption.is_empty() {
        let each = part.consumption.iter().enumerate().map(|(index, stated)| {
            let of = |what: &str| format!("{what} of consumption {} of {name}", index + 1);
            (
                ledger.take(of("surroundings"), &stated.ambient),
                ledger.take(of("inside"), &stated.inside),
                ledger.take(of("energy a day"), &stated.per_day),
            )
        });
        return Some(WallInputs::Papers(each.collect()));
    }
    let size = part.size.as_ref()?;
    let wall = part.insulation.clone().unwrap_or_else(|| typical(&format!("fridge-wall-{kind}")));
    let foam = part.conductivity.clone().unwrap_or_else(|| typical("fridge-foam"));
    Some(WallInputs::Sizes {
        outside: [
            ledger.take(format!("width of {name}"), &size.width),
            ledger.take(format!("height of {name}"), &size.height),
            ledger.take(format!("depth of {name}"), &size.depth),
        ],
        wall: ledger.take(format!("insulation of {name}"), &wall),
        foam: ledger.take(format!("conductivity of the insulation of {name}"), &foam),
        films: [
            ledger.take("heat transfer at the inner wall", &typical_number("film-inside")),
            ledger.take("heat transfer at the outer wall", &typical_number("film-outside")),
        ],
        bridges: ledger.take(
            "heat through the body over that of plain walls",
            &typical_number("fridge-bridges"),
        ),
        gasket: ledger.take("heat through a metre of gasket", &typical("fridge-gasket")),
        light_and_fan: ledger.take("light and fan inside", &typical("fridge-light-fan")),
        lidded: part.kind == PartKind::LiddedBox,
    })
}

fn bay(build: &Build, item: &Item, ledger: &mut Ledger) -> Option<BayInputs> {
    let name = item.place.as_ref()?.bay.as_ref()?;
    let bay = build.bays.get(name)?;
    if let Some(measured) = &bay.conductance {
        let taken = ledger.take(format!("heat out of {name}, a kelvin"), measured);
        return Some(BayInputs::Measured(taken));
    }
    let air = &item.part.air;
    let vented = air.inlet.is_some() || air.outlet.is_some();
    Some(BayInputs::Assumed {
        walls: [
            ledger
                .take(format!("heat from {name} to the cabin, a kelvin"), &typical("bay-to-cabin")),
            ledger.take(
                format!("heat from {name} through the vehicle's skin, a kelvin"),
                &typical("bay-to-outside"),
            ),
        ],
        vents: vented.then(|| {
            ledger.take(format!("air through {name} while the fan runs"), &typical("vent-flow"))
        }),
    })
}

/// The space inside, from outside sizes and the wall at their likely values.
fn inner_volume(part: &Part, kind: &str) -> Option<Volume> {
    let size = part.size.as_ref()?;
    let wall = part.insulation.clone().unwrap_or_else(|| typical(&format!("fridge-wall-{kind}")));
    let inner =
        [&size.width, &size.height, &size.depth].map(|side| side.likely() - wall.likely() * 2.0);
    inner.iter().all(|side| side.in_m() > 0.0).then(|| inner[0] * inner[1] * inner[2])
}

/// The front's share of the outer surface, where the front closes the opening of a bay.
fn cabin_share(build: &Build, item: &Item) -> f64 {
    let bay = item.place.as_ref().and_then(|place| place.bay.as_ref());
    let in_bay = bay.is_some_and(|name| build.bays.contains_key(name));
    let front = in_bay && item.part.kind != PartKind::LiddedBox;
    let Some(size) = item.part.size.as_ref().filter(|_| front) else { return 0.0 };
    let [w_m, h_m, d_m] = [&size.width, &size.height, &size.depth].map(|side| side.likely().in_m());
    w_m * h_m / (2.0 * (w_m * h_m + h_m * d_m + d_m * w_m))
}

/// The share of the warm food that goes into a box: that of its nominal volume, or an equal share
/// where a volume is missing.
fn food_share(cooled: &[(&String, &Item)], part: &Part) -> f64 {
    let volumes = cooled.iter().map(|(_, item)| item.part.volume.as_ref().map(Given::likely));
    let all: Option<f64> = volumes.map(|volume| volume.map(Volume::in_m3)).sum();
    match (part.volume.as_ref(), all) {
        (Some(own), Some(all_m3)) if all_m3 > 0.0 => own.likely().in_m3() / all_m3,
        _ => 1.0 / cooled.len().max(1) as f64,
    }
}

/// What food and drink hold, taken as milk: between vegetables and meat.
fn mixed_food() -> Food {
    let row = food("milk").expect("the table of foods has milk");
    Food {
        cp_j_per_kg_k: row.value.above_j_per_kg_k,
        cp_frozen_j_per_kg_k: row.value.below_j_per_kg_k,
        latent_j_per_kg: row.value.latent_j_per_kg,
        freezes: Temperature::celsius(-0.5),
    }
}
