use super::super::point::ring_area2;
use super::*;
use proptest::prelude::*;

fn any_rect() -> impl Strategy<Value = Rect> {
    (-9i64..9, -9i64..9, -2i64..12, -2i64..12).prop_map(|(x, y, w, h)| {
        let unit = Length::from_units;
        Rect::from_size(unit(x), unit(y), unit(w), unit(h))
    })
}

/// Unit squares in a rectangle, by their lower left corners, counted one by one.
fn squares(rect: &Rect, also: &Rect) -> i128 {
    let unit = Length::from_units;
    let square = |x, y| Rect::from_size(unit(x), unit(y), unit(1), unit(1));
    let all = (-12..24).flat_map(|x| (-12..24).map(move |y| square(x, y)));
    all.map(|s| i128::from(rect.covers(&s) && also.covers(&s))).sum()
}

proptest! {
    #[test]
    fn areas_count_unit_squares(a in any_rect(), b in any_rect()) {
        prop_assert_eq!(a.area(), squares(&a, &a));
        prop_assert_eq!(a.intersect(&b).map_or(0, |both| both.area()), squares(&a, &b));
        prop_assert_eq!(a.overlaps(&b), squares(&a, &b) > 0);
        prop_assert_eq!(a.is_empty(), a.area() == 0);
    }

    #[test]
    fn corners_lie_in_it(a in any_rect()) {
        prop_assert!(a.is_empty() || a.corners().iter().all(|&corner| a.contains(corner)));
        prop_assert!(a.is_empty() || ring_area2(&a.corners()) == 2 * a.area());
        prop_assert_eq!(a.grown(Length::inches(1)).grown(-Length::inches(1)), a);
    }
}
