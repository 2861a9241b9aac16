//! The lines of nails that a panel wants between its edges, told from the rules of the trade: equal spaces no wider than
//! asked from one crossing row to the next, and a nail of its own where nothing crosses.

use crate::ground::Ground;
use crate::nailed::Nailed;
use edgenail::Length;
use edgenail::edges::{EdgeRun, Side};
use edgenail::frame::{Axis, Member, MemberKind, Origin, SegmentPlace};
use edgenail::geometry::{Interval, Point, Rect};
use edgenail::house::Method;
use edgenail::layout::Piece;
use edgenail::nailing::{NailRow, Zone};

/// How a member between the edges is nailed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Demand {
    pub spacing: Length,
    pub zone: Zone,
    /// Rows above each other, as far apart as the nails of a row.
    pub grid: bool,
}

/// One line of nails on one member.
#[derive(Clone, Debug)]
pub struct Line {
    pub member: Member,
    pub demand: Demand,
    /// The stretch of the member that it answers for, along itself.
    pub free: Interval,
    pub places: Vec<Point>,
}

/// What a level member asks for: the spacing of a segment's boundary, a portal's grid, or the field.
pub fn level_demand(ground: &Ground, member: &Member, piece: &Piece) -> Option<Demand> {
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
    let of = |place: &SegmentPlace| &wall.segments[place.segment as usize];
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
            return Some(Demand {
                spacing: segment.edge_spacing,
                zone: Zone::Boundary,
                grid: true,
            });
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
    let (low, high) = (
        Point::new(covered.x0, covered.y0),
        Point::new(covered.x1, covered.y1),
    );
    Some(Demand {
        spacing: boundary.unwrap_or_else(|| ground.field_spacing(low, high)),
        zone: if boundary.is_some() {
            Zone::Boundary
        } else {
            Zone::Field
        },
        grid: false,
    })
}

/// What a stud asks for along a stretch: the outermost member at either end of a segment carries its end tension.
pub fn stud_demand(ground: &Ground, member: &Member, x: Length, free: Interval) -> Demand {
    let bounds = member.face.bounds();
    let wall = &ground.house.walls[ground.frame.wall as usize];
    let post = ground.frame.segments.iter().find(|place| {
        let at_left = bounds.x0 <= place.rect.x0 && place.rect.x0 < bounds.x1;
        let at_right = bounds.x0 < place.rect.x1 && place.rect.x1 <= bounds.x1;
        let stands = bounds.y0 < place.rect.y1 && place.rect.y0 < bounds.y1;
        stands && (at_left || at_right)
    });
    let (spacing, zone) = match post {
        Some(place) => (wall.segments[place.segment as usize].edge_spacing, Zone::Boundary),
        None => (
            ground.field_spacing(Point::new(x, free.lo), Point::new(x, free.hi)),
            Zone::Field,
        ),
    };
    Demand {
        spacing,
        zone,
        grid: false,
    }
}

/// Nails at equal spaces no wider than asked, to the nearest unit, with or without one at each end.
pub fn divided(along: Interval, spacing: Length, (first, last): (bool, bool)) -> Vec<Length> {
    let length = along.len().units();
    let spaces = (length / spacing.units() + i64::from(length % spacing.units() != 0)).max(1);
    let from = i64::from(!first);
    let to = if last { spaces } else { spaces - 1 };
    (from..=to)
        .map(|part| along.lo + Length::from_units((2 * length * part + spaces) / (2 * spaces)))
        .collect()
}

/// The stretches of a level (or plumb) line over which a panel without slopes covers it with so much on both sides.
fn covered(piece: &Piece, level: bool, at: Length, beside: Length) -> Vec<Interval> {
    let hair = Length::from_units(1);
    let point = |along: Length, across: Length| {
        if level {
            Point::new(along, across)
        } else {
            Point::new(across, along)
        }
    };
    let ends = piece.outline.boundary().iter().flat_map(|edge| [edge.a, edge.b]);
    let mut corners: Vec<Length> = ends.map(|end| if level { end.x } else { end.y }).collect();
    corners.sort_unstable();
    corners.dedup();
    let covers = |pair: &&[Length]| {
        let middle = (pair[0] + pair[1]).half();
        [at - beside, at - beside + hair, at + beside - hair, at + beside]
            .into_iter()
            .all(|across| piece.outline.contains(point(middle, across)))
    };
    let parts = corners.windows(2).filter(covers);
    Interval::union(parts.map(|pair| Interval::new(pair[0], pair[1])).collect())
}

