//! The JSON Schema of a build's files, so that editors complete and check them.

use schemars::SchemaGenerator;
use schemars::generate::SchemaSettings;

use crate::file::{BuildFile, JobFile, PartFile};

/// The files that have a schema.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SchemaOf {
    /// `build.toml`.
    Build,
    /// `parts/*.toml`.
    Part,
    /// `jobs/*.toml`.
    Job,
}

/// The JSON Schema (draft 2020-12) of one kind of file.
pub fn schema(of: SchemaOf) -> serde_json::Value {
    let generator: SchemaGenerator = SchemaSettings::draft2020_12().into_generator();
    let schema = match of {
        SchemaOf::Build => generator.into_root_schema_for::<BuildFile>(),
        SchemaOf::Part => generator.into_root_schema_for::<PartFile>(),
        SchemaOf::Job => generator.into_root_schema_for::<JobFile>(),
    };
    schema.to_value()
}
