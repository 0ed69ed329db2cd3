//! The latch of a drawer: twice the push of 1 g.

use spile_answer::{
    Basis, Class, Finding, Given, Ledger, Limit, Sense, Step, Unit, Verdict, Worse, swing,
};
use spile_build::file::{HeldBy, HeldInto, PartKind};
use spile_build::{Held, HeldPattern, Item, Latch};
use spile_quantity::{Force, Length, Mass, Ranged};
use spile_strength::envelope::push;
use spile_strength::{Ultimate, sheet};
use spile_tables::fastener;

use crate::modes::{STRAP, bolts, by_wall};
use crate::{called, open};

/// Whether it slides or swings, so that something has to keep it shut.
pub(crate) fn slides(item: &Item) -> bool {
    item.part.drawer.is_some() || item.part.kind == PartKind::DrawerFridge
}

/// What is asked where nothing is said of its latch.
pub(crate) fn not_said(name: &str, item: &Item) -> Finding {
    let called = called(item);
    open(
        format!("{name}.latch"),
        "what keeps it shut",
        format!("Nothing is said of what keeps the {called} shut."),
        format!("latch of the {called}"),
        "Hook a spring balance into the handle and pull until it opens: latch = { by = \"positive latch\", count = 2, holds = \"400 N\" } in its held.",
    )
}

/// The push of 1 g against half of what the latches hold, or of what their screws do.
pub(crate) fn finding(name: &str, item: &Item, held: &Held) -> Option<Finding> {
    let own;
    let latch = match (&held.latch, held.by) {
        (Some(latch), _) => latch,
        (None, HeldBy::MagnetLatch | HeldBy::PositiveLatch) => {
            own = as_latch(held);
            &own
        }
        _ if slides(item) => return Some(not_said(name, item)),
        _ => return None,
    };
    let mut ledger = Ledger::new();
    let called = called(item);
    let mass = ledger.take(format!("mass of {name}"), item.mass.as_ref()?);
    let contents =
        item.contents.as_ref().map(|given| ledger.take(format!("contents of {name}"), given));
    let (one, said) = holds(latch);
    let one = ledger.take(format!("what one {} of {name} holds", latch.by.word()), &one);
    let screw = screw(latch);
    let firm_screw = screw.as_ref().is_some_and(|(_, firm)| *firm);
    let screw = screw.map(|(given, _)| {
        ledger.take(format!("what one screw of the latch of {name} may be used for"), &given)
    });
    let count = f64::from(latch.count);
    let each = f64::from(latch.each);
    let pushed = |point: &spile_answer::Point| {
        let contents = contents.map_or(0.0, |handle| point.at(handle).in_kg());
        push(Mass::kg(point.at(mass).in_kg() + contents), 1.0)
    };
    let used = |point: &spile_answer::Point| {
        let load = pushed(point);
        let latches = Ultimate(point.at(one) * count).over(STRAP).used(load);
        let screws =
            screw.map(|handle| Ultimate(point.at(handle) * (count * each)).over(STRAP).used(load));
        [latches, screws.unwrap_or(0.0)]
    };
    let figure = |point: &spile_answer::Point| used(point).into_iter().fold(0.0, f64::max) * 100.0;
    let [all] = swing(&ledger, [Worse::Higher], |point| [figure(point)]);
    let point = ledger.likely();
    let [latches, screws] = used(&point);
    let by_screws = screws > latches && !(said && latches > 1.0 && !firm_screw);
    let firm = if by_screws { firm_screw } else { said };
    let limit = Limit {
        value: 100.0,
        sense: Sense::AtMost,
        class: Class::Limit,
        kind: "strength",
        source: "twice the push of 1 g: common practice".into(),
        firm,
    };
    let what = if by_screws { "the screws of its latch" } else { "its latch" };
    let load_n = pushed(&point).in_n();
    let hold_n = 2.0 * load_n / latches.max(screws);
    let required_n = 2.0 * load_n;
    let finding = Finding::measured(
        format!("{name}.latch"),
        format!("{what}, 1 g on a shut drawer"),
        Unit::Percent,
        &all,
        limit,
        &ledger,
    )
    .settling(&all, &ledger, figure);
    let shut = finding.verdict == Verdict::Good;
    let says = format!(
        "At 1 g the {called} pushes with {load_n:.0} N; twice that, {required_n:.0} N, is required, and {what} hold{} {hold_n:.0} N.",
        if by_screws { "" } else { "s" }
    );
    let worst_kg = ledger.inputs().iter().filter(|input| input.unit == "kg").map(|i| i.high).sum();
    let each_n = (push(Mass::kg(worst_kg), 1.0).in_n() / 10.0).ceil() * 10.0;
    let mend = format!(
        "A positive latch and a second catch, each holding {each_n:.0} N by spring balance and each on two M5 through-bolts, keep it shut.",
    );
    Some(
        finding
            .saying(says)
            .worked(vec![
                Step {
                    what: "push at 1 g".into(),
                    formula: "F = m·g".into(),
                    numbers: format!("{:.1} × 9.81 = {load_n:.0} N", load_n / 9.806_65),
                    source: "EN 12195-1, F = m·c·g".into(),
                },
                Step {
                    what: "required against held".into(),
                    formula: "2·F / (n·F_1)".into(),
                    numbers: format!("{required_n:.0} / {hold_n:.0} = {:.2}", required_n / hold_n),
                    source: "at least twice the worst force: common practice".into(),
                },
            ])
            .mended((!shut).then_some(mend)),
    )
}

