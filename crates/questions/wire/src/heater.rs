//! A heater that burns fuel runs on after it is switched off, to cool its burner down.

use spile_answer::{Finding, Reason, Verdict};
use spile_build::file::PartKind;
use spile_build::{Build, Run};

/// A switch in the feed of a heater cuts that run off, and the burner overheats.
///
/// **Source** common practice, no source; makers' papers say it of their own heaters.
pub(crate) fn switch(build: &Build, name: &str, run: &Run) -> Option<Finding> {
    let item = build.items.get(&run.to).filter(|item| item.part.kind == PartKind::Heater)?;
    let called = item.about.split(',').next().unwrap_or(&item.about);
    let (id, label) = (format!("{name}.switch"), "a switch in the heater's feed");
    Some(match &run.switch {
        Some(switch) => {
            let says = format!(
                "A switch is in the feed of the {called} ({switch}). A heater that burns fuel runs \
                 on for some minutes after it is turned off, to cool down; a switch that cuts that \
                 short lets it overheat."
            );
            let mend = "Take the feed past the switch, straight from its fuse, and turn the \
                        heater off at its own control.";
            Finding::plain(id, label, Verdict::Care(Reason::Practice), says)
                .mended(Some(mend.to_owned()))
        }
        None => {
            let says = format!(
                "No switch is said to be in the feed of the {called}: it can run on and cool down \
                 after it is turned off. Keep it so, and leave the main switch on that long too."
            );
            Finding::plain(id, label, Verdict::Good, says)
        }
    })
}
