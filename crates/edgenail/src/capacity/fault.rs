//! What keeps a table from answering, as issues of the query's fields.

use super::assembly::Assembly;
use super::fit::listed;
use super::rule::Rule;
use super::unit_shear::UnitShearQuery;
use crate::issue::{Code, Issue};
use crate::length::{Finest, Length, Rounding, Style};
use crate::published::{Confidence, PANEL_ROWS, PanelRow, RowEdition};

/// An issue of a field of the query.
pub(super) fn fault(code: Code, field: &str, found: &str, allowed: &str, message: &str) -> Issue {
    Issue {
        code,
        path: format!("/{field}"),
        wall: String::new(),
        found: found.to_owned(),
        allowed: allowed.to_owned(),
        message: message.to_owned(),
    }
}

/// The same issues where their fields stand within this one.
pub(crate) fn within(field: &str, issues: Vec<Issue>) -> Vec<Issue> {
    let inside = issues.into_iter().map(|issue| Issue {
        path: format!("/{field}{}", issue.path),
        ..issue
    });
    inside.collect()
}

/// A length in a message.
pub(super) fn inches(length: Length) -> String {
    let shown = length.show(Style::Inches(Finest::SixtyFourth), Rounding::Nearest);
    shown.text
}

/// Members that two panels share are too narrow for their nails.
pub(super) fn narrow(width: Length, because: &str) -> Issue {
    fault(
        Code::MemberTooNarrow,
        "assembly/seam_member",
        &inches(width),
        "a 3x member, 2 1/2 in. or wider, or two 2x members nailed together for the shear",
        &format!("members at adjoining panel edges have to be 3x, and the nails staggered, with {because}"),
    )
}

/// No row has this thickness.
pub(super) fn thickness(edition: RowEdition, assembly: &Assembly) -> Issue {
    let of_grade = PANEL_ROWS
        .iter()
        .filter(|row| row.edition == edition && row.grade == assembly.grade);
    let all = of_grade.map(|row| row.thickness).collect();
    fault(
        Code::UnlistedValue,
        "assembly/thickness",
        &inches(assembly.thickness),
        &sorted(all),
        &format!(
            "the table has no {} panel of this thickness",
            assembly.grade.name()
        ),
    )
}

/// No row has this edge nailing.
pub(super) fn spacing(rows: &[&PanelRow], assembly: &Assembly) -> Issue {
    fault(
        Code::UnlistedValue,
        "assembly/edge_spacing",
        &inches(assembly.edge_spacing),
        &sorted(rows.iter().map(|row| row.edge_spacing).collect()),
        "the table has no such edge nailing; it may not be interpolated. Closer nails may be looked up as the next wider",
    )
}

/// No row accepts the nail.
pub(super) fn nail(rows: &[&PanelRow], assembly: &Assembly) -> Issue {
    let mut allowed: Vec<String> = rows
        .iter()
        .filter(|row| row.edge_spacing == assembly.edge_spacing)
        .map(|row| {
            let nail = listed(row);
            format!(
                "{} common {} in. or hot-dipped box {} in., head {} in., {} into framing",
                row.nail.name(),
                nail.common.value,
                nail.galvanized_box.value,
                nail.head.value,
                inches(row.penetration)
            )
        })
        .collect();
    allowed.dedup();
    let nail = &assembly.nail;
    let found = format!(
        "{} x {} in., head {} in.",
        inches(nail.length),
        nail.shank,
        nail.head
    );
    fault(
        Code::NailNotListed,
        "assembly/nail",
        &found,
        &allowed.join("; "),
        "no row of the table accepts this nail: it is too thin, its head is too small or it is too short; for wind a thinner one may be taken by an engineering `estimate`",
    )
}

/// The result would rest on values that were recalled.
pub(super) fn unverified(
    query: &UnitShearQuery,
    row: &PanelRow,
    factor: Rule<f64>,
    unblocked: bool,
    estimated: bool,
) -> Issue {
    let mut recalled: Vec<&str> = Vec::new();
    if row.confidence == Confidence::Memory {
        recalled.push("the row of the table");
    }
    if factor.confidence == Confidence::Memory {
        recalled.push(factor.source);
    }
    if unblocked {
        recalled.push(super::rule::UNBLOCKED.source);
    }
    if estimated {
        recalled.push("bending yield strengths of nails, and the estimate by them");
    }
    if query.assembly.wet_framing {
        recalled.push(super::rule::WET.source);
    }
    if query.assembly.material == super::assembly::PanelMaterial::Plywood4 {
        recalled.push(super::rule::MORE_PLIES.source);
    }
    fault(
        Code::Unverified,
        "accept_unverified",
        "false",
        "true, after checking the printed standard",
        &format!(
            "these values were recalled and not checked against the printed standard: {}",
            recalled.join("; ")
        ),
    )
}

fn sorted(mut lengths: Vec<Length>) -> String {
    lengths.sort_unstable();
    lengths.dedup();
    let shown: Vec<String> = lengths.into_iter().map(inches).collect();
    shown.join(", ")
}
