//! Quantities as people write them: read, converted, rounded and printed.

mod cursor;
mod exact;
mod lookup;
mod misread;
mod number;
mod ranged;
mod unit;
mod units;
mod written;

pub use lookup::read_unit;
pub use misread::{Misread, MisreadKind};
pub use ranged::Ranged;
pub use unit::{
    Angle, Area, Charge, Conductance, Conductivity, Current, Energy, Flow, Force, Length, Mass,
    Power, Pressure, Quantity, Resistance, Share, Temperature, TemperatureDifference, Time,
    Voltage, Volume,
};
pub use units::{Readable, Unit};
pub use written::{Written, read};
