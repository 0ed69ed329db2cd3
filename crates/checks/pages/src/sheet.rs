//! One open page: what it asks for, what it complains of, how it lies.

use std::sync::{Arc, Mutex, PoisonError};

use chromiumoxide::Page;
use chromiumoxide::cdp::browser_protocol::dom::ScrollIntoViewIfNeededParams;
use chromiumoxide::cdp::browser_protocol::emulation::{
    MediaFeature, SetDeviceMetricsOverrideParams, SetEmulatedMediaParams,
    SetScriptExecutionDisabledParams,
};
use chromiumoxide::cdp::browser_protocol::log::EventEntryAdded;
use chromiumoxide::cdp::browser_protocol::network::EventRequestWillBeSent;
use chromiumoxide::cdp::js_protocol::runtime::{EventConsoleApiCalled, EventExceptionThrown};
use chromiumoxide::page::ScreenshotParams;
use futures::{Stream, StreamExt};
use serde::de::DeserializeOwned;

use crate::Failed;

/// How a page is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct View {
    /// The window's width in CSS pixels.
    pub width: u32,
    /// The window's height in CSS pixels.
    pub height: u32,
    /// Whether the owner has asked for a dark page.
    pub is_night: bool,
    /// Whether the page may run its script.
    pub has_script: bool,
}

impl View {
    /// A telephone held upright, by day.
    pub const PHONE: Self = Self { width: 360, height: 780, is_night: false, has_script: true };
    /// A laptop, by day.
    pub const LAPTOP: Self = Self { width: 1280, height: 800, is_night: false, has_script: true };

    /// The same at night.
    #[must_use]
    pub const fn at_night(self) -> Self {
        Self { is_night: true, ..self }
    }

    /// The same with script off.
    #[must_use]
    pub const fn without_script(self) -> Self {
        Self { has_script: false, ..self }
    }
}

/// An open page.
pub struct Sheet {
    page: Page,
    complaints: Arc<Mutex<Vec<String>>>,
    requests: Arc<Mutex<Vec<String>>>,
}

impl Sheet {
    pub(crate) async fn open(page: Page, address: &str, view: View) -> Result<Self, Failed> {
        let metrics = SetDeviceMetricsOverrideParams::new(view.width, view.height, 1.0, false);
        page.execute(metrics).await?;
        let scheme = if view.is_night { "dark" } else { "light" };
        let wishes = vec![
            MediaFeature::new("prefers-color-scheme", scheme),
            MediaFeature::new("prefers-reduced-motion", "reduce"),
        ];
        page.execute(SetEmulatedMediaParams::builder().features(wishes).build()).await?;
        page.execute(SetScriptExecutionDisabledParams::new(!view.has_script)).await?;
        let sheet = Self { page, complaints: Arc::default(), requests: Arc::default() };
        sheet.listen().await?;
        sheet.go(address).await?;
        Ok(sheet)
    }

    /// Keeps what the page complains of and asks for from now on.
    async fn listen(&self) -> Result<(), Failed> {
        self.keep(&self.requests, self.page.event_listener().await?, |event| {
            let event: &EventRequestWillBeSent = event;
            Some(event.request.url.clone())
        });
        self.keep(&self.complaints, self.page.event_listener().await?, |event| {
            let event: &EventExceptionThrown = event;
            let details = &event.exception_details;
            let thrown = details.exception.as_ref().and_then(|thrown| thrown.description.clone());
            Some(thrown.unwrap_or_else(|| details.text.clone()))
        });
        self.keep(&self.complaints, self.page.event_listener().await?, |event| {
            let event: &EventEntryAdded = event;
            let address = event.entry.url.as_deref().unwrap_or_default();
            Some(format!("{:?}: {} {address}", event.entry.level, event.entry.text))
        });
        self.keep(&self.complaints, self.page.event_listener().await?, |event| {
            let event: &EventConsoleApiCalled = event;
            let words = event.args.iter().filter_map(|word| word.value.as_ref());
            Some(format!(
                "{:?}: {}",
                event.r#type,
                words.map(ToString::to_string).collect::<String>()
            ))
        });
        Ok(())
    }

