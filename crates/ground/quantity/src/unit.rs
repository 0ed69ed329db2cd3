//! The physical quantities as types, each a number in its SI unit.

use std::fmt::Debug;
use std::ops::{Add, Div, Mul, Neg, Sub};

/// A physical quantity that is one number in a fixed unit.
pub trait Quantity: Copy + Debug + PartialEq + PartialOrd + 'static {
    /// The name people use for it, in the singular: `length`, `current`.
    const NAME: &'static str;
    /// The symbol of the unit that [`Quantity::si`] counts in.
    const SI_UNIT: &'static str;
    /// The number in [`Quantity::SI_UNIT`].
    fn si(self) -> f64;
    /// The quantity of `value` in [`Quantity::SI_UNIT`].
    fn from_si(value: f64) -> Self;
}

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $word:literal, $unit:literal, $make:ident, $get:ident
     $(, $also_make:ident / $also_get:ident = $factor:literal $also_doc:literal)*) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("From a number in ", $unit, ".")]
            pub const fn $make(value: f64) -> Self { Self(value) }
            #[doc = concat!("The number in ", $unit, ".")]
            pub const fn $get(self) -> f64 { self.0 }
            $(
                #[doc = concat!("From a number in ", $also_doc, ".")]
                pub fn $also_make(value: f64) -> Self { Self(value / $factor) }
                #[doc = concat!("The number in ", $also_doc, ".")]
                pub fn $also_get(self) -> f64 { self.0 * $factor }
            )*
            /// The smaller of two.
            pub fn min(self, other: Self) -> Self { Self(self.0.min(other.0)) }
            /// The larger of two.
            pub fn max(self, other: Self) -> Self { Self(self.0.max(other.0)) }
            /// Without its sign.
            pub fn abs(self) -> Self { Self(self.0.abs()) }
        }

        impl Quantity for $name {
            const NAME: &'static str = $word;
            const SI_UNIT: &'static str = $unit;
            fn si(self) -> f64 { self.0 }
            fn from_si(value: f64) -> Self { Self(value) }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self { Self(self.0 + other.0) }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self { Self(self.0 - other.0) }
        }
        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self { Self(-self.0) }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, by: f64) -> Self { Self(self.0 * by) }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, by: f64) -> Self { Self(self.0 / by) }
        }
        impl Div for $name {
            type Output = f64;
            fn div(self, by: Self) -> f64 { self.0 / by.0 }
        }
        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(all: I) -> Self { all.fold(Self(0.0), Add::add) }
        }
    };
}

quantity!(
    /// A length \[m\].
    Length, "length", "m", m, in_m, mm / in_mm = 1000.0 "millimetres");
quantity!(
    /// An area, a cable's section among them \[m²\].
    Area, "area", "m²", m2, in_m2, mm2 / in_mm2 = 1e6 "square millimetres", cm2 / in_cm2 = 1e4 "square centimetres");
quantity!(
    /// A volume \[m³\].
    Volume, "volume", "m³", m3, in_m3, litres / in_litres = 1000.0 "litres");
quantity!(
    /// A mass \[kg\].
    Mass, "mass", "kg", kg, in_kg);
quantity!(
    /// A force \[N\].
    Force, "force", "N", n, in_n);
quantity!(
    /// A length of time \[s\].
    Time, "time", "s", s, in_s);
quantity!(
    /// A temperature on the Celsius scale \[°C\].
    Temperature, "temperature", "°C", celsius, in_celsius);
quantity!(
    /// A difference of temperatures \[K\].
    TemperatureDifference, "temperature difference", "K", k, in_k);
quantity!(
    /// A voltage \[V\].
    Voltage, "voltage", "V", v, in_v, mv / in_mv = 1000.0 "millivolts");
quantity!(
    /// A current \[A\].
    Current, "current", "A", a, in_a);
quantity!(
    /// An electrical resistance \[Ω\].
    Resistance, "resistance", "Ω", ohm, in_ohm, mohm / in_mohm = 1000.0 "milliohms");
quantity!(
    /// A power, electrical or heat \[W\].
    Power, "power", "W", w, in_w);
quantity!(
    /// An energy \[J\].
    Energy, "energy", "J", j, in_j);
