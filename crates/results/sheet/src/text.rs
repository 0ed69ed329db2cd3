//! The marks as a table.

use std::fmt::Write;

use spile_fit::{Check, From, Mark, MarkOut, Points, Purpose};
use spile_quantity::{Length, Tape};

/// The columns of a line at most.
const COLUMNS: usize = 80;

/// The marks of a cut-out as a table, at most 80 columns wide: in millimetres and on the owner's
/// inch tape, with what each inch mark is off by, and what the mark may be.
pub fn marks_text(marks: &MarkOut) -> String {
    let mut out = String::new();
    let mut line = |text: &str| {
        let _ = writeln!(out, "{}", text.trim_end());
    };
    let [width, height] = marks.size;
    line(&format!("{}: {}", marks.item, marks.about));
    let material =
        if marks.material.is_empty() { String::new() } else { format!("{}, ", marks.material) };
    for text in folded(&format!(
        "Panel {}: {material}{} × {} × {} mm.",
        marks.panel,
        mm(width),
        mm(height),
        mm(marks.thickness)
    )) {
        line(&text);
    }
    for text in folded(&orientation(marks)) {
        line(&text);
    }
    line("");
    let inch = format!("inch ({})", tape_word(marks.tape));
    line(&row(["mark", "what", "from", "mm", &inch, "error", "allowed, mm"]));
    for (purpose, title) in titles(marks) {
        line("");
        line(&title);
        for mark in marks.marks.iter().filter(|mark| mark.purpose == purpose) {
            line(&mark_row(mark));
        }
    }
    line("");
    line("check on the lines, before the saw");
    for check in &marks.checks {
        line(&check_row(check, marks.tape));
    }
    line("");
    for text in notes(marks).iter().flat_map(|note| folded(note)) {
        line(&text);
    }
    if !marks.behind.is_empty() {
        line("");
        line("behind the panel, from the datum, in mm");
        for behind in &marks.behind {
            let (left, bottom) = (behind.outline.left, behind.outline.bottom);
            let text = format!(
                "{}{}: {} to {} from the left, {} to {} from below; {}",
                if behind.keep_out { "KEEP OUT " } else { "" },
                behind.what,
                mm(left),
                mm(left + behind.outline.width),
                mm(bottom),
                mm(bottom + behind.outline.height),
                apart(behind.from_opening),
            );
            for text in folded(&text) {
                line(&text);
            }
        }
    }
    line("");
    for text in
        marks.cautions.iter().chain(&marks.assumed).flat_map(|text| folded(&format!("! {text}")))
    {
        line(&text);
    }
    out
}

fn apart(length: Length) -> String {
    if length < Length::m(0.0) {
        "the opening crosses it".to_owned()
    } else {
        format!("{} from the opening", mm(length))
    }
}

/// The groups of marks, each with its title.
pub(crate) fn titles(marks: &MarkOut) -> Vec<(Purpose, String)> {
    let drill = mm(marks.radius * 2.0);
    let mut titles = vec![
        (Purpose::Edge, "edges of the opening".to_owned()),
        (Purpose::Corner, format!("corner drill {drill} mm, centres")),
    ];
    if let Some(hole) = marks.hole.filter(|_| !marks.holes.is_empty()) {
        titles.push((Purpose::Hole, format!("fixing holes {} mm", mm(hole))));
    }
    titles
}

/// How the panel lies.
pub(crate) fn orientation(marks: &MarkOut) -> String {
    format!(
        "Marks are on the FACE, from its lower left corner. UP is {}, FRONT of the vehicle is {}.",
        points(marks.up),
        points(marks.front)
    )
}

const fn points(points: Points) -> &'static str {
    match points {
        Points::Left => "to the left",
        Points::Right => "to the right",
        Points::Up => "at the top",
        Points::Down => "at the bottom",
        Points::Outward => "towards you",
        Points::Inward => "away from you",
    }
}

/// How to cut by the marks.
pub(crate) fn notes(marks: &MarkOut) -> Vec<String> {
    let [width, height] = marks.limits;
    let mut notes = vec![format!(
        "The opening as it results is {} to {} mm wide and {} to {} mm high, with the hand off by {} mm at each line.",
        mm(width.low),
        mm(width.high),
        mm(height.low),
        mm(height.high),
        mm(marks.hand)
    )];
    let kerf = marks.saw.map_or_else(String::new, |saw| {
        format!(" (kerf {} to {} mm)", mm(saw.kerf.low), mm(saw.kerf.high))
    });
    notes.push(format!("Saw on the waste side: the side of the blade runs along the line, and the whole cut{kerf} lies inside the opening."));
    notes.push(format!(
        "Drill the corners {} mm first, then saw from one to the next.",
        mm(marks.radius * 2.0)
    ));
    if let Some(saw) = marks.saw {
        notes.push(format!(
            "A plunge saw of {} mm blade, set {} mm below the panel, cuts the face {} mm ahead of the back: stop with its middle {} mm before the corner's centre line, and finish by hand.",
            mm(saw.blade), mm(saw.through), whole(saw.ahead), whole(saw.stop)
        ));
    }
    notes
}

fn mark_row(mark: &Mark) -> String {
    let from = match mark.from {
        From::Left => "left",
        From::Below => "below",
    };
    let (inch, error) = mark.inch.map_or_else(
        || ("-".to_owned(), String::new()),
        |inch| (inch.mark.figure(), signed(inch.mark.length() - mark.exact)),
    );
    let allowed = format!("{} to {}", fine(mark.allowed.low), fine(mark.allowed.high));
    row([&mark.name, &mark.what, from, &mark.mm.figure(), &inch, &error, &allowed])
}

fn check_row(check: &Check, tape: Tape) -> String {
    let inch = check
        .inch
        .and_then(|inch| tape.nearest(inch))
        .map_or_else(|| "-".to_owned(), |at| at.mark.figure());
    let error = check.inch.map_or_else(String::new, |inch| signed(inch - check.mm));
    let allowed = format!("{} to {}", fine(check.allowed.low), fine(check.allowed.high));
    format!("{:<34}{:>8}  {:<13}{:>5}  {allowed}", check.what, fine(check.mm), inch, error)
}

fn row([mark, what, from, millimetres, inch, error, allowed]: [&str; 7]) -> String {
    format!("{mark:<12}{what:<14}{from:<8}{millimetres:>8}  {inch:<13}{error:>5}  {allowed}")
}

/// A text in lines of at most 80 columns.
fn folded(text: &str) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= COLUMNS => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// The name of a tape by its finest mark.
pub(crate) const fn tape_word(tape: Tape) -> &'static str {
    match tape {
        Tape::Sixteenth => "1/16",
        Tape::ThirtySecond => "1/32",
        Tape::SixtyFourth => "1/64",
        Tape::Millimetre => "1 mm",
        Tape::HalfMillimetre => "1/2 mm",
    }
}

/// A length in millimetres, to the half where it is one.
pub(crate) fn mm(length: Length) -> String {
    fine(length)
}

/// A length in millimetres, to the tenth.
pub(crate) fn fine(length: Length) -> String {
    let text = format!("{:.1}", length.in_mm());
    let text = text.strip_suffix(".0").unwrap_or(&text);
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

fn whole(length: Length) -> String {
    format!("{:.0}", length.in_mm())
}

fn signed(error: Length) -> String {
    let text = format!("{:+.1}", error.in_mm());
    if text == "-0.0" || text == "+0.0" { "0".to_owned() } else { text.replace('-', "−") }
}
