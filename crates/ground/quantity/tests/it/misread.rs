//! What cannot be read is told with its place, what was expected and how to mend it.

use spile_quantity::MisreadKind::*;
use spile_quantity::*;

fn refused<Q: Readable>(text: &str, kind: MisreadKind, found: &str, hint: &str) {
    let misread = read::<Q>(text).expect_err(text);
    assert_eq!((misread.kind, &*misread.found), (kind, found), "{text}: {misread}");
    assert_eq!(&text[misread.span.clone()], found, "{text}: {misread}");
    assert!(misread.hint.contains(hint), "{text}: {misread}");
}

#[test]
fn numbers_that_are_none_or_two() {
    refused::<Length>("", Empty, "", "begin with the number");
    refused::<Length>("about", Empty, "", "begin with the number");
    refused::<Length>("wide", NoNumber, "wide", "begin with the number");
    refused::<Length>("NaN mm", NoNumber, "NaN", "begin with the number");
    refused::<Length>("inf", NoNumber, "inf", "begin with the number");
    refused::<Length>("1,140 mm", AmbiguousNumber, "1,140", "write `1140`, or `1.140` if");
    refused::<Length>("440 mm ± 1,500", AmbiguousNumber, "1,500", "`1500`, or `1.500`");
    refused::<Length>("4.4.0 mm", BadNumber, "4.4.0", "such as `44.5`");
    refused::<Length>("20..30 mm", BadNumber, "20..30", "`20 to 30`");
    refused::<Length>("5. mm", BadNumber, "5.", "behind the point");
    refused::<Length>("17 21/16 in", BadNumber, "17 21/16", "below one");
    refused::<Length>("1/0 in", BadNumber, "1/0", "other than 0");
    refused::<Length>("1e999 m", OutOfRange, "1e999 m", "fewer digits");
    refused::<Length>("1e-999 m", OutOfRange, "1e-999 m", "fewer digits");
    refused::<Length>("1e99999999999 m", OutOfRange, "1e99999999999", "fewer digits");
    refused::<Length>("1.23456789012345678901 m", OutOfRange, "1.23456789012345678901", "fewer");
}

#[test]
fn units_that_are_missing_unknown_or_of_another_kind() {
    refused::<Length>("440", NoUnit, "440", "such as `440 mm`");
    refused::<Voltage>("24 ± 5 %", NoUnit, "24", "such as `24 V`");
    refused::<Length>("440 furlongs", UnknownUnit, "furlongs", "one of `mm`");
    refused::<Length>("5² mm", UnknownUnit, "²", "one of `mm`");
    refused::<Length>("440 Mm", UnknownUnit, "Mm", "is `mm` meant?");
    refused::<Power>("5 mw", UnknownUnit, "mw", "is `mW` or `MW` meant?");
    refused::<Length>("25 kg", WrongQuantity { found: "mass" }, "kg", "`kg` is a unit of mass");
    refused::<Length>("440 mm²", WrongQuantity { found: "area" }, "mm²", "a unit of area");
    refused::<Area>("6 mm", WrongQuantity { found: "length" }, "mm", "`mm²`");
    refused::<Current>("7 Ah", WrongQuantity { found: "charge" }, "Ah", "without the hours");
    refused::<Force>("25 kg", WrongQuantity { found: "mass" }, "kg", "`kgf`");
    refused::<Power>("5000 BTU", WrongQuantity { found: "energy" }, "BTU", "`BTU/h`");
    refused::<Angle>("20 °C", WrongQuantity { found: "temperature" }, "°C", "`°`");
    refused::<Volume>("8 gal", AmbiguousUnit, "gal", "US or the imperial");
    refused::<Mass>("1 ton", AmbiguousUnit, "ton", "`t` (1000 kg)");
    refused::<Power>("2 hp", AmbiguousUnit, "hp", "write watts");
}

#[test]
fn tolerances_that_are_half_or_crossed() {
    refused::<Length>("440 mm +2", BadTolerance, "+2", "both sides");
    refused::<Length>("440 mm +3/+1", BadTolerance, "+3/+1", "both sides");
    refused::<Length>("440 mm ± -2", BadTolerance, "± -2", "both sides");
    refused::<Length>("20-30 mm", BadTolerance, "-30 mm", "`20 to 30 mm`");
    refused::<Length>("20–30 mm", BadTolerance, "–30 mm", "`20 to 30 mm`");
    refused::<Length>("30 to 20 mm", BadTolerance, "30 to 20 mm", "smaller number first");
    refused::<Length>("440 mm +1/-3 cm", BadTolerance, "440 mm +1/-3 cm", "behind each");
    refused::<Voltage>("24 V +10 %/-15", BadTolerance, "+10 %/-15", "both sides");
    refused::<Temperature>("20 °C ± 5 %", BadTolerance, "20 °C ± 5 %", "in `K`");
    refused::<Temperature>("20 °C -5 %/+2 K", BadTolerance, "20 °C -5 %/+2 K", "in `K`");
}

#[test]
fn what_cannot_be_or_does_not_belong() {
    refused::<Temperature>("-1 K", Impossible, "-1 K", "check the number");
    refused::<Temperature>("-200 °C ± 100 K", Impossible, "-200 °C ± 100 K", "check the number");
    refused::<Share>("80", Impossible, "80", "check the number");
    refused::<Share>("0.8 ± 5 %", Impossible, "0.8 ± 5 %", "check the number");
    refused::<Length>("440 mm wide", Trailing, "wide", "leave it out");
    refused::<Length>("2 ft 14 in", Trailing, "2 ft 14 in", "less than one of it");
    refused::<Length>("2.5 ft 3 in", Trailing, "2.5 ft 3 in", "a whole number");
    refused::<Length>("1'140 mm", Trailing, "1'140 mm", "one number and unit");
    refused::<Length>("440 mm × 300 mm", Trailing, "× 300 mm", "leave it out");
}

#[test]
fn the_message_says_all_of_it() {
    let message = read::<Length>("25 kg").unwrap_err().to_string();
    assert_eq!(
        message,
        "`kg`: expected a length such as `440 mm`; `kg` is a unit of mass; write one of `mm`, \
         `cm`, `m`, `in`, `ft`, `km`"
    );
    let message = read::<Area>("").unwrap_err().to_string();
    assert_eq!(message, "expected an area such as `1.5 mm²`; begin with the number");
}
