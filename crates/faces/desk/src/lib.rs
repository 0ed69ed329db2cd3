//! "Show me, in the browser, what it does to my vehicle." — the pages of a build, served on
//! loopback by the program itself.
//!
//! [`Desk`] is a build's folder with what was answered of it: the files are read anew for each
//! request, and answered once for each state they are in. [`router`] serves its pages; [`serve`]
//! binds the port, watches the folder and goes on until it is told to stop. Nothing is computed
//! here: answers come from `spile-ask`, drawings from `spile-sheet`, problems from `spile-build`,
//! and the words are those of the terminal.
//!
//! **Pages.** Plain HTML, written on the server; all that can be read and every form works without
//! script. The scripts that are served put new content into the open page when a file changed, and
//! move things in the drawings.
//!
//! **Changes.** Every thing of a build has a form, made of the record that its files are read by;
//! what is typed is written at once, into the build as it stands or into the job that is shown, and
//! can be undone. What somebody else wrote meanwhile is shown beside it and never written over. A
//! script can send the same changes and gets what they did as JSON.
//!
//! **Safety.** Only loopback is listened on. A request must name this machine as its host, and must
//! not come from another page; what writes must also carry the token of this start, which only our
//! pages know. Pages may load nothing but our own style and script. Requests are limited in size
//! and in time. No name in an address is ever taken for the name of a file.
//!
//! **Limits.** One build at a time, for one owner: everybody who can reach the loopback of this
//! machine as its user can read and change the build.
//!
//! ```
//! use axum::body::Body;
//! use axum::http::{Request, StatusCode};
//! use tower::ServiceExt;
//!
//! # tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap().block_on(async {
//! let folder = tempfile::tempdir().unwrap();
//! std::fs::write(folder.path().join("build.toml"), "about = \"a van\"\n").unwrap();
//! let desk = spile_desk::Desk::open(folder.path(), 4711);
//! let request = Request::get("/").header("host", "127.0.0.1:4711").body(Body::empty()).unwrap();
//! let response = spile_desk::router(desk).oneshot(request).await.unwrap();
//! assert_eq!(response.status(), StatusCode::OK);
//! # });
//! ```

mod change;
mod desk;
mod did;
mod drag;
mod error;
mod leaf;
mod live;
mod page;
mod placing;
mod routes;
mod safe;
mod serve;
mod thing;
mod typed;
mod view;

pub use desk::Desk;
pub use routes::router;
pub use serve::{Bound, bind, serve};
