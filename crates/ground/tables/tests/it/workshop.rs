//! Holes, edges and sheets against the printed pages.

use spile_quantity::Length;
use spile_tables::workshop::{
    Of, clearance, clearances, edge_distance, edge_distances, rivet_nuts, sheets, taps,
};
use spile_tables::{Class, Status};

use crate::near;

#[test]
fn clearance_holes_of_iso_273() {
    // Thread, fine, medium, coarse [mm].
    for (m, fine, medium, coarse) in
        [(4.0, 4.3, 4.5, 4.8), (6.0, 6.4, 6.6, 7.0), (10.0, 10.5, 11.0, 12.0)]
    {
        let hole = clearance(Length::mm(m)).unwrap().value;
        for (got, expected) in [(hole.fine, fine), (hole.medium, medium), (hole.coarse, coarse)] {
            near(&format!("M{m}"), got.in_mm(), expected, 1e-9);
        }
    }
    for entry in clearances() {
        let h = entry.value;
        assert!(h.thread < h.fine && h.fine < h.medium && h.medium < h.coarse);
    }
    assert!(clearance(Length::mm(7.0)).is_none());
}

#[test]
fn tap_drills_are_diameter_less_pitch() {
    // The charts' own rule, to the next drill of 0.1 mm; less thread, larger hole.
    for entry in taps() {
        let t = entry.value;
        assert!((t.aluminium - (t.thread - t.pitch)).abs() <= Length::mm(0.051), "{t:?}");
        assert!(t.aluminium < t.steel && t.steel < t.thread, "{t:?}");
    }
}

#[test]
fn a_rivet_nut_needs_more_than_its_screw() {
    for entry in rivet_nuts() {
        assert!(entry.value.hole > clearance(entry.value.thread).unwrap().value.coarse);
        assert_eq!(entry.status, Status::FromMemory);
    }
}

#[test]
fn edges() {
    // EN 1993-1-8 table 3.3: 1.2 hole diameters at least, 2 recommended for e1.
    for (key, diameters, of) in [
        ("steel-least", 1.2, Of::Hole),
        ("steel-full", 2.0, Of::Hole),
        ("metal", 2.0, Of::Fastener),
        ("plywood", 4.0, Of::Fastener),
    ] {
        let edge = edge_distance(key).unwrap();
        assert_eq!((edge.value.diameters, edge.value.of), (diameters, of), "{key}");
    }
    for entry in edge_distances() {
        assert_eq!(entry.class, Class::Practice);
        assert!((1.2..=7.0).contains(&entry.value.diameters), "{}", entry.value.key);
    }
}

#[test]
fn sheets_are_the_sizes_carried_home() {
    // US plywood is 4 ft × 8 ft.
    let us = &sheets().iter().find(|e| e.value.material == "plywood, US").unwrap().value;
    near("width", us.width.in_mm(), 4.0 * 304.8, 1e-12);
    near("length", us.length.in_mm(), 8.0 * 304.8, 1e-12);
    for entry in sheets() {
        let s = &entry.value;
        assert!(s.width <= s.length && s.length <= Length::m(3.0), "{}", s.material);
    }
}
