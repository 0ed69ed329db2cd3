//! The eight questions, and an answer to one of them.

use crate::finding::Finding;
use crate::verdict::Verdict;

/// One of the eight questions.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Question {
    /// Does it go in, and can it come out again?
    Fit,
    /// Does it get the air it needs?
    Air,
    /// Does it stay where it is put?
    Hold,
    /// Are cable, return and fuse right?
    Wire,
    /// Does it keep the food, as long as we stay away from shops?
    Cold,
    /// Does the battery carry it, through the trips we really make?
    Bank,
    /// Do axles and tyres carry it, and does it sit level?
    Axle,
    /// What should the meter read, and what does it mean that it reads something else?
    Meter,
}

impl Question {
    /// All eight, in their order.
    pub const ALL: [Self; 8] = [
        Self::Fit,
        Self::Air,
        Self::Hold,
        Self::Wire,
        Self::Cold,
        Self::Bank,
        Self::Axle,
        Self::Meter,
    ];

    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fit => "fit",
            Self::Air => "air",
            Self::Hold => "hold",
            Self::Wire => "wire",
            Self::Cold => "cold",
            Self::Bank => "bank",
            Self::Axle => "axle",
            Self::Meter => "meter",
        }
    }

    /// The question in words.
    pub const fn sentence(self) -> &'static str {
        match self {
            Self::Fit => "Does it go in, and can it come out again?",
            Self::Air => "Does it get the air it needs?",
            Self::Hold => "Does it stay where it is put?",
            Self::Wire => "Are cable, return and fuse right?",
            Self::Cold => "Does it keep the food, as long as we stay away from shops?",
            Self::Bank => "Does the battery carry it, through the trips we really make?",
            Self::Axle => "Do axles and tyres carry it, and does it sit level?",
            Self::Meter => {
                "What should the meter read, and what does it mean that it reads something else?"
            }
        }
    }
}

/// What a question answers of one state of the build.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// Which question.
    pub question: Question,
    /// What it found, in its own order; the worst need not be first.
    pub findings: Vec<Finding>,
    /// What was taken for granted to answer it, in words: the assumed topology and the like.
    pub assumed: Vec<String>,
}

impl Answer {
    /// The worst verdict of its findings; *open* where there are none.
    pub fn verdict(&self) -> Verdict {
        self.findings.iter().map(|finding| finding.verdict).max().unwrap_or(Verdict::Open)
    }

    /// The finding that gives the verdict: the first of the worst.
    pub fn leading(&self) -> Option<&Finding> {
        let worst = self.verdict();
        self.findings.iter().find(|finding| finding.verdict == worst)
    }
}
