//! One compressor box on a hot afternoon: how much of it it runs, and how warm its bay gets.

use spile_answer::{
    Ask, Basis, Class, Finding, Ledger, Limit, Point, Reason, Sense, Swing, Unit, Verdict, Worse,
    swing,
};
use spile_build::Build;
use spile_heat::HeatError;
use spile_heat::chain::Day;
use spile_heat::scene::{BayIs, Cold, Scene, WARMEST_INSIDE, Weather, is_known};

use crate::keep::number;
use crate::mend;
use crate::working;

/// By how much [%] the papers' figures may disagree with one cabinet and one compressor before it
/// is told.
///
/// **Source**: common practice, no source; consumptions are printed to some 5 %.
const GREATEST_MISS: f64 = 15.0;

/// Everything found of the first box of a scene.
pub(crate) fn findings(build: &Build, scene: &Scene<'_>) -> Vec<Finding> {
    let point = scene.ledger.likely();
    let days = match scene.days(&point, Weather::HotAfternoon, BayIs::Balanced) {
        Ok(days) => days,
        Err(why) => return vec![not_computed(&scene.boxes[0], &why)],
    };
    let day = &days[0];
    let swung = swing(&scene.ledger, [Worse::Higher; 2], |point| {
        figures(scene, point).unwrap_or([f64::INFINITY; 2])
    });
    let mut found = vec![duty(scene, day, &swung[0])];
    found.extend(warmest(build, scene, &swung[1]));
    found.extend(papers(scene));
    found
}

/// The duty \[%\] with the boxes held at what they are set to, and the air round the first one
/// \[°C\] with the boxes at what they come to.
fn figures(scene: &Scene<'_>, point: &Point) -> Result<[f64; 2], HeatError> {
    let held = scene.days(point, Weather::HotAfternoon, BayIs::Balanced)?;
    let duty = 100.0 * held[0].duty;
    let settled = scene.as_they_come(held, point, Weather::HotAfternoon, BayIs::Balanced)?;
    Ok([duty, settled[0].air.cabinet.in_celsius()])
}

/// The first of these alone.
fn held_duty(scene: &Scene<'_>, point: &Point) -> Result<f64, HeatError> {
    Ok(100.0 * scene.days(point, Weather::HotAfternoon, BayIs::Balanced)?[0].duty)
}

fn duty(scene: &Scene<'_>, day: &Day, swung: &Swing) -> Finding {
    let cold = &scene.boxes[0];
    let limit = Limit {
        value: 100.0,
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "heat",
        source: "heat balance: a compressor that never rests does not hold the temperature".into(),
        firm: rests_on_papers(cold),
    };
    let label = label(cold);
    let id = format!("{}.duty", cold.name);
    let ledger = &scene.ledger;
    let at = |point: &Point| held_duty(scene, point).unwrap_or(f64::INFINITY);
    let mut finding = Finding::measured(id, label, Unit::Percent, swung, limit, ledger)
        .settling(swung, ledger, at);
    settle(&mut finding, || {
        format!(
            "whether the {} keeps cold on a hot afternoon: it runs {:.0} %, at worst {}",
            cold.name,
            swung.likely,
            percent(swung.unfavourable)
        )
    });
    let says = duty_says(scene, day, swung, finding.verdict);
    let mend = mend::duty(scene, swung, finding.verdict);
    finding.saying(says).mended(mend).worked(working::duty(scene, day))
}

/// Whether anything of what the duty stands on was said: consumption, power or insulation.
fn rests_on_papers(cold: &Cold<'_>) -> bool {
    let part = cold.part();
    let said = |basis: Basis| basis != Basis::Typical;
    part.consumption.iter().any(|stated| said(stated.per_day.basis))
        || part.power.running.as_ref().is_some_and(|power| said(power.basis))
        || part.insulation.as_ref().is_some_and(|wall| said(wall.basis))
}

