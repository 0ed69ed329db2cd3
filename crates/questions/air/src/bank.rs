//! The bank: its gas, and the temperatures at which it may be charged.

use spile_answer::{
    Basis, Class, Figure, Finding, Given, Ledger, Limit, Reason, Sense, Step, Unit, Verdict, Worse,
    swing,
};
use spile_build::file::{Chemistry, LeadsTo};
use spile_build::{Bank, Build, Vent, typical};
use spile_heat::gas::{air_needed, opening_needed};
use spile_quantity::{Area, Current, Ranged, Share, Temperature};
use spile_tables::battery::{Cells, GasCurrent, gas_constants, gas_stationary, gas_traction};
use spile_tables::{Entry, battery, charging};

use crate::place::Place;
use crate::words::{ask, cm2_up, number, open, settle, told};

/// Everything found of the bank.
pub(crate) fn findings(build: &Build) -> Vec<Finding> {
    let Some(bank) = &build.bank else { return Vec::new() };
    match bank.kind {
        Chemistry::Flooded => vec![gas(build, bank, Cells::Vented)],
        Chemistry::Agm | Chemistry::Gel => vec![gas(build, bank, Cells::Sealed)],
        Chemistry::Lfp => {
            let says =
                "Sealed lithium cells give off no gas in ordinary use: no opening is asked for.";
            let gas = Finding::plain("bank.gas", "gas of the bank", Verdict::Good, says);
            let mut found = vec![gas];
            found.extend(cold(build));
            found.extend(warm(build, bank));
            found
        }
    }
}

/// The openings that the gas of a lead bank needs against those there are.
fn gas(build: &Build, bank: &Bank, cells: Cells) -> Finding {
    let label = "openings for the bank's gas, each";
    let Some(capacity) = &bank.capacity else {
        let says =
            "What opening the gas of the bank needs cannot be said: its capacity is not known.";
        let how = "The battery's label, in ampere-hours at 20 hours.";
        let asks = vec![ask("capacity of the bank", how, "what opening its gas needs")];
        return open("bank.gas".to_owned(), label.to_owned(), says.to_owned(), asks);
    };
    let in_series = (build.system.likely().in_v() / 2.0).round() as u32;
    let mut ledger = Ledger::new();
    let count = f64::from(bank.count.max(1));
    let all = ledger.take("capacity of the bank", &capacity.map(|each| each * count));
    let rate = ledger.take("current that makes gas, amperes for each Ah", &rate(cells));
    let charging = all_sources(build).map(|all| ledger.take("greatest charging current", &all));
    let needed_m2 = |point: &spile_answer::Point| {
        let capacity = point.at(all);
        let mut rate = point.at(rate).in_of_one();
        if let Some(charging) = charging {
            // No more current makes gas than there is.
            rate = rate.min(point.at(charging).in_a() / capacity.in_ah());
        }
        let air = air_needed(in_series, rate, capacity);
        air.and_then(opening_needed).map_or(f64::NAN, Area::in_m2)
    };
    let [swung] = swing(&ledger, [Worse::Higher], |point| [needed_m2(point) * 1e4]);
    let likely = ledger.likely();
    let steps = vec![Step {
        what: "opening for the bank's gas, at inlet and outlet each".into(),
        formula: "Q = 0.05·n·Igas·C, A = 28·Q".into(),
        numbers: format!(
            "0.05 × {in_series} × {:.3} A/Ah × {:.0} Ah: {:.1} cm²{}",
            likely.at(rate).in_of_one(),
            likely.at(all).in_ah(),
            swung.likely,
            if charging.is_some() { ", no more current than the sources give" } else { "" },
        ),
        source: "IEC 62485-2; gas current the worse of table 1 (boost) and IEC 62485-3".into(),
    }];
    let needs = format!(
        "The gas of the bank's charging needs {:.1} cm² to let air in and as much to let it out, at \
         the unfavourable end {:.1} cm²",
        swung.likely, swung.unfavourable
    );
    let named = bank.bay.as_deref();
    let bay = named.and_then(|name| build.bays.get_key_value(name));
    let Some((name, bay)) = bay else {
        let says = format!("{needs}. Where the bank stands is not said.");
        let asks = vec![ask(
            "place of the bank",
            "Name the bay it stands in: place = { in = \"…\" }, and the free area of its openings.",
            "whether its gas gets out",
        )];
        let finding = open("bank.gas".to_owned(), label.to_owned(), says, asks);
        return with_figure(finding, &swung, &ledger, steps);
    };
    let vents = bay.air.as_ref().map(|air| [air.inlet.as_ref(), air.outlet.as_ref()]);
    let Some(there_cm2) = vents.and_then(least_cm2) else {
        let says = format!("{needs}. Nothing is said of the openings of {name}.");
        let asks = vec![ask(
            format!("free area at inlet and outlet of {name}"),
            "Width times height of each opening, less what bars and mesh cover; a vent tube of the \
             battery counts too.",
            "whether the bank's gas gets out",
        )];
        let finding = open("bank.gas".to_owned(), label.to_owned(), says, asks);
        return with_figure(finding, &swung, &ledger, steps);
    };
    let constants = gas_constants();
    // With less than a fifth of the air, the standard's own margin, the gas could burn.
    let burns = swung.likely / constants.value.safety > there_cm2;
    let limit = Limit {
        value: there_cm2,
        sense: Sense::AtMost,
        class: if burns { Class::Limit } else { Class::Practice },
        kind: if burns { "gas" } else { "practice" },
        source: "IEC 62485-2, natural ventilation".into(),
        firm: !bank.kind_assumed && told(capacity.basis),
    };
    let mut finding =
        Finding::measured("bank.gas", label, Unit::SquareCentimetre, &swung, limit, &ledger)
            .settling(&swung, &ledger, |point| needed_m2(point) * 1e4);
    settle(&mut finding, "what opening the bank's gas needs");
    let mut says = format!("{needs}; {name} has {} cm².", number(there_cm2));
    if burns {
        says.push_str(" With so little air hydrogen could come to what burns.");
    }
    let mut mend = (finding.verdict != Verdict::Good).then(|| {
        let area = Area::m2(swung.unfavourable * 1e-4);
        format!(
            "Give {name} openings of {} each, low on one side and high on the other, or a vent tube \
             outdoors.",
            cm2_up(area)
        )
    });
    let outlet = bay.air.as_ref().and_then(|air| air.outlet.as_ref());
    let indoors = outlet.is_some_and(|vent| vent.leads_to == Some(LeadsTo::Cabin));
    if cells == Cells::Vented && indoors {
        says.push_str(
            " It lets its gas into the living space: lead with liquid acid belongs in a box \
                       that is aired outdoors.",
        );
        mend = Some("Box the bank in and lead its gas outdoors.".to_owned());
        if finding.verdict == Verdict::Good {
            finding.verdict = Verdict::Care(Reason::Practice);
        }
    }
    finding.saying(says).mended(mend).worked(steps)
}

