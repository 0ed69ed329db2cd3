//! Published sizes of units and equivalents.

use spile_quantity::*;

/// Where a figure is published, the text, the figure in the SI unit, and half its last digit.
type Row = (&'static str, &'static str, f64, f64);

fn check<Q: Readable>(rows: &[Row]) {
    for &(source, text, expected, tolerance) in rows {
        let ours = read::<Q>(text).unwrap_or_else(|e| panic!("{text}: {e}")).ranged.likely.si();
        assert!((ours - expected).abs() <= tolerance, "{text}: {ours}, {expected} by {source}");
    }
}

/// Exact: agreement of the English-speaking standards laboratories, 1959.
const YARD_AND_POUND: &str = "international yard and pound agreement, 1959";
/// Seven digits, as printed; recalled, and the same in pint's definitions.
const SP_811: &str = "NIST SP 811 (2008), appendix B.8";

#[test]
fn lengths_and_areas() {
    check::<Length>(&[
        (YARD_AND_POUND, "1 in", 0.0254, 0.0),
        (YARD_AND_POUND, "3 ft", 0.9144, 0.0),
        (YARD_AND_POUND, "1 ft 11 in", 0.5842, 0.0),
        ("ANSI paper, letter: 8 1/2 in by 11 in, 215.9 mm by 279.4 mm", "8½ in", 0.2159, 0.0),
        ("ANSI paper, letter: 8 1/2 in by 11 in, 215.9 mm by 279.4 mm", "11\"", 0.2794, 0.0),
        ("US plywood sheet of 4 ft by 8 ft: 1219.2 mm by 2438.4 mm", "8'", 2.4384, 0.0),
        ("inch fractions in millimetres: 23/32", "23/32 in", 0.018_256_25, 0.0),
        ("inch fractions in millimetres: 15/32", "15/32\"", 0.011_906_25, 0.0),
        ("inch fractions in millimetres: 5/8", "5/8 in", 0.015_875, 0.0),
        ("ASME B18.2.8 tap drill 7/32, 0.2188 in", "7/32 in", 0.2188 * 0.0254, 0.00005 * 0.0254),
    ]);
    check::<Area>(&[
        (SP_811, "1 cmil", 5.067_075e-10, 5e-17),
        (SP_811, "1 in2", 6.4516e-4, 0.0),
        ("ASTM B258: 4/0 is 211,600 circular mils, 107.2 mm²", "211.6 kcmil", 107.2e-6, 5e-8),
        ("ISO 216: a sheet of A0 is 1 m²", "999949 mm²", 0.841 * 1.189, 1e-15),
    ]);
}

#[test]
fn volumes_masses_and_forces() {
    check::<Volume>(&[
        ("US gallon: 231 cubic inches", "231 cu in", 3.785_411_784e-3, 0.0),
        (SP_811, "1 US gal", 3.785_412e-3, 5e-10),
        (SP_811, "1 ft³", 2.831_685e-2, 5e-9),
        (
            "Weights and Measures Act 1985: the gallon is 4.54609 litres",
            "1 imp gal",
            4.54609e-3,
            0.0,
        ),
    ]);
    check::<Mass>(&[
        (YARD_AND_POUND, "1 lb", 0.453_592_37, 0.0),
        (YARD_AND_POUND, "16 oz", 0.453_592_37, 0.0),
        (SP_811, "1 oz", 2.834_952e-2, 5e-9),
    ]);
    check::<Force>(&[
        (SP_811, "1 lbf", 4.448_222, 5e-7),
        ("standard acceleration of gravity, 3rd CGPM 1901", "1 kgf", 9.80665, 0.0),
    ]);
}

#[test]
fn pressures_flows_and_heat() {
    check::<Pressure>(&[
        (SP_811, "1 psi", 6.894_757e3, 5e-4),
        (SP_811, "1 bar", 1e5, 0.0),
        ("standard atmosphere, 14.696 psi", "14.696 psi", 101_325.0, 3.5),
    ]);
    check::<Flow>(&[(SP_811, "1 cfm", 4.719_474e-4, 5e-11), (SP_811, "1 l/min", 1e-3 / 60.0, 0.0)]);
    check::<Energy>(&[(SP_811, "1 BTU", 1.055_056e3, 5e-4), (SP_811, "1 kWh", 3.6e6, 0.0)]);
    check::<Power>(&[
        (SP_811, "1 BTU/h", 2.930_711e-1, 5e-8),
        ("ton of refrigeration, 12,000 BTU/h, is 3517 W (SP 811)", "12000 BTU/h", 3516.853, 5e-4),
    ]);
    check::<Charge>(&[(SP_811, "1 Ah", 3.6e3, 0.0)]);
}

#[test]
fn temperatures_and_angles() {
    check::<Temperature>(&[
        ("steam point", "212 °F", 100.0, 0.0),
        ("where the scales meet", "-40 °F", -40.0, 0.0),
        ("absolute zero in SP 811", "-459.67 °F", -273.15, 0.0),
        ("triple point of water", "273.16 K", 0.01, 0.0),
    ]);
    check::<TemperatureDifference>(&[(SP_811, "9 °F", 5.0, 0.0)]);
    check::<Angle>(&[
        (SP_811, "1°", 1.745_329e-2, 5e-9),
        ("a sixth of a turn, π/3", "60°", std::f64::consts::FRAC_PI_3, 2e-16),
    ]);
}
