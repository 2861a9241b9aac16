//! Seams of neighbouring courses over an edge without blocking.

use super::{EdgeRun, Site};
use crate::finding::{Finding, FindingCode, Severity};
use crate::layout::{Layout, Side};
use crate::length::Length;
use crate::wording::wording;

/// Plumb seams that end on a level edge from both sides, closer together than practice accepts, where that edge is not
/// blocked between them.
pub(super) fn findings(site: &Site<'_>, layout: &Layout, runs: &[EdgeRun], out: &mut Vec<Finding>) {
    let least = site.practice.stagger_least;
    // What stays without support along level seams, by height, from the lower panel's side.
    let bare: Vec<&EdgeRun> = runs
        .iter()
        .filter(|run| run.side == Side::Top && run.partner.is_some())
        .filter(|run| run.member().is_none() && !run.must_back)
        .collect();
    if bare.is_empty() {
        return;
    }
    let seams = |top: bool| {
        let plumb = runs
            .iter()
            .filter(|run| run.side == Side::Right && run.partner.is_some());
        let mut ends: Vec<(Length, Length, u32)> = plumb
            .map(|run| (if top { run.to.y } else { run.from.y }, run.from.x, run.piece))
            .collect();
        ends.sort_unstable();
        ends
    };
    let (ends, starts) = (seams(true), seams(false));
    let gap = site.practice.rim_gap.max(site.practice.gap) * 2;
    // A seam that goes on at a height where only its support changes neither ends nor starts there.
    let only =
        |these: &[(Length, Length, u32)], others: &[(Length, Length, u32)]| -> Vec<(Length, Length, u32)> {
            let goes_on = |seam: &(Length, Length, u32)| others.binary_search(seam).is_ok();
            these.iter().filter(|seam| !goes_on(seam)).copied().collect()
        };
    let (ends, starts) = (only(&ends, &starts), only(&starts, &ends));
    for &(y, below, piece) in &ends {
        let near = starts
            .iter()
            .filter(|start| y <= start.0 && start.0 <= y + gap && (start.1 - below).abs() < least);
        for &(_, above, _) in near {
            let (lo, hi) = (above.min(below), above.max(below));
            let open = bare
                .iter()
                .any(|run| run.from.y == y && run.from.x < hi + least && lo - least < run.to.x);
            if open {
                let apart = hi - lo;
                out.push(
                    Finding::of(&site.wall.name, FindingCode::SeamsNotStaggered, Severity::Refuse)
                        .on(layout.pieces.get(piece as usize).map_or("", |piece| &piece.mark))
                        .at(below, y)
                        .against(wording![apart, " apart"], least)
                        .says(wording![
                            "Seams ",
                            apart,
                            " apart meet the unblocked edge ",
                            y,
                            " up from below and above; keep them ",
                            least,
                            " apart, or block the edge."
                        ]),
                );
            }
        }
    }
}
