//! What is aboard a build in a load state: every mass that is known, with its place.

use spile_answer::Given;
use spile_build::{Build, Item, LoadState, Unladen, typical_number};
use spile_quantity::{Mass, Share, Volume};

use crate::place::{Spot, of_item, of_load};

/// A mass at a place.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Load {
    /// What it is: `bench`, `water, full`.
    pub(crate) name: String,
    pub(crate) mass: Given<Mass>,
    /// What its mass is still to be taken times: of fuel, which is told in litres of water.
    pub(crate) times: Option<Given<Share>>,
    /// What its place is the place of: `bench`, `water`.
    pub(crate) of: String,
    pub(crate) spot: Spot,
}

/// Everything that is aboard in a state; what the state says nothing of is as in `unsaid`.
pub(crate) fn all(build: &Build, name: &str, state: &LoadState, unsaid: &LoadState) -> Vec<Load> {
    let mut loads = things(build);
    loads.extend(contents(build, name, state.food.as_ref().or(unsaid.food.as_ref())));
    loads.extend(supplies(build, name, state, unsaid));
    loads
}

/// Every item that something is known to weigh.
pub(crate) fn things(build: &Build) -> Vec<Load> {
    let weigh = |(name, item): (&String, &Item)| {
        let spot = of_item(build, item);
        let (name, of) = (format!("mass of {name}"), name.clone());
        Some(Load { name, mass: item.mass.clone()?, times: None, of, spot })
    };
    build.items.iter().filter_map(weigh).collect()
}

/// What is in the items: food in the cold boxes as far as there is any, and in all others what
/// they hold, unless the vehicle is empty.
fn contents(build: &Build, state: &str, food: Option<&Given<Mass>>) -> Vec<Load> {
    let room = cold_room(build);
    let mut loads = Vec::new();
    for (name, item) in &build.items {
        let Some(holds) = &item.contents else { continue };
        let (called, mass) = match food {
            Some(food) if is_cold(item) => {
                let share = holds.likely() / room;
                (format!("food in the {name}, {state}"), food.map(|food| food.min(room) * share))
            }
            _ if state == "empty" => continue,
            _ => (format!("contents of {name}"), holds.clone()),
        };
        loads.push(Load {
            name: called,
            mass,
            times: None,
            of: name.clone(),
            spot: of_item(build, item),
        });
    }
    loads
}

/// People, water, fuel, and the food that is not in the cold boxes.
fn supplies(build: &Build, name: &str, state: &LoadState, unsaid: &LoadState) -> Vec<Load> {
    let places = &build.load_places;
    let mut loads = Vec::new();
    let mut put = |what: &str, mass: Option<Given<Mass>>, middle, key| {
        if let Some(mass) = mass {
            let spot = of_load(build, middle, key);
            let times = (what == "fuel").then(|| typical_number("fuel-density"));
            let of = what.to_owned();
            loads.push(Load { name: format!("{what}, {name}"), mass, times, of, spot });
        }
    };
    let people = state.people.as_ref().or(unsaid.people.as_ref()).cloned();
    let water = state.water.as_ref().or(unsaid.water.as_ref()).map(water_mass);
    let fuel = state.fuel.as_ref().or(unsaid.fuel.as_ref()).map(water_mass);
    let room = cold_room(build);
    let food = state
        .food
        .as_ref()
        .or(unsaid.food.as_ref())
        .map(|food| food.map(|food| if food > room { food - room } else { Mass::kg(0.0) }));
    put("people", people, &places.people, "people-place");
    put("water", water, &places.water, "water-place");
    put("fuel", fuel, &places.fuel, "fuel-place");
    put("food", food, &places.food, "food-place");
    loads
}

/// What is in the papers' figure for the bare vehicle.
pub(crate) fn in_unladen(build: &Build, unladen: &Unladen) -> Vec<Load> {
    let state = LoadState {
        water: None,
        people: unladen.people.clone(),
        fuel: unladen.fuel.clone(),
        food: None,
    };
    supplies(build, "bare", &state, &nothing())
}

/// A state of which nothing is said.
pub(crate) const fn nothing() -> LoadState {
    LoadState { water: None, people: None, fuel: None, food: None }
}

/// What of two lists is not in both: what came, and what went.
pub(crate) fn change(was: Vec<Load>, is: Vec<Load>) -> (Vec<Load>, Vec<Load>) {
    let same =
        |a: &Load, b: &Load| a.mass.value == b.mass.value && a.times == b.times && a.spot == b.spot;
    let mut went = was;
    let mut came = Vec::new();
    for load in is {
        match went.iter().position(|old| same(old, &load)) {
            Some(at) => {
                went.remove(at);
            }
            None => came.push(load),
        }
    }
    let heavy = |load: &Load| load.mass.value.high.in_kg() > 0.0;
    (came.into_iter().filter(heavy).collect(), went.into_iter().filter(heavy).collect())
}

/// Litres of water as kilograms.
fn water_mass(volume: &Given<Volume>) -> Given<Mass> {
    volume.map(|volume| Mass::kg(volume.in_litres()))
}

/// What the cold boxes hold together.
fn cold_room(build: &Build) -> Mass {
    let cold = build.items.values().filter(|item| is_cold(item));
    cold.filter_map(|item| item.contents.as_ref()).map(Given::likely).sum()
}

fn is_cold(item: &Item) -> bool {
    item.part.cooling.is_some()
}
