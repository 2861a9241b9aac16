//! Before you sheathe: what was measured on site against what the plan takes for granted.
//!
//! What is cheap to mend before sheathing is dear to mend after it. A value that was not measured is not judged.

use crate::finding::{Finding, FindingCode, Severity};
use crate::frame::Frame;
use crate::house::{House, Measured, MeasuredOpening, Tolerances, Wall};
use crate::length::Length;
use crate::wording::wording;

/// Everything out of tolerance on a wall that was measured.
///
/// Tolerances are practice; their defaults are rows of the table of fields with their sources.
pub fn inspect(house: &House, frame: &Frame) -> Vec<Finding> {
    let Some(wall) = house.walls.get(frame.wall as usize) else {
        return Vec::new();
    };
    let Some(measured) = &wall.measured else {
        return Vec::new();
    };
    let tolerances = &wall.practice.tolerances;
    let mut findings = Vec::new();
    for opening in &measured.openings {
        opening_found(wall, frame, opening, tolerances, &mut findings);
    }
    wall_found(wall, frame, measured, tolerances, &mut findings);
    findings
}

fn opening_found(
    wall: &Wall,
    frame: &Frame,
    found: &MeasuredOpening,
    tolerances: &Tolerances,
    findings: &mut Vec<Finding>,
) {
    let Some(place) = frame.openings.iter().find(|place| place.name == found.opening) else {
        return;
    };
    let at = (place.rect.x0, place.rect.y0);
    let mend = |code| Finding::of(&wall.name, code, Severity::Mend).at(at.0, at.1);
    let sizes = [
        ("width", ["narrower", "wider"], found.width, place.rect.width()),
        ("height", ["lower", "higher"], found.height, place.rect.height()),
    ];
    for (what, [smaller, larger], measured, specified) in sizes {
        let Some(measured) = measured else { continue };
        let (least, most) = (
            specified - tolerances.opening_under,
            specified + tolerances.opening_over,
        );
        if measured < least || most < measured {
            let side = if measured < specified { smaller } else { larger };
            let by = (measured - specified).abs();
            findings.push(
                mend(FindingCode::OpeningOutOfTolerance)
                    .against(measured, wording![least, " to ", most])
                    .says(wording![
                        place.name,
                        ": ",
                        what,
                        " measures ",
                        measured,
                        ", specified ",
                        specified,
                        "; ",
                        side,
                        " by ",
                        by,
                        ". Reframe it before sheathing."
                    ]),
            );
        }
    }
    if let Some(diagonals) = found.diagonals {
        let square = square(&place.name, diagonals, tolerances, mend(FindingCode::OutOfSquare));
        findings.extend(square);
    }
    if let Some(left) = found.left {
        let off = (left - place.rect.x0).abs();
        let most = tolerances.opening_over.max(tolerances.opening_under);
        if off > most {
            findings.push(
                mend(FindingCode::OpeningOutOfTolerance)
                    .against(left, wording![place.rect.x0, " within ", most])
                    .says(wording![
                        place.name,
                        ": stands ",
                        off,
                        " from its place; move it, or plan the wall again."
                    ]),
            );
        }
    }
}

/// The finding, where the diagonals differ by more than is tolerated.
fn square(what: &str, [a, b]: [Length; 2], tolerances: &Tolerances, finding: Finding) -> Option<Finding> {
    let difference = (a - b).abs();
    (difference > tolerances.diagonals).then(|| {
        finding
            .against(difference, wording!["at most ", tolerances.diagonals])
            .says(wording![
                what,
                ": diagonals differ by ",
                difference,
                "; square it before sheathing, it cannot be pulled square after."
            ])
    })
}

fn wall_found(
    wall: &Wall,
    frame: &Frame,
    measured: &Measured,
    tolerances: &Tolerances,
    findings: &mut Vec<Finding>,
) {
    let mend = |code| Finding::of(&wall.name, code, Severity::Mend);
    if let Some(lean) = measured.out_of_plumb {
        let height = measured.plumb_height.unwrap_or(tolerances.plumb_height);
        // lean / height against plumb / plumb_height, without dividing.
        let (found, allowed) = (
            i128::from(lean.abs().units()) * i128::from(tolerances.plumb_height.units()),
            i128::from(tolerances.plumb.units()) * i128::from(height.units()),
        );
        if found > allowed {
            findings.push(
                mend(FindingCode::OutOfPlumb)
                    .against(lean, wording![tolerances.plumb, " in ", tolerances.plumb_height])
                    .says(wording![
                        "The wall leans ",
                        lean,
                        " in ",
                        height,
                        "; plumb and brace it before nailing off."
                    ]),
            );
        }
    }
    if let Some(bow) = measured.bow
        && bow.abs() > tolerances.bow
    {
        findings.push(
            mend(FindingCode::Bow)
                .against(bow, wording!["at most ", tolerances.bow])
                .says(wording![
                    "A plate or stud line bows ",
                    bow,
                    " from the string; straighten it."
                ]),
        );
    }
    if let Some(length) = measured.length {
        let off = (length - wall.length).abs();
        if off > tolerances.layout {
            findings.push(
                mend(FindingCode::LengthOff)
                    .against(length, wording![wall.length, " within ", tolerances.layout])
                    .says(wording![
                        "The wall measures ",
                        length,
                        ", planned ",
                        wall.length,
                        "; plan it again with its true length."
                    ]),
            );
        }
    }
    if let (Some(found), Some(storey)) = (measured.first_stud, frame.storeys.first()) {
        let off = (found - storey.spacing).abs();
        if off > tolerances.layout {
            findings.push(
                mend(FindingCode::LayoutOff)
                    .against(found, wording![storey.spacing, " within ", tolerances.layout])
                    .says(wording![
                        "The first stud stands ",
                        off,
                        " off its mark: no seam will land on wood; pull layout again."
                    ]),
            );
        }
    }
    if let Some(diagonals) = measured.diagonals {
        let square = square("The wall", diagonals, tolerances, mend(FindingCode::OutOfSquare));
        findings.extend(square);
    }
}