pub fn span(run: &EdgeRun) -> Interval {
    if run.side.is_plumb() {
        Interval::new(run.from.y, run.to.y)
    } else {
        Interval::new(run.from.x, run.to.x)
    }
}

/// The line of nails of a run, across it.
pub fn across(run: &EdgeRun, inset: Length) -> Length {
    match run.side {
        Side::Left => run.from.x + inset,
        Side::Right => run.from.x - inset,
        Side::Bottom => run.from.y + inset,
        Side::Top => run.from.y - inset,
    }
}

/// Every line that a panel without slopes wants between its edges: level ones first, then those on studs.
pub fn lines(ground: &Ground, nailed: &Nailed, piece: &Piece) -> Vec<Line> {
    let runs: Vec<&EdgeRun> = nailed.runs.iter().filter(|run| run.piece == piece.id).collect();
    let level = nailed
        .frame
        .members
        .iter()
        .filter(|member| member.nailable && member.axis == Axis::Horizontal);
    let mut lines: Vec<Line> = level
        .flat_map(|member| level_lines(ground, nailed, piece, &runs, member))
        .collect();
    let plumb = nailed
        .frame
        .members
        .iter()
        .filter(|member| member.nailable && member.axis == Axis::Vertical);
    let on_studs: Vec<Line> = plumb
        .filter(|member| !is_second(nailed, &runs, member))
        .flat_map(|member| stud_lines(ground, piece, &runs, member, &lines))
        .collect();
    lines.extend(on_studs);
    lines
}

fn level_lines(
    ground: &Ground,
    nailed: &Nailed,
    piece: &Piece,
    runs: &[&EdgeRun],
    member: &Member,
) -> Vec<Line> {
    let practice = ground.practice();
    let (least, wood) = (practice.edge_distance_least, practice.member_edge_least);
    let bounds = member.face.bounds();
    let Some(demand) = level_demand(ground, member, piece) else {
        return Vec::new();
    };
    let Some(behind) = bounds.intersect(&piece.outline.bounds()) else {
        return Vec::new();
    };
    let heights = if demand.grid {
        let whole = Interval {
            lo: behind.y0 + wood,
            hi: behind.y1 - wood,
        };
        divided(whole, demand.spacing, (true, true))
    } else {
        vec![(behind.y0 + behind.y1).half()]
    };
    let mut lines = Vec::new();
    for y in heights {
        // An edge row on the member serves it already; in a grid only the row that it stands in for.
        let serves = |run: &&&EdgeRun| {
            let level = run.from.y == run.to.y && run.member() == Some(member.id);
            let off = (across(run, run.inset.unwrap_or_default()) - y).abs();
            level && (!demand.grid || off < demand.spacing.half())
        };
        let taken = Interval::union(runs.iter().filter(serves).map(|run| span(run)).collect());
        for panel in covered(piece, true, y, least) {
            let Some(on_face) = panel.intersect(bounds.x_span()) else {
                continue;
            };
            for free in Interval::subtract(on_face, &taken) {
                let end = |at: Length, side: Side| {
                    let is_end = if side == Side::Left {
                        at == panel.lo
                    } else {
                        at == panel.hi
                    };
                    let mut edge = runs
                        .iter()
                        .filter(|run| run.side == side && run.from.x == at && span(run).contains(y));
                    let run = edge.next().filter(|_| is_end)?;
                    let inset = run.inset.unwrap_or(least);
                    Some((across(run, inset), run.inset.is_none()))
                };
                // A block is nailed to the studs that it stands between.
                let own_end = member.kind != MemberKind::Block;
                let (lo, first) = match end(free.lo, Side::Left) {
                    Some(line) => line,
                    None if free.lo == bounds.x0 && own_end => (free.lo + wood, true),
                    None => (free.lo, false),
                };
                let (hi, last) = match end(free.hi, Side::Right) {
                    Some(line) => line,
                    None if free.hi == bounds.x1 && own_end => (free.hi - wood, true),
                    None => (free.hi, false),
                };
                // A boundary has a nail at its ends, unless a plumb edge row drives one into the member there.
                let rows = || nailed.nailing.rows.iter().filter(|row| row.piece == piece.id);
                let bare = |x: Length| {
                    let on_it = |row: &&NailRow| row.zone == Zone::Edge && row.member == member.id;
                    let mut nails = rows().filter(on_it).flat_map(NailRow::positions);
                    let beside =
                        |at: Point| (at.x - x).abs() <= wood && (at.y - y).abs() < demand.spacing.half();
                    demand.zone == Zone::Boundary && !demand.grid && !nails.any(beside)
                };
                let (first, last) = (first || bare(lo), last || bare(hi));
                if lo < hi {
                    let along = Interval { lo, hi };
                    let places = divided(along, demand.spacing, (first, last));
                    lines.push(Line {
                        member: member.clone(),
                        demand,
                        free,
                        places: places.into_iter().map(|x| Point::new(x, y)).collect(),
                    });
                }
            }
        }
    }
    lines
}

