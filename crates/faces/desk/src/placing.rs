//! Where a thing is once it is moved: as numbers while it is dragged, and as its owner writes it
//! once it is put down.

use spile_answer::Given;
use spile_build::Anchor;
use spile_quantity::{Length, Ranged, Unit, Written, exact_in, read};

/// The keys of a place along the vehicle, across it and upwards: from its low side and its high.
const KEYS: [[&str; 2]; 3] =
    [["from_rear", "from_front"], ["from_right", "from_left"], ["above", "below"]];

/// How far off a place inside a vehicle may be told, from the face that it is told from.
const REACH: [Length; 2] = [Length::m(-3.0), Length::m(20.0)];

/// Why a thing stays where it is along an axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Stays {
    /// It stands on something, or on the floor.
    Stands,
    /// Nothing is said of its place along this axis.
    Unsaid,
}

/// The key that says where a thing is along an axis.
pub(crate) const fn key(anchor: &Anchor, axis: usize) -> Option<&'static str> {
    match anchor {
        Anchor::Low(_) => Some(KEYS[axis][0]),
        Anchor::High(_) => Some(KEYS[axis][1]),
        Anchor::Unsaid => None,
    }
}

/// A place along an axis after a shift towards the front, the left or upwards; `None` where it
/// would be farther off than anything in a vehicle.
pub(crate) fn shifted(anchor: &Anchor, shift: Length) -> Option<Anchor> {
    let within = |given: &Given<Length>, by: Length| {
        let value = by_as_much(&given.value, by)?;
        let inside = REACH[0] <= value.low && value.high <= REACH[1];
        inside.then(|| Given { value, ..given.clone() })
    };
    match anchor {
        Anchor::Low(given) => within(given, shift).map(Anchor::Low),
        Anchor::High(given) => within(given, -shift).map(Anchor::High),
        Anchor::Unsaid => Some(Anchor::Unsaid),
    }
}

/// Whether a thing can be moved along an axis, by what is said of its place there.
///
/// What stands on something stays on it, whichever way it slides.
pub(crate) fn stays(anchor: &Anchor, axis: usize, on: Option<&str>) -> Option<Stays> {
    let floor = Ranged::exactly(Length::m(0.0));
    match anchor {
        _ if axis == 2 && on.is_some() => Some(Stays::Stands),
        Anchor::Low(given) if axis == 2 && given.value == floor => Some(Stays::Stands),
        Anchor::Unsaid => Some(Stays::Unsaid),
        _ => None,
    }
}

/// A distance as its owner wrote it, `22.5 mm ± 0.5 mm`, so much longer; `None` where the text is
/// no distance.
///
/// Unit, tolerance and words stay. On a tape in inches the distance goes to the nearest mark.
pub(crate) fn written(text: &str, longer: Length) -> Option<String> {
    let old: Written<Length> = read(text).ok()?;
    let unit = old.unit;
    let wanted = old.ranged.likely + longer;
    let new = if matches!(unit.symbol(), "in" | "ft") {
        let mark = spile_quantity::Tape::ThirtySecond.nearest(wanted)?;
        (mark.mark.length(), mark.mark.to_string())
    } else {
        rounded(wanted, unit)?
    };
    let goal = by_as_much(&old.ranged, new.0 - old.ranged.likely)?;
    let about = if old.about { "about " } else { "" };
    let tail = text.find(['±', '+']).map(|at| format!(" {}", &text[at..]));
    let as_before = format!("{about}{}{}", new.1, tail.unwrap_or_default());
    let meets = |text: &String| read::<Length>(text).is_ok_and(|read| near(&read.ranged, &goal));
    if meets(&as_before) {
        return Some(as_before);
    }
    let ends = [goal.low, goal.high].map(|end| rounded(end, unit).map(|(_, text)| text));
    let [Some(low), Some(high)] = ends else { return None };
    Some(format!("{about}{low} to {high}")).filter(meets)
}

/// A length to the tenth of a thousandth of a unit, and how it is written.
fn rounded(length: Length, unit: &Unit<Length>) -> Option<(Length, String)> {
    let number = (unit.number(length) * 1e4).round() / 1e4;
    let length = unit.of(number)?;
    Some((length, exact_in(length, unit)))
}

fn by_as_much(value: &Ranged<Length>, by: Length) -> Option<Ranged<Length>> {
    Ranged::new(value.low + by, value.likely + by, value.high + by)
}

fn near(a: &Ranged<Length>, b: &Ranged<Length>) -> bool {
    let near = |a: Length, b: Length| (a - b).in_mm().abs() < 1e-3;
    near(a.low, b.low) && near(a.likely, b.likely) && near(a.high, b.high)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_distance_is_written_as_its_owner_writes() {
        for (text, mm, expected) in [
            ("22.5 mm ± 0.5 mm", 10.0, "32.5 mm ± 0.5 mm"),
            ("0 mm ± 0.5 mm", -3.0, "-3 mm ± 0.5 mm"),
            ("12 mm", 7.0, "19 mm"),
            ("1.25 m", 8.0, "1.258 m"),
            ("44 cm +0/-1", 20.0, "46 cm +0/-1"),
            ("about 440 mm", 1.0, "about 441 mm"),
            ("20 to 30 mm", 5.0, "25 mm to 35 mm"),
            ("10 in", 25.4, "11 in"),
            ("10 1/2 in ± 1/16 in", 25.4, "11 1/2 in ± 1/16 in"),
        ] {
            assert_eq!(written(text, Length::mm(mm)).as_deref(), Some(expected), "{text}");
        }
        assert_eq!(written("by the sink", Length::mm(1.0)), None);
    }
}
