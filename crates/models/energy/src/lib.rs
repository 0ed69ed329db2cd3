//! "How much does the roof bring in January, and how low does the battery get in a week of rain?"
//!
//! **Computed**: where the sun is, what a clear sky lets through, what falls on a panel, how warm
//! its cells get and what they give ([`sun`], [`panel`]); days of weather that follow one another
//! like real ones, from monthly means ([`weather`]); a battery by its charge, with what it keeps,
//! accepts and refuses ([`battery`]); and all of it hour by hour through a year ([`year`]).
//!
//! **Not computed**: voltages (the battery is counted in ampere-hours), ageing, self-discharge,
//! snow on panels, clouds within an hour, wind, the horizon of a place (a share of shading stands
//! for it), reading of weather files.
//!
//! **Model**: a year has 365 days and local mean solar time. Nothing here reads a clock: years
//! differ by a seed that the caller gives. Inside each function numbers are SI; ranges of uncertain
//! inputs are tried by the caller.
//!
//! **Sources**: Grena (2012) by the library `solar-positioning`; FAO Irrigation and Drainage Paper
//! 56 (1998); Kasten and Young (1989); Ineichen and Perez (2002); Hay and Davies (1980); De Soto et
//! al. (2006); Faiman (2008); Erbs et al. (1982); Collares-Pereira and Rabl (1979); Aguiar,
//! Collares-Pereira and Conde (1988). Checked against `pvlib`.
//!
//! **Limits**: years 2010 to 2110, latitudes where the sun rises at all; hours are means.
//!
//! ```
//! use spile_energy::{panel::{Array, Plane}, weather::{self, Normals}, year};
//! use spile_quantity::{Angle, Share, Temperature, TemperatureDifference};
//! let sky = year::sky(Angle::degrees(37.0))?;
//! let normals = Normals {
//!     clearness: [0.55; 12],
//!     temperature: [Temperature::celsius(18.0); 12],
//!     swing: TemperatureDifference::k(9.0),
//! };
//! let weather = weather::year(&sky, &normals, 1)?;
//! let roof = Array { plane: Plane::FLAT, cooling_w_per_m2_k: 20.0, per_kelvin: -0.0035,
//!     losses: Share::percent(10.0) };
//! let sun = year::sun_on(&roof, &sky, &weather, |_| true)?;
//! let kwh_of_a_kw = sun.iter().sum::<f64>();
//! assert!((1200.0..1700.0).contains(&kwh_of_a_kw), "{kwh_of_a_kw}");
//! # Ok::<(), spile_energy::EnergyError>(())
//! ```

pub mod battery;
pub mod calendar;
mod error;
pub mod panel;
pub mod sun;
pub mod weather;
pub mod year;

pub use error::EnergyError;
