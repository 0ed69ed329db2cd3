//! Sun and panels, against NREL's example, FAO 56 and pvlib.

use serde::Deserialize;
use solar_positioning::time::JulianDate;
use solar_positioning::{Location, RefractionCorrection, SolarPositions};
use spile_energy::panel::{
    Array, Controller, Plane, cell_temperature, incidence, let_through, on_plane, panel_power,
    through_glass,
};
use spile_energy::sun::{Light, air_mass, clear_sky, day_outside_air, outside_air, position};
use spile_energy::year::power_of_one;
use spile_quantity::{Angle, Length, Power, Share, Temperature, Time, Voltage};

use crate::{near, reference};

#[derive(Deserialize)]
struct Instant {
    day: usize,
    hour: f64,
    latitude: f64,
    longitude: f64,
    tilt: f64,
    faces: f64,
    altitude: f64,
    linke: f64,
    air: f64,
    zenith: f64,
    azimuth: f64,
    extra: f64,
    air_mass: f64,
    clear_ghi: f64,
    clear_dni: f64,
    clear_dhi: f64,
    aoi: f64,
    sky: f64,
    iam: f64,
    plane: f64,
    cell: f64,
    power: f64,
}

#[derive(Deserialize)]
struct Sun {
    instants: Vec<Instant>,
    year: Year,
}

#[derive(Deserialize)]
struct Year {
    latitude: f64,
    longitude: f64,
    utc_day: Vec<usize>,
    hour: Vec<f64>,
    ghi: Vec<f64>,
    dhi: Vec<f64>,
    air: Vec<f64>,
    month: Vec<usize>,
    plane_sums: Vec<f64>,
    power_sums: Vec<f64>,
}

/// Reda and Andreas, NREL/TP-560-34302 (revised 2008): 17 October 2003, 12:30:30 at UTC − 7 h.
#[test]
fn the_kept_library_gives_nrels_example() {
    let at = JulianDate::from_utc(2003, 10, 17, 19, 30, 30.0, 67.0).unwrap();
    let place = Location { latitude: 39.742476, longitude: -105.1786 };
    let air = RefractionCorrection::new(820.0, 11.0).unwrap();
    let sun = SolarPositions::new().at_from_julian(at, place, 1830.14, Some(air)).unwrap();
    near("zenith", sun.zenith_angle(), 50.111622, 0.0003);
    near("azimuth", sun.azimuth(), 194.340241, 0.0003);
}

/// Same day of the year in 2025: declination and equation of time shift by less than half a degree.
#[test]
fn another_year_is_within_half_a_degree() {
    let sun = position(
        289,
        Time::s(19.0 * 3600.0 + 1830.0),
        Angle::degrees(39.742476),
        Angle::degrees(-105.1786),
    );
    let sun = sun.unwrap();
    near("NREL's example, zenith", sun.zenith.in_degrees(), 50.127954, 0.5);
    near("NREL's example, azimuth", sun.azimuth.in_degrees(), 194.340241, 0.5);
}

/// pvlib 0.16.1, SPA, Spencer, Kasten and Young: the script stands beside the values.
#[test]
fn positions_air_and_clear_skies_are_pvlibs() {
    let all: Sun = reference();
    assert!(all.instants.len() >= 50);
    for case in &all.instants {
        let place = [case.latitude, case.longitude].map(Angle::degrees);
        let day = case.day - 1;
        let sun = position(day, Time::hours(case.hour), place[0], place[1]).unwrap();
        near("zenith", sun.zenith.in_degrees(), case.zenith, 0.012);
        let turned = (sun.azimuth.in_degrees() - case.azimuth + 540.0).rem_euclid(360.0) - 180.0;
        near("azimuth on the sky", turned * case.zenith.to_radians().sin(), 0.0, 0.012);
        let extra = outside_air(day).unwrap();
        near("outside the air", extra, case.extra, 1e-6 * case.extra);
        let mass = air_mass(Angle::degrees(case.zenith)).unwrap();
        near("air mass", mass, case.air_mass, 1e-9 * case.air_mass);
        let exact = spile_energy::sun::Sun {
            zenith: Angle::degrees(case.zenith),
            azimuth: Angle::degrees(case.azimuth),
        };
        let clear = clear_sky(exact, extra, case.linke, Length::m(case.altitude)).unwrap();
        // pvlib takes the pressure from another form of the barometric formula.
        let close = |expected: f64| 0.0005 * expected + 0.01;
        near("clear, global", clear.global_w_per_m2, case.clear_ghi, close(case.clear_ghi));
        near("clear, beam", clear.beam_w_per_m2, case.clear_dni, close(case.clear_dni));
        near("clear, diffuse", clear.diffuse_w_per_m2, case.clear_dhi, close(case.clear_ghi));
    }
}

