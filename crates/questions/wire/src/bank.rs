//! What is found of the bank and the fuse block, whatever hangs on them.

use spile_answer::{Ask, Class, Finding, Ledger, Limit, Sense, Step, Unit, Verdict, Worse, swing};
use spile_build::file::Chemistry;
use spile_build::{Bank, Build, typical};
use spile_circuit::ampacity::allowed;
use spile_circuit::conductor::cable_resistance;
use spile_quantity::{Current, Length, Power, Ranged, Resistance, Temperature};
use spile_tables::fuse::{breaking, distances};

use crate::load::from_table;
use crate::path::{bank_resistance, family, full_voltage};

/// Everything found of the bank and the block; `together` is what all runs take at once.
pub(crate) fn findings(build: &Build, bank: &Bank, together: Power) -> Vec<Finding> {
    let mut found = vec![breaks(build, bank), blades(build, bank)];
    found.extend(distance(bank));
    found.extend(main_fuse(build, bank, together));
    found.extend(limit(bank, build, together));
    found.extend(body(build));
    found
}

/// The greatest current through a bolted fault right behind the main fuse or at the block.
///
/// **Formula** I = E / (Rᵢ + ΣR), full and warm battery, cold copper, every joint at its best
/// within its range when the unfavourable end is looked for.
fn bolted(
    build: &Build,
    bank: &Bank,
    at_block: bool,
) -> (Ledger, impl Fn(&spile_answer::Point) -> f64) {
    let mut ledger = Ledger::new();
    let open = ledger.take("battery at rest, full", &full_voltage(build, bank));
    let inner = ledger.take("internal resistance of the bank", &bank_resistance(build, bank));
    let cables = at_block.then(|| {
        let metres = |name: &str, cable: &spile_build::Cable, ledger: &mut Ledger| {
            let at_20 = Temperature::celsius(20.0);
            let metre = cable_resistance(cable.section, Length::m(1.0), at_20)
                .unwrap_or_else(|_| Ranged::exactly(Resistance::ohm(0.0)));
            let how = "The print along the cable.";
            let metre = from_table(metre, "IEC 60228; ASTM B258".to_owned(), how);
            (
                ledger.take(format!("a metre of {} at 20 °C", cable.section), &metre),
                ledger.take(format!("length of the {name}"), &cable.length),
            )
        };
        let feed = metres("cable from the bank to the fuse block", &build.block.feed, &mut ledger);
        let back =
            metres("cable from the negative bus to the bank", &build.block.back, &mut ledger);
        let joints = ledger.take("posts, isolator, shunt and bus bars", &build.block.joints);
        let fuse = ledger.take("main fuse with its holder", &bank.fuse.resistance);
        (feed, back, joints, fuse)
    });
    let current = move |point: &spile_answer::Point| {
        let mut ohm = point.at(inner);
        if let Some(((feed, feed_m), (back, back_m), joints, fuse)) = cables {
            ohm = ohm
                + point.at(feed) * point.at(feed_m).in_m()
                + point.at(back) * point.at(back_m).in_m()
                + point.at(joints)
                + point.at(fuse);
        }
        (point.at(open) / ohm).in_a()
    };
    (ledger, current)
}

/// The main fuse must break the bolted fault at the bank.
fn breaks(build: &Build, bank: &Bank) -> Finding {
    let (ledger, current) = bolted(build, bank, false);
    let [swung] = swing(&ledger, [Worse::Higher], |point| [current(point)]);
    let rated =
        bank.fuse.breaks.as_ref().map(|said| (said.likely(), said.source.to_string(), true));
    let by_family = bank.fuse.family.and_then(family).and_then(|family| {
        let volts = full_voltage(build, bank).likely();
        breaking(family, volts)
            .map(|entry| (entry.value.current, entry.source.title.clone(), entry.may_stop()))
    });
    let working = vec![Step {
        what: "bolted fault at the bank's posts".into(),
        formula: "I = E / R_i".into(),
        numbers: format!("{:.0} A", swung.likely),
        source: "Ohm's law; IEC 61660-1 for batteries in the steady state, from memory".into(),
    }];
    let amps = swung.likely;
    let Some((breaks, source, firm)) = rated.or(by_family) else {
        let says = format!(
            "A spanner across the bank's posts draws about {amps:.0} A. Nothing says what the main fuse can break."
        );
        let mut finding =
            Finding::plain("bank.breaking", "bolted fault at the bank", Verdict::Open, says);
        finding.inputs = ledger.inputs().to_vec();
        finding.working = working;
        finding.asks.push(Ask {
            input: "breaking capacity of the main fuse".into(),
            how: "Read the family of the main fuse (strip, class T ...) and its breaking capacity in its papers, at the bank's voltage: fuse = { family = \"class T\", breaks = \"20000 A\" }.".into(),
            settles: String::new(),
            weight: 1.0,
        });
        return finding;
    };
    let limit = Limit {
        value: breaks.in_a(),
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "breaking",
        source: source.into(),
        firm,
    };
    let finding = Finding::measured(
        "bank.breaking",
        "bolted fault at the bank",
        Unit::Ampere,
        &swung,
        limit,
        &ledger,
    );
    let lithium =
        if bank.kind == Chemistry::Lfp { " Lithium wants 10 to 20 kA there." } else { "" };
    let says = format!(
        "A bolted fault behind the main fuse draws {amps:.0} A, {:.0} A at most; the fuse breaks {:.0} A.{lithium}",
        swung.unfavourable,
        breaks.in_a()
    );
    let mend = (finding.verdict != Verdict::Good).then(|| {
        format!("A main fuse that breaks {:.0} A or more at the bank's voltage, by its papers, clears it.", round_up(swung.unfavourable))
    });
    finding.saying(says).worked(working).mended(mend)
}

