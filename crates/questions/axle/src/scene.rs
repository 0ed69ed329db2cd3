//! A vehicle in one load state: its weighing, what has come and gone since, and the loads of axles
//! and tyres that follow.

use spile_answer::{Basis, Given, Handle, Ledger, Point, Swing, Worse, swing};
use spile_build::file::VehicleKind;
use spile_build::{Build, LoadState, Towing, Tyres, Weighing, typical, typical_number};
use spile_quantity::{Length, Mass, Ranged, Share};

use crate::aboard::{self, Load};
use crate::place::Along;
use crate::statics::{Supports, side_difference, supports};

/// What the loads start from.
pub(crate) struct Base<'b> {
    /// What it is, in words: `the weighing of 2026-03-14, touring`.
    pub(crate) about: String,
    /// What was aboard then.
    pub(crate) aboard: Vec<Load>,
    /// Front and rear.
    pub(crate) axles: [Vec<Given<Mass>>; 2],
    /// Left and right, of the whole vehicle or of each axle.
    pub(crate) sides: Sides,
    /// The load state it was in, with its name.
    pub(crate) state: Option<(&'b str, &'b LoadState)>,
    /// Whether it is a weighing, and not papers.
    pub(crate) weighed: bool,
}

/// What was weighed of left and right.
pub(crate) enum Sides {
    /// Each wheel: front left, front right, rear left, rear right.
    Wheels([Given<Mass>; 4]),
    /// Left and right together.
    Whole([Given<Mass>; 2]),
    Unsaid,
}

/// The figures of a state, in this order.
pub(crate) const FIGURES: usize = 11;
/// On the front axle, or the nose of a trailer \[kg\].
pub(crate) const FRONT: usize = 0;
/// On the rear axle, without a tag axle's share \[kg\].
pub(crate) const REAR: usize = 1;
/// On the tag axle \[kg\].
pub(crate) const TAG: usize = 2;
/// Of the whole vehicle \[kg\].
pub(crate) const TOTAL: usize = 3;
/// Left against right \[hundredths of both\].
pub(crate) const SIDE: usize = 4;
/// On the most loaded tyre of front, rear and tag axle \[kg\].
pub(crate) const TYRES: [usize; 3] = [5, 6, 7];
/// On the axles of the towing car, and both together \[kg\].
pub(crate) const CAR: [usize; 3] = [8, 9, 10];

/// A vehicle in one load state.
pub(crate) struct Scene {
    /// The state's name.
    pub(crate) state: String,
    pub(crate) ledger: Ledger,
    pub(crate) came: Vec<Put>,
    pub(crate) went: Vec<Put>,
    axles: [Vec<Handle<Mass>>; 2],
    wheelbase: Handle<Length>,
    rear_axle: RearAxle,
    track: Handle<Length>,
    sides: SideInputs,
    tag: Option<(Handle<Length>, Handle<Share>)>,
    /// How many tyres front, rear and tag axle have.
    counts: [f64; 3],
    car: Option<Car>,
    unlisted: Option<(Handle<Mass>, Handle<Share>)>,
    /// Whether its front is a coupling, which holds nothing upright: all that leans to one side
    /// leans on the wheels.
    trailer: bool,
}

/// A load put into a ledger.
pub(crate) struct Put {
    pub(crate) name: String,
    mass: Handle<Mass>,
    times: Option<Handle<Share>>,
    along: PutAlong,
    left: Handle<Length>,
}

enum PutAlong {
    FromRear(Handle<Length>),
    Share(Handle<Share>),
}

enum RearAxle {
    FromRear(Handle<Length>),
    Share(Handle<Share>),
}

enum SideInputs {
    Wheels([Handle<Mass>; 4]),
    Whole([Handle<Mass>; 2], Handle<Share>),
    Unsaid(Handle<Share>, Handle<Share>),
}

struct Car {
    wheelbase: Handle<Length>,
    overhang: Handle<Length>,
    front: Handle<Mass>,
    rear: Handle<Mass>,
}

