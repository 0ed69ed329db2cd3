//! The pages in headless Chromium.

mod checker;
