//! What stands on which wheel, for whoever draws it.

use spile_build::Build;
use spile_build::file::VehicleKind;
use spile_quantity::{Length, Mass};

use crate::scene::Scene;
use crate::statics::{Supports, centre};
use crate::{aboard, scene};

/// A load on an axle, or on the coupling of a trailer.
#[derive(Debug, Clone, PartialEq)]
pub struct OnAxle {
    /// `front`, `rear`, `tag` or `nose`.
    pub name: &'static str,
    /// Where it is, from the inside rear face forward.
    pub at: Length,
    /// What it carries.
    pub load: Mass,
    /// What the plate allows, where that is known.
    pub plate: Option<Mass>,
}

/// A vehicle on its axles in one load state, everything at its likely value.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// The load state.
    pub state: String,
    /// Its axles, the rearmost first.
    pub axles: Vec<OnAxle>,
    /// All of it.
    pub total: Mass,
    /// The middle of its mass, from the inside rear face forward.
    pub centre: Length,
    /// What more its left wheels carry than its right ones; below nought where they carry less.
    pub left_over_right: Mass,
    /// From the middle of the left wheels to that of the right ones.
    pub track: Length,
}

/// The vehicle on its axles in every load state; none where its masses or its wheelbase are not
/// known.
pub fn standings(build: &Build) -> Vec<Standing> {
    let stands = build.stands.as_deref().unwrap_or(build);
    let (Some(base), Some(wheelbase)) = (scene::base(stands), &build.vehicle.wheelbase) else {
        return Vec::new();
    };
    let nothing = aboard::nothing();
    let states: Vec<_> = if build.loads.is_empty() {
        vec![(scene::AS_WEIGHED, &nothing)]
    } else {
        build.loads.iter().map(|(name, state)| (name.as_str(), state)).collect()
    };
    let scene = |state| Scene::new(build, &base, wheelbase, state);
    states.into_iter().filter_map(|state| standing(build, &scene(state))).collect()
}

fn standing(build: &Build, scene: &Scene) -> Option<Standing> {
    let point = scene.ledger.likely();
    let loads = scene.loads(&point)?;
    let (rear, behind) = (scene.rear_axle(&point), scene.behind(&point));
    let between = scene.between(&point);
    let (total, forward) =
        centre(Supports { front: loads.front, rear: loads.rear }, between).ok()?;
    let limits = &build.vehicle.axles.limits;
    let mut axles = Vec::new();
    let mut put = |name, at, load, plate: &Option<spile_answer::Given<Mass>>| {
        let plate = plate.as_ref().map(spile_answer::Given::likely);
        axles.push(OnAxle { name, at, load, plate });
    };
    let mut on_rear = loads.rear;
    if let Some((far, share)) = scene.on_tag(&point) {
        let on_tag = loads.rear * share.in_of_one();
        on_rear = on_rear - on_tag;
        put("tag", rear - far, on_tag, &limits.tag);
    }
    put("rear", rear, on_rear, &limits.rear);
    let (name, plate) = match build.vehicle.kind {
        VehicleKind::Trailer => ("nose", &limits.nose),
        _ => ("front", &limits.front),
    };
    put(name, rear - behind + between, loads.front, plate);
    Some(Standing {
        state: scene.state.clone(),
        axles,
        total,
        centre: rear - behind + forward,
        left_over_right: loads.left_over_right(),
        track: scene.track(&point),
    })
}
