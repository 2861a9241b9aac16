//! Rows between the edges of panels: on studs, end posts, plates, rims and headers.

use crate::between::{Demand, Line, across, level_demand, lines, stud_demand};
use crate::ground::on_every_class;
use crate::nailed::{along_line, is_same, is_sloped, may_stand, member, nailed};
use edgenail::Length;
use edgenail::edges::EdgeRun;
use edgenail::frame::{Axis, Origin};
use edgenail::geometry::{Interval, Point, Rect};
use edgenail::nailing::{NailRow, Zone};
use std::cell::Cell;
use std::collections::{BTreeMap, BTreeSet};

#[test]
fn studs_between_the_edges_are_nailed_to_the_spacing_of_their_zone() {
    let seen = Cell::new([0; 2]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        for row in &nailed.nailing.rows {
            let member = member(&nailed, row)?;
            let in_field = matches!(row.zone, Zone::Field | Zone::Boundary);
            if !in_field || member.axis != Axis::Vertical || row.moved {
                continue;
            }
            let bounds = member.face.bounds();
            let middle = (bounds.x0 + bounds.x1).half();
            let (lo, hi) = (row.from.y.min(row.to.y), row.from.y.max(row.to.y));
            if row.from.x != middle || row.to.x != middle {
                return Err(format!("{row:?} does not run up the middle of {member:?}"));
            }
            let outline = &ground.layout.pieces[row.piece as usize].outline;
            let Some(rect) = outline.is_rect() else { continue };
            let free = (
                bounds.y0.max(rect.y0).max(lo - Length::inches(2)),
                bounds.y1.min(rect.y1).min(hi + Length::inches(2)),
            );
            let Demand { spacing, zone, .. } =
                stud_demand(ground, member, middle, Interval::new(free.0, free.1));
            if row.zone != zone {
                return Err(format!("{row:?} is of {zone:?}"));
            }
            let space = (hi - lo).units() / i64::from(row.spaces);
            let fewer = (hi - lo).units() / i64::from((row.spaces - 1).max(1));
            if space > spacing.units() {
                return Err(format!("{row:?} is wider spaced than {spacing}"));
            }
            if row.spaces > 1 && fewer <= spacing.units() {
                return Err(format!("{row:?} has more spaces than {spacing} asks for"));
            }
            let mut counts = seen.get();
            counts[usize::from(zone == Zone::Field)] += 1;
            seen.set(counts);
        }
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 50), "{seen:?}");
}

/// No stretch of a stud that a panel covers stays without nails: from the panel's edge or the member's end to the first
/// nail, and from nail to nail, is no more than the spacing and what may hang free.
#[test]
fn every_stud_that_a_panel_covers_is_nailed() {
    let seen = Cell::new(0);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        let practice = ground.practice();
        for piece in &ground.layout.pieces {
            let Some(rect) = piece.outline.is_rect() else {
                continue;
            };
            for member in nailed
                .frame
                .members
                .iter()
                .filter(|member| member.axis == Axis::Vertical && member.nailable)
            {
                let Some(face) = member.face.is_rect() else {
                    continue;
                };
                let middle = (face.x0 + face.x1).half();
                let inside = rect.x0 + practice.edge_distance_least <= middle
                    && middle + practice.edge_distance_least <= rect.x1;
                let (lo, hi) = (face.y0.max(rect.y0), face.y1.min(rect.y1));
                // Beside a stud with an edge row, an added one is nailed to that stud instead.
                let touching = |other: &Rect| other.x0 == face.x1 || other.x1 == face.x0;
                let second = member.origin == Origin::Added
                    && nailed.runs.iter().any(|run| {
                        let held = run.member().and_then(|id| nailed.frame.member(id));
                        run.piece == piece.id
                            && run.side.is_plumb()
                            && held.is_some_and(|held| {
                                held.axis == Axis::Vertical && touching(&held.face.bounds())
                            })
                    });
                let has_edge = nailed.runs.iter().any(|run| {
                    run.piece == piece.id && run.member() == Some(member.id) && run.side.is_plumb()
                });
                if !inside
                    || second
                    || has_edge
                    || hi - lo < Length::inches(4)
                    || face.width() < practice.member_edge_least * 2
                {
                    continue;
                }
                let spacing = stud_demand(ground, member, middle, Interval::new(lo, hi)).spacing;
                let on = |at: Point| {
                    at.x == middle && lo - Length::inches(3) <= at.y && at.y <= hi + Length::inches(3)
                };
                let mut nails = along_line(&nailed, piece.id, on, |at| at.y);
                // Nails of the edges that cross it at its ends serve it too, also from beside it.
                let at_ends = nailed.nailing.rows.iter().filter(|row| row.piece == piece.id);
                let at_ends = at_ends
                    .flat_map(|row| row.positions().collect::<Vec<_>>())
                    .filter(|at| {
                        let near = |end: Length| (at.y - end).abs() <= Length::inches(3);
                        (at.x - middle).abs() <= spacing && (near(lo) || near(hi))
                    });
                nails.extend(at_ends.map(|at| (at.y, true)));
                nails.sort_unstable();
                let heights: Vec<Length> = nails
                    .iter()
                    .map(|nail| nail.0)
                    .filter(|y| lo - Length::inches(3) <= *y && *y <= hi + Length::inches(3))
                    .collect();
                let loose = practice.free_edge_most + Length::inches(1);
                let quarter = Length::from_units(spacing.units() / 2);
                let first = heights.first().is_some_and(|y| *y - lo <= loose + quarter);
                let last = heights.last().is_some_and(|y| hi - *y <= loose + quarter);
                let wide = heights
                    .windows(2)
                    .find(|pair| pair[1] - pair[0] > spacing + quarter);
                if !first || !last || wide.is_some() {
                    return Err(format!(
                        "{} on {member:?}: {heights:?} from {lo} to {hi} at {spacing}",
                        piece.mark
                    ));
                }
                seen.set(seen.get() + 1);
            }
        }
        Ok(())
    });
    assert!(seen.get() > 1_000, "{seen:?}");
}

