//! Every nail along the edges of panels without slopes, told a second time, and how far one may be moved.

use crate::edge_lines::{EdgeLine, edge_lines};
use crate::ground::{Ground, on_every_class};
use crate::nailed::{Nailed, is_continued, is_same, is_sloped, may_stand, nailed};
use edgenail::Length;
use edgenail::geometry::{Interval, Point};
use edgenail::layout::Piece;
use edgenail::nailing::Zone;
use std::cell::Cell;

/// Where a nail of an edge may stand at a place along it, on the line of what holds it there.
fn stands(ground: &Ground, nailed: &Nailed, piece: &Piece, line: &EdgeLine, along: Length) -> Option<Point> {
    let held = line
        .held
        .iter()
        .filter(|one| one.span.contains(along) && one.good.contains(along));
    let mut points = held.map(|one| (one, line.point(along, one.across)));
    points.find_map(|(one, at)| may_stand(ground, nailed, piece, &one.member, at).then_some(at))
}

/// The places within a quarter of a space that are nearest, by trying in steps of 1/64 in.; between the ends of the line.
fn nearest(
    ground: &Ground,
    nailed: &Nailed,
    piece: &Piece,
    line: &EdgeLine,
    along: Length,
    quarter: Length,
) -> Option<Length> {
    let reach = Interval {
        lo: (along - quarter).max(line.along.lo),
        hi: (along + quarter).min(line.along.hi),
    };
    let step = Length::from_units(Length::PER_INCH / 64);
    (1..=quarter.units() / step.units()).find_map(|count| {
        let by = Length::from_units(step.units() * count);
        let free = |at: &Length| reach.contains(*at) && stands(ground, nailed, piece, line, *at).is_some();
        [along - by, along + by].iter().any(free).then_some(by)
    })
}

#[test]
fn along_the_edges_every_nail_that_is_wanted_is_driven_and_no_other() {
    let seen = Cell::new([0; 4]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        for piece in ground.layout.pieces.iter().filter(|piece| !is_sloped(piece)) {
            let lines = edge_lines(ground, &nailed, piece);
            let rows = || nailed.nailing.rows.iter().filter(|row| row.piece == piece.id);
            let nails: Vec<(Point, bool)> = rows()
                .flat_map(|row| row.positions().map(|at| (at, row.moved)))
                .collect();
            let snags: Vec<Point> = nailed
                .snags
                .iter()
                .filter(|snag| snag.piece == piece.id)
                .map(|snag| snag.at)
                .collect();
            if let Some(row) = is_continued(&nailed, piece) {
                return Err(format!("{row:?} goes on with the one before it"));
            }
            for line in lines.iter().flatten() {
                for (along, quarter) in &line.places {
                    let driven = stands(ground, &nailed, piece, line, *along);
                    if let Some(at) = driven {
                        if nails.contains(&(at, true)) {
                            return Err(format!("{} has a nail moved from {at:?} to there", piece.mark));
                        }
                        if !nails.iter().any(|(nail, _)| is_same(*nail, at)) {
                            return Err(format!("{} wants a nail at {at:?}: {line:?}", piece.mark));
                        }
                        continue;
                    }
                    // What no member is behind wants none.
                    let mut behind = line.held.iter().filter(|one| one.span.contains(*along));
                    let Some(behind) = behind.next() else { continue };
                    let at = line.point(*along, behind.across);
                    let moved = nails.iter().filter(|(_, moved)| *moved).map(|(nail, _)| {
                        let (by, off) = ((nail.x - at.x).abs(), (nail.y - at.y).abs());
                        if line.plumb { (off, by) } else { (by, off) }
                    });
                    let moved = moved
                        .filter(|(_, off)| *off <= Length::inches(2))
                        .map(|(by, _)| by)
                        .min();
                    let slack = Length::from_units(Length::PER_INCH / 64 + 2);
                    let by = nearest(ground, &nailed, piece, line, *along, *quarter);
                    let told = snags.iter().any(|snag| is_same(*snag, at));
                    // The nail at a corner is moved along one of its two edges only; where a strip is too thin for any
                    // nail, none is told of at its corners.
                    let at_corner = [line.along.lo, line.along.hi].contains(along);
                    let right = match (moved, by) {
                        (Some(moved), Some(by)) if moved <= by => true,
                        (_, Some(by)) => at_corner || (told && by + slack >= *quarter),
                        (_, None) => {
                            told || at_corner || moved.is_some_and(|moved| moved <= *quarter + slack)
                        }
                    };
                    if !right {
                        return Err(format!(
                            "{} wants a nail {by:?} beside {at:?}, has one {moved:?} off, told {told}: {line:?}",
                            piece.mark
                        ));
                    }
                    let mut counts = seen.get();
                    counts[2 + usize::from(told)] += 1;
                    seen.set(counts);
                }
                let mut counts = seen.get();
                counts[usize::from(line.plumb)] += 1;
                seen.set(counts);
            }
            if lines.iter().any(Option::is_none) {
                continue;
            }
            for row in rows().filter(|row| matches!(row.zone, Zone::Edge | Zone::Opening) && !row.moved) {
                let wanted = |at: Point| {
                    lines.iter().flatten().any(|line| {
                        let mut held = line
                            .held
                            .iter()
                            .filter(|one| one.member.id == row.member && one.zone == row.zone);
                        held.any(|one| {
                            let mut places = line.places.iter();
                            places.any(|(along, _)| is_same(line.point(*along, one.across), at))
                        })
                    })
                };
                if let Some(at) = row.positions().find(|at| !wanted(*at)) {
                    return Err(format!(
                        "{} does not want a nail at {at:?}: {row:?} {lines:?}",
                        piece.mark
                    ));
                }
            }
        }
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 100), "{seen:?}");
}
