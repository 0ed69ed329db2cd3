//! Ways of failing of one fastener, and how much of each is used.

use spile_answer::Point;
use spile_build::Held;
use spile_build::file::{HeldBy, HeldInto};
use spile_quantity::{Force, Length};
use spile_strength::bolt::{self, LOADS};
use spile_strength::envelope::Case;
use spile_strength::group::{Group, Share};
use spile_strength::wood::{self, Driven, Lateral};
use spile_strength::{Allowable, Factor, NoAnswer, Ultimate, glue, sheet};
use spile_tables::fastener;

use crate::scene::Scene;

/// One way in which a fastener or what it is in gives.
#[derive(Debug, Clone)]
pub(crate) struct Mode {
    pub(crate) name: &'static str,
    pub(crate) tension: Option<Allowable<Force>>,
    pub(crate) shear: Option<Allowable<Force>>,
    /// Ultimate over allowable.
    pub(crate) margin: f64,
    /// Whether it may make a *stop*.
    pub(crate) firm: bool,
    /// Whether tension counts by 1/1.4 beside shear, as of bolts.
    pub(crate) is_bolt: bool,
    pub(crate) formula: &'static str,
    pub(crate) source: &'static str,
}

impl Mode {
    /// The share of it that one fastener uses.
    pub(crate) fn used(&self, share: &Share) -> f64 {
        let part = |allowed: Option<Allowable<Force>>, load| allowed.map_or(0.0, |a| a.used(load));
        let (pulled, sheared) = (part(self.tension, share.tension), part(self.shear, share.shear));
        if self.is_bolt { (sheared + pulled / 1.4).max(pulled) } else { sheared + pulled }
    }
}

/// The hardest worked fastener.
#[derive(Debug, Clone)]
pub(crate) struct Worst {
    pub(crate) used: f64,
    pub(crate) mode: Mode,
    pub(crate) case: Case,
    pub(crate) share: Share,
}

/// AISI's safety factor for screws and pull-over.
const SHEET: Factor = Factor { value: 3.0, why: "thin sheet by AISI S100, from memory" };
/// Plywood's faces hold less than solid wood.
const PLY_FACES: f64 = 0.8;

/// The hardest worked fastener over all cases and the ways of failing that `keep` lets through;
/// with `ultimate`, against what breaks.
pub(crate) fn worst(
    scene: &Scene<'_>,
    point: &Point,
    cases: &[Case],
    ultimate: bool,
    keep: impl Fn(&Mode) -> bool,
) -> Option<Worst> {
    let (mass, lever) = scene.pushing(point);
    let group = Group::new(&scene.places(point), scene.face_size);
    let modes = modes(scene, point);
    let mut found: Option<Worst> = None;
    for case in cases {
        let push = scene.push(case, mass);
        let shares = match scene.held.by {
            HeldBy::Adhesive => glued(scene, point, push, lever),
            HeldBy::Strap => vec![strapped(scene, push)],
            _ => match &group {
                Ok(group) => group.shares(push, scene.face_size.map(|side| side / 2.0), lever),
                Err(_) => Vec::new(),
            },
        };
        for mode in modes.iter().filter(|mode| keep(mode)) {
            for share in &shares {
                let used = mode.used(share) / if ultimate { mode.margin } else { 1.0 };
                if found.as_ref().is_none_or(|worst| used > worst.used) {
                    found = Some(Worst { used, mode: mode.clone(), case: *case, share: *share });
                }
            }
        }
    }
    found
}

