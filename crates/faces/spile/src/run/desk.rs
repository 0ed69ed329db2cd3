//! `spile desk`: the build in the browser.

use std::io::{self, Write};
use std::process::{Command, Stdio};

use super::{Outcome, Status};
use crate::args;
use spile_desk::{Desk, bind, serve};

/// Serves the pages of a build until it is ended; the address goes to `out` as soon as there is one.
pub fn desk(args: &args::Desk, out: &mut dyn Write) -> Outcome {
    let shown = args.build.display();
    if args.build.is_file() {
        return Outcome::refused(
            &format!("{shown} is a file"),
            "a build is a folder with a build.toml in it; name the folder",
        );
    }
    let bound = match bind(args.port) {
        Ok(bound) => bound,
        Err(error) => {
            let port = args.port.map_or_else(String::new, |port| format!(" {port}"));
            return Outcome::refused(
                &format!("the port{port} of the loopback cannot be had: {error}"),
                "leave --port out, and any that is free is taken",
            );
        }
    };
    let address = bound.address();
    let told = writeln!(out, "{address}").and_then(|()| out.flush());
    if let Err(error) = told.or_else(seen_enough) {
        return Outcome::refused(&format!("the address cannot be written: {error}"), "");
    }
    if !args.no_open {
        open(&address);
    }
    let desk = Desk::open(&args.build, bound.port());
    match serve(bound, &desk) {
        Ok(()) => Outcome::data(String::new(), Status::Fine),
        Err(error) => Outcome::refused(&format!("the pages cannot be served: {error}"), ""),
    }
}

/// A reader that has gone away has seen enough.
fn seen_enough(error: io::Error) -> io::Result<()> {
    if error.kind() == io::ErrorKind::BrokenPipe { Ok(()) } else { Err(error) }
}

/// Opens the address in the owner's browser. Where there is none, the address is on the terminal.
fn open(address: &str) {
    let (program, before): (&str, &[&str]) = if cfg!(target_os = "macos") {
        ("open", &[])
    } else if cfg!(windows) {
        ("cmd", &["/C", "start", ""])
    } else {
        ("xdg-open", &[])
    };
    let quiet = Stdio::null;
    // That no browser opens is seen at once, and the address is there to be typed.
    let _ = Command::new(program)
        .args(before)
        .arg(address)
        .stdin(quiet())
        .stdout(quiet())
        .stderr(quiet())
        .spawn();
}