fn duty_says(scene: &Scene<'_>, day: &Day, swung: &Swing, verdict: Verdict) -> String {
    let point = scene.ledger.likely();
    let cabin = scene.cabin(&point, Weather::HotAfternoon);
    let place = match scene.boxes[0].bay {
        Some((bay, _)) => format!(
            "With {:.0} °C in the cabin and {:.0} °C in {bay}",
            cabin.in_celsius(),
            day.air.cabinet.in_celsius()
        ),
        None => format!("With {:.0} °C in the cabin", cabin.in_celsius()),
    };
    let heat = format!(
        "{place}, {:.0} W of heat come in and {:.0} W can be pumped",
        day.load.total().in_w(),
        day.running.pumps.in_w()
    );
    let end = match verdict {
        _ if swung.likely > 100.0 => settles(scene, &point),
        Verdict::Care(Reason::Unsure) => format!(
            ": it runs {:.0} % of the time. At the unfavourable end it would be {}.",
            swung.likely,
            percent(swung.unfavourable)
        ),
        _ => format!(": it runs {:.0} % of the time.", swung.likely),
    };
    let range = if day.running.in_range {
        ""
    } else {
        " The condenser is then beyond what the formula was checked for."
    };
    format!("{heat}{end}{range}")
}

/// What becomes of a box that its compressor cannot hold.
fn settles(scene: &Scene<'_>, point: &Point) -> String {
    let days = scene.settled_days(point, Weather::HotAfternoon, BayIs::Balanced);
    let Ok(days) = days else { return ". It never rests.".to_owned() };
    let inside = days[0].running.evaporating.warmer(point.at(scene.shared.evaporator));
    let inside = if inside < WARMEST_INSIDE {
        format!("settles at {:.0} °C inside", inside.in_celsius())
    } else {
        format!("warms past {:.0} °C inside", WARMEST_INSIDE.in_celsius())
    };
    match scene.boxes[0].bay {
        Some((bay, _)) => format!(
            " if it is held at {} °C. It never rests and {inside}, with {:.0} °C in {bay}.",
            number(point.at(scene.shared.inside).in_celsius()),
            days[0].air.cabinet.in_celsius()
        ),
        None => format!(": it never rests and {inside}."),
    }
}

/// A share of the time in words; without bound where nothing balances.
fn percent(duty: f64) -> String {
    if duty.is_finite() { format!("{duty:.0} %") } else { "without end".to_owned() }
}

fn warmest(build: &Build, scene: &Scene<'_>, swung: &Swing) -> Option<Finding> {
    let cold = &scene.boxes[0];
    let warmest = cold.part().warmest.as_ref()?;
    let most = warmest.likely().in_celsius();
    let known = |basis: Basis| basis != Basis::Typical;
    let bay_known = cold.bay.is_some_and(|(_, bay)| is_known(bay));
    let limit = Limit {
        value: most,
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "papers",
        source: warmest.source.clone(),
        firm: known(warmest.basis) && (bay_known || known(build.corners.hot_cabin.basis)),
    };
    let place = cold.bay.map_or_else(|| "the cabin".to_owned(), |(bay, _)| bay.to_owned());
    let id = format!("{}.warmest", cold.name);
    let label = format!("air round the {} when hot", cold.name);
    let ledger = &scene.ledger;
    let at = |point: &Point| figures(scene, point).map_or(f64::INFINITY, |[_, air]| air);
    let mut finding = Finding::measured(id, label, Unit::Celsius, swung, limit, ledger)
        .settling(swung, ledger, at);
    settle(&mut finding, || {
        format!(
            "whether {place} stays under the {} °C that the papers of the {} allow",
            number(most),
            cold.name
        )
    });
    let end = match finding.verdict {
        Verdict::Care(Reason::Unsure) if swung.likely <= most => {
            format!(" It may come to {:.0} °C.", swung.unfavourable)
        }
        _ => String::new(),
    };
    let says = format!(
        "On a hot afternoon {place} is at {:.0} °C, and the papers of the {} allow {} °C.{end}",
        swung.likely,
        cold.name,
        number(most)
    );
    let mend = mend::warmest(scene, swung, finding.verdict, warmest.likely());
    let steps = working::bay(scene);
    Some(finding.saying(says).mended(mend).worked(steps))
}

