//! What a section through a bay shows: how warm it is, and what heat and air go where.

use spile_build::{Bay, Build};
use spile_heat::HeatError;
use spile_heat::openings::carried;
use spile_heat::scene::{BayIs, Heats, Vents};
use spile_quantity::{Flow, Power, Temperature};

use crate::place::Place;

/// A bay on a hot afternoon, every input at its likely value.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// The name of the bay.
    pub name: String,
    /// The cabin round it.
    pub cabin: Temperature,
    /// The air in it.
    pub bay: Temperature,
    /// What cold boxes give to it, less what they draw in.
    pub boxes: Power,
    /// What inverters, chargers and the bank give to it.
    pub machines: Power,
    /// What leaves through furniture and skin; where the whole was measured, all that leaves.
    pub walls: Power,
    /// The air through it; `None` where no openings are told or asked for.
    pub stream: Option<Stream>,
}

/// The air through a bay.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stream {
    /// How much.
    pub flow: Flow,
    /// The heat that it carries out.
    pub carried: Power,
    /// As it comes in: the cabin's, with what has been in the bay before.
    pub incoming: Temperature,
    /// The share of it that has been in the bay before, 0 to 1.
    pub drawn_in: f64,
    /// Whether it goes from the inlet to the outlet, and not the other way.
    pub forward: bool,
    /// Whether it follows from the openings that are told, and is not only usual.
    pub known: bool,
}

/// Every bay that something warms and that can be computed, by name.
pub fn pictures(build: &Build) -> Vec<Picture> {
    let bays = build.bays.iter();
    bays.filter_map(|(name, bay)| picture(build, name, bay)).collect()
}

fn picture(build: &Build, name: &str, bay: &Bay) -> Option<Picture> {
    let place = Place::new(build, name, bay)?;
    drawn(&place).ok()
}

fn drawn(place: &Place<'_>) -> Result<Picture, HeatError> {
    let values = place.ledger().likely();
    let (bay, cabin) = (place.temperature(&values)?, place.cabin(&values));
    let at = place.place(&values)?;
    let over = bay.above(cabin);
    let mut walls = at.walls;
    let stream = match (&at.through, place.inputs.heats) {
        (Some(through), _) => Some(Stream {
            flow: through.flow(bay, cabin)?,
            carried: through.conductance(bay, cabin)? * over,
            incoming: cabin.warmer(over * through.drawn_in),
            drawn_in: through.drawn_in,
            forward: through.is_forward(bay, cabin)?,
            known: true,
        }),
        (None, Heats::Assumed { to_cabin, to_outside, vents: Some(Vents::Flow(flow)) }) => {
            walls = values.at(to_cabin) + values.at(to_outside);
            let flow = values.at(flow);
            Some(Stream {
                flow,
                carried: carried(flow, spile_heat::scene::WARM_AIR)? * over,
                incoming: cabin,
                drawn_in: 0.0,
                forward: true,
                known: false,
            })
        }
        _ => None,
    };
    Ok(Picture {
        name: place.name.to_owned(),
        cabin,
        bay,
        boxes: place.of_boxes(&values, BayIs::Balanced)?,
        machines: at.machines,
        walls: walls * over,
        stream,
    })
}