    fn keep<E: Send + Sync + 'static>(
        &self,
        list: &Arc<Mutex<Vec<String>>>,
        mut events: impl Stream<Item = Arc<E>> + Unpin + Send + 'static,
        words: impl Fn(&E) -> Option<String> + Send + 'static,
    ) {
        let list = Arc::clone(list);
        tokio::spawn(async move {
            while let Some(event) = events.next().await {
                if let Some(words) = words(&event) {
                    list.lock().unwrap_or_else(PoisonError::into_inner).push(words);
                }
            }
        });
    }

    /// Goes to another address in the same window.
    ///
    /// # Errors
    /// If it does not load.
    pub async fn go(&self, address: &str) -> Result<(), Failed> {
        self.page.goto(address).await?;
        Ok(())
    }

    /// Loads the page again.
    ///
    /// # Errors
    /// If it does not load.
    pub async fn reload(&self) -> Result<(), Failed> {
        self.page.reload().await?;
        Ok(())
    }

    /// What an expression of JavaScript comes to on the page; a promise is waited for.
    ///
    /// # Errors
    /// If it throws, or its value is of another kind.
    pub async fn ask<T: DeserializeOwned>(&self, expression: &str) -> Result<T, Failed> {
        Ok(self.page.evaluate(expression).await?.into_value()?)
    }

    /// Waits until an expression is true, five seconds at most.
    ///
    /// # Errors
    /// If it does not become true in that time.
    pub async fn until(&self, expression: &str) -> Result<(), Failed> {
        for _ in 0..100 {
            // While one page gives way to the next there is nothing to ask.
            if self.ask(&format!("Boolean({expression})")).await.unwrap_or(false) {
                return Ok(());
            }
            tokio::time::sleep(std::time::Duration::from_millis(50)).await;
        }
        Err(format!("never came true: {expression}").into())
    }

    /// Presses on the first element that a CSS selector names, scrolling to it first.
    ///
    /// # Errors
    /// If there is none, or it cannot be pressed.
    pub async fn press(&self, selector: &str) -> Result<(), Failed> {
        let element = self.found(selector).await?;
        let scroll = ScrollIntoViewIfNeededParams::builder();
        self.page.execute(scroll.backend_node_id(element.backend_node_id).build()).await?;
        let point = element.clickable_point().await?;
        self.page.click(point).await?;
        Ok(())
    }

    /// Puts text into a field in place of what is in it.
    ///
    /// # Errors
    /// If there is no such field.
    pub async fn fill(&self, selector: &str, text: &str) -> Result<(), Failed> {
        let field = self.found(selector).await?;
        field.focus().await?;
        field.call_js_fn("function() { this.value = '' }", false).await?;
        field.type_str(text).await?;
        Ok(())
    }

    async fn found(&self, selector: &str) -> Result<chromiumoxide::Element, Failed> {
        self.page
            .find_element(selector)
            .await
            .map_err(|why| format!("nothing on the page is `{selector}` ({why})").into())
    }

    /// The browser's own window onto the page, for what is not here.
    pub const fn page(&self) -> &Page {
        &self.page
    }

    /// A picture of the whole page, as PNG.
    ///
    /// # Errors
    /// If it cannot be taken.
    pub async fn picture(&self) -> Result<Vec<u8>, Failed> {
        let whole = ScreenshotParams::builder().full_page(true).build();
        Ok(self.page.screenshot(whole).await?)
    }

    /// What the page has complained of so far: exceptions, console, refused content.
    pub fn complaints(&self) -> Vec<String> {
        self.complaints.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// The addresses it has asked for so far that do not begin with `home`.
    pub fn strangers(&self, home: &str) -> Vec<String> {
        let requests = self.requests.lock().unwrap_or_else(PoisonError::into_inner);
        let is_strange = |address: &&String| !address.starts_with(home);
        requests.iter().filter(is_strange).cloned().collect()
    }

    /// By how many pixels the page is wider than its window, and the element that reaches farthest.
    ///
    /// # Errors
    /// If the page does not answer.
    pub async fn sideways(&self) -> Result<Option<String>, Failed> {
        let words: String = self.ask(
            "(() => {
                const root = document.documentElement;
                const over = root.scrollWidth - root.clientWidth;
                if (over <= 0) return '';
                let worst = root, right = 0;
                for (const one of document.body.querySelectorAll('*')) {
                    const edge = one.getBoundingClientRect().right;
                    if (edge > right) { right = edge; worst = one; }
                }
                return `${over} px too wide: <${worst.tagName} class='${worst.getAttribute('class')}'>`;
            })()",
        )
        .await?;
        Ok((!words.is_empty()).then_some(words))
    }

    /// Closes the window.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub async fn close(self) -> Result<(), Failed> {
        self.page.close().await?;
        Ok(())
    }
}
