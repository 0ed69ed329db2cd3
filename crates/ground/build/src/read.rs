//! From the tree to records: each key read by the type of its field, every problem told at once.

use schemars::{Schema, SchemaGenerator, json_schema};

use crate::node::{Entry, Node, Table, Value};
use crate::problem::Problem;
use crate::source::At;

/// A value and where it stands in the build's files.
#[derive(Debug, Clone, PartialEq)]
pub struct Said<T> {
    /// The value.
    pub value: T,
    /// Where it stands.
    pub at: At,
}

/// Named things of one kind, in the order of the file.
#[derive(Debug, Clone, PartialEq)]
pub struct Keyed<T> {
    entries: Vec<(Said<String>, T)>,
}

impl<T> Default for Keyed<T> {
    fn default() -> Self {
        Self { entries: Vec::new() }
    }
}

impl<T> Keyed<T> {
    /// The names and what they name.
    pub fn iter(&self) -> impl Iterator<Item = (&Said<String>, &T)> {
        self.entries.iter().map(|(name, thing)| (name, thing))
    }

    /// The thing of that name.
    pub fn get(&self, name: &str) -> Option<&T> {
        self.entries.iter().find(|(known, _)| known.value == name).map(|(_, thing)| thing)
    }

    /// The names.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.entries.iter().map(|(name, _)| name.value.as_str())
    }

    pub(crate) fn push(&mut self, name: Said<String>, thing: T) {
        self.entries.push((name, thing));
    }
}

/// Collects the problems while records are read.
#[derive(Debug, Default)]
pub(crate) struct Reader {
    pub(crate) problems: Vec<Problem>,
}

impl Reader {
    pub(crate) fn tell(
        &mut self,
        at: &At,
        says: impl Into<String>,
        label: impl Into<String>,
        hint: impl Into<String>,
    ) {
        self.problems.push(Problem::new(at.clone(), says, label, hint));
    }

    /// Tells that a value is not of the kind wanted.
    pub(crate) fn wrong_kind(&mut self, node: &Node, wanted: &str, example: &str) {
        self.tell(
            &node.at,
            format!("{} stands where {wanted} is wanted", node.value.kind()),
            format!("this is {}", node.value.kind()),
            format!("write it like {example}"),
        );
    }

    /// Tells of every key of a table that no field has read, with the nearest known one.
    pub(crate) fn unknown_keys(&mut self, table: &Table, known: &[&str], what: &str) {
        for Entry { key, key_at, .. } in &table.entries {
            if !known.contains(&key.as_str()) {
                self.tell(
                    key_at,
                    format!("{what} has no key `{key}`"),
                    "not known here",
                    suggestion(key, known),
                );
            }
        }
    }
}

/// `did you mean ...?`, or all there is to choose from.
pub(crate) fn suggestion(wrong: &str, known: &[&str]) -> String {
    let nearest = known
        .iter()
        .map(|known| (strsim::damerau_levenshtein(wrong, known), *known))
        .min()
        .filter(|(distance, known)| *distance <= 2.max(known.chars().count() / 3));
    match nearest {
        Some((_, known)) => format!("did you mean `{known}`?"),
        None if known.is_empty() => "there is nothing to choose from".to_owned(),
        None => format!("known here: {}", known.join(", ")),
    }
}

/// A value that can be read from one node of the tree.
pub(crate) trait Read: Sized {
    /// Reads it, or tells what is wrong and gives nothing.
    fn read(node: &Node, reader: &mut Reader) -> Option<Self>;
    /// What may stand there, as JSON Schema.
    fn schema(generator: &mut SchemaGenerator) -> Schema;
}

/// A field of a record: what is made of a key that may be missing.
pub(crate) trait Field: Sized {
    fn take(node: Option<&Node>, reader: &mut Reader) -> Self;
    fn schema(generator: &mut SchemaGenerator) -> Schema;
}

