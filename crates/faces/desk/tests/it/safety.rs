//! Who may ask, who may write, and what a page may load.

use axum::body::Body;
use axum::http::{Method, Request, StatusCode};

use crate::ask::{HOST, ORIGIN, build, heron};

const FIRST: &str = "kind=upright+fridge&size=475+x+780+x+495+mm&bay=520+x+1140+x+540+mm\
                     &cable=7.2+m&section=&battery=100+Ah";

#[tokio::test]
async fn only_this_machine_under_its_own_names_is_served() {
    let open = heron();
    for host in ["127.0.0.1:4711", "localhost:4711", "[::1]:4711"] {
        let request = Request::get("/sources").header("host", host).body(Body::empty()).unwrap();
        assert_eq!(open.send(request).await.status, StatusCode::OK, "{host}");
    }
    // A name that somebody made to point at the loopback, another port, no port, no host at all.
    for host in ["spile.example:4711", "127.0.0.1:4712", "127.0.0.1", "127.0.0.1:4711.example", ""]
    {
        let request = Request::get("/sources").header("host", host).body(Body::empty()).unwrap();
        assert_eq!(open.send(request).await.status, StatusCode::FORBIDDEN, "{host}");
    }
    let twice = Request::get("/sources").header("host", HOST).header("host", "spile.example:4711");
    assert_eq!(open.send(twice.body(Body::empty()).unwrap()).await.status, StatusCode::FORBIDDEN);
    let none = Request::get("/sources").body(Body::empty()).unwrap();
    assert_eq!(open.send(none).await.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn the_loopback_and_nothing_else_is_listened_on() {
    let bound = spile_desk::bind(None).unwrap();
    assert!(bound.address().starts_with("http://127.0.0.1:"), "{}", bound.address());
    assert!(std::net::TcpListener::bind(("127.0.0.1", bound.port())).is_err());
    // The same port is still to be had on another address of this machine.
    std::net::TcpListener::bind(("127.0.0.2", bound.port())).unwrap();
}

#[tokio::test]
async fn another_page_cannot_even_read() {
    let open = heron();
    for (name, value) in [
        ("origin", "http://spile.example"),
        ("origin", "null"),
        ("origin", "http://127.0.0.1:9999"),
        ("sec-fetch-site", "cross-site"),
        ("sec-fetch-site", "same-site"),
    ] {
        let request = Request::get("/").header("host", HOST).header(name, value);
        let answer = open.send(request.body(Body::empty()).unwrap()).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{name}: {value}");
        assert!(!answer.text.contains(open.desk.token()), "{name}: {value}");
    }
}

#[tokio::test]
async fn only_a_form_of_ours_with_the_token_writes() {
    let open = build(None);
    let token = open.desk.token().to_owned();
    let with = format!("token={token}&{FIRST}");
    let wrong = format!("token={}&{FIRST}", "0".repeat(token.len()));
    let cases = [
        (Some(ORIGIN), None, FIRST.to_owned()),
        (Some(ORIGIN), None, wrong),
        (Some(ORIGIN), None, format!("token=&{FIRST}")),
        (Some("http://spile.example"), None, with.clone()),
        (Some("null"), None, with.clone()),
        (None, Some("cross-site"), with.clone()),
        (None, Some("none"), with.clone()),
        (None, None, with.clone()),
    ];
    for (origin, site, body) in cases {
        let told = format!("{origin:?} {site:?} {body}");
        let mut request = Request::post("/start")
            .header("host", HOST)
            .header("content-type", "application/x-www-form-urlencoded");
        if let Some(origin) = origin {
            request = request.header("origin", origin);
        }
        if let Some(site) = site {
            request = request.header("sec-fetch-site", site);
        }
        let answer = open.send(request.body(Body::from(body)).unwrap()).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{told}");
        assert!(!open.folder.join("build.toml").exists(), "{told}");
    }
    assert_eq!(open.form("/start", FIRST).await.status, StatusCode::SEE_OTHER);
    assert!(open.folder.join("build.toml").exists());
}

#[tokio::test]
async fn no_other_method_gets_through() {
    let open = heron();
    for method in [Method::PUT, Method::DELETE, Method::PATCH, Method::OPTIONS, Method::TRACE] {
        let request = Request::builder().method(&method).uri("/start").header("host", HOST);
        let request = request.header("origin", ORIGIN).header("x-spile-token", open.desk.token());
        let answer = open.send(request.body(Body::empty()).unwrap()).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{method}");
    }
}

#[tokio::test]
async fn every_answer_says_what_may_be_done_with_it() {
    let open = heron();
    for path in ["/", "/static/look.css", "/nothing", "/changed?since=x"] {
        let answer = open.page(path).await;
        let header = |name: &str| answer.headers[name].to_str().unwrap();
        let policy = header("content-security-policy");
        for rule in [
            "default-src 'none'",
            "script-src 'self'",
            "style-src 'self'",
            "frame-ancestors 'none'",
        ] {
            assert!(policy.contains(rule), "{path}: {policy}");
        }
        assert!(!policy.contains("unsafe"), "{path}: {policy}");
        assert_eq!(header("x-content-type-options"), "nosniff", "{path}");
        assert_eq!(header("referrer-policy"), "no-referrer", "{path}");
        assert!(!answer.headers.contains_key("access-control-allow-origin"), "{path}");
    }
}

#[tokio::test]
async fn too_much_at_once_is_not_read() {
    let open = build(None);
    let answer = open.form("/start", &format!("kind={}", "x".repeat(300 * 1024))).await;
    assert_eq!(answer.status, StatusCode::PAYLOAD_TOO_LARGE);
}

#[tokio::test(start_paused = true)]
async fn a_form_that_never_ends_is_let_go() {
    let open = build(None);
    let request = Request::post("/start")
        .header("host", HOST)
        .header("origin", ORIGIN)
        .body(Body::from_stream(futures::stream::pending::<Result<Vec<u8>, std::io::Error>>()))
        .unwrap();
    assert_eq!(open.send(request).await.status, StatusCode::REQUEST_TIMEOUT);
}

#[tokio::test]
async fn nothing_outside_the_folder_is_given_out() {
    let open = heron();
    std::fs::write(open.folder.join("../secret.toml"), "about = \"secret\"\n").unwrap();
    std::fs::write(open.folder.join("notes.txt"), "secret\n").unwrap();
    for path in [
        "/static/../build.toml",
        "/static/..%2Fbuild.toml",
        "/static/%2e%2e%2f%2e%2e%2fsecret.toml",
        "/../secret.toml",
        "/secret.toml",
        "/build.toml",
        "/notes.txt",
        "/q/..%2F..%2Fsecret.toml",
        "/?job=../../secret",
        "/?job=..%2F..%2Fsecret",
        "/?job=galley-fridge&option=../../../secret",
    ] {
        let answer = open.page(path).await;
        let inside = answer.text.replace("secret.toml", "").replace("../secret", "");
        assert!(!inside.contains("about = "), "{path}");
        assert!(
            answer.status == StatusCode::NOT_FOUND || answer.text.contains("There is no"),
            "{path}"
        );
    }
}
