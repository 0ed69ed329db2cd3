//! How warm a bay gets, and how warm the air is that comes to a condenser in it.

use spile_answer::{
    Class, Finding, Given, Limit, Point, Reason, Sense, Swing, Unit, Verdict, Worse, swing,
};
use spile_build::file::{Cooling, PartKind};
use spile_build::{Bay, Build, typical};
use spile_heat::HeatError;
use spile_heat::scene::{Heats, MachineInputs, Values, Vents, is_known};
use spile_quantity::{Temperature, TemperatureDifference};

use crate::place::{But, Place, is_warm, items_in};
use crate::words::{ask, number, open, practice, settle, told};
use crate::{mend, vents, working};

/// Everything found of a bay.
pub(crate) fn findings(build: &Build, name: &str, bay: &Bay) -> Vec<Finding> {
    if !is_warm(build, name) {
        return Vec::new();
    }
    let mut found: Vec<Finding> = unknown(build, name).into_iter().collect();
    let place = Place::new(build, name, bay);
    if let Some(place) = &place {
        let likely = place.ledger().likely();
        if let Err(why) = place.temperature(&likely) {
            found.push(not_computed(name, &why));
            found.extend(vents::of_items(build, name, bay));
            return found;
        }
        let [warmth, over] =
            swing(place.ledger(), [Worse::Higher; 2], |point| figures_or_endless(place, point));
        found.push(warm(build, place, &warmth));
        found.extend(again(place, &over));
        found.extend(together(build, place));
    }
    found.extend(vents::of_items(build, name, bay));
    found.extend(vents::outlet(build, name, bay));
    found.extend(vents::fan(build, name, bay));
    found
}

/// The warmest that anything in the bay allows: by papers, else by practice.
fn warmest(build: &Build, place: &Place<'_>) -> (Limit, String) {
    let in_papers = build
        .items
        .iter()
        .filter(|(name, item)| {
            items_in(build, place.name).any(|(other, _)| other == *name)
                || item.condenser_in.as_deref() == Some(place.name)
        })
        .filter_map(|(name, item)| Some((name, item.part.warmest.as_ref()?)))
        .min_by(|a, b| a.1.likely().in_celsius().total_cmp(&b.1.likely().in_celsius()));
    let Some((name, said)) = in_papers else {
        let usual: Given<Temperature> = typical("bay-warmest");
        let value = usual.likely().in_celsius();
        let whose = format!("{} °C are usual as the most", number(value));
        return (practice(value, Sense::AtMost), whose);
    };
    let limit = Limit {
        value: said.likely().in_celsius(),
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "papers",
        source: said.source.clone(),
        firm: told(said.basis) && (is_known(place.bay) || told(build.corners.hot_cabin.basis)),
    };
    let whose = format!("the papers of the {name} allow {} °C", number(limit.value));
    (limit, whose)
}

fn warm(build: &Build, place: &Place<'_>, swung: &Swing) -> Finding {
    let (limit, whose) = warmest(build, place);
    let name = place.name;
    let most = Temperature::celsius(limit.value);
    let mut finding = Finding::measured(
        format!("{name}.warm"),
        format!("{name} on a hot afternoon"),
        Unit::Celsius,
        swung,
        limit,
        place.ledger(),
    )
    .settling(swung, place.ledger(), |point| figures_or_endless(place, point)[0]);
    settle(&mut finding, &format!("how warm {name} gets: {}", spread(swung, "°C")));
    let cabin = place.cabin(&place.ledger().likely());
    let says = format!(
        "With {} °C in the cabin {name} comes to {:.0} °C, and {whose}.{}",
        number(cabin.in_celsius()),
        swung.likely,
        worst(&finding, swung, "°C"),
    );
    let mend = mend::cooler(place, swung, &finding, most);
    finding.saying(says).mended(mend).worked(working::bay(place))
}

/// The bay \[°C\], and how much warmer \[K\] than the cabin the air is that comes to a condenser:
/// what is drawn in again of the bay's own, or all of it where no way of the air is told.
fn figures(place: &Place<'_>, values: &impl Values) -> Result<[f64; 2], HeatError> {
    let bay = place.temperature(values)?;
    let over = bay.above(place.cabin(values)).in_k();
    let through = place.place(values)?.through;
    Ok([bay.in_celsius(), through.map_or(over, |through| over * through.drawn_in)])
}

/// The same; without bound where nothing balances.
fn figures_or_endless(place: &Place<'_>, values: &impl Values) -> [f64; 2] {
    figures(place, values).unwrap_or([f64::INFINITY; 2])
}

fn again(place: &Place<'_>, swung: &Swing) -> Option<Finding> {
    let vents_assumed =
        matches!(place.inputs.heats, Heats::Assumed { vents: Some(Vents::Flow(_)), .. });
    if !place.has_condenser() || vents_assumed {
        return None;
    }
    let most: Given<TemperatureDifference> = typical("inlet-over-cabin");
    let name = place.name;
    let mut finding = Finding::measured(
        format!("{name}.again"),
        format!("air drawn in at {name} over the cabin"),
        Unit::Kelvin,
        swung,
        practice(most.likely().in_k(), Sense::AtMost),
        place.ledger(),
    )
    .settling(swung, place.ledger(), |point| figures_or_endless(place, point)[1]);
    settle(&mut finding, &format!("how much of its own air it breathes: {}", spread(swung, "K")));
    let through = place.place(&place.ledger().likely()).ok().and_then(|place| place.through);
    let how = match through {
        Some(through) => format!(
            "{:.0} % of the air that comes in at {name} has been through it before, so that it is \
             {:.1} K over the cabin",
            100.0 * through.drawn_in,
            swung.likely
        ),
        None => format!(
            "The condenser in {name} breathes the bay's own air, {:.1} K over the cabin",
            swung.likely
        ),
    };
    let says = format!(
        "{how}; more than {} K is bad practice.{}",
        number(most.likely().in_k()),
        worst(&finding, swung, "K")
    );
    let mend = mend::fresher(place, swung, &finding, most.likely());
    finding = finding.saying(says).mended(mend).worked(working::bay(place));
    Some(finding)
}

