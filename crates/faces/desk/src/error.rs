//! What is shown where there is nothing to show.

use std::any::Any;

use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};

use crate::page::shell;

/// There is no such page.
pub(crate) fn not_found() -> Response {
    told(StatusCode::NOT_FOUND, "There is no such page.", "The first page has all there is.")
}

/// A request that is not taken.
pub(crate) fn refused(why: &str) -> Response {
    told(StatusCode::FORBIDDEN, "This is not served.", why)
}

/// A change that cannot be made.
pub(crate) fn not_taken(what: &str, why: &str) -> Response {
    told(StatusCode::UNPROCESSABLE_ENTITY, what, why)
}

/// A form with more in it than a build can bear.
pub(crate) fn too_large() -> Response {
    told(StatusCode::PAYLOAD_TOO_LARGE, "This is too much at once.", "Nothing was written.")
}

/// A form that does not come to its end.
pub(crate) fn too_slow() -> Response {
    told(StatusCode::REQUEST_TIMEOUT, "This took too long.", "Nothing was written.")
}

/// Something went wrong in the program itself.
pub(crate) fn broken() -> Response {
    told(
        StatusCode::INTERNAL_SERVER_ERROR,
        "Something went wrong in the program.",
        "Your files are as they were, and the other pages go on. Please tell the makers what you \
         did last.",
    )
}

/// The same, of a page that broke off.
pub(crate) fn panicked(_: Box<dyn Any + Send>) -> Response {
    broken()
}

fn told(status: StatusCode, what: &str, why: &str) -> Response {
    (status, shell::plain(what, why)).into_response()
}
