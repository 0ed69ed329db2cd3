//! "Will it stay put on a rough road, and what gives first?" What fasteners, panels, tubes and glue
//! bear, and how the push of a mass is shared among them.
//!
//! # What it computes
//! - [`envelope`]: how a mass pushes in each load case, and what each case is called;
//! - [`group`]: each fastener's share of a push beside and in front of their middle;
//! - [`bolt`], [`thread`], [`wood`], [`sheet`], [`glue`]: what one fastener bears in each way of
//!   failing;
//! - [`plate`], [`beam`]: stress and sag of panels, of strips beside a cut-out, of tubes.
//!
//! # What it does not
//! It judges nothing. No fatigue, no preload and no slip, no dynamics beyond the load case's
//! factor, no buckling, no welds. Who drills into a belt anchorage is told elsewhere.
//!
//! # Model and assumptions
//! Statics with small deflections. A thing is a rigid body on springs of one stiffness, the
//! fasteners; it turns about the edge of its own foot; what presses it against its base is not
//! counted as help. Every strength is [`Ultimate`], [`Proof`] or [`Allowable`], and a load can be
//! held against an allowable only.
//!
//! # Standards
//! ISO 898-1, ISO 3506-1, ISO 965-1, EN 1993-1-8 tables 3.3 and 3.4, NDS 2018 chapter 12, the Wood
//! Handbook, AISI S100 (from memory), EN 12195-1, ISO 10133, EN 1789 (from memory).
//!
//! # Example
//! Four M6 bolts of class 8.8 hold 40 kg that stand 0.3 m high, one g to the side:
//! ```
//! use spile_quantity::{Force, Length, Mass};
//! use spile_strength::{bolt, group::{Group, Push}};
//!
//! let at = |right, above| [Length::mm(right), Length::mm(above)];
//! let feet = [at(0.0, 0.0), at(400.0, 0.0), at(0.0, 300.0), at(400.0, 300.0)];
//! let foot = [Length::mm(400.0), Length::mm(300.0)];
//! let group = Group::new(&feet, foot).unwrap();
//! let side = Push { right: Force::n(392.3), above: Force::n(0.0), away: Force::n(0.0) };
//! let shares = group.shares(side, at(200.0, 150.0), Length::mm(300.0));
//! let bolt = bolt::resistance(Length::mm(6.0), "8.8").unwrap().value;
//! assert!(shares.iter().all(|s| bolt.used(s.tension, s.shear) < 0.1));
//! ```

pub mod beam;
pub mod bolt;
pub mod envelope;
pub mod glue;
pub mod group;
mod no_answer;
pub mod plate;
pub mod sheet;
mod strength;
pub mod thread;
pub mod wood;

pub use no_answer::NoAnswer;
pub use strength::{Allowable, Factor, Proof, Ultimate};
