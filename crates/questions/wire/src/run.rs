//! What is found of one run: volts as it starts, loss while it runs, cable, fuse, fault.

use spile_answer::{
    Ask, Class, Finding, Ledger, Limit, Point, Reason, Sense, Step, Unit, Verdict, Worse, swing,
};
use spile_build::{Bank, Build, Cable, Run};
use spile_circuit::ampacity::{Allowed, allowed};
use spile_circuit::fuse::{next_up, opening};
use spile_circuit::network::{Trouble, solve_as_if_running};
use spile_circuit::{conductor, fault};
use spile_quantity::{Current, Resistance, Temperature, Voltage};
use spile_tables::conductor::greatest_drop;
use spile_tables::fault::adiabatics;
use spile_tables::fuse::{Family, continuous, envelope};

use crate::load::Load;
use crate::path::{Others, State, Way, Wired, family};

/// One run of a build, with what hangs on it.
pub(crate) struct Asked<'b> {
    pub(crate) build: &'b Build,
    pub(crate) bank: &'b Bank,
    pub(crate) name: &'b str,
    pub(crate) run: &'b Run,
    pub(crate) item: &'b str,
    pub(crate) load: Load,
    pub(crate) others: Others,
}

impl Asked<'_> {
    pub(crate) fn nominal(&self) -> Voltage {
        self.build.system.likely()
    }

    /// The current while it runs, at the nominal voltage of the circuit.
    pub(crate) fn running(&self) -> Current {
        self.load.running.likely() / self.nominal()
    }

    pub(crate) fn family(&self) -> Option<Family> {
        self.run.way.as_ref().map_or(Some(Family::Blade), |way| family(way.family))
    }

    /// The rating of its fuse; where none is said, the least that is made and carries the load.
    pub(crate) fn rating(&self) -> Option<Current> {
        let said = self.run.way.as_ref().and_then(|way| way.fuse.as_ref());
        said.map(spile_answer::Given::likely).or_else(|| self.suitable_fuse())
    }

    /// The least fuse that is made and carries the running load at the practice of 80 %.
    pub(crate) fn suitable_fuse(&self) -> Option<Current> {
        let least = self.running() / continuous().over_3h.value;
        next_up(self.family()?, least).map(|entry| entry.value.current)
    }

    /// What its thinnest cable may carry where it lies, at the likely surroundings.
    pub(crate) fn allowed(&self) -> Option<Current> {
        let cables = self.cables();
        let each = cables.iter().map(|cable| {
            let [rating, at] = [cable.insulation.likely(), cable.ambient.likely()];
            Some(allowed(cable.section, rating, at, cable.bundle).ok()?.current)
        });
        each.collect::<Option<Vec<_>>>()?.into_iter().reduce(Current::min)
    }

    /// The cables that the fuse has to guard.
    pub(crate) fn cables(&self) -> [&Cable; 2] {
        let back = match &self.run.back {
            spile_build::Return::Cable(cable) | spile_build::Return::Body { cable, .. } => cable,
        };
        [&self.run.feed, back]
    }

    /// `10 A blade fuse`.
    fn fuse_words(&self, rating: Current) -> String {
        let word = self.run.way.as_ref().map_or("blade", |way| way.family.word());
        format!("{} A {word} fuse", rating.in_a())
    }
}

/// Everything found of one run.
pub(crate) fn findings(asked: &Asked<'_>) -> Vec<Finding> {
    let Some(rating) = asked.rating() else {
        return vec![no_fuse_found(asked)];
    };
    let Some(way) = Way::new(asked.build, asked.bank, asked.run, &asked.load, rating) else {
        return vec![unreadable(asked)];
    };
    let mut found = Vec::new();
    found.extend(start(asked, &way));
    found.push(drop(asked, &way));
    found.extend(cable(asked));
    found.extend(fuse(asked, rating));
    found.extend(clearing(asked, &way, rating));
    found
}

fn id(asked: &Asked<'_>, what: &str) -> String {
    format!("{}.{what}", asked.name)
}

fn no_fuse_found(asked: &Asked<'_>) -> Finding {
    let says = format!(
        "The {} takes {:.0} A while it runs, and no single fuse of that kind is made so large.",
        asked.item,
        asked.running().in_a()
    );
    Finding::plain(id(asked, "fuse"), "fuse", Verdict::Open, says)
}

