//! What holds for every table whatever it says.

use std::collections::BTreeSet;

use spile_tables::{Status, ampacity, conductor, fault, fuse, source, sources, tables};

#[test]
fn every_reader_reads_its_rows() {
    // A reader that does not match its table panics with file, table and row.
    let rows = [
        conductor::metric_sizes().len(),
        conductor::awg_sizes().len(),
        conductor::sae_sizes().len(),
        conductor::materials().len(),
        conductor::drop_constants().len(),
        2 * usize::from(
            conductor::greatest_drop(conductor::Service::Critical).value
                < conductor::greatest_drop(conductor::Service::Other).value,
        ),
        ampacity::boat_currents().len(),
        ampacity::engine_space_factors().len(),
        ampacity::bundles().len(),
        ampacity::metric_currents().len(),
        ampacity::pvc_currents(ampacity::Laid::FreeAir).count(),
        ampacity::ambient_factors().len(),
        ampacity::grouping_factors().len(),
        4 * usize::from(
            ampacity::laying().value.support > ampacity::laying().value.support_battery_cable,
        ),
        fuse::envelopes().iter().map(|e| e.value.points.len()).sum(),
        fuse::ratings().len(),
        fuse::breakings().len(),
        fuse::ambient_shares().len(),
        fuse::distances().len(),
        fuse::breaking_by_battery().len(),
        fault::metals().len(),
        fault::adiabatics().len(),
    ];
    let known: BTreeSet<usize> = tables().iter().map(|t| t.rows).collect();
    for count in rows {
        assert!(known.contains(&count), "no table has {count} rows");
    }
}

#[test]
fn every_table_has_a_title_a_source_and_a_unit_a_column() {
    let all = tables();
    assert!(!all.is_empty());
    for t in &all {
        let name = format!("{}.{}", t.file, t.name);
        assert!(!t.title.is_empty() && t.rows > 0, "{name}");
        assert_eq!(source(&t.source.key), Some(t.source), "{name}");
        let names: BTreeSet<_> = t.columns.iter().map(|c| c.0).collect();
        assert_eq!(names.len(), t.columns.len(), "{name}: a column twice");
        assert!(
            t.columns.iter().all(|(column, unit)| !column.is_empty() && !unit.is_empty()),
            "{name}"
        );
    }
}

#[test]
fn no_table_claims_more_than_its_source_was_seen() {
    for t in tables() {
        if t.source.status == Status::FromMemory {
            assert_ne!(t.status, Status::Verified, "{}.{}", t.file, t.name);
        }
    }
}

#[test]
fn every_source_is_told_in_full_and_once() {
    let keys: BTreeSet<_> = sources().iter().map(|s| s.key.as_str()).collect();
    assert_eq!(keys.len(), sources().len());
    for s in sources() {
        assert!(!s.title.is_empty() && !s.edition.is_empty() && !s.seen.is_empty(), "{}", s.key);
    }
}

#[test]
fn an_unknown_source_is_none() {
    assert_eq!(source("nobody"), None);
}