#[test]
fn level_members_between_the_edges_are_nailed_to_what_their_segment_asks() {
    let seen = Cell::new([0; 3]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        let mut grids: BTreeMap<(u32, usize), Vec<Length>> = BTreeMap::new();
        for row in &nailed.nailing.rows {
            let member = member(&nailed, row)?;
            let between = matches!(row.zone, Zone::Field | Zone::Boundary) && member.axis == Axis::Horizontal;
            if !between || row.moved {
                continue;
            }
            let piece = &ground.layout.pieces[row.piece as usize];
            let Some(Demand { spacing, zone, grid }) = level_demand(ground, member, piece) else {
                return Err(format!("{row:?} on {member:?} has no reason"));
            };
            if row.zone != zone || row.from.y != row.to.y {
                return Err(format!("{row:?} on {member:?} is of {zone:?}"));
            }
            let length = (row.to.x - row.from.x).units();
            let (space, fewer) = (
                length / i64::from(row.spaces),
                length / i64::from((row.spaces - 1).max(1)),
            );
            if space > spacing.units() || (row.spaces > 1 && fewer <= spacing.units()) {
                return Err(format!("{row:?} on {member:?} is spaced {space}, not {spacing}"));
            }
            let covered = member
                .face
                .bounds()
                .intersect(&piece.outline.bounds())
                .ok_or("covered")?;
            if grid {
                grids
                    .entry((row.piece, row.member.index()))
                    .or_default()
                    .push(row.from.y);
            } else if row.from.y != (covered.y0 + covered.y1).half() {
                return Err(format!(
                    "{row:?} is not in the middle of what is covered of {member:?}"
                ));
            }
            let mut counts = seen.get();
            counts[if grid { 2 } else { usize::from(zone == Zone::Field) }] += 1;
            seen.set(counts);
        }
        for ((piece, id), heights) in grids {
            let piece = &ground.layout.pieces[piece as usize];
            let member = nailed
                .frame
                .members
                .iter()
                .find(|member| member.id.index() == id)
                .ok_or("member")?;
            let covered = member
                .face
                .bounds()
                .intersect(&piece.outline.bounds())
                .ok_or("covered")?;
            let wood = ground.practice().member_edge_least;
            let (lo, hi) = (covered.y0 + wood, covered.y1 - wood);
            if heights.iter().any(|y| *y < lo || hi < *y) {
                return Err(format!("{heights:?} of a grid between {lo} and {hi}"));
            }
        }
        Ok(())
    });
    assert!(
        seen.get()[..2].iter().all(|count| *count > 100) && seen.get()[2] > 5,
        "{seen:?}"
    );
}

