//! The values of single keys: quantities, cable sizes and capacities, read from their texts.

use schemars::{Schema, SchemaGenerator, json_schema};
use spile_quantity::{
    CableSize, Capacity, Misread, Readable, Written, read, read_cable, read_capacity,
};

use crate::node::{Node, Value};
use crate::read::{Read, Reader};
use crate::source::At;

impl<T: Readable> Read for Written<T> {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        let what = || format!("{} with its unit", with_article(T::NAME));
        text(node, what, T::EXAMPLE, reader, read::<T>)
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "examples": [T::EXAMPLE] })
    }
}

impl Read for CableSize {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        text(node, || "a cable's size".to_owned(), "1.5 mm2", reader, read_cable)
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "examples": ["1.5 mm2", "16 AWG", "16 SAE", "6 mm outside"] })
    }
}

impl Read for Capacity {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        text(node, || "a battery's capacity".to_owned(), "95 Ah @ 20 h", reader, read_capacity)
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "examples": ["95 Ah @ 20 h", "100 Ah"] })
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
            reader.wrong_kind(node, &what(), &format!("\"{example}\""));
            return None;
        }
    };
    match read(text) {
        Ok(value) => Some(value),
        Err(misread) => {
            let says = if misread.found.is_empty() {
                format!("`{}` is not {}", text.trim(), what())
            } else {
                format!("`{}` is not {}: `{}` cannot be read", text.trim(), what(), misread.found)
            };
            let label = format!("expected {}", misread.expected);
            reader.tell(&within(node, text, &misread), says, label, misread.hint);
            None
        }
    }
}

/// The stretch of the file that a misread part of a text stands in.
///
/// A text written plainly in single quotes of either sort has its bytes one after the opening
/// quote; one with escapes is underlined whole.
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
