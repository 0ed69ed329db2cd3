//! Screws, nails and lag screws in wood: what they break at, and what may be used.

use std::f64::consts::PI;

use spile_quantity::{Force, Length, Pressure};

use crate::no_answer::within;
use crate::{Allowable, NoAnswer, Ultimate};

/// What is driven into wood.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Driven {
    /// A wood screw.
    Screw,
    /// A smooth nail.
    Nail,
    /// A lag screw.
    Lag,
}

/// An inch in metres, a pound-force in newtons, and a pound to the square inch in pascals.
const INCH: f64 = 0.0254;
const POUND: f64 = 4.448_221_615_260_5;
const PSI: f64 = POUND / (INCH * INCH);

/// The pull at which a driven fastener comes out of side grain, F \[N\].
///
/// **Formula** \[lb, in\] screw 15,700·G²·D·L; nail 7,850·G^2.5·D·L; lag 8,100·G^1.5·D^0.75·L
///
/// **Arguments** `gravity` G \[1\], oven-dry, 0.2 to 0.9; `diameter` D \[m\], 1 to 30 mm;
/// `threaded` L \[m\], in the wood that holds, up to 0.3 m.
///
/// **Validity** side grain of solid wood; end grain holds three quarters at most and is not to be
/// relied on; plywood faces hold less.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** USDA Wood Handbook, chapter 8 (quoted by a woodworking and a reference page; lag from
/// memory). Screws and nails of metric size by 108.25 and 54.12 N/mm².
///
/// **Example** a No. 8 screw, 0.164 in, an inch deep in oak of G = 0.70: 1,262 lb (printed):
/// ```
/// use spile_quantity::Length;
/// use spile_strength::wood::{Driven, withdrawal};
/// let load = withdrawal(Driven::Screw, 0.70, Length::mm(4.1656), Length::mm(25.4)).unwrap();
/// assert!((load.0.in_n() / 4.448222 - 1262.0).abs() < 1.0);
/// ```
pub fn withdrawal(
    driven: Driven,
    gravity: f64,
    diameter: Length,
    threaded: Length,
) -> Result<Ultimate<Force>, NoAnswer> {
    let (constant, power, of_diameter) = match driven {
        Driven::Screw => (15_700.0, 2.0, 1.0),
        Driven::Nail => (7_850.0, 2.5, 1.0),
        Driven::Lag => (8_100.0, 1.5, 0.75),
    };
    pulled(constant, power, of_diameter, gravity, diameter, threaded).map(Ultimate)
}

/// The pull that a driven fastener in side grain may be used for, F \[N\].
///
/// **Formula** \[lb, in\] screw 2,850·G²·D·L; nail 1,380·G^2.5·D·L; lag 1,800·G^1.5·D^0.75·L
///
/// **Arguments** as [`withdrawal`].
///
/// **Validity** as [`withdrawal`]; loads of ten years. Shorter loads may be greater: not counted
/// on.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** NDS 2018, 12.2-1 to 12.2-3.
///
/// **Example** a lag screw of 0.5 in, 2.1875 in of thread in southern pine: 955 lb (AWC E2.3):
/// ```
/// use spile_quantity::Length;
/// use spile_strength::wood::{Driven, withdrawal_allowed};
/// let (half, depth) = (Length::mm(12.7), Length::mm(2.1875 * 25.4));
/// let load = withdrawal_allowed(Driven::Lag, 0.55, half, depth).unwrap();
/// assert!((load.value().in_n() - 4247.9).abs() < 1.0);
/// ```
pub fn withdrawal_allowed(
    driven: Driven,
    gravity: f64,
    diameter: Length,
    threaded: Length,
) -> Result<Allowable<Force>, NoAnswer> {
    let (constant, power, of_diameter) = match driven {
        Driven::Screw => (2_850.0, 2.0, 1.0),
        Driven::Nail => (1_380.0, 2.5, 1.0),
        Driven::Lag => (1_800.0, 1.5, 0.75),
    };
    pulled(constant, power, of_diameter, gravity, diameter, threaded).map(Allowable::by_rule)
}

fn pulled(
    constant: f64,
    power: f64,
    of_diameter: f64,
    gravity: f64,
    diameter: Length,
    threaded: Length,
) -> Result<Force, NoAnswer> {
    within("specific gravity", gravity, "", 0.2, 0.9)?;
    let diameter_m = within("diameter", diameter.in_m(), "m", 1e-3, 0.03)?;
    let threaded_m = within("length in the wood", threaded.in_m(), "m", 0.0, 0.3)?;
    let pounds = constant
        * gravity.powf(power)
        * (diameter_m / INCH).powf(of_diameter)
        * (threaded_m / INCH);
    Ok(Force::n(pounds * POUND))
}

/// A screw or nail that joins a side piece to a main piece, loaded across its axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lateral {
    /// The diameter in the shear plane: that of the root where the thread crosses it.
    pub diameter: Length,
    /// Thickness of the side piece.
    pub side: Length,
    /// Length in the main piece.
    pub main: Length,
    /// Specific gravity of the side piece \[1\].
    pub side_gravity: f64,
    /// Specific gravity of the main piece \[1\].
    pub main_gravity: f64,
    /// Bending yield strength of the fastener.
    pub bending: Pressure,
    /// The reduction R_d \[1\], by [`reduction`] of the unthreaded diameter.
    pub reduction: f64,
}

