//! What clears a run: the changes with the least copper that keep every rule, or clear the stop.
//!
//! Every candidate is put into the run and the run is asked again, so that a mend keeps exactly
//! the rules that the findings hold it against.

use spile_circuit::scene::{Fuse, OneRun, State, Way};
use std::collections::BTreeMap;

use spile_answer::{Basis, Finding, Given, Point, Reason, Sense, Verdict};
use spile_build::{Cable, Return, Run, Way as BlockWay, typical};
use spile_circuit::conductor::section;
use spile_quantity::{Area, Awg, CableSize, Current, Ranged, Resistance, Volume};
use spile_tables::conductor::{greatest_drop, metric_sizes};

use crate::asked;

/// A change to a run, and what it comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct Sized {
    /// The new feed; `None` where it stays.
    pub feed: Option<CableSize>,
    /// What becomes of the return.
    pub back: NewReturn,
    /// The new fuse; `None` where the one that is there stays.
    pub fuse: Option<Current>,
    /// The kind of the fuse, in a word of the files.
    pub fuse_kind: &'static str,
    /// The loss while everything runs, in percent of the nominal voltage.
    pub drop_percent: f64,
    /// The volts at the item as it starts on a low battery; `None` where nothing is known of it.
    pub start_v: Option<f64>,
    /// The copper to be bought for it, section times length.
    pub copper: Volume,
}

/// What becomes of a return.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NewReturn {
    /// It stays as it is.
    AsItIs,
    /// Its stud on the body is remade on bare, bright metal.
    BrightStud,
    /// A cable of that size to the negative bus: as long as the return that it replaces, or as the
    /// feed where the return went through the body.
    Cable(CableSize),
}

/// The lightest changes that mend a run, as far as there are any.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Mends {
    /// No finding is a *stop*, where one was.
    pub no_stop: Option<Sized>,
    /// Every figure is within its limit at the likely values.
    pub likely: Option<Sized>,
    /// By the finding's name: that finding is *good*, so within its limit at the unfavourable end
    /// too, and none is a *stop*.
    pub sure: BTreeMap<String, Sized>,
}

/// A candidate: what it changes, and the copper that has to be bought for it.
struct Candidate {
    feed: Option<CableSize>,
    back: NewReturn,
    copper_m3: f64,
}

/// A stud costs some work: more than a fuse, less than any cable.
const STUD_M3: f64 = 1e-8;

/// The terminals of a blade's way take no thicker cable. Common practice, no source.
const BLADE_TAKES_MM2: f64 = 10.0;

/// The lightest changes that mend a run of which `found` was found.
pub(crate) fn mends(asked: &OneRun<'_>, found: &[Finding], most_load: Current) -> Mends {
    let stops =
        |findings: &[Finding]| findings.iter().any(|finding| finding.verdict == Verdict::Stop);
    let mut mends = Mends::default();
    let mut stop_to_clear = stops(found);
    let careful = found
        .iter()
        .filter(|finding| matches!(finding.verdict, Verdict::Care(Reason::Unsure | Reason::Tight)));
    let mut unsure: Vec<&str> = careful.map(|finding| finding.id.as_str()).collect();
    let fuses = fuses(asked, found, most_load);
    for candidate in candidates(asked, &fuses) {
        let run = changed(asked, &candidate);
        for fuse in &fuses {
            let run = with_fuse(&run, fuse);
            let with = OneRun { run: &run, ..asked.clone() };
            let wanted = Wanted { stop_to_clear, likely: mends.likely.is_none(), unsure: &unsure };
            if !worth_asking(&with, fuse, &wanted) {
                continue;
            }
            let findings = asked::findings(&with);
            if stops(&findings) {
                continue;
            }
            let sized = || sized(asked, &candidate, fuse, &findings);
            if stop_to_clear {
                stop_to_clear = false;
                mends.no_stop = Some(sized());
            }
            if mends.likely.is_none() && findings.iter().all(within) {
                mends.likely = Some(sized());
            }
            let good = |id: &str| {
                findings.iter().all(|finding| finding.id != id || finding.verdict == Verdict::Good)
            };
            let (sure, still): (Vec<&str>, _) = unsure.into_iter().partition(|id| good(id));
            mends.sure.extend(sure.into_iter().map(|id| (id.to_owned(), sized())));
            unsure = still;
            if mends.likely.is_some() && unsure.is_empty() {
                return mends;
            }
        }
    }
    mends
}

/// What is still to be found.
struct Wanted<'a> {
    stop_to_clear: bool,
    likely: bool,
    /// The findings that are not yet sure, by name.
    unsure: &'a [&'a str],
}

