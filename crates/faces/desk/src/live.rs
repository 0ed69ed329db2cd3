//! What an open page is told when a file changes.

use std::path::Path;
use std::sync::{Arc, Weak};
use std::time::Duration;

use axum::extract::{Query, State};
use axum::response::IntoResponse;
use notify::{RecommendedWatcher, RecursiveMode};
use notify_debouncer_full::{
    DebounceEventResult, DebouncedEvent, Debouncer, RecommendedCache, new_debouncer,
};
use serde::Deserialize;

use crate::desk::Desk;
use crate::view::{Asked, View};

/// How long a page waits for a change before it asks again.
const WAIT: Duration = Duration::from_millis(25_000);

/// How long files must be quiet before they are read.
const QUIET: Duration = Duration::from_millis(60);

/// Which state of the files a page shows.
#[derive(Debug, Deserialize)]
pub(crate) struct Since {
    since: String,
}

/// Answers when the files are no longer those that the page shows, or after a while that they
/// still are.
pub(crate) async fn changed(
    State(desk): State<Arc<Desk>>,
    Query(Since { since }): Query<Since>,
) -> impl IntoResponse {
    let version = tokio::time::timeout(WAIT, desk.changed(&since)).await;
    version.unwrap_or(since)
}

/// What watches a build's folder, for as long as it is kept.
pub(crate) type Watch = Debouncer<RecommendedWatcher, RecommendedCache>;

/// Watches a build's folder, and reads it again when something in it changes.
///
/// Where a system does not let a folder be watched, pages are still right whenever they are
/// loaded.
pub(crate) fn watch(desk: &Arc<Desk>) -> Option<Watch> {
    let weak = Arc::downgrade(desk);
    let told = move |events: DebounceEventResult| {
        // Reading the files is told of too, and must not be a reason to read them again.
        let changed =
            |events: Vec<_>| events.iter().any(|event: &DebouncedEvent| !event.kind.is_access());
        if events.is_ok_and(changed) {
            read_again(&weak);
        }
    };
    let mut watch = new_debouncer(QUIET, None, told).ok()?;
    for folder in [desk.folder(), &desk.folder().join("parts"), &desk.folder().join("jobs")] {
        look_at(&mut watch, folder);
    }
    Some(watch)
}

/// Reads the files, and works out what is shown first before anybody asks.
fn read_again(desk: &Weak<Desk>) {
    let Some(desk) = desk.upgrade() else { return };
    // Whatever comes of it is seen on the page.
    let _ = View::of(&desk, Asked::default());
}

fn look_at(watch: &mut Watch, folder: &Path) {
    if folder.is_dir() {
        // A folder that cannot be watched is read when a page is loaded.
        let _ = watch.watch(folder, RecursiveMode::NonRecursive);
    }
}
