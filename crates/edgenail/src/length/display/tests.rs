//! What is shown, read back, keeps the exact size or stays on the stated side of it.

use super::{Finest, Rounding, Style};
use crate::length::{Length, Unit};
use proptest::prelude::*;

const STYLES: [Style; 8] = [
    Style::Inches(Finest::Sixteenth),
    Style::Inches(Finest::ThirtySecond),
    Style::Inches(Finest::SixtyFourth),
    Style::FeetInches(Finest::Sixteenth),
    Style::FeetInches(Finest::ThirtySecond),
    Style::FeetInches(Finest::SixtyFourth),
    Style::DecimalInches,
    Style::Millimetres,
];

/// Half of the finest figure of a style, rounded up to a unit.
fn half_step(style: Style) -> Length {
    Length::from_units(match style {
        Style::Inches(Finest::Sixteenth) | Style::FeetInches(Finest::Sixteenth) => 1270,
        Style::Inches(Finest::ThirtySecond) | Style::FeetInches(Finest::ThirtySecond) => 635,
        Style::Inches(Finest::SixtyFourth) | Style::FeetInches(Finest::SixtyFourth) => 318,
        Style::DecimalInches => 21,
        Style::Millimetres => 80,
    })
}

fn any_length() -> impl Strategy<Value = Length> {
    let limit = Length::LIMIT.units();
    let fine = (-limit..=limit).prop_map(Length::from_units);
    let small = (-2 * Length::PER_INCH..=2 * Length::PER_INCH).prop_map(Length::from_units);
    let fractions = (-800_000_i64..=800_000).prop_map(|count| Length::from_units(count * 635));
    let tenths = (-3_300_000_i64..=3_300_000).prop_map(|count| Length::from_units(count * 160));
    prop_oneof![fine, small, fractions, tenths]
}

fn read(text: &str) -> (Length, bool) {
    let parsed = Length::parse(text, Unit::Metre).unwrap();
    (parsed.length, parsed.exact)
}

proptest! {
    #[test]
    fn printing_is_read_back_exactly(length in any_length()) {
        prop_assert_eq!(read(&length.to_string()), (length, true));
    }

    #[test]
    fn a_shown_size_never_passes_the_length(length in any_length(), style in prop::sample::select(&STYLES[..])) {
        // At the limit itself rounding up has nowhere to go.
        prop_assume!(length.abs() < Length::LIMIT - Length::inches(1));
        let back = |rounding| {
            let shown = length.show(style, rounding);
            let (size, exact) = read(&shown.text);
            assert_eq!(exact && size == length, !shown.rounded, "{shown}");
            size
        };
        let (down, up, nearest) = (back(Rounding::Down), back(Rounding::Up), back(Rounding::Nearest));
        prop_assert!(down <= length && length <= up);
        prop_assert!(up - down <= half_step(style) * 2);
        prop_assert!((nearest - length).abs() <= half_step(style));
        prop_assert!(nearest == down || nearest == up);
    }

    #[test]
    fn a_multiple_of_a_step_is_next_to_the_length(length in any_length(), step in 1_i64..=1_000_000) {
        let step = Length::from_units(step);
        let down = length.round_to(step, Rounding::Down);
        let up = length.round_to(step, Rounding::Up);
        let nearest = length.round_to(step, Rounding::Nearest);
        for multiple in [down, up, nearest] {
            prop_assert_eq!(multiple.units() % step.units(), 0);
        }
        prop_assert!(down <= length && length < down + step);
        prop_assert!(up >= length && length > up - step);
        prop_assert!((nearest - length).abs() <= (down - length).abs().min((up - length).abs()));
    }

    #[test]
    fn no_length_at_all_stops_printing(units: i64, style in prop::sample::select(&STYLES[..])) {
        let length = Length::from_units(units);
        prop_assert!(!length.to_string().is_empty());
        prop_assert!(!length.show(style, Rounding::Nearest).text.is_empty());
    }
}

#[test]
fn the_ends_of_the_range_are_read_back() {
    for length in [Length::LIMIT, -Length::LIMIT, Length::ZERO] {
        assert_eq!(read(&length.to_string()), (length, true));
    }
}

#[test]
fn ties_go_away_from_zero() {
    let tie = Length::from_units(635 * 2 * 3);
    let style = Style::Inches(Finest::Sixteenth);
    let shown = |length: Length, rounding| length.show(style, rounding).text;
    assert_eq!(shown(tie, Rounding::Nearest), "≈1/8\"");
    assert_eq!(shown(-tie, Rounding::Nearest), "≈-1/8\"");
    assert_eq!(shown(-tie, Rounding::Down), "≈-1/8\"");
    assert_eq!(shown(-tie, Rounding::Up), "≈-1/16\"");
    assert_eq!(
        tie.round_to(Length::sixteenths(1), Rounding::Nearest),
        Length::sixteenths(2)
    );
    assert_eq!(
        (-tie).round_to(Length::sixteenths(1), Rounding::Nearest),
        Length::sixteenths(-2)
    );
}

#[test]
fn one_unit_too_many_rounds_up_a_whole_step() {
    let eighth = Length::sixteenths(2);
    let unit = Length::from_units(1);
    assert_eq!((eighth + unit).round_to(eighth, Rounding::Up), eighth * 2);
    assert_eq!((eighth - unit).round_to(eighth, Rounding::Down), Length::ZERO);
    assert_eq!((-eighth - unit).round_to(eighth, Rounding::Down), -eighth * 2);
}

#[test]
fn a_step_of_nothing_leaves_the_length() {
    for step in [Length::ZERO, Length::inches(-1)] {
        assert_eq!(
            Length::from_units(5).round_to(step, Rounding::Up),
            Length::from_units(5)
        );
    }
}

/// The trade's notation: common practice, no source.
#[test]
fn sizes_are_written_as_on_a_drawing() {
    let finest = Finest::Sixteenth;
    let wall = Length::inches(97) + Length::sixteenths(2);
    let cases = [
        (wall, Style::Inches(finest), "97 1/8\""),
        (wall, Style::FeetInches(finest), "8'-1 1/8\""),
        (wall, Style::DecimalInches, "97.125\""),
        (wall, Style::Millimetres, "≈2467 mm"),
        (Length::feet(8), Style::FeetInches(finest), "8'-0\""),
        (Length::feet(1), Style::FeetInches(finest), "1'-0\""),
        (Length::feet(-8), Style::FeetInches(finest), "-8'-0\""),
        (Length::sixteenths(7), Style::FeetInches(finest), "7/16\""),
        (Length::sixteenths(7), Style::Inches(finest), "7/16\""),
        (Length::ZERO, Style::FeetInches(finest), "0\""),
        (Length::mm(1219), Style::Millimetres, "1219 mm"),
        (Length::from_units(-160), Style::Millimetres, "-0.1 mm"),
    ];
    for (length, style, text) in cases {
        assert_eq!(length.show(style, Rounding::Nearest).text, text);
    }
}

#[test]
fn the_plainest_exact_form_is_printed() {
    let cases = [
        (0, "0 in."),
        (635, "1/64 in."),
        (-635, "-1/64 in."),
        (40_640 + 635 * 32, "1 1/2 in."),
        (780_288, "19.2 in."),
        (160, "0.1 mm"),
        (1, "0.000625 mm"),
        (-1601, "-1.000625 mm"),
    ];
    for (units, text) in cases {
        assert_eq!(Length::from_units(units).to_string(), text);
    }
}
