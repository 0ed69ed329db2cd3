//! Cold boxes that are computed together, with every number that their day hangs on.

use spile_answer::{Basis, Given, Handle, Ledger, Point, Swing};
use spile_build::file::PartKind;
use spile_build::{Bay, Build, Item, Part};
use spile_quantity::{
    Conductance, Conductivity, Energy, Flow, Length, Mass, Power, Quantity, Ranged, Share,
    Temperature, TemperatureDifference, Voltage, Volume,
};

use crate::stock::STOCK;

/// A thing of the build that a compressor keeps cold, and of which enough is known to compute it.
#[derive(Clone, Copy)]
pub(crate) struct Cold<'b> {
    pub(crate) name: &'b str,
    pub(crate) item: &'b Item,
    /// The bay it stands in, with its name; `None` where it stands free.
    pub(crate) bay: Option<(&'b str, &'b Bay)>,
}

impl<'b> Cold<'b> {
    pub(crate) fn new(build: &'b Build, name: &'b str, item: &'b Item) -> Self {
        let named = item.place.as_ref().and_then(|place| place.bay.as_deref());
        let bay = named.and_then(|bay| build.bays.get_key_value(bay));
        Self { name, item, bay: bay.map(|(name, bay)| (name.as_str(), bay)) }
    }

    pub(crate) fn part(&self) -> &'b Part {
        &self.item.part
    }

    /// Whether its door is in the opening of its bay and so looks into the cabin.
    pub(crate) fn faces_cabin(&self) -> bool {
        self.bay.is_some() && self.part().kind != PartKind::LiddedBox
    }

    /// Whether enough is known of it: a consumption or outside sizes, and a space inside.
    pub(crate) fn is_computable(&self) -> bool {
        let part = self.part();
        let has_walls = !part.consumption.is_empty() || part.size.is_some();
        has_walls && (part.volume.is_some() || inner_volume(part).is_some())
    }

    /// Whether its papers ask for openings that let air through the bay.
    pub(crate) fn wants_vents(&self) -> bool {
        let air = &self.part().air;
        air.inlet.is_some() || air.outlet.is_some()
    }

    pub(crate) fn shares_bay(&self, other: &Self) -> bool {
        match (self.bay, other.bay) {
            (Some((a, _)), Some((b, _))) => a == b,
            _ => false,
        }
    }
}

/// A value for each input: a [`Point`], or the point at which a figure is worst.
pub(crate) trait Values {
    fn at<Q: Quantity>(&self, handle: Handle<Q>) -> Q;
}

impl Values for Point {
    fn at<Q: Quantity>(&self, handle: Handle<Q>) -> Q {
        Self::at(self, handle)
    }
}

/// The point at which the strongest movers of a figure are at their worse ends together.
pub(crate) struct Worst(Vec<f64>);

impl Worst {
    pub(crate) fn of(swing: &Swing, ledger: &Ledger) -> Self {
        let mut values: Vec<f64> = ledger.inputs().iter().map(|input| input.likely).collect();
        for mover in swing.movers.iter().take(spile_answer::TOGETHER) {
            values[mover.input] = mover.end;
        }
        Self(values)
    }
}

impl Values for Worst {
    fn at<Q: Quantity>(&self, handle: Handle<Q>) -> Q {
        Q::from_si(self.0[handle.index()])
    }
}

/// Cold boxes computed together: those that share a bay, or all of a build.
pub(crate) struct Scene<'b> {
    pub(crate) boxes: Vec<Cold<'b>>,
    pub(crate) ledger: Ledger,
    pub(crate) shared: Shared,
    pub(crate) each: Vec<Each>,
}

/// The inputs that all boxes share.
pub(crate) struct Shared {
    pub(crate) cabin: Handle<Temperature>,
    /// How far the mean of the day lies under its afternoon; only where days are asked for.
    pub(crate) mean_below: Option<Handle<TemperatureDifference>>,
    pub(crate) inside: Handle<Temperature>,
    pub(crate) people: Handle<Share>,
    pub(crate) warm_food: Handle<Mass>,
    pub(crate) openings: Handle<Share>,
    pub(crate) cabin_humidity: Handle<Share>,
    pub(crate) fridge_humidity: Handle<Share>,
    pub(crate) carnot: Handle<Share>,
    pub(crate) evaporator: Handle<TemperatureDifference>,
    pub(crate) condenser: Handle<TemperatureDifference>,
    pub(crate) least_lift: Handle<TemperatureDifference>,
    pub(crate) standby: Handle<Power>,
    pub(crate) system: Handle<Voltage>,
}

