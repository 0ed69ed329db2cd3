//! Where the sun is, how strong it is outside the air, and what a clear sky lets through.

use std::f64::consts::PI;

use solar_positioning::time::JulianDate;
use solar_positioning::{Location, SolarPositions};
use spile_quantity::{Angle, Length, Time};

use crate::error::{EnergyError, within};

/// The sun's strength outside the air at its mean distance \[W/m²\]: the 0.0820 MJ/(m²·min) of
/// FAO 56 to its rounding, and ASTM E490.
pub const SOLAR_CONSTANT_W_PER_M2: f64 = 1366.1;

/// Midnight of 1 January 2025, universal time.
const YEAR_BEGINS_JD: f64 = 2_460_676.5;
/// Terrestrial over universal time \[s\] in that year.
const DELTA_T_S: f64 = 69.0;

/// A place of the sun in the sky, without refraction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sun {
    /// From straight up.
    pub zenith: Angle,
    /// Clockwise from north.
    pub azimuth: Angle,
}

impl Sun {
    /// The sine of its height: what falls on level ground of a beam.
    pub fn height(&self) -> f64 {
        self.zenith.in_rad().cos()
    }
}

/// Light on level ground and straight from the sun.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Light {
    /// On level ground, all of it \[W/m²\].
    pub global_w_per_m2: f64,
    /// On a plane that faces the sun, straight from it \[W/m²\].
    pub beam_w_per_m2: f64,
    /// On level ground, from all the rest of the sky \[W/m²\].
    pub diffuse_w_per_m2: f64,
}

/// The sun's zenith angle and azimuth \[rad\], seen from sea level without refraction.
///
/// **Formula** algorithm 3 of Grena, by the library `solar-positioning`, for the year 2025
///
/// **Arguments** `day` from 0, 1 January, to 364; `time` since midnight, universal time \[s\] 0 to
/// 86 400; `latitude` −90 to 90°; `longitude`, east positive, −180 to 180°
///
/// **Validity** 0.01° in 2025; any other common year from 2010 to 2110 is within 0.5° of it.
///
/// **Errors** an argument out of range.
///
/// **Source** Grena, Solar Energy 86 (2012) 1323, algorithm 3.
///
/// **Example** in the tests, against NREL's SPA.
pub fn position(
    day: usize,
    time: Time,
    latitude: Angle,
    longitude: Angle,
) -> Result<Sun, EnergyError> {
    within("day of the year", day as f64, "days", 0.0, 364.0)?;
    let time_s = within("time of day", time.in_s(), "s", 0.0, 86_400.0)?;
    let place = Location {
        latitude: within("latitude", latitude.in_degrees(), "°", -90.0, 90.0)?,
        longitude: within("longitude", longitude.in_degrees(), "°", -180.0, 180.0)?,
    };
    let julian_day = YEAR_BEGINS_JD + day as f64 + time_s / 86_400.0;
    let found = JulianDate::new(julian_day, DELTA_T_S)
        .and_then(|at| SolarPositions::grena3().at_from_julian(at, place, 0.0, None));
    found
        .map(|sun| Sun {
            zenith: Angle::degrees(sun.zenith_angle()),
            azimuth: Angle::degrees(sun.azimuth()),
        })
        .map_err(|_| EnergyError::OutOfRange {
            what: "Julian day",
            value: julian_day,
            unit: "days",
            low: YEAR_BEGINS_JD,
            high: YEAR_BEGINS_JD + 365.0,
        })
}

/// The sun's strength outside the air on a plane that faces it, E₀ \[W/m²\].
///
/// **Formula** E₀ = 1366.1·(1.00011 + 0.034221·cos Γ + 0.00128·sin Γ + 0.000719·cos 2Γ +
/// 0.000077·sin 2Γ), Γ = 2π·day/365
///
/// **Arguments** `day` from 0 to 364
///
/// **Validity** 0.01 %.
///
/// **Errors** a day out of range.
///
/// **Source** Spencer, Search 2 (1971) 172, as in `pvlib`.
///
/// **Example** the earth is nearest early in January:
///
/// ```
/// use spile_energy::sun::outside_air;
/// assert!((outside_air(3)? / 1366.1 - 1.0351).abs() < 0.0001);
/// # Ok::<(), spile_energy::EnergyError>(())
/// ```
pub fn outside_air(day: usize) -> Result<f64, EnergyError> {
    let day = within("day of the year", day as f64, "days", 0.0, 364.0)?;
    let angle = 2.0 * PI * day / 365.0;
    let nearness = 1.00011
        + 0.034_221 * angle.cos()
        + 0.001_28 * angle.sin()
        + 0.000_719 * (2.0 * angle).cos()
        + 0.000_077 * (2.0 * angle).sin();
    Ok(SOLAR_CONSTANT_W_PER_M2 * nearness)
}

