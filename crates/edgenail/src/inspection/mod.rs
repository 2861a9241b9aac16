//! Before you sheathe: what was measured on site against what the plan takes for granted.
//!
//! What is cheap to mend before sheathing is dear to mend after it. A value that was not measured is not judged.

use crate::finding::{Finding, FindingCode, Severity, inches};
use crate::frame::Frame;
use crate::house::{House, Measured, MeasuredOpening, Tolerances, Wall};
use crate::length::Length;

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
    let at = Some((place.rect.x0, place.rect.y0));
    let sizes = [
        ("width", ["narrower", "wider"], found.width, place.rect.width()),
        ("height", ["lower", "higher"], found.height, place.rect.height()),
    ];
    for (what, [smaller, larger], measured, specified) in sizes {
        let Some(measured) = measured else { continue };
        let allowed = (
            specified - tolerances.opening_under,
            specified + tolerances.opening_over,
        );
        if measured < allowed.0 || allowed.1 < measured {
            let side = if measured < specified { smaller } else { larger };
            findings.push(Finding {
                code: FindingCode::OpeningOutOfTolerance,
                severity: Severity::Mend,
                wall: wall.name.clone(),
                piece: String::new(),
                at,
                found: measured.to_string(),
                allowed: format!("{} to {}", allowed.0, allowed.1),
                message: format!(
                    "{}: {what} measures {}, specified {}; {side} by {}. Reframe it before sheathing.",
                    place.name,
                    inches(measured),
                    inches(specified),
                    inches((measured - specified).abs())
                ),
            });
        }
    }
    if let Some([a, b]) = found.diagonals {
        square(wall, &place.name, at, a, b, tolerances, findings);
    }
    if let Some(left) = found.left {
        let off = (left - place.rect.x0).abs();
        if off > tolerances.opening_over.max(tolerances.opening_under) {
            findings.push(Finding {
                code: FindingCode::OpeningOutOfTolerance,
                severity: Severity::Mend,
                wall: wall.name.clone(),
                piece: String::new(),
                at,
                found: left.to_string(),
                allowed: format!(
                    "{} within {}",
                    place.rect.x0,
                    tolerances.opening_over.max(tolerances.opening_under)
                ),
                message: format!(
                    "{}: stands {off} from its place; move it, or plan the wall again.",
                    place.name
                ),
            });
        }
    }
}

fn square(
    wall: &Wall,
    what: &str,
    at: Option<(Length, Length)>,
    a: Length,
    b: Length,
    tolerances: &Tolerances,
    findings: &mut Vec<Finding>,
) {
    let difference = (a - b).abs();
    if difference > tolerances.diagonals {
        findings.push(Finding {
            code: FindingCode::OutOfSquare,
            severity: Severity::Mend,
            wall: wall.name.clone(),
            piece: String::new(),
            at,
            found: difference.to_string(),
            allowed: format!("at most {}", tolerances.diagonals),
            message: format!("{what}: diagonals differ by {difference}; square it before sheathing, it cannot be pulled square after."),
        });
    }
}

fn wall_found(
    wall: &Wall,
    frame: &Frame,
    measured: &Measured,
    tolerances: &Tolerances,
    findings: &mut Vec<Finding>,
) {
    let mut add = |code, found: Length, allowed: String, message: String| {
        findings.push(Finding {
            code,
            severity: Severity::Mend,
            wall: wall.name.clone(),
            piece: String::new(),
            at: None,
            found: found.to_string(),
            allowed,
            message,
        });
    };
    if let Some(lean) = measured.out_of_plumb {
        let height = measured.plumb_height.unwrap_or(tolerances.plumb_height);
        // lean / height against plumb / plumb_height, without dividing.
        let (found, allowed) = (
            i128::from(lean.abs().units()) * i128::from(tolerances.plumb_height.units()),
            i128::from(tolerances.plumb.units()) * i128::from(height.units()),
        );
        if found > allowed {
            let most = format!("{} in {}", tolerances.plumb, tolerances.plumb_height);
            add(
                FindingCode::OutOfPlumb,
                lean,
                most,
                format!("the wall leans {lean} in {height}; plumb and brace it before nailing off."),
            );
        }
    }
    if let Some(bow) = measured.bow
        && bow.abs() > tolerances.bow
    {
        add(
            FindingCode::Bow,
            bow,
            format!("at most {}", tolerances.bow),
            format!("a plate or stud line bows {bow} from the string; straighten it."),
        );
    }
    if let Some(length) = measured.length {
        let off = (length - wall.length).abs();
        if off > tolerances.layout {
            add(
                FindingCode::LengthOff,
                length,
                format!("{} within {}", wall.length, tolerances.layout),
                format!(
                    "the wall measures {length}, planned {}; plan it again with its true length.",
                    wall.length
                ),
            );
        }
    }
    if let (Some(found), Some(storey)) = (measured.first_stud, frame.storeys.first()) {
        let off = (found - storey.spacing).abs();
        if off > tolerances.layout {
            add(
                FindingCode::LayoutOff,
                found,
                format!("{} within {}", storey.spacing, tolerances.layout),
                format!(
                    "the first stud stands {off} off its mark: no seam will land on wood; pull layout again."
                ),
            );
        }
    }
    if let Some([a, b]) = measured.diagonals {
        square(wall, "the wall", None, a, b, tolerances, findings);
    }
}
