//! The whole circuit of a build with everything on, against Kirchhoff.

use spile_build::Folder;
use spile_circuit::scene::everything_on;

const TWO: &str = r#"
[bank]
capacity = "100 Ah"
[parts.lamp]
kind = "light"
power = { running = "24 W" }
[parts.pump]
kind = "water pump"
power = { running = "60 W" }
[items.lamp]
[items.pump]
[runs.lamp]
section = "1.5 mm2"
length = "5 m"
[runs.pump]
section = "2.5 mm2"
length = "3 m"
return = { by = "body", section = "2.5 mm2", length = "0.5 m" }
"#;

#[test]
fn currents_add_up_and_volts_fall_along_the_way() {
    let folder = Folder::from_texts([("build.toml", TWO)]).unwrap();
    let found = everything_on(folder.build()).expect("a circuit");
    let sum_a: f64 = found.runs.iter().map(|run| run.current.in_a()).sum();
    assert!((sum_a - found.current.in_a()).abs() < 1e-9);
    let body = found.body.expect("one returns through it");
    for (run, back) in found.runs.iter().zip([found.bus, body]) {
        let way = [found.post, found.block, run.fused, run.item[0], run.item[1], back];
        assert!(way.windows(2).all(|pair| pair[0] > pair[1]), "{run:?}");
    }
    assert!(body > found.bus && found.bus.in_v() > 0.0);
    // A lamp takes its power at any voltage, a pump its current at the nominal one.
    let [lamp, pump] = [&found.runs[0], &found.runs[1]];
    let watts = (lamp.item[0].in_v() - lamp.item[1].in_v()) * lamp.current.in_a();
    assert!((watts - 24.0).abs() < 1e-6 && (pump.current.in_a() - 5.0).abs() < 1e-9);
}

#[test]
fn without_a_bank_there_is_no_circuit() {
    let text = TWO.replace("[bank]\ncapacity = \"100 Ah\"\n", "");
    let folder = Folder::from_texts([("build.toml", text.as_str())]).unwrap();
    assert_eq!(everything_on(folder.build()), None);
}
