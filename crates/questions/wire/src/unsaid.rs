//! What is said where something is missing: what it is, how to get it, and what would be right.

use spile_answer::{Ask, Finding, Reason, Verdict};
use spile_build::{Bank, Build, Item, Return, Run};
use spile_circuit::scene::{OneRun, likely_carried, weakest};
use spile_quantity::{Current, Voltage};

use crate::heater;
use crate::words::amps;

/// An *open* finding that asks for one input.
pub(crate) fn open(
    id: impl Into<String>,
    label: &str,
    says: impl Into<String>,
    input: impl Into<String>,
    how: &'static str,
) -> Finding {
    let mut finding = Finding::plain(id, label, Verdict::Open, says);
    finding.asks.push(Ask::missing(input.into(), how, ""));
    finding
}

/// A finding on something that a build must have and does not tell of: it is taken to be there,
/// which is listed with the answer, and may not be.
pub(crate) fn taken_to_be_there(
    id: impl Into<String>,
    label: &str,
    says: impl Into<String>,
    input: impl Into<String>,
    how: &'static str,
) -> Finding {
    Finding { verdict: Verdict::Care(Reason::Unsure), ..open(id, label, says, input, how) }
}

pub(crate) fn no_bank() -> Finding {
    open(
        "bank",
        "house battery",
        "Nothing is said of the house battery, so no voltage can be computed.",
        "capacity of the house battery",
        "Read the label of the battery: [bank] capacity = \"95 Ah @ 20 h\".",
    )
}

pub(crate) fn nothing() -> Finding {
    open(
        "nothing",
        "runs",
        "The build has no cable to anything, so there is nothing to compute.",
        "runs",
        "Lay a tape along the cable to each thing: [runs.fridge] length = \"7.2 m\", section = \"1.5 mm2\".",
    )
}

pub(crate) fn no_run(name: &str, item: &Item) -> Finding {
    open(
        format!("{name}.run"),
        "its cable",
        format!("Nothing is said of the cable to the {}.", item.about),
        format!("cable to the {}", item.about),
        "Lay a tape along its way from the fuse block, and read the print along the cable: [runs.NAME] to = \"ITEM\", length = \"7.2 m\", section = \"1.5 mm2\".",
    )
}

/// A run whose load is not known.
pub(crate) fn no_load(build: &Build, name: &str, run: &Run) -> Option<Finding> {
    let item = build.items.get(&run.to)?;
    Some(open(
        format!("{name}.load"),
        "its load",
        format!(
            "The power of the {} is not known, so its cable and fuse cannot be judged.",
            item.about
        ),
        format!("power of the {}", item.about),
        "Read its plate or its papers: power = { running = \"58 W\" } in its part; or clamp the meter round the feed while it runs, and multiply amperes by volts.",
    ))
}

/// A thing that starts hard and whose cut-out is not known: the heater's glow plug.
pub(crate) fn no_cut_out(asked: &OneRun<'_>, start: Current, arrive: Option<Voltage>) -> Finding {
    let arrive_v = arrive.map_or(0.0, Voltage::in_v);
    open(
        asked.id("start"),
        "volts at start",
        format!(
            "At start, {} leave {arrive_v:.2} V of a low battery. Nothing says at which voltage it gives up.",
            amps(start)
        ),
        format!("cut-out of the {}", asked.item),
        "Read in its papers at which voltage it switches itself off: power = { cut_out = \"10.5 V\" } in its part.",
    )
}

/// A run whose fuse is not known, with the one that would be right.
pub(crate) fn no_fuse(asked: &OneRun<'_>, load: Current) -> Finding {
    let most = weakest(asked.guarded())
        .and_then(|(name, cable)| Some((name, likely_carried(cable)?.current)));
    let most = most.map_or(String::new(), |(name, most)| {
        format!(", and no more than the {} that the {name} carries", amps(most))
    });
    let suited = asked.suited(load);
    let right = suited.as_ref().map_or(String::new(), |fuse| {
        format!(
            " A {} is taken to be there, which is right for the load of {}{most}.",
            fuse.words(),
            amps(load)
        )
    });
    let says = format!("Nothing is said of the fuse of the run {}.{right}", asked.name);
    let tell = if suited.is_some() { taken_to_be_there } else { open };
    tell(
        asked.id("fuse"),
        "fuse",
        says,
        format!("fuse of the run {}", asked.name),
        "Read the number on the fuse in the run's way, and write it: [block.ways.1] fuse = \"10 A\", run = \"...\"; where there is none yet, write the one you will put in.",
    )
}

/// A load so large that no single fuse is made for it.
pub(crate) fn no_fuse_made(asked: &OneRun<'_>) -> Finding {
    let says = format!(
        "Load: {}. No single fuse in the tables is made so large: it needs two runs, or a higher voltage.",
        amps(asked.nominal_current())
    );
    open(
        asked.id("fuse"),
        "fuse",
        says,
        format!("power of the {}", asked.item),
        "Read its plate or its papers again, in watts: the figure may be a peak, or of another voltage.",
    )
}

/// A run with a cable whose size is in no table.
pub(crate) fn unreadable(asked: &OneRun<'_>) -> Finding {
    open(
        asked.id("cable"),
        "cable",
        format!("A cable on the way to the {} is of a size that no table here has.", asked.item),
        format!("section of the run {}", asked.name),
        "Read the print along the cable: square millimetres or AWG.",
    )
}

/// The topology that was taken for granted, in words.
pub(crate) fn assumed(build: &Build, bank: &Bank) -> Vec<String> {
    let mut said = Vec::new();
    let block = &build.block;
    if block.assumed {
        said.push(format!(
            "bank, main fuse, {:.1} m of {} to a fuse block, and the same back",
            block.feed.length.likely().in_m(),
            block.feed.section
        ));
    }
    if bank.kind_assumed {
        said.push(format!("a bank of {}", bank.kind.word()));
    }
    for (name, run) in &build.runs {
        if run.feed.section_assumed {
            said.push(format!("{} for the run {name}", run.feed.section));
        }
        if run.back_assumed && matches!(run.back, Return::Cable(_)) {
            said.push(format!("a return like the feed for the run {name}"));
        }
        said.extend(heater::assumed(build, run));
    }
    said
}
