//! A drawing of a build, and which drawings there are.

use maud::PreEscaped;
use spile_answer::Question;
use spile_build::Build;

/// For which page a drawing is lettered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Width {
    /// For a laptop, and for paper.
    Wide,
    /// For a page of 360 px: drawn anew, never a wide one shrunk.
    Narrow,
}

impl Width {
    /// How wide the sheet is, in units: pixels of the page that it is lettered for.
    pub const fn units(self) -> f64 {
        match self {
            Self::Wide => 820.0,
            Self::Narrow => 328.0,
        }
    }

    /// The class by which a page shows one and hides the other.
    pub const fn class(self) -> &'static str {
        match self {
            Self::Wide => "wide mid",
            Self::Narrow => "narrow mid",
        }
    }
}

/// A drawing made of a model.
#[derive(Debug, Clone)]
pub struct Drawing {
    /// What it shows, in a few words.
    pub title: String,
    /// The scale on paper, of a drawing that is to scale: `on paper 1 : 30`.
    pub scale: Option<String>,
    /// The `svg` element.
    pub svg: PreEscaped<String>,
    /// The same figures as rows of text, for keyboards and screen readers.
    pub table: Option<Rows>,
}

/// A table of text.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Rows {
    /// The heads of its columns.
    pub head: Vec<String>,
    /// Its rows, each as long as the head.
    pub rows: Vec<Vec<String>>,
}

/// The vehicle in plan and from its side, with what stands in it; after the job where there is one.
///
/// One drawing a view, of the same width and scale, so that one stands in line below the other.
pub fn vehicle(before: &Build, after: Option<&Build>, width: Width) -> Vec<Drawing> {
    crate::vehicle::views(before, after, width)
}

/// An item that a job brings or takes away, and the number on its ball in the vehicle's drawings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Numbered {
    /// The number.
    pub number: usize,
    /// The item's name.
    pub item: String,
    /// Whether it comes to where it is drawn; else it goes from there.
    pub comes: bool,
}

/// The numbers that the vehicle's drawings give to what a job brings, moves and takes away; what
/// has no place has none.
pub fn numbers(before: &Build, after: &Build) -> Vec<Numbered> {
    crate::vehicle::numbers(before, after)
}

/// The drawings of one question; none where the build says too little for any.
pub fn drawings(
    question: Question,
    before: &Build,
    after: Option<&Build>,
    width: Width,
) -> Vec<Drawing> {
    match question {
        Question::Fit => crate::fit::drawings(before, after, width),
        Question::Axle => crate::vehicle::on_axles(before, after, width),
        Question::Cold => crate::energy::drawings(before, after, width),
        Question::Bank => crate::year::drawings(before, after, width),
        Question::Wire => {
            let mut drawn = crate::oneline::drawings(before, after, width);
            drawn.extend(crate::volts::drawing(before, after, width));
            drawn
        }
        Question::Hold => crate::forces::drawings(before, after, width),
        Question::Air => crate::section::drawings(before, after, width),
        Question::Meter => crate::points::drawings(before, after, width),
    }
}
