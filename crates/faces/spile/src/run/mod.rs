//! The commands: each takes what was typed and gives what is to be printed.

mod check;
mod demo;
mod desk;
mod folder;
mod marks;
mod new;
mod open;
mod why;

use clap::CommandFactory;
use clap_complete::Shell;
use spile_build::SchemaOf;

use crate::args::{Args, SchemaKind};
use crate::show;
use crate::show::page::{Page, Text, Tone};

pub use check::check;
pub use demo::demo;
pub use desk::desk;
pub use marks::marks;
pub use new::new;
pub use why::why;

/// How the program ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Status {
    /// Nothing is worse than *care*, or the command did what it was asked.
    Fine = 0,
    /// Something is a *stop*.
    Stop = 1,
    /// The build or what was typed cannot be read.
    Unread = 2,
    /// Something is *open* and nothing is a *stop*.
    Open = 3,
}

/// What a command has to say, and how the program ends.
#[derive(Debug)]
pub struct Outcome {
    /// For standard output.
    pub data: String,
    /// For standard error.
    pub talk: String,
    /// How the program ends.
    pub status: Status,
}

impl Outcome {
    /// Only data.
    pub fn data(data: String, status: Status) -> Self {
        Self { data, talk: String::new(), status }
    }

    /// Only talk.
    pub fn talk(talk: String, status: Status) -> Self {
        Self { data: String::new(), talk, status }
    }

    /// Nothing could be done: why, and what to do about it.
    pub fn refused(says: &str, hint: &str) -> Self {
        let mut page = Page::new();
        let text = Text::plain(says);
        page.hang(0, &Text::new().and(Tone::Stop, "spile:"), 7, &text);
        if !hint.is_empty() {
            page.put(7, &Text::plain(hint));
        }
        Self::talk(page.finish(), Status::Unread)
    }
}

/// The published sources.
pub fn sources() -> Outcome {
    let text = show::sources(spile_tables::sources(), &spile_tables::tables());
    Outcome::data(text, Status::Fine)
}

/// The schema of one kind of file.
pub fn schema(of: SchemaKind) -> Outcome {
    let schema = match of {
        SchemaKind::Build => spile_build::schema(SchemaOf::Build),
        SchemaKind::Part => spile_build::schema(SchemaOf::Part),
        SchemaKind::Job => spile_build::schema(SchemaOf::Job),
        SchemaKind::Answers => spile_ask::json_schema(),
    };
    Outcome::data(format!("{schema:#}\n"), Status::Fine)
}

/// The completions of one shell.
pub fn completions(shell: Shell) -> Outcome {
    let mut text = Vec::new();
    clap_complete::generate(shell, &mut Args::command(), "spile", &mut text);
    Outcome::data(String::from_utf8_lossy(&text).into_owned(), Status::Fine)
}

/// A note beside the answers.
fn note(text: &str) -> String {
    let mut page = Page::new();
    page.hang(0, &Text::plain("note:"), 6, &Text::plain(text));
    page.finish()
}
