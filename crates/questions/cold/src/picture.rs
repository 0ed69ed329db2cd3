//! What a plot of cold boxes shows: energy and running time against the warmth of the cabin.

use spile_build::Build;
use spile_heat::HeatError;
use spile_heat::scene::{BayIs, Cold, Scene, Weather, compressors};
use spile_quantity::{Energy, Power, Temperature, Time};

/// The warmth of the cabin \[°C\] for which days are computed: the first, the last, and the step.
const CABINS_C: [f64; 3] = [10.0, 45.0, 1.0];

/// All compressor boxes of a build that can be computed, every input at its likely value.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// What the boxes are called, in the order of their names.
    pub boxes: Vec<String>,
    /// Steady days, the coolest cabin first; those of a cabin in which nothing balances are left
    /// out.
    pub days: Vec<At>,
    /// The cabin on an ordinary day.
    pub mild: Temperature,
    /// The cabin on a hot day.
    pub hot: Temperature,
}

/// A steady day in a cabin of one temperature.
#[derive(Debug, Clone, PartialEq)]
pub struct At {
    /// The cabin.
    pub cabin: Temperature,
    /// What all boxes use in the day.
    pub energy: Energy,
    /// The share of the time that each would have to run; above 1 it cannot keep up.
    pub duty: Vec<f64>,
    /// What comes into each, all of it.
    pub heat: Vec<Power>,
}

/// The boxes of a build; `None` where there is none that can be computed.
pub fn picture(build: &Build) -> Option<Picture> {
    let boxes: Vec<Cold<'_>> = compressors(build).filter(Cold::is_computable).collect();
    if boxes.is_empty() {
        return None;
    }
    let called = boxes.iter().map(|cold| cold.item.about.clone()).collect();
    let scene = Scene::new(build, boxes, false)?;
    let [first_c, last_c, step_c] = CABINS_C;
    let count = ((last_c - first_c) / step_c).round() as usize;
    let cabins = (0..=count).map(|step| Temperature::celsius(first_c + step as f64 * step_c));
    let [mild, hot] =
        [&build.corners.mild_cabin, &build.corners.hot_cabin].map(spile_answer::Given::likely);
    let days = cabins.filter_map(|cabin| at(&scene, cabin).ok()).collect();
    Some(Picture { boxes: called, days, mild, hot })
}

fn at(scene: &Scene<'_>, cabin: Temperature) -> Result<At, HeatError> {
    let days = scene.days(&scene.ledger.likely(), Weather::Cabin(cabin), BayIs::Balanced)?;
    let power: Power = days.iter().map(|day| day.power).sum();
    Ok(At {
        cabin,
        energy: power * Time::days(1.0),
        duty: days.iter().map(|day| day.duty).collect(),
        heat: days.iter().map(|day| day.load.total()).collect(),
    })
}
