//! The ways in which people write quantities.

use spile_quantity::*;

fn mm(text: &str) -> f64 {
    read::<Length>(text).unwrap_or_else(|e| panic!("{text}: {e}")).ranged.likely.in_mm()
}

fn bounds<Q: Readable>(text: &str) -> [f64; 3] {
    let ranged = read::<Q>(text).unwrap_or_else(|e| panic!("{text}: {e}")).ranged;
    [ranged.low, ranged.likely, ranged.high].map(Quantity::si)
}

#[test]
fn lengths_are_read_in_every_spelling() {
    let half_inch =
        ["1/2 in", "1/2\"", "½ in", "½″", "0.5 inch", "0,5 in", ".5 in", "1⁄2 in", "5e-1 IN"];
    for text in half_inch {
        assert_eq!(mm(text), 12.7, "{text}");
    }
    for text in ["17 5/16 in", "17-5/16\"", "17–5/16 inches", "17  5/16\u{a0}in", "1 ft 5 5/16 in"]
    {
        assert_eq!(read::<Length>(text).unwrap().ranged.likely, Length::m(0.439_737_5), "{text}");
    }
    let mixed =
        ["2 ft 3 1/4 in", "2' 3 1/4\"", "2'3¼\"", "2'-3 1/4\"", "2′ 3 1/4″", "2 feet 3.25 inches"];
    for text in mixed {
        assert_eq!(read::<Length>(text).unwrap().ranged.likely, Length::m(0.692_15), "{text}");
    }
    assert_eq!(mm("-2 ft 3 in"), -685.8);
    assert_eq!(mm("−44,5 mm"), -44.5);
    assert_eq!(mm("44cm"), 440.0);
    assert_eq!(mm("440 Millimetres"), 440.0);
}

#[test]
fn thousands_are_read_only_where_they_are_plain() {
    for text in ["1140 mm", "1 140 mm", "1\u{202f}140 mm", "1,140.0 mm", "1.140,0 mm", "1.14e3 mm"]
    {
        assert_eq!(mm(text), 1140.0, "{text}");
    }
    for text in ["1,140,000 mm", "1.140.000 mm", "1 140 000 mm"] {
        assert_eq!(mm(text), 1_140_000.0, "{text}");
    }
    for text in ["1.140 mm", "1,14 mm", "1,1400 mm", "0001,140 mm"] {
        assert_eq!(mm(text), 1.14, "{text}");
    }
    assert_eq!(mm("0,750 m"), 750.0);
}

#[test]
fn tolerances_are_bounds() {
    for text in [
        "440 mm ± 2 mm",
        "440 ± 2 mm",
        "440 mm +/- 2",
        "440mm±2mm",
        "440 mm +2/-2",
        "440 mm ± 0.2 cm",
    ] {
        assert_eq!(bounds::<Length>(text), [0.438, 0.44, 0.442], "{text}");
    }
    for text in ["440 mm +0/-3", "440 mm +0 -3", "440 mm -3/+0", "440 -3/+0 mm", "440 mm +0, -3 mm"]
    {
        assert_eq!(bounds::<Length>(text), [0.437, 0.44, 0.44], "{text}");
    }
    assert_eq!(bounds::<Length>("440 mm +1 mm/-3 mm"), [0.437, 0.44, 0.441]);
    assert_eq!(bounds::<Length>("17 1/2 in +1/16/-1/8"), [0.441_325, 0.4445, 0.446_087_5]);
    assert_eq!(bounds::<Voltage>("24 V ± 5 %"), [22.8, 24.0, 25.2]);
    assert_eq!(bounds::<Voltage>("24 V +10/-15 %"), [20.4, 24.0, 26.4]);
    assert_eq!(bounds::<Current>("-10 A ± 10 %"), [-11.0, -10.0, -9.0]);
    assert_eq!(bounds::<Temperature>("68 °F ± 9 °F"), [15.0, 20.0, 25.0]);
    assert_eq!(bounds::<Temperature>("20 °C ± 2 K"), [18.0, 20.0, 22.0]);
}

