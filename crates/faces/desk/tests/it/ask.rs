//! Asking a desk for a page.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Request, StatusCode};
use spile_desk::{Desk, router};
use tempfile::TempDir;
use tower::ServiceExt;

/// The port that the tests say they are served on.
pub const PORT: u16 = 4711;
/// The host that goes with it.
pub const HOST: &str = "127.0.0.1:4711";
/// Its origin.
pub const ORIGIN: &str = "http://127.0.0.1:4711";

/// A page as it came.
#[derive(Debug)]
pub struct Answer {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub text: String,
}

/// A build of its own, and its desk.
pub struct Open {
    pub desk: Arc<Desk>,
    pub folder: PathBuf,
    _temp: TempDir,
}

/// The demo build, copied so that it can be changed.
pub fn heron() -> Open {
    let temp = tempfile::tempdir().unwrap();
    let folder = temp.path().join("heron");
    copy(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo/heron"), &folder);
    Open { desk: Desk::open(&folder, PORT), folder, _temp: temp }
}

/// A build of one text, or an empty folder.
pub fn build(text: Option<&str>) -> Open {
    let temp = tempfile::tempdir().unwrap();
    let folder = temp.path().join("small");
    fs::create_dir(&folder).unwrap();
    if let Some(text) = text {
        fs::write(folder.join("build.toml"), text).unwrap();
    }
    Open { desk: Desk::open(&folder, PORT), folder, _temp: temp }
}

impl Open {
    /// A page as the owner asks for it.
    pub async fn page(&self, path: &str) -> Answer {
        self.send(Request::get(path).header("host", HOST).body(Body::empty()).unwrap()).await
    }

    /// A form sent from one of our pages.
    pub async fn form(&self, path: &str, fields: &str) -> Answer {
        let body = format!("token={}&{fields}", self.desk.token());
        let request = Request::post(path)
            .header("host", HOST)
            .header("origin", ORIGIN)
            .header("content-type", "application/x-www-form-urlencoded")
            .body(Body::from(body))
            .unwrap();
        self.send(request).await
    }

    /// Any request.
    pub async fn send(&self, request: Request<Body>) -> Answer {
        let response = router(Arc::clone(&self.desk)).oneshot(request).await.unwrap();
        let (parts, body) = response.into_parts();
        let bytes = to_bytes(body, usize::MAX).await.unwrap();
        let text = String::from_utf8(bytes.to_vec()).unwrap();
        Answer { status: parts.status, headers: parts.headers, text }
    }
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let to = to.join(entry.file_name());
        if entry.path().is_dir() {
            copy(&entry.path(), &to);
        } else {
            fs::copy(entry.path(), to).unwrap();
        }
    }
}

/// Every page that there is of a build.
pub fn paths() -> Vec<String> {
    let pages = [
        "/",
        "/jobs",
        "/parts",
        "/readings",
        "/next",
        "/assumed",
        "/sources",
        "/things",
        "/thing/build",
        "/thing/vehicle",
        "/thing/items.pump",
        "/add/parts",
        "/add/readings",
    ];
    let questions = ["fit", "air", "hold", "wire", "cold", "bank", "axle", "meter"];
    let questions = questions.into_iter().map(|word| format!("/q/{word}"));
    let pages = pages.into_iter().map(str::to_owned).chain(questions);
    pages.flat_map(|path| [format!("{path}?job="), path]).collect()
}
