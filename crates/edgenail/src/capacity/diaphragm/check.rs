//! What no storey's force can be shared with.

use super::input::{DiaphragmLine, StoreyForce};
use crate::capacity::fault::{fault, inches};
use crate::issue::{Code, Issue};
use crate::length::Length;

/// Issues of the fields, and of lines that cannot resist.
pub(super) fn faults(lines: &[DiaphragmLine], force: &StoreyForce) -> Vec<Issue> {
    let mut issues = Vec::new();
    let mut refuse = |path: &str, found: String, allowed: &str, message: &str| {
        issues.push(fault(Code::OutOfRange, path, &found, allowed, message));
    };
    if !force.size.is_finite() || force.size < 0.0 {
        refuse(
            "force/size",
            force.size.to_string(),
            "0 or more, a number",
            "a force without its direction",
        );
    }
    if force.at.abs() > Length::LIMIT {
        refuse(
            "force/at",
            inches(force.at),
            "within 1,100 ft of zero",
            "a place in plan",
        );
    }
    if let Some(accidental) = force.accidental
        && !(Length::ZERO..=Length::LIMIT).contains(&accidental)
    {
        refuse(
            "force/accidental",
            inches(accidental),
            "0 or more, at most 1,100 ft",
            "it is taken to both sides",
        );
    }
    for (number, line) in lines.iter().enumerate() {
        let path = |field: &str| format!("lines/{number}/{field}");
        if line.at.abs() > Length::LIMIT {
            refuse(
                &path("at"),
                inches(line.at),
                "within 1,100 ft of zero",
                "a place in plan",
            );
        }
        // Far past any wall, and far from where squares overflow.
        if !(line.stiffness > 0.0 && line.stiffness <= 1e12) {
            refuse(
                &path("stiffness"),
                line.stiffness.to_string(),
                "above 0, at most 1,000,000,000,000",
                "a line has a stiffness",
            );
        }
        if !(Length::ZERO..=Length::LIMIT).contains(&line.tributary) {
            refuse(
                &path("tributary"),
                inches(line.tributary),
                "0 or more, at most 1,100 ft",
                "a width",
            );
        }
    }
    if issues.is_empty() {
        let parallel = |line: &&DiaphragmLine| line.along == force.along;
        if !lines.iter().any(|line| parallel(&line)) {
            issues.push(nothing("no line runs along the force"));
        } else if lines
            .iter()
            .filter(parallel)
            .all(|line| line.tributary == Length::ZERO)
        {
            issues.push(nothing("no line along the force has a tributary width"));
        }
    }
    issues
}

/// The lines resist nothing of it.
pub(super) fn nothing(message: &str) -> Issue {
    fault(
        Code::NothingResists,
        "lines",
        "",
        "lines along the force, and lines apart from each other where it turns the diaphragm",
        message,
    )
}
