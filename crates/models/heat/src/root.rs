//! Where a continuous function of one number passes through zero.

use crate::error::HeatError;

/// Tries after which the ends of the bracket are as near as numbers get.
const MOST_STEPS: usize = 200;

/// The zero of `f` between `a` and `b`, at which `f` must have opposite signs.
///
/// Regula falsi with the Illinois step (Dowell and Jarratt, BIT 11, 1971): it cannot leave the
/// bracket, and finds the zero of a straight line in one step. Stops when `|f| <= small`.
pub(crate) fn root(
    what: &'static str,
    unit: &'static str,
    mut f: impl FnMut(f64) -> Result<f64, HeatError>,
    a: f64,
    b: f64,
    small: f64,
) -> Result<f64, HeatError> {
    let (mut a, mut b) = (a, b);
    let (mut fa, mut fb) = (f(a)?, f(b)?);
    if fa.abs() <= small {
        return Ok(a);
    }
    if fb.abs() <= small {
        return Ok(b);
    }
    let straddled = fa * fb < 0.0;
    if !straddled {
        return Err(HeatError::NoBalance { what, low: a.min(b), high: a.max(b), unit });
    }
    for _ in 0..MOST_STEPS {
        let c = b - fb * (b - a) / (fb - fa);
        let fc = f(c)?;
        if fc.abs() <= small || c == a || c == b {
            return Ok(c);
        }
        if fc * fb < 0.0 {
            (a, fa) = (b, fb);
        } else {
            fa /= 2.0;
        }
        (b, fb) = (c, fc);
    }
    Ok(b)
}

#[cfg(test)]
mod tests {
    use super::root;

    #[test]
    fn the_zeros_are_known_numbers() {
        let find = |f: fn(f64) -> f64, a, b| root("x", "", |x| Ok(f(x)), a, b, 1e-14).unwrap();
        assert!((find(|x| x * x - 2.0, 0.0, 2.0) - std::f64::consts::SQRT_2).abs() < 1e-13);
        assert!((find(f64::cos, 1.0, 3.0) - std::f64::consts::FRAC_PI_2).abs() < 1e-13);
        assert!((find(|x| (-x).exp() - 1e-6, 0.0, 100.0) - 6.0 * 10f64.ln()).abs() < 1e-7);
    }

    #[test]
    fn ends_of_one_sign_are_refused() {
        assert!(root("x", "", |x| Ok(x * x + 1.0), -1.0, 1.0, 1e-12).is_err());
        assert!(root("x", "", |_| Ok(f64::NAN), -1.0, 1.0, 1e-12).is_err());
    }
}