fn unreadable(asked: &Asked<'_>) -> Finding {
    let says = format!(
        "The cable of the run {} is of a size that no table here has, so nothing can be said of it.",
        asked.name
    );
    let mut finding = Finding::plain(id(asked, "start"), "cable", Verdict::Open, says);
    finding.asks.push(Ask {
        input: format!("section of the run {}", asked.name).into(),
        how: "Read the print along the cable: square millimetres or AWG.".into(),
        settles: String::new(),
        weight: 1.0,
    });
    finding
}

/// Volts at the item as it starts on a low, cold battery, against its cut-out.
///
/// The uncertainty of the cut-out itself is counted in the figure, so that the limit can be shown
/// at its likely value.
pub(crate) fn start_volts(
    asked: &Asked<'_>,
    way: &Way,
    point: &Point,
    likely_cut_out: Voltage,
) -> f64 {
    let wired = way.wire(point, State::Start, asked.nominal(), &asked.others);
    let cut_out = way.cut_out.map_or(likely_cut_out, |volts| point.at(volts));
    match solve_as_if_running(&wired.net) {
        Ok(found) => {
            let left = found.between(wired.plug_plus, wired.plug_minus);
            (left - (cut_out - likely_cut_out)).in_v()
        }
        Err(_) => f64::NEG_INFINITY,
    }
}

fn start(asked: &Asked<'_>, way: &Way) -> Option<Finding> {
    let cut_out = asked.load.cut_out.as_ref()?;
    if !way.starts() {
        return None;
    }
    let likely_cut_out = cut_out.likely();
    let [swung] = swing(&way.ledger, [Worse::Lower], |point| {
        [start_volts(asked, way, point, likely_cut_out)]
    });
    let limit = Limit {
        value: likely_cut_out.in_v(),
        sense: Sense::AtLeast,
        class: Class::Limit,
        kind: "cut-out",
        source: cut_out.source.clone(),
        firm: cut_out.basis != spile_answer::Basis::Typical,
    };
    let label = format!("volts at the {}, at start", asked.item);
    let finding =
        Finding::measured(id(asked, "start"), label, Unit::Volt, &swung, limit, &way.ledger);
    let says = start_says(asked, way, &finding);
    Some(finding.saying(says).worked(start_working(asked, way)))
}

fn start_says(asked: &Asked<'_>, way: &Way, finding: &Finding) -> String {
    let point = way.ledger.likely();
    let amps = way.start_current(&point, asked.nominal());
    let wired = way.wire(&point, State::Start, asked.nominal(), &asked.others);
    let cut_out = asked.load.cut_out.as_ref().map_or(0.0, |volts| volts.likely().in_v());
    let Ok(found) = solve_as_if_running(&wired.net) else {
        return format!(
            "On a low battery the {} finds no steady voltage at all as it starts.",
            asked.item
        );
    };
    let posts = found.between(wired.post, wired.net.reference()).in_v();
    let left = found.between(wired.plug_plus, wired.plug_minus).in_v();
    let worst = worst_part(way, &point);
    let end = match finding.verdict {
        Verdict::Good => format!("It cuts out under {cut_out:.2} V."),
        Verdict::Stop => format!("It cuts out under {cut_out:.2} V. {worst}"),
        _ => {
            let unfavourable = finding.figure.as_ref().map_or(left, |figure| figure.unfavourable);
            if unfavourable.is_finite() {
                format!(
                    "It cuts out under {cut_out:.2} V, and {unfavourable:.2} V may be left. {worst}"
                )
            } else {
                format!("It cuts out under {cut_out:.2} V, and at worst nothing arrives. {worst}")
            }
        }
    };
    format!(
        "On a low battery its posts hold {posts:.2} V while the {} starts with {:.1} A, and {left:.2} V arrive. {end}",
        asked.item,
        amps.in_a()
    )
}

/// Which part of the way takes most, in a sentence.
fn worst_part(way: &Way, point: &Point) -> String {
    let parts = [
        (
            "bank to the fuse block and back",
            way.block_resistance(point) + way.bus_resistance(point),
        ),
        ("feed with its fuse and plug", way.feed_resistance(point)),
        ("return", way.back_resistance(point)),
    ];
    let whole: Resistance = parts.iter().map(|(_, ohm)| *ohm).sum();
    let (name, most) =
        parts.iter().fold(parts[0], |worst, part| if part.1 > worst.1 { *part } else { worst });
    format!("The {name} takes {:.0} % of what is lost.", 100.0 * (most / whole))
}

