//! What falls on a panel, how warm its cells get, and what they and the controller give.

use spile_quantity::{Angle, Power, Share, Temperature, Voltage};

use crate::error::{EnergyError, not_negative, positive, within};
use crate::sun::{Light, Sun};

/// How a panel lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plane {
    /// From level.
    pub tilt: Angle,
    /// Which way it looks, clockwise from north.
    pub faces: Angle,
}

impl Plane {
    /// Flat on a roof.
    pub const FLAT: Self = Self { tilt: Angle::rad(0.0), faces: Angle::rad(0.0) };
}

/// Panels as they are mounted and wired.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Array {
    /// How they lie.
    pub plane: Plane,
    /// Heat that they give off for each kelvin \[W/(m²·K)\].
    pub cooling_w_per_m2_k: f64,
    /// What their power changes by for each kelvin, a share: negative.
    pub per_kelvin: f64,
    /// What dirt, wiring, mismatch, shade and the controller take.
    pub losses: Share,
}

/// What keeps a panel from charging a battery too far.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Controller {
    /// It finds the voltage at which the panel gives most.
    Tracking {
        /// What comes out per what goes in.
        efficiency: Share,
    },
    /// It switches the panel straight onto the battery.
    Switching {
        /// The panel's voltage where it gives most.
        panel: Voltage,
    },
}

/// Light on a plane \[W/m²\], by where it comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnPlane {
    /// Straight from the sun.
    pub direct_w_per_m2: f64,
    /// From the sky, the glow round the sun in it.
    pub sky_w_per_m2: f64,
    /// From the ground.
    pub ground_w_per_m2: f64,
}

impl OnPlane {
    /// All of it.
    pub fn total(&self) -> f64 {
        self.direct_w_per_m2 + self.sky_w_per_m2 + self.ground_w_per_m2
    }
}

/// The cosine of the angle at which the sun meets a plane, cos θ \[1\]; negative from behind.
///
/// **Formula** cos θ = cos β·cos z + sin β·sin z·cos(γs − γ)
///
/// **Arguments** `plane` tilt β and azimuth γ; `sun` zenith z and azimuth γs
///
/// **Validity** everywhere.
///
/// **Errors** none.
///
/// **Source** Duffie and Beckman, Solar Engineering of Thermal Processes, 4th ed., equation 1.6.3.
///
/// **Example** 1 where the sun stands square to it, in the tests against `pvlib`.
pub fn incidence(plane: Plane, sun: Sun) -> f64 {
    let (tilt, z) = (plane.tilt.in_rad(), sun.zenith.in_rad());
    let turned = (sun.azimuth - plane.faces).in_rad();
    (tilt.cos() * z.cos() + tilt.sin() * z.sin() * turned.cos()).clamp(-1.0, 1.0)
}

/// Light on a plane \[W/m²\].
///
/// **Formula** D = B·max(cos θ, 0); S = d·((B/E₀)·Rb + (1 − B/E₀)·(1 + cos β)/2),
/// Rb = max(cos θ, 0)/max(cos z, 0.01745); R = G·ρ·(1 − cos β)/2
///
/// **Arguments** `light` \[W/m²\] 0 or more; `outside_w_per_m2` E₀; `ground` ρ, what the ground
/// reflects, 0 to 1
///
/// **Validity** the sun more than 1° above the horizon; below that Rb is held, as in `pvlib`.
///
/// **Errors** an argument out of range.
///
/// **Source** Hay and Davies, First Canadian Solar Radiation Data Workshop (1980) 59.
///
/// **Example** level ground gets back what it was given, in the tests.
pub fn on_plane(
    plane: Plane,
    sun: Sun,
    light: Light,
    outside_w_per_m2: f64,
    ground: Share,
) -> Result<OnPlane, EnergyError> {
    let outside = positive("sun outside", outside_w_per_m2, "W/m²")?;
    let global = not_negative("global irradiance", light.global_w_per_m2, "W/m²")?;
    let beam = not_negative("beam irradiance", light.beam_w_per_m2, "W/m²")?;
    let diffuse = not_negative("diffuse irradiance", light.diffuse_w_per_m2, "W/m²")?;
    let ground = within("share that the ground reflects", ground.in_of_one(), "", 0.0, 1.0)?;
    let cos_theta = incidence(plane, sun).max(0.0);
    let cos_tilt = plane.tilt.in_rad().cos();
    let anisotropy = beam / outside;
    let ratio = cos_theta / sun.height().max(0.017_45);
    Ok(OnPlane {
        direct_w_per_m2: beam * cos_theta,
        sky_w_per_m2: diffuse
            * (anisotropy * ratio + ((1.0 - anisotropy) * (1.0 + cos_tilt) / 2.0).max(0.0)),
        ground_w_per_m2: global * ground * (1.0 - cos_tilt) / 2.0,
    })
}

