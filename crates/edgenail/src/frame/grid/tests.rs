use super::Grid;
use crate::geometry::Interval;
use crate::length::Length;
use proptest::prelude::*;

fn inch(whole: i64, sixteenths: i64) -> Length {
    Length::inches(whole) + Length::sixteenths(sixteenths)
}

fn grid(spacing: Length) -> Grid {
    Grid {
        zero: Length::ZERO,
        spacing,
        from_right: false,
    }
}

/// Near edge of the first stud past the corner's.
fn first_mark(spacing: Length) -> Length {
    let faces = grid(spacing).faces(inch(1, 8), Interval::new(Length::ZERO, Length::feet(20)));
    faces[0].1.lo
}

/// US Navy, Builder 3 & 2 (NAVEDTRA 14044), p. 1-23: 15 1/4 in. for studs 16 in. on centre.
/// 12, 24 and 19.2 in. by arithmetic.
#[test]
fn the_first_stud_is_marked_half_its_width_short_of_the_spacing() {
    assert_eq!(first_mark(inch(16, 0)), inch(15, 4));
    assert_eq!(first_mark(inch(24, 0)), inch(23, 4));
    assert_eq!(first_mark(inch(12, 0)), inch(11, 4));
    let nineteen_and_a_fifth = Length::from_units(Length::PER_INCH * 192 / 10);
    assert_eq!(
        first_mark(nineteen_and_a_fifth),
        Length::from_units(Length::PER_INCH * 1845 / 100)
    );
}

/// Common practice, no source: edges of 4 ft sheets meet on studs at 12, 16 and 24 in., and only every second one
/// at 19.2 in.
#[test]
fn four_foot_seams_meet_studs() {
    let wall = Interval::new(Length::ZERO, Length::feet(40));
    let fifth = Length::from_units(Length::PER_INCH / 5);
    for (spacing, every) in [
        (inch(12, 0), 1),
        (inch(16, 0), 1),
        (inch(24, 0), 1),
        (fifth * 96, 2),
    ] {
        let width = inch(1, 8);
        let faces = grid(spacing).faces(width, wall);
        for sheet in 1..10 {
            let seam = inch(48, 0) * sheet;
            let centred = faces.iter().any(|(_, face)| face.lo + width.half() == seam);
            assert_eq!(
                centred,
                sheet % every == 0,
                "seam {sheet} on studs {}",
                spacing.as_inches()
            );
        }
    }
}

proptest! {
    #[test]
    fn faces_stand_on_their_marks_and_none_is_missing(
        zero in -500_000i64..2_000_000, spacing in 200_000i64..1_000_000, width in 40_000i64..160_000,
        length in 200_000i64..10_000_000, from_right: bool,
    ) {
        let units = Length::from_units;
        let grid = Grid { zero: units(zero), spacing: units(spacing), from_right };
        let x = Interval::new(Length::ZERO, units(length));
        let faces = grid.faces(units(width), x);
        let mark = |k: i64| zero + if from_right { -k * spacing } else { k * spacing };
        for (k, face) in &faces {
            prop_assert_eq!(face.len(), units(width));
            let doubled = face.lo.units() + face.hi.units() - 2 * mark(*k);
            prop_assert!(doubled.abs() <= 1);
            prop_assert!(x.covers(*face));
        }
        let inside = (-100..200).filter(|k| {
            let centre = mark(*k);
            2 * centre - width > 1 && 2 * centre + width + 1 < 2 * length
        });
        for k in inside {
            prop_assert!(faces.iter().any(|(found, _)| *found == k), "no face on mark {k}");
        }
    }

    #[test]
    fn a_mirrored_grid_has_mirrored_faces(
        zero in -500_000i64..2_000_000, spacing in 200_000i64..1_000_000, width in 40_000i64..160_000,
        length in 400_000i64..10_000_000,
    ) {
        let units = Length::from_units;
        let x = Interval::new(Length::ZERO, units(length));
        let left = Grid { zero: units(zero), spacing: units(spacing), from_right: false };
        let right = Grid { zero: units(length - zero), spacing: units(spacing), from_right: true };
        let mirror = |face: Interval| Interval::new(x.hi - face.hi, x.hi - face.lo);
        let mut seen: Vec<_> = right.faces(units(width), x).into_iter().map(|(k, f)| (k, mirror(f))).collect();
        seen.reverse();
        prop_assert_eq!(left.faces(units(width), x), seen);
        let mut seen: Vec<_> = right.faces_with_ends(units(width), x).into_iter().map(mirror).collect();
        seen.reverse();
        prop_assert_eq!(left.faces_with_ends(units(width), x), seen);
    }
}
