//! Who may use whom: the floors of ARCHITECTURE.md.

use crate::repository::{Crate, File};

/// The floors from the ground up. On a floor with an order a crate may use the ones before it; on
/// a floor without one (models, questions) none knows another.
const FLOORS: [(&str, &[&str]); 5] = [
    ("ground", &["quantity", "tables", "answer", "build"]),
    ("models", &[]),
    ("questions", &[]),
    ("results", &["ask", "work", "sheet"]),
    ("faces", &["desk", "spile"]),
];

/// Libraries that bring files, formats, pages or time; no model and no question needs one.
const NOT_FOR_PHYSICS: [&str; 14] = [
    "anstream",
    "axum",
    "clap",
    "dxf",
    "jiff",
    "maud",
    "miette",
    "notify",
    "schemars",
    "serde_json",
    "tokio",
    "toml",
    "toml_edit",
    "typst",
];

/// The tables of a manifest that name dependencies.
const KINDS: [&str; 3] = ["dependencies", "dev-dependencies", "build-dependencies"];

/// Whether the crate on `floor` computes: models and questions.
pub fn computes(floor: &str) -> bool {
    matches!(floor, "models" | "questions")
}

/// Every use of one of our crates that does not point downwards, tests and benches included.
pub fn upward(crates: &[Crate]) -> Vec<String> {
    let mut problems = Vec::new();
    for user in crates.iter().filter(|user| user.floor != "checks") {
        if rank(user).is_none() {
            problems.push(format!(
                "{}: crates/{}/{} has no place in the order of floors",
                user.package, user.floor, user.folder
            ));
        }
        for name in KINDS.into_iter().flat_map(|kind| dependencies(user, kind)) {
            let Some(used) = crates.iter().find(|other| other.package == name) else { continue };
            if rank(used).is_none() || rank(used) >= rank(user) {
                problems.push(format!(
                    "{} ({}) may not use {} ({})",
                    user.package, user.floor, used.package, used.floor
                ));
            }
        }
    }
    problems
}

/// Every model or question that depends on a library of files, formats, pages or time outside its
/// tests.
pub fn worldly(crates: &[Crate]) -> Vec<String> {
    let physics = crates.iter().filter(|one| computes(&one.floor));
    physics
        .flat_map(|one| {
            ["dependencies", "build-dependencies"]
                .into_iter()
                .flat_map(|kind| dependencies(one, kind))
                .filter(|name| NOT_FOR_PHYSICS.contains(&name.as_str()))
                .map(|name| format!("{} ({}) may not use {name}", one.package, one.floor))
        })
        .collect()
}

/// Every crate that does not take the lints of the workspace.
pub fn without_lints(crates: &[Crate]) -> Vec<String> {
    let takes = |one: &&Crate| {
        one.manifest.get("lints").and_then(|lints| lints.get("workspace")?.as_bool()) == Some(true)
    };
    crates
        .iter()
        .filter(|one| !takes(one))
        .map(|one| format!("{}: no `[lints] workspace = true`", one.package))
        .collect()
}

/// Every dependency that no Rust file of its crate names.
pub fn unused(crates: &[Crate], files: &[File]) -> Vec<String> {
    let mut problems = Vec::new();
    for one in crates {
        let folder = format!("crates/{}/{}/", one.floor, one.folder);
        let names_it = |file: &File, name: &str| {
            let words = file.text.split(|c: char| !(c.is_alphanumeric() || c == '_'));
            file.path.starts_with(&folder)
                && file.path.ends_with(".rs")
                && words.into_iter().any(|word| word == name)
        };
        for name in KINDS.into_iter().flat_map(|kind| dependencies(one, kind)) {
            let in_code = name.replace('-', "_");
            if !files.iter().any(|file| names_it(file, &in_code)) {
                problems.push(format!("{} does not use {name}", one.package));
            }
        }
    }
    problems
}

/// Every crate that the map, the first block of code in ARCHITECTURE.md, does not name.
pub fn off_the_map(crates: &[Crate], page: &str) -> Vec<String> {
    let map = page.split("```").nth(1).unwrap_or_default();
    let named = |one: &&Crate| map.split_whitespace().any(|word| word == one.folder);
    crates
        .iter()
        .filter(|one| !named(one))
        .map(|one| format!("ARCHITECTURE.md: {} is not on the map", one.package))
        .collect()
}

