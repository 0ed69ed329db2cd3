//! From the tree to records: each key read by the type of its field, every problem told at once.

use schemars::{Schema, SchemaGenerator, json_schema};

use crate::kind::Kind;
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
    /// The names of things that could not be read.
    unread: Vec<String>,
    /// Whether something else stands where the table of things is wanted.
    misread: bool,
}

impl<T> Default for Keyed<T> {
    fn default() -> Self {
        Self { entries: Vec::new(), unread: Vec::new(), misread: false }
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

    /// Whether there may be a thing of that name: one that could not be read has been told of, and
    /// what names it is not to be told of as well.
    pub(crate) fn knows(&self, name: &str) -> bool {
        self.misread
            || self.names().any(|known| known == name)
            || self.unread.iter().any(|unread| unread == name)
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

    /// Tells that a value is not of the kind wanted, and how to write one that is.
    pub(crate) fn wrong_kind(&mut self, node: &Node, wanted: &str, hint: &str) {
        self.tell(
            &node.at,
            format!("{} stands where {wanted} is wanted", node.value.kind()),
            format!("this is {}", node.value.kind()),
            hint,
        );
    }

    /// Tells that a record lacks keys without which the rest of it says nothing.
    pub(crate) fn lacking(&mut self, at: &At, what: &str, keys: &[&str], hint: &str) {
        if !keys.is_empty() {
            let names: Vec<String> = keys.iter().map(|key| format!("`{key}`")).collect();
            let (names, are) = (names.join(" and "), if keys.len() > 1 { "are" } else { "is" });
            self.tell(at, format!("{what} lacks {names}"), format!("{names} {are} missing"), hint);
        }
    }

    /// The known keys that are written in a table. Those that are not known are told of, each with
    /// the nearest known one; that one counts as written, for it is not missing but misspelt.
    pub(crate) fn keys(
        &mut self,
        table: &Table,
        known: &[&'static str],
        what: &str,
    ) -> Vec<&'static str> {
        let mut written = Vec::with_capacity(table.entries.len());
        for Entry { key, key_at, .. } in &table.entries {
            if let Some(known) = known.iter().find(|known| *known == key) {
                written.push(*known);
            } else {
                written.extend(nearest(key, known));
                self.tell(
                    key_at,
                    format!("{what} has no key `{key}`"),
                    "not known here",
                    suggestion(key, known),
                );
            }
        }
        written
    }
}

/// `did you mean ...?`, or all there is to choose from.
pub(crate) fn suggestion(wrong: &str, known: &[&str]) -> String {
    match nearest(wrong, known) {
        Some(known) => format!("did you mean `{known}`?"),
        None if known.is_empty() => "there are none yet".to_owned(),
        None => format!("known here: {}", known.join(", ")),
    }
}

/// The known word that differs from a wrong one by a slip or two.
pub(crate) fn nearest<'k>(wrong: &str, known: &[&'k str]) -> Option<&'k str> {
    let wrong = wrong.trim().to_lowercase();
    let length = wrong.chars().count();
    let slips = match length {
        0..=3 => 1,
        4..=8 => 2,
        _ => length / 3,
    };
    let words = known.iter().filter(|known| known.chars().count().abs_diff(length) <= slips);
    words
        .map(|known| (strsim::damerau_levenshtein(&wrong, &known.to_lowercase()), *known))
        .min()
        .filter(|(distance, _)| *distance <= slips)
        .map(|(_, known)| known)
}

/// A value that can be read from one node of the tree.
pub(crate) trait Read: Sized {
    /// Reads it, or tells what is wrong and gives nothing.
    fn read(node: &Node, reader: &mut Reader) -> Option<Self>;
    /// What may stand there, as JSON Schema.
    fn schema(generator: &mut SchemaGenerator) -> Schema;
    /// What may stand there, for a form.
    fn kind() -> Kind;
    /// How to write several of them.
    fn several() -> String {
        "write it like [\"first\", \"second\"]".to_owned()
    }
}

/// A table with keys of its own, each of which may be missing.
pub(crate) trait Record: Sized {
    /// Every key that it has.
    const KEYS: &'static [&'static str];
    /// Reads it from a table.
    fn of(table: &Table, reader: &mut Reader) -> Self;
    /// The keys that are written, whether or not their values could be read.
    fn written(&self) -> &[&'static str];
    /// Those of `keys` that are not written. What is written and could not be read is not among
    /// them: it has been told of.
    fn lacks<'k>(&self, keys: &[&'k str]) -> Vec<&'k str> {
        keys.iter().copied().filter(|key| !self.written().contains(key)).collect()
    }
}

/// A field of a record: what is made of a key that may be missing.
pub(crate) trait Field: Sized {
    fn take(node: Option<&Node>, reader: &mut Reader) -> Self;
    fn schema(generator: &mut SchemaGenerator) -> Schema;
    fn kind() -> Kind;
}

impl<T: Read> Field for Option<Said<T>> {
    fn take(node: Option<&Node>, reader: &mut Reader) -> Self {
        let node = node?;
        T::read(node, reader).map(|value| Said { value, at: node.at.clone() })
    }
    fn schema(generator: &mut SchemaGenerator) -> Schema {
        T::schema(generator)
    }
    fn kind() -> Kind {
        T::kind()
    }
}

