//! Sizes and loads that no line has.

use super::{FromAbove, WallLine};
use crate::capacity::fault::{fault, inches};
use crate::issue::{Code, Issue};
use crate::length::Length;

/// Every size and load of a line that is none.
pub(super) fn check(line: &WallLine) -> Vec<Issue> {
    let mut issues = Vec::new();
    let most = Length::feet(1000);
    for (field, length) in [("length", line.length), ("height", line.height)] {
        if length <= Length::ZERO || length > most {
            refuse(
                &mut issues,
                field,
                &inches(length),
                "above 0, at most 1,000 ft",
                "a wall line has a size",
            );
        }
    }
    for (field, force) in [("demand", line.demand), ("dead", line.dead)] {
        if !force.is_finite() || force < 0.0 {
            refuse(
                &mut issues,
                field,
                &force.to_string(),
                "0 or more, a number",
                "a load without its direction",
            );
        }
    }
    if line.inset < Length::ZERO || line.inset >= line.length {
        refuse(
            &mut issues,
            "inset",
            &inches(line.inset),
            "0 or more, less than the line",
            "the arm of the hold-down",
        );
    }
    openings(line, &mut issues);
    hardware(line, &mut issues);
    if let Some(above) = &line.above {
        from_above(line, above, &mut issues);
    }
    issues
}

fn openings(line: &WallLine, issues: &mut Vec<Issue>) {
    let mut from = Length::ZERO;
    for (index, opening) in line.openings.iter().enumerate() {
        let at = |field: &str| format!("openings/{index}/{field}");
        if opening.left < from || opening.width < Length::ZERO || opening.left + opening.width > line.length {
            refuse(
                issues,
                &at("left"),
                &inches(opening.left),
                "on the line, right of the opening before it",
                "an opening lies on the line",
            );
        }
        if opening.height <= Length::ZERO || opening.height > line.height {
            refuse(
                issues,
                &at("height"),
                &inches(opening.height),
                "above 0, at most the wall's",
                "an opening is no higher than the wall",
            );
        }
        from = opening.left + opening.width;
    }
}

/// Posts, hold-downs and anchors.
fn hardware(line: &WallLine, issues: &mut Vec<Issue>) {
    let mut positive = |field: &str, value: Option<f64>| {
        if let Some(value) = value
            && !(value.is_finite() && value > 0.0)
        {
            refuse(
                issues,
                field,
                &value.to_string(),
                "above 0, a number",
                "posts, hold-downs and anchors carry something",
            );
        }
    };
    positive("posts/elasticity", line.posts.map(|posts| posts.elasticity));
    positive("posts/area", line.posts.map(|posts| posts.area));
    positive("hold_down/capacity", line.hold_down.map(|held| held.capacity));
    positive("anchor/each", line.anchor.map(|anchor| anchor.each));
    positive(
        "anchor/each_uplift",
        line.anchor.and_then(|anchor| anchor.each_uplift),
    );
    if let Some(held) = line.hold_down
        && !(held.elongation.is_finite() && held.elongation >= 0.0)
    {
        refuse(
            issues,
            "hold_down/elongation",
            &held.elongation.to_string(),
            "0 or more, a number",
            "a hold-down gives under its load",
        );
    }
}

fn from_above(line: &WallLine, above: &FromAbove, issues: &mut Vec<Issue>) {
    if !(above.shear >= 0.0 && above.shear <= line.demand) {
        refuse(
            issues,
            "above/shear",
            &above.shear.to_string(),
            "0 or more, at most the demand, which holds it",
            "what comes through the floor is part of the demand",
        );
    }
    if above.floor < Length::ZERO || above.floor > Length::feet(100) {
        refuse(
            issues,
            "above/floor",
            &inches(above.floor),
            "0 or more, at most 100 ft",
            "depth of the floor above",
        );
    }
    for (index, end) in above.ends.iter().enumerate() {
        if !end.tension.is_finite() {
            refuse(
                issues,
                &format!("above/ends/{index}/tension"),
                &end.tension.to_string(),
                "a number",
                "a tension in pounds",
            );
        }
    }
}

fn refuse(issues: &mut Vec<Issue>, field: &str, found: &str, allowed: &str, message: &str) {
    issues.push(fault(Code::OutOfRange, field, found, allowed, message));
}
