//! A build's folder in, a typed build or its problems out.

mod broken;
