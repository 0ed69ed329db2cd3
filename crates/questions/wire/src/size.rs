//! What clears a run: the lightest conductors that keep every rule, and the fuse that goes with them.

use spile_build::{Cable, Return};
use spile_circuit::ampacity::allowed;
use spile_circuit::fuse::next_up;
use spile_quantity::{Area, Awg, CableSize, Current};
use spile_tables::conductor::{greatest_drop, metric_sizes};
use spile_tables::fuse::continuous;

use crate::path::Way;
use crate::run::{Asked, drop_percent, start_volts};

/// Conductors and fuse that keep every rule of a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Sized {
    /// The size of the feed, and of the return where that is a cable of its own.
    pub section: CableSize,
    /// Whether the return is a cable to the negative bus; else it stays as it is.
    pub own_return: bool,
    /// The fuse that goes with them.
    pub fuse: Current,
    /// The loss while everything runs, in percent of the nominal voltage.
    pub drop_percent: f64,
    /// The volts at the item as it starts on a low battery; nothing where nothing is known of it.
    pub start_v: Option<f64>,
}

/// The lightest feed that keeps every rule at the likely state, with the return as it is and with
/// a return cable of the feed's size; the first that does, in that order.
///
/// A candidate is kept if the item starts on a low battery (where its cut-out is known), if it
/// loses no more than practice while everything runs, and if a fuse is made that carries the load
/// at 80 % and is no more than the cable carries and the papers allow.
pub(crate) fn lightest(asked: &Asked<'_>, unfavourable: bool) -> Option<Sized> {
    let american = matches!(asked.run.feed.section, CableSize::Awg(_));
    let sizes: Vec<CableSize> = if american {
        (-3..=18)
            .rev()
            .filter(|number| *number <= 4 || number % 2 == 0)
            .filter_map(Awg::new)
            .map(CableSize::Awg)
            .collect()
    } else {
        metric_sizes()
            .iter()
            .map(|entry| entry.value.section)
            .filter(|section| *section >= Area::mm2(1.0))
            .map(CableSize::Metric)
            .collect()
    };
    let as_it_is = sizes.iter().find_map(|size| candidate(asked, *size, false, unfavourable));
    let own = sizes.iter().find_map(|size| candidate(asked, *size, true, unfavourable));
    match (as_it_is, own) {
        (Some(as_it_is), Some(own)) => {
            // An own return costs as much copper again: worth it only where the feed gets thinner.
            let half =
                |sized: &Sized| copper(sized.section) * if sized.own_return { 2.0 } else { 1.0 };
            Some(if half(&own) < half(&as_it_is) { own } else { as_it_is })
        }
        (as_it_is, own) => as_it_is.or(own),
    }
}

fn copper(size: CableSize) -> f64 {
    spile_circuit::conductor::section(size).map_or(f64::INFINITY, |area| area.likely.in_mm2())
}

/// One candidate, if it keeps every rule.
fn candidate(
    asked: &Asked<'_>,
    section: CableSize,
    own_return: bool,
    unfavourable: bool,
) -> Option<Sized> {
    let mut run = asked.run.clone();
    run.feed = Cable { section, section_assumed: false, ..run.feed };
    if own_return {
        run.back = Return::Cable(Cable { length: run.feed.length.clone(), ..run.feed.clone() });
    } else if let Return::Cable(cable) = &mut run.back {
        *cable = Cable { section, ..cable.clone() };
    }
    let sized =
        Asked { run: &run, load: asked.load.clone(), others: asked.others.clone(), ..*asked };
    let [feed, back] = sized.cables();
    let carried = |cable: &Cable| {
        let [rating, at] = [cable.insulation.likely(), cable.ambient.likely()];
        allowed(cable.section, rating, at, cable.bundle).ok().map(|allowed| allowed.current)
    };
    let guarded = carried(feed)?.min(carried(back)?);
    let least = sized.running() / continuous().over_3h.value;
    let fuse = next_up(sized.family()?, least)?.value.current;
    if fuse > guarded || asked.load.fuse.as_ref().is_some_and(|most| fuse > most.likely()) {
        return None;
    }
    let way = Way::new(sized.build, sized.bank, &run, &sized.load, fuse)?;
    let point = if unfavourable { way.worst() } else { way.ledger.likely() };
    let drop_percent = drop_percent(&sized, &way, &way.ledger.likely());
    let start_v = match &sized.load.cut_out {
        Some(cut_out) if way.starts() => {
            let left = start_volts(&sized, &way, &point, cut_out.likely());
            if left < cut_out.likely().in_v() {
                return None;
            }
            Some(start_volts(&sized, &way, &way.ledger.likely(), cut_out.likely()))
        }
        _ => None,
    };
    let rule = 100.0 * greatest_drop(sized.load.service).value;
    (drop_percent <= rule).then_some(Sized { section, own_return, fuse, drop_percent, start_v })
}

/// The mend in words.
pub(crate) fn words(asked: &Asked<'_>, sized: &Sized) -> String {
    let metres = asked.run.feed.length.likely().in_m();
    let cables = if sized.own_return {
        format!("A feed and a return of {}, {metres:.1} m each", sized.section)
    } else if matches!(asked.run.back, Return::Body { .. }) {
        format!("A feed of {}, {metres:.1} m, with the return as it is", sized.section)
    } else {
        format!("Feed and return of {}, {metres:.1} m each", sized.section)
    };
    let start =
        sized.start_v.map_or(String::new(), |left| format!(", and {left:.2} V arrive at start"));
    format!(
        "{cables}, behind a fuse of {} A, clears it: the loss falls to {:.1} %{start}.",
        sized.fuse.in_a(),
        sized.drop_percent
    )
}
