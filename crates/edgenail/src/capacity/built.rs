//! A segment as it was built: what its nails, edges and members make of it, whatever was asked for.

use super::assembly::{Assembly, DrivenNail};
use super::fault::{fault, inches};
use super::pier::Pier;
use super::schedule;
use crate::edges::EdgeRun;
use crate::evaluate::Evaluated;
use crate::frame::{Axis, Member, MemberId, MemberKind, SegmentPlace};
use crate::geometry::{Interval, Rect};
use crate::house::{House, Sheet};
use crate::issue::{Code, Issue};
use crate::layout::{Joint, Piece, Running};
use crate::length::Length;

/// What a segment is.
#[derive(Clone, Debug, PartialEq)]
pub struct BuiltSegment {
    /// The designer's mark.
    pub mark: String,
    /// Its sizes in feet.
    pub pier: Pier,
    /// Its construction, each value read off what was built.
    pub assembly: Assembly,
    /// The widest gap between nails of a panel edge or a boundary, which stands for its edge nailing.
    pub widest_gap: Length,
    /// Where that gap is.
    pub widest_at: String,
}

/// Reads a segment off a finished wall.
///
/// Edge nailing is the listed spacing at or above the widest gap along any panel edge, plate or end post.
///
/// # Errors
/// What the segment lacks: a boundary without nails, panels or nails of more than one kind, a sheet whose category is no
/// thickness.
pub fn built_segment(
    house: &House,
    built: &Evaluated,
    segment: &SegmentPlace,
) -> Result<BuiltSegment, Vec<Issue>> {
    built_part(
        house,
        built,
        segment,
        EndPosts {
            left: true,
            right: true,
        },
    )
}

/// Which ends of what is read are end posts; the other ends are edges of openings that force is handed around.
#[derive(Clone, Copy, Debug)]
pub(super) struct EndPosts {
    pub left: bool,
    pub right: bool,
}

/// As [`built_segment`], of a full-height part of a segment.
pub(super) fn built_part(
    house: &House,
    built: &Evaluated,
    segment: &SegmentPlace,
    posts: EndPosts,
) -> Result<BuiltSegment, Vec<Issue>> {
    let pieces: Vec<&Piece> = built
        .layout
        .pieces
        .iter()
        .filter(|piece| piece.blank().overlaps(&segment.rect))
        .collect();
    let refuse = Refuse {
        house,
        built,
        segment,
    };
    let (sheet, thickness) = panel_of(house, &pieces, &refuse)?;
    let nail = nail_of(house, built, segment, &pieces)
        .map_err(|(found, message)| refuse.with("nail", &found, "one size of nail", &message))?;
    let gaps = Gaps {
        built,
        segment,
        pieces: &pieces,
        posts,
    };
    let mut all = gaps.of_edges();
    all.extend(gaps.of_boundaries());
    if let Some((bare, _)) = all.iter().find(|(_, gap)| gap.is_none()) {
        return Err(refuse.with(
            "edge_spacing",
            &format!("{bare}: no nails"),
            "nails along every panel edge, plate and end post",
            "a boundary of the segment has no nails",
        ));
    }
    let widest = all
        .into_iter()
        .filter_map(|(place, gap)| Some((gap?, place)))
        .max();
    let Some((widest_gap, widest_at)) = widest else {
        return Err(refuse.with(
            "edge_spacing",
            "no edges",
            "panel edges",
            "the segment has no panel edges",
        ));
    };
    let uprights = nailed_uprights(built, &segment.rect);
    let centres: Vec<Length> = uprights
        .iter()
        .map(|member| centre(&member.face.bounds()))
        .collect();
    let stud_spacing = centres
        .windows(2)
        .map(|pair| pair[1] - pair[0])
        .max()
        .unwrap_or_default();
    let members = nailed(built, segment, &pieces);
    let assembly = Assembly {
        grade: schedule::grade(sheet),
        thickness,
        material: schedule::material(sheet),
        nail,
        edge_spacing: listed_spacing(widest_gap),
        field_spacing: gaps.of_field(),
        blocked: !gaps.any_unbacked(),
        stud_spacing,
        across_studs: pieces.iter().all(|piece| piece.running == Running::Flat),
        specific_gravity: members
            .iter()
            .map(|member| member.specific_gravity)
            .min()
            .unwrap_or_default(),
        seam_member: gaps.narrowest_seam_member(),
        wet_framing: false,
        // Where they sit is not said of a planned house.
        inside_hold_downs: true,
    };
    Ok(BuiltSegment {
        mark: segment.mark.clone(),
        pier: Pier::new(segment.rect.width(), segment.rect.height()),
        assembly,
        widest_gap,
        widest_at,
    })
}

/// What a segment is refused with.
struct Refuse<'a> {
    house: &'a House,
    built: &'a Evaluated,
    segment: &'a SegmentPlace,
}

impl Refuse<'_> {
    fn with(&self, field: &str, found: &str, allowed: &str, message: &str) -> Vec<Issue> {
        let wall = self.house.walls.get(self.built.backed.wall as usize);
        let field = format!("segments/{}/{field}", self.segment.segment);
        vec![Issue {
            wall: wall.map_or_else(String::new, |wall| wall.name.clone()),
            ..fault(Code::NothingResists, &field, found, allowed, message)
        }]
    }
}

