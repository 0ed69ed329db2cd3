//! What is found of the bank: its main fuse, its main cable, its own limits.

use spile_answer::{
    Basis, Class, Finding, Given, Ledger, Limit, Point, Sense, Step, Unit, Verdict, Worse, swing,
};
use spile_build::file::{Chemistry, FuseFamily};
use spile_build::{Bank, Build, Cable, typical};
use spile_circuit::fuse::next_up;
use spile_circuit::scene::{MAIN, MAIN_BACK, bank_resistance, family, full_voltage, weakest};
use spile_quantity::{CableSize, Current, Resistance, Voltage};
use spile_tables::conductor::metric_sizes;
use spile_tables::fuse::{breaking, continuous, distances};

use crate::block;
use crate::cable::{carried_over, carried_step};
use crate::unsaid;
use crate::whole::{TOGETHER, whole};
use crate::words::{amps, round_up};

/// Everything found of the bank, the block and the body.
pub(crate) fn findings(build: &Build, bank: &Bank) -> Vec<Finding> {
    let mut found = vec![breaks(build, bank)];
    found.extend(block::breaks(build, bank));
    found.extend(unguarded(bank));
    if let Some(whole) = whole(build, bank) {
        found.extend(block::total(build, &whole));
        found.extend(fuse_for_load(build, bank, &whole.bank));
        found.extend(main_cable(build, bank, &whole.bank));
        found.extend(one_battery(bank, &whole.bank));
        found.extend(block::bond(build, &whole));
    }
    found.extend(block::insulated(build));
    found
}

/// The inputs of the bank as a source when it is full and warm.
pub(crate) fn take_full(
    ledger: &mut Ledger,
    build: &Build,
    bank: &Bank,
) -> (spile_answer::Handle<Voltage>, spile_answer::Handle<Resistance>) {
    (
        ledger.take("battery at rest, full", &full_voltage(build, bank)),
        ledger.take("internal resistance of the bank", &bank_resistance(build, bank)),
    )
}

/// The main fuse must break the bolted fault at the bank.
///
/// A resistance that is only typical of the chemistry makes no *stop*.
fn breaks(build: &Build, bank: &Bank) -> Finding {
    let (id, label) = ("bank.breaking", "bolted fault at the bank");
    let mut ledger = Ledger::new();
    let (open, inner) = take_full(&mut ledger, build, bank);
    let [swung] =
        swing(&ledger, [Worse::Higher], |point| [(point.at(open) / point.at(inner)).in_a()]);
    let likely = ledger.likely();
    let working = vec![Step {
        what: "bolted fault at the bank's posts".into(),
        formula: "I = E / R_i, full and warm".into(),
        numbers: format!(
            "{:.2} V / {:.2} mΩ = {:.0} A",
            likely.at(open).in_v(),
            likely.at(inner).in_mohm(),
            swung.likely
        ),
        source: "Ohm's law; IEC 61660-1 for batteries in the steady state, from memory".into(),
    }];
    let (amps, worst) = (round_up(swung.likely), round_up(swung.unfavourable));
    let volts = full_voltage(build, bank).likely();
    let said = bank.fuse.breaks.as_ref().map(|said| (said.likely(), said.source.clone(), true));
    let by_family = || {
        let entry = breaking(family(bank.fuse.family?)?, volts)?;
        Some((entry.value.current, entry.source.title.as_str().into(), entry.may_stop()))
    };
    let Some((breaks, source, firm)) = said.or_else(by_family) else {
        let tell = if bank.fuse_assumed { unsaid::taken_to_be_there } else { unsaid::open };
        let mut finding = tell(
            id,
            label,
            format!(
                "A spanner across the bank's posts draws about {amps:.0} A. Nothing says what the main fuse can break."
            ),
            "breaking capacity of the main fuse",
            "Read the family of the main fuse (strip, class T ...) and its breaking capacity in its papers, at the bank's voltage: fuse = { family = \"class T\", breaks = \"20000 A\" }.",
        );
        finding.inputs = ledger.inputs().to_vec();
        return finding.worked(working);
    };
    let limit = Limit {
        value: breaks.in_a(),
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "breaking",
        source,
        firm: firm && bank.resistance.as_ref().is_some_and(|ohm| ohm.basis != Basis::Typical),
    };
    let finding = Finding::measured(id, label, Unit::Ampere, &swung, limit, &ledger);
    let lithium =
        if bank.kind == Chemistry::Lfp { " Lithium wants 10 to 20 kA there." } else { "" };
    let says = format!(
        "A bolted fault behind the main fuse draws about {amps:.0} A, {worst:.0} A at worst; the fuse breaks {:.0} A.{lithium}",
        breaks.in_a()
    );
    let class_t = breaking(spile_tables::fuse::Family::ClassT, volts)
        .filter(|entry| entry.value.current.in_a() >= swung.unfavourable);
    let such_as = class_t.map_or("", |_| ", such as class T");
    let mend = (finding.verdict != Verdict::Good).then(|| {
        format!(
            "A main fuse that breaks {worst:.0} A or more at {:.0} V by its papers{such_as}.",
            volts.in_v().ceil()
        )
    });
    finding.saying(says).worked(working).mended(mend)
}

