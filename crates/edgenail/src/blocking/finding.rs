//! What cannot be backed, and members that stay too narrow.

use super::{Blocking, too_narrow};
use crate::edges::{EdgeRun, Site};
use crate::finding::{Finding, FindingCode, Severity};
use crate::layout::{Joint, Layout};
use crate::wording::wording;

/// Edges that want backing and cannot have it. `runs` are the layout's edges on the frame that the backing was made for.
///
/// In a blocked segment such an edge forbids the layout; elsewhere it is to be mended on site.
pub fn findings(site: &Site<'_>, layout: &Layout, runs: &[EdgeRun], added: &Blocking) -> Vec<Finding> {
    let impossible = added.impossible.iter().filter_map(|impossible| {
        let run = runs.get(impossible.run as usize)?;
        let mark = layout
            .pieces
            .get(run.piece as usize)
            .map_or("", |piece| &piece.mark);
        let relied_on = site.segments_at(run.area()).any(|place| place.segment.blocked);
        let severity = if relied_on {
            Severity::Refuse
        } else {
            Severity::Mend
        };
        let code = if run.side.is_plumb() && run.joint != Joint::Opening {
            FindingCode::SeamOffFraming
        } else {
            FindingCode::EdgeUnsupported
        };
        let finding = Finding::of(&site.wall.name, code, severity)
            .on(mark)
            .at(run.from.x, run.from.y)
            .against(run.length, "backing behind the edge")
            .says(wording![
                "Piece ",
                mark,
                ": ",
                run.length,
                " of edge wants backing and cannot have it: ",
                impossible.because,
                "."
            ]);
        Some(finding)
    });
    impossible.collect()
}

/// Members that two panels share and that are too narrow for their nailing. `site` and `runs` are of the backed frame.
///
/// A plate is not widened: a seam on a plate that is too narrow has to move, or the plate has to be of 3 in. lumber.
pub fn narrow_members(site: &Site<'_>, layout: &Layout, runs: &[EdgeRun]) -> Vec<Finding> {
    let narrow = too_narrow(site, layout, runs).into_iter().filter_map(|narrow| {
        let run = runs.get(*narrow.runs.first()? as usize)?;
        let mark = layout
            .pieces
            .get(run.piece as usize)
            .map_or("", |piece| &piece.mark);
        let relied_on = site.segments_at(run.area()).next().is_some();
        let severity = if relied_on {
            Severity::Refuse
        } else {
            Severity::Mend
        };
        let finding = Finding::of(&site.wall.name, FindingCode::MemberTooNarrow, severity)
            .on(mark)
            .at(run.from.x, run.from.y)
            .against(narrow.width, narrow.needed)
            .says(wording![
                "Two panels share a face of ",
                narrow.width,
                "; the nailing asks for ",
                narrow.needed,
                ": use 3 in. lumber, two members nailed together, or move the seam."
            ]);
        Some(finding)
    });
    narrow.collect()
}
