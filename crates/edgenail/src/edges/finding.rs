//! What is wrong with the support of panel edges, with the remedy.

use super::{EdgeRun, LineRule, PanelEdge, Site, Support, Unsupported, stagger};
use crate::finding::{Finding, FindingCode, Severity, inches};
use crate::geometry::{Interval, Rect};
use crate::layout::{Joint, Layout};
use crate::length::Length;

/// What is wrong with the edges of a layout: plumb seams off their framing, edges that want backing, edges that stay
/// unblocked, lines that fall on a joint of members, seams that are not staggered over an unblocked edge.
///
/// Judged on the bare frame it says what a layout asks for; on the backed frame, what is still wrong.
///
/// For a seam that has drifted off its stud the message says by how much to trim a sheet or to move the stud.
pub fn findings(site: &Site<'_>, layout: &Layout, runs: &[EdgeRun]) -> Vec<Finding> {
    let bare = runs
        .iter()
        .filter(|run| matches!(run.support, Support::Nothing { .. }));
    let found = bare.filter_map(|run| {
        let mark = layout
            .pieces
            .get(run.piece as usize)
            .map(|piece| piece.mark.clone())
            .unwrap_or_default();
        let (code, severity, found, allowed, message) = describe(site, run)?;
        Some(Finding {
            code,
            severity,
            wall: site.wall.name.clone(),
            piece: mark.clone(),
            at: Some((run.from.x, run.from.y)),
            found,
            allowed,
            message: format!("Piece {mark}: {message}"),
        })
    });
    let mut out: Vec<Finding> = found.collect();
    stagger::findings(site, layout, runs, &mut out);
    out
}

type Described = (FindingCode, Severity, String, String, String);

fn describe(site: &Site<'_>, run: &EdgeRun) -> Option<Described> {
    let length = inches(run.length);
    if run.must_back && run.side.is_plumb() && run.joint != Joint::Opening {
        if let Some(drift) = drift(site, run) {
            let allowed = format!(
                "{} of wood from the panel's edge",
                inches(site.practice.edge_distance_least + site.practice.member_edge_least)
            );
            let message = format!(
                "{length} of plumb edge stands {by} off its stud: trim this sheet by {by}, or move the stud by {by}.",
                by = inches(drift)
            );
            return Some((
                FindingCode::SeamDrift,
                Severity::Mend,
                format!("{} off", inches(drift)),
                allowed,
                message,
            ));
        }
        let message = format!("{length} of plumb edge has no member behind it; a stud is to be added.");
        return Some((
            FindingCode::SeamOffFraming,
            Severity::Mend,
            length,
            "on framing over its whole length".into(),
            message,
        ));
    }
    if run.must_back {
        let bay = run.bay.map(inches).unwrap_or_default();
        let message = format!("{length} of edge wants backing over a clear bay of {bay}.");
        return Some((
            FindingCode::EdgeUnsupported,
            Severity::Mend,
            bay,
            allowed_bay(site),
            message,
        ));
    }
    if run.side.is_plumb() || run.length <= site.practice.free_edge_most {
        return None;
    }
    let message = match run.support {
        Support::Nothing {
            reason: Unsupported::HangsFree,
        } => format!("{length} of edge hangs free beyond its nails."),
        _ => format!("{length} of edge stays unblocked."),
    };
    Some((
        FindingCode::EdgeUnblocked,
        Severity::Advise,
        length,
        allowed_bay(site),
        message,
    ))
}

fn allowed_bay(site: &Site<'_>) -> String {
    format!("a clear bay of {}", inches(site.practice.clear_bay_most))
}

/// By how much a plumb edge would have to move for its nail line to have enough wood on the nearest stud; `None` where
/// no stud is near.
fn drift(site: &Site<'_>, run: &EdgeRun) -> Option<Length> {
    let rule = LineRule::of(site.practice);
    let edge = PanelEdge {
        side: run.side,
        from: run.from,
        to: run.to,
    };
    let reach = rule.most + rule.wood + rule.wood;
    let area = edge.area(
        edge.span(),
        Interval {
            lo: -reach,
            hi: reach,
        },
    );
    let near = site
        .wood
        .near(area)
        .filter(|face| face.nailable && stands_behind(&face.bounds, run));
    // Room between the panel's edge and the member's far edge that the line needs but lacks, or has too much of.
    let by = near.filter_map(|face| {
        let depths = edge.depths(&face.bounds);
        let short = rule.least + rule.wood - depths.hi;
        let far = depths.lo + rule.wood - rule.most;
        let by = short.max(far);
        (by > Length::ZERO && depths.hi - depths.lo >= rule.wood * 2).then_some(by)
    });
    by.min().filter(|by| *by <= reach)
}

fn stands_behind(bounds: &Rect, run: &EdgeRun) -> bool {
    bounds.y0 <= run.from.y && run.to.y <= bounds.y1
}
