//! Numbers in sentences, with as many digits as the knowledge behind them bears.

use spile_quantity::Current;

/// `1.5 A`, `15 A`, `150 A`.
pub(crate) fn amps(current: Current) -> String {
    let current_a = current.in_a();
    if current_a < 9.95 { format!("{current_a:.1} A") } else { format!("{current_a:.0} A") }
}

/// `0.15 s`, `2.5 s`, `40 s`, `30 min`.
pub(crate) fn seconds(time_s: f64) -> String {
    match time_s {
        ..0.995 => format!("{time_s:.2} s"),
        ..9.95 => format!("{time_s:.1} s"),
        ..119.5 => format!("{time_s:.0} s"),
        _ => format!("{:.0} min", time_s / 60.0),
    }
}

/// `a`, `a and b`, `a, b and c`.
pub(crate) fn list(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// Two digits, upwards: 4 883 becomes 4 900.
pub(crate) fn round_up(value: f64) -> f64 {
    let step = 10_f64.powf(value.abs().max(1.0).log10().floor() - 1.0);
    (value / step).ceil() * step
}
