use super::{Room, spread};
use crate::drawing::{Extent, Spot};
use proptest::prelude::*;

proptest! {
    /// Spread places keep their order and distance, and stay where they were if they were far enough apart.
    #[test]
    fn spreading_keeps_order_and_distance(
        mut places in prop::collection::vec(0_i64..1_000_000, 0..60),
        apart in 1_i64..20_000,
    ) {
        places.sort_unstable();
        let moved = spread(&places, apart, (-10_000_000, 10_000_000));
        prop_assert_eq!(moved.len(), places.len());
        prop_assert!(moved.windows(2).all(|pair| pair[1] - pair[0] >= apart));
        if places.windows(2).all(|pair| pair[1] - pair[0] >= apart) {
            prop_assert_eq!(moved, places);
        }
    }

    /// Within ends that leave room, nothing lies outside them.
    #[test]
    fn spreading_stays_between_the_ends(mut places in prop::collection::vec(0_i64..1_000, 1..40)) {
        places.sort_unstable();
        let moved = spread(&places, 25, (0, 1_000));
        prop_assert!(moved.iter().all(|&place| (0..=1_000).contains(&place)));
        prop_assert!(moved.windows(2).all(|pair| pair[1] - pair[0] >= 25));
    }

    /// A place that is found is free: compared with every box taken, without the columns.
    #[test]
    fn a_found_place_is_free(taken in prop::collection::vec((0_i64..90_000, 0_i64..90_000, 1_i64..30_000), 0..30)) {
        let mut room = Room::new(Extent::new(0, 0, 100_000, 100_000));
        let boxes: Vec<Extent> = taken.iter().map(|&(x, y, s)| Extent::new(x, y, x + s, y + s / 2 + 1)).collect();
        for &b in &boxes {
    room.take(b);
}
        if let Some(found) = room.nearest(Spot::new(50_000, 50_000), 8_000, 3_000, 60_000) {
            prop_assert!(boxes.iter().all(|b| !b.meets(&found)));
            prop_assert!(Extent::new(0, 0, 100_000, 100_000).covers(&found));
        }
    }
}
