//! The load against what the run's cables carry, and their section against the least of practice.

use spile_answer::{
    Class, Finding, Given, Handle, Ledger, Limit, Point, Sense, Step, Swing, Unit, Verdict, Worse,
    swing,
};
use spile_build::Cable;
use spile_circuit::scene::{Carried, Carrier, OneRun, weakest};
use spile_quantity::{Current, Length};
use spile_tables::ampacity::laying;

use crate::words::amps;

/// The load against what the weaker of feed and return carries where it lies.
///
/// The load's own spread is counted in the figure, so that the limit can be shown at its likely
/// value.
pub(crate) fn cable(asked: &OneRun<'_>, load: &Given<Current>) -> Option<Finding> {
    let [feed, back] = asked.cables();
    let (name, cable) = weakest([("feed", feed), ("return", back)])?;
    let id = asked.id("cable");
    let label = format!("what the {name} carries");
    let mut ledger = Ledger::new();
    let load_handle = ledger.take(LOAD, load);
    let likely = load.likely();
    let says = |carried: Current| {
        let bundle = match cable.bundle {
            ..=2 => String::new(),
            many => format!(" in a bundle of {many}"),
        };
        format!(
            "Load: {} on a low battery. The {name} of {} carries {} at {:.0} °C{bundle}.",
            amps(likely),
            cable.section,
            amps(carried),
            cable.ambient.likely().in_celsius(),
        )
    };
    let over = |point: &Point| (point.at(load_handle) - likely).in_a();
    let Some((swung, carried)) = carried_over(&mut ledger, name, cable, over) else {
        return Some(beyond_tables(id, label, cable));
    };
    let limit = Limit {
        value: likely.in_a(),
        sense: Sense::AtLeast,
        class: Class::Limit,
        kind: "heat",
        source: carried.in_free_air.source.title.as_str().into(),
        firm: carried.in_free_air.may_stop() && !cable.section_assumed,
    };
    let says = says(carried.current);
    Some(
        Finding::measured(id, label, Unit::Ampere, &swung, limit, &ledger)
            .saying(says)
            .worked(vec![carried_step(cable, &carried)]),
    )
}

pub(crate) const LOAD: &str = "load while everything runs";

/// What a cable carries over the ranges of its inputs, less what `less` says; `None` where no
/// table says.
pub(crate) fn carried_over(
    ledger: &mut Ledger,
    name: &'static str,
    cable: &Cable,
    less: impl Fn(&Point) -> f64,
) -> Option<(Swing, Carried)> {
    let carrier = Carrier::take(ledger, name, cable)?;
    let likely = carrier.at(&ledger.likely())?;
    let [swung] = swing(ledger, [Worse::Lower], |point| {
        [carrier.at(point).map_or(0.0, |carried| carried.current.in_a()) - less(point)]
    });
    Some((swung, likely))
}

pub(crate) fn beyond_tables(id: String, label: String, cable: &Cable) -> Finding {
    let says = format!(
        "No published table says what {} carries there: it is outside their sizes, or as hot as its insulation stands.",
        cable.section
    );
    Finding::plain(id, label, Verdict::Open, says)
}

/// How what a cable carries is worked out.
pub(crate) fn carried_step(cable: &Cable, carried: &Carried) -> Step {
    Step {
        what: format!("what {} carries there", cable.section).into(),
        formula: "I = I₃₀ · √((T_r − T_a)/(T_r − 30 °C)) · f".into(),
        numbers: format!(
            "{:.1} A × {:.2} × {:.2} = {:.1} A",
            carried.in_free_air.value.in_a(),
            carried.ambient_factor,
            carried.bundle_factor,
            carried.current.in_a()
        ),
        source: carried.in_free_air.source.title.as_str().into(),
    }
}

/// The least section of a single conductor, where one is thinner.
pub(crate) fn section(asked: &OneRun<'_>) -> Option<Finding> {
    let rule = laying();
    let least = rule.value.single;
    let [feed, back] = asked.cables();
    let long = |cable: &Cable| cable.length.likely() > Length::mm(200.0);
    [("feed", feed), ("return", back)].into_iter().filter(|(_, cable)| long(cable)).find_map(
        |(name, cable)| {
            let mut ledger = Ledger::new();
            let carrier = Carrier::take(&mut ledger, name, cable)?;
            let copper: Handle<_> = carrier.copper;
            let [swung] = swing(&ledger, [Worse::Lower], |point| [point.at(copper).in_mm2()]);
            let limit = Limit {
                value: least.in_mm2(),
                sense: Sense::AtLeast,
                class: Class::Practice,
                kind: "practice",
                source: rule.source.title.as_str().into(),
                firm: true,
            };
            let label = format!("section of the {name}");
            let finding = Finding::measured(
                asked.id("section"),
                label,
                Unit::SquareMillimetre,
                &swung,
                limit,
                &ledger,
            );
            let says = format!(
                "The {name} has {:.2} mm² of copper. By practice a single conductor longer than 200 mm has {} mm² or more: a thinner one breaks where it shakes.",
                swung.likely,
                least.in_mm2()
            );
            (finding.verdict != Verdict::Good).then(|| finding.saying(says))
        },
    )
}
