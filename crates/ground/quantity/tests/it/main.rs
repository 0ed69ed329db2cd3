//! What is read and printed, against published sizes of units and by what must always hold.

mod always;
mod cable;
mod misread;
mod pint;
mod reading;
mod tape;
mod world;