/// Whether a candidate can be any better than what was found before it: a few figures tell, long
/// before all of them are asked for.
fn worth_asking(with: &OneRun<'_>, fuse: &Fuse, wanted: &Wanted<'_>) -> bool {
    let Some(way) = Way::new(with, fuse) else { return false };
    let rule = 100.0 * greatest_drop(with.load.service).value;
    let cut_out = with.load.cut_out.as_ref();
    let keeps = |point: &Point| {
        let stays = |state| match cut_out {
            Some(volts) => {
                way.solve(point, state).is_some_and(|found| found.item >= volts.likely())
            }
            None => true,
        };
        let drop = way
            .solve(point, State::Running)
            .map(|found| 100.0 * ((found.posts - found.item) / with.nominal()));
        let volts = stays(State::Running) && (!way.starts() || stays(State::Start));
        (volts, drop.is_some_and(|drop| drop <= rule))
    };
    let (volts, drop) = keeps(&way.ledger.likely());
    if !volts && cut_out.is_some_and(|volts| volts.basis != Basis::Typical) {
        return false;
    }
    if wanted.stop_to_clear || wanted.likely && volts && drop {
        return true;
    }
    let (volts, drop) = keeps(&way.bad_point());
    wanted.unsure.iter().any(|id| match id.rsplit('.').next() {
        Some("start" | "running") => volts,
        Some("drop") => drop,
        _ => true,
    })
}

fn sized(asked: &OneRun<'_>, candidate: &Candidate, fuse: &Fuse, findings: &[Finding]) -> Sized {
    let figure = |what: &str| {
        let id = asked.id(what);
        let finding = findings.iter().find(|finding| finding.id == id)?;
        Some(finding.figure?.likely)
    };
    Sized {
        feed: candidate.feed,
        back: candidate.back,
        fuse: (!fuse.said).then_some(fuse.rating),
        fuse_kind: fuse.kind.word(),
        drop_percent: figure("drop").unwrap_or(f64::NAN),
        start_v: figure("start"),
        copper: Volume::m3(candidate.copper_m3),
    }
}

/// The run with a fuse in its way.
fn with_fuse(run: &Run, fuse: &Fuse) -> Run {
    let said = Given {
        value: Ranged::exactly(fuse.rating),
        basis: Basis::Measured,
        source: "the mend".into(),
        how: "".into(),
    };
    let number = run.way.as_ref().map_or_else(String::new, |way| way.number.clone());
    let way = BlockWay { number, fuse: Some(said), family: fuse.kind };
    Run { way: Some(way), ..run.clone() }
}

/// Whether a finding is within its limit at the likely values.
fn within(finding: &Finding) -> bool {
    match (&finding.figure, &finding.limit) {
        (Some(figure), Some(limit)) => match limit.sense {
            Sense::AtMost => figure.likely <= limit.value,
            Sense::AtLeast => figure.likely >= limit.value,
        },
        _ => matches!(finding.verdict, Verdict::Good | Verdict::Care(_)),
    }
}

/// Every change worth trying, the least copper first.
fn candidates(asked: &OneRun<'_>, fuses: &[Fuse]) -> Vec<Candidate> {
    let [feed, back] = asked.cables();
    let blades = fuses.iter().all(|fuse| fuse.holder() == "fuse-holder-blade");
    let most = Area::mm2(if blades { BLADE_TAKES_MM2 } else { f64::INFINITY });
    let mut sizes = sizes(feed.section);
    sizes.retain(|size| copper(*size) <= most);
    let thicker = |than: CableSize| {
        let least = copper(than);
        sizes.iter().copied().filter(move |size| copper(*size) > least)
    };
    let by_body = matches!(asked.run.back, Return::Body { .. });
    let new_back_m = if by_body { &feed.length } else { &back.length }.likely().in_m();
    let feed_m = feed.length.likely().in_m();
    let mut all = Vec::new();
    let mut add = |feed: Option<CableSize>, back: NewReturn| {
        let back_m3 = match back {
            NewReturn::AsItIs => 0.0,
            NewReturn::BrightStud => STUD_M3,
            NewReturn::Cable(size) => copper(size).in_m2() * new_back_m,
        };
        let feed_m3 = feed.map_or(0.0, |size| copper(size).in_m2() * feed_m);
        all.push(Candidate { feed, back, copper_m3: feed_m3 + back_m3 });
    };
    let as_it_is = [NewReturn::AsItIs, NewReturn::BrightStud];
    let kept = match by_body {
        // no return at all runs through a body in pieces
        true if asked.build.body.insulated => &as_it_is[..0],
        true if can_be_brighter(asked) => &as_it_is[..],
        _ => &as_it_is[..1],
    };
    for back in kept {
        add(None, *back);
        thicker(feed.section).for_each(|size| add(Some(size), *back));
    }
    let own_from = if by_body { Area::mm2(0.0) } else { copper(back.section) };
    let own = sizes
        .iter()
        .copied()
        .filter(|size| copper(*size) > own_from && copper(*size) >= copper(feed.section));
    own.for_each(|size| add(None, NewReturn::Cable(size)));
    thicker(feed.section).for_each(|size| add(Some(size), NewReturn::Cable(size)));
    all.sort_by(|a, b| a.copper_m3.total_cmp(&b.copper_m3));
    all
}

