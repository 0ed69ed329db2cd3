//! Openings and fans: are they large enough, do they lead somewhere, does the fan blow the right way?

use spile_answer::{
    Class, Finding, Given, Ledger, Limit, Reason, Sense, Unit, Verdict, Worse, swing,
};
use spile_build::file::{Blows, LeadsTo, Which};
use spile_build::{Bay, BayAir, Build, Vent, typical};
use spile_heat::scene::compressors;
use spile_quantity::Area;

use crate::place::Place;
use crate::words::{ask, number, open, practice, settle, told, up};

/// How to get a free area.
const FREE_AREA: &str = "Width times height of the opening, less what bars and mesh cover; `0 cm2` where there is none.";

/// The openings of a bay against what each condenser in it asks for.
pub(crate) fn of_items(build: &Build, name: &str, bay: &Bay) -> Vec<Finding> {
    let mut found = Vec::new();
    for cold in compressors(build) {
        if cold.condenser_bay().is_none_or(|(other, _)| other != name) {
            continue;
        }
        let papers = &cold.part().air;
        for (which, wanted) in [(Which::Inlet, &papers.inlet), (Which::Outlet, &papers.outlet)] {
            found.extend(of_item(name, bay, cold.name, which, wanted.as_ref()));
        }
    }
    found
}

fn of_item(
    name: &str,
    bay: &Bay,
    item: &str,
    which: Which,
    wanted: Option<&Given<Area>>,
) -> Option<Finding> {
    let word = word(which);
    let id = format!("{item}.{word}");
    let label = format!("{word} of {name} for the {item}");
    let there = vent(bay, which).and_then(|vent| vent.area.as_ref());
    let Some(there) = there else {
        let wanted = wanted?;
        let says = format!(
            "The papers of the {item} ask for {} of free area at the {word}, and nothing is said of \
             the {word} of {name}.",
            cm2(wanted.likely())
        );
        let settles = format!("whether the {item} has the {word} that its papers ask for");
        let input = format!("free area at the {word} of {name}");
        return Some(open(id, label, says, vec![ask(input, FREE_AREA, &settles)]));
    };
    let mut ledger = Ledger::new();
    let area = ledger.take(format!("free area at the {word} of {name}"), there);
    let figure = |point: &spile_answer::Point| point.at(area).in_m2() * 1e4;
    let [swung] = swing(&ledger, [Worse::Lower], |point| [figure(point)]);
    let usual: Given<Area> = typical("vent-area");
    let (limit, whose) = match wanted {
        Some(wanted) => (
            Limit {
                value: wanted.likely().in_m2() * 1e4,
                sense: Sense::AtLeast,
                class: Class::Limit,
                kind: "papers",
                source: wanted.source.clone(),
                firm: told(wanted.basis) && told(there.basis),
            },
            format!("the papers of the {item} ask for {}", cm2(wanted.likely())),
        ),
        None => (
            practice(usual.value.low.in_m2() * 1e4, Sense::AtLeast),
            format!("{:.0} to {} are usual", usual.value.low.in_m2() * 1e4, cm2(usual.value.high)),
        ),
    };
    let needed = limit.value;
    let mut finding = Finding::measured(id, label, Unit::SquareCentimetre, &swung, limit, &ledger)
        .settling(&swung, &ledger, figure);
    // An opening cut to the square centimetre of the papers is as they want it.
    if finding.verdict == Verdict::Care(Reason::Tight) {
        finding.verdict = Verdict::Good;
    }
    settle(&mut finding, &format!("whether the {word} is large enough for the {item}"));
    let says = format!("The {word} of {name} is {} free, and {whose}.", cm2(there.likely()));
    let mend = (finding.verdict != Verdict::Good).then(|| {
        let more = up(needed - swung.unfavourable);
        format!("Cut the {word} {more} cm² larger, or add a second one of that area beside it.")
    });
    Some(finding.saying(says).mended(mend))
}

/// The outlet against the inlet, and what it leads to.
pub(crate) fn outlet(build: &Build, name: &str, bay: &Bay) -> Vec<Finding> {
    let (inlet, outlet) = (vent(bay, Which::Inlet), vent(bay, Which::Outlet));
    let mut found = Vec::new();
    for (which, vent) in [(Which::Inlet, inlet), (Which::Outlet, outlet)] {
        if vent.is_some_and(|vent| vent.leads_to == Some(LeadsTo::Void)) {
            found.push(void(build, name, which));
        }
    }
    let areas =
        (inlet.and_then(|vent| vent.area.as_ref()), outlet.and_then(|vent| vent.area.as_ref()));
    if let (Some(inlet), Some(outlet)) = areas {
        let mut ledger = Ledger::new();
        let [a, b] = [("inlet", inlet), ("outlet", outlet)]
            .map(|(word, area)| ledger.take(format!("free area at the {word} of {name}"), area));
        // By how much the outlet falls short of the inlet.
        let figure = |point: &spile_answer::Point| (point.at(b) - point.at(a)).in_m2() * 1e4;
        let [swung] = swing(&ledger, [Worse::Lower], |point| [figure(point)]);
        let limit = practice(0.0, Sense::AtLeast);
        let (id, label) = (format!("{name}.outlet"), format!("outlet of {name} over its inlet"));
        let mut finding =
            Finding::measured(id, label, Unit::SquareCentimetre, &swung, limit, &ledger)
                .settling(&swung, &ledger, figure);
        settle(&mut finding, "whether the outlet is as large as the inlet");
        let says = format!(
            "The outlet of {name} is {} free and the inlet {}; warm air takes up more room, so that \
             the outlet is at least the inlet's.",
            cm2(outlet.likely()),
            cm2(inlet.likely())
        );
        let mend = (finding.verdict != Verdict::Good)
            .then(|| format!("Cut the outlet {} cm² larger.", up(-swung.unfavourable)));
        found.push(finding.saying(says).mended(mend));
    }
    let heights =
        (inlet.and_then(|vent| vent.above.as_ref()), outlet.and_then(|vent| vent.above.as_ref()));
    if let (Some(inlet), Some(outlet)) = heights
        && outlet.likely() <= inlet.likely()
    {
        let says = format!(
            "The outlet of {name} is not above its inlet ({:.0} and {:.0} mm above its floor): warm \
             air rises, and comes out where cool air is to come in.",
            outlet.likely().in_m() * 1000.0,
            inlet.likely().in_m() * 1000.0
        );
        let mend = "Put the inlet low and the outlet as high as the bay allows.";
        let practice = Verdict::Care(Reason::Practice);
        let (id, label) = (format!("{name}.rise"), format!("height of the outlet of {name}"));
        found.push(Finding::plain(id, label, practice, says).mended(Some(mend.to_owned())));
    }
    found
}

