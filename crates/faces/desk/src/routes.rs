//! Which address shows which page.

use std::sync::Arc;

use axum::Router;
use axum::extract::{Path, Query, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use axum::routing::{get, post};
use maud::Markup;
use spile_answer::Question;
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::limit::RequestBodyLimitLayer;
use tower_http::timeout::TimeoutLayer;

use crate::desk::Desk;
use crate::view::{Asked, NoView, View};
use crate::{change, drag, error, live, page, safe};

/// The pages of a build.
pub fn router(desk: Arc<Desk>) -> Router {
    let pages = Router::new()
        .route("/", get(|desk, asked| shown(desk, asked, page::first::page)))
        .route("/q/{question}", get(question))
        .route("/jobs", get(|desk, asked| shown(desk, asked, page::jobs::page)))
        .route("/parts", get(|desk, asked| shown(desk, asked, page::parts::page)))
        .route("/readings", get(|desk, asked| shown(desk, asked, page::readings::page)))
        .route("/next", get(|desk, asked| shown(desk, asked, page::next::page)))
        .route("/assumed", get(|desk, asked| shown(desk, asked, page::assumed::page)))
        .route("/sources", get(|desk, asked| shown(desk, asked, page::sources::page)))
        .route("/start", get(page::start::show).post(page::start::make))
        .route("/things", get(|desk, asked| shown(desk, asked, page::things::page)))
        .route("/thing/{what}", get(page::thing::show).post(page::thing::save))
        .route("/add/{what}", get(page::thing::new).post(page::thing::add))
        .route("/job", post(page::job::save))
        .route("/change", post(change::change))
        .route("/undo", post(change::undo))
        .route("/redo", post(change::redo))
        .route("/drag", post(drag::drag))
        .route("/static/{file}", get(asset))
        .fallback(|| async { error::not_found() })
        .layer(TimeoutLayer::with_status_code(StatusCode::REQUEST_TIMEOUT, safe::TIME));
    let writes = axum::middleware::from_fn_with_state(Arc::clone(&desk), safe::guard);
    Router::new()
        .route("/changed", get(live::changed))
        .merge(pages)
        .layer(CatchPanicLayer::custom(error::panicked))
        .layer(RequestBodyLimitLayer::new(safe::BODY))
        .layer(writes)
        .layer(axum::middleware::map_response(safe::headers))
        .with_state(desk)
}

/// A page made of the build at this moment, or what is to be seen in its place.
pub(crate) async fn shown(
    State(desk): State<Arc<Desk>>,
    Query(asked): Query<Asked>,
    make: impl FnOnce(&View) -> Markup + Send + 'static,
) -> Response {
    let made = tokio::task::spawn_blocking(move || match View::of(&desk, asked) {
        Ok(view) => make(&view).into_response(),
        Err(NoView::NoBuild) => Redirect::to("/start").into_response(),
        Err(NoView::Unread(now)) => page::problems::page(&desk, &now).into_response(),
        Err(NoView::Unplanned(why)) => page::problems::unplanned(&desk, &why).into_response(),
    });
    made.await.unwrap_or_else(|_| error::broken())
}

async fn question(
    desk: State<Arc<Desk>>,
    asked: Query<Asked>,
    Path(word): Path<String>,
) -> Response {
    match Question::ALL.into_iter().find(|question| question.word() == word) {
        Some(question) => {
            shown(desk, asked, move |view| page::question::page(view, question)).await
        }
        None => error::not_found(),
    }
}

/// What the pages load: our own style and script, which are part of the program.
async fn asset(Path(file): Path<String>) -> Response {
    let (kind, text) = match file.as_str() {
        "look.css" => ("text/css; charset=utf-8", include_str!("../static/look.css")),
        "sheet.css" => ("text/css; charset=utf-8", spile_sheet::STYLE),
        "desk.js" => ("text/javascript; charset=utf-8", include_str!("../static/desk.js")),
        "drag.js" => ("text/javascript; charset=utf-8", include_str!("../static/drag.js")),
        "mark.svg" => ("image/svg+xml", include_str!("../static/mark.svg")),
        _ => return error::not_found(),
    };
    ([(header::CONTENT_TYPE, kind)], text).into_response()
}

#[cfg(test)]
mod tests {
    use axum::body::{Body, to_bytes};
    use axum::http::Request;
    use tower::ServiceExt;

    use super::*;

    async fn asked(router: &Router, path: &str) -> (StatusCode, String) {
        let request = Request::get(path).header("host", "127.0.0.1:4711");
        let request = request.body(Body::empty()).unwrap();
        let response = router.clone().oneshot(request).await.unwrap();
        let status = response.status();
        let text = to_bytes(response.into_body(), usize::MAX).await.unwrap();
        (status, String::from_utf8(text.to_vec()).unwrap())
    }

    async fn broken_off() -> StatusCode {
        panic!("broken off")
    }

    #[tokio::test]
    async fn a_page_that_breaks_off_says_so_calmly_and_the_others_go_on() {
        let folder = tempfile::tempdir().unwrap();
        std::fs::write(folder.path().join("build.toml"), "").unwrap();
        let desk = Desk::open(folder.path(), 4711);
        let breaks = |desk, asked| shown(desk, asked, |_| panic!("broken off"));
        let pages = Router::new()
            .route("/breaks", get(breaks))
            .route("/breaks-at-once", get(broken_off))
            .layer(CatchPanicLayer::custom(error::panicked))
            .with_state(Arc::clone(&desk))
            .merge(router(desk));
        for path in ["/breaks", "/breaks-at-once"] {
            let (status, text) = asked(&pages, path).await;
            assert_eq!(status, StatusCode::INTERNAL_SERVER_ERROR, "{path}");
            assert!(text.contains("Your files are as they were"), "{text}");
            assert!(!text.contains("broken off"), "{text}");
        }
        assert_eq!(asked(&pages, "/parts").await.0, StatusCode::OK);
    }
}