/// Every way of failing of one fastener at a point.
pub(crate) fn modes(scene: &Scene<'_>, point: &Point) -> Vec<Mode> {
    let wall = point.at(scene.wall);
    let held = scene.held;
    let nominal = held.size.unwrap_or(Length::mm(6.0));
    match held.by {
        HeldBy::Bolt => {
            let mut all = bolts(held);
            if let Some(metal) = scene.metal {
                let strength = Ultimate(point.at(metal));
                let hole = nominal * 1.1;
                let edge = scene.edge.map_or(hole * 3.0, |edge| point.at(edge));
                let bearing = sheet::bearing(nominal, hole, edge, wall, strength);
                all.push(Mode {
                    shear: Some(bearing.map_or(none(), |load| load.over(LOADS))),
                    margin: LOADS.value,
                    ..mode("hole in the wall", "F = 2·α·R_m·d·t/1.5", "EN 1993-1-8:2005 table 3.4")
                });
                let through = sheet::pull_through(wall, point.at(scene.washer), strength);
                all.push(Mode {
                    tension: Some(through.map_or(none(), |load| load.over(SHEET))),
                    margin: SHEET.value,
                    ..mode(
                        "washer through the wall",
                        "F = 1.5·t·d_w·R_m/3",
                        "AISI S100, from memory",
                    )
                });
            }
            if let Some(gravity) = scene.gravity {
                let gravity = point.at(gravity).in_of_one();
                let head = wood::head_allowed(point.at(scene.washer), gravity, wall);
                all.push(Mode {
                    tension: Some(head.unwrap_or(none())),
                    margin: 5.0,
                    ..mode(
                        "washer through the wood",
                        "W = 690·π·D·G²·t",
                        "NDS 2018, 12.2-6, from memory",
                    )
                });
                let side = wood::bolt_allowed(nominal, gravity, wall);
                all.push(Mode {
                    shear: Some(side.unwrap_or(none())),
                    margin: 4.0,
                    ..mode(
                        "hole in the wood",
                        "Z = D·t·F_e/4",
                        "NDS 2018 table 12.3.1A, from memory",
                    )
                });
            }
            all
        }
        HeldBy::RivetNut | HeldBy::TappingScrew if scene.gravity.is_none() => {
            let mut all = if held.by == HeldBy::RivetNut { bolts(held) } else { Vec::new() };
            let allowed = scene.one.map(|one| Allowable::by_rule(point.at(one)));
            let allowed = allowed.map(|one| one.times(by_wall(held, wall)));
            let name = if held.by == HeldBy::RivetNut {
                "rivet nut in the wall"
            } else {
                "thread in the wall"
            };
            all.push(Mode {
                tension: allowed,
                shear: allowed,
                margin: 4.0,
                firm: held.holds.is_some(),
                ..mode(name, "T/F + V/F", "common practice, scaled by diameter and wall")
            });
            all
        }
        HeldBy::WoodScrew | HeldBy::RivetNut | HeldBy::TappingScrew => {
            let gravity = scene.gravity.map_or(0.43, |gravity| point.at(gravity).in_of_one());
            let faces = if scene.into == HeldInto::Plywood { PLY_FACES } else { 1.0 };
            if let Some(tested) = &held.holds {
                let tested = Some(Allowable::by_rule(tested.likely()));
                let it =
                    mode("screw in the wood", "T/F + V/F", "what one may be used for, as said");
                return vec![Mode {
                    tension: tested,
                    shear: tested,
                    margin: 4.0,
                    firm: true,
                    ..it
                }];
            }
            let out = wood::withdrawal_allowed(Driven::Screw, gravity, nominal, wall);
            vec![Mode {
                tension: Some(out.map_or(none(), |load| load.times(faces))),
                shear: Some(lateral(nominal, wall, gravity).unwrap_or(none())),
                margin: 5.0,
                ..mode(
                    "screw in the wood",
                    "T/W + V/Z, W = 2850·G²·D·L",
                    "NDS 2018, 12.2-2 and table 12.3.1A",
                )
            }]
        }
        HeldBy::Adhesive => {
            let lap = scene.lap.map(|lap| Ultimate(point.at(lap)).over(glue::LAP).value());
            let lap_n = lap.map_or(0.0, spile_quantity::Pressure::in_pa);
            vec![Mode {
                tension: Some(Allowable::by_rule(Force::n(lap_n * glue::PEEL_SHARE))),
                shear: Some(Allowable::by_rule(Force::n(lap_n))),
                margin: glue::LAP.value,
                ..mode(
                    "glue, which peels first",
                    "τ/τ_a + σ/(τ_a/3), τ_a = lap shear/7",
                    "from memory",
                )
            }]
        }
        HeldBy::Strap | HeldBy::MagnetLatch | HeldBy::PositiveLatch => vec![Mode {
            tension: scene.one.map(|one| Ultimate(point.at(one)).over(STRAP)),
            margin: STRAP.value,
            firm: true,
            ..mode("strap", "F/(load/2)", "the strap's label, halved")
        }],
    }
}

