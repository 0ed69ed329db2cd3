//! What the pages say is what the terminal says.

use axum::http::StatusCode;
use spile_ask::{ask, number};
use spile_build::Folder;

use crate::ask::{heron, paths};

#[tokio::test]
async fn every_page_opens() {
    let open = heron();
    for path in paths() {
        let answer = open.page(&path).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}");
        assert!(answer.text.contains("<main"), "{path}");
    }
    assert_eq!(open.page("/q/nothing").await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn every_finding_of_every_question_is_on_its_page() {
    let open = heron();
    let folder = Folder::open(&open.folder).unwrap();
    let planned = folder.plan("galley-fridge", Some("two-boxes")).unwrap();
    let report = ask("heron", folder.build(), Some(&planned));
    for asked in &report.answers {
        let word = asked.question.word();
        let path = format!("/q/{word}?job=galley-fridge&option=two-boxes");
        let page = open.page(&path).await.text;
        for pair in asked.pairs() {
            let escaped = |text: &str| maud::html! { (text) }.into_string();
            assert!(page.contains(&escaped(&pair.now.says)), "{word}.{}", pair.now.id);
            assert!(page.contains(&escaped(&pair.now.label)), "{word}.{}", pair.now.id);
            for step in &pair.now.working {
                assert!(page.contains(&escaped(&step.numbers)), "{word}.{}", pair.now.id);
            }
            if let Some(worst) =
                pair.now.figure.and_then(|one| number::worst(&one, pair.now.limit.as_ref()))
            {
                assert!(page.contains(&escaped(&worst)), "{word}.{}: {worst}", pair.now.id);
            }
        }
    }
}

#[tokio::test]
async fn what_was_written_by_hand_cannot_become_markup() {
    let open = crate::ask::build(Some(
        "about = \"<script>alert(1)</script>\"\n[parts.\"<b>\"]\nkind = \"load\"\nmass = \"3 kg\"\n\
         [items.\"x\\\" onload=\\\"y\"]\npart = \"<b>\"\nabout = \"<img src=x>\"\n",
    ));
    for path in paths() {
        let text = open.page(&path).await.text;
        for bad in ["<script>alert", "<img", "<b>\"", "\" onload"] {
            assert!(!text.contains(bad), "{path}: {bad}");
        }
    }
}

#[tokio::test]
async fn what_changes_is_summed_in_mass() {
    let open = heron();
    let folder = Folder::open(&open.folder).unwrap();
    let planned = folder.plan("galley-fridge", Some("upright")).unwrap();
    let mass =
        |build: &spile_build::Build, name: &str| build.items[name].mass.as_ref().unwrap().likely();
    let comes = mass(&planned.after, "upright") + mass(&planned.after, "platform");
    let sum = comes - mass(&planned.before, "lidded-box");
    let page = open.page("/?job=galley-fridge&option=upright").await.text;
    let row = page.split("<tr class=\"sum\"><td colspan=\"2\">empty").nth(1).unwrap();
    assert!(row.contains(&format!("+{}", number::quantity(sum))), "{row}");
}
