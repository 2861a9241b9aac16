//! What the sheathing hangs over, stands on and comes near to.

use super::Ground;
use crate::finding::{Finding, FindingCode, Severity};
use crate::frame::MemberKind;
use crate::house::Bearing;
use crate::length::Length;
use crate::wording::wording;

pub(super) fn judge(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    let reach = ground.layout.reach;
    let clear = ground.practice.limits.ground_clear;
    for (place, section) in ground.frame.sections.iter().zip(&ground.wall.sections) {
        if place.bears == Bearing::Concrete && reach > ground.practice.overhang_most {
            out.push(
                ground
                    .finding(FindingCode::Overhang, Severity::Refuse)
                    .at(place.x.lo, place.base - reach)
                    .against(reach, ground.practice.overhang_most)
                    .says(wording![
                        "Sheets overhang the foundation by ",
                        reach,
                        "; no more than ",
                        ground.practice.overhang_most,
                        " is allowed."
                    ]),
            );
        }
        if place.bears == Bearing::Concrete && reach == Length::ZERO {
            out.push(
                ground
                    .finding(FindingCode::Overhang, Severity::Mend)
                    .at(place.x.lo, place.base)
                    .against(
                        "flush with the concrete",
                        "held up, or over the outside of the foundation",
                    )
                    .says(wording![
                        "Sheets flush with the plate bear on the concrete and draw water; hold them up ",
                        ground.practice.held_up,
                        " or let them overhang."
                    ]),
            );
        }
        if let Some(above) = section.bottom.above_grade.filter(|above| *above - reach < clear) {
            out.push(
                ground
                    .finding(FindingCode::NearGrade, Severity::Mend)
                    .at(place.x.lo, place.base - reach)
                    .against(above - reach, wording![clear, " above the ground (IRC R317.1)"])
                    .says(wording!["Sheathing ends ", above - reach, " above the ground."]),
            );
        }
        let lowest = ground.frame.members.iter().find(|member| {
            let bounds = member.face.bounds();
            matches!(member.kind, MemberKind::Mudsill | MemberKind::BottomPlate)
                && bounds.y0 == place.base
                && bounds.x_span().overlaps(place.x)
        });
        if place.bears == Bearing::Concrete && lowest.is_some_and(|plate| !plate.treated) {
            out.push(
                ground
                    .finding(FindingCode::PlateNotTreated, Severity::Mend)
                    .at(place.x.lo, place.base)
                    .against(
                        "an untreated plate on concrete",
                        "a preservative-treated plate (IRC R317.1)",
                    )
                    .says("The lowest plate stands on concrete and is not preservative-treated."),
            );
        }
    }
}
