//! A value for each input: at the likely point, or with the strongest movers at their worse ends.

use spile_answer::{Handle, Ledger, Point, Swing, TOGETHER};
use spile_quantity::Quantity;

/// A value for each input.
pub(crate) trait Values {
    fn at<Q: Quantity>(&self, handle: Handle<Q>) -> Q;
}

impl Values for Point {
    fn at<Q: Quantity>(&self, handle: Handle<Q>) -> Q {
        Self::at(self, handle)
    }
}

/// The point at which the strongest movers of a figure are at their worse ends together.
pub(crate) fn worst(ledger: &Ledger, swing: &Swing) -> Point {
    let mut point = ledger.likely();
    for mover in swing.movers.iter().take(TOGETHER) {
        point.set(mover.input, mover.end);
    }
    point
}
