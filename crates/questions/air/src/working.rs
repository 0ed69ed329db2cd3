//! The working of a bay.

use spile_answer::Step;
use spile_heat::scene::{BayIs, MachineInputs};

use crate::place::Place;

/// How warm a bay gets.
pub(crate) fn bay(place: &Place<'_>) -> Vec<Step> {
    steps(place).unwrap_or_default()
}

fn steps(place: &Place<'_>) -> Option<Vec<Step>> {
    let values = place.ledger().likely();
    let at = place.place(&values).ok()?;
    let (bay, cabin) = (place.temperature(&values).ok()?, place.cabin(&values));
    let mut steps = Vec::new();
    for machine in &place.inputs.machines {
        let heat = machine.heat(&values).ok()?;
        let numbers = match *machine {
            MachineInputs::Converter { input, efficiency, idle, on, .. } => format!(
                "{:.0} W × {:.0} % × (1 − {:.0} %) + {:.1} W = {:.1} W",
                values.at(input).in_w(),
                values.at(on).in_percent(),
                values.at(efficiency).in_percent(),
                values.at(idle).in_w(),
                heat.in_w()
            ),
            MachineInputs::Bank { current, resistance, count } => format!(
                "({:.0} A)² × {:.1} mΩ / {count} = {:.1} W",
                values.at(current).in_a(),
                values.at(resistance).in_ohm() * 1000.0,
                heat.in_w()
            ),
        };
        let (what, formula) = match machine {
            MachineInputs::Converter { .. } => {
                ("heat of an inverter or charger, a mean", "Q = P·s·(1 − η) + P0")
            }
            MachineInputs::Bank { .. } => ("heat of the bank", "Q = I²·R / n"),
        };
        steps.push(Step {
            what: what.into(),
            formula: formula.into(),
            numbers,
            source: "heat balance".into(),
        });
    }
    let mut air_w_per_k = 0.0;
    if let Some(through) = &at.through {
        let flow = through.flow(bay, cabin).ok()?;
        let carried = through.conductance(bay, cabin).ok()?;
        air_w_per_k = carried.in_w_per_k();
        let fan = through.fan.map_or_else(String::new, |(fan, _)| {
            format!(
                ", fan of {:.0} m³/h and {:.0} Pa",
                fan.free_flow.in_m3_per_h(),
                fan.greatest_pressure.in_pa()
            )
        });
        steps.push(Step {
            what: "air through the openings".into(),
            formula: if through.fan.is_some() {
                "p0·(1 − V/V0) ± ρ·g·Δh·ΔT/T = ρ/2·(V/Ae)²".into()
            } else {
                "V = Ae·√(2·g·Δh·ΔT/T), 1/Ae² = Σ 1/(Cd·A)²".into()
            },
            numbers: format!(
                "Ae {:.0} cm², Δh {:.0} mm, ΔT {:.1} K{fan}: {:.1} m³/h, of which {:.0} % are fresh, \
                 carry {:.1} W/K",
                through.effective.in_m2() * 1e4,
                through.rise.in_m() * 1000.0,
                bay.above(cabin).in_k(),
                flow.in_m3_per_s() * 3600.0,
                100.0 * (1.0 - through.drawn_in),
                air_w_per_k
            ),
            source: "ASHRAE Fundamentals (1997), chapter 25; a fan's straight line is practice".into(),
        });
    }
    let boxes = place.of_boxes(&values, BayIs::Balanced).ok()?;
    let walls = at.walls.in_w_per_k();
    steps.push(Step {
        what: "air in the bay".into(),
        formula: "Q = (UA + ρ·c·V)·(Tbay − Tcabin)".into(),
        numbers: format!(
            "{:.1} °C + ({:.1} W of boxes + {:.1} W of the rest) / ({walls:.1} + {air_w_per_k:.1}) W/K \
             = {:.1} °C",
            cabin.in_celsius(),
            boxes.in_w(),
            at.machines.in_w(),
            bay.in_celsius()
        ),
        source: "heat balance, solved together with the compressor".into(),
    });
    Some(steps)
}
