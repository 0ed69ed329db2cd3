//! The questions asked of a build, before and after a job.
