//! The limit bar.

use maud::Markup;
use roxmltree::Document;
use spile_answer::{Class, Figure, Finding, Limit, Sense, Unit, Verdict};
use spile_sheet::bar::Scale;
use spile_sheet::{BarSize, limit_bar};

fn finding(likely: f64, unfavourable: f64, limit: f64, sense: Sense) -> Finding {
    let mut finding = Finding::plain("fridge.start", "volts", Verdict::Good, "");
    finding.figure = Some(Figure { likely, unfavourable, unit: Unit::Millimetre });
    finding.limit = Some(Limit {
        value: limit,
        sense,
        class: Class::Limit,
        kind: "papers",
        source: "".into(),
        firm: true,
    });
    finding
}

fn percent(drawn: &Markup, class: &str, attribute: &str) -> Vec<f64> {
    let parsed = Document::parse(&drawn.0).unwrap_or_else(|error| panic!("{error}\n{}", drawn.0));
    let of_class = parsed.descendants().filter(|node| node.attribute("class") == Some(class));
    let places = of_class.filter_map(|node| node.attribute(attribute));
    places.map(|place| place.trim_end_matches('%').parse().unwrap()).collect()
}

/// 41 before, 34 after, 29 at worst, at least 30: on a scale from 0 to 45 the marks lie at 91.1,
/// 75.6 and 64.4 per cent, and the limit at two thirds.
#[test]
fn marks_stand_where_their_numbers_are() {
    let before = finding(41.0, 41.0, 30.0, Sense::AtLeast);
    let after = finding(34.0, 29.0, 30.0, Sense::AtLeast);
    for size in [BarSize::Compact, BarSize::Full] {
        let drawn = limit_bar(Some(&before), Some(&after), size, None);
        assert_eq!(percent(&drawn, "b-before", "cx"), [91.11]);
        assert_eq!(percent(&drawn, "b-after", "cx"), [75.56]);
        assert_eq!(percent(&drawn, "b-cap", "x1"), [64.44]);
        assert_eq!(percent(&drawn, "b-lab", "x"), [66.67]);
        assert_eq!(percent(&drawn, "b-past", "x2"), [66.67]);
        assert!(drawn.0.contains("30 mm") && drawn.0.contains("papers"));
    }
}

/// At 42 of at least 20, a full bar goes on to hold the mark; a compact one has a chevron.
#[test]
fn a_full_bar_stretches_and_a_compact_one_says_that_it_goes_on() {
    let now = finding(42.0, 37.0, 20.0, Sense::AtLeast);
    let full = limit_bar(None, Some(&now), BarSize::Full, None);
    let places = [percent(&full, "b-lab", "x")[0], percent(&full, "b-after", "cx")[0]];
    assert!(places[0] < 66.0 && places[1] < 100.0, "{places:?}");
    assert!((places[1] / places[0] - 42.0 / 20.0).abs() < 1e-3, "{places:?}");
    let compact = limit_bar(None, Some(&now), BarSize::Compact, None);
    assert!(percent(&compact, "b-after", "cx").is_empty());
    assert!(compact.0.contains("b-off"));
    let endless = finding(f64::INFINITY, f64::INFINITY, 3.0, Sense::AtMost);
    assert!(limit_bar(None, Some(&endless), BarSize::Full, None).0.contains("b-off"));
}

#[test]
fn coinciding_marks_become_a_ring_and_what_is_open_has_no_limit() {
    let now = finding(10.0, 10.0, 30.0, Sense::AtMost);
    let drawn = limit_bar(Some(&now), Some(&now), BarSize::Compact, None);
    assert_eq!(percent(&drawn, "b-before", "r"), [8.5]);
    let open = Finding::plain("tyres", "tyres <front>", Verdict::Open, "");
    let drawn = limit_bar(None, Some(&open), BarSize::Compact, None);
    assert!(drawn.0.contains("b-none") && !drawn.0.contains("b-limit"));
    assert!(Document::parse(&drawn.0).is_ok());
    assert!(limit_bar(None, None, BarSize::Full, None).0.is_empty());
}

#[test]
fn bars_of_one_list_may_share_a_scale() {
    let now = finding(10.0, 10.0, 20.0, Sense::AtLeast);
    let drawn = limit_bar(None, Some(&now), BarSize::Compact, Some(100.0));
    assert_eq!(percent(&drawn, "b-after", "cx"), [10.0]);
    assert_eq!(percent(&drawn, "b-lab", "tspan").len(), 0);
    let scale = Scale::new(0.0, [8.0, -3.0]).unwrap();
    assert!(scale.start() <= -3.0 && scale.end() >= 8.0);
    assert!((scale.limit_share() - 2.0 / 3.0).abs() < 1e-9);
}
