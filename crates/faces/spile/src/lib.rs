//! "Tell me before I cut." — the program: what is typed, what is printed, how it ends.
//!
//! Data goes to standard output, talk to standard error; each line has at most 80 columns (JSON
//! and completions aside), and colour only adds to what the words say. Nothing is computed here:
//! the answers come from `spile-ask`, the problems from `spile-build`, the published figures from
//! `spile-tables`.
//!
//! What is computed when: a command reads only the tables that it needs.
//!
//! ```
//! use spile::show::bar::{Bar, TICK, draw};
//! use spile_answer::Sense;
//!
//! let drop = Bar { before: Some(1.2), after: 2.4, worst: 3.2, limit: 3.0, sense: Sense::AtMost };
//! let drawn = draw(&drop).unwrap();
//! assert_eq!(drawn.cells.chars().nth(TICK), Some('┫'));
//! assert!(drawn.cells.starts_with("───────────○──────────●━━━━━┫━"));
//! ```

mod args;
mod demo_files;
mod run;
pub mod show;

use std::ffi::OsString;
use std::io::{self, IsTerminal, Write};
use std::process::ExitCode;

use clap::Parser;
use clap::error::ErrorKind;

use args::{Args, Command};
use run::{Outcome, Status};
use show::page::{COLUMNS, Page, Text, columns, tied};

/// Does what the arguments say, the program's name first, and says how it ended.
pub fn run(args: impl IntoIterator<Item = OsString>) -> ExitCode {
    let outcome = match Args::try_parse_from(args) {
        Ok(args) => obey(args.command),
        Err(error) => not_obeyed(&error),
    };
    print(&mut anstream::stderr(), &outcome.talk);
    let status = if print(&mut anstream::stdout(), &outcome.data) {
        outcome.status
    } else {
        print(&mut anstream::stderr(), "spile: the answer could not be written\n");
        Status::Unread
    };
    ExitCode::from(status as u8)
}

fn obey(command: Command) -> Outcome {
    match command {
        Command::Demo { folder } => run::demo(&folder),
        Command::New(new) => {
            let mut talk = anstream::stderr();
            let mut input = io::stdin().lock();
            let asks = io::stdin().is_terminal() && io::stderr().is_terminal();
            run::new(&new, asks.then_some(&mut input), &mut talk)
        }
        Command::Check(check) => run::check(&check),
        Command::Why(why) => run::why(&why),
        Command::Marks(marks) => run::marks(&marks),
        Command::Desk(desk) => run::desk(&desk, &mut anstream::stdout()),
        Command::Sources => run::sources(),
        Command::Schema { of } => run::schema(of),
        Command::Completions { shell } => run::completions(shell),
    }
}

/// Help and version are data; anything else that the parser says is a slip of the typist.
fn not_obeyed(error: &clap::Error) -> Outcome {
    match error.kind() {
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => {
            Outcome::data(error.render().ansi().to_string(), Status::Fine)
        }
        _ => {
            let mut page = Page::new();
            for line in error.render().to_string().lines() {
                let indent = line.len() - line.trim_start().len();
                if line.trim().is_empty() {
                    page.gap();
                } else if columns(line) <= COLUMNS {
                    page.put(indent, &Text::plain(&tied(line.trim())));
                } else {
                    page.put(indent, &Text::plain(line.trim()));
                }
            }
            Outcome::talk(page.finish(), Status::Unread)
        }
    }
}

/// Writes a text whole; a reader that has gone away has seen enough.
fn print(to: &mut impl Write, text: &str) -> bool {
    match to.write_all(text.as_bytes()).and_then(|()| to.flush()) {
        Ok(()) => true,
        Err(error) => error.kind() == io::ErrorKind::BrokenPipe,
    }
}
