//! Cold boxes that are computed together, with every number that their day hangs on, and the bays
//! that they share with what else is warm there.
//!
//! A [`Scene`] takes boxes of a build, enters every input that they hang on into one ledger, and
//! computes their days at any point of it. Whoever asks about the boxes or about their bays comes to
//! the same balance.

mod bay;
mod day;
mod stock;

pub use bay::{
    BayInputs, BayPlace, FanInputs, Heats, MachineInputs, OpeningInputs, RiseInputs, Vents,
    WARM_AIR, is_known,
};
pub use day::{BayIs, Ready, WARMEST_INSIDE, Weather, stated};
pub use stock::{STOCK, Stock};

use spile_answer::{Basis, Given, Handle, Ledger, Point, Swing};
use spile_build::file::{Cooling, PartKind};
use spile_build::{Bay, Build, Item, Part};
use spile_quantity::{
    Conductivity, Energy, Length, Mass, Power, Quantity, Ranged, Share, Temperature,
    TemperatureDifference, Voltage, Volume,
};

/// A thing of the build that a compressor keeps cold, and of which enough is known to compute it.
#[derive(Debug, Clone, Copy)]
pub struct Cold<'b> {
    /// Its name.
    pub name: &'b str,
    /// The item.
    pub item: &'b Item,
    /// The bay it stands in, with its name; `None` where it stands free.
    pub bay: Option<(&'b str, &'b Bay)>,
    /// The bay of its condenser, where that is another.
    pub recess: Option<(&'b str, &'b Bay)>,
}

impl<'b> Cold<'b> {
    /// The item of that name, in its bay.
    pub fn new(build: &'b Build, name: &'b str, item: &'b Item) -> Self {
        let find = |bay: &str| {
            let found = build.bays.get_key_value(bay);
            found.map(|(name, bay)| (name.as_str(), bay))
        };
        let bay = item.place.as_ref().and_then(|place| place.bay.as_deref()).and_then(find);
        let recess = item.condenser_in.as_deref().and_then(find);
        let recess = recess.filter(|(name, _)| bay.is_none_or(|(own, _)| own != *name));
        Self { name, item, bay, recess }
    }

    /// The bay that its condenser warms.
    pub fn condenser_bay(&self) -> Option<(&'b str, &'b Bay)> {
        self.recess.or(self.bay)
    }

    /// Whether cabinet or condenser stand in the bay of that name.
    pub fn touches(&self, bay: &str) -> bool {
        [self.bay, self.recess].into_iter().flatten().any(|(name, _)| name == bay)
    }

    /// The kind of thing it is.
    pub fn part(&self) -> &'b Part {
        &self.item.part
    }

    /// Whether its door is in the opening of its bay and so looks into the cabin.
    pub fn faces_cabin(&self) -> bool {
        self.bay.is_some() && self.part().kind != PartKind::LiddedBox
    }

    /// Whether enough is known of it: a consumption or outside sizes, and a space inside.
    pub fn is_computable(&self) -> bool {
        let part = self.part();
        let has_walls = !part.consumption.is_empty() || part.size.is_some();
        has_walls && (part.volume.is_some() || inner_volume(part).is_some())
    }

    /// Whether its papers ask for openings that let air through the bay.
    pub fn wants_vents(&self) -> bool {
        let air = &self.part().air;
        air.inlet.is_some() || air.outlet.is_some()
    }

    /// Whether two boxes warm each other's air.
    pub fn shares_bay(&self, other: &Self) -> bool {
        [self.bay, self.recess].into_iter().flatten().any(|(name, _)| other.touches(name))
    }
}

/// Everything that a compressor cools, by name.
pub fn compressors(build: &Build) -> impl Iterator<Item = Cold<'_>> {
    build
        .items
        .iter()
        .filter(|(_, item)| item.part.cooling == Some(Cooling::Compressor))
        .map(|(name, item)| Cold::new(build, name, item))
}

/// A value for each input: a [`Point`], or the point at which a figure is worst.
pub trait Values {
    /// The value of an input.
    fn at<Q: Quantity>(&self, handle: Handle<Q>) -> Q;
}

impl Values for Point {
    fn at<Q: Quantity>(&self, handle: Handle<Q>) -> Q {
        Self::at(self, handle)
    }
}

/// The point at which the strongest movers of a figure are at their worse ends together.
#[derive(Debug, Clone)]
pub struct Worst(Vec<f64>);