/// A load of a state at one point: mass \[kg\], forward of the rear axle and left of the middle \[m\].
pub(crate) struct At {
    pub(crate) mass: Mass,
    pub(crate) forward: Length,
    pub(crate) left: Length,
}

/// What the axles of a state carry at one point.
pub(crate) struct Loads {
    pub(crate) front: Mass,
    pub(crate) rear: Mass,
    difference: [Mass; 2],
}

impl Loads {
    /// Left less right, of both axles.
    pub(crate) fn left_over_right(&self) -> Mass {
        let [front, rear] = self.difference;
        front + rear
    }
}

impl Scene {
    pub(crate) fn new(
        build: &Build,
        base: &Base<'_>,
        wheelbase: &Given<Length>,
        (name, state): (&str, &LoadState),
    ) -> Self {
        let nothing = aboard::nothing();
        let unsaid = base.state.map_or(&nothing, |(_, state)| state);
        let (came, went) =
            aboard::change(base.aboard.clone(), aboard::all(build, name, state, unsaid));
        let axles = &build.vehicle.axles;
        let mut ledger = Ledger::new();
        let l = &mut ledger;
        let [front, rear] = [("front axle", 0), ("rear axle", 1)].map(|(what, axle)| {
            let readings = &base.axles[axle];
            let many = readings.len() > 1;
            let named = |at: usize| match (many, at) {
                (false, _) => format!("{what}, weighed"),
                (true, 0) => format!("{what} left, weighed"),
                (true, _) => format!("{what} right, weighed"),
            };
            readings.iter().enumerate().map(|(at, given)| l.take(named(at), given)).collect()
        });
        let wheelbase_in = l.take("wheelbase", wheelbase);
        let rear_axle = match &build.vehicle.rear_axle {
            Some(given) => RearAxle::FromRear(l.take("rear axle from the rear face", given)),
            None => RearAxle::Share(
                l.take("rear axle from the rear face", &typical_number("rear-axle-place")),
            ),
        };
        let track = axles.track.clone().unwrap_or_else(|| typical::<Length>("track"));
        let spread = typical_number("axle-side-difference");
        let sides = match &base.sides {
            Sides::Wheels(wheels) => {
                const NAMES: [&str; 4] = [
                    "front axle left, weighed",
                    "front axle right, weighed",
                    "rear axle left, weighed",
                    "rear axle right, weighed",
                ];
                SideInputs::Wheels(std::array::from_fn(|at| l.take(NAMES[at], &wheels[at])))
            }
            Sides::Whole([left, right]) => SideInputs::Whole(
                [l.take("left wheels, weighed", left), l.take("right wheels, weighed", right)],
                l.take("left over right of an axle", &spread),
            ),
            Sides::Unsaid => SideInputs::Unsaid(
                l.take("left over right", &typical_number("side-difference")),
                l.take("left over right of an axle", &spread),
            ),
        };
        let put = |loads: Vec<Load>, l: &mut Ledger| {
            loads.iter().map(|load| Put::new(load, l)).collect::<Vec<Put>>()
        };
        let (came, went) = (put(came, l), put(went, l));
        let tag = axles.tag.as_ref().and_then(|tag| {
            let behind = l.take("tag axle behind the driven one", tag.behind.as_ref()?);
            Some((behind, l.take("share of the tag axle", tag.share.as_ref()?)))
        });
        let car = axles.towing.as_ref().and_then(|towing| Car::new(towing, l));
        let unlisted = (!base.weighed).then(|| {
            let mass = l.take("built in and not listed", &typical::<Mass>("unlisted-mass"));
            (mass, l.take("place of what is not listed", &typical_number("thing-place")))
        });
        let count =
            |tyres: &Option<Tyres>| f64::from(tyres.as_ref().and_then(|t| t.count).unwrap_or(2));
        Self {
            state: name.to_owned(),
            came,
            went,
            axles: [front, rear],
            wheelbase: wheelbase_in,
            rear_axle,
            track: l.take("track", &track),
            sides,
            tag,
            counts: [&axles.front, &axles.rear, &axles.tag_tyres].map(count),
            car,
            unlisted,
            trailer: build.vehicle.kind == VehicleKind::Trailer,
            ledger,
        }
    }

