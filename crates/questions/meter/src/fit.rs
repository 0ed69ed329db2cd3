//! How well a cause explains all readings together: least squares, with its one unknown.

use spile_answer::Point;
use spile_build::Reading;
use spile_circuit::scene::{Does, Metered, OPEN, Stand, Stretch};
use spile_quantity::{Current, Resistance, Voltage};

use crate::expect::Scene;
use crate::spot::{ALL, Spot};

/// What may be the cause of readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Kind {
    /// A joint has more resistance than it should.
    Bad(Stretch),
    /// A fuse is blown or absent, or a joint has come apart.
    Open(Stretch),
    /// The run's own cables have less copper than was said.
    Thinner,
    /// Nothing is asked for: satisfied, on standby, or faulty.
    Standby,
    /// Only the fan of a fridge runs.
    FanOnly,
    /// It takes less than it should: a lower speed, not yet settled.
    Less,
    /// It takes more than it should.
    More,
    /// The battery is flat or failing.
    Battery,
    /// A charger gives the battery more volts than it should.
    Overcharged,
    /// Feed and return are swapped.
    Swapped,
    /// The clamp was not zeroed.
    ClampZero,
}

/// A cause with its unknown as it explains the readings best.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Fitted {
    pub(crate) kind: Kind,
    /// The unknown: ohms, amperes, or the resistance of the cables over what it should be.
    pub(crate) size: f64,
    /// Σ((r − m)/σ)², 1 for a free unknown, and 1 for what seldom is.
    pub(crate) misfit: f64,
    /// What a meter would show with that cause, in SI, by [`ALL`].
    pub(crate) shows: [f64; ALL.len()],
    /// The current through the way.
    pub(crate) current_a: f64,
}

/// Every cause fitted to the readings, the best first.
pub(crate) fn causes(scene: &Scene, taken: &Reading, is_cold: bool, by_body: bool) -> Vec<Fitted> {
    let fit = Fit { scene, taken, point: scene.likely() };
    let current_a = scene.band(Spot::Current).likely.max(0.01);
    let mut found: Vec<Option<Fitted>> = Vec::new();
    if taken.state != spile_build::file::ItemState::Off {
        let stretches = [
            Stretch::Fuse,
            Stretch::Feed,
            Stretch::Back,
            Stretch::Body,
            Stretch::Main,
            Stretch::Tail,
        ];
        for stretch in stretches {
            if stretch == Stretch::Body && !by_body {
                continue;
            }
            found.push(fit.best(Kind::Bad(stretch), (0.001, 20.0)));
            found.push(fit.at(Kind::Open(stretch), 0.0));
        }
        found.push(fit.best(Kind::Thinner, (1.2, 12.0)));
        found.push(fit.at(Kind::Standby, 0.0));
        if is_cold {
            found.push(fit.best(Kind::FanOnly, (0.3, 0.5)));
        }
        found.push(fit.best(Kind::Less, (0.1 * current_a, current_a)));
        found.push(fit.best(Kind::More, (current_a, 4.0 * current_a)));
        found.push(fit.at(Kind::Swapped, 0.0));
    }
    let is_high = Spot::Battery.read(taken) > Some(scene.band(Spot::Battery).likely);
    found.push(fit.at(if is_high { Kind::Overcharged } else { Kind::Battery }, 0.0));
    found.push(fit.at(Kind::ClampZero, 0.0));
    let mut found: Vec<Fitted> = found.into_iter().flatten().collect();
    found.sort_by(|a, b| a.misfit.total_cmp(&b.misfit));
    found
}

struct Fit<'a> {
    scene: &'a Scene,
    taken: &'a Reading,
    point: Point,
}

