//! The units each quantity may be written in, and their exact sizes.
//!
//! Sizes are those of NIST SP 811 (2008), appendix B, which gives the foot, pound, gallon and the
//! International Table BTU as exact by definition; units per hour or minute follow from them as
//! ratios. Only the degree and the circular mil contain π; their sizes are carried to nineteen
//! digits, so that a reading may differ in its last bit from `Angle::degrees`.

use std::marker::PhantomData;

use crate::exact::Exact;
use crate::{
    Angle, Area, Charge, Conductance, Conductivity, Current, Energy, Flow, Force, Length, Mass,
    Power, Pressure, Quantity, Resistance, Share, Temperature, TemperatureDifference, Time,
    Voltage, Volume,
};

/// A unit in which a quantity of kind `Q` is written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unit<Q> {
    symbol: &'static str,
    symbols: &'static [&'static str],
    words: &'static [&'static str],
    num: u64,
    den: u64,
    exp: i32,
    /// What is added to a number in this unit before it is scaled: `offset.0 × 10^offset.1`.
    offset: (i64, i32),
    kind: PhantomData<Q>,
}

/// A quantity that can be read from text and printed.
pub trait Readable: Quantity {
    /// The units it may be written in; the first is the one it is printed in by default.
    const UNITS: &'static [Unit<Self>];
    /// How it may be written.
    const EXAMPLE: &'static str;
    /// The unit of a number without a unit, where that is allowed.
    const BARE: Option<&'static Unit<Self>> = None;

    /// The values it can have, in words, if `self` is none of them.
    fn impossible(self) -> Option<&'static str> {
        None
    }
}

/// The unit `num / den × 10^exp` of the SI unit: its symbol, other symbols for it (in the case they
/// are given here only), and words for it (in any case).
const fn unit<Q>(
    symbol: &'static str,
    symbols: &'static [&'static str],
    words: &'static [&'static str],
    (num, den, exp): (u64, u64, i32),
) -> Unit<Q> {
    Unit { symbol, symbols, words, num, den, exp, offset: (0, 0), kind: PhantomData }
}

impl<Q: Readable> Unit<Q> {
    const fn offset(self, value: i64, exp: i32) -> Self {
        Self { offset: (value, exp), ..self }
    }

    /// The symbol the unit is printed with.
    pub const fn symbol(&self) -> &'static str {
        self.symbol
    }

    /// The quantity of `number` of this unit, rounded once; `None` if it is not finite.
    pub fn of(&self, number: f64) -> Option<Q> {
        self.si(Exact::shortest(number)?)?.to_f64().map(Q::from_si)
    }

    /// How many of this unit `quantity` is, to about fifteen digits.
    pub fn number(&self, quantity: Q) -> f64 {
        let (offset, exp) = self.offset;
        let offset = offset as f64 / 10_f64.powi(-exp);
        let (num, den) = (self.num as f64, self.den as f64);
        let scaled = quantity.si() * den / num;
        let tens = if self.exp < 0 {
            scaled * 10_f64.powi(-self.exp)
        } else {
            scaled / 10_f64.powi(self.exp)
        };
        tens - offset
    }

    pub(crate) fn is_si(&self) -> bool {
        (self.num, self.den, self.exp, self.offset.0) == (1, 1, 0, 0)
    }

    pub(crate) fn has_offset(&self) -> bool {
        self.offset.0 != 0
    }

    /// A number in this unit in the SI unit.
    pub(crate) fn si(&self, number: Exact) -> Option<Exact> {
        self.difference(number.plus(Exact::signed(self.offset.0, self.offset.1))?)
    }

    /// A difference of two numbers in this unit in the SI unit.
    pub(crate) fn difference(&self, number: Exact) -> Option<Exact> {
        number.times(Exact::new(self.num, self.den, self.exp)?)
    }

    /// Its spellings, with whether case is free.
    pub(crate) fn spellings(&self) -> impl Iterator<Item = (&'static str, bool)> {
        let symbols = self.symbols.iter().map(|&symbol| (symbol, false));
        std::iter::once((self.symbol, false))
            .chain(symbols)
            .chain(self.words.iter().map(|&word| (word, true)))
    }
}

