//! How much heat gets into the box, how hard the compressor works for it, and how hot it makes the
//! corner it stands in.
//!
//! **Computed**: steady heat networks ([`network`]); moist air and what it brings into a cold box
//! ([`air`]); the conductance of an insulated cabinet, its gasket, its openings, and a test with ice
//! ([`cabinet`]); heat of warm food ([`food`]); compressors and fits to their papers
//! ([`compressor`]); the bay and the condenser's place ([`place`]); all of it brought to one balance
//! ([`chain`]); air through openings, by warmth and by fans ([`openings`], [`fan`]); losses of
//! inverters and batteries ([`losses`]); gas of charging ([`gas`]); the boxes of a build with their
//! bays ([`scene`]); litres against days ([`keeping`]).
//!
//! **Not computed**: warm-up, pull-down and cycling (only means over steady days), wind, the sun on the vehicle's skin, absorption and thermoelectric
//! boxes (a typed error), frost on the evaporator.
//!
//! **Model**: a place is one temperature; conductances are constant; a compressor reaches a share of
//! Carnot's limit, falling with its condensing temperature, between an evaporator colder than the box
//! and a condenser warmer than its air, at one speed. Inside each function numbers are SI; ranges of
//! uncertain inputs are tried by the caller.
//!
//! **Sources**: FAO 56 (1998) and ASHRAE Fundamentals for air, Langmuir's shape factors for walls,
//! Earle for food, FAO 436 (2003) for ice; checked against `CoolProp` and SciPy.
//!
//! **Limits**: the power of a running compressor is one number, whatever the temperatures. Shape
//! factors hold for walls of one thickness.
//!
//! ```
//! use spile_heat::cabinet;
//! use spile_quantity::{Conductivity, Length};
//! let shell = cabinet::Shell {
//!     outside: [Length::mm(480.0), Length::mm(800.0), Length::mm(480.0)],
//!     wall: Length::mm(40.0),
//!     insulation: Conductivity::w_per_m_k(0.022),
//!     inside_film_w_per_m2_k: 8.3,
//!     outside_film_w_per_m2_k: 8.3,
//! };
//! let walls = cabinet::walls(&shell)?;
//! assert!((walls.total.in_w_per_k() - 0.78).abs() < 0.01);
//! assert!((walls.inside_volume.in_litres() - 115.2).abs() < 0.1);
//! # Ok::<(), spile_heat::HeatError>(())
//! ```

pub mod air;
pub mod cabinet;
pub mod chain;
pub mod compressor;
mod error;
pub mod fan;
pub mod food;
pub mod gas;
pub mod keeping;
pub mod losses;
pub mod network;
pub mod openings;
pub mod place;
mod root;
pub mod scene;

pub use error::HeatError;
