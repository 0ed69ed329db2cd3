//! A battery beside the bank, on the same posts.

use spile_answer::{Finding, Given, Reason, Step, Verdict};
use spile_build::Bank;
use spile_build::file::Chemistry;
use spile_quantity::{Charge, Share};
use spile_tables::battery::{self, RestingVoltage, resting_voltages};
use spile_tables::{Entry, Status};

/// Another battery on the posts of the bank: what is unlike does not share.
///
/// Lithium iron phosphate rests higher when it is nearly empty than lead when it is full, so that
/// the lead stands under charge day and night and gives nothing until the lithium is all but
/// empty. Two sorts of lead want different charging, and two capacities or ages of one sort share
/// unevenly: practice.
///
/// **Source** the measured curves of [`resting_voltages`]; common practice for the rest.
pub(crate) fn beside(bank: &Bank) -> Option<Finding> {
    let other = bank.beside.as_ref()?;
    let (id, label) = ("parallel", "batteries side by side on the same posts");
    let [ours, theirs] = [bank.kind, other.kind];
    let says_kind = |kind: Chemistry| match kind {
        Chemistry::Lfp => "lithium iron phosphate",
        Chemistry::Flooded => "lead with liquid acid",
        Chemistry::Agm => "AGM",
        Chemistry::Gel => "gel",
    };
    if (ours == Chemistry::Lfp) != (theirs == Chemistry::Lfp) {
        let lead = if ours == Chemistry::Lfp { theirs } else { ours };
        return Some(unlike(bank, id, label, says_kind(lead)));
    }
    let words =
        |ah: Option<Charge>| ah.map_or_else(String::new, |ah| format!("{:.0} Ah of ", ah.in_ah()));
    let capacity = |given: Option<&Given<Charge>>| given.map(Given::likely);
    let [our_ah, their_ah] = [capacity(bank.capacity.as_ref()), capacity(other.capacity.as_ref())];
    let pair = format!(
        "{}{} and {}{} hang on the same posts",
        words(our_ah),
        says_kind(ours),
        words(their_ah),
        says_kind(theirs)
    );
    if ours != theirs {
        let says = format!(
            "{pair}. Each wants another charging voltage, and one of them never gets its own."
        );
        let mend = "One sort only, or the other one by itself behind a charger of its own.";
        let finding = Finding::plain(id, label, Verdict::Care(Reason::Practice), says);
        return Some(finding.mended(Some(mend.to_owned())));
    }
    let says = format!(
        "{pair}. Of one sort, but not one pair: the stronger carries more than its share, 60 of 100 \
         and beyond."
    );
    let mend = "Join them only within 0.1 V of each other at rest, a fuse to each, plus from one and \
                minus from the other; best of one size and age: then say count = 2.";
    let finding = Finding::plain(id, label, Verdict::Care(Reason::Practice), says);
    Some(finding.mended(Some(mend.to_owned())))
}

fn unlike(bank: &Bank, id: &str, label: &str, lead: &str) -> Finding {
    let measured = |chemistry: battery::Chemistry| -> Option<&'static RestingVoltage> {
        let verified = |curve: &&Entry<RestingVoltage>| curve.status == Status::Verified;
        let of = |curve: &&Entry<RestingVoltage>| curve.value.chemistry == chemistry;
        resting_voltages().iter().filter(verified).find(of).map(|curve| &curve.value)
    };
    let curves = (measured(battery::Chemistry::Lfp), measured(battery::Chemistry::Flooded));
    let full = curves.1.and_then(|curve| curve.points.last()).map(|point| point.1);
    let crossing = curves.0.zip(full).and_then(|(lithium, full)| {
        lithium.points.iter().find(|(_, volts)| *volts >= full).copied()
    });
    let mut says = format!(
        "Lithium iron phosphate and {lead} hang on the same posts. They do not share: the lead \
         stands under charge day and night, and gives nothing until the lithium is all but empty."
    );
    let mut steps = Vec::new();
    if let (Some((charge, volts)), Some(full)) = (crossing, full) {
        says.push_str(&format!(
            " At {:.0} % of its charge lithium still rests at {:.2} V, and lead that is full at \
             {:.1} V.",
            charge.in_percent(),
            volts.in_v(),
            full.in_v()
        ));
        steps.push(Step {
            what: "charge at which lithium rests as high as full lead".into(),
            formula: "U_lithium(charge) ≥ U_lead(100 %)".into(),
            numbers: format!(
                "{:.2} V at {:.1} % against {:.2} V",
                volts.in_v(),
                charge.in_percent(),
                full.in_v()
            ),
            source: "measured iron-phosphate cell, times four; a published chart of flooded lead"
                .into(),
        });
    }
    let usable = |capacity: Charge| {
        let share =
            if bank.kind == Chemistry::Lfp { Share::percent(80.0) } else { Share::percent(50.0) };
        capacity.in_ah() * share.in_of_one() * f64::from(bank.count)
    };
    let alone = bank.capacity.as_ref().map_or_else(String::new, |capacity| {
        format!(": what stays is good for {:.0} Ah by itself", usable(capacity.likely()))
    });
    let mend = format!(
        "Take the other battery off the posts{alone}; or keep it on a circuit of its own, behind a \
         DC–DC charger that is set for it."
    );
    Finding::plain(id, label, Verdict::Stop, says).mended(Some(mend)).worked(steps)
}