/// The reduction term R_d of small fasteners \[1\].
///
/// **Formula** 2.2 up to 0.17 in, 10·D + 0.5 above \[in\]
///
/// **Arguments** `diameter` D \[m\], 1 to 6.35 mm.
///
/// **Validity** below a quarter of an inch.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** NDS 2018 table 12.3.1B.
pub fn reduction(diameter: Length) -> Result<f64, NoAnswer> {
    let inches = within("diameter", diameter.in_m(), "m", 1e-3, 0.25 * INCH)? / INCH;
    Ok(if inches <= 0.17 { 2.2 } else { 10.0 * inches + 0.5 })
}

/// What a screw or nail may be used for across its axis, in single shear, Z \[N\].
///
/// **Formula** the least of the yield modes I_m, I_s, III_m, III_s and IV:
/// D·l_m·F_em/R_d; D·l_s·F_es/R_d; k₂·D·l_m·F_em/((1+2R_e)·R_d);
/// k₃·D·l_s·F_em/((2+R_e)·R_d); D²/R_d·√(2·F_em·F_yb/(3(1+R_e))), F_e = 16,600·G^1.84 psi,
/// R_e = F_em/F_es (II is never the least for slender fasteners and is left out)
///
/// **Arguments** `joint`: lengths \[m\], gravities 0.2 to 0.9.
///
/// **Validity** diameters below a quarter of an inch, side grain.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** NDS 2018, table 12.3.1A; F_e from memory, recomputed against AWC's examples.
///
/// **Example** a 0.148 in nail through 0.75 in of Douglas fir: 105.1 lb (AWC), in the crate's tests.
pub fn lateral_allowed(joint: &Lateral) -> Result<Allowable<Force>, NoAnswer> {
    let inches = |what, length: Length| Ok(within(what, length.in_m(), "m", 1e-4, 0.3)? / INCH);
    let d = within("diameter", joint.diameter.in_m(), "m", 1e-3, 0.25 * INCH)? / INCH;
    let (ls, lm) = (inches("side piece", joint.side)?, inches("main piece", joint.main)?);
    let bearing = |g| Ok(16_600.0 * within("specific gravity", g, "", 0.2, 0.9)?.powf(1.84));
    let (fes, fem) = (bearing(joint.side_gravity)?, bearing(joint.main_gravity)?);
    let (re, rd, fyb) = (fem / fes, joint.reduction, joint.bending.in_pa() / PSI);
    let bent = |length: f64, over: f64| 2.0 * fyb * over * d * d / (3.0 * fem * length * length);
    let k2 = -1.0 + (2.0 * (1.0 + re) + bent(lm, 1.0 + 2.0 * re)).sqrt();
    let k3 = -1.0 + (2.0 * (1.0 + re) / re + bent(ls, 2.0 + re)).sqrt();
    let modes = [
        d * lm * fem / rd,
        d * ls * fes / rd,
        k2 * d * lm * fem / ((1.0 + 2.0 * re) * rd),
        k3 * d * ls * fem / ((2.0 + re) * rd),
        d * d / rd * (2.0 * fem * fyb / (3.0 * (1.0 + re))).sqrt(),
    ];
    let pounds = modes.into_iter().fold(f64::INFINITY, f64::min);
    Ok(Allowable::by_rule(Force::n(pounds * POUND)))
}

/// What a bolt through a piece of wood may be used for across its axis, Z \[N\].
///
/// **Formula** Z = D·t·F_e/4, F_e = 16,600·G^1.84 psi below a quarter of an inch, else
/// 6,100·G^1.45/√D psi (across the grain)
///
/// **Arguments** `bolt` D \[m\], 3 to 12 mm; `gravity` G \[1\]; `thickness` t \[m\], up to 0.1 m.
///
/// **Validity** the wood is crushed before the bolt bends, as in panels: yield mode I, R_d = 4.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** NDS 2018, tables 12.3.1A and 12.3.3, from memory.
pub fn bolt_allowed(
    bolt: Length,
    gravity: f64,
    thickness: Length,
) -> Result<Allowable<Force>, NoAnswer> {
    let bolt_m = within("bolt", bolt.in_m(), "m", 0.003, 0.012)?;
    within("specific gravity", gravity, "", 0.2, 0.9)?;
    let thickness_m = within("thickness", thickness.in_m(), "m", 0.0, 0.1)?;
    let inches = bolt_m / INCH;
    let bearing = if inches < 0.25 {
        16_600.0 * gravity.powf(1.84)
    } else {
        6_100.0 * gravity.powf(1.45) / inches.sqrt()
    };
    Ok(Allowable::by_rule(Force::n(bolt_m * thickness_m * bearing * PSI / 4.0)))
}

/// What a head or washer may be used for before it is drawn through wood, F \[N\].
///
/// **Formula** \[lb, in\] 690·π·D_h·G²·t, at most 1,725·π·D_h²·G² (from t = 2.5·D_h on)
///
/// **Arguments** `head` D_h \[m\], 3 to 50 mm; `gravity` G \[1\]; `thickness` t \[m\], up to 0.1 m.
///
/// **Validity** round heads and washers on side grain.
///
/// **Errors** [`NoAnswer::OutOfRange`].
///
/// **Source** NDS 2018, 12.2-6, from memory.
pub fn head_allowed(
    head: Length,
    gravity: f64,
    thickness: Length,
) -> Result<Allowable<Force>, NoAnswer> {
    let head_m = within("head", head.in_m(), "m", 0.003, 0.05)?;
    within("specific gravity", gravity, "", 0.2, 0.9)?;
    let thickness_m = within("thickness", thickness.in_m(), "m", 0.0, 0.1)?.min(2.5 * head_m);
    let newtons = 690.0 * PSI * PI * head_m * gravity * gravity * thickness_m;
    Ok(Allowable::by_rule(Force::n(newtons)))
}
