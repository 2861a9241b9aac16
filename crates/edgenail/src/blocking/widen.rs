//! Members that two panels may not share as they are: a second one is nailed beside them.

use super::room::Standing;
use super::{Blocking, WidenedMember, shared_width, sheet_of, stud_lumber, wall_depth};
use crate::edges::{EdgeRun, Site};
use crate::frame::{Axis, Member, MemberId, MemberKind};
use crate::geometry::Rect;
use crate::layout::Layout;
use crate::length::Length;
use crate::wording::wording;

/// A member that two panels share and that is narrower than they need.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TooNarrow {
    /// The member.
    pub member: MemberId,
    /// Its face, across the seam.
    pub width: Length,
    /// What is needed.
    pub needed: Length,
    /// The runs of both panels on it, as places in the list of runs.
    pub runs: Vec<u32>,
}

/// Every member that two panels share and that is too narrow for the nailing asked for, by member.
///
/// A member with another of its kind touching it along its whole length counts as two nailed together.
pub fn too_narrow(site: &Site<'_>, layout: &Layout, runs: &[EdgeRun]) -> Vec<TooNarrow> {
    let mut shared: Vec<(MemberId, Length, u32, u32)> = Vec::new();
    for run in runs {
        let (Some(member), Some(partner)) = (run.member(), run.partner) else {
            continue;
        };
        if !site
            .frame
            .member(member)
            .is_some_and(|member| lies_along(run, member))
        {
            continue;
        }
        let needed = sheet_of(site, layout, run).and_then(|sheet| shared_width(site, run.area(), sheet));
        if let Some(needed) = needed {
            shared.push((member, needed, run.id, u32::from(run.piece > partner)));
        }
    }
    shared.sort_unstable();
    let groups = shared.chunk_by(|a, b| a.0 == b.0);
    let narrow = groups.filter_map(|group| {
        let (id, ..) = *group.first()?;
        let both = group.iter().any(|run| run.3 == 0) && group.iter().any(|run| run.3 == 1);
        let member = site.frame.member(id)?;
        let needed = group.iter().map(|run| run.1).max()?;
        let runs = group.iter().map(|run| run.2).collect();
        (both && !is_wide(site, member, needed)).then_some(TooNarrow {
            member: id,
            width: across(member),
            needed,
            runs,
        })
    });
    narrow.collect()
}

/// The edge lies along the member; where it only crosses it, as a plumb seam crosses the plates, no joint is on it.
pub fn lies_along(run: &EdgeRun, member: &Member) -> bool {
    run.side.is_plumb() == (member.axis == Axis::Vertical)
}

/// The member's face across its direction.
fn across(member: &Member) -> Length {
    let bounds = member.face.bounds();
    if member.axis == Axis::Vertical {
        bounds.width()
    } else {
        bounds.height()
    }
}

/// The member shows so much across its direction, by itself or with a stud that touches it over its whole length.
pub fn is_wide(site: &Site<'_>, member: &Member, needed: Length) -> bool {
    let (bounds, width) = (member.face.bounds(), across(member));
    width >= needed || (member.axis == Axis::Vertical && doubled(site, bounds, width, needed))
}

/// Studs that touch the member over its whole length make up the width with it.
fn doubled(site: &Site<'_>, bounds: Rect, width: Length, needed: Length) -> bool {
    let beside = site.wood.near(bounds).filter(|face| {
        let touches = face.bounds.x0 == bounds.x1 || face.bounds.x1 == bounds.x0;
        face.nailable && touches && face.bounds.y_span().covers(bounds.y_span())
    });
    width + beside.map(|face| face.bounds.width()).max().unwrap_or_default() >= needed
}

/// Adds a second stud beside every stud that two panels share and that is too narrow.
pub(super) fn widen(
    site: &Site<'_>,
    layout: &Layout,
    runs: &[EdgeRun],
    standing: &mut Standing<'_, '_>,
    out: &mut Blocking,
) {
    for narrow in too_narrow(site, layout, runs) {
        let Some(member) = site
            .frame
            .member(narrow.member)
            .filter(|member| may_widen(member))
        else {
            continue;
        };
        let bounds = member.face.bounds();
        let lumber = stud_lumber(site, wall_depth(site, bounds.y0), bounds.height());
        let Some((lumber, rect)) =
            lumber.and_then(|lumber| Some((lumber, standing.beside(bounds, lumber.face)?)))
        else {
            continue;
        };
        standing.added.push(rect);
        out.widened.push(WidenedMember {
            member: narrow.member,
            rect,
            stick: lumber.stick,
            serves: narrow.runs,
            because: wording![
                "two panels share a face of ",
                narrow.width,
                "; the nailing asks for ",
                narrow.needed
            ],
        });
    }
}

/// Another stud can stand beside it, which holds nails, from end to end.
fn may_widen(member: &Member) -> bool {
    member.axis == Axis::Vertical
        && !matches!(
            member.kind,
            MemberKind::JoistEnd | MemberKind::TrussEnd | MemberKind::TrussWeb | MemberKind::Block
        )
}
