//! The vehicle's own shape, as far as the build says it.

use spile_answer::Given;
use spile_build::Vehicle;
use spile_build::file::VehicleKind;
use spile_quantity::Length;

use super::From;
use super::scene::Scene;
use crate::drawing::Width;
use crate::ink::{Ink, Letter, Line, Spot, View, figure, number};

/// How thick a wall is drawn whose thickness follows from nothing \[mm\].
const WALL_MM: f64 = 60.0;

/// The likeness of a wheel \[mm\]: its radius and how wide it is.
const WHEEL_MM: [f64; 2] = [345.0, 215.0];

/// Sizes of the vehicle \[mm\]; `None` where one is not said.
#[derive(Debug)]
pub(super) struct Shell {
    kind: VehicleKind,
    outside: [Option<f64>; 3],
    inside: [Option<f64>; 3],
    floor: Option<f64>,
    wheelbase: Option<f64>,
    rear_axle: Option<f64>,
    tag: Option<f64>,
    track: Option<f64>,
}

impl Shell {
    pub(super) fn of(vehicle: &Vehicle) -> Self {
        let mm = |given: &Option<Given<Length>>| given.as_ref().map(|given| given.likely().in_mm());
        Self {
            kind: vehicle.kind,
            outside: vehicle.outside.each_ref().map(mm),
            inside: vehicle.inside.each_ref().map(mm),
            floor: mm(&vehicle.floor),
            wheelbase: mm(&vehicle.wheelbase),
            rear_axle: mm(&vehicle.rear_axle),
            tag: vehicle.axles.tag.as_ref().and_then(|tag| mm(&tag.behind)),
            track: mm(&vehicle.axles.track),
        }
    }

    /// The inside along an axis, in words.
    pub(super) fn inside_words(&self, axis: usize) -> String {
        self.inside[axis]
            .map_or_else(|| "not said".to_owned(), |size| format!("0 to {}", figure(size)))
    }

    /// The thickness of the side walls, where both widths are said.
    fn wall(&self) -> f64 {
        match (self.outside[1], self.inside[1]) {
            (Some(outside), Some(inside)) if outside > inside => (outside - inside) / 2.0,
            _ => WALL_MM,
        }
    }

    /// Its outer rear and front faces, from the inside rear face.
    fn ends(&self) -> Option<[f64; 2]> {
        let wall = self.wall();
        let inside = self.inside[0]?;
        let long = self.outside[0].unwrap_or(inside + 2.0 * wall).max(inside);
        let rear = -wall.min(long - inside);
        let front = rear + long;
        Some([rear, front])
    }

    /// The axles, from the inside rear face, the rearmost first.
    pub(super) fn axles(&self) -> Vec<(f64, &'static str)> {
        let Some(rear) = self.rear_axle else { return Vec::new() };
        let mut axles = Vec::new();
        if let Some(tag) = self.tag {
            axles.push((rear - tag, "tag axle"));
        }
        match self.kind {
            VehicleKind::Boat => return Vec::new(),
            VehicleKind::Trailer => axles.push((rear, "axle")),
            VehicleKind::Van | VehicleKind::TruckBox | VehicleKind::Bus => {
                axles.push((rear, "rear axle"));
                if let Some(wheelbase) = self.wheelbase {
                    axles.push((rear + wheelbase, "front axle"));
                }
            }
        }
        axles
    }

    /// Where a trailer is coupled, from the inside rear face.
    fn coupling(&self) -> Option<f64> {
        (self.kind == VehicleKind::Trailer)
            .then(|| self.rear_axle.zip(self.wheelbase))?
            .map(|(rear, wheelbase)| rear + wheelbase)
    }

    /// From the rearmost to the foremost of everything; `None` where nothing has a place.
    pub(super) fn along(&self, scene: &Scene) -> Option<[f64; 2]> {
        let mut all: Vec<f64> = self.ends().into_iter().chain(scene.reach(0)).flatten().collect();
        all.extend(self.coupling());
        if all.is_empty() {
            return None;
        }
        let wheels = self.axles();
        all.extend(wheels.iter().flat_map(|(at, _)| [at - WHEEL_MM[0], at + WHEEL_MM[0]]));
        let low = all.iter().copied().fold(f64::INFINITY, f64::min);
        let high = all.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        (high - low > 1.0).then_some([low, high])
    }

    /// How far up a view goes.
    pub(super) fn upwards(&self, scene: &Scene, from: From) -> f64 {
        let own = match from {
            From::Above => self.sides()[1],
            From::Side => self.heights()[1],
        };
        scene.reach(from.up()).map_or(own, |[_, high]| high.max(own))
    }

    /// Its outer right and left faces, from the inside right face.
    pub(super) fn sides(&self) -> [f64; 2] {
        let wall = self.wall();
        let inside = self.inside[1].unwrap_or(0.0);
        [-wall, inside + wall]
    }

