//! The pages in headless Chromium.

mod checker;
mod drag;
mod every_page;
