//! What the standard asks of a wall before its table may be used.

use super::fault::{self, fault, inches};
use super::fit::penetration;
use super::rule;
use super::unit_shear::UnitShearQuery;
use crate::decimal::Decimal;
use crate::issue::{Code, Issue};
use crate::length::Length;

/// Every condition that the wall does not keep.
pub(super) fn check(query: &UnitShearQuery) -> Result<(), Vec<Issue>> {
    let assembly = &query.assembly;
    let mut issues = Vec::new();
    range(
        &mut issues,
        "assembly/edge_spacing",
        assembly.edge_spacing,
        rule::EDGE_MOST.value,
    );
    range(
        &mut issues,
        "assembly/stud_spacing",
        assembly.stud_spacing,
        rule::STUDS_MOST.value,
    );
    range(
        &mut issues,
        "assembly/field_spacing",
        assembly.field_spacing,
        rule::field_most(assembly.thickness, assembly.stud_spacing),
    );
    let gravity = assembly.specific_gravity;
    if gravity < Decimal::tenths(3) || gravity > Decimal::ONE {
        issues.push(fault(
            Code::OutOfRange,
            "assembly/specific_gravity",
            &gravity.to_string(),
            "0.3 to 1",
            "specific gravity of the framing, oven-dry",
        ));
    }
    if !assembly.blocked && assembly.edge_spacing != rule::EDGE_MOST.value {
        issues.push(fault(
            Code::UnlistedValue,
            "assembly/edge_spacing",
            &inches(assembly.edge_spacing),
            "6 in.",
            "unblocked walls are listed with edge nails 6 in. apart only",
        ));
    }
    if assembly.seam_member < rule::THREE_X {
        let ten = assembly.nail.shank >= Decimal::thousandths(146);
        let deep = penetration(&assembly.nail, assembly.thickness) > rule::WIDER_DEPTH;
        if assembly.edge_spacing <= rule::WIDER_EDGE.value {
            issues.push(fault::narrow(
                assembly.seam_member,
                "edge nails 2 in. apart or closer",
            ));
        } else if ten && deep && assembly.edge_spacing <= rule::WIDER_EDGE_10D.value {
            issues.push(fault::narrow(
                assembly.seam_member,
                "10d nails deeper than 1 1/2 in., 3 in. apart or closer",
            ));
        }
    }
    if issues.is_empty() { Ok(()) } else { Err(issues) }
}

fn range(issues: &mut Vec<Issue>, field: &str, found: Length, most: Length) {
    if found <= Length::ZERO || found > most {
        issues.push(fault(
            Code::OutOfRange,
            field,
            &inches(found),
            &format!("above 0, at most {}", inches(most)),
            "wider than the standard allows this wall",
        ));
    }
}
