//! What stands on which axle, against plane statics: a beam is in balance.

use std::path::Path;

use spile_axle::{answer, standings};
use spile_build::Folder;

#[test]
fn axles_carry_the_whole_and_its_moment() {
    for name in ["heron", "tern", "bittern"] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo").join(name);
        let folder = Folder::open(&path).unwrap();
        let standings = standings(folder.build());
        assert_eq!(standings.len(), folder.build().loads.len().max(1), "{name}");
        for standing in standings {
            let on: f64 = standing.axles.iter().map(|on| on.load.in_kg()).sum();
            let turn: f64 = standing.axles.iter().map(|on| on.load.in_kg() * on.at.in_m()).sum();
            let total_kg = standing.total.in_kg();
            assert!((on - total_kg).abs() < 1e-6, "{name}: {on} kg, not {total_kg}");
            assert!((turn - total_kg * standing.centre.in_m()).abs() < 1e-6, "{name}: {turn}");
        }
    }
}

/// In the state that the answer tells of, the picture has the same figure.
#[test]
fn the_picture_is_that_of_the_answer() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron");
    let folder = Folder::open(&path).unwrap();
    let (answer, standings) = (answer(folder.build()), standings(folder.build()));
    for name in ["front", "rear"] {
        let finding = answer.findings.iter().find(|finding| finding.id == name).unwrap();
        let state = standings.iter().find(|one| finding.label.ends_with(&one.state)).unwrap();
        let on = state.axles.iter().find(|on| on.name == name).unwrap();
        assert!((on.load.in_kg() - finding.figure.unwrap().likely).abs() < 1e-9, "{name}");
    }
}
