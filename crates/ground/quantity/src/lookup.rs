//! Finding the unit that a text goes on with.

use crate::cursor::Cursor;
use crate::units::{self, ASK, Readable, Unit};
use crate::{Misread, MisreadKind};

/// Takes the unit that comes next; `None` if no unit is written there.
pub(crate) fn unit<Q: Readable>(
    cursor: &mut Cursor<'_>,
) -> Result<Option<&'static Unit<Q>>, Misread> {
    let start = cursor.at();
    cursor.skip_spaces();
    let from = cursor.at();
    let own = Q::UNITS
        .iter()
        .filter_map(|unit| {
            let ends = unit.spellings().filter_map(|(text, any)| end_of(cursor, text, any));
            ends.max().map(|end| (end, unit))
        })
        .max_by_key(|&(end, _)| end);
    if let Some((end, unit)) = own
        && !goes_on_in_words(cursor, end)
    {
        cursor.set(end);
        return Ok(Some(unit));
    }
    let mut other = None;
    units::for_each_kind(|kind, spelling, any_case| {
        let end = end_of(cursor, spelling, any_case);
        if end.is_some() && end > other.map(|(end, _)| end) {
            other = end.map(|end| (end, kind));
        }
    });
    match (own, other) {
        (Some((end, unit)), other) if other.is_none_or(|(further, _)| further <= end) => {
            cursor.set(end);
            Ok(Some(unit))
        }
        (_, Some((end, kind))) => {
            let found = cursor.between(from..end).to_owned();
            Err(cursor.misread(
                MisreadKind::WrongQuantity { found: kind },
                from..end,
                expected::<Q>(),
                format!("`{found}` is a unit of {kind}; {}", mend::<Q>(kind)),
            ))
        }
        _ => {
            let ask = ASK.iter().find_map(|&(text, ask)| Some((end_of(cursor, text, false)?, ask)));
            if let Some((end, ask)) = ask {
                return Err(cursor.misread(
                    MisreadKind::AmbiguousUnit,
                    from..end,
                    expected::<Q>(),
                    ask,
                ));
            }
            if is_no_unit(cursor) {
                cursor.set(start);
                return Ok(None);
            }
            Err(unknown::<Q>(cursor, from))
        }
    }
}

/// Reads a text that is a unit alone, as a list of plain numbers is given one.
pub fn read_unit<Q: Readable>(text: &str) -> Result<&'static Unit<Q>, Misread> {
    let mut cursor = Cursor::new(text);
    let found = unit::<Q>(&mut cursor)?;
    cursor.skip_spaces();
    match found {
        Some(unit) if cursor.at_end() => Ok(unit),
        _ => Err(cursor.misread(
            if text.trim().is_empty() { MisreadKind::Empty } else { MisreadKind::UnknownUnit },
            0..cursor.end(),
            format!("a unit of {}", Q::NAME),
            format!("write one of {}", all::<Q>()),
        )),
    }
}

/// What is expected where a quantity of this kind is wanted.
pub(crate) fn expected<Q: Readable>() -> String {
    let article = if Q::NAME.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
    format!("{article} {} such as `{}`", Q::NAME, Q::EXAMPLE)
}

/// The symbols of all units of this kind.
pub(crate) fn all<Q: Readable>() -> String {
    let symbols: Vec<String> = Q::UNITS.iter().map(|unit| format!("`{}`", unit.symbol())).collect();
    symbols.join(", ")
}

/// Where `spelling` ends if it comes next, and no letter or figure that would make it another unit
/// follows.
fn end_of(cursor: &Cursor<'_>, spelling: &str, any_case: bool) -> Option<usize> {
    let mut ahead = 0;
    for wanted in spelling.chars() {
        let found = cursor.peek_at(ahead)?;
        let spaces = (0..).take_while(|&more| cursor.peek_at(ahead + more) == Some(' ')).count();
        let raised = ahead + usize::from(found == '^');
        ahead = match wanted {
            ' ' | '·' if spaces > 0 => ahead + spaces,
            '²' if matches!(cursor.peek_at(raised), Some('²' | '2')) => raised + 1,
            '³' if matches!(cursor.peek_at(raised), Some('³' | '3')) => raised + 1,
            _ if found == wanted || (any_case && found.eq_ignore_ascii_case(&wanted)) => ahead + 1,
            _ => return None,
        };
    }
    let goes_on = match cursor.peek_at(ahead) {
        None => false,
        Some(_) if spelling.ends_with(['"', '\'']) => false,
        Some('²' | '³' | '^' | '°' | '%' | '·') => true,
        Some('/') => cursor.peek_at(ahead + 1).is_some_and(|c| c.is_alphabetic() || c == '('),
        Some(c) => c.is_alphanumeric(),
    };
    (!goes_on).then_some(cursor.at() + ahead)
}

/// Whether a word follows after spaces, so that a longer unit such as `A s` may be meant.
fn goes_on_in_words(cursor: &Cursor<'_>, end: usize) -> bool {
    let mut behind = cursor.clone();
    behind.set(end);
    behind.skip_spaces();
    behind.peek().is_some_and(char::is_alphabetic)
}

/// Whether what comes next is the end, a tolerance, a number or a word that goes between quantities.
fn is_no_unit(cursor: &Cursor<'_>) -> bool {
    let mut ahead = cursor.clone();
    if ahead.eat_word("to") || ahead.eat_word("at") || ahead.eat_word("plus") {
        return true;
    }
    match cursor.peek() {
        None => true,
        Some('/') => {
            ahead.eat("/");
            ahead.skip_spaces();
            matches!(ahead.peek(), Some('+' | '-'))
        }
        Some(c) => c.is_ascii_digit() || "±+-@(,".contains(c),
    }
}

fn unknown<Q: Readable>(cursor: &Cursor<'_>, from: usize) -> Misread {
    let end = cursor.word_end(from);
    let found = cursor.between(from..end);
    let mut close = Vec::new();
    for unit in Q::UNITS {
        let same = |(spelling, _): (&str, bool)| spelling.to_lowercase() == found.to_lowercase();
        if unit.spellings().any(same) {
            close.push(format!("`{}`", unit.symbol()));
        }
    }
    let hint = if close.is_empty() {
        format!("write one of {}", all::<Q>())
    } else {
        format!("is {} meant? small and capital letters differ in units", close.join(" or "))
    };
    cursor.misread(MisreadKind::UnknownUnit, from..end, format!("a unit of {}", Q::NAME), hint)
}

/// What to do about the slips between quantities that are often made.
fn mend<Q: Readable>(found: &str) -> String {
    match (Q::NAME, found) {
        ("area", "length") => "a section or an area is in `mm²`, `cm²` or `in²`".to_owned(),
        ("current", "charge") => "a current is in `A`, without the hours".to_owned(),
        ("charge", "current") => "a battery's charge is in `Ah`".to_owned(),
        ("power", "energy") => "a power is in `W` or `BTU/h`".to_owned(),
        ("energy", "power") => "an energy is in `Wh` or `kWh`".to_owned(),
        ("force", "mass") => "the weight of a mass is written in `kgf` or `lbf`".to_owned(),
        ("mass", "force") => "a mass is in `kg` or `lb`".to_owned(),
        ("thermal conductivity", "thermal conductance") => {
            "a material's figure is in `W/(m·K)`".to_owned()
        }
        _ => format!("write one of {}", all::<Q>()),
    }
}
