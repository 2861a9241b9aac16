//! Edges along a rake: what holds them, told a second time by points square to the slope.

use crate::ground::{Ground, on_every_class};
use crate::nailed::{is_sloped, nailed};
use edgenail::Length;
use edgenail::edges::{EdgeRun, Side};
use edgenail::geometry::Point;
use std::cell::Cell;

/// The point so far into the panel from the middle of a run along a slope, square to it, to the nearest unit.
#[expect(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    reason = "places to a unit are near enough"
)]
fn inside(run: &EdgeRun, depth: Length) -> Point {
    let (x, y) = ((run.from.x + run.to.x).half(), (run.from.y + run.to.y).half());
    let along = (
        (run.to.x - run.from.x).units() as f64,
        (run.to.y - run.from.y).units() as f64,
    );
    let length = along.0.hypot(along.1);
    let depth = depth.units() as f64;
    let (right, down) = (along.1 / length * depth, along.0 / length * depth);
    Point::new(
        x + Length::from_units(right.round() as i64),
        y - Length::from_units(down.round() as i64),
    )
}

/// A nail at this depth has so much of one nailable member on both sides of it, square to the slope.
fn is_held(ground: &Ground, run: &EdgeRun, depth: Length, wood: Length) -> bool {
    let points = [inside(run, depth - wood), inside(run, depth + wood)];
    let mut members = ground.frame.members.iter().filter(|member| member.nailable);
    members.any(|member| points.iter().all(|at| member.face.contains(*at)))
}

#[test]
fn a_sloped_run_is_held_where_its_nail_line_has_wood() {
    let seen = Cell::new([0; 2]);
    on_every_class(|ground| {
        let practice = ground.practice();
        let (least, most) = (practice.edge_distance_least, practice.edge_distance_most);
        // Roundings of the slope, of the square to it and of the half.
        let hair = Length::from_units(8);
        let wood = practice.member_edge_least;
        let sloped = ground
            .runs
            .iter()
            .filter(|run| run.from.x != run.to.x && run.from.y != run.to.y);
        for run in sloped.filter(|run| run.length > Length::inches(1)) {
            if let Some(inset) = run.inset {
                if !is_held(ground, run, inset, wood - hair) {
                    return Err(format!("{run:?} has no wood at its nail line"));
                }
                let step = Length::sixteenths(1);
                let said = run.wood.unwrap_or_default();
                // On a stud that crosses the edge the wood goes on downwards.
                let crosses = said > Length::inches(1);
                let other =
                    !is_held(ground, run, inset, said - hair) || is_held(ground, run, inset, said + step);
                if other && !crosses {
                    return Err(format!("{run:?} has other wood beside its nail line"));
                }
                if inset < least || most < inset {
                    return Err(format!("{run:?} has its nail line too far in or out"));
                }
                // No line nearer to the edge would do.
                let nearer = Length::sixteenths(1);
                if inset - nearer >= least && is_held(ground, run, inset - nearer, wood + hair) {
                    return Err(format!("{run:?} could be nailed nearer to its edge"));
                }
                seen.set([seen.get()[0] + 1, seen.get()[1]]);
            } else {
                let steps =
                    (0..).map(|step| least + Length::from_units(Length::sixteenths(step).units() / 2));
                let mut lines = steps.take_while(|line| *line <= most);
                // The library asks for wood over the whole stretch between two nails, and may say no beside an end.
                let around = [-2, 0, 2].map(|by| EdgeRun {
                    from: Point::new(run.from.x + Length::inches(by), run.from.y),
                    to: Point::new(run.to.x + Length::inches(by), run.to.y),
                    ..run.clone()
                });
                let held =
                    lines.find(|line| around.iter().all(|run| is_held(ground, run, *line, wood + hair)));
                if let Some(line) = held {
                    return Err(format!("{run:?} has wood at {line}"));
                }
                seen.set([seen.get()[0], seen.get()[1] + 1]);
            }
        }
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 3), "{seen:?}");
}