impl Worst {
    /// The point of that swing.
    pub fn of(swing: &Swing, ledger: &Ledger) -> Self {
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
pub struct Scene<'b> {
    /// The boxes.
    pub boxes: Vec<Cold<'b>>,
    /// Every input.
    pub ledger: Ledger,
    /// The inputs that all share.
    pub shared: Shared,
    /// The inputs of each.
    pub each: Vec<Each>,
}

/// The inputs that all boxes share.
pub struct Shared {
    /// The cabin on a hot afternoon.
    pub cabin: Handle<Temperature>,
    /// How far the mean of the day lies under its afternoon; only where days are asked for.
    pub mean_below: Option<Handle<TemperatureDifference>>,
    /// Temperature wanted inside.
    pub inside: Handle<Temperature>,
    /// People who eat.
    pub people: Handle<Share>,
    /// Food put in warm.
    pub warm_food: Handle<Mass>,
    /// Openings a day.
    pub openings: Handle<Share>,
    /// Humidity of the cabin.
    pub cabin_humidity: Handle<Share>,
    /// Humidity in the fridge.
    pub fridge_humidity: Handle<Share>,
    /// Share of the ideal that the circuit reaches.
    pub carnot: Handle<Share>,
    /// Cold plate under the inside.
    pub evaporator: Handle<TemperatureDifference>,
    /// Condenser over its air.
    pub condenser: Handle<TemperatureDifference>,
    /// Least lift of the circuit.
    pub least_lift: Handle<TemperatureDifference>,
    /// Standby power.
    pub standby: Handle<Power>,
    /// Voltage of the house circuit.
    pub system: Handle<Voltage>,
}

/// The inputs of one box.
pub struct Each {
    /// Power while it runs.
    pub power: Handle<Power>,
    /// Air lost at one opening.
    pub air_change: Handle<Share>,
    /// The space in it.
    pub volume: BoxVolume,
    /// What its walls let through.
    pub walls: WallInputs,
    /// The share of its outer surface that looks into the cabin.
    pub cabin_share: f64,
    /// The share of the warm food that goes into it.
    pub food_share: f64,
    /// The bay round its cabinet; `None` where it stands free.
    pub bay: Option<BayInputs>,
    /// The bay round its condenser, where that is another.
    pub recess: Option<BayInputs>,
}

/// The space in a box.
#[derive(Clone, Copy)]
pub enum BoxVolume {
    /// Nominal, from its papers.
    Said(Handle<Volume>),
    /// From outside sizes and wall.
    Inner(Volume),
}

/// What a box's conductance is worked out from.
pub enum WallInputs {
    /// What its papers say it uses in a day: surroundings, inside, energy.
    Papers(Vec<(Handle<Temperature>, Handle<Temperature>, Handle<Energy>)>),
    /// Its sizes and its insulation.
    Sizes(SizeInputs),
}

/// Sizes and insulation.
pub struct SizeInputs {
    /// Width, height and depth.
    pub outside: [Handle<Length>; 3],
    /// Thickness of the insulation.
    pub wall: Handle<Length>,
    /// Conductivity of the insulation.
    pub foam: Handle<Conductivity>,
    /// Heat transfer at the inner wall.
    pub film_inside: Handle<Share>,
    /// Heat transfer at the outer wall.
    pub film_outside: Handle<Share>,
    /// Heat through the body over that of plain walls.
    pub bridges: Handle<Share>,
    /// Heat through a metre of gasket.
    pub gasket: Handle<Conductivity>,
    /// Light and fan inside.
    pub light_and_fan: Handle<Power>,
    /// Whether it opens by a lid.
    pub lidded: bool,
}

impl<'b> Scene<'b> {
    /// The inputs of these boxes; with `whole_day`, those of the mean of day and night as well.
    ///
    /// `None` where a box has neither consumption nor outside sizes in its papers, or no volume
    /// can be told.
    pub fn new(build: &Build, boxes: Vec<Cold<'b>>, whole_day: bool) -> Option<Self> {
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
    let mut inputs = |(name, bay)| BayInputs::new(build, name, bay, ledger);
    let (bay, recess) = (cold.bay.map(&mut inputs), cold.recess.map(inputs));
    Some(Each {
        power: ledger.take(format!("power of {name} while it runs"), power),
        air_change: ledger
            .take(format!("air that {name} loses at one opening"), STOCK.air_change(part.kind)),
        volume,
        walls,
        cabin_share: cabin_share(cold),
        food_share: food_share(build, part),
        bay,
        recess,
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

/// The space inside, from outside sizes and the wall at their likely values.
pub fn inner_volume(part: &Part) -> Option<Volume> {
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
    let volumes: Vec<Option<Volume>> = build
        .items
        .values()
        .filter(|item| item.part.cooling.is_some())
        .map(|item| item.part.volume.as_ref().map(Given::likely))
        .collect();
    let all: Option<Volume> = volumes.iter().copied().sum();
    match (part.volume.as_ref(), all) {
        (Some(own), Some(all)) if all > Volume::m3(0.0) => own.likely() / all,
        _ => 1.0 / volumes.len().max(1) as f64,
    }
}

/// The number of people, as an input.
pub fn people(build: &Build) -> Given<Share> {
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
