//! A thing dragged in a drawing, by pointer and by keys, until it stands in the file.

use std::fs;
use std::path::Path;
use std::time::Duration;

use chromiumoxide::cdp::browser_protocol::input::{
    DispatchMouseEventParams, DispatchMouseEventType, MouseButton,
};
use spile_pages::{Browser, Failed, Served, Sheet, View};

/// The page that shows heron's fridge in its bay.
const PAGE: &str = "q/fit?job=galley-fridge&option=upright";

/// The fridge's body as one faces its bay.
const BODY: &str =
    "document.querySelector('svg.wide [data-view=\"bay front\"] [data-thing=\"items.upright\"]')";

async fn mouse(
    sheet: &Sheet,
    kind: DispatchMouseEventType,
    at: [f64; 2],
    buttons: i64,
) -> Result<(), Failed> {
    let event = DispatchMouseEventParams::builder().r#type(kind).x(at[0]).y(at[1]);
    let event = event.button(MouseButton::Left).buttons(buttons).click_count(1);
    sheet.page().execute(event.build()?).await?;
    Ok(())
}

/// Waits until a file is as wanted, five seconds at most.
async fn file_is(path: &Path, wanted: impl Fn(&str) -> bool) -> Result<(), Failed> {
    for _ in 0..100 {
        if wanted(&fs::read_to_string(path)?) {
            return Ok(());
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    Err(format!("the file never came to be as wanted:\n{}", fs::read_to_string(path)?).into())
}

#[tokio::test(flavor = "multi_thread")]
async fn a_fridge_is_dragged_put_down_and_put_back() -> Result<(), Failed> {
    let served = Served::demo("heron")?;
    let file = served.file("jobs/galley-fridge.toml");
    let before = fs::read_to_string(&file)?;
    let browser = Browser::start().await?;
    let sheet = browser.open(&served.at(PAGE), View::LAPTOP).await?;
    sheet.ask::<bool>(&format!("{BODY}.scrollIntoView({{ block: 'center' }}), true")).await?;
    // Its middle, and how many pixels a millimetre takes.
    let [x, y, scale]: [f64; 3] = sheet
        .ask(&format!(
            "(() => {{ const body = {BODY}, box = body.getBoundingClientRect();
            const scale = body.ownerSVGElement.getScreenCTM().a / body.closest('[data-view]').dataset.mm;
            return [box.x + box.width / 2, box.y + box.height / 2, scale]; }})()"
        ))
        .await?;
    mouse(&sheet, DispatchMouseEventType::MouseMoved, [x, y], 0).await?;
    mouse(&sheet, DispatchMouseEventType::MousePressed, [x, y], 1).await?;
    for mm in [3.0, 7.0, 12.0] {
        mouse(&sheet, DispatchMouseEventType::MouseMoved, [x + mm * scale, y], 1).await?;
    }
    // The drawing follows, and what is left around it is said, before anything is written.
    sheet.until(&format!("{BODY}.getAttribute('transform')")).await?;
    sheet.until("document.querySelector('.moving')?.textContent.includes('10.5 mm')").await?;
    assert_eq!(fs::read_to_string(&file)?, before);
    mouse(&sheet, DispatchMouseEventType::MouseReleased, [x + 12.0 * scale, y], 0).await?;
    // Whoever faces the bay has the rear on the right.
    let old = "from_rear = \"22.5 mm ± 0.5 mm\", from_left";
    let after = before.replace(old, "from_rear = \"10.5 mm ± 0.5 mm\", from_left");
    assert_ne!(after, before);
    file_is(&file, |text| text == after).await?;
    sheet.until("document.querySelector('.did-move button')").await?;
    let said: String = sheet.ask("document.querySelector('.did-move').textContent").await?;
    assert!(said.starts_with("upright was moved. It turned"), "{said}");
    sheet.press(".did-move button").await?;
    file_is(&file, |text| text == before).await?;
    assert_eq!(sheet.complaints(), Vec::<String>::new());
    browser.close().await
}

#[tokio::test(flavor = "multi_thread")]
async fn keys_move_it_too_and_escape_leaves_it() -> Result<(), Failed> {
    let served = Served::demo("heron")?;
    let file = served.file("jobs/galley-fridge.toml");
    let before = fs::read_to_string(&file)?;
    let browser = Browser::start().await?;
    let sheet = browser.open(&served.at(PAGE), View::LAPTOP).await?;
    let button = "document.querySelector('[data-moves=\"items.upright\"]')";
    let key = |key: &str, shift: bool| {
        format!(
            "{button}.focus(), {button}.dispatchEvent(new KeyboardEvent('keydown', \
             {{ key: '{key}', shiftKey: {shift}, bubbles: true, cancelable: true }})), true"
        )
    };
    sheet.ask::<bool>(&key("ArrowLeft", true)).await?;
    sheet.until("document.querySelector('.moving')?.textContent.includes('32.5 mm')").await?;
    sheet.ask::<bool>(&key("Escape", false)).await?;
    sheet.until("!document.querySelector('.moving')").await?;
    assert_eq!(fs::read_to_string(&file)?, before);
    for _ in 0..3 {
        sheet.ask::<bool>(&key("ArrowLeft", false)).await?;
    }
    sheet.ask::<bool>(&key("Enter", false)).await?;
    file_is(&file, |text| text.contains("\"25.5 mm ± 0.5 mm\"")).await?;
    sheet.until("document.querySelector('.did-move button')").await?;
    let undo = "document.body.dispatchEvent(new KeyboardEvent('keydown', \
                { key: 'z', ctrlKey: true, bubbles: true, cancelable: true })), true";
    sheet.ask::<bool>(undo).await?;
    file_is(&file, |text| text == before).await?;
    assert_eq!(sheet.complaints(), Vec::<String>::new());
    browser.close().await
}
