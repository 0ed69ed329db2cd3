//! "Does the page hold in a real browser?" — the pages opened in headless Chromium.
//!
//! A [`Browser`] opens a [`Sheet`]: one page at one width, by day or at night, with script or
//! without. What goes wrong while it is open (an error on the console, a request to anywhere but
//! the address it came from) is kept and told; what it looks like is measured or taken as a
//! picture. Chromium and the accessibility rules of axe-core are installed by `scripts/setup`; where
//! one is missing, opening fails and says so.
//!
//! ```
//! use spile_pages::{Browser, View};
//!
//! # #[tokio::main(flavor = "current_thread")]
//! # async fn main() -> Result<(), spile_pages::Failed> {
//! let browser = Browser::start().await?;
//! let sheet = browser.open("data:text/html,<h1>A page</h1>", View::PHONE).await?;
//! assert_eq!(sheet.sideways().await?, None);
//! browser.close().await
//! # }
//! ```

mod browser;
mod rules;
mod served;
mod sheet;

pub use browser::Browser;
pub use rules::Breach;
pub use served::Served;
pub use sheet::{Sheet, View};

/// The pages of a build, by what comes after the host in their address.
pub const PAGES: [&str; 19] = [
    "",
    "q/fit",
    "q/air",
    "q/hold",
    "q/wire",
    "q/cold",
    "q/bank",
    "q/axle",
    "q/meter",
    "jobs",
    "parts",
    "readings",
    "next",
    "assumed",
    "sources",
    "start",
    "things",
    "thing/items.pump",
    "add/items",
];

/// Whatever can go wrong while a browser is driven, in words.
pub type Failed = Box<dyn std::error::Error + Send + Sync>;