/// An added stud beside one that carries an edge of the panel is nailed to that one instead.
fn is_second(nailed: &Nailed, runs: &[&EdgeRun], member: &Member) -> bool {
    let bounds = member.face.bounds();
    let carries = |run: &&EdgeRun| {
        let first = run.member().and_then(|id| nailed.frame.member(id));
        first.is_some_and(|first| {
            let first_bounds = first.face.bounds();
            let touches = first_bounds.x0 == bounds.x1 || first_bounds.x1 == bounds.x0;
            first.axis == Axis::Vertical && touches
        })
    };
    member.origin == Origin::Added && runs.iter().filter(|run| run.side.is_plumb()).any(carries)
}

fn stud_lines(
    ground: &Ground,
    piece: &Piece,
    runs: &[&EdgeRun],
    member: &Member,
    level: &[Line],
) -> Vec<Line> {
    let practice = ground.practice();
    let (least, most) = (practice.edge_distance_least, practice.edge_distance_most);
    let wood = practice.member_edge_least;
    let bounds = member.face.bounds();
    let x = (bounds.x0 + bounds.x1).half();
    let Some(stud) = member.face.span_at_x(x).filter(|_| bounds.width() >= wood * 2) else {
        return Vec::new();
    };
    let carried = runs
        .iter()
        .filter(|run| run.side.is_plumb() && run.member() == Some(member.id));
    let taken = Interval::union(carried.map(|run| span(run)).collect());
    let good = member.face.inset(wood).and_then(|inner| inner.span_at_x(x));
    let mut lines = Vec::new();
    for panel in covered(piece, false, x, least) {
        let Some(on_face) = panel.intersect(stud) else {
            continue;
        };
        let of_edges = runs
            .iter()
            .filter(|run| !run.side.is_plumb() && span(run).contains(x))
            .filter_map(|run| Some(across(run, run.inset?)));
        let of_level = level
            .iter()
            .filter(|line| line.free.contains(x) && !line.places.is_empty())
            .map(|line| line.places[0].y);
        let rows: Vec<Length> = of_edges.chain(of_level).filter(|y| panel.contains(*y)).collect();
        for free in Interval::subtract(on_face, &taken) {
            let demand = stud_demand(ground, member, x, free);
            let Some(good) = good else { continue };
            // Between the rows that cross the stud; where none crosses near its end, from a nail of its own.
            let below = rows
                .iter()
                .filter(|y| **y <= free.lo.max(panel.lo + most) && good.lo - **y <= demand.spacing);
            let above = rows
                .iter()
                .filter(|y| **y >= free.hi.min(panel.hi - most) && **y - good.hi <= demand.spacing);
            let (lo, first) = below
                .max()
                .map_or((good.lo.max(free.lo), true), |row| (*row, false));
            let (hi, last) = above
                .min()
                .map_or((good.hi.min(free.hi), true), |row| (*row, false));
            if lo < hi {
                let places = divided(Interval { lo, hi }, demand.spacing, (first, last));
                lines.push(Line {
                    member: member.clone(),
                    demand,
                    free,
                    places: places.into_iter().map(|y| Point::new(x, y)).collect(),
                });
            }
        }
    }
    lines
}
