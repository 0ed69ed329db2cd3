//! Whatever is changed: the file then means just that, and no other byte is another.

use proptest::prelude::*;
use proptest::sample::Index;
use spile_build::edit::{Change, Texts, Value, apply};

use super::heron_texts;

/// A file of every style that TOML knows, as people mix them.
const MIXED: &str = r#"# about this file

about = "a van" # not ours
after = [ "a", # the first
  'b', ]

[add.items.fridge] # here
  part = 'upright' # by name
  place = { in = "galley", from_rear = "20 mm", } # by tape
  held.by = "bolt"
  held.count = 4

# taken out
[[remove]]
what = "items.box"
found = { part = "lidded", place.on = "floor", place.above = "1 mm" }

[[change]] # first
what = "runs.fridge.section"
to = "4 mm2"

[[change]]
what = "bays.galley.air"
[change.to]
inlet = { area = "160 cm2" }
[change.to.outlet]
area = "1 cm2"

# unrelated
[options]
["options"."two boxes"]
about = """
two
boxes"""

[add.runs]
fridge = { section = "4 mm2" } # short
light = { section = "1 mm2" }
"#;

/// Files to change: the demo's and the mixed one.
fn files() -> Vec<(String, String)> {
    let mut files = heron_texts();
    files.push(("jobs/mixed.toml".to_owned(), MIXED.to_owned()));
    files
}

fn meaning(text: &str) -> toml::Value {
    match text.trim_start_matches('\u{feff}').parse() {
        Ok(table) => toml::Value::Table(table),
        Err(error) => panic!("{error}\n{text}"),
    }
}

/// Every path of a value, tables and elements of lists included.
fn paths(value: &toml::Value, path: &[String], all: &mut Vec<Vec<String>>) {
    let entries: Vec<(String, &toml::Value)> = match value {
        toml::Value::Table(table) => table.iter().map(|(key, item)| (key.clone(), item)).collect(),
        toml::Value::Array(items) => {
            items.iter().enumerate().map(|(number, item)| (number.to_string(), item)).collect()
        }
        _ => return,
    };
    for (key, item) in entries {
        let path: Vec<String> = path.iter().cloned().chain([key]).collect();
        all.push(path.clone());
        paths(item, &path, all);
    }
}

fn at<'v>(value: &'v mut toml::Value, path: &[String]) -> Option<&'v mut toml::Value> {
    path.iter().try_fold(value, |value, key| match value {
        toml::Value::Table(table) => table.get_mut(key),
        toml::Value::Array(items) => items.get_mut(key.parse::<usize>().ok()?),
        _ => None,
    })
}

/// Takes out what stands at a path; tables that were there only for it go with it in the file, so
/// empty ones do not count.
fn take(value: &mut toml::Value, path: &[String]) {
    let (last, above) = path.split_last().unwrap();
    match at(value, above).unwrap() {
        toml::Value::Table(table) => drop(table.remove(last)),
        toml::Value::Array(items) => drop(items.remove(last.parse().unwrap())),
        _ => panic!("{path:?}"),
    }
}

/// A value without tables and lists of tables that have nothing in them.
fn without_empty(value: toml::Value) -> toml::Value {
    let is_empty = |value: &toml::Value| match value {
        toml::Value::Table(table) => table.is_empty(),
        toml::Value::Array(items) => items.is_empty(),
        _ => false,
    };
    match value {
        toml::Value::Table(table) => toml::Value::Table(
            table
                .into_iter()
                .map(|(key, item)| (key, without_empty(item)))
                .filter(|(_, item)| !is_empty(item))
                .collect(),
        ),
        toml::Value::Array(items) => {
            toml::Value::Array(items.into_iter().map(without_empty).collect())
        }
        other => other,
    }
}

fn after(file: &str, text: &str, change: Change) -> String {
    let texts: Texts = [(file.to_owned(), text.to_owned())].into();
    match apply(&texts, &[change]) {
        Ok(texts) => texts[file].clone(),
        Err(problems) => panic!("{problems}\n{text}"),
    }
}

/// The same text as other editors save it.
fn variants(text: &str) -> [String; 2] {
    [text.replace('\n', "\r\n"), format!("\u{feff}{text}")]
}

/// Every comment of a text, with the lines that it stands in.
fn comments(text: &str) -> Vec<&str> {
    text.lines().filter_map(|line| line.find('#').map(|start| line[start..].trim_end())).collect()
}

