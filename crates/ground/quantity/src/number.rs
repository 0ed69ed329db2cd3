//! Numbers as people write them: decimals with point or comma, thousands, fractions.

use std::cmp::Ordering;

use crate::cursor::Cursor;
use crate::exact::Exact;
use crate::{Misread, MisreadKind};

/// Reads a number without a sign; `None` if none begins here.
pub(crate) fn unsigned(cursor: &mut Cursor<'_>) -> Result<Option<Exact>, Misread> {
    if let Some(fraction) = vulgar(cursor) {
        return Ok(Some(fraction));
    }
    let start = cursor.at();
    let after_point = usize::from(is_point(cursor.peek()));
    if !cursor.is_digit_at(after_point) {
        return Ok(None);
    }
    let token = token(cursor);
    if cursor.eat(".") {
        return Err(bad(cursor, start, "write digits behind the point, or no point"));
    }
    let Some((whole, part)) = split(cursor, start, &token)? else {
        let hint = "write it such as `44.5` or `17 5/16`; for a range write `20 to 30`";
        return Err(bad(cursor, start, hint));
    };
    if part.is_empty()
        && let Some(fraction) = fraction(cursor, start, &token, &whole)?
    {
        return Ok(Some(fraction));
    }
    let exp = exponent(cursor, start)?;
    Exact::decimal(&whole, &part, exp).map(Some).ok_or_else(|| too_long(cursor, start))
}

/// Reads a number with a sign or without; `None` if none begins here.
pub(crate) fn signed(cursor: &mut Cursor<'_>) -> Result<Option<Exact>, Misread> {
    let start = cursor.at();
    let negative = cursor.eat("-");
    if !negative {
        cursor.eat("+");
    }
    let number = unsigned(cursor)?;
    if number.is_none() {
        cursor.set(start);
    }
    Ok(number.map(|exact| if negative { exact.negated() } else { exact }))
}

/// That a number has more digits than can be kept.
pub(crate) fn too_long(cursor: &Cursor<'_>, start: usize) -> Misread {
    let range = start..cursor.at();
    let expected = "a number that can be kept exactly";
    cursor.misread(MisreadKind::OutOfRange, range, expected, "write it with fewer digits")
}

fn bad(cursor: &Cursor<'_>, start: usize, hint: &str) -> Misread {
    cursor.misread(MisreadKind::BadNumber, start..cursor.at(), "a number", hint)
}

fn is_point(c: Option<char>) -> bool {
    matches!(c, Some('.' | ','))
}

/// Digits, points and commas, and groups of three digits after a space.
fn token(cursor: &mut Cursor<'_>) -> String {
    let mut token = cursor.digits();
    let mut grouped = (1..=3).contains(&token.len()) && !token.starts_with('0');
    loop {
        let space = cursor.peek() == Some(' ');
        let three = (1..=3).all(|ahead| cursor.is_digit_at(ahead));
        let next = cursor.peek_at(4);
        let over = next.is_none_or(|c| !c.is_ascii_digit() && c != '/');
        if grouped && space && three && over {
            cursor.skip(1);
            token.push(' ');
            token.push_str(&cursor.digits());
        } else if is_point(cursor.peek()) && (cursor.is_digit_at(1) || is_point(cursor.peek_at(1)))
        {
            grouped = false;
            token.extend(cursor.peek());
            cursor.skip(1);
            token.push_str(&cursor.digits());
        } else {
            return token;
        }
    }
}

/// The digits before and behind the decimal sign; `None` if the token is no number.
fn split(
    cursor: &Cursor<'_>,
    start: usize,
    token: &str,
) -> Result<Option<(String, String)>, Misread> {
    let points = token.matches('.').count();
    let commas = token.matches(',').count();
    let parts = |decimal: char| {
        let (whole, part) = token.split_once(decimal).unwrap_or((token, ""));
        (digits_of(whole), part.to_owned())
    };
    Ok(match (points, commas) {
        (0, 0) => Some((digits_of(token), String::new())),
        (1, 0) => Some(parts('.')),
        (0, 1) => {
            let (whole, part) = parts(',');
            let thousands = (1..=3).contains(&whole.len())
                && !whole.starts_with('0')
                && part.len() == 3
                && !token.contains(' ');
            if thousands {
                let hint = format!("write `{whole}{part}`, or `{whole}.{part}` if that is meant");
                return Err(cursor.misread(
                    MisreadKind::AmbiguousNumber,
                    start..cursor.at(),
                    format!("a number with one meaning: this is {whole}.{part} or {whole}{part}"),
                    hint,
                ));
            }
            Some((whole, part))
        }
        (1, _) if in_threes(token, ',', '.') => Some(parts('.')),
        (_, 1) if in_threes(token, '.', ',') => Some(parts(',')),
        (0, _) if in_threes(token, ',', '.') => Some((digits_of(token), String::new())),
        (_, 0) if in_threes(token, '.', ',') => Some((digits_of(token), String::new())),
        _ => None,
    })
}

