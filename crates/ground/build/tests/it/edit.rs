//! Edits: what they say is then so, and every other byte stays.

use spile_build::edit::{Edit, Scope, Texts, Value, edited, read, where_is};
use spile_build::{Kind, fields};

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
                    "block.ways.7",
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
fn a_form_shows_what_the_owner_wrote() {
    let texts = heron();
    let shown = |scope: &Scope, what: &str| {
        let spot = where_is(&texts, scope, what)?;
        assert_eq!(texts[&spot.file][spot.span.clone()], spot.written);
        Some((spot.file, spot.shown?))
    };
    let job = "jobs/galley-fridge.toml".to_owned();
    let base = "build.toml".to_owned();
    assert_eq!(
        shown(&upright(), "items.upright.place.from_left"),
        Some((job.clone(), "0 mm ± 0.5 mm".to_owned()))
    );
    assert_eq!(shown(&Scope::Base, "items.upright.place.from_left"), None);
    assert_eq!(shown(&upright(), "runs.fridge.to"), Some((job, "upright".to_owned())));
    assert_eq!(
        shown(&Scope::Base, "runs.fridge.to"),
        Some((base.clone(), "lidded-box".to_owned()))
    );
    assert_eq!(shown(&upright(), "items.bench.held.count"), Some((base, "4".to_owned())));
    assert_eq!(
        shown(&Scope::Base, "parts.upright-92.mass"),
        Some(("parts/upright-92.toml".to_owned(), "27.5 kg".to_owned()))
    );
}

#[test]
fn forms_can_be_made_of_the_records() {
    let of = |path: &str, key: &str| {
        fields(path)
            .into_iter()
            .find(|field| field.key == key)
            .unwrap_or_else(|| panic!("{path} {key}"))
    };
    assert!(matches!(of("items", "mass").kind, Kind::Quantity { name: "mass", .. }));
    assert_eq!(of("items.*", "part").names, Some("parts"));
    assert_eq!(of("block.ways", "run").names, Some("runs"));
    assert!(of("parts", "kind").required && !of("parts", "mass").required);
    assert_eq!(of("bank", "count").default, Some("one"));
    assert!(matches!(of("bank", "kind").kind, Kind::Words(words) if words.contains(&"gel")));
    assert!(matches!(of("parts", "consumption").kind, Kind::List(_)));
    assert!(of("job.options", "about").doc.starts_with("What it is"));
    assert!(fields("nothing").is_empty() && fields("items.a.mass").is_empty());
    assert_eq!(Value::typed("2", &of("bank", "count").kind), Value::Whole(2));
    assert_eq!(Value::typed("two", &of("bank", "count").kind), Value::from("two"));
}

/// What the records call required is what the reading asks for.
#[test]
fn a_thing_is_refused_without_what_it_requires() {
    for (thing, rest) in [
        ("doors", "vehicle.doors.x"),
        ("bays", "bays.x"),
        ("parts", "parts.x"),
        ("panels", "panels.x"),
        ("sources", "sources.x"),
    ] {
        let path = if thing == "doors" { "vehicle.doors" } else { thing };
        let required: Vec<&str> = fields(path)
            .into_iter()
            .filter(|field| field.required)
            .map(|field| field.key)
            .collect();
        let texts: Texts = [("build.toml".to_owned(), format!("[{rest}]\n"))].into();
        let told = read(&texts).unwrap_err().to_string();
        for key in required {
            let says_so = told.contains(&format!("`{key}`")) || told.contains(key);
            assert!(says_so, "{thing} {key}: {told}");
        }
    }
}
