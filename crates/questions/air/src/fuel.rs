//! What burns fuel: the caution, and nothing else.

use spile_answer::{Finding, Reason, Verdict};
use spile_build::Build;
use spile_build::file::{Cooling, PartKind};

/// The caution for each heater and each fridge by absorption.
pub(crate) fn findings(build: &Build) -> Vec<Finding> {
    let mut found = Vec::new();
    for (name, item) in &build.items {
        let part = &item.part;
        let what = if part.kind == PartKind::Heater {
            "If it burns fuel, it takes its air from outdoors and lets its exhaust out there by pipes of \
             its own, gas-tight and clear of tank, cables and windows"
        } else if part.cooling == Some(Cooling::Absorption) {
            "If it burns gas, it needs air low down, a flue of its own and vents outdoors"
        } else {
            continue;
        };
        let says = format!(
            "The {name}: {what}. Nothing is computed of that here: its maker's papers and the rules of \
             the country decide, with a carbon monoxide alarm beside them."
        );
        let mend = "Fit it by its papers, and have it looked over by somebody who is allowed to.";
        let finding = Finding::plain(
            format!("{name}.exhaust"),
            format!("air and exhaust of the {name}"),
            Verdict::Care(Reason::Practice),
            says,
        );
        found.push(finding.mended(Some(mend.to_owned())));
    }
    found
}
