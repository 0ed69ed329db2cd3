//! Why a circuit has no answer.

use thiserror::Error;

use super::Draw;

/// Why a circuit cannot be solved, with the names of what is concerned.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum Trouble {
    /// A figure that no computation can start from: not a number, infinite, or of a sign that the
    /// thing cannot have.
    #[error("{branch}: its {quantity} is {value} {unit}; it must be {must_be}")]
    Input {
        /// The branch that has it.
        branch: String,
        /// Which of its figures.
        quantity: &'static str,
        /// The figure.
        value: f64,
        /// The unit of the figure.
        unit: &'static str,
        /// What is allowed.
        must_be: &'static str,
    },
    /// A node that nothing ties to the reference: only loads of constant current or power reach
    /// it, or nothing at all. What its voltage is cannot be said.
    #[error("nothing conducts between {node} and {reference}")]
    Floating {
        /// The node.
        node: String,
        /// The reference node of the circuit.
        reference: String,
    },
    /// A loop of ideal connections and ideal sources: a short circuit that nothing limits, or two
    /// connections of 0 Ω side by side, whose shares cannot be told.
    #[error("{branch} closes a loop that has no resistance at all")]
    NoResistance {
        /// The last branch of the loop.
        branch: String,
    },
    /// A load that wants more than its cables and batteries can bring: its voltage falls without
    /// end, there is no steady state.
    #[error("{load} wants {wanted}, but no more than {greatest} can reach {node}")]
    Collapse {
        /// The node where its feed arrives.
        node: String,
        /// The load: of those whose absence alone would let the rest run, the one that wants most;
        /// if there is none such, the one that wants most of all, with a greatest of zero.
        load: String,
        /// What it wants.
        wanted: Draw,
        /// The most that could reach it, with all other loads as they are; those that had switched
        /// themselves off by then stay off.
        greatest: Draw,
    },
}