impl Fit<'_> {
    /// The unknown between two ends at which a cause explains the readings best.
    ///
    /// Forty steps in its logarithm, and between the neighbours of the best one by golden section.
    fn best(&self, kind: Kind, (least, most): (f64, f64)) -> Option<Fitted> {
        const STEPS: u32 = 40;
        const GOLDEN: f64 = 0.618_033_988_749_894_9;
        let misfit = |log: f64| self.at(kind, log.exp()).map_or(f64::INFINITY, |at| at.misfit);
        let (low, high) = (least.ln(), most.ln());
        let step = (high - low) / f64::from(STEPS);
        let steps = (0..=STEPS).map(|number| low + step * f64::from(number));
        let best = steps.min_by(|a, b| misfit(*a).total_cmp(&misfit(*b)))?;
        let (mut a, mut b) = ((best - step).max(low), (best + step).min(high));
        for _ in 0..24 {
            let (c, d) = (b - GOLDEN * (b - a), a + GOLDEN * (b - a));
            if misfit(c) < misfit(d) { b = d } else { a = c }
        }
        let found = self.at(kind, f64::midpoint(a, b).exp())?;
        Some(Fitted { misfit: found.misfit + 1.0, ..found })
    }

    /// A cause with a given unknown.
    fn at(&self, kind: Kind, size: f64) -> Option<Fitted> {
        let healthy = self.scene.stand(&self.point);
        let draws = |current_a: f64| Does::Draws(Current::a(current_a));
        let stand = match kind {
            Kind::Battery | Kind::Overcharged | Kind::Swapped | Kind::ClampZero => healthy,
            Kind::Bad(stretch) => Stand { bad: Some((stretch, Resistance::ohm(size))), ..healthy },
            Kind::Open(stretch) => {
                Stand { bad: Some((stretch, OPEN)), does: Does::Nothing, ..healthy }
            }
            Kind::Thinner => Stand { cables: size, ..healthy },
            Kind::Standby => Stand { does: Does::Nothing, ..healthy },
            Kind::FanOnly | Kind::Less | Kind::More => Stand { does: draws(size), ..healthy },
        };
        let found = self.scene.way.metered(&self.point, &stand)?;
        let shows = ALL.map(|spot| self.shows(kind, spot, stand.posts, &found));
        let mut misfit = 0.0;
        for (spot, shown) in ALL.into_iter().zip(shows) {
            let Some(read) = spot.read(self.taken) else { continue };
            let is_free = matches!(
                (kind, spot),
                (Kind::Battery | Kind::Overcharged, Spot::Battery)
                    | (Kind::ClampZero, Spot::Current)
            );
            if !is_free {
                misfit += (self.apart(spot, read, shown) / self.sigma(spot)).powi(2);
            }
        }
        misfit += match kind {
            // the unknown of two, which frees one reading; and what is rarer than a bad joint
            Kind::Battery | Kind::Overcharged | Kind::ClampZero | Kind::Thinner => 1.0,
            _ => 0.0,
        };
        Some(Fitted { kind, size, misfit, shows, current_a: found.current.in_a() })
    }

    fn shows(&self, kind: Kind, spot: Spot, posts: Voltage, found: &Metered) -> f64 {
        match (kind, spot) {
            (Kind::Swapped, Spot::Appliance) => -spot.of(posts, found),
            (_, Spot::Battery) => self.scene.band(spot).likely,
            _ => spot.of(posts, found),
        }
    }

    /// How far a reading is from what a cause shows; of the posts, which hold any voltage from low
    /// to charging alike, from the nearer end of that.
    fn apart(&self, spot: Spot, read: f64, shown: f64) -> f64 {
        let band = self.scene.band(spot);
        match spot {
            Spot::Battery => read - read.max(band.low).min(band.high),
            _ => read - shown,
        }
    }

    /// Half of what meter and inputs allow; of the posts, of what the meter does.
    fn sigma(&self, spot: Spot) -> f64 {
        if spot == Spot::Battery {
            return spot.error(&self.scene.meter, self.scene.band(spot).likely) / 2.0;
        }
        let (low, high) = self.scene.ends(spot);
        (high - low) / 4.0
    }
}