    /// The ground, from the inside floor.
    pub(super) fn ground(&self) -> f64 {
        self.heights()[0]
    }

    /// The roof, from the inside floor.
    pub(super) fn roof(&self) -> f64 {
        self.heights()[1]
    }

    /// The ground and the roof, from the inside floor.
    fn heights(&self) -> [f64; 2] {
        let ground = -self.floor.unwrap_or(WALL_MM);
        let inside = self.inside[2].unwrap_or(0.0);
        let roof = match (self.outside[2], self.floor) {
            (Some(high), Some(floor)) => (high - floor).max(inside),
            _ => inside + WALL_MM,
        };
        [ground, roof]
    }

    pub(super) fn draw(&self, ink: &mut Ink, view: &View, from: From) {
        match from {
            From::Above => self.plan(ink, view),
            From::Side => self.side(ink, view),
        }
    }

    fn plan(&self, ink: &mut Ink, view: &View) {
        let [right, left] = self.sides();
        if let (Some(ends), Some(long), Some(wide)) = (self.ends(), self.inside[0], self.inside[1])
        {
            // The walls that are cut through, as far as the inside goes.
            for side in [[right, 0.0], [wide, left]] {
                ink.rect(Line::Wall, view.rect([0.0, side[0]], [long, side[1]]));
            }
            ink.rect(Line::Wall, view.rect([ends[0], right], [0.0, left]));
            ink.rect(Line::Thin, view.rect([0.0, 0.0], [long, wide]));
            let middle = wide / 2.0;
            let across = [view.at([ends[0], middle]), view.at([ends[1], middle])];
            ink.line(
                Line::Centre,
                [across[0][0] - 10.0, across[0][1]],
                [across[1][0] + 10.0, across[1][1]],
            );
        }
        // The outline stands over the walls.
        if let (Some(ends), Some(_)) = (self.ends(), self.inside[1]) {
            self.plan_outline(ink, view, ends, [right, left]);
        }
        let (Some(track), Some(wide)) = (self.track, self.inside[1]) else { return };
        for (at, _) in self.axles() {
            for side in [-0.5, 0.5] {
                let y = wide / 2.0 + side * track;
                let [radius, half] = [WHEEL_MM[0], WHEEL_MM[1] / 2.0];
                ink.rect(Line::Hidden, view.rect([at - radius, y - half], [at + radius, y + half]));
            }
        }
    }

    fn plan_outline(&self, ink: &mut Ink, view: &View, ends: [f64; 2], sides: [f64; 2]) {
        let ([rear, front], [right, left]) = (ends, sides);
        let wide = left - right;
        let at = |x: f64, y: f64| point(view, [x, y]);
        let nose = match self.kind {
            VehicleKind::Van => (front - self.inside[0].unwrap_or(front)).clamp(0.0, 1000.0),
            VehicleKind::Boat => (front - rear) * 0.45,
            VehicleKind::TruckBox | VehicleKind::Bus | VehicleKind::Trailer => {
                120.0_f64.min(wide / 4.0)
            }
        };
        let start = front - nose;
        let path = match self.kind {
            VehicleKind::Boat => format!(
                "M{} L{} Q{} {} Q{} {} L{}Z",
                at(rear, right),
                at(start, right),
                at(front - nose * 0.35, right),
                at(front, f64::midpoint(left, right)),
                at(front - nose * 0.35, left),
                at(start, left),
                at(rear, left)
            ),
            _ => {
                let tuck = wide * 0.3;
                format!(
                    "M{} L{} C{} {} {} C{} {} {} L{} Q{} {} L{} Q{} {}Z",
                    at(rear + 60.0, right),
                    at(start, right),
                    at(front - nose * 0.1, right),
                    at(front, right + tuck),
                    at(front, f64::midpoint(left, right)),
                    at(front, left - tuck),
                    at(front - nose * 0.1, left),
                    at(start, left),
                    at(rear + 60.0, left),
                    at(rear, left),
                    at(rear, left - 60.0),
                    at(rear, right + 60.0),
                    at(rear, right),
                    at(rear + 60.0, right)
                )
            }
        };
        ink.path(Line::Cut, &path);
        ink.reached(view.at([rear, left])[1]);
        ink.reached(view.at([rear, right])[1]);
        if let Some(coupling) = self.coupling().filter(|at| *at > front) {
            let middle = f64::midpoint(left, right);
            let tip = view.at([coupling, middle]);
            for side in [right + wide * 0.2, left - wide * 0.2] {
                ink.line(Line::Seen, view.at([front, side]), tip);
            }
            ink.circle(Line::Seen, tip, 4.0);
        }
    }

