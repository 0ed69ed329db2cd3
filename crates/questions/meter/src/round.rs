//! A round with the meter as a drawing shows it: the places along a run, and what explains them.

use spile_answer::Expect;
use spile_build::{Build, Reading};
use spile_circuit::scene::OneRun;

use crate::cause::explain;
use crate::expect::Scene;
use crate::spot::{ALL, Spot};

/// A round with the meter along one run: one that was taken, or the one to take.
#[derive(Debug, Clone, PartialEq)]
pub struct Round {
    /// The run, by its name in the build.
    pub run: String,
    /// What hangs on it.
    pub item: String,
    /// The round that was taken, by its name in the build; `None` where none was yet.
    pub reading: Option<String>,
    /// Where the meter is put, in the order in which it is.
    pub points: Vec<TestPoint>,
    /// What explains the readings, the likeliest first; empty where all are as expected.
    pub causes: Vec<Cause>,
    /// The next test where there is a cause: what it is, and how to take it.
    pub next: Option<(String, String)>,
}

/// A place where the meter is put.
#[derive(Debug, Clone, PartialEq)]
pub struct TestPoint {
    /// Where it is.
    pub spot: Spot,
    /// What to expect there, with what was read.
    pub expect: Expect,
}

impl TestPoint {
    /// Whether what was read is as expected; `None` where nothing was read.
    pub fn is_as_expected(&self) -> Option<bool> {
        let Expect { low, high, .. } = self.expect;
        self.expect.read.map(|read| (low..=high).contains(&read))
    }
}

/// What explains the readings of a round.
#[derive(Debug, Clone, PartialEq)]
pub struct Cause {
    /// What it is, with its size: `a bad joint in the return, about 200 mΩ more ...`.
    pub says: String,
    /// How far all readings together are from it, Σ((r − m)/σ)², less is likelier.
    pub misfit: f64,
}

/// The rounds of all runs of which something can be expected: those taken, and one for each run
/// of which none was.
pub fn points(build: &Build) -> Vec<Round> {
    let Some(bank) = &build.bank else { return Vec::new() };
    let mut rounds = Vec::new();
    for (name, run) in &build.runs {
        let Some(asked) = OneRun::of(build, bank, name, run) else { continue };
        let taken = build.readings.iter().filter(|(_, taken)| taken.run == *name);
        let taken = taken.map(|(reading, taken)| Some((reading.as_str(), taken)));
        let mut of_run: Vec<Option<(&str, &Reading)>> = taken.collect();
        if of_run.is_empty() {
            of_run.push(None);
        }
        rounds.extend(of_run.into_iter().filter_map(|taken| round(&asked, taken)));
    }
    rounds
}

fn round(asked: &OneRun<'_>, taken: Option<(&str, &Reading)>) -> Option<Round> {
    let (reading, taken) = taken.unzip();
    let scene = Scene::of(asked, taken)?;
    let expects = scene.expects(taken);
    let points =
        ALL.into_iter().zip(expects).map(|(spot, expect)| TestPoint { spot, expect }).collect();
    let odd = taken.filter(|taken| !scene.are_as_expected(taken));
    let (causes, next) = odd.map_or((Vec::new(), None), |taken| {
        let (groups, next) = explain(asked, &scene, taken);
        let cause = |group: &crate::cause::Group| Cause {
            says: group.words(asked),
            misfit: group.best().misfit,
        };
        (groups.iter().map(cause).collect(), Some(next))
    });
    let [run, item] = [asked.name, asked.item].map(ToString::to_string);
    Some(Round { run, item, reading: reading.map(str::to_owned), points, causes, next })
}
