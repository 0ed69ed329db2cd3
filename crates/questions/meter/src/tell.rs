//! What is said of a run: what to take and what to expect before it was read, and afterwards which
//! reading is as expected and what the likeliest cause of the others is.

use spile_answer::{Ask, Basis, Class, Figure, Finding, Limit, Reason, Sense, Unit, Verdict};
use spile_build::Reading;
use spile_circuit::conductor::section;
use spile_circuit::scene::{OneRun, likely_carried};
use spile_quantity::{Area, CableSize};

use crate::cause::{Group, explain};
use crate::expect::Scene;
use crate::fit::Kind;
use crate::habit;
use crate::spot::{ALL, Spot};

/// A run that was not read yet.
pub(crate) fn before(asked: &OneRun<'_>) -> Vec<Finding> {
    let id = asked.id("read");
    let label = format!("readings of the {}", asked.item);
    let Some(scene) = Scene::of(asked, None) else {
        return vec![unexpected(asked, id, label)];
    };
    let shown = |spot: Spot| spot.shown(scene.band(spot).likely);
    let says = format!(
        "Not read yet. With {:.2} V at the posts and the {} running, {:.2} V are to be expected at the plug, {:.1} A, {:.0} mV lost on the feed and {:.0} mV on the return. First its polarity, before its fuse goes in; then the places in their order.",
        shown(Spot::Battery),
        asked.item,
        shown(Spot::Appliance),
        shown(Spot::Current),
        shown(Spot::FeedDrop),
        shown(Spot::ReturnDrop)
    );
    let mut finding = Finding::plain(id, label, Verdict::Open, says).expecting(scene.expects(None));
    finding.inputs = scene.inputs;
    finding.asks.push(Ask {
        input: format!("readings of the {}, running", asked.item).into(),
        how: format!(
            "With a meter for direct volts and a clamp for direct current, once it is switched on: [readings.{}] battery = \"... V\", block = \"... V\", appliance = \"... V\", current = \"... A\". Never hold a probe across two posts with your other hand on metal.",
            asked.name
        )
        .into(),
        settles: "whether feed, return and fuse are as they should be".to_owned(),
        turns: String::new(),
        weight: 0.1,
    });
    vec![finding]
}

/// A run of which nothing can be expected.
fn unexpected(asked: &OneRun<'_>, id: String, label: String) -> Finding {
    let says = format!(
        "Nothing can be expected of the {}: its load is more than its way can carry to it, or a cable or fuse of it is in no table. See wire.",
        asked.item
    );
    let mut finding = Finding::plain(id, label, Verdict::Open, says);
    finding.asks.push(Ask {
        input: format!("power, cable and fuse of the {}", asked.item).into(),
        how: "Read its plate or its papers for its power, the print along its cable, and the number on its fuse.".into(),
        settles: String::new(),
        turns: String::new(),
        weight: 1.0,
    });
    finding
}

/// What is found of one round with the meter.
pub(crate) fn read(asked: &OneRun<'_>, name: &str, taken: &Reading) -> Vec<Finding> {
    let mut found = Vec::new();
    let label = format!("readings of the {}", asked.item);
    match Scene::of(asked, Some(taken)) {
        None => found.push(unexpected(asked, format!("{name}.read"), label)),
        Some(scene) => {
            let spots = ALL.into_iter().filter_map(|spot| Some((spot, spot.read(taken)?)));
            let spots: Vec<(Spot, f64)> = spots.collect();
            if !scene.are_as_expected(taken) {
                found.push(cause(asked, name, taken, &scene));
            }
            found.extend(
                spots.iter().map(|(spot, value)| reading(name, taken, &scene, *spot, *value)),
            );
        }
    }
    found.extend(habit::findings(asked, name, taken));
    found
}