/// How many of the second unit make one of the first, where people write the two in a row, as in
/// `2 ft 3 in`.
pub(crate) fn in_a_row(first: &str, second: &str) -> Option<u64> {
    match (first, second) {
        ("ft", "in") => Some(12),
        ("lb", "oz") => Some(16),
        ("d", "h") => Some(24),
        ("h", "min") | ("min", "s") => Some(60),
        _ => None,
    }
}

/// Units that mean more than one thing, and what to ask.
pub(crate) const ASK: &[(&str, &str)] = &[
    ("gal", "is it the US or the imperial gallon? write `US gal` or `imp gal`"),
    ("gallon", "is it the US or the imperial gallon? write `US gal` or `imp gal`"),
    ("gallons", "is it the US or the imperial gallon? write `US gal` or `imp gal`"),
    ("ton", "tons differ; write `t` (1000 kg), `kg` or `lb`"),
    ("tons", "tons differ; write `t` (1000 kg), `kg` or `lb`"),
    ("hp", "horsepowers differ; write watts, `W` or `kW`"),
    ("HP", "horsepowers differ; write watts, `W` or `kW`"),
];

/// What a unit's spelling measures, of all the quantities that can be read.
pub(crate) fn for_each_kind(mut look: impl FnMut(&'static str, &'static str, bool)) {
    fn one<Q: Readable>(look: &mut impl FnMut(&'static str, &'static str, bool)) {
        for unit in Q::UNITS {
            for (spelling, any_case) in unit.spellings() {
                look(Q::NAME, spelling, any_case);
            }
        }
    }
    one::<Length>(&mut look);
    one::<Area>(&mut look);
    one::<Volume>(&mut look);
    one::<Mass>(&mut look);
    one::<Force>(&mut look);
    one::<Time>(&mut look);
    one::<Temperature>(&mut look);
    one::<TemperatureDifference>(&mut look);
    one::<Voltage>(&mut look);
    one::<Current>(&mut look);
    one::<Resistance>(&mut look);
    one::<Power>(&mut look);
    one::<Energy>(&mut look);
    one::<Charge>(&mut look);
    one::<Flow>(&mut look);
    one::<Pressure>(&mut look);
    one::<Angle>(&mut look);
    one::<Conductance>(&mut look);
    one::<Conductivity>(&mut look);
    one::<Share>(&mut look);
}

impl Readable for Length {
    const UNITS: &'static [Unit<Self>] = &[
        unit(
            "mm",
            &["MM"],
            &["millimetre", "millimetres", "millimeter", "millimeters"],
            (1, 1, -3),
        ),
        unit("cm", &[], &["centimetre", "centimetres", "centimeter", "centimeters"], (1, 1, -2)),
        unit("m", &[], &["metre", "metres", "meter", "meters"], (1, 1, 0)),
        unit("in", &["\"", "''", "in.", "In", "IN"], &["inch", "inches"], (254, 1, -4)),
        unit("ft", &["'", "ft.", "Ft", "FT"], &["foot", "feet"], (3048, 1, -4)),
        unit("km", &[], &["kilometre", "kilometres", "kilometer", "kilometers"], (1, 1, 3)),
    ];
    const EXAMPLE: &'static str = "440 mm";
}

impl Readable for Area {
    const UNITS: &'static [Unit<Self>] = &[
        unit(
            "mm²",
            &["sq mm", "sq. mm", "mm sq", "sqmm", "qmm"],
            &["square millimetres", "square millimeters"],
            (1, 1, -6),
        ),
        unit(
            "cm²",
            &["sq cm", "cm sq", "sqcm"],
            &["square centimetres", "square centimeters"],
            (1, 1, -4),
        ),
        unit(
            "m²",
            &["sq m", "sqm"],
            &["square metre", "square metres", "square meter", "square meters"],
            (1, 1, 0),
        ),
        unit(
            "in²",
            &["sq in", "sq. in", "sq. in."],
            &["square inch", "square inches"],
            (64_516, 1, -8),
        ),
        unit(
            "ft²",
            &["sq ft", "sq. ft", "sq. ft."],
            &["square foot", "square feet"],
            (9_290_304, 1, -8),
        ),
        unit("cmil", &[], &["circular mil", "circular mils"], (5_067_074_790_974_977_514, 1, -28)),
        unit("kcmil", &["MCM"], &[], (5_067_074_790_974_977_514, 1, -25)),
    ];
    const EXAMPLE: &'static str = "1.5 mm²";
}