#[test]
fn ranges_and_guesses_say_what_they_are() {
    let written = read::<Resistance>("20 to 30 mΩ").unwrap();
    assert!(written.tolerance_given && written.likely_is_middle && !written.about);
    assert_eq!(bounds::<Resistance>("20 to 30 mΩ"), [0.02, 0.025, 0.03]);
    assert_eq!(bounds::<Length>("8 mm to 2 cm"), [0.008, 0.014, 0.02]);
    assert_eq!(bounds::<Temperature>("-10 to 50 °C"), [-10.0, 20.0, 50.0]);

    for text in ["about 440 mm", "ca. 440 mm", "~440 mm", "Approx. 440 mm"] {
        let written = read::<Length>(text).unwrap();
        assert!(written.about && !written.tolerance_given, "{text}");
        assert_eq!(written.ranged, Ranged::exactly(Length::mm(440.0)), "{text}");
        assert_eq!(written.text, text);
    }
    let written = read::<Length>("about 440 mm ± 10 mm").unwrap();
    assert!(written.about && written.tolerance_given && !written.likely_is_middle);
    assert_eq!(read::<Length>("2 ft 3 in").unwrap().unit.symbol(), "in");
}

#[test]
fn prefixes_that_look_alike_are_told_apart() {
    assert_eq!(bounds::<Power>("5 mW")[1], 0.005);
    assert_eq!(bounds::<Power>("5 MW")[1], 5e6);
    for text in ["5 µA", "5 μA", "5 uA"] {
        assert_eq!(bounds::<Current>(text)[1], 5e-6, "{text}");
    }
    for text in ["20 mΩ", "20 m\u{2126}", "20 mohm", "20 milliohms"] {
        assert_eq!(bounds::<Resistance>(text)[1], 0.02, "{text}");
    }
    for text in ["0.034 W/(m K)", "0.034 W/(m·K)", "0.034 W/mK", "0.034 W/m K", "34 mW/mK"] {
        assert_eq!(bounds::<Conductivity>(text)[1], 0.034, "{text}");
    }
    for text in ["210 MPa", "210 N/mm2", "210 N/mm²", "210 N/mm^2"] {
        assert_eq!(bounds::<Pressure>(text)[1], 210e6, "{text}");
    }
    assert_eq!(bounds::<Pressure>("210 MPa")[1], Pressure::mpa(210.0).in_pa());
    assert_eq!(bounds::<Time>("1 h 30 min")[1], 5400.0);
    assert_eq!(bounds::<Charge>("7 A s")[1], 7.0);
    assert_eq!(bounds::<Voltage>("12 V DC")[1], 12.0);
}

#[test]
fn shares_are_read_with_percent_or_without() {
    for text in ["80 %", "80%", "0.8", "0,8", "80 percent", "4/5"] {
        assert_eq!(bounds::<Share>(text), [0.8; 3], "{text}");
    }
    assert_eq!(bounds::<Share>("80 % ± 5 %"), [0.75, 0.8, 0.85]);
    assert_eq!(bounds::<Share>("0.8 ± 0.05"), [0.75, 0.8, 0.85]);
    assert_eq!(bounds::<Share>("70 to 80 %"), [0.7, 0.75, 0.8]);
}

#[test]
fn a_unit_alone_serves_plain_numbers() {
    let unit = read_unit::<Length>(" mm ").unwrap();
    assert_eq!(unit.of(440.0), Some(Length::mm(440.0)));
    assert_eq!(unit.of(f64::NAN), None);
    assert_eq!(read_unit::<Length>("").unwrap_err().kind, MisreadKind::Empty);
    assert_eq!(read_unit::<Length>("5 mm").unwrap_err().kind, MisreadKind::UnknownUnit);
    assert_eq!(
        read_unit::<Length>("kg").unwrap_err().kind,
        MisreadKind::WrongQuantity { found: "mass" }
    );
}
