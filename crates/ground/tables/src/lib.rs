//! "Who says so?" — published figures, each with its source, with how far it was seen there, and
//! with whether it is a limit, practice or a property.
//!
//! The figures live in text files under `data/`, one a subject, each table with its columns, a
//! units row and rows. This crate reads them and looks them up by name or size. It computes
//! nothing: no interpolation, no correction, no choice between rows that disagree.
//!
//! Most standards are sold, not free: their figures were seen in reprints, makers' tables and
//! legal texts, which [`Source::seen`] tells. A figure that is only [`Status::FromMemory`] is a
//! band of plausibility, and with [`Class::Practice`] it never makes a *stop*:
//! [`Entry::may_stop`]. What has no source at all is a stand-in: [`typical`].
//!
//! ```
//! use spile_quantity::{Area, Current, Temperature, Voltage};
//! use spile_tables::{ampacity, conductor, fuse};
//!
//! let cable = conductor::metric_size(Area::mm2(4.0)).unwrap();
//! assert_eq!(cable.value.class5.in_mohm(), 4.95); // a metre, at most, at 20 °C
//! assert_eq!(cable.source.key, "iec-60228");
//! let amps = ampacity::boat_current(12, Temperature::celsius(105.0)).unwrap();
//! assert!(amps.may_stop() && amps.value == Current::a(45.0));
//! let blade = fuse::breaking(fuse::Family::Blade, Voltage::v(13.0)).unwrap();
//! assert_eq!(blade.value.current.in_a(), 1000.0);
//! ```

pub mod ampacity;
pub mod axle;
pub mod battery;
pub mod charging;
pub mod clearness;
pub mod climate;
pub mod cold;
pub mod conductor;
pub mod fastener;
pub mod fault;
mod file;
pub mod fuse;
pub mod load;
pub mod plate;
mod source;
mod typical;
pub mod workshop;

pub use file::{TableInfo, tables};
pub use source::{Class, Entry, Source, Status, source, sources};
pub use typical::{Typical, typical, typical_keys, typical_number};

/// Every data file, for [`tables`].
static FILES: [&file::Lazy; 14] = [
    &ampacity::FILE,
    &axle::FILE,
    &battery::FILE,
    &charging::FILE,
    &clearness::FILE,
    &climate::FILE,
    &cold::FILE,
    &conductor::FILE,
    &fastener::FILE,
    &fault::FILE,
    &fuse::FILE,
    &load::FILE,
    &plate::FILE,
    &workshop::FILE,
];
