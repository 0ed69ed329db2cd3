//! Linear equations, the one place that knows how a matrix is stored and factored.

use nalgebra::{DMatrix, DVectorViewMut, Dyn, LU};

/// A square matrix that is filled by adding to its entries.
#[derive(Clone)]
pub(super) struct Matrix(DMatrix<f64>);

/// A matrix taken apart, ready to solve with.
pub(super) struct Factors(LU<f64, Dyn, Dyn>);

impl Matrix {
    /// A matrix of zeros with `size` rows.
    pub(super) fn zeros(size: usize) -> Self {
        Self(DMatrix::zeros(size, size))
    }

    /// Adds `value` to one entry.
    pub(super) fn add(&mut self, row: usize, column: usize, value: f64) {
        self.0[(row, column)] += value;
    }

    /// Takes the matrix apart into triangles.
    pub(super) fn factor(self) -> Factors {
        Factors(self.0.lu())
    }
}

impl Factors {
    /// Solves for a right-hand side, which is replaced by the solution; false if the matrix is
    /// singular.
    pub(super) fn solve(&self, right: &mut [f64]) -> bool {
        let size = right.len();
        self.0.solve_mut(&mut DVectorViewMut::from_slice(right, size))
    }

    /// Whether the determinant is positive; it may itself be beyond the numbers there are.
    pub(super) fn positive(&self) -> bool {
        let mut sign: f64 = self.0.p().determinant();
        let triangles = self.0.lu_internal();
        for row in 0..triangles.nrows() {
            sign *= triangles[(row, row)].signum();
        }
        sign > 0.0
    }
}
