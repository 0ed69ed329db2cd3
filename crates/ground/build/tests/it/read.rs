//! What a build that is in order says: its numbers, where each comes from, and what stands in for
//! those that are not there.

use std::fs;

use spile_answer::{Basis, Given};
use spile_build::file::{Chemistry, Cooling, Direction, PartKind, Tape, VehicleKind, Words};
use spile_build::{Anchor, Folder, Return, Shape};
use spile_quantity::{CableSize, Length, Quantity, read_cable};

use super::{build, folder, heron};

/// The least that gives a first answer.
const TWELVE_LINES: &str = r#"[parts.fridge]
kind = "upright fridge"
size = { width = "475 mm", height = "780 mm", depth = "495 mm" }
[bays.galley]
size = { width = "520 mm", height = "1140 mm", depth = "540 mm" }
[items.fridge]
place = { in = "galley" }
[runs.fridge]
length = "7.2 m"
[bank]
capacity = "100 Ah"
"#;

/// Low, likely and high, with what stands behind them, as far as is told in tests.
fn mm(given: &Given<Length>) -> (f64, f64, f64, Basis) {
    let tenth = |length: Length| (length.in_mm() * 10.0).round() / 10.0;
    let value = given.value;
    (tenth(value.low), tenth(value.likely), tenth(value.high), given.basis)
}

/// Every basis and source in a build, in the order in which they stand in it.
fn sources(build: &spile_build::Build) -> Vec<(String, String)> {
    let text = format!("{build:?}");
    let mut sources = Vec::new();
    for given in text.split("basis: ").skip(1) {
        let (basis, rest) = given.split_once(", source: \"").unwrap();
        sources.push((basis.to_owned(), rest.split('"').next().unwrap().to_owned()));
    }
    sources
}

#[test]
fn the_demo_build_is_in_order() {
    let folder = heron();
    let build = folder.build();
    assert_eq!(build.about, "long high-roof panel van for two");
    assert_eq!((build.tape, build.words), (Tape::ThirtySeconds, Words::Uk));
    assert_eq!(build.vehicle.kind, VehicleKind::Van);
    let bay = &build.bays["galley-rear"];
    assert_eq!(bay.opens, Direction::Left);
    assert_eq!(mm(&bay.size.depth), (564.0, 566.0, 568.0, Basis::Measured));
    assert_eq!(bay.depths.len(), 2);
    assert_eq!(mm(&bay.depths[1].value), (550.0, 552.0, 554.0, Basis::Measured));
    assert_eq!(bay.depths[1].height, Length::mm(700.0));
    let Shape::Profile { axes, points, .. } = &build.obstacles["right-arch"].shape else {
        panic!("the arch has a profile");
    };
    assert_eq!((*axes, points.len()), ([(0, true), (2, true)], 10));
    let run = &build.runs["fridge"];
    assert_eq!((run.to.as_str(), run.back_assumed), ("lidded-box", false));
    assert_eq!(run.way.as_ref().unwrap().number, "5");
    assert_eq!(run.feed.section, read_cable("1.5 mm²").unwrap());
    let Return::Body { cable, .. } = &run.back else { panic!("it returns through the body") };
    assert_eq!(mm(&cable.length), (1400.0, 1400.0, 1400.0, Basis::Measured));
    let bank = build.bank.as_ref().unwrap();
    assert_eq!((bank.count, bank.kind, bank.kind_assumed), (2, Chemistry::Agm, false));
    assert_eq!(bank.hour_rate.unwrap().in_hours(), 20.0);
    assert_eq!(build.trips["winter"].months, [12, 1, 2]);
    assert!(folder.clashes().is_empty());
}

#[test]
fn the_demo_build_says_where_each_number_stands() {
    let folder = heron();
    let build = folder.build();
    let line = |source: &str| {
        let (name, number) = source.split_once(':').expect("file and line");
        let number: usize = number.split(',').next().unwrap().parse().unwrap();
        let file = folder.files().all().iter().find(|file| file.name == name).expect("the file");
        file.text.lines().nth(number - 1).expect("the line").to_owned()
    };
    let bay = &build.bays["galley-rear"];
    assert!(line(&bay.size.width.source).starts_with("size = { width = \"520 mm ± 1 mm\""));
    assert!(line(&bay.depths[0].value.source).contains("[335, 566]"));
    assert!(line(&build.system.source).starts_with("system = "));
    let item = &build.items["lidded-box"];
    assert!(item.mass.as_ref().unwrap().source.starts_with("parts/lidded-32.toml:"));
    assert_eq!(line(&item.mass.as_ref().unwrap().source), "mass = \"13 kg\"");
    assert_eq!(line(&build.runs["fridge"].feed.length.source), "length = \"7.2 m\"");
}

#[test]
fn what_is_said_and_what_stands_in_is_told_apart() {
    for build in [build(TWELVE_LINES), heron().build().clone(), build("")] {
        let sources = sources(&build);
        assert!(!sources.is_empty());
        for (basis, source) in sources {
            // In the demo build the surroundings of a cable are a guess, and say so.
            let guess = basis == "Typical" && source.starts_with("build.toml:");
            assert_eq!(
                basis == "Typical" && !guess,
                source == "common practice",
                "{basis} from {source}"
            );
        }
    }
}