/// How far the main fuse is from the post, with nothing to guard the cable between.
fn unguarded(bank: &Bank) -> Option<Finding> {
    let (id, label) = ("bank.fuse", "unguarded cable at the bank");
    if bank.fuse_assumed {
        return Some(unsaid::taken_to_be_there(
            id,
            label,
            "Nothing is said of a main fuse at the bank; one is taken to be there. A cable that leaves the battery without one burns in a short circuit.",
            "main fuse",
            "Follow the thick red cable from the battery's post to the first fuse, read its rating and its family, and take the length between with a tape: [bank] fuse = { rating = \"100 A\", family = \"strip\", from_post = \"120 mm\" }.",
        ));
    }
    let given = bank.fuse.from_post.clone().unwrap_or_else(|| typical("unfused-lead"));
    let mut ledger = Ledger::new();
    let lead = ledger.take("cable between the battery's post and the main fuse", &given);
    let [swung] = swing(&ledger, [Worse::Higher], |point| [point.at(lead).in_mm()]);
    let rule = distances().iter().find(|entry| entry.value.key == "boat")?;
    // the rule is 7 in; a tape in millimetres has it as 180
    let greatest_mm = (rule.value.length.in_mm() / 10.0).round() * 10.0;
    let limit = Limit {
        value: greatest_mm,
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: rule.source.title.as_str().into(),
        firm: true,
    };
    let finding = Finding::measured(id, label, Unit::Millimetre, &swung, limit, &ledger);
    let says = format!(
        "Nothing guards the {:.0} mm of cable between the post and the main fuse. By practice that is {greatest_mm:.0} mm (7 in) at most, more only in a sheath of its own.",
        swung.likely
    );
    let mend = (finding.verdict != Verdict::Good)
        .then(|| format!("The main fuse within {greatest_mm:.0} mm of the post."));
    Some(finding.saying(says).mended(mend))
}

/// Everything together against 80 % of the main fuse. Practice.
fn fuse_for_load(build: &Build, bank: &Bank, together: &Given<Current>) -> Option<Finding> {
    let share = &continuous().over_3h;
    let Some(rating) = bank.fuse.rating.as_ref().map(Given::likely) else {
        // without any fuse, `bank.fuse` has asked for it already
        return (!bank.fuse_assumed).then(|| {
            let least = amps(together.likely() / share.value);
            unsaid::open(
                "bank.fuse-load",
                "least main fuse for the load",
                format!("Nothing is said of the main fuse's rating. Everything together wants {least} or more."),
                "rating of the main fuse",
                "Read the number on the main fuse: [bank] fuse = { rating = \"100 A\" }.",
            )
        });
    };
    let mut ledger = Ledger::new();
    let load = ledger.take(TOGETHER, together);
    let [swung] = swing(&ledger, [Worse::Higher], |point| [(point.at(load) / share.value).in_a()]);
    let limit = Limit {
        value: rating.in_a(),
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: share.source.title.as_str().into(),
        firm: true,
    };
    let (id, label) = ("bank.fuse-load", "least main fuse for the load");
    let finding = Finding::measured(id, label, Unit::Ampere, &swung, limit, &ledger);
    let says = format!(
        "Everything together: {} on a low battery, so by practice a main fuse of {} or more. There is one of {} A.",
        amps(together.likely()),
        amps(Current::a(swung.likely)),
        rating.in_a()
    );
    let mend = main_mend(build, bank, together).filter(|_| finding.verdict != Verdict::Good);
    Some(finding.saying(says).mended(mend))
}

/// Whether the main fuse guards the main cables; where its rating is not known, whether they carry
/// the load.
fn main_cable(build: &Build, bank: &Bank, together: &Given<Current>) -> Option<Finding> {
    let cables = [(MAIN, &build.block.feed), (MAIN_BACK, &build.block.back)];
    let (name, cable) = weakest(cables)?;
    let rating = bank.fuse.rating.as_ref().map(Given::likely);
    let mut ledger = Ledger::new();
    let load = ledger.take(TOGETHER, together);
    let likely = together.likely();
    let over = |point: &Point| match rating {
        Some(_) => 0.0,
        None => (point.at(load) - likely).in_a(),
    };
    let (swung, carried) = carried_over(&mut ledger, name, cable, over)?;
    let limit = Limit {
        value: rating.unwrap_or(likely).in_a(),
        sense: Sense::AtLeast,
        class: Class::Limit,
        kind: if rating.is_some() { "fuse" } else { "heat" },
        source: carried.in_free_air.source.title.as_str().into(),
        firm: carried.in_free_air.may_stop() && !build.block.assumed,
    };
    let against = match rating {
        Some(rating) => format!("the main fuse is of {} A", rating.in_a()),
        None => format!("everything together takes {}", amps(likely)),
    };
    let says = format!(
        "The {name} of {} carries {} where it lies; {against}.",
        cable.section,
        amps(carried.current)
    );
    let id = if rating.is_some() { "bank.fuse-cable" } else { "bank.cable" };
    let label = format!("what the {name} carries");
    let finding = Finding::measured(id, label, Unit::Ampere, &swung, limit, &ledger);
    let mend = main_mend(build, bank, together).filter(|_| finding.verdict != Verdict::Good);
    Some(finding.saying(says).worked(vec![carried_step(cable, &carried)]).mended(mend))
}

