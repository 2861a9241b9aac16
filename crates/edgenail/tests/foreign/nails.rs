//! Every nail of layouts that nobody chose: wood and panel round it, no nail twice, its kind, the spacing of its zone.

use crate::ground::{Ground, on_every_class};
use edgenail::Length;
use edgenail::blocking::blocking;
use edgenail::edges::{EdgeRun, Side, Site, edges};
use edgenail::frame::{Axis, Frame, Member, MemberKind, Origin};
use edgenail::geometry::{Point, Rect};
use edgenail::house::{Coating, Method, Nail, Segment};
use edgenail::layout::Piece;
use edgenail::nailing::{NailRow, Nailing, Snag, Zone, nail_all};
use std::cell::Cell;
use std::collections::BTreeMap;

struct Nailed {
    frame: Frame,
    runs: Vec<EdgeRun>,
    nailing: Nailing,
    snags: Vec<Snag>,
}

fn nailed(ground: &Ground) -> Nailed {
    let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
    let frame = ground.frame.with(&added);
    let runs = edges(&ground.house, &frame, &ground.layout);
    let (nailing, snags) = match Site::new(&ground.house, &frame) {
        Some(site) => nail_all(&site, &ground.layout, &runs),
        None => (Nailing::default(), Vec::new()),
    };
    Nailed {
        frame,
        runs,
        nailing,
        snags,
    }
}

fn member<'n>(nailed: &'n Nailed, row: &NailRow) -> Result<&'n Member, String> {
    nailed
        .frame
        .member(row.member)
        .ok_or_else(|| format!("{row:?} is in no member"))
}

#[test]
fn a_nail_has_wood_and_panel_on_all_sides_and_stands_alone() {
    let moved = Cell::new(0);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        let practice = ground.practice();
        let least = practice.edge_distance_least;
        let mut places = Vec::new();
        for row in &nailed.nailing.rows {
            // Along a slope places are rounded to whole units.
            let wood = member(&nailed, row)?
                .face
                .inset(practice.member_edge_least - Length::from_units(2));
            let outline = &ground.layout.pieces[row.piece as usize].outline;
            for at in row.positions() {
                if !wood.as_ref().is_some_and(|wood| wood.contains(at)) {
                    return Err(format!(
                        "{row:?} has too little wood at {at:?} {:?}",
                        member(&nailed, row)?
                    ));
                }
                // To a sloped edge the distance counts square to it; along level and plumb edges corner by corner.
                let corners = [(-least, -least), (least, -least), (-least, least), (least, least)];
                let is_out =
                    |(right, up): &(Length, Length)| !outline.contains(Point::new(at.x + *right, at.y + *up));
                if outline.is_rect().is_some() && corners.iter().any(is_out) {
                    return Err(format!("{row:?} is too near the panel's edge at {at:?}"));
                }
                if !outline.contains(at) {
                    return Err(format!("{row:?} misses its panel at {at:?}"));
                }
                let in_strap = |place: &edgenail::frame::PatchPlace| place.rect.contains(at);
                if nailed.frame.straps.iter().any(in_strap) {
                    return Err(format!("{row:?} is driven into a strap at {at:?}"));
                }
                let too_near = |place: &edgenail::frame::PatchPlace| {
                    place.rect.grown(least - Length::from_units(1)).contains(at)
                };
                if nailed.frame.penetrations.iter().any(too_near) {
                    return Err(format!("{row:?} is too near a penetration at {at:?}"));
                }
                places.push((row.piece, at));
            }
            moved.set(moved.get() + usize::from(row.moved));
        }
        places.sort_unstable();
        match places.windows(2).find(|pair| pair[0] == pair[1]) {
            Some(pair) => Err(format!("two nails at {:?}", pair[0])),
            None => Ok(()),
        }
    });
    assert!(moved.get() > 50, "{moved:?}");
}

/// The segments that a line of nails crosses or runs along.
fn segments_on<'g>(ground: &'g Ground, a: Point, b: Point) -> Vec<(&'g Segment, Rect)> {
    let (x0, x1, y0, y1) = (a.x.min(b.x), a.x.max(b.x), a.y.min(b.y), a.y.max(b.y));
    let meets = |lo: Length, hi: Length, a: Length, b: Length| {
        if a == b {
            lo <= a && a <= hi
        } else {
            a < hi && lo < b
        }
    };
    let wall = &ground.house.walls[ground.frame.wall as usize];
    let places = ground.frame.segments.iter();
    let places = places.filter(|place| {
        meets(place.rect.x0, place.rect.x1, x0, x1) && meets(place.rect.y0, place.rect.y1, y0, y1)
    });
    places
        .map(|place| (&wall.segments[place.segment as usize], place.rect))
        .collect()
}

