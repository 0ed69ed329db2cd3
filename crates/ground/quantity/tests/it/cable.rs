//! Cable sizes and capacities.

use spile_quantity::*;

/// Gauge, diameter [mm], section [mm²], circular mils of solid wire: public copies of the table of
/// ASTM B258.
const ASTM_B258: [(&str, f64, f64, f64); 15] = [
    ("18", 1.0237, 0.823, 1624.0),
    ("16", 1.2908, 1.309, 2583.0),
    ("14", 1.6277, 2.081, 4107.0),
    ("12", 2.0525, 3.309, 6530.0),
    ("10", 2.5882, 5.261, 10383.0),
    ("8", 3.2636, 8.366, 16510.0),
    ("6", 4.1154, 13.302, 26251.0),
    ("4", 5.1894, 21.151, 41741.0),
    ("3", 5.8273, 26.670, 52635.0),
    ("2", 6.5437, 33.631, 66371.0),
    ("1", 7.3481, 42.408, 83693.0),
    ("1/0", 8.2515, 53.475, 105_535.0),
    ("2/0", 9.2658, 67.431, 133_077.0),
    ("3/0", 10.4049, 85.029, 167_806.0),
    ("4/0", 11.6840, 107.219, 211_600.0),
];

#[test]
fn gauges_have_the_sizes_of_the_standard() {
    for (gauge, mm, mm2, cmil) in ASTM_B258 {
        let CableSize::Awg(awg) = read_cable(&format!("{gauge} AWG")).unwrap() else {
            panic!("{gauge} AWG is no American gauge");
        };
        assert!((awg.diameter().in_mm() - mm).abs() <= 0.000_05, "{gauge}: {:?}", awg.diameter());
        assert!((awg.area().in_mm2() - mm2).abs() <= 0.000_5, "{gauge}: {:?}", awg.area());
        let mils = Area::UNITS.iter().find(|unit| unit.symbol() == "cmil").unwrap();
        assert!((mils.number(awg.area()) - cmil).abs() <= 0.5, "{gauge}: {:?}", awg.area());
        assert_eq!(awg.to_string(), gauge);
    }
}

#[test]
fn a_gauge_number_is_kept() {
    for number in -3..=30 {
        assert_eq!(Awg::new(number).map(Awg::number), Some(number));
    }
    assert_eq!((Awg::new(-4), Awg::new(31), Awg::new(256)), (None, None, None));
}

#[test]
fn sizes_are_read_in_the_ways_they_are_written() {
    let awg = |number| CableSize::Awg(Awg::new(number).unwrap());
    let sae = |number| CableSize::Sae(Awg::new(number).unwrap());
    let mm2 = |value| CableSize::Metric(Area::mm2(value));
    let cases = [
        ("1.5 mm2", mm2(1.5)),
        ("1.5mm²", mm2(1.5)),
        ("1,5 mm²", mm2(1.5)),
        ("16 sq mm", mm2(16.0)),
        ("120 mm^2", mm2(120.0)),
        ("6 AWG", awg(6)),
        ("6awg", awg(6)),
        ("AWG 6", awg(6)),
        ("AWG6", awg(6)),
        ("#6 AWG", awg(6)),
        ("AWG #6", awg(6)),
        ("2/0 AWG", awg(-1)),
        ("AWG 2/0", awg(-1)),
        ("00 AWG", awg(-1)),
        ("0000 AWG", awg(-3)),
        ("0 AWG", awg(0)),
        ("1/0 AWG", awg(0)),
        ("30 AWG", awg(30)),
        ("6 SAE", sae(6)),
        ("SAE 6", sae(6)),
        ("SAE 6 gauge", sae(6)),
        ("1/0 sae", sae(0)),
        ("6 mm outside", CableSize::Outside(Length::mm(6.0))),
        ("6 mm OD", CableSize::Outside(Length::mm(6.0))),
        ("6 mm outside diameter", CableSize::Outside(Length::mm(6.0))),
        ("1/4 in OD", CableSize::Outside(Length::mm(6.35))),
    ];
    for (text, size) in cases {
        assert_eq!(read_cable(text), Ok(size), "{text}");
        assert_eq!(read_cable(&size.to_string()), Ok(size), "{size}");
    }
}

