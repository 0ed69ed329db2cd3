//! The sheet that is drawn on.

use maud::{Markup, PreEscaped, html};

use super::letter::{Letter, Spot};
use super::view::{Box2, View, number};

/// The class of a line: its weight, its dashes and its fill.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Line {
    /// Cut through.
    Cut,
    /// Seen, an outline.
    Seen,
    /// Seen, lesser.
    Thin,
    /// Hatching, detail.
    Hair,
    /// A dimension line or a leader.
    Dim,
    /// The oblique stroke at a dimension's end.
    Tick,
    /// Hidden behind something, or where it may be.
    Hidden,
    /// A centre line.
    Centre,
    /// What the job takes out.
    Gone,
    /// What the job brings, as a line.
    Added,
    /// What the job brings, a lesser line.
    AddedThin,
    /// What the job brings, with its body.
    AddedBody,
    /// Space that papers ask for.
    Space,
    /// The same of what is there already.
    SpaceNow,
    /// A limit.
    Limit,
    /// A wall that is cut through; no line.
    Wall,
    /// A body that hides what is behind it.
    Solid,
    /// Filled with ink.
    Filled,
    /// Filled with what the job brings.
    FilledAdded,
}

impl Line {
    /// Its classes in the style.
    pub const fn class(self) -> &'static str {
        match self {
            Self::Cut => "cut",
            Self::Seen => "out",
            Self::Thin => "thin",
            Self::Hair => "hair",
            Self::Dim => "dim",
            Self::Tick => "tick",
            Self::Hidden => "hid",
            Self::Centre => "cen",
            Self::Gone => "gone",
            Self::Added => "add",
            Self::AddedThin => "add1",
            Self::AddedBody => "addf",
            Self::Space => "space",
            Self::SpaceNow => "space now",
            Self::Limit => "limit",
            Self::Wall => "wall",
            Self::Solid => "out solid",
            Self::Filled => "inkf",
            Self::FilledAdded => "fill-a",
        }
    }
}

/// A sheet, drawn on from top to bottom.
#[derive(Debug, Default)]
pub struct Ink {
    wide: f64,
    drawn: String,
    /// Where lettering stands.
    lettered: Vec<Box2>,
    /// What lettering should not cross, such as arrows and balls.
    kept_free: Vec<Box2>,
    reach: Option<[f64; 2]>,
}

impl Ink {
    /// An empty sheet of a width, in units.
    pub fn new(wide: f64) -> Self {
        Self { wide, ..Self::default() }
    }

    /// How wide it is.
    pub const fn wide(&self) -> f64 {
        self.wide
    }

    /// Where lettering stands so far.
    pub fn lettered(&self) -> &[Box2] {
        &self.lettered
    }

    /// Puts in an element as it is.
    pub fn put(&mut self, element: &Markup) {
        self.drawn.push_str(&element.0);
    }

    /// Draws what `inner` draws as one thing, which pointers and screen readers find by its name.
    pub fn thing(&mut self, name: &str, title: &str, inner: impl FnOnce(&mut Self)) {
        let before = std::mem::take(&mut self.drawn);
        inner(self);
        let drawn = std::mem::replace(&mut self.drawn, before);
        self.put(&html! { g data-thing=(name) { title { (title) } (PreEscaped(drawn)) } });
    }

    /// Draws what `inner` draws as one view.
    pub fn view(&mut self, view: &View, inner: impl FnOnce(&mut Self)) {
        let before = std::mem::take(&mut self.drawn);
        inner(self);
        let drawn = std::mem::replace(&mut self.drawn, before);
        let [x, y] = view.origin.map(number);
        self.put(&html! {
            g data-view=(view.name) data-axes=(view.axes) data-mm=(number(view.scale)) data-x=(x) data-y=(y) {
                (PreEscaped(drawn))
            }
        });
    }

    /// A line.
    pub fn line(&mut self, line: Line, from: [f64; 2], to: [f64; 2]) {
        self.reached(from[1]);
        self.reached(to[1]);
        self.put(&html! {
            line class=(line.class()) x1=(number(from[0])) y1=(number(from[1])) x2=(number(to[0])) y2=(number(to[1])) {}
        });
    }

    /// A rectangle.
    pub fn rect(&mut self, line: Line, at: Box2) {
        self.rounded(line, at, 0.0);
    }

    /// A rectangle with rounded corners.
    pub fn rounded(&mut self, line: Line, at: Box2, radius: f64) {
        self.reached(at.top);
        self.reached(at.bottom);
        self.put(&html! {
            rect class=(line.class()) x=(number(at.left)) y=(number(at.top)) width=(number(at.width()))
                height=(number(at.height())) rx=[(radius > 0.0).then(|| number(radius))] {}
        });
    }

