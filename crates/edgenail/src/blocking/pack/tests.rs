use super::pack_sticks;
use crate::length::Length;
use proptest::prelude::*;

proptest! {
    #[test]
    fn every_length_is_cut_once_and_no_stick_is_overdrawn(
        sixteenths in proptest::collection::vec(1i64..1536, 0..40),
        kerf in 0i64..4,
    ) {
        let lengths: Vec<Length> = sixteenths.iter().map(|count| Length::sixteenths(*count)).collect();
        let (stick, kerf) = (Length::inches(96), Length::sixteenths(kerf));
        let sticks = pack_sticks(&lengths, 0, stick, kerf);
        let mut cut: Vec<Length> = sticks.iter().flat_map(|stick| stick.cuts.clone()).collect();
        let mut asked = lengths.clone();
        cut.sort_unstable();
        asked.sort_unstable();
        prop_assert_eq!(cut, asked);
        for packed in &sticks {
            let wood: Length = packed.cuts.iter().copied().sum();
            let kerfs = kerf * i64::try_from(packed.cuts.len()).unwrap();
            prop_assert!(wood + kerfs - kerf <= stick);
            prop_assert_eq!(packed.left, (stick - wood - kerfs).max(Length::ZERO));
        }
        // First fit leaves no two sticks that one would do for.
        for pair in sticks.windows(2) {
            let needed: Length = pair[1].cuts.iter().map(|length| *length + kerf).sum();
            prop_assert!(needed - kerf > pair[0].left);
        }
    }
}