impl<T: Read> Field for Vec<Said<T>> {
    fn schema(generator: &mut SchemaGenerator) -> Schema {
        let items = T::schema(generator);
        json_schema!({ "type": "array", "items": items })
    }
    fn kind() -> Kind {
        Kind::List(Box::new(T::kind()))
    }
    fn take(node: Option<&Node>, reader: &mut Reader) -> Self {
        let Some(node) = node else { return Self::new() };
        let Value::List(items) = &node.value else {
            reader.wrong_kind(node, "a list", &T::several());
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
    fn kind() -> Kind {
        Kind::Keyed(Box::new(T::kind()))
    }
    fn take(node: Option<&Node>, reader: &mut Reader) -> Self {
        let mut keyed = Self::default();
        let Some(node) = node else { return keyed };
        let Some(table) = node.table() else {
            let hint = "write headings, each with a name of its own, such as [items.fridge]";
            reader.wrong_kind(node, "a table of named things", hint);
            keyed.misread = true;
            return keyed;
        };
        for Entry { key, key_at, node } in &table.entries {
            match T::read(node, reader) {
                Some(thing) => {
                    keyed.entries.push((Said { value: key.clone(), at: key_at.clone() }, thing));
                }
                None => keyed.unread.push(key.clone()),
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
                reader.wrong_kind(node, "a text", "write a text in quotes");
                None
            }
        }
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string" })
    }
    fn kind() -> Kind {
        Kind::Text
    }
}

impl Read for bool {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        if let Value::Flag(flag) = node.value {
            Some(flag)
        } else {
            reader.wrong_kind(node, "true or false", "write true or false, without quotes");
            None
        }
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "boolean" })
    }
    fn kind() -> Kind {
        Kind::Flag
    }
}

impl Read for u32 {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        match node.value {
            Value::Whole(number) if (0..=1_000_000).contains(&number) => u32::try_from(number).ok(),
            Value::Whole(number) => {
                reader.tell(
                    &node.at,
                    format!("{number} cannot be a count"),
                    "not a count",
                    "a count is a whole number from 0 to 1000000",
                );
                None
            }
            _ => {
                reader.wrong_kind(node, "a count", "write a whole number without quotes, like 2");
                None
            }
        }
    }
    fn schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "integer", "minimum": 0 })
    }
    fn kind() -> Kind {
        Kind::Count
    }
}

/// Points of a shape, or measures at several heights: one unit and plain rows of two numbers.
#[derive(Debug, Clone, PartialEq)]
pub struct Rows(pub Vec<Said<[f64; 2]>>);

impl Read for Rows {
    fn read(node: &Node, reader: &mut Reader) -> Option<Self> {
        let Value::List(rows) = &node.value else {
            reader.wrong_kind(node, "rows of two numbers", "write it like [[0, 566], [700, 552]]");
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
                        "this is not a row of two plain numbers",
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
    fn kind() -> Kind {
        Kind::Rows
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
            /// The keys that are written, whether or not their values could be read.
            written: Vec<&'static str>,
        }

        impl $name {
            /// Its fields, for a form.
            pub(crate) fn fields() -> Vec<$crate::kind::FieldOf> {
                vec![$( $crate::kind::FieldOf::of(
                    $what,
                    $crate::read::key(stringify!($field)),
                    concat!($($doc, "\n"),*),
                    <$type as $crate::read::Field>::kind(),
                ), )*]
            }
        }

        impl $crate::read::Record for $name {
            const KEYS: &'static [&'static str] = &[$( $crate::read::key(stringify!($field)), )*];

            fn of(table: &$crate::node::Table, reader: &mut $crate::read::Reader) -> Self {
                let written = reader.keys(table, Self::KEYS, $what);
                Self {
                    $( $field: $crate::read::Field::take(
                        table.get($crate::read::key(stringify!($field))), reader), )*
                    written,
                }
            }

            fn written(&self) -> &[&'static str] {
                &self.written
            }
        }

        impl $crate::read::Read for $name {
            fn read(node: &$crate::node::Node, reader: &mut $crate::read::Reader) -> Option<Self> {
                let Some(table) = node.table() else {
                    let hint = "write it like { key = \"value\" }, or give it a heading of its own";
                    reader.wrong_kind(node, concat!("a table for ", $what), hint);
                    return None;
                };
                Some($crate::read::Record::of(table, reader))
            }
            fn several() -> String {
                "give each a heading of its own in double brackets".to_owned()
            }
            fn schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
                generator.subschema_for::<Self>()
            }
            fn kind() -> $crate::kind::Kind {
                $crate::kind::Kind::Record { what: $what, fields: Self::fields }
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

            /// Every word, and the others that are understood.
            const UNDERSTOOD: &'static [&'static str] = &[$( $word, $($also,)* )*];

            /// The word for it in the files.
            pub const fn word(self) -> &'static str {
                match self { $( Self::$variant => $word, )* }
            }
        }

        impl $crate::read::Read for $name {
            fn read(node: &$crate::node::Node, reader: &mut $crate::read::Reader) -> Option<Self> {
                let $crate::node::Value::Text(text) = &node.value else {
                    let hint = format!("write it like \"{}\"", Self::WORDS[0]);
                    reader.wrong_kind(node, $what, &hint);
                    return None;
                };
                $(
                    let words: &[&str] = &[$word, $($also,)*];
                    if words.iter().any(|word| word.eq_ignore_ascii_case(text.trim())) {
                        return Some(Self::$variant);
                    }
                )*
                reader.tell(
                    &node.at,
                    format!("`{text}` is not {}", $what),
                    "not known",
                    $crate::read::nearest(text, Self::UNDERSTOOD).map_or_else(
                        || $crate::read::suggestion(text, Self::WORDS),
                        |word| format!("did you mean `{word}`?"),
                    ),
                );
                None
            }
            fn schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({ "type": "string", "enum": Self::UNDERSTOOD })
            }
            fn kind() -> $crate::kind::Kind {
                $crate::kind::Kind::Words(Self::WORDS)
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