/// The inputs of one box.
pub(crate) struct Each {
    pub(crate) power: Handle<Power>,
    pub(crate) air_change: Handle<Share>,
    pub(crate) volume: BoxVolume,
    pub(crate) walls: WallInputs,
    /// The share of its outer surface that looks into the cabin.
    pub(crate) cabin_share: f64,
    /// The share of the warm food that goes into it.
    pub(crate) food_share: f64,
    pub(crate) bay: Option<BayInputs>,
}

/// The space in a box.
#[derive(Clone, Copy)]
pub(crate) enum BoxVolume {
    /// Nominal, from its papers.
    Said(Handle<Volume>),
    /// From outside sizes and wall.
    Inner(Volume),
}

/// What a box's conductance is worked out from.
pub(crate) enum WallInputs {
    /// What its papers say it uses in a day: surroundings, inside, energy.
    Papers(Vec<(Handle<Temperature>, Handle<Temperature>, Handle<Energy>)>),
    /// Its sizes and its insulation.
    Sizes(SizeInputs),
}

/// Sizes and insulation.
pub(crate) struct SizeInputs {
    pub(crate) outside: [Handle<Length>; 3],
    pub(crate) wall: Handle<Length>,
    pub(crate) foam: Handle<Conductivity>,
    pub(crate) film_inside: Handle<Share>,
    pub(crate) film_outside: Handle<Share>,
    pub(crate) bridges: Handle<Share>,
    pub(crate) gasket: Handle<Conductivity>,
    pub(crate) light_and_fan: Handle<Power>,
    pub(crate) lidded: bool,
}

/// What leads heat out of a bay.
#[derive(Clone, Copy)]
pub(crate) enum BayInputs {
    /// As measured, all of it.
    Measured(Handle<Conductance>),
    /// Furniture, the vehicle's skin, and air where the papers ask for vents.
    Assumed {
        to_cabin: Handle<Conductance>,
        to_outside: Handle<Conductance>,
        vents: Option<Handle<Flow>>,
    },
}

impl BayInputs {
    /// What leaves the bay for each kelvin that it is warmer than the cabin.
    pub(crate) fn conductance(&self, values: &impl Values) -> Conductance {
        match *self {
            Self::Measured(all) => values.at(all),
            Self::Assumed { to_cabin, to_outside, vents } => {
                let vents =
                    vents.map_or(Conductance::default(), |flow| carried_by(values.at(flow)));
                values.at(to_cabin) + values.at(to_outside) + vents
            }
        }
    }
}

/// Density of air of 35 °C \[kg/m³\]: 353/(273 + t).
const AIR_KG_PER_M3: f64 = 353.0 / 308.0;
/// Specific heat of air.
const AIR_J_PER_KG_K: f64 = 1006.0;

/// The heat that air carries out of a bay for each kelvin that it leaves warmer than it came.
pub(crate) fn carried_by(flow: Flow) -> Conductance {
    Conductance::w_per_k(AIR_KG_PER_M3 * AIR_J_PER_KG_K * flow.in_m3_per_s())
}

/// The air that carries so much.
pub(crate) fn carries(conductance: Conductance) -> Flow {
    Flow::m3_per_s(conductance.in_w_per_k() / (AIR_KG_PER_M3 * AIR_J_PER_KG_K))
}