#[test]
fn twelve_lines_make_a_build() {
    assert!(TWELVE_LINES.lines().count() <= 12);
    let build = build(TWELVE_LINES);
    let fridge = &build.items["fridge"];
    assert_eq!(fridge.part.kind, PartKind::UprightFridge);
    assert_eq!(fridge.part.cooling, Some(Cooling::Compressor));
    assert_eq!(fridge.about, "fridge");
    let size = fridge.part.size.as_ref().unwrap();
    assert_eq!(mm(&size.width), (475.0, 475.0, 475.0, Basis::Papers));
    assert_eq!(mm(&build.bays["galley"].size.width).3, Basis::Measured);
    let run = &build.runs["fridge"];
    assert_eq!(mm(&run.feed.length), (7200.0, 7200.0, 7200.0, Basis::Measured));
    assert!(run.feed.section_assumed && run.back_assumed && run.way.is_none());
    assert!(matches!(run.feed.section, CableSize::Metric(_)));
    assert_eq!(run.back, Return::Cable(run.feed.clone()));
    assert!(build.block.assumed);
    let bank = build.bank.as_ref().unwrap();
    assert!(bank.kind_assumed && bank.fuse_assumed && bank.count == 1);
    assert_eq!(bank.capacity.as_ref().unwrap().likely().in_ah(), 100.0);
    // Each want that was not said is told.
    assert_eq!(build.wants.assumed.len(), 5);
}

#[test]
fn an_empty_file_is_a_build_of_which_nothing_is_said() {
    for text in ["", "\n\n", "# to be written\n", "\u{feff}"] {
        let build = build(text);
        assert!(build.items.is_empty() && build.bank.is_none() && build.about.is_empty());
        assert_eq!(build.system.basis, Basis::Typical);
        assert_eq!(build.system.likely().in_v(), 12.0);
    }
}

#[test]
fn a_tape_that_says_nothing_of_its_tolerance_has_a_typical_one() {
    let build = build(
        r#"
        [bays.galley]
        size = { width = "520 mm", height = "1140 mm +0/-3", depth = "about 540 mm" }
        in_front = "1 mm"
        "#,
    );
    let bay = &build.bays["galley"];
    let off = spile_build::typical::<Length>("tape-tolerance").likely().in_mm();
    assert_eq!(mm(&bay.size.width), (520.0 - off, 520.0, 520.0 + off, Basis::Measured));
    assert_eq!(bay.size.width.source, format!("build.toml:3, ± {off} mm assumed"));
    assert_eq!(mm(&bay.size.height), (1137.0, 1140.0, 1140.0, Basis::Measured));
    assert_eq!(bay.size.height.source, "build.toml:3");
    // A guess is typical, with no more than it says.
    assert_eq!(mm(&bay.size.depth), (540.0, 540.0, 540.0, Basis::Typical));
    // What cannot be negative is not made so.
    assert_eq!(mm(bay.in_front.as_ref().unwrap()), (0.0, 1.0, 1.0 + off, Basis::Measured));
}

#[test]
fn what_was_weighed_goes_before_what_its_papers_say() {
    let build = build(
        r#"
        [parts.fridge]
        kind = "fridge"
        mass = "27.5 kg"
        [parts.bench]
        kind = "furniture"
        [items.as-bought]
        part = "fridge"
        [items.as-weighed]
        part = "fridge"
        mass = "28.2 kg ± 0.1 kg"
        [items.guessed]
        part = "fridge"
        mass = "about 30 kg"
        [items.bench]
        "#,
    );
    let mass = |name: &str| {
        build.items[name].mass.as_ref().map(|mass| (mass.likely().in_kg(), mass.basis))
    };
    assert_eq!(mass("as-bought"), Some((27.5, Basis::Papers)));
    assert_eq!(mass("as-weighed"), Some((28.2, Basis::Measured)));
    assert_eq!(mass("guessed"), Some((30.0, Basis::Typical)));
    assert_eq!(mass("bench"), None);
}

#[test]
fn every_word_that_is_understood_means_what_it_should() {
    let bank = |kind: &str| build(&format!("[bank]\nkind = \"{kind}\"\n")).bank.unwrap().kind;
    for (word, kind) in [
        ("AGM", Chemistry::Agm),
        ("agm", Chemistry::Agm),
        (" Gel ", Chemistry::Gel),
        ("LiFePO4", Chemistry::Lfp),
        ("lifepo4", Chemistry::Lfp),
        ("lithium", Chemistry::Lfp),
        ("LFP", Chemistry::Lfp),
        ("lead", Chemistry::Flooded),
    ] {
        assert_eq!(bank(word), kind, "{word}");
    }
    let build = build("tape = \"1/64\"\nwords = \"us\"\n[vehicle]\nkind = \"Caravan\"\n");
    assert_eq!((build.tape, build.words), (Tape::SixtyFourths, Words::Us));
    assert_eq!(build.vehicle.kind, VehicleKind::Trailer);
}

