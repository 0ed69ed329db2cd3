//! Papers and drawings: well formed, to scale, whole, and nothing written over anything else.

mod bars;
mod drawn;
mod forces;
mod marks;
mod mistakes;
mod oneline;
mod plots;
mod points;
mod section;
mod seen;
mod volts;

use std::path::Path;

use spile_build::{Build, Folder};

/// The build of one text.
#[track_caller]
fn build(text: &str) -> Build {
    match Folder::from_texts([("build.toml", text)]) {
        Ok(folder) => folder.build().clone(),
        Err(problems) => panic!("{:?}\n{text}", problems.list),
    }
}

/// The demo build as it stands and after an option of its job.
fn heron(option: &str) -> [Build; 2] {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron");
    let planned = Folder::open(&path).unwrap().plan("galley-fridge", Some(option)).unwrap();
    [planned.before, planned.after]
}
