//! Published loads of bolts, threads, screws and nails.

use spile_quantity::{Force, Length, Pressure};
use spile_strength::wood::{
    Driven, Lateral, lateral_allowed, reduction, withdrawal, withdrawal_allowed,
};
use spile_strength::{NoAnswer, Ultimate, beam, bolt, sheet, thread, wood};
use spile_tables::fastener;

use crate::{INCH, POUND, near};

/// ISO 898-1 load tables of two fastener sites: thread, class, proof and ultimate load [N], cut off
/// after three digits from areas with more.
const LOADS: [(f64, &str, f64, f64); 10] = [
    (4.0, "8.8", 5_100.0, 7_020.0),
    (5.0, "8.8", 8_230.0, 11_350.0),
    (6.0, "8.8", 11_600.0, 16_100.0),
    (8.0, "8.8", 21_200.0, 29_200.0),
    (10.0, "8.8", 33_700.0, 46_400.0),
    (4.0, "10.9", 7_290.0, 9_130.0),
    (5.0, "10.9", 11_800.0, 14_800.0),
    (6.0, "10.9", 16_700.0, 20_900.0),
    (8.0, "10.9", 30_400.0, 38_100.0),
    (10.0, "10.9", 48_100.0, 60_300.0),
];

#[test]
fn bolts_break_and_yield_where_iso_898_1_prints_it() {
    for (size, class, proof, ultimate) in LOADS {
        let source = format!("ISO 898-1, M{size} {class}");
        let size = Length::mm(size);
        near(&source, bolt::proof(size, class).unwrap().value.0.in_n(), proof, 0.006);
        near(&source, bolt::breaking(size, class).unwrap().value.0.in_n(), ultimate, 0.004);
    }
}

#[test]
fn stress_areas_follow_from_the_thread() {
    // ISO 898-1 load tables, university bolt table: printed to three digits
    for (d, pitch, area) in
        [(4.0, 0.7, 8.78), (5.0, 0.8, 14.2), (6.0, 1.0, 20.1), (8.0, 1.25, 36.6), (10.0, 1.5, 58.0)]
    {
        let got = bolt::stress_area(Length::mm(d), Length::mm(pitch)).unwrap().in_mm2();
        near("ISO 898-1 stress area", got, area, 0.004);
        near(
            "table",
            fastener::thread(Length::mm(d)).unwrap().value.stress_area.in_mm2(),
            got,
            0.004,
        );
    }
}

#[test]
fn threads_strip_over_the_published_areas() {
    // Bickford, Introduction to the Design and Behavior of Bolted Joints, 4th ed., metric appendix
    for (d, bolt_mm2, hole_mm2) in [
        (5.0, 35.366, 49.994),
        (6.0, 51.875, 73.145),
        (8.0, 97.290, 134.63),
        (10.0, 155.80, 214.77),
    ] {
        let size = fastener::thread(Length::mm(d)).unwrap().value;
        let ext = thread::bolt_strip_area(&size, Length::mm(d)).unwrap().in_mm2();
        near("Bickford, bolt threads", ext, bolt_mm2, 2e-4);
        let int = thread::hole_strip_area(&size, Length::mm(d)).unwrap().in_mm2();
        near("Bickford, hole threads", int, hole_mm2, 2e-4);
    }
}

#[test]
fn bolts_bear_what_eurocode_3_works_out() {
    // EN 1993-1-8 table 3.4, a structural library's tests: M20 8.8, 244.794 mm², two planes
    let broken = Force::n(244.794 * 800.0);
    near("EC3 shear", 2.0 * bolt::design_shear(broken, "8.8").0.in_n(), 188_002.0, 5e-4);
    // M20 10.9 with 245 mm² and 1000 MPa
    near("EC3 tension", bolt::design_tension(Force::n(245.0 * 1000.0)).0.in_n(), 176_400.0, 1e-3);
    // table 3.3, 22 mm hole: 26.4 mm is the least edge
    let at = |edge: f64| {
        let [bolt, hole, edge, wall] = [20.0, 22.0, edge, 10.0].map(Length::mm);
        sheet::bearing(bolt, hole, edge, wall, Ultimate(Pressure::mpa(360.0)))
    };
    assert!(at(26.4).is_ok());
    assert!(matches!(at(26.3), Err(NoAnswer::OutOfRange { .. })));
}

#[test]
fn wood_lets_go_where_the_wood_handbook_says() {
    let inch = |inches: f64| Length::mm(inches * INCH);
    let screw = withdrawal(Driven::Screw, 0.70, inch(0.164), inch(1.0)).unwrap();
    near("Wood Handbook, No. 8 in G 0.70", screw.0.in_n() / POUND, 1262.0, 0.001);
    // the metric forms of the same formulas, 108.25 and 54.12 N/mm²
    let [five, thirty] = [5.0, 30.0].map(Length::mm);
    let screw = withdrawal(Driven::Screw, 0.5, five, thirty).unwrap().0.in_n();
    near("Wood Handbook, metric screw", screw, 108.25 * 0.25 * 5.0 * 30.0, 1e-4);
    let nail = withdrawal(Driven::Nail, 0.5, five, thirty).unwrap().0.in_n();
    near("Wood Handbook, metric nail", nail, 54.12 * 0.5_f64.powf(2.5) * 5.0 * 30.0, 1e-3);
    // NDS takes about a fifth of what breaks
    let allowed = withdrawal_allowed(Driven::Screw, 0.5, five, thirty).unwrap().value().in_n();
    near("NDS over Wood Handbook", allowed / screw, 2850.0 / 15_700.0, 1e-6);
}