/// What one latch holds, and whether that was said.
fn holds(latch: &Latch) -> (Given<Force>, bool) {
    if let Some(said) = &latch.holds {
        return (said.clone(), said.basis != Basis::Typical);
    }
    let row = fastener::latches().iter().find(|row| row.value.0 == latch.by.word());
    let value = row.map_or(Ranged::exactly(Force::n(0.0)), |row| row.value.1);
    let given = Given {
        value,
        basis: Basis::Typical,
        source: "common practice".into(),
        how: "Hook a spring balance into the handle and pull until it opens.".into(),
    };
    (given, false)
}

/// What one of its screws may be used for, and whether that is firm.
fn screw(latch: &Latch) -> Option<(Given<Force>, bool)> {
    if let Some(said) = &latch.screw_holds {
        return Some((said.clone(), said.basis != Basis::Typical));
    }
    let by = latch.screws?;
    let held = as_held(latch, by);
    let nominal = latch.size?;
    let wall = latch.wall.as_ref().map(Given::likely);
    let how = "Drive one into a scrap of the same wall and pull with a spring balance until it lets go: a quarter of that.";
    let given = |value: Ranged<Force>, basis| Given {
        value,
        basis,
        source: "common practice; ISO 898-1 for bolts".into(),
        how: how.into(),
    };
    if let Some(row) = fastener::pull_outs().iter().find(|row| row.value.key == by.word()) {
        let scale = nominal / row.value.diameter * wall.map_or(1.0, |wall| by_wall(&held, wall));
        return Some((given(row.value.allowed.map(|f| f * scale), Basis::Typical), false));
    }
    let mode = bolts(&held).into_iter().next()?;
    let bolt = mode.tension?.min(mode.shear?);
    let metal = fastener::sheet_metals()
        .iter()
        .find(|row| Some(row.value.0.as_str()) == latch.into.map(HeldInto::word));
    let (Some(wall), Some(metal)) = (wall, metal) else {
        return Some((given(Ranged::exactly(bolt.value()), Basis::Table), mode.firm));
    };
    let hole = nominal * 1.1;
    let value = metal.value.1.map(|strength| {
        let load = sheet::bearing(nominal, hole, hole * 3.0, wall, Ultimate(strength));
        let load =
            load.map_or(Force::n(0.0), |load| load.over(spile_strength::bolt::LOADS).value());
        load.min(bolt.value())
    });
    Some((given(value, Basis::Table), false))
}

/// A thing held by a latch alone.
fn as_latch(held: &Held) -> Latch {
    Latch {
        by: held.by,
        count: held.count.unwrap_or(1).max(1),
        holds: held.holds.clone(),
        screws: None,
        size: None,
        class: None,
        each: 1,
        into: held.into,
        wall: held.wall.clone(),
        screw_holds: None,
    }
}

/// The screws of a latch as a fixing.
fn as_held(latch: &Latch, by: HeldBy) -> Held {
    Held {
        by,
        size: latch.size,
        class: latch.class.clone(),
        count: Some(latch.each),
        washer: None,
        into: latch.into,
        wall: latch.wall.clone(),
        pattern: HeldPattern::Unsaid,
        face: None,
        lever: None::<Given<Length>>,
        edge: None,
        looked: false,
        holds: None,
        latch: None,
    }
}
