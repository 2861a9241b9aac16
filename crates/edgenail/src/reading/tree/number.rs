//! Numbers as they were written, compared by their value.

/// Whether two JSON numbers have the same value, such as `1.50` and `15e-1`.
pub(super) fn same(one: &str, other: &str) -> bool {
    one == other || value(one) == value(other)
}

/// Sign, digits without zeros at either end, and the power of ten of the last one; nothing of zero but no digits.
fn value(number: &str) -> Option<(bool, String, i64)> {
    let (negative, number) = number
        .strip_prefix('-')
        .map_or((false, number), |rest| (true, rest));
    let (mantissa, exponent) = number.split_once(['e', 'E']).unwrap_or((number, "0"));
    let (whole, fraction) = mantissa.split_once('.').unwrap_or((mantissa, ""));
    let digits = format!("{whole}{fraction}");
    let kept = digits.trim_end_matches('0');
    let zeros = i64::try_from(digits.len() - kept.len()).ok()?;
    let kept = kept.trim_start_matches('0');
    if kept.is_empty() {
        return Some((false, String::new(), 0));
    }
    let exponent: i64 = exponent.parse().ok()?;
    let power = exponent
        .checked_sub(i64::try_from(fraction.len()).ok()?)?
        .checked_add(zeros)?;
    Some((negative, kept.to_owned(), power))
}

#[cfg(test)]
mod tests {
    use super::same;

    #[test]
    fn numbers_are_the_same_by_their_value() {
        for (one, other) in [
            ("1", "1.0"),
            ("1.50", "15e-1"),
            ("-0", "0.000"),
            ("1200", "1.2E+3"),
            ("0.0010", "1e-3"),
        ] {
            assert!(same(one, other), "{one} {other}");
        }
        for (one, other) in [
            ("1", "-1"),
            ("1", "10"),
            ("0.1", "0.10000000000000000001"),
            ("2", "0"),
        ] {
            assert!(!same(one, other), "{one} {other}");
        }
    }
}
