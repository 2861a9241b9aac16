//! What a face has to keep before its table may be used.

use super::input::FacingQuery;
use crate::capacity::fault::{fault, inches, within};
use crate::capacity::rule;
use crate::decimal::Decimal;
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::published::{FacingMaterial, Fastener};

/// Whether the material is a panel of wood, which the standard's rules on nailing and framing of panels hold for.
pub(super) const fn is_panel(material: FacingMaterial) -> bool {
    use FacingMaterial::{
        Particleboard, PlywoodSiding, PlywoodSidingOverGypsum, SheathingOverGypsum, StapledStructuralI,
        StapledStructuralIOverGypsum, StructuralIOverGypsum,
    };
    matches!(
        material,
        Particleboard
            | PlywoodSiding
            | PlywoodSidingOverGypsum
            | SheathingOverGypsum
            | StapledStructuralI
            | StapledStructuralIOverGypsum
            | StructuralIOverGypsum
    )
}

/// Every condition that the face does not keep.
pub(super) fn check(query: &FacingQuery) -> Result<(), Vec<Issue>> {
    let facing = &query.facing;
    let mut issues = Vec::new();
    let mut between = |field: &str, found: Length, most: Length| {
        if found <= Length::ZERO || found > most {
            issues.push(fault(
                Code::OutOfRange,
                field,
                &inches(found),
                &format!("above 0, at most {}", inches(most)),
                "no table of faces lists more",
            ));
        }
    };
    between("stud_spacing", facing.stud_spacing, rule::STUDS_MOST.value);
    between("edge_spacing", facing.edge_spacing, WIDEST);
    if let Some(field) = facing.field_spacing {
        let most = if is_panel(facing.material) {
            rule::field_most(facing.thickness, facing.stud_spacing)
        } else {
            FIELD_WIDEST
        };
        between("field_spacing", field, most);
    }
    if is_panel(facing.material) {
        panel(query, &mut issues);
    } else if let Some(gravity) = facing.specific_gravity {
        issues.push(fault(
            Code::UnlistedValue,
            "specific_gravity",
            &gravity.to_string(),
            "null",
            &format!(
                "no factor for the framing's specific gravity was collected for {}",
                facing.material.name()
            ),
        ));
    }
    if issues.is_empty() {
        Ok(())
    } else {
        Err(within("facing", issues))
    }
}

/// Wider than any collected row lists edge fasteners.
const WIDEST: Length = Length::inches(8);
/// Wider than any collected row lists fasteners between.
const FIELD_WIDEST: Length = Length::inches(16);

/// What panels of wood keep.
fn panel(query: &FacingQuery, issues: &mut Vec<Issue>) {
    let facing = &query.facing;
    match facing.specific_gravity {
        Some(gravity) if gravity >= Decimal::tenths(3) && gravity <= Decimal::ONE => {}
        found => issues.push(fault(
            if found.is_some() {
                Code::OutOfRange
            } else {
                Code::MissingField
            },
            "specific_gravity",
            &found.map_or_else(|| "null".to_owned(), |gravity| gravity.to_string()),
            "0.3 to 1",
            "specific gravity of the framing, oven-dry",
        )),
    }
    if facing.field_spacing.is_none() {
        issues.push(fault(
            Code::MissingField,
            "field_spacing",
            "null",
            "a spacing",
            "the standard bounds the spacing of fasteners between panel edges",
        ));
    }
    if !facing.blocked {
        issues.push(fault(
            Code::UnlistedValue,
            "blocked",
            "false",
            "true",
            &format!("unblocked {} were not collected", facing.material.name()),
        ));
    }
    if facing.seam_member < rule::THREE_X {
        // The penetration of a 10d nail is not asked; it is taken as deep.
        let ten = matches!(facing.fastener, Some(Fastener::Common10d | Fastener::Casing10d));
        if facing.edge_spacing <= rule::WIDER_EDGE.value {
            issues.push(narrow(facing.seam_member, "edge fasteners 2 in. apart or closer"));
        } else if ten && facing.edge_spacing <= rule::WIDER_EDGE_10D.value {
            issues.push(narrow(facing.seam_member, "10d nails 3 in. apart or closer"));
        }
    }
}

/// Members that two panels share are too narrow for their nails.
pub(super) fn narrow(width: Length, because: &str) -> Issue {
    fault(
        Code::MemberTooNarrow,
        "seam_member",
        &inches(width),
        "a 3x member, 2 1/2 in. or wider, or two 2x members nailed together for the shear",
        &format!("members at adjoining panel edges have to be 3x, and the nails staggered, with {because}"),
    )
}
