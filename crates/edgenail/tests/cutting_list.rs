//! The cut list against the plan and the outlines, told by reading its texts back.

#![expect(clippy::expect_used, reason = "a figure that cannot be read fails the test")]

mod cut_ground;

use cut_ground::{any_face, house, inch, layout};
use edgenail::Length;
use edgenail::cutting::{
    Blank, CutNode, CutRow, CutRules, Hand, Notch, Source, blanks, check, cut_by, cut_list, notches,
};
use edgenail::geometry::{Point, Rect, Shape};
use edgenail::house::House;
use edgenail::layout::{Layout, Piece, Running};
use edgenail::length::Unit;
use proptest::prelude::*;

const THIRTY_SECOND: Length = Length::from_units(Length::PER_INCH / 32);

fn read(figure: &str) -> Length {
    Length::parse(figure, Unit::Inch)
        .expect("a figure is read back")
        .length
}

/// A size rounded down to what a tape shows, and marked if it is not exact.
fn shows_down(figure: &str, size: Length) -> Result<(), TestCaseError> {
    let shown = read(figure);
    prop_assert!(
        shown <= size && size < shown + THIRTY_SECOND,
        "{figure} for {size}"
    );
    prop_assert_eq!(figure.starts_with('≈'), shown != size);
    Ok(())
}

/// Where a blank lies, found by sawing.
#[derive(Debug, PartialEq)]
struct Place {
    blank: u32,
    turned: bool,
    corner: (Length, Length),
}

/// Goes through a tree with the corner of each part, told by what the saw has passed; the nearer part first.
fn saw(node: &CutNode, corner: (Length, Length), kerf: Length, found: &mut Vec<Place>) {
    match node {
        CutNode::Split {
            across,
            at,
            first,
            second,
        } => {
            saw(first, corner, kerf, found);
            let passed = *at + kerf;
            let beyond = if *across {
                (corner.0, corner.1 + passed)
            } else {
                (corner.0 + passed, corner.1)
            };
            saw(second, beyond, kerf, found);
        }
        CutNode::Piece { blank, turned } => found.push(Place {
            blank: *blank,
            turned: *turned,
            corner,
        }),
        CutNode::Offcut { .. } | CutNode::Waste => {}
    }
}

/// Sloping tops of a piece from left to right, from its rings: counter-clockwise, a top runs to the left.
fn rakes(outline: &Shape) -> Vec<(Point, Point)> {
    let mut found = Vec::new();
    for ring in outline.rings() {
        for (index, a) in ring.iter().enumerate() {
            let b = ring[(index + 1) % ring.len()];
            if b.x < a.x && b.y != a.y {
                found.push((b, *a));
            }
        }
    }
    found.sort_unstable();
    found
}

fn rakes_are_told(row: &CutRow, piece: &Piece) -> Result<(), TestCaseError> {
    let (rakes, base) = (rakes(&piece.outline), piece.blank().y0);
    let texts: Vec<&str> = row.rake.split("; ").filter(|text| !text.is_empty()).collect();
    prop_assert_eq!(texts.len(), rakes.len());
    for (text, (left, right)) in texts.iter().zip(&rakes) {
        let (a, b) = text.split_once(" to ").expect("two heights");
        shows_down(a, left.y - base)?;
        shows_down(b, right.y - base)?;
    }
    let rises = (
        rakes.iter().any(|(a, b)| a.y > b.y),
        rakes.iter().any(|(a, b)| a.y < b.y),
    );
    let hand = match rises {
        (false, false) => None,
        (true, false) => Some(Hand::Left),
        (false, true) => Some(Hand::Right),
        (true, true) => Some(Hand::Both),
    };
    prop_assert_eq!(row.hand, hand);
    Ok(())
}

/// Each notch is told by a rectangle that holds it and is larger by less than a 32nd at each side.
fn notches_are_told(row: &CutRow, piece: &Piece) -> Result<(), TestCaseError> {
    let (found, blank): (Vec<Notch>, Rect) = (notches(&piece.outline), piece.blank());
    let texts: Vec<&str> = row.notches.split("; ").filter(|text| !text.is_empty()).collect();
    prop_assert_eq!(texts.len(), found.len());
    for (text, notch) in texts.iter().zip(&found) {
        let (corner, size) = text.split_once(": ").expect("a corner and a size");
        let ((x, y), (w, h)) = (
            corner.split_once(", ").expect("from the left, from the bottom"),
            size.split_once(" × ").expect("width and height"),
        );
        prop_assert!(!text.contains('≈'));
        let (x, y, w, h) = (read(x), read(y), read(w), read(h));
        let rect = notch.rect.shifted(-blank.x0, -blank.y0);
        for over in [rect.x0 - x, rect.y0 - y, x + w - rect.x1, y + h - rect.y1] {
            prop_assert!(
                Length::ZERO <= over && over < THIRTY_SECOND,
                "{text} for {rect:?}"
            );
        }
    }
    Ok(())
}

