//! One day of the boxes of a scene, at one value for each input.

use spile_answer::Handle;
use spile_heat::HeatError;
use spile_heat::air::MoistAir;
use spile_heat::cabinet::{self, Shell};
use spile_heat::chain::{Appliance, Day, Use, settled_day, steady_day};
use spile_heat::compressor::{
    Approaches, Compressor, Consumption, Cooler, Fitted, fit_conductance,
};
use spile_heat::food::{Food, heat_to_cool};
use spile_heat::place::{Air, Given};
use spile_quantity::{
    Conductance, Length, Power, Pressure, Share, Temperature, TemperatureDifference, Time, Volume,
};
use spile_tables::cold::food;

use crate::scene::{BoxVolume, Each, Scene, SizeInputs, Values, WallInputs};

/// The pressure of the air, at the sea: it hardly counts.
const SEA_LEVEL_PA: f64 = 101_325.0;
/// Where food freezes \[°C\] (milk at −0.5 °C, from memory).
const FREEZES_C: f64 = -0.5;
/// A box that warms past this is computed no further.
pub(crate) const WARMEST_INSIDE: Temperature = Temperature::celsius(25.0);
/// Rounds in which boxes of one bay are told each other's heat.
const MOST_ROUNDS: usize = 60;
/// A change of heat \[W\] from one round to the next that counts as nothing.
const SMALL_W: f64 = 1e-6;

/// Which weather.
#[derive(Clone, Copy)]
pub(crate) enum Weather {
    /// A hot afternoon, as if it lasted.
    HotAfternoon,
    /// A hot day with its night, at its mean.
    HotDay,
    /// A cabin of this temperature.
    Cabin(Temperature),
}

/// What is taken for the bay.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum BayIs {
    /// What follows from the heat in it.
    Balanced,
    /// Kept at this temperature.
    KeptAt(Temperature),
}

/// A box ready to be computed, and what is put into it.
pub(crate) struct Ready {
    pub(crate) appliance: Appliance,
    pub(crate) used: Use,
    /// The conductance found for its walls, with how far its papers are missed.
    pub(crate) walls: Fitted<Conductance>,
    /// What leaves its bay for each kelvin; `None` where it stands free.
    pub(crate) bay: Option<Conductance>,
}

impl Scene<'_> {
    pub(crate) fn cabin(&self, values: &impl Values, weather: Weather) -> Temperature {
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
    pub(crate) fn days(
        &self,
        values: &impl Values,
        weather: Weather,
        bay_is: BayIs,
    ) -> Result<Vec<Day>, HeatError> {
        self.each_day(values, weather, |ready, cabin, others| ready.day(cabin, others, bay_is))
    }

    /// The same with every box at the temperature that it comes to: where a compressor cannot hold
    /// it, heat that it leaves in the box does not cool the bay for ever.
    pub(crate) fn settled_days(
        &self,
        values: &impl Values,
        weather: Weather,
        bay_is: BayIs,
    ) -> Result<Vec<Day>, HeatError> {
        self.each_day(values, weather, |ready, cabin, others| {
            ready.settled_day(cabin, others, bay_is)
        })
    }

    fn each_day(
        &self,
        values: &impl Values,
        weather: Weather,
        day_of: impl Fn(&Ready, Temperature, Power) -> Result<Day, HeatError>,
    ) -> Result<Vec<Day>, HeatError> {
        let cabin = self.cabin(values, weather);
        let ready: Vec<Ready> =
            (0..self.each.len()).map(|i| self.ready(i, values, cabin)).collect::<Result<_, _>>()?;
        let mut heats_w = vec![0.0; ready.len()];
        let mut days = Vec::with_capacity(ready.len());
        for round in 0..MOST_ROUNDS {
            let mut change_w = 0.0_f64;
            for (i, one) in ready.iter().enumerate() {
                let mates = self.boxes.iter().zip(&heats_w).enumerate();
                let others_w = mates
                    .filter(|(j, (mate, _))| *j != i && mate.shares_bay(&self.boxes[i]))
                    .map(|(_, (_, heat_w))| heat_w)
                    .sum();
                let day = day_of(one, cabin, Power::w(others_w))?;
                let heat_w = (day.given.cabinet + day.given.condenser).in_w();
                change_w = change_w.max((heat_w - heats_w[i]).abs());
                heats_w[i] = heat_w;
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

    fn any_share_a_bay(&self) -> bool {
        let boxes = &self.boxes;
        boxes
            .iter()
            .enumerate()
            .any(|(i, one)| boxes[i + 1..].iter().any(|two| one.shares_bay(two)))
    }

    /// One box at these values.
    pub(crate) fn ready(
        &self,
        i: usize,
        values: &impl Values,
        cabin: Temperature,
    ) -> Result<Ready, HeatError> {
        let (shared, each) = (&self.shared, &self.each[i]);
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
            bay: each.bay.map(|bay| bay.conductance(values)),
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
    pub(crate) fn day(
        &self,
        cabin: Temperature,
        others: Power,
        bay_is: BayIs,
    ) -> Result<Day, HeatError> {
        steady_day(&self.appliance, self.used, cabin, |given| {
            Ok(self.air(cabin, others, bay_is, given))
        })
    }

    /// Its day at the temperature that it comes to; as warm as is computed where that is warmer.
    fn settled_day(
        &self,
        cabin: Temperature,
        others: Power,
        bay_is: BayIs,
    ) -> Result<Day, HeatError> {
        let air = |given| Ok(self.air(cabin, others, bay_is, given));
        match settled_day(&self.appliance, self.used, cabin, air) {
            Err(HeatError::NoBalance { .. }) => {
                let warm = Appliance { inside: WARMEST_INSIDE, ..self.appliance };
                steady_day(&warm, self.used, cabin, air)
            }
            settled => settled.map(|settled| settled.day),
        }
    }

    /// The air round it: the cabin's, or that of a bay that is one temperature.
    fn air(&self, cabin: Temperature, others: Power, bay_is: BayIs, given: Given) -> Air {
        let at = match (bay_is, self.bay) {
            (BayIs::KeptAt(kept), _) => kept,
            (BayIs::Balanced, None) => cabin,
            (BayIs::Balanced, Some(bay)) => {
                let heat = given.cabinet + given.condenser + others;
                cabin.warmer(TemperatureDifference::k(heat.in_w() / bay.in_w_per_k()))
            }
        };
        Air { cabinet: at, condenser: at }
    }
}

impl BoxVolume {
    pub(crate) fn at(&self, values: &impl Values) -> Volume {
        match *self {
            Self::Said(volume) => values.at(volume),
            Self::Inner(volume) => volume,
        }
    }
}

impl SizeInputs {
    /// Walls with what gets past them, and the gasket.
    pub(crate) fn conductance(&self, values: &impl Values) -> Result<Conductance, HeatError> {
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
pub(crate) fn stated(
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
