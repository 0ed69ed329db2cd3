//! Every page of every demo build, at both widths, by day and at night.

use spile_pages::{Browser, Failed, PAGES, Served, View};

/// What is wrong with one page, in words; nothing, if it is in order.
async fn wrong(
    browser: &Browser,
    served: &Served,
    page: &str,
    view: View,
) -> Result<String, Failed> {
    let sheet = browser.open(&served.at(page), view).await?;
    let mut wrong = sheet.complaints();
    wrong.extend(sheet.strangers(&served.at("")).into_iter().map(|one| format!("asked for {one}")));
    wrong.extend(sheet.sideways().await?);
    wrong.extend(sheet.breaches().await?.iter().map(ToString::to_string));
    let heading: u32 = sheet.ask("document.querySelectorAll('h1').length").await?;
    if heading != 1 {
        wrong.push(format!("{heading} first headings"));
    }
    sheet.close().await?;
    Ok(wrong.join("\n"))
}

/// Both widths by day and at night.
const ALL: [View; 4] = [View::PHONE, View::LAPTOP, View::PHONE.at_night(), View::LAPTOP.at_night()];

/// Both widths; the colours of one page are those of all.
const WIDTHS: [View; 2] = [View::PHONE, View::LAPTOP.at_night()];

async fn try_pages(served: &Served, pages: &[&str], views: &[View]) -> Result<(), Failed> {
    let browser = Browser::start().await?;
    let mut all = String::new();
    for &view in views {
        for page in pages {
            let wrong = wrong(&browser, served, page, view).await?;
            if !wrong.is_empty() {
                all +=
                    &format!("/{page} at {} px, night {}:\n{wrong}\n", view.width, view.is_night);
            }
        }
    }
    browser.close().await?;
    assert!(all.is_empty(), "{all}");
    Ok(())
}

#[tokio::test(flavor = "multi_thread")]
async fn of_heron_is_in_order() -> Result<(), Failed> {
    try_pages(&Served::demo("heron")?, &PAGES, &ALL).await
}

#[tokio::test(flavor = "multi_thread")]
async fn of_a_trailer_is_in_order() -> Result<(), Failed> {
    try_pages(&Served::demo("tern")?, &PAGES, &WIDTHS).await
}

#[tokio::test(flavor = "multi_thread")]
async fn of_a_truck_is_in_order() -> Result<(), Failed> {
    try_pages(&Served::demo("bittern")?, &PAGES, &WIDTHS).await
}

#[tokio::test(flavor = "multi_thread")]
async fn of_a_build_that_does_not_read_is_in_order() -> Result<(), Failed> {
    let broken = [("build.toml", "[items.fridge]\npart = \"none\"\nmass = \"12\"\n[bank\n")];
    try_pages(&Served::of("broken", &broken)?, &["", "q/fit", "start"], &ALL).await
}