fn start_working(asked: &Asked<'_>, way: &Way) -> Vec<Step> {
    let point = way.ledger.likely();
    let amps = way.start_current(&point, asked.nominal()).in_a();
    let wired = way.wire(&point, State::Start, asked.nominal(), &asked.others);
    let mut steps = resistance_steps(way, &point);
    if let Ok(found) = solve_as_if_running(&wired.net) {
        let posts = found.between(wired.post, wired.net.reference()).in_v();
        let left = found.between(wired.plug_plus, wired.plug_minus).in_v();
        steps.push(Step {
            what: "volts at the item as it starts".into(),
            formula: "the whole circuit, by modified nodal analysis; here U = U_posts − I·ΣR".into(),
            numbers: format!("{posts:.3} V − {amps:.2} A × {:.1} mΩ = {left:.3} V", 1000.0 * (posts - left) / amps),
            source: "Kirchhoff's laws; Ho, Ruehli and Brennan, IEEE Trans. Circuits and Systems 22 (1975) 504".into(),
        });
    }
    steps
}

fn resistance_steps(way: &Way, point: &Point) -> Vec<Step> {
    let cable = |name: &'static str, conductor: &crate::path::Conductor| {
        let metre = point.at(conductor.per_metre).in_mohm();
        let metres = point.at(conductor.length).in_m();
        let at = point.at(conductor.at).in_celsius();
        let ohm = metre * metres * conductor::copper_warming(point.at(conductor.at)).unwrap_or(1.0);
        Step {
            what: name.into(),
            formula: "R = R₂₀ · L · (1 + 0.00393 · (T − 20 °C))".into(),
            numbers: format!("{metre:.2} mΩ/m × {metres:.2} m, at {at:.0} °C = {ohm:.1} mΩ"),
            source: "IEC 60228; IEC 60028".into(),
        }
    };
    let sum = |name: &'static str, ohm: Resistance| Step {
        what: name.into(),
        formula: "ΣR".into(),
        numbers: format!("{:.1} mΩ", ohm.in_mohm()),
        source: "Ohm's law".into(),
    };
    vec![
        cable("resistance of the feed", &way.feed),
        cable("resistance of the return", &way.back),
        sum("feed with fuse, contacts and plug", way.feed_resistance(point)),
        sum("return, with the body where it goes through it", way.back_resistance(point)),
        sum(
            "bank to the fuse block, and bus to the bank",
            way.block_resistance(point) + way.bus_resistance(point),
        ),
    ]
}

/// The loss between the bank's posts and the item while everything runs, in percent of nominal.
pub(crate) fn drop_percent(asked: &Asked<'_>, way: &Way, point: &Point) -> f64 {
    let wired = way.wire(point, State::Running, asked.nominal(), &asked.others);
    loss_percent(&wired, asked.nominal()).unwrap_or(f64::INFINITY)
}

fn loss_percent(wired: &Wired, nominal: Voltage) -> Result<f64, Trouble> {
    let found = solve_as_if_running(&wired.net)?;
    let posts = found.between(wired.post, wired.net.reference());
    let left = found.between(wired.plug_plus, wired.plug_minus);
    Ok(100.0 * ((posts - left) / nominal))
}

fn drop(asked: &Asked<'_>, way: &Way) -> Finding {
    let [swung] = swing(&way.ledger, [Worse::Higher], |point| [drop_percent(asked, way, point)]);
    let rule = greatest_drop(asked.load.service);
    let percent = 100.0 * rule.value;
    let collapse = swung.likely.is_infinite();
    let limit = Limit {
        value: percent,
        sense: Sense::AtMost,
        // A loss is against practice; a circuit that has no steady state at all is physics.
        class: if collapse { Class::Limit } else { Class::Practice },
        kind: if collapse { "collapse" } else { "practice" },
        source: rule.source.title.as_str().into(),
        firm: true,
    };
    let finding = Finding::measured(
        id(asked, "drop"),
        format!("lost on the way to the {}, running", asked.item),
        Unit::Percent,
        &swung,
        limit,
        &way.ledger,
    );
    let volts = asked.nominal().in_v();
    let says = if collapse {
        format!(
            "The {} wants {:.0} W, more than can reach it: its voltage falls without end.",
            asked.item,
            asked.load.running.likely().in_w()
        )
    } else {
        let others = match asked.others.names.as_slice() {
            [] => String::new(),
            names => format!(", with {} on,", names.join(", ")),
        };
        format!(
            "Running{others} it loses {:.1} % of {volts:.0} V on its way. {percent:.0} % is practice for such a load.",
            swung.likely
        )
    };
    let mut working = resistance_steps(way, &way.ledger.likely());
    working.push(Step {
        what: "loss while everything runs, on a low battery".into(),
        formula: "the whole circuit by modified nodal analysis, loads of constant power by Newton's method".into(),
        numbers: format!("(U_posts − U_item) / {volts:.0} V = {:.2} %", swung.likely),
        source: "Kirchhoff's laws".into(),
    });
    finding.saying(says).worked(working)
}