quantity!(
    /// An electric charge \[A·s\]; batteries are labelled in ampere-hours.
    Charge, "charge", "A·s", a_s, in_a_s);
quantity!(
    /// A volume flow \[m³/s\].
    Flow, "flow", "m³/s", m3_per_s, in_m3_per_s, m3_per_h / in_m3_per_h = 3600.0 "cubic metres an hour");
quantity!(
    /// A pressure or mechanical stress \[Pa\].
    Pressure, "pressure", "Pa", pa, in_pa);
quantity!(
    /// An angle \[rad\].
    Angle, "angle", "rad", rad, in_rad);
quantity!(
    /// A thermal conductance, U·A \[W/K\].
    Conductance, "thermal conductance", "W/K", w_per_k, in_w_per_k);
quantity!(
    /// A thermal conductivity \[W/(m·K)\].
    Conductivity, "thermal conductivity", "W/(m·K)", w_per_m_k, in_w_per_m_k);

quantity!(
    /// A share of a whole, as in 0.8 or 80 %.
    Share, "share", "1", of_one, in_of_one, percent / in_percent = 100.0 "hundredths");

impl Energy {
    /// From a number in watt-hours.
    pub fn wh(value: f64) -> Self {
        Self(value * 3600.0)
    }
    /// The number in watt-hours.
    pub fn in_wh(self) -> f64 {
        self.0 / 3600.0
    }
}

impl Charge {
    /// From a number in ampere-hours.
    pub fn ah(value: f64) -> Self {
        Self(value * 3600.0)
    }
    /// The number in ampere-hours.
    pub fn in_ah(self) -> f64 {
        self.0 / 3600.0
    }
}

impl Pressure {
    /// From a number in megapascals.
    pub fn mpa(value: f64) -> Self {
        Self(value * 1e6)
    }
    /// The number in megapascals.
    pub fn in_mpa(self) -> f64 {
        self.0 / 1e6
    }
}

impl Time {
    /// From a number in hours.
    pub fn hours(value: f64) -> Self {
        Self(value * 3600.0)
    }
    /// The number in hours.
    pub fn in_hours(self) -> f64 {
        self.0 / 3600.0
    }
    /// From a number of days of 24 hours.
    pub fn days(value: f64) -> Self {
        Self(value * 86_400.0)
    }
    /// The number of days of 24 hours.
    pub fn in_days(self) -> f64 {
        self.0 / 86_400.0
    }
}

impl Temperature {
    /// The thermodynamic temperature in kelvin.
    pub fn in_kelvin(self) -> f64 {
        self.0 + 273.15
    }
    /// How much warmer this is than `other`.
    pub fn above(self, other: Self) -> TemperatureDifference {
        TemperatureDifference(self.0 - other.0)
    }
    /// This temperature, `by` warmer.
    pub fn warmer(self, by: TemperatureDifference) -> Self {
        Self(self.0 + by.0)
    }
}

impl Angle {
    /// From a number in degrees.
    pub fn degrees(value: f64) -> Self {
        Self(value.to_radians())
    }
    /// The number in degrees.
    pub fn in_degrees(self) -> f64 {
        self.0.to_degrees()
    }
}

macro_rules! product {
    ($a:ident * $b:ident = $c:ident) => {
        impl Mul<$b> for $a {
            type Output = $c;
            fn mul(self, other: $b) -> $c {
                $c(self.0 * other.0)
            }
        }
        impl Div<$b> for $c {
            type Output = $a;
            fn div(self, other: $b) -> $a {
                $a(self.0 / other.0)
            }
        }
    };
}

macro_rules! quotient {
    ($c:ident / $a:ident = $b:ident) => {
        impl Div<$a> for $c {
            type Output = $b;
            fn div(self, other: $a) -> $b {
                $b(self.0 / other.0)
            }
        }
    };
}

product!(Resistance * Current = Voltage);
quotient!(Voltage / Resistance = Current);
product!(Voltage * Current = Power);
quotient!(Power / Voltage = Current);
product!(Power * Time = Energy);
product!(Current * Time = Charge);
product!(Conductance * TemperatureDifference = Power);
product!(Length * Length = Area);
product!(Area * Length = Volume);