/// What a strap's or latch's holding is divided by.
pub(crate) const STRAP: Factor = Factor { value: 2.0, why: "twice the worst push, by practice" };

/// The wall's part of what a screw in it may be used for: in proportion, where it was not said.
pub(crate) fn by_wall(held: &Held, wall: Length) -> f64 {
    let row = fastener::pull_outs().iter().find(|row| row.value.key == held.by.word());
    match row {
        Some(row) if held.holds.is_none() => wall / row.value.wall,
        _ => 1.0,
    }
}

/// The bolt itself.
pub(crate) fn bolts(held: &Held) -> Vec<Mode> {
    let nominal = held.size.unwrap_or(Length::mm(6.0));
    let class = held.class.as_deref().unwrap_or("4.6");
    let resistance = bolt::resistance(nominal, class).ok().map(|entry| entry.value);
    vec![Mode {
        tension: Some(resistance.map_or(none(), |bolt| bolt.tension)),
        shear: Some(resistance.map_or(none(), |bolt| bolt.shear)),
        margin: LOADS.value,
        firm: held.class.is_some() && resistance.is_some(),
        is_bolt: true,
        ..mode("bolt", "V/F_v + T/(1.4·F_t)", "ISO 898-1; EN 1993-1-8:2005 table 3.4, over 1.5")
    }]
}

/// What a formula that does not hold here is trusted with.
fn none() -> Allowable<Force> {
    Allowable::by_rule(Force::n(0.0))
}

fn mode(name: &'static str, formula: &'static str, source: &'static str) -> Mode {
    Mode {
        name,
        tension: None,
        shear: None,
        margin: 1.0,
        firm: false,
        is_bolt: false,
        formula,
        source,
    }
}

/// A wood screw across its axis: two pieces as thick as its thread is long, root at 0.7 of it.
fn lateral(nominal: Length, thread: Length, gravity: f64) -> Result<Allowable<Force>, NoAnswer> {
    wood::lateral_allowed(&Lateral {
        diameter: nominal * 0.7,
        side: thread,
        main: thread,
        side_gravity: gravity,
        main_gravity: gravity,
        bending: spile_quantity::Pressure::mpa(620.0),
        reduction: wood::reduction(nominal.min(Length::mm(6.3)))?,
    })
}

/// The stresses of a glued face, as tension and shear on a square metre.
fn glued(
    scene: &Scene<'_>,
    point: &Point,
    push: spile_strength::group::Push,
    lever: Length,
) -> Vec<Share> {
    let spans = scene.spacing(point);
    let one = |axis: usize, along: Force| {
        let size = [spans[axis], spans[1 - axis]];
        glue::stress(along, push.away, size, lever).ok()
    };
    [one(0, push.right), one(1, push.above)]
        .into_iter()
        .flatten()
        .map(|stress| Share {
            tension: Force::n(stress.peel.in_pa()),
            shear: Force::n(stress.shear.in_pa()),
        })
        .collect()
}

/// What one strap takes: all of a push shared by all straps.
fn strapped(scene: &Scene<'_>, push: spile_strength::group::Push) -> Share {
    let along = push.right.in_n().hypot(push.above.in_n());
    let whole = along.hypot(push.away.in_n().max(0.0));
    Share { tension: Force::n(whole / f64::from(scene.count)), shear: Force::n(0.0) }
}