/// The inputs of what a cable may carry.
struct CableLedger {
    ledger: Ledger,
    insulation: spile_answer::Handle<Temperature>,
    ambient: spile_answer::Handle<Temperature>,
}

fn cable_ledger(name: &str, cable: &Cable) -> CableLedger {
    let mut ledger = Ledger::new();
    let insulation =
        ledger.take(format!("what the insulation of the {name} stands"), &cable.insulation);
    let ambient = ledger.take(format!("temperature of the {name}"), &cable.ambient);
    CableLedger { ledger, insulation, ambient }
}

/// What a cable may carry at one point; nothing where it is hotter round it than it stands.
fn carries(cable: &Cable, inputs: &CableLedger, point: &Point) -> Option<Allowed> {
    allowed(cable.section, point.at(inputs.insulation), point.at(inputs.ambient), cable.bundle).ok()
}

/// The load against what the cable may carry.
fn cable(asked: &Asked<'_>) -> Option<Finding> {
    let (name, cable) = weaker(asked);
    let inputs = cable_ledger(name, cable);
    let [swung] = swing(&inputs.ledger, [Worse::Lower], |point| {
        [carries(cable, &inputs, point).map_or(0.0, |allowed| allowed.current.in_a())]
    });
    let load_a = asked.running().in_a();
    let allowed = carries(cable, &inputs, &inputs.ledger.likely());
    let Some(allowed) = allowed else {
        let says = format!(
            "No published table says what {} carries there: it is outside their sizes or as hot as its insulation stands.",
            cable.section
        );
        return Some(Finding::plain(
            id(asked, "cable"),
            "what the cable may carry",
            Verdict::Open,
            says,
        ));
    };
    let limit = Limit {
        value: load_a,
        sense: Sense::AtLeast,
        class: Class::Limit,
        kind: "heat",
        source: allowed.in_free_air.source.title.as_str().into(),
        firm: allowed.in_free_air.may_stop() && !cable.section_assumed,
    };
    let working = vec![Step {
        what: format!("what {} may carry there", cable.section).into(),
        formula: "I = I₃₀ · √((T_r − T_a)/(T_r − 30 °C)) · f".into(),
        numbers: format!(
            "{:.1} A × {:.2} × {:.2} = {:.1} A",
            allowed.in_free_air.value.in_a(),
            allowed.ambient_factor,
            allowed.bundle_factor.value,
            allowed.current.in_a()
        ),
        source: allowed.in_free_air.source.title.as_str().into(),
    }];
    let says = format!(
        "The {name} of {} carries {:.0} A at {:.0} °C, {} conductors together; the {} takes {load_a:.1} A.",
        cable.section,
        swung.likely,
        cable.ambient.likely().in_celsius(),
        cable.bundle,
        asked.item
    );
    let label = format!("what the {name} may carry");
    Some(
        Finding::measured(id(asked, "cable"), label, Unit::Ampere, &swung, limit, &inputs.ledger)
            .saying(says)
            .worked(working),
    )
}

/// The one of feed and return that carries less.
fn weaker<'a>(asked: &'a Asked<'_>) -> (&'static str, &'a Cable) {
    let [feed, back] = asked.cables();
    let carries = |cable: &Cable| {
        let [rating, at] = [cable.insulation.likely(), cable.ambient.likely()];
        allowed(cable.section, rating, at, cable.bundle)
            .map_or(0.0, |allowed| allowed.current.in_a())
    };
    if carries(back) < carries(feed) { ("return", back) } else { ("feed", feed) }
}

