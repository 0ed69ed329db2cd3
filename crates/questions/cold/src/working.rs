//! The working: each formula with the numbers put into it.

use spile_answer::{Point, Step};
use spile_heat::chain::Day;
use spile_heat::scene::{BayIs, Heats, Ready, Scene, Vents, WallInputs, Weather, stated};
use spile_quantity::Temperature;

use crate::keep::number;

/// How the duty of the first box comes about.
pub(crate) fn duty(scene: &Scene<'_>, day: &Day) -> Vec<Step> {
    let point = scene.ledger.likely();
    let cabin = scene.cabin(&point, Weather::HotAfternoon);
    let Ok(ready) = scene.ready(0, &point, Weather::HotAfternoon) else { return Vec::new() };
    let mut steps = walls(scene);
    steps.push(load(scene, &point, day));
    steps.extend(bay_step(scene, &point, day, cabin));
    steps.push(pumped(scene, &point, day, &ready));
    steps.push(Step {
        what: "share of the time that it runs".into(),
        formula: "D = Q / (COP·P)".into(),
        numbers: format!(
            "{:.1} W / {:.1} W = {:.1} %",
            day.load.total().in_w(),
            day.running.pumps.in_w(),
            100.0 * day.duty
        ),
        source: "heat balance".into(),
    });
    steps
}

/// How warm the bay of the first box gets.
pub(crate) fn bay(scene: &Scene<'_>) -> Vec<Step> {
    let point = scene.ledger.likely();
    let cabin = scene.cabin(&point, Weather::HotAfternoon);
    let days = scene.settled_days(&point, Weather::HotAfternoon, BayIs::Balanced);
    let step = days.ok().and_then(|days| bay_step(scene, &point, &days[0], cabin));
    step.into_iter().collect()
}

/// How the conductance of the first box's walls was found.
pub(crate) fn walls(scene: &Scene<'_>) -> Vec<Step> {
    let point = scene.ledger.likely();
    let Ok(ready) = scene.ready(0, &point, Weather::HotAfternoon) else { return Vec::new() };
    let conductance = ready.walls.value.in_w_per_k();
    let carnot = point.at(scene.shared.carnot).in_percent();
    let step = match &scene.each[0].walls {
        WallInputs::Papers(figures) => {
            let each: Vec<String> = stated(figures, &point)
                .iter()
                .map(|stated| {
                    format!(
                        "{:.0} Wh at {} and {} °C",
                        stated.per_day.in_wh(),
                        number(stated.ambient.in_celsius()),
                        number(stated.inside.in_celsius())
                    )
                })
                .collect();
            Step {
                what: "heat through the walls, a kelvin, from the papers".into(),
                formula: "UA = (P − P0)·COP / (Ta − Ti), least squares of the relative misses"
                    .into(),
                numbers: format!(
                    "{} with η {carnot:.0} % = {conductance:.3} W/K; misses the worst by {:.1} %",
                    each.join(", "),
                    100.0 * ready.walls.worst_miss
                ),
                source: "heat balance; COP as below".into(),
            }
        }
        WallInputs::Sizes(sizes) => {
            let [w, h, d] = sizes.outside.map(|side| point.at(side).in_m() * 1000.0);
            Step {
                what: "heat through the walls, a kelvin, from the sizes".into(),
                formula: "UA = b / (1/(hi·Ai) + 1/(k·S) + 1/(ho·Ao)) + ψ·L".into(),
                numbers: format!(
                    "{w:.0} × {h:.0} × {d:.0} mm, wall {:.0} mm, k {:.3} W/(m·K), b {:.2}, ψ {:.2} \
                     W/(m·K) = {conductance:.3} W/K",
                    point.at(sizes.wall).in_m() * 1000.0,
                    point.at(sizes.foam).in_w_per_m_k(),
                    point.at(sizes.bridges).in_of_one(),
                    point.at(sizes.gasket).in_w_per_m_k(),
                ),
                source: "Langmuir, Adams and Meikle (1913) for walls and edges; ISO 14683 for the \
                         gasket, from memory; b is common practice, no source"
                    .into(),
            }
        }
    };
    vec![step]
}

fn load(scene: &Scene<'_>, point: &Point, day: &Day) -> Step {
    let load = &day.load;
    Step {
        what: "heat that comes in".into(),
        formula: "Q = UA·(1 − f)·(Tbay − Ti) + UA·f·(Tcabin − Ti) + openings + warm food + light"
            .into(),
        numbers: format!(
            "{:.1} + {:.1} + {:.1} + {:.1} + {:.1} = {:.1} W, at {} °C inside, f {:.2}",
            load.walls_to_bay.in_w(),
            load.walls_to_cabin.in_w(),
            load.openings.in_w(),
            load.food.in_w(),
            load.light_and_fan.in_w(),
            load.total().in_w(),
            number(point.at(scene.shared.inside).in_celsius()),
            scene.each[0].cabin_share,
        ),
        source:
            "heat balance; moist air by ASHRAE Fundamentals at sea level; food as milk, Earle, \
                 Unit Operations in Food Processing"
                .into(),
    }
}