fn piece_is_told(row: &CutRow, house: &House, blank: &Blank, piece: &Piece) -> Result<(), TestCaseError> {
    let sheet = &house.stock.sheets[piece.sheet as usize];
    let names = (row.wall.as_str(), row.mark.as_str(), row.sheet.as_str());
    let wall = house.walls[blank.wall as usize].name.as_str();
    prop_assert_eq!(names, (wall, piece.mark.as_str(), sheet.name.as_str()));
    prop_assert_eq!(row.turns_over, sheet.faces_alike);
    let outline = piece.blank();
    let mut size = [outline.width(), outline.height()];
    if piece.running == Running::Flat {
        size.reverse();
    }
    prop_assert_eq!([row.width, row.length], size);
    let (width, length) = row.shown.split_once(" × ").expect("width and length");
    shows_down(width, size[0])?;
    shows_down(length, size[1])?;
    notches_are_told(row, piece)?;
    rakes_are_told(row, piece)
}

fn rows_agree(house: &House, layout: &Layout, kerf: Length) -> Result<(), TestCaseError> {
    let walls = [(1, layout)];
    let rules = CutRules {
        kerf,
        offcut_width_least: inch(16),
        offcut_length_least: inch(24),
        effort_most: 1_000_000,
    };
    let plan = cut_by(&house.stock, &rules, &blanks(house, &walls));
    prop_assert_eq!(check(&plan, &house.stock, kerf), Ok(()));
    let rows = cut_list(house, &walls, &plan, kerf);
    let mut told = rows.iter();
    let mut told_of = |index: u32| {
        let blank = &plan.blanks[index as usize];
        let piece = layout.pieces.iter().find(|piece| piece.id == blank.piece);
        let (row, piece) = (told.next().expect("a row"), piece.expect("a piece"));
        assert_eq!((row.wall_index, row.panel), (blank.wall, blank.piece));
        piece_is_told(row, house, blank, piece).map(|()| row)
    };
    for (number, sheet) in (1..).zip(&plan.sheets) {
        let source = match sheet.source {
            Source::Sheet { .. } => "sheet",
            Source::Offcut { .. } => "offcut",
            Source::Drop { .. } => "drop",
        };
        let mut places = Vec::new();
        saw(&sheet.tree, (Length::ZERO, Length::ZERO), kerf, &mut places);
        for place in places {
            let row = told_of(place.blank)?;
            prop_assert_eq!((row.cut_sheet, row.source), (number, source));
            prop_assert_eq!(
                (row.x, row.y, row.turned),
                (place.corner.0, place.corner.1, place.turned)
            );
        }
    }
    for uncut in &plan.uncut {
        let row = told_of(uncut.blank)?;
        prop_assert_eq!((row.cut_sheet, row.source), (0, ""));
    }
    prop_assert_eq!(rows.len(), layout.pieces.len());
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn the_cut_list_tells_the_plan(
        faces in prop::collection::vec(any_face(), 1..5),
        corner in (-200_000_i64..9_000_000, -200_000_i64..9_000_000),
        shrunk in 0_i64..9_000,
        kerf in 0_i64..4,
        turns in any::<bool>(),
        ways in prop::collection::vec((any::<bool>(), 0_u32..2), 60),
    ) {
        let mut house = house();
        for (sheet, alike) in house.stock.sheets.iter_mut().zip([true, false]) {
            sheet.may_turn = turns;
            sheet.faces_alike = alike;
        }
        // The second kind is too small for many a piece.
        house.stock.sheets[1].length = inch(60);
        let corner = Point::new(Length::from_units(corner.0), Length::from_units(corner.1));
        let faces = faces.into_iter().map(|face| cut_ground::Face { corner, shrunk: Length::from_units(shrunk), ..face });
        let outlines = faces.flat_map(|face| face.outlines()).collect();
        let layout = layout(outlines, |number| {
            let (flat, sheet) = ways[number % 60];
            (if flat && turns { Running::Flat } else { Running::Upright }, sheet, u32::try_from(number).unwrap_or(0))
        });
        rows_agree(&house, &layout, Length::sixteenths(kerf))?;
    }
}