impl<'b> Scene<'b> {
    /// The inputs of these boxes; with `whole_day`, those of the mean of day and night as well.
    ///
    /// `None` where a box has neither consumption nor outside sizes in its papers, or no volume
    /// can be told.
    pub(crate) fn new(build: &Build, boxes: Vec<Cold<'b>>, whole_day: bool) -> Option<Self> {
        let mut ledger = Ledger::new();
        let wants = &build.wants;
        let shared = Shared {
            cabin: ledger.take("cabin on a hot day", &build.corners.hot_cabin),
            mean_below: whole_day.then(|| {
                ledger.take("hot afternoon over the mean of the day", &STOCK.hot_day_mean)
            }),
            inside: ledger.take("temperature inside", &wants.inside),
            people: ledger.take("people", &people(build)),
            warm_food: ledger.take("food put in warm, a person and day", &STOCK.warm_food),
            openings: ledger.take("openings a day", &STOCK.openings),
            cabin_humidity: ledger.take("humidity of the cabin", &STOCK.cabin_humidity),
            fridge_humidity: ledger.take("humidity in the fridge", &STOCK.fridge_humidity),
            carnot: ledger.take("share of the ideal that the circuit reaches", &STOCK.carnot),
            evaporator: ledger.take("cold plate under the inside", &STOCK.evaporator),
            condenser: ledger.take("condenser over its air", &STOCK.condenser),
            least_lift: ledger.take("least lift of the circuit", &STOCK.least_lift),
            standby: ledger.take("standby power", &STOCK.standby),
            system: ledger.take("voltage of the house circuit", &exactly(&build.system)),
        };
        let each: Option<Vec<Each>> =
            boxes.iter().map(|cold| each(build, cold, &mut ledger)).collect();
        Some(Self { each: each?, boxes, ledger, shared })
    }
}

fn each(build: &Build, cold: &Cold<'_>, ledger: &mut Ledger) -> Option<Each> {
    let (name, part) = (cold.name, cold.part());
    let walls = if part.consumption.is_empty() {
        WallInputs::Sizes(size_inputs(cold, ledger)?)
    } else {
        let each = part.consumption.iter().enumerate().map(|(index, stated)| {
            let of = |what: &str| format!("{what} of consumption {} of {name}", index + 1);
            (
                ledger.take(of("surroundings"), &stated.ambient),
                ledger.take(of("inside"), &stated.inside),
                ledger.take(of("energy a day"), &stated.per_day),
            )
        });
        WallInputs::Papers(each.collect())
    };
    let (volume, likely_volume) = match &part.volume {
        Some(said) => {
            (BoxVolume::Said(ledger.take(format!("nominal volume of {name}"), said)), said.likely())
        }
        None => {
            let inner = inner_volume(part)?;
            (BoxVolume::Inner(inner), inner)
        }
    };
    let power = part.power.running.as_ref().unwrap_or_else(|| STOCK.power(likely_volume));
    let bay = cold.bay.map(|(bay_name, bay)| bay_inputs(build, bay_name, bay, ledger));
    Some(Each {
        power: ledger.take(format!("power of {name} while it runs"), power),
        air_change: ledger
            .take(format!("air that {name} loses at one opening"), STOCK.air_change(part.kind)),
        volume,
        walls,
        cabin_share: cabin_share(cold),
        food_share: food_share(build, part),
        bay,
    })
}

fn size_inputs(cold: &Cold<'_>, ledger: &mut Ledger) -> Option<SizeInputs> {
    let (name, part) = (cold.name, cold.part());
    let size = part.size.as_ref()?;
    let wall = part.insulation.as_ref().unwrap_or_else(|| STOCK.wall(part.kind));
    Some(SizeInputs {
        outside: [
            ledger.take(format!("width of {name}"), &size.width),
            ledger.take(format!("height of {name}"), &size.height),
            ledger.take(format!("depth of {name}"), &size.depth),
        ],
        wall: ledger.take(format!("insulation of {name}"), wall),
        foam: ledger.take(
            format!("conductivity of the insulation of {name}"),
            part.conductivity.as_ref().unwrap_or(&STOCK.foam),
        ),
        film_inside: ledger.take("heat transfer at the inner wall", &STOCK.film_inside),
        film_outside: ledger.take("heat transfer at the outer wall", &STOCK.film_outside),
        bridges: ledger.take("heat through the body over that of plain walls", &STOCK.bridges),
        gasket: ledger.take("heat through a metre of gasket", &STOCK.gasket),
        light_and_fan: ledger.take("light and fan inside", &STOCK.light_and_fan),
        lidded: part.kind == PartKind::LiddedBox,
    })
}

