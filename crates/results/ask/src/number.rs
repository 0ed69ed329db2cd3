//! Numbers as they are shown, on the terminal, on pages and on paper: with a unit that a tape or a
//! meter has, and as many digits as they bear.

use spile_answer::{Figure, Input, Limit, Sense, Unit};
use spile_quantity::{
    Angle, Area, Charge, Conductance, Conductivity, Current, Energy, Flow, Force, Length, Mass,
    Power, Pressure, Quantity, Readable, Resistance, Temperature, TemperatureDifference, Time,
    Voltage, Volume,
};

/// A figure's number without its unit: `11.41`.
pub fn bare(value: f64, unit: Unit) -> String {
    let size = value.abs();
    let decimals = match unit {
        Unit::Volt => 2,
        Unit::Day | Unit::Celsius | Unit::Kelvin => 1,
        Unit::Millivolt => 0,
        Unit::Millimetre | Unit::Ampere | Unit::SquareMillimetre | Unit::Percent => {
            usize::from(size < 99.95)
        }
        Unit::AmpereHour | Unit::Litre | Unit::Second | Unit::SquareCentimetre | Unit::Kilogram => {
            usize::from(size < 9.95)
        }
        Unit::Count => usize::from(value.fract() != 0.0 && value.abs() < 100.0),
    };
    let decimals = if size > 0.0 { decimals.max(first_digit_behind_point(size)) } else { decimals };
    let text = fixed(value, decimals);
    let whole = text.strip_suffix(".0").filter(|_| size >= 9.95 && unit != Unit::Day);
    whole.map_or(text.clone(), str::to_owned)
}

/// A figure with its unit, or in words where it is none: `11.41 V`, `no steady voltage`.
pub fn with_unit(value: f64, unit: Unit) -> String {
    words(value, unit).map_or_else(|| said(&bare(value, unit), unit.symbol()), str::to_owned)
}

/// A limit with its unit, in as few digits as it was set in: `3 %`.
pub fn limit(value: f64, unit: Unit) -> String {
    let shortest = format!("{value}");
    let text = if shortest.len() <= 7 { shortest } else { bare(value, unit) };
    words(value, unit).map_or_else(|| said(&text, unit.symbol()), str::to_owned)
}

/// A figure before and after, each as it is shown, so that the two can be set apart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// The figure before the job, without its unit where *now* has the same; `None` where there is
    /// none or it reads the same.
    pub before: Option<String>,
    /// The figure now, without its unit; in words where it is no number.
    pub now: String,
    /// The unit of *now*; empty where there is none to show.
    pub unit: &'static str,
    /// Whether there is a figure before, and it reads the same.
    pub is_as_before: bool,
}

/// How a figure changes, in its parts.
pub fn parts(before: Option<&Figure>, now: &Figure, limit: Option<&Limit>) -> Change {
    let likely = full(now.likely, now.unit, limit);
    let from = before.map(|before| (before, full(before.likely, before.unit, limit)));
    let is_as_before = from.as_ref().is_some_and(|(_, from)| *from == likely);
    let before = from.filter(|_| !is_as_before).map(|(before, from)| {
        let numbers = before.likely.is_finite() && now.likely.is_finite();
        if before.unit == now.unit && numbers {
            apart(before.likely, before.unit, limit)
        } else {
            from
        }
    });
    let (now, unit) = match words(now.likely, now.unit) {
        Some(words) => (words.to_owned(), ""),
        None => (apart(now.likely, now.unit, limit), now.unit.symbol()),
    };
    Change { before, now, unit, is_as_before }
}

/// How a figure changes: `12.15 → 11.41 V`, `11.41 V as before`.
pub fn change(before: Option<&Figure>, now: &Figure, limit: Option<&Limit>) -> String {
    let Change { before, now, unit, is_as_before } = parts(before, now, limit);
    let likely = said(&now, unit);
    match before {
        _ if is_as_before => format!("{likely} as before"),
        Some(before) => format!("{before} → {likely}"),
        None => likely,
    }
}

/// The unfavourable end of a figure, where it is another: `worst 10.62 V`.
pub fn worst(figure: &Figure, limit: Option<&Limit>) -> Option<String> {
    let worst = full(figure.unfavourable, figure.unit, limit);
    (worst != full(figure.likely, figure.unit, limit)).then(|| format!("worst {worst}"))
}

/// A limit in words: `at most 3 %`.
pub fn limit_in_words(limit: &Limit, unit: Unit) -> String {
    format!("{} {}", limit.sense.words(), self::limit(limit.value, unit))
}

