//! The pages asked for as a browser would ask for them, without a browser.

mod ask;
mod change;
mod drag;
mod pages;
mod safety;
mod state;
mod thing;
mod well_formed;
