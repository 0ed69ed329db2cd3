//! The most loaded tyre of each axle against its load index and its load at the pressure in use.

use std::borrow::Cow;

use spile_answer::{Class, Finding, Limit, Sense, Step, TIGHT_SHARE, Unit, Verdict};
use spile_build::Tyres;
use spile_tables::axle::{tyre_load, tyre_loads};

use crate::axle::settled;
use crate::open::open;
use crate::scene::TYRES;
use crate::{Case, is_firm};

/// The tyres of every axle.
pub(crate) fn findings(case: &Case<'_>) -> Vec<Finding> {
    let axles = &case.build.vehicle.axles;
    let mut findings = Vec::new();
    if !case.is_trailer() {
        findings.push(one_axle(case, "front", 0, axles.front.as_ref()));
    }
    findings.push(one_axle(case, "rear", 1, axles.rear.as_ref()));
    if axles.tag.is_some() {
        findings.push(one_axle(case, "tag", 2, axles.tag_tyres.as_ref()));
    }
    findings
}

/// What a tyre may carry.
struct Allowed {
    kg: f64,
    kind: &'static str,
    source: Cow<'static, str>,
    firm: bool,
    words: String,
}

fn one_axle(case: &Case<'_>, axle: &str, at: usize, tyres: Option<&Tyres>) -> Finding {
    let (scene, swung) = case.worst(TYRES[at]);
    let id = format!("tyres.{axle}");
    let Some(tyres) = tyres else { return unknown(&id, axle, "nothing is said of these tyres") };
    let count = tyres.count.unwrap_or(2);
    let twins = count >= 4 && !case.is_trailer();
    let Some(allowed) = allowed(tyres, twins) else {
        return unknown(&id, axle, "what they carry is not known");
    };
    let limit = Limit {
        value: allowed.kg,
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: allowed.kind,
        source: allowed.source,
        firm: allowed.firm,
    };
    let label = format!("most loaded tyre of the {axle} axle, {}", scene.state);
    let finding = Finding::measured(id, label, Unit::Kilogram, swung, limit, &scene.ledger)
        .settling(swung, &scene.ledger, |point| scene.figures(point)[TYRES[at]]);
    let says = format!(
        "The most loaded of {count} tyres of the {axle} axle carries {:.0} kg in the state {}, at the unfavourable end {:.0} kg; {} allows {:.0} kg.",
        swung.likely, scene.state, swung.unfavourable, allowed.words, allowed.kg
    );
    let mend = (finding.verdict != Verdict::Good)
        .then(|| enough(swung.unfavourable / (1.0 - TIGHT_SHARE), twins))
        .flatten();
    let axle_kg = scene
        .loads(&scene.ledger.likely())
        .map_or(f64::NAN, |loads| if at == 0 { loads.front.in_kg() } else { loads.rear.in_kg() });
    let step = Step {
        what: "most loaded tyre".into(),
        formula: "(R + |R_left − R_right|) / n".into(),
        numbers: format!(
            "of {axle_kg:.0} kg on the axle, {count} tyres and its sides = {:.0} kg",
            swung.likely
        ),
        source: "tyres of one side share equally; common practice, no source".into(),
    };
    settled(finding, swung).saying(says).mended(mend).worked(vec![step])
}

/// The lesser of what the load index and the papers at the pressure in use allow.
fn allowed(tyres: &Tyres, twins: bool) -> Option<Allowed> {
    let index = if twins { tyres.twin_index.or(tyres.index) } else { tyres.index };
    let by_index = index.and_then(|index| {
        let entry = tyre_load(index)?;
        let unsure = twins && tyres.twin_index.is_none();
        let second = if unsure { "; in a pair a tyre carries less" } else { "" };
        Some(Allowed {
            kg: entry.value.load.in_kg(),
            kind: "table",
            source: format!("{}{second}", entry.source.title).into(),
            firm: entry.may_stop() && !unsure,
            words: format!("load index {index}"),
        })
    });
    let by_papers = tyres.load.as_ref().map(|load| Allowed {
        kg: load.likely().in_kg(),
        kind: "papers",
        source: load.source.clone(),
        firm: is_firm(load.basis),
        words: "the maker's load at this pressure".to_owned(),
    });
    match (by_index, by_papers) {
        (Some(index), Some(papers)) => Some(if papers.kg <= index.kg { papers } else { index }),
        (index, papers) => papers.or(index),
    }
}

/// The least load index that carries it.
fn enough(kg: f64, twins: bool) -> Option<String> {
    let entry = tyre_loads().iter().find(|entry| entry.value.load.in_kg() >= kg)?;
    let pair = if twins { " in a pair (the second number)" } else { "" };
    Some(format!(
        "Tyres of load index {}{pair} or more, at the pressure that their maker names for {kg:.0} kg, or less on this axle.",
        entry.value.index
    ))
}

fn unknown(id: &str, axle: &str, why: &str) -> Finding {
    open(
        id,
        &format!("tyres of the {axle} axle"),
        format!("What the tyres of the {axle} axle may carry cannot be told: {why}."),
        &format!("load index of the {axle} tyres"),
        &format!(
            "Read the number before the letter of speed on the tyre's side (of 225/75 R16 121/119 R: 121, of twins the second), and count the tyres of the axle: [vehicle.tyres.{axle}] load_index = 121, count = 2. For the load at your pressure see the tyre maker's papers: load = \"1100 kg\"."
        ),
    )
}
