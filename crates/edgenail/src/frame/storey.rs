//! The members of one storey.

use super::builder::{Material, Piece};
use super::grid::Grid;
use super::rake::Roofline;
use super::upright::{Upright, Uprights};
use super::{Axis, Frame, MemberKind, Origin, StoreyPlace};
use crate::geometry::{Convex, Interval, Rect};
use crate::house::{Opening, Segment, Storey};
use crate::length::Length;

/// A storey where it stands.
#[derive(Clone, Copy, Debug)]
pub(super) struct Standing<'a> {
    pub storey: &'a Storey,
    pub place: &'a StoreyPlace,
    /// From the left face of its left end stud to the right face of its right one.
    pub x: Interval,
    pub material: Material,
    /// Slopes that its studs are cut to.
    pub roofline: Option<&'a Roofline>,
    pub segments: &'a [Segment],
}

impl Standing<'_> {
    /// A height above the storey's base, in wall coordinates.
    fn up(&self, y: Length) -> Length {
        self.place.base + y
    }

    /// From the bottom plates to the top plates.
    fn full(&self) -> Interval {
        Interval::new(self.place.studs_from, self.place.studs_to)
    }

    /// The stretches that layout takes up, each with its number of spaces from the zero, below zero where layout
    /// is pulled back towards the end that it starts from.
    fn layout(&self) -> Vec<(i64, Interval)> {
        let grid = Grid {
            zero: self.place.zero,
            spacing: self.place.spacing,
            from_right: self.place.from_right,
        };
        grid.faces(self.place.stud_width, self.x)
    }

    /// The rough opening and its header, in wall coordinates.
    fn holes(&self) -> Vec<Hole> {
        let holes = self.storey.openings.iter().map(|opening| {
            let rect = Rect::from_size(opening.left, self.up(opening.sill), opening.width, opening.height);
            let header = opening.header.map(|header| Rect {
                x0: header.from,
                x1: header.to,
                y0: self.up(header.y),
                y1: self.up(header.y) + header.depth,
            });
            let sills = self.place.stud_width * i64::from(opening.sills);
            Hole {
                rect,
                header,
                sill_from: rect.y0 - sills,
            }
        });
        holes.collect()
    }
}

/// An opening with the wood that lies level over and under it.
struct Hole {
    rect: Rect,
    header: Option<Rect>,
    sill_from: Length,
}

/// Frames a storey: headers and sills, then uprights, then block rows.
pub(super) fn frame_storey(frame: &mut Frame, at: &Standing<'_>, first_opening: u32) {
    let holes = at.holes();
    for ((opening, hole), index) in at.storey.openings.iter().zip(&holes).zip(first_opening..) {
        if let (Some(header), Some(rect)) = (opening.header, hole.header) {
            let depth = at.place.stud_width * i64::from(header.plies);
            let piece = Piece {
                setback: header.setback,
                opening: Some(index),
                ..Piece::said(MemberKind::Header, Axis::Horizontal)
            };
            frame.put(&Material { depth, ..at.material }, piece, rect);
        }
        for ply in 0..i64::from(opening.sills) {
            let top = hole.rect.y0 - at.place.stud_width * ply;
            let y = Interval::new(top - at.place.stud_width, top);
            if y.lo >= at.place.studs_from {
                let piece = Piece {
                    opening: Some(index),
                    ..Piece::said(MemberKind::Sill, Axis::Horizontal)
                };
                frame.put(&at.material, piece, Rect::from_spans(hole.rect.x_span(), y));
            }
        }
    }
    let uprights = uprights(at, &holes, first_opening);
    for upright in &uprights {
        let piece = Piece {
            origin: upright.origin,
            opening: upright.opening,
            ..Piece::said(upright.kind, Axis::Vertical)
        };
        let rect = Rect::from_spans(upright.x, upright.y);
        match at.roofline.filter(|_| upright.y.hi == at.place.studs_to) {
            Some(roofline) => {
                if let Some(face) = Convex::from_points(&roofline.cut_stud(rect)) {
                    frame.put_convex(&at.material, piece, face);
                }
            }
            None => frame.put(&at.material, piece, rect),
        }
    }
    block_rows(frame, at, &holes, &uprights);
}

/// Openings in the order in which they are framed: from the end that layout is pulled from.
fn from_layout_end<'a>(
    at: &Standing<'a>,
    holes: &'a [Hole],
    first_opening: u32,
) -> Vec<(&'a Opening, &'a Hole, u32)> {
    let openings = at.storey.openings.iter().zip(holes).zip(first_opening..);
    let mut framed: Vec<_> = openings
        .map(|((opening, hole), index)| (opening, hole, index))
        .collect();
    framed.sort_by_key(|(_, hole, _)| {
        if at.place.from_right {
            -hole.rect.x1
        } else {
            hole.rect.x0
        }
    });
    framed
}

