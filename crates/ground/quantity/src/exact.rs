//! Numbers as written, without rounding, so that reading rounds once and correctly.

use std::cmp::Ordering;

/// The number `±num / den × 10^exp`, exactly.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Exact {
    negative: bool,
    num: u128,
    den: u64,
    exp: i32,
}

impl Exact {
    pub(crate) const ZERO: Self = Self { negative: false, num: 0, den: 1, exp: 0 };

    /// `num / den × 10^exp`; `None` if `den` is nought.
    pub(crate) fn new(num: u64, den: u64, exp: i32) -> Option<Self> {
        (den != 0).then(|| Self { negative: false, num: u128::from(num), den, exp }.reduced())
    }

    /// `value × 10^exp`.
    pub(crate) fn signed(value: i64, exp: i32) -> Self {
        let num = u128::from(value.unsigned_abs());
        Self { negative: value < 0, num, den: 1, exp }.reduced()
    }

    /// The digits in front of and behind the point, times `10^exp`; `None` if there are more than
    /// nineteen that count.
    pub(crate) fn decimal(whole: &str, part: &str, exp: i32) -> Option<Self> {
        let digits = format!("{whole}{part}");
        let counted = digits.trim_end_matches('0');
        let cut = i32::try_from(digits.len() - counted.len()).ok()?;
        let behind = i32::try_from(part.len()).ok()?;
        let counted = counted.trim_start_matches('0');
        if counted.is_empty() {
            return Some(Self::ZERO);
        }
        if counted.len() > 19 {
            return None;
        }
        Self::new(counted.parse().ok()?, 1, exp.checked_add(cut)?.checked_sub(behind)?)
    }

    /// The shortest decimal that stands for `value`; `None` unless it is finite.
    pub(crate) fn shortest(value: f64) -> Option<Self> {
        if !value.is_finite() {
            return None;
        }
        Self::scientific(&format!("{:e}", value.abs())).map(|exact| exact.times_sign(value))
    }

    /// A number printed with one digit before the point and an exponent, without a sign.
    pub(crate) fn scientific(text: &str) -> Option<Self> {
        let (mantissa, exp) = text.split_once('e')?;
        let (whole, part) = mantissa.split_once('.').unwrap_or((mantissa, ""));
        Self::decimal(whole, part, exp.parse().ok()?)
    }

    pub(crate) fn times_sign(self, of: f64) -> Self {
        Self { negative: self.negative ^ of.is_sign_negative(), ..self }
    }

    pub(crate) fn negated(self) -> Self {
        Self { negative: !self.negative, ..self }
    }

    pub(crate) fn abs(self) -> Self {
        Self { negative: false, ..self }
    }

    pub(crate) fn is_whole(self) -> bool {
        self.num == 0 || (self.den == 1 && self.exp >= 0)
    }

    pub(crate) fn is_negative(self) -> bool {
        self.negative
    }

    /// The product; `None` if it has too many digits.
    pub(crate) fn times(self, other: Self) -> Option<Self> {
        let exact = Self {
            negative: self.negative ^ other.negative,
            num: self.num.checked_mul(other.num)?,
            den: self.den.checked_mul(other.den)?,
            exp: self.exp.checked_add(other.exp)?,
        };
        Some(exact.reduced())
    }

    /// The sum; `None` if it has too many digits.
    pub(crate) fn plus(self, other: Self) -> Option<Self> {
        if other.num == 0 {
            return Some(self);
        }
        if self.num == 0 {
            return Some(other);
        }
        let exp = self.exp.min(other.exp);
        let over = |term: Self, den: u64| {
            let tens = u32::try_from(term.exp.checked_sub(exp)?).ok()?;
            let scaled = term.num.checked_mul(10_u128.checked_pow(tens)?)?;
            scaled.checked_mul(u128::from(den))
        };
        let (a, b) = (over(self, other.den)?, over(other, self.den)?);
        let den = self.den.checked_mul(other.den)?;
        let (negative, num) = if self.negative == other.negative {
            (self.negative, a.checked_add(b)?)
        } else if a >= b {
            (self.negative && a != b, a - b)
        } else {
            (other.negative, b - a)
        };
        Some(Self { negative, num, den, exp }.reduced())
    }

    /// Which of two is the larger; `None` if their difference has too many digits.
    pub(crate) fn compare(self, other: Self) -> Option<Ordering> {
        let difference = self.plus(other.negated())?;
        Some(match (difference.num, difference.negative) {
            (0, _) => Ordering::Equal,
            (_, true) => Ordering::Less,
            (_, false) => Ordering::Greater,
        })
    }

    /// The nearest floating-point number; `None` if the number is too large for one, or so small
    /// that nothing would be left of it.
    pub(crate) fn to_f64(self) -> Option<f64> {
        let value: f64 = match self.at_once() {
            Some(value) => value,
            None => self.digits().parse().ok()?,
        };
        let kept = value.is_finite() && (value != 0.0 || self.num == 0);
        kept.then_some(if self.negative { -value } else { value })
    }

    /// The number where it is the quotient of two whole numbers that doubles hold exactly: their
    /// division rounds once, so it is the nearest double.
    fn at_once(self) -> Option<f64> {
        const WHOLE_TO: u128 = 1 << 53;
        let power = 10_u128.checked_pow(self.exp.unsigned_abs())?;
        let den = u128::from(self.den);
        let (above, below) = if self.exp < 0 {
            (self.num, den.checked_mul(power)?)
        } else {
            (self.num.checked_mul(power)?, den)
        };
        #[expect(clippy::cast_precision_loss, reason = "both are held exactly")]
        (above <= WHOLE_TO && below <= WHOLE_TO).then(|| above as f64 / below as f64)
    }

    /// Digits that round as the number itself does. A quotient that does not end is cut after more
    /// digits (over 800) than any point half-way between two doubles has (768), and marked by a
    /// last digit as being above the cut.
    fn digits(self) -> String {
        const AT_ONCE: u32 = 18;
        let den = u128::from(self.den);
        let mut text = (self.num / den).to_string();
        let mut rest = self.num % den;
        let mut behind = 0;
        while rest != 0 && behind < 800 {
            rest *= 10_u128.pow(AT_ONCE);
            text.push_str(&format!("{:018}", rest / den));
            rest %= den;
            behind += AT_ONCE.cast_signed();
        }
        if rest != 0 {
            text.push('1');
            behind += 1;
        }
        format!("{text}e{}", self.exp.saturating_sub(behind))
    }

    fn reduced(mut self) -> Self {
        if self.num == 0 {
            return Self { num: 0, den: 1, exp: 0, ..self };
        }
        let common = common_factor(self.num, self.den);
        self.num /= u128::from(common);
        self.den /= common;
        while self.num.is_multiple_of(10) {
            self.num /= 10;
            self.exp = self.exp.saturating_add(1);
        }
        self
    }
}

fn common_factor(num: u128, den: u64) -> u64 {
    let (mut a, mut b) = (den, (num % u128::from(den)) as u64);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}
