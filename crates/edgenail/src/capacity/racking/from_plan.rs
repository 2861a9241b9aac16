//! A storey of a finished wall, as the racking model sees it.

use super::input::{RackingNail, RackingSheet, RackingWall};
use crate::capacity::fault::fault;
use crate::evaluate::Evaluated;
use crate::frame::{Member, MemberKind};
use crate::geometry::Interval;
use crate::issue::{Code, Issue};
use crate::nailing::{NailRow, Zone};
use serde::Serialize;

/// What one nail of the stock's list carries here.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NailResistance {
    /// The most that it carries, in pounds, at the level that the user wants answers at.
    pub strength: f64,
    /// Its force per slip while it is linear, in pounds per inch.
    pub stiffness: f64,
}

/// Whether pieces over, under and around openings count.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum AtOpenings {
    /// Only pieces beside the openings count: hold-downs at the ends of every stretch between openings are enough.
    LeftOut,
    /// All pieces count: every post beside an opening has to be held down too.
    Counted,
}

/// A storey taken from a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct StoreyRacking {
    /// The model's input: take nails or sheets out of it to see what they are worth.
    pub wall: RackingWall,
    /// Pieces of the storey that are left out because they reach over an opening's width.
    pub at_openings: Vec<u32>,
    /// Nails of the pieces counted that are driven into other storeys or floor bands: they hold no member of this frame.
    pub other_nails: u64,
}

/// Takes a storey of a finished wall: its pieces, and their nails into members of this storey. `storey` is a place in the
/// frame's list, `resistances` has a place for each nail of the stock's list, filled for those that are used, `force` acts along the top of
/// the uppermost plate, in pounds. Nails of the field count as such, all others as edge nails.
///
/// # Errors
/// The storey is not in the frame, its top plates follow a roof, or a nail has no resistance.
pub fn racking_of_storey(
    built: &Evaluated,
    storey: u32,
    resistances: &[Option<NailResistance>],
    openings: AtOpenings,
    force: f64,
) -> Result<StoreyRacking, Vec<Issue>> {
    let frame = &built.backed;
    let Some(place) = frame.storeys.get(storey as usize) else {
        return Err(vec![fault(
            Code::UnknownName,
            "storey",
            &storey.to_string(),
            &format!("below {}", frame.storeys.len()),
            "the frame has no such storey",
        )]);
    };
    let raked = |member: &Member| member.storey == Some(storey) && member.kind == MemberKind::RakedPlate;
    if frame.members.iter().any(raked) {
        return Err(vec![fault(
            Code::OutOfRange,
            "storey",
            &place.name,
            "a storey under level plates",
            "posts of different heights do not lean by one angle under one movement of the plates: the model is one of rectangles",
        )]);
    }
    let widths: Vec<Interval> = frame
        .openings
        .iter()
        .filter(|opening| opening.storey == storey)
        .map(|opening| opening.rect.x_span())
        .collect();
    let in_storey = |row: &NailRow| {
        let member = frame.member(row.member);
        member.is_some_and(|member| member.storey == Some(storey))
    };
    let mut issues: Vec<Issue> = Vec::new();
    let mut taken = StoreyRacking {
        wall: RackingWall {
            height: place.top - place.base,
            sheets: Vec::new(),
            force,
        },
        at_openings: Vec::new(),
        other_nails: 0,
    };
    let mut rest = built.nailing.rows.as_slice();
    for piece in &built.layout.pieces {
        let own = rest.iter().take_while(|row| row.piece == piece.id).count();
        let (rows, others) = rest.split_at(own);
        rest = others;
        if !rows.iter().any(in_storey) {
            continue;
        }
        let outline = piece.blank();
        let over = widths.iter().any(|width| width.overlaps(outline.x_span()));
        if over && openings == AtOpenings::LeftOut {
            taken.at_openings.push(piece.id);
            continue;
        }
        let mut nails = Vec::new();
        for row in rows {
            if !in_storey(row) {
                taken.other_nails += u64::from(row.count());
                continue;
            }
            let Some(Some(resistance)) = resistances.get(row.nail as usize) else {
                let issue = fault(
                    Code::MissingField,
                    &format!("resistances/{}", row.nail),
                    "",
                    "a strength and a stiffness",
                    "a nail that the wall uses has no resistance",
                );
                if !issues.contains(&issue) {
                    issues.push(issue);
                }
                continue;
            };
            nails.extend(row.positions().map(|at| RackingNail {
                at,
                strength: resistance.strength,
                stiffness: resistance.stiffness,
                edge: row.zone != Zone::Field,
            }));
        }
        taken.wall.sheets.push(RackingSheet {
            piece: piece.id,
            outline,
            nails,
        });
    }
    if issues.is_empty() { Ok(taken) } else { Err(issues) }
}
