//! Quantities with what is said about them: tolerance, range, guess.

use std::cmp::Ordering;

use crate::cursor::Cursor;
use crate::exact::Exact;
use crate::lookup::{expected, unit};
use crate::number::{signed, too_long, unsigned};
use crate::units::{Readable, Unit, in_a_row};
use crate::{Misread, MisreadKind, Ranged};

/// A quantity as it was written.
#[derive(Debug, Clone, PartialEq)]
pub struct Written<Q: Readable> {
    /// The quantity with its bounds; exact where no tolerance was given.
    pub ranged: Ranged<Q>,
    /// Whether bounds were written.
    pub tolerance_given: bool,
    /// Whether `likely` is only the middle of a range, as in `20 to 30 mΩ`, and was not written.
    pub likely_is_middle: bool,
    /// Whether it was called a guess, as in `about 440 mm`.
    pub about: bool,
    /// The whole text.
    pub text: String,
    /// The unit that the number was written in, the last of `2 ft 3 in`.
    pub unit: &'static Unit<Q>,
}

/// Reads a quantity: `440 mm`, `17 5/16 in`, `440 mm ± 2 mm`, `24 V +10/-15 %`, `20 to 30 mΩ`,
/// `about 440 mm`.
///
/// Each bound is computed exactly from the text and rounded once, so `440 mm - 2 mm` is the same
/// number as `438 mm`.
///
/// ```
/// use spile_quantity::{Length, read};
///
/// let width = read::<Length>("440 mm +0/-3").unwrap().ranged;
/// assert_eq!((width.low, width.high), (Length::mm(437.0), Length::mm(440.0)));
/// let misread = read::<Length>("1,140 mm").unwrap_err();
/// assert_eq!(misread.hint, "write `1140`, or `1.140` if that is meant");
/// ```
pub fn read<Q: Readable>(text: &str) -> Result<Written<Q>, Misread> {
    let mut cursor = Cursor::new(text);
    let written = quantity(&mut cursor)?;
    finish(&mut cursor)?;
    Ok(written)
}

/// Reads a quantity that more may follow.
pub(crate) fn quantity<Q: Readable>(cursor: &mut Cursor<'_>) -> Result<Written<Q>, Misread> {
    cursor.skip_spaces();
    let about = about(cursor);
    cursor.skip_spaces();
    let from = cursor.at();
    let Some(value) = term::<Q>(cursor)? else {
        let kind = if cursor.at_end() { MisreadKind::Empty } else { MisreadKind::NoNumber };
        let hint = "begin with the number";
        return Err(cursor.misread(kind, from..cursor.word_end(from), expected::<Q>(), hint));
    };
    let tail = tail::<Q>(cursor)?;
    let whole = from..cursor.at();
    let unit = unit_of(cursor, &value, &tail)?;
    let too_long = || too_long(cursor, from);
    let bounds = bounds(&value, &tail, unit).ok_or_else(too_long)?;
    let numbers = bounds.map(|bound| bound.to_f64().map(Q::from_si));
    let [Some(low), Some(likely), Some(high)] = numbers else { return Err(too_long()) };
    if let Some(allowed) = low.impossible().or_else(|| high.impossible()) {
        let hint = "check the number and its unit";
        return Err(cursor.misread(MisreadKind::Impossible, whole, allowed, hint));
    }
    let Some(ranged) = Ranged::new(low, likely, high) else {
        let hint = "write the smaller number first";
        return Err(cursor.misread(MisreadKind::BadTolerance, whole, "a range", hint));
    };
    Ok(Written {
        ranged,
        tolerance_given: !matches!(tail, Tail::None),
        likely_is_middle: matches!(tail, Tail::To(_)),
        about,
        text: cursor.between(0..cursor.end()).to_owned(),
        unit,
    })
}

/// Refuses anything that is left.
pub(crate) fn finish(cursor: &mut Cursor<'_>) -> Result<(), Misread> {
    cursor.skip_spaces();
    if cursor.at_end() {
        return Ok(());
    }
    let hint = "leave it out; a tolerance is written `± 2 mm`, a range `20 to 30 mm`";
    let range = cursor.at()..cursor.end();
    Err(cursor.misread(MisreadKind::Trailing, range, "nothing behind the quantity", hint))
}