    fn side(&self, ink: &mut Ink, view: &View) {
        let [ground, roof] = self.heights();
        if let Some([rear, front]) = self.ends() {
            let low = if self.floor.is_some() { (ground + 300.0).min(-40.0) } else { ground };
            ink.path(Line::Cut, &self.side_outline(view, [rear, front], [low, roof]));
            ink.reached(view.at([0.0, roof])[1]);
            ink.reached(view.at([0.0, low])[1]);
            if let Some(coupling) = self.coupling().filter(|at| *at > front) {
                let tip = view.at([coupling, low + 60.0]);
                ink.line(Line::Seen, view.at([front, low + 60.0]), tip);
                ink.circle(Line::Seen, tip, 4.0);
            }
        }
        if let Some(screen) = self.screen(view) {
            ink.path(Line::Hair, &screen);
        }
        if let (Some(long), Some(high)) = (self.inside[0], self.inside[2]) {
            ink.rect(Line::Thin, view.rect([0.0, 0.0], [long, high]));
            ink.line(Line::Seen, view.at([0.0, 0.0]), view.at([long, 0.0]));
        }
        if self.floor.is_some() && self.kind != VehicleKind::Boat {
            let [left, right] = [view.at([0.0, ground]), [ink.wide() - 10.0, 0.0]];
            ink.line(Line::Thin, [10.0, left[1]], [right[0], left[1]]);
            for (at, _) in self.axles() {
                let hub = view.at([at, ground + WHEEL_MM[0]]);
                ink.circle(Line::Solid, hub, view.units(WHEEL_MM[0]));
                ink.circle(Line::Thin, hub, view.units(WHEEL_MM[0] * 0.64));
                ink.circle(Line::Hair, hub, view.units(WHEEL_MM[0] * 0.18));
            }
        }
        for (at, _) in self.axles() {
            let x = view.at([at, 0.0])[0];
            ink.line(
                Line::Centre,
                [x, view.at([0.0, roof])[1] - 8.0],
                [x, view.at([0.0, ground])[1] + 30.0],
            );
        }
    }

    /// The side window of a van's cab, as a likeness.
    fn screen(&self, view: &View) -> Option<String> {
        let [_, front] = self.ends()?;
        let [ground, roof] = self.heights();
        let cab = front - self.inside[0]?;
        if self.kind != VehicleKind::Van || cab <= 700.0 || self.floor.is_none() {
            return None;
        }
        let low = (ground + 300.0).min(-40.0);
        let high = roof - low;
        let at = |x: f64, y: f64| point(view, [front - cab * x, low + high * y]);
        Some(format!(
            "M{} L{} L{} L{}Z",
            at(0.9, 0.86),
            at(0.64, 0.86),
            at(0.36, 0.47),
            at(0.9, 0.44)
        ))
    }

    fn side_outline(&self, view: &View, ends: [f64; 2], heights: [f64; 2]) -> String {
        let ([rear, front], [low, roof]) = (ends, heights);
        let at = |x: f64, y: f64| point(view, [x, y]);
        let high = roof - low;
        let cab = (front - self.inside[0].unwrap_or(front)).max(0.0);
        match self.kind {
            VehicleKind::Van if cab > 700.0 => format!(
                "M{} L{} Q{} {} L{} C{} {} {} L{} Q{} {} L{} Q{} {}Z",
                at(rear, low),
                at(rear + 20.0, roof - 160.0),
                at(rear + 30.0, roof),
                at(rear + 200.0, roof),
                at(front - cab * 0.9, roof),
                at(front - cab * 0.72, roof),
                at(front - cab * 0.66, roof - high * 0.06),
                at(front - cab * 0.6, roof - high * 0.12),
                at(front - cab * 0.28, low + high * 0.46),
                at(front - cab * 0.02, low + high * 0.4),
                at(front, low + high * 0.24),
                at(front, low + 60.0),
                at(front, low),
                at(front - 60.0, low)
            ),
            VehicleKind::TruckBox if cab > 700.0 => {
                let box_end = self.inside[0].unwrap_or(0.0) + self.wall();
                let cab_roof = low + high * 0.78;
                format!(
                    "M{} L{} L{} L{} L{} Q{} {} L{} L{}Z",
                    at(rear, low),
                    at(rear, roof),
                    at(box_end, roof),
                    at(box_end, cab_roof),
                    at(front - cab * 0.35, cab_roof),
                    at(front - cab * 0.15, cab_roof),
                    at(front - cab * 0.05, low + high * 0.42),
                    at(front, low + high * 0.36),
                    at(front, low)
                )
            }
            VehicleKind::Boat => format!(
                "M{} L{} L{} Q{} {}Z",
                at(rear, low),
                at(rear, roof),
                at(front, roof),
                at(front - high * 0.4, low),
                at(front - high, low)
            ),
            _ => format!(
                "M{} L{} Q{} {} L{} Q{} {} L{}Z",
                at(rear, low),
                at(rear, roof - 120.0),
                at(rear, roof),
                at(rear + 120.0, roof),
                at(front - 120.0, roof),
                at(front, roof),
                at(front, roof - 120.0),
                at(front, low)
            ),
        }
    }

