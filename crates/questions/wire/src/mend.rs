//! The mends in words, put to the findings that they clear.

use spile_answer::{Finding, Reason, Verdict};
use spile_circuit::scene::{OneRun, State, Way};
use spile_quantity::Current;

use crate::size::{self, Mends, Sized};

/// Puts to every finding of a run that is not *good* what would clear it.
pub(crate) fn put(asked: &OneRun<'_>, findings: &mut [Finding]) {
    let sizeable = |finding: &Finding| matches!(finding.verdict, Verdict::Stop | Verdict::Care(_));
    if !findings.iter().any(sizeable) {
        return;
    }
    let mends = mends(asked, findings);
    for finding in findings.iter_mut().filter(|finding| sizeable(finding)) {
        finding.mend = words(asked, &mends, finding);
    }
}

/// The lightest changes that mend a run of which that was found.
pub(crate) fn mends(asked: &OneRun<'_>, findings: &[Finding]) -> Mends {
    let most = findings.iter().find_map(most_load);
    size::mends(asked, findings, most.unwrap_or_else(|| asked.nominal_current()))
}

/// The load at its unfavourable end, by the inputs of a finding that hangs on it.
fn most_load(finding: &Finding) -> Option<Current> {
    let input = finding.inputs.iter().find(|input| input.name == crate::cable::LOAD)?;
    Some(Current::a(input.high))
}

fn words(asked: &OneRun<'_>, mends: &Mends, finding: &Finding) -> Option<String> {
    let said = |what: &str, sized: &Sized| {
        format!("{what}: {}{}.", size::words(asked, sized), effect(sized))
    };
    if let Verdict::Care(Reason::Unsure | Reason::Tight) = finding.verdict {
        return match (mends.sure.get(&finding.id), finding.asks.first()) {
            (Some(sure), _) => Some(said("Even at the worst", sure)),
            (None, Some(ask)) => Some(format!(
                "No cable that its way takes makes it sure even at the worst. First to be measured: {}.",
                ask.input
            )),
            (None, None) => None,
        };
    }
    let rules = mends.likely.as_ref();
    let stop_alone = mends.no_stop.as_ref().filter(|light| {
        finding.verdict == Verdict::Stop && rules.is_none_or(|sized| sized != *light)
    });
    let parts = [
        stop_alone.map(|light| said("For the stop alone", light)),
        rules.map(|sized| said("For every rule at the likely figures", sized)),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    Some(if parts.is_empty() { no_size(asked) } else { parts.join(" ") })
}

/// ` (2.6 % lost, 11.46 V at start)`.
fn effect(sized: &Sized) -> String {
    if sized.feed.is_none() && sized.back == size::NewReturn::AsItIs {
        return String::new();
    }
    let start = sized.start_v.map_or(String::new(), |left| format!(", {left:.2} V at start"));
    format!(" ({:.1} % lost{start})", sized.drop_percent)
}

/// Why no size of cable does, and what would.
fn no_size(asked: &OneRun<'_>) -> String {
    let posts_v = asked.fuse().and_then(|fuse| {
        let way = Way::new(asked, &fuse)?;
        Some(way.solve(&way.ledger.likely(), State::Start)?.posts.in_v())
    });
    let cut_out_v = asked.load.cut_out.as_ref().map(|volts| volts.likely().in_v());
    match (posts_v, cut_out_v) {
        (Some(posts_v), Some(cut_out_v)) if posts_v < cut_out_v => format!(
            "No cable clears it: the battery's own posts fall to {posts_v:.2} V. A larger bank does, or one kept fuller."
        ),
        _ => "No single size of cable and fuse clears it on this way: it needs a shorter way, two runs, or another fuse or appliance.".to_owned(),
    }
}