/// A number with its unit, if it has one of its own.
struct Term<Q: Readable> {
    number: Exact,
    unit: Option<&'static Unit<Q>>,
    from: usize,
    to: usize,
}

/// One side of a tolerance.
#[derive(Clone, Copy)]
struct Side<Q: Readable> {
    size: Exact,
    unit: SideUnit<Q>,
}

#[derive(Clone, Copy)]
enum SideUnit<Q: Readable> {
    Bare,
    Percent,
    Own(&'static Unit<Q>),
}

enum Tail<Q: Readable> {
    None,
    /// The tolerance downwards and upwards.
    Sides(Side<Q>, Side<Q>),
    To(Term<Q>),
}

fn about(cursor: &mut Cursor<'_>) -> bool {
    const WORDS: [&str; 8] =
        ["about", "approximately", "approx.", "approx", "roughly", "circa", "ca.", "ca"];
    cursor.eat("~") || cursor.eat("≈") || WORDS.iter().any(|word| cursor.eat_word(word))
}

fn term<Q: Readable>(cursor: &mut Cursor<'_>) -> Result<Option<Term<Q>>, Misread> {
    let from = cursor.at();
    let Some(mut number) = signed(cursor)? else { return Ok(None) };
    let to = cursor.at();
    let mut last = unit::<Q>(cursor)?;
    while let Some(first) = last {
        let before = cursor.at();
        let hyphen = first.symbol() == "ft" && cursor.peek() == Some('-') && cursor.is_digit_at(1);
        if hyphen {
            cursor.skip(1);
        }
        cursor.skip_spaces();
        let start = cursor.at();
        let Some(more) = unsigned(cursor)? else {
            cursor.set(before);
            break;
        };
        let Some(second) = unit::<Q>(cursor)? else {
            let hint = "put the unit behind it, as in `2 ft 3 in`";
            let range = start..cursor.at();
            return Err(cursor.misread(MisreadKind::NoUnit, range, "a unit", hint));
        };
        let joined = in_a_row(first.symbol(), second.symbol())
            .and_then(|ratio| join(number, more, ratio))
            .ok_or_else(|| {
                let hint = "write one number and unit, or a whole number of the larger unit and \
                            less than one of it in the smaller, as in `2 ft 3 1/4 in`";
                cursor.misread(MisreadKind::Trailing, from..cursor.at(), expected::<Q>(), hint)
            })?;
        (number, last) = (joined, Some(second));
    }
    Ok(Some(Term { number, unit: last, from, to }))
}

/// `first` of a unit and `more` of one that is `ratio` times smaller, in the smaller unit.
fn join(first: Exact, more: Exact, ratio: u64) -> Option<Exact> {
    let ratio = Exact::new(ratio, 1, 0)?;
    if !first.is_whole() || more.compare(ratio)? != Ordering::Less {
        return None;
    }
    let sum = first.abs().times(ratio)?.plus(more)?;
    Some(if first.is_negative() { sum.negated() } else { sum })
}

fn tail<Q: Readable>(cursor: &mut Cursor<'_>) -> Result<Tail<Q>, Misread> {
    let before = cursor.at();
    cursor.skip_spaces();
    let start = cursor.at();
    if ["±", "+/-", "+-"].iter().any(|sign| cursor.eat(sign)) || cursor.eat_word("plus or minus") {
        let Some(side) = side(cursor)? else { return Err(bad_tolerance(cursor, start)) };
        return Ok(Tail::Sides(side, side));
    }
    if let Some(sign @ ('+' | '-')) = cursor.peek() {
        cursor.skip(1);
        let first = side(cursor)?;
        cursor.skip_spaces();
        if !cursor.eat("/") {
            cursor.eat(",");
        }
        cursor.skip_spaces();
        let opposite = cursor.eat(if sign == '+' { "-" } else { "+" });
        let second = if opposite { side(cursor)? } else { None };
        let (Some(mut first), Some(second)) = (first, second) else {
            return Err(bad_tolerance(cursor, start));
        };
        match (first.unit, second.unit) {
            (SideUnit::Bare, SideUnit::Percent) => first.unit = SideUnit::Percent,
            (SideUnit::Percent, SideUnit::Bare) => return Err(bad_tolerance(cursor, start)),
            _ => {}
        }
        let (down, up) = if sign == '+' { (second, first) } else { (first, second) };
        return Ok(Tail::Sides(down, up));
    }
    if cursor.eat_word("to") {
        cursor.skip_spaces();
        return match term(cursor)? {
            Some(end) => Ok(Tail::To(end)),
            None => Err(bad_tolerance(cursor, start)),
        };
    }
    cursor.set(before);
    Ok(Tail::None)
}

fn side<Q: Readable>(cursor: &mut Cursor<'_>) -> Result<Option<Side<Q>>, Misread> {
    cursor.skip_spaces();
    let Some(size) = unsigned(cursor)? else { return Ok(None) };
    let behind = cursor.at();
    cursor.skip_spaces();
    let percent_is_unit = Q::UNITS.iter().any(|unit| unit.symbol() == "%");
    let unit = if !percent_is_unit && cursor.eat("%") {
        SideUnit::Percent
    } else {
        cursor.set(behind);
        unit(cursor)?.map_or(SideUnit::Bare, SideUnit::Own)
    };
    Ok(Some(Side { size, unit }))
}

fn bad_tolerance(cursor: &Cursor<'_>, start: usize) -> Misread {
    cursor.misread(
        MisreadKind::BadTolerance,
        start..cursor.end(),
        "a tolerance or a range",
        "write both sides of a tolerance, as in `± 2 mm`, `+0/-3 mm` or `± 5 %`, and a range as \
         `20 to 30 mm`",
    )
}

/// The unit that the value is in: its own, or where it has none the one written behind it.
fn unit_of<Q: Readable>(
    cursor: &Cursor<'_>,
    value: &Term<Q>,
    tail: &Tail<Q>,
) -> Result<&'static Unit<Q>, Misread> {
    let behind = match tail {
        Tail::None => [None, None],
        Tail::To(end) => [end.unit, None],
        Tail::Sides(down, up) => {
            let percent = [down, up].iter().any(|side| matches!(side.unit, SideUnit::Percent));
            if percent && Q::UNITS.iter().any(Unit::has_offset) {
                let range = value.from..cursor.at();
                let hint = "write the tolerance of a temperature in `K`, `°C` or `°F`";
                let expected = "a tolerance that is not a percentage";
                return Err(cursor.misread(MisreadKind::BadTolerance, range, expected, hint));
            }
            [down, up].map(|side| match side.unit {
                SideUnit::Own(unit) => Some(unit),
                SideUnit::Bare | SideUnit::Percent => None,
            })
        }
    };
    let unsure = match (value.unit, behind, tail) {
        (Some(unit), [Some(one), None] | [None, Some(one)], Tail::Sides(..)) => one != unit,
        (None, [Some(one), Some(other)], _) => one != other,
        _ => false,
    };
    if unsure {
        let range = value.from..cursor.at();
        let hint = "write the unit behind each number";
        let expected = "numbers whose units are plain";
        return Err(cursor.misread(MisreadKind::BadTolerance, range, expected, hint));
    }
    value.unit.or(behind[0]).or(behind[1]).or(Q::BARE).ok_or_else(|| {
        let range = value.from..value.to;
        let number = cursor.between(range.clone()).to_owned();
        let likely = Q::UNITS[0].symbol();
        let hint = format!("write the unit behind it, such as `{number} {likely}`");
        cursor.misread(MisreadKind::NoUnit, range, expected::<Q>(), hint)
    })
}

/// Low, likely and high in the SI unit; `None` if a number has too many digits.
fn bounds<Q: Readable>(
    value: &Term<Q>,
    tail: &Tail<Q>,
    unit: &'static Unit<Q>,
) -> Option<[Exact; 3]> {
    let likely = unit.si(value.number)?;
    match tail {
        Tail::None => Some([likely; 3]),
        Tail::To(end) => {
            let high = end.unit.unwrap_or(unit).si(end.number)?;
            let middle = likely.plus(high)?.times(Exact::signed(5, -1))?;
            Some([likely, middle, high])
        }
        Tail::Sides(down, up) => {
            let size = |side: &Side<Q>| match side.unit {
                SideUnit::Percent => likely.abs().times(side.size.times(Exact::signed(1, -2))?),
                SideUnit::Own(own) => own.difference(side.size),
                SideUnit::Bare => unit.difference(side.size),
            };
            Some([likely.plus(size(down)?.negated())?, likely, likely.plus(size(up)?)?])
        }
    }
}
