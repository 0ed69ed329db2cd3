//! The likeliest causes in words, and the next test that best tells them apart.

use spile_build::file::{ItemState, PartKind};
use spile_build::{Reading, Return};
use spile_circuit::scene::{OneRun, Stretch};

use crate::expect::Scene;
use crate::fit::{Fitted, Kind, causes};
use crate::spot::{ALL, Spot};

/// Two causes this near in misfit are not told apart by what was read.
const ALIKE: f64 = 1.0;

/// A cause this much worse than the best is out of the question.
const FAR: f64 = 9.0;

/// Causes that no reading taken tells apart, the best first.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Group {
    pub(crate) all: Vec<Fitted>,
}

/// What explains the readings of a round: the leading causes, and the next test with how to take it.
pub(crate) fn explain(
    asked: &OneRun<'_>,
    scene: &Scene,
    taken: &Reading,
) -> (Vec<Group>, (String, String)) {
    let kind = asked.build.items.get(&asked.run.to).map(|item| item.part.kind);
    let is_cold = matches!(
        kind,
        Some(PartKind::UprightFridge | PartKind::LiddedBox | PartKind::DrawerFridge)
    );
    let by_body = matches!(asked.run.back, Return::Body { .. });
    let groups = groups(&causes(scene, taken, is_cold, by_body));
    let next = next(asked, scene, taken, &groups);
    (groups, next)
}

/// The leading causes, those alike of one nature together; at most three.
fn groups(causes: &[Fitted]) -> Vec<Group> {
    let Some(best) = causes.first() else { return Vec::new() };
    let mut groups: Vec<Group> = Vec::new();
    for cause in causes.iter().filter(|cause| cause.misfit <= best.misfit + FAR) {
        let joins = |group: &&mut Group| {
            let first = &group.all[0];
            nature(first.kind) == nature(cause.kind) && cause.misfit <= first.misfit + ALIKE
        };
        match groups.iter_mut().find(joins) {
            Some(group) => group.all.push(*cause),
            None => groups.push(Group { all: vec![*cause] }),
        }
    }
    groups.truncate(3);
    groups
}

/// Causes that are the same but for the place.
const fn nature(kind: Kind) -> u8 {
    match kind {
        Kind::Overcharged => 0,
        Kind::Bad(_) => 1,
        Kind::Open(_) => 2,
        Kind::Thinner => 3,
        Kind::Standby => 4,
        Kind::FanOnly => 5,
        Kind::Less => 6,
        Kind::More => 7,
        Kind::Battery => 8,
        Kind::Swapped => 9,
        Kind::ClampZero => 10,
    }
}

impl Group {
    pub(crate) fn best(&self) -> &Fitted {
        &self.all[0]
    }

    /// What it is, with its size.
    pub(crate) fn words(&self, asked: &OneRun<'_>) -> String {
        let best = self.best();
        match best.kind {
            Kind::Bad(_) => {
                let mohm = 1000.0 * best.size;
                let heat_w = best.size * best.current_a * best.current_a;
                format!(
                    "a bad joint in {}, about {mohm:.0} mΩ more than it should have; {heat_w:.1} W of heat in it",
                    self.places()
                )
            }
            Kind::Open(_) => format!(
                "an open way in {}: a fuse missing or blown, or a joint come apart",
                self.places()
            ),
            Kind::Thinner => {
                format!(
                    "cables with {:.1} times the resistance that {} should have: thinner, or longer",
                    best.size, asked.run.feed.section
                )
            }
            Kind::Standby => format!(
                "the {} asks for nothing: satisfied, on standby, or a fault of its own",
                asked.item
            ),
            Kind::FanOnly => "only the fan runs; the compressor waits to start again".to_owned(),
            Kind::Less => format!(
                "the {} takes only {:.1} A: a lower speed, or not yet settled",
                asked.item, best.size
            ),
            Kind::More => format!(
                "the {} takes {:.1} A, more than it should: hot at its condenser, or a fault of its own",
                asked.item, best.size
            ),
            Kind::Battery => "the battery is flat or failing".to_owned(),
            Kind::Overcharged => {
                "the battery is charged with more volts than it should get".to_owned()
            }
            Kind::Swapped => "feed and return are swapped at the plug".to_owned(),
            Kind::ClampZero => {
                "the clamp was not zeroed, or is one for alternating current only".to_owned()
            }
        }
    }

    fn places(&self) -> String {
        let stretches = self.all.iter().filter_map(|cause| match cause.kind {
            Kind::Bad(stretch) | Kind::Open(stretch) => Some(place(stretch)),
            _ => None,
        });
        let mut names: Vec<&str> = Vec::new();
        for name in stretches {
            if !names.contains(&name) {
                names.push(name);
            }
        }
        match names.as_slice() {
            [] => String::new(),
            [one] => (*one).to_owned(),
            [most @ .., last] => format!("{} or {last}", most.join(", ")),
        }
    }
}