/// The sizes that are sold, of the kind that a cable is of, from 1 mm² on.
fn sizes(like: CableSize) -> Vec<CableSize> {
    if matches!(like, CableSize::Awg(_) | CableSize::Sae(_)) {
        let sold = |number: &i32| *number <= 4 || number % 2 == 0;
        let gauges = (Awg::THICKEST.number()..=16).rev().filter(sold);
        gauges.filter_map(Awg::new).map(CableSize::Awg).collect()
    } else {
        let all = metric_sizes().iter().map(|entry| entry.value.section);
        all.filter(|section| *section >= Area::mm2(1.0)).map(CableSize::Metric).collect()
    }
}

/// The copper that a size has for certain.
fn copper(size: CableSize) -> Area {
    section(size).map_or(Area::mm2(f64::INFINITY), |area| area.low)
}

fn bright_stud() -> Given<Resistance> {
    typical("stud-body-clean")
}

fn can_be_brighter(asked: &OneRun<'_>) -> bool {
    match &asked.run.back {
        Return::Body { stud, .. } => stud.value.high > bright_stud().value.high,
        Return::Cable(_) => false,
    }
}

/// The run with a candidate's change in it.
fn changed(asked: &OneRun<'_>, candidate: &Candidate) -> Run {
    let mut run = asked.run.clone();
    let new = |section: CableSize, like: &Cable| Cable {
        section,
        section_assumed: false,
        ..like.clone()
    };
    match (candidate.back, &mut run.back) {
        (NewReturn::Cable(size), Return::Cable(cable)) => *cable = new(size, cable),
        (NewReturn::Cable(size), Return::Body { .. }) => {
            run.back = Return::Cable(new(size, &run.feed));
        }
        (NewReturn::BrightStud, Return::Body { stud, .. }) => *stud = bright_stud(),
        _ => {}
    }
    if let Some(size) = candidate.feed {
        run.feed = new(size, &run.feed);
    }
    run
}

/// The fuses worth trying: the one that is there; and where that is not right, the least for the
/// load at its unfavourable end and at its likely value.
fn fuses(asked: &OneRun<'_>, found: &[Finding], most_load: Current) -> Vec<Fuse> {
    let of_fuse = ["fuse-load", "fuse-cable", "fuse-papers", "way", "fault"].map(|w| asked.id(w));
    let wrong = found
        .iter()
        .any(|finding| finding.verdict != Verdict::Good && of_fuse.contains(&finding.id));
    let mut fuses: Vec<Fuse> = asked.fuse().filter(|fuse| fuse.said).into_iter().collect();
    if wrong || fuses.is_empty() {
        let suited = [most_load, asked.nominal_current()].map(|load| asked.suited(load));
        for fuse in suited.into_iter().flatten() {
            if !fuses.iter().any(|known| known.rating == fuse.rating && known.kind == fuse.kind) {
                fuses.push(fuse);
            }
        }
    }
    fuses
}

/// A change in words: `a feed of 2.5 mm², 7.2 m, behind a 7.5 A blade fuse`.
pub(crate) fn words(asked: &OneRun<'_>, sized: &Sized) -> String {
    let [feed, back] = asked.cables();
    let metres = |cable: &Cable| format!("{:.1} m", cable.length.likely().in_m());
    let by_body = matches!(asked.run.back, Return::Body { .. });
    let back_length = metres(if by_body { feed } else { back });
    let to_bus = if by_body { " to the negative bus" } else { "" };
    let cables = match (sized.feed, sized.back) {
        (None, NewReturn::AsItIs) => String::new(),
        (Some(size), NewReturn::AsItIs) => format!("a feed of {size}, {}", metres(feed)),
        (None, NewReturn::BrightStud) => "its stud remade on bright metal".to_owned(),
        (Some(size), NewReturn::BrightStud) => {
            format!("a feed of {size}, {}, and the stud remade on bright metal", metres(feed))
        }
        (None, NewReturn::Cable(size)) => format!("a return{to_bus} of {size}, {back_length}"),
        (Some(size), NewReturn::Cable(_)) => {
            format!("a feed and a return{to_bus}, both of {size} and {back_length}")
        }
    };
    let fuse = sized.fuse.map(|rating| format!("a {} A {} fuse", rating.in_a(), sized.fuse_kind));
    match (cables.as_str(), fuse) {
        ("", Some(fuse)) => fuse,
        ("", None) => "the run as it is".to_owned(),
        (_, Some(fuse)) => format!("{cables}, behind {fuse}"),
        (_, None) => cables,
    }
}
