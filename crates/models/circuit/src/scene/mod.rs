//! The circuit of a build: bank, main fuse and cables, block, the run asked of and all others, the
//! body as a return. Everything uncertain is an input of a ledger, so that whoever asks can move it.
//!
//! A run's way is drawn between six points: the bank's posts, the fuse block, the negative bus, the
//! body and the plug; what lies in series between two of them is one branch.

mod bank;
mod cable;
mod everything;
mod load;
mod lost;
mod meter;
mod run;
mod supply;
mod way;

pub use bank::{bank_resistance, full_voltage, low_voltage};
pub use cable::{Carried, Carrier, Conductor, Copper, how_to_tell, likely_carried, table_of};
pub use everything::{EverythingOn, RunOn, everything_on};
pub use load::{Load, Start, from_table, load};
pub use lost::Lost;
pub use meter::{Does, Metered, OPEN, Stand, Stretch};
pub use run::{Fuse, OneRun, family, weakest};
pub use supply::{BOND, BodyWay, MAIN, MAIN_BACK, Others, Supply, SupplyNet};
pub use way::{Solved, State, Way};
