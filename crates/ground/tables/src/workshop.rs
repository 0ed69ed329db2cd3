//! Holes, edges and sheets.

use std::sync::LazyLock;

use serde::Deserialize;
use spile_quantity::Length;

use crate::Entry;
use crate::file::{File, Lazy};

pub(crate) static FILE: Lazy =
    LazyLock::new(|| File::read("workshop", include_str!("../data/workshop.toml")));

/// Holes that a metric screw passes through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clearance {
    /// The nominal diameter: 4 mm for M4.
    pub thread: Length,
    /// A close hole.
    pub fine: Length,
    /// The usual hole.
    pub medium: Length,
    /// A hole with room to shift.
    pub coarse: Length,
}

/// Holes to tap a coarse metric thread in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tap {
    /// The nominal diameter: 4 mm for M4.
    pub thread: Length,
    /// The pitch of the thread.
    pub pitch: Length,
    /// The drill for 75 % of thread, in aluminium.
    pub aluminium: Length,
    /// The drill for 50 % of thread, in steel.
    pub steel: Length,
}

/// The hole for a rivet nut with a round body.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RivetNut {
    /// The nominal diameter: 6 mm for M6.
    pub thread: Length,
    /// The hole.
    pub hole: Length,
}

/// What the diameter is of, in which an edge distance is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Of {
    /// The hole.
    Hole,
    /// The screw or bolt.
    Fastener,
}

/// The least distance from a fastener's middle to an edge.
#[derive(Debug, Clone, PartialEq)]
pub struct EdgeDistance {
    /// The name to ask for it by: `metal` and `plywood` are the trade's rules of thumb.
    pub key: String,
    /// The material.
    pub material: String,
    /// How many diameters \[1\].
    pub diameters: f64,
    /// Of what.
    pub of: Of,
}

/// A sheet as it is sold.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// The material.
    pub material: String,
    /// Its width.
    pub width: Length,
    /// Its length.
    pub length: Length,
}

/// Clearance holes of ISO 273 from M3 to M10.
pub fn clearances() -> &'static [Entry<Clearance>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        thread: f64,
        fine: f64,
        medium: f64,
        coarse: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Clearance>>> = LazyLock::new(|| {
        FILE.rows("clearance", |r: Row| Clearance {
            thread: Length::mm(r.thread),
            fine: Length::mm(r.fine),
            medium: Length::mm(r.medium),
            coarse: Length::mm(r.coarse),
        })
    });
    &ROWS
}

/// The clearance holes of a metric thread.
///
/// ```
/// use spile_quantity::Length;
/// let m6 = spile_tables::workshop::clearance(Length::mm(6.0)).unwrap();
/// assert_eq!(m6.value.medium.in_mm(), 6.6);
/// ```
pub fn clearance(thread: Length) -> Option<&'static Entry<Clearance>> {
    clearances().iter().find(|e| (e.value.thread - thread).abs() < Length::mm(1e-3))
}

/// Holes to tap coarse metric threads in, from M4 to M10.
pub fn taps() -> &'static [Entry<Tap>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        thread: f64,
        pitch: f64,
        aluminium: f64,
        steel: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Tap>>> = LazyLock::new(|| {
        FILE.rows("tap", |r: Row| Tap {
            thread: Length::mm(r.thread),
            pitch: Length::mm(r.pitch),
            aluminium: Length::mm(r.aluminium),
            steel: Length::mm(r.steel),
        })
    });
    &ROWS
}

/// Holes for rivet nuts from M3 to M10.
pub fn rivet_nuts() -> &'static [Entry<RivetNut>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        thread: f64,
        hole: f64,
    }
    static ROWS: LazyLock<Vec<Entry<RivetNut>>> = LazyLock::new(|| {
        FILE.rows("rivet_nut", |r: Row| RivetNut {
            thread: Length::mm(r.thread),
            hole: Length::mm(r.hole),
        })
    });
    &ROWS
}

/// Least distances to an edge.
pub fn edge_distances() -> &'static [Entry<EdgeDistance>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        key: String,
        material: String,
        diameters: f64,
        of: Of,
    }
    static ROWS: LazyLock<Vec<Entry<EdgeDistance>>> = LazyLock::new(|| {
        FILE.rows("edge", |Row { key, material, diameters, of }: Row| EdgeDistance {
            key,
            material,
            diameters,
            of,
        })
    });
    &ROWS
}

/// The least distance to an edge of that key.
pub fn edge_distance(key: &str) -> Option<&'static Entry<EdgeDistance>> {
    edge_distances().iter().find(|e| e.value.key == key)
}

/// Sheets as they are sold.
pub fn sheets() -> &'static [Entry<Sheet>] {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Row {
        material: String,
        width: f64,
        length: f64,
    }
    static ROWS: LazyLock<Vec<Entry<Sheet>>> = LazyLock::new(|| {
        FILE.rows("sheet", |r: Row| Sheet {
            material: r.material,
            width: Length::mm(r.width),
            length: Length::mm(r.length),
        })
    });
    &ROWS
}
