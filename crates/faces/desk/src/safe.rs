//! Who may ask, who may write, and what a page may load.

use std::sync::Arc;
use std::time::Duration;

use axum::body::{Body, to_bytes};
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderValue, Method, header};
use axum::middleware::Next;
use axum::response::Response;

use crate::desk::Desk;
use crate::error;

/// What a page may load: our own style and script, and nothing else from anywhere.
const POLICY: &str = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; \
                      connect-src 'self'; form-action 'self'; base-uri 'none'; \
                      frame-ancestors 'none'";

/// The most bytes that a request may carry.
pub(crate) const BODY: usize = 256 * 1024;

/// How long a request, and the page that answers it, may take.
pub(crate) const TIME: Duration = Duration::from_millis(20_000);

/// The name of the field, and of the header, that carries the token.
pub(crate) const TOKEN: &str = "token";

/// Lets a request through if it names this machine as its host, comes from our own pages or from
/// the owner's hand, and, where it writes, carries the token of this start.
pub(crate) async fn guard(State(desk): State<Arc<Desk>>, request: Request, next: Next) -> Response {
    let headers = request.headers();
    if !is_host(headers, desk.port()) {
        return error::refused("This page is served to this machine alone, under its own name.");
    }
    if !is_ours(headers, desk.port()) {
        return error::refused(
            "This was asked for by another page. Type the address, or take it from the terminal.",
        );
    }
    if matches!(*request.method(), Method::GET | Method::HEAD) {
        return next.run(request).await;
    }
    if *request.method() != Method::POST || !is_from_a_page(headers) {
        return error::refused("Only a form of these pages can change the build.");
    }
    let (parts, body) = request.into_parts();
    let Ok(read) = tokio::time::timeout(TIME, to_bytes(body, BODY)).await else {
        return error::too_slow();
    };
    let Ok(bytes) = read else { return error::too_large() };
    if desk.token().is_empty() || !carries(&parts.headers, &bytes, desk.token()) {
        return error::refused(
            "This page is from an earlier start of the program. Load it again, and send once more.",
        );
    }
    next.run(Request::from_parts(parts, Body::from(bytes))).await
}

/// Every response with what keeps it from being put to other uses.
pub(crate) async fn headers(mut response: Response) -> Response {
    let all = [
        (header::CONTENT_SECURITY_POLICY, POLICY),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "no-referrer"),
        (header::X_FRAME_OPTIONS, "DENY"),
        (header::CACHE_CONTROL, "no-store"),
    ];
    for (name, value) in all {
        response.headers_mut().insert(name, HeaderValue::from_static(value));
    }
    for (name, value) in [
        ("cross-origin-resource-policy", "same-origin"),
        ("cross-origin-opener-policy", "same-origin"),
    ] {
        response.headers_mut().insert(name, HeaderValue::from_static(value));
    }
    response
}

/// Whether the host is this machine by one of its names, at our port: a name that somebody else
/// has made to point at this machine is not.
fn is_host(headers: &HeaderMap, port: u16) -> bool {
    let mut hosts = headers.get_all(header::HOST).iter();
    let (Some(host), None) = (hosts.next(), hosts.next()) else { return false };
    names(port).iter().any(|name| host.as_bytes() == name.as_bytes())
}

/// Whether nothing says that another site asks.
fn is_ours(headers: &HeaderMap, port: u16) -> bool {
    let site = headers.get_all("sec-fetch-site").iter();
    let origin = headers.get_all(header::ORIGIN).iter();
    let ours = |origin: &HeaderValue| {
        names(port).iter().any(|name| origin.as_bytes() == format!("http://{name}").as_bytes())
    };
    site.into_iter().all(|site| matches!(site.as_bytes(), b"same-origin" | b"none"))
        && origin.into_iter().all(ours)
}

/// Whether a browser says that a page of ours sends it.
fn is_from_a_page(headers: &HeaderMap) -> bool {
    let same = |site: &HeaderValue| site.as_bytes() == b"same-origin";
    headers.contains_key(header::ORIGIN) || headers.get("sec-fetch-site").is_some_and(same)
}

/// Whether a form, or a script's request, carries the token.
fn carries(headers: &HeaderMap, body: &[u8], token: &str) -> bool {
    if let Some(given) = headers.get("x-spile-token") {
        return alike(given.as_bytes(), token.as_bytes());
    }
    body.split(|byte| *byte == b'&').any(|field| {
        field
            .strip_prefix(TOKEN.as_bytes())
            .and_then(|rest| rest.strip_prefix(b"="))
            .is_some_and(|given| alike(given, token.as_bytes()))
    })
}

/// Whether two texts are the same, in a time that does not tell where they part.
fn alike(a: &[u8], b: &[u8]) -> bool {
    a.len() == b.len() && a.iter().zip(b).fold(0, |parted, (a, b)| parted | (a ^ b)) == 0
}

fn names(port: u16) -> [String; 3] {
    [format!("127.0.0.1:{port}"), format!("localhost:{port}"), format!("[::1]:{port}")]
}
