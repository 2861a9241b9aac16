use super::{escaped, number, share};
use crate::drawing::{Drawing, Form, Label, Layer, Mark, Says, Spot};
use crate::geometry::Point;
use crate::length::Length;
use proptest::prelude::*;

proptest! {
    /// The standard library reads the number that was written back to the same micrometre.
    #[test]
    fn numbers_are_exact(value in -1_000_000_000_000_i64..1_000_000_000_000) {
        let mut text = String::new();
        number(&mut text, value);
        let read: crate::decimal::Decimal = crate::decimal::Decimal::parse(&text).unwrap();
        prop_assert_eq!(read.in_units_of(3), Some(value));
        prop_assert!(!text.contains('.') || !text.ends_with('0'));
    }

    /// Whatever a user writes, the text holds no bare markup and is what was written once it is unescaped.
    #[test]
    fn markup_is_escaped(written in "\\PC{0,60}") {
        let mut text = String::new();
        escaped(&mut text, &written);
        prop_assert!(!text.contains(['<', '>', '"', '\'']));
        let back = text
            .replace("&lt;", "<")
            .replace("&gt;", ">")
            .replace("&quot;", "\"")
            .replace("&#39;", "'")
            .replace("&amp;", "&");
        prop_assert_eq!(back, written);
    }

    /// A nail's place on paper is within a micrometre of the place of its exact position.
    #[test]
    fn nails_stand_where_the_row_says(
        from in 0_i64..500_000_000, length in 0_i64..5_000_000, spaces in 1_u32..60, scale in 12_i64..60,
    ) {
        let paper = |units: i64| (units * 5 + 4 * scale).div_euclid(8 * scale);
        for index in 0..=spaces {
            let exact = Length::from_units(from + (2 * length * i64::from(index) + i64::from(spaces)) / (2 * i64::from(spaces)));
            let point = Point::new(exact, exact);
            let drawn = share(paper(from), paper(from + length), index, spaces);
            prop_assert!((drawn - paper(point.x.units())).abs() <= 1);
        }
    }
}

#[test]
fn control_characters_are_shown_as_replaced() {
    let mut text = String::new();
    escaped(&mut text, "a\u{0}b\nc");
    assert_eq!(text, "a\u{fffd}b c");
}

/// Every tag that is opened is closed, and every nail of a row is a dot.
#[test]
fn the_file_is_balanced() {
    let row = Form::Nails {
        from: Spot::new(0, 0),
        to: Spot::new(0, 48_000),
        spaces: 16,
        first: 1,
        last: 15,
        dot: 300,
        square: false,
    };
    let block = Form::Polygon {
        rings: vec![vec![Spot::new(0, 0), Spot::new(9, 0), Spot::new(9, 9)]],
    };
    let drawing = Drawing {
        title: "<north & \"south\">".into(),
        width: 100_000,
        height: 100_000,
        marks: vec![
            Mark {
                layer: Layer::EdgeNails,
                form: row,
            },
            Mark {
                layer: Layer::Block,
                form: block,
            },
        ],
        labels: vec![Label::new(Says::Note, "a < b", Spot::new(5, 5), 2_000).backed()],
        ..Drawing::default()
    };
    let svg = drawing.svg();
    assert_eq!(svg.matches("h0").count(), 15);
    let opened = svg.matches('<').count() - svg.matches("</").count() - svg.matches("/>").count();
    assert_eq!(opened, svg.matches("</").count());
    assert!(svg.contains("&lt;north &amp; &quot;south&quot;&gt;"));
    assert_eq!(svg, drawing.svg());
}
