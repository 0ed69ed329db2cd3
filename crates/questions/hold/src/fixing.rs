//! The hardest worked fastener: on the road, of a battery, in a crash.

use spile_answer::{Class, Finding, Limit, Point, Sense, Step, Unit, Verdict, Worse, swing};
use spile_quantity::Mass;
use spile_strength::envelope::{self, Case};
use spile_tables::load::load_case;

use crate::mend;
use crate::modes::{Mode, Worst, worst};
use crate::scene::Scene;
use crate::{HEAVY, called, is_battery};

/// What is held against what.
pub(crate) struct Test {
    word: &'static str,
    pub(crate) cases: Vec<Case>,
    ultimate: bool,
    class: Class,
    rule: &'static str,
}

/// The envelope of the road.
pub(crate) fn road() -> Test {
    Test {
        word: "fixing",
        cases: envelope::road().value,
        ultimate: false,
        class: Class::Limit,
        rule: "3 g down, 2 g up, 1 g along the floor: common practice for rough roads",
    }
}

pub(crate) fn battery() -> Test {
    Test {
        word: "hold-down",
        cases: envelope::battery().value,
        ultimate: false,
        class: Class::Limit,
        rule: "2 g in any direction: ISO 10133",
    }
}

fn crash() -> Test {
    Test {
        word: "crash",
        cases: envelope::crash().value,
        ultimate: true,
        class: Class::Practice,
        rule: "10 g in any direction: EN 1789, of ambulance equipment, from memory",
    }
}

/// Everything found of the fasteners of a thing.
pub(crate) fn findings(scene: &Scene<'_>) -> Vec<Finding> {
    let mut found = vec![finding(scene, &road())];
    if is_battery(scene.item) {
        found.push(finding(scene, &battery()));
    }
    let (mass, _) = scene.pushing(&scene.ledger.likely());
    if mass >= HEAVY {
        found.push(finding(scene, &crash()));
    }
    found
}

/// The likely and the unfavourable share in per cent of every way of failing, and of the firm ones.
pub(crate) fn swung(scene: &Scene<'_>, test: &Test) -> [spile_answer::Swing; 2] {
    swing(&scene.ledger, [Worse::Higher; 2], |point| {
        [share(scene, test, point, |_| true), share(scene, test, point, |mode| mode.firm)]
    })
}

/// The share in per cent of the hardest worked fastener, by the ways of failing that are kept.
fn share(scene: &Scene<'_>, test: &Test, point: &Point, keep: impl Fn(&Mode) -> bool) -> f64 {
    let worst = worst(scene, point, &test.cases, test.ultimate, keep);
    worst.map_or(0.0, |worst| worst.used * 100.0)
}

fn finding(scene: &Scene<'_>, test: &Test) -> Finding {
    let [all, firm] = swung(scene, test);
    let firm_leads = firm.likely > 100.0;
    let keep = |mode: &Mode| !firm_leads || mode.firm;
    let point = scene.ledger.likely();
    let Some(worst) = worst(scene, &point, &test.cases, test.ultimate, keep) else {
        return Finding::plain(
            format!("{}.{}", scene.name, test.word),
            "hardest worked fastener",
            Verdict::Open,
            "Nothing is known of what these fasteners bear.",
        );
    };
    let case = scene.case_words(&worst.case);
    let limit = Limit {
        value: 100.0,
        sense: Sense::AtMost,
        class: test.class,
        kind: "strength",
        source: format!("{}; {}", worst.mode.source, test.rule).into(),
        firm: worst.mode.firm,
    };
    let swing = if firm_leads { &firm } else { &all };
    let measured = Finding::measured(
        format!("{}.{}", scene.name, test.word),
        format!("hardest worked of its fasteners: {}, {case}", worst.mode.name),
        Unit::Percent,
        swing,
        limit,
        &scene.ledger,
    )
    .settling(swing, &scene.ledger, |point| share(scene, test, point, keep));
    let good = measured.verdict == Verdict::Good;
    let against = if test.ultimate { "of what breaks it" } else { "of what it may bear" };
    let hold = if scene.count == 1 { "holds" } else { "hold" };
    let says = format!(
        "{} {hold} the {}: at {case} the hardest worked uses {:.0} % {against}; what gives first is the {}.",
        capital(&scene.fasteners()),
        called(scene.item),
        worst.used * 100.0,
        worst.mode.name,
    );
    let mut steps = working(scene, &point, &worst);
    if test.word == "fixing" {
        steps.extend(compared(scene, &point));
    }
    measured.saying(says).worked(steps).mended(if good {
        None
    } else {
        mend::fasteners(scene, test)
    })
}

/// The way from mass to share.
fn working(scene: &Scene<'_>, point: &Point, worst: &Worst) -> Vec<Step> {
    let (mass, lever) = scene.pushing(point);
    let newton = |allowed: Option<spile_strength::Allowable<spile_quantity::Force>>| {
        allowed.map_or("not asked".to_owned(), |a| format!("{:.0} N", a.value().in_n()))
    };
    let mut steps = vec![Step {
        what: "push of the mass".into(),
        formula: "F = m·g·c".into(),
        numbers: format!(
            "{:.1} × 9.81 × {} = {:.0} N, {:.0} mm from the face",
            mass.in_kg(),
            worst.case.times_gravity,
            worst.case.force(Mass::kg(mass.in_kg())).in_n(),
            lever.in_mm(),
        ),
        source: "EN 12195-1, F = m·c·g".into(),
    }];
    if scene.lap.is_none() {
        steps.push(Step {
            what: "share of the hardest worked fastener".into(),
            formula: "V = |F/n + M·r/Σr²|, T = N/n + F·h·u/Σu²".into(),
            numbers: format!(
                "of {}: {:.0} N along its axis, {:.0} N across it",
                scene.count,
                worst.share.tension.in_n(),
                worst.share.shear.in_n(),
            ),
            source: "elastic method; tension about the pressed edge, common practice".into(),
        });
        steps.push(Step {
            what: format!("what it may bear: {}", worst.mode.name).into(),
            formula: worst.mode.formula.into(),
            numbers: format!(
                "along {}, across {}; used {:.1} %",
                newton(worst.mode.tension),
                newton(worst.mode.shear),
                worst.used * 100.0,
            ),
            source: worst.mode.source.into(),
        });
    } else {
        steps.push(Step {
            what: "stress of the glue".into(),
            formula: worst.mode.formula.into(),
            numbers: format!(
                "peel {:.3} MPa, shear {:.3} MPa; used {:.1} %",
                worst.share.tension.in_n() / 1e6,
                worst.share.shear.in_n() / 1e6,
                worst.used * 100.0,
            ),
            source: worst.mode.source.into(),
        });
    }
    steps
}

/// The same against the standard for heavier vehicles, which nobody is judged by here.
fn compared(scene: &Scene<'_>, point: &Point) -> Option<Step> {
    let row = load_case("en-12195-1")?;
    let softer = worst(scene, point, &envelope::cases(&row.value, 1.0), false, |_| true)?;
    Some(Step {
        what: "for comparison, on the road of a lorry".into(),
        formula: "0.8 g forward, 0.5 g sideways and rearward".into(),
        numbers: format!("{:.1} % used", softer.used * 100.0),
        source: "EN 12195-1:2010, which is not for vehicles up to 3500 kg".into(),
    })
}

/// With a capital letter.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
