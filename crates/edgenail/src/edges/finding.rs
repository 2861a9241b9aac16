//! What is wrong with the support of panel edges, with the remedy.

use super::{EdgeRun, LineRule, PanelEdge, Site, Support, Unsupported, stagger};
use crate::finding::{Finding, FindingCode, Severity};
use crate::geometry::{Interval, Rect};
use crate::layout::{Joint, Layout, Side};
use crate::length::Length;
use crate::wording::{Wording, wording};
use std::collections::BTreeMap;

/// Edges that want backing and lack it: plumb seams off their framing, level edges over too wide a bay. On the bare
/// frame these are what a layout asks for, on the backed frame what is still wrong.
///
/// For a seam that has drifted off its stud the message says by how much to trim a sheet or to move the stud.
pub fn unsupported<'r>(
    site: &Site<'_>,
    layout: &Layout,
    runs: impl IntoIterator<Item = &'r EdgeRun>,
) -> Vec<Finding> {
    let lacking = runs.into_iter().filter(|run| run.lacks_backing());
    lacking
        .map(|run| finding(site, layout, run, lack(site, run)))
        .collect()
}

/// What else is worth knowing about the edges of a layout: those that practice leaves unblocked, those that hang free,
/// seams that are not staggered over an unblocked edge.
///
/// Level edges that stay unblocked are one finding for each level; the runs themselves tell where.
pub fn findings(site: &Site<'_>, layout: &Layout, runs: &[EdgeRun]) -> Vec<Finding> {
    let mut out: Vec<Finding> = runs
        .iter()
        .filter_map(|run| Some(finding(site, layout, run, open(site, run)?)))
        .collect();
    unblocked(site, runs, &mut out);
    stagger::findings(site, layout, runs, &mut out);
    out
}

fn finding(site: &Site<'_>, layout: &Layout, run: &EdgeRun, described: Described) -> Finding {
    let (code, severity, found, allowed, message) = described;
    let mark = layout
        .pieces
        .get(run.piece as usize)
        .map_or("", |piece| &piece.mark);
    Finding::of(&site.wall.name, code, severity)
        .on(mark)
        .at(run.from.x, run.from.y)
        .against(found, allowed)
        .says(wording!["Piece ", mark, ": ", message])
}

type Described = (FindingCode, Severity, Wording, Wording, Wording);

/// What an edge without its backing lacks.
fn lack(site: &Site<'_>, run: &EdgeRun) -> Described {
    let length = run.length;
    if !run.side.is_plumb() || run.joint == Joint::Opening {
        let bay = run.bay.map_or_else(Wording::default, |bay| Wording::of(&bay));
        let message = wording![length, " of edge wants backing over a clear bay of ", bay, "."];
        let allowed = allowed_bay(site);
        return (
            FindingCode::EdgeUnsupported,
            Severity::Mend,
            bay,
            allowed,
            message,
        );
    }
    let Some(by) = drift(site, run) else {
        let message = wording![
            length,
            " of plumb edge has no member behind it; a stud is to be added."
        ];
        return (
            FindingCode::SeamOffFraming,
            Severity::Mend,
            wording![length],
            wording!["on framing over its whole length"],
            message,
        );
    };
    let allowed = wording![
        site.practice.edge_distance_least + site.practice.member_edge_least,
        " of wood from the panel's edge"
    ];
    let message = wording![
        length,
        " of plumb edge stands ",
        by,
        " off its stud: trim this sheet by ",
        by,
        ", or move the stud by ",
        by,
        "."
    ];
    (
        FindingCode::SeamDrift,
        Severity::Mend,
        wording![by, " off"],
        allowed,
        message,
    )
}

/// What to say of an edge that hangs free, or follows a rake unblocked, as practice allows.
fn open(site: &Site<'_>, run: &EdgeRun) -> Option<Described> {
    let Support::Nothing { reason } = run.support else {
        return None;
    };
    if run.must_back || run.side.is_plumb() || run.length <= site.practice.free_edge_most {
        return None;
    }
    let length = run.length;
    let message = match reason {
        Unsupported::HangsFree => wording![length, " of edge hangs free beyond its nails."],
        _ if run.from.y != run.to.y => wording![length, " of edge along the rake stays unblocked."],
        _ => return None,
    };
    Some((
        FindingCode::EdgeUnblocked,
        Severity::Advise,
        wording![length],
        allowed_bay(site),
        message,
    ))
}

/// Level edges that practice leaves unblocked, level by level.
fn unblocked(site: &Site<'_>, runs: &[EdgeRun], out: &mut Vec<Finding>) {
    let half = site.practice.gap.half();
    let mut levels: BTreeMap<Length, (Length, Length)> = BTreeMap::new();
    for run in runs {
        let stays = match run.support {
            Support::Nothing { reason } => reason != Unsupported::HangsFree,
            Support::Member { .. } => false,
        };
        let short = run.length <= site.practice.free_edge_most;
        if !stays || run.must_back || run.side.is_plumb() || short || run.from.y != run.to.y {
            continue;
        }
        // Both panels at a seam are told by the seam's own height.
        let level = match (run.joint, run.side) {
            (Joint::Seam, Side::Top) => run.from.y + half,
            (Joint::Seam, Side::Bottom) => run.from.y - half,
            _ => run.from.y,
        };
        let (x, total) = levels.entry(level).or_insert((run.from.x, Length::ZERO));
        *x = (*x).min(run.from.x);
        *total += run.length;
    }
    for (level, (x, total)) in levels {
        out.push(
            Finding::of(&site.wall.name, FindingCode::EdgeUnblocked, Severity::Advise)
                .at(x, level)
                .against(total, allowed_bay(site))
                .says(wording![
                    total,
                    " of panel edge ",
                    level,
                    " up stays unblocked between studs."
                ]),
        );
    }
}

fn allowed_bay(site: &Site<'_>) -> Wording {
    wording!["a clear bay of ", site.practice.clear_bay_most]
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
