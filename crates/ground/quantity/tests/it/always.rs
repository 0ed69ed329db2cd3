//! What must hold for any text and any number.

use proptest::prelude::*;
use spile_quantity::*;

/// Calls `$call::<Q>` for every quantity.
macro_rules! for_all {
    ($call:ident($($argument:expr),*)) => {
        for_all!(@ $call ($($argument),*) Length Area Volume Mass Force Time Temperature
            TemperatureDifference Voltage Current Resistance Power Energy Charge Flow Pressure Angle
            Conductance Conductivity Share)
    };
    (@ $call:ident $arguments:tt $($kind:ident)*) => { $($call::<$kind> $arguments;)* };
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn what_is_printed_exactly_reads_back(bits in any::<u64>(), usual in -1e6..1e6) {
        for_all!(reads_back(f64::from_bits(bits)));
        for_all!(reads_back(usual));
        for_all!(reads_back(usual / 1e6));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(512))]

    #[test]
    fn no_text_is_too_strange(text in ".{0,40}") {
        for_all!(told(&text));
        told_of(&text, read_cable(&text).err());
        told_of(&text, read_capacity(&text).err());
    }

    #[test]
    fn no_text_that_looks_like_a_quantity_is_too_strange(
        parts in prop::collection::vec(prop::sample::select(PARTS), 0..10)
    ) {
        let text = parts.concat();
        for_all!(told(&text));
        told_of(&text, read_cable(&text).err());
        told_of(&text, read_capacity(&text).err());
    }

    #[test]
    fn decimals_that_are_read_are_printed_the_same(digits in 1..10_000_000_u32, behind in 0..6_usize) {
        let text = format!("{:.behind$}", f64::from(digits) / 10_f64.powi(behind as i32));
        let short = if text.contains('.') {
            text.trim_end_matches('0').trim_end_matches('.')
        } else {
            &text
        };
        for unit in Length::UNITS {
            let length = read::<Length>(&format!("{text} {}", unit.symbol())).unwrap().ranged.likely;
            prop_assert_eq!(exact_in(length, unit), format!("{short} {}", unit.symbol()));
        }
    }

    #[test]
    fn a_tolerance_is_the_number_it_leads_to(value in 0..100_000_u32, size in 0..100_000_u32) {
        let value = f64::from(value) / 100.0;
        let size = f64::from(size) / 1000.0;
        let ranged = read::<Length>(&format!("{value} mm ± {size} mm")).unwrap().ranged;
        let low = format!("{:.3} mm", value - size);
        let high = format!("{:.3} mm", value + size);
        prop_assert_eq!(ranged.low, read::<Length>(&low).unwrap().ranged.likely);
        prop_assert_eq!(ranged.high, read::<Length>(&high).unwrap().ranged.likely);
    }

    #[test]
    fn what_is_displayed_reads_back_within_its_last_digit(value in -1e6..1e6, width in 1e-6..1e4) {
        for_all!(displays(value, width));
    }

    #[test]
    fn rounding_to_a_tape_goes_the_way_it_says(mm in -20_000.0..20_000.0, step in 0..5_usize) {
        let tape = [
            Tape::Sixteenth,
            Tape::ThirtySecond,
            Tape::SixtyFourth,
            Tape::Millimetre,
            Tape::HalfMillimetre,
        ][step];
        let length = Length::mm(mm);
        let (below, above) = (tape.down(length).unwrap(), tape.up(length).unwrap());
        let near = tape.nearest(length).unwrap();
        let slack = Length::m(1.1e-9);
        prop_assert!(below.error <= slack && below.error > -tape.step() - slack);
        prop_assert!(above.error >= -slack && above.error < tape.step() + slack);
        prop_assert!(near.error.abs() <= tape.step() / 2.0 + slack);
        prop_assert!(near == below || near == above);
        prop_assert_eq!(near.mark.length() - length, near.error);
    }

    #[test]
    fn sections_print_as_they_read(mm2 in 1..100_000_u32) {
        let size = CableSize::Metric(Area::mm2(f64::from(mm2) / 100.0));
        prop_assert_eq!(read_cable(&size.to_string()), Ok(size));
    }
}