/// How many lines of a text are another one's between the first and the last that differ.
fn lines_changed(before: &str, after: &str) -> usize {
    let [before, after] = [before, after].map(|text| text.lines().collect::<Vec<_>>());
    let same = before.iter().zip(&after).take_while(|(a, b)| a == b).count();
    let rest = before[same..].iter().rev().zip(after[same.min(after.len())..].iter().rev());
    before.len() - same - rest.take_while(|(a, b)| a == b).count()
}

/// Makes a change in a file and in its variants, which are then variants of what is made of it.
fn checked(file: &str, text: &str, change: &Change) -> Result<String, TestCaseError> {
    let new = after(file, text, change.clone());
    for (variant, expected) in variants(text).iter().zip(variants(&new)) {
        prop_assert_eq!(&after(file, variant, change.clone()), &expected);
    }
    let open = text.strip_suffix('\n').unwrap_or(text);
    prop_assert_eq!(meaning(&after(file, open, change.clone())), meaning(&new));
    Ok(new)
}

fn value() -> impl Strategy<Value = Value> {
    prop_oneof![
        "[ -~äΩ±\n\"\\\\]{0,12}".prop_map(Value::Text),
        any::<i32>().prop_map(|number| Value::Whole(number.into())),
        any::<bool>().prop_map(Value::Flag),
        (0_i32..9999).prop_map(|number| Value::Number(f64::from(number) / 8.0)),
        Just(Value::Written("[[0, 1], [2, 3.50]]".to_owned())),
        Just(Value::Written("no value # at all".to_owned())),
        Just(Value::table([("unit", "mm"), ("a b", "1.0")])),
    ]
}