/// The floor and the place on it; all crates of a floor without order share one place.
fn rank(one: &Crate) -> Option<(usize, usize)> {
    let floor = FLOORS.iter().position(|(name, _)| *name == one.floor)?;
    let order = FLOORS[floor].1;
    if order.is_empty() {
        return Some((floor, 0));
    }
    Some((floor, order.iter().position(|name| *name == one.folder)?))
}

fn dependencies(one: &Crate, kind: &str) -> Vec<String> {
    let table = one.manifest.get(kind).and_then(toml::Value::as_table);
    table.map(|table| table.keys().cloned().collect()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sample(place: &str, rest: &str) -> Crate {
        let (floor, folder) = place.split_once('/').unwrap();
        Crate {
            floor: floor.to_owned(),
            folder: folder.to_owned(),
            package: format!("spile-{folder}"),
            manifest: rest.parse().unwrap(),
        }
    }

    /// Whether `user` may use `used`, the one crate beside it.
    fn may(user: &str, used: &str) -> bool {
        let name = used.split_once('/').unwrap().1;
        let manifest = format!("[dependencies]\nspile-{name}.workspace = true");
        upward(&[sample(user, &manifest), sample(used, "")]).is_empty()
    }

    #[test]
    fn crates_use_what_lies_below_and_nothing_else() {
        assert!(may("ground/build", "ground/quantity"));
        assert!(may("models/heat", "ground/tables"));
        assert!(may("results/ask", "questions/wire"));
        assert!(!may("ground/quantity", "ground/build"));
        assert!(!may("ground/build", "models/solid"));
        assert!(!may("models/heat", "questions/cold"));
        assert!(!may("models/heat", "models/circuit"));
        assert!(!may("questions/wire", "questions/cold"));
        assert!(!may("results/sheet", "faces/spile"));
        assert!(!may("faces/spile", "checks/tidy"));
    }

    #[test]
    fn tests_point_downwards_too() {
        let user = sample("questions/wire", "[dev-dependencies]\nspile-cold = \"1\"");
        let problems = upward(&[user, sample("questions/cold", "")]);
        assert_eq!(problems, ["spile-wire (questions) may not use spile-cold (questions)"]);
    }

    #[test]
    fn a_crate_without_a_place_is_told() {
        assert_eq!(upward(&[sample("ground/attic", "")]).len(), 1);
        assert_eq!(upward(&[sample("cellar/wine", "")]).len(), 1);
    }

    #[test]
    fn physics_reads_no_files_outside_its_tests() {
        let bad = sample("models/heat", "[dependencies]\ntoml = \"1\"");
        assert_eq!(worldly(&[bad]), ["spile-heat (models) may not use toml"]);
        let good = sample("models/heat", "[dev-dependencies]\nserde_json = \"1\"");
        assert!(worldly(&[good]).is_empty());
        let ground = sample("ground/build", "[dependencies]\ntoml = \"1\"");
        assert!(worldly(&[ground]).is_empty());
    }

    #[test]
    fn an_unused_library_is_told() {
        let one = sample("models/heat", "[dependencies]\na-b = \"1\"\nc = \"1\"");
        let file = |path: &str| File { path: path.to_owned(), text: "use a_b::c1;".to_owned() };
        let ours = file("crates/models/heat/src/lib.rs");
        let crates = [one];
        assert_eq!(unused(&crates, &[ours]), ["spile-heat does not use c"]);
        assert_eq!(unused(&crates, &[file("crates/models/heater/src/lib.rs")]).len(), 2);
    }

    #[test]
    fn the_map_names_every_crate() {
        let page = "Text.\n```text\ncrates/\n  models/\n    heat   warm\n```\nsolid\n";
        let crates = [sample("models/heat", ""), sample("models/solid", "")];
        assert_eq!(off_the_map(&crates, page), ["ARCHITECTURE.md: spile-solid is not on the map"]);
    }

    #[test]
    fn lints_are_taken() {
        let bad = sample("models/heat", "[lints]\nworkspace = false");
        let none = sample("models/solid", "");
        let good = sample("ground/build", "[lints]\nworkspace = true");
        assert_eq!(without_lints(&[bad, none, good]).len(), 2);
    }
}