impl<T: Read> Field for Option<Said<T>> {
    fn take(node: Option<&Node>, reader: &mut Reader) -> Self {
        let node = node?;
        T::read(node, reader).map(|value| Said { value, at: node.at.clone() })
    }
    fn schema(generator: &mut SchemaGenerator) -> Schema {
        T::schema(generator)
    }
}

impl<T: Read> Field for Vec<Said<T>> {
    fn schema(generator: &mut SchemaGenerator) -> Schema {
        let items = T::schema(generator);
        json_schema!({ "type": "array", "items": items })
    }
    fn take(node: Option<&Node>, reader: &mut Reader) -> Self {
        let Some(node) = node else { return Self::new() };
        let Value::List(items) = &node.value else {
            reader.wrong_kind(node, "a list", "[\"first\", \"second\"]");
            return Self::new();
        };
        items
            .iter()
            .filter_map(|item| {
                T::read(item, reader).map(|value| Said { value, at: item.at.clone() })
            })
            .collect()
    }
}

impl<T: Read> Field for Keyed<T> {
    fn schema(generator: &mut SchemaGenerator) -> Schema {
        let things = T::schema(generator);
        json_schema!({ "type": "object", "additionalProperties": things })
    }
    fn take(node: Option<&Node>, reader: &mut Reader) -> Self {
        let mut keyed = Self::default();
        let Some(node) = node else { return keyed };
        let Some(table) = node.table() else {
            reader.wrong_kind(node, "a table of named things", "a heading such as [items.fridge]");
            return keyed;
        };
        for Entry { key, key_at, node } in &table.entries {
            if let Some(thing) = T::read(node, reader) {
                keyed.push(Said { value: key.clone(), at: key_at.clone() }, thing);
            }
        }
        keyed
    }
}

impl Read for String {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        match &node.value {
            Value::Text(text) | Value::Date(text) => Some(text.clone()),
            _ => {
                reader.wrong_kind(node, "a text", "\"a text in quotes\"");
                None
            }
        }
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string" })
    }
}

impl Read for bool {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        if let Value::Flag(flag) = node.value {
            Some(flag)
        } else {
            reader.wrong_kind(node, "true or false", "true, without quotes");
            None
        }
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "boolean" })
    }
}

impl Read for u32 {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        match node.value {
            Value::Whole(number) if (0..=1_000_000).contains(&number) => u32::try_from(number).ok(),
            _ => {
                reader.wrong_kind(node, "a count", "2, a whole number from nought without quotes");
                None
            }
        }
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "integer", "minimum": 0 })
    }
}

/// Points of a shape, or measures at several heights: one unit and plain rows of two numbers.
#[derive(Debug, Clone, PartialEq)]
pub struct Rows(pub Vec<Said<[f64; 2]>>);

impl Read for Rows {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        let Value::List(rows) = &node.value else {
            reader.wrong_kind(node, "rows of two numbers", "[[0, 566], [700, 552]]");
            return None;
        };
        let mut read = Vec::with_capacity(rows.len());
        let mut all = true;
        for row in rows {
            let numbers: Option<Vec<f64>> = match &row.value {
                Value::List(items) if items.len() == 2 => items.iter().map(plain_number).collect(),
                _ => None,
            };
            match numbers.as_deref() {
                Some(&[a, b]) => read.push(Said { value: [a, b], at: row.at.clone() }),
                _ => {
                    all = false;
                    reader.tell(
                        &row.at,
                        "a row has two plain numbers",
                        "not two numbers",
                        "write a row like [700, 552]; the unit stands once, beside the rows",
                    );
                }
            }
        }
        all.then_some(Self(read))
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "array",
            "items": { "type": "array", "items": { "type": "number" }, "minItems": 2, "maxItems": 2 }
        })
    }
}

fn plain_number(node: &Node) -> Option<f64> {
    match node.value {
        #[expect(clippy::cast_precision_loss, reason = "beyond 2^53 it is rejected as implausible")]
        Value::Whole(number) => Some(number as f64),
        Value::Number(number) if number.is_finite() => Some(number),
        _ => None,
    }
}

