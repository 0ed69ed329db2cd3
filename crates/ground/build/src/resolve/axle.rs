//! Limits, tyres, the bare vehicle, the towing car and the places of what is aboard: made typed.

use spile_answer::Basis;

use super::plausible as p;
use super::{Resolver, text};
use crate::axle::{AxleLimits, Axles, LoadPlaces, Middle, Tag, Towing, Tyres, Unladen};
use crate::file::{
    BuildFile, LimitsFile, LoadPlacesFile, MiddleFile, TagFile, TowingFile, TyresFile, UnladenFile,
};
use crate::read::{Record, Said};

/// What is known of the vehicle's axles.
pub(super) fn axles(file: &BuildFile, r: &mut Resolver<'_>) -> Axles {
    let Some(vehicle) = file.vehicle.as_ref().map(|said| said.value.clone()) else {
        return Axles::default();
    };
    let tyres = vehicle.tyres.as_ref().map(|said| said.value.clone()).unwrap_or_default();
    Axles {
        track: r.taped(&vehicle.track, p::OUTSIDE_M),
        limits: limits(vehicle.limits.as_ref(), r),
        front: tyres.front.as_ref().map(|said| one_axle(said, r)),
        rear: tyres.rear.as_ref().map(|said| one_axle(said, r)),
        tag_tyres: tyres.tag.as_ref().map(|said| one_axle(said, r)),
        tag: vehicle.tag.as_ref().map(|Said { value: TagFile { behind, share, .. }, .. }| Tag {
            behind: r.taped(behind, p::OUTSIDE_M),
            share: r.papers(share, p::SHARE),
        }),
        unladen: vehicle.unladen.as_ref().and_then(|said| unladen(said, r)),
        towing: vehicle.towing.as_ref().map(|said| towing(&said.value, r)),
    }
}

/// Where that which is aboard sits.
pub(super) fn load_places(file: &BuildFile, r: &mut Resolver<'_>) -> LoadPlaces {
    let said = file.states.as_ref().and_then(|states| states.value.at.as_ref());
    let Some(Said { value: LoadPlacesFile { water, people, fuel, food, .. }, .. }) = said else {
        return LoadPlaces::default();
    };
    let mut middle = |said: &Option<Said<MiddleFile>>| {
        said.as_ref().map(|said| one_middle(said, r)).unwrap_or_default()
    };
    LoadPlaces {
        water: middle(water),
        people: middle(people),
        fuel: middle(fuel),
        food: middle(food),
    }
}

fn one_middle(said: &Said<MiddleFile>, r: &mut Resolver<'_>) -> Middle {
    let MiddleFile { from_rear, from_left, from_right, .. } = &said.value;
    if from_left.is_some()
        && let Some(right) = from_right
    {
        r.reader.tell(
            &right.at,
            "the place of a load is told from both sides",
            "one too many",
            "keep from_left or from_right",
        );
    }
    Middle {
        from_rear: r.given(from_rear, Basis::Measured, p::DISTANCE_M),
        from_left: r.given(from_left, Basis::Measured, p::DISTANCE_M),
        from_right: r.given(from_right, Basis::Measured, p::DISTANCE_M),
    }
}

fn limits(said: Option<&Said<LimitsFile>>, r: &mut Resolver<'_>) -> AxleLimits {
    let Some(Said { value: LimitsFile { front, rear, tag, total, nose, .. }, .. }) = said else {
        return AxleLimits::default();
    };
    let [front, rear, tag, total, nose] =
        [front, rear, tag, total, nose].map(|q| r.papers(q, p::PLATE_KG));
    AxleLimits { front, rear, tag, total, nose }
}

fn one_axle(said: &Said<TyresFile>, r: &mut Resolver<'_>) -> Tyres {
    let TyresFile { load_index, load_index_twin, count, load, .. } = &said.value;
    for index in [load_index, load_index_twin].into_iter().flatten() {
        if !(40..=180).contains(&index.value) {
            r.reader.tell(
                &index.at,
                format!("a tyre of a vehicle has no load index of {}", index.value),
                "not plausible",
                "it is the number before the letter of speed on the tyre's side: of 225/75 R16 121/119 R it is 121",
            );
        }
    }
    if let Some(said) = count
        && !(matches!(said.value, 2 | 4 | 6 | 8 | 12))
    {
        r.reader.tell(
            &said.at,
            format!("an axle cannot have {} tyres", said.value),
            "not plausible",
            "2 for single wheels, 4 for twins or for two axles of a trailer",
        );
    }
    let whole = |said: &Option<Said<u32>>| said.as_ref().map(|said| said.value);
    Tyres {
        index: whole(load_index),
        twin_index: whole(load_index_twin),
        count: whole(count),
        load: r.papers(load, p::TYRE_KG),
        source: r.files.place(&said.at),
    }
}

fn unladen(said: &Said<UnladenFile>, r: &mut Resolver<'_>) -> Option<Unladen> {
    let UnladenFile { front, rear, fuel, people, .. } = &said.value;
    r.lacking(&said.at, "the bare vehicle", &said.value.lacks(&["front", "rear"]));
    let [front, rear] = [front, rear].map(|q| r.papers(q, p::MASS_KG));
    let (fuel, people) = (r.papers(fuel, p::VOLUME_M3), r.papers(people, p::MASS_KG));
    Some(Unladen { front: front?, rear: rear?, fuel, people })
}

fn towing(file: &TowingFile, r: &mut Resolver<'_>) -> Towing {
    Towing {
        about: text(&file.about),
        wheelbase: r.taped(&file.wheelbase, p::OUTSIDE_M),
        overhang: r.taped(&file.overhang, p::DISTANCE_M),
        front: r.given(&file.front, Basis::Measured, p::MASS_KG),
        rear: r.given(&file.rear, Basis::Measured, p::MASS_KG),
        limits: limits(file.limits.as_ref(), r),
    }
}
