use super::*;
use proptest::prelude::*;

proptest! {
    /// Nearest: off by at most half; a tie goes down.
    #[test]
    fn nearest_is_nearest(n in -(1i128 << 90)..(1i128 << 90), d in 1i128..(1 << 40)) {
        let q = nearest_wide(n, d);
        let twice = 2 * (n - q * d);
        prop_assert!(-d < twice && twice <= d);
    }

    /// Both ways of scaling agree with the plain fraction.
    #[test]
    fn scaling_is_the_fraction(
        f in -(1i64 << 31)..(1 << 31), n in -(1i64 << 31)..(1 << 31), d in 1i64..(1 << 31)
    ) {
        let wide = nearest_wide(i128::from(f) * i128::from(n), i128::from(d));
        prop_assert_eq!(i128::from(scale(Length::from_units(f), n, d).units()), wide);
    }

    /// (2r − 1)² ≤ 4s ≤ (2r + 1)² brackets the nearest root.
    #[test]
    fn roots_are_nearest(square in 0u128..(1 << 122)) {
        let r = u128::from(root(square).units().unsigned_abs());
        prop_assert!((2 * r + 1).pow(2) > 4 * square);
        prop_assert!(r == 0 || (2 * r - 1).pow(2) <= 4 * square);
        let up = root_up(square);
        prop_assert!(up * up >= square && (up == 0 || (up - 1) * (up - 1) < square));
    }
}

#[test]
fn ties_go_down() {
    assert_eq!(
        [
            nearest_wide(1, 2),
            nearest_wide(3, 2),
            nearest_wide(-1, 2),
            nearest_wide(-3, 2)
        ],
        [0, 1, -1, -2]
    );
}
