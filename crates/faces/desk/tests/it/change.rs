//! Changes that are sent: saved at once, told with what they did, undone, and never made over what
//! somebody else wrote.

use std::fs;

use axum::body::Body;
use axum::http::{Request, StatusCode};

use crate::ask::{HOST, ORIGIN, Open, heron};

impl Open {
    /// What a script sends.
    pub async fn json(&self, path: &str, body: &str) -> (StatusCode, String) {
        let request = Request::post(path)
            .header("host", HOST)
            .header("origin", ORIGIN)
            .header("accept", "application/json")
            .header("content-type", "application/json")
            .header("x-spile-token", self.desk.token())
            .body(Body::from(body.to_owned()))
            .unwrap();
        let answer = self.send(request).await;
        (answer.status, answer.text)
    }

    /// A file of the build.
    pub fn file(&self, name: &str) -> String {
        fs::read_to_string(self.folder.join(name)).unwrap()
    }

    /// The state of the files that pages show.
    pub async fn version(&self) -> String {
        self.page("/changed?since=another").await.text
    }
}

const LONGER: &str = "do=set&what=vehicle.wheelbase&value=3900+mm&back=%2Fq%2Faxle";

#[tokio::test]
async fn a_form_writes_one_value_and_undo_puts_back_every_byte() {
    let open = heron();
    let whole = open.file("build.toml");
    let answer = open.form("/change", LONGER).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    assert_eq!(answer.headers["location"], "/q/axle");
    let longer = whole.replace("wheelbase = \"3820 mm\"", "wheelbase = \"3900 mm\"");
    assert_ne!(longer, whole);
    assert_eq!(open.file("build.toml"), longer);
    assert_eq!(open.form("/undo", "back=/").await.status, StatusCode::SEE_OTHER);
    assert_eq!(open.file("build.toml"), whole);
    assert_eq!(open.form("/redo", "back=/").await.status, StatusCode::SEE_OTHER);
    assert_eq!(open.file("build.toml"), longer);
}

#[tokio::test]
async fn a_script_is_told_what_changed() {
    let open = heron();
    let body = r#"{"edits": [{"do": "set", "what": "vehicle.wheelbase", "value": "3900 mm"}]}"#;
    let (status, text) = open.json("/change", body).await;
    assert_eq!(status, StatusCode::OK, "{text}");
    let told: serde_json::Value = serde_json::from_str(&text).unwrap();
    assert_eq!(told["written"][0], "build.toml");
    assert_eq!(told["undo"], 1);
    assert_eq!(told["version"], open.version().await);
    assert!(!told["did"].as_array().unwrap().is_empty(), "{text}");
}

#[tokio::test]
async fn nonsense_is_told_in_the_words_of_the_file_and_nothing_is_written() {
    let open = heron();
    let whole = open.file("build.toml");
    let body = r#"{"edits": [{"do": "set", "what": "vehicle.wheelbase", "value": "3900 kg"}]}"#;
    let (status, text) = open.json("/change", body).await;
    assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(text.contains("a length is wanted here, and this is a mass"), "{text}");
    for body in ["what=&value=1", "do=burn&what=vehicle.wheelbase", "", "what=no.such&value=1+mm"] {
        let answer = open.form("/change", body).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{body}");
    }
    assert_eq!(open.json("/change", "{").await.0, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(open.json("/undo", "{}").await.0, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(open.file("build.toml"), whole);
}

#[tokio::test]
async fn what_an_editor_wrote_meanwhile_is_shown_and_not_written_over() {
    let open = heron();
    let since = open.version().await;
    let theirs =
        open.file("build.toml").replace("wheelbase = \"3820 mm\"", "wheelbase = \"3700 mm\"");
    fs::write(open.folder.join("build.toml"), &theirs).unwrap();
    let answer = open.form("/change", &format!("{LONGER}&since={since}")).await;
    assert_eq!(answer.status, StatusCode::CONFLICT);
    assert!(answer.text.contains("3700 mm") && answer.text.contains("3900 mm"), "{}", answer.text);
    assert_eq!(open.file("build.toml"), theirs);
    // Chosen on purpose, the change is made in the file as it stands.
    let since = open.version().await;
    let answer = open.form("/change", &format!("{LONGER}&since={since}")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
    assert!(open.file("build.toml").contains("wheelbase = \"3900 mm\""));
    // Another file than the one that was changed meanwhile is no reason to ask.
    let since = open.version().await;
    let part = open.folder.join("parts/more.toml");
    fs::write(part, "kind = \"load\"\n").unwrap();
    let answer = open.form("/change", &format!("{LONGER}&since={since}")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn a_step_is_not_undone_over_what_was_written_since() {
    let open = heron();
    open.form("/change", LONGER).await;
    let theirs = open.file("build.toml") + "# theirs\n";
    fs::write(open.folder.join("build.toml"), &theirs).unwrap();
    assert_eq!(open.form("/undo", "").await.status, StatusCode::CONFLICT);
    assert_eq!(open.file("build.toml"), theirs);
}

#[tokio::test]
async fn the_page_gone_back_to_is_one_of_ours() {
    let open = heron();
    for back in ["http%3A%2F%2Fspile.example", "%2F%2Fspile.example", "%2F%5Cspile.example"] {
        let body = format!("what=vehicle.wheelbase&value=3900+mm&back={back}");
        assert_eq!(open.form("/change", &body).await.headers["location"], "/", "{back}");
    }
}