fn with_figure(
    finding: Finding,
    swung: &spile_answer::Swing,
    ledger: &Ledger,
    steps: Vec<Step>,
) -> Finding {
    let figure = Figure {
        likely: swung.likely,
        unfavourable: swung.unfavourable,
        unit: Unit::SquareCentimetre,
    };
    Finding { figure: Some(figure), inputs: ledger.inputs().to_vec(), ..finding.worked(steps) }
}

/// The smaller of inlet and outlet \[cm²\], each at its least; what leads to a closed void is none.
fn least_cm2(vents: [Option<&Vent>; 2]) -> Option<f64> {
    let mut least: Option<f64> = None;
    for vent in vents {
        let vent = vent?;
        let area_cm2 = if vent.leads_to == Some(LeadsTo::Void) {
            0.0
        } else {
            vent.area.as_ref()?.value.low.in_m2() * 1e4
        };
        least = Some(least.map_or(area_cm2, |least| least.min(area_cm2)));
    }
    least
}

/// The current that makes gas: likely the worse of stationary boost and a charger that ends at a
/// constant voltage (IU), at most a charger that ends at a constant current (IUI).
fn rate(cells: Cells) -> Given<Share> {
    let of = |rows: &'static [Entry<GasCurrent>], charging: &str| {
        let mut rows = rows.iter().filter(|entry| entry.value.cells == cells);
        let row = rows.find(|entry| entry.value.charging == charging);
        row.expect("the table has both kinds of cell").value.rate
    };
    let boost = of(gas_stationary(), "boost");
    let iu = of(gas_traction(), "IU");
    let iui = of(gas_traction(), "IUI");
    let share = Share::of_one;
    Given {
        value: Ranged {
            low: share(boost.min(iu)),
            likely: share(boost.max(iu)),
            high: share(iui.max(boost)),
        },
        basis: Basis::Table,
        source: "IEC 62485-2, table 1, and IEC 62485-3".into(),
        how: "The charger's papers: whether it ends at a constant voltage (IU) or at a constant \
              current (IUI)."
            .into(),
    }
}