/// Writes a record of the files once: the struct, its reader and its schema.
///
/// Each field is an optional value, a list or a table of named things; every key may be missing.
macro_rules! record {
    ($(#[doc = $about:literal])* pub struct $name:ident ($what:literal) {
        $( $(#[doc = $doc:literal])* $field:ident : $type:ty, )*
    }) => {
        $(#[doc = $about])*
        #[derive(Debug, Clone, PartialEq, Default)]
        pub struct $name {
            $( $(#[doc = $doc])* pub $field: $type, )*
        }

        impl $name {
            const KEYS: &'static [&'static str] = &[$( $crate::read::key(stringify!($field)), )*];
        }

        impl $crate::read::Read for $name {
            fn read(node: &$crate::node::Node, reader: &mut $crate::read::Reader) -> Option<Self> {
                let Some(table) = node.table() else {
                    reader.wrong_kind(node, concat!("a table for ", $what), "{ key = \"value\" }, or a heading of its own");
                    return None;
                };
                reader.unknown_keys(table, Self::KEYS, $what);
                Some(Self {
                    $( $field: $crate::read::Field::take(
                        table.get($crate::read::key(stringify!($field))), reader), )*
                })
            }
            fn schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
                generator.subschema_for::<Self>()
            }
        }

        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }
            fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
                let mut properties = serde_json::Map::new();
                $(
                    properties.insert(
                        $crate::read::key(stringify!($field)).to_owned(),
                        $crate::read::described(
                            <$type as $crate::read::Field>::schema(generator),
                            concat!($($doc, "\n"),*),
                        ),
                    );
                )*
                schemars::json_schema!({
                    "type": "object",
                    "description": concat!($($about, "\n"),*).trim(),
                    "properties": properties,
                    "additionalProperties": false,
                })
            }
        }
    };
}

/// Writes a choice of words once: the enum, its reader and its schema.
macro_rules! words {
    ($(#[doc = $about:literal])* pub enum $name:ident ($what:literal) {
        $( $(#[doc = $doc:literal])* $variant:ident = $word:literal $(| $also:literal)*, )*
    }) => {
        $(#[doc = $about])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        pub enum $name {
            $( $(#[doc = $doc])* $variant, )*
        }

        impl $name {
            /// Every word there is to choose from.
            pub const WORDS: &'static [&'static str] = &[$( $word, )*];

            /// The word for it in the files.
            pub const fn word(self) -> &'static str {
                match self { $( Self::$variant => $word, )* }
            }
        }

        impl $crate::read::Read for $name {
            fn read(node: &$crate::node::Node, reader: &mut $crate::read::Reader) -> Option<Self> {
                let $crate::node::Value::Text(text) = &node.value else {
                    reader.wrong_kind(node, $what, &format!("\"{}\"", Self::WORDS[0]));
                    return None;
                };
                match text.trim().to_lowercase().as_str() {
                    $( $word $(| $also)* => Some(Self::$variant), )*
                    other => {
                        reader.tell(
                            &node.at,
                            format!("`{text}` is not {}", $what),
                            "not known",
                            $crate::read::suggestion(other, Self::WORDS),
                        );
                        None
                    }
                }
            }
            fn schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({ "type": "string", "enum": Self::WORDS })
            }
        }
    };
}

pub(crate) use {record, words};

/// A field's key in the files: its name without the mark of a raw identifier.
pub(crate) const fn key(field: &'static str) -> &'static str {
    match field.as_bytes() {
        [b'r', b'#', rest @ ..] => match std::str::from_utf8(rest) {
            Ok(key) => key,
            Err(_) => field,
        },
        _ => field,
    }
}

/// A field's schema with the field's own words.
pub(crate) fn described(schema: Schema, doc: &str) -> serde_json::Value {
    let mut value = schema.to_value();
    if let Some(object) = value.as_object_mut() {
        object.insert("description".to_owned(), doc.trim().into());
    }
    value
}