/// The one kind of panel of a segment, and its thickness.
fn panel_of<'h>(
    house: &'h House,
    pieces: &[&Piece],
    refuse: &Refuse<'_>,
) -> Result<(&'h Sheet, Length), Vec<Issue>> {
    let all: Vec<&Sheet> = pieces
        .iter()
        .filter_map(|piece| house.stock.sheets.get(piece.sheet as usize))
        .collect();
    let Some((sheet, others)) = all.split_first() else {
        return Err(refuse.with(
            "sheathing",
            "none",
            "panels over the whole segment",
            "the segment is not sheathed",
        ));
    };
    let unlike = |other: &&&Sheet| {
        other.category != sheet.category || other.grade != sheet.grade || other.plies != sheet.plies
    };
    if let Some(other) = others.iter().find(unlike) {
        return Err(refuse.with(
            "sheathing",
            &format!("{} and {}", sheet.name, other.name),
            "one kind of panel",
            "panels of more than one kind share the segment; take the weaker one by hand",
        ));
    }
    let Some(thickness) = schedule::nominal_thickness(sheet) else {
        return Err(refuse.with(
            "sheathing",
            &sheet.category,
            "a nominal thickness, such as 7/16",
            "the category of the sheet is no thickness that a table lists",
        ));
    };
    Ok((sheet, thickness))
}

/// The closest listed edge nailing that is no closer than a gap; the gap itself beyond the widest.
fn listed_spacing(gap: Length) -> Length {
    let listed = [2, 3, 4, 6].map(Length::inches);
    listed.into_iter().find(|spacing| gap <= *spacing).unwrap_or(gap)
}

fn centre(rect: &Rect) -> Length {
    (rect.x0 + rect.x1).half()
}

/// The thinnest of the nails that are alike in size; the treated members' nails may differ in coating.
fn nail_of(
    house: &House,
    built: &Evaluated,
    segment: &SegmentPlace,
    pieces: &[&Piece],
) -> Result<DrivenNail, (String, String)> {
    let mut found: Vec<u32> = rows(built, pieces)
        .filter(|row| row.positions().any(|at| segment.rect.contains(at)))
        .map(|row| row.nail)
        .collect();
    found.sort_unstable();
    found.dedup();
    let nails: Vec<_> = found
        .iter()
        .filter_map(|nail| house.stock.nails.get(*nail as usize))
        .collect();
    let Some((first, others)) = nails.split_first() else {
        return Err(("none".to_owned(), "the segment has no nails".to_owned()));
    };
    if let Some(other) = others
        .iter()
        .find(|other| other.shank != first.shank || other.length != first.length || other.head != first.head)
    {
        return Err((
            format!("{} and {}", first.name, other.name),
            "nails of more than one size share the segment; take the weaker one by hand".to_owned(),
        ));
    }
    // Only where all are hot-dipped may the box nail's row be read.
    let coating = others
        .iter()
        .map(|other| other.coating)
        .find(|coating| *coating != first.coating)
        .map_or(first.coating, |_| crate::house::Coating::Bright);
    Ok(DrivenNail {
        shank: first.shank,
        head: first.head,
        length: first.length,
        coating,
    })
}

fn rows<'e>(
    built: &'e Evaluated,
    pieces: &'e [&Piece],
) -> impl Iterator<Item = &'e crate::nailing::NailRow> + 'e {
    built
        .nailing
        .rows
        .iter()
        .filter(|row| pieces.iter().any(|piece| piece.id == row.piece))
}

/// Members that nails of the segment go into.
fn nailed<'e>(built: &'e Evaluated, segment: &SegmentPlace, pieces: &[&Piece]) -> Vec<&'e Member> {
    let mut ids: Vec<_> = rows(built, pieces)
        .filter(|row| row.positions().any(|at| segment.rect.contains(at)))
        .map(|row| row.member)
        .collect();
    ids.sort_unstable();
    ids.dedup();
    built
        .backed
        .members
        .iter()
        .filter(|member| ids.binary_search(&member.id).is_ok())
        .collect()
}

/// Upright members that hold nails in the segment, from left to right.
fn nailed_uprights<'e>(built: &'e Evaluated, rect: &Rect) -> Vec<&'e Member> {
    let mut found: Vec<&Member> = built
        .backed
        .members
        .iter()
        .filter(|member| {
            member.nailable && member.axis == Axis::Vertical && member.face.bounds().overlaps(rect)
        })
        .filter(|member| member.kind != MemberKind::Cripple)
        .collect();
    found.sort_by_key(|member| member.face.bounds().x0);
    found
}

/// Gaps between nails of one segment.
struct Gaps<'e> {
    built: &'e Evaluated,
    segment: &'e SegmentPlace,
    pieces: &'e [&'e Piece],
    posts: EndPosts,
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
    fn of_edges(&self) -> Vec<(String, Option<Length>)> {
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
    fn of_boundaries(&self) -> Vec<(String, Option<Length>)> {
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
    fn of_field(&self) -> Length {
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
    fn any_unbacked(&self) -> bool {
        self.built.runs.iter().any(|run| {
            run.member().is_none()
                && run.length > SHORT
                && self.pieces.iter().any(|piece| piece.id == run.piece)
                && lies_on(run, &self.segment.rect)
        })
    }

    /// The narrowest member that carries a seam in the segment; wide where there is no seam.
    fn narrowest_seam_member(&self) -> Length {
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
            .unwrap_or(super::rule::THREE_X)
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
