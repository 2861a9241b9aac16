//! Rows between the edges of panels: on studs, end posts, plates, rims and headers.

use crate::ground::{Ground, on_every_class};
use crate::nailed::{along_line, member, nailed};
use edgenail::Length;
use edgenail::frame::{Axis, Member, MemberKind, Origin};
use edgenail::geometry::{Point, Rect};
use edgenail::house::Method;
use edgenail::layout::Piece;
use edgenail::nailing::Zone;
use std::cell::Cell;
use std::collections::BTreeMap;

/// How far apart the nails of a stud between the edges of a panel may stand.
fn stud_spacing(ground: &Ground, member: &Member, x: Length, free: (Length, Length)) -> (Length, Zone) {
    let bounds = member.face.bounds();
    let (a, b) = (Point::new(x, free.0), Point::new(x, free.1));
    let wall = &ground.house.walls[ground.frame.wall as usize];
    // The outermost member at either end of a segment carries its end tension.
    let post = ground.frame.segments.iter().find(|place| {
        let at_end = |end: Length, left: bool| {
            if left {
                bounds.x0 <= end && end < bounds.x1
            } else {
                bounds.x0 < end && end <= bounds.x1
            }
        };
        let stands = bounds.y0 < place.rect.y1 && place.rect.y0 < bounds.y1;
        stands && (at_end(place.rect.x0, true) || at_end(place.rect.x1, false))
    });
    if let Some(place) = post {
        return (wall.segments[place.segment as usize].edge_spacing, Zone::Boundary);
    }
    (ground.field_spacing(a, b), Zone::Field)
}

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
            let (spacing, zone) = stud_spacing(ground, member, middle, free);
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
                let (spacing, _) = stud_spacing(ground, member, middle, (lo, hi));
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

/// What a level member between the edges asks for: the spacing of a segment's boundary, a portal's grid, or the field.
fn level_demand(ground: &Ground, member: &Member, piece: &Piece) -> Option<(Length, Zone, bool)> {
    let (bounds, panel) = (member.face.bounds(), piece.outline.bounds());
    let covered = bounds.intersect(&panel)?;
    let storey = member
        .storey
        .and_then(|storey| ground.frame.storeys.get(storey as usize));
    let own_row = match member.kind {
        MemberKind::BottomPlate => storey.is_some_and(|storey| bounds.y0 == storey.base),
        MemberKind::TopPlate => storey.is_some_and(|storey| bounds.y0 == storey.topmost_from),
        _ => true,
    };
    if !own_row {
        return None;
    }
    let wall = &ground.house.walls[ground.frame.wall as usize];
    let beside = ground
        .frame
        .segments
        .iter()
        .filter(|place| place.rect.x0 < covered.x1 && covered.x0 < place.rect.x1);
    let of = |place: &edgenail::frame::SegmentPlace| &wall.segments[place.segment as usize];
    let band_next = |rect: &Rect| {
        let bands = ground.frame.bands.iter();
        let mut bands = bands.filter(|band| band.y.hi == rect.y0 || band.y.lo == rect.y1);
        bands.any(|band| band.y.lo <= bounds.y0 && bounds.y1 <= band.y.hi)
    };
    let mut boundary: Option<Length> = None;
    for place in beside {
        let segment = of(place);
        let inside = place.rect.overlaps(&covered);
        if member.kind == MemberKind::Header && segment.method == Method::Portal && inside {
            return Some((segment.edge_spacing, Zone::Boundary, true));
        }
        let counts = match member.kind {
            MemberKind::BottomPlate | MemberKind::TopPlate => inside,
            MemberKind::Rim | MemberKind::EdgeJoist | MemberKind::TrussChord | MemberKind::Mudsill => {
                band_next(&place.rect)
            }
            MemberKind::Block => member.storey.is_none() && band_next(&place.rect),
            _ => false,
        };
        if counts {
            boundary = Some(boundary.map_or(segment.edge_spacing, |least| least.min(segment.edge_spacing)));
        }
    }
    if let Some(spacing) = boundary {
        return Some((spacing, Zone::Boundary, false));
    }
    let (low, high) = (
        Point::new(covered.x0, covered.y0),
        Point::new(covered.x1, covered.y1),
    );
    Some((ground.field_spacing(low, high), Zone::Field, false))
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
            let Some((spacing, zone, grid)) = level_demand(ground, member, piece) else {
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
