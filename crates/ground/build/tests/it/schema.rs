//! The published schema: it is one, the demo build is of it, and it has the keys that are read.

use std::collections::BTreeSet;

use serde_json::{Map, Value};
use spile_build::{Folder, SchemaOf, schema};

use super::heron_texts;

const ALL: [(SchemaOf, &str); 3] =
    [(SchemaOf::Build, "build.toml"), (SchemaOf::Part, "parts/"), (SchemaOf::Job, "jobs/")];

/// A TOML text as JSON; dates are texts.
fn json(text: &str) -> Value {
    fn of(value: toml::Value) -> Value {
        match value {
            toml::Value::Datetime(date) => Value::String(date.to_string()),
            toml::Value::Array(items) => Value::Array(items.into_iter().map(of).collect()),
            toml::Value::Table(table) => {
                Value::Object(table.into_iter().map(|(key, item)| (key, of(item))).collect())
            }
            other => serde_json::to_value(other).unwrap(),
        }
    }
    of(toml::Value::Table(text.parse().unwrap()))
}

#[test]
fn the_demo_build_is_of_the_schema() {
    for (of, name) in ALL {
        let schema = schema(of);
        assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
        assert!(jsonschema::meta::is_valid(&schema), "{name}");
        let validator = jsonschema::validator_for(&schema).unwrap();
        let texts: Vec<_> =
            heron_texts().into_iter().filter(|(file, _)| file.starts_with(name)).collect();
        assert!(!texts.is_empty());
        for (file, text) in texts {
            let errors: Vec<String> =
                validator.iter_errors(&json(&text)).map(|error| error.to_string()).collect();
            assert!(errors.is_empty(), "{file}: {errors:?}");
        }
    }
}

#[test]
fn the_schema_refuses_what_is_not_read() {
    let validator = jsonschema::validator_for(&schema(SchemaOf::Build)).unwrap();
    for text in [
        "colour = \"white\"",
        "system = 12",
        "bank = { count = \"2\" }",
        "bank = { kind = \"NiCd\" }",
        "bank = { fuse = { ratings = \"60 A\" } }",
        "[bays.a]\ndepths = { unit = \"mm\", rows = [[1, 2, 3]] }",
        "[items]\nfridge = 3",
    ] {
        assert!(!validator.is_valid(&json(text)), "{text}");
        assert!(Folder::from_texts([("build.toml", text)]).is_err(), "{text}");
    }
}

/// Every key of the schema is one that is read: a text with all keys has no key that is not known.
#[test]
fn every_key_of_the_schema_is_read() {
    for (of, name) in ALL {
        let schema = schema(of);
        let mut seen = BTreeSet::new();
        let everything = example(&schema, &schema, &mut seen);
        let text = toml::to_string(&toml::Value::try_from(&everything).unwrap()).unwrap();
        let file = if name.ends_with('/') { format!("{name}a.toml") } else { name.to_owned() };
        let texts = [("build.toml", ""), (file.as_str(), text.as_str())];
        let texts = if file == "build.toml" { &texts[1..] } else { &texts[..] };
        let problems = Folder::from_texts(texts.iter().copied()).unwrap_err();
        let unread: Vec<&str> = problems
            .list
            .iter()
            .map(|problem| problem.says.as_str())
            .filter(|says| says.contains("has no key"))
            .collect();
        assert!(unread.is_empty(), "{unread:?}");
        assert!(seen.len() > 10, "{name} has few records: {seen:?}");
    }
}

/// Something of the shape of a schema, with every key that it names; nothing of it is plausible.
fn example(schema: &Value, root: &Value, seen: &mut BTreeSet<String>) -> Value {
    if let Some(name) = schema["$ref"].as_str() {
        let name = name.rsplit('/').next().unwrap();
        seen.insert(name.to_owned());
        return example(&root["$defs"][name], root, seen);
    }
    match schema["type"].as_str() {
        Some("object") => {
            let mut object = Map::new();
            if let Some(properties) = schema["properties"].as_object() {
                assert_eq!(schema["additionalProperties"], false);
                for (key, property) in properties {
                    assert!(
                        property["description"].as_str().is_some_and(|words| !words.is_empty()),
                        "{key}"
                    );
                    object.insert(key.clone(), example(property, root, seen));
                }
            } else {
                object.insert(
                    "name".to_owned(),
                    example(&schema["additionalProperties"], root, seen),
                );
            }
            Value::Object(object)
        }
        Some("array") => Value::Array(vec![example(&schema["items"], root, seen)]),
        Some("boolean") => Value::Bool(true),
        Some("integer" | "number") => Value::from(1),
        _ => Value::from("none"),
    }
}