    /// Every figure, at its likely value and at its unfavourable end.
    pub(crate) fn swings(&self) -> [Swing; FIGURES] {
        swing(&self.ledger, [Worse::Higher; FIGURES], |point| self.figures(point))
    }

    /// The nose's share of the whole \[%\], which is worse where it is less.
    pub(crate) fn nose_swing(&self) -> Swing {
        let [swung] = swing(&self.ledger, [Worse::Lower], |point| [self.nose_percent(point)]);
        swung
    }

    pub(crate) fn nose_percent(&self, point: &Point) -> f64 {
        self.loads(point).map_or(f64::NAN, |loads| loads.front / (loads.front + loads.rear) * 100.0)
    }

    pub(crate) fn figures(&self, point: &Point) -> [f64; FIGURES] {
        let Some(loads) = self.loads(point) else { return [f64::NAN; FIGURES] };
        let mut figures = [f64::NAN; FIGURES];
        let share = self.tag.map_or(0.0, |(_, share)| point.at(share).in_of_one());
        let total = loads.front + loads.rear;
        let on = [loads.front, loads.rear * (1.0 - share), loads.rear * share];
        let [front_off, rear_off] = loads.difference;
        let off = [front_off, rear_off * (1.0 - share), rear_off * share];
        figures[FRONT] = on[0].in_kg();
        figures[REAR] = on[1].in_kg();
        figures[TAG] = on[2].in_kg();
        figures[TOTAL] = total.in_kg();
        figures[SIDE] = ((front_off + rear_off) / total).abs() * 100.0;
        for axle in 0..3 {
            figures[TYRES[axle]] = (on[axle] + off[axle].abs()).in_kg() / self.counts[axle];
        }
        if let Some(car) = &self.car {
            let nose = supports(loads.front, -point.at(car.overhang), point.at(car.wheelbase));
            if let Ok(nose) = nose {
                let (front, rear) =
                    (point.at(car.front) + nose.front, point.at(car.rear) + nose.rear);
                for (figure, mass) in CAR.into_iter().zip([front, rear, front + rear]) {
                    figures[figure] = mass.in_kg();
                }
            }
        }
        figures
    }

    /// What the axles carry at a point; `None` where its lengths are not those of a vehicle.
    pub(crate) fn loads(&self, point: &Point) -> Option<Loads> {
        let [front, rear] = &self.axles;
        let sum = |handles: &[Handle<Mass>]| handles.iter().map(|handle| point.at(*handle)).sum();
        let (front, rear): (Mass, Mass) = (sum(front), sum(rear));
        let mut loads =
            Loads { front, rear, difference: self.weighed_difference(point, front, rear) };
        for (puts, sign) in [(&self.came, 1.0), (&self.went, -1.0)] {
            for put in puts {
                let at = self.place(put, point);
                let on = self.on(&At { mass: at.mass * sign, ..at }, point)?;
                loads.front = loads.front + on.front;
                loads.rear = loads.rear + on.rear;
                let track = point.at(self.track);
                let parts = if self.trailer {
                    [Mass::kg(0.0), on.front + on.rear]
                } else {
                    [on.front, on.rear]
                };
                for (difference, part) in loads.difference.iter_mut().zip(parts) {
                    *difference = *difference + side_difference(part, at.left, track).ok()?;
                }
            }
        }
        if let Some((mass, place)) = self.unlisted {
            let forward = point.at(self.wheelbase) * point.at(place).in_of_one();
            let at = At { mass: point.at(mass), forward, left: Length::m(0.0) };
            let on = self.on(&at, point)?;
            loads.front = loads.front + on.front;
            loads.rear = loads.rear + on.rear;
        }
        Some(loads)
    }

