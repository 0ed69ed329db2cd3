//! Edits: what they say is then so, and every other byte stays.

use spile_build::edit::{Edit, Refused, Scope, Store, Texts, Value, edited, read, where_is};

use super::heron_texts;

fn heron() -> Texts {
    heron_texts().into_iter().collect()
}

/// The lines that one text has and the other not, as `-` and `+` lines.
fn difference(before: &Texts, after: &Texts) -> String {
    let mut told = String::new();
    let names: std::collections::BTreeSet<&String> = before.keys().chain(after.keys()).collect();
    for name in names {
        let [a, b] = [before, after].map(|texts| texts.get(name).map_or("", String::as_str));
        if a == b {
            continue;
        }
        let a: Vec<&str> = a.split_inclusive('\n').collect();
        let b: Vec<&str> = b.split_inclusive('\n').collect();
        // The longest lines in common, by the table of lengths from each pair of places on.
        let mut longest = vec![vec![0; b.len() + 1]; a.len() + 1];
        for i in (0..a.len()).rev() {
            for j in (0..b.len()).rev() {
                longest[i][j] = if a[i] == b[j] {
                    longest[i + 1][j + 1] + 1
                } else {
                    longest[i + 1][j].max(longest[i][j + 1])
                };
            }
        }
        told += &format!("{name}\n");
        let (mut i, mut j) = (0, 0);
        while i < a.len() || j < b.len() {
            if i < a.len() && j < b.len() && a[i] == b[j] {
                (i, j) = (i + 1, j + 1);
            } else if j < b.len() && (i == a.len() || longest[i][j + 1] > longest[i + 1][j]) {
                told += &format!("+{}\n", b[j].trim_end_matches('\n').escape_debug());
                j += 1;
            } else {
                told += &format!("-{}\n", a[i].trim_end_matches('\n').escape_debug());
                i += 1;
            }
        }
    }
    told
}

fn upright() -> Scope {
    Scope::option("galley-fridge", "upright")
}

