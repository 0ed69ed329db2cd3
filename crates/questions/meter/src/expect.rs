//! What a healthy run lets a meter show, with its spread.

use spile_answer::{Basis, Expect, Given, Handle, Input, Ledger, Point, Worse, swing};
use spile_build::file::ItemState;
use spile_build::{Meter, Reading, typical};
use spile_circuit::scene::{Does, OneRun, Stand, Way, full_voltage, low_voltage};
use spile_quantity::{Current, Ranged, Share, Voltage};

use crate::spot::{ALL, Spot};

/// A run in one state, as a meter is put to it.
#[derive(Debug)]
pub(crate) struct Scene {
    pub(crate) way: Way,
    ledger: Ledger,
    posts: Handle<Voltage>,
    clamped: Option<Handle<Current>>,
    pub(crate) state: ItemState,
    pub(crate) others_on: bool,
    pub(crate) meter: Meter,
    /// What the posts hold at rest and while they are charged.
    pub(crate) rest: Given<Voltage>,
    /// What is expected, by [`ALL`].
    pub(crate) bands: Vec<Band>,
    /// What moves any of it.
    pub(crate) inputs: Vec<Input>,
}

/// What is expected in one place, in SI: the ends that the inputs allow, without the meter's error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Band {
    pub(crate) spot: Spot,
    pub(crate) low: f64,
    pub(crate) likely: f64,
    pub(crate) high: f64,
}

/// The typical meter.
pub(crate) fn usual_meter() -> Meter {
    Meter {
        volts: typical::<Share>("meter-volts"),
        clamp: typical::<Share>("meter-clamp"),
        zero: typical::<Current>("meter-clamp-zero"),
    }
}

impl Scene {
    /// A run as it is asked of before any reading, or as it was read; `None` where its fuse or a
    /// cable is in no table, or nothing steady can be expected of it.
    pub(crate) fn of(asked: &OneRun<'_>, taken: Option<&Reading>) -> Option<Self> {
        let way = Way::new(asked, &asked.fuse()?)?;
        let mut ledger = way.ledger.clone();
        let meter = taken.map_or_else(usual_meter, |taken| taken.meter.clone());
        let rest = rest(asked);
        let read = taken.and_then(|taken| taken.battery.as_ref());
        let held = match (taken, read) {
            // before any reading everything is told for one voltage of the battery
            (None, _) => Given { value: Ranged::exactly(rest.likely()), ..rest.clone() },
            (Some(_), None) => rest.clone(),
            (Some(_), Some(read)) => {
                let error = Voltage::v(Spot::Battery.error(&meter, read.likely().in_v()));
                spread(read, error)
            }
        };
        let posts = ledger.take("volts at the battery's posts", &held);
        let state = taken.map_or(ItemState::Running, |taken| taken.state);
        let mut scene = Self {
            way,
            ledger,
            posts,
            clamped: None,
            state,
            others_on: taken.is_some_and(|taken| taken.others_on),
            meter,
            rest,
            bands: Vec::new(),
            inputs: Vec::new(),
        };
        scene.look()?;
        // A current as expected was read: the losses are those of that current.
        if let Some(read) = taken.and_then(|taken| taken.current.as_ref())
            && scene.is_as_expected(Spot::Current, read.likely().in_a())
            && state != ItemState::Off
        {
            let error = Current::a(Spot::Current.error(&scene.meter, read.likely().in_a()));
            let band = scene.band(Spot::Current);
            scene.clamped = Some(scene.ledger.take("current in the feed", &spread(read, error)));
            scene.look()?;
            scene.bands[Spot::Current as usize] = band;
        }
        Some(scene)
    }

    /// The likely point of the inputs.
    pub(crate) fn likely(&self) -> Point {
        self.ledger.likely()
    }

    /// A healthy run at one point.
    pub(crate) fn stand(&self, point: &Point) -> Stand {
        let does = match (self.state, self.clamped) {
            (ItemState::Off, _) => Does::Nothing,
            (_, Some(clamped)) => Does::Draws(point.at(clamped)),
            (ItemState::Starting, None) => Does::Starts,
            (ItemState::Running, None) => Does::Runs,
        };
        Stand {
            posts: point.at(self.posts),
            does,
            others_on: self.others_on,
            bad: None,
            cables: 1.0,
        }
    }

