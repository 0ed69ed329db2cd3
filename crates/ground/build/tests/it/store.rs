//! A folder on disk: saved whole or not at all, and never over what somebody else wrote.

use std::fs;
use std::path::Path;

use spile_build::edit::{Change, Edit, Refused, Scope, Store, Texts};
use tempfile::TempDir;

use super::heron_texts;

fn heron() -> Texts {
    heron_texts().into_iter().collect()
}

fn on_disk(texts: &Texts) -> TempDir {
    let folder = tempfile::tempdir().unwrap();
    for (name, text) in texts {
        let path = folder.path().join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }
    folder
}

/// Every file below a folder, with its bytes.
fn contents(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let mut all = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            all.extend(contents(&path));
        } else {
            all.push((path.display().to_string(), fs::read(&path).unwrap()));
        }
    }
    all.sort();
    all
}

fn longer() -> Edit {
    Edit::set(&Scope::Base, "runs.pump.length", "4 m")
}

fn rename() -> Edit {
    Edit::rename(&Scope::Base, "items.lidded-box", "cool-box")
}

#[test]
fn a_store_saves_undoes_and_redoes() {
    let folder = on_disk(&heron());
    let before = contents(folder.path());
    let mut store = Store::open(folder.path()).unwrap();
    let saved = store.save(&[rename()]).unwrap();
    assert_eq!(saved.written, ["build.toml", "jobs/galley-fridge.toml"]);
    let after = contents(folder.path());
    assert_eq!(after.len(), before.len());
    assert!(store.folder().unwrap().build().items.contains_key("cool-box"));
    store.undo().unwrap();
    assert_eq!(contents(folder.path()), before);
    assert!(store.folder().unwrap().build().items.contains_key("lidded-box"));
    store.redo().unwrap();
    assert_eq!(contents(folder.path()), after);
    assert_eq!((store.redo(), store.steps()), (Err(Refused::Nothing), (1, 0)));
}

#[test]
fn nonsense_is_refused_in_its_place_and_nothing_changes() {
    let folder = on_disk(&heron());
    let before = contents(folder.path());
    let mut store = Store::open(folder.path()).unwrap();
    let texts = store.texts().clone();
    let good = longer();
    let bad = Edit::set(&Scope::Base, "items.bench.place.from_rear", "40 litres");
    let Err(Refused::Problems(problems)) = store.save(&[good, bad]) else {
        panic!("a length is no volume");
    };
    let told = problems.to_string();
    assert_eq!(problems.list.len(), 1, "{told}");
    let line = heron()["build.toml"]
        .lines()
        .position(|line| line.starts_with("place = { from_rear = \"1040 mm\""))
        .unwrap();
    assert!(told.starts_with(&format!("build.toml:{}:27: ", line + 1)), "{told}");
    assert_eq!((contents(folder.path()), store.texts()), (before, &texts));
    assert_eq!(store.steps(), (0, 0));
}

#[test]
fn a_file_changed_underneath_is_never_written_over() {
    let folder = on_disk(&heron());
    let mut store = Store::open(folder.path()).unwrap();
    let path = folder.path().join("build.toml");
    let theirs = heron()["build.toml"].replace("\"5 m\"", "\"6 m\"");
    fs::write(&path, &theirs).unwrap();
    let before = contents(folder.path());
    let Err(Refused::Underneath(files)) = store.save(&[rename()]) else {
        panic!("it was changed underneath");
    };
    assert_eq!(files.len(), 1);
    assert_eq!(
        (files[0].file.as_str(), files[0].theirs.as_deref()),
        ("build.toml", Some(&*theirs))
    );
    assert!(files[0].ours.as_ref().unwrap().contains("[items.cool-box]"));
    assert_eq!(contents(folder.path()), before);
    assert_eq!(store.refresh(), ["build.toml"]);
    store.save(&[rename()]).unwrap();
    let now = fs::read_to_string(&path).unwrap();
    assert!(now.contains("[items.cool-box]") && now.contains("\"6 m\""));
    // Nor does undo write over it.
    fs::write(&path, &theirs).unwrap();
    assert!(matches!(store.undo(), Err(Refused::Underneath(_))));
    assert_eq!(fs::read_to_string(&path).unwrap(), theirs);
}

#[test]
fn a_file_that_a_save_does_not_touch_may_change_meanwhile() {
    let folder = on_disk(&heron());
    let mut store = Store::open(folder.path()).unwrap();
    let part = folder.path().join("parts/pump.toml");
    fs::write(&part, format!("{}# seen\n", heron()["parts/pump.toml"])).unwrap();
    let saved = store.save(&[longer()]).unwrap();
    assert_eq!(
        (saved.written, saved.seen),
        (vec!["build.toml".into()], vec!["parts/pump.toml".into()])
    );
    assert!(store.texts()["parts/pump.toml"].ends_with("# seen\n"));
    assert!(store.refresh().is_empty());
    fs::remove_file(&part).unwrap();
    assert!(matches!(store.save(&[longer()]), Ok(saved) if saved.written.is_empty()));
    assert_eq!(store.refresh(), ["parts/pump.toml"]);
    assert!(store.folder().is_err());
}

