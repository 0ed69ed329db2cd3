//! The greatest current that the sources can push into the bank.

use spile_answer::{
    Class, Finding, Ledger, Limit, Point, Sense, Step, Unit, Verdict, Worse, swing,
};
use spile_build::Bank;

use crate::bank_words;
use crate::cell::Cells;
use crate::life::Sources;

/// All sources at once against what the papers or good practice allow; `None` without a source.
pub(crate) fn current(
    bank: &Bank,
    cells: &Cells,
    sources: &Sources,
    ledger: &Ledger,
) -> Option<Finding> {
    let all = |point: &Point| {
        let [engine_a, hook_up_a] = sources.amperes(point);
        sources.watts(point) * sources.amperes_of_watt(point) + engine_a.max(hook_up_a)
    };
    let point = ledger.likely();
    if all(&point) <= 0.0 {
        return None;
    }
    let [swung] = swing(ledger, [Worse::Higher], |point| [all(point)]);
    let capacity = point.at(cells.capacity);
    let good_a = cells.greatest_charge(&point, capacity).in_a();
    let by_papers = bank.limit.as_ref().map(|limit| limit.likely().in_a() * f64::from(bank.count));
    let (value, class, source) = match by_papers {
        Some(limit_a) if limit_a <= good_a => {
            (limit_a, Class::Limit, "the battery's papers: what its electronics allow")
        }
        _ => (good_a, Class::Practice, "common practice, no source"),
    };
    let limit = Limit {
        value,
        sense: Sense::AtMost,
        class,
        kind: if class == Class::Limit { "papers" } else { "practice" },
        source: source.into(),
        firm: class == Class::Limit,
    };
    let sun_a = sources.watts(&point) * sources.amperes_of_watt(&point);
    let [engine_a, hook_up_a] = sources.amperes(&point);
    let says = format!(
        "Sun ({sun_a:.0} A) and the greater of engine ({engine_a:.0} A) and hook-up \
         ({hook_up_a:.0} A) can push {:.0} A into {}; {} is {value:.0} A.",
        swung.likely,
        bank_words(bank, capacity.in_ah()),
        if class == Class::Limit { "what its electronics allow" } else { "what is good for it" },
    );
    let step = Step {
        what: "greatest charging current".into(),
        formula: "I = P·η/U + max(Iengine, Ihook-up)".into(),
        numbers: format!(
            "{:.0} W × {:.4} A/W + {:.0} A = {:.1} A",
            sources.watts(&point),
            sources.amperes_of_watt(&point),
            engine_a.max(hook_up_a),
            swung.likely
        ),
        source: "sum of the sources; panels at their rated power".into(),
    };
    let label = "amperes of charge, all at once";
    let finding = Finding::measured("charge.current", label, Unit::Ampere, &swung, limit, ledger)
        .settling(&swung, ledger, all);
    let mend = (finding.verdict != Verdict::Good && swung.likely > value).then(|| {
        format!("Chargers set to {:.0} A less between them.", (swung.likely - value).ceil())
    });
    Some(finding.saying(says).mended(mend).worked(vec![step]))
}
