//! The network as a one-line diagram: bank, block, runs and their returns, with volts and amperes.
//!
//! Feeds leave the block on the left, each to its item; returns go on to the right, to the negative
//! bus or to the body. Runs that return through the body stand last, so that no conductor crosses
//! another. Every conductor is as thick as its copper, one unit a millimetre.

mod across;
mod down;
mod parts;
mod rows;

use spile_build::Build;

use crate::drawing::{Drawing, Rows, Width};
pub(crate) use parts::shape;
use parts::{amps, volts};
use rows::{Change, Net, Row};

/// The diagram, with everything on and the battery low; none where nothing is said of runs.
pub(crate) fn drawings(before: &Build, after: Option<&Build>, width: Width) -> Vec<Drawing> {
    let net = Net::of(before, after);
    if net.rows.is_empty() {
        return Vec::new();
    }
    let title = "One-line diagram, everything on, battery low";
    let ink = match width {
        Width::Wide => across::drawn(&net),
        Width::Narrow => down::drawn(&net),
    };
    let class = match width {
        Width::Wide => "wide",
        Width::Narrow => "narrow",
    };
    vec![Drawing {
        title: title.to_owned(),
        scale: None,
        svg: ink.finish(class, title, &says(&net), None),
        table: Some(table(&net)),
    }]
}

fn says(net: &Net<'_>) -> String {
    let many = if net.rows.len() == 1 { "run" } else { "runs" };
    let volts = net.found.as_ref().map_or_else(String::new, |found| {
        format!(
            " The bank stands at {} and gives {}; volts are told against its minus.",
            volts(found.post),
            amps(found.current)
        )
    });
    format!("{} {many} from the fuse block to their items and back.{volts}", net.rows.len())
}

fn table(net: &Net<'_>) -> Rows {
    let head = [
        "run",
        "item",
        "way and fuse",
        "feed",
        "return",
        "volts at the item",
        "amperes",
        "verdict",
        "by the job",
    ];
    let row = |row: &Row<'_>| {
        let [at_item, current] = row.found.as_ref().map_or_else(Default::default, |found| {
            [volts(found.item[0] - found.item[1]), amps(found.current)]
        });
        vec![
            row.name.to_owned(),
            row.item.to_owned(),
            row.way_words().join(", "),
            [row.feed_words(), vec![row.run.along.clone()]]
                .concat()
                .join(", ")
                .trim_end_matches(", ")
                .to_owned(),
            row.back_words().join(", "),
            at_item,
            current,
            row.verdict.map_or_else(String::new, parts::verdict_words),
            match (row.change, &row.instead_of) {
                (Change::Gone, _) => "goes out".to_owned(),
                (_, Some(other)) => format!("in place of {other}"),
                (Change::New, None) => "new".to_owned(),
                (Change::Stays, None) => String::new(),
            },
        ]
    };
    Rows { head: head.map(str::to_owned).to_vec(), rows: net.rows.iter().map(row).collect() }
}
