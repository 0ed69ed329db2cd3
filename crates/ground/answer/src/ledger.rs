//! The inputs that an answer hangs on, and the points at which its figures are evaluated.

use std::borrow::Cow;
use std::marker::PhantomData;

use spile_quantity::Quantity;

use crate::{Basis, Given};

/// One number put into an answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Input {
    /// What it is, in plain words: `stud in the galley`.
    pub name: Cow<'static, str>,
    /// The name of its kind of quantity, as in [`Quantity::NAME`].
    pub kind: &'static str,
    /// The unit of the three numbers, as in [`Quantity::SI_UNIT`].
    pub unit: &'static str,
    /// The least it can be.
    pub low: f64,
    /// What it most likely is.
    pub likely: f64,
    /// The most it can be.
    pub high: f64,
    /// What stands behind it.
    pub basis: Basis,
    /// Where it can be looked up.
    pub source: Cow<'static, str>,
    /// How to get it, or to get it better.
    pub how: Cow<'static, str>,
}

/// Every input of one answer, each once, however many figures hang on it.
///
/// A cause that several figures share is taken once and its handle used by all of them, so that
/// it moves once for all of them.
#[derive(Debug, Clone, Default)]
pub struct Ledger {
    inputs: Vec<Input>,
}

/// Names one input of a [`Ledger`], and knows its quantity: a length is not taken for a resistance.
///
/// ```compile_fail
/// use spile_answer::{Handle, Point};
/// use spile_quantity::{Length, Resistance};
/// fn mixed(point: &Point, length: Handle<Length>) -> Resistance {
///     point.at(length)
/// }
/// ```
#[derive(Debug)]
pub struct Handle<Q> {
    index: usize,
    quantity: PhantomData<fn() -> Q>,
}

impl<Q> Clone for Handle<Q> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<Q> Copy for Handle<Q> {}

impl<Q> Handle<Q> {
    /// The input's place in [`Ledger::inputs`].
    pub const fn index(self) -> usize {
        self.index
    }
}

impl Ledger {
    /// An empty ledger.
    pub const fn new() -> Self {
        Self { inputs: Vec::new() }
    }

    /// Takes an input in. One of the same name and numbers is not entered twice.
    pub fn take<Q: Quantity>(
        &mut self,
        name: impl Into<Cow<'static, str>>,
        given: &Given<Q>,
    ) -> Handle<Q> {
        let input = Input {
            name: name.into(),
            kind: Q::NAME,
            unit: Q::SI_UNIT,
            low: given.value.low.si(),
            likely: given.value.likely.si(),
            high: given.value.high.si(),
            basis: given.basis,
            source: given.source.clone(),
            how: given.how.clone(),
        };
        let index = self.inputs.iter().position(|known| *known == input).unwrap_or_else(|| {
            self.inputs.push(input);
            self.inputs.len() - 1
        });
        Handle { index, quantity: PhantomData }
    }

    /// All inputs, in the order they were taken in.
    pub fn inputs(&self) -> &[Input] {
        &self.inputs
    }

    /// The point at which every input has its likely value.
    pub fn likely(&self) -> Point {
        Point { values: self.inputs.iter().map(|input| input.likely).collect() }
    }
}

/// One value for each input of a ledger.
#[derive(Debug, Clone, PartialEq)]
pub struct Point {
    values: Vec<f64>,
}

impl Point {
    /// The value of an input at this point.
    ///
    /// # Panics
    /// If the handle is of another ledger with more inputs.
    pub fn at<Q: Quantity>(&self, handle: Handle<Q>) -> Q {
        Q::from_si(self.values[handle.index])
    }

    /// Moves one input, by its place in [`Ledger::inputs`], to `value` in its SI unit.
    pub fn set(&mut self, index: usize, value: f64) {
        self.values[index] = value;
    }
}
