//! The other way round: which panel, nail and nailing in stock carries a demand for the least money.

use super::assembly::{Assembly, DrivenNail, Framing, PanelMaterial};
use super::fault::{fault, inches};
use super::question::ScheduleQuery;
use super::unit_shear::{UnitShear, UnitShearQuery, unit_shear};
use crate::amount::Amount;
use crate::house::{Nail, NailTool, Sheet};
use crate::issue::{Code, Issue};
use crate::length::{Length, Unit};
use crate::published::Grade;
use serde::Serialize;

/// One way to build the wall.
#[derive(Clone, Debug)]
pub struct Candidate {
    /// The sheet, as a place in the stock's list.
    pub sheet: u32,
    /// The nail, as a place in the stock's list.
    pub nail: u32,
    /// Its construction.
    pub assembly: Assembly,
    /// What it resists, or why it may not be used.
    pub unit: Result<UnitShear, Vec<Issue>>,
    /// Demand over design unit shear, where it has one.
    pub ratio: Option<f64>,
    /// Sheets and nails, bought and driven, for one foot of wall.
    pub cost: Amount,
    /// Why it was not chosen; empty for the chosen one.
    pub why_not: String,
}

/// What is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Demand {
    /// Design unit shear in pounds per foot, at the level of the query's method.
    pub unit_shear: f64,
    /// Height of the wall.
    pub height: Length,
}

/// Listed edge nailings, the widest first.
const EDGES: [i64; 4] = [6, 4, 3, 2];

/// Every combination of the stock's sheets and nails with the listed edge nailings, the chosen one first, then those
/// that carry the demand for more money, then those that do not carry it.
///
/// All edges are backed. Costs are those of the stock and the rates; a wider seam member has no price here, and who asks for
/// it is told so by the candidates that fail for the lack of it. A sheet whose category is no thickness makes no candidate.
///
/// # Errors
/// A demand that is no number, or a height that no wall has.
pub fn schedule(query: &ScheduleQuery) -> Result<Vec<Candidate>, Vec<Issue>> {
    let demand = &query.demand;
    let mut issues = Vec::new();
    if !demand.unit_shear.is_finite() || demand.unit_shear < 0.0 {
        issues.push(fault(
            Code::OutOfRange,
            "demand/unit_shear",
            &demand.unit_shear.to_string(),
            "0 or more, a number",
            "a demand in pounds per foot",
        ));
    }
    if demand.height <= Length::ZERO || demand.height > Length::feet(100) {
        issues.push(fault(
            Code::OutOfRange,
            "demand/height",
            &inches(demand.height),
            "above 0, at most 100 ft",
            "the height of a wall",
        ));
    }
    if !issues.is_empty() {
        return Err(issues);
    }
    let mut found = Vec::new();
    for (sheet_index, sheet) in (0..).zip(&query.stock.sheets) {
        for (nail_index, nail) in (0..).zip(&query.stock.nails) {
            for edge in EDGES {
                let Some(assembly) = assembly(&query.framing, sheet, nail, Length::inches(edge)) else {
                    continue;
                };
                let unit = unit_shear(&UnitShearQuery {
                    edition: query.edition,
                    load: query.load,
                    method: query.method,
                    assembly,
                    high_seismic: query.high_seismic,
                    accept_unverified: query.accept_unverified,
                    estimate: false,
                });
                let ratio = unit.as_ref().ok().map(|unit| demand.unit_shear / unit.design);
                found.push(Candidate {
                    sheet: sheet_index,
                    nail: nail_index,
                    assembly,
                    unit,
                    ratio,
                    cost: cost(query, sheet, nail, &assembly),
                    why_not: String::new(),
                });
            }
        }
    }
    let carries = |candidate: &Candidate| candidate.ratio.is_some_and(|ratio| ratio <= 1.0);
    // Among equal costs the order of the stock and the wider nailing stay first.
    found.sort_by_key(|candidate| (!carries(candidate), candidate.cost));
    let best = found
        .first()
        .filter(|first| carries(first))
        .map(|first| first.cost);
    for (place, candidate) in found.iter_mut().enumerate() {
        candidate.why_not = match (&candidate.unit, candidate.ratio, best) {
            (Err(issues), ..) => issues
                .first()
                .map_or_else(String::new, |issue| issue.message.clone()),
            (Ok(unit), Some(ratio), _) if ratio > 1.0 => {
                format!(
                    "carries {} plf of {} plf asked for",
                    unit.design, demand.unit_shear
                )
            }
            (.., Some(best)) if place > 0 => format!("costs {:.2} more a foot", candidate.cost - best),
            _ => String::new(),
        };
    }
    Ok(found)
}

