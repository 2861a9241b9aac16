//! Rows along the edges of panels: their spacing, and how two of them share a stud.

use crate::ground::on_every_class;
use crate::nailed::nailed;
use edgenail::Length;
use edgenail::edges::{EdgeRun, Side};
use edgenail::geometry::Point;
use edgenail::nailing::Zone;
use std::cell::Cell;

/// Between two neighbouring nails of an edge that is held all the way there is no more than its spacing, or a quarter
/// more on each side that had to move; and no nail more than that takes.
#[test]
fn nails_of_a_held_edge_keep_their_spacing() {
    let seen = Cell::new(0);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        let least = ground.practice().edge_distance_least;
        let edges = nailed
            .runs
            .chunk_by(|a, b| (a.piece, a.edge) == (b.piece, b.edge));
        for edge in edges.filter(|edge| edge[0].from.x == edge[0].to.x || edge[0].from.y == edge[0].to.y) {
            let plumb = edge[0].side.is_plumb();
            let along = |at: Point| if plumb { at.y } else { at.x };
            let across = |at: Point| if plumb { at.x } else { at.y };
            let spacing = edge
                .iter()
                .map(|run| ground.edge_spacing(run))
                .min()
                .unwrap_or_default();
            for held in edge.chunk_by(|a, b| a.inset.is_some() && b.inset.is_some()) {
                let (lo, hi) = (along(held[0].from), along(held[held.len() - 1].to));
                if held[0].inset.is_none() || hi - lo < spacing {
                    continue;
                }
                let line = |run: &EdgeRun| {
                    let inset = run.inset.unwrap_or_default();
                    let inward = matches!(run.side, Side::Left | Side::Bottom);
                    across(run.from) + if inward { inset } else { -inset }
                };
                let lines: Vec<Length> = held.iter().map(line).collect();
                let outline = &ground.layout.pieces[held[0].piece as usize].outline;
                if outline.is_rect().is_none() {
                    continue;
                }
                let quarter = Length::from_units(spacing.units() / 4 + 1);
                let mut at: Vec<(Length, bool)> = Vec::new();
                for row in nailed
                    .nailing
                    .rows
                    .iter()
                    .filter(|row| row.piece == held[0].piece)
                {
                    // A nail that serves a corner and had to move along the crossing row stands a little off this line.
                    let off = if row.moved {
                        least.max(quarter)
                    } else {
                        Length::ZERO
                    };
                    let on = |place: &Point| lines.iter().any(|line| (*line - across(*place)).abs() <= off);
                    let nails = row
                        .positions()
                        .filter(|place| on(place) && lo <= along(*place) && along(*place) <= hi);
                    at.extend(nails.map(|place| (along(place), row.moved)));
                }
                let snags = nailed.snags.iter().filter(|snag| snag.piece == held[0].piece);
                let snags =
                    snags.filter(|snag| (across(snag.at) - across(held[0].from)).abs() <= Length::inches(2));
                at.extend(
                    snags
                        .map(|snag| (along(snag.at), true))
                        .filter(|(place, _)| lo <= *place && *place <= hi),
                );
                at.sort_unstable();
                let most = |moved: bool| if moved { quarter } else { Length::from_units(1) };
                let wide = at
                    .windows(2)
                    .find(|pair| pair[1].0 - pair[0].0 > spacing + most(pair[0].1) + most(pair[1].1));
                let first = at
                    .first()
                    .is_some_and(|first| first.0 - lo <= spacing + most(first.1));
                let last = at
                    .last()
                    .is_some_and(|last| hi - last.0 <= spacing + most(last.1));
                if wide.is_some() || !first || !last {
                    return Err(format!("{wide:?} of {at:?} at {spacing} along {held:?}"));
                }
                seen.set(seen.get() + 1);
            }
        }
        Ok(())
    });
    assert!(seen.get() > 1_000, "{seen:?}");
}

/// The second of two edge rows on one shared stud stands half a space off the first where practice staggers rows, or
/// where the nailing asks for a wider face to share.
#[test]
fn rows_that_share_a_stud_are_staggered_where_asked() {
    let seen = Cell::new([0; 2]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        let seams = nailed
            .runs
            .iter()
            .filter(|run| run.side == Side::Right && run.partner.is_some());
        for run in seams {
            let partner = run.partner.unwrap_or(0);
            let facing = nailed.runs.iter().find(|other| {
                other.piece == partner
                    && other.side == Side::Left
                    && other.from.y == run.from.y
                    && other.to.y == run.to.y
            });
            let Some(facing) =
                facing.filter(|other| other.member() == run.member() && run.member().is_some())
            else {
                continue;
            };
            let rows = |run: &EdgeRun, x: Length| -> Vec<Length> {
                let rows = nailed.nailing.rows.iter().filter(|row| {
                    row.piece == run.piece
                        && row.zone == Zone::Edge
                        && !row.moved
                        && row.from.x == x
                        && row.to.x == x
                });
                let heights = rows
                    .flat_map(|row| row.positions().collect::<Vec<_>>())
                    .map(|at| at.y);
                heights.filter(|y| run.from.y <= *y && *y <= run.to.y).collect()
            };
            let (Some(first), Some(second)) = (run.inset, facing.inset) else {
                continue;
            };
            let (first, second) = (
                rows(run, run.from.x - first),
                rows(facing, facing.from.x + second),
            );
            // A seam that is held in parts only, or ends at a slope, has rows of its own on each.
            let square = |piece: u32| ground.layout.pieces[piece as usize].outline.is_rect().is_some();
            if !square(run.piece) || !square(facing.piece) {
                continue;
            }
            let mut whole = nailed
                .runs
                .iter()
                .filter(|other| (other.piece, other.edge) == (facing.piece, facing.edge));
            if whole.any(|other| other.inset.is_none()) {
                continue;
            }
            let staggered = ground.practice().staggered_rows || ground.face_to_share(facing) > Length::ZERO;
            let shared = first.iter().filter(|y| second.contains(y)).count();
            if first.len() < 4 || second.len() < 4 {
                continue;
            }
            let half = shared * 2 > first.len();
            if staggered && half {
                return Err(format!("{first:?} and {second:?} on one stud are not staggered"));
            }
            let mut counts = seen.get();
            counts[usize::from(staggered)] += 1;
            seen.set(counts);
            let mut sorted = second.clone();
            sorted.sort_unstable();
            let spacing = ground.edge_spacing(facing);
            if let Some(pair) = sorted
                .windows(2)
                .find(|pair| pair[1] - pair[0] > spacing + spacing)
            {
                return Err(format!("{pair:?} of a staggered row at {spacing}"));
            }
        }
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 50), "{seen:?}");
}
