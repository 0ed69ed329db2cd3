//! What is lost on the way while everything runs, against the practice for such a load.

use spile_answer::{Class, Finding, Limit, Sense, Step, Unit, Verdict};
use spile_circuit::scene::{Copper, OneRun, Way};
use spile_tables::conductor::greatest_drop;

use crate::asked::Seen;
use crate::start::{NODAL, most_of_it, resistance_steps};
use crate::words::list;

/// The loss between the bank's posts and the item while everything runs on a low battery, in
/// percent of the nominal voltage.
///
/// A loss is against practice; a circuit that has no steady state at all is against physics.
pub(crate) fn drop(asked: &OneRun<'_>, way: &Way, seen: &Seen) -> Finding {
    let rule = greatest_drop(asked.load.service);
    let percent = 100.0 * rule.value;
    let collapse = seen.drop.likely.is_infinite();
    let limit = Limit {
        value: percent,
        sense: Sense::AtMost,
        class: if collapse { Class::Limit } else { Class::Practice },
        kind: if collapse { "collapse" } else { "practice" },
        source: rule.source.title.as_str().into(),
        firm: true,
    };
    let label = format!("lost on the way to the {}, running", asked.item);
    let finding =
        Finding::measured(asked.id("drop"), label, Unit::Percent, &seen.drop, limit, &way.ledger);
    let likely = way.ledger.likely();
    let volts = asked.nominal().in_v();
    let says = if collapse {
        format!(
            "{:.0} W at the plug are more than can arrive: the voltage falls without end.",
            asked.load.running.likely().in_w()
        )
    } else {
        let others = match asked.others.names.as_slice() {
            [] => "Running on a low battery".to_owned(),
            names => format!("With {} on too", list(names)),
        };
        let why = match finding.verdict {
            Verdict::Good => String::new(),
            _ => format!(" {}", most_of_it(way, &likely, Copper::Warm)),
        };
        format!(
            "{others}, {:.1} % of {volts:.0} V is lost on the way there and back; {percent:.0} % is practice for such a load.{why}",
            seen.drop.likely
        )
    };
    let mut working = resistance_steps(way, &likely, Copper::Warm);
    working.push(Step {
        what: "loss while everything runs, on a low battery".into(),
        formula: "the whole circuit by modified nodal analysis, loads of constant power by Newton's method".into(),
        numbers: format!("(U_posts − U_item) / {volts:.0} V = {:.2} %", seen.drop.likely),
        source: NODAL.into(),
    });
    finding.saying(says).worked(working)
}
