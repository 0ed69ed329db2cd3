//! A headless Chromium of one's own.

use chromiumoxide::browser::BrowserConfig;
use futures::StreamExt;
use tempfile::TempDir;
use tokio::task::JoinHandle;

use crate::Failed;
use crate::sheet::{Sheet, View};

/// What keeps Chromium from asking anything of the network by itself, and lets it run where there
/// is no graphics card and little shared memory.
const QUIET: [&str; 9] = [
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-default-apps",
    "--disable-sync",
    "--disable-dev-shm-usage",
    "--hide-scrollbars",
];

/// A running browser with a profile that nobody else uses.
pub struct Browser {
    inner: chromiumoxide::Browser,
    talk: JoinHandle<()>,
    _profile: TempDir,
}

impl Browser {
    /// Starts one.
    ///
    /// # Errors
    /// If Chromium is not installed or does not start.
    pub async fn start() -> Result<Self, Failed> {
        let profile = tempfile::tempdir()?;
        let config = BrowserConfig::builder()
            .no_sandbox()
            .args(QUIET)
            .user_data_dir(profile.path())
            .build()
            .map_err(|why| format!("no Chromium ({why}); scripts/setup installs it"))?;
        let (inner, mut handler) = chromiumoxide::Browser::launch(config).await?;
        let talk = tokio::spawn(async move { while handler.next().await.is_some() {} });
        Ok(Self { inner, talk, _profile: profile })
    }

    /// Opens an address in a window of its own.
    ///
    /// # Errors
    /// If the page does not load.
    pub async fn open(&self, address: &str, view: View) -> Result<Sheet, Failed> {
        let page = self.inner.new_page("about:blank").await?;
        Sheet::open(page, address, view).await
    }

    /// Closes it and all its windows.
    ///
    /// # Errors
    /// If it does not answer any more.
    pub async fn close(mut self) -> Result<(), Failed> {
        self.inner.close().await?;
        self.inner.wait().await?;
        self.talk.abort();
        Ok(())
    }
}