/// The three numbers of an input, low, likely and high, and the unit they are shown in.
pub fn input(input: &Input) -> ([String; 3], &'static str) {
    let numbers = [input.low, input.likely, input.high];
    let (numbers, unit) = shown(input.kind, numbers).unwrap_or((numbers, input.unit));
    let unit = if unit == "1" { "" } else { unit };
    (alike(numbers), unit)
}

/// A quantity in the unit that people use for its size: `27.5 kg`.
pub fn quantity<Q: Quantity>(value: Q) -> String {
    let numbers = [value.si(); 3];
    let (numbers, unit) = shown(Q::NAME, numbers).unwrap_or((numbers, Q::SI_UNIT));
    let [_, likely, _] = alike(numbers);
    said(&likely, if unit == "1" { "" } else { unit })
}

fn full(value: f64, unit: Unit, limit: Option<&Limit>) -> String {
    words(value, unit)
        .map_or_else(|| said(&apart(value, unit, limit), unit.symbol()), str::to_owned)
}

/// What stands for a figure that is no number.
fn words(value: f64, unit: Unit) -> Option<&'static str> {
    if value.is_finite() {
        return None;
    }
    if value.is_nan() {
        return Some("not known");
    }
    Some(match unit {
        Unit::Volt | Unit::Millivolt | Unit::Percent => "no steady voltage",
        Unit::Ampere => "no steady current",
        Unit::Celsius | Unit::Kelvin => "no steady temperature",
        Unit::Second | Unit::Day | Unit::AmpereHour if value > 0.0 => "without end",
        _ => "without bound",
    })
}

/// The number, with more digits where it is outside its limit and would read as the limit itself.
fn apart(value: f64, unit: Unit, limit: Option<&Limit>) -> String {
    let text = bare(value, unit);
    let Some(limit) = limit else { return text };
    let outside = match limit.sense {
        Sense::AtMost => value > limit.value,
        Sense::AtLeast => value < limit.value,
    };
    let reads_as_limit = |text: &str| {
        text.parse::<f64>().is_ok_and(|read| match limit.sense {
            Sense::AtMost => read <= limit.value,
            Sense::AtLeast => read >= limit.value,
        })
    };
    if !outside || !reads_as_limit(&text) {
        return text;
    }
    let digits = text.split_once('.').map_or(0, |(_, behind)| behind.len());
    (digits + 1..=digits + 3)
        .map(|decimals| fixed(value, decimals))
        .find(|text| !reads_as_limit(text))
        .unwrap_or(text)
}

fn said(number: &str, symbol: &str) -> String {
    if symbol.is_empty() { number.to_owned() } else { format!("{number} {symbol}") }
}

/// How many decimals it takes to show the first digit that is not nought, of a size above nought.
fn first_digit_behind_point(size: f64) -> usize {
    let place = -size.log10().floor();
    if (0.0..=6.0).contains(&place) { place as usize } else { 0 }
}

fn fixed(value: f64, decimals: usize) -> String {
    if value.abs() >= 1e7 {
        return format!("{value:.2e}");
    }
    let text = format!("{value:.decimals$}");
    let is_nought = text.bytes().all(|b| matches!(b, b'-' | b'0' | b'.'));
    if is_nought { text.trim_start_matches('-').to_owned() } else { text }
}

/// Three numbers with the same decimals: three digits that count, more where their range is small.
fn alike(numbers: [f64; 3]) -> [String; 3] {
    let place = |size: f64| if size > 0.0 { size.log10().floor() } else { 0.0 };
    let largest = numbers.iter().fold(0.0, |most: f64, number| most.max(number.abs()));
    let width = (numbers[2] - numbers[0]).abs() / 2.0;
    let by_size = 2.0 - place(largest);
    let by_width = if width > 0.0 { -place(width) } else { 0.0 };
    let decimals = by_size.max(by_width).clamp(0.0, 9.0) as usize;
    let texts = numbers.map(|number| fixed(number, decimals));
    let spare = texts.iter().map(|text| spare_noughts(text)).min().unwrap_or(0);
    texts.map(|text| {
        let text = &text[..text.len() - spare];
        text.strip_suffix('.').unwrap_or(text).to_owned()
    })
}

/// How many noughts at its end, behind the point, a number can do without.
fn spare_noughts(text: &str) -> usize {
    let behind = text.split_once('.').map_or("", |(_, behind)| behind);
    if text.contains('e') { 0 } else { behind.len() - behind.trim_end_matches('0').len() }
}