/// The place is on the nail line of a run, or on the line of its edge a little beyond it.
fn is_on_line(run: &EdgeRun, at: Point) -> bool {
    let off = Length::inches(2);
    run.inset.is_some_and(|inset| {
        let line = across(run, inset);
        if run.side.is_plumb() {
            at.x == line && run.from.y - off <= at.y && at.y <= run.to.y + off
        } else {
            at.y == line && run.from.x - off <= at.x && at.x <= run.to.x + off
        }
    })
}

#[test]
fn between_the_edges_every_nail_that_is_wanted_is_driven_and_no_other() {
    let seen = Cell::new([0; 4]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        for piece in ground.layout.pieces.iter().filter(|piece| !is_sloped(piece)) {
            let lines = lines(ground, &nailed, piece);
            let rows = || nailed.nailing.rows.iter().filter(|row| row.piece == piece.id);
            let nails: BTreeSet<Point> = rows().flat_map(NailRow::positions).collect();
            let driven = |at: Point| {
                nails
                    .range(Point::new(at.x - Length::from_units(2), -Length::LIMIT)..)
                    .take_while(|nail| nail.x <= at.x + Length::from_units(2))
                    .any(|nail| is_same(*nail, at))
            };
            for line in &lines {
                let quarter = Length::from_units(line.demand.spacing.units() / 4 + 2);
                // What lies beyond the stretch is served by an edge's row.
                let level = line.member.axis == Axis::Horizontal;
                let on_it = |at: &&Point| line.free.contains(if level { at.x } else { at.y });
                for place in line.places.iter().filter(on_it) {
                    let near = |at: Point| (at.x - place.x).abs().max((at.y - place.y).abs()) <= quarter;
                    let mut moved = rows().filter(|row| row.moved && row.member == line.member.id);
                    let mut snags = nailed.snags.iter().filter(|snag| snag.piece == piece.id);
                    let free = may_stand(ground, &nailed, piece, &line.member, *place);
                    let stays = |row: &NailRow| free && row.position(row.first) == *place;
                    if moved.clone().any(stays) {
                        return Err(format!("{} has a nail moved from {place:?} to there", piece.mark));
                    }
                    let held = driven(*place)
                        || (!free && moved.any(|row| near(row.position(row.first))))
                        || (!free && snags.any(|snag| is_same(snag.at, *place)));
                    if !held {
                        let on_it: Vec<_> = rows().filter(|row| row.member == line.member.id).collect();
                        return Err(format!(
                            "{} wants a nail at {place:?}: {line:?} but has {on_it:?}",
                            piece.mark
                        ));
                    }
                }
                let mut counts = seen.get();
                counts[usize::from(line.demand.zone == Zone::Field)] += 1;
                counts[2] += usize::from(line.demand.grid);
                counts[3] += usize::from(piece.outline.is_rect().is_none());
                seen.set(counts);
            }
            // A nail without a place belongs to one of these lines, to an edge, or to a face too narrow for any.
            for snag in nailed.snags.iter().filter(|snag| snag.piece == piece.id) {
                let wanted = lines
                    .iter()
                    .any(|line| line.places.iter().any(|place| is_same(*place, snag.at)));
                let of_edge = nailed
                    .runs
                    .iter()
                    .any(|run| run.piece == piece.id && is_on_line(run, snag.at));
                let thin = nailed.frame.members.iter().any(|member| {
                    let bounds = member.face.bounds();
                    bounds.width() < ground.practice().member_edge_least * 2 && bounds.contains(snag.at)
                });
                if !wanted && !of_edge && !thin {
                    return Err(format!("{} wants no nail at {:?}", piece.mark, snag.at));
                }
            }
            for row in rows().filter(|row| matches!(row.zone, Zone::Field | Zone::Boundary) && !row.moved) {
                let of_member = || {
                    lines
                        .iter()
                        .filter(|line| line.member.id == row.member && line.demand.zone == row.zone)
                };
                let mut positions = row.positions();
                let wanted = |at: Point, line: &Line| line.places.iter().any(|place| is_same(*place, at));
                if let Some(at) = positions.find(|at| !of_member().any(|line| wanted(*at, line))) {
                    return Err(format!("{} does not want a nail at {at:?}: {row:?}", piece.mark));
                }
            }
        }
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 100), "{seen:?}");
}