/// The nail that practice and segments ask for: into treated lumber one whose coating is accepted there (IRC R317.3).
fn nail_for(ground: &Ground, segments: &[(&Segment, Rect)], treated: bool) -> String {
    let nails = &ground.house.stock.nails;
    let practice = ground.practice();
    let named = |name: &String| nails.iter().find(|nail| nail.name == *name);
    let resists = |nail: &&Nail| practice.treated_coatings.contains(&nail.coating);
    let of_segment = segments
        .iter()
        .find_map(|(segment, _)| segment.nail.as_ref().and_then(named));
    let asked = of_segment.or_else(|| practice.assembly.nail.as_ref().and_then(named));
    let bright = nails.iter().find(|nail| nail.coating == Coating::Bright);
    let plain = asked.or(bright).unwrap_or(&nails[0]);
    let into_treated = practice
        .assembly
        .treated_nail
        .as_ref()
        .and_then(named)
        .filter(resists);
    let into_treated = into_treated.or_else(|| nails.iter().find(resists));
    let chosen = if treated {
        asked.filter(resists).or(into_treated).unwrap_or(plain)
    } else {
        plain
    };
    chosen.name.clone()
}

#[test]
fn a_nail_is_of_the_kind_that_its_wood_and_its_segment_ask_for() {
    let kinds: Cell<[u32; 3]> = Cell::new([0; 3]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        for row in nailed
            .nailing
            .rows
            .iter()
            .filter(|row| !row.moved && row.spaces > 0)
        {
            let treated = member(&nailed, row)?.treated;
            let name = &ground.house.stock.nails[row.nail as usize].name;
            // An edge row asks along the panel's edge, which may lie in a segment that its nails are beside.
            let (a, b) = (row.position(row.first), row.position(row.last));
            let mut asked = vec![
                nail_for(ground, &segments_on(ground, a, b), treated),
                nail_for(ground, &segments_on(ground, row.from, row.to), treated),
            ];
            let of_runs = nailed
                .runs
                .iter()
                .filter(|run| run.piece == row.piece && run.member() == Some(row.member));
            asked
                .extend(of_runs.map(|run| nail_for(ground, &segments_on(ground, run.from, run.to), treated)));
            if !asked.contains(name) {
                return Err(format!("{row:?} is nailed with {name}, not one of {asked:?}"));
            }
            let mut counts = kinds.get();
            counts[row.nail.min(2) as usize] += 1;
            kinds.set(counts);
        }
        Ok(())
    });
    assert!(kinds.get().iter().all(|count| *count > 200), "{kinds:?}");
}

/// Where the nails of one piece stand along a plumb or level line, and a quarter space about those that had to move.
fn along_line(
    nailed: &Nailed,
    piece: u32,
    on: impl Fn(Point) -> bool,
    place: impl Fn(Point) -> Length,
) -> Vec<(Length, bool)> {
    let rows = nailed.nailing.rows.iter().filter(|row| row.piece == piece);
    let nails = rows.flat_map(|row| row.positions().map(move |at| (at, row.moved)));
    let mut found: Vec<(Length, bool)> = nails
        .filter(|(at, _)| on(*at))
        .map(|(at, moved)| (place(at), moved))
        .collect();
    let snags = nailed.snags.iter().filter(|snag| snag.piece == piece);
    found.extend(snags.map(|snag| (place(snag.at), true)));
    found.sort_unstable();
    found
}

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
                    snags.filter(|snag| (across(snag.at) - across(held[0].from)).abs() < Length::inches(2));
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

/// The closest spacing between the edges that holds anywhere in an area.
fn field_spacing(ground: &Ground, low: Point, high: Point) -> Length {
    let segments = segments_on(ground, low, high);
    let closest = segments.iter().map(|(segment, _)| segment.field_spacing).min();
    let outside = ground.practice().assembly.field_spacing;
    let inside = segments
        .iter()
        .any(|(_, rect)| rect.contains(low) && rect.contains(high));
    closest.map_or(
        outside,
        |closest| if inside { closest } else { closest.min(outside) },
    )
}

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
    (field_spacing(ground, a, b), Zone::Field)
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
    Some((field_spacing(ground, low, high), Zone::Field, false))
}

#[test]
fn level_members_between_the_edges_are_nailed_to_what_their_segment_asks() {
    let seen = Cell::new([0; 3]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        let mut grids: BTreeMap<(u32, u32), Vec<Length>> = BTreeMap::new();
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
                    .entry((row.piece, row.member.index() as u32))
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
                .find(|member| member.id.index() == id as usize)
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
            // A seam that is held in parts only has rows of its own on each.
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