impl Readable for Volume {
    const UNITS: &'static [Unit<Self>] = &[
        unit("l", &["L"], &["litre", "litres", "liter", "liters", "ltr"], (1, 1, -3)),
        unit(
            "ml",
            &["mL"],
            &["millilitre", "millilitres", "milliliter", "milliliters"],
            (1, 1, -6),
        ),
        unit(
            "m³",
            &["cu m"],
            &["cubic metre", "cubic metres", "cubic meter", "cubic meters"],
            (1, 1, 0),
        ),
        unit("cm³", &["ccm"], &["cubic centimetres", "cubic centimeters"], (1, 1, -6)),
        unit(
            "ft³",
            &["cu ft", "cu. ft", "cu. ft.", "cuft"],
            &["cubic foot", "cubic feet"],
            (28_316_846_592, 1, -12),
        ),
        unit(
            "in³",
            &["cu in", "cu. in", "cu. in."],
            &["cubic inch", "cubic inches"],
            (16_387_064, 1, -12),
        ),
        unit(
            "US gal",
            &["gal US", "US gal.", "gal (US)"],
            &["US gallon", "US gallons"],
            (3_785_411_784, 1, -12),
        ),
        unit(
            "imp gal",
            &["imp. gal", "UK gal"],
            &["imperial gallon", "imperial gallons", "imp gallon", "imp gallons"],
            (454_609, 1, -8),
        ),
    ];
    const EXAMPLE: &'static str = "32 l";
}

impl Readable for Mass {
    const UNITS: &'static [Unit<Self>] = &[
        unit(
            "kg",
            &["Kg", "KG", "kgs"],
            &["kilogram", "kilograms", "kilogramme", "kilogrammes", "kilo", "kilos"],
            (1, 1, 0),
        ),
        unit("g", &[], &["gram", "grams", "gramme", "grammes"], (1, 1, -3)),
        unit("t", &[], &["tonne", "tonnes"], (1, 1, 3)),
        unit("lb", &["lbs", "lb.", "lbs.", "LB", "LBS"], &["pound", "pounds"], (45_359_237, 1, -8)),
        unit("oz", &["oz.", "OZ"], &["ounce", "ounces"], (28_349_523_125, 1, -12)),
    ];
    const EXAMPLE: &'static str = "25 kg";
}

impl Readable for Force {
    const UNITS: &'static [Unit<Self>] = &[
        unit("N", &[], &["newton", "newtons"], (1, 1, 0)),
        unit("kN", &[], &["kilonewton", "kilonewtons"], (1, 1, 3)),
        unit("daN", &[], &[], (1, 1, 1)),
        unit("lbf", &[], &["pound-force", "pounds-force"], (44_482_216_152_605, 1, -13)),
        unit("kgf", &["kp"], &[], (980_665, 1, -5)),
    ];
    const EXAMPLE: &'static str = "300 N";
}

impl Readable for Time {
    const UNITS: &'static [Unit<Self>] = &[
        unit("s", &["sec", "secs"], &["second", "seconds"], (1, 1, 0)),
        unit("ms", &[], &["millisecond", "milliseconds"], (1, 1, -3)),
        unit("min", &["mins"], &["minute", "minutes"], (60, 1, 0)),
        unit("h", &["hr", "hrs"], &["hour", "hours"], (3600, 1, 0)),
        unit("d", &[], &["day", "days"], (86_400, 1, 0)),
        unit("wk", &[], &["week", "weeks"], (604_800, 1, 0)),
    ];
    const EXAMPLE: &'static str = "2 h";
}

impl Readable for Temperature {
    const UNITS: &'static [Unit<Self>] = &[
        unit("°C", &["C", "℃", "deg C", "degC"], &["celsius", "degrees celsius"], (1, 1, 0)),
        unit("°F", &["F", "℉", "deg F", "degF"], &["fahrenheit", "degrees fahrenheit"], (5, 9, 0))
            .offset(-32, 0),
        unit("K", &[], &["kelvin"], (1, 1, 0)).offset(-27_315, -2),
    ];
    const EXAMPLE: &'static str = "20 °C";

    fn impossible(self) -> Option<&'static str> {
        (self.in_celsius() < -273.15).then_some("a temperature above absolute zero, -273.15 °C")
    }
}

