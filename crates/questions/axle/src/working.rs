//! How the load of an axle is worked out, line by line.

use spile_answer::{Point, Step};

use crate::Case;
use crate::scene::{FRONT, Put, Scene, TAG, TOTAL};

const MOMENTS: &str = "moments about the rear axle; truck makers' manuals for body builders";

/// The steps to a load of an axle or of the whole.
pub(crate) fn steps(case: &Case<'_>, scene: &Scene, figure: usize) -> Vec<Step> {
    let likely = scene.ledger.likely();
    let Some(loads) = scene.loads(&likely) else { return Vec::new() };
    let base = &case.base;
    let sum =
        |axle: usize| base.axles[axle].iter().map(|given| given.likely().in_kg()).sum::<f64>();
    let mut steps = vec![Step {
        what: base.about.clone().into(),
        formula: "R_f, R_r".into(),
        numbers: format!("R_f = {:.0} kg, R_r = {:.0} kg", sum(0), sum(1)),
        source: base.axles[0].first().map_or_else(|| "".into(), |given| given.source.clone()),
    }];
    for (puts, sign) in [(&scene.went, -1.0), (&scene.came, 1.0)] {
        steps.extend(puts.iter().filter_map(|put| change(scene, put, sign, figure, &likely)));
    }
    let (front, rear) = (loads.front.in_kg(), loads.rear.in_kg());
    let share = case.build.vehicle.axles.tag.as_ref().and_then(|tag| tag.share.as_ref());
    let (formula, numbers) = match (figure, share) {
        (FRONT, _) => ("R_f = R_f,weighed + ΣΔR_f", format!("R_f = {front:.1} kg")),
        (TOTAL, _) => ("R = R_f + R_r", format!("{front:.1} + {rear:.1} = {:.1} kg", front + rear)),
        (TAG, Some(share)) => {
            let share = share.likely().in_of_one();
            ("R_t = s·R_r", format!("{share} × {rear:.1} = {:.1} kg", share * rear))
        }
        (_, Some(share)) => {
            let share = share.likely().in_of_one();
            (
                "R_d = (1 − s)·R_r",
                format!("(1 − {share}) × {rear:.1} = {:.1} kg", (1.0 - share) * rear),
            )
        }
        (_, None) => ("R_r = R_r,weighed + ΣΔR_r", format!("R_r = {rear:.1} kg")),
    };
    steps.push(Step {
        what: "load".into(),
        formula: formula.into(),
        numbers,
        source: MOMENTS.into(),
    });
    steps
}

/// What one load that came or went puts on the axle.
fn change(scene: &Scene, put: &Put, sign: f64, figure: usize, likely: &Point) -> Option<Step> {
    let at = scene.place(put, likely);
    let on = scene.on(&at, likely)?;
    let (mass, length) = (at.mass.in_kg(), scene.between(likely).in_m());
    let x_m = (at.forward + scene.behind(likely)).in_m();
    let x = if x_m < -0.005 { format!("(−{:.2})", -x_m) } else { format!("{:.2}", x_m.abs()) };
    let word = if sign < 0.0 { "less" } else { "more" };
    let (formula, numbers) = match figure {
        FRONT => (
            "ΔR_f = m·x/L",
            format!("{mass:.1} × {x} / {length:.2} = {:.1} kg {word}", on.front.in_kg()),
        ),
        TOTAL => ("ΔR = m", format!("m = {mass:.1} kg {word}")),
        _ => (
            "ΔR_r = m·(1 − x/L)",
            format!("{mass:.1} × (1 − {x} / {length:.2}) = {:.1} kg {word}", on.rear.in_kg()),
        ),
    };
    Some(Step {
        what: put.name.clone().into(),
        formula: formula.into(),
        numbers,
        source: MOMENTS.into(),
    })
}
