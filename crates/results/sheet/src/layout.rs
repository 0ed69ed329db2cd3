//! Where lettering goes so that none of it touches.

/// How wide a letter is on average, as a share of its size; on the safe side for a sans.
const LETTER: f64 = 0.6;

/// The estimated width of a line of letters of a size, in the size's unit.
pub(crate) fn width(text: &str, size: f64) -> f64 {
    text.chars().fold(0.0, |width, _| width + LETTER * size)
}

/// A text in lines that are at most `most` wide.
pub(crate) fn wrapped(text: &str, size: f64, most: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if width(line, size) + width(word, size) + LETTER * size <= most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// Places in order, each as near to where it is wanted as `apart` between neighbours allows.
///
/// Neighbours that would touch form a row that is centred on the mean of what its members want.
pub(crate) fn spread(wanted: &[f64], apart: f64) -> Vec<f64> {
    // Each row: the sum of wanted places less their offsets in the row, and how many it has.
    let mut rows: Vec<(f64, usize)> = Vec::new();
    let start = |row: &(f64, usize)| row.0 / row.1 as f64;
    for &place in wanted {
        rows.push((place, 1));
        while let [.., before, last] = rows.as_slice() {
            if start(before) + before.1 as f64 * apart <= start(last) {
                break;
            }
            let offset = before.1 as f64 * apart * last.1 as f64;
            let joined = (before.0 + last.0 - offset, before.1 + last.1);
            rows.pop();
            rows.pop();
            rows.push(joined);
        }
    }
    rows.iter()
        .flat_map(|row| (0..row.1).map(move |place| start(row) + place as f64 * apart))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn neighbours_keep_their_distance_and_the_rest_stays() {
        assert_eq!(spread(&[0.0, 20.0, 40.0], 10.0), [0.0, 20.0, 40.0]);
        // 30 and 32 want to be 10 apart: 26 and 36, about their mean.
        assert_eq!(spread(&[0.0, 30.0, 32.0], 10.0), [0.0, 26.0, 36.0]);
        let close = [5.0, 6.0, 7.0, 21.0, 22.0];
        let placed = spread(&close, 8.0);
        assert!(placed.windows(2).all(|pair| pair[1] - pair[0] >= 8.0 - 1e-9), "{placed:?}");
    }

    #[test]
    fn lines_are_no_wider_than_they_may_be() {
        let text = "Saw on the waste side of the line, and stop before the corner.";
        let lines = wrapped(text, 5.0, 90.0);
        assert!(lines.iter().all(|line| width(line, 5.0) <= 90.0));
        assert_eq!(lines.join(" "), text);
    }
}
