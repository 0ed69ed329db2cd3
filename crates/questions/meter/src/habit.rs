//! What is told by thermometer, by the battery monitor, and by how an appliance behaves.

use spile_answer::{Class, Finding, Ledger, Limit, Reason, Sense, Unit, Verdict, Worse, swing};
use spile_build::file::{Behaviour, ItemState};
use spile_build::{Reading, typical};
use spile_circuit::scene::{OneRun, weakest};
use spile_quantity::Temperature;

use crate::spot::Spot;

/// Findings that need no circuit.
pub(crate) fn findings(asked: &OneRun<'_>, name: &str, taken: &Reading) -> Vec<Finding> {
    let mut found = Vec::new();
    found.extend(joint(asked, name, taken));
    found.extend(bay(name, taken));
    found.extend(monitor(name, taken));
    found.extend(zero(name, taken));
    found.extend(taken.behaves.map(|behaves| behaviour(name, behaves)));
    found
}

/// The hottest joint against what the insulation beside it stands: heat, a limit.
fn joint(asked: &OneRun<'_>, name: &str, taken: &Reading) -> Option<Finding> {
    let read = taken.joint.as_ref()?;
    let (_, cable) = weakest(asked.guarded())?;
    let stands = &cable.insulation;
    let mut ledger = Ledger::new();
    let handle = ledger.take("temperature of the hottest joint", read);
    ledger.take("what the insulation stands", stands);
    let limit = Limit {
        value: stands.likely().in_celsius(),
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "heat",
        source: stands.source.clone(),
        firm: stands.basis != spile_answer::Basis::Typical,
    };
    let [swung] = swing(&ledger, [Worse::Higher], |point| [point.at(handle).in_celsius()]);
    let label = "hottest joint along the way";
    let finding =
        Finding::measured(format!("{name}.joint"), label, Unit::Celsius, &swung, limit, &ledger);
    let says = format!(
        "The hottest joint is at {:.0} °C; the insulation beside it stands {:.0} °C.",
        read.likely().in_celsius(),
        stands.likely().in_celsius()
    );
    let mend = (finding.verdict != Verdict::Good)
        .then(|| "Switch it off, let it cool, and remake that joint.".to_owned());
    Some(finding.saying(says).mended(mend))
}

/// The air of the bay against what a condenser is content with: practice.
fn bay(name: &str, taken: &Reading) -> Option<Finding> {
    let read = taken.bay.as_ref()?;
    let hot = typical::<Temperature>("bay-hot");
    let mut ledger = Ledger::new();
    let handle = ledger.take("air of the bay", read);
    let limit = Limit {
        value: hot.likely().in_celsius(),
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: hot.source.clone(),
        firm: true,
    };
    let [swung] = swing(&ledger, [Worse::Higher], |point| [point.at(handle).in_celsius()]);
    let finding = Finding::measured(
        format!("{name}.bay"),
        "air of the bay",
        Unit::Celsius,
        &swung,
        limit,
        &ledger,
    );
    let says = if finding.verdict == Verdict::Good {
        format!("The bay is at {:.0} °C.", read.likely().in_celsius())
    } else {
        format!(
            "The bay is at {:.0} °C: a hot condenser, or its exhaust drawn in again. Next: open the panel in front of it; do current and temperature fall?",
            read.likely().in_celsius()
        )
    };
    Some(finding.saying(says))
}

/// A current that the clamp sees and the battery monitor does not.
fn monitor(name: &str, taken: &Reading) -> Option<Finding> {
    let clamp_a = taken.current.as_ref()?.likely().in_a();
    let monitor_a = taken.monitor.as_ref()?.likely().in_a().abs();
    let error_a = Spot::Current.error(&taken.meter, clamp_a);
    let id = format!("{name}.monitor");
    let label = "current at the battery monitor";
    if taken.others_on || monitor_a >= clamp_a - error_a {
        let says = format!("The battery monitor shows {monitor_a:.1} A, the clamp {clamp_a:.1} A.");
        return Some(Finding::plain(id, label, Verdict::Good, says));
    }
    let says = format!(
        "The clamp shows {clamp_a:.1} A and the battery monitor {monitor_a:.1} A: a return lands on the battery's side of the shunt, and the monitor does not count it."
    );
    Some(Finding::plain(id, label, Verdict::Care(Reason::Practice), says).mended(Some(
        "Move that return to the load's side of the shunt, with the battery isolated.".to_owned(),
    )))
}

/// A current with nothing on, small enough to be the clamp's own.
fn zero(name: &str, taken: &Reading) -> Option<Finding> {
    let read_a = taken.current.as_ref()?.likely().in_a();
    let zero = &taken.meter.zero.value;
    let seems = (zero.low.in_a()..=2.0 * zero.high.in_a()).contains(&read_a.abs());
    (taken.state == ItemState::Off && seems).then(|| {
        let says = format!(
            "The clamp shows {read_a:.1} A with nothing on: its zero. Next: zero it away from any cable, then turn it round on this one; the sign must turn. Is it one for alternating current only?"
        );
        let care = Verdict::Care(Reason::Unsure);
        Finding::plain(format!("{name}.zero"), "zero of the clamp", care, says)
    })
}

/// How it behaves over minutes and hours.
fn behaviour(name: &str, behaves: Behaviour) -> Finding {
    let id = format!("{name}.behaves");
    let label = "how it behaves";
    let care = Verdict::Care(Reason::Unsure);
    let (verdict, says) = match behaves {
        Behaviour::Steady => {
            (Verdict::Good, "It runs and rests as it should. Log a day, and file it.")
        }
        Behaviour::StopsEachMinute => (
            care,
            "It starts and stops each minute: too few volts at its start, or the pressure in it is not yet even. Next: volts at its terminals during a start, the meter set to keep its lowest value.",
        ),
        Behaviour::NeverStops => (
            care,
            "It runs without pause and gets no colder. With few amperes and a lukewarm condenser its gas is lost. Next: a refrigeration engineer; nothing here can be mended by hand.",
        ),
        Behaviour::StillFalling => (
            Verdict::Good,
            "It runs without pause and gets colder: pull-down takes 12 to 24 hours. Next: wait, and read again.",
        ),
    };
    Finding::plain(id, label, verdict, says)
}
