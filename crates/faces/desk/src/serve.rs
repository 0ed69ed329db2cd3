//! The port, and serving until told to stop.

use std::io;
use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::sync::Arc;

use crate::desk::Desk;
use crate::view::{Asked, View};
use crate::{live, routes};

/// A port of the loopback that is ours.
#[derive(Debug)]
pub struct Bound {
    listener: TcpListener,
    port: u16,
}

impl Bound {
    /// The port.
    pub const fn port(&self) -> u16 {
        self.port
    }

    /// The address of the first page.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}/", self.port)
    }
}

/// Takes a port of the loopback, and of nothing else: the one that is named, or any that is free.
///
/// # Errors
/// If the port is taken, or may not be used.
pub fn bind(port: Option<u16>) -> io::Result<Bound> {
    let listener = TcpListener::bind(SocketAddr::from((Ipv4Addr::LOCALHOST, port.unwrap_or(0))))?;
    listener.set_nonblocking(true)?;
    let port = listener.local_addr()?.port();
    Ok(Bound { listener, port })
}

/// Serves a build until Ctrl-C, and looks at its folder meanwhile.
///
/// # Errors
/// If the port breaks down.
pub fn serve(bound: Bound, desk: &Arc<Desk>) -> io::Result<()> {
    let runtime = tokio::runtime::Builder::new_multi_thread().enable_all().build()?;
    let watch = live::watch(desk);
    let first = Arc::clone(desk);
    let served = runtime.block_on(async {
        // What is shown first is worked out while the browser starts.
        tokio::task::spawn_blocking(move || View::of(&first, Asked::default()).is_ok());
        let listener = tokio::net::TcpListener::from_std(bound.listener)?;
        let router = routes::router(Arc::clone(desk));
        tokio::select! {
            served = async { axum::serve(listener, router).await } => served,
            told = tokio::signal::ctrl_c() => told,
        }
    });
    drop(watch);
    runtime.shutdown_background();
    served
}
