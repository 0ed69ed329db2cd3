//! One day of the boxes of a scene, at one value for each input.

use crate::air::MoistAir;
use crate::cabinet::{self, Shell};
use crate::chain::{Appliance, Day, Pace, Use, settled_day, steady_day};
use crate::compressor::{Approaches, Compressor, Consumption, Cooler, Fitted, fit_conductance};
use crate::error::HeatError;
use crate::food::{Food, heat_to_cool};
use crate::place::{Air, Given, Standing};
use spile_answer::Handle;
use spile_build::Bay;
use spile_quantity::{Conductance, Length, Power, Pressure, Share, Temperature, Time, Volume};
use spile_tables::cold::food;

use super::bay::{BayInputs, BayPlace};
use super::{BoxVolume, Each, Scene, SizeInputs, Values, WallInputs};

/// The pressure of the air, at the sea: it hardly counts.
const SEA_LEVEL_PA: f64 = 101_325.0;
/// Where food freezes \[°C\] (milk at −0.5 °C, from memory).
const FREEZES_C: f64 = -0.5;
/// A box that warms past this is computed no further.
pub const WARMEST_INSIDE: Temperature = Temperature::celsius(25.0);
/// Rounds in which boxes of one bay are told each other's heat.
const MOST_ROUNDS: usize = 60;
/// A change of heat \[W\] from one round to the next that counts as nothing.
const SMALL_W: f64 = 1e-6;

/// Which weather.
#[derive(Debug, Clone, Copy)]
pub enum Weather {
    /// A hot afternoon, as if it lasted.
    HotAfternoon,
    /// A hot day with its night, at its mean.
    HotDay,
    /// A cabin of this temperature.
    Cabin(Temperature),
}

/// What is taken for the bay.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BayIs {
    /// What follows from the heat in it.
    Balanced,
    /// Kept at this temperature.
    KeptAt(Temperature),
}

/// A box ready to be computed, and what is put into it.
#[derive(Debug, Clone, Copy)]
pub struct Ready {
    /// The box.
    pub appliance: Appliance,
    /// What people do to it.
    pub used: Use,
    /// The conductance found for its walls, with how far its papers are missed.
    pub walls: Fitted<Conductance>,
    /// The bay round its cabinet; `None` where it stands free.
    pub bay: Option<BayPlace>,
    /// The bay round its condenser, where that is another.
    pub recess: Option<BayPlace>,
}