#[test]
fn a_place_is_told_from_the_faces_that_were_measured_from() {
    let build = build(
        r#"
        [parts.box]
        kind = "other"
        [items.a]
        part = "box"
        place = { from_front = "10 mm", from_right = "20 mm", on = "floor" }
        [items.b]
        part = "box"
        place = { below = "30 mm", faces = "back" }
        [items.d]
        part = "box"
        place = { on = "a" }
        [items.c]
        part = "box"
        "#,
    );
    let place = |name: &str| build.items[name].place.clone();
    let a = place("a").unwrap();
    assert!(matches!(a.x, Anchor::High(_)) && matches!(a.y, Anchor::Low(_)));
    assert!(matches!(&a.z, Anchor::Low(height) if height.likely().in_m() == 0.0));
    assert_eq!(a.on, None);
    let b = place("b").unwrap();
    assert!(matches!(b.z, Anchor::High(_)) && matches!(b.x, Anchor::Unsaid));
    assert_eq!(b.faces, Some(Direction::Rear));
    assert_eq!(place("c"), None);
    assert_eq!(place("d").unwrap().on.as_deref(), Some("a"));
}

#[test]
fn rows_are_in_their_own_unit_and_in_order_of_height() {
    let build = build(
        r#"
        [bays.galley]
        size = { width = "20 in", height = "40 in", depth = "20 in" }
        depths = { unit = "in", tolerance = "1/16 in", rows = [[30, 19.5], [10, 20]] }
        [parts.fridge]
        kind = "fridge"
        fixing = { screw = "4 mm", unit = "cm", rows = [[-1.2, 0]] }
        "#,
    );
    let depths = &build.bays["galley"].depths;
    assert_eq!(depths[0].height, Length::mm(254.0));
    assert!((depths[1].value.value.high.in_mm() - (19.5 + 0.0625) * 25.4).abs() < 1e-9);
}

#[test]
fn a_profile_may_be_closed_by_its_first_corner() {
    let text = |rows: &str| {
        format!(
            "[obstacles.arch.profile]\ncolumns = [\"above\", \"from_left\"]\nunit = \"mm\"\ncarried = \"1 m\"\nrows = {rows}\n"
        )
    };
    let open = build(&text("[[0, 0], [200, 0], [200, 300], [0, 300]]"));
    let closed = build(&text("[[0, 0], [200, 0], [200, 300], [0, 300], [0, 0]]"));
    assert_eq!(open.obstacles["arch"].shape, closed.obstacles["arch"].shape);
    let Shape::Profile { axes, tolerance, .. } = &open.obstacles["arch"].shape else { panic!() };
    assert_eq!(*axes, [(2, true), (1, false)]);
    assert_eq!(tolerance.basis, Basis::Typical);
}

#[test]
fn parts_have_files_of_their_own_and_other_texts_are_passed_over() {
    let folder = folder(&[
        ("parts/fridge.toml", "kind = \"fridge\"\nmass = \"27.5 kg\"\n"),
        ("build.toml", "[items.fridge]\n"),
        ("weather/summer.toml", "not = = toml"),
        ("notes.toml", "nor = = this"),
    ]);
    let mass = folder.build().items["fridge"].mass.clone().unwrap();
    assert_eq!((mass.likely().si(), &*mass.source), (27.5, "parts/fridge.toml:2"));
}

#[test]
fn what_cannot_be_opened_is_told_of() {
    let temp = tempfile::tempdir().unwrap();
    let told = |folder: &std::path::Path| Folder::open(folder).unwrap_err().list;
    let missing = told(&temp.path().join("nowhere"));
    assert!(missing[0].says.starts_with("there is no folder") && missing.len() == 1);
    let empty = told(temp.path());
    assert!(empty[0].says.starts_with("there is no build.toml in") && empty.len() == 1);
    fs::write(temp.path().join("build.toml"), "about = \"a van\"\n").unwrap();
    assert!(Folder::open(temp.path()).is_ok());
    // What an editor keeps beside the files is none of them.
    fs::create_dir(temp.path().join("parts")).unwrap();
    fs::write(temp.path().join("parts/.#pump.toml"), "= =").unwrap();
    fs::write(temp.path().join("parts/pump.toml~"), "= =").unwrap();
    assert!(Folder::open(temp.path()).is_ok());
    fs::create_dir(temp.path().join("parts/pump.toml")).unwrap();
    assert!(told(temp.path())[0].says.contains("parts/pump.toml cannot be read"));
    fs::remove_dir_all(temp.path().join("parts")).unwrap();
    fs::write(temp.path().join("parts"), "").unwrap();
    assert!(told(temp.path())[0].says.contains("parts cannot be read"));
    fs::remove_file(temp.path().join("parts")).unwrap();
    fs::remove_file(temp.path().join("build.toml")).unwrap();
    fs::create_dir(temp.path().join("build.toml")).unwrap();
    assert!(told(temp.path())[0].says.contains("build.toml cannot be read"));
}
