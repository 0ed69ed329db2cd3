//! Whether the opening of a bay is square.

use spile_answer::{Ask, Finding, Limit, Reason, Sense, Step, Unit, Verdict, Worse, swing};

use crate::need::mm;
use crate::practice::PRACTICE;
use crate::scene::Room;
use crate::sum::{Measures, clean_m};

/// Both diagonals of a bay that a panel closes, within 2 mm.
pub(crate) fn finding(room: &Room<'_>, closed: bool, measures: &Measures) -> Option<Finding> {
    let id = format!("{}.square", room.name);
    let label = format!("difference of the diagonals of the bay {}", room.name);
    let Some([rising, falling]) = &room.bay.diagonals else {
        return closed.then(|| untaken(room, id, label));
    };
    let rising = measures.take(format!("one diagonal of the bay {}", room.name), rising);
    let falling = measures.take(format!("other diagonal of the bay {}", room.name), falling);
    let apart = &rising - &falling;
    let taken = measures.ledger([&apart]);
    let figure = |point: &spile_answer::Point| clean_m(taken.at_m(&apart, point).abs()) * 1000.0;
    let [swung] = swing(&taken.ledger, [Worse::Higher], |point| [figure(point)]);
    let limit = Limit {
        value: PRACTICE.square.likely().in_mm(),
        sense: Sense::AtMost,
        class: spile_answer::Class::Practice,
        kind: "practice",
        source: PRACTICE.square.source.clone(),
        firm: false,
    };
    let finding = Finding::measured(id, label, Unit::Millimetre, &swung, limit, &taken.ledger)
        .settling(&swung, &taken.ledger, figure);
    let widths = match room.bay.widths.len() {
        0 => "Its width was taken at one place only.".to_owned(),
        many => {
            let of = |pick: fn(f64, f64) -> f64, start: f64| {
                room.bay.widths.iter().map(|row| row.value.likely().in_m()).fold(start, pick)
            };
            let (least, most) = (of(f64::min, f64::INFINITY), of(f64::max, f64::NEG_INFINITY));
            format!("Its width, taken at {many} heights, is {} to {} mm.", mm(least), mm(most))
        }
    };
    let says = format!("The two diagonals differ by {} mm. {widths}", mm(swung.likely / 1000.0));
    let mend = matches!(finding.verdict, Verdict::Care(_)).then(|| {
        "Mark the opening from one datum corner and by its own diagonals, not from the bay's sides.".to_owned()
    });
    let step = Step {
        what: "difference of the diagonals".into(),
        formula: "Δ = |d₁ − d₂|".into(),
        numbers: format!(
            "|{} − {}| = {} mm",
            mm(measures.likely_m(&rising)),
            mm(measures.likely_m(&falling)),
            mm(swung.likely / 1000.0)
        ),
        source: "a parallelogram of equal diagonals is a rectangle".into(),
    };
    Some(finding.saying(says).mended(mend).worked(vec![step]))
}

/// The fewest heights at which a width is taken before a panel is cut: bottom, middle and top.
///
/// **Source** common practice, no source.
const HEIGHTS: usize = 3;

/// Whether the width of a bay that a panel is cut for was taken at enough heights.
pub(crate) fn heights(room: &Room<'_>) -> Option<Finding> {
    let taken = room.bay.widths.len();
    if taken >= HEIGHTS {
        return None;
    }
    let times = match taken {
        0 | 1 => "once".to_owned(),
        times => format!("at {times} heights"),
    };
    let says = format!(
        "A panel is to be cut here, and the width of {} was taken {times}: a wall that leans or \
         bulges shows at three heights only.",
        room.name
    );
    let label = format!("width of the bay {} at three heights", room.name);
    let mut finding = Finding::plain(
        format!("{}.heights", room.name),
        label,
        Verdict::Care(Reason::Practice),
        says,
    );
    finding.asks.push(Ask {
        input: format!("width of the bay {} at three heights", room.name).into(),
        how: "A tape from side to side near the bottom, in the middle and near the top: widths = { unit = \"mm\", tolerance = \"1 mm\", rows = [[50, 520], [550, 520], [1050, 519]] } in the bay.".into(),
        settles: "which width the panel has to fit".to_owned(),
        turns: String::new(),
        weight: 0.3,
    });
    let mend = "Take the width at three heights and cut to the least of them.";
    Some(finding.mended(Some(mend.to_owned())))
}

fn untaken(room: &Room<'_>, id: String, label: String) -> Finding {
    let says = "A panel is to be cut here, and the diagonals of the opening were not taken: one corner may be out.";
    let mut finding = Finding::plain(id, label, Verdict::Care(Reason::Practice), says);
    finding.asks.push(Ask {
        input: format!("both diagonals of the bay {}", room.name).into(),
        how: PRACTICE.square.how.clone(),
        settles: "whether the opening is square".to_owned(),
        turns: String::new(),
        weight: 0.3,
    });
    finding
}
