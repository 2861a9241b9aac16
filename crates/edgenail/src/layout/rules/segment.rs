//! Segments that the designer relies on: their bands, their proportions, the legs of portals.

use super::Ground;
use crate::finding::{Finding, FindingCode, Severity};
use crate::frame::{BandPlace, MemberKind, SegmentPlace};
use crate::house::Method;
use crate::length::Length;
use crate::wording::{Wording, wording};

pub(super) fn judge(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    bands(ground, out);
    for place in &ground.frame.segments {
        proportions(ground, place, out);
        if place.method == Method::Portal {
            portal(ground, place, out);
        }
        if matches!(place.method, Method::Portal | Method::BracedPanel) {
            out.push(
                ground
                    .finding(FindingCode::LengthNotChecked, Severity::Advise)
                    .at(place.rect.x0, place.rect.y0)
                    .against("a prescriptive length", "the local code's table")
                    .says(wording![place.mark, ": its required length is not checked."]),
            );
        }
    }
}

/// Floor bands without rim or blocking: an error above or below a segment, a warning elsewhere.
fn bands(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    for band in ground.frame.bands.iter().filter(|band| is_open(ground, band)) {
        let by_segment = ground
            .frame
            .segments
            .iter()
            .find(|segment| segment.rect.y0 == band.y.hi || segment.rect.y1 == band.y.lo);
        let (severity, at) = match by_segment {
            Some(segment) => (Severity::Refuse, segment.rect.x0),
            None => (Severity::Advise, ground.frame.lower.span().lo),
        };
        let beside = by_segment.map_or_else(Wording::default, |segment| wording![" next to ", segment.mark]);
        out.push(
            ground
                .finding(FindingCode::BandOpen, severity)
                .at(at, band.y.lo)
                .against(
                    "neither rim nor blocking",
                    "a rim, or blocking between the members",
                )
                .says(wording![
                    "The ",
                    band.name,
                    beside,
                    " has neither rim nor blocking to carry the shear."
                ]),
        );
    }
}

fn is_open(ground: &Ground<'_>, band: &BandPlace) -> bool {
    let closes = |kind: MemberKind| {
        matches!(
            kind,
            MemberKind::Rim | MemberKind::EdgeJoist | MemberKind::TrussChord
        )
    };
    let mut members = ground.frame.members.iter();
    band.rim.is_none()
        && !band.blocked
        && !members.any(|member| closes(member.kind) && band.y.covers(member.face.bounds().y_span()))
}

fn proportions(ground: &Ground<'_>, place: &SegmentPlace, out: &mut Vec<Finding>) {
    let (width, height) = (place.rect.width(), place.rect.height());
    let most = ground.practice.limits.segment_slenderness_most;
    let allowed = most.scaled(i128::from(width.units()), 1, 4);
    let allowed = allowed.and_then(|height| height.in_units_of(4));
    if place.method == Method::Portal || allowed.is_none_or(|allowed| height.units() * 10_000 <= allowed) {
        return;
    }
    let width_units = width.units().max(1);
    let hundredths = (height.units() * 200 + width_units) / (2 * width_units);
    out.push(
        ground
            .finding(FindingCode::LegTooNarrow, Severity::Mend)
            .at(place.rect.x0, place.rect.y0)
            .against(
                format!("{}.{:02} : 1", hundredths / 100, hundredths % 100),
                wording![most, " : 1"],
            )
            .says(wording![
                place.mark,
                " is ",
                height,
                " high and ",
                width,
                " long; past ",
                most,
                " to 1 it contributes nothing."
            ]),
    );
}

/// A portal's leg is one sheet from bottom plate to the top of the header, or has one level seam near the middle.
fn portal(ground: &Ground<'_>, place: &SegmentPlace, out: &mut Vec<Finding>) {
    let (x, y) = (place.rect.x_span(), place.rect.y_span());
    let within = ground.practice.limits.portal_seam_within;
    let refuse = |at: (Length, Length), found: &str| {
        ground
            .finding(FindingCode::SeamOnJoint, Severity::Refuse)
            .at(at.0, at.1)
            .against(
                found,
                wording![
                    "one sheet, or one level seam in the middle ",
                    within,
                    " (IRC R602.10.6)"
                ],
            )
            .says(wording!["Portal leg ", place.mark, ": ", found, "."])
    };
    for (seam, heights) in ground.plumb_seams() {
        if x.lo < seam && seam < x.hi && heights.overlaps(y) {
            out.push(refuse((seam, heights.lo), "a plumb seam in the leg"));
        }
    }
    let levels: Vec<Length> = ground
        .level_seams()
        .into_iter()
        .filter(|seam| y.lo < *seam && *seam < y.hi)
        .collect();
    for seam in &levels {
        if (*seam * 2 - y.lo - y.hi).abs() > within {
            out.push(refuse(
                (x.lo, *seam),
                "a level seam outside the middle of its height",
            ));
        }
    }
    if let [_, second, ..] = levels[..] {
        out.push(refuse((x.lo, second), "more than one level seam"));
    }
}