/// How far inside the line of an edge a place lies, square to it.
#[expect(clippy::cast_precision_loss, reason = "places to a unit are near enough")]
fn inside_by(edge: &[EdgeRun], at: Point) -> f64 {
    let (from, to) = (edge[0].from, edge[edge.len() - 1].to);
    let (right, up) = ((to.x - from.x).units() as f64, (to.y - from.y).units() as f64);
    let (x, y) = ((at.x - from.x).units() as f64, (at.y - from.y).units() as f64);
    let left_of = (right * y - up * x) / right.hypot(up);
    // Edges are given from their lower or left end: the panel lies left of a bottom edge and of a right one.
    match edge[0].side {
        Side::Bottom | Side::Right => left_of,
        Side::Top | Side::Left => -left_of,
    }
}

/// One nail stands where the lines of two edges cross, one of them along a slope, on wood that holds both.
#[test]
fn a_corner_at_a_slope_has_the_nail_of_both_edges() {
    let seen = Cell::new([0; 2]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        for piece in ground.layout.pieces.iter().filter(|piece| is_sloped(piece)) {
            let runs: Vec<EdgeRun> = nailed
                .runs
                .iter()
                .filter(|run| run.piece == piece.id)
                .cloned()
                .collect();
            let edges: Vec<&[EdgeRun]> = runs.chunk_by(|a, b| a.edge == b.edge).collect();
            let slopes = |edge: &[EdgeRun]| edge[0].from.x != edge[0].to.x && edge[0].from.y != edge[0].to.y;
            let ends = |edge: &[EdgeRun]| [edge[0].from, edge[edge.len() - 1].to];
            let rows = nailed.nailing.rows.iter().filter(|row| row.piece == piece.id);
            let nails: Vec<(Point, bool)> = rows
                .flat_map(|row| row.positions().map(|at| (at, row.moved)))
                .collect();
            for sloped in edges.iter().filter(|edge| slopes(edge)) {
                for other in edges.iter().filter(|other| other[0].edge != sloped[0].edge) {
                    let corner = ends(sloped).into_iter().find(|end| ends(other).contains(end));
                    let whole = |edge: &[EdgeRun]| {
                        let first = edge[0].inset;
                        first.filter(|_| edge.iter().all(|run| run.inset == first))
                    };
                    let long = |edge: &[EdgeRun]| ends(edge)[0].distance(ends(edge)[1]) > Length::inches(2);
                    if !long(sloped) || !long(other) {
                        continue;
                    }
                    let (Some(corner), Some(own), Some(theirs)) = (corner, whole(sloped), whole(other))
                    else {
                        continue;
                    };
                    #[expect(clippy::cast_precision_loss, reason = "places to a unit are near enough")]
                    let is_on = |edge: &[EdgeRun], at: Point, inset: Length| {
                        (inside_by(edge, at) - inset.units() as f64).abs() <= 8.0
                    };
                    let crossing = nails
                        .iter()
                        .any(|(at, _)| is_on(sloped, *at, own) && is_on(other, *at, theirs));
                    let around = |at: Point| at.distance(corner) <= Length::inches(4);
                    let excused = nailed
                        .snags
                        .iter()
                        .any(|snag| snag.piece == piece.id && around(snag.at))
                        || nails.iter().any(|(at, moved)| *moved && around(*at));
                    if !crossing && !excused {
                        let near: Vec<_> = nails.iter().filter(|(at, _)| around(*at)).collect();
                        return Err(format!(
                            "{}: {near:?} at {corner:?} of {sloped:?} and {other:?}",
                            piece.mark
                        ));
                    }
                    let mut counts = seen.get();
                    counts[usize::from(crossing)] += 1;
                    seen.set(counts);
                }
            }
        }
        Ok(())
    });
    assert!(seen.get()[1] > 20 && seen.get()[0] < seen.get()[1], "{seen:?}");
}
