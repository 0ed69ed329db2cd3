//! Things that are dragged: tried in memory, and answered as the files would be.

use std::fs;

use axum::body::Body;
use axum::http::{Request, StatusCode};
use serde_json::{Value as Json, json};

use crate::ask::{HOST, ORIGIN, Open, heron};

const JOB: &str = "/drag?job=galley-fridge&option=upright";

/// A move as the script sends it.
async fn drag(open: &Open, path: &str, sent: &str) -> (StatusCode, Json) {
    let request = Request::post(path)
        .header("host", HOST)
        .header("origin", ORIGIN)
        .header("content-type", "application/json")
        .header("x-spile-token", open.desk.token())
        .body(Body::from(sent.to_owned()))
        .unwrap();
    let answer = open.send(request).await;
    (answer.status, serde_json::from_str(&answer.text).unwrap())
}

async fn moved(open: &Open, thing: &str, by: Json) -> Json {
    let sent = json!({ "seq": 1, "thing": thing, "by": by, "down": true });
    let (status, reply) = drag(open, JOB, &sent.to_string()).await;
    assert_eq!(status, StatusCode::OK, "{reply}");
    reply
}

#[tokio::test]
async fn a_move_is_answered_as_the_files_with_that_place_would_be() {
    let open = heron();
    // Twelve millimetres to the front, and out of the bay to the left.
    let tried = moved(&open, "items.upright", json!({ "x": 12.0, "y": 3.0 })).await;
    let file = open.folder.join("jobs/galley-fridge.toml");
    let before = fs::read_to_string(&file).unwrap();
    let old = r#"from_rear = "22.5 mm ± 0.5 mm", from_left = "0 mm ± 0.5 mm""#;
    let new = r#"from_rear = "34.5 mm ± 0.5 mm", from_left = "-3 mm ± 0.5 mm""#;
    assert_eq!(before.matches(old).count(), 1);
    fs::write(&file, before.replace(old, new)).unwrap();
    let read = moved(&open, "items.upright", json!({})).await;
    for key in ["around", "found", "verdict", "fit", "place"] {
        assert_eq!(tried[key], read[key], "{key}");
        assert!(!tried[key].is_null(), "{key}");
    }
    assert_ne!(tried["version"], read["version"]);
    // The edits are that place, with the tolerances that stand there.
    let edits = json!([
        { "do": "set", "what": "items.upright.place.from_rear", "value": "34.5 mm ± 0.5 mm" },
        { "do": "set", "what": "items.upright.place.from_left", "value": "-3 mm ± 0.5 mm" },
    ]);
    assert_eq!(tried["edits"], edits);
}

#[tokio::test]
async fn what_is_left_on_a_side_is_less_by_what_it_moved() {
    let open = heron();
    let left = |reply: &Json, way: &str| {
        let around = reply["around"].as_array().unwrap();
        around.iter().find(|one| one["way"] == way).unwrap()["mm"].as_f64().unwrap()
    };
    let stands = moved(&open, "items.upright", json!({})).await;
    assert_eq!(stands["edits"], json!([]));
    // The bay opens to the left of the vehicle: whoever faces it has the rear on the right.
    let nearer = moved(&open, "items.upright", json!({ "right": 4.0 })).await;
    assert!((left(&stands, "right") - left(&nearer, "right") - 4.0).abs() < 1e-6);
    assert!((left(&nearer, "left") - left(&stands, "left") - 4.0).abs() < 1e-6);
    let same = moved(&open, "items.upright", json!({ "-x": 4.0 })).await;
    assert_eq!(same["around"], nearer["around"]);
    // Run into the side, it cannot stand there.
    let into = moved(&open, "items.upright", json!({ "right": 60.0 })).await;
    assert!(left(&into, "right") < 0.0, "{into}");
    assert_eq!(into["verdict"]["word"], "stop");
}

#[tokio::test]
async fn what_stands_on_something_stays_on_it_and_says_so() {
    let open = heron();
    let up = moved(&open, "items.upright", json!({ "up": 50.0, "right": 1.0 })).await;
    assert_eq!(up["by"], json!([-1.0, 0.0, 0.0]));
    assert_eq!(up["stays"][0]["says"], "It stands on platform and stays on it.");
    let pump = moved(&open, "items.pump", json!({ "z": 20.0 })).await;
    assert_eq!(pump["edits"][0]["what"], "items.pump.place.above");
    assert_eq!(pump["edits"][0]["value"], "80 mm");
}

#[tokio::test]
async fn nothing_is_written_and_nonsense_is_told_calmly() {
    let open = heron();
    let texts = || -> Vec<String> {
        ["build.toml", "jobs/galley-fridge.toml"]
            .map(|name| fs::read_to_string(open.folder.join(name)).unwrap())
            .to_vec()
    };
    let before = texts();
    moved(&open, "items.upright", json!({ "x": 12.0 })).await;
    for sent in [
        "",
        "[]",
        "{",
        r#"{"seq": 1}"#,
        r#"{"seq": -1, "thing": "items.upright", "by": {}}"#,
        r#"{"seq": 1, "thing": "items.upright", "by": {"x": 1e400}}"#,
        r#"{"seq": 1, "thing": "items.upright", "by": {"x": 1e300}}"#,
        r#"{"seq": 1, "thing": "items.upright", "by": {"x": 25000}}"#,
        r#"{"seq": 1, "thing": "items.upright", "by": {"sideways": 1}}"#,
        r#"{"seq": 1, "thing": "items.bench", "by": {"right": 1}}"#,
        r#"{"seq": 1, "thing": "items.nobody", "by": {"x": 1}}"#,
        r#"{"seq": 1, "thing": "items.lights", "by": {"x": 1}}"#,
        r#"{"seq": 1, "thing": "bays.garage", "by": {"x": 1}}"#,
        r#"{"seq": 1, "thing": "../build.toml", "by": {"x": 1}}"#,
    ] {
        let (status, reply) = drag(&open, JOB, sent).await;
        assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY, "{sent}: {reply}");
        let problem = &reply["problems"][0];
        assert!(problem["says"].as_str().is_some_and(|says| !says.is_empty()), "{reply}");
        assert!(problem["hint"].as_str().is_some_and(|hint| !hint.is_empty()), "{reply}");
    }
    assert_eq!(texts(), before);
    let request = Request::post(JOB).header("host", HOST).header("origin", ORIGIN);
    let answer = open.send(request.body(Body::from("{}")).unwrap()).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN);
}