#[test]
fn wood_may_be_used_as_the_wood_council_works_it_out() {
    let inch = |inches: f64| Length::mm(inches * INCH);
    let nail = withdrawal_allowed(Driven::Nail, 0.42, inch(0.131), inch(2.395)).unwrap();
    near("AWC E2.1a, nail withdrawal", nail.value().in_n() / POUND, 49.5, 0.001);
    let lag = withdrawal_allowed(Driven::Lag, 0.55, inch(0.5), inch(4.0 - 0.3125 - 1.5)).unwrap();
    near("AWC E2.3, lag withdrawal", lag.value().in_n(), 4247.94, 0.001);
    let screw = withdrawal_allowed(Driven::Screw, 0.45, inch(0.190), inch(1.0)).unwrap();
    near("engineering reference page", screw.value().in_n() / POUND, 109.0, 0.01);
    let joint = Lateral {
        diameter: inch(0.148),
        side: inch(0.75),
        main: inch(2.25),
        side_gravity: 0.50,
        main_gravity: 0.50,
        bending: Pressure::pa(90_000.0 * 6894.757),
        reduction: reduction(inch(0.148)).unwrap(),
    };
    let nail = lateral_allowed(&joint).unwrap();
    near("AWC, single-shear nail", nail.value().in_n() / POUND, 105.1, 0.001);
    // E2.4: a No. 10 screw through three pieces, mode IV twice, root diameter 0.152 in
    let screw = Lateral {
        diameter: inch(0.152),
        side: inch(1.5),
        main: inch(3.0),
        side_gravity: 0.55,
        main_gravity: 0.55,
        bending: Pressure::pa(80_000.0 * 6894.757),
        reduction: reduction(inch(0.19)).unwrap(),
    };
    let pounds = 2.0 * lateral_allowed(&screw).unwrap().value().in_n() / POUND;
    near("AWC E2.4, screw in double shear", pounds, 233.71, 0.001);
}

#[test]
fn thin_walls_strip_as_the_trade_says() {
    // trade: a 4.8 mm tapping screw in 1.5 mm of aluminium about 1 kN in test (6063: 152 to 207 MPa)
    let pull = |mpa| {
        let strength = Ultimate(Pressure::mpa(mpa));
        sheet::pull_out(Length::mm(4.8), Length::mm(1.5), strength).unwrap().0.in_n()
    };
    assert!(pull(152.0) < 1000.0 && pull(207.0) > 1000.0);
    // and fewer than two turns of a 4.8 mm screw, pitch 1.6, engage; of M6 just 1.5
    assert!(thread::turns(Length::mm(1.5), Length::mm(1.6)) < 2.0);
    assert!(thread::turns(Length::mm(1.5), Length::mm(1.0)) < 2.0);
    let tapped = |wall| {
        let strength = Ultimate(Pressure::mpa(360.0));
        thread::tapped_wall(Length::mm(6.0), Length::mm(wall), strength).unwrap().0.in_n()
    };
    // proportional to the wall; 6 mm of it is Bickford's area
    near("Bickford, 0.55 of 360 MPa", tapped(6.0), 73.145 * 0.55 * 360.0, 2e-4);
    near("by the wall", tapped(1.5), tapped(6.0) / 4.0, 1e-9);
}

#[test]
fn heads_and_tubes() {
    // NDS 12.2-6 worked by hand: 0.5 in head, G 0.5, 0.5 in: 690·π·0.5·0.25·0.5 = 135.5 lb
    let half = Length::mm(0.5 * INCH);
    let head = wood::head_allowed(half, 0.5, half).unwrap().value().in_n() / POUND;
    near("NDS 12.2-6", head, 135.48, 1e-4);
    // a quarter-inch bolt across Douglas fir: 6100·0.5^1.45/√0.25 = 4,466 psi (NDS table 12.3.3: 4,450)
    let quarter = Length::mm(6.351);
    let bolt = wood::bolt_allowed(quarter, 0.5, Length::mm(INCH)).unwrap().value().in_n() / POUND;
    near("NDS table 12.3.3", bolt / (0.25 * 1.0 / 4.0), 4450.0, 0.006);
    // EN 10219 square tube 20 × 20 × 2: I = 0.69 cm⁴ with round corners (catalogue), 0.74 square
    let tube = beam::Section::tube(Length::mm(20.0), Length::mm(20.0), Length::mm(2.0)).unwrap();
    let sag = beam::sag(
        beam::Held::CantileverEnd,
        Force::n(10.0),
        Length::m(0.5),
        &tube,
        Pressure::mpa(210_000.0),
    );
    // F·L³/(3·E·I) with I = (20⁴ − 16⁴)/12 = 7872 mm⁴
    near(
        "beam table",
        sag.unwrap().in_mm(),
        10.0 * 500.0_f64.powi(3) / (3.0 * 210_000.0 * 7872.0),
        1e-9,
    );
}

#[test]
fn what_no_table_has_is_told() {
    assert!(matches!(bolt::breaking(Length::mm(7.0), "8.8"), Err(NoAnswer::NotInTables { .. })));
    assert!(matches!(bolt::proof(Length::mm(6.0), "A2-70"), Err(NoAnswer::NotInTables { .. })));
    assert!(withdrawal(Driven::Screw, 7.0, Length::mm(4.0), Length::mm(20.0)).is_err());
    let error = bolt::stress_area(Length::mm(6.0), Length::mm(5.0)).unwrap_err();
    assert_eq!(error.to_string(), "pitch is 0.005 m; this holds from 0.0001 to 0.003 m");
}