/// The fuse against its load, its cable and the papers.
fn fuse(asked: &Asked<'_>, rating: Current) -> Vec<Finding> {
    let mut found = Vec::new();
    let said = asked.run.way.as_ref().and_then(|way| way.fuse.as_ref()).is_some();
    let words = asked.fuse_words(rating);
    let share = &continuous().over_3h;
    let least = asked.running() / share.value;
    let (name, cable) = weaker(asked);
    let inputs = cable_ledger(name, cable);
    let window = format!(
        "It must be at least {:.1} A for the load and at most what the {name} carries.",
        least.in_a()
    );
    if !said {
        let upper = asked.allowed().map_or(String::new(), |most| {
            format!(", and at most {:.0} A for the {name}", most.in_a())
        });
        let says = format!(
            "Nothing is said of the fuse of the run {}. A {words} would be right: at least {:.1} A for the load{upper}.",
            asked.name,
            least.in_a()
        );
        let mut finding = Finding::plain(id(asked, "fuse"), "fuse", Verdict::Open, says);
        finding.asks.push(Ask {
            input: format!("fuse of the run {}", asked.name).into(),
            how: "Read the number on the fuse in the run's way, and write it: [block.ways.1] fuse = \"10 A\", run = \"...\"; where there is none yet, write the one you will put in.".into(),
            settles: String::new(),
            weight: 1.0,
        });
        found.push(finding);
    }
    // Against the load: practice.
    let mut ledger = Ledger::new();
    let running = ledger.take("power while it runs", &asked.load.running);
    let nominal = asked.nominal();
    let [swung] = swing(&ledger, [Worse::Higher], |point| {
        [(point.at(running) / nominal).in_a() / share.value]
    });
    let limit = Limit {
        value: rating.in_a(),
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: share.source.title.as_str().into(),
        firm: true,
    };
    let says = format!(
        "The {} takes {:.1} A, so its fuse should be of {:.1} A or more; it is a {words}.",
        asked.item,
        asked.running().in_a(),
        least.in_a()
    );
    if said {
        found.push(
            Finding::measured(
                id(asked, "fuse-load"),
                "least fuse for the load",
                Unit::Ampere,
                &swung,
                limit,
                &ledger,
            )
            .saying(says)
            .worked(vec![Step {
                what: "least rating".into(),
                formula: "I_n ≥ I / 0.8".into(),
                numbers: format!(
                    "{:.2} A / {} = {:.2} A",
                    asked.running().in_a(),
                    share.value,
                    least.in_a()
                ),
                source: share.source.title.as_str().into(),
            }]),
        );
        found.extend(guards(asked, rating, &words, name, cable, &inputs, &window));
    }
    if let (Some(most), true) = (&asked.load.fuse, said) {
        let mut ledger = Ledger::new();
        ledger.take("greatest fuse its papers allow", most);
        let [swung] = swing(&ledger, [Worse::Higher], |_| [rating.in_a()]);
        let limit = Limit {
            value: most.likely().in_a(),
            sense: Sense::AtMost,
            class: Class::Limit,
            kind: "papers",
            source: most.source.clone(),
            firm: true,
        };
        let says = format!(
            "Its papers allow a fuse of {} A at most; it is a {words}.",
            most.likely().in_a()
        );
        let what = id(asked, "fuse-papers");
        let mut finding =
            Finding::measured(what, "its fuse", Unit::Ampere, &swung, limit, &ledger).saying(says);
        // Fuses come in steps: one of just the greatest rating allowed is not tight.
        if finding.verdict == Verdict::Care(Reason::Tight) {
            finding.verdict = Verdict::Good;
        }
        found.push(finding);
    }
    found
}

