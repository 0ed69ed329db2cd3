//! The build folder: read, checked, changed by a job.
