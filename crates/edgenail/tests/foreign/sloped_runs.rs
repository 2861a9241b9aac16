//! Edges along a rake: what holds them, told a second time by points square to the slope.

use crate::ground::{Ground, on_every_class};
use edgenail::Length;
use edgenail::edges::EdgeRun;
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
