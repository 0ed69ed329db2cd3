//! A heater that burns fuel runs on after it is turned off, to cool its burner down.

use spile_answer::{Finding, Reason, Verdict};
use spile_build::file::PartKind;
use spile_build::{Build, Run};

/// A switch in the feed of a heater cuts its run-on short, and the burner overheats.
///
/// **Source** common practice, no source; makers' papers say it of their own heaters.
pub(crate) fn switch(build: &Build, name: &str, run: &Run) -> Option<Finding> {
    let called = heater(build, run)?;
    let switch = run.switch.as_ref()?;
    let says = format!(
        "A switch is in the feed of the {called} ({switch}). A heater that burns fuel runs on for \
         some minutes after it is turned off, to cool down; a switch that cuts that short lets it \
         overheat."
    );
    let mend = "Take the feed past the switch, straight from its fuse, and turn the heater off at \
                its own control; leave the main switch on until it has stopped.";
    let label = "a switch in the heater's feed";
    let finding =
        Finding::plain(format!("{name}.switch"), label, Verdict::Care(Reason::Practice), says);
    Some(finding.mended(Some(mend.to_owned())))
}

/// What is taken of a heater of whose switch nothing is said.
pub(crate) fn assumed(build: &Build, run: &Run) -> Option<String> {
    let called = heater(build, run).filter(|_| run.switch.is_none())?;
    Some(format!("no switch in the feed of the {called}, so that it can run on and cool down"))
}

/// What the heater at the end of a run is called.
fn heater<'b>(build: &'b Build, run: &Run) -> Option<&'b str> {
    let item = build.items.get(&run.to).filter(|item| item.part.kind == PartKind::Heater)?;
    Some(item.about.split(',').next().unwrap_or(&item.about))
}
