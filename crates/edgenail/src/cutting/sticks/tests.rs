use super::cut_sticks;
use crate::length::Length;
use proptest::prelude::*;

const EFFORT: u64 = 10_000_000;

/// The fewest sticks, by trying every stick for every length: shares no code with cutting.
fn fewest(lengths: &[Length], kerf: Length, left: &mut Vec<Length>, whole: Length, best: &mut usize) {
    if left.len() >= *best {
        return;
    }
    let Some((length, rest)) = lengths.split_first() else {
        *best = left.len();
        return;
    };
    for at in 0..left.len() {
        let before = left[at];
        if before >= *length {
            left[at] = before - *length - kerf;
            fewest(rest, kerf, left, whole, best);
            left[at] = before;
        }
    }
    left.push(whole - *length - kerf);
    fewest(rest, kerf, left, whole, best);
    left.pop();
}

proptest! {
    #[test]
    fn every_length_is_cut_once_and_no_stick_is_overdrawn(
        sixteenths in proptest::collection::vec(1i64..1536, 0..40),
        kerf in 0i64..4,
    ) {
        let lengths: Vec<Length> = sixteenths.iter().map(|count| Length::sixteenths(*count)).collect();
        let (stick, kerf) = (Length::inches(96), Length::sixteenths(kerf));
        let plan = cut_sticks(&lengths, 0, stick, kerf, EFFORT);
        let mut cut: Vec<Length> = plan.sticks.iter().flat_map(|stick| stick.cuts.clone()).collect();
        let mut asked = lengths.clone();
        cut.sort_unstable();
        asked.sort_unstable();
        prop_assert_eq!(&cut, &asked);
        for packed in &plan.sticks {
            let wood: Length = packed.cuts.iter().copied().sum();
            let kerfs = kerf * i64::try_from(packed.cuts.len()).unwrap();
            prop_assert!(wood + kerfs - kerf <= stick);
            prop_assert_eq!(packed.left, (stick - wood - kerfs).max(Length::ZERO));
        }
        prop_assert!(plan.least as usize <= plan.sticks.len());
        // First fit leaves no two sticks that one would do for, and no plan takes more.
        asked.reverse();
        let first = super::first_fit(&asked, 0, stick, kerf);
        prop_assert!(plan.sticks.len() <= first.len());
        for pair in first.windows(2) {
            let needed: Length = pair[1].cuts.iter().map(|length| *length + kerf).sum();
            prop_assert!(needed - kerf > pair[0].left);
        }
    }

    #[test]
    fn few_lengths_take_the_fewest_sticks(
        sixteenths in proptest::collection::vec(200i64..1100, 1..9),
        kerf in 0i64..4,
    ) {
        let lengths: Vec<Length> = sixteenths.iter().map(|count| Length::sixteenths(*count)).collect();
        let (stick, kerf) = (Length::inches(96), Length::sixteenths(kerf));
        let mut best = lengths.len() + 1;
        fewest(&lengths, kerf, &mut Vec::new(), stick, &mut best);
        let plan = cut_sticks(&lengths, 0, stick, kerf, EFFORT);
        prop_assert_eq!(plan.sticks.len(), best);
        prop_assert_eq!(plan.least as usize, best);
    }
}

/// The lengths for which first fit, the longest first, takes 11 sticks for every 9: D. S. Johnson, "Near-optimal bin
/// packing algorithms", 1973; its proportions from memory, the sums checked by hand: 51 + 26 + 23 and 27 + 27 + 23 + 23
/// both fill 100.
#[test]
fn what_first_fit_packs_badly_is_packed_as_well_as_can_be() {
    let lengths: Vec<Length> = [(6, 51), (6, 27), (6, 26), (12, 23)]
        .into_iter()
        .flat_map(|(count, inches)| vec![Length::inches(inches); count])
        .collect();
    let (stick, kerf) = (Length::inches(100), Length::ZERO);
    assert_eq!(super::first_fit(&lengths, 0, stick, kerf).len(), 11);
    let plan = cut_sticks(&lengths, 0, stick, kerf, EFFORT);
    assert_eq!((plan.sticks.len(), plan.least), (9, 9));
    assert_eq!(cut_sticks(&lengths, 0, stick, kerf, 0).least, 9);
}
