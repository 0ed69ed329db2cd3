//! What cannot be said, and how to get the number that is missing.

use spile_answer::{Ask, Finding, Verdict};
use spile_build::Build;
use spile_build::file::{PartKind, VehicleKind};

use crate::Case;
use crate::scene::Base;

/// A finding that is open until one number is given.
pub(crate) fn open(id: &str, label: &str, says: String, input: &str, how: &str) -> Finding {
    let mut finding = Finding::plain(id, label, Verdict::Open, says);
    finding.asks.push(Ask::missing(input.to_owned(), how.to_owned(), label));
    finding
}

/// Why nothing can be computed at all, if so.
pub(crate) fn cannot_begin(build: &Build, base: Option<&Base<'_>>) -> Option<Finding> {
    let vehicle = &build.vehicle;
    if vehicle.kind == VehicleKind::Boat {
        let says = "A boat has no axles; how it floats with all that is aboard is not computed.";
        return Some(Finding::plain("boat", "axles of a boat", Verdict::Open, says));
    }
    let Some(base) = base else {
        return Some(no_weighing(build));
    };
    if base.weighed && base.state.is_none() && !build.loads.is_empty() {
        return Some(open(
            "state",
            "load state on the weighbridge",
            format!(
                "Nothing is said of what was aboard at {}, so no other load state can be told from it.",
                base.about
            ),
            "load state on the weighbridge",
            "Say which load state it was in when it was weighed: [weighings.NAME] state = \"touring\".",
        ));
    }
    if vehicle.wheelbase.is_none() {
        let (input, how) = if vehicle.kind == VehicleKind::Trailer {
            (
                "from coupling to axle",
                "Lay a tape along the trailer from the middle of the coupling to the middle of the axle (of two axles: midway): [vehicle] wheelbase = \"3200 mm\".",
            )
        } else {
            (
                "wheelbase",
                "Read it in the vehicle's papers, or lay a tape from the middle of the front wheel to that of the rear wheel: [vehicle] wheelbase = \"3820 mm\".",
            )
        };
        return Some(open(
            "wheelbase",
            "wheelbase",
            format!("Without the length {input}, no load can be shared out."),
            input,
            how,
        ));
    }
    let unsaid =
        vehicle.axles.tag.as_ref().filter(|tag| tag.share.is_none() || tag.behind.is_none());
    unsaid.map(|_| {
        open(
            "tag",
            "share of the tag axle",
            "A tag axle carries what its springs give it; without its share and its place, nothing can be said of either rear axle.".to_owned(),
            "share of the tag axle",
            "Read the share in the vehicle's papers, or weigh both rear axles one by one and divide; lay a tape from the driven wheel to the tag wheel: [vehicle] tag = { behind = \"1200 mm\", share = \"40 %\" }.",
        )
    })
}

fn no_weighing(build: &Build) -> Finding {
    let trailer = build.vehicle.kind == VehicleKind::Trailer;
    let (parts, keys) = if trailer {
        ("the coupling and the axle", "front (the coupling), rear (the axle)")
    } else {
        ("the front axle and the rear axle", "front, rear")
    };
    let how = format!(
        "Drive to a public weighbridge (waste station, quarry, farm merchant) with the people, water, fuel and food aboard that one of your load states names, best the fullest, and ask for {parts} one by one; where they let you, for the left and the right wheels too. Write [weighings.NAME] with date, state, {keys}, left, right."
    );
    open(
        "weighing",
        "axle loads",
        format!(
            "Neither a weighing with {parts} nor the papers of the bare vehicle are there, so nothing can be said of any axle."
        ),
        "weighing",
        &how,
    )
}

/// The build has no load states.
pub(crate) fn no_states() -> Finding {
    open(
        "states",
        "load states",
        "Nothing is said of what is aboard when it is full; only the vehicle as weighed is judged."
            .to_owned(),
        "load states",
        "Say what is aboard when it is fullest: [states.load.full] people = \"150 kg\", water = \"95 L\", fuel = \"90 L\", food = \"40 kg\"; and the same for the state that was weighed.",
    )
}

/// Things that came, went or were moved since the weighing, and of which no mass is known. A light
/// weighs nothing that counts.
pub(crate) fn no_masses(case: &Case<'_>) -> Vec<Finding> {
    let (was, is) = (&case.stands.items, &case.build.items);
    let listed = !case.base.weighed;
    let came = is.iter().filter(|(name, item)| listed || was.get(*name) != Some(*item));
    let went = was.iter().filter(|(name, _)| !listed && !is.contains_key(*name));
    came.chain(went)
        .filter(|(_, item)| item.mass.is_none() && item.part.kind != PartKind::Light)
        .map(|(name, item)| {
            open(
                &format!("{name}.mass"),
                &format!("mass of the {name}"),
                format!("Nothing is said of what the {} weighs, so what it does to the axles is not counted.", item.about),
                &format!("mass of the {name}"),
                "Read it in its papers, or stand on a bathroom scale with it and without it: mass = \"28 kg\".",
            )
        })
        .collect()
}

/// A limit of the plate that is not there.
pub(crate) fn no_limit(id: &str, label: &str, figure: &str, key: &str) -> Finding {
    let how = format!(
        "Read the plate (in the door's frame, under the bonnet, on a trailer's drawbar) or the registration papers: [vehicle] limits = {{ {key} = \"..\" }}."
    );
    let input = format!("limit of {label}");
    open(id, label, format!("{figure}, but what the plate allows is not said."), &input, &how)
}