const fn place(stretch: Stretch) -> &'static str {
    match stretch {
        Stretch::Main => "the way from the post to the block",
        Stretch::Fuse => "the fuse's way",
        Stretch::Feed => "the feed with its plug",
        Stretch::Back => "the return",
        Stretch::Body => "the body's bond",
        Stretch::Tail => "the common return to the post",
    }
}

/// The next test: what it is, and how to take it.
fn next(asked: &OneRun<'_>, scene: &Scene, taken: &Reading, groups: &[Group]) -> (String, String) {
    let Some(first) = groups.first() else {
        return ("a day of readings".to_owned(), "Log a day, and file it.".to_owned());
    };
    let named = |name: &str, how: &str| (name.to_owned(), how.to_owned());
    match first.best().kind {
        Kind::Battery => {
            return named(
                "battery under load",
                "Charge it, let it rest for some hours and read it; then read it again with a load of some ten amperes on for a minute.",
            );
        }
        Kind::Overcharged => {
            return named(
                "volts at the posts with each charger off in turn",
                "Switch off what charges it, one after the other, and read the posts; then hold the volts that the charger is set to against the battery's papers.",
            );
        }
        Kind::Open(_) => {
            return named(
                "both sides of the fuse",
                "Volts from each side of the fuse in its way to the battery's negative post: both full, the fuse is whole and the way is open behind it; one, the fuse is open. Then the same along the return.",
            );
        }
        Kind::Standby => {
            return named(
                "the appliance itself",
                "Lower its set point, wait 5 minutes, and count the flashes of its lamp.",
            );
        }
        Kind::FanOnly => {
            return named(
                "the same after 5 minutes",
                "Wait, and read the current again: a compressor waits some minutes before it starts again.",
            );
        }
        Kind::ClampZero => {
            return named(
                "clamp with nothing in it",
                "Zero it away from any cable, turn it round and read again: the sign must turn. Is it one for direct current?",
            );
        }
        Kind::Swapped => {
            return named(
                "polarity",
                "Take its fuse out. Probe the plug against the battery's negative post: the feed's side has the volts. Do not switch on before feed and return are right.",
            );
        }
        Kind::Bad(_) if taken.state == ItemState::Starting => {
            return named(
                "lowest volts during the start",
                "Set the meter to keep its lowest value and start it again; or hang a filament bulb of its current in its place, which loads the joint for as long as you look.",
            );
        }
        Kind::More => {
            return named(
                "current with the panel open",
                "Open the panel in front of it: does the current fall within some minutes? Then its condenser breathes its own warm air.",
            );
        }
        Kind::Less => {
            return named(
                "the same after 10 minutes",
                "Wait until it has settled, and read the current again.",
            );
        }
        _ => {}
    }
    let predicted: Vec<&Fitted> = groups.iter().flat_map(|group| &group.all).collect();
    let apart = |spot: Spot| {
        let (low, high) = scene.ends(spot);
        let shown = predicted.iter().map(|cause| cause.shows[spot as usize]);
        let least = shown.clone().fold(f64::INFINITY, f64::min);
        let most = shown.fold(f64::NEG_INFINITY, f64::max);
        (most - least) / (high - low)
    };
    let unread = ALL.into_iter().filter(|spot| spot.read(taken).is_none());
    let best = unread
        .map(|spot| (spot, apart(spot)))
        .filter(|(_, apart)| *apart > 1.0)
        .reduce(|best, next| if next.1 > 1.5 * best.1 { next } else { best });
    match best {
        Some((Spot::FeedDrop | Spot::ReturnDrop, _)) => named(
            "millivolts on the feed, then on the return",
            &format!("{} {}", Spot::FeedDrop.how(), Spot::ReturnDrop.how()),
        ),
        Some((Spot::MainDrop | Spot::NegativeDrop, _)) => named(
            "millivolts across main fuse, isolator and common return",
            &format!("{} {}", Spot::MainDrop.how(), Spot::NegativeDrop.how()),
        ),
        Some((spot, _)) => named(spot.name(), spot.how()),
        None if matches!(first.best().kind, Kind::Thinner) => named(
            "print along the cable",
            "Read the print along the cable, in mm² or AWG; measure its length again.",
        ),
        None => named(
            "millivolts from joint to joint",
            &format!(
                "With the {} on, millivolts across each crimp, stud and plug of that stretch: the bad one has nearly all of it.",
                asked.item
            ),
        ),
    }
}
