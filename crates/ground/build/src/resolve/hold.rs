//! How things are held, made typed.

use spile_answer::Basis;
use spile_quantity::{Length, Written, read};

use super::plausible as p;
use super::shape::row_unit;
use super::{Resolver, with_tape_tolerance};
use crate::file::{HeldBy, HeldFile, HeldInto, LatchFile, Text};
use crate::held::{Held, HeldPattern, Latch};
use crate::read::{Record, Said};

/// How an item is held; `None` where nothing is said or what is said cannot be used.
pub(super) fn held(said: Option<&Said<HeldFile>>, r: &mut Resolver<'_>) -> Option<Held> {
    let said = said?;
    let file = &said.value;
    let hint = format!("add by = \"bolt\", or another of: {}", HeldBy::WORDS.join(", "));
    r.reader.lacking(&said.at, "how it is held", &file.lacks(&["by"]), &hint);
    let by = file.by.as_ref()?.value;
    let pattern = pattern(said, r);
    let rows = match &pattern {
        HeldPattern::Rows(rows) => u32::try_from(rows.len()).ok(),
        _ => None,
    };
    Some(Held {
        by,
        size: size(&file.size, r),
        class: class(&file.class, by, r),
        count: file.count.as_ref().map(|count| count.value).or(rows),
        washer: r.given(&file.washer, Basis::Measured, p::WASHER_M),
        into: file.into.as_ref().map(|into| into.value),
        wall: r.given(&file.wall, Basis::Measured, p::SHEET_M),
        pattern,
        face: file.face.as_ref().map(|face| face.value),
        lever: r.taped(&file.lever, p::PART_M),
        edge: r.taped(&file.edge, p::PART_M),
        looked: file.looked.as_ref().is_some_and(|looked| looked.value),
        holds: r.given(&file.holds, Basis::Measured, p::HOLDS_N),
        latch: file.latch.as_ref().and_then(|latch| self::latch(latch, r)),
    })
}

fn latch(said: &Said<LatchFile>, r: &mut Resolver<'_>) -> Option<Latch> {
    let file = &said.value;
    let by = file.by.as_ref().map(|by| by.value);
    if !matches!(by, Some(HeldBy::MagnetLatch | HeldBy::PositiveLatch)) {
        r.reader.tell(
            file.by.as_ref().map_or(&said.at, |by| &by.at),
            "a latch is a magnet latch or a positive latch",
            "no latch",
            "add by = \"positive latch\" or by = \"magnet latch\"",
        );
        return None;
    }
    let screws = file.screws.as_ref().map(|screws| screws.value);
    Some(Latch {
        by: by?,
        count: file.count.as_ref().map_or(1, |count| count.value.max(1)),
        holds: r.given(&file.holds, Basis::Measured, p::HOLDS_N),
        screws,
        size: size(&file.size, r),
        class: class(&file.class, screws.unwrap_or(HeldBy::Bolt), r),
        each: file.each.as_ref().map_or(2, |each| each.value.max(1)),
        into: file.into.as_ref().map(|into: &Said<HeldInto>| into.value),
        wall: r.given(&file.wall, Basis::Measured, p::SHEET_M),
        screw_holds: r.given(&file.screw_holds, Basis::Measured, p::HOLDS_N),
    })
}

/// The nominal diameter: `M6`, or any length.
fn size(said: &Text, r: &mut Resolver<'_>) -> Option<Length> {
    let said = said.as_ref()?;
    let text = said.value.trim();
    let metric = text.strip_prefix(['M', 'm']).and_then(|number| number.parse::<f64>().ok());
    let length = metric.map(Length::mm).or_else(|| {
        read::<Length>(text).ok().map(|written: Written<Length>| written.ranged.likely)
    });
    let plausible = |length: &Length| (0.002..=0.024).contains(&length.in_m());
    let length = length.filter(plausible);
    if length.is_none() {
        r.reader.tell(
            &said.at,
            format!("`{text}` is not the size of a screw"),
            "not a size",
            "write the thread or the diameter: size = \"M6\" or size = \"4.8 mm\"",
        );
    }
    length
}

/// The property class of a bolt, as it is marked on its head.
fn class(said: &Text, by: HeldBy, r: &mut Resolver<'_>) -> Option<String> {
    let said = said.as_ref()?;
    let text = said.value.trim();
    let known = spile_tables::fastener::bolt_class(text);
    if known.is_none() && matches!(by, HeldBy::Bolt | HeldBy::RivetNut) {
        r.reader.tell(
            &said.at,
            format!("no table has bolts of class `{text}`"),
            "not known",
            "write what is on the bolt's head: class = \"8.8\" or class = \"A2-70\"",
        );
    }
    known.map(|entry| entry.value.class.clone())
}

/// Where the fasteners are on their face.
fn pattern(said: &Said<HeldFile>, r: &mut Resolver<'_>) -> HeldPattern {
    let file = &said.value;
    if let Some(rows) = &file.rows {
        let hint = "add unit = \"mm\" beside the rows";
        r.reader.lacking(&said.at, "a pattern in rows", &file.lacks(&["unit"]), hint);
        let Some(scale) = file.unit.as_ref().and_then(|unit| row_unit(unit, r)) else {
            return HeldPattern::Unsaid;
        };
        return HeldPattern::Rows(rows.value.0.iter().map(|row| row.value.map(scale)).collect());
    }
    let Some(spacing) = &file.spacing else { return HeldPattern::Unsaid };
    let width = r.given(&spacing.value.width, Basis::Measured, p::PART_M).map(with_tape_tolerance);
    let height =
        r.given(&spacing.value.height, Basis::Measured, p::PART_M).map(with_tape_tolerance);
    let missing = spacing.value.lacks(&["width", "height"]);
    r.lacking(&spacing.at, "the spacing of a pattern", &missing);
    match (width, height) {
        (Some(width), Some(height)) => HeldPattern::Spacing([width, height]),
        _ => HeldPattern::Unsaid,
    }
}