impl Readable for TemperatureDifference {
    const UNITS: &'static [Unit<Self>] = &[
        unit("K", &[], &["kelvin", "kelvins"], (1, 1, 0)),
        unit("°C", &["C", "℃", "deg C", "degC"], &["degrees celsius"], (1, 1, 0)),
        unit("°F", &["F", "℉", "deg F", "degF"], &["degrees fahrenheit"], (5, 9, 0)),
    ];
    const EXAMPLE: &'static str = "10 K";
}

impl Readable for Voltage {
    const UNITS: &'static [Unit<Self>] = &[
        unit(
            "V",
            &["v", "VDC", "Vdc", "V DC", "V dc", "V d.c.", "V="],
            &["volt", "volts"],
            (1, 1, 0),
        ),
        unit("mV", &[], &["millivolt", "millivolts"], (1, 1, -3)),
        unit("kV", &[], &["kilovolt", "kilovolts"], (1, 1, 3)),
    ];
    const EXAMPLE: &'static str = "12.8 V";
}

impl Readable for Current {
    const UNITS: &'static [Unit<Self>] = &[
        unit("A", &["a"], &["amp", "amps", "ampere", "amperes"], (1, 1, 0)),
        unit("mA", &[], &["milliamp", "milliamps", "milliampere", "milliamperes"], (1, 1, -3)),
        unit("µA", &["uA"], &[], (1, 1, -6)),
        unit("kA", &[], &["kiloamp", "kiloamps"], (1, 1, 3)),
    ];
    const EXAMPLE: &'static str = "7.2 A";
}

impl Readable for Resistance {
    const UNITS: &'static [Unit<Self>] = &[
        unit("mΩ", &["mohm", "mOhm", "mohms"], &["milliohm", "milliohms"], (1, 1, -3)),
        unit("Ω", &[], &["ohm", "ohms"], (1, 1, 0)),
        unit(
            "µΩ",
            &["uΩ", "µohm", "uohm"],
            &["microhm", "microhms", "microohm", "microohms"],
            (1, 1, -6),
        ),
        unit(
            "kΩ",
            &["kohm", "kOhm", "kohms"],
            &["kilohm", "kilohms", "kiloohm", "kiloohms"],
            (1, 1, 3),
        ),
        unit(
            "MΩ",
            &["Mohm", "MOhm", "Mohms"],
            &["megohm", "megohms", "megaohm", "megaohms"],
            (1, 1, 6),
        ),
    ];
    const EXAMPLE: &'static str = "20 mΩ";
}

impl Readable for Power {
    const UNITS: &'static [Unit<Self>] = &[
        unit("W", &["w"], &["watt", "watts"], (1, 1, 0)),
        unit("mW", &[], &["milliwatt", "milliwatts"], (1, 1, -3)),
        unit("kW", &["KW", "Kw"], &["kilowatt", "kilowatts"], (1, 1, 3)),
        unit("MW", &[], &["megawatt", "megawatts"], (1, 1, 6)),
        unit(
            "BTU/h",
            &["Btu/h", "btu/h", "BTU/hr", "Btu/hr", "btu/hr", "BTUH", "BTU per hour", "BTU/hour"],
            &[],
            (105_505_585_262, 3600, -8),
        ),
    ];
    const EXAMPLE: &'static str = "60 W";
}

impl Readable for Energy {
    const UNITS: &'static [Unit<Self>] = &[
        unit(
            "Wh",
            &["wh", "WH", "W·h"],
            &["watt-hour", "watt-hours", "watt hour", "watt hours"],
            (3600, 1, 0),
        ),
        unit(
            "kWh",
            &["kwh", "KWH", "KWh", "kW·h"],
            &["kilowatt-hour", "kilowatt-hours", "kilowatt hour", "kilowatt hours"],
            (3600, 1, 3),
        ),
        unit("J", &[], &["joule", "joules"], (1, 1, 0)),
        unit("kJ", &[], &["kilojoule", "kilojoules"], (1, 1, 3)),
        unit("MJ", &[], &["megajoule", "megajoules"], (1, 1, 6)),
        unit("BTU", &["Btu", "btu"], &[], (105_505_585_262, 1, -8)),
    ];
    const EXAMPLE: &'static str = "1.2 kWh";
}

