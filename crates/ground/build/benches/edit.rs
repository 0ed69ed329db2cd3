//! How long heron takes to be edited, tried and saved to disk.
//!
//! `cargo bench -p spile-build` prints the medians.

#![allow(missing_docs, reason = "criterion's macros write functions without docs")]

use std::fs;
use std::hint::black_box;
use std::path::Path;

use criterion::{Criterion, criterion_group, criterion_main};
use spile_build::Folder;
use spile_build::edit::{Edit, Scope, Store};

fn edit(c: &mut Criterion) {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron");
    let heron = Folder::open(&demo).expect("heron is in order");
    let folder = tempfile::tempdir().expect("a folder for a while");
    for file in heron.files().all() {
        let path = folder.path().join(&file.name);
        fs::create_dir_all(path.parent().expect("a folder")).expect("it can be made");
        fs::write(path, &file.text).expect("it can be written");
    }
    let mut store = Store::open(folder.path()).expect("heron is in order");
    let scope = Scope::option("galley-fridge", "upright");
    let mut number = 0;
    let mut moved = || {
        number = (number + 1) % 20;
        [Edit::set(&scope, "items.upright.place.from_left", format!("{number} mm"))]
    };
    c.bench_function("try a move within the job", |b| {
        b.iter(|| store.tried(black_box(&moved())));
    });
    c.bench_function("save a move within the job", |b| {
        b.iter(|| store.save(&moved()).expect("it is saved"));
    });
    let mut there = false;
    c.bench_function("save another name, two files", |b| {
        b.iter(|| {
            there = !there;
            let [from, to] = if there { ["bench", "seat"] } else { ["seat", "bench"] };
            let job =
                Edit::set(&scope, "items.upright.contents", if there { "29 kg" } else { "30 kg" });
            let name = Edit::rename(&Scope::Base, &format!("items.{from}"), to);
            store.save(&[name, job]).expect("it is saved")
        });
    });
}

criterion_group!(benches, edit);
criterion_main!(benches);
