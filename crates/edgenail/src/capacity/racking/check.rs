//! What no wall can be racked with.

use super::input::RackingWall;
use crate::capacity::fault::{fault, inches};
use crate::issue::{Code, Issue};
use crate::length::Length;

/// Issues of the wall's fields.
pub(super) fn faults(wall: &RackingWall) -> Vec<Issue> {
    let mut issues = Vec::new();
    let mut refuse = |path: &str, found: String, allowed: &str, message: &str| {
        issues.push(fault(Code::OutOfRange, path, &found, allowed, message));
    };
    if wall.height <= Length::ZERO || wall.height > Length::feet(1000) {
        refuse(
            "height",
            inches(wall.height),
            "above 0, at most 1,000 ft",
            "a frame has a height",
        );
    }
    if !wall.force.is_finite() || wall.force < 0.0 {
        refuse(
            "force",
            wall.force.to_string(),
            "0 or more, a number",
            "the model does not tell left from right",
        );
    }
    for (number, sheet) in wall.sheets.iter().enumerate() {
        let limit = Length::LIMIT;
        let corners = sheet.outline.corners();
        let far = corners
            .iter()
            .any(|corner| corner.x.abs() > limit || corner.y.abs() > limit);
        if far || sheet.outline.is_empty() {
            refuse(
                &format!("sheets/{number}/outline"),
                format!(
                    "{} x {}",
                    inches(sheet.outline.width()),
                    inches(sheet.outline.height())
                ),
                "a rectangle with a width and a height, within 1,100 ft of zero",
                "a sheet has a size",
            );
        }
        for (nail, driven) in sheet.nails.iter().enumerate() {
            let path = |field: &str| format!("sheets/{number}/nails/{nail}/{field}");
            if !sheet.outline.contains(driven.at) {
                refuse(
                    &path("at"),
                    format!("{}, {}", inches(driven.at.x), inches(driven.at.y)),
                    "within the sheet's outline",
                    "a nail stands in its sheet",
                );
            }
            for (field, value) in [("strength", driven.strength), ("stiffness", driven.stiffness)] {
                // Far past any nail, and far from where squares overflow.
                if !(value > 0.0 && value <= 1e9) {
                    refuse(
                        &path(field),
                        value.to_string(),
                        "above 0, at most 1,000,000,000",
                        "a nail has a strength and a stiffness",
                    );
                }
            }
        }
    }
    issues
}