/// All uprights, in the order of who stays where two would stand in one another: ends, trimmers, kings, studs on
/// layout, end posts, cripples. Of two kings that would stand in one another the one nearer to the layout end stays
/// and serves both openings, and an end stud serves as the king that would stand in it.
fn uprights(at: &Standing<'_>, holes: &[Hole], first_opening: u32) -> Vec<Upright> {
    let width = at.place.stud_width;
    let mut all = Uprights::default();
    let full = |kind, origin, x0: Length| Upright {
        kind,
        origin,
        x: Interval::new(x0, x0 + width),
        y: at.full(),
        opening: None,
    };
    for n in 0..i64::from(at.storey.end_studs.left) {
        all.stand(full(MemberKind::EndStud, Origin::Said, at.x.lo + width * n));
    }
    for n in 1..=i64::from(at.storey.end_studs.right) {
        all.stand(full(MemberKind::EndStud, Origin::Said, at.x.hi - width * n));
    }
    let framed = from_layout_end(at, holes, first_opening);
    for kind in [MemberKind::Trimmer, MemberKind::KingStud] {
        for &(opening, hole, index) in &framed {
            let (trimmers, kings) = (i64::from(opening.trimmers), i64::from(opening.kings));
            let carried = hole.header.map_or(at.place.studs_to, |header| header.y0);
            let (beside, y) = if kind == MemberKind::Trimmer {
                (0..trimmers, Interval::new(at.place.studs_from, carried))
            } else {
                (trimmers..trimmers + kings, at.full())
            };
            for n in beside {
                for x0 in [hole.rect.x0 - width * (n + 1), hole.rect.x1 + width * n] {
                    let x = Interval::new(x0, x0 + width);
                    let within = at.x.covers(x) && !holes.iter().any(|other| other.rect.x_span().overlaps(x));
                    if within {
                        all.stand(Upright {
                            kind,
                            origin: Origin::Said,
                            x,
                            y,
                            opening: Some(index),
                        });
                    }
                }
            }
        }
    }
    on_layout(at, holes, first_opening, &mut all);
    // A stud on layout at a segment's end carries the seam there, and counts.
    for segment in at.segments {
        all.stand_post(
            full(MemberKind::PostStud, Origin::Said, segment.from),
            width,
            segment,
        );
        all.stand_post(
            full(MemberKind::PostStud, Origin::Said, segment.to - width),
            -width,
            segment,
        );
    }
    for (hole, index) in holes.iter().zip(first_opening..) {
        if hole.sill_from < hole.rect.y0 {
            let y = Interval::new(at.place.studs_from, hole.sill_from.max(at.place.studs_from));
            for x0 in [hole.rect.x0, hole.rect.x1 - width] {
                let x = Interval::new(x0, x0 + width);
                all.stand(Upright {
                    kind: MemberKind::Cripple,
                    origin: Origin::Said,
                    x,
                    y,
                    opening: Some(index),
                });
            }
        }
    }
    for header in holes.iter().filter_map(|hole| hole.header) {
        all.part_at(header);
    }
    all.sorted()
}

/// Studs on layout; over and under openings, cripples on the same layout.
fn on_layout(at: &Standing<'_>, holes: &[Hole], first_opening: u32, all: &mut Uprights) {
    for (k, x) in at.layout() {
        let over: Vec<(&Hole, u32)> = holes
            .iter()
            .zip(first_opening..)
            .filter(|(hole, _)| hole.rect.x_span().overlaps(x))
            .collect();
        if over.is_empty() {
            all.stand(Upright {
                kind: MemberKind::Stud,
                origin: Origin::Layout(k),
                x,
                y: at.full(),
                opening: None,
            });
            continue;
        }
        let taken: Vec<Interval> = over
            .iter()
            .map(|(hole, _)| {
                Interval::new(
                    hole.sill_from,
                    hole.header
                        .map_or(hole.rect.y1, |header| header.y1.max(hole.rect.y1)),
                )
            })
            .collect();
        for y in Interval::subtract(at.full(), &Interval::union(taken)) {
            let opening = over.first().map(|(_, index)| *index);
            all.stand(Upright {
                kind: MemberKind::Cripple,
                origin: Origin::Layout(k),
                x,
                y,
                opening,
            });
        }
    }
}

/// Blocks that are framed anyway, one in every bay between full uprights.
fn block_rows(frame: &mut Frame, at: &Standing<'_>, holes: &[Hole], uprights: &[Upright]) {
    let width = at.place.stud_width;
    for row in &at.storey.block_rows {
        let y0 = at.up(*row) - width.half();
        let y = Interval::new(y0, y0 + width);
        let mut taken: Vec<Interval> = uprights
            .iter()
            .filter(|upright| upright.y.overlaps(y))
            .map(|upright| upright.x)
            .collect();
        taken.extend(
            holes
                .iter()
                .filter(|hole| hole.sill_from < y.hi && y.lo < hole.header.map_or(hole.rect.y1, |h| h.y1))
                .map(|hole| hole.rect.x_span()),
        );
        for bay in Interval::subtract(at.x, &Interval::union(taken)) {
            frame.put(
                &at.material,
                Piece::said(MemberKind::Block, Axis::Horizontal),
                Rect::from_spans(bay, y),
            );
        }
    }
}
