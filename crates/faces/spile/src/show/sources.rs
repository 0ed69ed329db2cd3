//! The published sources, and what rests on them.

use spile_ask::{SOURCES_NOTE, seen, table_line};
use spile_tables::{Source, TableInfo};

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
            tables.iter().filter(|table| table.source.key == source.key).map(table_line).collect();
        let text = if resting.is_empty() {
            "single rows of tables that rest on other sources".to_owned()
        } else {
            resting.join("; ")
        };
        page.hang(SAID, &Text::plain("carries:"), SAID + 9, &Text::plain(&text));
    }
    page.gap();
    page.put(0, &Text::new().and(Tone::Faint, SOURCES_NOTE));
    page.finish()
}