    /// A circle.
    pub fn circle(&mut self, line: Line, [x, y]: [f64; 2], radius: f64) {
        self.reached(y - radius);
        self.reached(y + radius);
        self.put(&html! {
            circle class=(line.class()) cx=(number(x)) cy=(number(y)) r=(number(radius)) {}
        });
    }

    /// A line through points, closed where `closed`.
    pub fn through(&mut self, line: Line, points: &[[f64; 2]], closed: bool) {
        let mut path = String::new();
        for (place, [x, y]) in points.iter().enumerate() {
            self.reached(*y);
            let letter = if place == 0 { 'M' } else { 'L' };
            path.push_str(&format!("{letter}{} {}", number(*x), number(*y)));
        }
        if closed {
            path.push('Z');
        }
        self.path(line, &path);
    }

    /// A path as SVG writes it, in units.
    pub fn path(&mut self, line: Line, path: &str) {
        self.put(&html! { path class=(line.class()) d=(path) {} });
    }

    /// Says that the drawing goes at least as high or as low as this.
    pub fn reached(&mut self, y: f64) {
        let [top, bottom] = self.reach.unwrap_or([y, y]);
        self.reach = Some([top.min(y), bottom.max(y)]);
    }

    /// How low the drawing goes so far.
    pub fn bottom(&self) -> f64 {
        self.reach.map_or(0.0, |[_, bottom]| bottom)
    }

    /// Whether a rectangle lies between the top and the bottom of what is drawn so far.
    pub(super) fn is_within_reach(&self, at: &Box2) -> bool {
        self.reach.is_some_and(|[top, bottom]| at.top >= top && at.bottom <= bottom + 60.0)
    }

    /// Keeps a rectangle free of lettering.
    pub fn keep_free(&mut self, at: Box2) {
        self.kept_free.push(at);
    }

    /// Whether lettering may stand there.
    pub fn is_free(&self, at: &Box2) -> bool {
        at.left >= 0.0
            && at.right <= self.wide
            && !self.lettered.iter().chain(&self.kept_free).any(|other| other.touches(at))
    }

    /// A text, wherever it stands.
    pub fn text(&mut self, letter: &Letter, spot: &Spot, text: &str) {
        let stands = self.stands(letter, spot, text);
        self.reached(stands.top);
        self.reached(stands.bottom);
        self.lettered.push(stands);
        let [x, y] = spot.at.map(number);
        let turn = spot.upright.then(|| format!("rotate(-90 {x} {y})"));
        let class = if letter.class.is_empty() {
            "halo".to_owned()
        } else {
            format!("{} halo", letter.class)
        };
        self.put(&html! {
            text class=(class) x=(x) y=(y) text-anchor=[spot.anchor.word()] transform=[turn] { (text) }
        });
    }

    /// A text at the first of some places where it touches nothing; `false`, and not written, where
    /// there is none.
    pub fn label(&mut self, letter: &Letter, spots: &[Spot], text: &str) -> bool {
        let free = |spot: &&Spot| self.is_free(&self.stands(letter, spot, text));
        let Some(spot) = spots.iter().find(free).copied() else { return false };
        self.text(letter, &spot, text);
        true
    }

    /// Where a text would stand.
    pub fn stands(&self, letter: &Letter, spot: &Spot, text: &str) -> Box2 {
        if spot.upright {
            letter.stands_upright(spot.at, spot.anchor, text)
        } else {
            letter.stands(spot.at, spot.anchor, text)
        }
    }

    /// The sheet as an `svg` element, as high as what is drawn on it.
    ///
    /// `classes` come after `dw`; a view on the root says how a pointer is carried back.
    pub fn finish(
        self,
        classes: &str,
        title: &str,
        says: &str,
        view: Option<&View>,
    ) -> PreEscaped<String> {
        let [top, bottom] = self.reach.unwrap_or([0.0, 0.0]);
        let (top, bottom) = (top - 4.0, bottom + 4.0);
        let frame =
            format!("0 {} {} {}", number(top), number(self.wide), number((bottom - top).max(1.0)));
        let label = if says.is_empty() { title.to_owned() } else { format!("{title}. {says}") };
        html! {
            svg xmlns="http://www.w3.org/2000/svg" class={ "dw " (classes) } viewBox=(frame) role="img" aria-label=(label)
                data-view=[view.map(|view| view.name)] data-axes=[view.map(|view| view.axes)]
                data-mm=[view.map(|view| number(view.scale))]
                data-x=[view.map(|view| number(view.origin[0]))] data-y=[view.map(|view| number(view.origin[1]))] {
                (PreEscaped(self.drawn))
            }
        }
    }
}
