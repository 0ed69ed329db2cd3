//! "Is the cable thick enough, is the fuse right, and will the fridge start on a flat, cold
//! battery?" The direct-current side as one circuit, and what its conductors and fuses stand.
//!
//! # What it computes
//! - [`network`]: every voltage and current of a circuit of batteries, resistances and loads, with
//!   returns through cable and body side by side, loads of constant power, cut-outs, and the name
//!   of what collapses, floats or is shorted;
//! - [`conductor`]: the resistance of cable, body and frame, and the temperature under load;
//!   [`warm`]: both at once in a whole circuit;
//! - [`ampacity`]: what a cable carries by copper, insulation, ambient and bundle;
//! - [`fuse`]: when a fuse opens, what is made, what it loses, what it carries for hours;
//! - [`fault`]: fault currents, and how long a conductor stands them;
//! - [`scene`]: the circuit of a build, with the inputs that its figures hang on.
//!
//! # What it does not
//! It judges nothing: whether 3 % of drop matters is for the question that asks. No alternating
//! current, no transients (inductance, the milliseconds of a motor's start), no state of charge: a
//! battery is the voltage and the resistance that it is given for one state.
//!
//! # Model and assumptions
//! Steady direct current; modified nodal analysis with Newton's method (see [`network`]). Copper
//! warms with the square of its current up to its rating at what it may carry. Published figures
//! come from `spile-tables`, each with its source; what lies outside a table or a formula is a
//! typed [`NoAnswer`], never carried on in silence.
//!
//! # Standards
//! IEC 60228 (class 5), ASTM B258, NEC chapter 9 table 8 (2 % lay), IEC 60028; 33 CFR 183.425
//! table 5; ISO 8820-3; IEC 60364-4-43 (adiabatic). Most are known from reprints: see the tables.
//!
//! # Example
//! A fridge on 6 m of 1.5 mm² and back, at a low battery:
//! ```
//! use spile_circuit::{conductor::cable_resistance, network::{Draw, Network, solve}};
//! use spile_quantity::{Area, CableSize, Length, Power, Resistance, Temperature, Voltage};
//!
//! let size = CableSize::Metric(Area::mm2(1.5));
//! let cable = cable_resistance(size, Length::m(6.0), Temperature::celsius(40.0)).unwrap();
//! let mut net = Network::new("bank -");
//! let [post, feed, back] = ["bank +", "fridge +", "fridge -"].map(|name| net.node(name));
//! net.battery("bank", post, net.reference(), Voltage::v(11.6), Resistance::mohm(15.0));
//! net.resistor("feed", post, feed, cable.high);
//! net.resistor("return", back, net.reference(), cable.high);
//! net.load("fridge", feed, back, Draw::Power(Power::w(65.0)), Some(Voltage::v(10.4)));
//! let terminals = solve(&net).unwrap().between(feed, back);
//! assert!(terminals.in_v() > 10.4 && terminals.in_v() < 10.7); // it runs, with little to spare
//! ```

pub mod ampacity;
pub mod conductor;
pub mod fault;
pub mod fuse;
pub mod network;
mod no_answer;
pub mod scene;
pub mod warm;

pub use no_answer::NoAnswer;