    /// What a load puts on the axles.
    pub(crate) fn on(&self, at: &At, point: &Point) -> Option<Supports> {
        let behind = self.behind(point);
        supports(at.mass, at.forward + behind, point.at(self.wheelbase) + behind).ok()
    }

    /// How far the tag axle is behind the driven one, and its share of both.
    pub(crate) fn on_tag(&self, point: &Point) -> Option<(Length, Share)> {
        self.tag.map(|(behind, share)| (point.at(behind), point.at(share)))
    }

    /// How far the middle of both rear axles is behind the driven one.
    pub(crate) fn behind(&self, point: &Point) -> Length {
        self.tag.map_or(Length::m(0.0), |(behind, share)| {
            point.at(behind) * point.at(share).in_of_one()
        })
    }

    /// From front axle to rear axle, or to the middle of both.
    pub(crate) fn between(&self, point: &Point) -> Length {
        point.at(self.wheelbase) + self.behind(point)
    }

    /// Where a load is, at a point.
    pub(crate) fn place(&self, put: &Put, point: &Point) -> At {
        let wheelbase = point.at(self.wheelbase);
        let forward = match put.along {
            PutAlong::Share(share) => wheelbase * point.at(share).in_of_one(),
            PutAlong::FromRear(from) => point.at(from) - self.rear_axle(point),
        };
        let times = put.times.map_or(1.0, |times| point.at(times).in_of_one());
        At { mass: point.at(put.mass) * times, forward, left: point.at(put.left) }
    }

    /// The rear axle, forward of the inside rear face.
    pub(crate) fn rear_axle(&self, point: &Point) -> Length {
        match self.rear_axle {
            RearAxle::FromRear(from) => point.at(from),
            RearAxle::Share(share) => point.at(self.wheelbase) * point.at(share).in_of_one(),
        }
    }

    pub(crate) fn track(&self, point: &Point) -> Length {
        point.at(self.track)
    }

    /// Left less right of each axle, as weighed.
    fn weighed_difference(&self, point: &Point, front: Mass, rear: Mass) -> [Mass; 2] {
        match self.sides {
            SideInputs::Wheels([fl, fr, rl, rr]) => {
                [point.at(fl) - point.at(fr), point.at(rl) - point.at(rr)]
            }
            SideInputs::Whole([left, right], _) if self.trailer => {
                [Mass::kg(0.0), point.at(left) - point.at(right)]
            }
            SideInputs::Unsaid(share, _) if self.trailer => {
                [Mass::kg(0.0), rear * point.at(share).in_of_one()]
            }
            SideInputs::Whole([left, right], spread) => {
                let (left, right) = (point.at(left), point.at(right));
                twisted((left - right) / (left + right), point.at(spread), front, rear)
            }
            SideInputs::Unsaid(share, spread) => {
                twisted(point.at(share).in_of_one(), point.at(spread), front, rear)
            }
        }
    }
}

/// The differences of two axles that are together a share of the whole, where one axle leans more
/// to the left than the other: what it has more, the other has less.
fn twisted(share: f64, spread: Share, front: Mass, rear: Mass) -> [Mass; 2] {
    let twist = front.min(rear) * spread.in_of_one();
    [front * share + twist, rear * share - twist]
}

impl Put {
    fn new(load: &Load, ledger: &mut Ledger) -> Self {
        let along = format!("{} along the vehicle", load.of);
        Self {
            mass: ledger.take(load.name.clone(), &load.mass),
            times: load.times.as_ref().map(|given| ledger.take("fuel against water", given)),
            along: match &load.spot.along {
                Along::FromRear(given) => PutAlong::FromRear(ledger.take(along, given)),
                Along::Share(given) => PutAlong::Share(ledger.take(along, given)),
            },
            left: ledger.take(format!("{} across the vehicle", load.of), &load.spot.left),
            name: load.name.clone(),
        }
    }
}

