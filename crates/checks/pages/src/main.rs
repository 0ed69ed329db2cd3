//! Pictures of every page of the demo builds, at both widths, by day and at night.

use std::path::{Path, PathBuf};

use spile_pages::{Browser, Failed, PAGES, Served, View};

/// Takes the pictures into the folder that is named: `cargo run -p spile-pages -- FOLDER [DEMO]`.
#[tokio::main]
async fn main() -> Result<(), Failed> {
    let mut words = std::env::args().skip(1);
    let folder = PathBuf::from(words.next().unwrap_or_else(|| "pictures".to_owned()));
    let demos = words.next().map_or_else(
        || ["heron", "tern", "bittern"].map(str::to_owned).to_vec(),
        |name| vec![name],
    );
    for demo in demos {
        take(&folder, &demo).await?;
    }
    Ok(())
}

async fn take(folder: &Path, demo: &str) -> Result<(), Failed> {
    std::fs::create_dir_all(folder)?;
    let served = Served::demo(demo)?;
    let browser = Browser::start().await?;
    for view in [View::PHONE, View::LAPTOP] {
        for view in [view, view.at_night()] {
            for page in PAGES {
                let sheet = browser.open(&served.at(page), view).await?;
                let word = page.rsplit('/').next().filter(|word| !word.is_empty());
                let light = if view.is_night { "night" } else { "day" };
                let name = format!("{demo}-{}-{}-{light}.png", word.unwrap_or("first"), view.width);
                std::fs::write(folder.join(name), sheet.picture().await?)?;
                sheet.close().await?;
            }
        }
    }
    browser.close().await
}
