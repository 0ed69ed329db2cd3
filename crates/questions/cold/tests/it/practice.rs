//! What is usual and what was published, each with its source beside it.

use crate::{ask, finding, likely, words};

/// A mid-size fridge by its sizes and power alone, free in a cabin.
fn by_sizes(cabin_c: f64) -> String {
    format!(
        r#"
        states.corner.hot-day.cabin = "{cabin_c} °C"
        [parts.fridge]
        kind = "upright fridge"
        size = {{ width = "475 mm", height = "780 mm", depth = "495 mm" }}
        volume = "92 L"
        [items.fridge]
        part = "fridge"
        "#
    )
}

/// The same with what its papers say it uses in a day.
fn by_papers(cabin_c: f64) -> String {
    by_sizes(cabin_c)
        + r#"
        [[parts.fridge.consumption]]
        ambient = "25 °C"
        inside = "5 °C"
        per_day = "360 Wh"
        [[parts.fridge.consumption]]
        ambient = "32 °C"
        inside = "5 °C"
        per_day = "550 Wh"
        "#
}

#[test]
fn duty_is_in_the_usual_bands() {
    // Common practice, no source: a mid-size fridge runs 25 to 30 % at 20 °C, 45 to 55 % at 32 to
    // 35, 75 to 90 % at 43; magnitudes within 30 %.
    let bands = [(20.0, 25.0, 30.0), (33.5, 45.0, 55.0), (43.0, 75.0, 90.0)];
    for (cabin_c, low, high) in bands {
        for text in [by_sizes(cabin_c), by_papers(cabin_c)] {
            let duty = likely(&ask(&text), "fridge.duty");
            assert!((0.7 * low..=1.3 * high).contains(&duty), "{cabin_c} °C: {duty} %");
        }
    }
}

#[test]
fn in_use_it_takes_somewhat_more_than_its_papers_say() {
    // Papers state a shut box. A household's openings and warm food add some 10 to 35 % (common
    // practice, no source). The figure of a hot day is at its mean, 5 K below the afternoon.
    for (cabin_c, stated_wh) in [(30.0, 360.0), (37.0, 550.0)] {
        let text = by_papers(cabin_c).replace("states.", "wants.inside = \"5 °C\"\n states.");
        let answer = ask(&text);
        let used_wh = 12.0 * likely(&answer, "use");
        let ratio = used_wh / stated_wh;
        assert!((1.02..1.35).contains(&ratio), "{cabin_c} °C: {ratio} times the papers");
    }
}

#[test]
fn freezing_takes_half_as_much_again_to_twice_as_much() {
    // Common practice, no source: freezing takes 1.5 to 2 times; magnitudes within 30 %.
    let at = |inside_c: f64| {
        let text = by_papers(33.0)
            .replace("states.", &format!("wants.inside = \"{inside_c} °C\"\n states."));
        likely(&ask(&text), "fridge.duty")
    };
    let ratio = at(-15.0) / at(4.0);
    assert!((1.5 * 0.7..=2.0 * 1.3).contains(&ratio), "{ratio}");
}

#[test]
fn food_temperatures_are_those_of_the_authorities() {
    // USA: 40 °F (4.4 °C) at most. United Kingdom, advice: 5 °C at most.
    let cases = [
        ("UK", "5 °C", None),
        ("UK", "5.5 °C", Some(5.0)),
        ("US", "40 °F", None),
        ("US", "41 °F", Some(4.4)),
    ];
    for (word, inside, limit) in cases {
        let text = format!("words = \"{word}\"\nwants.inside = \"{inside}\"\n{}", by_sizes(33.0));
        let answer = ask(&text);
        let found = answer.findings.iter().find(|finding| finding.id == "inside");
        let got = found.map(|finding| finding.limit.as_ref().unwrap().value);
        // 40 °F are 4.44 °C, printed as 4.4.
        let printed = found.filter(|finding| finding.figure.unwrap().likely - got.unwrap() > 0.05);
        assert_eq!(printed.and(got), limit, "{word}, {inside}");
        if let Some(finding) = printed {
            assert_eq!(words(finding), "care practice");
        }
    }
}

#[test]
fn warm_food_weighs_as_its_data_book_says() {
    // Earle, Unit Operations in Food Processing, appendix 7: milk 3.9 kJ/(kg·K). By hand: two
    // people, 1 kg each, from 33 to 4 °C: 2·3900·29 J = 226.2 kJ a day = 2.6 W.
    let answer = ask(&by_papers(33.0));
    let working = &finding(&answer, "fridge.duty").working;
    let load = working.iter().find(|step| step.what == "heat that comes in").unwrap();
    let parts: Vec<&str> = load.numbers.split(" + ").collect();
    assert_eq!(parts[3], "2.6");
}
