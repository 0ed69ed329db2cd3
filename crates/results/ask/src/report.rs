//! The questions asked of a build, before and after a job.

use rayon::prelude::*;
use spile_answer::{Answer, Finding, Question, Verdict};
use spile_build::{Build, Planned};

use crate::next::{Next, measure_next};

/// What all questions answer of a build, or of a build before and after a job.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// The build's name.
    pub build: String,
    /// What the vehicle is, in a line.
    pub about: String,
    /// The job's name, where one was asked of.
    pub job: Option<String>,
    /// The option taken, where the job has options.
    pub option: Option<String>,
    /// The eight questions, in their order.
    pub answers: Vec<Asked>,
    /// What to measure next, the most decisive first.
    pub measure_next: Vec<Next>,
}

/// One question, asked before and after.
#[derive(Debug, Clone, PartialEq)]
pub struct Asked {
    /// Which question.
    pub question: Question,
    /// Its answer of the build as it stands.
    pub before: Answer,
    /// Its answer of the build after the job; `None` where no job was asked of.
    pub after: Option<Answer>,
}

/// A finding and the one of the same name before the job.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pair<'a> {
    /// The finding as it was before.
    pub before: Option<&'a Finding>,
    /// The finding as it is to be told: after the job, or of the build as it stands.
    pub now: &'a Finding,
}

impl Asked {
    /// The answer that counts: after the job, or of the build as it stands where there is none.
    pub fn now(&self) -> &Answer {
        self.after.as_ref().unwrap_or(&self.before)
    }

    /// The findings that count, each with the one of the same name before the job.
    pub fn pairs(&self) -> Vec<Pair<'_>> {
        let before = |now: &Finding| {
            self.after.as_ref()?;
            self.before.findings.iter().find(|finding| finding.id == now.id)
        };
        self.now().findings.iter().map(|now| Pair { before: before(now), now }).collect()
    }
}

impl Report {
    /// The worst verdict of all questions that count.
    pub fn verdict(&self) -> Verdict {
        self.answers.iter().map(|asked| asked.now().verdict()).max().unwrap_or(Verdict::Open)
    }
}

/// Asks all eight questions of a build as it stands, or before and after a job.
pub fn ask(name: &str, build: &Build, planned: Option<&Planned>) -> Report {
    let before = planned.map_or(build, |planned| &planned.before);
    let states: Vec<&Build> =
        [Some(before), planned.map(|planned| &planned.after)].into_iter().flatten().collect();
    let asked: Vec<(Question, &Build)> = Question::ALL
        .into_iter()
        .flat_map(|question| states.iter().map(move |state| (question, *state)))
        .collect();
    // Side by side, since bank takes as long as all others together; kept in their order.
    let mut given = asked
        .par_iter()
        .with_max_len(1)
        .map(|(question, state)| answer(*question, state))
        .collect::<Vec<_>>()
        .into_iter();
    let mut answers = Vec::with_capacity(Question::ALL.len());
    while let Some(before) = given.next() {
        let after = planned.and_then(|_| given.next());
        answers.push(Asked { question: before.question, before, after });
    }
    Report {
        build: name.to_owned(),
        about: build.about.clone(),
        job: planned.map(|planned| planned.job.clone()),
        option: planned.and_then(|planned| planned.option.clone()),
        measure_next: measure_next(&answers),
        answers,
    }
}

fn answer(question: Question, build: &Build) -> Answer {
    match question {
        Question::Fit => spile_fit::answer(build),
        Question::Air => spile_air::answer(build),
        Question::Hold => spile_hold::answer(build),
        Question::Wire => spile_wire::answer(build),
        Question::Cold => spile_cold::answer(build),
        Question::Bank => spile_bank::answer(build),
        Question::Axle => spile_axle::answer(build),
        Question::Meter => spile_meter::answer(build),
    }
}
