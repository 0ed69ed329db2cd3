//! "What does this job do to my vehicle?" — the eight questions asked of a build, before and
//! after a job, and what to measure next.
//!
//! Each question is asked twice, of the build as it stands and as it would be; what is found is
//! paired by its name, so that what changes can be shown. A question that cannot be computed is
//! answered *open*, never *good*.

mod json;
mod next;
mod report;

pub use json::{json, json_schema};
pub use next::{Next, measure_next};
pub use report::{Asked, Pair, Report, ask};