#[test]
fn a_build_that_is_not_whole_is_mended_step_by_step() {
    let mut texts = heron();
    let text = texts["build.toml"].replace("\"5 m\"", "\"5\"").replace("\"3 m\"", "\"3\"");
    texts.insert("build.toml".to_owned(), text);
    let folder = on_disk(&texts);
    let mut store = Store::open(folder.path()).unwrap();
    assert_eq!(store.folder().unwrap_err().list.len(), 2);
    let other = Edit::set(&Scope::Base, "runs.fridge.length", "seven");
    assert!(matches!(store.save(&[longer(), other]), Err(Refused::Problems(_))));
    store.save(&[longer()]).unwrap();
    assert_eq!(store.folder().unwrap_err().list.len(), 1);
    store.save(&[Edit::set(&Scope::Base, "runs.lights.length", "5 m")]).unwrap();
    assert!(store.folder().is_ok());
}

#[test]
fn a_save_that_was_interrupted_is_finished_or_told_of() {
    let folder = on_disk(&heron());
    let mut store = Store::open(folder.path()).unwrap();
    store.save(&[rename()]).unwrap();
    let whole = contents(folder.path());
    let after = store.texts().clone();
    let note = serde_json::json!([
        { "file": "build.toml", "before": heron()["build.toml"], "after": after["build.toml"] },
        {
            "file": "jobs/galley-fridge.toml",
            "before": heron()["jobs/galley-fridge.toml"],
            "after": after["jobs/galley-fridge.toml"],
        },
        { "file": "../outside.toml", "before": null, "after": "about = \"out\"" },
    ])
    .to_string();
    let job = folder.path().join("jobs/galley-fridge.toml");
    // The second file was not written yet.
    fs::write(&job, &heron()["jobs/galley-fridge.toml"]).unwrap();
    fs::write(folder.path().join(".unfinished-save"), &note).unwrap();
    let mut store = Store::open(folder.path()).unwrap();
    assert!(store.interrupted().is_empty() && store.folder().is_ok());
    assert_eq!(contents(folder.path()), whole);
    assert!(!folder.path().parent().unwrap().join("outside.toml").exists());
    // Somebody wrote the second file since.
    let theirs = format!("{}# mine\n", heron()["jobs/galley-fridge.toml"]);
    fs::write(&job, &theirs).unwrap();
    fs::write(folder.path().join(".unfinished-save"), &note).unwrap();
    let mut store = Store::open(folder.path()).unwrap();
    let told = store.interrupted();
    assert_eq!((told.len(), told[0].theirs.as_deref()), (1, Some(theirs.as_str())));
    assert_eq!(fs::read_to_string(&job).unwrap(), theirs);
}

#[test]
fn only_the_files_of_a_build_are_written() {
    let folder = on_disk(&heron());
    let before = contents(folder.path());
    let mut store = Store::open(folder.path()).unwrap();
    let names = [
        "../build.toml",
        "parts/../../x.toml",
        "/x.toml",
        "parts/a/b.toml",
        "weather/x.toml",
        "notes.txt",
        "parts/.toml",
        "parts/x",
        "jobs\\x.toml",
        "parts/a\\b.toml",
        "parts/.a.toml",
        "./build.toml",
        "build.toml/",
        "",
    ];
    for name in names {
        let change =
            Change::File { file: name.to_owned(), text: Some("about = \"x\"\n".to_owned()) };
        assert!(matches!(store.save(&[Edit::Plain(change)]), Err(Refused::Problems(_))), "{name}");
    }
    for name in ["../x", "a/b", ".x", "", "a\u{0}b"] {
        assert!(store.save(&[Edit::new_job(name, "x")]).is_err(), "{name}");
    }
    assert_eq!(contents(folder.path()), before);
}

#[cfg(unix)]
#[test]
fn links_out_of_the_folder_and_files_to_be_read_only_are_left_alone() {
    use std::os::unix::fs::{PermissionsExt, symlink};

    let outside = on_disk(&heron());
    let folder = on_disk(&heron());
    let path = folder.path().join("build.toml");
    fs::remove_file(&path).unwrap();
    symlink(outside.path().join("build.toml"), &path).unwrap();
    let before = contents(outside.path());
    let mut store = Store::open(folder.path()).unwrap();
    let Err(Refused::Unwritable(problem)) = store.save(&[longer()]) else { panic!("it is a link") };
    assert!(problem.says.starts_with("build.toml does not lie"), "{problem:?}");
    fs::remove_dir_all(folder.path().join("jobs")).unwrap();
    symlink(outside.path().join("jobs"), folder.path().join("jobs")).unwrap();
    store.refresh();
    assert!(matches!(store.save(&[Edit::new_job("b", "x")]), Err(Refused::Unwritable(_))));
    assert_eq!(contents(outside.path()), before);

    let folder = on_disk(&heron());
    let path = folder.path().join("build.toml");
    let mut store = Store::open(folder.path()).unwrap();
    fs::set_permissions(&path, fs::Permissions::from_mode(0o640)).unwrap();
    store.save(&[longer()]).unwrap();
    assert_eq!(path.metadata().unwrap().permissions().mode() & 0o777, 0o640);
    fs::set_permissions(&path, fs::Permissions::from_mode(0o444)).unwrap();
    let before = contents(folder.path());
    assert!(matches!(store.undo(), Err(Refused::Unwritable(_))));
    assert!(matches!(store.save(&[rename()]), Err(Refused::Unwritable(_))));
    assert_eq!(contents(folder.path()), before);
    assert_eq!(store.steps(), (1, 0));
}
