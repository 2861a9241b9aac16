//! Laws of dual feasible functions.

use crate::cutting::scale::{ONE, Scale};
use crate::length::Length;
use proptest::prelude::*;

proptest! {
    /// Dual feasible functions weigh parts that fit together at one or less.
    #[test]
    fn scales_are_feasible(
        parts in prop::collection::vec(1_i64..400, 1..8),
        rest in 0_i64..50,
        kerf in 0_i64..5,
        least in 0_i64..500,
        steps in 1_i64..12,
    ) {
        let unit = Length::from_units;
        let kerfs = kerf * i64::try_from(parts.len() - 1).unwrap();
        let whole = unit(parts.iter().sum::<i64>() + kerfs + rest);
        for scale in [Scale::Share, Scale::Without(unit(least)), Scale::Steps(steps)] {
            let sum: i128 = parts.iter().map(|part| scale.weigh(unit(*part), whole, unit(kerf))).sum();
            prop_assert!(sum <= ONE, "{scale:?}: {sum}");
            // Superadditive: two parts together weigh no less than apart.
            if let [a, b, ..] = parts[..] {
                let joined = scale.weigh(unit(a + b + kerf), whole, unit(kerf));
                let apart = scale.weigh(unit(a), whole, unit(kerf)) + scale.weigh(unit(b), whole, unit(kerf));
                prop_assert!(joined + 1 >= apart, "{scale:?}: {joined} {apart}");
            }
        }
    }

    /// One step is the same as cutting off at half the whole.
    #[test]
    fn one_step_cuts_off_at_half(half in 5_i64..300, size in 1_i64..600, kerf in 0_i64..5) {
        let unit = Length::from_units;
        let whole = unit(2 * half - kerf);
        prop_assume!(unit(size) <= whole);
        let weigh = |scale: Scale| scale.weigh(unit(size), whole, unit(kerf));
        prop_assert_eq!(weigh(Scale::Without(unit(half))), weigh(Scale::Steps(1)));
    }
}