impl Readable for Charge {
    const UNITS: &'static [Unit<Self>] = &[
        unit(
            "Ah",
            &["ah", "AH", "aH", "A·h"],
            &["amp-hour", "amp-hours", "amp hour", "amp hours", "ampere-hour", "ampere-hours"],
            (3600, 1, 0),
        ),
        unit("mAh", &["mah", "mAH", "mA·h"], &["milliamp-hour", "milliamp-hours"], (3600, 1, -3)),
        unit(
            "A·s",
            &["As"],
            &["ampere-second", "ampere-seconds", "coulomb", "coulombs"],
            (1, 1, 0),
        ),
    ];
    const EXAMPLE: &'static str = "95 Ah";
}

impl Readable for Flow {
    const UNITS: &'static [Unit<Self>] = &[
        unit(
            "m³/h",
            &["m³/hr", "cbm/h"],
            &["cubic metres per hour", "cubic meters per hour"],
            (1, 3600, 0),
        ),
        unit("m³/s", &[], &[], (1, 1, 0)),
        unit("l/s", &["L/s"], &[], (1, 1, -3)),
        unit(
            "l/min",
            &["L/min", "lpm", "LPM"],
            &["litres per minute", "liters per minute"],
            (1, 60, -3),
        ),
        unit(
            "l/h",
            &["L/h", "l/hr", "L/hr"],
            &["litres per hour", "liters per hour"],
            (1, 3600, -3),
        ),
        unit("cfm", &["CFM", "ft³/min"], &[], (28_316_846_592, 60, -12)),
    ];
    const EXAMPLE: &'static str = "40 m³/h";
}

impl Readable for Pressure {
    const UNITS: &'static [Unit<Self>] = &[
        unit("kPa", &[], &["kilopascal", "kilopascals"], (1, 1, 3)),
        unit("Pa", &[], &["pascal", "pascals"], (1, 1, 0)),
        unit("hPa", &[], &[], (1, 1, 2)),
        unit("MPa", &[], &["megapascal", "megapascals"], (1, 1, 6)),
        unit("GPa", &[], &[], (1, 1, 9)),
        unit("N/mm²", &[], &[], (1, 1, 6)),
        unit("mbar", &[], &["millibar", "millibars"], (1, 1, 2)),
        unit("bar", &[], &["bars"], (1, 1, 5)),
        unit("psi", &["PSI", "lbf/in²"], &[], (44_482_216_152_605, 64516, -5)),
    ];
    const EXAMPLE: &'static str = "250 kPa";
}

impl Readable for Angle {
    const UNITS: &'static [Unit<Self>] = &[
        unit("°", &["deg", "degs"], &["degree", "degrees"], (17_453_292_519_943_295_769, 1, -21)),
        unit("rad", &[], &["radian", "radians"], (1, 1, 0)),
    ];
    const EXAMPLE: &'static str = "15°";
}

impl Readable for Conductance {
    const UNITS: &'static [Unit<Self>] = &[
        unit("W/K", &["W/°C"], &["watts per kelvin"], (1, 1, 0)),
        unit("mW/K", &[], &[], (1, 1, -3)),
    ];
    const EXAMPLE: &'static str = "0.8 W/K";
}

impl Readable for Conductivity {
    const UNITS: &'static [Unit<Self>] = &[
        unit("W/(m·K)", &["W/(mK)", "W/m·K", "W/mK", "W/m/K"], &[], (1, 1, 0)),
        unit("mW/(m·K)", &["mW/(mK)", "mW/m·K", "mW/mK", "mW/m/K"], &[], (1, 1, -3)),
    ];
    const EXAMPLE: &'static str = "0.034 W/(m·K)";
}

impl Readable for Share {
    const UNITS: &'static [Unit<Self>] =
        &[unit("%", &["pct"], &["percent", "per cent"], (1, 1, -2))];
    const EXAMPLE: &'static str = "80 %";
    const BARE: Option<&'static Unit<Self>> = Some(&unit("", &[], &[], (1, 1, 0)));

    fn impossible(self) -> Option<&'static str> {
        let within = (0.0..=1.0).contains(&self.si());
        (!within).then_some("a share from 0 to 1, or from 0 % to 100 %")
    }
}
