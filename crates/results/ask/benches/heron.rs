//! How long heron takes to be read and to be answered, warm.
//!
//! `cargo bench -p spile-ask` prints the medians; the README quotes them with the machine.

#![allow(missing_docs, reason = "criterion's macros write functions without docs")]

use std::hint::black_box;
use std::path::Path;

use criterion::{Criterion, criterion_group, criterion_main};
use spile_ask::ask;
use spile_build::Folder;

fn heron(c: &mut Criterion) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron");
    let folder = Folder::open(&path).expect("heron is in order");
    let planned = folder.plan("galley-fridge", None).expect("the job goes together");
    c.bench_function("read heron with its jobs", |b| {
        b.iter(|| Folder::open(black_box(&path)));
    });
    c.bench_function("plan the job", |b| {
        b.iter(|| folder.plan(black_box("galley-fridge"), None));
    });
    c.bench_function("ask all questions as it stands", |b| {
        b.iter(|| ask("heron", black_box(folder.build()), None));
    });
    c.bench_function("ask all questions before and after", |b| {
        b.iter(|| ask("heron", black_box(folder.build()), Some(&planned)));
    });
    for (name, answer) in [
        ("fit", spile_fit::answer as fn(&spile_build::Build) -> spile_answer::Answer),
        ("air", spile_air::answer),
        ("hold", spile_hold::answer),
        ("wire", spile_wire::answer),
        ("cold", spile_cold::answer),
        ("bank", spile_bank::answer),
        ("axle", spile_axle::answer),
    ] {
        c.bench_function(&format!("{name} alone, after"), |b| {
            b.iter(|| answer(black_box(&planned.after)));
        });
    }
}

criterion_group!(benches, heron);
criterion_main!(benches);
