use super::*;
use proptest::prelude::*;

fn any_interval() -> impl Strategy<Value = Interval> {
    (-40i64..40, 0i64..30)
        .prop_map(|(lo, len)| Interval::new(Length::from_units(lo), Length::from_units(lo + len)))
}

/// Unit `n` reaches from n to n + 1.
fn covers_unit(stretches: &[Interval], n: i64) -> bool {
    let unit = Interval::new(Length::from_units(n), Length::from_units(n + 1));
    stretches.iter().any(|s| s.covers(unit))
}

fn apart_and_rising(stretches: &[Interval]) -> bool {
    stretches.iter().all(|s| !s.is_empty()) && stretches.windows(2).all(|pair| pair[0].hi < pair[1].lo)
}

proptest! {
    /// Unit by unit, a union covers what one of the stretches covers, and nothing else.
    #[test]
    fn union_covers_each_unit_once(stretches in prop::collection::vec(any_interval(), 0..8)) {
        let union = Interval::union(stretches.clone());
        prop_assert!(apart_and_rising(&union));
        for n in -50..80 {
            prop_assert_eq!(covers_unit(&union, n), covers_unit(&stretches, n));
        }
        let again = Interval::union(union.clone());
        prop_assert_eq!(again, union);
    }

    /// What is left and what is taken make up the whole.
    #[test]
    fn subtract_leaves_the_rest(from in any_interval(), taken in prop::collection::vec(any_interval(), 0..8)) {
        let taken = Interval::union(taken);
        let left = Interval::subtract(from, &taken);
        prop_assert!(apart_and_rising(&left));
        for n in -50..80 {
            prop_assert_eq!(covers_unit(&left, n), covers_unit(&[from], n) && !covers_unit(&taken, n));
        }
        let cut: Length = taken.iter().filter_map(|t| t.intersect(from)).map(Interval::len).sum();
        let kept: Length = left.iter().map(|s| s.len()).sum();
        prop_assert_eq!(cut + kept, from.len());
    }

    #[test]
    fn sharing_is_mutual(a in any_interval(), b in any_interval()) {
        prop_assert_eq!(a.intersect(b), b.intersect(a));
        prop_assert_eq!(a.overlaps(b), a.intersect(b).is_some());
        prop_assert!(a.intersect(b).is_none_or(|both| a.covers(both) && b.covers(both)));
    }
}

#[test]
fn touching_stretches_share_nothing() {
    let inch = |a, b| Interval::new(Length::inches(a), Length::inches(b));
    assert_eq!(inch(0, 2).intersect(inch(2, 3)), None);
    assert_eq!(Interval::subtract(inch(0, 2), &[inch(2, 3)]), vec![inch(0, 2)]);
    assert_eq!(Interval::union(vec![inch(1, 1)]), vec![]);
    assert_eq!(inch(4, 6).grown(Length::inches(-1)), None);
}