/// What leads heat out of a bay; vents where the papers of anything cold in it ask for them.
fn bay_inputs(build: &Build, name: &str, bay: &Bay, ledger: &mut Ledger) -> BayInputs {
    if let Some(measured) = &bay.conductance {
        return BayInputs::Measured(ledger.take(format!("heat out of {name}, a kelvin"), measured));
    }
    let vented = crate::compressors(build)
        .any(|cold| cold.bay.is_some_and(|(other, _)| other == name) && cold.wants_vents());
    BayInputs::Assumed {
        to_cabin: ledger
            .take(format!("heat from {name} to the cabin, a kelvin"), &STOCK.bay_to_cabin),
        to_outside: ledger.take(
            format!("heat from {name} through the vehicle's skin, a kelvin"),
            &STOCK.bay_to_outside,
        ),
        vents: vented.then(|| {
            ledger.take(format!("air through {name} while the fan runs"), &STOCK.vent_flow)
        }),
    }
}

/// The space inside, from outside sizes and the wall at their likely values.
pub(crate) fn inner_volume(part: &Part) -> Option<Volume> {
    let size = part.size.as_ref()?;
    let wall = part.insulation.as_ref().unwrap_or_else(|| STOCK.wall(part.kind)).likely();
    let inner = [&size.width, &size.height, &size.depth].map(|side| side.likely() - wall * 2.0);
    inner.iter().all(|side| *side > Length::m(0.0)).then(|| inner[0] * inner[1] * inner[2])
}

/// The front's share of the outer surface, where the front looks into the cabin.
fn cabin_share(cold: &Cold<'_>) -> f64 {
    let Some(size) = cold.part().size.as_ref().filter(|_| cold.faces_cabin()) else { return 0.0 };
    let [w_m, h_m, d_m] = [&size.width, &size.height, &size.depth].map(|side| side.likely().in_m());
    w_m * h_m / (2.0 * (w_m * h_m + h_m * d_m + d_m * w_m))
}

/// The share of the warm food that goes into a box: that of its nominal volume, or an equal share
/// where a volume is missing.
fn food_share(build: &Build, part: &Part) -> f64 {
    let volumes: Vec<Option<Volume>> = crate::cold_items(build)
        .map(|(_, item)| item.part.volume.as_ref().map(Given::likely))
        .collect();
    let all: Option<Volume> = volumes.iter().copied().sum();
    match (part.volume.as_ref(), all) {
        (Some(own), Some(all)) if all > Volume::m3(0.0) => own.likely() / all,
        _ => 1.0 / volumes.len().max(1) as f64,
    }
}

/// The number of people, as an input.
pub(crate) fn people(build: &Build) -> Given<Share> {
    let wants = &build.wants;
    let assumed = wants.assumed.contains(&format!("{} people", wants.people));
    Given {
        value: Ranged::exactly(Share::of_one(f64::from(wants.people))),
        basis: if assumed { Basis::Typical } else { Basis::Measured },
        source: if assumed { "the default of `people`" } else { "`people` in the build's wants" }
            .into(),
        how: "Count those who eat aboard.".into(),
    }
}

/// The same without its range: a nominal value is a name.
fn exactly<Q: Quantity>(given: &Given<Q>) -> Given<Q> {
    Given { value: Ranged::exactly(given.likely()), ..given.clone() }
}

#[cfg(test)]
mod tests {
    use spile_quantity::Flow;

    #[test]
    fn air_carries_what_it_usually_does() {
        // Common practice, no source: 110 to 130 W in 40 m³/h are 9 K of rise, in 10 m³/h 37 K.
        let rise_k = |flow| 120.0 / super::carried_by(Flow::m3_per_h(flow)).in_w_per_k();
        assert!((rise_k(40.0) - 9.0).abs() < 0.5, "{}", rise_k(40.0));
        assert!((rise_k(10.0) - 37.0).abs() < 0.5, "{}", rise_k(10.0));
    }
}
