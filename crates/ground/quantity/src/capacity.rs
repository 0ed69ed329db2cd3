//! What a battery holds, with the hours it was tested over.

use crate::cursor::Cursor;
use crate::written::{Written, finish, quantity};
use crate::{Charge, Misread, MisreadKind, Time};

/// A battery's charge, as its label gives it.
#[derive(Debug, Clone, PartialEq)]
pub struct Capacity {
    /// The charge.
    pub charge: Written<Charge>,
    /// The time of the discharge it was measured over; lead batteries give less over a shorter one.
    pub hour_rate: Option<Time>,
}

/// Reads a battery's charge: `95 Ah`, `95 Ah @ 20 h`, `95 Ah at 20 h`, `95 Ah (C20)`.
///
/// ```
/// use spile_quantity::{Time, read_capacity};
/// assert_eq!(read_capacity("95 Ah @ 20 h").unwrap().hour_rate, Some(Time::hours(20.0)));
/// ```
pub fn read_capacity(text: &str) -> Result<Capacity, Misread> {
    let mut cursor = Cursor::new(text);
    let charge = quantity::<Charge>(&mut cursor)?;
    if charge.ranged.low <= Charge::a_s(0.0) {
        let range = 0..cursor.at();
        let hint = "write a charge above 0";
        return Err(cursor.misread(MisreadKind::Impossible, range, "a battery's charge", hint));
    }
    cursor.skip_spaces();
    let hour_rate = hour_rate(&mut cursor)?;
    finish(&mut cursor)?;
    Ok(Capacity { charge, hour_rate })
}

fn hour_rate(cursor: &mut Cursor<'_>) -> Result<Option<Time>, Misread> {
    let from = cursor.at();
    if cursor.at_end() {
        return Ok(None);
    }
    let bracket = cursor.eat("(");
    cursor.skip_spaces();
    let said = cursor.eat("@") || cursor.eat_word("at");
    cursor.skip_spaces();
    let time = if cursor.eat_letters("C") {
        cursor.eat("/");
        cursor.digits().parse().ok().map(|hours: u16| Time::hours(f64::from(hours)))
    } else if bracket || said {
        let time = quantity::<Time>(cursor)?;
        let plain = !time.tolerance_given && !time.about;
        plain.then_some(time.ranged.likely)
    } else {
        None
    };
    cursor.skip_spaces();
    cursor.eat_word("rate");
    cursor.skip_spaces();
    let closed = !bracket || cursor.eat(")");
    match time {
        Some(time) if closed && time > Time::s(0.0) => Ok(Some(time)),
        _ => {
            let hint = "write the hours it was measured over as `95 Ah @ 20 h`, or leave them out";
            let range = from..cursor.end();
            Err(cursor.misread(MisreadKind::Trailing, range, "an hour rate", hint))
        }
    }
}
