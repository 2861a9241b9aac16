//! What is wrong with the nailing of a layout.

use super::{NailRow, Nailing, Snag};
use crate::edges::Site;
use crate::finding::{Finding, FindingCode, Severity};
use crate::frame::MemberKind;
use crate::geometry::{Point, Rect};
use crate::layout::{Layout, Piece, category_thickness, marks};
use crate::wording::{counted, wording};

/// What is wrong with the nailing of a layout on a backed frame: nails without a place, nails that may not go into
/// treated lumber, plates of segments that no row is on.
pub fn findings(site: &Site<'_>, layout: &Layout, nailing: &Nailing, snags: &[Snag]) -> Vec<Finding> {
    let mut out = Vec::new();
    for snag in snags {
        out.push(no_place(site, layout, snag));
    }
    moved(site, &nailing.rows, &mut out);
    coatings(site, layout, &nailing.rows, &mut out);
    plates(site, &nailing.rows, &mut out);
    field_spacing(site, layout, &mut out);
    out
}

fn mark(layout: &Layout, piece: u32) -> &str {
    layout.pieces.get(piece as usize).map_or("", |piece| &piece.mark)
}

fn no_place(site: &Site<'_>, layout: &Layout, snag: &Snag) -> Finding {
    let mark = mark(layout, snag.piece);
    Finding::of(&site.wall.name, FindingCode::NailBlocked, Severity::Mend)
        .on(mark)
        .at(snag.at.x, snag.at.y)
        .against(
            "no wood for a nail within a quarter space",
            wording![
                site.practice.member_edge_least,
                " of wood on both sides of a nail, clear of straps and holes"
            ],
        )
        .says(wording![
            "Piece ",
            mark,
            ": the nail at ",
            snag.at.x,
            " along and ",
            snag.at.y,
            " up has no place within a quarter of its space; set it by hand beside its place."
        ])
}

/// Nails of segments that stand off their even places: a few may be moved by up to a quarter space, and who relies on
/// the segment is told.
fn moved(site: &Site<'_>, rows: &[NailRow], out: &mut Vec<Finding>) {
    for place in &site.segments {
        let places: Vec<Point> = rows
            .iter()
            .filter(|row| row.moved)
            .map(|row| row.position(row.first))
            .filter(|at| place.rect.contains(*at))
            .collect();
        let Some(first) = places.first() else { continue };
        out.push(
            Finding::of(&site.wall.name, FindingCode::NailBlocked, Severity::Advise)
                .at(first.x, first.y)
                .against(
                    wording![counted(places.len(), "nail", "nails"), " moved"],
                    "a quarter of the space along the row",
                )
                .says(wording![
                    "Segment ",
                    place.segment.mark,
                    ": ",
                    counted(places.len(), "nail", "nails"),
                    " out of even places to find wood, within a quarter space."
                ]),
        );
    }
}

/// Nails in treated lumber whose coating practice does not accept there.
fn coatings(site: &Site<'_>, layout: &Layout, rows: &[NailRow], out: &mut Vec<Finding>) {
    let mut told = Vec::new();
    for row in rows {
        let treated = site.frame.member(row.member).is_some_and(|member| member.treated);
        let nail = site.house.stock.nails.get(row.nail as usize);
        let accepted = nail.is_some_and(|nail| site.practice.treated_coatings.contains(&nail.coating));
        if !treated || accepted || told.contains(&row.member) {
            continue;
        }
        told.push(row.member);
        let at = row.position(row.first);
        out.push(
            Finding::of(&site.wall.name, FindingCode::NoCorrosionResistantNail, Severity::Refuse)
                .on(mark(layout, row.piece))
                .at(at.x, at.y)
                .against(
                    nail.map_or("no nail in stock", |nail| &nail.name),
                    "a nail with a coating accepted in treated lumber (IRC R317.3)",
                )
                .says(
                    "Stock has no nail that may go into the preservative-treated plate; add a hot-dipped or stainless one.",
                ),
        );
    }
}

