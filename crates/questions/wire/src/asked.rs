//! Everything that is found of one run.

use spile_answer::{Finding, Given, Point, Swing, Worse, swing};
use spile_circuit::scene::{OneRun, State, Way};
use spile_quantity::{Current, Ranged};

use crate::fault::Clearing;
use crate::{cable, drop, fault, fuse, start, unsaid};

/// What is seen of a run over the ranges of its inputs.
#[derive(Debug, Clone)]
pub(crate) struct Seen {
    /// Volts at the item as it starts, the spread of its cut-out counted in.
    pub(crate) start: Swing,
    /// Volts at the item while everything runs, the same.
    pub(crate) running: Swing,
    /// Lost while everything runs, in percent of the nominal voltage.
    pub(crate) drop: Swing,
    /// Amperes of the item while everything runs.
    pub(crate) load: Swing,
    /// Time in which the fuse opens, in percent of what the conductors stand.
    pub(crate) fault: Swing,
}

/// Everything found of one run.
pub(crate) fn findings(asked: &OneRun<'_>) -> Vec<Finding> {
    let Some(fuse) = asked.fuse() else {
        return vec![unsaid::no_fuse_made(asked)];
    };
    let Some(way) = Way::new(asked, &fuse) else {
        return vec![unsaid::unreadable(asked)];
    };
    let clearing = Clearing::of(asked, &fuse);
    let seen = look(asked, &way, clearing.as_ref());
    let load = load_given(asked, &seen);
    let mut found = Vec::new();
    found.extend(start::start(asked, &way, &seen));
    found.extend(start::running(asked, &way, &seen));
    found.push(drop::drop(asked, &way, &seen));
    found.extend(cable::cable(asked, &load));
    found.extend(cable::section(asked));
    found.extend(fuse::findings(asked, &fuse, &load));
    found.push(fault::fault(asked, &way, &seen, clearing.as_ref(), &fuse));
    found
}

/// Looks at every figure of the circuit at once, over the ranges of its inputs.
fn look(asked: &OneRun<'_>, way: &Way, clearing: Option<&Clearing>) -> Seen {
    let nominal = asked.nominal();
    let cut_out = asked.load.cut_out.as_ref().map(Given::likely);
    let over_cut_out = |point: &Point| match (way.cut_out, cut_out) {
        (Some(volts), Some(likely)) => (point.at(volts) - likely).in_v(),
        _ => 0.0,
    };
    let figures = |point: &Point| {
        let start_v = match cut_out {
            Some(_) if way.starts() => way
                .solve(point, State::Start)
                .map_or(f64::NEG_INFINITY, |found| found.item.in_v() - over_cut_out(point)),
            _ => 0.0,
        };
        let fault = clearing.map_or(0.0, |clearing| {
            let fault = way.solve(point, State::Fault);
            fault.map_or(f64::INFINITY, |fault| clearing.share_percent(fault.current))
        });
        let Some(running) = way.solve(point, State::Running) else {
            return [start_v, f64::NEG_INFINITY, f64::INFINITY, f64::INFINITY, fault];
        };
        let most = way
            .cut_out
            .map_or(f64::INFINITY, |volts| way.current_at(point, point.at(volts)).in_a());
        [
            start_v,
            running.item.in_v() - over_cut_out(point),
            100.0 * ((running.posts - running.item) / nominal),
            running.current.in_a().min(most),
            fault,
        ]
    };
    let worse = [Worse::Lower, Worse::Lower, Worse::Higher, Worse::Higher, Worse::Higher];
    let [start, running, drop, load, fault] = swing(&way.ledger, worse, figures);
    Seen { start, running, drop, load, fault }
}

/// The load as an input of what is found of cable and fuse. Where the circuit has no steady state
/// there is no current to tell, and that at the nominal voltage counts.
fn load_given(asked: &OneRun<'_>, seen: &Seen) -> Given<Current> {
    let nominal = asked.nominal_current();
    let finite = |current_a: f64| current_a.is_finite().then_some(Current::a(current_a));
    let likely = finite(seen.load.likely).unwrap_or(nominal);
    let high = finite(seen.load.unfavourable).unwrap_or(likely).max(likely);
    Given {
        value: Ranged { low: likely, likely, high },
        basis: asked.load.running.basis,
        source: "by the circuit, everything on, on a low battery".into(),
        how: "Clamp the meter round the feed while it runs on a low battery.".into(),
    }
}
