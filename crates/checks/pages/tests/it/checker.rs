//! The checker itself: it finds what is wrong with a page, and nothing on a page that is in order.

use spile_pages::{Browser, Failed, View};

const GOOD: &str = "data:text/html,<!doctype html><html lang=en><title>In order</title>\
    <main><h1>A page</h1><label>Length <input name=length></label></main>";

const BAD: &str = "data:text/html,<!doctype html><html><title>Not in order</title>\
    <h1 style='width:900px'>A page</h1><input name=length>\
    <p style='color:%23ccc;background:%23fff'>hardly to be read</p>\
    <img src='http://127.0.0.1:9/stranger.png' alt=''>\
    <script>console.error('said something'); missing.call()</script>";

#[tokio::test]
async fn finds_nothing_on_a_page_in_order() -> Result<(), Failed> {
    let browser = Browser::start().await?;
    let sheet = browser.open(GOOD, View::PHONE).await?;
    assert_eq!(sheet.sideways().await?, None);
    assert_eq!(sheet.complaints(), Vec::<String>::new());
    assert_eq!(sheet.strangers("data:"), Vec::<String>::new());
    let breaches = sheet.breaches().await?;
    assert!(breaches.is_empty(), "{breaches:?}");
    browser.close().await
}

#[tokio::test]
async fn finds_what_is_wrong_with_a_page() -> Result<(), Failed> {
    let browser = Browser::start().await?;
    let sheet = browser.open(BAD, View::PHONE).await?;
    let sideways = sheet.sideways().await?.unwrap_or_default();
    assert!(sideways.contains("px too wide: <H1"), "{sideways}");
    let complaints = sheet.complaints().join("\n");
    for words in ["said something", "missing is not defined"] {
        assert!(complaints.contains(words), "`{words}` is not in: {complaints}");
    }
    assert_eq!(sheet.strangers("data:"), ["http://127.0.0.1:9/stranger.png"]);
    let breaches = sheet.breaches().await?;
    let broken: Vec<&str> = breaches.iter().map(|breach| breach.id.as_str()).collect();
    assert_eq!(broken, ["color-contrast", "html-has-lang", "label"]);
    browser.close().await
}

#[tokio::test]
async fn drives_a_page_with_script_and_without() -> Result<(), Failed> {
    const PAGE: &str = "data:text/html,<!doctype html><html lang=en><title>Driven</title>\
        <input id=length value=old><button id=put>Put in</button><output id=is></output>\
        <script>put.onclick = () => is.textContent = document.getElementById('length').value</script>";
    let browser = Browser::start().await?;
    let sheet = browser.open(PAGE, View::LAPTOP.at_night()).await?;
    assert!(sheet.ask::<bool>("matchMedia('(prefers-color-scheme: dark)').matches").await?);
    assert_eq!(sheet.ask::<u32>("innerWidth").await?, 1280);
    sheet.fill("#length", "440 mm").await?;
    sheet.press("#put").await?;
    sheet.until("document.querySelector('output').textContent === '440 mm'").await?;
    assert!(sheet.picture().await?.starts_with(b"\x89PNG"));

    let still = browser.open(PAGE, View::LAPTOP.without_script()).await?;
    still.press("#put").await?;
    assert_eq!(still.ask::<String>("document.querySelector('output').textContent").await?, "");
    browser.close().await
}