fn digits_of(text: &str) -> String {
    text.chars().filter(char::is_ascii_digit).collect()
}

/// Whether the digits before the `decimal` sign stand in groups of three between `separator`s.
fn in_threes(token: &str, separator: char, decimal: char) -> bool {
    let (whole, part) = token.split_once(decimal).unwrap_or((token, "0"));
    let mut groups = whole.split(separator);
    let first = groups.next().unwrap_or("");
    let is_group = |group: &str| group.len() == 3 && group.bytes().all(|b| b.is_ascii_digit());
    (1..=3).contains(&first.len())
        && first.bytes().all(|b| b.is_ascii_digit())
        && !first.starts_with('0')
        && groups.all(is_group)
        && part.bytes().all(|b| b.is_ascii_digit())
}

fn exponent(cursor: &mut Cursor<'_>, start: usize) -> Result<i32, Misread> {
    if !matches!(cursor.peek(), Some('e' | 'E')) {
        return Ok(0);
    }
    let sign = usize::from(matches!(cursor.peek_at(1), Some('+' | '-')));
    if !cursor.is_digit_at(1 + sign) {
        return Ok(0);
    }
    let negative = cursor.peek_at(1) == Some('-');
    cursor.skip(1 + sign);
    let digits = cursor.digits();
    let exp: i32 = digits.parse().unwrap_or(i32::MAX);
    if exp > 999 {
        return Err(too_long(cursor, start));
    }
    Ok(if negative { -exp } else { exp })
}

/// The fraction that goes with the whole number just read (`5/16`, `17 5/16`, `17-5/16`, `17½`).
fn fraction(
    cursor: &mut Cursor<'_>,
    start: usize,
    token: &str,
    whole: &str,
) -> Result<Option<Exact>, Misread> {
    if cursor.peek() == Some('/') && cursor.is_digit_at(1) {
        if token.contains([' ', '.', ',']) {
            cursor.skip(1);
            cursor.digits();
            return Err(bad(cursor, start, "write a fraction such as `5/16` or `17 5/16`"));
        }
        return ratio(cursor, start, whole).map(Some);
    }
    let before = cursor.at();
    cursor.skip_spaces();
    let mut part = vulgar(cursor);
    if part.is_none() && (before < cursor.at() || cursor.eat("-")) {
        let numerator = cursor.digits();
        if !numerator.is_empty() && cursor.peek() == Some('/') && cursor.is_digit_at(1) {
            let below_one = ratio(cursor, start, &numerator)?;
            if below_one.compare(Exact::signed(1, 0)) != Some(Ordering::Less) {
                return Err(bad(cursor, start, "the fraction behind a whole number is below one"));
            }
            part = Some(below_one);
        }
    }
    let Some(part) = part else {
        cursor.set(before);
        return Ok(None);
    };
    let sum = Exact::decimal(whole, "", 0).and_then(|whole| whole.plus(part));
    sum.map(Some).ok_or_else(|| too_long(cursor, start))
}

/// Takes `/` and the denominator.
fn ratio(cursor: &mut Cursor<'_>, start: usize, numerator: &str) -> Result<Exact, Misread> {
    cursor.skip(1);
    let denominator = cursor.digits();
    let (Ok(num), Ok(den)) = (numerator.parse(), denominator.parse::<u32>()) else {
        return Err(too_long(cursor, start));
    };
    Exact::new(num, u64::from(den), 0)
        .ok_or_else(|| bad(cursor, start, "a fraction has a number other than 0 under its line"))
}

fn vulgar(cursor: &mut Cursor<'_>) -> Option<Exact> {
    let (num, den) = match cursor.peek()? {
        '¼' => (1, 4),
        '½' => (1, 2),
        '¾' => (3, 4),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => return None,
    };
    cursor.skip(1);
    Exact::new(num, den, 0)
}
