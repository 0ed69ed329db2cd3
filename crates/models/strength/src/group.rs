//! How a push is shared among fasteners.

use spile_quantity::{Force, Length};

use crate::NoAnswer;

/// Fasteners on a face, their places right of and above its lower left corner.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    places_m: Vec<[f64; 2]>,
    face_m: [f64; 2],
}

/// A push on the thing that is held, as one looks at the face it is fixed by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Push {
    /// To the right along the face.
    pub right: Force,
    /// Up along the face.
    pub above: Force,
    /// Away from what it is fixed to; negative presses it on.
    pub away: Force,
}

/// What one fastener takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// Along its axis; never negative.
    pub tension: Force,
    /// Across its axis.
    pub shear: Force,
}

impl Group {
    /// Fasteners at `places` on a face of width and height `face`.
    ///
    /// # Errors
    /// [`NoAnswer::OutOfRange`] without a fastener, or with one that lies off any face of 20 m.
    pub fn new(places: &[[Length; 2]], face: [Length; 2]) -> Result<Self, NoAnswer> {
        let within = crate::no_answer::within;
        within("count of fasteners", places.len() as f64, "", 1.0, 10_000.0)?;
        for length in places.iter().flatten() {
            within("place of a fastener", length.in_m(), "m", -20.0, 20.0)?;
        }
        let face_m = face.map(Length::in_m);
        for side_m in face_m {
            within("side of the face", side_m, "m", 1e-3, 20.0)?;
        }
        Ok(Self { places_m: places.iter().map(|place| place.map(Length::in_m)).collect(), face_m })
    }

    /// How many there are.
    pub fn count(&self) -> usize {
        self.places_m.len()
    }

    /// What each fastener takes of a push through a point, tension T and shear V \[N\].
    ///
    /// **Formula** along the face, with the middle of the fasteners as origin and
    /// M = Fy·ex − Fx·ey: V = |(Fx/n − M·y/Ip, Fy/n + M·x/Ip)|, Ip = Σ(x² + y²). Away from it:
    /// T = max(N, 0)/n + Fx·h·u/Σu² + Fy·h·v/Σv², u and v the distances from the edge of the face
    /// that the push tips it over.
    ///
    /// **Arguments** `push` \[N\]; `through` ex, ey \[m\], where it acts, from the face's corner;
    /// `lever` h \[m\], how far in front of the face it acts, 0 or more.
    ///
    /// **Validity** a rigid thing on fasteners of one stiffness; fasteners in one row along the
    /// tipped edge bear what the formula gives, infinite where all lie on that edge.
    /// What presses it on is no help.
    ///
    /// **Source** the elastic method for eccentrically loaded bolt groups: AISC Steel Construction
    /// Manual, part 7; Shigley, Mechanical Engineering Design, section 8-12. Tension about the
    /// compression edge: common practice, no source.
    ///
    /// **Example** see the crate.
    pub fn shares(&self, push: Push, through: [Length; 2], lever: Length) -> Vec<Share> {
        let count = self.places_m.len() as f64;
        let [fx_n, fy_n, away_n] = [push.right, push.above, push.away].map(Force::in_n);
        let tips = [self.tip(0, fx_n * lever.in_m()), self.tip(1, fy_n * lever.in_m())];
        let direct_n = away_n.max(0.0) / count;
        let one = |(at, along): (usize, [Force; 2])| {
            let tension_n = direct_n + tips.iter().map(|tip| tip[at]).sum::<f64>();
            let shear_n = along[0].in_n().hypot(along[1].in_n());
            Share { tension: Force::n(tension_n), shear: Force::n(shear_n) }
        };
        self.along(push, through).into_iter().enumerate().map(one).collect()
    }

    /// What each fastener takes of a push along the face, as a force with its direction, to the
    /// right and up \[N\].
    ///
    /// **Formula** V = (Fx/n − M·y/Ip, Fy/n + M·x/Ip), as in [`Group::shares`], which has its
    /// magnitude.
    ///
    /// **Arguments**, **Validity**, **Source** as for [`Group::shares`].
    ///
    /// **Example** 400 N to the right through the middle of four fasteners: 100 N on each.
    ///
    /// ```
    /// use spile_quantity::{Force, Length};
    /// use spile_strength::group::{Group, Push};
    /// let at = |x: f64, y: f64| [Length::mm(x), Length::mm(y)];
    /// let places = [at(0.0, 0.0), at(200.0, 0.0), at(0.0, 100.0), at(200.0, 100.0)];
    /// let group = Group::new(&places, at(200.0, 100.0)).unwrap();
    /// let none = Force::n(0.0);
    /// let push = Push { right: Force::n(400.0), above: none, away: none };
    /// for [right, above] in group.along(push, at(100.0, 50.0)) {
    ///     assert!((right.in_n() - 100.0).abs() < 1e-9 && above.in_n().abs() < 1e-9);
    /// }
    /// ```
    pub fn along(&self, push: Push, through: [Length; 2]) -> Vec<[Force; 2]> {
        let count = self.places_m.len() as f64;
        let [fx_n, fy_n] = [push.right, push.above].map(Force::in_n);
        let mean = |axis: usize| self.places_m.iter().map(|p| p[axis]).sum::<f64>() / count;
        let middle_m = [mean(0), mean(1)];
        let from_middle = |p: &[f64; 2]| [p[0] - middle_m[0], p[1] - middle_m[1]];
        let polar_m2: f64 = self.places_m.iter().map(from_middle).map(|[x, y]| x * x + y * y).sum();
        let [ex_m, ey_m] = [through[0].in_m() - middle_m[0], through[1].in_m() - middle_m[1]];
        let turn_n_m = fy_n * ex_m - fx_n * ey_m;
        let per_m = if polar_m2 > TINY { turn_n_m / polar_m2 } else { 0.0 };
        let one = |place: &[f64; 2]| {
            let [x_m, y_m] = from_middle(place);
            [fx_n / count - per_m * y_m, fy_n / count + per_m * x_m].map(Force::n)
        };
        self.places_m.iter().map(one).collect()
    }

    /// The tension of each fastener as the thing tips over an edge across `axis`.
    fn tip(&self, axis: usize, moment_n_m: f64) -> Vec<f64> {
        if moment_n_m == 0.0 {
            return vec![0.0; self.places_m.len()];
        }
        let from_edge = |place: &[f64; 2]| {
            let arm_m =
                if moment_n_m > 0.0 { self.face_m[axis] - place[axis] } else { place[axis] };
            arm_m.max(0.0)
        };
        let arms_m: Vec<f64> = self.places_m.iter().map(from_edge).collect();
        let squares_m2: f64 = arms_m.iter().map(|arm_m| arm_m * arm_m).sum();
        if squares_m2 <= TINY {
            return vec![f64::INFINITY; self.places_m.len()];
        }
        arms_m.iter().map(|arm_m| moment_n_m.abs() * arm_m / squares_m2).collect()
    }
}

/// Squares of lengths below this are those of fasteners in one point \[m²\].
const TINY: f64 = 1e-12;
