//! What is found of the fuse block and of the body as a return.

use spile_answer::{
    Class, Finding, Ledger, Limit, Point, Sense, Step, Unit, Verdict, Worse, swing,
};
use spile_build::file::FuseFamily;
use spile_build::{Bank, Build, Cable, Return};
use spile_circuit::scene::{BOND, Conductor, Copper, MAIN, MAIN_BACK, family, full_voltage};
use spile_quantity::CableSize;
use spile_tables::Entry;
use spile_tables::conductor::metric_sizes;
use spile_tables::fuse::{Breaking, breaking};

use crate::bank::take_full;
use crate::cable::{carried_over, carried_step};
use crate::whole::{TOGETHER, Whole};
use crate::words::{amps, list, round_up};

/// The fuses at the block against the bolted fault there: what they cannot break by themselves the
/// main fuse has to break first, and no series rating is known. Practice.
pub(crate) fn breaks(build: &Build, bank: &Bank) -> Option<Finding> {
    let (word, entry) = least_breaking(build, bank)?;
    let mut ledger = Ledger::new();
    let (open, inner) = take_full(&mut ledger, build, bank);
    let feed = Conductor::shared(&mut ledger, MAIN, &build.block.feed)?;
    let back = Conductor::shared(&mut ledger, MAIN_BACK, &build.block.back)?;
    let joints = ledger.take("posts, isolator, shunt and bus bars", &build.block.joints);
    let fuse = ledger.take("main fuse with its holder", &bank.fuse.resistance);
    let [swung] = swing(&ledger, [Worse::Higher], |point: &Point| {
        let ohm = point.at(inner)
            + feed.resistance(point, Copper::Cool)
            + back.resistance(point, Copper::Cool)
            + point.at(joints)
            + point.at(fuse);
        [(point.at(open) / ohm).in_a()]
    });
    let breaks_a = entry.value.current.in_a();
    let limit = Limit {
        value: breaks_a,
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: entry.source.title.as_str().into(),
        firm: true,
    };
    let (id, label) = ("block.breaking", "bolted fault at the fuse block");
    let finding = Finding::measured(id, label, Unit::Ampere, &swung, limit, &ledger);
    let says = format!(
        "A bolted fault at the fuse block draws some {:.0} A. A {word} fuse breaks {breaks_a:.0} A by itself; beyond, the main fuse has to be the quicker one, and nothing says that it is.",
        round_up(swung.likely)
    );
    let mend = (finding.verdict != Verdict::Good).then(|| {
        format!(
            "Fuses at the block that break {:.0} A, or a series rating of both fuses by their papers.",
            round_up(swung.unfavourable)
        )
    });
    Some(finding.saying(says).mended(mend).worked(vec![Step {
        what: "bolted fault at the fuse block".into(),
        formula: "I = E / (R_i + ΣR), battery full and warm".into(),
        numbers: format!("{:.0} A", swung.likely),
        source: "Ohm's law".into(),
    }]))
}

/// The kind of fuse in use at the block that can break least; blades where nothing is said.
fn least_breaking(build: &Build, bank: &Bank) -> Option<(&'static str, &'static Entry<Breaking>)> {
    let volts = full_voltage(build, bank).likely();
    let kinds = build.runs.values().map(|run| {
        let kind = run.way.as_ref().map_or(FuseFamily::Blade, |way| way.family);
        Some((kind.word(), breaking(family(kind)?, volts)?))
    });
    kinds.flatten().reduce(
        |least, next| {
            if next.1.value.current < least.1.value.current { next } else { least }
        },
    )
}

/// Everything together against what the papers allow through the block.
pub(crate) fn total(build: &Build, whole: &Whole) -> Option<Finding> {
    let most = build.block.total.as_ref()?;
    let mut ledger = Ledger::new();
    ledger.take("greatest current through the block", most);
    let load = ledger.take(TOGETHER, &whole.bank);
    let [swung] = swing(&ledger, [Worse::Higher], |point| [point.at(load).in_a()]);
    let limit = Limit {
        value: most.likely().in_a(),
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "papers",
        source: most.source.clone(),
        firm: true,
    };
    let says = format!(
        "Everything together: {} through the fuse block; its papers allow {}.",
        amps(whole.bank.likely()),
        amps(most.likely())
    );
    let (id, label) = ("block.total", "everything together, through the block");
    let finding = Finding::measured(id, label, Unit::Ampere, &swung, limit, &ledger);
    let mend = (finding.verdict != Verdict::Good)
        .then(|| "The largest of them fed from the bank, behind a fuse of its own.".to_owned());
    Some(finding.saying(says).mended(mend))
}

/// Everything that returns through the body against the one cable that ties it to the bus: no
/// single fuse guards that against them all.
pub(crate) fn bond(build: &Build, whole: &Whole) -> Option<Finding> {
    let load = whole.body.as_ref()?;
    let cable = &build.body.cable;
    let likely = load.likely();
    let mut ledger = Ledger::new();
    let handle = ledger.take("everything that returns through the body", load);
    let (swung, carried) =
        carried_over(&mut ledger, BOND, cable, |point| (point.at(handle) - likely).in_a())?;
    let limit = Limit {
        value: likely.in_a(),
        sense: Sense::AtLeast,
        class: Class::Limit,
        kind: "heat",
        source: carried.in_free_air.source.title.as_str().into(),
        firm: carried.in_free_air.may_stop() && !cable.section_assumed,
    };
    let says = format!(
        "Through the body return {}; the {BOND} of {} carries {}.",
        amps(likely),
        cable.section,
        amps(carried.current)
    );
    let label = format!("what the {BOND} carries");
    let finding = Finding::measured("body.cable", label, Unit::Ampere, &swung, limit, &ledger);
    let thicker = || {
        metric_sizes().iter().find_map(|entry| {
            let section = CableSize::Metric(entry.value.section);
            let cable = Cable { section, ..cable.clone() };
            let (swung, _) = carried_over(&mut Ledger::new(), BOND, &cable, |_| 0.0)?;
            let enough = swung.unfavourable >= 1.02 * load.value.high.in_a();
            enough.then(|| format!("{section} from the body to the negative bus."))
        })
    };
    let mend = if finding.verdict == Verdict::Good { None } else { thicker() };
    Some(finding.saying(says).worked(vec![carried_step(cable, &carried)]).mended(mend))
}

/// A return through a body whose parts are insulated from each other is none.
pub(crate) fn insulated(build: &Build) -> Option<Finding> {
    let through = build.runs.iter().filter(|(_, run)| matches!(run.back, Return::Body { .. }));
    let names: Vec<String> = through.map(|(name, _)| name.clone()).collect();
    (build.body.insulated && !names.is_empty()).then(|| {
        let says = format!(
            "Parts of the body are insulated from each other, and it is the return of {}. No current can be relied on through glued, painted or anodised joints.",
            list(&names)
        );
        Finding::plain("body.insulated", "return through the body", Verdict::Stop, says).mended(
            Some(format!(
                "A return cable to the negative bus for {}, of the feed's size.",
                list(&names)
            )),
        )
    })
}
