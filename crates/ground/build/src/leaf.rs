//! The values of single keys: quantities, cable sizes and capacities, read from their texts.

use schemars::{Schema, SchemaGenerator, json_schema};
use spile_quantity::{
    CableSize, Capacity, Misread, MisreadKind, Readable, Written, read, read_cable, read_capacity,
};

use crate::kind::Kind;
use crate::node::{Node, Value};
use crate::read::{Read, Reader};
use crate::source::At;

impl<T: Readable> Read for Written<T> {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        text(node, || with_article(T::NAME), T::EXAMPLE, reader, read::<T>)
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "examples": [T::EXAMPLE] })
    }
    fn kind() -> Kind {
        Kind::Quantity { name: T::NAME, example: T::EXAMPLE }
    }
    fn several() -> String {
        format!("write it like [\"{0}\", \"{0}\"]", T::EXAMPLE)
    }
}

impl Read for CableSize {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        text(node, || "a cable's size".to_owned(), "1.5 mm2", reader, read_cable)
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "examples": ["1.5 mm2", "16 AWG", "16 SAE", "6 mm outside"] })
    }
    fn kind() -> Kind {
        Kind::Quantity { name: "cable's size", example: "1.5 mm2" }
    }
}

impl Read for Capacity {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        text(node, || "a battery's capacity".to_owned(), "95 Ah @ 20 h", reader, read_capacity)
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "examples": ["95 Ah @ 20 h", "100 Ah"] })
    }
    fn kind() -> Kind {
        Kind::Quantity { name: "battery's capacity", example: "95 Ah @ 20 h" }
    }
}

/// Reads a text by `read`, and tells of what could not be read where it stands in the file.
fn text<T>(
    node: &Node,
    what: impl Fn() -> String,
    example: &str,
    reader: &mut Reader,
    read: impl Fn(&str) -> Result<T, Misread>,
) -> Option<T> {
    let text = match &node.value {
        Value::Text(text) => text,
        Value::Whole(_) | Value::Number(_) => {
            reader.tell(
                &node.at,
                format!("a plain number stands where {} is wanted", what()),
                "no unit",
                format!("write it with its unit, in quotes, like \"{example}\""),
            );
            return None;
        }
        _ => {
            reader.wrong_kind(node, &what(), &format!("write it like \"{example}\""));
            return None;
        }
    };
    match read(text) {
        Ok(value) => Some(value),
        Err(misread) => {
            let label = format!("expected {}", misread.expected);
            let says = says(&misread, text, &what());
            reader.tell(&within(node, text, &misread), says, label, misread.hint);
            None
        }
    }
}

/// What is wrong with a text, in a sentence.
fn says(misread: &Misread, text: &str, what: &str) -> String {
    let Misread { found, expected, .. } = misread;
    match misread.kind {
        MisreadKind::Empty => format!("{what} is wanted here, and nothing is written"),
        MisreadKind::NoNumber => format!("`{}` is not {what}: it has no number", text.trim()),
        MisreadKind::BadNumber => format!("`{found}` is not a number"),
        MisreadKind::AmbiguousNumber => format!("`{found}` can be read as two numbers"),
        MisreadKind::OutOfRange => format!("`{found}` has more digits than can be kept"),
        MisreadKind::NoUnit => format!("`{found}` has no unit"),
        MisreadKind::UnknownUnit | MisreadKind::Impossible => {
            format!("`{found}` is not {expected}")
        }
        MisreadKind::AmbiguousUnit => format!("`{found}` can mean more than one unit"),
        MisreadKind::WrongQuantity { found: kind } => {
            let wanted = expected.split(" such as ").next().unwrap_or(what);
            format!("{wanted} is wanted here, and this is {}", with_article(kind))
        }
        MisreadKind::BadTolerance => format!("`{found}` cannot be read: {expected} is wanted"),
        MisreadKind::Trailing => format!("`{found}` does not belong here"),
        MisreadKind::AmbiguousCable => format!("`{found}` leaves the measure open"),
        MisreadKind::NoSuchGauge => format!("there is no gauge `{found}`"),
    }
}

/// The stretch of the file that a misread part of a text stands in.
///
/// A text between single quotation marks of either sort, without escapes, stands in the file as it
/// is, one byte after the opening mark; any other is underlined whole.
fn within(node: &Node, text: &str, misread: &Misread) -> At {
    let span = &node.at.span;
    if span.end - span.start == text.len() + 2 {
        let start = span.start + 1 + misread.span.start;
        let end = span.start + 1 + misread.span.end.max(misread.span.start + 1);
        At { file: node.at.file, span: start..end.min(span.end) }
    } else {
        node.at.clone()
    }
}

fn with_article(name: &str) -> String {
    let vowel = name.starts_with(['a', 'e', 'i', 'o', 'u']);
    format!("{} {name}", if vowel { "an" } else { "a" })
}