/// Whether the fuse guards the weaker cable: its rating against what the cable carries.
fn guards(
    asked: &Asked<'_>,
    rating: Current,
    words: &str,
    name: &str,
    cable: &Cable,
    inputs: &CableLedger,
    window: &str,
) -> Option<Finding> {
    let allowed = carries(cable, inputs, &inputs.ledger.likely())?;
    let [swung] = swing(&inputs.ledger, [Worse::Lower], |point| {
        [carries(cable, inputs, point).map_or(0.0, |allowed| allowed.current.in_a())]
    });
    let limit = Limit {
        value: rating.in_a(),
        sense: Sense::AtLeast,
        class: Class::Limit,
        kind: "fuse",
        source: "fuse at most what the cable carries (IEC 60364-4-43: I_n ≤ I_z)".into(),
        firm: allowed.in_free_air.may_stop() && !cable.section_assumed,
    };
    let label = format!("what the {name} carries, against its fuse");
    let finding = Finding::measured(
        id(asked, "fuse-cable"),
        label,
        Unit::Ampere,
        &swung,
        limit,
        &inputs.ledger,
    );
    let says = match finding.verdict {
        Verdict::Good => {
            format!("The {words} guards the {name}, which carries {:.0} A. {window}", swung.likely)
        }
        _ => format!(
            "The {words} lets more through than the {name} of {} carries: {:.0} A, {:.0} A at worst. {window}",
            cable.section, swung.likely, swung.unfavourable
        ),
    };
    Some(finding.saying(says))
}

/// The time in which the least fault at the item opens the fuse, against what the cable stands.
fn clearing(asked: &Asked<'_>, way: &Way, rating: Current) -> Option<Finding> {
    let entry = envelope(asked.family()?, rating)?;
    let section_mm2 = asked
        .cables()
        .iter()
        .filter_map(|cable| conductor::section(cable.section).ok())
        .map(|area| area.low)
        .reduce(spile_quantity::Area::min)?;
    let insulation = asked.cables()[0].insulation.likely();
    let k = adiabatics()
        .iter()
        .filter(|row| row.value.metal == "copper" && row.value.start >= insulation)
        .min_by(|a, b| a.value.start.in_celsius().total_cmp(&b.value.start.in_celsius()))
        .or_else(|| adiabatics().iter().find(|row| row.value.key == "copper-pvc105"))?;
    let fault_at = |point: &Point| {
        let wired = way.wire(point, State::LeastFault, asked.nominal(), &asked.others);
        fault::prospective(&wired.net, wired.plug_plus, wired.plug_minus, Resistance::ohm(0.0)).ok()
    };
    let ratio = |point: &Point| -> f64 {
        let Some(fault) = fault_at(point) else { return f64::INFINITY };
        let opens =
            opening(&entry.value, rating, fault.current).ok().and_then(|times| times.at_most);
        let stands = fault::withstand(k.value.k_a_sqrt_s_per_mm2, section_mm2, fault.current)
            .unwrap_or(fault::ADIABATIC_TO);
        opens.map_or(f64::INFINITY, |opens| 100.0 * (opens / stands))
    };
    let [swung] = swing(&way.ledger, [Worse::Higher], |point| [ratio(point)]);
    let limit = Limit {
        value: 100.0,
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "cable",
        source: format!("{}; k of {}", entry.source.title, k.value.insulation).into(),
        firm: entry.may_stop() && k.may_stop(),
    };
    let point = way.ledger.likely();
    let fault = fault_at(&point)?;
    let opens = opening(&entry.value, rating, fault.current).ok().and_then(|times| times.at_most);
    let amps = fault.current.in_a();
    let words = asked.fuse_words(rating);
    let says = match opens {
        Some(opens) => format!(
            "A fault at the {} draws {amps:.0} A on a low battery; the {words} has opened after {} at the latest, and the cable stands it for {}.",
            asked.item,
            seconds(opens.in_s()),
            seconds(
                fault::withstand(k.value.k_a_sqrt_s_per_mm2, section_mm2, fault.current)
                    .unwrap_or(fault::ADIABATIC_TO)
                    .in_s()
            ),
        ),
        None => format!(
            "A fault at the {} draws only {amps:.0} A on a low battery; nothing says that the {words} ever opens at that.",
            asked.item
        ),
    };
    let working = vec![Step {
        what: "least fault current at the item".into(),
        formula: "I = E / ΣR, by the whole circuit with the fault in it".into(),
        numbers: format!("{amps:.1} A, {:.1} times the fuse's rating", amps / rating.in_a()),
        source: entry.source.title.as_str().into(),
    }];
    Some(
        Finding::measured(
            id(asked, "fault"),
            "time to open, of what the cable stands",
            Unit::Percent,
            &swung,
            limit,
            &way.ledger,
        )
        .saying(says)
        .worked(working),
    )
}

fn seconds(time_s: f64) -> String {
    if time_s < 1.0 { format!("{time_s:.2} s") } else { format!("{time_s:.1} s") }
}
