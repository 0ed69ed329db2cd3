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
    judged(asked).0
}

/// The same with what each of its asks would settle, where it hangs on the circuit.
pub(crate) fn settled(asked: &OneRun<'_>) -> Vec<Finding> {
    let (findings, looked) = judged(asked);
    let Some((way, seen)) = looked else { return findings };
    let settle = |finding: Finding| match finding.id.rsplit('.').next() {
        Some("start") => {
            finding.settling(&seen.start, &way.ledger, |point| start_v(asked, &way, point))
        }
        Some("running") => finding
            .settling(&seen.running, &way.ledger, |point| running(asked, &way, point).volts_left),
        Some("drop") => finding
            .settling(&seen.drop, &way.ledger, |point| running(asked, &way, point).lost_percent),
        _ => finding,
    };
    findings.into_iter().map(settle).collect()
}

/// Everything found of one run, with its circuit and what was seen of it.
fn judged(asked: &OneRun<'_>) -> (Vec<Finding>, Option<(Way, Seen)>) {
    let Some(fuse) = asked.fuse() else {
        return (vec![unsaid::no_fuse_made(asked)], None);
    };
    let Some(way) = Way::new(asked, &fuse) else {
        return (vec![unsaid::unreadable(asked)], None);
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
    (found, Some((way, seen)))
}

/// Looks at every figure of the circuit at once, over the ranges of its inputs.
fn look(asked: &OneRun<'_>, way: &Way, clearing: Option<&Clearing>) -> Seen {
    let figures = |point: &Point| {
        let fault = clearing.map_or(0.0, |clearing| {
            let fault = way.solve(point, State::Fault);
            fault.map_or(f64::INFINITY, |fault| clearing.share_percent(fault.current))
        });
        let running = running(asked, way, point);
        [
            start_v(asked, way, point),
            running.volts_left,
            running.lost_percent,
            running.current_a,
            fault,
        ]
    };
    let worse = [Worse::Lower, Worse::Lower, Worse::Higher, Worse::Higher, Worse::Higher];
    let [start, running, drop, load, fault] = swing(&way.ledger, worse, figures);
    Seen { start, running, drop, load, fault }
}

/// By how much the cut-out is above its likely value at a point.
fn over_cut_out_v(asked: &OneRun<'_>, way: &Way, point: &Point) -> f64 {
    match (way.cut_out, &asked.load.cut_out) {
        (Some(volts), Some(given)) => (point.at(volts) - given.likely()).in_v(),
        _ => 0.0,
    }
}

/// Volts at the item as it starts, the spread of its cut-out counted in; 0 where it has none or does
/// not start.
fn start_v(asked: &OneRun<'_>, way: &Way, point: &Point) -> f64 {
    if asked.load.cut_out.is_none() || !way.starts() {
        return 0.0;
    }
    let found = way.solve(point, State::Start);
    found.map_or(f64::NEG_INFINITY, |found| found.item.in_v() - over_cut_out_v(asked, way, point))
}

/// What is seen at one point while everything runs.
struct AtPoint {
    volts_left: f64,
    lost_percent: f64,
    current_a: f64,
}

fn running(asked: &OneRun<'_>, way: &Way, point: &Point) -> AtPoint {
    let Some(found) = way.solve(point, State::Running) else {
        return AtPoint {
            volts_left: f64::NEG_INFINITY,
            lost_percent: f64::INFINITY,
            current_a: f64::INFINITY,
        };
    };
    let most_a =
        way.cut_out.map_or(f64::INFINITY, |volts| way.current_at(point, point.at(volts)).in_a());
    AtPoint {
        volts_left: found.item.in_v() - over_cut_out_v(asked, way, point),
        lost_percent: 100.0 * ((found.posts - found.item) / asked.nominal()),
        current_a: found.current.in_a().min(most_a),
    }
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
