//! "What does this job do to my vehicle?" — the eight questions asked of a build, before and
//! after a job, and what to measure next.
//!
//! Each question is asked twice, of the build as it stands and as it would be; what is found is
//! paired by its name, so that what changes can be shown. A question that cannot be computed is
//! answered *open*, never *good*. How a number is shown, and what every face says of a report, is
//! here too, so that terminal, page and paper say the same.
//!
//! ```
//! let folder = spile_build::Folder::from_texts([("build.toml", r#"
//! [parts.box]
//! kind = "lidded box"
//! volume = "32 L"
//! [items.box]
//! [wants]
//! people = 2
//! away = "6 days"
//! "#)]).unwrap();
//! let report = spile_ask::ask("small", folder.build(), None);
//! let cold = report.answers.iter().find(|asked| asked.question.word() == "cold").unwrap();
//! let days = cold.now().findings.iter().find(|finding| finding.id == "days").unwrap();
//! assert_eq!(days.verdict, spile_answer::Verdict::Care(spile_answer::Reason::Wish));
//! ```

mod json;
mod lead;
mod next;
pub mod number;
mod report;
mod sources;

pub use json::{json, json_schema};
pub use lead::{CAUTION, clean, count, lead, measures, typical_inputs};
pub use next::{Hangs, Next, measure_next};
pub use report::{Asked, Pair, Report, ask};
pub use sources::{SOURCES_NOTE, seen, table_line};
