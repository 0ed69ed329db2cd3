//! "I write it down as it stands on the tape or on the label, and it must not be taken for
//! anything else."
//!
//! Lengths, masses, currents and the rest as types ([`Quantity`]), what is known of them as bounds
//! ([`Ranged`]), and the way from text and back: [`read`] takes quantities with units and
//! tolerances, [`read_cable`] cable sizes, [`read_capacity`] what a battery holds; [`exact`] prints
//! so that the same number is read back, [`display`] prints the digits that are known, and [`Tape`]
//! rounds to the marks of a tape in a given direction. What a cable carries or how much copper is
//! in an SAE gauge is not known here, nor is any other table.
//!
//! # Model
//! A quantity is one double in its SI unit (temperatures in °C). Text is read as an exact fraction,
//! units are exact ratios, and the result is rounded once: `440 mm` is the double nearest to 0.44,
//! and 1/64 in steps come back as they were written. A tolerance is a bound, never a standard
//! deviation.
//!
//! # What is refused
//! Anything with two readings is asked about rather than guessed ([`Misread`]): `1,140 mm` (one
//! comma before three digits), `8 gal`, a cable of `6 mm` or `6 gauge`, `5 mw`. A lone point is
//! always a decimal point; thousands may be set off by spaces.
//!
//! # Standards
//! Units: NIST SP 811 (2008). Wire gauges: ASTM B258.
//!
//! # Limits
//! Numbers have at most nineteen digits that count. Wire gauges go from 4/0 to 30.
//!
//! ```
//! use spile_quantity::{Length, Tape, Voltage, display, exact, read, read_cable};
//!
//! let opening = read::<Length>("17 5/16 in ± 1/16")?.ranged;
//! assert_eq!(exact(opening.likely), "439.7375 mm");
//! assert_eq!(Tape::Millimetre.within(&opening).unwrap().mark.to_string(), "440 mm");
//! let volts = read::<Voltage>("12.8 V +5/-10 %")?;
//! assert_eq!(display(&volts.ranged, volts.unit), "12.8 V");
//! let asked = read_cable("6 mm").unwrap_err();
//! assert!(asked.to_string().contains("square millimetres or outside diameter?"));
//! # Ok::<(), spile_quantity::Misread>(())
//! ```

mod cable;
mod capacity;
mod cursor;
mod exact;
mod lookup;
mod misread;
mod number;
mod print;
mod ranged;
mod tape;
mod unit;
mod units;
mod written;

pub use cable::{Awg, CableSize, read_cable};
pub use capacity::{Capacity, read_capacity};
pub use lookup::read_unit;
pub use misread::{Misread, MisreadKind};
pub use print::{display, display_pair, display_to, exact, exact_in};
pub use ranged::Ranged;
pub use tape::{Mark, Marked, Tape};
pub use unit::{
    Angle, Area, Charge, Conductance, Conductivity, Current, Energy, Flow, Force, Length, Mass,
    Power, Pressure, Quantity, Resistance, Share, Temperature, TemperatureDifference, Time,
    Voltage, Volume,
};
pub use units::{Readable, Unit};
pub use written::{Written, read};
