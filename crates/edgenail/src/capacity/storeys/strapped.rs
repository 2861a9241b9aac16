//! A segment whose sheathing is strapped around its openings.

use super::construction::{SegmentBuilt, weakest};
use super::loads::StoreyLoad;
use super::{Resists, Taken};
use crate::capacity::derivation::Derivation;
use crate::capacity::line::FromAbove;
use crate::capacity::transfer::{
    TransferWall, explain_transfer, explain_transfer_ratio, transfer, transfer_ratio,
};
use crate::evaluate::Evaluated;
use crate::frame::SegmentPlace;
use crate::geometry::Rect;
use crate::house::Method;
use crate::issue::Issue;
use crate::length::Length;
use crate::published::Confidence;

/// The full-height parts of a segment: itself, or what stands between its openings where force is handed around them.
pub(super) fn full_height(wall: &Evaluated, place: &SegmentPlace) -> Vec<SegmentPlace> {
    if place.method != Method::ForceTransfer {
        return vec![place.clone()];
    }
    let mut from = place.rect.x0;
    let mut found = Vec::new();
    let end = Rect::new(place.rect.x1, place.rect.y0, place.rect.x1, place.rect.y1);
    for hole in openings(wall, place).into_iter().chain([end]) {
        if hole.x0 > from {
            found.push(SegmentPlace {
                rect: Rect::new(from, place.rect.y0, hole.x0, place.rect.y1),
                ..place.clone()
            });
        }
        from = from.max(hole.x1);
    }
    found
}

/// Openings in a segment from left to right.
fn openings(wall: &Evaluated, place: &SegmentPlace) -> Vec<Rect> {
    let mut found: Vec<Rect> = wall
        .backed
        .openings
        .iter()
        .map(|opening| opening.rect)
        .filter(|rect| rect.overlaps(&place.rect))
        .collect();
    found.sort_by_key(|rect| rect.x0);
    found
}

/// What a strapped line resists, with its steps.
pub(super) fn resists(
    taken: &Taken<'_>,
    segments: &[SegmentBuilt],
    load: StoreyLoad,
    above: &FromAbove,
    derivation: &mut Derivation,
) -> Result<Resists, Vec<Issue>> {
    let refuse = |found: &str, allowed: &str, message: &str| vec![taken.fault(found, allowed, message)];
    let strapped: Vec<&SegmentPlace> = taken
        .group
        .segments
        .iter()
        .filter(|place| place.method == Method::ForceTransfer)
        .copied()
        .collect();
    let [place] = strapped[..] else {
        return Err(refuse(
            &format!("{} strapped segments", strapped.len()),
            "one in a storey of a wall",
            "how strapped segments share the shear is left to the designer",
        ));
    };
    let holes = openings(taken.wall, place);
    let Some(weakest) = weakest(segments).filter(|_| segments.len() == holes.len() + 1) else {
        return Err(refuse(
            "a part of the segment that cannot be read off the plan",
            "a full-height part beside every opening that the tables have",
            "force is handed on around openings from one full-height part to the next",
        ));
    };
    let feet = |length: Length| length.as_inches() / 12.0;
    let tallest = holes.iter().map(Rect::height).max().unwrap_or_default();
    let wall = TransferWall {
        height: feet(place.rect.height()),
        piers: segments
            .iter()
            .map(|segment| feet(segment.place.rect.width()))
            .collect(),
        openings: holes.iter().map(|hole| feet(hole.width())).collect(),
        above_and_below: feet(place.rect.height() - tallest),
        shear: load.shear,
    };
    let of_wall = |issues: Vec<Issue>| -> Vec<Issue> {
        let named = issues.into_iter().map(|issue| Issue {
            wall: taken.name.to_owned(),
            path: format!("/walls/{}/segments/{}", taken.wall.backed.wall, place.segment),
            ..issue
        });
        named.collect()
    };
    let forces = transfer(&wall).map_err(of_wall)?;
    let ratio = transfer_ratio(&wall, &forces, &weakest.unit.query).map_err(of_wall)?;
    derivation
        .steps
        .append(&mut explain_transfer(&wall).map_err(of_wall)?.steps);
    explain_transfer_ratio(&wall, &forces, &ratio, derivation);
    let down = above.ends.iter().map(|end| end.tension).fold(0.0, f64::max);
    let length: f64 = wall.piers.iter().chain(&wall.openings).sum();
    let floor = feet(above.floor);
    derivation
        .step(
            "V_R",
            "shear at which the worst place around the openings is full",
            "V / ratio",
        )
        .given("V", load.shear, "lb")
        .from("ratio", ratio.ratio, "")
        .rule("statics", Confidence::TwoSources)
        .gives(load.shear / ratio.ratio, "lb");
    derivation
        .step("v_plate", "shear of the bottom plate", "V / L")
        .given("V", load.shear, "lb")
        .given("L", length, "ft")
        .rule("statics", Confidence::TwoSources)
        .gives(load.shear / length, "plf");
    let tension = derivation
        .step(
            "T_most",
            "tension at the ends, with what comes from above",
            "(V * h + V_up * h_f) / L + T_up",
        )
        .given("V", load.shear, "lb")
        .given("h", wall.height, "ft")
        .given("V_up", load.above, "lb")
        .given("h_f", floor, "ft")
        .given("L", length, "ft")
        .given("T_up", down, "lb")
        .rule("statics; dead load is left out", Confidence::TwoSources)
        .gives(
            (load.shear * wall.height + load.above * floor) / length + down,
            "lb",
        );
    Ok(Resists::Transfer {
        wall,
        forces,
        ratio: Box::new(ratio),
        tension,
    })
}