/// Two digits, upwards.
fn round_up(value: f64) -> f64 {
    let step = 10_f64.powf(value.abs().max(1.0).log10().floor() - 1.0);
    (value / step).ceil() * step
}

/// Blades behind the main fuse break 1000 A by themselves: more is practice where no series rating is known.
fn blades(build: &Build, bank: &Bank) -> Finding {
    let (ledger, current) = bolted(build, bank, true);
    let [swung] = swing(&ledger, [Worse::Higher], |point| [current(point)]);
    let volts = full_voltage(build, bank).likely();
    let entry = breaking(spile_tables::fuse::Family::Blade, volts);
    let (value, source) = entry.map_or((0.0, "no table"), |entry| {
        (entry.value.current.in_a(), entry.source.title.as_str())
    });
    let limit = Limit {
        value,
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: source.into(),
        firm: true,
    };
    let says = format!(
        "A bolted fault at the fuse block draws {:.0} A. A blade fuse breaks {value:.0} A by itself; beyond, the main fuse has to break it first, and no series rating is known.",
        swung.likely
    );
    let finding = Finding::measured(
        "block.breaking",
        "bolted fault at the fuse block",
        Unit::Ampere,
        &swung,
        limit,
        &ledger,
    );
    let mend = (finding.verdict != Verdict::Good).then(|| {
        format!(
            "Fuses at the block that break {:.0} A, or a series rating from the makers of both fuses, settle it.",
            round_up(swung.unfavourable)
        )
    });
    finding.saying(says).mended(mend).worked(vec![Step {
        what: "bolted fault at the fuse block".into(),
        formula: "I = E / (R_i + ΣR)".into(),
        numbers: format!("{:.0} A", swung.likely),
        source: "Ohm's law".into(),
    }])
}

/// How far the main fuse is from the post.
fn distance(bank: &Bank) -> Option<Finding> {
    if bank.fuse_assumed {
        let says = "Nothing is said of a main fuse at the bank. A cable that leaves the battery without one burns in a short circuit.";
        let mut finding = Finding::plain("bank.fuse", "main fuse", Verdict::Open, says);
        finding.asks.push(Ask {
            input: "main fuse".into(),
            how: "Follow the thick red cable from the battery's post to the first fuse, read its rating and its family, and take the length between with a tape: [bank] fuse = { rating = \"100 A\", family = \"strip\", from_post = \"120 mm\" }.".into(),
            settles: String::new(),
            weight: 1.0,
        });
        return Some(finding);
    }
    let given = bank.fuse.from_post.clone().unwrap_or_else(|| typical("unfused-lead"));
    let mut ledger = Ledger::new();
    let lead = ledger.take("cable between the battery's post and the main fuse", &given);
    let [swung] = swing(&ledger, [Worse::Higher], |point| [point.at(lead).in_mm()]);
    let rule = distances().iter().find(|entry| entry.value.key == "boat")?;
    let limit = Limit {
        value: rule.value.length.in_mm(),
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: rule.source.title.as_str().into(),
        firm: true,
    };
    let says = format!(
        "{:.0} mm of cable lie between the post and the main fuse. Nothing guards them: {:.0} mm is practice, more only in a sheath of its own.",
        swung.likely,
        rule.value.length.in_mm()
    );
    Some(
        Finding::measured(
            "bank.fuse",
            "unguarded cable at the bank",
            Unit::Millimetre,
            &swung,
            limit,
            &ledger,
        )
        .saying(says),
    )
}