#[test]
fn what_leaves_a_size_open_is_asked_about() {
    use MisreadKind::*;
    let cases = [
        ("6 mm", AmbiguousCable, "6 mm", "write `6 mm²`, or `6 mm outside`"),
        ("6 ga", AmbiguousCable, "6 ga", "`6 AWG` or `6 SAE`"),
        ("6 gauge", AmbiguousCable, "6 gauge", "`6 AWG` or `6 SAE`"),
        ("#6", AmbiguousCable, "#6", "`6 AWG` or `6 SAE`"),
        ("2/0", AmbiguousCable, "2/0", "`2/0 AWG` or `2/0 SAE`"),
        ("0000", AmbiguousCable, "0000", "`4/0 AWG` or `4/0 SAE`"),
        ("AWG 6 SAE", AmbiguousCable, "AWG 6 SAE", "`6 AWG` or `6 SAE`"),
        ("6", NoUnit, "6", "`6 mm²` or `6 AWG`"),
        ("5/0 AWG", NoSuchGauge, "5/0 AWG", "from 4/0 to 30"),
        ("31 AWG", NoSuchGauge, "31 AWG", "from 4/0 to 30"),
        ("99999999999 AWG", NoSuchGauge, "99999999999 AWG", "from 4/0 to 30"),
        ("7.5 AWG", UnknownUnit, "AWG", "whole number"),
        ("2 x 1.5 mm²", UnknownUnit, "x", "the section of one core"),
        ("2x1.5 mm²", UnknownUnit, "x1.5", "the section of one core"),
        ("about 6 mm²", BadTolerance, "about 6 mm²", "as it is printed on the cable"),
        ("6 mm² ± 5 %", BadTolerance, "6 mm² ± 5 %", "as it is printed on the cable"),
        ("0 mm²", Impossible, "0 mm²", "above 0"),
        ("-6 mm outside", Impossible, "-6 mm outside", "above 0"),
        ("6 kg", WrongQuantity { found: "mass" }, "kg", "`kg` is a unit of mass"),
        ("6 mm² red", Trailing, "red", "leave it out"),
        ("", Empty, "", "begin with the number"),
    ];
    for (text, kind, found, hint) in cases {
        let misread = read_cable(text).expect_err(text);
        assert_eq!((misread.kind, &*misread.found), (kind, found), "{text}: {misread}");
        assert!(misread.hint.contains(hint), "{text}: {misread}");
    }
}

#[test]
fn a_battery_is_read_with_its_hour_rate() {
    let hours = |hours| Some(Time::hours(hours));
    let cases = [
        ("95 Ah", None),
        ("95 Ah @ 20 h", hours(20.0)),
        ("95 Ah at 20 h", hours(20.0)),
        ("95 Ah at the", None),
        ("95 Ah (C20)", hours(20.0)),
        ("95 Ah C20", hours(20.0)),
        ("95 Ah C/20", hours(20.0)),
        ("95 Ah (20 h rate)", hours(20.0)),
        ("95 Ah@5h", hours(5.0)),
        ("95 Ah ± 5 % @ 10 hours", hours(10.0)),
    ];
    for (text, rate) in cases {
        match read_capacity(text) {
            Ok(capacity) => {
                assert_eq!(capacity.charge.ranged.likely, Charge::ah(95.0), "{text}");
                assert_eq!(capacity.hour_rate, rate, "{text}");
            }
            Err(misread) => assert_eq!(text, "95 Ah at the", "{misread}"),
        }
    }
    for text in ["95 Ah (C20", "95 Ah @ 0 h", "95 Ah C0", "95 Ah @ about 20 h", "95 Ah 20", "0 Ah"]
    {
        assert!(read_capacity(text).is_err(), "{text}");
    }
}
