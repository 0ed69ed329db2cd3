//! Cable that is known by its outside diameter alone.

use spile_answer::{Ask, Figure, Finding, Reason, Unit, Verdict};
use spile_build::Return;
use spile_build::Run;
use spile_circuit::conductor::section;
use spile_quantity::CableSize;

use spile_circuit::scene::{how_to_tell, table_of};

/// What copper may be in a cable of which only the outside diameter is known: of a run's feed, else
/// of its return.
pub(crate) fn finding(name: &str, run: &Run) -> Option<Finding> {
    let (Return::Cable(back) | Return::Body { cable: back, .. }) = &run.back;
    let (word, size, outside) = [("feed", run.feed.section), ("return", back.section)]
        .into_iter()
        .find_map(|(word, size)| match size {
            CableSize::Outside(outside) => Some((word, size, outside)),
            _ => None,
        })?;
    let copper = section(size).ok()?;
    let [low, likely, high] =
        [copper.low, copper.likely, copper.high].map(spile_quantity::Area::in_mm2);
    let mm = outside.in_mm();
    let says = format!(
        "The {word} of {name} is {mm:.1} mm across its insulation. That is no section: it may hold {low:.1} to {high:.1} mm² of copper, most likely {likely:.1} mm², and everything here is judged by that.",
    );
    let label = format!("copper in the {word} of {name}");
    let verdict = Verdict::Care(Reason::Unsure);
    let mut finding = Finding::plain(format!("{name}.sold-by"), label, verdict, says);
    finding.figure = Some(Figure { likely, unfavourable: low, unit: Unit::SquareMillimetre });
    finding.asks.push(Ask {
        input: format!("section of the {word} of {name}").into(),
        how: how_to_tell(size).into(),
        settles: "what the cable carries and loses".to_owned(),
        turns: String::new(),
        weight: 1.0,
    });
    let mend = format!(
        "Buy by mm² or AWG, not by millimetres across; {}.",
        table_of(size).trim_start_matches("common practice: ")
    );
    Some(finding.mended(Some(mend)))
}