/// One reading against what was to be expected.
fn reading(name: &str, taken: &Reading, scene: &Scene, spot: Spot, value: f64) -> Finding {
    let (low, high) = scene.ends(spot);
    let is_expected = scene.is_as_expected(spot, value);
    let is_high = value > scene.band(spot).likely;
    let limit = Limit {
        value: rounded(spot, if is_high { high } else { low }),
        sense: if is_high { Sense::AtMost } else { Sense::AtLeast },
        class: Class::Practice,
        kind: "expected",
        source: "the healthy circuit, with the spread of its inputs and the meter's own error"
            .into(),
        firm: true,
    };
    let verdict = if is_expected { Verdict::Good } else { Verdict::Care(Reason::Practice) };
    let shown = |value: f64| match spot.unit() {
        Unit::Millivolt => format!("{:.0}", spot.shown(value)),
        Unit::Ampere => format!("{value:.1}"),
        _ => format!("{value:.2}"),
    };
    let unit = spot.unit().symbol();
    let on = taken.date.as_ref().map_or_else(String::new, |date| format!(" on {date}"));
    let says = format!(
        "Read{on}: {} {unit}. To be expected: {} to {} {unit}.",
        shown(value),
        shown(low),
        shown(high)
    );
    let figure =
        Figure { likely: spot.shown(value), unfavourable: spot.shown(value), unit: spot.unit() };
    let mut finding = Finding::plain(format!("{name}.{}", spot.word()), spot.name(), verdict, says);
    finding.figure = Some(figure);
    finding.limit = Some(limit);
    finding.inputs.clone_from(&scene.inputs);
    finding
}

/// An end of what is expected, without the noise of a division.
fn rounded(spot: Spot, end: f64) -> f64 {
    (spot.shown(end) * 100.0).round() / 100.0
}

/// The likeliest causes and the next test.
fn cause(asked: &OneRun<'_>, name: &str, taken: &Reading, scene: &Scene) -> Finding {
    let (groups, (test, how)) = explain(asked, scene, taken);
    let others: Vec<String> = groups.iter().skip(1).map(|group| group.words(asked)).collect();
    let others = if others.is_empty() {
        String::new()
    } else {
        format!(" Less likely: {}.", others.join("; "))
    };
    let likeliest = groups.first().map_or_else(String::new, |group| group.words(asked));
    let says = format!("Likeliest: {likeliest}.{others} Next: {test}.");
    let (verdict, mend) = groups
        .first()
        .map_or((Verdict::Open, None), |first| weight(asked, first, groups.len() == 1));
    let label = format!("what explains the readings of the {}", asked.item);
    let mut finding = Finding::plain(format!("{name}.cause"), label, verdict, says)
        .expecting(scene.expects(Some(taken)))
        .mended(mend);
    finding.inputs.clone_from(&scene.inputs);
    finding.asks.push(Ask {
        input: test.into(),
        how: how.into(),
        settles: "which of the causes it is".to_owned(),
        turns: String::new(),
        weight: 1.0,
    });
    finding
}

/// How much a cause weighs, and what mends it.
///
/// What was expected is no limit, so a cause is *care*; but swapped poles destroy what hangs on
/// them, and a thin cable behind a fuse that lets more through than it carries burns before the fuse
/// opens.
fn weight(asked: &OneRun<'_>, group: &Group, is_alone: bool) -> (Verdict, Option<String>) {
    let care = Verdict::Care(Reason::Unsure);
    let best = group.best();
    match best.kind {
        Kind::Swapped => (
            Verdict::Stop,
            Some("Swap feed and return at the plug, with its fuse taken out.".to_owned()),
        ),
        Kind::Thinner => {
            let Ok(copper) = section(asked.run.feed.section) else { return (care, None) };
            let thin = CableSize::Metric(Area::m2(copper.likely.in_m2() / best.size));
            let cable = spile_build::Cable { section: thin, ..asked.run.feed.clone() };
            let (carried, fuse) = (likely_carried(&cable), asked.fuse());
            match (carried, fuse) {
                (Some(carried), Some(fuse)) if fuse.rating > carried.current => {
                    let insulation = asked.run.feed.insulation.basis != Basis::Typical;
                    let firm = carried.in_free_air.may_stop() && insulation && is_alone;
                    let verdict = if firm { Verdict::Stop } else { care };
                    let mend = format!(
                        "A fuse of at most {:.0} A, or the cable that was meant.",
                        carried.current.in_a().floor()
                    );
                    (verdict, Some(mend))
                }
                _ => (care, Some("The cable that was meant, or a fuse for the one that is there.".to_owned())),
            }
        }
        Kind::Bad(_) => (
            care,
            Some("Remake the joint: cut back to bright copper, crimp anew, clean and tighten studs. Until then do not leave it on unattended.".to_owned()),
        ),
        _ => (care, None),
    }
}