/// An inverter or charger in the air of a condenser, at full load as if it lasted.
fn together(build: &Build, place: &Place<'_>) -> Option<Finding> {
    if !place.has_condenser() || !place.has_converter() {
        return None;
    }
    let (limit, whose) = warmest(build, place);
    let limit = Limit { class: Class::Practice, firm: true, ..limit };
    let ons: Vec<usize> = place
        .inputs
        .machines
        .iter()
        .filter_map(|machine| match machine {
            MachineInputs::Converter { on, .. } => Some(on.index()),
            MachineInputs::Bank { .. } => None,
        })
        .collect();
    let full = |value: f64| ons.iter().map(|index| (*index, value)).collect::<Vec<_>>();
    let figure = |point: &Point| {
        let full = But { base: point, with: full(1.0) };
        place.temperature(&full).map_or(f64::INFINITY, Temperature::in_celsius)
    };
    let [swung] = swing(place.ledger(), [Worse::Higher], |point| [figure(point)]);
    let likely = place.ledger().likely();
    let mut sums = [0.0; 2];
    for machine in &place.inputs.machines {
        if let Ok(heats) = machine.full_and_idle(&likely) {
            for (sum, heat) in sums.iter_mut().zip(heats) {
                *sum += heat.in_w();
            }
        }
    }
    let rest = But { base: &likely, with: full(0.0) };
    let resting = place.temperature(&rest).ok()?;
    let name = place.name;
    let mut finding = Finding::measured(
        format!("{name}.together"),
        format!("{name} with everything in it at full load"),
        Unit::Celsius,
        &swung,
        limit,
        place.ledger(),
    )
    .settling(&swung, place.ledger(), figure);
    settle(&mut finding, &format!("whether they get on in one space: {}", spread(&swung, "°C")));
    let says = format!(
        "An inverter or charger shares {name} with a condenser: at full load it gives off {:.0} W and \
         {name} comes to {:.0} °C if that lasts; {:.0} W at idle make {:.0} °C all day long. For the \
         air there {whose}.{}",
        sums[0],
        swung.likely,
        sums[1],
        resting.in_celsius(),
        worst(&finding, &swung, "°C"),
    );
    let mend = (finding.verdict != Verdict::Good).then(|| {
        format!(
            "Move one of the two to another space, or part {name} with a sheet that gives each its \
             own inlet and outlet; switch the inverter off when nothing is plugged in."
        )
    });
    Some(finding.saying(says).mended(mend).worked(working::bay(place)))
}

/// ` It may come to 52 °C.` where that is what matters.
fn worst(finding: &Finding, swung: &Swing, unit: &str) -> String {
    match finding.verdict {
        Verdict::Care(Reason::Unsure) if swung.unfavourable.is_finite() => {
            format!(" It may come to {:.0} {unit}.", swung.unfavourable)
        }
        _ => String::new(),
    }
}

/// `41 °C likely, 55 °C at worst`.
fn spread(swung: &Swing, unit: &str) -> String {
    if swung.unfavourable.is_finite() {
        format!("{:.0} {unit} likely, {:.0} {unit} at worst", swung.likely, swung.unfavourable)
    } else {
        format!("{:.0} {unit} likely, without bound at worst", swung.likely)
    }
}

/// What stands in the bay and cannot be computed.
fn unknown(build: &Build, name: &str) -> Option<Finding> {
    let settles = "how warm the bay gets";
    let mut lacking = Vec::new();
    let mut asks = Vec::new();
    for (item, of) in items_in(build, name) {
        match of.part.kind {
            PartKind::Inverter | PartKind::Charger if of.part.power.running.is_none() => {
                lacking.push(format!("the power of the {item} is not known"));
                asks.push(ask(
                    format!("power of {item} while it runs"),
                    "Its papers, in watts at full load; of an inverter what it takes in.",
                    settles,
                ));
            }
            _ if matches!(of.part.cooling, Some(Cooling::Absorption | Cooling::Thermoelectric)) => {
                lacking.push(format!("the {item} is no compressor, and its heat is not computed"));
            }
            _ => {}
        }
    }
    for cold in compressors_in(build, name).filter(|cold| !cold.is_computable()) {
        lacking.push(format!("too little is known of the {}", cold.name));
        asks.push(ask(
            format!("use of {} in a day", cold.name),
            "Its papers: watt-hours in 24 hours, with the surroundings and the inside, and its \
             litres; else its outside sizes with a tape.",
            settles,
        ));
    }
    if lacking.is_empty() {
        return None;
    }
    let says = format!("How warm {name} gets cannot be said in full: {}.", lacking.join("; "));
    Some(open(format!("{name}.unknown"), format!("heat in {name}"), says, asks))
}

fn compressors_in<'b>(
    build: &'b Build,
    bay: &'b str,
) -> impl Iterator<Item = spile_heat::scene::Cold<'b>> {
    spile_heat::scene::compressors(build).filter(move |cold| cold.touches(bay))
}

/// The numbers given lie where nothing is known to hold.
fn not_computed(name: &str, why: &HeatError) -> Finding {
    open(
        format!("{name}.warm"),
        format!("{name} on a hot afternoon"),
        format!("How warm {name} gets cannot be computed: {why}."),
        vec![ask(
            format!("figures of what stands in {name}"),
            "Compare sizes, power and openings with papers and tape.",
            "how warm it gets",
        )],
    )
}
