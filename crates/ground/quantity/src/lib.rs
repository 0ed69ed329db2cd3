//! Quantities as people write them: read, converted, rounded and printed.

mod ranged;
mod unit;

pub use ranged::Ranged;
pub use unit::{
    Angle, Area, Charge, Conductance, Conductivity, Current, Energy, Flow, Force, Length, Mass,
    Power, Pressure, Quantity, Resistance, Temperature, TemperatureDifference, Time, Voltage,
    Volume,
};
