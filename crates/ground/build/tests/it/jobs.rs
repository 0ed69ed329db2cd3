//! What jobs make of a build.

use spile_build::{Anchor, Build, Folder, Unplanned};

use super::{folder, heron, problems};

const BASE: &str = r#"
[parts.box]
kind = "lidded box"
mass = "13 kg"
[parts.fridge]
kind = "fridge"
[items.box]
place = { from_rear = "20 mm", on = "floor" }
[runs.box]
section = "1.5 mm2"
[block.ways.1]
fuse = "10 A"
run = "box"
"#;

#[test]
fn the_demo_job_takes_the_box_out_and_gives_its_cable_to_the_fridge() {
    let planned = heron().plan("galley-fridge", None).unwrap();
    assert_eq!(planned.option.as_deref(), Some("upright"));
    let (before, after) = (&planned.before, &planned.after);
    let only = |of: &Build, other: &Build| -> Vec<String> {
        of.items.keys().filter(|name| !other.items.contains_key(*name)).cloned().collect()
    };
    assert_eq!(only(before, after), ["lidded-box"]);
    assert_eq!(only(after, before), ["platform", "upright"]);
    assert_eq!(
        (before.runs["fridge"].to.as_str(), after.runs["fridge"].to.as_str()),
        ("lidded-box", "upright")
    );
    assert_eq!(after.runs["fridge"].feed, before.runs["fridge"].feed);
    assert_eq!(after.items["upright"].panel.as_deref(), Some("galley-front"));
    // What the job brought is told of where the job has it.
    let contents = after.items["upright"].contents.as_ref().unwrap();
    let (name, line) = contents.source.split_once(':').unwrap();
    let folder = heron();
    let file = folder.files().all().iter().find(|file| file.name == name).unwrap();
    assert_eq!(name, "jobs/galley-fridge.toml");
    assert_eq!(
        file.text.lines().nth(line.parse::<usize>().unwrap() - 1),
        Some("contents = \"30 kg\"")
    );
}

#[test]
fn each_option_of_the_demo_job_is_done_besides_what_the_job_says() {
    let planned = heron().plan("galley-fridge", Some("two-boxes")).unwrap();
    let after = &planned.after;
    assert!(!after.items.contains_key("lidded-box") && !after.items.contains_key("upright"));
    assert_eq!(after.runs["box-18"].way.as_ref().unwrap().number, "6");
    assert_eq!(after.runs["box-18"].to, "box-18");
    assert_eq!(planned.before, *heron().build());
}

#[test]
fn what_a_job_is_can_be_listed() {
    let jobs = heron().jobs();
    let job = jobs.iter().find(|job| job.name == "galley-fridge").unwrap();
    assert_eq!(job.about, "a bigger fridge in the galley");
    let options: Vec<&str> = job.options.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(options, ["upright", "two-boxes"]);
    assert_eq!((&job.done, job.after.len()), (&None, 0));
}

#[test]
fn what_is_not_there_cannot_be_planned() {
    let Err(Unplanned::Unknown { what, hint, .. }) = heron().plan("galey-fridge", None) else {
        panic!("there is no such job");
    };
    assert_eq!((what, hint.as_str()), ("job", "did you mean `galley-fridge`?"));
    let Err(Unplanned::Unknown { what, hint, .. }) = heron().plan("galley-fridge", Some("both"))
    else {
        panic!("there is no such option");
    };
    assert_eq!((what, hint.as_str()), ("option", "known here: upright, two-boxes"));
}

#[test]
fn a_job_removes_moves_changes_and_adds() {
    let folder = folder(&[
        ("build.toml", BASE),
        (
            "jobs/all.toml",
            r#"
            [[change]]
            what = "runs.box.section"
            found = "1.5mm²"
            to = "4 mm2"
            [[change]]
            what = "runs.box.length"
            to = "3 m"
            [[change]]
            what = "block.ways.1.fuse"
            found = "10 A"
            to = "15 A"
            [[move]]
            what = "items.box"
            found = { on = "floor" }
            to = { from_rear = "90 mm", on = "floor" }
            [add.bays.galley]
            size = { width = "520 mm", height = "900 mm", depth = "540 mm" }
            [add.items.fridge]
            place = { in = "galley" }
            [add.runs.fridge]
            length = "2 m"
            [add.ways.2]
            run = "fridge"
            "#,
        ),
    ]);
    let after = folder.plan("all", None).unwrap().after;
    assert_eq!(after.runs["box"].feed.section.to_string(), "4 mm²");
    assert_eq!(after.runs["box"].feed.length.likely().in_m(), 3.0);
    assert_eq!(
        after.runs["box"].way.as_ref().unwrap().fuse.as_ref().unwrap().likely().in_a(),
        15.0
    );
    assert_eq!(after.runs["fridge"].way.as_ref().unwrap().number, "2");
    assert_eq!(after.items["fridge"].place.as_ref().unwrap().bay.as_deref(), Some("galley"));
    let Anchor::Low(from_rear) = &after.items["box"].place.as_ref().unwrap().x else {
        panic!("it is told from the rear");
    };
    assert_eq!(from_rear.likely().in_mm().round(), 90.0);
    assert!(from_rear.source.starts_with("jobs/all.toml:16,"), "{}", from_rear.source);
}

