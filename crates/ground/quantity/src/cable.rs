//! Cable sizes: metric sections, American and automotive wire gauges.

use std::f64::consts::PI;
use std::fmt;

use crate::cursor::Cursor;
use crate::print::exact;
use crate::written::{Written, finish, quantity};
use crate::{Area, Length, Misread, MisreadKind, Quantity, Readable};

/// The size of a cable's conductor, or what is known of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CableSize {
    /// A section, as in `1.5 mm²`.
    Metric(Area),
    /// An American wire gauge, as in `6 AWG`.
    Awg(Awg),
    /// An automotive gauge, as in `6 SAE`: some 3 to 12 % less copper than the American gauge of
    /// the same number.
    Sae(Awg),
    /// Only the outside diameter, insulation included, is known, as in `6 mm outside`.
    Outside(Length),
}

/// The number of a wire gauge, from 4/0 (-3) over 1/0 (0) to 30; the larger, the thinner.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Awg(i8);

impl Awg {
    /// The thickest gauge, 4/0.
    pub const THICKEST: Self = Self(-3);
    /// The thinnest gauge that can be given.
    pub const THINNEST: Self = Self(30);

    /// The gauge of this number, where 1/0 is 0, 2/0 is -1, 3/0 is -2 and 4/0 is -3; `None` outside
    /// -3 to 30.
    pub fn new(number: i32) -> Option<Self> {
        let number = i8::try_from(number).ok()?;
        (Self::THICKEST.0..=Self::THINNEST.0).contains(&number).then_some(Self(number))
    }

    /// The number of the gauge, where 1/0 is 0 and 4/0 is -3.
    pub fn number(self) -> i32 {
        i32::from(self.0)
    }

    /// The diameter of solid wire of American gauge `n`, d \[m\].
    ///
    /// **Formula** `d = 0.127 mm · 92^((36 − n) / 39)`
    ///
    /// **Arguments** `n` \[–\], the number of the gauge, -3 to 30.
    ///
    /// **Validity** the whole range of the type: the formula defines the gauge, by n = 36 as
    /// 0.0050 in and 4/0 as 0.4600 in. Not for SAE gauges.
    ///
    /// **Errors** none.
    ///
    /// **Source** ASTM B258, from memory; agrees with public copies of its table.
    ///
    /// **Example** 4/0 is 0.4600 in across:
    /// ```
    /// use spile_quantity::Awg;
    /// let inches = Awg::new(-3).unwrap().diameter().in_mm() / 25.4;
    /// assert_eq!(format!("{inches:.4}"), "0.4600");
    /// ```
    pub fn diameter(self) -> Length {
        Length::mm(0.127 * 92_f64.powf((36.0 - f64::from(self.0)) / 39.0))
    }

    /// The section of solid wire of American gauge `n`, A \[m²\].
    ///
    /// **Formula** `A = π/4 · d²`
    ///
    /// **Arguments** `d` \[m\], [the diameter](Self::diameter).
    ///
    /// **Validity** solid wire; a stranded conductor of the gauge has the same section in all its
    /// strands together. Not for SAE gauges.
    ///
    /// **Errors** none.
    ///
    /// **Source** ASTM B258, from memory; agrees with public copies of its table.
    ///
    /// **Example** 6 AWG is 13.30 mm²:
    /// ```
    /// use spile_quantity::Awg;
    /// assert_eq!(format!("{:.2}", Awg::new(6).unwrap().area().in_mm2()), "13.30");
    /// ```
    pub fn area(self) -> Area {
        self.diameter() * self.diameter() * (PI / 4.0)
    }
}

impl fmt::Display for Awg {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.0 > 0 { write!(f, "{}", self.0) } else { write!(f, "{}/0", 1 - self.0) }
    }
}

impl fmt::Display for CableSize {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Metric(area) => f.write_str(&exact(*area)),
            Self::Awg(gauge) => write!(f, "{gauge} AWG"),
            Self::Sae(gauge) => write!(f, "{gauge} SAE"),
            Self::Outside(length) => write!(f, "{} outside", exact(*length)),
        }
    }
}

/// Reads a cable size: `1.5 mm²`, `6 AWG`, `AWG 2/0`, `#6 AWG`, `00 AWG`, `6 SAE`, `6 mm outside`.
///
/// What leaves the measure open is asked about: `6 mm` (section or outside diameter?) and
/// `6 gauge` (American or automotive?).
///
/// ```
/// use spile_quantity::{Awg, CableSize, read_cable};
///
/// assert_eq!(read_cable("AWG 2/0").unwrap(), CableSize::Awg(Awg::new(-1).unwrap()));
/// let asked = read_cable("6 mm").unwrap_err();
/// assert!(asked.hint.starts_with("square millimetres or outside diameter?"));
/// ```
pub fn read_cable(text: &str) -> Result<CableSize, Misread> {
    let mut cursor = Cursor::new(text);
    cursor.skip_spaces();
    let size = match gauge(&mut cursor)? {
        Some(size) => size,
        None => measured(&mut cursor)?,
    };
    finish(&mut cursor)
        .map_err(|misread| Misread { hint: "leave it out".to_owned(), ..misread })?;
    Ok(size)
}

const EXPECTED: &str = "a cable size such as `1.5 mm²`, `6 AWG`, `6 SAE` or `6 mm outside`";

#[derive(Clone, Copy, PartialEq)]
enum System {
    Awg,
    Sae,
    Unsaid,
}