/// The main fuse and its cable against all that runs together, and against each other.
fn main_fuse(build: &Build, bank: &Bank, together: Power) -> Vec<Finding> {
    let mut found = Vec::new();
    let amps = (together / build.system.likely()).in_a();
    if let Some(total) = &build.block.total {
        let mut ledger = Ledger::new();
        ledger.take("greatest current through the block", total);
        let [swung] = swing(&ledger, [Worse::Higher], |_| [amps]);
        let limit = Limit {
            value: total.likely().in_a(),
            sense: Sense::AtMost,
            class: Class::Limit,
            kind: "papers",
            source: total.source.clone(),
            firm: true,
        };
        let says = format!(
            "Everything together takes {amps:.0} A through the fuse block; its papers allow {:.0} A.",
            total.likely().in_a()
        );
        found.push(
            Finding::measured(
                "block.total",
                "all runs together",
                Unit::Ampere,
                &swung,
                limit,
                &ledger,
            )
            .saying(says),
        );
    }
    let Some(rating) = bank.fuse.rating.as_ref().map(spile_answer::Given::likely) else {
        return found;
    };
    let load = simple(
        "bank.fuse-load",
        "all runs together, of the main fuse",
        Unit::Ampere,
        amps / 0.8,
        Limit {
            value: rating.in_a(),
            sense: Sense::AtMost,
            class: Class::Practice,
            kind: "practice",
            source: "common practice: load over 0.8".into(),
            firm: true,
        },
        format!(
            "Everything together takes {amps:.0} A, so the main fuse should be of {:.0} A or more; it is of {} A.",
            amps / 0.8,
            rating.in_a()
        ),
    );
    found.push(load);
    found.extend(main_cable(build, rating));
    found
}

/// Whether the main fuse guards the cable to the block.
fn main_cable(build: &Build, rating: Current) -> Option<Finding> {
    let cable = &build.block.feed;
    let mut ledger = Ledger::new();
    let insulation = ledger.take("what the insulation of the main cable stands", &cable.insulation);
    let ambient = ledger.take("temperature of the main cable", &cable.ambient);
    let carried = |point: &spile_answer::Point| {
        allowed(cable.section, point.at(insulation), point.at(ambient), cable.bundle).ok()
    };
    let likely = carried(&ledger.likely())?;
    let [swung] = swing(&ledger, [Worse::Lower], |point| {
        [carried(point).map_or(0.0, |allowed| allowed.current.in_a())]
    });
    let limit = Limit {
        value: rating.in_a(),
        sense: Sense::AtLeast,
        class: Class::Limit,
        kind: "fuse",
        source: likely.in_free_air.source.title.as_str().into(),
        firm: likely.in_free_air.may_stop() && !build.block.assumed,
    };
    let says = format!(
        "The main cable of {} carries {:.0} A where it lies; the main fuse is of {} A.",
        cable.section,
        swung.likely,
        rating.in_a()
    );
    Some(
        Finding::measured(
            "bank.fuse-cable",
            "what the main cable carries",
            Unit::Ampere,
            &swung,
            limit,
            &ledger,
        )
        .saying(says),
    )
}

/// The limits of the batteries' own electronics, with uneven sharing.
///
/// **Source** common practice: two like batteries in parallel share 60 to 40; more of them are
/// counted alike, with the strongest bearing 1.2 times its even share.
fn limit(bank: &Bank, build: &Build, together: Power) -> Option<Finding> {
    let each = bank.limit.as_ref()?;
    let amps = (together / build.system.likely()).in_a();
    let share = if bank.count > 1 { 1.2 / f64::from(bank.count) } else { 1.0 };
    let mut ledger = Ledger::new();
    ledger.take("greatest current of one battery", each);
    let [even] = swing(&ledger, [Worse::Higher], |_| [amps / f64::from(bank.count)]);
    let swung = spile_answer::Swing { unfavourable: amps * share, ..even };
    let limit = Limit {
        value: each.likely().in_a(),
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "papers",
        source: each.source.clone(),
        firm: true,
    };
    let says = format!(
        "Everything together takes {amps:.0} A; with uneven sharing one battery gives {:.0} A, and its electronics allow {:.0} A.",
        amps * share,
        each.likely().in_a()
    );
    Some(
        Finding::measured(
            "bank.limit",
            "current of one battery",
            Unit::Ampere,
            &swung,
            limit,
            &ledger,
        )
        .saying(says),
    )
}

/// A return through a body whose parts are insulated from each other is none.
fn body(build: &Build) -> Option<Finding> {
    let through =
        build.runs.iter().find(|(_, run)| matches!(run.back, spile_build::Return::Body { .. }))?;
    build.body.insulated.then(|| {
        let says = format!(
            "The run {} returns through the body, and parts of it are insulated from each other: glued, painted or anodised joints carry no current that can be relied on.",
            through.0
        );
        Finding::plain("body.insulated", "return through the body", Verdict::Stop, says)
            .mended(Some("A return cable of its own, of the feed's size, to the negative bus clears it.".to_owned()))
    })
}

fn simple(id: &str, label: &str, unit: Unit, value: f64, limit: Limit, says: String) -> Finding {
    let ledger = Ledger::new();
    let [swung] = swing(&ledger, [Worse::Higher], |_| [value]);
    Finding::measured(id, label, unit, &swung, limit, &ledger).saying(says)
}