/// The main fuse, and where it must be, the main cables, with which load, fuse and cables go
/// together at the unfavourable end.
fn main_mend(build: &Build, bank: &Bank, together: &Given<Current>) -> Option<String> {
    let least = together.value.high / continuous().over_3h.value;
    let kind = bank.fuse.family.unwrap_or(FuseFamily::Strip);
    let there = bank.fuse.rating.as_ref().map(Given::likely).filter(|rating| *rating >= least);
    let new = next_up(family(kind)?, least).map(|entry| entry.value.current);
    let [feed, back] = [&build.block.feed, &build.block.back];
    let guards = |size: Option<CableSize>, rating: Current| {
        [(MAIN, feed), (MAIN_BACK, back)].into_iter().all(|(name, cable)| {
            let cable = Cable { section: size.unwrap_or(cable.section), ..cable.clone() };
            let swung = carried_over(&mut Ledger::new(), name, &cable, |_| 0.0);
            // two percent more, so that it is not tight
            swung.is_some_and(|(swung, _)| swung.unfavourable >= 1.02 * rating.in_a())
        })
    };
    let sizes = metric_sizes().iter().map(|entry| Some(CableSize::Metric(entry.value.section)));
    std::iter::once(None).chain(sizes).find_map(|size| {
        let rating = [there, new].into_iter().flatten().find(|rating| guards(size, *rating))?;
        let fuse = (Some(rating) != there)
            .then(|| format!("a main fuse of {} A ({})", rating.in_a(), kind.word()));
        let cables = size.map(|size| {
            let metres = (feed.length.likely() + back.length.likely()).in_m();
            format!("{size} from the bank to the block and back, {metres:.1} m in all")
        });
        let parts: Vec<String> = fuse.into_iter().chain(cables).collect();
        Some(format!("Load, fuse and cable are in step with {}.", parts.join(", on ")))
    })
}

/// The limit of each battery's own electronics, with uneven sharing.
///
/// **Source** common practice: two like batteries in parallel share 60 to 40; of more, the
/// strongest is counted as bearing 1.2 times its even share.
fn one_battery(bank: &Bank, together: &Given<Current>) -> Option<Finding> {
    const UNEVEN: f64 = 1.2;
    let each = bank.limit.as_ref()?;
    let count = f64::from(bank.count);
    let uneven = if bank.count > 1 { UNEVEN } else { 1.0 };
    let mut ledger = Ledger::new();
    ledger.take("greatest current of one battery", each);
    let load = ledger.take(TOGETHER, together);
    let [even] = swing(&ledger, [Worse::Higher], |point| [point.at(load).in_a() / count]);
    let swung = spile_answer::Swing { unfavourable: even.unfavourable * uneven, ..even };
    let limit = Limit {
        value: each.likely().in_a(),
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "papers",
        source: each.source.clone(),
        firm: true,
    };
    let (total, most) = (amps(together.likely()), amps(each.likely()));
    let says = if bank.count > 1 {
        format!(
            "Everything together: {total}, {} a battery. Shared unevenly, one may have to give {}; its electronics allow {most}.",
            amps(Current::a(swung.likely)),
            amps(Current::a(swung.unfavourable)),
        )
    } else {
        format!(
            "Everything together: {total} on a low battery, {} at worst. The battery's electronics allow {most}.",
            amps(Current::a(swung.unfavourable))
        )
    };
    let (id, label) = ("bank.limit", "current of one battery");
    let finding = Finding::measured(id, label, Unit::Ampere, &swung, limit, &ledger);
    let mend = (finding.verdict != Verdict::Good).then(|| {
        let needed = (UNEVEN * together.value.high.in_a() / (0.98 * each.likely().in_a())).ceil();
        let least = needed.max(count + 1.0);
        format!(
            "{least:.0} such batteries in parallel, or {} less at once.",
            amps(Current::a(
                (swung.unfavourable - 0.98 * each.likely().in_a()).max(0.0) * count / uneven
            ))
        )
    });
    Some(finding.saying(says).mended(mend))
}