/// Numbers of a kind of quantity, given in its SI unit, in the unit that people use for that size.
fn shown(kind: &str, si: [f64; 3]) -> Option<([f64; 3], &'static str)> {
    let size = si.iter().fold(0.0, |most: f64, number| most.max(number.abs()));
    let by_size = |steps: &[(f64, &'static str)], last| {
        steps.iter().find(|(below, _)| size < *below).map_or(last, |(_, symbol)| *symbol)
    };
    Some(match kind {
        Length::NAME => (counted::<Length>(si, "mm")?, "mm"),
        Area::NAME => in_unit::<Area>(si, by_size(&[(1e-3, "mm²"), (1.0, "cm²")], "m²"))?,
        Volume::NAME => (counted::<Volume>(si, "l")?, "L"),
        Mass::NAME => in_unit::<Mass>(si, "kg")?,
        Force::NAME => in_unit::<Force>(si, by_size(&[(1e4, "N")], "kN"))?,
        Time::NAME => {
            let steps = [(1.0, "ms"), (120.0, "s"), (7_200.0, "min"), (172_800.0, "h")];
            match by_size(&steps, "d") {
                "d" => (counted::<Time>(si, "d")?, "days"),
                symbol => in_unit::<Time>(si, symbol)?,
            }
        }
        Temperature::NAME => in_unit::<Temperature>(si, "°C")?,
        TemperatureDifference::NAME => in_unit::<TemperatureDifference>(si, "K")?,
        Voltage::NAME => in_unit::<Voltage>(si, by_size(&[(0.5, "mV")], "V"))?,
        Current::NAME => in_unit::<Current>(si, by_size(&[(0.5, "mA"), (1e4, "A")], "kA"))?,
        Resistance::NAME => in_unit::<Resistance>(si, by_size(&[(1.0, "mΩ")], "Ω"))?,
        Power::NAME => in_unit::<Power>(si, "W")?,
        Energy::NAME => in_unit::<Energy>(si, "Wh")?,
        Charge::NAME => in_unit::<Charge>(si, "Ah")?,
        Flow::NAME => in_unit::<Flow>(si, "m³/h")?,
        Pressure::NAME => in_unit::<Pressure>(si, by_size(&[(1e6, "kPa")], "MPa"))?,
        Angle::NAME => in_unit::<Angle>(si, "°")?,
        Conductance::NAME => in_unit::<Conductance>(si, "W/K")?,
        Conductivity::NAME => in_unit::<Conductivity>(si, "W/(m·K)")?,
        _ => return None,
    })
}

fn in_unit<Q: Readable>(si: [f64; 3], symbol: &'static str) -> Option<([f64; 3], &'static str)> {
    Some((counted::<Q>(si, symbol)?, symbol))
}

fn counted<Q: Readable>(si: [f64; 3], symbol: &str) -> Option<[f64; 3]> {
    let unit = Q::UNITS.iter().find(|unit| unit.symbol() == symbol)?;
    Some(si.map(|number| unit.number(Q::from_si(number))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use spile_answer::{Basis, Class};

    fn figure(likely: f64, unfavourable: f64, unit: Unit) -> Figure {
        Figure { likely, unfavourable, unit }
    }

    fn at_most(value: f64) -> Limit {
        Limit {
            value,
            sense: Sense::AtMost,
            class: Class::Practice,
            kind: "practice",
            source: "".into(),
            firm: true,
        }
    }

    fn put_in(kind: &'static str, unit: &'static str, numbers: [f64; 3]) -> Input {
        let [low, likely, high] = numbers;
        Input {
            name: "".into(),
            kind,
            unit,
            low,
            likely,
            high,
            basis: Basis::Typical,
            source: "".into(),
            how: "".into(),
        }
    }

    #[test]
    fn figures_have_the_digits_they_bear() {
        let cases = [
            (11.414, Unit::Volt, "11.41 V"),
            (2.0, Unit::Millimetre, "2.0 mm"),
            (439.7, Unit::Millimetre, "440 mm"),
            (22.5, Unit::Millimetre, "22.5 mm"),
            (82.01, Unit::Millimetre, "82 mm"),
            (2.44, Unit::Percent, "2.4 %"),
            (54.3, Unit::AmpereHour, "54 Ah"),
            (5.86, Unit::Day, "5.9 days"),
            (3.0, Unit::Count, "3"),
            (0.0012, Unit::Second, "0.001 s"),
            (-0.001, Unit::Volt, "-0.001 V"),
            (0.0, Unit::Percent, "0.0 %"),
            (-1e-12, Unit::Volt, "0.00 V"),
            (f64::NEG_INFINITY, Unit::Volt, "no steady voltage"),
            (f64::INFINITY, Unit::Day, "without end"),
            (f64::NAN, Unit::Ampere, "not known"),
        ];
        for (value, unit, text) in cases {
            assert_eq!(with_unit(value, unit), text);
        }
    }

    #[test]
    fn a_limit_has_the_digits_it_was_set_in() {
        assert_eq!(limit(3.0, Unit::Percent), "3 %");
        assert_eq!(limit(10.9, Unit::Volt), "10.9 V");
        assert_eq!(limit(100.0 / 3.0, Unit::Ampere), "33.3 A");
    }

    #[test]
    fn a_change_is_told_in_one_unit() {
        let before = figure(12.15, 11.9, Unit::Volt);
        let now = figure(11.41, 10.62, Unit::Volt);
        assert_eq!(change(Some(&before), &now, None), "12.15 → 11.41 V");
        assert_eq!(change(Some(&now), &now, None), "11.41 V as before");
        assert_eq!(worst(&now, None).as_deref(), Some("worst 10.62 V"));
        assert_eq!(worst(&figure(4.0, 4.0, Unit::Day), None), None);
        let collapsed = figure(f64::NEG_INFINITY, f64::NEG_INFINITY, Unit::Volt);
        assert_eq!(change(Some(&before), &collapsed, None), "12.15 V → no steady voltage");
    }

    #[test]
    fn a_figure_outside_never_reads_as_its_limit() {
        let now = figure(3.02, 3.02, Unit::Percent);
        assert_eq!(change(None, &now, Some(&at_most(3.0))), "3.02 %");
        let within = figure(2.98, 2.98, Unit::Percent);
        assert_eq!(change(None, &within, Some(&at_most(3.0))), "3.0 %");
    }

    #[test]
    fn inputs_are_in_units_of_tape_and_meter() {
        let cases = [
            ("length", "m", [7.19, 7.2, 7.21], ["7190", "7200", "7210"], "mm"),
            ("length", "m", [0.0225, 0.0225, 0.0225], ["22.5", "22.5", "22.5"], "mm"),
            ("resistance", "Ω", [0.005, 0.02, 0.05], ["5", "20", "50"], "mΩ"),
            ("area", "m²", [1.5e-6, 1.5e-6, 1.5e-6], ["1.5", "1.5", "1.5"], "mm²"),
            ("area", "m²", [0.016, 0.016, 0.016], ["160", "160", "160"], "cm²"),
            ("volume", "m³", [0.092, 0.092, 0.092], ["92", "92", "92"], "L"),
            ("time", "s", [432_000.0, 518_400.0, 518_400.0], ["5", "6", "6"], "days"),
            ("charge", "A·s", [342_000.0, 342_000.0, 342_000.0], ["95", "95", "95"], "Ah"),
            ("temperature", "°C", [25.0, 35.0, 45.0], ["25", "35", "45"], "°C"),
            (
                "thermal conductivity",
                "W/(m·K)",
                [0.02, 0.022, 0.03],
                ["0.020", "0.022", "0.030"],
                "W/(m·K)",
            ),
            ("share", "1", [0.2, 0.25, 0.3], ["0.20", "0.25", "0.30"], ""),
            ("voltage", "V", [12.2, 12.2, 12.2], ["12.2", "12.2", "12.2"], "V"),
        ];
        for (kind, unit, numbers, texts, symbol) in cases {
            let (shown, in_unit) = input(&put_in(kind, unit, numbers));
            assert_eq!((shown, in_unit), (texts.map(ToOwned::to_owned), symbol));
        }
    }

    proptest! {
        #[test]
        fn no_number_is_long(bits: u64, in_input: bool) {
            let value = f64::from_bits(bits);
            for unit in [Unit::Volt, Unit::Millimetre, Unit::Count, Unit::Second] {
                prop_assert!(with_unit(value, unit).len() <= 24);
                prop_assert!(limit(value, unit).len() <= 24);
            }
            if in_input {
                let (texts, _) = input(&put_in("length", "m", [value; 3]));
                prop_assert!(texts.iter().all(|text| text.len() <= 20), "{texts:?}");
            }
        }
    }
}
