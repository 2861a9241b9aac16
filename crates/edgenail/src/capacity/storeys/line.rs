//! The wall line that a storey's segments make.

use super::construction::{SegmentBuilt, weakest};
use super::loads::StoreyLoad;
use crate::capacity::fault::fault;
use crate::capacity::line::{
    EndPosts, FromAbove, HoldDown, LineCapacity, LineMethod, LineOpening, WallLine, wall_line,
};
use crate::evaluate::Evaluated;
use crate::geometry::Interval;
use crate::house::{House, LateralDemand, Segment};
use crate::issue::{Code, Issue};
use crate::length::Length;

/// The line of a storey's segments under its load.
///
/// What is not a segment counts as open over the whole height; in a perforated wall, an opening that fills the stretch
/// between two segments has its own height.
pub(super) fn of_segments(
    house: &House,
    wall: &Evaluated,
    segments: &[SegmentBuilt],
    method: LineMethod,
    demand: &LateralDemand,
    (load, above): (StoreyLoad, FromAbove),
) -> Result<(WallLine, LineCapacity), Vec<Issue>> {
    let (Some(first), Some(last), Some(weakest)) = (segments.first(), segments.last(), weakest(segments))
    else {
        return Err(vec![fault(
            Code::NothingResists,
            &format!("walls/{}/segments", wall.backed.wall),
            "no segment that can be read off the plan",
            "segments that resist the storey's shear",
            "a force comes into the wall and nothing resists it",
        )]);
    };
    let from = first.place.rect.x0;
    let height = segments
        .iter()
        .map(|segment| segment.place.rect.height())
        .max()
        .unwrap_or_default();
    let said: Vec<&Segment> = segments
        .iter()
        .filter_map(|segment| {
            house
                .walls
                .get(wall.backed.wall as usize)?
                .segments
                .get(segment.place.segment as usize)
        })
        .collect();
    let openings = segments.windows(2).map(|pair| {
        let gap = Interval::new(pair[0].place.rect.x1, pair[1].place.rect.x0);
        LineOpening {
            left: gap.lo - from,
            width: gap.len(),
            height: match method {
                LineMethod::Segmented => height,
                LineMethod::Perforated => opening_height(wall, &pair[0], gap).unwrap_or(height),
            },
        }
    });
    let line = WallLine {
        length: last.place.rect.x1 - from,
        height,
        openings: openings.collect(),
        method,
        sharing: demand.sharing,
        query: weakest.unit.query,
        other_face: None,
        joints_apart: false,
        demand: load.shear,
        dead: load.dead,
        inset: inset(wall, segments, &said),
        posts: posts(house, wall, segments, &said),
        hold_down: hold_down(&said),
        anchor: None,
        above: (above.shear > 0.0).then_some(above),
    };
    let found = wall_line(&line).map_err(|issues| of_wall(house, wall, issues))?;
    Ok((line, found))
}

/// Faults of a line, told of its wall; their fields are those of the question `wall_line`.
fn of_wall(house: &House, wall: &Evaluated, issues: Vec<Issue>) -> Vec<Issue> {
    let index = wall.backed.wall;
    let name = house.walls.get(index as usize).map_or("", |wall| &wall.name);
    let named = issues.into_iter().map(|issue| Issue {
        wall: name.to_owned(),
        path: format!("/walls/{index}/segments"),
        message: format!("{}: {}", issue.path.trim_start_matches('/'), issue.message),
        ..issue
    });
    named.collect()
}

/// Height of the one opening that fills a stretch.
fn opening_height(wall: &Evaluated, left: &SegmentBuilt, gap: Interval) -> Option<Length> {
    let storey = left.place.storey;
    let openings = wall
        .backed
        .openings
        .iter()
        .filter(|opening| opening.storey == storey);
    let mut filling = openings.filter(|opening| opening.rect.x0 <= gap.lo && opening.rect.x1 >= gap.hi);
    filling.next().map(|opening| opening.rect.height())
}

/// From the outer faces to the hold-down's rod, a post's width and its offset, and to the middle of the other post: of the
/// segment that loses the most.
fn inset(wall: &Evaluated, segments: &[SegmentBuilt], said: &[&Segment]) -> Length {
    let of = segments.iter().zip(said).map(|(segment, said)| {
        let width = post_width(wall, segment, said);
        let offset = said.hold_down.as_ref().map_or(Length::ZERO, |held| held.offset);
        width + width.half() + offset
    });
    of.max().unwrap_or_default()
}

fn post_width(wall: &Evaluated, segment: &SegmentBuilt, said: &Segment) -> Length {
    let storey = wall.backed.storeys.get(segment.place.storey as usize);
    storey.map_or(Length::ZERO, |storey| {
        storey.stud_width * i64::from(said.end_posts.max(1))
    })
}

/// The weakest of the segments' posts; none where some segment's lumber has no elasticity.
fn posts(house: &House, wall: &Evaluated, segments: &[SegmentBuilt], said: &[&Segment]) -> Option<EndPosts> {
    let mut all = segments.iter().zip(said).map(|(segment, said)| {
        let place = wall.backed.storeys.get(segment.place.storey as usize)?;
        let elasticity = elasticity(house, wall, &place.name)?;
        let width = post_width(wall, segment, said).as_inches();
        Some(EndPosts {
            elasticity,
            area: width * place.stud_depth.as_inches(),
        })
    });
    let first = all.next()??;
    all.try_fold(first, |weakest, posts| {
        let posts = posts?;
        Some(EndPosts {
            elasticity: weakest.elasticity.min(posts.elasticity),
            area: weakest.area.min(posts.area),
        })
    })
}

/// The least elasticity of the storey's lumber in all sections.
fn elasticity(house: &House, wall: &Evaluated, storey: &str) -> Option<f64> {
    let sections = &house.walls.get(wall.backed.wall as usize)?.sections;
    let of = sections
        .iter()
        .flat_map(|section| &section.stack)
        .filter_map(|level| match level {
            crate::house::Level::Storey(found) if found.name == storey => Some(found.species.elasticity),
            _ => None,
        });
    let all: Option<Vec<u32>> = of.collect();
    all?.into_iter().min().map(f64::from)
}

/// The weakest of the segments' hold-downs, with the largest give; none where some segment has none.
fn hold_down(said: &[&Segment]) -> Option<HoldDown> {
    let all: Option<Vec<HoldDown>> = said
        .iter()
        .map(|segment| {
            segment.hold_down.as_ref().map(|held| HoldDown {
                capacity: held.capacity.as_f64(),
                elongation: held.elongation.as_inches(),
            })
        })
        .collect();
    all?.into_iter().reduce(|weakest, held| HoldDown {
        capacity: weakest.capacity.min(held.capacity),
        elongation: weakest.elongation.max(held.elongation),
    })
}