/// The papers' figures do not go together.
fn papers(scene: &Scene<'_>) -> Option<Finding> {
    let cold = &scene.boxes[0];
    let point = scene.ledger.likely();
    let miss = 100.0 * scene.ready(0, &point, Weather::HotAfternoon).ok()?.walls.worst_miss;
    if miss <= GREATEST_MISS {
        return None;
    }
    let swung = Swing { likely: miss, unfavourable: miss, movers: Vec::new() };
    let limit = Limit {
        value: GREATEST_MISS,
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: "common practice, no source".into(),
        firm: true,
    };
    let mut ledger = Ledger::new();
    for (index, stated) in cold.part().consumption.iter().enumerate() {
        let of = |what: &str| format!("{what} of consumption {} of {}", index + 1, cold.name);
        ledger.take(of("surroundings"), &stated.ambient);
        ledger.take(of("inside"), &stated.inside);
        ledger.take(of("energy a day"), &stated.per_day);
    }
    let id = format!("{}.papers", cold.name);
    let label = format!("papers of {} disagree by", cold.name);
    let says = format!(
        "The papers' figures for the {} do not go together: one cabinet and one compressor that fit \
         them best miss one by {miss:.0} %.",
        cold.name
    );
    let mend = "Check ambient, inside and energy of each; one may be for another setting.";
    let finding = Finding::measured(id, label, Unit::Percent, &swung, limit, &ledger);
    Some(finding.saying(says).mended(Some(mend.to_owned())).worked(working::walls(scene)))
}

/// Neither consumption nor sizes, or no space inside.
pub(crate) fn too_little(cold: &Cold<'_>) -> Finding {
    let name = cold.name;
    let lacks_size = cold.part().size.is_none();
    let (lacks, asks) = match (cold.part().consumption.is_empty(), lacks_size) {
        (true, true) => (
            "neither its use in a day nor its outside sizes are known",
            ask(
                format!("use of {name} in a day"),
                "Its papers: watt-hours in 24 hours, with the surroundings and the inside; else its \
                 outside width, height and depth with a tape.",
            ),
        ),
        (false, true) => (
            "its litres are not known",
            ask(format!("nominal volume of {name}"), "Its papers, in litres."),
        ),
        (_, false) => (
            "its insulation leaves no space inside",
            ask(
                format!("insulation of {name}"),
                "Outside size less inside size with a tape, halved.",
            ),
        ),
    };
    let says = format!("How hard the {name} works cannot be said: {lacks}.");
    let mut finding = Finding::plain(format!("{name}.duty"), label(cold), Verdict::Open, says);
    finding.asks.push(asks);
    finding
}

fn ask(input: String, how: &'static str) -> Ask {
    Ask::missing(input, how, "what it uses and whether it keeps cold")
}

/// The numbers given lie where nothing is known to hold.
fn not_computed(cold: &Cold<'_>, why: &HeatError) -> Finding {
    let name = cold.name;
    let says = format!("How hard the {name} works cannot be computed: {why}.");
    let mut finding = Finding::plain(format!("{name}.duty"), label(cold), Verdict::Open, says);
    finding.asks.push(ask(
        format!("figures of {name}"),
        "Compare sizes, insulation and consumption with its papers.",
    ));
    finding
}

fn label(cold: &Cold<'_>) -> String {
    format!("running share of the {} when hot", cold.name)
}

/// Says of each ask what it would settle, and leaves out those that are not worth measuring.
fn settle(finding: &mut Finding, words: impl Fn() -> String) {
    finding.asks.retain(|ask| !ask.how.starts_with("Not worth measuring"));
    for ask in &mut finding.asks {
        ask.settles = words();
    }
}
