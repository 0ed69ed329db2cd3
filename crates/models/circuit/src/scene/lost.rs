//! Where the volts go: what is lost part by part, from the bank's post there and back again.

use spile_answer::Point;
use spile_quantity::{Length, Resistance, Voltage};

use super::cable::Copper;
use super::way::{State, Way};

/// A part of the way, and what is lost in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lost {
    /// What it is: `feed`, `plug and crimps`.
    pub part: &'static str,
    /// How long it is; nought of a joint, and of the body, whose length nobody states.
    pub length: Length,
    /// What is lost in it.
    pub volts: Voltage,
    /// Whether it lies on the way back.
    pub is_back: bool,
}

impl Way {
    /// What is lost in each part of the way, in its order; `None` where there is no steady state.
    ///
    /// **Formula** U = R · I, with the current of the part: of the bank in what all runs share, of
    /// the item in its own cables, of all that return by the body in the body.
    ///
    /// **Arguments** a point of the inputs, the state \[–\]; **Validity** as the circuit's.
    ///
    /// **Errors** `None`: no steady state. **Source** Ohm's law.
    ///
    /// **Example** 10 mΩ of feed at 5 A lose 0.05 V.
    pub fn lost(&self, point: &Point, state: State) -> Option<Vec<Lost>> {
        let copper = match state {
            State::Start => Copper::Cool,
            State::Running => Copper::Warm,
            State::Fault => Copper::Rated,
        };
        let found = self.solve(point, state)?;
        let [bank, body] = found.shared;
        let joint = Length::m(0.0);
        let long = |conductor: &super::Conductor| point.at(conductor.length);
        let supply = &self.supply;
        let main = supply.feed.resistance(point, copper);
        let tail = supply.back.resistance(point, copper);
        let mut parts = vec![
            ("main fuse", joint, point.at(supply.main_fuse), bank, false),
            ("cable to the block", long(&supply.feed), main, bank, false),
            ("fuse with its contacts", joint, self.fuse_resistance(point), found.current, false),
            ("feed", long(&self.feed), self.feed.resistance(point, copper), found.current, false),
            ("plug and crimps", joint, point.at(self.plug), found.current, false),
            ("return", long(&self.back), self.back.resistance(point, copper), found.current, true),
        ];
        if let Some(stud) = self.stud {
            parts.push(("stud", joint, point.at(stud), found.current, true));
            if let Some(by) = &supply.body {
                let steel = point.at(by.sheet) + point.at(by.stud);
                parts.push(("body and its stud", joint, steel, body, true));
                let cable = by.cable.resistance(point, copper);
                parts.push(("cable from the body", long(&by.cable), cable, body, true));
            }
        }
        parts.push(("cable to the bank", long(&supply.back), tail, bank, true));
        parts.push(("posts, shunt and bus bars", joint, point.at(supply.joints), bank, true));
        let lost = |(part, length, ohm, current, is_back): (_, _, Resistance, _, _)| Lost {
            part,
            length,
            volts: ohm * current,
            is_back,
        };
        Some(parts.into_iter().map(lost).collect())
    }
}

#[cfg(test)]
mod tests {
    use super::super::OneRun;
    use super::*;

    /// Kirchhoff's voltage law: what is lost in all parts is what the item has less than the posts.
    #[test]
    fn the_parts_add_up_to_the_whole() {
        let text = r#"
[bank]
capacity = "100 Ah"
[parts.fridge]
kind = "upright fridge"
power = { running = "60 W", start = "9 A", cut_out = "10.4 V" }
[items.fridge]
[items.lamp]
part = "fridge"
[runs.fridge]
section = "2.5 mm2"
length = "5 m"
return = { by = "body", section = "2.5 mm2", length = "1 m" }
[runs.lamp]
section = "2.5 mm2"
length = "3 m"
"#;
        let folder = spile_build::Folder::from_texts([("build.toml", text)]);
        let folder = folder.unwrap_or_else(|problems| panic!("{:?}", problems.list));
        let build = folder.build();
        let bank = build.bank.as_ref().unwrap();
        for (name, run) in &build.runs {
            let asked = OneRun::of(build, bank, name, run).unwrap();
            let way = Way::new(&asked, &asked.fuse().unwrap()).unwrap();
            let likely = way.ledger.likely();
            for state in [State::Start, State::Running] {
                let found = way.solve(&likely, state).unwrap();
                let lost_v: f64 =
                    way.lost(&likely, state).unwrap().iter().map(|part| part.volts.in_v()).sum();
                let between_v = found.posts.in_v() - found.item.in_v();
                assert!((lost_v - between_v).abs() < 1e-6, "{name}: {lost_v} and {between_v}");
            }
        }
    }
}
