//! The program `spile`; all of it is in the library beside this file.

use std::process::ExitCode;

fn main() -> ExitCode {
    spile::run(std::env::args_os())
}
