use super::{View, holds, on_paper, scales};
use crate::drawing::{Extent, Spot};
use crate::geometry::{Point, Rect, Shape};
use crate::length::{Finest, Length, Style, Unit};
use proptest::prelude::*;

proptest! {
    /// A scale of 1:n makes n inches of wall one inch, which is 25.4 mm by definition (NIST SP 811).
    #[test]
    fn an_inch_is_an_inch(inches in -5_000_i64..5_000, denominator in 1_i64..100) {
        prop_assert_eq!(on_paper(Length::inches(inches * denominator), denominator), inches * 25_400);
    }

    /// A larger length is never drawn shorter.
    #[test]
    fn scaling_keeps_order(a in -500_000_000_i64..500_000_000, b in -500_000_000_i64..500_000_000, d in 1_i64..100) {
        let (small, large) = (a.min(b), a.max(b));
        prop_assert!(on_paper(Length::from_units(small), d) <= on_paper(Length::from_units(large), d));
    }

    /// Boxes in a shape with a notch: the test by rings agrees with the shape's own corners and sides.
    #[test]
    fn a_box_lies_in_a_notched_shape(x in 0_i64..48, y in 0_i64..96, w in 1_i64..20, h in 1_i64..20) {
        let inch = Length::inches;
        let region = crate::geometry::Region {
            lower: crate::geometry::Profile::level(crate::geometry::Interval::new(inch(0), inch(48)), inch(0)).unwrap(),
            upper: crate::geometry::Profile::level(crate::geometry::Interval::new(inch(0), inch(48)), inch(96)).unwrap(),
            holes: vec![Rect::new(inch(20), inch(40), inch(60), inch(70))],
        };
        let shapes: Vec<Shape> = region.pieces();
        prop_assert_eq!(shapes.len(), 1);
        let view = View { denominator: 32, zero: Spot::new(0, 100_000) };
        let rect = Rect::new(inch(x), inch(y), inch(x + w), inch(y + h));
        let hole = Rect::new(inch(20), inch(40), inch(60), inch(70));
        let inside = x + w <= 48 && y + h <= 96 && !rect.overlaps(&hole);
        prop_assert_eq!(holds(&view.rings(&shapes[0]), &view.extent(&rect)), inside);
    }
}

#[test]
fn height_goes_up_on_paper() {
    let view = View {
        denominator: 24,
        zero: Spot::new(40_000, 90_000),
    };
    assert_eq!(
        view.spot(Point::new(Length::inches(24), Length::inches(48))),
        Spot::new(65_400, 39_200)
    );
}

/// A scale is what its name says: so many inches to a foot of 12, or one to so many. The largest comes first.
#[test]
fn scales_are_what_they_are_called() {
    let feet = scales(Style::Inches(Finest::Sixteenth));
    for (denominator, name) in feet {
        let paper = name.strip_suffix(" = 1'-0\"").unwrap();
        let inches = Length::parse(paper, Unit::Inch).unwrap().length;
        assert_eq!(inches * *denominator, Length::feet(1), "{name}");
    }
    let metric = scales(Style::Millimetres);
    assert!(
        metric
            .iter()
            .all(|(denominator, name)| *name == format!("1:{denominator}"))
    );
    for scales in [feet, metric] {
        assert!(scales.is_sorted_by_key(|(denominator, _)| *denominator));
    }
}

#[test]
fn a_box_across_the_outline_is_not_inside() {
    let square = vec![vec![
        Spot::new(0, 0),
        Spot::new(100, 0),
        Spot::new(100, 100),
        Spot::new(0, 100),
    ]];
    assert!(holds(&square, &Extent::new(0, 0, 100, 100)));
    assert!(!holds(&square, &Extent::new(90, 10, 110, 20)));
    assert!(!holds(&square, &Extent::new(200, 10, 210, 20)));
}
