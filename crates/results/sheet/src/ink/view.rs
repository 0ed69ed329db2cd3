//! From millimetres of the vehicle to units of the sheet.

/// A rectangle on the sheet: left, top, right, bottom.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Box2 {
    /// Its left edge.
    pub left: f64,
    /// Its upper edge; units grow downwards.
    pub top: f64,
    /// Its right edge.
    pub right: f64,
    /// Its lower edge.
    pub bottom: f64,
}

impl Box2 {
    /// The rectangle that two opposite corners span.
    pub fn of(a: [f64; 2], b: [f64; 2]) -> Self {
        Self {
            left: a[0].min(b[0]),
            top: a[1].min(b[1]),
            right: a[0].max(b[0]),
            bottom: a[1].max(b[1]),
        }
    }

    /// Its width.
    pub fn width(&self) -> f64 {
        self.right - self.left
    }

    /// Its height.
    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }

    /// Its middle.
    pub fn middle(&self) -> [f64; 2] {
        [f64::midpoint(self.left, self.right), f64::midpoint(self.top, self.bottom)]
    }

    /// The same, wider by `by` on every side.
    #[must_use]
    pub fn grown(&self, by: f64) -> Self {
        Self {
            left: self.left - by,
            top: self.top - by,
            right: self.right + by,
            bottom: self.bottom + by,
        }
    }

    /// Whether two rectangles have more than an edge in common.
    pub fn touches(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    /// Whether another lies wholly in this one.
    pub fn holds(&self, other: &Self) -> bool {
        self.left <= other.left
            && self.top <= other.top
            && self.right >= other.right
            && self.bottom >= other.bottom
    }

    /// The smallest rectangle around both.
    #[must_use]
    pub fn joined(&self, other: &Self) -> Self {
        Self {
            left: self.left.min(other.left),
            top: self.top.min(other.top),
            right: self.right.max(other.right),
            bottom: self.bottom.max(other.bottom),
        }
    }

    /// Its four corners, round it.
    pub fn corners(&self) -> [[f64; 2]; 4] {
        [
            [self.left, self.top],
            [self.right, self.top],
            [self.right, self.bottom],
            [self.left, self.bottom],
        ]
    }
}

/// One view of a drawing: how the vehicle's millimetres lie on the sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct View {
    /// Its name: `plan`, `side`, `front`.
    pub name: &'static str,
    /// Which axis runs to the right and which one upwards, each with its sign: `x y`, `-x z`.
    pub axes: &'static str,
    /// How many millimetres one unit of the sheet is.
    pub scale: f64,
    /// Where the origin of the axes lies on the sheet.
    pub origin: [f64; 2],
}

impl View {
    /// A place \[mm\] to the right of and above the origin, on the sheet.
    pub fn at(&self, [right_mm, up_mm]: [f64; 2]) -> [f64; 2] {
        [self.origin[0] + right_mm / self.scale, self.origin[1] - up_mm / self.scale]
    }

    /// The rectangle between two places.
    pub fn rect(&self, a: [f64; 2], b: [f64; 2]) -> Box2 {
        Box2::of(self.at(a), self.at(b))
    }

    /// How long a distance is on the sheet.
    pub fn units(&self, length_mm: f64) -> f64 {
        length_mm / self.scale
    }
}

/// A number of the sheet, to a thousandth of a unit.
pub fn number(value: f64) -> String {
    let text = format!("{value:.3}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// The round scale at which a drawing of that many millimetres a unit fits paper, where a unit is
/// a quarter of a millimetre: `on paper 1 : 30`.
pub fn scale_words(scale: f64) -> String {
    let exact = scale / 0.25;
    let ten = 10_f64.powf(exact.log10().floor());
    let steps = [1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 7.5, 8.0, 10.0];
    let step = steps.into_iter().find(|step| step * ten >= exact - 1e-9).unwrap_or(10.0);
    format!("on paper 1 : {}", number(step * ten))
}
