use super::*;
use crate::geometry::Convex;

/// A chord of 3 1/2 in. under a 6 in 12 slope keeps its full thickness past the bottom chord that it stands on.
#[test]
fn a_chord_cut_to_the_bottom_chord_keeps_its_thickness() {
    let inch = |count| Length::inches(count);
    let quad = [
        Point::new(inch(0), inch(0)),
        Point::new(inch(100), inch(50)),
        Point::new(inch(100), inch(54)),
        Point::new(inch(0), inch(4)),
    ];
    let cut = Convex::from_points(&cut_level(&quad, inch(3))).expect("a convex face is left");
    assert_eq!(
        cut.span_at_x(inch(50)).map(crate::geometry::Interval::len),
        Some(inch(4))
    );
    assert_eq!(
        cut.span_at_x(inch(0)).map(crate::geometry::Interval::len),
        Some(inch(1))
    );
    assert_eq!(cut.bounds().y0, inch(3));
}
