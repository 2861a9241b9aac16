use super::*;
use proptest::prelude::*;

/// Whole right triangles: Euclid's m² − n², 2mn, m² + n².
#[test]
fn whole_triangles_have_whole_distances() {
    for m in 2..40 {
        for n in 1..m {
            let (a, b, c) = (m * m - n * n, 2 * m * n, m * m + n * n);
            let far = Point::new(Length::from_units(-a), Length::from_units(b));
            assert_eq!(Point::default().distance(far), Length::from_units(c));
        }
    }
}

proptest! {
    #[test]
    fn a_ring_backwards_has_the_opposite_area(
        corners in prop::collection::vec((-99i64..99, -99i64..99), 0..9), turns in 0usize..9
    ) {
        let unit = Length::from_units;
        let mut ring: Vec<Point> = corners.into_iter().map(|(x, y)| Point::new(unit(x), unit(y))).collect();
        let area = ring_area2(&ring);
        let turns = turns.min(ring.len());
        ring.rotate_left(turns);
        prop_assert_eq!(ring_area2(&ring), area);
        ring.reverse();
        prop_assert_eq!(ring_area2(&ring), -area);
    }
}