/// Takes a gauge with the name of its system before or behind; `None` if this is no gauge.
fn gauge(cursor: &mut Cursor<'_>) -> Result<Option<CableSize>, Misread> {
    let from = cursor.at();
    let mut before = system(cursor);
    cursor.skip_spaces();
    if cursor.eat("#") {
        before = before.or(Some(System::Unsaid));
        cursor.skip_spaces();
    }
    let digits = cursor.digits();
    let naughts = cursor.peek() == Some('/') && cursor.peek_at(1) == Some('0');
    let naughts = naughts && !cursor.is_digit_at(2);
    if naughts {
        cursor.skip(2);
    }
    let end = cursor.at();
    cursor.skip_spaces();
    let last = cursor.at_end();
    let behind = system(cursor);
    if behind.is_none() {
        cursor.set(end);
    }
    let naughts_only = !digits.is_empty() && digits.bytes().all(|digit| digit == b'0');
    let alone = (naughts || naughts_only) && last;
    if digits.is_empty() || (before.is_none() && behind.is_none() && !alone) {
        cursor.set(from);
        return Ok(None);
    }
    let range = from..cursor.at();
    let number = match (naughts, naughts_only) {
        (true, false) => digits.parse::<i32>().ok().filter(|&n| n <= 4).map(|n| 1 - n),
        (false, true) => i32::try_from(digits.len()).ok().map(|naughts| 1 - naughts),
        (false, false) => digits.parse().ok(),
        (true, true) => None,
    };
    let Some(gauge) = number.and_then(Awg::new) else {
        let hint = "gauges go from 4/0 to 30; write thicker ones by their section in mm²";
        return Err(cursor.misread(MisreadKind::NoSuchGauge, range, EXPECTED, hint));
    };
    match (before, behind) {
        (Some(System::Awg), None | Some(System::Awg | System::Unsaid))
        | (None | Some(System::Unsaid), Some(System::Awg)) => Ok(Some(CableSize::Awg(gauge))),
        (Some(System::Sae), None | Some(System::Sae | System::Unsaid))
        | (None | Some(System::Unsaid), Some(System::Sae)) => Ok(Some(CableSize::Sae(gauge))),
        _ => {
            let hint = format!(
                "American or automotive gauge? automotive cable has less copper; write \
                 `{gauge} AWG` or `{gauge} SAE`"
            );
            Err(cursor.misread(MisreadKind::AmbiguousCable, range, EXPECTED, hint))
        }
    }
}

fn system(cursor: &mut Cursor<'_>) -> Option<System> {
    const NAMES: [(&str, System); 6] = [
        ("awg", System::Awg),
        ("sae", System::Sae),
        ("gauge", System::Unsaid),
        ("gage", System::Unsaid),
        ("ga.", System::Unsaid),
        ("ga", System::Unsaid),
    ];
    NAMES.iter().find_map(|&(name, system)| cursor.eat_letters(name).then_some(system))
}

/// Takes a section or an outside diameter.
fn measured(cursor: &mut Cursor<'_>) -> Result<CableSize, Misread> {
    let from = cursor.at();
    let misread = match quantity::<Area>(cursor) {
        Ok(area) => return Ok(CableSize::Metric(one(cursor, from, &area)?)),
        Err(misread) => misread,
    };
    if misread.kind != (MisreadKind::WrongQuantity { found: Length::NAME }) {
        let hint = match misread.kind {
            MisreadKind::NoUnit => {
                let number = &misread.found;
                format!("write `{number} mm²` or `{number} AWG`, whichever is meant")
            }
            _ if misread.found.starts_with(['x', '×']) => {
                "write the section of one core, such as `1.5 mm²`".to_owned()
            }
            _ if system(&mut Cursor::new(&misread.found)).is_some() => {
                "a gauge is a whole number, or one of 1/0 to 4/0".to_owned()
            }
            _ => misread.hint,
        };
        return Err(Misread { hint, expected: EXPECTED.to_owned(), ..misread });
    }
    cursor.set(from);
    let outside = quantity::<Length>(cursor)?;
    let range = from..cursor.at();
    cursor.skip_spaces();
    let said = ["outside diameter", "outer diameter", "outside", "OD", "o.d."];
    if said.iter().any(|word| cursor.eat_word(word)) {
        return Ok(CableSize::Outside(one(cursor, from, &outside)?));
    }
    let text = cursor.between(range.clone());
    let number = text.trim_end_matches(|c: char| !c.is_ascii_digit());
    let hint = format!(
        "square millimetres or outside diameter? write `{number} mm²`, or `{text} outside` where \
         only the diameter over the insulation is known"
    );
    Err(cursor.misread(MisreadKind::AmbiguousCable, range, EXPECTED, hint))
}

/// The one size that is meant: above nought, without tolerance, no guess.
fn one<Q: Readable>(cursor: &Cursor<'_>, from: usize, size: &Written<Q>) -> Result<Q, Misread> {
    let range = from..cursor.at();
    if size.tolerance_given || size.about {
        let hint = "write the size alone, as it is printed on the cable";
        return Err(cursor.misread(MisreadKind::BadTolerance, range, EXPECTED, hint));
    }
    if size.ranged.likely.si() <= 0.0 {
        let hint = "write a size above 0";
        return Err(cursor.misread(MisreadKind::Impossible, range, EXPECTED, hint));
    }
    Ok(size.ranged.likely)
}
