//! Dates as people write them in files: 2026-03-14.

use schemars::{Schema, SchemaGenerator, json_schema};

use crate::kind::Kind;
use crate::node::{Node, Value};
use crate::read::{Read, Reader};

/// A day of the calendar, as ISO 8601 writes it: `2026-03-14`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Day(pub(crate) String);

impl Read for Day {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        let (Value::Text(text) | Value::Date(text)) = &node.value else {
            reader.wrong_kind(node, "a day", "write year, month and day like 2026-03-14");
            return None;
        };
        if is_day(text.trim()) {
            return Some(Self(text.trim().to_owned()));
        }
        reader.tell(
            &node.at,
            format!("`{text}` is not a day"),
            "not a day",
            "write year, month and day like 2026-03-14",
        );
        None
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "format": "date" })
    }
    fn kind() -> Kind {
        Kind::Day
    }
}

/// Whether a text is a day of the Gregorian calendar, as ISO 8601 writes it.
fn is_day(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let [year, month, day] = parts.as_slice() else { return false };
    let number = |part: &str, digits: usize| {
        let is_number = part.len() == digits && part.bytes().all(|byte| byte.is_ascii_digit());
        if is_number { part.parse::<u32>().ok() } else { None }
    };
    let (Some(year), Some(month), Some(day)) = (number(year, 4), number(month, 2), number(day, 2))
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
