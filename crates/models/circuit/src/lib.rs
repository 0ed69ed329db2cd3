//! The DC network: sources, conductors, loads; every node's voltage.

pub mod network;