/// pvlib 0.16.1: Hay and Davies, De Soto's glass, Faiman, PVWatts.
#[test]
fn panels_are_pvlibs() {
    let all: Sun = reference();
    for case in &all.instants {
        let sun = spile_energy::sun::Sun {
            zenith: Angle::degrees(case.zenith),
            azimuth: Angle::degrees(case.azimuth),
        };
        let plane = Plane { tilt: Angle::degrees(case.tilt), faces: Angle::degrees(case.faces) };
        let light = Light {
            global_w_per_m2: case.clear_ghi,
            beam_w_per_m2: case.clear_dni,
            diffuse_w_per_m2: case.clear_dhi,
        };
        let cos = incidence(plane, sun);
        near("incidence", cos, case.aoi.to_radians().cos(), 1e-9);
        let on = on_plane(plane, sun, light, case.extra, Share::percent(20.0)).unwrap();
        near("sky on the plane", on.sky_w_per_m2, case.sky, 1e-6 * (1.0 + case.sky));
        near("light on the plane", on.total(), case.plane, 1e-6 * (1.0 + case.plane));
        near("through the glass", through_glass(cos).unwrap(), case.iam, 1e-9);
        let air = Temperature::celsius(case.air);
        let cell = cell_temperature(case.plane, air, 20.0, 0.0, 1.0).unwrap();
        near("cell", cell.in_celsius(), case.cell, 1e-9 * case.cell.abs());
        let array = Array {
            plane,
            cooling_w_per_m2_k: 20.0,
            per_kelvin: -0.0035,
            losses: Share::percent(0.0),
        };
        let power = power_of_one(&array, sun, light, case.extra, air).unwrap();
        near("power", power.in_w() * 100.0, case.power, 1e-6 * (1.0 + case.power));
    }
}

/// Sums of each month of every third day of a typical year, the same chain in pvlib 0.16.1 with
/// its own positions: within 0.5 %.
#[test]
fn monthly_sums_of_a_real_year_are_pvlibs() {
    let Sun { year, .. } = reference();
    let place = [year.latitude, year.longitude].map(Angle::degrees);
    let plane = Plane { tilt: Angle::degrees(15.0), faces: Angle::degrees(180.0) };
    let array =
        Array { plane, cooling_w_per_m2_k: 20.0, per_kelvin: -0.0035, losses: Share::percent(0.0) };
    let mut sums = [[0.0; 2]; 12];
    for at in 0..year.ghi.len() {
        let day = year.utc_day[at] - 1;
        let sun = position(day, Time::hours(year.hour[at]), place[0], place[1]).unwrap();
        let (ghi, dhi) = (year.ghi[at], year.dhi[at]);
        let high = sun.zenith.in_degrees() < 87.0;
        let light = Light {
            global_w_per_m2: ghi,
            beam_w_per_m2: if high { (ghi - dhi) / sun.height() } else { 0.0 },
            diffuse_w_per_m2: if high { dhi } else { ghi },
        };
        let outside = outside_air(day).unwrap();
        let air = Temperature::celsius(year.air[at]);
        let month = &mut sums[year.month[at] - 1];
        month[0] += on_plane(plane, sun, light, outside, Share::percent(20.0)).unwrap().total();
        month[1] += power_of_one(&array, sun, light, outside, air).unwrap().in_w() * 100.0;
    }
    for (month, [plane, power]) in sums.into_iter().enumerate() {
        let what = format!("TMY3 723170, month {}", month + 1);
        near(&what, plane, year.plane_sums[month], 0.005 * year.plane_sums[month]);
        near(&what, power, year.power_sums[month], 0.005 * year.power_sums[month]);
    }
}

/// FAO 56 (1998), table 2.6 of its annex, extraterrestrial radiation on the 15th [MJ/m² a day],
/// from memory, and its examples 8 and 9.
#[test]
fn days_outside_the_air_are_faos() {
    let (sun, daylight) = day_outside_air(245, Angle::degrees(-20.0)).unwrap();
    near("FAO 56, example 8", sun / 1e6, 32.2, 0.05);
    near("FAO 56, example 9", daylight.in_hours(), 11.66559, 0.005);
    // The sun that our own hours of the same day add up to: another formula for the same thing.
    let mut hours = 0.0;
    for quarter in 0..96 {
        let at = Time::s((f64::from(quarter) + 0.5) * 900.0);
        let up = position(245, at, Angle::degrees(-20.0), Angle::degrees(0.0)).unwrap();
        hours += up.height().max(0.0) * outside_air(245).unwrap() * 900.0;
    }
    near("example 8 from the sun's path", hours / 1e6, 32.2, 0.32);
    let dark = day_outside_air(354, Angle::degrees(75.0)).unwrap();
    assert_eq!((dark.0, dark.1.in_hours()), (0.0, 0.0), "no sun at 75° N at the solstice");
    let bright = day_outside_air(171, Angle::degrees(75.0)).unwrap();
    near("the sun does not set there in June", bright.1.in_hours(), 24.0, 1e-9);
}

#[test]
fn nothing_is_said_outside_the_range() {
    let degrees = Angle::degrees;
    assert!(position(365, Time::s(0.0), degrees(0.0), degrees(0.0)).is_err());
    assert!(position(0, Time::s(0.0), degrees(91.0), degrees(0.0)).is_err());
    assert!(air_mass(degrees(91.0)).is_err());
    assert!(day_outside_air(0, degrees(f64::NAN)).is_err());
    assert!(panel_power(Power::w(-1.0), 1.0, Temperature::celsius(0.0), -0.004).is_err());
    let plain = Controller::Switching { panel: Voltage::v(12.0) };
    assert!(let_through(plain, Voltage::v(13.5)).is_err());
    let told = through_glass(1.5).unwrap_err().to_string();
    assert_eq!(told, "cosine of incidence is 1.5 , and the formula holds from -1 to 1 ");
}