#[test]
fn whole_millimetres_and_sixty_fourths_round_trip() {
    let inch = Length::UNITS.iter().find(|unit| unit.symbol() == "in").unwrap();
    for number in 0..20_000 {
        let length = Length::mm(f64::from(number));
        assert_eq!(exact(length), format!("{number} mm"));
        assert_eq!(read::<Length>(&format!("{number} mm")).unwrap().ranged.likely, length);

        let (whole, part) = (number / 64, number % 64);
        let fraction = read::<Length>(&format!("{whole} {part}/64 in")).unwrap().ranged.likely;
        assert_eq!(exact_in(fraction, inch), format!("{} in", f64::from(number) / 64.0));
        assert_eq!(read::<Length>(&exact(fraction)).unwrap().ranged.likely, fraction);
    }
}

#[test]
fn digits_are_shown_as_far_as_they_are_known() {
    let shown = |text: &str| {
        let volts = read::<Voltage>(text).unwrap();
        display(&volts.ranged, volts.unit)
    };
    assert_eq!(shown("34.4 V ± 2 V"), "34 V");
    assert_eq!(shown("1.2834 V ± 0.02 V"), "1.28 V");
    assert_eq!(shown("0.753 V ± 10 mV"), "0.75 V");
    assert_eq!(shown("447 V ± 20 V"), "450 V");
    assert_eq!(shown("12345.6 V"), "12\u{202f}346 V");
    assert_eq!(shown("1140 V"), "1140 V");
    assert_eq!(shown("12.50 V"), "12.5 V");
    assert_eq!(shown("0.333333 V"), "0.3333 V");
    assert_eq!(shown("0 V"), "0 V");
    assert_eq!(shown("-0.001 V ± 0.1 V"), "0.0 V");
    assert_eq!(display_to(Share::of_one(0.756), &Share::UNITS[0], 0), "76 %");
    assert_eq!(display_to(Angle::degrees(15.0), &Angle::UNITS[0], 1), "15.0°");
}

const PARTS: &[&str] = &[
    "1",
    "20",
    "440",
    "1,140",
    "0",
    "000",
    ".5",
    "5/16",
    "/0",
    "½",
    "1e999",
    "e-3",
    " ",
    " ",
    " ",
    " ",
    "\u{a0}",
    "-",
    "+",
    "±",
    "+/-",
    "/",
    "to",
    "about",
    "~",
    "mm",
    "mm²",
    "in",
    "\"",
    "'",
    "ft",
    "m",
    "V",
    "Ah",
    "°C",
    "°F",
    "K",
    "%",
    "AWG",
    "SAE",
    "ga",
    "#",
    "@",
    "(",
    ")",
    "C20",
    "h",
    "kg",
    "W/(m·K)",
    "18446744073709551616",
    "outside",
    "x",
    "99999999999999999999",
    "²",
    "\u{0}",
];

fn told<Q: Readable>(text: &str) {
    match read::<Q>(text) {
        Ok(written) => {
            let ranged = written.ranged;
            assert!(ranged.low <= ranged.likely && ranged.likely <= ranged.high, "{text}");
            assert!(ranged.low.si().is_finite() && ranged.high.si().is_finite(), "{text}");
        }
        Err(misread) => told_of(text, Some(misread)),
    }
}

fn told_of(text: &str, misread: Option<Misread>) {
    if let Some(misread) = misread {
        assert_eq!(text.get(misread.span.clone()), Some(&*misread.found), "{text}: {misread:?}");
        assert!(!misread.expected.is_empty() && !misread.hint.is_empty(), "{text}: {misread:?}");
    }
}

fn reads_back<Q: Readable>(si: f64) {
    let quantity = Q::from_si(si);
    let can_be = si.is_finite() && quantity.impossible().is_none();
    for unit in Q::UNITS.iter().filter(|_| can_be) {
        let text = exact_in(quantity, unit);
        let back = read::<Q>(&text).unwrap_or_else(|e| panic!("{si:e} as {text}: {e}"));
        assert_eq!(back.ranged.likely.si().to_bits(), si.to_bits(), "{text}");
    }
}

fn displays<Q: Readable>(value: f64, width: f64) {
    for unit in Q::UNITS {
        let of = |number: f64| unit.of(number).unwrap();
        let (low, high) = (of(value - width), of(value + width));
        let ranged = Ranged::new(low, of(value), high).unwrap();
        if low.impossible().is_some() || high.impossible().is_some() {
            continue;
        }
        let text = display(&ranged, unit);
        let back = read::<Q>(&text).unwrap_or_else(|e| panic!("{text}: {e}"));
        let off = unit.number(back.ranged.likely) - value;
        assert!(off.abs() <= width * 0.501 + 1e-9, "{value} ± {width}: {text}");
    }
}