#[test]
fn a_job_that_comes_after_others_begins_where_they_end() {
    let cable = "[[change]]\nwhat = \"runs.box.section\"\nfound = \"1.5 mm2\"\nto = \"2.5 mm2\"\n";
    let again = "after = [\"cable\"]\n[[change]]\nwhat = \"runs.box.section\"\nfound = \"2.5 mm2\"\nto = \"4 mm2\"\n";
    let last = "after = [\"again\", \"cable\"]\n[[change]]\nwhat = \"runs.box.section\"\nfound = \"4 mm2\"\nto = \"6 mm2\"\n";
    let folder = folder(&[
        ("build.toml", BASE),
        ("jobs/a-last.toml", last),
        ("jobs/again.toml", again),
        ("jobs/cable.toml", cable),
    ]);
    let section = |build: &Build| build.runs["box"].feed.section.to_string();
    let planned = folder.plan("a-last", None).unwrap();
    assert_eq!(
        (section(&planned.before), section(&planned.after)),
        ("4 mm²".into(), "6 mm²".into())
    );
    assert_eq!(section(folder.build()), "1.5 mm²");
    assert!(folder.clashes().is_empty(), "{:?}", folder.clashes());
}

#[test]
fn a_finished_job_is_part_of_the_build_and_not_done_again() {
    let done = "done = 2026-03-14\n[[change]]\nwhat = \"runs.box.section\"\nfound = \"1 mm2\"\nto = \"1.5 mm2\"\n";
    let next = "after = [\"cable\"]\n[[change]]\nwhat = \"runs.box.section\"\nfound = \"1.5 mm2\"\nto = \"4 mm2\"\n";
    let folder =
        folder(&[("build.toml", BASE), ("jobs/cable.toml", done), ("jobs/next.toml", next)]);
    let finished = folder.plan("cable", None).unwrap();
    assert_eq!(finished.before.runs, finished.after.runs);
    assert_eq!(
        folder.plan("next", None).unwrap().after.runs["box"].feed.section.to_string(),
        "4 mm²"
    );
    assert_eq!(folder.jobs()[0].done.as_deref(), Some("2026-03-14"));
}

#[test]
fn the_option_taken_is_the_choice_else_the_first() {
    let job = |choice: &str| {
        format!(
            "{choice}\n[options.thin.add.runs.new]\nto = \"box\"\nsection = \"1 mm2\"\n[options.thick.add.runs.new]\nto = \"box\"\nsection = \"6 mm2\"\n"
        )
    };
    let taken = |choice: &str| {
        let folder = folder(&[("build.toml", BASE), ("jobs/a.toml", &job(choice))]);
        folder.plan("a", None).unwrap().option
    };
    assert_eq!(taken(""), Some("thin".to_owned()));
    assert_eq!(taken("choice = \"thick\""), Some("thick".to_owned()));
}

#[test]
fn two_open_jobs_that_touch_one_thing_are_told() {
    let change = "[[change]]\nwhat = \"items.box.mass\"\nto = \"14 kg\"\n";
    let remove = "[[remove]]\nwhat = \"items.box\"\n[[remove]]\nwhat = \"runs.box\"\n[[remove]]\nwhat = \"block.ways.1\"\n";
    let folder_of = |first: &str, second: &str| -> Folder {
        folder(&[("build.toml", BASE), ("jobs/a.toml", first), ("jobs/b.toml", second)])
    };
    let clashes = folder_of(change, remove).clashes();
    assert_eq!(clashes.len(), 1);
    assert!(clashes[0].starts_with("the jobs a and b both touch items.box.mass;"), "{clashes:?}");
    assert!(folder_of(&format!("done = \"2026-01-01\"\n{change}"), remove).clashes().is_empty());
    assert!(folder_of(change, &format!("after = [\"a\"]\n{remove}")).clashes().is_empty());
    let other = "[[change]]\nwhat = \"items.boxes\"\nto = {}\n";
    let told = problems(&[("build.toml", BASE), ("jobs/a.toml", change), ("jobs/b.toml", other)]);
    assert_eq!(told.list.len(), 1, "{told}");
}

#[test]
fn many_jobs_after_each_other_are_read_at_once() {
    let jobs: Vec<(String, String)> = (0..60)
        .map(|number: usize| {
            let earlier: Vec<String> = (number.saturating_sub(4)..number)
                .map(|earlier| format!("\"j{earlier}\""))
                .collect();
            (format!("jobs/j{number}.toml"), format!("after = [{}]\n", earlier.join(", ")))
        })
        .collect();
    let mut texts = vec![("build.toml", BASE)];
    texts.extend(jobs.iter().map(|(name, text)| (name.as_str(), text.as_str())));
    assert!(folder(&texts).plan("j59", None).is_ok());
}
