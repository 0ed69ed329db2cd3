//! What every face says of the published sources.

use spile_tables::{Source, Status, TableInfo};

/// Said below the list of sources.
pub const SOURCES_NOTE: &str = "A table may say less of itself than its source does, and never more. A figure \
                    that is only from memory never makes a stop, and neither does a rule of \
                    practice.";

/// How far a source was seen: `seen in print: …`.
pub fn seen(source: &Source) -> String {
    match source.status {
        Status::Verified => format!("seen in print: {}", source.seen),
        Status::Recomputed => {
            format!("from memory, borne out by a calculation of our own: {}", source.seen)
        }
        Status::FromMemory => format!("from memory: {}", source.seen),
    }
}

/// `iec60228 (conductors, 15 rows, property)`; its status too where it is less than its source's.
pub fn table_line(table: &TableInfo) -> String {
    let status = if table.status > table.source.status {
        format!(", {}", table.status.word())
    } else {
        String::new()
    };
    let rows = if table.rows == 1 { "1 row".to_owned() } else { format!("{} rows", table.rows) };
    format!("{} ({rows}, {}{status})", table.title, table.class.word())
}