/// What all sources together give; `None` where one of them is not told.
fn all_sources(build: &Build) -> Option<Given<Current>> {
    let mut currents = build.sources.values().map(|source| source.current.as_ref());
    let first = currents.next()??.clone();
    currents.try_fold(first, |sum, current| {
        let current = current?;
        let add = |a: Current, b: Current| a + b;
        Some(Given {
            value: Ranged {
                low: add(sum.value.low, current.value.low),
                likely: add(sum.value.likely, current.value.likely),
                high: add(sum.value.high, current.value.high),
            },
            basis: sum.basis.max(current.basis),
            ..sum
        })
    })
}

/// Whether lithium may be charged on a cold night.
fn cold(build: &Build) -> Option<Finding> {
    let allowed = charging::charge_temperature(battery::Chemistry::Lfp)?;
    let night: Given<Temperature> = typical("battery-place-cold");
    let mut ledger = Ledger::new();
    let handle = ledger.take("battery on a cold night", &night);
    let [swung] = swing(&ledger, [Worse::Lower], |point| [point.at(handle).in_celsius()]);
    let coldest = allowed.value.coldest.in_celsius();
    let limit = Limit {
        value: coldest,
        sense: Sense::AtLeast,
        class: Class::Limit,
        kind: "papers",
        source: allowed.source.title.clone().into(),
        firm: told(night.basis),
    };
    let label = "the bank on a cold night";
    let mut finding = Finding::measured("bank.cold", label, Unit::Celsius, &swung, limit, &ledger)
        .settling(&swung, &ledger, |point| point.at(handle).in_celsius());
    settle(&mut finding, "whether the bank takes a charge on a winter morning");
    let says = format!(
        "The bank may come to {:.0} °C on a cold night ({:.0} °C is likely), and lithium iron phosphate \
         takes no charge below {} °C: it would lose capacity for good, unless its own electronics \
         refuse the charge.",
        swung.unfavourable,
        swung.likely,
        number(coldest)
    );
    let charged = build.sources.keys().map(String::as_str).collect::<Vec<_>>().join(", ");
    let from = if charged.is_empty() { String::new() } else { format!(" ({charged})") };
    let mend = (finding.verdict != Verdict::Good).then(|| {
        format!(
            "See in its papers that it refuses a charge below {} °C, or give the chargers{from} a \
             sensor on its case; keep it in the heated space, or warm it with a pad for some {:.0} K.",
            number(coldest),
            (coldest - swung.unfavourable).max(0.0)
        )
    });
    Some(finding.saying(says).mended(mend))
}

/// Whether lithium gets too warm to be charged.
fn warm(build: &Build, bank: &Bank) -> Option<Finding> {
    let allowed = charging::charge_temperature(battery::Chemistry::Lfp)?;
    let warmest = allowed.value.warmest.in_celsius();
    let bay = bank.bay.as_deref().and_then(|name| build.bays.get_key_value(name));
    let place = bay.and_then(|(name, bay)| Place::new(build, name, bay));
    let mut own = Ledger::new();
    let cabin = own.take("cabin on a hot day", &build.corners.hot_cabin);
    let ledger = place.as_ref().map_or(&own, Place::ledger);
    let figure = |point: &spile_answer::Point| {
        let at = match &place {
            Some(place) => place.temperature(point),
            None => Ok(point.at(cabin)),
        };
        at.map_or(f64::INFINITY, Temperature::in_celsius)
    };
    let [swung] = swing(ledger, [Worse::Higher], |point| [figure(point)]);
    let limit = Limit {
        value: warmest,
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "papers",
        source: allowed.source.title.clone().into(),
        firm: told(build.corners.hot_cabin.basis),
    };
    let label = "air round the bank when hot";
    let mut finding = Finding::measured("bank.warm", label, Unit::Celsius, &swung, limit, ledger)
        .settling(&swung, ledger, figure);
    settle(&mut finding, "whether the bank gets too warm to be charged");
    let says = format!(
        "Round the bank it comes to {:.0} °C on a hot afternoon, and its cells may be charged up to {} \
         °C.",
        swung.likely,
        number(warmest)
    );
    let mend = (finding.verdict != Verdict::Good).then(|| {
        format!(
            "Charge it in the cool of the morning, or let air through where it stands: {} °C lie \
                 between.",
            number((swung.unfavourable - warmest).abs())
        )
    });
    Some(finding.saying(says).mended(mend))
}
