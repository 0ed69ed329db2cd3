//! What the plot of cold boxes shows against what the answer says.

use crate::{ask, build, likely};

const BOX: &str = r#"
states.corner.hot-day.cabin = "36 °C"
[parts.box]
kind = "lidded box"
size = { width = "590 mm", height = "410 mm", depth = "370 mm" }
volume = "32 L"
power = { running = "40 W" }
[items.box]
part = "box"
"#;

#[test]
fn a_warmer_cabin_costs_more_and_the_hot_one_is_that_of_the_answer() {
    let picture = spile_cold::picture(&build(BOX)).expect("a box");
    let rises = picture
        .days
        .windows(2)
        .all(|pair| pair[0].energy < pair[1].energy && pair[0].duty[0] < pair[1].duty[0]);
    assert!(rises && picture.days.len() > 8);
    let hot = picture.days.iter().find(|day| day.cabin == picture.hot).expect("the hot cabin");
    assert!((100.0 * hot.duty[0] - likely(&ask(BOX), "box.duty")).abs() < 1e-9);
}

#[test]
fn without_a_compressor_there_is_no_plot() {
    assert_eq!(spile_cold::picture(&build("")), None);
}