/// The share of a beam that passes a panel's glass, over that at square incidence, K \[1\].
///
/// **Formula** Snell's and Fresnel's laws for glass of n = 1.526, Bouguer's for 2 mm of 4 /m
///
/// **Arguments** `cos_theta` −1 to 1; from behind nothing passes
///
/// **Validity** glass without a coating; the light of the sky is not put through it, as in PVWatts.
///
/// **Errors** a cosine out of range.
///
/// **Source** De Soto, Klein and Beckman, Solar Energy 80 (2006) 78, as in `pvlib`.
///
/// **Example** 1 at square incidence; against `pvlib` in the tests.
pub fn through_glass(cos_theta: f64) -> Result<f64, EnergyError> {
    const N: f64 = 1.526;
    const KL: f64 = 4.0 * 0.002;
    let cos1 = within("cosine of incidence", cos_theta, "", -1.0, 1.0)?;
    if cos1 <= 0.0 {
        return Ok(0.0);
    }
    let sin2 = (1.0 - cos1 * cos1).sqrt() / N;
    let cos2 = (1.0 - sin2 * sin2).sqrt();
    let across = ((cos1 - N * cos2) / (cos1 + N * cos2)).powi(2);
    let along = ((cos2 - N * cos1) / (cos2 + N * cos1)).powi(2);
    let square = ((1.0 - N) / (1.0 + N)).powi(2);
    let passes = (1.0 - (across + along) / 2.0) * (-KL / cos2).exp();
    Ok(passes / ((1.0 - square) * (-KL).exp()))
}

/// Temperature of a panel's cells \[°C\].
///
/// **Formula** T = Ta + G/(u0 + u1·v)
///
/// **Arguments** `irradiance_w_per_m2` G, 0 or more; `air` Ta; `still_w_per_m2_k` u0, above 0;
/// `wind_j_per_m3_k` u1, 0 or more, for each m/s of `wind_m_per_s`
///
/// **Validity** steady within an hour. Open racks have u0 = 25 and u1 = 6.84 (the paper's means);
/// flat on a roof the back is closed and about 20 and 0 remain (common practice, no source).
///
/// **Errors** an argument out of range.
///
/// **Source** Faiman, Progress in Photovoltaics 16 (2008) 307.
///
/// **Example** 900 W/m², of which 0.9·(1 − 0.1) stays as heat, u0 = 29: 45.1 °C, as a library's
/// test has it:
///
/// ```
/// use spile_energy::panel::cell_temperature;
/// use spile_quantity::Temperature;
/// let cell = cell_temperature(900.0 * 0.9 * 0.9, Temperature::celsius(20.0), 29.0, 0.0, 5.0)?;
/// assert!((cell.in_celsius() - 45.137).abs() < 0.002);
/// # Ok::<(), spile_energy::EnergyError>(())
/// ```
pub fn cell_temperature(
    irradiance_w_per_m2: f64,
    air: Temperature,
    still_w_per_m2_k: f64,
    wind_j_per_m3_k: f64,
    wind_m_per_s: f64,
) -> Result<Temperature, EnergyError> {
    let irradiance = not_negative("irradiance", irradiance_w_per_m2, "W/m²")?;
    let still = positive("heat given off in still air", still_w_per_m2_k, "W/(m²·K)")?;
    let moved = not_negative("heat given off for wind", wind_j_per_m3_k, "J/(m³·K)")?;
    let wind = not_negative("wind", wind_m_per_s, "m/s")?;
    let rise_k = irradiance / (still + moved * wind);
    Ok(Temperature::celsius(air.in_celsius() + rise_k))
}

