//! Lengths that are sums of measures, so that a measure that cancels cannot widen a distance.

use std::cell::RefCell;
use std::ops::{Add, Mul, Sub};

use spile_answer::{Given, Handle, Ledger, Point};
use spile_quantity::Length;

/// A length: a fixed part and measures, each with a factor.
#[derive(Debug, Clone, Default, PartialEq)]
pub(crate) struct Sum {
    fixed_m: f64,
    terms: Vec<(usize, f64)>,
}

impl Sum {
    pub(crate) const fn fixed(length_m: f64) -> Self {
        Self { fixed_m: length_m, terms: Vec::new() }
    }

    /// The factor of a measure that stands alone.
    pub(crate) fn factor(&self, measure: &Self) -> f64 {
        let Some((id, _)) = measure.terms.first() else { return 0.0 };
        self.terms.iter().find(|(known, _)| known == id).map_or(0.0, |(_, factor)| *factor)
    }

    /// The same with another length in place of a measure.
    pub(crate) fn with(&self, measure: &Self, other: &Self) -> Self {
        match self.factor(measure) {
            0.0 => self.clone(),
            factor => self + &(&(other - measure) * factor),
        }
    }
}

impl Add for &Sum {
    type Output = Sum;
    fn add(self, other: Self) -> Sum {
        let mut sum = self.clone();
        sum.fixed_m += other.fixed_m;
        for &(id, factor) in &other.terms {
            match sum.terms.iter_mut().find(|(known, _)| *known == id) {
                Some((_, known)) => *known += factor,
                None => sum.terms.push((id, factor)),
            }
        }
        sum.terms.retain(|(_, factor)| *factor != 0.0);
        sum
    }
}

impl Sub for &Sum {
    type Output = Sum;
    fn sub(self, other: Self) -> Sum {
        self + &(other * -1.0)
    }
}

impl Mul<f64> for &Sum {
    type Output = Sum;
    fn mul(self, by: f64) -> Sum {
        let terms = self.terms.iter().map(|&(id, factor)| (id, factor * by)).collect();
        Sum { fixed_m: self.fixed_m * by, terms }
    }
}

/// Every measure of one answer, each once.
#[derive(Debug, Default)]
pub(crate) struct Measures {
    list: RefCell<Vec<(String, Given<Length>)>>,
}

impl Measures {
    /// Takes a measure in; one of the same name is the same.
    pub(crate) fn take(&self, name: impl Into<String>, given: &Given<Length>) -> Sum {
        let name = name.into();
        let mut list = self.list.borrow_mut();
        let id = list.iter().position(|(known, _)| *known == name).unwrap_or_else(|| {
            list.push((name, given.clone()));
            list.len() - 1
        });
        Sum { fixed_m: 0.0, terms: vec![(id, 1.0)] }
    }

    /// A sum with every measure at its likely value \[m\], free of the last digits' rounding.
    pub(crate) fn likely_m(&self, sum: &Sum) -> f64 {
        let list = self.list.borrow();
        let of = |&(id, factor): &(usize, f64)| factor * list[id].1.likely().in_m();
        clean_m(sum.fixed_m + sum.terms.iter().map(of).sum::<f64>())
    }

    /// The ledger of the measures that some sums hang on.
    pub(crate) fn ledger<'s>(&self, sums: impl IntoIterator<Item = &'s Sum>) -> Taken {
        let list = self.list.borrow();
        let mut taken = Taken { ledger: Ledger::new(), handles: Vec::new() };
        for (id, _) in sums.into_iter().flat_map(|sum| &sum.terms) {
            if !taken.handles.iter().any(|(known, _)| known == id) {
                let (name, given) = &list[*id];
                let handle = taken.ledger.take(name.clone(), given);
                taken.handles.push((*id, handle));
            }
        }
        taken
    }
}

/// A ledger, and where the measures of sums stand in it.
pub(crate) struct Taken {
    pub(crate) ledger: Ledger,
    handles: Vec<(usize, Handle<Length>)>,
}

impl Taken {
    /// A sum at a point of the ledger \[m\].
    pub(crate) fn at_m(&self, sum: &Sum, point: &Point) -> f64 {
        let of = |&(id, factor): &(usize, f64)| {
            let handle = self.handles.iter().find(|(known, _)| *known == id);
            debug_assert!(handle.is_some(), "a measure that the figure's ledger lacks");
            handle.map_or(0.0, |(_, handle)| factor * point.at(*handle).in_m())
        };
        clean_m(sum.fixed_m + sum.terms.iter().map(of).sum::<f64>())
    }
}

/// To the nanometre, so that 640 − 20 − 600 is 20 and not a hair less.
pub(crate) fn clean_m(length_m: f64) -> f64 {
    (length_m * 1e9).round() / 1e9
}