#[test]
fn the_demo_edited() {
    let before = heron();
    let galley = Scope::job("galley-fridge");
    let upright = upright();
    let place = Value::table([("in", "galley-front"), ("from_rear", "30 mm"), ("on", "floor")]);
    let cases: Vec<(&str, Vec<Edit>)> = vec![
        (
            "a value in braces",
            vec![Edit::set(&Scope::Base, "items.bench.place.from_rear", "1.1 m")],
        ),
        ("a value that was not said", vec![Edit::set(&Scope::Base, "items.bench.mass", "31 kg")]),
        (
            "a key in braces",
            vec![
                Edit::set(&Scope::Base, "items.bench.place.above", "20 mm"),
                Edit::remove(&Scope::Base, "items.bench.place.on"),
            ],
        ),
        (
            "an item",
            vec![Edit::add(
                &Scope::Base,
                "items.kettle",
                Value::table([("part", Value::from("lights")), ("place", place.clone())]),
            )],
        ),
        (
            "a part",
            vec![Edit::add(
                &Scope::Base,
                "parts.kettle",
                Value::table([("kind", "load"), ("mass", "1.2 kg")]),
            )],
        ),
        (
            "a way and a run",
            vec![
                Edit::add(
                    &Scope::Base,
                    "runs.bench",
                    Value::table([("section", "2.5 mm2"), ("length", "2 m")]),
                ),
                Edit::add(
                    &Scope::Base,
                    "block.ways.6",
                    Value::table([("fuse", "10 A"), ("run", "bench")]),
                ),
            ],
        ),
        ("a trip out", vec![Edit::remove(&Scope::Base, "trips.summer")]),
        (
            "a weighing",
            vec![Edit::add(
                &Scope::Base,
                "weighings.autumn",
                Value::table([("date", "2026-09-02"), ("state", "empty"), ("rear", "1760 kg")]),
            )],
        ),
        (
            "an item moved in the job",
            vec![Edit::set(&upright, "items.bench.place.from_rear", "1000 mm")],
        ),
        (
            "moved again",
            vec![
                Edit::set(&upright, "items.bench.place.from_rear", "1000 mm"),
                Edit::set(&upright, "items.bench.place.from_rear", "980 mm"),
            ],
        ),
        (
            "what the job adds is moved",
            vec![Edit::set(&upright, "items.upright.place.from_left", "4 mm")],
        ),
        ("a value changed in the job", vec![Edit::set(&galley, "runs.pump.section", "2.5 mm2")]),
        (
            "what the job changes already",
            vec![Edit::set(&upright, "bays.galley-rear.air.inlet.area", "200 cm2")],
        ),
        (
            "what was not there, in the job",
            vec![Edit::set(&upright, "bays.galley-front.air.inlet.area", "50 cm2")],
        ),
        ("removed in the job", vec![Edit::remove(&upright, "items.bench")]),
        (
            "what the job adds is removed",
            vec![
                Edit::remove(&Scope::option("galley-fridge", "two-boxes"), "block.ways.6"),
                Edit::remove(&Scope::option("galley-fridge", "two-boxes"), "runs.box-18"),
            ],
        ),
        ("taken back", vec![Edit::take_back(&upright, "bays.galley-rear.air")]),
        (
            "a job with an option",
            vec![
                Edit::new_job("heater", "heat for the winter"),
                Edit::new_option("heater", "small", "2 kW"),
                Edit::add(
                    &Scope::option("heater", "small"),
                    "items.heater",
                    Value::table([("part", "lights")]),
                ),
                Edit::remove(&Scope::job("heater"), "items.bench"),
            ],
        ),
        ("an item renamed", vec![Edit::rename(&Scope::Base, "items.lidded-box", "cool-box")]),
        ("a run renamed", vec![Edit::rename(&Scope::Base, "runs.pump", "water")]),
        ("a part renamed", vec![Edit::rename(&Scope::Base, "parts.lights", "led-strip")]),
        ("a bay renamed", vec![Edit::rename(&Scope::Base, "bays.galley-rear", "galley-aft")]),
        ("an item of the job renamed", vec![Edit::rename(&upright, "items.upright", "fridge")]),
        ("the job done", vec![Edit::done("galley-fridge", Some("upright"), "2026-05-02")]),
    ];
    let mut told = String::new();
    for (name, edits) in cases {
        told += &format!("## {name}\n");
        match edited(&before, &edits) {
            Ok(after) => {
                told += &difference(&before, &after);
                if let Err(problems) = read(&after) {
                    told += &format!("!! {problems}");
                }
            }
            Err(problems) => told += &format!("!! {problems}"),
        }
        told += "\n";
    }
    insta::assert_snapshot!(told);
}

#[test]
fn a_store_saves_undoes_and_redoes() {
    let folder = tempfile::tempdir().unwrap();
    for (name, text) in heron() {
        let path = folder.path().join(&name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, text).unwrap();
    }
    let mut store = Store::open(folder.path()).unwrap();
    let saved = store.save(&[Edit::rename(&Scope::Base, "items.lidded-box", "cool-box")]).unwrap();
    assert_eq!(saved.written, ["build.toml", "jobs/galley-fridge.toml"]);
    assert_eq!(Store::open(folder.path()).unwrap().texts(), store.texts());
    assert!(store.folder().unwrap().build().items.contains_key("cool-box"));
    store.undo().unwrap();
    assert_eq!(store.texts(), &heron());
    assert_eq!(Store::open(folder.path()).unwrap().texts(), &heron());
    store.redo().unwrap();
    assert!(store.folder().unwrap().build().items.contains_key("cool-box"));
    assert_eq!(store.redo(), Err(Refused::Nothing));
    let spot = where_is(store.texts(), &upright(), "items.upright.place.from_left").unwrap();
    assert_eq!(
        (spot.file.as_str(), spot.shown.as_deref()),
        ("jobs/galley-fridge.toml", Some("0 mm ± 0.5 mm"))
    );
}