    pub(crate) fn band(&self, spot: Spot) -> Band {
        self.bands[spot as usize]
    }

    /// Whether a reading, in SI, lies where inputs and meter allow.
    pub(crate) fn is_as_expected(&self, spot: Spot, value: f64) -> bool {
        let (low, high) = self.ends(spot);
        (low..=high).contains(&value)
    }

    /// Whether all readings of a round lie there.
    pub(crate) fn are_as_expected(&self, taken: &Reading) -> bool {
        let mut read = ALL.into_iter().filter_map(|spot| Some((spot, spot.read(taken)?)));
        read.all(|(spot, value)| self.is_as_expected(spot, value))
    }

    /// The least and the most that a meter should show, its own error counted in, outwards to a whole
    /// last digit.
    pub(crate) fn ends(&self, spot: Spot) -> (f64, f64) {
        let band = self.band(spot);
        let error = |value| spot.error(&self.meter, value);
        let digit = spot.digit();
        let low = ((band.low - error(band.low)) / digit).floor() * digit;
        (low, ((band.high + error(band.high)) / digit).ceil() * digit)
    }

    /// What is to be expected, place by place, with what was read.
    pub(crate) fn expects(&self, taken: Option<&Reading>) -> Vec<Expect> {
        let expect = |spot: Spot| {
            let (low, high) = self.ends(spot);
            Expect {
                place: spot.name().into(),
                how: spot.how().into(),
                low: spot.shown(low),
                likely: spot.shown(self.band(spot).likely),
                high: spot.shown(high),
                read: taken.and_then(|taken| spot.read(taken)).map(|read| spot.shown(read)),
                unit: spot.unit(),
            }
        };
        ALL.into_iter().map(expect).collect()
    }

    fn look(&mut self) -> Option<()> {
        const COUNT: usize = ALL.len();
        let figures = |point: &Point| {
            let stand = self.stand(point);
            let Some(found) = self.way.metered(point, &stand) else { return [f64::NAN; COUNT] };
            ALL.map(|spot| spot.of(stand.posts, &found))
        };
        let low = swing(&self.ledger, [Worse::Lower; COUNT], figures);
        let high = swing(&self.ledger, [Worse::Higher; COUNT], figures);
        let mut moves = vec![false; self.ledger.inputs().len()];
        let mut bands = Vec::with_capacity(COUNT);
        for (spot, (low, high)) in ALL.into_iter().zip(low.iter().zip(&high)) {
            for mover in low.movers.iter().chain(&high.movers) {
                moves[mover.input] = true;
            }
            let (least, likely, most) = (low.unfavourable, low.likely, high.unfavourable);
            let (least, likely, most) = if spot == Spot::Battery {
                let rest = self.rest.value;
                (rest.low.in_v(), rest.likely.in_v(), rest.high.in_v())
            } else {
                (least, likely, most)
            };
            bands.push(Band { spot, low: least, likely, high: most });
        }
        let inputs = self.ledger.inputs().iter().zip(moves);
        self.inputs = inputs.filter(|(_, moves)| *moves).map(|(input, _)| input.clone()).collect();
        self.bands = bands;
        self.bands.iter().all(|band| band.likely.is_finite()).then_some(())
    }
}

/// What the posts hold from low to full, and while they are charged.
///
/// **Source** the chemistry's resting voltages; charging adds up to a sixth, common practice, no
/// source.
fn rest(asked: &OneRun<'_>) -> Given<Voltage> {
    let low = low_voltage(asked.build, asked.bank);
    let full = full_voltage(asked.build, asked.bank);
    let likely = Voltage::v(f64::midpoint(low.likely().in_v(), full.likely().in_v()));
    Given {
        value: Ranged { low: low.value.low, likely, high: full.value.high * (7.0 / 6.0) },
        basis: Basis::Typical,
        source: "common practice: from low at rest to charging".into(),
        how: Spot::Battery.how().into(),
    }
}

/// A reading with the meter's error besides its own tolerance.
fn spread<Q: spile_quantity::Quantity>(read: &Given<Q>, error: Q) -> Given<Q> {
    let Ranged { low, likely, high } = read.value;
    let value = Ranged {
        low: Q::from_si(low.si() - error.si()),
        likely,
        high: Q::from_si(high.si() + error.si()),
    };
    Given { value, ..read.clone() }
}
