//! Seams where members meet.

use super::Ground;
use crate::finding::{Finding, FindingCode, Severity};
use crate::frame::MemberKind;
use crate::layout::cutter::on_sawn_rim;
use crate::wording::wording;

pub(super) fn judge(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    levels(ground, out);
    headers(ground, out);
    plates(ground, out);
}

/// The plumb seam nearest to a butt joint of a topmost plate that it crosses.
fn plates(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    let clear = ground.practice.limits.plate_joint_clear;
    let seams = ground.plumb_seams();
    for storey in &ground.frame.storeys {
        for joint in &storey.plate_joints {
            let crossing = seams
                .iter()
                .filter(|(_, heights)| storey.topmost_plate().overlaps(*heights));
            let near = crossing
                .map(|(x, _)| ((*x - *joint).abs(), *x))
                .filter(|(apart, _)| *apart < clear);
            let Some((apart, x)) = near.min() else { continue };
            out.push(
                ground
                    .finding(FindingCode::SeamNearPlateJoint, Severity::Advise)
                    .at(x, storey.topmost_from)
                    .against(wording![apart, " from a joint of the topmost plate"], clear)
                    .says(wording![
                        "The seam at ",
                        x,
                        " lies near the joint of the topmost plate at ",
                        *joint,
                        "; move the seam or the joint so that they are ",
                        clear,
                        " apart."
                    ]),
            );
        }
    }
}

/// A level seam where storey and band meet, or near the plate line under a gable truss.
fn levels(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    for y in ground.level_seams() {
        let on_joint = ground.frame.bands.iter().any(|band| {
            let beside = ground.practice.gap;
            (y - band.y.lo).abs() <= beside || (y - band.y.hi).abs() <= beside
        });
        if on_joint && !on_sawn_rim(ground.practice, ground.frame, y) {
            out.push(
                ground
                    .finding(FindingCode::SeamOnJoint, Severity::Advise)
                    .at(ground.frame.lower.span().lo, y)
                    .against(
                        "a seam where storey and band meet",
                        "sheets that run past the joint",
                    )
                    .says(wording![
                        "The seam ",
                        y,
                        " up lies where the storey meets the floor band; sheets tie better that run past it."
                    ]),
            );
        }
        let clear = ground.practice.gable_seam_clear;
        let gables = ground.frame.sections.iter().filter(|section| section.gable);
        if let Some(section) = gables.into_iter().find(|section| (section.top - y).abs() < clear) {
            out.push(
                ground
                    .finding(FindingCode::SeamOnJoint, Severity::Mend)
                    .at(section.x.lo, y)
                    .against(wording![(section.top - y).abs(), " from the plate line"], clear)
                    .says(wording![
                        "The seam ",
                        y,
                        " up lies near the plate line under the gable truss; keep it ",
                        clear,
                        " away so that one sheet ties both."
                    ]),
            );
        }
    }
}

/// A plumb seam where a header ends on its king stud.
fn headers(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    let headers = ground
        .frame
        .members
        .iter()
        .filter(|member| member.kind == MemberKind::Header);
    let seams = ground.plumb_seams();
    for header in headers {
        let face = header.face.bounds();
        for (x, heights) in &seams {
            let beside = ground.practice.edge_distance_most;
            let at_end = (*x - face.x0).abs() < beside || (*x - face.x1).abs() < beside;
            if at_end && heights.overlaps(face.y_span()) {
                out.push(
                    ground
                        .finding(FindingCode::SeamOnJoint, Severity::Advise)
                        .at(*x, face.y0)
                        .against(
                            "a seam where header and king stud meet",
                            "sheets that run past the joint",
                        )
                        .says(wording![
                            "The seam at ",
                            *x,
                            " lies where a header ends; sheets tie better that run past it."
                        ]),
                );
            }
        }
    }
}