impl Scene<'_> {
    /// The cabin in that weather.
    pub fn cabin(&self, values: &impl Values, weather: Weather) -> Temperature {
        let hot = values.at(self.shared.cabin);
        match weather {
            Weather::HotAfternoon => hot,
            Weather::HotDay => {
                let below = self.shared.mean_below.map_or_else(Default::default, |k| values.at(k));
                hot.warmer(-below)
            }
            Weather::Cabin(cabin) => cabin,
        }
    }

    /// The day of every box held at the temperature it is set to, those of one bay warming each
    /// other.
    pub fn days(
        &self,
        values: &impl Values,
        weather: Weather,
        bay_is: BayIs,
    ) -> Result<Vec<Day>, HeatError> {
        self.each_day(values, weather, |ready, cabin, others| ready.day(cabin, others, bay_is))
    }

    /// The same with every box at the temperature that it comes to: where a compressor cannot hold
    /// it, heat that it leaves in the box does not cool the bay for ever.
    pub fn settled_days(
        &self,
        values: &impl Values,
        weather: Weather,
        bay_is: BayIs,
    ) -> Result<Vec<Day>, HeatError> {
        self.each_day(values, weather, |ready, cabin, others| {
            ready.settled_day(cabin, others, bay_is)
        })
    }

    /// The days as they come: held where every compressor can, else with the boxes at what they
    /// come to.
    pub fn coming_days(
        &self,
        values: &impl Values,
        weather: Weather,
        bay_is: BayIs,
    ) -> Result<Vec<Day>, HeatError> {
        let held = self.days(values, weather, bay_is)?;
        self.as_they_come(held, values, weather, bay_is)
    }

    /// The same from the days held.
    pub fn as_they_come(
        &self,
        held: Vec<Day>,
        values: &impl Values,
        weather: Weather,
        bay_is: BayIs,
    ) -> Result<Vec<Day>, HeatError> {
        if held.iter().any(|day| day.pace == Pace::Saturated) {
            return self.settled_days(values, weather, bay_is);
        }
        Ok(held)
    }

    fn each_day(
        &self,
        values: &impl Values,
        weather: Weather,
        day_of: impl Fn(&Ready, Temperature, Given) -> Result<Day, HeatError>,
    ) -> Result<Vec<Day>, HeatError> {
        let cabin = self.cabin(values, weather);
        let ready: Vec<Ready> = (0..self.each.len())
            .map(|i| self.ready(i, values, weather))
            .collect::<Result<_, _>>()?;
        let nothing = Given { cabinet: Power::w(0.0), condenser: Power::w(0.0) };
        let mut given = vec![nothing; ready.len()];
        let mut days = Vec::with_capacity(ready.len());
        for round in 0..MOST_ROUNDS {
            let mut change_w = 0.0_f64;
            for (i, one) in ready.iter().enumerate() {
                let day = day_of(one, cabin, self.heat_of_others(i, &given))?;
                let changes = [
                    day.given.cabinet - given[i].cabinet,
                    day.given.condenser - given[i].condenser,
                ];
                change_w =
                    changes.iter().fold(change_w, |most, change| most.max(change.in_w().abs()));
                given[i] = day.given;
                if round == 0 {
                    days.push(day);
                } else {
                    days[i] = day;
                }
            }
            if !self.any_share_a_bay() || change_w <= SMALL_W {
                break;
            }
        }
        Ok(days)
    }

    /// The heat that all boxes together give to a bay on these days.
    pub fn heat_into(&self, bay: &str, days: &[Day]) -> Power {
        let given = self.boxes.iter().zip(days).flat_map(|(cold, day)| {
            [(cold.bay, day.given.cabinet), (cold.condenser_bay(), day.given.condenser)]
        });
        let there = given.filter(|(place, _)| place.is_some_and(|(name, _)| name == bay));
        there.map(|(_, heat)| heat).sum()
    }

    /// The heat that the other boxes give to the bays round cabinet and condenser of one.
    fn heat_of_others(&self, i: usize, given: &[Given]) -> Given {
        let one = &self.boxes[i];
        let into = |bay: Option<(&str, &Bay)>| -> Power {
            let Some((bay, _)) = bay else { return Power::w(0.0) };
            let is_it = |place: Option<(&str, &Bay)>| place.is_some_and(|(name, _)| name == bay);
            let mates = self.boxes.iter().zip(given).enumerate().filter(|(j, _)| *j != i);
            mates
                .flat_map(|(_, (mate, given))| {
                    [(mate.bay, given.cabinet), (mate.condenser_bay(), given.condenser)]
                })
                .filter(|(place, _)| is_it(*place))
                .map(|(_, heat)| heat)
                .sum()
        };
        Given { cabinet: into(one.bay), condenser: into(one.recess) }
    }

    fn any_share_a_bay(&self) -> bool {
        let boxes = &self.boxes;
        boxes
            .iter()
            .enumerate()
            .any(|(i, one)| boxes[i + 1..].iter().any(|two| one.shares_bay(two)))
    }

    /// One box at these values, in that weather.
    pub fn ready(
        &self,
        i: usize,
        values: &impl Values,
        weather: Weather,
    ) -> Result<Ready, HeatError> {
        let (shared, each) = (&self.shared, &self.each[i]);
        let cabin = self.cabin(values, weather);
        let place = |bay: &BayInputs| match weather {
            Weather::HotAfternoon => bay.place(values),
            Weather::HotDay | Weather::Cabin(_) => bay.place_over_a_day(values),
        };
        let inside = values.at(shared.inside);
        let approaches = Approaches {
            evaporator: values.at(shared.evaporator),
            condenser: values.at(shared.condenser),
            least_lift: values.at(shared.least_lift),
        };
        let standby = values.at(shared.standby);
        let carnot = values.at(shared.carnot).in_of_one();
        let (walls, light_and_fan) = match &each.walls {
            WallInputs::Papers(figures) => {
                let stated = stated(figures, values);
                // Light and fan are in the figure that the walls are fitted to.
                (fit_conductance(&stated, carnot, approaches, standby)?, Power::w(0.0))
            }
            WallInputs::Sizes(sizes) => {
                let value = sizes.conductance(values)?;
                (Fitted { value, worst_miss: 0.0 }, values.at(sizes.light_and_fan))
            }
        };
        let compressor = Compressor::new(carnot, approaches, values.at(each.power))?;
        Ok(Ready {
            appliance: Appliance {
                cooler: Cooler::Compressor(compressor),
                inside,
                walls_to_bay: walls.value * (1.0 - each.cabin_share),
                walls_to_cabin: walls.value * each.cabin_share,
                light_and_fan,
                standby,
                voltage: values.at(shared.system),
            },
            used: self.used(each, values, cabin, inside)?,
            walls,
            bay: each.bay.as_ref().map(place).transpose()?,
            recess: each.recess.as_ref().map(place).transpose()?,
        })
    }

    fn used(
        &self,
        each: &Each,
        values: &impl Values,
        cabin: Temperature,
        inside: Temperature,
    ) -> Result<Use, HeatError> {
        let shared = &self.shared;
        let air = |temperature, humidity: Handle<Share>| MoistAir {
            temperature,
            relative_humidity: values.at(humidity).in_of_one(),
            pressure: Pressure::pa(SEA_LEVEL_PA),
        };
        let openings = cabinet::openings(
            values.at(shared.openings).in_of_one(),
            values.at(each.air_change).in_of_one(),
            each.volume.at(values),
            air(cabin, shared.cabin_humidity),
            air(inside, shared.fridge_humidity),
        )?;
        let mass =
            values.at(shared.warm_food) * (values.at(shared.people).in_of_one() * each.food_share);
        let food = heat_to_cool(&mixed_food(), mass, cabin.max(inside), inside)?;
        Ok(Use { openings: openings.heat, food: food / Time::days(1.0) })
    }
}

