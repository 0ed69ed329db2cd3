//! Verdict, finding, figure with its range, basis and working.

mod basis;
mod finding;
mod ledger;
mod question;
mod swing;
mod verdict;

pub use basis::{Basis, Given};
pub use finding::{Ask, Class, Figure, Finding, Limit, Sense, Step, Unit};
pub use ledger::{Handle, Input, Ledger, Point};
pub use question::{Answer, Question};
pub use swing::{Mover, Swing, TOGETHER, Worse, swing};
pub use verdict::{Reason, TIGHT_SHARE, Verdict, judge};
