//! What can be typed.

use std::path::PathBuf;

use clap::{Args as ClapArgs, Parser, Subcommand, ValueEnum};
use clap_complete::Shell;

/// Answers eight questions about a change to a self-built vehicle, before anybody cuts.
#[derive(Debug, Parser)]
#[command(name = "spile", version, max_term_width = 80, disable_help_subcommand = true)]
#[command(after_help = "\
Examples:
  spile demo                       write the demo builds and see the answers
  spile check heron                the van as it stands
  spile check heron --job galley-fridge
  spile why heron wire.fridge.drop --job galley-fridge")]
pub struct Args {
    #[command(subcommand)]
    pub command: Command,
}

#[derive(Debug, Subcommand)]
pub enum Command {
    /// Write the demo builds and answer the main job of one.
    ///
    /// A demo build that stands in FOLDER already is left as it is and answered as it is.
    #[command(after_help = "\
Demo builds and their jobs, all invented:
  heron    a panel van: galley-fridge, then lithium-and-inverter
  tern     a trailer with a rear kitchen: heater
  bittern  a box truck of 7.2 t, 24 V: roof-and-rack

Examples:
  spile demo
  spile demo my-folder
  spile check spile-demo/tern --job heater")]
    Demo {
        /// Where the demo builds go, each a folder of its own.
        #[arg(default_value = "spile-demo")]
        folder: PathBuf,
    },
    /// Make a small build to begin with.
    New(New),
    /// Answer the eight questions about a build, before and after a job.
    Check(Check),
    /// Show how one finding was worked out, and what was put in.
    Why(Why),
    /// Print the marks to cut by, and write the full-size drawing.
    Marks(Marks),
    /// Open the build in the browser: its drawings, its answers, and what does what to them.
    Desk(Desk),
    /// List the published figures that the program carries.
    #[command(long_about = "\
List the published figures that the program carries: where each is published, in which edition, \
whether it was seen in print, and which tables rest on it.")]
    Sources,
    /// Print the JSON Schema of a build's files, or of what `check --json` prints.
    #[command(after_help = "\
Examples:
  spile schema > build.schema.json
  spile schema job")]
    Schema {
        /// Which file.
        #[arg(default_value = "build")]
        of: SchemaKind,
    },
    /// Print completions for a shell.
    #[command(after_help = "\
Example:
  spile completions bash > ~/.local/share/bash-completion/completions/spile")]
    Completions {
        /// The shell.
        shell: Shell,
    },
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum SchemaKind {
    /// build.toml
    Build,
    /// parts/*.toml
    Part,
    /// jobs/*.toml
    Job,
    /// What `check --json` prints
    Answers,
}

/// What a first build is made of. On a terminal, what is not given here is asked for.
#[derive(Debug, Default, Clone, ClapArgs)]
#[command(after_help = "\
Examples:
  spile new heron
  spile new heron --kind \"upright fridge\" --size \"475 x 780 x 495 mm\" \\
    --bay \"520 x 1140 x 540 mm\" --cable \"7.2 m\" --section \"1.5 mm2\" \\
    --battery \"100 Ah\"")]
pub struct New {
    /// The folder to make. It must not be there yet.
    pub folder: PathBuf,
    /// What goes in: `upright fridge`, `battery`, `heater` and the like.
    #[arg(long, value_name = "KIND")]
    pub kind: Option<String>,
    /// Its width, height and depth as one faces it: `475 x 780 x 495 mm`.
    #[arg(long, value_name = "W x H x D")]
    pub size: Option<String>,
    /// Width, height and depth of the bay it goes into.
    #[arg(long, value_name = "W x H x D")]
    pub bay: Option<String>,
    /// Length of its cable, one way: `7.2 m`.
    #[arg(long, value_name = "LENGTH")]
    pub cable: Option<String>,
    /// Section of that cable: `1.5 mm2`, `16 AWG`, or `unknown`.
    #[arg(long, value_name = "SIZE")]
    pub section: Option<String>,
    /// What the house battery holds: `100 Ah`.
    #[arg(long, value_name = "CHARGE")]
    pub battery: Option<String>,
}

#[derive(Debug, Clone, ClapArgs)]
#[command(after_help = "\
Ends with 0 when nothing is worse than care, 1 on a stop, 3 when something is open and nothing \
is a stop, 2 when the build cannot be read.

Examples:
  spile check heron
  spile check heron --job galley-fridge --option two-boxes
  spile check heron --job galley-fridge --json")]
pub struct Check {
    /// The build's folder.
    pub build: PathBuf,
    /// The job to answer before and after; without it, the build as it stands.
    #[arg(long, value_name = "NAME")]
    pub job: Option<String>,
    /// The option of the job; without it, the one that the job prefers.
    #[arg(long, value_name = "NAME", requires = "job")]
    pub option: Option<String>,
    /// Show what is good one by one too.
    #[arg(long)]
    pub all: bool,
    /// Print the answers as JSON; `spile schema answers` describes it.
    #[arg(long)]
    pub json: bool,
}

#[derive(Debug, Clone, ClapArgs)]
#[command(after_help = "\
Examples:
  spile why heron fit                  the only finding of fit, or their names
  spile why heron wire.fridge.drop --job galley-fridge")]
pub struct Why {
    /// The build's folder.
    pub build: PathBuf,
    /// The finding: its question and name, or as much of it as leaves no doubt.
    pub finding: String,
    /// The job to answer before and after; without it, the build as it stands.
    #[arg(long, value_name = "NAME")]
    pub job: Option<String>,
    /// The option of the job; without it, the one that the job prefers.
    #[arg(long, value_name = "NAME", requires = "job")]
    pub option: Option<String>,
}

#[derive(Debug, Clone, ClapArgs)]
#[command(after_help = "\
The pages are served to this machine alone, and nothing is fetched from anywhere. A folder that is \
empty, or not there yet, opens with a page that makes a first build of it. Ctrl-C ends it.

Examples:
  spile desk heron
  spile desk my-van --port 4711 --no-open")]
pub struct Desk {
    /// The build's folder.
    pub build: PathBuf,
    /// The port of the loopback; without it, any that is free.
    #[arg(long, value_name = "NUMBER")]
    pub port: Option<u16>,
    /// Print the address and leave the browser alone.
    #[arg(long)]
    pub no_open: bool,
}

#[derive(Debug, Clone, ClapArgs)]
#[command(after_help = "\
All marks run from one corner of the panel's face, in millimetres and on an inch tape, rounded so \
that the opening stays within what the papers allow.

Examples:
  spile marks heron --job galley-fridge
  spile marks heron --job galley-fridge --svg upright.svg")]
pub struct Marks {
    /// The build's folder.
    pub build: PathBuf,
    /// The job whose cut-outs are marked; without it, those of the build as it stands.
    #[arg(long, value_name = "NAME")]
    pub job: Option<String>,
    /// The option of the job.
    #[arg(long, value_name = "NAME", requires = "job")]
    pub option: Option<String>,
    /// The item whose cut-out it is; without it, all there are.
    #[arg(long, value_name = "NAME")]
    pub item: Option<String>,
    /// Write the drawing at full size to this file, which must not be there yet.
    #[arg(long, value_name = "FILE")]
    pub svg: Option<PathBuf>,
}
