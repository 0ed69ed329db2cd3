//! Printing quantities: exactly, to be read back; or with as many digits as are known.

use crate::exact::Exact;
use crate::{Length, Ranged, Readable, Tape, Unit};

/// The shortest text in the first unit of its kind that [`read`](crate::read) turns into the same
/// number bit for bit; in the SI unit where the first unit has none.
///
/// A quantity that cannot be read (infinite, below absolute zero) is printed all the same.
///
/// ```
/// use spile_quantity::{Length, exact, read};
/// assert_eq!(exact(Length::m(0.43973750)), "439.7375 mm");
/// let third = Length::m(1.0) / 3.0;
/// assert_eq!(read::<Length>(&exact(third)).unwrap().ranged.likely, third);
/// ```
pub fn exact<Q: Readable>(quantity: Q) -> String {
    exact_in(quantity, &Q::UNITS[0])
}

/// The same in a given unit where that reads back, else in the SI unit.
pub fn exact_in<Q: Readable>(quantity: Q, unit: &Unit<Q>) -> String {
    let si = quantity.si();
    if let Some(number) = shortest_in(si, unit) {
        return with_unit(&number, unit.symbol());
    }
    let symbol = Q::UNITS.iter().chain(Q::BARE).find(|unit| unit.is_si()).map_or("", Unit::symbol);
    let number = if si.is_finite() { positional(&format!("{si:e}")) } else { si.to_string() };
    with_unit(&number, symbol)
}

/// The likely value with as many digits as its bounds leave certain, the last of them the first in
/// doubt: `34 mm`, `1.28 V`. With no width, four digits that count, and the whole part in full.
///
/// From five digits on, groups of three are set off by a narrow space, which can be read back; a
/// comma could not.
///
/// ```
/// use spile_quantity::{Voltage, display, read};
/// let volts = read::<Voltage>("1.2834 V ± 0.02 V").unwrap();
/// assert_eq!(display(&volts.ranged, volts.unit), "1.28 V");
/// ```
pub fn display<Q: Readable>(ranged: &Ranged<Q>, unit: &Unit<Q>) -> String {
    let number = unit.number(ranged.likely);
    let width = (unit.number(ranged.high) - unit.number(ranged.low)).abs() / 2.0;
    if width > 0.0 {
        return display_to(ranged.likely, unit, -magnitude(width));
    }
    let decimals = if number == 0.0 { 0 } else { (3 - magnitude(number)).max(0) };
    let text = rounded(number, decimals);
    let trimmed =
        if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    with_unit(&grouped(trimmed), unit.symbol())
}

/// A quantity with a given number of digits behind the point; -1 rounds to tens.
pub fn display_to<Q: Readable>(quantity: Q, unit: &Unit<Q>, decimals: i32) -> String {
    with_unit(&grouped(&rounded(unit.number(quantity), decimals)), unit.symbol())
}

/// A length in millimetres and on an inch tape, with what the mark is off by:
/// `440 mm (17 5/16 in, 0.26 mm short)`.
///
/// For people; [`read`](crate::read) does not take it. On a tape in millimetres, the length alone.
pub fn display_pair(length: Length, tape: Tape) -> String {
    let mm = display(&Ranged::exactly(length), &Length::UNITS[0]);
    let Some(at) = tape.nearest(length).filter(|_| tape.is_inch()) else { return mm };
    let off = at.error.in_mm();
    let text = rounded(off.abs(), 2);
    if text == "0.00" {
        format!("{mm} ({})", at.mark)
    } else {
        format!("{mm} ({}, {text} mm {})", at.mark, if off < 0.0 { "short" } else { "over" })
    }
}

/// The shortest decimal that, as a number of `unit`, is `si` bit for bit.
fn shortest_in<Q: Readable>(si: f64, unit: &Unit<Q>) -> Option<String> {
    let guess = unit.number(Q::from_si(si));
    if !guess.is_finite() {
        return None;
    }
    (0..17).find_map(|digits| {
        let text = format!("{:.digits$e}", guess.abs());
        let number = Exact::scientific(&text)?.times_sign(guess);
        let back = unit.si(number)?.to_f64()?;
        (back.to_bits() == si.to_bits()).then(|| {
            let sign = if guess.is_sign_negative() { "-" } else { "" };
            format!("{sign}{}", positional(&text))
        })
    })
}

/// A number with an exponent written without it, unless that would be very long.
fn positional(scientific: &str) -> String {
    let (mantissa, exp) = scientific.split_once('e').unwrap_or((scientific, "0"));
    let exp: i32 = exp.parse().unwrap_or(0);
    if !(-9..=15).contains(&exp) {
        return scientific.to_owned();
    }
    let (sign, mantissa) = mantissa.strip_prefix('-').map_or(("", mantissa), |rest| ("-", rest));
    let digits = mantissa.replace('.', "");
    let before = exp + 1;
    let text = match usize::try_from(before) {
        Ok(before) if before >= digits.len() => format!("{digits:0<before$}"),
        Ok(before) if before > 0 => format!("{}.{}", &digits[..before], &digits[before..]),
        _ => format!("0.{}{digits}", "0".repeat(before.unsigned_abs() as usize)),
    };
    format!("{sign}{text}")
}

/// The power of ten of the first digit that counts.
fn magnitude(number: f64) -> i32 {
    let text = format!("{:.9e}", number.abs());
    text.split_once('e').and_then(|(_, exp)| exp.parse().ok()).unwrap_or(0)
}

fn rounded(number: f64, decimals: i32) -> String {
    let text = match usize::try_from(decimals) {
        Ok(behind) => format!("{number:.behind$}"),
        Err(_) => {
            let tens = 10_f64.powi(-decimals);
            format!("{:.0}", (number / tens).round() * tens)
        }
    };
    let is_nought = text.bytes().all(|b| matches!(b, b'-' | b'0' | b'.'));
    if is_nought { text.trim_start_matches('-').to_owned() } else { text }
}

/// The whole part in groups of three where it has five digits or more.
fn grouped(text: &str) -> String {
    let (sign, text) = text.strip_prefix('-').map_or(("", text), |rest| ("-", rest));
    let end = text.find('.').unwrap_or(text.len());
    let mut out = sign.to_owned();
    for (place, c) in text.chars().enumerate() {
        if end >= 5 && place > 0 && place < end && (end - place).is_multiple_of(3) {
            out.push('\u{202f}');
        }
        out.push(c);
    }
    out
}

fn with_unit(number: &str, symbol: &str) -> String {
    match symbol {
        "" => number.to_owned(),
        "°" => format!("{number}°"),
        _ => format!("{number} {symbol}"),
    }
}