impl Car {
    fn new(towing: &Towing, ledger: &mut Ledger) -> Option<Self> {
        let Towing { wheelbase, overhang, front, rear, .. } = towing;
        let (wheelbase, overhang) = (wheelbase.as_ref()?, overhang.as_ref()?);
        let (front, rear) = (weighed(front.as_ref()?), weighed(rear.as_ref()?));
        Some(Self {
            wheelbase: ledger.take("wheelbase of the towing car", wheelbase),
            overhang: ledger.take("coupling behind the car's rear axle", overhang),
            front: ledger.take("front axle of the car, weighed", &front),
            rear: ledger.take("rear axle of the car, weighed", &rear),
        })
    }
}

/// A reading without a tolerance of its own has that of a public weighbridge.
pub(crate) fn weighed(given: &Given<Mass>) -> Given<Mass> {
    if !given.value.is_exact() || given.basis == Basis::Typical {
        return given.clone();
    }
    let scale = typical::<Mass>("weighbridge-tolerance");
    let (off, likely) = (scale.likely(), given.likely());
    let low = if likely > off { likely - off } else { Mass::kg(0.0) };
    Given {
        value: Ranged { low, likely, high: likely + off },
        source: format!("{}, ± {} kg assumed", given.source, off.in_kg()).into(),
        how: scale.how,
        ..given.clone()
    }
}

/// What the loads start from: the newest weighing with both axles, else the vehicle's papers.
pub(crate) fn base(stands: &Build) -> Option<Base<'_>> {
    let mut weighings: Vec<&Weighing> = stands.weighings.values().collect();
    weighings.sort_by(|a, b| a.date.cmp(&b.date));
    let newest = weighings.into_iter().rev().find_map(|weighing| of_weighing(stands, weighing));
    newest.or_else(|| of_papers(stands))
}

fn of_weighing<'b>(stands: &'b Build, weighing: &'b Weighing) -> Option<Base<'b>> {
    let read = |given: &Option<Given<Mass>>| given.as_ref().map(weighed);
    let [front, rear, left, right] = weighing.readings.each_ref().map(read);
    let wheels = match weighing.corners.each_ref().map(read) {
        [Some(fl), Some(fr), Some(rl), Some(rr)] => Some([fl, fr, rl, rr]),
        _ => None,
    };
    let axles = match (&wheels, front, rear) {
        (Some([fl, fr, rl, rr]), _, _) => {
            [vec![fl.clone(), fr.clone()], vec![rl.clone(), rr.clone()]]
        }
        (None, Some(front), Some(rear)) => [vec![front], vec![rear]],
        _ => return None,
    };
    let sides = match (wheels, left, right) {
        (Some(wheels), _, _) => Sides::Wheels(wheels),
        (None, Some(left), Some(right)) => Sides::Whole([left, right]),
        _ => Sides::Unsaid,
    };
    let state = weighing.state.as_deref().and_then(|name| {
        stands.loads.get_key_value(name).map(|(name, state)| (name.as_str(), state))
    });
    let nothing = aboard::nothing();
    let aboard = match state {
        Some((name, state)) => aboard::all(stands, name, state, &nothing),
        None => aboard::all(stands, AS_WEIGHED, &nothing, &nothing),
    };
    let when = weighing.date.as_ref().map_or_else(String::new, |date| format!(" of {date}"));
    let how = state.map_or_else(String::new, |(name, _)| format!(", {name}"));
    Some(Base {
        about: format!("the weighing{when}{how}"),
        aboard,
        axles,
        sides,
        state,
        weighed: true,
    })
}

fn of_papers(stands: &Build) -> Option<Base<'_>> {
    let unladen = stands.vehicle.axles.unladen.as_ref()?;
    Some(Base {
        about: "the papers of the bare vehicle".to_owned(),
        aboard: aboard::in_unladen(stands, unladen),
        axles: [vec![unladen.front.clone()], vec![unladen.rear.clone()]],
        sides: Sides::Unsaid,
        state: None,
        weighed: false,
    })
}

/// The name of the one state of a build that says nothing of load states.
pub(crate) const AS_WEIGHED: &str = "as weighed";