fn bay_step(scene: &Scene<'_>, point: &Point, day: &Day, cabin: Temperature) -> Option<Step> {
    let bay = scene.each[0].bay.as_ref()?;
    let place = bay.place(point).ok()?;
    let all = place.conductance(day.air.cabinet, cabin).ok()?;
    let ways = match bay.heats {
        Heats::Measured(_) => "as measured".to_owned(),
        Heats::Assumed { to_cabin, to_outside, vents } => {
            let flow = match vents {
                None => None,
                Some(Vents::Flow(flow)) => Some(point.at(flow)),
                Some(Vents::Openings(_)) => {
                    place.through.and_then(|through| through.flow(day.air.cabinet, cabin).ok())
                }
            };
            let vents = flow.map_or_else(
                || "no vents".to_owned(),
                |flow| format!("vents {:.0} m³/h", flow.in_m3_per_s() * 3600.0),
            );
            format!(
                "furniture {:.1}, skin {:.1}, {vents}",
                point.at(to_cabin).in_w_per_k(),
                point.at(to_outside).in_w_per_k()
            )
        }
    };
    let rise_k = day.air.cabinet.above(cabin).in_k();
    Some(Step {
        what: "air in the bay".into(),
        formula: "Tbay = Tcabin + (heat given off − heat drawn in) / G".into(),
        numbers: format!(
            "{:.1} °C + {:.1} W / {:.1} W/K ({ways}) = {:.1} °C",
            cabin.in_celsius(),
            rise_k * all.in_w_per_k(),
            all.in_w_per_k(),
            day.air.cabinet.in_celsius()
        ),
        source: "heat balance, solved together with the compressor".into(),
    })
}

fn pumped(scene: &Scene<'_>, point: &Point, day: &Day, ready: &Ready) -> Step {
    let running = &day.running;
    Step {
        what: "heat that can be pumped".into(),
        formula: "COP·P, COP = η·exp(−0.0075·(Tc − 45 °C))·Te / (Tc − Te)".into(),
        numbers: format!(
            "η {:.0} %, Te {:.1} °C, Tc {:.1} °C: COP {:.2}; × {:.0} W = {:.1} W, set to {} °C",
            point.at(scene.shared.carnot).in_percent(),
            running.evaporating.in_celsius(),
            running.condensing.in_celsius(),
            running.cop,
            running.takes.in_w(),
            running.pumps.in_w(),
            number(ready.appliance.inside.in_celsius()),
        ),
        source:
            "Carnot's limit; the fall of η with the condensing temperature is fitted to cycles \
                 of R600a and R134a"
                .into(),
    }
}

/// The use of all boxes on a hot and on a mild day.
pub(crate) fn total(
    scene: &Scene<'_>,
    hot: &[Day],
    mild: &[Day],
    mild_cabin: Temperature,
) -> Vec<Step> {
    let point = scene.ledger.likely();
    let hot_cabin = scene.cabin(&point, Weather::HotDay);
    let volts = point.at(scene.shared.system).in_v();
    let day = |what: &'static str, days: &[Day], cabin: Temperature| {
        let each: Vec<String> = scene
            .boxes
            .iter()
            .zip(days)
            .map(|(cold, day)| {
                format!(
                    "{}: {:.0} % × {:.0} W + {:.1} W = {:.1} W",
                    cold.name,
                    100.0 * day.duty.min(1.0),
                    day.running.takes.in_w(),
                    (day.power - day.running.takes * day.duty.min(1.0)).in_w(),
                    day.power.in_w()
                )
            })
            .collect();
        let sum: f64 = days.iter().map(|day| day.charge_per_day.in_ah()).sum();
        Step {
            what: what.into(),
            formula: "q = Σ (D·P + standby + light) · 24 h / U".into(),
            numbers: format!(
                "{:.0} °C in the cabin: {}; × 24 h / {volts:.0} V = {sum:.1} Ah",
                cabin.in_celsius(),
                each.join(", ")
            ),
            source: "heat balance of a steady day".into(),
        }
    };
    vec![
        day("amp-hours of a hot day, at the mean of day and night", hot, hot_cabin),
        day("amp-hours of an ordinary day", mild, mild_cabin),
    ]
}