impl Ready {
    /// Its day in a cabin, with the heat of others in its bay.
    pub fn day(&self, cabin: Temperature, others: Given, bay_is: BayIs) -> Result<Day, HeatError> {
        steady_day(&self.appliance, self.used, cabin, |standing| {
            self.air(cabin, others, bay_is, standing)
        })
    }

    /// Its day at the temperature that it comes to; as warm as is computed where that is warmer.
    fn settled_day(
        &self,
        cabin: Temperature,
        others: Given,
        bay_is: BayIs,
    ) -> Result<Day, HeatError> {
        let air = |standing| self.air(cabin, others, bay_is, standing);
        match settled_day(&self.appliance, self.used, cabin, air) {
            Err(HeatError::NoBalance { .. }) => {
                let warm = Appliance { inside: WARMEST_INSIDE, ..self.appliance };
                steady_day(&warm, self.used, cabin, air)
            }
            settled => settled.map(|settled| settled.day),
        }
    }

    /// The air round it: the cabin's, or that of bays that are one temperature each.
    fn air(
        &self,
        cabin: Temperature,
        others: Given,
        bay_is: BayIs,
        standing: Standing,
    ) -> Result<Air, HeatError> {
        if let BayIs::KeptAt(kept) = bay_is {
            return Ok(Air { cabinet: kept, condenser: kept });
        }
        let round_cabinet = |heat: Power| {
            self.bay.as_ref().map_or(Ok(cabin), |bay| bay.settles_round(&standing, heat, cabin))
        };
        let Some(recess) = &self.recess else {
            let at = round_cabinet(standing.condenser + others.cabinet)?;
            return Ok(Air { cabinet: at, condenser: at });
        };
        Ok(Air {
            cabinet: round_cabinet(others.cabinet)?,
            condenser: recess.settles(standing.condenser + others.condenser, cabin)?,
        })
    }
}

impl BoxVolume {
    /// The volume at these values.
    pub fn at(&self, values: &impl Values) -> Volume {
        match *self {
            Self::Said(volume) => values.at(volume),
            Self::Inner(volume) => volume,
        }
    }
}

impl SizeInputs {
    /// Walls with what gets past them, and the gasket.
    pub fn conductance(&self, values: &impl Values) -> Result<Conductance, HeatError> {
        let outside = self.outside.map(|side| values.at(side));
        let walls = cabinet::walls(&Shell {
            outside,
            wall: values.at(self.wall),
            insulation: values.at(self.foam),
            inside_film_w_per_m2_k: values.at(self.film_inside).in_of_one(),
            outside_film_w_per_m2_k: values.at(self.film_outside).in_of_one(),
        })?;
        let gasket = cabinet::gasket(self.rim(outside), values.at(self.gasket))?;
        Ok(walls.total * values.at(self.bridges).in_of_one() + gasket)
    }

    /// Round the door, or round the lid.
    fn rim(&self, [width, height, depth]: [Length; 3]) -> Length {
        (width + if self.lidded { depth } else { height }) * 2.0
    }
}

/// The consumptions of the papers at these values.
pub fn stated(
    figures: &[(Handle<Temperature>, Handle<Temperature>, Handle<spile_quantity::Energy>)],
    values: &impl Values,
) -> Vec<Consumption> {
    let one = |&(ambient, inside, per_day)| Consumption {
        per_day: values.at(per_day),
        ambient: values.at(ambient),
        inside: values.at(inside),
    };
    figures.iter().map(one).collect()
}

/// What food and drink hold, taken as milk: between vegetables and meat.
fn mixed_food() -> Food {
    let row = food("milk").expect("the table of foods has milk");
    Food {
        cp_j_per_kg_k: row.value.above_j_per_kg_k,
        cp_frozen_j_per_kg_k: row.value.below_j_per_kg_k,
        latent_j_per_kg: row.value.latent_j_per_kg,
        freezes: Temperature::celsius(FREEZES_C),
    }
}