/// A day's sun outside the air over level ground, Ra \[J/m²\], and the daylight N \[s\].
///
/// **Formula** Ra = (24·60/π)·0.0820·dr·(ωs·sin φ·sin δ + cos φ·cos δ·sin ωs), N = 24·ωs/π,
/// dr = 1 + 0.033·cos(2πJ/365), δ = 0.409·sin(2πJ/365 − 1.39), ωs = arccos(−tan φ·tan δ)
///
/// **Arguments** `day` from 0 to 364 (J is one more); `latitude` −90 to 90°
///
/// **Validity** 1 % near the tropics, 5 % at 60° in spring and autumn, where half a degree of
/// declination is much; where the sun does not set ωs is π, where it does not rise 0.
///
/// **Errors** an argument out of range.
///
/// **Source** FAO Irrigation and Drainage Paper 56 (1998), equations 21 to 25 and 34.
///
/// **Example** 8 and 9 of the paper: 3 September at 20° S has 32.2 MJ/m² and 11.7 h:
///
/// ```
/// use spile_energy::sun::day_outside_air;
/// use spile_quantity::Angle;
/// let (sun_j_per_m2, daylight) = day_outside_air(245, Angle::degrees(-20.0))?;
/// assert!((sun_j_per_m2 / 1e6 - 32.2).abs() < 0.05);
/// assert!((daylight.in_hours() - 11.7).abs() < 0.05);
/// # Ok::<(), spile_energy::EnergyError>(())
/// ```
pub fn day_outside_air(day: usize, latitude: Angle) -> Result<(f64, Time), EnergyError> {
    let angle = 2.0 * PI * (within("day of the year", day as f64, "days", 0.0, 364.0)? + 1.0);
    let angle = angle / 365.0;
    let phi = within("latitude", latitude.in_degrees(), "°", -90.0, 90.0)?.to_radians();
    let nearness = 1.0 + 0.033 * angle.cos();
    let delta = 0.409 * (angle - 1.39).sin();
    let sunset = (-phi.tan() * delta.tan()).clamp(-1.0, 1.0).acos();
    let mj = 24.0 * 60.0 / PI
        * 0.0820
        * nearness
        * (sunset * phi.sin() * delta.sin() + phi.cos() * delta.cos() * sunset.sin());
    Ok((mj.max(0.0) * 1e6, Time::hours(24.0 * sunset / PI)))
}

/// The way of light through the air over that from straight above, m \[1\], at sea level.
///
/// **Formula** m = 1/(cos z + 0.50572·(96.07995 − z)^−1.6364), z in degrees
///
/// **Arguments** `zenith` 0 to 90°
///
/// **Validity** the sun above the horizon.
///
/// **Errors** a zenith angle out of range.
///
/// **Source** Kasten and Young, Applied Optics 28 (1989) 4735.
///
/// **Example** 38 at the horizon, as the authors give:
///
/// ```
/// use spile_energy::sun::air_mass;
/// use spile_quantity::Angle;
/// assert!((air_mass(Angle::degrees(90.0))? - 37.92).abs() < 0.01);
/// # Ok::<(), spile_energy::EnergyError>(())
/// ```
pub fn air_mass(zenith: Angle) -> Result<f64, EnergyError> {
    let z = within("zenith angle", zenith.in_degrees(), "°", 0.0, 90.0)?;
    Ok(1.0 / (z.to_radians().cos() + 0.50572 * (96.07995 - z).powf(-1.6364)))
}

/// Light under a clear sky \[W/m²\].
///
/// **Formula** G = cg1·E₀·cos z·exp(−cg2·m·(f1 + f2·(T − 1))), B = min(b·E₀·exp(−0.09·m·(T − 1)),
/// G·(1 − (0.1 − 0.2·e^−T)/(0.1 + 0.882/f1))/cos z), f1 = exp(−h/8000), f2 = exp(−h/1250),
/// cg1 = 5.09e−5·h + 0.868, cg2 = 3.92e−5·h + 0.0387, b = 0.664 + 0.163/f1; m is corrected for the
/// height by (1 − 2.25577e−5·h)^5.25588
///
/// **Arguments** `sun`; `outside_w_per_m2` E₀; `turbidity` Linke's T, 1 to 10; `height` h above the
/// sea \[m\] 0 to 5000
///
/// **Validity** the sun above the horizon; below it, no light.
///
/// **Errors** an argument out of range.
///
/// **Source** Ineichen and Perez, Solar Energy 73 (2002) 151, with the coefficient of the beam as
/// in `pvlib`.
///
/// **Example** in the tests, against `pvlib`.
pub fn clear_sky(
    sun: Sun,
    outside_w_per_m2: f64,
    turbidity: f64,
    height: Length,
) -> Result<Light, EnergyError> {
    let turbidity = within("Linke turbidity", turbidity, "", 1.0, 10.0)?;
    let height_m = within("height above the sea", height.in_m(), "m", 0.0, 5000.0)?;
    let outside_w_per_m2 = within("sun outside", outside_w_per_m2, "W/m²", 1300.0, 1450.0)?;
    let cos_z = sun.height();
    if cos_z <= 0.0 {
        return Ok(Light { global_w_per_m2: 0.0, beam_w_per_m2: 0.0, diffuse_w_per_m2: 0.0 });
    }
    let pressure_share = (1.0 - 2.25577e-5 * height_m).powf(5.25588);
    let mass = air_mass(sun.zenith)? * pressure_share;
    let f1 = (-height_m / 8000.0).exp();
    let f2 = (-height_m / 1250.0).exp();
    let cg1 = 5.09e-5 * height_m + 0.868;
    let cg2 = 3.92e-5 * height_m + 0.0387;
    let through = (-cg2 * mass * (f1 + f2 * (turbidity - 1.0))).exp();
    let global_w_per_m2 = cg1 * outside_w_per_m2 * cos_z * through;
    let b = 0.664 + 0.163 / f1;
    let beam = b * outside_w_per_m2 * (-0.09 * mass * (turbidity - 1.0)).exp();
    let least_diffuse = (0.1 - 0.2 * (-turbidity).exp()) / (0.1 + 0.882 / f1);
    let beam_w_per_m2 = beam.min(global_w_per_m2 * (1.0 - least_diffuse).max(0.0) / cos_z);
    Ok(Light {
        global_w_per_m2,
        beam_w_per_m2,
        diffuse_w_per_m2: global_w_per_m2 - beam_w_per_m2 * cos_z,
    })
}