/// A value as the file means it.
fn meant(value: &Value) -> toml::Value {
    match value {
        Value::Text(text) => toml::Value::String(text.clone()),
        Value::Whole(number) => toml::Value::Integer(*number),
        Value::Number(number) => toml::Value::Float(*number),
        Value::Flag(flag) => toml::Value::Boolean(*flag),
        Value::Written(text) => format!("value = {text}")
            .parse::<toml::Table>()
            .ok()
            .filter(|_| !text.contains('#'))
            .map_or_else(|| toml::Value::String(text.clone()), |table| table["value"].clone()),
        Value::List(items) => toml::Value::Array(items.iter().map(meant).collect()),
        Value::Table(entries) => toml::Value::Table(
            entries.iter().map(|(key, value)| (key.clone(), meant(value))).collect(),
        ),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn a_value_set_is_all_that_changes(file in any::<Index>(), path in any::<Index>(), value in value()) {
        let files = files();
        let (file, text) = &files[file.index(files.len())];
        let mut expected = meaning(text);
        let mut all = Vec::new();
        paths(&expected, &[], &mut all);
        let path = &all[path.index(all.len())];
        let old = at(&mut expected, path).unwrap();
        let was_plain = !matches!(old, toml::Value::Table(_) | toml::Value::Array(_));
        let several_lines = matches!(old, toml::Value::String(text) if text.contains('\n'));
        *old = meant(&value);
        let is_table = matches!(value, Value::Table(_));
        let change = Change::Set { file: file.clone(), path: path.clone(), value };
        let texts: Texts = [(file.clone(), text.clone())].into();
        if let Err(problems) = apply(&texts, std::slice::from_ref(&change)) {
            prop_assert!(!is_table && problems.list[0].says.ends_with("is in a list of tables"));
            return Ok(());
        }
        let new = checked(file, text, &change)?;
        prop_assert_eq!(without_empty(meaning(&new)), without_empty(expected), "{:?}\n{}", path, new);
        if was_plain && !several_lines {
            prop_assert!(lines_changed(text, &new) <= 1, "{}", new);
            let kept = comments(&new);
            for comment in comments(text) {
                prop_assert!(kept.iter().any(|kept| kept.contains(comment)), "{comment}\n{new}");
            }
        }
    }

    #[test]
    fn a_key_brought_is_all_that_changes(file in any::<Index>(), path in any::<Index>(), value in value(), deep in any::<bool>()) {
        let files = files();
        let (file, text) = &files[file.index(files.len())];
        let mut expected = meaning(text);
        let mut all = vec![Vec::new()];
        paths(&expected, &[], &mut all);
        all.retain(|path| matches!(at(&mut expected, path), Some(toml::Value::Table(_))));
        let mut path = all[path.index(all.len())].clone();
        let Some(toml::Value::Table(table)) = at(&mut expected, &path) else { panic!("no table") };
        let mut inner = meant(&value);
        path.push("new key".to_owned());
        if deep {
            path.push("deeper".to_owned());
            inner = toml::Value::Table([("deeper".to_owned(), inner)].into_iter().collect());
        }
        table.insert("new key".to_owned(), inner);
        let change = Change::Set { file: file.clone(), path: path.clone(), value };
        let new = checked(file, text, &change)?;
        prop_assert_eq!(without_empty(meaning(&new)), without_empty(expected), "{:?}\n{}", path, new);
        prop_assert!(lines_changed(text, &new) <= 1, "{}", new);
        for comment in comments(text) {
            prop_assert!(new.contains(comment), "{}\n{}", comment, new);
        }
        // Taken out again, it is as if it never had been.
        path.truncate(path.len() - usize::from(deep));
        let back = after(file, &new, Change::Remove { file: file.clone(), path });
        prop_assert_eq!(without_empty(meaning(&back)), without_empty(meaning(text)));
        prop_assert_eq!(lines_changed(text, &back), 0, "{}", back);
    }

    #[test]
    fn what_is_taken_out_is_all_that_goes(file in any::<Index>(), path in any::<Index>()) {
        let files = files();
        let (file, text) = &files[file.index(files.len())];
        let mut expected = meaning(text);
        let mut all = Vec::new();
        paths(&expected, &[], &mut all);
        let path = &all[path.index(all.len())];
        take(&mut expected, path);
        let change = Change::Remove { file: file.clone(), path: path.clone() };
        let new = checked(file, text, &change)?;
        prop_assert_eq!(without_empty(meaning(&new)), without_empty(expected), "{:?}\n{}", path, new);
        // Nothing is put in: what is left are pieces of what was.
        let mut rest = text.chars();
        prop_assert!(new.chars().all(|c| rest.any(|other| other == c)), "{}", new);
    }

    #[test]
    fn a_name_given_is_all_that_changes(file in any::<Index>(), path in any::<Index>(), name in "[a-z.\" ]{1,8}") {
        let files = files();
        let (file, text) = &files[file.index(files.len())];
        let mut expected = meaning(text);
        let mut all = Vec::new();
        paths(&expected, &[], &mut all);
        all.retain(|path| path.last().unwrap().parse::<usize>().is_err() || path.contains(&"ways".to_owned()));
        let path = &all[path.index(all.len())];
        let (old, above) = path.split_last().unwrap();
        let Some(toml::Value::Table(table)) = at(&mut expected, above) else { panic!("{path:?}") };
        prop_assume!(!table.contains_key(&name));
        let value = table.remove(old).unwrap();
        table.insert(name.clone(), value);
        let change = Change::Rename { file: file.clone(), path: path.clone(), to: name.clone() };
        let new = checked(file, text, &change)?;
        prop_assert_eq!(meaning(&new), expected, "{:?}\n{}", path, &new);
        let mut back = path.clone();
        *back.last_mut().unwrap() = name;
        let back = after(file, &new, Change::Rename { file: file.clone(), path: back, to: old.clone() });
        prop_assert_eq!(meaning(&back), meaning(text));
    }

    #[test]
    fn an_element_put_in_is_all_that_changes(number in 0_usize..4, file in any::<Index>(), path in any::<Index>()) {
        let files = files();
        let (file, text) = &files[file.index(files.len())];
        let mut expected = meaning(text);
        let mut all = Vec::new();
        paths(&expected, &[], &mut all);
        all.retain(|path| matches!(at(&mut expected, path), Some(toml::Value::Array(_))));
        prop_assume!(!all.is_empty());
        let path = &all[path.index(all.len())];
        let Some(toml::Value::Array(items)) = at(&mut expected, path) else { panic!("{path:?}") };
        let value = Value::table([("what", "x")]);
        items.insert(number.min(items.len()), meant(&value));
        let change = Change::Insert { file: file.clone(), path: path.clone(), number, value };
        let new = checked(file, text, &change)?;
        prop_assert_eq!(meaning(&new), expected, "{:?}\n{}", path, &new);
        for comment in comments(text) {
            prop_assert!(new.contains(comment), "{}\n{}", comment, new);
        }
    }
}
