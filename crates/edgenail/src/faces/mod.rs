//! Both faces of one wall: where the joints of the two sheathings may not fall on one member.

use crate::blocking::{is_wide, lies_along, wall_depth};
use crate::edges::Site;
use crate::evaluate::Evaluated;
use crate::finding::{Finding, FindingCode, Severity};
use crate::frame::{Axis, Frame, MemberId, MemberKind, Origin};
use crate::geometry::{Interval, Point, Rect};
use crate::house::House;
use crate::length::Length;
use crate::wording::wording;
use std::collections::HashMap;

/// The walls of a house that are the faces of one frame, as places in its list: the earlier, then the later.
pub fn pairs(house: &House) -> Vec<(usize, usize)> {
    let places: HashMap<&str, usize> = (0..)
        .zip(&house.walls)
        .map(|(at, wall)| (wall.name.as_str(), at))
        .collect();
    let named = (0..).zip(&house.walls).filter_map(|(at, wall)| {
        let other = *places.get(wall.other_face.as_deref()?)?;
        (other != at).then_some((at.min(other), at.max(other)))
    });
    let mut pairs: Vec<(usize, usize)> = named.collect();
    pairs.sort_unstable();
    pairs.dedup();
    pairs
}

/// What is wrong between two faces of one frame, told of the wall `here`: joints of both faces that fall on one narrow
/// member though nails stand close on either face (SDPWS 2015 4.3.7.1; from memory, not checked against print), and
/// framing that the two faces describe unlike.
pub fn findings(house: &House, here: &Evaluated, there: &Evaluated) -> Vec<Finding> {
    let both = [here, there].map(|face| Site::new(house, &face.backed));
    let [Some(near), Some(far)] = both else {
        return Vec::new();
    };
    let mut out: Vec<Finding> = unlike(&near, &far).into_iter().collect();
    let (ours, theirs) = (joints(&near, here), joints(&far, there));
    let limits = &near.practice.limits;
    for joint in &ours {
        let same = theirs.iter().find(|other| {
            let depth = joint.depth + other.depth;
            let face = mirrored(&near, other.face);
            face.overlaps(&joint.face) && depth > wall_depth(&near, joint.face.y0)
        });
        let Some(other) = same else { continue };
        let spacing = joint.spacing.min(other.spacing);
        if spacing >= limits.both_faces_spacing {
            continue;
        }
        out.push(
            Finding::of(&near.wall.name, FindingCode::JointsOfBothFaces, Severity::Mend)
                .at(joint.at.x, joint.at.y)
                .against(
                    wording!["joints of both faces on one member, edge nails ", spacing, " apart"],
                    wording!["different members, or a face of ", limits.wide_member, " (SDPWS 4.3.7.1)"],
                )
                .says(wording!["The joint ", joint.at.x, " along and ", joint.at.y, " up falls on the member that carries a joint of ", far.wall.name, " on the other face; with edge nails ", spacing, " apart move the joints of one face to other members, or use 3 in. lumber or two members nailed together, rows staggered."]),
        );
    }
    out
}

/// A member that carries a joint of two panels and is too narrow for joints of both faces.
struct JointMember {
    face: Rect,
    depth: Length,
    spacing: Length,
    /// Where the joint begins.
    at: Point,
}

fn joints(site: &Site<'_>, built: &Evaluated) -> Vec<JointMember> {
    let mut shared: Vec<(MemberId, bool, u32)> = built
        .runs
        .iter()
        .filter(|run| {
            run.member()
                .and_then(|id| site.frame.member(id))
                .is_some_and(|member| lies_along(run, member))
        })
        .filter_map(|run| Some((run.member()?, run.partner? < run.piece, run.id)))
        .collect();
    shared.sort_unstable();
    let groups = shared.chunk_by(|a, b| a.0 == b.0);
    let joints = groups.filter_map(|group| {
        let (first, last) = (group.first()?, group.last()?);
        let member = site.frame.member(first.0)?;
        if first.1 == last.1 || is_wide(site, member, site.practice.limits.wide_member) {
            return None;
        }
        let runs = || {
            group
                .iter()
                .filter_map(|(_, _, run)| built.runs.get(*run as usize))
        };
        Some(JointMember {
            face: member.face.bounds(),
            depth: member.depth,
            spacing: runs().map(|run| site.edge_spacing(run.area())).min()?,
            at: runs().map(|run| run.from).min()?,
        })
    });
    joints.collect()
}

/// A rectangle of one face as the other shows it.
fn mirrored(site: &Site<'_>, rect: Rect) -> Rect {
    let length = site.wall.length;
    Rect {
        x0: length - rect.x1,
        x1: length - rect.x0,
        ..rect
    }
}

/// The first upright that only one of the faces has, over the heights that both show.
fn unlike(near: &Site<'_>, far: &Site<'_>) -> Option<Finding> {
    let heights = height(near.frame).intersect(height(far.frame))?;
    let mut ours = uprights(near.frame, heights);
    let mut theirs: Vec<Rect> = uprights(far.frame, heights)
        .into_iter()
        .map(|rect| mirrored(near, rect))
        .collect();
    for list in [&mut ours, &mut theirs] {
        list.sort_unstable_by_key(|rect| (rect.x0, rect.y0, rect.x1, rect.y1));
    }
    let lacking = |a: &[Rect], b: &[Rect]| a.iter().find(|rect| !b.contains(rect)).copied();
    let alone = lacking(&ours, &theirs).or_else(|| lacking(&theirs, &ours))?;
    Some(
        Finding::of(&near.wall.name, FindingCode::FacesUnlike, Severity::Mend)
            .at(alone.x0, alone.y0)
            .against(
                "an upright that one face shows and the other does not",
                "one frame, seen from both sides",
            )
            .says(wording![
                near.wall.name,
                " and ",
                far.wall.name,
                " are the faces of one frame, but only one of them has the upright that begins ",
                alone.x0,
                " along here; describe both alike, layout pulled from the same end."
            ]),
    )
}

/// From the lowest base of a frame to the top of its uppermost storey.
fn height(frame: &Frame) -> Interval {
    let bases = frame.sections.iter().map(|section| section.base);
    let tops = frame.storeys.iter().map(|storey| storey.top);
    Interval::new(bases.min().unwrap_or_default(), tops.max().unwrap_or_default())
}

/// Studs and the like that the user's words ask for, as far as they stand at these heights.
fn uprights(frame: &Frame, heights: Interval) -> Vec<Rect> {
    let said = frame.members.iter().filter(|member| {
        member.axis == Axis::Vertical
            && member.origin != Origin::Added
            && member.kind != MemberKind::NeighbourStud
    });
    let faces = said.map(|member| member.face.bounds());
    faces.filter(|rect| heights.covers(rect.y_span())).collect()
}

#[cfg(test)]
mod tests;
