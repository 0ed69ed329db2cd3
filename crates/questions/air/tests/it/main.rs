//! The question air, against hand-worked balances, the trade's cases and the standard.

mod balances;
mod gas;
mod heron;
mod picture;
mod rules;
mod verdicts;

use spile_answer::{Answer, Finding};
use spile_build::{Build, Folder};

/// The build of one text.
#[track_caller]
fn build(text: &str) -> Build {
    match Folder::from_texts([("build.toml", text)]) {
        Ok(folder) => folder.build().clone(),
        Err(problems) => panic!("{:?}\n{text}", problems.list),
    }
}

/// What the question answers of a text.
#[track_caller]
fn ask(text: &str) -> Answer {
    spile_air::answer(&build(text))
}

/// The finding of that name.
#[track_caller]
fn finding<'a>(answer: &'a Answer, id: &str) -> &'a Finding {
    let found = answer.findings.iter().find(|finding| finding.id == id);
    found.unwrap_or_else(|| {
        let ids: Vec<&str> = answer.findings.iter().map(|finding| finding.id.as_str()).collect();
        panic!("no {id} among {ids:?}")
    })
}

/// The likely value of the figure of that finding.
#[track_caller]
fn likely(answer: &Answer, id: &str) -> f64 {
    finding(answer, id).figure.expect("a figure").likely
}

/// `good`, `care unsure`, `stop`.
fn words(finding: &Finding) -> String {
    let verdict = finding.verdict;
    let reason = verdict.reason().map_or_else(String::new, |why| format!(" {}", why.word()));
    format!("{}{reason}", verdict.word())
}

/// A locker with what is said of its air, and all the rest.
fn locker(air: &str, rest: &str) -> String {
    format!(
        "[bays.locker]\nsize = {{ width = \"640 mm\", height = \"900 mm\", depth = \"560 mm\" }}\n\
         {air}\n{rest}"
    )
}

/// An upright fridge in the locker whose papers ask for 160 cm² each.
const FRIDGE: &str = r#"
    [parts.fridge]
    kind = "upright fridge"
    size = { width = "475 mm", height = "780 mm", depth = "495 mm" }
    volume = "92 L"
    warmest = "43 °C"
    air = { inlet = "160 cm2", outlet = "160 cm2" }
    power = { running = "58 W" }
    [[parts.fridge.consumption]]
    ambient = "25 °C"
    inside = "5 °C"
    per_day = "430 Wh"
    [items.fridge]
    place = { in = "locker" }
"#;

/// An inverter in the locker.
const INVERTER: &str = r#"
    [parts.inverter]
    kind = "inverter"
    power = { running = "2273 W" }
    heat = { efficiency = "88 %", idle = "15 W" }
    [items.inverter]
    place = { in = "locker" }
"#;

/// Openings as the papers want them, well placed.
const WELL: &str = r#"
    air.apart = "900 mm"
    air.inlet = { area = "180 cm2", above = "60 mm", leads_to = "cabin" }
    air.outlet = { area = "200 cm2", above = "820 mm", leads_to = "cabin" }
"#;