    /// What is known of the vehicle's sizes, as dimensions.
    pub(super) fn dimensions(&self, ink: &mut Ink, view: &View, from: From, width: Width) {
        match from {
            From::Above => self.plan_dimensions(ink, view),
            From::Side => self.side_dimensions(ink, view, width),
        }
    }

    fn plan_dimensions(&self, ink: &mut Ink, view: &View) {
        let ([right, left], Some([_, front])) = (self.sides(), self.ends()) else { return };
        let (Some(wide), Some(inside)) = (self.outside[1].or(self.inside[1]), self.inside[1])
        else {
            return;
        };
        let ends = if self.outside[1].is_some() { [right, left] } else { [0.0, inside] };
        let ends = ends.map(|y| view.at([0.0, y])[1]);
        ink.dimension_up(
            ink.wide() - 8.0,
            ends,
            view.at([front, 0.0])[0].min(ink.wide() - 14.0),
            &figure(wide),
        );
    }

    fn side_dimensions(&self, ink: &mut Ink, view: &View, width: Width) {
        let [ground, roof] = self.heights();
        let down = view.at([0.0, ground])[1];
        let axles = self.axles();
        let mut marks: Vec<f64> = axles.iter().map(|(at, _)| *at).collect();
        if !marks.is_empty() {
            marks.insert(0, 0.0);
        }
        marks.extend(self.coupling());
        marks.sort_by(f64::total_cmp);
        for pair in marks.windows(2).filter(|pair| pair[1] - pair[0] > 1.0) {
            let ends = [view.at([pair[0], 0.0])[0], view.at([pair[1], 0.0])[0]];
            ink.dimension_across(down + 44.0, ends, down + 4.0, &figure(pair[1] - pair[0]));
        }
        for (at, name) in &axles {
            let spot = [view.at([*at, 0.0])[0] + 6.0, down + 16.0];
            ink.label(&Letter::NOTE, &[Spot::from(spot)], name);
        }
        let Some(rear) = self.ends().map(|ends| view.at([ends[0], 0.0])[0]) else { return };
        let x = match width {
            Width::Wide => 22.0,
            Width::Narrow => 20.0,
        };
        if let Some(high) = self.inside[2] {
            let ends = [view.at([0.0, 0.0])[1], view.at([0.0, high])[1]];
            ink.dimension_up(x, ends, rear, &figure(high));
        }
        if let Some(floor) = self.floor {
            ink.dimension_up(x, [down, view.at([0.0, 0.0])[1]], rear, &figure(floor));
        }
        if let (Some(high), Some(_), Some([_, front])) = (self.outside[2], self.floor, self.ends())
        {
            let ends = [down, view.at([0.0, roof])[1]];
            let foot = view.at([front, 0.0])[0].min(ink.wide() - 14.0);
            ink.dimension_up(ink.wide() - 8.0, ends, foot, &figure(high));
        }
    }

    /// What of the drawing is a likeness, and what is not said.
    pub(super) fn notes(&self) -> Vec<String> {
        let mut notes = Vec::new();
        if self.ends().is_some() {
            let mut likeness = vec!["ends and wheels have the shape of their kind only"];
            if self.outside[1].is_none() || self.inside[1].is_none() {
                likeness.push("walls are drawn 60 mm thick");
            } else {
                likeness.push("the rear wall is drawn as thick as the sides");
            }
            notes.push(format!("A likeness: {}.", likeness.join("; ")));
        }
        let words = ["length", "width", "height"];
        let missing = |sizes: &[Option<f64>; 3], which: &str| {
            let list = (0..3)
                .filter(|axis| sizes[*axis].is_none())
                .map(|axis| format!("{which} {}", words[axis]));
            list.collect::<Vec<_>>()
        };
        let mut unsaid = missing(&self.inside, "inside");
        unsaid.extend(missing(&self.outside, "outside"));
        if self.kind != VehicleKind::Boat {
            let others = [
                ("floor above the ground", self.floor),
                ("wheelbase", self.wheelbase),
                ("place of the rear axle", self.rear_axle),
            ];
            unsaid.extend(
                others
                    .into_iter()
                    .filter(|(_, size)| size.is_none())
                    .map(|(word, _)| word.to_owned()),
            );
        }
        if !unsaid.is_empty() {
            notes.push(format!("Not said: {}.", unsaid.join(", ")));
        }
        notes
    }
}

fn point(view: &View, at: [f64; 2]) -> String {
    let [x, y] = view.at(at);
    format!("{} {}", number(x), number(y))
}
