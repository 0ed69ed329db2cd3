//! The pages, one module each, and what they are made of.

pub(crate) mod assumed;
pub(crate) mod conflict;
pub(crate) mod figure;
pub(crate) mod first;
pub(crate) mod job;
pub(crate) mod jobs;
pub(crate) mod next;
pub(crate) mod parts;
pub(crate) mod problems;
pub(crate) mod question;
pub(crate) mod readings;
pub(crate) mod shell;
pub(crate) mod sources;
pub(crate) mod start;
pub(crate) mod thing;
pub(crate) mod things;
