//! The pages follow the files.

use std::fs;
use std::time::Duration;

use axum::http::StatusCode;

use crate::ask::{build, heron};

const FIRST: &str = "kind=upright+fridge&size=475+x+780+x+495+mm&bay=520+x+1140+x+540+mm\
                     &cable=7.2+m&section=&battery=100+Ah";

#[tokio::test]
async fn an_edit_is_on_the_page_when_it_is_loaded_again() {
    let open = heron();
    assert!(open.page("/assumed?job=").await.text.contains("heron"));
    let path = open.folder.join("build.toml");
    let text = fs::read_to_string(&path)
        .unwrap()
        .replace("long high-roof panel van for two", "a changed van");
    fs::write(&path, text.replace("[items.pump]", "[items.second-pump]")).unwrap();
    let parts = open.page("/parts").await.text;
    assert!(parts.contains("second-pump"), "{parts}");
}

#[tokio::test]
async fn a_broken_file_is_told_in_its_place_until_it_is_mended() {
    let open = heron();
    let path = open.folder.join("build.toml");
    let whole = fs::read_to_string(&path).unwrap();
    fs::write(&path, whole.replacen("wheelbase = \"3820 mm\"", "wheelbase = \"3820 kg\"", 1))
        .unwrap();
    let page = open.page("/q/axle").await;
    assert_eq!(page.status, StatusCode::OK);
    let line = whole.lines().position(|line| line.starts_with("wheelbase")).unwrap() + 1;
    assert!(page.text.contains(&format!("build.toml:{line}:19")), "{}", page.text);
    assert!(page.text.contains("3820 <mark>kg</mark>&quot;"), "{}", page.text);
    assert!(page.text.contains("1 problem in 1 file; nothing was computed"), "{}", page.text);
    fs::write(&path, whole).unwrap();
    assert!(open.page("/q/axle").await.text.contains("Do axles and tyres carry it"));
}

#[tokio::test]
async fn an_open_page_hears_of_a_change() {
    let open = heron();
    let page = open.page("/").await.text;
    let version =
        page.split("data-version=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
    let waiting = open.page("/changed?since=another").await;
    assert_eq!(waiting.text, version);
    let path = format!("/changed?since={version}");
    let told = open.page(&path);
    tokio::pin!(told);
    assert!(tokio::time::timeout(Duration::from_millis(50), &mut told).await.is_err());
    let file = open.folder.join("build.toml");
    fs::write(&file, fs::read_to_string(&file).unwrap() + "# more\n").unwrap();
    open.page("/").await;
    let told = tokio::time::timeout(Duration::from_millis(5_000), told).await.unwrap();
    assert_ne!(told.text, version);
}

#[tokio::test]
async fn six_answers_make_a_build_and_the_eight_are_answered() {
    let open = build(None);
    assert_eq!(open.page("/").await.status, StatusCode::SEE_OTHER);
    let start = open.page("/start").await;
    assert!(start.text.contains("What goes in?"));
    assert_eq!(open.form("/start", FIRST).await.status, StatusCode::SEE_OTHER);
    let first = open.page("/").await.text;
    for word in ["fit", "air", "hold", "wire", "cold", "bank", "axle", "meter"] {
        assert!(first.contains(&format!("<article class=\"row\" id=\"{word}\"")), "{word}");
    }
    assert_eq!(open.page("/start").await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn what_cannot_be_read_is_told_at_its_field_and_kept() {
    let open = build(None);
    let wrong = FIRST.replace("7.2+m", "7.2").replace("100+Ah", "");
    let page = open.form("/start", &wrong).await;
    assert!(page.text.contains("id=\"cable-wrong\"") && page.text.contains("id=\"battery-wrong\""));
    assert!(page.text.contains("value=\"475 x 780 x 495 mm\""), "{}", page.text);
    assert!(!page.text.contains("id=\"size-wrong\""));
    assert!(!open.folder.join("build.toml").exists());
}

#[tokio::test]
async fn a_first_build_is_never_written_over_one_that_stands() {
    let open = build(Some("about = \"a van\"\n"));
    assert_eq!(open.form("/start", FIRST).await.status, StatusCode::SEE_OTHER);
    assert_eq!(fs::read_to_string(open.folder.join("build.toml")).unwrap(), "about = \"a van\"\n");
}
