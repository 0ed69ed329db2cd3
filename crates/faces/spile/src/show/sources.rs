//! The published sources, and what rests on them.

use spile_tables::{Source, Status, TableInfo};

use super::page::{Page, Text, Tone};

/// The column in which what is said of a source begins.
const SAID: usize = 4;

/// All sources as they are printed, each with the tables that rest on it.
pub fn sources(sources: &[Source], tables: &[TableInfo]) -> String {
    let mut page = Page::new();
    for source in sources {
        page.gap();
        let name = Text::new().and(Tone::Strong, &source.key);
        page.hang(0, &name, 26, &Text::plain(&source.title));
        page.put(SAID, &Text::plain(&source.edition));
        page.put(SAID, &Text::plain(&seen(source)));
        let resting: Vec<String> =
            tables.iter().filter(|table| table.source.key == source.key).map(table).collect();
        let text = if resting.is_empty() {
            "single rows of tables that rest on other sources".to_owned()
        } else {
            resting.join("; ")
        };
        page.hang(SAID, &Text::plain("carries:"), SAID + 9, &Text::plain(&text));
    }
    page.gap();
    page.put(0, &Text::new().and(Tone::Faint, NOTE));
    page.finish()
}

/// Said below the list.
const NOTE: &str = "A table may say less of itself than its source does, and never more. A figure \
                    that is only from memory never makes a stop, and neither does a rule of \
                    practice.";

fn seen(source: &Source) -> String {
    match source.status {
        Status::Verified => format!("seen in print: {}", source.seen),
        Status::Recomputed => {
            format!("from memory, borne out by a calculation of our own: {}", source.seen)
        }
        Status::FromMemory => format!("from memory: {}", source.seen),
    }
}

/// `iec60228 (conductors, 15 rows, property)`; its status too where it is less than its source's.
fn table(table: &TableInfo) -> String {
    let status = if table.status > table.source.status {
        format!(", {}", table.status.word())
    } else {
        String::new()
    };
    let rows = if table.rows == 1 { "1 row".to_owned() } else { format!("{} rows", table.rows) };
    format!("{} ({rows}, {}{status})", table.title, table.class.word())
}
