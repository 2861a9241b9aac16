//! What is wrong with the nailing of a layout.

use super::{NailRow, Nailing, Snag};
use crate::edges::Site;
use crate::finding::{Finding, FindingCode, Severity, inches};
use crate::frame::MemberKind;
use crate::geometry::{Point, Rect};
use crate::layout::{Layout, Piece, category_thickness, marks};

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

fn mark(layout: &Layout, piece: u32) -> String {
    layout
        .pieces
        .get(piece as usize)
        .map(|piece| piece.mark.clone())
        .unwrap_or_default()
}

fn no_place(site: &Site<'_>, layout: &Layout, snag: &Snag) -> Finding {
    Finding {
        code: FindingCode::NailBlocked,
        severity: Severity::Mend,
        wall: site.wall.name.clone(),
        piece: mark(layout, snag.piece),
        at: Some((snag.at.x, snag.at.y)),
        found: "no wood for a nail within a quarter space".into(),
        allowed: format!(
            "{} of wood on both sides of a nail, clear of straps and holes",
            inches(site.practice.member_edge_least)
        ),
        message: format!(
            "Piece {}: the nail at {} along and {} up has no place within a quarter of its space; set it by hand beside its place.",
            mark(layout, snag.piece),
            inches(snag.at.x),
            inches(snag.at.y)
        ),
    }
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
                    format!("{} nails moved", places.len()),
                    "a quarter of the space along the row",
                )
                .says(format!(
                    "Segment {}: nails out of their even places to find wood, within a quarter space: {}.",
                    place.segment.mark,
                    places.len()
                )),
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
        out.push(Finding {
            code: FindingCode::NoCorrosionResistantNail,
            severity: Severity::Refuse,
            wall: site.wall.name.clone(),
            piece: mark(layout, row.piece),
            at: Some((at.x, at.y)),
            found: nail.map_or_else(|| "no nail in stock".into(), |nail| nail.name.clone()),
            allowed: "a nail with a coating accepted in treated lumber (IRC R317.3)".into(),
            message: "Stock has no nail that may go into the preservative-treated plate; add a hot-dipped or stainless one."
                .into(),
        });
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
            out.push(Finding {
                code,
                severity: Severity::Refuse,
                wall: site.wall.name.clone(),
                piece: String::new(),
                at: Some((shared.x0, shared.y0)),
                found: format!("no row of nails on the {name} of {}", place.segment.mark),
                allowed: "a row at edge spacing on the bottom plate and on the topmost plate".into(),
                message: format!(
                    "Segment {}: no sheet is nailed to its {name}; the sheets must reach it.",
                    place.segment.mark
                ),
            });
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
                    .against(inches(spacing.unwrap_or_default()), inches(close))
                    .says(format!(
                        "Pieces {}: field nails {} apart; panels of {} or less on studs {} apart take them at {}.",
                        marks(pieces()),
                        inches(spacing.unwrap_or_default()),
                        inches(limits.field_close_thickness),
                        inches(limits.field_close_studs),
                        inches(close)
                    )),
            );
        }
    }
}

fn reaches(row: &NailRow, area: &Rect) -> bool {
    row.positions().any(|at| area.contains(at))
}
