//! Days and months of a common year.

/// Days of a year.
pub const DAYS: usize = 365;
/// Hours of a year.
pub const HOURS: usize = DAYS * 24;
/// Days of each month, January first.
pub const MONTH_DAYS: [usize; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/// The month of a day, both counted from 0; the last month for days past the year's end.
///
/// ```
/// use spile_energy::calendar::month_of;
/// assert_eq!([month_of(30), month_of(31), month_of(364)], [0, 1, 11]);
/// ```
pub fn month_of(day: usize) -> usize {
    let mut first = 0;
    for (month, days) in MONTH_DAYS.iter().enumerate() {
        first += days;
        if day < first {
            return month;
        }
    }
    MONTH_DAYS.len() - 1
}

/// The days of a month, both counted from 0.
///
/// # Panics
/// If there is no such month.
pub fn days_of(month: usize) -> std::ops::Range<usize> {
    let first: usize = MONTH_DAYS[..month].iter().sum();
    first..first + MONTH_DAYS[month]
}