/// The nominal thickness that a sheet's category is; `None` where it is none.
pub(crate) fn nominal_thickness(sheet: &Sheet) -> Option<Length> {
    Length::parse_exact(&sheet.category, Unit::Inch).ok()
}

/// A construction of this sheet and nail in the framing; `None` where the sheet's category is no thickness.
fn assembly(framing: &Framing, sheet: &Sheet, nail: &Nail, edge_spacing: Length) -> Option<Assembly> {
    Some(Assembly {
        grade: grade(sheet),
        thickness: nominal_thickness(sheet)?,
        material: material(sheet),
        nail: DrivenNail {
            shank: nail.shank,
            head: nail.head,
            length: nail.length,
            coating: nail.coating,
        },
        edge_spacing,
        field_spacing: framing.field_spacing,
        blocked: true,
        stud_spacing: framing.stud_spacing,
        across_studs: framing.across_studs,
        specific_gravity: framing.specific_gravity,
        seam_member: framing.seam_member,
        wet_framing: framing.wet_framing,
        // Where they sit is not asked of a candidate.
        inside_hold_downs: true,
    })
}

/// The grade that a sheet's own words mean: Structural I only where they say so.
pub(super) fn grade(sheet: &Sheet) -> Grade {
    let words = sheet.grade.to_lowercase().replace(['_', '-'], " ");
    if words.split_whitespace().collect::<Vec<_>>() == ["structural", "i"] {
        Grade::StructuralI
    } else {
        Grade::Sheathing
    }
}

/// What a sheet is made of by its plies.
pub(super) const fn material(sheet: &Sheet) -> PanelMaterial {
    match sheet.plies {
        None => PanelMaterial::Osb,
        Some(0..=3) => PanelMaterial::Plywood3,
        Some(_) => PanelMaterial::Plywood4,
    }
}

/// Sheets by area, nails by their rows on one panel as wide as the sheet and as high as the wall, for a foot of wall.
fn cost(query: &ScheduleQuery, sheet: &Sheet, nail: &Nail, assembly: &Assembly) -> Amount {
    let (demand, rates) = (&query.demand, &query.rates);
    let foot = i128::from(Length::feet(1).units());
    let units = |length: Length| i128::from(length.units());
    let height = units(demand.height);
    let area = units(sheet.width) * units(sheet.length);
    let sheets = sheet.price.scaled(foot * height, area.max(1)).unwrap_or_default();
    let spaces = |length: Length, spacing: Length| length.spaces(spacing.max(Length::from_units(1)));
    let edges =
        2 * spaces(demand.height, assembly.edge_spacing) + 2 * spaces(sheet.width, assembly.edge_spacing);
    let between = (spaces(sheet.width, assembly.stud_spacing) - 1).max(0);
    let field = between * (spaces(demand.height, assembly.field_spacing) - 1).max(0);
    let nails = i128::from(edges + field);
    let width = units(sheet.width).max(1);
    let per_box = i128::from(nail.per_box.max(1));
    let bought = nail
        .price
        .scaled(nails * foot, per_box * width)
        .unwrap_or_default();
    let each = match nail.tool {
        NailTool::Gun => rates.nail_gun,
        NailTool::Hand => rates.nail_hand,
    };
    let minutes = each.scaled(nails * foot, width).unwrap_or_default();
    let labour = i128::from(rates.labour.ten_thousandths());
    let driven = minutes
        .scaled(labour, i128::from(Amount::PER_UNIT))
        .unwrap_or_default();
    sheets + bought + driven
}
