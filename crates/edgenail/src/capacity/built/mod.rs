//! A segment as it was built: what its nails, edges and members make of it, whatever was asked for.

mod gaps;

use super::assembly::{Assembly, DrivenNail};
use super::fault::fault;
use super::pier::Pier;
use super::schedule;
use crate::evaluate::Evaluated;
use crate::frame::{Axis, Member, MemberKind, SegmentPlace};
use crate::geometry::Rect;
use crate::house::{House, Sheet};
use crate::issue::{Code, Issue};
use crate::layout::{Piece, Running};
use crate::length::Length;
use gaps::Gaps;

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
