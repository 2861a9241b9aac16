//! Gaps between the nails of a segment: along panel edges, plates and end posts, and between.

use super::{EndPosts, centre, nailed_uprights, rows};
use crate::capacity::fault::inches;
use crate::edges::EdgeRun;
use crate::evaluate::Evaluated;
use crate::frame::{Member, MemberId, MemberKind, SegmentPlace};
use crate::geometry::{Interval, Rect};
use crate::layout::{Joint, Piece};
use crate::length::Length;

/// Gaps between nails of one segment.
pub(super) struct Gaps<'e> {
    pub(super) built: &'e Evaluated,
    pub(super) segment: &'e SegmentPlace,
    pub(super) pieces: &'e [&'e Piece],
    pub(super) posts: EndPosts,
}

/// A stretch of a panel edge with one member behind it.
struct HeldEdge {
    /// The edge of the piece's outline.
    edge: u32,
    plumb: bool,
    /// Where it lies.
    across: Length,
    along: Interval,
    member: MemberId,
}

impl Gaps<'_> {
    /// The widest gap along every backed panel edge in the segment; none where no nails are.
    pub(super) fn of_edges(&self) -> Vec<(String, Option<Length>)> {
        let mut found = Vec::new();
        for piece in self.pieces {
            for edge in self.held_edges(piece) {
                let at: Vec<Length> = rows(self.built, std::slice::from_ref(piece))
                    .filter(|row| row.member == edge.member)
                    .flat_map(crate::nailing::NailRow::positions)
                    .filter(|at| {
                        let beside = if edge.plumb { at.x } else { at.y };
                        (beside - edge.across).abs() <= NEAR
                    })
                    .map(|at| if edge.plumb { at.y } else { at.x })
                    .collect();
                let side = if edge.plumb { "plumb" } else { "level" };
                found.push((
                    format!("{side} edge of {} at {}", piece.mark, inches(edge.across)),
                    widest(at, edge.along),
                ));
            }
        }
        found
    }

    /// The backed edges of a piece within the segment; stretches on one member that follow each other are one, so that a
    /// gap between two is seen whole.
    fn held_edges(&self, piece: &Piece) -> Vec<HeldEdge> {
        let rect = &self.segment.rect;
        let mut found: Vec<HeldEdge> = Vec::new();
        for run in self.built.runs.iter().filter(|run| run.piece == piece.id) {
            let Some(member) = run.member() else { continue };
            let plumb = run.from.x == run.to.x;
            let area = run.area();
            let (along, across) = if plumb {
                (area.y_span(), run.from.x)
            } else {
                (
                    Interval::new(area.x0.min(area.x1), area.x0.max(area.x1)),
                    run.from.y,
                )
            };
            let follows = |edge: &&mut HeldEdge| {
                (edge.edge, edge.member, edge.plumb, edge.across) == (run.edge, member, plumb, across)
                    && along.lo <= edge.along.hi
                    && edge.along.lo <= along.hi
            };
            if let Some(edge) = found.iter_mut().find(follows) {
                edge.along = Interval::new(edge.along.lo.min(along.lo), edge.along.hi.max(along.hi));
            } else {
                found.push(HeldEdge {
                    edge: run.edge,
                    plumb,
                    across,
                    along,
                    member,
                });
            }
        }
        let inside = found.into_iter().filter_map(|edge| {
            let (span, other) = if edge.plumb {
                (rect.y_span(), rect.x_span())
            } else {
                (rect.x_span(), rect.y_span())
            };
            let along = edge.along.intersect(span).filter(|part| part.len() > SHORT)?;
            other.contains(edge.across).then_some(HeldEdge { along, ..edge })
        });
        inside.collect()
    }

    /// The widest gap along the bottom plate, the topmost plate and both end posts.
    pub(super) fn of_boundaries(&self) -> Vec<(String, Option<Length>)> {
        let rect = &self.segment.rect;
        let in_segment = |member: &&Member| member.nailable && member.face.bounds().overlaps(rect);
        let members = || self.built.backed.members.iter().filter(in_segment);
        let plates = |kind: MemberKind| members().filter(move |member| member.kind == kind);
        let lowest = plates(MemberKind::BottomPlate).min_by_key(|member| member.face.bounds().y0);
        let topmost = plates(MemberKind::TopPlate).max_by_key(|member| member.face.bounds().y0);
        let mut found = Vec::new();
        for (name, plate) in [("bottom plate", lowest), ("topmost plate", topmost)] {
            let gap = plate.and_then(|plate| {
                let at = self.nails_on(plate.id).map(|at| at.x).collect();
                widest(at, rect.x_span())
            });
            found.push((name.to_owned(), gap));
        }
        let ends = [
            ("left end post", rect.x0, self.posts.left),
            ("right end post", rect.x1, self.posts.right),
        ];
        for (name, end, _) in ends.into_iter().filter(|(.., held)| *held) {
            // A post is several studs; the best nailed of them takes the tension.
            let posts = nailed_uprights(self.built, rect);
            let of_post = posts.iter().filter(|member| {
                let face = member.face.bounds();
                (centre(&face) - end).abs() <= POST
            });
            let gap = of_post
                .filter_map(|member| {
                    let at = self.nails_on(member.id).map(|at| at.y).collect();
                    let face = member.face.bounds().y_span().intersect(rect.y_span())?;
                    widest(at, face)
                })
                .min();
            found.push((name.to_owned(), gap));
        }
        found
    }

    fn nails_on(&self, member: MemberId) -> impl Iterator<Item = crate::geometry::Point> + '_ {
        rows(self.built, self.pieces)
            .filter(move |row| row.member == member)
            .flat_map(crate::nailing::NailRow::positions)
            .filter(|at| self.segment.rect.contains(*at))
    }

    /// The widest spacing of field nails.
    pub(super) fn of_field(&self) -> Length {
        let field = rows(self.built, self.pieces).filter(|row| row.zone == crate::nailing::Zone::Field);
        let inside = field.filter(|row| row.positions().any(|at| self.segment.rect.contains(at)));
        let spacing = |row: &crate::nailing::NailRow| {
            let length = (row.to.x - row.from.x).abs() + (row.to.y - row.from.y).abs();
            let spaces = i64::from(row.spaces.max(1));
            Length::from_units((length.units() + spaces - 1) / spaces)
        };
        let widest = inside.map(spacing).max().unwrap_or_default();
        let listed = [6, 12].map(Length::inches);
        listed
            .into_iter()
            .find(|spacing| widest <= *spacing)
            .unwrap_or(widest)
    }

    /// Some panel edge in the segment has nothing behind it.
    pub(super) fn any_unbacked(&self) -> bool {
        self.built.runs.iter().any(|run| {
            run.member().is_none()
                && run.length > SHORT
                && self.pieces.iter().any(|piece| piece.id == run.piece)
                && lies_on(run, &self.segment.rect)
        })
    }

    /// The narrowest member that carries a seam in the segment; wide where there is no seam.
    pub(super) fn narrowest_seam_member(&self) -> Length {
        let seams = self.built.runs.iter().filter(|run| {
            run.joint == Joint::Seam
                && run.partner.is_some()
                && self.pieces.iter().any(|piece| piece.id == run.piece)
                && lies_on(run, &self.segment.rect)
        });
        let width = |member: &Member| {
            let face = member.face.bounds();
            face.width().min(face.height())
        };
        seams
            .filter_map(EdgeRun::member)
            .filter_map(|id| self.built.backed.members.iter().find(|member| member.id == id))
            .map(width)
            .min()
            .unwrap_or(crate::capacity::rule::THREE_X)
    }
}

/// Whether a stretch of edge lies on a rectangle or along its sides.
fn lies_on(run: &EdgeRun, rect: &Rect) -> bool {
    let area = run.area();
    let x = area.x0.max(area.x1).min(rect.x1) - area.x0.min(area.x1).max(rect.x0);
    let y = area.y1.min(rect.y1) - area.y0.max(rect.y0);
    x >= Length::ZERO && y >= Length::ZERO && x.max(y) > SHORT
}

/// Stretches so short carry a nail of the next.
const SHORT: Length = Length::inches(2);
/// Nails of an edge stand so near it.
const NEAR: Length = Length::from_units(Length::PER_INCH * 3 / 2);
/// The studs of an end post lie within so much of the segment's end.
const POST: Length = Length::inches(8);

/// The widest gap between nails along a stretch, ends included; none without nails.
fn widest(mut at: Vec<Length>, along: Interval) -> Option<Length> {
    at.retain(|at| along.contains(*at));
    at.sort_unstable();
    let (first, last) = (*at.first()?, *at.last()?);
    let between = at
        .windows(2)
        .map(|pair| pair[1] - pair[0])
        .max()
        .unwrap_or_default();
    Some(between.max(first - along.lo).max(along.hi - last))
}