/// Power of a panel, P \[W\].
///
/// **Formula** P = P₀·G/1000·(1 + γ·(T − 25 °C)), not below zero
///
/// **Arguments** `rated` P₀ \[W\] 0 or more; `irradiance_w_per_m2` G, 0 or more; `cell` T; `per_kelvin` γ
/// \[1/K\] −0.01 to 0
///
/// **Validity** crystalline panels; weak light gives a little less.
///
/// **Errors** an argument out of range.
///
/// **Source** PVWatts version 5 (Dobos, NREL/TP-6A20-62641, 2014).
///
/// **Example** of a library's test, 88.65 W:
///
/// ```
/// use spile_energy::panel::panel_power;
/// use spile_quantity::{Power, Temperature};
/// let power = panel_power(Power::w(100.0), 900.0, Temperature::celsius(30.0), -0.003)?;
/// assert!((power.in_w() - 88.65).abs() < 1e-9);
/// # Ok::<(), spile_energy::EnergyError>(())
/// ```
pub fn panel_power(
    rated: Power,
    irradiance_w_per_m2: f64,
    cell: Temperature,
    per_kelvin: f64,
) -> Result<Power, EnergyError> {
    let rated_w = not_negative("rated power", rated.in_w(), "W")?;
    let irradiance = not_negative("irradiance", irradiance_w_per_m2, "W/m²")?;
    let slope = within("temperature coefficient", per_kelvin, "1/K", -0.01, 0.0)?;
    let warm = (1.0 + slope * (cell.in_celsius() - 25.0)).max(0.0);
    Ok(Power::w(rated_w * irradiance / 1000.0 * warm))
}

/// Losses one after the other, L \[1\].
///
/// **Formula** L = 1 − Π(1 − Lᵢ)
///
/// **Arguments** each 0 to 1
///
/// **Validity** losses that do not know of each other.
///
/// **Errors** a loss out of range.
///
/// **Source** PVWatts version 5 (Dobos, NREL/TP-6A20-62641, 2014), equation 8.
///
/// **Example** its usual losses come to 14.08 %:
///
/// ```
/// use spile_energy::panel::losses;
/// use spile_quantity::Share;
/// let usual = [2.0, 3.0, 0.0, 2.0, 2.0, 0.5, 1.5, 1.0, 0.0, 3.0].map(Share::percent);
/// assert!((losses(&usual)?.in_percent() - 14.075_660_688).abs() < 1e-9);
/// # Ok::<(), spile_energy::EnergyError>(())
/// ```
pub fn losses(each: &[Share]) -> Result<Share, EnergyError> {
    let mut left = 1.0;
    for loss in each {
        left *= 1.0 - within("loss", loss.in_of_one(), "", 0.0, 1.0)?;
    }
    Ok(Share::of_one(1.0 - left))
}

/// What a controller lets through of a panel's power, η \[1\].
///
/// **Formula** tracking: its efficiency; switching: Ubattery/Upanel, at most 1
///
/// **Arguments** `battery` \[V\] above 0; efficiency 0 to 1; panel voltage \[V\] above 0
///
/// **Validity** switching: the panel's current is taken as that at its best power, and a panel of
/// less voltage than the battery would give nothing: that is an error here.
///
/// **Errors** an argument out of range.
///
/// **Source** common practice, no source.
///
/// **Example** a panel of 18 V on 13.5 V gives three quarters:
///
/// ```
/// use spile_energy::panel::{Controller, let_through};
/// use spile_quantity::Voltage;
/// let plain = Controller::Switching { panel: Voltage::v(18.0) };
/// assert_eq!(let_through(plain, Voltage::v(13.5))?.in_percent(), 75.0);
/// # Ok::<(), spile_energy::EnergyError>(())
/// ```
pub fn let_through(controller: Controller, battery: Voltage) -> Result<Share, EnergyError> {
    let battery_v = positive("battery voltage", battery.in_v(), "V")?;
    match controller {
        Controller::Tracking { efficiency } => {
            let of_one = within("efficiency", efficiency.in_of_one(), "", 0.0, 1.0)?;
            Ok(Share::of_one(of_one))
        }
        Controller::Switching { panel } => {
            let panel_v = within("panel voltage", panel.in_v(), "V", battery_v, f64::MAX)?;
            Ok(Share::of_one(battery_v / panel_v))
        }
    }
}
