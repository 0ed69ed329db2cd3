//! The fuse against its load, the cables it guards, the papers and its way.

use spile_answer::{
    Class, Finding, Given, Ledger, Limit, Reason, Sense, Step, Unit, Verdict, Worse, swing,
};
use spile_circuit::fuse::least_rating;
use spile_circuit::scene::{Fuse, OneRun, weakest};
use spile_quantity::Current;

use crate::cable::{LOAD, carried_over, carried_step};
use crate::unsaid;
use crate::words::amps;

/// Everything found of the fuse; only what would be right, where none is said.
pub(crate) fn findings(asked: &OneRun<'_>, fuse: &Fuse, load: &Given<Current>) -> Vec<Finding> {
    if !fuse.said {
        return vec![unsaid::no_fuse(asked, load.likely())];
    }
    let mut found = vec![for_load(asked, fuse, load)];
    found.extend(guards(asked, fuse));
    found.extend(by_papers(asked, fuse));
    found.extend(in_its_way(asked, fuse, load));
    found
}

/// The least rating for a load that runs for hours: 80 % of what the fuse carries at the block's
/// temperature. Practice.
fn for_load(asked: &OneRun<'_>, fuse: &Fuse, load: &Given<Current>) -> Finding {
    let block = &asked.build.block.ambient;
    let mut ledger = Ledger::new();
    let load_handle = ledger.take(LOAD, load);
    let at = ledger.take("temperature at the fuse block", block);
    let [swung] = swing(&ledger, [Worse::Higher], |point| {
        let least = least_rating(point.at(load_handle), point.at(at));
        [least.map_or(f64::INFINITY, |least| least.value.in_a())]
    });
    let practice = &spile_tables::fuse::continuous().over_3h;
    let limit = Limit {
        value: fuse.rating.in_a(),
        sense: Sense::AtMost,
        class: Class::Practice,
        kind: "practice",
        source: practice.source.title.as_str().into(),
        firm: true,
    };
    let (current, block_c) = (load.likely(), block.likely().in_celsius());
    let least = Current::a(swung.likely);
    let says = format!(
        "Load: {} on a low battery, so by practice a fuse of {} or more at {block_c:.0} °C. In the way: a {}.",
        amps(current),
        amps(least),
        fuse.words()
    );
    let kept = current.in_a() / (practice.value * swung.likely);
    let step = Step {
        what: "least rating".into(),
        formula: "I_n ≥ I / (0.8 · s), s by the temperature at the block".into(),
        numbers: format!(
            "{:.2} A / ({} × {kept:.2}) = {:.2} A",
            current.in_a(),
            practice.value,
            swung.likely
        ),
        source: practice.source.title.as_str().into(),
    };
    let id = asked.id("fuse-load");
    Finding::measured(id, "least fuse for the load", Unit::Ampere, &swung, limit, &ledger)
        .saying(says)
        .worked(vec![step])
}

/// Whether the fuse guards the weakest of the cables after it: its rating is at most what that
/// carries.
fn guards(asked: &OneRun<'_>, fuse: &Fuse) -> Option<Finding> {
    let (name, cable) = weakest(asked.guarded())?;
    let mut ledger = Ledger::new();
    let (swung, carried) = carried_over(&mut ledger, name, cable, |_| 0.0)?;
    let limit = Limit {
        value: fuse.rating.in_a(),
        sense: Sense::AtLeast,
        class: Class::Limit,
        kind: "fuse",
        source: "fuse at most what the cable carries (IEC 60364-4-43: I_n ≤ I_z)".into(),
        firm: carried.in_free_air.may_stop() && !cable.section_assumed,
    };
    let label = format!("what the {name} carries, against its fuse");
    let id = asked.id("fuse-cable");
    let mut finding = Finding::measured(id, label, Unit::Ampere, &swung, limit, &ledger);
    fuse_steps_are_not_tight(&mut finding);
    let (words, carries) = (fuse.words(), amps(carried.current));
    let at_worst = amps(Current::a(swung.unfavourable));
    let says = match finding.verdict {
        Verdict::Good => format!("The {words} guards the {name}, which carries {carries}."),
        Verdict::Stop => {
            format!(
                "The {words} lets more through than the {name} of {} carries: {carries}.",
                cable.section
            )
        }
        _ => format!(
            "The {words} guards the {name} of {} if that carries {carries}; at worst it carries {at_worst}.",
            cable.section
        ),
    };
    Some(finding.saying(says).worked(vec![carried_step(cable, &carried)]))
}

/// The fuse against the greatest that the appliance's papers allow.
fn by_papers(asked: &OneRun<'_>, fuse: &Fuse) -> Option<Finding> {
    let most = asked.load.fuse.as_ref()?;
    let mut ledger = Ledger::new();
    ledger.take("greatest fuse its papers allow", most);
    let [swung] = swing(&ledger, [Worse::Higher], |_| [fuse.rating.in_a()]);
    let limit = papers(most);
    let says = format!(
        "Its papers allow {} A at most. In the way: a {}.",
        most.likely().in_a(),
        fuse.words()
    );
    let id = asked.id("fuse-papers");
    let mut finding =
        Finding::measured(id, "its fuse", Unit::Ampere, &swung, limit, &ledger).saying(says);
    fuse_steps_are_not_tight(&mut finding);
    Some(finding)
}

/// The fuse against what the papers of the block allow in one way: nothing but the fuse holds the
/// current to that.
fn in_its_way(asked: &OneRun<'_>, fuse: &Fuse, load: &Given<Current>) -> Option<Finding> {
    let most = asked.build.block.per_way.as_ref()?;
    let way = asked.run.way.as_ref()?;
    let mut ledger = Ledger::new();
    ledger.take("greatest current of one way", most);
    let let_through = fuse.rating.max(load.likely());
    let [swung] = swing(&ledger, [Worse::Higher], |_| [let_through.in_a()]);
    let says = format!(
        "Way {} of the block may carry {} by its papers; its fuse lets {} A through.",
        way.number,
        amps(most.likely()),
        let_through.in_a()
    );
    let label = format!("current that way {} may see", way.number);
    let mut finding =
        Finding::measured(asked.id("way"), label, Unit::Ampere, &swung, papers(most), &ledger)
            .saying(says);
    fuse_steps_are_not_tight(&mut finding);
    Some(finding)
}

fn papers(most: &Given<Current>) -> Limit {
    Limit {
        value: most.likely().in_a(),
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "papers",
        source: most.source.clone(),
        firm: true,
    }
}

/// Fuses come in steps: one of just the greatest rating allowed is not tight.
fn fuse_steps_are_not_tight(finding: &mut Finding) {
    if finding.verdict == Verdict::Care(Reason::Tight) {
        finding.verdict = Verdict::Good;
    }
}
