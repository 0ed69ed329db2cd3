//! What holds for every table whatever it says.

use std::collections::BTreeSet;

use spile_tables::{
    Status, ampacity, axle, battery, charging, clearness, climate, cold, conductor, fastener,
    fault, fuse, load, plate, source, sources, tables, typical_keys, workshop,
};

/// Each table with how many rows its reader makes of it. A reader that does not match its table
/// panics with file, table and row.
fn readers() -> Vec<(&'static str, usize)> {
    let (service, laid) = (conductor::Service::Critical, ampacity::Laid::FreeAir);
    let continuous = [&fuse::continuous().at_25c, &fuse::continuous().over_3h];
    let p = fuse::protection();
    let protection = [&p.tripping_blade, &p.tripping_over_cable, &p.fuse_over_cable_boat];
    assert!(conductor::greatest_drop(service).value > 0.0);
    let fuses = || fuse::ratings().iter().map(|e| (e.value.family, e.value.current));
    vec![
        ("iec60228", conductor::metric_sizes().len()),
        ("nec_table8", conductor::awg_sizes().len()),
        ("sae_gauge", conductor::sae_sizes().len()),
        ("material", conductor::materials().len()),
        ("drop_constant", conductor::drop_constants().len()),
        ("load_index", axle::tyre_loads().len()),
        ("balance", axle::balances().len()),
        ("cfr_183_425", ampacity::boat_currents().len()),
        ("engine_space", ampacity::engine_space_factors().len()),
        ("bundle_boat", ampacity::bundles().len()),
        ("iso10133_annex_a", ampacity::metric_currents().len()),
        ("iec60364", ampacity::pvc_currents(laid).count()),
        ("iec60364_ambient", ampacity::ambient_factors().len()),
        ("iec60364_grouping", ampacity::grouping_factors().len()),
        ("time_current", fuse::envelopes().iter().map(|e| e.value.points.len()).sum()),
        ("rating", fuse::ratings().len()),
        ("rated_drop", fuses().filter(|&(f, i)| fuse::rated_drop(f, i).is_some()).count()),
        ("breaking", fuse::breakings().len()),
        ("continuous", continuous.len()),
        ("ambient", fuse::ambient_shares().len()),
        ("protection", protection.len()),
        ("distance", fuse::distances().len()),
        ("breaking_by_battery", fuse::breaking_by_battery().len()),
        ("adiabatic_metal", fault::metals().len()),
        ("adiabatic_k", fault::adiabatics().len()),
        ("ocv", battery::resting_voltages().iter().map(|e| e.value.points.len()).sum()),
        ("charge_temperature", charging::charge_temperatures().len()),
        ("clearness_range", clearness::ranges().len()),
        ("clearness_transition", clearness::transitions().len()),
        ("city", climate::cities().len()),
        ("insulation", cold::insulations().len()),
        ("surface", cold::surfaces().len()),
        ("food", cold::foods().len()),
        ("climate_class", cold::climate_classes().len()),
        ("produce_life", cold::produce_lives().len()),
        ("prepared_life", cold::prepared_lives().len()),
        ("clearance", workshop::clearances().len()),
        ("tap", workshop::taps().len()),
        ("rivet_nut", workshop::rivet_nuts().len()),
        ("edge", workshop::edge_distances().len()),
        ("sheet", workshop::sheets().len()),
        ("bolt_class", fastener::bolt_classes().iter().filter(|e| e.value.proof.is_some()).count()),
        (
            "stainless_class",
            fastener::bolt_classes().iter().filter(|e| e.value.proof.is_none()).count(),
        ),
        ("thread", fastener::threads().len()),
        ("wood", fastener::woods().len()),
        ("sheet_metal", fastener::sheet_metals().len()),
        ("aluminium", fastener::aluminium().len()),
        ("bending", fastener::bendings().len()),
        ("pull_out", fastener::pull_outs().len()),
        ("latch", fastener::latches().len()),
        ("adhesive", fastener::adhesives().len()),
        ("load_case", load::load_cases().len()),
        ("clamped_uniform", plate::clamped().len()),
        ("supported_central", plate::central().len()),
        ("gas_constant", 6),
        ("gas_stationary", battery::gas_stationary().len()),
        ("gas_traction", battery::gas_traction().len()),
        ("typical", typical_keys().count()),
    ]
}

#[test]
fn every_reader_reads_every_row() {
    for (name, rows) in readers() {
        let table = tables().into_iter().find(|t| t.name == name);
        assert_eq!(table.map(|t| t.rows), Some(rows), "{name}");
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
