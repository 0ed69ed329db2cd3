//! The pages in headless Chromium.

mod checker;
mod every_page;
