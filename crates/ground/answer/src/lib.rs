//! "How near is it, which way did it move, and how sure is that?" — verdict, finding, figure with
//! its range, basis and working.
//!
//! A question takes its inputs into a [`Ledger`], each with its bounds and its basis, and writes
//! its figures as functions of a [`Point`] of that ledger. [`swing`] tries every uncertain input at
//! both ends, then those that matter most together, and gives the likely value and the
//! unfavourable end. [`judge`] holds both against a [`Limit`]. What decides a verdict and can be
//! measured is asked for, and [`Finding::settling`] says at which value of it the verdict turns.
//! Nothing here knows what a fridge is.
//!
//! Bounds are bounds, not standard deviations, and inputs are taken as independent: one cause that
//! several figures share is one input. What turns round inside its range is tried at its ends only.
//!
//! ```
//! use spile_answer::{Basis, Class, Finding, Given, Ledger, Limit, Sense, Unit, Verdict, Worse, swing};
//! use spile_quantity::{Length, Ranged};
//!
//! let tape = |mm: f64, off: f64| Given {
//!     value: Ranged::new(Length::mm(mm - off), Length::mm(mm), Length::mm(mm + off)).unwrap(),
//!     basis: Basis::Measured,
//!     source: "build.toml:14".into(),
//!     how: "a tape".into(),
//! };
//! let mut ledger = Ledger::new();
//! let (bay, body) = (ledger.take("bay", &tape(520.0, 1.0)), ledger.take("body", &tape(475.0, 0.5)));
//! let [left] = swing(&ledger, [Worse::Lower], |p| [(p.at(bay) - p.at(body)).in_mm()]);
//! let space = Limit { value: 0.0, sense: Sense::AtLeast, class: Class::Limit, kind: "space",
//!     source: "two things in one place".into(), firm: true };
//! let finding = Finding::measured("width", "left beside it", Unit::Millimetre, &left, space, &ledger);
//! assert_eq!(finding.verdict, Verdict::Good);
//! assert!((finding.figure.unwrap().unfavourable - 43.5).abs() < 1e-9);
//! ```

mod basis;
mod finding;
mod ledger;
mod question;
mod settle;
mod swing;
mod verdict;

pub use basis::{Basis, Given};
pub use finding::{Ask, Class, Expect, Figure, Finding, Limit, Sense, Step, Unit};
pub use ledger::{Handle, Input, Ledger, Point};
pub use question::{Answer, Question};
pub use swing::{Mover, Swing, TOGETHER, Worse, swing};
pub use verdict::{Reason, TIGHT_SHARE, Verdict, judge};