/// Bottom plates and topmost plates of segments without a row over their length.
fn plates(site: &Site<'_>, rows: &[NailRow], out: &mut Vec<Finding>) {
    for place in &site.segments {
        let Some(storey) = site
            .frame
            .segments
            .iter()
            .find(|s| s.rect == place.rect)
            .map(|s| s.storey)
        else {
            continue;
        };
        let Some(storey_place) = site.frame.storeys.get(storey as usize) else {
            continue;
        };
        let plates = site
            .frame
            .members
            .iter()
            .filter(|member| member.storey == Some(storey));
        for plate in plates {
            let bounds = plate.face.bounds();
            let (code, name) = match plate.kind {
                MemberKind::BottomPlate if bounds.y0 == storey_place.base => {
                    (FindingCode::BottomPlateBare, "bottom plate")
                }
                MemberKind::TopPlate if bounds.y0 == storey_place.topmost_from => {
                    (FindingCode::TopPlateBare, "topmost plate")
                }
                _ => continue,
            };
            let Some(shared) = bounds.intersect(&place.rect) else {
                continue;
            };
            let level =
                |row: &&NailRow| row.member == plate.id && row.from.y == row.to.y && reaches(row, &shared);
            if rows.iter().any(|row| level(&row)) {
                continue;
            }
            out.push(
                Finding::of(&site.wall.name, code, Severity::Refuse)
                    .at(shared.x0, shared.y0)
                    .against(
                        wording!["no row of nails on the ", name, " of ", place.segment.mark],
                        "a row at edge spacing on the bottom plate and on the topmost plate",
                    )
                    .says(wording![
                        "Segment ",
                        place.segment.mark,
                        ": no sheet is nailed to its ",
                        name,
                        "; the sheets must reach it."
                    ]),
            );
        }
    }
}

/// Field nails wider apart than panel and studs allow: refused in a segment, marked elsewhere.
fn field_spacing(site: &Site<'_>, layout: &Layout, out: &mut Vec<Finding>) {
    let limits = &site.practice.limits;
    let close = limits.field_close_spacing;
    for storey in site
        .frame
        .storeys
        .iter()
        .filter(|storey| storey.spacing >= limits.field_close_studs)
    {
        let thin = |piece: &&Piece| {
            let bounds = piece.outline.bounds();
            let sheet = site.house.stock.sheets.get(piece.sheet as usize);
            let thickness = sheet.and_then(|sheet| category_thickness(&sheet.category));
            bounds.y0 < storey.studs_to
                && storey.studs_from < bounds.y1
                && thickness.is_some_and(|t| t <= limits.field_close_thickness)
        };
        let wide: Vec<(&Piece, bool)> = layout
            .pieces
            .iter()
            .filter(thin)
            .filter(|piece| site.field_spacing(piece.outline.bounds()) > close)
            .map(|piece| (piece, site.segments_at(piece.outline.bounds()).next().is_some()))
            .collect();
        for (relied_on, severity) in [(true, Severity::Refuse), (false, Severity::Advise)] {
            let pieces = || {
                wide.iter()
                    .filter(|(_, relied)| *relied == relied_on)
                    .map(|(piece, _)| *piece)
            };
            let Some(bounds) = pieces().next().map(|piece| piece.outline.bounds()) else {
                continue;
            };
            let spacing = pieces()
                .map(|piece| site.field_spacing(piece.outline.bounds()))
                .max();
            out.push(
                Finding::of(&site.wall.name, FindingCode::FieldSpacing, severity)
                    .at(bounds.x0, bounds.y0)
                    .against(spacing.unwrap_or_default(), close)
                    .says(wording![
                        "Pieces ",
                        marks(pieces()),
                        ": field nails ",
                        spacing.unwrap_or_default(),
                        " apart; panels of ",
                        limits.field_close_thickness,
                        " or less on studs ",
                        limits.field_close_studs,
                        " apart take them at ",
                        close,
                        "."
                    ]),
            );
        }
    }
}

fn reaches(row: &NailRow, area: &Rect) -> bool {
    row.positions().any(|at| area.contains(at))
}
