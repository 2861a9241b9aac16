//! What every drawing has to keep so that it can be read.

use super::page::{LEAST_TYPE, MARGIN};
use super::view::holds;
use super::{Along, Drawing, Extent, Form, Layer, MM, Says, Spot};
use crate::cutting::{Blank, CutSheet, Part, replay};
use crate::layout::Layout;
use crate::length::{Length, Rounding, Style};
use proptest::prelude::*;

/// No two boxes of text meet, and none leaves the sheet.
pub(crate) fn texts_are_apart(drawing: &Drawing) -> Result<(), TestCaseError> {
    let sheet = drawing.sheet();
    let mut labels: Vec<_> = drawing.labels.iter().collect();
    labels.sort_by_key(|label| label.extent.x0);
    for (index, label) in labels.iter().enumerate() {
        prop_assert!(sheet.covers(&label.extent), "{} leaves the sheet", label.text);
        let beside = labels
            .iter()
            .skip(index + 1)
            .take_while(|other| other.extent.x0 < label.extent.x1);
        for other in beside {
            prop_assert!(
                !label.extent.meets(&other.extent),
                "{:?} meets {:?}",
                label,
                other
            );
        }
    }
    Ok(())
}

/// The drawing is on A3 sheets (ISO 216: 297 × 420 mm) lying on their sides one under the other, and every text is within
/// the margins of one of them.
pub(crate) fn fits_its_paper(drawing: &Drawing) -> Result<(), TestCaseError> {
    let high = 297 * MM;
    prop_assert_eq!(drawing.width, 420 * MM);
    prop_assert_eq!(drawing.height % high, 0);
    for label in &drawing.labels {
        let top = label.extent.y0.div_euclid(high) * high;
        let page = Extent::new(0, top, drawing.width, top + high).grown(-MARGIN);
        prop_assert!(page.covers(&label.extent), "{} leaves its page", label.text);
    }
    Ok(())
}

/// No type is smaller than can be read on paper.
pub(crate) fn types_are_readable(drawing: &Drawing) -> Result<(), TestCaseError> {
    for label in &drawing.labels {
        prop_assert!(label.size >= LEAST_TYPE, "{} is {} high", label.text, label.size);
    }
    Ok(())
}

/// Every dimension is the difference of its ends, on paper too, and its label says it.
pub(crate) fn dimensions_agree(drawing: &Drawing, style: Style) -> Result<(), TestCaseError> {
    let scale = drawing
        .dimensions
        .iter()
        .find(|d| d.along == Along::Wall && d.value > Length::ZERO);
    for (index, dimension) in drawing.dimensions.iter().enumerate() {
        let difference = dimension.to - dimension.from;
        let paper = match dimension.along {
            Along::Wall => {
                prop_assert_eq!(dimension.value, difference.abs());
                dimension.to_at.x - dimension.from_at.x
            }
            Along::Height => {
                prop_assert_eq!(dimension.value, difference);
                dimension.from_at.y - dimension.to_at.y
            }
        };
        if let Some(other) = scale {
            // One scale for all: cross products agree within the rounding of both ends to a micrometre.
            let units = |length: Length| i128::from(length.units());
            let (long, of_long) = (
                units(other.to - other.from),
                i128::from(other.to_at.x - other.from_at.x),
            );
            let left = i128::from(paper) * long - of_long * units(difference);
            prop_assert!(left.abs() <= 2 * (long.abs() + units(difference).abs()));
        }
        let says = Says::Dimension {
            dimension: u32::try_from(index).unwrap(),
        };
        let label = drawing.labels.iter().find(|label| label.says == says);
        let said = label.map(|label| label.text.clone()).unwrap_or_default();
        let allowed =
            [Rounding::Down, Rounding::Nearest, Rounding::Up].map(|r| dimension.value.show(style, r).text);
        prop_assert!(allowed.contains(&said), "{said} for {:?}", dimension);
    }
    Ok(())
}

/// Every piece has one mark: inside its outline, or with a line that ends there.
pub(crate) fn marks_lie_in_their_pieces(drawing: &Drawing, layout: &Layout) -> Result<(), TestCaseError> {
    let outlines: Vec<&Vec<Vec<Spot>>> = drawing
        .marks
        .iter()
        .filter(|mark| mark.layer == Layer::Panel)
        .filter_map(|mark| match &mark.form {
            Form::Polygon { rings } => Some(rings),
            _ => None,
        })
        .collect();
    let pieces = &layout.pieces;
    prop_assert_eq!(outlines.len(), pieces.len());
    for (piece, rings) in pieces.iter().zip(outlines) {
        let said: Vec<_> = drawing
            .labels
            .iter()
            .filter(|label| label.says == Says::PieceMark { piece: piece.id })
            .collect();
        prop_assert_eq!(said.len(), 1, "marks of {}", piece.mark);
        let label = said[0];
        prop_assert_eq!(&label.text, &piece.mark);
        let pointed = label
            .points_at
            .is_some_and(|at| holds(rings, &Extent::around(at, 2, 2)));
        prop_assert!(pointed || holds(rings, &label.extent), "mark of {}", piece.mark);
    }
    Ok(())
}

/// Every piece of a page of cut sheets has one mark: inside its part of the sheet, or with a line that ends there.
pub(crate) fn marks_lie_in_their_parts(
    drawing: &Drawing,
    sheets: &[CutSheet],
    blanks: &[Blank],
    kerf: Length,
) -> Result<(), TestCaseError> {
    let drawn = drawing
        .marks
        .iter()
        .filter_map(|mark| match (&mark.form, mark.layer) {
            (Form::Polygon { rings }, Layer::Sheet) => rings.first(),
            _ => None,
        });
    let drawn: Vec<_> = drawn.collect();
    prop_assert_eq!(drawn.len(), sheets.len());
    for (corners, sheet) in drawn.iter().zip(sheets) {
        let (left, low) = (corners[3].x, corners[3].y);
        let paper = |length: Length| {
            let scaled = i128::from(length.units()) * i128::from(corners[1].x - left);
            i64::try_from(scaled / i128::from(sheet.width.units())).unwrap()
        };
        for placed in replay(sheet, blanks, kerf).unwrap() {
            let Part::Blank { blank, .. } = placed.part else {
                continue;
            };
            let part = Extent::new(
                left + paper(placed.x),
                low - paper(placed.y + placed.length),
                left + paper(placed.x + placed.width),
                low - paper(placed.y),
            );
            let says = Says::PieceMark { piece: blank };
            let said: Vec<_> = drawing.labels.iter().filter(|label| label.says == says).collect();
            prop_assert_eq!(said.len(), 1, "marks of blank {}", blank);
            let pointed = said[0].points_at.is_some_and(|at| part.holds(at));
            // Both were rounded to a micrometre.
            prop_assert!(
                pointed || part.grown(3).covers(&said[0].extent),
                "mark of blank {blank}"
            );
        }
    }
    Ok(())
}
