//! The shape that every data file has: tables of columns, a units row, and rows.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::Deserialize;
use serde::de::DeserializeOwned;
use toml::{Table, Value};

use crate::source::{Class, Entry, Source, Status, source};

/// What stands in a data file for no figure.
const NONE: &str = "-";

/// A published table: what it is and where it comes from.
#[derive(Debug, Clone, PartialEq)]
pub struct TableInfo {
    /// The file it is in, without its ending.
    pub file: &'static str,
    /// Its name in that file.
    pub name: &'static str,
    /// What it says, in words.
    pub title: &'static str,
    /// Who says so, where no row says otherwise.
    pub source: &'static Source,
    /// How far it was seen, where no row says otherwise.
    pub status: Status,
    /// What it may be used for.
    pub class: Class,
    /// The names of its columns, each with its unit.
    pub columns: Vec<(&'static str, &'static str)>,
    /// How many rows it has.
    pub rows: usize,
    /// Misprints, disagreements and what else to know before using it.
    pub note: Option<&'static str>,
}

/// Every table the crate carries, by file and name; the stand-ins of [`crate::typical`] last, as one.
///
/// ```
/// let tables = spile_tables::tables();
/// let copper = tables.iter().find(|t| t.name == "iec60228").unwrap();
/// assert_eq!((copper.file, copper.rows), ("conductors", 15));
/// ```
pub fn tables() -> Vec<TableInfo> {
    crate::FILES
        .iter()
        .flat_map(|file| file.tables.iter().map(|(name, raw)| raw.info(file.name, name)))
        .chain([crate::typical::info()])
        .collect()
}

/// One data file, read.
#[derive(Debug)]
pub(crate) struct File {
    name: &'static str,
    tables: BTreeMap<String, Raw>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Raw {
    title: String,
    source: String,
    status: Status,
    class: Class,
    note: Option<String>,
    columns: Vec<String>,
    units: Vec<String>,
    rows: Vec<Vec<Value>>,
}

impl File {
    pub(crate) fn read(name: &'static str, text: &str) -> Self {
        let tables = toml::from_str(text).unwrap_or_else(|e| panic!("data/{name}.toml: {e}"));
        Self { name, tables }
    }

    /// The rows of a table, each read as an `R` by the names of the columns and turned into a `T`.
    pub(crate) fn rows<R: DeserializeOwned, T>(
        &self,
        table: &str,
        make: impl Fn(R) -> T,
    ) -> Vec<Entry<T>> {
        let raw = self.tables.get(table);
        let raw = raw.unwrap_or_else(|| panic!("data/{}.toml has no table {table}", self.name));
        raw.rows
            .iter()
            .enumerate()
            .map(|(at, row)| {
                raw.entry(row).map_or_else(
                    |e| panic!("data/{}.toml, {table}, row {}: {e}", self.name, at + 1),
                    |Entry { value, source, status, class }| Entry {
                        value: make(value),
                        source,
                        status,
                        class,
                    },
                )
            })
            .collect()
    }
}

impl Raw {
    fn info(&'static self, file: &'static str, name: &'static str) -> TableInfo {
        TableInfo {
            file,
            name,
            title: &self.title,
            source: known(&self.source).unwrap_or_else(|e| panic!("data/{file}.toml, {name}: {e}")),
            status: self.status,
            class: self.class,
            columns: self
                .columns
                .iter()
                .map(String::as_str)
                .zip(self.units.iter().map(String::as_str))
                .collect(),
            rows: self.rows.len(),
            note: self.note.as_deref(),
        }
    }

    fn entry<R: DeserializeOwned>(&self, row: &[Value]) -> Result<Entry<R>, String> {
        if row.len() != self.columns.len() || self.units.len() != self.columns.len() {
            return Err(format!(
                "{} columns, {} units, {} figures",
                self.columns.len(),
                self.units.len(),
                row.len()
            ));
        }
        let mut named: Table = self
            .columns
            .iter()
            .zip(row)
            .filter(|(_, value)| value.as_str() != Some(NONE))
            .map(|(column, value)| (column.clone(), value.clone()))
            .collect();
        let source = match named.remove("source") {
            Some(key) => known(key.as_str().unwrap_or_default())?,
            None => known(&self.source)?,
        };
        let status = match named.remove("status") {
            Some(word) => word.try_into().map_err(|e| format!("{e}"))?,
            None => self.status,
        };
        let value = named.try_into().map_err(|e| format!("{e}"))?;
        Ok(Entry { value, source, status, class: self.class })
    }
}

fn known(key: &str) -> Result<&'static Source, String> {
    source(key).ok_or_else(|| format!("no source is called {key:?}"))
}

/// A data file that is read when it is first asked for.
pub(crate) type Lazy = LazyLock<File>;