/// An opening that leads to a closed space.
fn void(build: &Build, name: &str, which: Which) -> Finding {
    let word = word(which);
    let changed = now_and_then(build, name, |air| {
        let vent = if which == Which::Inlet { &mut air.inlet } else { &mut air.outlet };
        if let Some(vent) = vent {
            vent.leads_to = None;
        }
    });
    let (now, then) = changed.map_or_else(Default::default, |(now, then)| {
        (format!(" {name} is at {now:.0} °C."), format!(": {name} comes to {then:.0} °C then"))
    });
    let says = format!(
        "The {word} of {name} leads to a closed void: no more passes than leaks through its gaps.{now}"
    );
    let mend =
        format!("Open the void to the cabin or outdoors, at least as large as the {word}{then}.");
    let id = format!("{name}.{word}-void");
    let label = format!("where the {word} of {name} leads");
    Finding::plain(id, label, Verdict::Care(Reason::Practice), says).mended(Some(mend))
}

/// Which way the fan blows.
pub(crate) fn fan(build: &Build, name: &str, bay: &Bay) -> Option<Finding> {
    let fan = bay.air.as_ref()?.fan.as_ref()?;
    let (id, label) = (format!("{name}.fan"), format!("which way the fan of {name} blows"));
    let (Some(at), Some(blows)) = (fan.at, fan.blows) else {
        let says = format!(
            "Which way the fan of {name} blows is not said. With the rising air it helps; against it, \
             the condenser breathes its own exhaust."
        );
        let asks = vec![ask(
            format!("fan of {name}: at = \"inlet\" or \"outlet\", blows = \"in\" or \"out\""),
            "A strip of tissue at its grille while it runs; the arrow on its frame.",
            "whether the fan helps or hinders",
        )];
        return Some(open(id, label, says, asks));
    };
    let forward = matches!((at, blows), (Which::Inlet, Blows::In) | (Which::Outlet, Blows::Out));
    let way = if blows == Blows::In { "into" } else { "out of" };
    if forward {
        let says = format!(
            "The fan at the {} blows {way} {name}: from inlet to outlet, as it should.",
            word(at)
        );
        return Some(Finding::plain(id, label, Verdict::Good, says));
    }
    let turned = now_and_then(build, name, |air| {
        if let Some(fan) = &mut air.fan {
            fan.blows = Some(if blows == Blows::In { Blows::Out } else { Blows::In });
        }
    });
    let (now, then) = turned.map_or_else(Default::default, |(now, then)| {
        (format!(" {name} is at {now:.0} °C."), format!(" {name} comes to {then:.0} °C then."))
    });
    let says = format!(
        "The fan at the {} blows {way} {name}, from outlet to inlet: against the rising air, which \
         goes round in the bay.{now}",
        word(at)
    );
    let mend = format!(
        "Turn the fan's body round; swapping its wires does not reverse a brushless fan and may end \
         it.{then}"
    );
    let practice = Verdict::Care(Reason::Practice);
    Some(Finding::plain(id, label, practice, says).mended(Some(mend)))
}

/// How warm the bay is as it stands, and with something of its air changed.
fn now_and_then(build: &Build, name: &str, change: impl FnOnce(&mut BayAir)) -> Option<(f64, f64)> {
    let at = |build: &Build| {
        let place = Place::new(build, name, build.bays.get(name)?)?;
        Some(place.temperature(&place.ledger().likely()).ok()?.in_celsius())
    };
    let mut changed = build.clone();
    change(changed.bays.get_mut(name)?.air.as_mut()?);
    Some((at(build)?, at(&changed)?))
}

fn vent(bay: &Bay, which: Which) -> Option<&Vent> {
    let air = bay.air.as_ref()?;
    match which {
        Which::Inlet => air.inlet.as_ref(),
        Which::Outlet => air.outlet.as_ref(),
    }
}

fn word(which: Which) -> &'static str {
    match which {
        Which::Inlet => "inlet",
        Which::Outlet => "outlet",
    }
}

fn cm2(area: Area) -> String {
    format!("{} cm²", number(area.in_m2() * 1e4))
}
