//! Dates as people write them in files: 2026-03-14.

use crate::read::{Reader, Said};

/// Tells of a text that is not a day of the calendar.
pub(crate) fn check(said: &Said<String>, reader: &mut Reader) {
    if !is_day(said.value.trim()) {
        reader.tell(
            &said.at,
            format!("`{}` is not a day", said.value),
            "not a day",
            "write year, month and day like 2026-03-14",
        );
    }
}

/// Whether a text is a day of the Gregorian calendar, as ISO 8601 writes it.
fn is_day(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let [year, month, day] = parts.as_slice() else { return false };
    if year.len() != 4 || month.len() != 2 || day.len() != 2 {
        return false;
    }
    let (Ok(year), Ok(month), Ok(day)) =
        (year.parse::<u32>(), month.parse::<u32>(), day.parse::<u32>())
    else {
        return false;
    };
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    let days = match month {
        2 if leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => return false,
    };
    (1..=days).contains(&day)
}
